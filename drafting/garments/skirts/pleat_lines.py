"""Pleated skirts, the lines: a quarter drawn flat, its top over the closed pleats.

Source: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.craft.darts import closings, reopen
from drafting.craft.pleating import PlannedPleat, Pleating, laid_out, under_fold
from drafting.craft.sheet import DraftSheet
from drafting.craft.trueing import seam_over_darts
from drafting.errors import ConstructionError
from drafting.garments.skirts.trueing import Lines, plain
from drafting.geometry import Cubic, Path, Point, Vector, polyline, root
from drafting.pattern import Mark, Pleat
from drafting.trace import Length, Place, Stroke
from drafting.trace.place import corner_of_paper

MOST_WIDENED = 1.0
"""On a figure without a waist each edge of a face widens by 1 cm to the top at most. House method."""

LEAST_FACE = 0.3
"""What is left of half a face at the top, cm, at the least. House method."""

APART = 10.0
"""Back and front are drawn this far (cm) apart on one paper, one under the other."""

LEAST_INTAKE = 1.0
"""A pleat that takes less than 1 cm is none. House method."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Quarter:
    """What a quarter of the pleated part is drafted from.

    Attributes:
        name: "back" or "front".
        plan: Its pleats.
        top: Height of its top at the side, cm.
        lowered: How far the top is lower at the centre.
        wanted: Length of the top with the pleats closed, cm.
    """

    name: str
    plan: Pleating
    top: float
    lowered: float
    wanted: Length

    @property
    def hand(self) -> float:
        """1 where the side lies to the right of the centre, -1 to the left."""
        return -1.0 if self.name == "front" else 1.0


