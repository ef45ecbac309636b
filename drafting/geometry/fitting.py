"""Curves drawn to order: from here in this direction to there in that one."""

from __future__ import annotations

import math
from collections.abc import Callable

from drafting.geometry.crossing import crossing_with_line, meet
from drafting.geometry.path import Path
from drafting.geometry.point import Point, Vector
from drafting.geometry.segment import Cubic
from drafting.geometry.solve import root


def with_handles(
    start: Point, leaving: Vector, end: Point, arriving: Vector, k: float, m: float | None = None
) -> Cubic:
    """A cubic with handles of given lengths in cm along two directions of travel."""
    return Cubic(
        start, start + leaving.unit * k, end + arriving.unit * -(k if m is None else m), end
    )


def smooth(
    start: Point, leaving: Vector, end: Point, arriving: Vector, tension: float = 1 / 3
) -> Cubic:
    """A fair curve between two points and directions; handles a share of the chord each."""
    return with_handles(start, leaving, end, arriving, tension * start.distance(end))


def bulged(start: Point, end: Point, left: float) -> Cubic:
    """A parabola's arc whose middle stands `left` cm to the left of the chord."""
    middle = start.toward(end, 0.5) + (end - start).unit.left * (2 * left)
    return Cubic(start, start.toward(middle, 2 / 3), end.toward(middle, 2 / 3), end)


def through_ray(
    draw: Callable[[float], Cubic],
    origin: Point,
    along: Vector,
    distance: float,
    low: float,
    high: float,
) -> tuple[float, Cubic] | None:
    """The member of a family of curves that cuts a ray at a distance from its origin.

    Args:
        draw: Gives the curve for a parameter.
        origin: Where the ray starts.
        along: Its direction.
        distance: Wanted distance in cm from the origin to the curve along the ray.
        low: Least parameter tried.
        high: Greatest parameter tried.

    Returns:
        The parameter and its curve; None where no parameter in the range does it.
    """

    def short(k: float) -> float:
        return cuts_ray(draw(k), origin, along) - distance

    if not (math.isfinite(short(low)) and math.isfinite(short(high))):
        return None
    k = root(short, low, high, 1e-8)
    return None if k is None else (k, draw(k))


def cuts_ray(cubic: Cubic, origin: Point, along: Vector) -> float:
    """Distance in cm from a ray's origin to a curve along the ray; infinite where it misses."""
    hits = crossing_with_line(Path((cubic,)), origin, along)
    ahead = [d for _, t in hits if (d := (cubic.at(t) - origin).dot(along.unit)) > -1e-9]
    return min(ahead, default=math.inf)


def corner_of(start: Point, leaving: Vector, end: Point, arriving: Vector) -> Point | None:
    """Where the end tangents of a curve cross; None where they are parallel."""
    return meet(start, leaving, end, arriving)
