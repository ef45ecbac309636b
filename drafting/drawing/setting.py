"""Setting a block of texts in an odd-shaped room, as big as it will go.

Line breaks do not hang on the size, so every way to set the block is broken once, at full size.
The ways are tried in the order of preference; a later one counts only where it allows a bigger
size.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from itertools import pairwise

import numpy as np
import shapely

from drafting.drawing.block import Entry, Setting, TextBlock
from drafting.drawing.room import Room
from drafting.drawing.sounding import Area, sounded, turned
from drafting.geometry import Point, array_of, turn
from drafting.pattern import Label

CAPITALS = 0.6
"""Height in cm of capitals on a piece with room enough: text on plots is at least 6 mm."""
SIZES = (
    1.0, 0.87, 0.76, 0.66, 0.57, 0.5, 0.43, 0.38, 0.33, 0.28,
    0.25, 0.21, 0.18, 0.15, 0.12, 0.1, 0.08, 0.06, 0.04,
)  # fmt: skip
"""Sizes tried; the last is for a long reference on a belt loop."""

INSET, AIR, THIN = 0.15, 0.2, 0.3
"""How far in cm a block stays from the stitching line; how much farther from everything, and how
far from thin lines, where it can be."""
CLEAR, AIRY = 0.38, 0.43
"""Down to these sizes it stays clear of thin lines, and has air round it."""

STACKED = (16.0, 12.0, 9.0)
RUNNING = (60.0, 40.0, 28.0, 20.0, 14.0, 10.0)
NARROW = 6.5
"""Breadths of the block in cm at full size: each text on lines of its own, or all run on."""

SIDEWAYS = 90.0
"""A block set so takes the upright room's breadth for its height."""
SLANT = 12.0
"""A piece that lies more than 12 degrees askew gets a way to set the block along it."""

Way = tuple[TextBlock, float]
_Free = tuple[Area, Area]


class Set:
    """A block that is to be set: how big, at what angle, and in which room."""

    def __init__(self, block: TextBlock, size: float, angle: float, area: Area) -> None:
        self.block = block
        self.size = size
        self.angle = angle
        self.area = area


def set_texts(entries: tuple[Entry, ...], clearing: Clearing) -> tuple[Label, ...]:
    """Labels in the room's frame: clear of all lines where they can be, else over thin ones.

    Room is sought first where there is most; only what is big there is set with more air.
    """
    setting = Setting.of(entries)
    ways = _Ways(_ways(setting, clearing.slant))
    loosest = _biggest(ways, clearing.loose, SIZES)
    if loosest is None:
        smallest = setting.forced(CAPITALS * SIZES[-1], CAPITALS)
        return _labels(smallest, 1.0, 0.0, clearing.room.middle())
    for area, least in ((clearing.clear, CLEAR), (clearing.airy, AIRY)):
        sizes = tuple(size for size in SIZES if least <= size <= loosest.size)
        if sizes and (found := _biggest(ways, area, sizes)):
            return _placed(found)
    return _placed(loosest)


class Clearing:
    """A room, sounded at the angles at which a block may lie in it.

    Attributes:
        room: The room.
        slant: Direction in degrees of a piece that lies askew.
        areas: At each angle all that is free, and what of it is clear of thin lines.
    """

    def __init__(self, room: Room, slant: float | None, areas: dict[float, _Free]) -> None:
        self.room = room
        self.slant = slant
        self.areas = areas

    def loose(self, angle: float) -> Area:
        """Over thin lines, and near to the stitching line."""
        return self.areas[angle][0]

    def airy(self, angle: float) -> Area:
        """Over thin lines, with air round the block."""
        return self.loose(angle).shrunk(AIR)

    def clear(self, angle: float) -> Area:
        """With air round the block, and clear of thin lines."""
        return self.airy(angle).within(self.areas[angle][1])


def clearings(rooms: Sequence[Room]) -> tuple[Clearing, ...]:
    """The rooms, all sounded at once."""
    slants = _slants(rooms)
    angles = [(0.0,) if slant is None else (0.0, slant) for slant in slants]
    asked = [(room, angle) for room, each in zip(rooms, angles, strict=True) for angle in each]
    found = iter(
        sounded(
            [turned(room.bars(INSET), angle) for room, angle in asked],
            [turned(room.thin_bars(THIN), angle) for room, angle in asked],
        )
    )
    return tuple(
        Clearing(room, slant, {angle: next(found) for angle in each})
        for room, slant, each in zip(rooms, slants, angles, strict=True)
    )


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


