"""Pieces on a small lay plan: outline, arrow along the grain, and a name as big as has room."""

from __future__ import annotations

from collections.abc import Iterator

import shapely
from shapely.geometry.base import BaseGeometry

from drafting.drawing import Group, Pen, Role, Stroke, Text
from drafting.drawing.lettering import ABOVE, BELOW, PITCH, SLACK, width
from drafting.drawing.room import walls
from drafting.drawing.shapes import line, polygon
from drafting.drawing.sounding import Area
from drafting.geometry import Path, Point, Transform, polyline, turn
from drafting.laying.plan import Placement
from drafting.laying.view import View

OUTLINE, ARROW, HATCH = Pen(0.35), Pen(0.15), Pen(0.06)
SIZES = (0.3, 0.24, 0.2, 0.17)
"""Heights of capitals tried for names, in cm of paper."""
NUMBERS = (0.2, 0.17, 0.14, 0.11, 0.08, 0.06)
"""And for a number alone."""
SHORTER = ((1.0, 0.14), (0.5, 0.14), (0.5, 0.11), (0.3, 0.0))
"""Shares of the arrow that are drawn, and how small the number may then be: on a small piece a
short arrow and a number that can be read go before a long arrow."""
KEEP_OFF = 0.05
"""Names keep so far from outline and arrow, in cm of paper."""
HEAD = 0.18
"""Length of an arrow's barbs, in cm of paper."""
APART = 0.22
"""Distance of two strokes of a hatching, in cm of paper."""
FLAT = 0.005
"""Curves are flattened to 0.005 cm of paper to find room."""


def named(placement: Placement, view: View, to: Transform, code: str) -> Group:
    """A piece on the plan.

    Args:
        placement: Where it lies.
        view: Words and unit.
        to: From the plan's frame to the sheet, the same scale both ways.
        code: The group's name.
    """
    outline = placement.outline.transformed(to)
    hatching = tuple(_hatching(outline)) if placement.mirrored else ()
    arrow, texts = _arrow_and_name(placement, view, to, polygon(outline, FLAT))
    edge = Stroke(outline, Role.CUT, "outline", OUTLINE)
    return Group(code, placement.finished.piece.title, (*hatching, edge, *arrow, *texts))


def _hatching(outline: Path) -> Iterator[Stroke]:
    """Slanting strokes over a piece that lies face down, counted from the sheet's corner."""
    area = polygon(outline, FLAT)
    left, low, right, top = area.bounds
    first, last = (int(x // APART) for x in (left + low, right + top))
    shapely.prepare(area)
    for n in range(first + 1, last + 1):
        across = shapely.LineString([(n * APART - low, low), (n * APART - top, top)])
        for part in shapely.get_parts(area.intersection(across)):
            ends = [Point(x, y) for x, y in shapely.get_coordinates(part)]
            if len(ends) == 2:
                yield Stroke(polyline(*ends), Role.LEVEL, pen=HATCH)


def _arrow_and_name(
    placement: Placement, view: View, to: Transform, area: shapely.Polygon
) -> tuple[tuple[Stroke, ...], tuple[Text, ...]]:
    """The arrow as long as leaves room for the number, and the name."""
    inside = area.buffer(-KEEP_OFF)
    for share, least in SHORTER:
        arrow = _arrow(placement, to, share)
        taken = shapely.union_all([line(s.path, FLAT) for s in arrow]).buffer(KEEP_OFF)
        texts = _name(placement, view, inside.difference(taken), least)
        if texts:
            return arrow, texts
    middle = area.representative_point()
    at = Point(middle.x, middle.y - NUMBERS[-1] / 2)
    return (), (Text(_number(placement, view), at, NUMBERS[-1], anchor="middle"),)


def _arrow(placement: Placement, to: Transform, share: float) -> tuple[Stroke, ...]:
    """The grain, with a head at the piece's top."""
    low, top = (to.point(placement.move.point(p)) for p in placement.finished.piece.grain)
    low = top.toward(low, share)
    back = (low - top).unit
    head = min(HEAD, low.distance(top) / 3)
    barbs = polyline(top + back.rotated(-25) * head, top, top + back.rotated(25) * head)
    return Stroke(polyline(low, top), Role.GRAIN, pen=ARROW), Stroke(barbs, Role.GRAIN, pen=ARROW)


def _name(placement: Placement, view: View, free: BaseGeometry, least: float) -> tuple[Text, ...]:
    """The piece's name and how it lies; where there is no room, its number; or nothing."""
    number = _number(placement, view)
    full = (f"{number} {placement.finished.piece.title}", *_how(placement, view))
    trials = (
        *((full, size) for size in SIZES),
        *((full[:1], size) for size in SIZES[1:]),
        *(((number,), size) for size in NUMBERS if size >= least),
    )
    ways = [_Sounded(free, angle) for angle in (0.0, 90.0)]
    found = (texts for lines, size in trials for way in ways if (texts := way.texts(lines, size)))
    return next(found, ())


def _number(placement: Placement, view: View) -> str:
    number = placement.finished.piece.number
    return f"{placement.order}.{number}" if view.orders > 1 else f"{number}"


def _how(placement: Placement, view: View) -> Iterator[str]:
    words = view.words
    if view.orders > 1:
        yield placement.reference or words.order.format(number=placement.order)
    layers = {"fold": words.on_fold, "double": words.double, "upper": words.upper}
    signs = [layers[placement.layers]] if placement.layers in layers else []
    signs += [words.face_down] if placement.mirrored else []
    if signs:
        yield ", ".join(signs)


class _Sounded:
    """Free room, read along an angle."""

    def __init__(self, free: BaseGeometry, angle: float) -> None:
        self.angle = angle
        self.area = Area.sounded(walls(free), angle)

    def texts(self, lines: tuple[str, ...], size: float) -> tuple[Text, ...]:
        """The lines in a free box, or nothing."""
        wide = SLACK * max(width(text, size) for text in lines)
        tall = (ABOVE + BELOW + PITCH * (len(lines) - 1)) * size
        corner = self.area.place(wide, tall)
        if corner is None:
            return ()
        x, low = corner
        top, back = low + tall - ABOVE * size, turn(self.angle, Point(0.0, 0.0))
        ats = (Point(x + wide / 2, top - n * PITCH * size) for n in range(len(lines)))
        return tuple(
            Text(text, back.point(at), size, angle=self.angle, anchor="middle")
            for text, at in zip(lines, ats, strict=True)
        )
