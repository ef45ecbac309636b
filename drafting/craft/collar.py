"""A collar on a stand: the stand as long as the neck seam, the leaf as long as the stand.

Half of each is drawn, the centre back to the left. The stand rises toward its front end, so that it
leans to the neck; its end runs on under the button and is rounded. The leaf falls toward its front,
so that its outer edge is long enough to lie over the stand.

Source: rise 1.25 to 2 cm, the stand lower in front by some millimetres, a fall 1 to 1.5 cm deeper
than the stand, points of 6.5 to 8 cm, the button at half the stand's height; the more the leaf's
seam falls, the wider it spreads: common practice, no source.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from drafting.craft.buttons import button, buttonhole
from drafting.craft.curves import cornered
from drafting.craft.sheet import DraftSheet
from drafting.geometry import Cubic, Path, Point, Vector, smooth
from drafting.pattern import Cut, Edge, Mark, Notch, Piece, Role
from drafting.trace import RIGHTWARD, Bearing, Bend, Length, Place, Stroke, along

RISE = 1.25
LOWER_IN_FRONT = 0.4


@dataclass(frozen=True, slots=True)
class Leaf:
    """A kind of leaf: how far its seam falls, and by how many degrees its front leans forward."""

    falls: float
    leans: float


@dataclass(frozen=True, slots=True, kw_only=True)
class NeckSeam:
    """What a stand is sewn to, one half, cm.

    Attributes:
        back: From the centre back to the shoulder.
        front: From the shoulder to the centre front.
        stand: From there to the front's edge.
    """

    back: float
    front: float
    stand: float

    @property
    def half(self) -> float:
        """From the centre back to the centre front."""
        return self.back + self.front


@dataclass(frozen=True, slots=True)
class Stand:
    """A stand as drawn.

    Attributes:
        neck: From the centre back to the front end.
        front_end: From there round to the centre front's top.
        top: From the centre back to the centre front.
        back: From the top down to the neck at the centre back.
        middle: Where the button sits.
        seam: What it is sewn to.
    """

    neck: Stroke
    front_end: Stroke
    top: Stroke
    back: Stroke
    middle: Place
    seam: NeckSeam


def draw_stand(seam: NeckSeam, height: float, corner: Place, sheet: DraftSheet) -> Stand:
    """Draw the stand, as long as the neck seam.

    Args:
        seam: The neck seam.
        height: Of the stand at the centre back, cm.
        corner: Where its neck edge meets the centre back.
        sheet: Records it.
    """
    foot, end, neck = _neck_edge(seam, corner, sheet)
    front = sheet.point(
        "centre front on the stand",
        neck.at(Length(seam.back, "half back neck") + Length(seam.front, "half front neck")),
        "From here on it laps over.",
    )
    up = sheet.point(
        "stand's top at the centre front",
        front.square_out(front, end, height - LOWER_IN_FRONT, "left"),
        "A little lower than behind.",
    )
    crown = sheet.point(
        "stand's top at the centre back", foot.up(height), "The height of the stand."
    )
    ahead = along(front, end)
    top = sheet.draw(
        "stand's top edge", (_shallow(crown, RIGHTWARD, up, ahead),), "The leaf is sewn to it."
    )
    rounded = Bend(up, end, ahead, ahead.right, cornered(up, ahead.vector, end, ahead.right.vector))
    tip = sheet.draw("stand's front end", (rounded,), "Rounded under the button.")
    back = sheet.line("stand at the fold", crown, foot, why="The centre back, on the fold.")
    middle = sheet.point(
        "button on the stand", front.between(up, 0.5), "At half the stand's height."
    )
    sheet.outline(
        "collar_stand",
        (neck, tip, top, back),
        "Trace it from the draft; allowances are added outside.",
    )
    return Stand(neck, tip, top, back, middle, seam)


def _neck_edge(seam: NeckSeam, corner: Place, sheet: DraftSheet) -> tuple[Place, Place, Stroke]:
    """The stand's edge along the neck, brought to its length: start, end and line."""
    wanted = (
        Length(seam.back, "half back neck")
        + Length(seam.front, "half front neck")
        + Length(seam.stand, "button stand")
    )
    foot = sheet.point(
        "stand at the centre back", corner, "Half of the stand, its middle on the fold."
    )
    reach = sheet.solve(
        "reach of the stand",
        lambda x: _rising(foot, x, RISE).length(),
        wanted,
        (0.7 * float(wanted), float(wanted)),
        "Its neck edge is as long as the neck seam and the button stand.",
    )
    end = sheet.point(
        "front end of the stand",
        foot.right(reach).up(RISE),
        "It rises, so that it leans to the neck.",
    )
    slope = RIGHTWARD.rotated(Vector(float(reach), 3 * RISE).angle)
    neck = sheet.draw(
        "stand's neck edge",
        (Bend(foot, end, RIGHTWARD, slope, _rising(foot, float(reach), RISE)),),
        "Sewn to the neck.",
    )
    return foot, end, neck


