"""Where the sizes of a piece lie on one another, and what that point is called."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.geometry import Point, Vector, crossing_with_line, meet
from drafting.pattern import Piece, Role

LEVELS = ("crotch", "bust", "chest", "bicep", "hip", "waist", "knee", "hem")
"""Level lines that sizes are laid on, best first: those that the garment hangs or is balanced from.
Source: common practice, no source; crease and crotch line for trousers."""

UPRIGHT = 0.05
"""A fold is upright if its ends stand over each other within this share of its length."""


@dataclass(frozen=True, slots=True)
class Anchor:
    """The point of a piece that all sizes share.

    Attributes:
        kind: `grain_level`, `fold_level`: where the grain or the fold crosses a level line;
            `corner`: where two edges meet.
        names: The level, or the two edges.
        at: Where it is, in the piece's own frame.
    """

    kind: str
    names: tuple[str, ...]
    at: Point


def anchors(pieces: tuple[Piece, ...]) -> tuple[Anchor, ...]:
    """The shared point of each of these sizes of one piece.

    Where the grain (on a piece cut on the fold: an upright fold) crosses the first level of
    `LEVELS`, or else any level, that all sizes have; where there is none, the lowest corner to
    the left that all sizes have; at last the lower end of the grain.
    """
    return _on_level(pieces) or _on_corner(pieces) or tuple(_foot(p) for p in pieces)


def _on_level(pieces: tuple[Piece, ...]) -> tuple[Anchor, ...] | None:
    shared = [
        name for name, _, _ in pieces[0].levels if all(p.level(name) is not None for p in pieces)
    ]
    for name in sorted(shared, key=lambda n: LEVELS.index(n) if n in LEVELS else len(LEVELS)):
        kind = "fold_level" if all(_fold(p) for p in pieces) else "grain_level"
        found = [_crossing(piece, name, folded=kind == "fold_level") for piece in pieces]
        if all(found):
            return tuple(Anchor(kind, (name,), at) for at in found if at)
    return None


def _crossing(piece: Piece, level: str, *, folded: bool) -> Point | None:
    ends = piece.level(level)
    line = _fold(piece) if folded else piece.grain
    if ends is None or line is None:
        return None
    return meet(line[0], line[1] - line[0], ends[0], ends[1] - ends[0])


def _fold(piece: Piece) -> tuple[Point, Point] | None:
    """Ends of an upright fold."""
    for edge in piece.edges:
        start, end = edge.path.start, edge.path.end
        if edge.role is Role.FOLD and abs(end.x - start.x) < UPRIGHT * start.distance(end):
            return start, end
    return None


def corner_points(piece: Piece) -> dict[tuple[str, str], Point]:
    """Every corner of the stitching line by the edges that meet there."""
    edges = piece.edges
    return {
        (edge.name, after.name): edge.path.end
        for edge, after in zip(edges, (*edges[1:], edges[0]), strict=True)
    }


def _on_corner(pieces: tuple[Piece, ...]) -> tuple[Anchor, ...] | None:
    found = [corner_points(piece) for piece in pieces]
    shared = [key for key in found[0] if all(key in corners for corners in found)]
    if not shared:
        return None
    first = found[0]
    key = min(shared, key=lambda k: (round(first[k].x + first[k].y, 6), k))
    return tuple(Anchor("corner", key, corners[key]) for corners in found)


def _foot(piece: Piece) -> Anchor:
    return Anchor("foot", (), piece.grain[0])


def level_ends(piece: Piece, at: Point) -> tuple[Point, Point] | None:
    """Where the level through a point enters and leaves the piece; None where it does not."""
    path = piece.outline
    hits = [path.segments[i].at(t) for i, t in crossing_with_line(path, at, Vector(1.0, 0.0))]
    if len(hits) < 2:
        return None
    return min(hits, key=lambda p: p.x), max(hits, key=lambda p: p.x)
