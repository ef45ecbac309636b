"""Circles: arcs to draw with, and how much cloth the sector of a ring needs.

Source: geometry.
"""

from __future__ import annotations

import math

from drafting.geometry import Cubic, Path, Point, direction

PER_CURVE = 45.0
"""Degrees of an arc that one curve draws: it is then off by a 200,000th of the radius."""


def arc(centre: Point, radius: float, start: float, end: float) -> Path:
    """An arc about a centre from one direction to another.

    Args:
        centre: The circle's centre.
        radius: In cm.
        start: Direction from the centre to the start, degrees from +X, counter-clockwise.
        end: Direction to the end; less than `start` to run clockwise.
    """
    count = max(1, math.ceil(abs(end - start) / PER_CURVE - 1e-9))
    step = (end - start) / count
    return Path(tuple(_curve(centre, radius, start + k * step, step) for k in range(count)))


def _curve(centre: Point, radius: float, start: float, step: float) -> Cubic:
    out, back = direction(start), direction(start + step)
    handle = radius * 4 / 3 * math.tan(math.radians(step) / 4)
    first, last = centre + out * radius, centre + back * radius
    return Cubic(first, first + out.left * handle, last + back.right * handle, last)


def width_on_middle(radius: float, degrees: float) -> float:
    """Width of cloth in cm under a sector whose middle lies along the grain."""
    return 2 * radius * math.sin(math.radians(min(degrees, 180.0)) / 2)


def width_on_edge(radius: float, degrees: float) -> float:
    """Width of cloth in cm under a sector of up to 180 degrees, one edge along the grain."""
    return radius * math.sin(math.radians(min(degrees, 90.0)))