def _rising(foot: Point, reach: float, rise: float) -> Cubic:
    """A curve that stays level long and then rises: y grows with the third power of x."""
    third = foot.x + reach / 3, foot.x + 2 * reach / 3
    return Cubic(
        foot, Point(third[0], foot.y), Point(third[1], foot.y), Point(foot.x + reach, foot.y + rise)
    )


def _falling(foot: Point, reach: float, fall: float) -> Cubic:
    """A curve that falls evenly: y falls with the second power of x."""
    third = foot.x + reach / 3, foot.x + 2 * reach / 3
    return Cubic(
        foot,
        Point(third[0], foot.y),
        Point(third[1], foot.y - fall / 3),
        Point(foot.x + reach, foot.y - fall),
    )


def _shallow(start: Place, leaving: Bearing, end: Place, arriving: Bearing) -> Bend:
    return Bend(start, end, leaving, arriving, smooth(start, leaving.vector, end, arriving.vector))


@dataclass(frozen=True, slots=True)
class DrawnLeaf:
    """A leaf as drawn.

    Attributes:
        seam: From the centre back to its front end, sewn to the stand.
        front: From there to the point.
        outer: From the centre back to the point.
        back: From the outer edge down to the seam at the centre back.
    """

    seam: Stroke
    front: Stroke
    outer: Stroke
    back: Stroke


def draw_leaf(
    stand: Stand, leaf: Leaf, fall: float, point: float, corner: Place, sheet: DraftSheet
) -> DrawnLeaf:
    """Draw the leaf, its seam as long as the stand's top.

    Args:
        stand: The stand.
        leaf: The kind of leaf.
        fall: Depth at the centre back, cm.
        point: Length of its front edge, cm.
        corner: Where its seam meets the centre back.
        sheet: Records it.
    """
    foot, end, slope, seam = _leaf_seam(stand, leaf, corner, sheet)
    tip = sheet.point(
        "collar point",
        end.slant(point, 90 - leaf.leans + slope),
        "The more it leans forward, the closer the points lie.",
    )
    front = sheet.line("leaf's front edge", end, tip, why="The collar's point.")
    outside = sheet.point(
        "leaf's outer edge at the centre back", foot.up(fall), "Deep enough to hide the neck seam."
    )
    rising = along(outside, tip)
    outer = sheet.draw(
        "leaf's outer edge",
        (_shallow(outside, RIGHTWARD, tip, rising.rotated(rising.vector.angle)),),
        "Level at the centre back, on to the point.",
    )
    back = sheet.line("leaf at the fold", outside, foot, why="The centre back, on the fold.")
    sheet.outline(
        "collar",
        (seam, front, outer, back),
        "Trace it from the draft; allowances are added outside.",
    )
    return DrawnLeaf(seam, front, outer, back)


