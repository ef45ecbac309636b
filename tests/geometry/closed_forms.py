"""What the tests of the geometry are held against: shapely, and curves with closed forms."""

from __future__ import annotations

import math

import numpy as np
from hypothesis import strategies as st
from shapely import LineString

from drafting.geometry import Cubic, Path, Point, Segment

FINE = 1e-7
"""Flattening error in cm of the polylines given to shapely."""


def fine_line(path: Path, tolerance: float = FINE) -> LineString:
    """The path as shapely's polyline, evaluated here and not by the code under test."""
    points = [np.array([[path.start.x, path.start.y]])]
    for s in path.segments:
        curved = isinstance(s, Cubic)
        points.append(_bernstein(s, tolerance) if curved else np.array([[s.end.x, s.end.y]]))
    return LineString(np.concatenate(points))


def _bernstein(c: Cubic, tolerance: float) -> np.ndarray:
    """Points of a curve from the textbook form; a chord is off by at most |c''| h² / 8."""
    corners = (c.start, c.leaving, c.arriving, c.end)
    bend = 6 * max(
        math.hypot(a.x - 2 * b.x + d.x, a.y - 2 * b.y + d.y)
        for a, b, d in (corners[:3], corners[1:])
    )
    count = max(8, math.ceil(math.sqrt(bend / 8 / tolerance)))
    t = np.linspace(0, 1, count + 1)[1:, None]
    weights = [math.comb(3, k) * t**k * (1 - t) ** (3 - k) for k in range(4)]
    return sum(w * np.array([[p.x, p.y]]) for w, p in zip(weights, corners, strict=True))


def parabola(a: float, half: float) -> Cubic:
    """The graph of y = a x² from -half to half: a cubic draws it exactly."""
    tip = Point(0.0, -a * half * half)
    start, end = Point(-half, a * half * half), Point(half, a * half * half)
    return Cubic(start, start.toward(tip, 2 / 3), end.toward(tip, 2 / 3), end)


def parabola_length(a: float, half: float) -> float:
    """Arc length of y = a x² from -half to half, in closed form."""
    u = 2 * a * half
    return half * math.sqrt(1 + u * u) + math.asinh(u) / (2 * a)


KAPPA = 4 / 3 * math.tan(math.pi / 8)
"""Handle of a quarter circle of radius one; the curve strays outward by 2.73e-4 at most."""


def quarter(radius: float, centre: Point | None = None) -> Cubic:
    """A quarter circle from east to north, counter-clockwise, as a cubic comes near it."""
    o = centre or Point(0, 0)
    r, k = radius, radius * KAPPA
    return Cubic(
        Point(o.x + r, o.y), Point(o.x + r, o.y + k), Point(o.x + k, o.y + r), Point(o.x, o.y + r)
    )


def arc(radius: float, degrees: float, steps: int) -> Path:
    """A circle's arc from east, counter-clockwise, of so many cubics that it is exact."""
    turn = math.radians(degrees) / steps
    k = 4 / 3 * math.tan(turn / 4) * radius

    def at(n: float) -> Point:
        return Point(radius * math.cos(n * turn), radius * math.sin(n * turn))

    def along(n: float) -> tuple[float, float]:
        return -math.sin(n * turn) * k, math.cos(n * turn) * k

    segments: list[Segment] = []
    for n in range(steps):
        p, q, (dx, dy), (ex, ey) = at(n), at(n + 1), along(n), along(n + 1)
        segments.append(Cubic(p, Point(p.x + dx, p.y + dy), Point(q.x - ex, q.y - ey), q))
    return Path(tuple(segments))


coordinates = st.integers(-5_000_000, 5_000_000).map(lambda n: n / 100_000)
points = st.builds(Point, coordinates, coordinates)
cubics = st.builds(Cubic, points, points, points, points)


@st.composite
def fair_curves(draw: st.DrawFn) -> Cubic:
    """Curves as a cutter draws them: handles ahead, turning less than a right angle at each end."""
    size = draw(st.floats(2, 60))
    turns = draw(st.floats(-80, 80)), draw(st.floats(-80, 80))
    handles = draw(st.floats(0.1, 0.6)), draw(st.floats(0.1, 0.6))
    a, b = math.radians(turns[0]), math.radians(turns[1])
    k, m = handles[0] * size, handles[1] * size
    return Cubic(
        Point(0, 0),
        Point(k * math.cos(a), k * math.sin(a)),
        Point(size - m * math.cos(b), -m * math.sin(b)),
        Point(size, 0),
    )
