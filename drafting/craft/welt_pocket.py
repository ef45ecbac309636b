"""The back welt pocket: a slit with a folded welt, and a bag that hangs from the waist seam.

Source: welts 13 to 14 cm long and 1 cm wide, 6 to 8 cm below the waist and parallel to it, the
darts ending in the welt, bags 17 cm wide; drill holes 3 mm inside the corners: common practice, no
source.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.geometry import Path, Point, Vector, polyline
from drafting.pattern import Cut, Edge, Mark, Notch, Piece, Role, Seam, SeamPart

WELT_LENGTH, WELT_WIDTH = 13.5, 1.0
WELT_DOWN = 7.5
BAG_WIDTH, BAG_BELOW = 17.0, 14.0
HOLE_INSIDE = 0.3
FACING_DEPTH = 6.0


@dataclass(frozen=True, slots=True)
class WeltPocket:
    """A pair of welt pockets.

    Attributes:
        pieces: Welt, facing, bag.
        seams: The bag's sides.
        marks: Where the welt lies on the back, and the holes at the slit's ends.
    """

    pieces: tuple[Piece, ...]
    seams: tuple[Seam, ...]
    marks: tuple[Mark, ...]


def welt_pocket(waist: Path, middle: Point, along: Vector) -> WeltPocket:
    """Set a welt pocket under a waist.

    Args:
        waist: The waist seam over the pocket with the darts closed, its middle over the pocket's,
            from the centre to the side, BAG_WIDTH long, cm.
        middle: Where the middle of the pocket meets the waist, on the back.
        along: Direction of the waist there, toward the side.
    """
    return WeltPocket(
        pieces=(WELT, FACING, _bag(waist)),
        seams=SEAMS,
        marks=_marks(middle, along.unit),
    )


def _marks(middle: Point, along: Vector) -> tuple[Mark, ...]:
    """The welt's rectangle and two holes, on the back, WELT_DOWN below the waist."""
    down = along.left if along.left.y < 0 else along.right
    centre = middle + down * WELT_DOWN
    half = WELT_LENGTH / 2
    top, foot = down * (-WELT_WIDTH / 2), down * (WELT_WIDTH / 2)
    ends = (along * -half, along * half)
    box = polyline(
        centre + ends[0] + top, centre + ends[1] + top, centre + ends[1] + foot,
        centre + ends[0] + foot, centre + ends[0] + top,
    )  # fmt: skip
    holes = (centre + along * (HOLE_INSIDE - half), centre + along * (half - HOLE_INSIDE))
    slit = polyline(*holes)
    crosses = tuple(Mark("drill", _dot(h)) for h in holes)
    return (Mark("placement", box), Mark("placement", slit), *crosses)


def _dot(at: Point) -> Path:
    return polyline(at + Vector(-0.01, 0), at + Vector(0.01, 0))


def _rectangle(
    name: str, title: str, width: float, height: float, fold: float | None, *cut: Cut
) -> Piece:
    """A strip that is stitched down along all its edges, the grain across its length."""
    corners = (
        Point(width, 0),
        Point(width, height),
        Point(0, height),
        Point(0, 0),
        Point(width, 0),
    )
    names = ("right_end", "upper", "left_end", "lower")
    edges = tuple(
        Edge(edge, polyline(a, b), Role.FINISHED, "pocket")
        for edge, a, b in zip(names, corners, corners[1:], strict=False)
    )
    middle = width / 2
    marks = () if fold is None else (Mark("fold", polyline(Point(0, fold), Point(width, fold))),)
    grain = (Point(middle, 0.15 * height), Point(middle, 0.85 * height))
    return Piece(name=name, title=title, cut=cut, edges=edges, grain=grain, marks=marks)


WELT = _rectangle(
    "back_welt", "Back welt", WELT_LENGTH, 2 * WELT_WIDTH, WELT_WIDTH,
    Cut("main", 2), Cut("fusible", 2),
)  # fmt: skip
FACING = _rectangle(
    "back_pocket_facing", "Back pocket facing", BAG_WIDTH, FACING_DEPTH, None, Cut("main", 2)
)
"""The same on every back."""


def _bag(waist: Path) -> Piece:
    """One long bag, folded at the foot; its top is shaped as the waist, its end meets the welt."""
    start, end = waist.start, waist.end
    right, left = max(start.x, end.x), min(start.x, end.x)
    slit = min(start.y, end.y) - WELT_DOWN
    foot = slit - BAG_BELOW
    bottom = foot - BAG_BELOW
    top = waist if start.x > end.x else waist.reversed()
    corners = (
        ("free_left", top.end, Point(left, slit), Role.FINISHED, "raw"),
        ("left_under", Point(left, slit), Point(left, foot), Role.SEAM, "pocket"),
        ("left_over", Point(left, foot), Point(left, bottom), Role.SEAM, "pocket"),
        ("welt", Point(left, bottom), Point(right, bottom), Role.FINISHED, "pocket"),
        ("right_over", Point(right, bottom), Point(right, foot), Role.SEAM, "pocket"),
        ("right_under", Point(right, foot), Point(right, slit), Role.SEAM, "pocket"),
        ("free_right", Point(right, slit), top.start, Role.FINISHED, "raw"),
    )
    edges = (
        Edge("top", top, Role.FINISHED, "waist"),
        *(Edge(name, polyline(a, b), role, kind) for name, a, b, role, kind in corners),
    )
    x = (left + right) / 2
    return Piece(
        name="back_pocket_bag",
        title="Back pocket bag",
        cut=(Cut("pocketing", 2, mirrored=True),),
        edges=edges,
        notches=(Notch("left_under", 0.0, 1, "welt"), Notch("right_under", BAG_BELOW, 1, "welt")),
        grain=(Point(x, bottom + 5), Point(x, slit)),
        marks=(Mark("fold", polyline(Point(left, foot), Point(right, foot))),),
    )


SEAMS = tuple(
    Seam(
        f"back_pocket_bag_{side}",
        (SeamPart("back_pocket_bag", f"{side}_under", reversed=side == "right"),),
        (SeamPart("back_pocket_bag", f"{side}_over", reversed=side == "left"),),
    )
    for side in ("left", "right")
)