def _leaf_seam(
    stand: Stand, leaf: Leaf, corner: Place, sheet: DraftSheet
) -> tuple[Place, Place, float, Stroke]:
    """The leaf's seam, brought to the stand's top: start, end, fall in degrees, and line."""
    wanted = Length(stand.top.path.length(), "stand's top edge")
    foot = sheet.point(
        "leaf at the centre back", corner, "Half of the leaf, its middle on the fold."
    )
    reach = sheet.solve(
        "reach of the leaf",
        lambda x: _falling(foot, x, leaf.falls).length(),
        wanted,
        (0.7 * float(wanted), float(wanted)),
        "Its seam is as long as the stand's top edge.",
    )
    end = sheet.point(
        "front end of the leaf",
        foot.right(reach).down(leaf.falls),
        "It falls, so that the outer edge is long enough to lie over the stand.",
    )
    slope = -math.degrees(math.atan2(2 * leaf.falls, float(reach)))
    seam = sheet.draw(
        "leaf's seam",
        (
            Bend(
                foot,
                end,
                RIGHTWARD,
                RIGHTWARD.rotated(slope),
                _falling(foot, float(reach), leaf.falls),
            ),
        ),
        "Sewn between the two stands.",
    )
    return foot, end, slope, seam


def stand_pieces(stand: Stand, *, leaf: bool) -> tuple[Piece, Piece]:
    """The stand and its inside, which is turned under along the neck.

    Args:
        stand: As drawn.
        leaf: Whether a leaf is sewn between them; else the two are sewn to each other at the top.
    """
    seam = stand.seam
    neck, overlap = stand.neck.path.split(seam.half)
    ends = stand.front_end.path.reversed(), stand.top.path.reversed()
    fold = Edge("centre_back", stand.back.path, Role.FOLD, "raw")
    marks = (button(stand.middle), buttonhole(stand.middle, overlap.start_tangent))

    def piece(
        name: str, title: str, cut: tuple[Cut, ...], role: Role, notches: tuple[Notch, ...]
    ) -> Piece:
        edges = (
            Edge("neck", neck, role),
            Edge("overlap", overlap, role),
            Edge("front_end", ends[0]),
            Edge("top", ends[1]),
            fold,
        )
        grain = _grain(stand.back.path)
        return Piece(
            name=name,
            title=title,
            cut=cut,
            edges=edges,
            notches=notches,
            grain=grain,
            marks=marks,
            half=True,
        )

    shoulder = Notch("neck", seam.back, 1, "neck-shoulder")
    top = (Notch("top", 0.0, 1, "leaf-end"),) if leaf else ()
    return (
        piece(
            "collar_stand",
            "Collar stand",
            (Cut("main", 1), Cut("fusible", 1)),
            Role.SEAM,
            (shoulder, Notch("overlap", 0.0, 1, "centre-front"), *top),
        ),
        piece("collar_stand_inside", "Collar stand, inside", (Cut("main", 1),), Role.HEM, top),
    )


def leaf_piece(leaf: DrawnLeaf, *, buttoned: bool) -> Piece:
    """The leaf, cut twice, and fused once.

    Args:
        leaf: As drawn.
        buttoned: Whether its points are buttoned down.
    """
    front = leaf.front.path
    marks: tuple[Mark, ...] = ()
    if buttoned:
        inward = (front.end - front.start).unit + (leaf.outer.path.end - leaf.outer.path.start).unit
        at = front.end + -inward.unit * 1.6
        marks = (buttonhole(at, inward),)
    return Piece(
        name="collar", title="Collar", cut=(Cut("main", 2), Cut("fusible", 1)),
        edges=(
            Edge("stand_seam", leaf.seam.path), Edge("front", front),
            Edge("outer", leaf.outer.path.reversed()),
            Edge("centre_back", leaf.back.path, Role.FOLD, "raw"),
        ),
        grain=_grain(leaf.back.path), marks=marks, half=True,
    )  # fmt: skip


def _grain(fold: Path) -> tuple[Point, Point]:
    """The lengthwise grain, along the centre back."""
    low, high = fold.end, fold.start
    aside = Vector(2.5, 0)
    return low.toward(high, 0.15) + aside, low.toward(high, 0.85) + aside
