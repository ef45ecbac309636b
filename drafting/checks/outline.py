"""Outlines as polylines for shapely, which answers what crosses and what lies inside."""

from __future__ import annotations

import math
from typing import cast

import shapely

from drafting.geometry import JOIN, Path, Point, array_of, remembered
from drafting.pattern import Dart, Piece, Taken

Corners = list[tuple[float, float]]

FLAT = 0.002
"""Greatest error in cm of a flattened curve: two of them beside each other stay far below the
0.01 cm to which cutting lines keep their distance."""


@remembered
def ring(piece: Piece) -> Path:
    """All segments of the stitching line in order, whether or not their ends meet."""
    return Path(tuple([s for edge in piece.edges for s in edge.path.segments]))


@remembered
def polygon(piece: Piece) -> shapely.Polygon:
    """The area inside the stitching line."""
    return shapely.polygons(_closed(piece))


@remembered
def is_simple_outline(piece: Piece) -> bool:
    """Whether the stitching line neither crosses nor touches itself."""
    return bool(shapely.is_simple(_closed(piece)))


@remembered
def _closed(piece: Piece) -> shapely.LinearRing:
    """The flattened stitching line, whether or not its ends meet."""
    points = [p for edge in piece.edges for p in edge.path.coordinates(FLAT)]
    return _ring(_distinct(points))


def wedge(taken: Taken) -> shapely.Polygon:
    """The area that a dart or a pleat takes away."""
    if isinstance(taken, Dart):
        corners: tuple[Point, ...] = taken.around
    else:
        corners = (*taken.two.flattened(FLAT), *reversed(taken.one.flattened(FLAT)))
    return shapely.polygons([(p.x, p.y) for p in corners])


@remembered
def area_of(path: Path) -> shapely.Polygon:
    """The area inside a closed path."""
    return shapely.polygons(closed(path))


@remembered
def closed(path: Path) -> shapely.LinearRing:
    """A closed path."""
    return _ring(flat(path))


@remembered
def is_simple(path: Path) -> bool:
    """Whether a closed path neither crosses nor touches itself."""
    return bool(shapely.is_simple(closed(path)))


def _ring(points: Corners) -> shapely.LinearRing:
    return cast("shapely.LinearRing", shapely.linearrings(array_of(points)))


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
