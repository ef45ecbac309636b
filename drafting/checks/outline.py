"""Outlines as polylines for shapely, which answers what crosses and what lies inside."""

from __future__ import annotations

import math

import shapely

from drafting.geometry import JOIN, Path, Point, Segment
from drafting.pattern import Dart, Piece, Taken

FLAT = 0.005
"""Greatest error in cm of a flattened curve."""


def ring(piece: Piece) -> tuple[Segment, ...]:
    """All segments of the stitching line in order, whether or not their ends meet."""
    return tuple(s for edge in piece.edges for s in edge.path.segments)


def polygon(piece: Piece) -> shapely.Polygon:
    """The area inside the stitching line."""
    return area_of(Path(ring(piece)))


def wedge(taken: Taken) -> shapely.Polygon:
    """The area that a dart or a pleat takes away."""
    if isinstance(taken, Dart):
        corners: tuple[Point, ...] = (taken.first, taken.second, taken.point)
    else:
        corners = (*taken.two.flattened(FLAT), *reversed(taken.one.flattened(FLAT)))
    return shapely.Polygon([(p.x, p.y) for p in corners])


def area_of(path: Path) -> shapely.Polygon:
    """The area inside a closed path."""
    return shapely.Polygon(flat(path))


def flat(path: Path, tolerance: float = FLAT) -> list[tuple[float, float]]:
    """Corners of the flattened path; ends that meet within JOIN are one corner."""
    kept: list[tuple[float, float]] = []
    for p in path.coordinates(tolerance):
        if not kept or math.dist(p, kept[-1]) > JOIN:
            kept.append(p)
    if path.start.distance(path.end) <= JOIN:
        kept[-1] = kept[0]
    return kept


def is_simple(path: Path) -> bool:
    """Whether a closed path neither crosses nor touches itself."""
    return bool(shapely.LinearRing(flat(path)).is_simple)


def at(p: Point) -> shapely.Point:
    """The point for shapely."""
    return shapely.Point(p.x, p.y)
