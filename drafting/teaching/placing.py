"""Where the small texts of a figure go: each on a place of its own, near what it names.

Paper cm, Y up. Boxes are those that the font's metrics give, accents and tails within.
"""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np
import shapely
from numpy.typing import NDArray

from drafting.drawing import Role, Stroke, Text
from drafting.drawing.lettering import ABOVE, BELOW, SLACK, width
from drafting.drawing.shapes import line
from drafting.geometry import Path, Point, polyline

DIRECTIONS = 16
RINGS = (0.1, 0.17, 0.28, 0.42, 0.6, 0.85, 1.15, 1.5, 1.9, 2.4, 3.0, 3.7, 4.5)
"""Distances in cm from the point to a text's box that are tried, nearest first."""
LEADER = 0.2
"""A text farther than this (cm) from its point gets a thin line to it."""
GRID = 0.2
"""Steps (cm) in which a crowded figure is searched for room."""
APART = 0.04
"""Boxes keep this far (cm) from each other."""
OVER_NEW, OVER_OLD, OVER_LEADER = 0.9, 0.12, 0.5
"""What crossing a line costs, as cm of distance: new lines are spared most."""

Boxes = NDArray[np.float64]


class Board:
    """A figure's room, filled by and by."""

    def __init__(self, frame: tuple[float, float, float, float]) -> None:
        """Start with an empty frame: left, low, right, top in cm."""
        self.frame = np.array(frame)
        self.texts: Boxes = np.empty((0, 4))
        self.dots: Boxes = np.empty((0, 4))
        self.lines: dict[float, list[shapely.LineString]] = {OVER_NEW: [], OVER_OLD: []}
        self.leaders: list[shapely.LineString] = []
        self._joined: dict[float, shapely.MultiLineString] = {}

    def draw(self, paths: Iterable[Path], *, new: bool) -> None:
        """Keep texts off these lines where that can be."""
        self.lines[OVER_NEW if new else OVER_OLD] += [line(p) for p in paths]
        self._joined.clear()

    def dot(self, at: Point, size: float) -> None:
        """Keep texts off a point's mark."""
        box = (at.x - size, at.y - size, at.x + size, at.y + size)
        self.dots = np.vstack((self.dots, np.array(box)))

    def write_at_either(
        self, text: str, height: float, ends: tuple[Point, Point], role: Role
    ) -> tuple[Text | Stroke, ...]:
        """Write a level text near the end of a line that costs less; near the first if both do."""
        size = (width(text, height) * SLACK, (ABOVE + BELOW) * height)
        costs = [float(self._cost(near, size).min()) for near in ends]
        return self.write(text, height, ends[costs[1] < costs[0] - APART], role)

    def _cost(self, near: Point, size: tuple[float, float]) -> NDArray[np.float64]:
        """What the places round a point cost: distance and crossed lines; much where not free."""
        boxes, far = _around(near, size)
        free = self._free(boxes) & self._clear_of_texts(boxes, near, far)
        return np.where(free, far + self._crossed(boxes), 1e9 + far)

    def write(self, text: str, height: float, near: Point, role: Role) -> tuple[Text | Stroke, ...]:
        """Write a level text near a point: the text, and a leader where it stands apart.

        The cheapest free place round the point is taken; in a crowd that has none, the nearest
        free place of the whole figure, unless the text is too wide for the figure.
        """
        size = (width(text, height) * SLACK, (ABOVE + BELOW) * height)
        boxes, far = _around(near, size)
        free = self._free(boxes) & self._clear_of_texts(boxes, near, far)
        if not free.any() and (whole := self._anywhere(near, size))[1].size:
            boxes, far = whole
            free = self._free(boxes)
        best = int(np.argmin(np.where(free, far + self._crossed(boxes), 1e9 + far)))
        self.texts = np.vstack((self.texts, boxes[best]))
        left, low = boxes[best][0], boxes[best][1]
        written = Text(text, Point(float(left), float(low + BELOW * height)), height, role)
        return (written, *self._leader(near, boxes[best], far[best]))

    def _anywhere(
        self, near: Point, size: tuple[float, float]
    ) -> tuple[Boxes, NDArray[np.float64]]:
        """Boxes of a size all over the frame, and how far each lies from a point."""
        x0, y0, x1, y1 = self.frame
        xs, ys = np.arange(x0, x1 - size[0], GRID), np.arange(y0, y1 - size[1], GRID)
        left, low = (a.ravel() for a in np.meshgrid(xs, ys))
        boxes = np.stack((left, low, left + size[0], low + size[1]), axis=1)
        x, y = np.clip(near.x, left, boxes[:, 2]), np.clip(near.y, low, boxes[:, 3])
        return boxes, np.hypot(x - near.x, y - near.y)

    def _free(self, boxes: Boxes) -> NDArray[np.bool_]:
        """Which boxes lie inside the frame and off all texts and marks."""
        left, low, right, top = boxes.T
        x0, y0, x1, y1 = self.frame
        inside = (left >= x0) & (low >= y0) & (right <= x1) & (top <= y1)
        a, b, c, d = (np.concatenate((self.texts, self.dots))[:, k][None, :] for k in range(4))
        over = (
            (left[:, None] < c + APART)
            & (right[:, None] > a - APART)
            & (low[:, None] < d + APART)
            & (top[:, None] > b - APART)
        )
        return np.asarray(inside & ~over.any(axis=1))

    def _clear_of_texts(
        self, boxes: Boxes, near: Point, far: NDArray[np.float64]
    ) -> NDArray[np.bool_]:
        """Which leaders would cross no text that stands already."""
        if not len(self.texts):
            return np.ones(len(boxes), dtype=bool)
        texts = shapely.MultiPolygon([shapely.box(*box) for box in self.texts])
        shapely.prepare(texts)
        crossing = shapely.intersects(texts, _leaders(near, boxes))
        return np.asarray(~crossing | (far <= LEADER))

    def _crossed(self, boxes: Boxes) -> NDArray[np.float64]:
        """What each box pays for the lines under it."""
        areas = shapely.box(*boxes.T)
        cost = np.zeros(len(boxes))
        for price in (OVER_NEW, OVER_OLD):
            cost += price * shapely.intersects(self._lines(price), areas)
        if self.leaders:
            cost += OVER_LEADER * shapely.intersects(shapely.MultiLineString(self.leaders), areas)
        return cost

    def _lines(self, price: float) -> shapely.MultiLineString:
        if price not in self._joined:
            self._joined[price] = shapely.MultiLineString(self.lines[price])
            shapely.prepare(self._joined[price])
        return self._joined[price]

    def _leader(self, near: Point, box: Boxes, far: float) -> tuple[Stroke, ...]:
        if far <= LEADER:
            return ()
        end = _nearest(near, box)
        self.leaders.append(shapely.LineString([(near.x, near.y), (end.x, end.y)]))
        return (Stroke(polyline(near, end), Role.FAINT),)


