"""Where in an odd-shaped room a box of a given size lies free."""

from __future__ import annotations

from itertools import pairwise

import shapely
from shapely.geometry.base import BaseGeometry

ROW = 0.5
"""Room is sounded along level rows half a centimetre apart; the box found is proven exactly."""

TRIES = 30
"""So many of the best places are proven before a size is given up."""

Span = tuple[float, float]


class Area:
    """Free room, sounded once and asked many times. Units are the geometry's own (cm)."""

    def __init__(self, free: BaseGeometry) -> None:
        self.free = free
        self.low, self.middle = 0.0, 0.0
        self.rows: list[list[Span]] = []
        if not free.is_empty:
            shapely.prepare(free)
            self.low, self.middle = free.bounds[1], free.centroid.y
            self.rows = _spans(free)
        self.widest = max((b - a for row in self.rows for a, b in row), default=0.0)

    def place(self, wide: float, high: float) -> tuple[float, float] | None:
        """Lower left corner of a free box of that size, the nearest to the middle; or None."""
        count = int(high / ROW) + 1
        if wide > self.widest or count > len(self.rows):
            return None
        found = [
            (abs(self.low + ROW * start + high / 2 - self.middle), start, span)
            for start in range(len(self.rows) - count + 1)
            for span in _common(self.rows[start : start + count], wide)
        ]
        for _, start, (left, right) in sorted(found)[:TRIES]:
            x, y = (left + right - wide) / 2, self.low + ROW * (start + 0.02)
            if self.free.contains(shapely.box(x, y, x + wide, y + high)):
                return x, y
        return None


def _spans(free: BaseGeometry) -> list[list[Span]]:
    """What of each level row lies inside, by counting crossings (even-odd)."""
    _, low, _, high = free.bounds
    crossed: list[list[float]] = [[] for _ in range(int((high - low) / ROW) + 1)]
    for polygon in shapely.get_parts(free):
        for ring in shapely.get_rings(polygon):
            for (x0, y0), (x1, y1) in pairwise(shapely.get_coordinates(ring).tolist()):
                _cross(crossed, x0, (y0 - low) / ROW, x1, (y1 - low) / ROW)
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
