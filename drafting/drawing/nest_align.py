"""Where the sizes of a piece lie on one another, and what that point is called."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.geometry import Point, meet
from drafting.pattern import Edge, Piece, Role

LEVELS = ("crotch", "bust", "chest", "bicep", "hip", "waist", "knee", "hem")
"""Level lines that sizes are laid on, best first: those that the garment hangs or is balanced from.
Source: common practice, no source; crease and crotch line for trousers."""

UPRIGHT = 0.02
"""An edge is upright if it is straight and plumb within this share of its length."""
CENTRE = "centre"
"""How the names of centre seams start."""


@dataclass(frozen=True, slots=True)
class Anchor:
    """The point of a piece that all sizes share.

    Attributes:
        kind: `fold_level`, `centre_level`, `grain_level`: where an upright fold, an upright centre
            seam or the grain crosses a level line; `corner`: where two edges meet; `foot`: the
            lower end of the grain.
        names: The level (after the centre seam, where it is one), or the two edges.
        at: Where it is, in the piece's own frame.
    """

    kind: str
    names: tuple[str, ...]
    at: Point


def anchors(pieces: tuple[Piece, ...]) -> tuple[Anchor, ...]:
    """The shared point of each of these sizes of one piece.

    Where the fold, else the centre seam if either is upright, else the grain crosses the first
    level of `LEVELS`, or else any level, that all sizes have; where there is none, the corner of
    centre and waist, else the lowest corner to the left that all sizes have; at last the foot of
    the grain.
    """
    return _on_level(pieces) or _on_corner(pieces) or tuple(_foot(p) for p in pieces)


@dataclass(frozen=True, slots=True)
class _Plumb:
    """An upright line of a piece that sizes can be laid on, and what it is called."""

    kind: str
    name: str
    low: Point
    high: Point


def _on_level(pieces: tuple[Piece, ...]) -> tuple[Anchor, ...] | None:
    shared = [
        name for name, _, _ in pieces[0].levels if all(p.level(name) is not None for p in pieces)
    ]
    plumbs = _shared_plumbs(pieces)
    for name in sorted(shared, key=lambda n: LEVELS.index(n) if n in LEVELS else len(LEVELS)):
        found = [_crossing(piece, name, line) for piece, line in zip(pieces, plumbs, strict=True)]
        if all(found):
            names = (plumbs[0].name, name) if plumbs[0].name else (name,)
            return tuple(Anchor(plumbs[0].kind, names, at) for at in found if at)
    return None


def _shared_plumbs(pieces: tuple[Piece, ...]) -> list[_Plumb]:
    """The best upright line that all sizes have, of each of them."""
    choices = [_plumbs(piece) for piece in pieces]
    for first in choices[0]:
        same = [
            next((p for p in own if (p.kind, p.name) == (first.kind, first.name)), None)
            for own in choices
        ]
        if all(same):
            return [plumb for plumb in same if plumb]
    raise AssertionError("every piece has a grain")


def _plumbs(piece: Piece) -> list[_Plumb]:
    """Upright lines of a piece, the best first."""
    upright = [e for e in piece.edges if _is_upright(e)]
    return [
        *(_plumb("fold_level", "", e) for e in upright if e.role is Role.FOLD),
        *(_plumb("centre_level", e.name, e) for e in upright if e.name.startswith(CENTRE)),
        _Plumb("grain_level", "", *piece.grain),
    ]


def _is_upright(edge: Edge) -> bool:
    start, end = edge.path.start, edge.path.end
    straight = edge.path.length() < start.distance(end) * (1 + UPRIGHT)
    return straight and abs(end.x - start.x) < UPRIGHT * start.distance(end)


def _plumb(kind: str, name: str, edge: Edge) -> _Plumb:
    return _Plumb(kind, name, edge.path.start, edge.path.end)


def _crossing(piece: Piece, level: str, line: _Plumb) -> Point | None:
    ends = piece.level(level)
    if ends is None:
        return None
    return meet(line.low, line.high - line.low, ends[0], ends[1] - ends[0])


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
    first, folds = found[0], {e.name for e in pieces[0].edges if e.role is Role.FOLD}
    key = min(shared, key=lambda k: (_off_centre(k, folds), round(first[k].x + first[k].y, 6), k))
    return tuple(Anchor("corner", key, corners[key]) for corners in found)


def _off_centre(corner: tuple[str, str], folds: set[str]) -> bool:
    """Whether a corner is not that of the waist and a fold or a centre seam."""
    waist = [name.startswith("waist") for name in corner]
    centre = [name in folds or name.startswith(CENTRE) for name in corner]
    return not ((waist[0] and centre[1]) or (waist[1] and centre[0]))


def _foot(piece: Piece) -> Anchor:
    return Anchor("foot", (), piece.grain[0])
