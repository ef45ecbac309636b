"""Setting a block of texts in an odd-shaped room, as big as it will go.

Line breaks do not hang on the size, so every way to set the block is broken once, at full size.
The ways are tried in the order of preference; a later one counts only where it allows a bigger
size.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Iterator
from itertools import pairwise

import shapely

from drafting.drawing.block import Entry, Setting, TextBlock
from drafting.drawing.room import Bars, Room
from drafting.drawing.sounding import Area
from drafting.geometry import Point, turn
from drafting.pattern import Label

CAPITALS = 0.6
"""Height in cm of capitals on a piece with room enough: text on plots is at least 6 mm."""
SIZES = (
    1.0, 0.87, 0.76, 0.66, 0.57, 0.5, 0.43, 0.38, 0.33, 0.28,
    0.25, 0.21, 0.18, 0.15, 0.12, 0.1, 0.08, 0.06, 0.04,
)  # fmt: skip
"""Sizes tried; the last is for a long reference on a belt loop."""

STAGES = ((0.5, 0.3, 0.57), (0.5, 0.0, 0.43), (0.15, 0.0, 0.0))
"""How far from the stitching line and from thin lines (0: over them), and down to what size."""

STACKED = (16.0, 12.0, 9.0)
RUNNING = (60.0, 40.0, 28.0, 20.0, 14.0, 10.0)
NARROW = 6.5
"""Breadths of the block in cm at full size: each text on lines of its own, or all run on."""

SLANT = 12.0
"""A piece that lies more than 12 degrees askew gets a way to set the block along it."""

Way = tuple[TextBlock, float]


def set_texts(entries: tuple[Entry, ...], room: Room) -> tuple[Label, ...]:
    """Labels in the room's frame: clear of all lines where they can be, else over thin ones."""
    setting = Setting.of(entries)
    ways = _Ways(_ways(setting, room))
    for inset, thin, least in STAGES:
        found = _biggest(ways, room.bars(inset, thin), least)
        if found:
            return found
    middle = room.middle()
    smallest = setting.forced(CAPITALS * SIZES[-1], CAPITALS)
    return _labels(smallest, 1.0, middle, 0.0)


class _Ways:
    """Ways to set the block, each broken into lines when first asked for."""

    def __init__(self, ways: Iterator[Way]) -> None:
        self.left = ways
        self.known: list[Way] = []

    def __iter__(self) -> Iterator[Way]:
        yield from self.known
        for way in self.left:
            self.known.append(way)
            yield way


def _biggest(ways: _Ways, free: Bars, least: float) -> tuple[Label, ...]:
    """The block as big as it will go; of several ways that allow that, the first."""
    areas: dict[float, Area] = {}
    sizes = [size for size in SIZES if size >= least]
    best: tuple[TextBlock, float, float] | None = None
    for block, angle in ways:
        area = areas.get(angle) or areas.setdefault(angle, Area(free, angle))
        size = _biggest_size(block, area, sizes)
        if size:
            best, sizes = (block, size, angle), sizes[: sizes.index(size)]
        if not sizes:
            break
    if best is None:
        return ()
    block, size, angle = best
    corner = areas[angle].place(block.width * size, block.height * size)
    return _labels(block, size, corner, angle) if corner else ()


def _biggest_size(block: TextBlock, area: Area, sizes: list[float]) -> float | None:
    """The first of falling sizes at which a block fits; what fits, fits when it is smaller."""

    def fits(size: float) -> bool:
        return area.fits(block.width * size, block.height * size)

    if fits(sizes[0]):
        return sizes[0]
    if not fits(sizes[-1]):
        return None
    return sizes[bisect_left(sizes, x=True, key=fits)]


def _ways(setting: Setting, room: Room) -> Iterator[Way]:
    """Every way to set the block: upright first, then sideways and along the piece, run on last."""
    slant = _slant(room)
    askew = () if slant is None else (slant,)
    stacked = [b for breadth in STACKED if (b := setting.stacked(CAPITALS, breadth))]
    yield from ((block, angle) for angle in (0.0, 90.0, *askew) for block in stacked)
    running = [b for breadth in RUNNING if (b := setting.running(CAPITALS, breadth))]
    yield from ((block, angle) for angle in (*askew, 90.0, 0.0) for block in running)
    if block := setting.stacked(CAPITALS, NARROW):
        yield from ((block, angle) for angle in (0.0, 90.0, *askew))


def _slant(room: Room) -> float | None:
    """Direction of the piece's long side, reading from left to right; None near 0 and 90."""
    points = shapely.MultiPoint(room.outline[:, :2])
    ring = shapely.get_coordinates(shapely.minimum_rotated_rectangle(points))
    sides = [(bx - ax, by - ay) for (ax, ay), (bx, by) in pairwise(ring[:3])]
    x, y = max(sides, key=lambda side: math.hypot(*side))
    angle = math.degrees(math.atan2(y, x))
    angle = angle - 180 if angle > 90 else angle + 180 if angle <= -90 else angle
    askew = min(abs(angle), 90 - abs(angle)) > SLANT
    return round(angle, 1) if askew else None


def _labels(
    block: TextBlock, size: float, corner: tuple[float, float], angle: float
) -> tuple[Label, ...]:
    back = turn(angle, Point(0.0, 0.0))
    x, low = corner
    return tuple(
        Label(text, back.point(Point(x, low + base * size)), height * size, angle)
        for (text, height), base in zip(block.lines, block.base_lines, strict=True)
    )
