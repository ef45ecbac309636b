"""Outlines as polylines for shapely, which answers what crosses and what lies inside."""

from __future__ import annotations

import shapely

from drafting.geometry import Path, Point, Segment
from drafting.pattern import Piece

FLAT = 0.005
"""Greatest error in cm of a flattened curve."""


def ring(piece: Piece) -> tuple[Segment, ...]:
    """All segments of the stitching line in order, whether or not their ends meet."""
    return tuple(s for edge in piece.edges for s in edge.path.segments)


def polygon(piece: Piece) -> shapely.Polygon:
    """The area inside the stitching line."""
    return area_of(Path(ring(piece)))


def area_of(path: Path) -> shapely.Polygon:
    """The area inside a closed path."""
    return shapely.Polygon(flat(path))


def flat(path: Path, tolerance: float = FLAT) -> list[tuple[float, float]]:
    """Corners of the flattened path, none twice in a row."""
    kept: list[tuple[float, float]] = []
    for p in path.flattened(tolerance):
        if not kept or abs(p.x - kept[-1][0]) + abs(p.y - kept[-1][1]) > 1e-9:
            kept.append((p.x, p.y))
    return kept


def is_simple(path: Path) -> bool:
    """Whether a closed path neither crosses nor touches itself."""
    return bool(shapely.LinearRing(flat(path)).is_simple)


def at(p: Point) -> shapely.Point:
    """The point for shapely."""
    return shapely.Point(p.x, p.y)
