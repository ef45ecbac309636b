"""Where lines meet."""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise

from drafting.geometry.path import Path
from drafting.geometry.point import Point, Vector
from drafting.geometry.segment import Line, Segment, quadratic_roots
from drafting.geometry.tangle import curve_crossings

TOUCH = 1e-9
"""A point this near to a straight line (cm) lies on it: a million times finer than the house."""

SAME = 1e-5
"""Crossings nearer to each other than this (cm) are one: curves that touch meet once."""

Place = tuple[int, float]
"""Segment number and t: a position on a path."""


@dataclass(frozen=True, slots=True)
class Crossing:
    """A common point of two paths: where it is, and segment number and t on each."""

    point: Point
    first: Place
    second: Place


def meet(p: Point, along: Vector, q: Point, toward: Vector) -> Point | None:
    """Where two endless straight lines meet; None where they are parallel."""
    turn = along.cross(toward)
    if abs(turn) < 1e-12 * along.length * toward.length or turn == 0:
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
        second: Another path. Stretches on top of each other are not reported as crossings; where
            two curves only touch, that is one crossing.
        accuracy: How near the two curves must come, in cm.
    """
    found: list[Crossing] = []
    boxes = second.boxes()
    for i, (a, box) in enumerate(zip(first.segments, first.boxes(), strict=True)):
        for j, b in enumerate(second.segments):
            if not apart(box, boxes[j]):
                found += [
                    Crossing(a.at(t), (i, t), (j, u)) for t, u in segment_crossings(a, b, accuracy)
                ]
    found.sort(key=lambda c: c.first)
    return tuple(_distinct(found))


def _distinct(found: list[Crossing]) -> list[Crossing]:
    kept: list[Crossing] = []
    for crossing in found:
        if not any(crossing.point.distance(k.point) < SAME for k in kept):
            kept.append(crossing)
    return kept


def crossing_with_line(path: Path, on: Point, along: Vector) -> tuple[Place, ...]:
    """Segment number and t wherever a path crosses or touches an endless straight line.

    A stretch that lies on the line is not reported.
    """
    found: list[Place] = []
    row = _row(on, along)
    for i, s in enumerate(path.segments):
        found += [(i, t) for t in _on_line(s, row)]
    return tuple(found)


def _row(on: Point, along: Vector) -> tuple[float, float, float]:
    """A line as its unit normal (to the left) and its height along it."""
    normal = along.unit.left
    return normal.x, normal.y, on.x * normal.x + on.y * normal.y


def _on_line(s: Segment, row: tuple[float, float, float]) -> list[float]:
    x, y, level = row
    p, e = s.start, s.end
    h, k = p.x * x + p.y * y - level, e.x * x + e.y * y - level
    if isinstance(s, Line):
        return _straight_roots(h, k)
    q, r = s.leaving, s.arriving
    return _roots(h, q.x * x + q.y * y - level, r.x * x + r.y * y - level, k)


def _straight_roots(h: float, k: float) -> list[float]:
    if abs(h) < TOUCH:
        return [] if abs(k) < TOUCH else [0.0]
    if abs(k) < TOUCH:
        return [1.0]
    return [] if (h > 0) == (k > 0) else [h / (h - k)]


def _roots(h: float, i: float, j: float, k: float) -> list[float]:
    """Where in 0..1 a cubic in Bernstein form is zero: at most one root between its turns."""
    if h > TOUCH and i > TOUCH and j > TOUCH and k > TOUCH:
        return []
    if h < -TOUCH and i < -TOUCH and j < -TOUCH and k < -TOUCH:
        return []
    a, b, c = k - 3 * j + 3 * i - h, 3 * (j - 2 * i + h), 3 * (i - h)
    turns = sorted(t for t in quadratic_roots(3 * a, 2 * b, c) if 0 < t < 1)
    marks = [(t, _snapped(((a * t + b) * t + c) * t + h)) for t in (0.0, *turns, 1.0)]
    found = [marks[0][0]] if marks[0][1] == 0 else []
    for (t0, v0), (t1, v1) in pairwise(marks):
        if v1 == 0 and v0 != 0:
            found.append(t1)
        elif v0 * v1 < 0:
            found.append(_root_between(a, b, c, h, t0, t1))
    return [] if all(v == 0 for _, v in marks) else found


def _snapped(value: float) -> float:
    return 0.0 if abs(value) < TOUCH else value


def _root_between(a: float, b: float, c: float, d: float, low: float, high: float) -> float:
    """The one zero of a t³ + b t² + c t + d between two bounds (Newton, kept in its bracket)."""
    rising = ((a * high + b) * high + c) * high + d > 0
    t = (low + high) / 2
    for _ in range(80):
        value = ((a * t + b) * t + c) * t + d
        low, high = (low, t) if (value > 0) == rising else (t, high)
        slope = (3 * a * t + 2 * b) * t + c
        step = t - value / slope if slope != 0 else low
        step = step if low < step < high else (low + high) / 2
        if abs(step - t) < 1e-15:
            break
        t = step
    return t


def apart(a: tuple[float, ...], b: tuple[float, ...], slack: float = 1e-9) -> bool:
    """Whether two boxes (least x, least y, greatest x, greatest y) have nothing in common."""
    return a[2] < b[0] - slack or b[2] < a[0] - slack or a[3] < b[1] - slack or b[3] < a[1] - slack


def segment_crossings(a: Segment, b: Segment, accuracy: float = 1e-7) -> list[tuple[float, float]]:
    """Crossings of two segments, as pairs of t on the one and t on the other."""
    if isinstance(b, Line):
        return _with_stroke(a, b)
    if isinstance(a, Line):
        return [(t, u) for u, t in _with_stroke(b, a)]
    return curve_crossings(a, b, accuracy)


def _with_stroke(a: Segment, b: Line) -> list[tuple[float, float]]:
    """Crossings of any segment with a stroke, as (t on the segment, t on the stroke)."""
    along = b.end - b.start
    size = along.dot(along)
    if size == 0:
        return []
    slack = TOUCH / math.sqrt(size)
    found = []
    for t in _on_line(a, _row(b.start, along)):
        u = (a.at(t) - b.start).dot(along) / size
        if -slack <= u <= 1 + slack:
            found.append((t, min(1.0, max(0.0, u))))
    return found
