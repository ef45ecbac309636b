"""Where a line crosses itself."""

from __future__ import annotations

from collections.abc import Sequence

from drafting.geometry.crossing import segment_crossings
from drafting.geometry.segment import Line, Segment

_JOINT = 1e-5
"""Two neighbours share their joint; a crossing this near to it (cm) is the joint itself."""

SelfCrossing = tuple[tuple[int, float], tuple[int, float]]
"""Segment number and t of the first passage through a point, and of the second."""


def self_crossing(segments: Sequence[Segment]) -> SelfCrossing | None:
    """The first place where a closed line of segments crosses or touches itself; None if nowhere.

    A curve that crosses itself within one segment is not looked for.
    """
    boxes = [s.bounds() for s in segments]
    for i, (left, low, right, top) in enumerate(boxes):
        near = [
            j
            for j, (a, b, c, d) in enumerate(boxes[i + 1 :], i + 1)
            if a <= right and left <= c and b <= top and low <= d
        ]
        found = [((i, t), (j, u)) for j in near for t, u in _between(segments, i, j)]
        if found:
            return min(found, key=lambda hit: hit[0][1])
    return None


def _between(segments: Sequence[Segment], i: int, j: int) -> list[tuple[float, float]]:
    a, b = segments[i], segments[j]
    joints = []
    if j == i + 1:
        joints.append(a.end)
    if i == 0 and j == len(segments) - 1:
        joints.append(a.start)
    if joints and _part_for_good(a, b, first=j == i + 1):
        return []
    pairs = segment_crossings(a, b)
    return [(t, u) for t, u in pairs if all(a.at(t).distance(p) > _JOINT for p in joints)]


def _part_for_good(a: Segment, b: Segment, *, first: bool) -> bool:
    """Whether two neighbours cannot meet again: two strokes, or a smooth joint."""
    if isinstance(a, Line) and isinstance(b, Line):
        return True
    one, two = (a.tangent(1), b.tangent(0)) if first else (b.tangent(1), a.tangent(0))
    return one.dot(two) > 0.94
