"""The two pieces that outlines are made of: a straight line and a cubic curve.

Both answer the same questions: where am I at t, how long am I, which way do I go. `t` runs from
0 at the start to 1 at the end. Accuracies are arguments, in cm; the defaults are a hundred times
finer than the 0.001 cm to which the house is exact.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

from drafting.geometry.point import Point, Vector
from drafting.geometry.transform import Transform

LENGTH_ACCURACY = 1e-6
"""Arc lengths are found to 1e-6 cm: seams are compared to 0.05 cm, so the sum of some dozen
segments stays far below anything that a check could see, at about three subdivisions a curve."""

_KRONROD = (
    (0.9914553711208126, 0.0229353220105292),
    (0.8648644233597691, 0.1047900103222502),
    (0.5860872354676911, 0.1690047266392679),
    (0.2077849550078985, 0.2044329400752989),
)
"""Nodes and weights of the fifteen-point Kronrod rule that are not the seven-point rule's own."""

_GAUSS = (
    (0.9491079123427585, 0.0630920926299786, 0.1294849661688697),
    (0.7415311855993944, 0.1406532597159259, 0.2797053914892767),
    (0.4058451513773972, 0.1903505780647854, 0.3818300505051189),
)
_GAUSS_MIDDLE = 0.2094821410847278, 0.4179591836734694
"""Nodes of the seven-point Gauss-Legendre rule, each with its weight in the fifteen-point rule and
in its own. Source: Piessens and others, "QUADPACK" (1983), from memory."""


Box = tuple[float, float, float, float]
"""Least x, least y, greatest x, greatest y."""

_Slopes = tuple[float, float, float, float, float, float]
"""A curve's derivative as polynomials: ax t² + bx t + cx, ay t² + by t + cy."""


@dataclass(slots=True, init=False, unsafe_hash=True)
class Line:
    """A straight stroke from start to end."""

    start: Final[Point]
    end: Final[Point]

    def __init__(self, start: Point, end: Point) -> None:
        self.start = start
        self.end = end

    def at(self, t: float) -> Point:
        """The point at t."""
        return self.start.toward(self.end, t)

    def tangent(self, t: float) -> Vector:  # noqa: ARG002 - the same everywhere on a line
        """Unit direction of travel; the zero vector on a line without length."""
        return _unit_or_zero(self.end - self.start)

    def length(self, accuracy: float = LENGTH_ACCURACY) -> float:  # noqa: ARG002
        """Length in cm."""
        return self.start.distance(self.end)

    def parameter_at(self, distance: float, size: float | None = None) -> float:
        """Parameter t at a distance from the start, clamped to 0..1; `size` is the length."""
        size = self.length() if size is None else size
        return 0.0 if size == 0 else min(1.0, max(0.0, distance / size))

    def split(self, t: float) -> tuple[Line, Line]:
        """The parts before and after t."""
        middle = self.at(t)
        return Line(self.start, middle), Line(middle, self.end)

    def reversed(self) -> Line:
        """The same stroke drawn the other way."""
        return Line(self.end, self.start)

    def transformed(self, by: Transform) -> Line:
        """The stroke's image."""
        return Line(by.point(self.start), by.point(self.end))

    def bounds(self) -> Box:
        """Least x, least y, greatest x, greatest y."""
        (a, b), (c, d) = (self.start.x, self.start.y), (self.end.x, self.end.y)
        left, right = (a, c) if a < c else (c, a)
        return (left, b, right, d) if b < d else (left, d, right, b)

    def area(self) -> float:
        """Signed area swept from the origin; summed over a loop, positive counter-clockwise."""
        return (self.start.x * self.end.y - self.end.x * self.start.y) / 2

    def flattened(self, tolerance: float) -> tuple[Point, ...]:  # noqa: ARG002
        """Points after the start, up to and with the end."""
        return (self.end,)

    def coordinates(self, tolerance: float) -> list[tuple[float, float]]:  # noqa: ARG002
        """The same as bare numbers."""
        return [(self.end.x, self.end.y)]


