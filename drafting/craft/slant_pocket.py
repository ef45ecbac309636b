"""Slant and curved pockets: the front's corner cut away, and all behind it traced from the front.

Upper layer: a facing of the cloth along the mouth, sewn to the bag. Under layer: the side piece,
which fills the corner and goes on under the mouth, sewn to the under bag. Both layers end in the
waist seam and in the side seam, and are closed along the bag's inner and lower edge.

Source: mouth of 15 to 16 cm and at least half the hand and 1.5, its top 3 to 5 cm from the side,
facings 4 to 6 cm past the mouth, bags 28 to 32 cm long from the waist and 10 cm below the mouth,
15 to 17 cm wide; a curved mouth 9 to 11 cm along the waist and some 9 cm down the side, a quarter
of an ellipse: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Literal

from drafting.craft.piecework import plumb_grain, turned_over
from drafting.craft.sheet import DraftSheet
from drafting.errors import SpecError
from drafting.geometry import (
    LEFT,
    Path,
    Point,
    Vector,
    crossing_with_line,
    join,
    meet,
    polyline,
    root,
    with_handles,
)
from drafting.pattern import Cut, Edge, Notch, Notion, Piece, Seam, SeamPart

Mouth = Literal["slant", "curved"]

LEAST_MOUTH = 15.0
FACING = 4.5
LEAST_FACING = 2.0
FACING_BELOW = 7.0
"""Along the side the facings go on this far (cm) under the mouth's end."""
BAG_LENGTH, BAG_WIDTH, BELOW_MOUTH = 28.0, 16.0, 10.0
BESIDE_DART = 0.8
"""The bag's inner edge stays this far (cm) beside the front dart, so that it lies flat."""

QUARTER = 0.5523
"""Handles of this share of the way to the corner draw a quarter of an ellipse."""

PAIR = (Cut("main", 2, mirrored=True),)
BAG = (Cut("pocketing", 2, mirrored=True),)


@dataclass(frozen=True, slots=True)
class SlantPocket:
    """What a slant pocket makes of a front.

    Attributes:
        waist: The front's waist from the centre to the mouth.
        mouth: The mouth from the waist down to the side.
        side: The front's side below the mouth.
        inset: Distance of the mouth's top from the side, along the waist, cm.
        pieces: Side piece, facing, upper bag, under bag.
        seams: The pocket's own seams, in sewing order.
        notions: The tape that stays the mouth.
    """

    waist: Path
    mouth: Path
    side: Path
    inset: float
    pieces: tuple[Piece, ...]
    seams: tuple[Seam, ...]
    notions: tuple[Notion, ...]


def least_mouth(hand_girth: float | None) -> float:
    """Least length of the mouth in cm that a hand passes. Source: common practice, no source."""
    return LEAST_MOUTH if hand_girth is None else max(LEAST_MOUTH, hand_girth / 2 + 1.5)


@dataclass(frozen=True, slots=True)
class _Lines:
    """The front's lines that the pocket is traced from; the side to the left.

    `waist_under` and `side_under` are what lies of them between the mouth and the facing's edge.
    """

    waist: Path
    side: Path
    mouth: Path
    inner: Path
    waist_under: Path
    side_under: Path
    top_at: float
    end_at: float
    inner_top_at: float
    inner_end_at: float
    fold: tuple[Point, float]
    bottom: Point
    side_end_at: float


Top = tuple[Point, Vector]
"""Where a mouth starts on the waist, and the direction square to the waist there."""


@dataclass(frozen=True, slots=True)
class _Shape:
    """A mouth's shape: how it runs, how far from the side its top stands, usually and least.

    The bag goes on at least `bag_top` cm beside the facing at the waist.
    """

    draw: Callable[[Top, Point], Path]
    inset: float
    least_inset: float
    bag_top: float


def _slanting(top: Top, end: Point) -> Path:
    return polyline(top[0], end)


def _curving(start: Top, end: Point) -> Path:
    """A quarter of an ellipse, square to the waist, level at the side; rounder where shallow."""
    (top, down), out = start, LEFT
    corner = meet(top, down, end, out)
    if corner is None:
        return polyline(top, end)
    deep, wide = corner.distance(top), corner.distance(end)
    round_top = math.sqrt(LEAST_ROUND * (1 - QUARTER) * wide / 1.5)
    handles = min(max(QUARTER * deep, round_top), deep), QUARTER * wide
    return Path((with_handles(top, down, end, out, *handles),))


LEAST_ROUND = 1.6
"""Least radius in cm of a curved mouth at its top, so that an allowance follows it.

Source: house method.
"""


_SHAPES: dict[Mouth, _Shape] = {
    "slant": _Shape(_slanting, inset=4.0, least_inset=3.0, bag_top=0.5),
    "curved": _Shape(_curving, inset=10.0, least_inset=5.0, bag_top=1.8),
}