def _around(near: Point, size: tuple[float, float]) -> tuple[Boxes, NDArray[np.float64]]:
    """Boxes of a size all round a point, and how far each lies from it."""
    turn = np.arange(DIRECTIONS) * (2 * np.pi / DIRECTIONS)
    far, turns = (a.ravel() for a in np.meshgrid(RINGS, turn, indexing="ij"))
    wide, high = size[0] / 2, size[1] / 2
    # as far from the point as needed for the box's near edge to stand `far` off
    reach = far + np.abs(np.cos(turns)) * wide + np.abs(np.sin(turns)) * high
    x, y = near.x + np.cos(turns) * reach, near.y + np.sin(turns) * reach
    return np.stack((x - wide, y - high, x + wide, y + high), axis=1), far


def _leaders(near: Point, boxes: Boxes) -> NDArray[np.object_]:
    """Lines from just beside the point to each box."""
    ends = np.stack(
        (np.clip(near.x, boxes[:, 0], boxes[:, 2]), np.clip(near.y, boxes[:, 1], boxes[:, 3])),
        axis=1,
    )
    starts = np.broadcast_to((near.x, near.y), ends.shape)
    return np.asarray(shapely.linestrings(np.stack((starts, ends), axis=1)))


def _nearest(near: Point, box: Boxes) -> Point:
    x, y = np.clip(near.x, box[0], box[2]), np.clip(near.y, box[1], box[3])
    return Point(float(x), float(y))
