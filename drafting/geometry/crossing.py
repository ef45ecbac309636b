"""Where lines meet."""

from __future__ import annotations

import math
from dataclasses import dataclass

from drafting.geometry.path import Path
from drafting.geometry.point import Point, Vector
from drafting.geometry.segment import Cubic, Line, Segment


@dataclass(frozen=True, slots=True)
class Crossing:
    """A common point of two paths: where it is, and segment number and t on each."""

    point: Point
    first: tuple[int, float]
    second: tuple[int, float]


def meet(p: Point, along: Vector, q: Point, toward: Vector) -> Point | None:
    """Where two endless straight lines meet; None where they are parallel."""
    turn = along.cross(toward)
    if abs(turn) < 1e-12 * along.length * toward.length:
        return None
    return p + along * ((q - p).cross(toward) / turn)


def foot(p: Point, on: Point, along: Vector) -> Point:
    """The foot of the perpendicular from p on the line through `on`."""
    u = along.unit
    return on + u * (p - on).dot(u)


def crossings(first: Path, second: Path, accuracy: float = 1e-7) -> tuple[Crossing, ...]:
    """All points that two paths have in common, in the order of the first.

    Args:
        first: A path.
        second: Another path. Stretches on top of each other are not reported as crossings.
        accuracy: How near the two curves must come, in cm.
    """
    found: list[Crossing] = []
    boxes = [s.bounds() for s in second.segments]
    for i, a in enumerate(first.segments):
        box = a.bounds()
        for j, b in enumerate(second.segments):
            if not _apart(box, boxes[j]):
                found += [
                    Crossing(a.at(t), (i, t), (j, u)) for t, u in _segment_crossings(a, b, accuracy)
                ]
    found.sort(key=lambda c: c.first)
    return tuple(_distinct(found))


def _distinct(found: list[Crossing]) -> list[Crossing]:
    kept: list[Crossing] = []
    for crossing in found:
        if not any(crossing.point.distance(k.point) < 1e-5 for k in kept):
            kept.append(crossing)
    return kept


def crossing_with_line(path: Path, on: Point, along: Vector) -> tuple[tuple[int, float], ...]:
    """Segment number and t wherever a path crosses an endless straight line."""
    found: list[tuple[int, float]] = []
    normal = along.unit.left
    for i, s in enumerate(path.segments):
        points = (s.start, s.end) if isinstance(s, Line) else (s.start, s.leaving, s.arriving, s.end)
        heights = tuple((p - on).dot(normal) for p in points)
        found += [(i, t) for t in _roots(heights)]
    return tuple(found)


def _roots(heights: tuple[float, ...]) -> list[float]:
    """Parameters in 0..1 where a Bernstein polynomial is zero, by halving its hull."""
    found: list[float] = []
    stack = [(heights, 0.0, 1.0)]
    while stack:
        h, t0, t1 = stack.pop()
        if min(h) > 1e-9 or max(h) < -1e-9:
            continue
        if len(h) == 2 and h[0] != h[1]:
            found.append(min(t1, max(t0, t0 + (t1 - t0) * h[0] / (h[0] - h[1]))))
        elif t1 - t0 < 1e-9:
            found.append((t0 + t1) / 2)
        elif max(h) - min(h) > 1e-12:
            low, high = _halves(h)
            middle = (t0 + t1) / 2
            stack += [(low, t0, middle), (high, middle, t1)]
    found.sort()
    return [t for k, t in enumerate(found) if k == 0 or t - found[k - 1] > 1e-7]


def _halves(h: tuple[float, ...]) -> tuple[tuple[float, ...], tuple[float, ...]]:
    rows = [h]
    while len(rows[-1]) > 1:
        r = rows[-1]
        rows.append(tuple((a + b) / 2 for a, b in zip(r, r[1:], strict=False)))
    return tuple(r[0] for r in rows), tuple(r[-1] for r in reversed(rows))


def _apart(a: tuple[float, ...], b: tuple[float, ...], slack: float = 1e-9) -> bool:
    return (
        a[2] < b[0] - slack or b[2] < a[0] - slack or a[3] < b[1] - slack or b[3] < a[1] - slack
    )


def _segment_crossings(a: Segment, b: Segment, accuracy: float) -> list[tuple[float, float]]:
    if isinstance(b, Line):
        return _with_stroke(a, b)
    if isinstance(a, Line):
        return [(t, u) for u, t in _with_stroke(b, a)]
    return _curve_crossings(a, b, accuracy)


def _with_stroke(a: Segment, b: Line) -> list[tuple[float, float]]:
    """Crossings of any segment with a stroke, as (t on the segment, t on the stroke)."""
    along = b.end - b.start
    size = along.dot(along)
    if size == 0:
        return []
    found = []
    for _, t in crossing_with_line(Path((a,)), b.start, along):
        u = (a.at(t) - b.start).dot(along) / size
        if -1e-9 <= u <= 1 + 1e-9:
            found.append((t, min(1.0, max(0.0, u))))
    return found


def _curve_crossings(a: Cubic, b: Cubic, accuracy: float) -> list[tuple[float, float]]:
    """Halve both curves until their boxes are small, then let Newton finish."""
    found: list[tuple[float, float]] = []
    stack = [(a, 0.0, 1.0, b, 0.0, 1.0)]
    for _ in range(4000):
        if not stack:
            break
        s, s0, s1, r, r0, r1 = stack.pop()
        if _apart(s.bounds(), r.bounds()):
            continue
        if s1 - s0 < 1e-3 and r1 - r0 < 1e-3:
            pair = _refined(a, b, (s0 + s1) / 2, (r0 + r1) / 2, accuracy)
            if pair and not any(math.dist(pair, f) < 1e-5 for f in found):
                found.append(pair)
            continue
        sm, rm = (s0 + s1) / 2, (r0 + r1) / 2
        for sa, t0, t1 in zip(s.split(0.5), (s0, sm), (sm, s1), strict=True):
            for ra, u0, u1 in zip(r.split(0.5), (r0, rm), (rm, r1), strict=True):
                stack.append((sa, t0, t1, ra, u0, u1))
    return found


def _refined(
    a: Cubic, b: Cubic, t: float, u: float, accuracy: float
) -> tuple[float, float] | None:
    for _ in range(20):
        gap = b.at(u) - a.at(t)
        if gap.length < accuracy / 10:
            break
        da, db = a.derivative(t), b.derivative(u)
        turn = da.cross(db)
        if abs(turn) < 1e-12:
            break
        t = min(1.0, max(0.0, t + gap.cross(db) / turn))
        u = min(1.0, max(0.0, u + gap.cross(da) / turn))
    return (t, u) if (b.at(u) - a.at(t)).length < max(accuracy, 1e-7) * 10 else None
