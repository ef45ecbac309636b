"""A line at a constant distance beside another: where the scissors go."""

from __future__ import annotations

from drafting.geometry.path import Path
from drafting.geometry.point import Vector
from drafting.geometry.segment import Cubic, Line, Segment

OFFSET_TOLERANCE = 0.002
"""An offset curve is nowhere more than 0.002 cm off: a fifth of the 0.1 mm that a cut line may
miss its allowance by, at the price of two to six cubics for each curve of a trouser."""


def offset(path: Path, left: float, tolerance: float = OFFSET_TOLERANCE) -> tuple[Segment, ...]:
    """Segments beside a path, not yet joined at its corners.

    Args:
        path: The stitching line.
        left: Distance in cm to the left of travel; negative to the right.
        tolerance: Greatest error in cm of the normal distance.

    Returns:
        Segments in order. Where the path has a corner two of them do not meet; where the path
        curves tighter than the distance the offset turns back on itself, which the caller trims.
    """
    result: list[Segment] = []
    for segment in path.segments:
        if isinstance(segment, Line):
            move = segment.tangent(0) .left * left
            result.append(Line(segment.start + move, segment.end + move))
        else:
            result += _beside(segment, left, tolerance, 8)
    return tuple(result)


def _beside(c: Cubic, left: float, tolerance: float, depth: int) -> list[Segment]:
    """Hermite fit of the true offset: same direction, speed times (1 - distance × curvature)."""
    start, end = c.start + c.tangent(0).left * left, c.end + c.tangent(1).left * left
    fit = Cubic(start, start + _speed(c, 0, left) * (1 / 3), end + _speed(c, 1, left) * (-1 / 3), end)
    if depth == 0 or _error(c, fit, left) <= tolerance:
        return [fit]
    head, tail = c.split(0.5)
    return _beside(head, left, tolerance, depth - 1) + _beside(tail, left, tolerance, depth - 1)


def _speed(c: Cubic, t: float, left: float) -> Vector:
    d = c.derivative(t)
    if d.length < 1e-9:  # a handle on its end: leave along the tangent, a third of the chord
        return c.tangent(t) * (c.start.distance(c.end))
    return d * (1 - left * c.curvature(t))


def _error(c: Cubic, fit: Cubic, left: float) -> float:
    worst = 0.0
    for t in (0.2, 0.35, 0.5, 0.65, 0.8):
        true = c.at(t) + c.tangent(t).left * left
        # only the part across the line counts: sliding along it moves no scissors
        worst = max(worst, abs((fit.at(t) - true).dot(c.tangent(t).left)))
    return worst