def hidden(parts: tuple[Quarter, ...], depths: tuple[float, float], sheet: DraftSheet) -> tuple[Quarter, ...]:
    """Back and front with the side seam at the inner fold of the front's last pleat.

    Raises:
        ConstructionError: The faces are too narrow for the waist.
    """
    sheet.heading("Side seam", "common practice, no source")
    plans = under_fold(parts[1].plan, parts[0].plan)[::-1]
    moved = tuple(replace(q, plan=plan) for q, plan in zip(parts, plans, strict=True))
    places = tuple(stands(q, depths) for q in moved)
    tops = float(parts[0].wanted + parts[1].wanted)

    def spare(narrowed: float) -> float:
        return sum(closed_top(q, on, narrowed).length() for q, on in zip(moved, places, strict=True)) - tops

    least = max(LEAST_INTAKE / 2 - min(p.depth for p in plans), -MOST_WIDENED)
    found = root(spare, least, min(p.narrowest for p in plans) - LEAST_FACE, 1e-10)
    if found is None:
        raise ConstructionError("The faces cannot be narrowed to the waist; make them wider or the pleats deeper.", where="garment.face")
    words = "To the line that the front's last fold is laid on: half a face more than a quarter.", "To its last fold: half a face less than a quarter."
    return tuple(
        replace(q, wanted=sheet.length(f"{q.name} top", closed_top(q, on, found).length(), why))
        for q, on, why in zip(moved, places, words, strict=True)
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Stands:
    """Where a quarter lies on the paper.

    Attributes:
        corner: Level of its top, plumb over the centre's hem.
        start: Its centre at the top.
        hip: Its centre at the hip.
        foot: Its centre at the hem.
        far: Its last face's end, level with the corner, before it is narrowed.
        beside: The same at the hip.
        depths: From the top down to the hip and to the hem, cm.
    """

    corner: Place
    start: Place
    hip: Place
    foot: Place
    far: Place
    beside: Place
    depths: tuple[float, float]

    def side(self, plan: Pleating, hand: float, narrowed: float) -> Place:
        """The last face's end at the top: plumb over the hip, or narrowed where a tuck follows."""
        return _across(self.far, -hand, Length(narrowed)) if plan.tucked else self.far

    def laid(self, plan: Pleating, hand: float, narrowed: float) -> tuple[PlannedPleat, ...]:
        """The pleats as planned."""
        return laid_out(plan, self.corner, hand, narrowed, self.depths)


def stands(quarter: Quarter, depths: tuple[float, float]) -> Stands:
    """Lay a quarter on the paper; the front clear under the back."""
    front, (hip, hem) = quarter.name == "front", depths
    plan, top = quarter.plan, quarter.top
    corner = corner_of_paper(plan.width if front else 0.0, (-(hem + APART) if front else 0.0) + top)
    far = _across(corner, quarter.hand, Length(plan.flat, f"{quarter.name} cloth"))
    at_hip = corner.down(Length(hip + top, "top to hip"))
    return Stands(
        corner=corner, start=corner.down(quarter.lowered), hip=at_hip, foot=corner.down(Length(hem + top, "top to hem")),
        far=far, beside=far.level_with(at_hip), depths=(hip + top, hem + top),
    )


def closed_top(quarter: Quarter, on: Stands, narrowed: float) -> Cubic:
    """The top drawn while the pleats are closed, each edge of a face narrowed by so many cm."""
    plan, hand = quarter.plan, quarter.hand
    top = on.side(plan, hand, narrowed)
    return seam_over_darts(on.start, Vector(hand, 0.0), top, (on.beside - top).unit, 0.0, closings(on.laid(plan, hand, narrowed))[-1])


def pleated(quarter: Quarter, depths: tuple[float, float], sheet: DraftSheet) -> Lines:
    """Draw a quarter flat, its top over the closed pleats, and open them again."""
    name, plan = quarter.name, quarter.plan
    sheet.heading(f"Pleats, {name}", "common practice, no source")
    on, hand = stands(quarter, depths), quarter.hand
    start = sheet.point(f"{name} centre at the top", on.start, "Lower behind than at the sides." if quarter.lowered else "On the straight grain.")
    at_hip = sheet.point(f"{name} centre at the hip", on.hip, "Below it the pleats run plumb.")
    foot = sheet.point(f"{name} centre at the hem", on.foot, "Where the skirt ends.")
    end = sheet.point(f"{name} side at the hem", on.far.level_with(foot), "All the cloth of the quarter.")
    beside = sheet.point(f"{name} side at the hip", on.beside, "Plumb over it.")
    found = sheet.solve(
        f"narrowing of each edge of the {name} faces", lambda n: closed_top(quarter, on, n).length(), quarter.wanted,
        (max(LEAST_INTAKE / 2 - plan.depth, -MOST_WIDENED), plan.narrowest - LEAST_FACE), "Brings the pleated top exactly to its length: each pleat takes that much more at the top than at the hip.",
    )
    seam = Path((closed_top(quarter, on, float(found)),))
    opened, pleats = reopen(seam, on.laid(plan, hand, float(found)), "waist")
    _draw_pleats(quarter, pleats, at_hip, hand, sheet)
    side = sheet.point(f"{name} side at the top", on.side(plan, hand, float(found)), "Narrowed as the faces are." if plan.tucked else "Square over the hip.")
    waist = sheet.curve(f"{name} top", start, side, opened.segments, "drawn while the pleats are closed, square to the centre and to the side", "So that no corner shows where a pleat is laid.")
    level = sheet.line(f"{name} hem", end, foot, why="Level.")
    centre = sheet.line(f"{name} centre", start, foot, why="On the straight grain.")
    drawn = Lines(
        name=name, closed=seam, waist=plain(opened), darts=(), planned=(), side=polyline(Point(side.x, side.y), Point(end.x, end.y)), centre=plain(centre.path),
        hem=plain(level.path), hip=at_hip.y, pleats=pleats,
    )
    if plan.tucked:
        return _tucked(drawn, (waist, centre), (side, beside, end, foot), plan.tuck, sheet)
    line = sheet.line(f"{name} side", side, end, why="On the straight grain.")
    sheet.outline(name, (waist, line, level, centre), "Trace it from the draft; allowances are added outside.")
    return drawn


def _tucked(drawn: Lines, lines: tuple[Stroke, Stroke], places: tuple[Place, Place, Place, Place], depth: float, sheet: DraftSheet) -> Lines:
    """What goes on under the last face: in front beyond the fold, behind beyond the line it is laid on."""
    name, (side, beside, end, foot) = drawn.name, places
    front = name == "front"
    deep = Length(depth, "pleat depth")
    word = "fold" if front else "line"
    mark = sheet.line(f"{name} side {word}", side, beside, end, why="The last fold." if front else "The front's last fold is laid on it.")
    inner = sheet.point(f"{name} inner fold at the top", side.square_out(side, beside, deep, "right" if front else "left"), "Square, so that it lies level when folded.")
    at_hip = sheet.point(f"{name} inner fold at the hip", _across(beside, -1.0 if front else 1.0, deep), "As deep as the pleats.")
    low = sheet.point(f"{name} inner fold at the hem", at_hip.level_with(end), "Plumb below the hip.")
    top = sheet.line(f"{name} top, laid under", side, inner, why="Caught in the waist together with the face over it.")
    seam = sheet.line(f"{name} side", inner, at_hip, low, why="The seam is hidden at the inner fold.")
    level = sheet.line(f"{name} hem, laid under", low, foot, why="Level.")
    sheet.outline(name, (lines[0], top, seam, level, lines[1]), "Trace it from the draft; allowances are added outside.")
    return replace(drawn, under=plain(top.path), side=plain(seam.path), hem=plain(level.path), marks=(Mark("fold" if front else "placement", plain(mark.path)),))


def _across(place: Place, hand: float, far: float) -> Place:
    return place.right(far) if hand > 0 else place.left(far)


def _draw_pleats(quarter: Quarter, pleats: tuple[Pleat, ...], hip: Place, hand: float, sheet: DraftSheet) -> None:
    """Record both lines of each pleat, from the top over the hip to the hem."""
    at = 0.0
    for n, (pleat, face) in enumerate(zip(pleats, quarter.plan.faces, strict=False), 1):
        at += face.width
        for word, line, far in (("nearer", pleat.one, at), ("farther", pleat.two, at + 2 * quarter.plan.depth)):
            label = f"{quarter.name} pleat {n}, {word} line"
            below = sheet.point(f"{label} at the hip", _across(hip, hand, far), "The faces and pleats before it.")
            top, foot = line.start, line.end
            above = sheet.point(f"{label} at the top", below.nudged_to(top), "Narrowed, and on the top.")
            low = sheet.point(f"{label} at the hem", below.down(below.y - foot.y), "Plumb below the hip.")
            sheet.line(label, above, below, low, why="The fold." if line is pleat.lines[0] else "The fold is laid on it.")
        at += 2 * quarter.plan.depth


