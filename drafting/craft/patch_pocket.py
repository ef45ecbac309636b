"""Patch pockets: a five-cornered patch, hemmed at its top and stitched on.

Source: on the back of trousers 13 to 15 cm wide at the top and 14 to 16 cm deep, 5 to 7 cm below
the seam over it and 4 to 5 cm from the centre back; on a shirt's chest 10 to 11.5 cm wide and 12 to
13.5 cm deep, 6 to 6.5 cm from the centre front: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from drafting.geometry import Path, Point, Vector, polyline
from drafting.pattern import Cut, Edge, Mark, Piece, Role


@dataclass(frozen=True, slots=True, kw_only=True)
class PatchShape:
    """A patch, in cm.

    Attributes:
        name: Of the piece.
        title: What is written on it.
        top: Width at the top.
        foot: Width where the point begins.
        depth: From the top to the point.
        tip: How far the point goes below its sides.
        hemmed: What is turned in at the top.
        quantity: How many are cut; two are a left and a right.
    """

    name: str = "back_patch"
    title: str = "Back patch pocket"
    top: float = 14.0
    foot: float = 12.0
    depth: float = 15.0
    tip: float = 1.5
    hemmed: float = 3.0
    quantity: int = 2


BACK_PATCH = PatchShape()

CHEST_PATCH = PatchShape(
    name="chest_pocket", title="Chest pocket", top=11.0, foot=11.0, depth=13.0, quantity=1
)

DOWN = 6.0
FROM_CENTRE = 4.5
HOLE_INSIDE = 0.3


@dataclass(frozen=True, slots=True)
class PatchPocket:
    """Patch pockets: the patch, and where it is stitched on."""

    piece: Piece
    marks: tuple[Mark, ...]


def patch_pocket(
    middle: Point, along: Vector, shape: PatchShape = BACK_PATCH, down: float = DOWN
) -> PatchPocket:
    """Set a patch pocket under a seam or a place.

    Args:
        middle: Where the pocket's plumb middle meets the seam over it, cm.
        along: Direction of the seam there, toward the side.
        shape: The patch.
        down: How far its top lies below the seam, cm.
    """
    return PatchPocket(_patch(shape), _marks(middle, along.unit, shape, down))


def _corners(shape: PatchShape, top: float) -> tuple[Point, ...]:
    """From the upper right corner round to it, `top` cm over the finished edge's level."""
    half, foot = shape.top / 2, shape.foot / 2
    side = shape.tip - shape.depth
    return (
        Point(half, top), Point(-half, top), Point(-half, 0),
        Point(-foot, side), Point(0, -shape.depth), Point(foot, side), Point(half, 0),
    )  # fmt: skip


def _patch(shape: PatchShape) -> Piece:
    corners = _corners(shape, shape.hemmed)
    names = ("top", "left_hem", "left", "left_foot", "right_foot", "right", "right_hem")
    ends = (*corners, corners[0])
    edges = tuple(
        Edge(name, polyline(a, b), Role.FINISHED, "pocket")
        for name, (a, b) in zip(names, pairwise(ends), strict=True)
    )
    half = shape.top / 2
    return Piece(
        name=shape.name,
        title=shape.title,
        cut=(Cut("main", shape.quantity, mirrored=shape.quantity == 2),),
        edges=edges,
        grain=(Point(0, -0.8 * shape.depth), Point(0, 0)),
        marks=(Mark("fold", polyline(Point(-half, 0), Point(half, 0))),),
    )


def _marks(middle: Point, along: Vector, shape: PatchShape, below: float) -> tuple[Mark, ...]:
    """The patch's outline on the panel, and two holes inside its upper corners."""
    down = along.left if along.left.y < 0 else along.right
    origin = middle + down * below

    def laid(x: float, y: float) -> Point:
        return origin + along * x + down * -y

    corners = tuple(laid(p.x, p.y) for p in _corners(shape, 0.0)[1:])
    holes = (laid(s * (shape.top / 2 - HOLE_INSIDE), -HOLE_INSIDE) for s in (-1.0, 1.0))
    return (
        Mark("placement", polyline(corners[-1], *corners)),
        *(Mark("drill", _dot(hole)) for hole in holes),
    )


def _dot(at: Point) -> Path:
    return polyline(at + Vector(-0.01, 0), at + Vector(0.01, 0))
