"""Where a mark lies along an edge, on the drawn line and on the line as it is sewn."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from drafting import geometry
from drafting.geometry import Path, Point, remembered
from drafting.pattern import Piece, Taken


@dataclass(frozen=True, slots=True)
class Mouth:
    """The mouth of a dart or a pleat on its edge.

    Attributes:
        taken: The dart or pleat.
        first: Distance in cm along the drawn edge to the first leg's end, or the first line's.
        last: The same to the second one's.
        gap: How far the worse of the two ends lies off the edge, in cm.
    """

    taken: Taken
    first: float
    last: float
    gap: float


def nearest(path: Path, point: Point) -> tuple[float, float]:
    """The place on a path that is nearest to a point.

    Returns:
        Distance in cm along the path from its start, and the gap in cm that remains.
    """
    i, t, gap = geometry.nearest(path, point)
    return path.distance_of(i, t), gap


@remembered
def _all_mouths(piece: Piece) -> dict[str, tuple[Mouth, ...]]:
    edges = dict.fromkeys(taken.edge for taken in piece.taken)
    return {edge: tuple(_mouths(piece, edge)) for edge in edges}


def _mouths(piece: Piece, edge: str) -> Iterator[Mouth]:
    path = piece.edge(edge).path
    for one in piece.taken_on(edge):
        (first, gap), (last, other) = nearest(path, one.first), nearest(path, one.second)
        yield Mouth(one, first, last, max(gap, other))


def mouths(piece: Piece, edge: str) -> tuple[Mouth, ...]:
    """The mouths of the darts and pleats on an edge, in walking order."""
    return _all_mouths(piece).get(edge, ())


def sewn_at(piece: Piece, edge: str, at: float) -> float:
    """Distance in cm along the sewn edge, for one along the drawn edge: mouths left out."""
    return at - sum(max(0.0, min(at, m.last) - m.first) for m in mouths(piece, edge))
