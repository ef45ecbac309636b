"""The net pieces: names, outlines, darts, pleats and inside lines."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import cast

import numpy as np
import shapely

from drafting.checks.along import Mouth, mouths
from drafting.checks.closing import angle_over
from drafting.checks.outline import Corners, Shapes, at, flat, held, hold, numbered, ring, wedges
from drafting.geometry import JOIN, Point, array_of
from drafting.pattern import Dart, Finding, FinishedPattern, Piece, Pleat, Taken

LEG_TOLERANCE = 0.05
"""Dart legs are sewn to each other, so they agree as plain seams do."""

ON_EDGE = 0.01
"""What is said to lie on the stitching line lies within 0.01 cm of it."""

LEVEL_TOLERANCE = 0.05
"""Level lines end on the stitching line, as closely as seams agree."""

SMOOTH = (177.0, 183.0)
"""A seam over a closed dart runs on without a corner: 180 ± 3 degrees.

Source: common practice, no source.
"""


def names_once(finished: FinishedPattern) -> tuple[Finding, ...]:
    """Find pieces, edges and seams that share a name."""
    pattern = finished.pattern
    found = _twice("pieces", [p.name for p in pattern.pieces])
    found += _twice("seams", [s.name for s in pattern.seams])
    for piece in pattern.pieces:
        found += _twice(piece.name, [e.name for e in piece.edges])
    return tuple(found)


def outlines_sound(finished: FinishedPattern) -> tuple[Finding, ...]:
    """Find outlines that are open, run clockwise, or cross themselves."""
    hold(finished.pattern.pieces)
    return tuple(f for piece in finished.pattern.pieces for f in _outline(piece))


def darts_sound(finished: FinishedPattern) -> tuple[Finding, ...]:
    """Find darts with unequal legs, ends off their edge, or a point or drill hole out of place."""
    every = [dart for piece in finished.pattern.pieces for dart in _darts(piece)]
    if not every:
        return ()
    areas = np.array([held(piece).area for piece, _, _ in every], object)
    inside = shapely.contains(areas, _points([dart.point for *_, dart in every])).tolist()
    return tuple(
        finding
        for (piece, mouth, dart), within in zip(every, inside, strict=True)
        for found in (_mouth(piece, mouth, dart.legs), _dart(piece, dart, inside=within))
        for finding in found
    )


def pleats_sound(finished: FinishedPattern) -> tuple[Finding, ...]:
    """Find pleats with lines of unequal length, starts off their edge, or ends out of place."""
    return tuple(f for piece in finished.pattern.pieces for f in _pleats(piece))


def darts_smooth(finished: FinishedPattern) -> tuple[Finding, ...]:
    """Advice: find seam lines that make a corner over a closed dart or pleat."""
    return tuple(
        Finding(
            code=f"{_kind(mouth)}_not_smooth",
            severity="warning",
            where=f"{piece.name}.{edge.name}",
            message=f"With the {_kind(mouth)} closed, the {edge.name} of {piece.name} makes an "
            f"angle of {angle:.1f}°; redraw the seam over the folded {_kind(mouth)}.",
            measured=angle,
            allowed=SMOOTH,
            unit="deg",
        )
        for piece in finished.pattern.pieces
        for edge in piece.edges
        for mouth in mouths(piece, edge.name)
        if not SMOOTH[0] <= (angle := angle_over(piece, mouth)) <= SMOOTH[1]
    )


def lines_inside(finished: FinishedPattern) -> tuple[Finding, ...]:
    """Find level lines that do not end on the outline or leave it, and a grain that does."""
    strokes = [stroke for piece in finished.pattern.pieces for stroke in _strokes(piece)]
    off = _off([stroke for stroke in strokes if stroke.level is not None])
    told = zip(strokes, _surely_inside(strokes), strict=True)
    return tuple(f for stroke, sure in told for f in _stroke(stroke, off, sure=sure))


def _twice(where: str, names: list[str]) -> list[Finding]:
    if len(set(names)) == len(names):
        return []
    return [
        Finding(
            code="name_twice",
            severity="error",
            where=where,
            message=f"The name {name} stands for {count} things.",
        )
        for name, count in Counter(names).items()
        if count > 1
    ]


def _outline(piece: Piece) -> Iterator[Finding]:
    for edge, after in zip(piece.edges, (*piece.edges[1:], piece.edges[0]), strict=True):
        if (gap := edge.path.end.distance(after.path.start)) > JOIN:
            yield _error(
                "outline_open",
                f"{piece.name}.{edge.name}",
                f"{piece.name} is open between {edge.name} and {after.name}: {gap:.3f} cm.",
                gap,
                (0.0, JOIN),
            )
            return
    if not held(piece).simple:
        yield _error("outline_crosses", piece.name, f"The outline of {piece.name} crosses itself.")
    elif ring(piece).area() <= 0:
        yield _error(
            "outline_clockwise", piece.name, f"The outline of {piece.name} runs clockwise."
        )


def _kind(mouth: Mouth) -> str:
    return "dart" if isinstance(mouth.taken, Dart) else "pleat"


def _darts(piece: Piece) -> list[tuple[Piece, Mouth, Dart]]:
    """The darts of a piece with their mouths."""
    found = _mouths(piece, piece.darts) if piece.darts else ()
    return [(piece, m, m.taken) for m in found if isinstance(m.taken, Dart)]


def _pleats(piece: Piece) -> Iterator[Finding]:
    for mouth in _mouths(piece, piece.pleats):
        if isinstance(pleat := mouth.taken, Pleat):
            lines = (pleat.one, pleat.two)
            yield from _mouth(piece, mouth, tuple(line.length() for line in lines))
            area = held(piece).area.buffer(ON_EDGE)
            if not all(area.contains(shapely.LineString(flat(line))) for line in lines):
                told = f"A line of a pleat leaves {piece.name}."
                yield _error("pleat_outside", f"{piece.name}.{pleat.edge}", told)


def _mouths(piece: Piece, taken: tuple[Taken, ...]) -> Iterator[Mouth]:
    for edge in dict.fromkeys(t.edge for t in taken):
        yield from mouths(piece, edge)


def _mouth(piece: Piece, mouth: Mouth, legs: tuple[float, ...]) -> Iterator[Finding]:
    """Legs of one length, starting on the edge, straight across between them."""
    kind, taken = _kind(mouth), mouth.taken
    where = f"{piece.name}.{taken.edge}"
    first, second = legs
    if abs(first - second) > LEG_TOLERANCE:
        told = f"The legs of a {kind} of {piece.name} are {first:.2f} and {second:.2f} cm long."
        yield _error(
            f"{kind}_legs_differ", where, told, first - second, (-LEG_TOLERANCE, LEG_TOLERANCE)
        )
    if mouth.gap > ON_EDGE or abs(mouth.last - mouth.first - taken.intake) > ON_EDGE:
        told = f"The mouth of a {kind} of {piece.name} is no straight stretch of {taken.edge}, "
        yield _error(f"{kind}_off_edge", where, told + "walked from its first leg to its second.")


def _dart(piece: Piece, dart: Dart, *, inside: bool) -> Iterator[Finding]:
    where = f"{piece.name}.{dart.edge}"
    if not inside:
        yield _error("dart_point_outside", where, f"The point of a dart lies outside {piece.name}.")
    if not _surely_holds(dart, dart.drill) and _misses(dart, dart.drill):
        yield _error("drill_outside_dart", where, f"A drill hole of {piece.name} misses its dart.")


def _surely_holds(dart: Dart, p: Point) -> bool:
    """Whether a point lies on one side of every stroke round the dart, and so inside it."""
    corners = dart.around
    turns = [(b - a).cross(p - a) for a, b in pairwise((*corners, corners[0]))]
    return min(turns) > 0 or max(turns) < 0


def _misses(dart: Dart, p: Point) -> bool:
    return bool(wedges([dart])[0].distance(at(p)) >= ON_EDGE)


class _Stroke:
    """A level line of a piece, or its grain line, which has no level."""

    __slots__ = ("a", "b", "level", "piece")

    def __init__(self, piece: Piece, level: str | None, a: Point, b: Point) -> None:
        self.piece = piece
        self.level = level
        self.a = a
        self.b = b

    def within(self, share: float) -> Corners:
        """Its ends, drawn in by a share of its length."""
        a, b = self.a.toward(self.b, share), self.b.toward(self.a, share)
        return [(a.x, a.y), (b.x, b.y)]


def _strokes(piece: Piece) -> list[_Stroke]:
    levels = [_Stroke(piece, name, left, right) for name, left, right in piece.levels]
    return [*levels, _Stroke(piece, None, *piece.grain)]


def _off(levels: Sequence[_Stroke]) -> dict[_Stroke, float]:
    """How far the worse end of each level line lies off the outline."""
    lines = [held(level.piece).ring for level in levels for _ in "ab"]
    ends = _points([end for level in levels for end in (level.a, level.b)])
    off = shapely.distance(np.array(lines, object), ends).tolist()
    return {level: max(pair) for level, *pair in zip(levels, off[::2], off[1::2], strict=True)}


def _surely_inside(strokes: Sequence[_Stroke]) -> list[bool]:
    """Whether each lies in its piece without the ends, which may be off as far as on an edge."""
    shares = [ON_EDGE / max(s.a.distance(s.b), 2 * ON_EDGE) for s in strokes]
    ends, of = numbered([s.within(share) for s, share in zip(strokes, shares, strict=True)])
    areas = np.array([held(stroke.piece).area for stroke in strokes], object)
    inside: list[bool] = shapely.covers(areas, shapely.linestrings(ends, indices=of)).tolist()
    return inside


def _stroke(stroke: _Stroke, ends: dict[_Stroke, float], *, sure: bool) -> Iterator[Finding]:
    piece, level = stroke.piece, stroke.level
    if level is None:
        yield from _grain(stroke, sure=sure)
    elif (off := ends[stroke]) > LEVEL_TOLERANCE:
        where = f"{piece.name}.{level}"
        told = f"The {level} line of {piece.name} ends {off:.2f} cm off the outline."
        yield _error("level_off_outline", where, told, off, (0.0, LEVEL_TOLERANCE))
    elif not (sure or _is_chord(piece, stroke.a, stroke.b) or _inside(stroke)):
        where = f"{piece.name}.{level}"
        yield _error("level_outside", where, f"The {level} line leaves {piece.name}.")


def _grain(stroke: _Stroke, *, sure: bool) -> Iterator[Finding]:
    name, low, high = stroke.piece.name, stroke.a, stroke.b
    if not (sure or _inside(stroke)):
        yield _error("grain_outside", name, f"The grain line leaves {name}.")
    if abs(low.x - high.x) > JOIN or low.y >= high.y:
        yield _error("grain_not_upright", name, f"The grain of {name} does not run up.")


def _inside(stroke: _Stroke) -> bool:
    """Whether a line leaves its piece by less than level lines may."""
    whole = shapely.LineString(stroke.within(0.0))
    return bool(held(stroke.piece).area.buffer(LEVEL_TOLERANCE).covers(whole))


def _points(points: Sequence[Point]) -> Shapes:
    return cast("Shapes", shapely.points(array_of([(p.x, p.y) for p in points])))


def _is_chord(piece: Piece, left: Point, right: Point) -> bool:
    """Whether a level runs from end to end of one edge, as at a hem that is hollow or bowed."""
    return any(
        {True}
        == {min(e.path.start.distance(p), e.path.end.distance(p)) < ON_EDGE for p in (left, right)}
        for e in piece.edges
    )


def _error(
    code: str,
    where: str,
    message: str,
    measured: float | None = None,
    allowed: tuple[float, float] | None = None,
) -> Finding:
    return Finding(
        code=code,
        severity="error",
        where=where,
        message=message,
        measured=measured,
        allowed=allowed,
    )
