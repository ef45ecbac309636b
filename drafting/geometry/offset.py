"""A line at a constant distance beside another: where the scissors go."""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import pairwise

from drafting.geometry.path import Path
from drafting.geometry.point import Point
from drafting.geometry.segment import Cubic, Line, Segment
from drafting.geometry.solve import root

OFFSET_TOLERANCE = 0.002
"""An offset curve is nowhere more than 0.002 cm off: a fifth of the 0.1 mm that a cut line may
miss its allowance by, at the price of two to six cubics for each curve of a trouser."""

FINEST = 6
"""Two cusps nearer to each other than 1/64 of a curve's run are not told apart: on a wild curve of
40 cm their loop is no longer than some millimetres, and the whole line is untangled in the end."""

HANDLE = 1e-6
"""Least length of a handle in cm: long enough to tell its direction among rounding errors."""

Stretch = tuple[float, float]
"""From one t of a curve to another."""


def offset(path: Path, left: float, tolerance: float = OFFSET_TOLERANCE) -> tuple[Segment, ...]:
    """Segments beside a path, not yet joined at its corners.

    Args:
        path: The stitching line.
        left: Distance in cm to the left of travel; negative to the right.
        tolerance: Greatest error in cm of the normal distance.

    Returns:
        Segments in order. Where the path has a corner two of them do not meet; where the path
        curves tighter than the distance the offset turns back on itself in a cusp, always between
        two segments, and runs against the path until the next cusp: the caller trims the loop.
    """
    return tuple(s for segment in path.segments for _, s in beside(segment, left, tolerance))


def beside(
    segment: Segment, left: float, tolerance: float = OFFSET_TOLERANCE
) -> list[tuple[bool, Segment]]:
    """The offset of one segment, as `offset`, each piece with whether it runs the same way."""
    if left == 0:
        return [(True, segment)]
    if isinstance(segment, Line):
        move = segment.tangent(0).left * left
        return [(True, Line(segment.start + move, segment.end + move))]
    result: list[tuple[bool, Segment]] = []
    for low, high in pairwise((0.0, *_cusps(segment, left), 1.0)):
        speed = _state(segment, left, (low + high) / 2)[4]
        pieces = _fitted(segment, left, low, high, tolerance, math.copysign(HANDLE, speed))
        result += [(speed > 0, s) for s in pieces]
    return result


def _keeps_its_way(c: Cubic, left: float) -> bool:
    """Whether the offset surely runs the same way all along: the radius passes no distance.

    The curve turns by cross = 18 ((1-t)² a×b + t(1-t) a×c + t² b×c), a, b, c the legs of its
    handles; its radius is the distance where distance times cross is the speed cubed.
    """
    p, q, r, s = c.start, c.leaving, c.arriving, c.end
    ax, ay, bx, by, cx, cy = q.x - p.x, q.y - p.y, r.x - q.x, r.y - q.y, s.x - r.x, s.y - r.y
    x, y = s.x - p.x, s.y - p.y
    turns = (ax * by - ay * bx, (ax * cy - ay * cx) / 2, bx * cy - by * cx)
    bends = [18 * left * turn for turn in turns]
    slowest = 3 * min(ax * x + ay * y, bx * x + by * y, cx * x + cy * y)
    fastest = 3 * max(math.hypot(ax, ay), math.hypot(bx, by), math.hypot(cx, cy))
    apart = math.hypot(x, y)
    onward = slowest > 0 and max(bends) * apart**3 < slowest**3
    return onward or min(bends) > fastest**3


def _cusps(c: Cubic, left: float) -> list[float]:
    """Where the curve's radius equals the distance."""

    def facing(t: float) -> float:
        return _state(c, left, t)[4]

    found = [0.0]
    for t, u in _tight(c, left, 0.0, 1.0, FINEST):
        if (facing(t) > 0) != (facing(u) > 0):
            cusp = root(facing, t, u, 1e-9)
            if cusp is not None and cusp > found[-1] + 1e-6:
                found.append(cusp)
    return [t for t in found[1:] if t < 1 - 1e-6]


def _tight(c: Cubic, left: float, low: float, high: float, halvings: int) -> Iterator[Stretch]:
    """Stretches in which the curve may come to be as tight as the distance, by halving."""
    if _keeps_its_way(c, left):
        return
    if halvings == 0:
        yield low, high
        return
    head, tail = c.split(0.5)
    middle = (low + high) / 2
    yield from _tight(head, left, low, middle, halvings - 1)
    yield from _tight(tail, left, middle, high, halvings - 1)


def _state(c: Cubic, left: float, t: float) -> tuple[float, float, float, float, float]:
    """Offset point, unit direction of the curve, and the offset's speed along that direction."""
    p, q, r, s = c.start, c.leaving, c.arriving, c.end
    u = 1 - t
    ax, ay, bx, by, cx, cy = q.x - p.x, q.y - p.y, r.x - q.x, r.y - q.y, s.x - r.x, s.y - r.y
    i, j, k = 3 * u * u, 6 * u * t, 3 * t * t
    dx, dy = i * ax + j * bx + k * cx, i * ay + j * by + k * cy
    speed = math.hypot(dx, dy)
    e, f, g, h = u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t
    x, y = e * p.x + f * q.x + g * r.x + h * s.x, e * p.y + f * q.y + g * r.y + h * s.y
    if speed < 1e-9:  # a handle on its end: the curve leaves along its tangent
        tangent = c.tangent(t)
        return x - tangent.y * left, y + tangent.x * left, tangent.x, tangent.y, 1e-9
    ex, ey = 6 * (u * (bx - ax) + t * (cx - bx)), 6 * (u * (by - ay) + t * (cy - by))
    dx, dy = dx / speed, dy / speed
    along = speed - left * (dx * ey - dy * ex) / speed
    return x - dy * left, y + dx * left, dx, dy, along


def _fitted(
    c: Cubic, left: float, low: float, high: float, tolerance: float, least: float, depth: int = 10
) -> list[Segment]:
    """Hermite fit of the true offset: same direction, speed times (1 - distance × curvature).

    At a cusp the speed is nought; `least`, with the sign of the way, keeps the direction told.
    """
    x, y, dx, dy, v = _state(c, left, low)
    z, w, ex, ey, u = _state(c, left, high)
    k, m = (_longer(speed * (high - low) / 3, least) for speed in (v, u))
    fit = Cubic(
        Point(x, y), Point(x + dx * k, y + dy * k), Point(z - ex * m, w - ey * m), Point(z, w)
    )
    if depth == 0 or _fits(c, fit, left, low, high, tolerance):
        return [fit]
    middle = (low + high) / 2
    return [
        *_fitted(c, left, low, middle, tolerance, least, depth - 1),
        *_fitted(c, left, middle, high, tolerance, least, depth - 1),
    ]


def _longer(handle: float, least: float) -> float:
    return least if abs(handle) < abs(least) else handle


def _fits(c: Cubic, fit: Cubic, left: float, low: float, high: float, tolerance: float) -> bool:
    for share in (0.5, 0.25, 0.75, 0.1, 0.9):
        t = low + (high - low) * share
        dx, dy = c.slope(t)
        size = math.hypot(dx, dy)
        if size < 1e-9:
            continue
        (x, y), (u, v) = c.spot(t), fit.spot(share)
        # only the part across the line counts: sliding along it moves no scissors
        if abs((v - y) * dx - (u - x) * dy - left * size) > tolerance * size:
            return False
    return True
