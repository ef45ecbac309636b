"""Where in an odd-shaped room a box of a given size lies free."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

import shapely
from shapely.geometry.base import BaseGeometry

ROW, LEAST_ROW, ROWS = 0.5, 0.1, 40
"""Room is sounded along level rows half a centimetre apart, in small rooms closer, so that there
are 40 of them, but never under a millimetre. The box found is proven exactly."""

TRIES = 30
"""So many of the best places are proven before a size is given up."""

Span = tuple[float, float]


class Area:
    """Free room, sounded once and asked many times. Units are the geometry's own (cm)."""

    def __init__(self, free: BaseGeometry) -> None:
        self.free = free
        self.low, self.middle, self.row = 0.0, 0.0, ROW
        self.rows: list[list[Span]] = []
        if not free.is_empty:
            shapely.prepare(free)
            _, self.low, _, high = free.bounds
            self.middle = free.centroid.y
            self.row = max(LEAST_ROW, min(ROW, (high - self.low) / ROWS))
            self.rows = _spans(free, self.row)
        self.widest = max((b - a for row in self.rows for a, b in row), default=0.0)

    def place(self, wide: float, high: float) -> tuple[float, float] | None:
        """Lower left corner of a free box of that size, the nearest to the middle; or None."""
        count = int(high / self.row) + 1
        if wide > self.widest or count > len(self.rows):
            return None
        rows = [[span for span in row if span[1] - span[0] >= wide] for row in self.rows]
        narrow = [k for k, row in enumerate(rows) if not row]
        found = [
            (abs(self.low + self.row * start + high / 2 - self.middle), start, span)
            for start in _runs(len(rows), narrow, count)
            for span in _common(rows[start : start + count], wide)
        ]
        for _, start, (left, right) in sorted(found)[:TRIES]:
            x, y = (left + right - wide) / 2, self.low + self.row * (start + 0.02)
            if self.free.contains(shapely.box(x, y, x + wide, y + high)):
                return x, y
        return None


def _spans(free: BaseGeometry, apart: float) -> list[list[Span]]:
    """What of each level row lies inside, by counting crossings (even-odd)."""
    _, low, _, high = free.bounds
    crossed: list[list[float]] = [[] for _ in range(int((high - low) / apart) + 1)]
    for polygon in shapely.get_parts(free):
        for ring in shapely.get_rings(polygon):
            for (x0, y0), (x1, y1) in pairwise(shapely.get_coordinates(ring).tolist()):
                _cross(crossed, x0, (y0 - low) / apart, x1, (y1 - low) / apart)
    for row in crossed:
        row.sort()
    return [list(zip(row[::2], row[1::2], strict=False)) for row in crossed]


def _cross(crossed: list[list[float]], x0: float, y0: float, x1: float, y1: float) -> None:
    """Note where a stroke crosses the rows; heights counted in rows."""
    if y0 > y1:
        x0, y0, x1, y1 = x1, y1, x0, y0
    if y0 == y1:
        return
    slope = (x1 - x0) / (y1 - y0)
    first = int(y0) + (y0 > int(y0))
    last = int(y1) + (y1 > int(y1))
    for k in range(first, min(last, len(crossed))):  # the upper end belongs to the next stroke
        crossed[k].append(x0 + (k - y0) * slope)


def _runs(rows: int, narrow: list[int], count: int) -> Iterator[int]:
    """First rows of all runs of so many rows that hold no narrow one."""
    first = 0
    for end in (*narrow, rows):
        yield from range(first, end - count + 1)
        first = end + 1


def _common(rows: list[list[Span]], wide: float) -> list[Span]:
    """Stretches at least `wide` long that all the rows have."""
    common = rows[0]
    for row in rows[1:]:
        common = [
            (left, right)
            for a, b in common
            for c, d in row
            if (right := min(b, d)) - (left := max(a, c)) >= wide
        ]
        if not common:
            return []
    return [(a, b) for a, b in common if b - a >= wide]
