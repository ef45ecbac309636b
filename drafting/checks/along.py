"""Where a mark lies along an edge, on the drawn line and on the line as it is sewn."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.geometry import Cubic, Line, Path, Point, Segment, root
from drafting.pattern import Piece, Taken

_SAMPLES = 32
"""A pattern's curves turn once or twice; 32 looks along one find the right hollow."""


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
    best = (0, 0.0, path.start.distance(point))
    for i, segment in enumerate(path.segments):
        t = _nearest_t(segment, point)
        gap = segment.at(t).distance(point)
        if gap < best[2] - 1e-9:
            best = (i, t, gap)
    return path.distance_of(best[0], best[1]), best[2]


def mouths(piece: Piece, edge: str) -> tuple[Mouth, ...]:
    """The mouths of the darts and pleats on an edge, in walking order."""
    path = piece.edge(edge).path
    found = []
    for one in piece.taken_on(edge):
        (first, gap), (last, other) = nearest(path, one.first), nearest(path, one.second)
        found.append(Mouth(one, first, last, max(gap, other)))
    return tuple(found)


def sewn_at(piece: Piece, edge: str, at: float) -> float:
    """Distance in cm along the sewn edge, for one along the drawn edge: mouths left out."""
    return at - sum(max(0.0, min(at, m.last) - m.first) for m in mouths(piece, edge))


def _nearest_t(segment: Segment, point: Point) -> float:
    if isinstance(segment, Line):
        along = segment.end - segment.start
        size = along.dot(along)
        return min(1.0, max(0.0, (point - segment.start).dot(along) / size)) if size else 0.0
    return _nearest_on_curve(segment, point)


def _nearest_on_curve(c: Cubic, point: Point) -> float:
    best = min(range(_SAMPLES + 1), key=lambda k: c.at(k / _SAMPLES).distance(point))
    low, high = max(0, best - 1) / _SAMPLES, min(_SAMPLES, best + 1) / _SAMPLES
    t = root(lambda u: (c.at(u) - point).dot(c.derivative(u)), low, high, 1e-12)
    tries = [best / _SAMPLES] if t is None else [best / _SAMPLES, t]
    return min(tries, key=lambda u: c.at(u).distance(point))