@dataclass(slots=True, init=False, unsafe_hash=True)
class Cubic:
    """A cubic Bézier curve: start, the handle leaving it, the handle arriving, end."""

    start: Final[Point]
    leaving: Final[Point]
    arriving: Final[Point]
    end: Final[Point]

    def __init__(self, start: Point, leaving: Point, arriving: Point, end: Point) -> None:
        self.start = start
        self.leaving = leaving
        self.arriving = arriving
        self.end = end

    def at(self, t: float) -> Point:
        """The point at t."""
        return Point(*self.spot(t))

    def spot(self, t: float) -> tuple[float, float]:
        """The point at t as bare numbers, for loops over many."""
        u = 1 - t
        a, b, c, d = u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t
        p, q, r, s = self.start, self.leaving, self.arriving, self.end
        return a * p.x + b * q.x + c * r.x + d * s.x, a * p.y + b * q.y + c * r.y + d * s.y

    def derivative(self, t: float) -> Vector:
        """d(point)/dt."""
        x, y = self.slope(t)
        return Vector(x, y)

    def slope(self, t: float) -> tuple[float, float]:
        """The same as bare numbers."""
        u = 1 - t
        a, b, c = 3 * u * u, 6 * u * t, 3 * t * t
        p, q, r, s = self.start, self.leaving, self.arriving, self.end
        return (
            a * (q.x - p.x) + b * (r.x - q.x) + c * (s.x - r.x),
            a * (q.y - p.y) + b * (r.y - q.y) + c * (s.y - r.y),
        )

    def second_derivative(self, t: float) -> Vector:
        """d²(point)/dt²."""
        bend_in = (self.arriving - self.leaving) - (self.leaving - self.start)
        bend_out = (self.end - self.arriving) - (self.arriving - self.leaving)
        return bend_in * (6 * (1 - t)) + bend_out * (6 * t)

    def tangent(self, t: float) -> Vector:
        """Unit direction of travel, right also where a handle lies on its end."""
        x, y = self.slope(t)
        size = math.hypot(x, y)
        if size > 1e-12:
            return Vector(x / size, y / size)
        ahead = self.arriving - self.start if t < 0.5 else self.end - self.leaving
        return _unit_or_zero(ahead if ahead.length > 1e-12 else self.end - self.start)

    def curvature(self, t: float) -> float:
        """Signed curvature in 1/cm, positive where the curve turns left."""
        d, dd = self.derivative(t), self.second_derivative(t)
        speed = d.length
        return 0.0 if speed < 1e-12 else d.cross(dd) / speed**3

    def length(self, accuracy: float = LENGTH_ACCURACY) -> float:
        """Arc length in cm, to `accuracy`."""
        return _arc(self._slopes(), 0.0, 1.0, accuracy, 12)

    def _slopes(self) -> _Slopes:
        p, q, r, s = self.start, self.leaving, self.arriving, self.end
        ax, ay, bx, by, cx, cy = q.x - p.x, q.y - p.y, r.x - q.x, r.y - q.y, s.x - r.x, s.y - r.y
        return (
            *(3 * (ax - 2 * bx + cx), 6 * (bx - ax), 3 * ax),
            *(3 * (ay - 2 * by + cy), 6 * (by - ay), 3 * ay),
        )

    def parameter_at(self, distance: float, size: float | None = None) -> float:
        """Parameter t at a distance in cm from the start, clamped to 0..1 (Newton, bracketed).

        Args:
            distance: From the start.
            size: The length of the curve, where it is known.
        """
        slopes = self._slopes()
        whole = _arc(slopes, 0.0, 1.0, LENGTH_ACCURACY, 12) if size is None else size
        if distance <= 0 or whole == 0:
            return 0.0
        if distance >= whole:
            return 1.0
        low, high, t = 0.0, 1.0, distance / whole
        short = _arc(slopes, 0.0, t, LENGTH_ACCURACY / 10, 12) - distance
        for _ in range(60):
            if abs(short) < LENGTH_ACCURACY / 10:
                break
            low, high = (low, t) if short > 0 else (t, high)
            speed = math.hypot(*self.slope(t))
            step = t - short / speed if speed > 0 else low
            step = step if low < step < high else (low + high) / 2
            short += _arc(slopes, t, step, LENGTH_ACCURACY / 100, 12)
            t = step
        return t

    def split(self, t: float) -> tuple[Cubic, Cubic]:
        """The parts before and after t (de Casteljau)."""
        a = self.start.toward(self.leaving, t)
        b = self.leaving.toward(self.arriving, t)
        c = self.arriving.toward(self.end, t)
        d, e = a.toward(b, t), b.toward(c, t)
        m = d.toward(e, t)
        return Cubic(self.start, a, d, m), Cubic(m, e, c, self.end)

    def reversed(self) -> Cubic:
        """The same curve drawn the other way."""
        return Cubic(self.end, self.arriving, self.leaving, self.start)

    def transformed(self, by: Transform) -> Cubic:
        """The curve's image."""
        return Cubic(
            by.point(self.start),
            by.point(self.leaving),
            by.point(self.arriving),
            by.point(self.end),
        )

    def bounds(self) -> Box:
        """Least x, least y, greatest x, greatest y, exact."""
        xs = _extent(self.start.x, self.leaving.x, self.arriving.x, self.end.x)
        ys = _extent(self.start.y, self.leaving.y, self.arriving.y, self.end.y)
        return xs[0], ys[0], xs[1], ys[1]

    def area(self) -> float:
        """Signed area swept from the origin, exact (Green's theorem)."""
        p, q, r, s = self.start, self.leaving, self.arriving, self.end

        def cross(m: Point, n: Point) -> float:
            return m.x * n.y - m.y * n.x

        return (
            6 * cross(p, q)
            + 3 * cross(p, r)
            + cross(p, s)
            + 3 * cross(q, r)
            + 3 * cross(q, s)
            + 6 * cross(r, s)
        ) / 20

    def flattened(self, tolerance: float) -> tuple[Point, ...]:
        """Points after the start, up to and with the end, never farther off than `tolerance`."""
        return (*(Point(x, y) for x, y in self.coordinates(tolerance)[:-1]), self.end)

    def coordinates(self, tolerance: float) -> list[tuple[float, float]]:
        """The same as bare numbers, which is what a polygon is made of; several times as fast."""
        p, q, r, s = self.start, self.leaving, self.arriving, self.end
        bend = max(
            math.hypot(r.x - 2 * q.x + p.x, r.y - 2 * q.y + p.y),
            math.hypot(s.x - 2 * r.x + q.x, s.y - 2 * r.y + q.y),
        )
        count = max(1, math.ceil(math.sqrt(0.75 * bend / tolerance)))
        ax, bx, cx = s.x - 3 * (r.x - q.x) - p.x, 3 * (r.x - 2 * q.x + p.x), 3 * (q.x - p.x)
        ay, by, cy = s.y - 3 * (r.y - q.y) - p.y, 3 * (r.y - 2 * q.y + p.y), 3 * (q.y - p.y)
        found: list[tuple[float, float]] = []
        for i in range(1, count):
            t = i / count
            found.append((((ax * t + bx) * t + cx) * t + p.x, ((ay * t + by) * t + cy) * t + p.y))
        found.append((s.x, s.y))
        return found


