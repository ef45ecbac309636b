"""The patch pocket on the back: a five-cornered patch, hemmed at its top and stitched on.

Source: 13 to 15 cm wide at the top and 14 to 16 cm deep, 5 to 7 cm below the seam over it and 4 to
5 cm from the centre back: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from drafting.geometry import Path, Point, Vector, polyline
from drafting.pattern import Cut, Edge, Mark, Piece, Role

TOP_WIDTH, FOOT_WIDTH, DEPTH, TIP = 14.0, 12.0, 15.0, 1.5
HEMMED = 3.0
DOWN = 6.0
FROM_CENTRE = 4.5
HOLE_INSIDE = 0.3


@dataclass(frozen=True, slots=True)
class PatchPocket:
    """A pair of patch pockets: the patch, and where it is stitched on."""

    piece: Piece
    marks: tuple[Mark, ...]


def patch_pocket(middle: Point, along: Vector) -> PatchPocket:
    """Set a patch pocket under a seam.

    Args:
        middle: Where the pocket's plumb middle meets the seam over it, on the back, cm.
        along: Direction of the seam there, toward the side.
    """
    return PatchPocket(_patch(), _marks(middle, along.unit))


def _corners(top: float) -> tuple[Point, ...]:
    """From the upper right corner round to it, `top` cm over the finished edge's level."""
    half, foot = TOP_WIDTH / 2, FOOT_WIDTH / 2
    return (
        Point(half, top), Point(-half, top), Point(-half, 0),
        Point(-foot, TIP - DEPTH), Point(0, -DEPTH), Point(foot, TIP - DEPTH), Point(half, 0),
    )  # fmt: skip


def _patch() -> Piece:
    corners = _corners(HEMMED)
    names = ("top", "left_hem", "left", "left_foot", "right_foot", "right", "right_hem")
    ends = (*corners, corners[0])
    edges = tuple(
        Edge(name, polyline(a, b), Role.FINISHED, "pocket")
        for name, (a, b) in zip(names, pairwise(ends), strict=True)
    )
    half = TOP_WIDTH / 2
    return Piece(
        name="back_patch",
        title="Back patch pocket",
        cut=(Cut("main", 2, mirrored=True),),
        edges=edges,
        grain=(Point(0, -0.8 * DEPTH), Point(0, 0)),
        marks=(Mark("fold", polyline(Point(-half, 0), Point(half, 0))),),
    )


def _marks(middle: Point, along: Vector) -> tuple[Mark, ...]:
    """The patch's outline on the back, and two holes inside its upper corners."""
    down = along.left if along.left.y < 0 else along.right
    origin = middle + down * DOWN

    def laid(x: float, y: float) -> Point:
        return origin + along * x + down * -y

    corners = tuple(laid(p.x, p.y) for p in _corners(0.0)[1:])
    holes = (laid(s * (TOP_WIDTH / 2 - HOLE_INSIDE), -HOLE_INSIDE) for s in (-1.0, 1.0))
    return (
        Mark("placement", polyline(corners[-1], *corners)),
        *(Mark("drill", _dot(hole)) for hole in holes),
    )


def _dot(at: Point) -> Path:
    return polyline(at + Vector(-0.01, 0), at + Vector(0.01, 0))
