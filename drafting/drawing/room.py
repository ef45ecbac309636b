"""The free room inside a piece, filled by and by with what is written there. Cm, Y up.

What bounds the room and what stands in it are straight bars.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import chain, pairwise

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from drafting.drawing.lettering import Frame, corners, framed
from drafting.drawing.shapes import FLAT
from drafting.drawing.sheet import Text
from drafting.geometry import Path, Point, polyline
from drafting.pattern import Piece

THIN = 0.02
"""Names keep this far from thin lines, cm."""

Coordinates = Sequence[tuple[float, float]]
Bar = tuple[float, float, float, float, float, float]
"""A straight bar: x and y of both ends, how far texts stay off it (cm), and 1 where it is a wall:
the room lies on its left side and none on its right."""

Rows = NDArray[np.float64]
"""A row of such numbers for each bar."""


def bars(points: Coordinates, off: float = 0.0, *, wall: bool = False) -> list[Bar]:
    """The strokes through some points; walls go once round, back to where they began."""
    mark = 1.0 if wall else 0.0
    found = [(x0, y0, x1, y1, off, mark) for (x0, y0), (x1, y1) in pairwise(points)]
    if wall and points[0] != points[-1]:
        found.append((*points[-1], *points[0], off, mark))
    return found


def walls(area: BaseGeometry) -> list[Bar]:
    """What bounds an area, which may have holes and several parts."""
    found: list[Bar] = []
    for part in shapely.get_parts(area):
        outer, *holes = shapely.get_rings(part)
        for ring, left in ((outer, True), *((hole, False) for hole in holes)):
            way = 1 if shapely.is_ccw(ring) == left else -1
            points = [(x, y) for x, y in shapely.get_coordinates(ring)[::way].tolist()]
            found += bars(points, wall=True)
    return found


def rows_of(every: Sequence[Bar]) -> Rows:
    """Bars as rows of numbers."""
    numbers = np.fromiter(chain.from_iterable(every), float, 6 * len(every))
    return numbers.reshape(-1, 6)


class Room:
    """The room within a stitching line.

    Attributes:
        outline: The walls round it.
        taken: What no text may cover.
        thin: Thin lines inside, which names keep off and big texts may cover where they must.
    """

    def __init__(self, outline: Sequence[Bar], thin: Iterable[Path] = ()) -> None:
        self.outline = list(outline)
        self.thin = [bar for path in thin for bar in bars(path.coordinates(FLAT), THIN)]
        self.taken: list[Bar] = []

    @classmethod
    def within(cls, piece: Piece) -> Room:
        """The room within a piece, with the thin lines that are drawn there."""
        ends = [*piece.lengthen, *((left, right) for _, left, right in piece.levels)]
        paths = [polyline(*pair) for pair in ends] + [mark.path for mark in piece.marks]
        return cls(bars(piece.outline.coordinates(FLAT), wall=True), paths)

    def keep_off(self, strokes: Iterable[tuple[Path, float]]) -> None:
        """Keep so many cm off these lines from now on."""
        for path, off in strokes:
            self.taken += bars(path.coordinates(FLAT), off)

    def take(self, areas: Iterable[Sequence[Point]]) -> None:
        """Keep out of these areas from now on, told by their corners, whichever way round."""
        for area in areas:
            self.taken += bars(_clockwise([(p.x, p.y) for p in area]), wall=True)

    def bars(self, inset: float) -> list[Bar]:
        """All that a block stays off: the outline, by so many cm, and what is taken."""
        return _wider(self.outline, inset) + self.taken

    def thin_bars(self, off: float) -> list[Bar]:
        """Thin lines that a block stays off by so many cm more."""
        return _wider(self.thin, off)

    def middle(self) -> tuple[float, float]:
        """A point in the midst of the room, whatever is taken."""
        corners = [(x, y) for x, y, *_ in self.outline]
        point = shapely.Polygon(corners).representative_point()
        return point.x, point.y

    def first_that_fits(self, candidates: Iterable[Text]) -> tuple[Text, ...]:
        """The first of these texts that lies clear of all; none where none does."""
        every = self.outline + self.taken + self.thin
        for text in candidates:
            if _is_clear(every, framed(text)):
                self.take([corners(text)])
                return (text,)
        return ()


def _wider(every: list[Bar], by: float) -> list[Bar]:
    return [(x0, y0, x1, y1, off + by, wall) for x0, y0, x1, y1, off, wall in every]


def _clockwise(points: list[tuple[float, float]]) -> Coordinates:
    ring = [*points, points[0]]
    twice = sum(ax * by - bx * ay for (ax, ay), (bx, by) in pairwise(ring))
    return ring[::-1] if twice > 0 else ring


def _is_clear(every: list[Bar], frame: Frame) -> bool:
    """Whether a box meets no bar and lies in the room: once round by the walls to its right."""
    x, y, *_ = frame
    turns = 0
    for bar in every:
        if _meets(bar, frame):
            return False
        if bar[5]:
            turns += _turn(bar, x, y)
    return turns == 1


def _meets(bar: Bar, frame: Frame) -> bool:
    """Whether a box comes too near to a bar, by their shadows on three lines."""
    x, y, along, up, wide, high = frame
    x0, y0, x1, y1, off, _ = bar
    far_x, far_y = (x0 + x1) / 2 - x, (y0 + y1) / 2 - y
    half_x, half_y = (x1 - x0) / 2, (y1 - y0) / 2
    a, b = far_x * along + far_y * up, far_y * along - far_x * up
    p, q = half_x * along + half_y * up, half_y * along - half_x * up
    wide, high = wide + off, high + off
    if abs(a) > wide + abs(p) or abs(b) > high + abs(q):
        return False
    return abs(a * q - b * p) <= wide * abs(q) + high * abs(p)


def _turn(wall: Bar, x: float, y: float) -> int:
    """1 for a wall that rises to the right of a point, -1 for one that falls there, else 0."""
    x0, y0, x1, y1, *_ = wall
    if (y0 <= y) == (y1 <= y):
        return 0
    if ((x1 - x0) * (y - y0) - (x - x0) * (y1 - y0)) * (y1 - y0) <= 0:
        return 0
    return 1 if y1 > y0 else -1
