"""Setting a block of texts in an odd-shaped room, as big as it will go.

Line breaks do not hang on the size, so every way to set the block is broken once, at full size;
then sizes are tried from the biggest down, and at each size the ways in the order of preference.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import pairwise

import shapely
from shapely import affinity
from shapely.geometry.base import BaseGeometry

from drafting.drawing.block import Entry, Setting, TextBlock
from drafting.drawing.marking import Room
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
    ways = _Ways(_ways(setting, room.inside))
    for inset, thin, least in STAGES:
        free = shapely.difference(room.inside.buffer(-inset), shapely.union_all(room.taken))
        if thin:
            lines = shapely.union_all(room.thin).buffer(thin, quad_segs=2)
            free = shapely.difference(free, lines)
        found = _biggest(ways, free, least)
        if found:
            return found
    middle = room.inside.representative_point()
    smallest = setting.forced(CAPITALS * SIZES[-1], CAPITALS)
    return _labels(smallest, 1.0, (middle.x, middle.y), 0.0)


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


def _biggest(ways: _Ways, free: BaseGeometry, least: float) -> tuple[Label, ...]:
    areas: dict[float, Area] = {}
    room = free.area
    for size in SIZES:
        if size < least:
            break
        for block, angle in ways:
            if block.width * block.height * size * size > room:
                continue
            if angle not in areas:
                areas[angle] = Area(affinity.rotate(free, -angle, origin=(0, 0)) if angle else free)
            corner = areas[angle].place(block.width * size, block.height * size)
            if corner:
                return _labels(block, size, corner, angle)
    return ()


def _ways(setting: Setting, inside: BaseGeometry) -> Iterator[Way]:
    """Every way to set the block: upright first, then sideways and along the piece, run on last."""
    slant = _slant(inside)
    askew = () if slant is None else (slant,)
    for angle in (0.0, 90.0, *askew):
        for breadth in STACKED:
            if block := setting.stacked(CAPITALS, breadth):
                yield block, angle
    blocks = [b for breadth in RUNNING if (b := setting.running(CAPITALS, breadth))]
    yield from ((block, angle) for angle in (*askew, 90.0, 0.0) for block in blocks)
    for angle in (0.0, 90.0, *askew):
        if block := setting.stacked(CAPITALS, NARROW):
            yield block, angle


def _slant(inside: BaseGeometry) -> float | None:
    """Direction of the piece's long side, reading from left to right; None near 0 and 90."""
    ring = shapely.get_coordinates(shapely.minimum_rotated_rectangle(inside))
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
