"""The tape: measures the drawn lines of the net pieces, and nothing else."""

from __future__ import annotations

from itertools import pairwise
from math import fsum
from typing import assert_never

import shapely

from drafting.checks.outline import around, at, held, ring, wedges
from drafting.geometry import Point, Vector, crossing_with_line, meet, remembered
from drafting.pattern import (
    AngleBetween,
    CombinedLength,
    CornerDepth,
    CrossShare,
    EdgeLength,
    Girth,
    LevelDepth,
    Measuring,
    Number,
    Pattern,
    Piece,
    Taken,
)

_INWARD = 1e-5
"""Where a level line lies on a straight hem, the tape is laid this many cm beside it."""


Section = tuple[float, float]
"""From one x to another."""


def measure(measuring: Measuring, pattern: Pattern) -> float:
    """Lay the tape as told.

    Returns:
        Centimetres, or degrees for angles.

    Raises:
        KeyError: A piece, edge or level is named that the pattern does not have.
        ValueError: An angle is asked for between edges that do not follow each other, or a
            level line that no outline reaches.
    """
    piece = pattern.piece
    match measuring:
        case Girth(level, pieces, copies, under, less):
            shown = fsum(_shows(pattern, name, pieces[0], level) for name in under)
            found = copies * (shown + fsum(width(piece(name), level) for name in pieces)) - less
        case EdgeLength(name, edges, copies):
            found = copies * fsum(piece(name).sewn_length(edge) for edge in edges)
        case CombinedLength(parts, around):
            found = measure(around, pattern) if around else 0.0
            found += fsum(factor * measure(part, pattern) for factor, part in parts)
        case AngleBetween(corners):
            found = fsum(corner_angle(piece(name), ends, starts) for name, ends, starts in corners)
        case CrossShare(name, level):
            found = off_the_crease(piece(name), level)
        case LevelDepth(name, upper, lower):
            found = _height(piece(name), upper) - _height(piece(name), lower)
        case CornerDepth(name, edge, level, at_start):
            path = piece(name).edge(edge).path
            found = (path.start if at_start else path.end).y - _height(piece(name), level)
        case Number(value):
            found = value
        case _:
            assert_never(measuring)
    return found


@remembered
def finished_measurements(pattern: Pattern) -> tuple[tuple[str, float], ...]:
    """Name and drawn value (cm or degrees) of each finished measurement, in the pattern's order."""
    return tuple((w.name, measure(w.measuring, pattern)) for w in pattern.finished_measurements)


@remembered
def width(piece: Piece, level: str) -> float:
    """Width in cm inside the stitching line at a level, less what darts and pleats take there."""
    stops = _stops(piece, level)
    whole, left, right = _inside(piece, stops), stops[0], stops[-1]
    if not any(_reaches(taken, left.y, right.y) for taken in piece.taken):
        return whole
    inside = shapely.linestrings([(left.x, left.y), (right.x, right.y)])
    taken = shapely.intersection(inside, wedges(piece.taken))
    return whole - float(shapely.length(taken).sum())


def _reaches(taken: Taken, one: float, other: float) -> bool:
    """Whether a dart or a pleat lies anywhere between two heights."""
    heights = [y for _, y in around(taken)]
    return min(heights) <= max(one, other) and max(heights) >= min(one, other)


@remembered
def _shows(pattern: Pattern, name: str, over: str, level: str) -> float:
    """Width in cm that shows of a piece beside the one over it, at a level of that one."""
    top, patch = pattern.piece(over), pattern.piece(name)
    y = _height(top, level)
    shown = _sections(patch, y)
    if not shown:
        return 0.0
    hidden = _sections(top, y)
    stops = sorted({x for section in (*shown, *hidden) for x in section})
    return fsum(
        b - a
        for a, b in pairwise(stops)
        if _covered(shown, (a + b) / 2) and not _covered(hidden, (a + b) / 2)
    )


def _covered(sections: list[Section], x: float) -> bool:
    return any(left < x < right for left, right in sections)


