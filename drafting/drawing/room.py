"""The free room inside a piece, filled by and by with what is written there. Cm, Y up.

What bounds the room and what stands in it are straight bars, kept as rows of numbers so that one
sweep of arithmetic asks all of them at once.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import islice, pairwise

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from drafting.drawing.lettering import corners, framed
from drafting.drawing.shapes import FLAT
from drafting.drawing.sheet import Text
from drafting.geometry import Path, Point, array_of, polyline
from drafting.pattern import Piece

THIN = 0.02
"""Names keep this far from thin lines, cm."""
BATCH = 6
"""So many places are looked at together: nearly always one of the first will do."""

Coordinates = Sequence[tuple[float, float]]
Bars = NDArray[np.float64]
"""A row for each straight bar: x and y of both ends, how far texts stay off it (cm), and 1 where
it is a wall: the room lies on its left side and none on its right."""

Answers = NDArray[np.bool_]

NO_BARS: Bars = np.empty((0, 6))


def bars(points: Coordinates, off: float = 0.0, *, wall: bool = False) -> Bars:
    """The strokes through some points."""
    return bars_of([(points, off)], wall=wall)


def bars_of(lines: Sequence[tuple[Coordinates, float]], *, wall: bool = False) -> Bars:
    """The strokes of several lines, all made at once, each with how far texts stay off it."""
    if not lines:
        return NO_BARS
    sizes = [len(points) for points, _ in lines]
    every = array_of([point for points, _ in lines for point in points])
    rows = np.empty((len(every) - 1, 6))
    rows[:, :2], rows[:, 2:4], rows[:, 5] = every[:-1], every[1:], wall
    rows[:, 4] = np.repeat([off for _, off in lines], sizes)[1:]
    drawn = np.ones(len(rows), bool)
    drawn[np.cumsum(sizes[:-1], dtype=int) - 1] = False
    return rows[drawn]


def walls(area: BaseGeometry) -> Bars:
    """What bounds an area, which may have holes and several parts."""
    found = [NO_BARS]
    for part in shapely.get_parts(area):
        outer, *holes = shapely.get_rings(part)
        for ring, left in ((outer, True), *((hole, False) for hole in holes)):
            way = 1 if shapely.is_ccw(ring) == left else -1
            points = [(x, y) for x, y in shapely.get_coordinates(ring)[::way].tolist()]
            found.append(bars(points, wall=True))
    return np.concatenate(found)


class Room:
    """The room within a stitching line.

    Attributes:
        outline: The walls round it.
        taken: What no text may cover.
        thin: Thin lines inside, which names keep off and big texts may cover where they must.
    """

    def __init__(self, outline: Bars, thin: Iterable[Path] = ()) -> None:
        self.outline = outline
        self.thin = bars_of([(path.coordinates(FLAT), THIN) for path in thin])
        self.taken = NO_BARS

    @classmethod
    def within(cls, piece: Piece) -> Room:
        """The room within a piece, with the thin lines that are drawn there."""
        ends = [*piece.lengthen, *((left, right) for _, left, right in piece.levels)]
        paths = [polyline(*pair) for pair in ends] + [mark.path for mark in piece.marks]
        return cls(bars(piece.outline.coordinates(FLAT), wall=True), paths)

    def keep_off(self, strokes: Iterable[tuple[Path, float]]) -> None:
        """Keep so many cm off these lines from now on."""
        rows = bars_of([(path.coordinates(FLAT), off) for path, off in strokes])
        self.taken = np.concatenate([self.taken, rows])

    def take(self, areas: Iterable[Sequence[Point]]) -> None:
        """Keep out of these areas from now on, told by their corners, whichever way round."""
        rings = [(_clockwise([(p.x, p.y) for p in area]), 0.0) for area in areas]
        self.taken = np.concatenate([self.taken, bars_of(rings, wall=True)])

    def bars(self, inset: float) -> Bars:
        """All that a block stays off: the outline, by so many cm, and what is taken."""
        return np.concatenate([_wider(self.outline, inset), self.taken])

    def thin_bars(self, off: float) -> Bars:
        """Thin lines that a block stays off by so many cm more."""
        return _wider(self.thin, off)

    def middle(self) -> tuple[float, float]:
        """A point in the midst of the room, whatever is taken."""
        point = shapely.Polygon(self.outline[:, :2]).representative_point()
        return point.x, point.y

    def first_that_fits(self, candidates: Iterable[Text]) -> tuple[Text, ...]:
        """The first of these texts that lies clear of all; none where none does."""
        left = iter(candidates)
        every = np.concatenate([self.outline, self.taken, self.thin])
        while texts := tuple(islice(left, BATCH)):
            for i in np.flatnonzero(_clear(every, texts)):
                self.take([corners(texts[i])])
                return (texts[i],)
        return ()


def _wider(rows: Bars, by: float) -> Bars:
    rows = rows.copy()
    rows[:, 4] += by
    return rows


def _clockwise(points: list[tuple[float, float]]) -> Coordinates:
    ring = [*points, points[0]]
    twice = sum(ax * by - bx * ay for (ax, ay), (bx, by) in pairwise(ring))
    return ring[::-1] if twice > 0 else ring


def _clear(every: Bars, texts: Sequence[Text]) -> Answers:
    """Which texts lie in the room and meet no bar."""
    frames = np.array([framed(text) for text in texts]).T[:, :, None]
    return ~_met(every, frames).any(axis=1) & _inside(every, frames[0], frames[1])


def _met(every: Bars, frames: Bars) -> Answers:
    """Which boxes (rows) which bars (columns) come too near, by their shadows on three lines."""
    x, y, along, up, half_wide, half_high = frames
    x0, y0, x1, y1, off, _ = every.T
    far_x, far_y, half_x, half_y = (
        (x0 + x1) / 2 - x,
        (y0 + y1) / 2 - y,
        (x1 - x0) / 2,
        (y1 - y0) / 2,
    )
    a, b = far_x * along + far_y * up, far_y * along - far_x * up
    p, q = half_x * along + half_y * up, half_y * along - half_x * up
    wide, high = half_wide + off, half_high + off
    across = np.abs(a * q - b * p) <= wide * np.abs(q) + high * np.abs(p)
    met: Answers = (np.abs(a) <= wide + np.abs(p)) & (np.abs(b) <= high + np.abs(q)) & across
    return met


def _inside(every: Bars, x: Bars, y: Bars) -> Answers:
    """Which points (rows) lie in the room: once round by the walls to their right."""
    x0, y0, x1, y1, *_ = every[every[:, 5] > 0].T
    rising = (y0 <= y) & (y < y1)
    falling = (y1 <= y) & (y < y0)
    right = ((x1 - x0) * (y - y0) - (x - x0) * (y1 - y0)) * (y1 - y0) > 0
    inside: Answers = (rising & right).sum(axis=1) - (falling & right).sum(axis=1) == 1
    return inside
