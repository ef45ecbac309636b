"""Where in an odd-shaped room a box of a given size lies free.

A grid of cells is laid over the room. A cell is free where nothing comes near any part of it, so a
box made of free cells is free. All cells together are the bits of one whole number, and whether a
box fits anywhere is told by a handful of shifts of it.
"""

from __future__ import annotations

import math
from typing import Any

import numpy as np
from numpy.typing import NDArray

from drafting.drawing.room import Bars

CELL, CELLS = 0.8, 64
"""Cells are 0.8 cm wide and high; in a small room there are 64 of them either way."""

_BLOCKED = 1024.0
"""More than the walls that may lie round a cell."""

_FLAT = 1e-12
"""Stands for the rise of a level bar."""

Numbers = NDArray[np.float64]
Indices = NDArray[np.intp]


class Area:
    """Free room, sounded once and asked many times. Units are the bars' own (cm)."""

    def __init__(self, bars: Bars, angle: float = 0.0) -> None:
        rows = _turned(bars, -angle) if angle else bars
        walls = rows[rows[:, 5] > 0]
        self.left, self.low, right, top = _bounds(walls)
        self.columns, self.wide = _cells(right - self.left)
        self.rows, self.high = _cells(top - self.low)
        self.stride = self.columns + 1
        free = self._free(rows) if len(walls) else np.zeros((0, 1), bool)
        self.bits = int.from_bytes(np.packbits(free, bitorder="little").tobytes(), "little")
        count = int(free.sum())
        self.size = count * self.wide * self.high
        self.middle = float(free.sum(axis=1) @ np.arange(len(free))) / max(1, count) + 0.5

    def fits(self, wide: float, high: float) -> bool:
        """Whether a box of that size lies free anywhere."""
        if wide * high > self.size:
            return False
        return self._corners(math.ceil(wide / self.wide), math.ceil(high / self.high)) > 0

    def place(self, wide: float, high: float) -> tuple[float, float] | None:
        """Lower left corner of a free box of that size, the nearest to the middle; or None."""
        columns, rows = math.ceil(wide / self.wide), math.ceil(high / self.high)
        corners, line = self._corners(columns, rows), (1 << self.stride) - 1
        if not corners:
            return None
        order = sorted(range(self.rows), key=lambda k: abs(k + rows / 2 - self.middle))
        row = next(k for k in order if corners >> k * self.stride & line)
        first, count = _longest_run(corners >> row * self.stride & line)
        x = self.left + (first + (count - 1 + columns) / 2) * self.wide - wide / 2
        return x, self.low + (row + rows / 2) * self.high - high / 2

    def _corners(self, columns: int, rows: int) -> int:
        """The cells, as bits, that are the lower left ones of a free box."""
        if columns > self.columns or rows > self.rows:
            return 0
        return _eroded(_eroded(self.bits, rows, self.stride), columns, 1)

    def _free(self, bars: Bars) -> NDArray[np.bool_]:
        """Which cells are free; behind the last of each row stands one that is not."""
        size = np.array([self.wide, self.high, self.wide, self.high])
        ends = ((bars[:, :4] - (self.left, self.low, self.left, self.low)) / size).T
        off = bars[:, 4] / self.wide, bars[:, 4] / self.high
        marks = [*self._blocked(ends, *off), *self._bounded(ends[:, bars[:, 5] > 0])]
        at = np.concatenate([place for place, _ in marks])
        by = np.concatenate([height for _, height in marks])
        steps = np.bincount(at, by, self.rows * self.stride).reshape(self.rows, self.stride)
        free: NDArray[np.bool_] = steps.cumsum(axis=1) > 0
        return free

    def _blocked(
        self, ends: Numbers, aside: Numbers, above: Numbers
    ) -> tuple[tuple[Indices, Numbers], ...]:
        """Steps down and up again where bars come near."""
        bottom, top = np.minimum(ends[1], ends[3]) - above, np.maximum(ends[1], ends[3]) + above
        at, row = _met(np.floor(bottom), np.floor(top) + 1, self.rows)
        bar, above, aside = ends[:, at], above[at], aside[at]
        one, two = _across(bar, row - above), _across(bar, row + 1 + above)
        start = self._cell(row, np.floor(np.minimum(one, two) - aside))
        end = self._cell(row, np.floor(np.maximum(one, two) + aside) + 1)
        down = np.full(len(at), -_BLOCKED)
        return (start, down), (end, -down)

    def _bounded(self, ends: Numbers) -> tuple[tuple[Indices, Numbers]]:
        """A step up where a wall that runs down lies to the left of a cell, and down for others."""
        bottom, top = np.minimum(ends[1], ends[3]), np.maximum(ends[1], ends[3])
        at, row = _met(np.ceil(bottom - 0.5), np.ceil(top - 0.5), self.rows)
        wall = ends[:, at]
        cell = self._cell(row, np.ceil(_across(wall, row + 0.5) - 0.5))
        return ((cell, np.sign(wall[1] - wall[3])),)

    def _cell(self, row: Indices, column: Numbers) -> Indices:
        inside = np.minimum(np.maximum(column, 0), self.columns).astype(np.intp)
        return row * self.stride + inside


def _turned(bars: Bars, degrees: float) -> Bars:
    c, s = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    x, y = bars[:, (0, 2)], bars[:, (1, 3)]
    u, v = x * c - y * s, x * s + y * c
    return np.column_stack([u[:, 0], v[:, 0], u[:, 1], v[:, 1], bars[:, 4:]])


def _bounds(walls: Bars) -> tuple[float, float, float, float]:
    """Least x, least y, greatest x, greatest y of a closed line; noughts where there is none."""
    if not len(walls):
        return 0.0, 0.0, 0.0, 0.0
    (left, low), (right, top) = walls[:, :2].min(axis=0), walls[:, :2].max(axis=0)
    return float(left), float(low), float(right), float(top)


def _cells(length: float) -> tuple[int, float]:
    """How many cells there are on a length, and how long each is."""
    count = max(CELLS, math.ceil(length / CELL))
    return count, (length or 1.0) / count


def _met(first: Numbers, end: Numbers, rows: int) -> tuple[Indices, Indices]:
    """Every meeting of a bar with a row: number of the bar and of the row."""
    low = np.minimum(np.maximum(first, 0), rows).astype(np.intp)
    count = np.maximum(np.minimum(end, rows).astype(np.intp) - low, 0)
    at = np.repeat(np.arange(len(low)), count)
    return at, np.arange(len(at)) - np.repeat(np.cumsum(count) - count - low, count)


def _across(bar: Numbers, level: NDArray[Any]) -> Numbers:
    """How far across bars are at a level, or at the end that is nearest to it."""
    x0, y0, x1, y1 = bar
    rise = y1 - y0
    share = (level - y0) / np.where(rise == 0, _FLAT, rise)
    found: Numbers = x0 + (x1 - x0) * np.minimum(np.maximum(share, 0), 1)
    return found


def _eroded(bits: int, count: int, stride: int) -> int:
    """The bits from which so many in a row are set, `stride` apart."""
    known = 1
    while known * 2 <= count:
        bits &= bits >> known * stride
        known *= 2
    return bits & bits >> (count - known) * stride


def _longest_run(bits: int) -> tuple[int, int]:
    """First bit and length of the longest run of set bits; the first of several."""
    runs = (len(run) for run in bin(bits)[:1:-1].split("0"))
    best, at, place = (0, 0), 0, 0
    for length in runs:
        at, place = place, place + length + 1
        if length > best[1]:
            best = (at, length)
    return best
