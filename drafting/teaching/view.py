"""A window on the draft at a scale: from the draft's cm to the paper's."""

from __future__ import annotations

from dataclasses import dataclass

import shapely

from drafting.drawing.shapes import line
from drafting.geometry import Path, Point, Transform, polyline

FLAT = 0.002
"""Lines that the window cuts are flattened to this (cm), so that no detail shows facets."""

Box = tuple[float, float, float, float]
"""Left, low, right, top in cm."""


@dataclass(frozen=True, slots=True)
class View:
    """A window on the draft.

    Attributes:
        window: What is seen, in the draft's cm.
        scale: 1 cm of paper shows so many cm of the draft.
        margin: Free paper round the window, for texts, cm.
    """

    window: Box
    scale: float
    margin: float = 0.3

    @property
    def width(self) -> float:
        """Breadth of the figure on paper, cm."""
        return (self.window[2] - self.window[0]) / self.scale + 2 * self.margin

    @property
    def height(self) -> float:
        """Height of the figure on paper, cm."""
        return (self.window[3] - self.window[1]) / self.scale + 2 * self.margin

    @property
    def to(self) -> Transform:
        """From the draft to the paper, origin at the figure's lower left corner."""
        share = 1 / self.scale
        left, low = self.window[:2]
        return Transform(share, 0, 0, share, self.margin - left * share, self.margin - low * share)

    def sees(self, point: Point) -> bool:
        """Whether a point of the draft lies in the window."""
        left, low, right, top = self.window
        return left <= point.x <= right and low <= point.y <= top

    def paths(self, path: Path) -> tuple[Path, ...]:
        """A line of the draft as it is seen on paper: whole, in parts, or not at all."""
        left, low, right, top = path.bounds()
        if self.sees(Point(left, low)) and self.sees(Point(right, top)):
            return (path.transformed(self.to),)
        cut = shapely.intersection(line(path, FLAT), shapely.box(*self.window))
        parts = getattr(cut, "geoms", (cut,))
        return tuple(
            polyline(*(Point(*xy) for xy in part.coords)).transformed(self.to)
            for part in parts
            if isinstance(part, shapely.LineString) and len(part.coords) > 1
        )


def around(points: list[Point], room: float) -> Box:
    """The box round some points, with room on all sides, cm."""
    return (
        min(p.x for p in points) - room,
        min(p.y for p in points) - room,
        max(p.x for p in points) + room,
        max(p.y for p in points) + room,
    )
