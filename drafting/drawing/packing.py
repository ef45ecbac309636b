"""Blocks packed beside each other on a strip of a given height that grows to the right.

Each block is known by its outline's least and greatest x in bands of its height. It is pushed from
the right against what already lies there, at the height and the way up that wastes least; where a
block leaves a gap to its left, a later one may go in. Lengths in cm, Y downward from the strip's
upper edge. Deterministic.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
import shapely
from numpy.typing import NDArray

GAP = 1.0
"""Cut lines stay at least this far apart, so that pieces can be cut out roughly first."""
AROUND = GAP / 2 + 0.03
"""Room kept round each block: half the gap, and what flattening its curves may have cut off."""
BAND = 1.0
"""Outlines are compared along bands of this height."""
HEIGHTS = 24
"""So many heights on the strip are tried for a block, evenly spread."""

Reach = NDArray[np.float64]

NOTHING: Reach = np.zeros(1)
CLOSE = 1e-6
"""Sums of rooms are as exact as this, cm."""


@dataclass(frozen=True, slots=True)
class Profile:
    """A block's least and greatest x in each band, from its top, with half the gap round it.

    `breadth` is the greatest x of all; `narrowest`, `widest` and `size` are the least, the
    greatest and the sum of the bands' breadths; `lead` is the sum of the least xs.
    """

    left: Reach
    right: Reach
    turned: bool
    bands: int
    breadth: float
    narrowest: float
    widest: float
    size: float
    lead: float

    @classmethod
    def of(cls, ring: Reach, count: int, *, turned: bool) -> Profile:
        """Of a closed polyline, Y downward from its top."""
        left, right = _reaches(ring, count)
        wide = right - left
        sums = (right.max(), wide.min(), wide.max(), wide.sum(), left.sum())
        return cls(left, right, turned, count, *map(float, sums))


Ways = tuple[Profile, ...]
"""A block as it stands, and on its head where it may be turned."""


@dataclass(frozen=True, slots=True)
class Laid:
    """One block's place: its profile, x of the profile's zero, and first band."""

    profile: Profile
    x: float
    band: int


def profiles(area: shapely.Polygon, *, may_turn: bool) -> Iterator[Profile]:
    """The ways up that an area may lie, upright first."""
    around = area.buffer(AROUND, quad_segs=8)
    _, low, _, high = around.bounds
    ring = shapely.get_coordinates(around.exterior)
    count = max(1, math.ceil((high - low) / BAND - 1e-9))
    yield Profile.of(np.column_stack((ring[:, 0], high - ring[:, 1])), count, turned=False)
    if may_turn:
        over = np.column_stack((-ring[:, 0], ring[:, 1] - low))
        yield Profile.of(over, count, turned=True)


def _reaches(ring: Reach, count: int) -> tuple[Reach, Reach]:
    """Least and greatest x of a closed polyline in each band of its height.

    They lie at corners or where the line crosses from one band to the next.
    """
    x, y = ring[:, 0], ring[:, 1] / BAND
    low, high = np.minimum(y[:-1], y[1:]), np.maximum(y[:-1], y[1:])
    first = np.floor(low).astype(np.int64) + 1
    times = np.maximum(0, np.ceil(high).astype(np.int64) - first)
    edge = np.repeat(np.arange(len(low)), times)
    line = first[edge] + np.arange(len(edge)) - (np.cumsum(times) - times)[edge]
    share = (line - y[edge]) / (y[edge + 1] - y[edge])
    met = x[edge] + share * (x[edge + 1] - x[edge])
    corners = np.concatenate((np.floor(y), np.ceil(y) - 1)).astype(np.int64)
    bands = np.concatenate((corners, line - 1, line)).clip(0, count - 1)
    xs = np.concatenate((x, x, met, met))
    left, right = np.full(count, np.inf), np.full(count, -np.inf)
    np.minimum.at(left, bands, xs)
    np.maximum.at(right, bands, xs)
    return left, right


def pack(blocks: tuple[Ways, ...], order: tuple[int, ...], bands: int) -> tuple[Laid, ...]:
    """The places of blocks, laid in an order on a strip so many bands high."""
    edge: Reach = np.zeros(bands)
    gaps: list[_Gap] = []
    laid: dict[int, Laid] = {}
    for i in order:
        found = next((p for gap in gaps if (p := gap.place(blocks[i]))), None)
        if found:
            laid[i] = found
            continue
        place = laid[i] = _best_place(blocks[i], edge)
        part = slice(place.band, place.band + place.profile.bands)
        reach = place.x + place.profile.left
        if (reach > edge[part]).any():
            gaps.append(_Gap(edge.copy(), part, reach))
        edge[part] = place.x + place.profile.right
    return tuple(laid[i] for i in range(len(blocks)))


class _Gap:
    """Free room to the left of a block that was pushed as far as it goes: from, to, per band."""

    def __init__(self, low: Reach, part: slice, high: Reach) -> None:
        self.low, self.high = low, low.copy()
        self.high[part] = high
        self._measure()

    def _measure(self) -> None:
        self.room = self.high - self.low
        self.widest = float(self.room.max())
        self.sums = np.concatenate((NOTHING, self.room.cumsum()))

    def place(self, ways: Ways) -> Laid | None:
        """Where a block fits in, as high up and as far left as it goes; takes the room up."""
        if self.widest < ways[0].widest or self.sums[-1] < ways[0].size - CLOSE:
            return None
        bands = ways[0].bands
        wide = self.sums[bands:] - self.sums[:-bands]
        (rows,) = (wide >= ways[0].size - CLOSE).nonzero()
        if not len(rows) or np.count_nonzero(self.room >= ways[0].narrowest) < bands:
            return None
        low, high = (_windows(reach, bands)[rows] for reach in (self.low, self.high))
        for profile in ways:
            least = (low - profile.left).max(axis=1)
            (fits,) = (least <= (high - profile.right).min(axis=1)).nonzero()
            if len(fits):
                band = int(rows[fits[0]])
                laid = Laid(profile, float(least[fits[0]]), band)
                self.low[band : band + bands] = laid.x + profile.right
                self._measure()
                return laid
        return None


def _windows(reach: Reach, length: int, step: int = 1) -> Reach:
    """All stretches of a length, a row each, as a view: every one, or every so many."""
    count = (len(reach) - length) // step + 1
    size = reach.itemsize
    return np.ndarray((count, length), reach.dtype, reach, 0, (size * step, size))


def _best_place(ways: Ways, edge: Reach) -> Laid:
    """The way up and the height at which the block reaches least far to the right."""
    bands = ways[0].bands
    step = max(1, (len(edge) - bands) // HEIGHTS)
    windows = _windows(edge, bands, step)
    taken = windows.sum(axis=1)
    xs = np.column_stack([(windows - profile.left).max(axis=1) for profile in ways])
    ends = (xs + [profile.breadth for profile in ways]).round(6)
    waste = (xs * bands - taken[:, None] + [profile.lead for profile in ways]).round(6)
    (nearest,) = (ends == ends.min()).ravel().nonzero()
    row, way = divmod(int(nearest[waste.ravel()[nearest].argmin()]), len(ways))
    return Laid(ways[way], float(xs[row, way]), row * step)