@dataclass(frozen=True, slots=True)
class UsualMouth:
    """Where a mouth lies unless the order says otherwise, cm.

    Attributes:
        inset: Distance of its top from the side, along the waist; None as its shape has it.
        length: Its length; None where it goes by its end.
        down: How far down the side it ends; None where it goes by its length.
        least: Its least length, which a hand passes.
    """

    inset: float | None = None
    length: float | None = 16.0
    down: float | None = None
    least: float = LEAST_MOUTH


USUAL = UsualMouth()


def slant_pocket(
    waist: Path,
    side: Path,
    mouth: float | None,
    inset: float | None,
    clear_of: float | None,
    sheet: DraftSheet,
    shape: Mouth = "slant",
    usual: UsualMouth = USUAL,
) -> SlantPocket:
    """Cut a slant or a curved pocket into a front.

    Args:
        waist: The front's waist from the centre to the side, cm; the side lies to the left.
        side: Its side from the waist down.
        mouth: Length of the mouth in cm; None for the usual.
        inset: Distance of the mouth's top from the side, along the waist, cm; None for the usual.
        clear_of: Where across the paper (cm) the dart leg stands that the bag must stay beside;
            None where there is no dart.
        sheet: Records what was decided.
        shape: How the mouth runs.
        usual: Where it lies if the order says nothing.

    Raises:
        SpecError: There is no room for the pocket between the side and the dart.
    """
    sheet.heading(f"{shape.capitalize()} pocket", "common practice, no source")
    long = mouth or (usual.length and max(usual.length, usual.least))
    lines = _lines(waist, side, long, inset, clear_of, shape, usual)
    above, below = side.split(lines.end_at)
    sheet.length("pocket mouth", lines.mouth.length(), "A hand must pass.")
    told = "straight" if shape == "slant" else shape
    sheet.length("mouth down the side", lines.end_at, f"Where the {told} mouth meets the side.")
    sheet.length("bag depth", waist.end.y - lines.bottom.y, "A hand's length below the mouth.")
    return SlantPocket(
        waist=waist.split(lines.top_at)[0],
        mouth=lines.mouth,
        side=below,
        inset=waist.length() - lines.top_at,
        pieces=(_side_piece(lines, above), _facing(lines), *_bags(lines)),
        seams=SEAMS,
        notions=(Notion("stay tape for the pocket mouths", 2, lines.mouth.length()),),
    )


def _lines(
    waist: Path,
    side: Path,
    mouth: float | None,
    asked: float | None,
    clear_of: float | None,
    shape: Mouth,
    usual: UsualMouth,
) -> _Lines:
    drawn = _SHAPES[shape]
    inmost = (waist.end.x + BAG_WIDTH) if clear_of is None else clear_of - BESIDE_DART
    fold_at = _crossing_x(waist, inmost)
    room = waist.length() - fold_at - LEAST_FACING - drawn.bag_top
    wished = drawn.inset if usual.inset is None else usual.inset
    inset = max(drawn.least_inset, min(wished, room)) if asked is None else asked
    if inset > room + 1e-6:
        raise _no_room("garment.pocket_inset", inset, shape)
    top_at = waist.length() - inset
    top = _top(waist, top_at)
    least = _least_down(waist.length() - top_at, shape)
    end_at = usual.down if mouth is None else _end(top, side, least, mouth, shape)
    if end_at and drawn.draw(top, side.at(end_at)).length() < usual.least:
        end_at = _end(top, side, least, usual.least, shape)
    if end_at is None:
        raise _no_room("garment.pocket_mouth", mouth or 0.0, shape)
    end, inner_end_at = side.at(end_at), end_at + FACING_BELOW
    inner_top_at = max(top_at - FACING, fold_at + drawn.bag_top)
    bottom = Point(inmost, min(end.y - BELOW_MOUTH, waist.end.y - BAG_LENGTH))
    return _Lines(
        waist=waist,
        side=side,
        mouth=drawn.draw(top, end),
        inner=drawn.draw(_top(waist, inner_top_at), side.at(inner_end_at)),
        waist_under=waist.between(inner_top_at, top_at),
        side_under=side.between(end_at, inner_end_at),
        top_at=top_at,
        end_at=end_at,
        inner_top_at=inner_top_at,
        inner_end_at=inner_end_at,
        fold=(waist.at(fold_at), fold_at),
        bottom=bottom,
        side_end_at=_side_end(side, bottom.y + 4.0, inner_end_at),
    )


def _top(waist: Path, at: float) -> Top:
    """A place on the waist, and the direction square to it there."""
    i, t = waist.locate(at)
    segment = waist.segments[i]
    return segment.at(t), segment.tangent(t).left


def _end(top: Top, side: Path, least: float, mouth: float, shape: Mouth) -> float | None:
    """How far down the side a mouth of that length ends, in cm; None where none does."""

    def off(end_at: float) -> float:
        return _SHAPES[shape].draw(top, side.at(end_at)).length() - mouth

    return root(off, least, min(40.0, side.length()))


def _least_down(inset: float, shape: Mouth) -> float:
    """How far down the side a mouth's end is looked for at least, in cm."""
    return inset if shape == "slant" else 2.0