def _biggest(ways: _Ways, sounded: Callable[[float], Area], sizes: tuple[float, ...]) -> Set | None:
    """The block as big as it will go; of several ways that allow that, the first."""
    areas: dict[float, Area] = {}
    best: Set | None = None
    for block, angle in ways:
        frame = 0.0 if angle == SIDEWAYS else angle
        if frame not in areas:
            areas[frame] = sounded(frame)
        wide, high = block.width, block.height
        if angle == SIDEWAYS:
            wide, high = high, wide
        if size := _biggest_size(wide, high, areas[frame], sizes):
            best, sizes = Set(block, size, angle, areas[frame]), sizes[: sizes.index(size)]
        if not sizes:
            break
    return best


def _biggest_size(wide: float, high: float, area: Area, sizes: tuple[float, ...]) -> float | None:
    """The first of falling sizes at which a box fits; what fits, fits when it is smaller."""
    low, fits = 0, len(sizes) - 1
    if not area.fits(wide * sizes[fits], high * sizes[fits]):
        return None
    while low < fits:
        middle = (low + fits) // 2
        if area.fits(wide * sizes[middle], high * sizes[middle]):
            fits = middle
        else:
            low = middle + 1
    return sizes[fits]


def _ways(setting: Setting, slant: float | None) -> Iterator[Way]:
    """Every way to set the block: upright first, then sideways and along the piece, run on last."""
    stacked = []
    for breadth in STACKED:
        if block := setting.stacked(CAPITALS, breadth):
            stacked.append(block)
            yield block, 0.0
    yield from ((block, SIDEWAYS) for block in stacked)
    askew = () if slant is None else (slant,)
    yield from ((block, angle) for angle in askew for block in stacked)
    running = [b for breadth in RUNNING if (b := setting.running(CAPITALS, breadth))]
    yield from ((block, angle) for angle in (*askew, SIDEWAYS, 0.0) for block in running)
    if block := setting.stacked(CAPITALS, NARROW):
        yield from ((block, angle) for angle in (0.0, SIDEWAYS, *askew))


def _slants(rooms: Sequence[Room]) -> tuple[float | None, ...]:
    """Direction of each piece's long side, reading from left to right; None near 0 and 90."""
    numbers = np.repeat(np.arange(len(rooms)), [len(room.outline) for room in rooms])
    points = array_of([(x, y) for room in rooms for x, y, *_ in room.outline])
    boxes = np.asarray(shapely.oriented_envelope(shapely.linestrings(points, indices=numbers)))
    corners, of = shapely.get_coordinates(boxes, return_index=True)
    rings, starts = corners.tolist(), np.searchsorted(of, np.arange(len(rooms))).tolist()
    return tuple(_slant(rings[start : start + 3]) for start in starts)


def _slant(ring: list[list[float]]) -> float | None:
    sides = [(bx - ax, by - ay) for (ax, ay), (bx, by) in pairwise(ring)]
    x, y = max(sides, key=lambda side: math.hypot(*side))
    angle = math.degrees(math.atan2(y, x))
    angle = angle - 180 if angle > 90 else angle + 180 if angle <= -90 else angle
    askew = min(abs(angle), 90 - abs(angle)) > SLANT
    return round(angle, 1) if askew else None


def _placed(found: Set) -> tuple[Label, ...]:
    """The block as near to the middle of its room as it goes. There is a place: it fits."""
    area = found.area.quarter_turned() if found.angle == SIDEWAYS else found.area
    corner = area.place(found.block.width * found.size, found.block.height * found.size)
    return _labels(found.block, found.size, found.angle, corner or (0.0, 0.0))


def _labels(
    block: TextBlock, size: float, angle: float, corner: tuple[float, float]
) -> tuple[Label, ...]:
    back = turn(angle, Point(0.0, 0.0))
    x, low = corner
    return tuple(
        Label(text, back.point(Point(x, low + base * size)), height * size, angle)
        for (text, height), base in zip(block.lines, block.base_lines, strict=True)
    )