def _sections(piece: Piece, y: float) -> list[Section]:
    """From where to where a level line lies inside the stitching line or along it.

    Just above the line and just below it, so that what lies on a straight hem is found.
    """
    _, low, _, high = held(piece).ring.bounds
    if not low <= y <= high:
        return []
    corners = shapely.get_coordinates(held(piece).ring).tolist()
    over, under = [], []
    for (x, v), (u, w) in pairwise(corners):
        if (v > y) != (w > y):
            over.append(x + (u - x) * (y - v) / (w - v))
        if (v < y) != (w < y):
            under.append(x + (u - x) * (y - v) / (w - v))
    return [
        (ends[k], ends[k + 1])
        for ends in (sorted(over), sorted(under))
        for k in range(0, len(ends), 2)
    ]


def span(piece: Piece, level: str) -> tuple[Point, Point]:
    """Where the level's line enters and leaves the stitching line: the outermost crossings.

    Raises:
        KeyError: The piece has no such level.
        ValueError: The line does not cross the stitching line twice.
    """
    found = _stops(piece, level)
    return found[0], found[-1]


@remembered
def _stops(piece: Piece, level: str) -> list[Point]:
    """Every crossing of the level's line with the stitching line, from left to right."""
    line = _level(piece, level)
    along = (line[1] - line[0]).unit
    for beside in (0.0, _INWARD, -_INWARD):
        found = _crossings(piece, line[0] + along.left * beside, along)
        if len(found) > 1:
            return found
    raise ValueError(f"the {level} line does not cross {piece.name}")


def corner_angle(piece: Piece, ends: str, starts: str) -> float:
    """Angle in degrees inside the piece where one edge ends and the next one starts.

    Raises:
        KeyError: No such edge.
        ValueError: The second edge does not start where the first one ends.
    """
    first, second = piece.edge(ends).path, piece.edge(starts).path
    if first.end.distance(second.start) > 1e-3:
        raise ValueError(f"{starts} of {piece.name} does not start where {ends} ends")
    came, goes = first.end_tangent, second.start_tangent
    turned = came.angle_to(goes)
    return 180.0 - turned if came.cross(goes) >= 0 else 180.0 + turned


def off_the_crease(piece: Piece, level: str) -> float:
    """Distance in cm along a level between its middle and the piece's grain line."""
    left, right = span(piece, level)
    low, high = piece.grain
    crossing = meet(left, right - left, low, high - low)
    if crossing is None:
        raise ValueError(f"the grain of {piece.name} does not cross its {level} line")
    return left.toward(right, 0.5).distance(crossing)


def _crossings(piece: Piece, on: Point, along: Vector) -> list[Point]:
    path = ring(piece)
    found = [path.segments[i].at(t) for i, t in crossing_with_line(path, on, along)]
    found.sort(key=lambda p: (p - on).dot(along))
    return [p for k, p in enumerate(found) if k == 0 or p.distance(found[k - 1]) > _INWARD * 10]


def _inside(piece: Piece, stops: list[Point]) -> float:
    """Length of the stroke from crossing to crossing, without what lies outside the piece."""
    left, right = stops[0], stops[-1]
    if len(stops) == 2 or _along_an_edge(piece, left, right):
        return left.distance(right)
    area = held(piece).area.buffer(0.01)
    inside = (a.distance(b) for a, b in pairwise(stops) if area.covers(at(a.toward(b, 0.5))))
    return sum(inside)


def _along_an_edge(piece: Piece, left: Point, right: Point) -> bool:
    """Whether a level runs from end to end of an edge, as at a hem, which may be bowed."""
    ends = [(e.path.start, e.path.end) for e in piece.edges]
    return any(
        a.distance(left) < AT_AN_END and b.distance(right) < AT_AN_END
        for one, two in ends
        for a, b in ((one, two), (two, one))
    )


AT_AN_END = 0.01
"""cm; a level that comes so near to both ends of an edge lies along it."""


def _level(piece: Piece, level: str) -> tuple[Point, Point]:
    line = piece.level(level)
    if line is None:
        raise KeyError(f"{piece.name} has no {level} line")
    return line


def _height(piece: Piece, level: str) -> float:
    left, right = _level(piece, level)
    return (left.y + right.y) / 2
