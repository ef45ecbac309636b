"""The net pieces: names, outlines, darts, pleats and inside lines."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

import shapely

from drafting.checks.along import Mouth, mouths
from drafting.checks.closing import angle_over
from drafting.checks.outline import at, flat, is_simple_outline, polygon, ring, wedge
from drafting.geometry import JOIN, Point
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
    found = [*_twice("pieces", [p.name for p in pattern.pieces])]
    found += _twice("seams", [s.name for s in pattern.seams])
    for piece in pattern.pieces:
        found += _twice(piece.name, [e.name for e in piece.edges])
    return tuple(found)


def outlines_sound(finished: FinishedPattern) -> tuple[Finding, ...]:
    """Find outlines that are open, run clockwise, or cross themselves."""
    return tuple(f for piece in finished.pattern.pieces for f in _outline(piece))


def darts_sound(finished: FinishedPattern) -> tuple[Finding, ...]:
    """Find darts with unequal legs, ends off their edge, or a point or drill hole out of place."""
    return tuple(f for piece in finished.pattern.pieces for f in _darts(piece))


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
    return tuple(f for piece in finished.pattern.pieces for f in _lines(piece))


def _twice(where: str, names: list[str]) -> Iterator[Finding]:
    for name, count in Counter(names).items():
        if count > 1:
            yield Finding(
                code="name_twice",
                severity="error",
                where=where,
                message=f"The name {name} stands for {count} things.",
            )


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
    if not is_simple_outline(piece):
        yield _error("outline_crosses", piece.name, f"The outline of {piece.name} crosses itself.")
    elif ring(piece).area() <= 0:
        yield _error(
            "outline_clockwise", piece.name, f"The outline of {piece.name} runs clockwise."
        )


def _kind(mouth: Mouth) -> str:
    return "dart" if isinstance(mouth.taken, Dart) else "pleat"


def _darts(piece: Piece) -> Iterator[Finding]:
    for mouth in _mouths(piece, piece.darts):
        if isinstance(mouth.taken, Dart):
            yield from _mouth(piece, mouth, mouth.taken.legs)
            yield from _dart(piece, mouth.taken)


def _pleats(piece: Piece) -> Iterator[Finding]:
    for mouth in _mouths(piece, piece.pleats):
        if isinstance(pleat := mouth.taken, Pleat):
            lines = (pleat.one, pleat.two)
            yield from _mouth(piece, mouth, tuple(line.length() for line in lines))
            area = polygon(piece).buffer(ON_EDGE)
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


def _dart(piece: Piece, dart: Dart) -> Iterator[Finding]:
    where = f"{piece.name}.{dart.edge}"
    if not polygon(piece).contains(at(dart.point)):
        yield _error("dart_point_outside", where, f"The point of a dart lies outside {piece.name}.")
    if wedge(dart).distance(at(dart.drill)) >= ON_EDGE:
        yield _error("drill_outside_dart", where, f"A drill hole of {piece.name} misses its dart.")


def _lines(piece: Piece) -> Iterator[Finding]:
    line = polygon(piece).exterior
    for name, left, right in piece.levels:
        where = f"{piece.name}.{name}"
        off = float(shapely.distance(line, shapely.points(_ends(left, right))).max())
        if off > LEVEL_TOLERANCE:
            told = f"The {name} line of {piece.name} ends {off:.2f} cm off the outline."
            yield _error("level_off_outline", where, told, off, (0.0, LEVEL_TOLERANCE))
        elif not _is_chord(piece, left, right) and not _inside(piece, left, right):
            yield _error("level_outside", where, f"The {name} line leaves {piece.name}.")
    if not _inside(piece, *piece.grain):
        yield _error("grain_outside", piece.name, f"The grain line leaves {piece.name}.")
    if abs(piece.grain[0].x - piece.grain[1].x) > JOIN or piece.grain[0].y >= piece.grain[1].y:
        yield _error("grain_not_upright", piece.name, f"The grain of {piece.name} does not run up.")


def _inside(piece: Piece, a: Point, b: Point) -> bool:
    """Whether a straight line lies in the piece, or leaves it by less than level lines may.

    Both ends may: what lies between them is nearly always within.
    """
    share, area = ON_EDGE / max(a.distance(b), 2 * ON_EDGE), polygon(piece)
    if area.covers(shapely.linestrings(_ends(a.toward(b, share), b.toward(a, share)))):
        return True
    return bool(area.buffer(LEVEL_TOLERANCE).covers(shapely.linestrings(_ends(a, b))))


def _ends(a: Point, b: Point) -> list[tuple[float, float]]:
    return [(a.x, a.y), (b.x, b.y)]


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
