"""The point of a line that lies nearest to another point."""

from __future__ import annotations

import math

from drafting.geometry.path import Path
from drafting.geometry.point import Point
from drafting.geometry.segment import Box, Cubic, Segment

ON_END = 1e-9
"""A point this near to the end of a curve (cm) lies on it."""


def nearest(path: Path, p: Point) -> tuple[int, float, float]:
    """Segment number, t and distance in cm of the point of a path nearest to p."""
    best = (0, 0.0, math.inf)
    for i, (segment, box) in enumerate(zip(path.segments, path.boxes(), strict=True)):
        if _off(box, p) < best[2]:
            t = _nearest(segment, p)
            away = segment.at(t).distance(p)
            if away < best[2]:
                best = (i, t, away)
    return best


def _off(box: Box, p: Point) -> float:
    """How far a point lies off a box at least."""
    left, low, right, top = box
    return max(left - p.x, p.x - right, low - p.y, p.y - top)


def _nearest(s: Segment, p: Point) -> float:
    if isinstance(s, Cubic):
        return _nearest_on_curve(s, p)
    along = s.end - s.start
    size = along.dot(along)
    return 0.0 if size == 0 else min(1.0, max(0.0, (p - s.start).dot(along) / size))


def _nearest_on_curve(c: Cubic, p: Point, steps: int = 16) -> float:
    """The best of some even steps, then golden section between its neighbours and Newton."""
    ends = c.start.distance(p), c.end.distance(p)
    if min(ends) < ON_END:
        return float(ends[1] < ends[0])
    there = p.x, p.y
    t = min((k / steps for k in range(steps + 1)), key=lambda k: math.dist(c.spot(k), there))
    low, high = max(0.0, t - 1 / steps), min(1.0, t + 1 / steps)
    for _ in range(30):
        d, dd, gap = c.derivative(t), c.second_derivative(t), c.at(t) - p
        slope, bend = gap.dot(d), d.dot(d) + gap.dot(dd)
        low, high = (low, t) if slope > 0 else (t, high)
        step = t - slope / bend if bend > 0 else (low + high) / 2
        step = step if low <= step <= high else (low + high) / 2
        if abs(step - t) < 1e-14:
            break
        t = step
    return t


def distance_to(path: Path, p: Point) -> float:
    """Distance in cm from a point to the nearest point of a path."""
    return nearest(path, p)[2]
