"""Buttons and buttonholes: how they are marked, and how they are spaced down a front.

Source: a shirt button of 11 mm; its hole as long as the button and 3 to 4 mm, upright on a front
and level on a stand; the first button 6 to 7 cm under that of the stand, the last 12 to 18 cm above
the hem, the gaps between them alike; one level with the bust: common practice, no source.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from drafting.geometry import RIGHT, UP, Cubic, Path, Point, Vector, polyline
from drafting.pattern import Mark

BUTTON = 1.1
HOLE = 1.5
BAR = 0.25
"""Half the length of the bars that end a buttonhole's mark."""

KAPPA = 4 / 3 * math.tan(math.pi / 8)
"""Handle of a quarter circle, as a share of its radius."""

LAST_ABOVE_HEM = (12.0, 15.0, 18.0)
"""Least, usual and greatest distance in cm of the last button above the hem."""

Way = Literal["upright", "level"]

WAYS: dict[Way, Vector] = {"upright": UP, "level": RIGHT}


def button(at: Point, size: float = BUTTON) -> Mark:
    """A button, as a circle of its size in cm."""
    r, k = size / 2, size / 2 * KAPPA
    ring = [Vector(r, 0), Vector(0, r), Vector(-r, 0), Vector(0, -r)]
    quarters = tuple(
        Cubic(at + a, at + (a + a.left.unit * k), at + (b + b.right.unit * k), at + b)
        for a, b in zip(ring, (*ring[1:], ring[0]), strict=True)
    )
    return Mark("button", Path(quarters))


def buttonhole(
    at: Point, way: Way | Vector = "upright", beyond: float = 0.0, hole: float = HOLE
) -> Mark:
    """A buttonhole as a line with a bar at each end.

    Args:
        at: Where the button sits.
        way: Its direction.
        beyond: How far in cm its middle lies on along its direction, where the button pulls to
            the end.
        hole: Its length in cm.
    """
    along = way.unit if isinstance(way, Vector) else WAYS[way]
    middle, half, bar = at + along * beyond, along * (hole / 2), along.left * BAR
    low, high = middle + -half, middle + half
    stroke = (low + bar, low + -bar, low, high, high + bar, high + -bar)
    return Mark("buttonhole", polyline(*stroke))


@dataclass(frozen=True, slots=True)
class Row:
    """Buttons down a front.

    Attributes:
        heights: From the top one down, cm.
        gap: From one to the next.
    """

    heights: tuple[float, ...]
    gap: float


def spaced(first: float, hem: float, most: float, level: float | None = None) -> Row:
    """Space the buttons of a front.

    Args:
        first: Height of the first one, cm.
        hem: Height of the hem.
        most: Greatest gap wanted.
        level: A height on which one must sit, as that of the bust.
    """
    least, usual, greatest = LAST_ABOVE_HEM
    if level is not None and first - level > most / 2:
        gap = (first - level) / math.ceil((first - level) / most - 1e-9)
        count = 1 + math.floor((first - hem - least) / gap + 1e-9)
        return Row(tuple(first - n * gap for n in range(max(2, count))), gap)
    way = first - hem - usual
    count = max(1, math.ceil(way / most - 1e-9))
    if (way - (greatest - usual)) / count > most:
        count += 1
    gap = way / count
    return Row(tuple(first - n * gap for n in range(count + 1)), gap)