Segment = Line | Cubic


def quadratic(start: Point, control: Point, end: Point) -> Cubic:
    """A parabola's arc, raised to a cubic."""
    return Cubic(start, start.toward(control, 2 / 3), end.toward(control, 2 / 3), end)


def _arc(slopes: _Slopes, t0: float, t1: float, accuracy: float, depth: int) -> float:
    """Length between two parameters; halved where the two rules show that it must be.

    The finer rule errs by far less than the two differ: by less than (200 times the difference)
    to the power 1.5 (QUADPACK).
    """
    coarse, fine = _both_rules(slopes, t0, t1)
    if (200 * abs(fine - coarse)) ** 1.5 <= accuracy or depth == 0:
        return fine
    middle = (t0 + t1) / 2
    return _arc(slopes, t0, middle, accuracy / 2, depth - 1) + _arc(
        slopes, middle, t1, accuracy / 2, depth - 1
    )


def _both_rules(slopes: _Slopes, t0: float, t1: float) -> tuple[float, float]:
    """Length between two parameters by seven and by fifteen points."""
    ax, bx, cx, ay, by, cy = slopes
    centre, half = (t0 + t1) / 2, (t1 - t0) / 2
    hypot = math.hypot
    at = hypot((ax * centre + bx) * centre + cx, (ay * centre + by) * centre + cy)
    fine, coarse = _GAUSS_MIDDLE[0] * at, _GAUSS_MIDDLE[1] * at
    for node, weight, own in _GAUSS:
        t, u = centre - half * node, centre + half * node
        at = hypot((ax * t + bx) * t + cx, (ay * t + by) * t + cy) + hypot(
            (ax * u + bx) * u + cx, (ay * u + by) * u + cy
        )
        fine += weight * at
        coarse += own * at
    for node, weight in _KRONROD:
        t, u = centre - half * node, centre + half * node
        fine += weight * (
            hypot((ax * t + bx) * t + cx, (ay * t + by) * t + cy)
            + hypot((ax * u + bx) * u + cx, (ay * u + by) * u + cy)
        )
    return coarse * half, fine * half


def _unit_or_zero(v: Vector) -> Vector:
    size = math.hypot(v.x, v.y)
    return Vector(v.x / size, v.y / size) if size > 1e-12 else Vector(0.0, 0.0)


def _extent(a: float, b: float, c: float, d: float) -> tuple[float, float]:
    low, high = min(a, d), max(a, d)
    if low <= min(b, c) and max(b, c) <= high:
        return low, high
    # roots of the derivative: (b-a)(1-t)² + 2(c-b)t(1-t) + (d-c)t²
    i, j, k = b - a, c - b, d - c
    for t in quadratic_roots(i - 2 * j + k, 2 * (j - i), i):
        if 0 < t < 1:
            u = 1 - t
            value = u * u * u * a + 3 * u * u * t * b + 3 * u * t * t * c + t * t * t * d
            low, high = min(low, value), max(high, value)
    return low, high


def quadratic_roots(a: float, b: float, c: float) -> tuple[float, ...]:
    """Real roots of a t² + b t + c, in no order; none where all t would do."""
    if abs(a) < 1e-12 * (abs(b) + abs(c)):
        return () if b == 0 else (-c / b,)
    inside = b * b - 4 * a * c
    if a == 0 or inside < 0:
        return ()
    q = -(b + math.copysign(math.sqrt(inside), b)) / 2
    return (q / a,) if q == 0 else (q / a, c / q)
