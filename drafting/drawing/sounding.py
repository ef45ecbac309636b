"""Where in an odd-shaped room a box of a given size lies free.

A grid of cells is laid over the room. A cell is free where nothing comes near any part of it, so a
box made of free cells is free. All cells together are the bits of one whole number, and whether a
box fits anywhere is told by a handful of shifts of it.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from functools import lru_cache
from typing import Any

import numpy as np
from numpy.typing import NDArray

from drafting.drawing.room import Bar, rows_of

CELL, CELLS = 0.8, 64
"""Cells are 0.8 cm wide and high; in a small room there are 64 of them either way."""

_BLOCKED, _TOUCHED = 1024.0, 1 / 1024
"""Steps down at a bar, more than the walls that may lie round a cell, and at a thin line, so small
that all that may touch a cell are less than a wall; all sums of them are exact."""

_FLAT = 1e-12
"""Stands for the rise of a level bar."""

Bars = Sequence[Bar]
Numbers = NDArray[np.float64]
Indices = NDArray[np.intp]


class Area:
    """Free room, sounded once and asked many times. Units are the bars' own (cm).

    Attributes:
        grid: Where the cells lie.
        bits: A bit for each cell, set where it is free, row by row from the lower left.
        level: Cells from which 1, 2, 4 and so on lie free to the right, as far as was asked.
        upright: The same upward.
    """

    def __init__(self, grid: Grid, bits: int) -> None:
        self.grid = grid
        self.bits = bits
        self.level = [bits]
        self.upright = [bits]

    @classmethod
    def sounded(cls, bars: Bars, angle: float = 0.0) -> Area:
        """The room between bars, in a frame turned by an angle in degrees."""
        ((area, _),) = sounded([turned(bars, angle)], [[]])
        return area

    def shrunk(self, margin: float) -> Area:
        """The same with so many cm more kept clear of everything."""
        columns, rows = self.grid.cells(margin, margin)
        bits = _eroded(self.bits, 2 * columns + 1, 1) << columns
        bits = _eroded(bits, 2 * rows + 1, self.grid.stride) << rows * self.grid.stride
        return Area(self.grid, bits)

    def within(self, other: Area) -> Area:
        """What is free in both; their cells are the same."""
        return Area(self.grid, self.bits & other.bits)

    def quarter_turned(self) -> Area:
        """The same room in a frame turned by 90 degrees, nothing sounded again."""
        old, stride = self.grid, self.grid.stride
        raw = np.frombuffer(self.bits.to_bytes(old.rows * stride // 8 + 1, "little"), np.uint8)
        every = np.unpackbits(raw, count=old.rows * stride, bitorder="little")
        edge = -(old.left + old.columns * old.wide)
        grid = Grid(old.low, edge, old.rows, old.columns, old.high, old.wide)
        cells = np.zeros((grid.rows, grid.stride), bool)
        cells[:, :-1] = every.reshape(old.rows, stride)[:, -2::-1].T
        return Area(grid, _bits(cells))

    def fits(self, wide: float, high: float) -> bool:
        """Whether a box of that size lies free anywhere."""
        columns, rows = self.grid.cells(wide, high)
        return self._corners(columns, rows) > 0

    def place(self, wide: float, high: float) -> tuple[float, float] | None:
        """Lower left corner of a free box of that size, the nearest to the middle; or None."""
        grid = self.grid
        columns, rows = grid.cells(wide, high)
        corners, line = self._corners(columns, rows), (1 << grid.stride) - 1
        if not corners:
            return None
        middle = self._middle() - rows / 2
        lowest, highest = (corners & -corners).bit_length() - 1, corners.bit_length() - 1
        ways = range(lowest // grid.stride, highest // grid.stride + 1)
        row = min(
            (k for k in ways if corners >> k * grid.stride & line), key=lambda k: abs(k - middle)
        )
        first, count = _longest_run(corners >> row * grid.stride & line)
        x = grid.left + (first + (count - 1 + columns) / 2) * grid.wide - wide / 2
        return x, grid.low + (row + rows / 2) * grid.high - high / 2

    def _corners(self, columns: int, rows: int) -> int:
        """The cells, as bits, that are the lower left ones of a free box."""
        if columns > self.grid.columns or rows > self.grid.rows:
            return 0
        if columns < rows:
            return _eroded(_run(self.upright, rows, self.grid.stride), columns, 1)
        return _eroded(_run(self.level, columns, 1), rows, self.grid.stride)

    def _middle(self) -> float:
        """The height of the middle of all that is free, in rows."""
        having = _numbered(self.grid.rows, self.grid.stride)
        moment = sum([(self.bits & rows).bit_count() << digit for digit, rows in enumerate(having)])
        return moment / (self.bits.bit_count() or 1) + 0.5


class Grid:
    """Cells laid over a room: lower left corner, how many there are, and the size of each.

    Attributes:
        stride: Bits from a cell to the one over it; each row ends with one that is never free.
    """

    def __init__(
        self, left: float, low: float, columns: int, rows: int, wide: float, high: float
    ) -> None:
        self.left = left
        self.low = low
        self.columns = columns
        self.rows = rows
        self.wide = wide
        self.high = high
        self.stride = columns + 1

    @classmethod
    def over(cls, walls: Bars) -> Grid:
        """Cells over all that the walls bound."""
        left, low, right, top = _bounds(walls)
        (columns, wide), (rows, high) = _cells(right - left), _cells(top - low)
        return cls(left, low, columns, rows, wide, high)

    def cells(self, wide: float, high: float) -> tuple[int, int]:
        """Columns and rows that a box takes."""
        return math.ceil(wide / self.wide), math.ceil(high / self.high)


def sounded(rooms: Sequence[Bars], thinly: Sequence[Bars]) -> tuple[tuple[Area, Area], ...]:
    """What lies free between the bars of each room, and what of that its thin lines leave.

    All are sounded at once: arrays are cheap by the length, not the call. Thin lines are no walls.
    """
    grids = [Grid.over([bar for bar in bars if bar[5]]) for bars in rooms]
    levels = _steps(grids, rooms, thinly)
    np.cumsum(levels, out=levels)
    free = levels > 0
    clear = free & (levels == np.floor(levels))
    return tuple(
        (Area(grid, bits), Area(grid, others))
        for grid, bits, others in zip(
            grids, _packed(grids, free), _packed(grids, clear), strict=True
        )
    )


def _steps(grids: Sequence[Grid], rooms: Sequence[Bars], thinly: Sequence[Bars]) -> Numbers:
    """Steps from cell to cell of each row of each grid; at the end of a row all are made up for.

    Far down where a bar comes near, a little where a thin line does, and up again behind it; one
    up behind a wall that runs down, one down behind a wall that runs up.
    """
    every = [*rooms, *thinly]
    bars = rows_of([bar for room in every for bar in room])
    of = np.repeat(np.tile(np.arange(len(rooms)), 2), [len(room) for room in every])
    deep = np.where(np.arange(len(bars)) < sum([len(room) for room in rooms]), -_BLOCKED, -_TOUCHED)
    cells = [grid.rows * grid.stride for grid in grids]
    starts = np.cumsum([0, *cells[:-1]])
    told = np.array([(g.left, g.low, g.wide, g.high, g.rows, g.columns) for g in grids])[of].T
    _, y0, _, y1 = ends = (bars[:, :4].T - told[[0, 1, 0, 1]]) / told[[2, 3, 2, 3]]
    wide, high, rows = told[2:5]
    above = bars[:, 4] / high
    bottom, top = np.minimum(y0, y1), np.maximum(y0, y1)
    at, row = _met(np.floor(bottom - above), np.floor(top + above) + 1, rows)
    bar, above, aside, columns = ends[:, at], above[at], (bars[:, 4] / wide)[at], told[5, at]
    one, two = _across(bar, row - above), _across(bar, row + 1 + above)
    wall = (bars[at, 5] > 0) & (bottom[at] <= row + 0.5) & (row + 0.5 < top[at])
    middle = _across(bar[:, wall], row[wall] + 0.5)
    near, behind = np.floor(np.minimum(one, two) - aside), np.floor(np.maximum(one, two) + aside)
    column = np.concatenate([near, behind + 1, np.ceil(middle - 0.5)])
    step = np.concatenate([deep[at], -deep[at], np.sign(bar[1, wall] - bar[3, wall])])
    first = starts[of[at]] + row * (columns + 1)
    first, columns = (np.concatenate([each, each, each[wall]]) for each in (first, columns))
    cell = (first + np.minimum(np.maximum(column, 0), columns)).astype(np.intp)
    steps: NDArray[Any] = np.bincount(cell, step, sum(cells))
    return steps


def _packed(grids: Sequence[Grid], free: NDArray[Any]) -> Iterator[int]:
    """Cells of each grid as bits, row by row; the last one of each row is never free."""
    at = 0
    for grid in grids:
        end = at + grid.rows * grid.stride
        free[at + grid.columns : end : grid.stride] = False
        yield _bits(free[at:end])
        at = end


def _bits(cells: NDArray[Any]) -> int:
    return int.from_bytes(np.packbits(cells, bitorder="little").tobytes(), "little")


def turned(bars: Bars, angle: float) -> Bars:
    """Bars in a frame that is turned by an angle in degrees."""
    if not angle:
        return bars
    c, s = math.cos(math.radians(angle)), -math.sin(math.radians(angle))
    return [
        (x0 * c - y0 * s, x0 * s + y0 * c, x1 * c - y1 * s, x1 * s + y1 * c, off, wall)
        for x0, y0, x1, y1, off, wall in bars
    ]


def _bounds(walls: Bars) -> tuple[float, float, float, float]:
    """Least x, least y, greatest x, greatest y of a closed line; noughts where there is none."""
    if not walls:
        return 0.0, 0.0, 0.0, 0.0
    xs, ys = [bar[0] for bar in walls], [bar[1] for bar in walls]
    return min(xs), min(ys), max(xs), max(ys)


def _cells(length: float) -> tuple[int, float]:
    """How many cells there are on a length, and how long each is."""
    count = max(CELLS, math.ceil(length / CELL))
    return count, (length or 1.0) / count


def _met(first: Numbers, end: Numbers, rows: Numbers) -> tuple[Indices, Indices]:
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


def _run(known: list[int], count: int, stride: int) -> int:
    """The same as `_eroded`, of bits from which 1, 2, 4 and so on in a row are known to be set."""
    power = count.bit_length() - 1
    while len(known) <= power:
        last = known[-1]
        known.append(last & last >> (stride << len(known) - 1))
    bits = known[power]
    return bits & bits >> (count - (1 << power)) * stride


def _eroded(bits: int, count: int, stride: int) -> int:
    """The bits from which so many in a row are set, `stride` apart."""
    known = 1
    while known * 2 <= count:
        bits &= bits >> known * stride
        known *= 2
    return bits & bits >> (count - known) * stride


@lru_cache(maxsize=64)
def _numbered(rows: int, stride: int) -> tuple[int, ...]:
    """For each binary digit of the numbers of rows, from 0: the cells of the rows that have it."""
    return tuple(_sheaves(rows, 1 << digit, stride) for digit in range(rows.bit_length()))


def _sheaves(rows: int, height: int, stride: int) -> int:
    """The cells of so many rows after as many others, and so on."""
    bits = ((1 << height * stride) - 1) << height * stride
    known = 2 * height
    while known < rows:
        bits |= bits << known * stride
        known *= 2
    return bits


def _longest_run(bits: int) -> tuple[int, int]:
    """First bit and length of the longest run of set bits; the first of several."""
    length, last = 0, 0
    while bits:
        last = bits
        bits &= bits >> 1
        length += 1
    return (last & -last).bit_length() - 1, length
