"""The bridge from exact paths to polygons, for questions of room: what lies in what."""

from __future__ import annotations

import shapely

from drafting.geometry import Path

FLAT = 0.02
"""Room is judged on curves flattened to 0.02 cm: a pencil line's breadth, far below any gap."""


def polygon(path: Path, flat: float = FLAT) -> shapely.Polygon:
    """The area inside a closed path, flattened to `flat` cm."""
    return shapely.Polygon(path.coordinates(flat))


def line(path: Path, flat: float = FLAT) -> shapely.LineString:
    """A path as a line, flattened to `flat` cm."""
    return shapely.LineString(path.coordinates(flat))
