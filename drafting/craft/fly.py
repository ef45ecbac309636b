"""The fly: a facing turned under the lapping front, a shield behind the zip, the stitched J.

Either front may lap over the other. Facing and shield are single pieces, drawn right side up.

Source: a finished J of 3.8 cm (1 1/2 in) and 17.8 to 18.4 cm, and the facing's and shield's widths:
common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

from drafting.craft.piecework import turned_over
from drafting.geometry import Line, Path, Point, Vector, polyline, with_handles
from drafting.pattern import Cut, Edge, Mark, Notion, Piece, Role, Seam, SeamPart

Lap = Literal["right_over_left", "left_over_right"]

STITCHED_J = 3.8
FACING = 5.0
BELOW = 2.0
"""The facing goes on 2 cm below the fly's end."""


@dataclass(frozen=True, slots=True)
class Fly:
    """The pieces and seams of a fly, and the J for the front.

    Attributes:
        pieces: Facing and shield.
        facing: Seam of the facing to the lapping front.
        shield: Seam of the shield to the other front, and the seam of its foot.
        stitched: The J, as a mark for the front.
        zip: The zip to buy.
    """

    pieces: tuple[Piece, Piece]
    facing: Seam
    shield: tuple[Seam, ...]
    stitched: Mark
    zip: Notion


def over_under(lap: Lap) -> tuple[Literal["left", "right"], Literal["left", "right"]]:
    """Which front lies on top, and which underneath."""
    return ("right", "left") if lap == "right_over_left" else ("left", "right")


def fly(waist: Path, slit: Path, lap: Lap, underlap: float) -> Fly:
    """Cut the fly from the front.

    Args:
        waist: The front's waist from the centre to the side, the side to the left, cm.
        slit: The straight centre front from the waist down to the fly's end, cm.
        lap: Which front lies on top.
        underlap: Finished width of the shield in cm, that of the waistband's underlap above it.
    """
    over, under = over_under(lap)
    facing = _facing(waist, slit)
    if over == "right":
        facing = turned_over(facing)
    return Fly(
        pieces=(facing, _shield(slit.length(), underlap)),
        facing=Seam(
            "fly_facing",
            (SeamPart("front", "fly", over),),
            (SeamPart("fly_facing", "fly", reversed=over == "right"),),
        ),
        shield=(
            Seam(
                "fly_shield_foot",
                (SeamPart("fly_shield", "foot"),),
                (SeamPart("fly_shield", "foot_inside", reversed=True),),
            ),
            Seam(
                "fly_shield",
                (SeamPart("front", "fly", under),),
                (SeamPart("fly_shield", "fly", reversed=False),),
            ),
        ),
        stitched=Mark("placement", _j(waist, slit, STITCHED_J, 0.0)),
        zip=Notion("zip", 1, float(int(slit.length()))),
    )


def _facing(waist: Path, slit: Path) -> Piece:
    """Traced from the front: its waist, its centre, and a J outside the stitched one."""
    outer = _j(waist, slit, FACING, BELOW)
    top = waist.split(_at_width(waist, slit, FACING))[0]
    edges = (
        Edge("top", top, Role.FINISHED, "waist"),
        Edge("outer", outer, Role.FINISHED, "raw"),
        Edge("below", polyline(outer.end, slit.end), Role.FINISHED, "facing"),
        Edge("fly", slit.reversed(), kind="facing"),
    )
    grain = _upright(top.at(top.length() / 2), slit.length())
    cut = (Cut("main", 1), Cut("fusible", 1))
    return Piece(name="fly_facing", title="Fly facing", cut=cut, edges=edges, grain=grain)


def _shield(length: float, width: float) -> Piece:
    """A double strip behind the zip, folded lengthwise, its foot sloped away from the crotch.

    It stands with the fly edge to the right; the left half is its inside.
    """
    foot, top = -BELOW, length
    slope = foot + 0.4 * width
    right, fold, left = 2 * width, width, 0.0
    edges = (
        Edge("fly", polyline(Point(right, 0), Point(right, top)), kind="facing"),
        Edge("top", polyline(Point(right, top), Point(fold, top)), kind="waist"),
        Edge("top_inside", polyline(Point(fold, top), Point(left, top)), Role.FINISHED, "waist"),
        Edge("fly_inside", polyline(Point(left, top), Point(left, foot)), Role.FINISHED, "raw"),
        Edge("foot_inside", _foot(Point(left, foot), Point(fold, slope)), kind="facing"),
        Edge("foot", _foot(Point(right, foot), Point(fold, slope)).reversed(), kind="facing"),
        Edge("below", polyline(Point(right, foot), Point(right, 0)), Role.FINISHED, "facing"),
    )
    return Piece(
        name="fly_shield",
        title="Fly shield",
        cut=(Cut("main", 1),),
        edges=edges,
        grain=_upright(Point(0.75 * right, top), length),
        marks=(Mark("fold", polyline(Point(fold, slope), Point(fold, top))),),
    )


def _foot(low: Point, high: Point) -> Path:
    """The sloped foot from the fly edge to the fold, square to the fold."""
    across = Vector(1.0 if high.x > low.x else -1.0, 0.0)
    return Path((with_handles(low, high - low, high, across, abs(high.x - low.x) / 3),))


def _j(waist: Path, slit: Path, width: float, below: float) -> Path:
    """From the waist, parallel to the centre, then in to it `below` cm under the fly's end."""
    down = slit.start_tangent
    top = waist.at(_at_width(waist, slit, width))
    end = slit.end + down * below
    turn = top + down * ((end - top).dot(down) - 1.2 * width)
    curve = with_handles(
        turn, down, end, end - (end + down.right * width), 0.7 * width, 0.5 * width
    )
    return Path((Line(top, turn), curve))


def _at_width(waist: Path, slit: Path, width: float) -> float:
    """Distance along the waist at which it lies `width` cm from the centre line, about."""
    along = -waist.start_tangent.dot(slit.start_tangent.left)
    return width / max(0.5, along)


def _upright(top: Point, length: float) -> tuple[Point, Point]:
    return Point(top.x, top.y - 0.75 * length), Point(top.x, top.y - 0.25 * length)


def renamed(piece: Piece, name: str, title: str) -> Piece:
    """The same piece under another name."""
    return replace(piece, name=name, title=title)
