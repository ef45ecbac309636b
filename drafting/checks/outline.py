"""Outlines as polylines for shapely, which answers what crosses and what lies inside.

To ask it costs more than its answer: all outlines of a pattern are given to it at once.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from itertools import chain
from typing import cast

import numpy as np
import shapely
from numpy.typing import NDArray

from drafting.geometry import JOIN, Path, Point, remembered
from drafting.pattern import Dart, Piece, Taken

Corners = list[tuple[float, float]]

Shapes = NDArray[np.object_]
"""Shapes of shapely, a row of them."""

FLAT = 0.002
"""Greatest error in cm of a flattened curve: two of them beside each other stay far below the
0.01 cm to which cutting lines keep their distance."""


@remembered
def ring(piece: Piece) -> Path:
    """All segments of the stitching line in order, whether or not their ends meet."""
    return Path(tuple([s for edge in piece.edges for s in edge.path.segments]))


class Held:
    """A closed line flattened, as shapely holds it.

    Attributes:
        ring: The line, whether or not its ends met.
        area: What lies inside it.
        simple: Whether it neither crosses nor touches itself.
    """

    __slots__ = ("area", "ring", "simple")

    def __init__(self, ring: shapely.LinearRing, area: shapely.Polygon, *, simple: bool) -> None:
        self.ring = ring
        self.area = area
        self.simple = simple


def hold(outlines: Iterable[Piece | Path]) -> None:
    """Give stitching lines (of pieces) and closed lines to shapely, all at once.

    Raises:
        ValueError: One of them has less than two corners.
    """
    fresh = [outline for outline in outlines if Held not in outline.memory]
    if fresh:
        rings = _rings([_corners(outline) for outline in fresh])
        areas, simple = _areas(rings), shapely.is_simple(rings).tolist()
        for outline, line, area, sound in zip(fresh, rings, areas, simple, strict=True):
            outline.memory[Held] = Held(line, area, simple=sound)


def held(outline: Piece | Path) -> Held:
    """A piece's stitching line or a closed line, as shapely holds it."""
    if Held not in outline.memory:
        hold([outline])
    found: Held = outline.memory[Held]
    return found


def _corners(outline: Piece | Path) -> Corners:
    """Corners of the flattened line; ends that meet within JOIN are one corner."""
    if isinstance(outline, Path):
        found = outline.coordinates(FLAT).copy()
    else:
        found = []
        for edge in outline.edges:
            line = edge.path.coordinates(FLAT)
            found += line[1:] if found and math.dist(found[-1], line[0]) <= JOIN else line
    if math.dist(found[-1], found[0]) <= JOIN:
        found[-1] = found[0]
    return found


def _rings(outlines: Sequence[Corners]) -> Shapes:
    """Closed lines through corners; where some lie on each other all are looked through."""
    points, of = numbered(outlines)
    steps = np.hypot(*(points[1:] - points[:-1]).T)
    if steps.min() <= JOIN and steps[of[1:] == of[:-1]].min() <= JOIN:
        points, of = numbered([_distinct(corners) for corners in outlines])
    return cast("Shapes", shapely.linearrings(points, indices=of))


def _areas(rings: shapely.LinearRing | Shapes) -> Shapes:
    return cast("Shapes", shapely.polygons(rings))


def numbered(lines: Sequence[Corners]) -> tuple[NDArray[np.float64], NDArray[np.int_]]:
    """All corners of some lines in one array, a row for each; and the number of its line."""
    counts = [len(line) for line in lines]
    numbers = chain.from_iterable(chain.from_iterable(lines))
    corners = np.fromiter(numbers, float, 2 * sum(counts)).reshape(-1, 2)
    return corners, np.repeat(np.arange(len(lines)), counts)


def wedges(taken: Sequence[Taken]) -> Shapes:
    """The areas that darts and pleats take away."""
    corners, of = numbered([around(one) for one in taken])
    return _areas(shapely.linearrings(corners, indices=of))


def around(taken: Taken) -> Corners:
    """The corners of the area that a dart or a pleat takes away."""
    if isinstance(taken, Dart):
        corners: tuple[Point, ...] = taken.around
    else:
        corners = (*taken.two.flattened(FLAT), *reversed(taken.one.flattened(FLAT)))
    return [(p.x, p.y) for p in corners]


def flat(path: Path, tolerance: float = FLAT) -> Corners:
    """Corners of the flattened path; ends that meet within JOIN are one corner."""
    return _distinct(path.coordinates(tolerance))


def _distinct(points: Corners) -> Corners:
    """Without points on top of each other; a line that comes back to its start closes exactly."""
    kept = points[:1]
    for p in points:
        if math.dist(p, kept[-1]) > JOIN:
            kept.append(p)
    if math.dist(kept[-1], kept[0]) <= JOIN:
        kept[-1] = kept[0]
    return kept


def at(p: Point) -> shapely.Point:
    """The point for shapely."""
    return shapely.Point(p.x, p.y)
