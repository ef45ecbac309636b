"""From drafted lines to pieces: level lines, turning over, lines to lengthen at.

Source: lines to lengthen square to the grain, the grain plumb: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from drafting.errors import ConstructionError
from drafting.geometry import (
    IDENTITY,
    Path,
    Point,
    Transform,
    Vector,
    crossing_with_line,
    mirror,
)
from drafting.pattern import Edge, Mark, Notch, Piece

_NUDGE = 1e-4
"""A line laid exactly on a corner is read this far (cm) inside the piece."""


def across(outline: Path, height: float) -> tuple[Point, Point]:
    """Left and right end of a horizontal line inside a closed outline, at a height in cm.

    Raises:
        ConstructionError: The outline does not reach that height.
    """
    hits = crossing_with_line(outline, Point(0, height), Vector(1, 0))
    xs = [outline.segments[i].at(t).x for i, t in hits]
    if len(xs) < 2:
        raise ConstructionError("A level line misses the piece.", where="level line")
    return Point(min(xs), height), Point(max(xs), height)


def level_lines(
    outline: Path, heights: tuple[tuple[str, float], ...]
) -> tuple[tuple[str, Point, Point], ...]:
    """Named level lines clipped to an outline, at heights in cm; only those that it reaches."""
    _, bottom, _, top = outline.bounds()
    low, high = bottom + _NUDGE, top - _NUDGE
    inside = [(name, min(max(y, low), high)) for name, y in heights if bottom <= y <= top]
    return tuple((name, *across(outline, y)) for name, y in inside)


def lengthen_lines(outline: Path, heights: tuple[float, ...]) -> tuple[tuple[Point, Point], ...]:
    """Lines square to the grain at which a piece may be lengthened or shortened."""
    _, bottom, _, top = outline.bounds()
    return tuple(across(outline, y) for y in heights if bottom < y < top)


def plumb_grain(outline: Path, x: float | None = None) -> tuple[Point, Point]:
    """A grain arrow through the widest stretch of a piece, plumb, over three fifths of it.

    Args:
        outline: The closed stitching line, cm.
        x: Where it stands; by default in the middle of the piece.
    """
    left, _, right, _ = outline.bounds()
    at = (left + right) / 2 if x is None else x
    hits = crossing_with_line(outline, Point(at, 0), Vector(0, 1))
    found = sorted(outline.segments[i].at(t).y for i, t in hits)
    # a line through a joint meets both segments there
    heights = [y for n, y in enumerate(found) if n == 0 or y - found[n - 1] > _NUDGE]
    low, high = max(zip(heights[::2], heights[1::2], strict=False), key=lambda s: s[1] - s[0])
    return Point(at, low + 0.2 * (high - low)), Point(at, high - 0.2 * (high - low))


def turned_over(piece: Piece) -> Piece:
    """The piece seen from its other side, walked counter-clockwise again."""
    return moved(piece, MIRROR, back=True)


MIRROR = mirror(Point(0, 0), Vector(0, 1))


def walked_back(piece: Piece) -> Piece:
    """The same piece, its outline walked the other way round."""
    return moved(piece, IDENTITY, back=True)


def moved(piece: Piece, by: Transform, *, back: bool = False) -> Piece:
    """The piece's image, drawn in the same order: a move that mirrors leaves it clockwise.

    Notches keep their distance along their edges, which is right where lengths stay.

    Args:
        piece: The piece.
        by: The move.
        back: Whether the outline is walked the other way round.
    """
    over, way = by.turns_over, -1 if back else 1
    return replace(
        piece,
        edges=tuple(_edge(e, by, back=back) for e in piece.edges[::way]),
        darts=tuple(d.transformed(by, swap=back) for d in piece.darts[::way]),
        pleats=tuple(p.transformed(by, swap=back) for p in piece.pleats[::way]),
        notches=_from_the_other_end(piece) if back else piece.notches,
        grain=_both(piece.grain, by),
        levels=tuple((name, *_across((a, b), by, over=over)) for name, a, b in piece.levels),
        lengthen=tuple(_across(ends, by, over=over) for ends in piece.lengthen),
        marks=tuple(Mark(m.kind, m.path.transformed(by)) for m in piece.marks),
    )


def _edge(edge: Edge, by: Transform, *, back: bool) -> Edge:
    path = edge.path.transformed(by)
    return Edge(edge.name, path.reversed() if back else path, edge.role, edge.kind)


def _from_the_other_end(piece: Piece) -> tuple[Notch, ...]:
    """The notches of a piece whose edges are walked the other way."""
    return tuple(
        Notch(n.edge, piece.edge(n.edge).path.length() - n.at, n.count, n.match)
        for n in piece.notches
    )


def counter_clockwise(piece: Piece) -> Piece:
    """The piece with its outline walked as a pattern's must be, whichever way it was drawn."""
    return piece if piece.outline.area() > 0 else walked_back(piece)


def _both(ends: tuple[Point, Point], by: Transform) -> tuple[Point, Point]:
    return by.point(ends[0]), by.point(ends[1])


def _across(ends: tuple[Point, Point], by: Transform, *, over: bool) -> tuple[Point, Point]:
    """The image of a line, told from left to right again where the move turns it over."""
    left, right = _both(ends, by)
    return (right, left) if over else (left, right)
