"""Shapes as stretches along narrow bands of the cloth, for finding room quickly.

A strip is cut lengthwise into bands. In each band a shape is one or more stretches from a least to
a greatest x; two shapes keep apart when their stretches do, in every band. Exact along the cloth,
on the safe side across it by up to a band. Centimetres.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import shapely
from numpy.lib.stride_tricks import sliding_window_view
from numpy.typing import NDArray

from drafting.laying.strip import Way

TINY = 1e-6
"""Stretches that meet to a hundredth of a micron only touch."""

NEARLY = 1.5
"""Between stretches of one band nearer than this, in cm, nothing is laid."""

Numbers = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Profile:
    """A way's clearance in bands.

    Attributes:
        way: Whose.
        left: Least x of each stretch, by band and stretch; where there is none, infinite.
        right: Greatest x, likewise; where there is none, minus infinite.
        inset: How far above the first band's lower edge the clearance may begin.
    """

    way: Way
    left: Numbers
    right: Numbers
    inset: float

    @property
    def bands(self) -> int:
        """How many bands it covers."""
        return len(self.left)


def profile(way: Way, clear: float, band: float, inset: float) -> Profile:
    """Cut a way's clearance into bands.

    Args:
        way: The way.
        clear: How far at most the clearance reaches below the outline, in cm.
        band: Breadth of a band in cm.
        inset: How far above the first band's lower edge the clearance may begin, under `band`.
    """
    x0, _, x1, high = way.clearance.bounds
    low = -clear
    count = max(1, int(np.ceil((high - low + inset) / band - TINY)))
    feet = low - inset + band * np.arange(count)
    ends = np.full(count, x0 - 1), np.full(count, x1 + 1)
    boxes = shapely.box(ends[0], feet, ends[1], feet + band)
    parts, rows = shapely.get_parts(shapely.intersection(way.clearance, boxes), return_index=True)
    solid = shapely.get_dimensions(parts) > 0
    return _profile(way, parts[solid], rows[solid], count, inset)


def _profile(
    way: Way, parts: NDArray[np.object_], rows: NDArray[np.intp], count: int, inset: float
) -> Profile:
    columns = np.arange(len(rows)) - np.searchsorted(rows, rows)
    left = np.full((count, int(columns.max()) + 1), np.inf)
    right = np.full_like(left, -np.inf)
    bounds = shapely.bounds(parts)
    left[rows, columns], right[rows, columns] = bounds[:, 0], bounds[:, 2]
    return Profile(way, left, right, inset)


class Taken:
    """The stretches of a strip that are taken. Used within one arrangement only."""

    def __init__(self, bands: int) -> None:
        self.left: Numbers = np.full((bands, 1), np.inf)
        self.right: Numbers = np.full((bands, 1), -np.inf)
        self.used = np.zeros(bands, dtype=np.intp)

    def add(self, shape: Profile, x: float, first: int) -> None:
        """Take what a shape covers, its zero at x and its first band at `first`."""
        rows = np.arange(first, first + shape.bands)
        for left, right in zip(shape.left.T, shape.right.T, strict=True):
            solid = np.isfinite(left)
            self._take(rows[solid], left[solid] + x, right[solid] + x)

    def _take(self, rows: NDArray[np.intp], left: Numbers, right: Numbers) -> None:
        """Take a stretch in each of some bands; one that nearly meets another makes it longer."""
        near = (self.left[rows] - NEARLY <= right[:, None]) & (
            self.right[rows] + NEARLY >= left[:, None]
        )
        meets = near.any(axis=1)
        columns = np.where(meets, near.argmax(axis=1), self.used[rows])
        self.used[rows[~meets]] += 1
        self._grow(int(columns.max()) + 1)
        self.left[rows, columns] = np.minimum(self.left[rows, columns], left)
        self.right[rows, columns] = np.maximum(self.right[rows, columns], right)

    def _grow(self, columns: int) -> None:
        more = columns - self.left.shape[1]
        if more > 0:
            self.left = np.pad(self.left, ((0, 0), (0, more)), constant_values=np.inf)
            self.right = np.pad(self.right, ((0, 0), (0, more)), constant_values=-np.inf)

    def least_x(self, shape: Profile, firsts: NDArray[np.intp], grid: Steps) -> Numbers:
        """The least x from 0 that is free for a shape, for each of several first bands.

        Args:
            shape: What to lay.
            firsts: Number of its first band, for each trial.
            grid: Which x are allowed.
        """
        low, high = self._forbidden(shape, firsts)
        x = grid.up(np.zeros(len(firsts)))
        open_ = np.arange(len(firsts))
        while len(open_):
            at = x[open_, None]
            hit = (at > low[open_] + TINY) & (at < high[open_] - TINY)
            beyond = np.max(np.where(hit, high[open_], -np.inf), axis=1, initial=-np.inf)
            moved = np.isfinite(beyond)
            open_ = open_[moved]
            x[open_] = grid.up(beyond[moved])
        return x

    def _forbidden(self, shape: Profile, firsts: NDArray[np.intp]) -> tuple[Numbers, Numbers]:
        """Open stretches of x that a shape must keep out of, by trial."""
        lefts = sliding_window_view(self.left, shape.bands, axis=0)[firsts]
        rights = sliding_window_view(self.right, shape.bands, axis=0)[firsts]
        low = (lefts[:, :, None, :] - shape.right.T[None, None, :, :]).reshape(len(firsts), -1)
        high = (rights[:, :, None, :] - shape.left.T[None, None, :, :]).reshape(len(firsts), -1)
        solid = np.isfinite(high).any(axis=0)
        return low[:, solid], high[:, solid]


@dataclass(frozen=True, slots=True)
class Steps:
    """Allowed values: `start` and every `step` from there; all, where the step is 0."""

    start: float = 0.0
    step: float = 0.0

    def up(self, x: Numbers) -> Numbers:
        """The least allowed values that are not less."""
        if not self.step:
            return x
        return self.start + self.step * np.ceil((x - self.start) / self.step - TINY)