def _no_room(where: str, received: float, shape: Mouth) -> SpecError:
    return SpecError(
        f"There is no room for a {shape} pocket between the side seam and the darts or pleats of "
        "the front: bring the mouth nearer to the side, or choose another front or front_pocket, "
        "or no front pocket.",
        where=where,
        received=received,
    )


def _crossing_x(waist: Path, x: float) -> float:
    """Distance along the waist at which it crosses a plumb line; its start where it does not."""
    hits = crossing_with_line(waist, Point(x, 0), Vector(0, 1))
    return waist.distance_of(*hits[-1]) if hits else 0.0


def _side_end(side: Path, y: float, beyond: float) -> float:
    """Distance down the side at which it reaches a height, not above a place already there."""
    hits = crossing_with_line(side, Point(0, y), Vector(1, 0))
    return max(beyond + 2.0, side.distance_of(*hits[-1]) if hits else 0.0)


def _side_piece(lines: _Lines, side: Path) -> Piece:
    """The corner that was cut away, and a facing's width under the mouth."""
    corner = lines.waist.length()
    edges = (
        Edge("waist_under", lines.waist_under, kind="waist"),
        Edge("waist", lines.waist.between(lines.top_at, corner), kind="waist"),
        Edge("side", side, kind="side"),
        Edge("side_under", lines.side_under, kind="side"),
        Edge("inner", lines.inner.reversed(), kind="pocket"),
    )
    notches = (
        Notch("waist_under", edges[0].path.length(), 1, "pocket-top"),
        Notch("side_under", 0.0, 1, "pocket-end"),
    )
    return _piece("side_piece", "Pocket side piece", PAIR, edges, notches)


def _facing(lines: _Lines) -> Piece:
    """The strip of cloth behind the mouth; it faces inward, so it is drawn turned over."""
    edges = (
        Edge("waist", lines.waist_under, kind="waist"),
        Edge("mouth", lines.mouth, kind="pocket"),
        Edge("side", lines.side_under, kind="side"),
        Edge("inner", lines.inner.reversed(), kind="pocket"),
    )
    return turned_over(_piece("pocket_facing", "Pocket facing", PAIR, edges, ()))


def _bags(lines: _Lines) -> tuple[Piece, Piece]:
    """Upper and under bag, alike: from the facing's inner edge to the inside of the pocket."""
    i, t = lines.side.locate(lines.side_end_at)
    corner, up = lines.side.segments[i].at(t), -lines.side.segments[i].tangent(t)
    reach = abs(lines.bottom.x - corner.x) / 3
    foot = Path((with_handles(corner, up.right, lines.bottom, -LEFT, reach),))
    edges = (
        Edge("waist", lines.waist.between(lines.fold[1], lines.inner_top_at), kind="waist"),
        Edge("inner", lines.inner, kind="pocket"),
        Edge("side", lines.side.between(lines.inner_end_at, lines.side_end_at), kind="side"),
        Edge("foot", foot, kind="pocket"),
        Edge("inside", polyline(lines.bottom, lines.fold[0]), kind="pocket"),
    )
    upper = _piece("pocket_bag", "Pocket bag, upper", BAG, edges, ())
    return upper, replace(upper, name="pocket_bag_under", title="Pocket bag, under")


def _piece(
    name: str, title: str, cut: tuple[Cut, ...], edges: tuple[Edge, ...], notches: tuple[Notch, ...]
) -> Piece:
    """A pocket piece with its grain as in the front, through the middle of the outline."""
    grain = plumb_grain(join(e.path for e in edges))
    return Piece(name=name, title=title, cut=cut, edges=edges, notches=notches, grain=grain)


def _part(piece: str, edge: str, *, back: bool = False) -> SeamPart:
    return SeamPart(piece, edge, reversed=back)


SEAMS = (
    Seam("facing_to_bag", (_part("pocket_facing", "inner"),), (_part("pocket_bag", "inner"),)),
    Seam(
        "pocket_mouth",
        (_part("front", "pocket_mouth"),),
        (_part("pocket_facing", "mouth", back=True),),
    ),
    Seam(
        "side_piece_to_bag",
        (_part("side_piece", "inner", back=True),),
        (_part("pocket_bag_under", "inner"),),
    ),
    Seam(
        "pocket_bag",
        (_part("pocket_bag", "foot"), _part("pocket_bag", "inside")),
        (_part("pocket_bag_under", "foot"), _part("pocket_bag_under", "inside")),
    ),
    Seam(
        "pocket_top",
        (_part("pocket_facing", "waist"), _part("pocket_bag", "waist", back=True)),
        (
            _part("side_piece", "waist_under", back=True),
            _part("pocket_bag_under", "waist", back=True),
        ),
    ),
    Seam(
        "pocket_side",
        (_part("pocket_facing", "side", back=True), _part("pocket_bag", "side")),
        (_part("side_piece", "side_under"), _part("pocket_bag_under", "side")),
    ),
)
"""In sewing order; the tops and sides are basted, then caught with the long seams."""
