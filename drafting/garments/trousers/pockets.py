"""Trousers, the pockets: in front slant, curved, in the side seam, or none; behind welt, patch, or none.

Each is taken from the trued panels and says what it makes of their edges, and what is sewn when.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.craft.assembling import Assembling
from drafting.craft.patch_pocket import DOWN as PATCH_DOWN
from drafting.craft.patch_pocket import patch_pocket
from drafting.craft.seam_pocket import SEAM_MOUTH, seam_pocket
from drafting.craft.sheet import DraftSheet
from drafting.craft.slant_pocket import Mouth, SlantPocket, UsualMouth, least_mouth, slant_pocket
from drafting.craft.welt_pocket import BAG_WIDTH, welt_pocket
from drafting.errors import SpecError
from drafting.garments.trousers.manners import MANNERS
from drafting.garments.trousers.spec import BackPocketKind, FrontPocketKind, Trousers
from drafting.garments.trousers.trueing import Trued
from drafting.geometry import Path, Point, Vector, turn
from drafting.pattern import Edge, Mark, Notch, Notion, Piece

Stretch = tuple[str, str, float]
"""A stretch of a side seam: its name, the kind of its allowance, its length in cm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FrontPocket:
    """What a front pocket makes of the panels.

    Attributes:
        waist: The front's waist, from the centre to the pocket or the side.
        mouth: Edges of the front between its waist and its side.
        side: The front's side from there down.
        stretches: How the side seam is divided from its top down; the rest of it is the side.
        pieces: Its pieces.
        steps: What is sewn before the side seams.
        after: What is sewn after them.
        between: Names of the pieces that lie between front and back at the waist and at the side.
        notions: What is bought for it.
        notches: Where its mouth begins and ends, on both panels.
        settled: Options that it settled itself.
    """

    waist: Path
    side: Path
    mouth: tuple[Edge, ...] = ()
    stretches: tuple[Stretch, ...] = ()
    pieces: tuple[Piece, ...] = ()
    steps: tuple[Assembling, ...] = ()
    after: tuple[Assembling, ...] = ()
    between: tuple[str, ...] = ()
    notions: tuple[Notion, ...] = ()
    notches: tuple[Notch, ...] = ()
    settled: tuple[tuple[str, float], ...] = ()

    @property
    def opens(self) -> bool:
        """Whether there is a pocket at all."""
        return bool(self.pieces)

    @property
    def at_waist(self) -> float:
        """Length in cm that the pieces between front and back add to the waist."""
        return sum(p.sewn_length("waist") for p in self.pieces if p.name in self.between)


def room_for_the_hand(body: Body, cut: Trousers) -> float:
    """Least length in cm of a front pocket's mouth.

    Raises:
        SpecError: The mouth that is ordered is shorter.
    """
    least = least_mouth(body.value("hand_girth") if body.has("hand_girth") else None)
    if cut.pocket_mouth is not None and cut.pocket_mouth < least - 1e-6:
        raise SpecError(
            f"A pocket_mouth of {cut.pocket_mouth:g} cm does not let the hand pass: by the hand_girth it must be {least:.1f} cm at least. Make it longer, or leave it out.",
            where="garment.pocket_mouth", received=cut.pocket_mouth, allowed=(least, None),
        )
    return least


def over_the_waist(cut: Trousers) -> float:
    """How far over the natural waist the seam lies that the pockets are placed from, cm."""
    return max(0.0, cut.waist_position - (cut.band_depth if cut.waistband == "contoured" else 0.0))


def no_front_pocket(front: Trued, body: Body, cut: Trousers, sheet: DraftSheet) -> FrontPocket:  # noqa: ARG001 - a row of the table
    """A plain front."""
    return FrontPocket(waist=front.waist, side=front.side)


def _mouthed(shape: Mouth) -> Callable[[Trued, Body, Trousers, DraftSheet], FrontPocket]:
    def pocket(front: Trued, body: Body, cut: Trousers, sheet: DraftSheet) -> FrontPocket:
        """A pocket whose mouth cuts the corner off, beside the front dart nearest to the side."""
        clear_of = min((d.second.x for d in front.darts), default=None)
        usual = replace(MANNERS[cut.method].pocket if shape == "slant" else UsualMouth(length=CURVED_MOUTH), least=room_for_the_hand(body, cut))
        made = slant_pocket(front.waist, front.side, cut.pocket_mouth, cut.pocket_inset, clear_of, sheet, shape, usual)
        return FrontPocket(
            waist=made.waist, side=made.side, mouth=(Edge("pocket_mouth", made.mouth, kind="pocket"),),
            pieces=made.pieces, steps=_slant_steps(made), between=("side_piece",), notions=made.notions,
            settled=(("pocket_mouth", made.mouth.length()), ("pocket_inset", made.inset)),
        )
    return pocket


CURVED_MOUTH = 15.0
"""Usual length in cm of a curved mouth. Source: common practice, no source."""


def _slant_steps(pocket: SlantPocket) -> tuple[Assembling, Assembling]:
    caught = ("pocket_top", "pocket_side")
    own = tuple(s for s in pocket.seams if s.name not in caught)
    return (
        Assembling("Join facings and side pieces to their bags; sew the taped pocket mouths, turn and stitch them; close the bags.", own),
        Assembling("Baste the pockets to the waist and to the side.", tuple(s for s in pocket.seams if s.name in caught)),
    )


def in_seam_pocket(front: Trued, body: Body, cut: Trousers, sheet: DraftSheet) -> FrontPocket:
    """A pocket in the side seam."""
    usual = max(SEAM_MOUTH, room_for_the_hand(body, cut))
    made = seam_pocket(front.side, usual if cut.pocket_mouth is None else cut.pocket_mouth, sheet, over=over_the_waist(cut))
    *mouths, bag = made.seams
    return FrontPocket(
        waist=front.waist, side=front.side,
        stretches=(("side_above", "side", made.above), ("pocket_mouth", "side", made.mouth)),
        pieces=made.pieces,
        steps=(Assembling("Sew the pocket bags to fronts and backs, and press them out.", tuple(mouths)),),
        after=(Assembling("Close the pocket bags; bar the ends of the mouths.", (bag,)),),
        notions=(Notion("stay tape for the pocket mouths", 2, made.mouth),),
        notches=(Notch("pocket_mouth", 0.0, 1, "pocket-top"), Notch("pocket_mouth", made.mouth, 1, "pocket-end")),
        settled=(("pocket_mouth", made.mouth),),
    )


FRONT_POCKETS: dict[FrontPocketKind | None, Callable[[Trued, Body, Trousers, DraftSheet], FrontPocket]] = {
    "slant": _mouthed("slant"),
    "curved": _mouthed("curved"),
    "in_seam": in_seam_pocket,
    "none": no_front_pocket,
}
"""How each front pocket is cut."""


def divided(side: Path, stretches: tuple[Stretch, ...]) -> tuple[Edge, ...]:
    """A side seam from the top down, divided; the last stretch is the side itself."""
    edges, rest = list[Edge](), side
    for name, kind, length in stretches:
        top, rest = rest.split(length)
        edges.append(Edge(name, top, kind=kind))
    return (*edges, Edge("side", rest, kind="side"))


@dataclass(frozen=True, slots=True, kw_only=True)
class BackPocket:
    """What a back pocket adds: pieces, marks on the back, what is fused, and what is sewn before the side seams."""

    pieces: tuple[Piece, ...] = ()
    marks: tuple[Mark, ...] = ()
    fused: str = ""
    steps: tuple[Assembling, ...] = ()


def no_back_pocket(back: Trued, cut: Trousers) -> BackPocket:  # noqa: ARG001 - a row of the table
    """A plain back."""
    return BackPocket()


def welt(back: Trued, cut: Trousers) -> BackPocket:  # noqa: ARG001 - a row of the table
    """The welt pocket under the middle of the back waist, between or on the darts."""
    sewn = back.waist.length() - sum(d.intake for d in back.darts)
    half = min(BAG_WIDTH, sewn - 1.0) / 2
    closed = back.closed_top()
    over = closed.between(sewn / 2 - half, sewn / 2 + half)
    chord = over.end - over.start
    level = turn(180.0 - chord.angle, over.start)
    along = back.waist.end - back.waist.start
    made = welt_pocket(over.transformed(level), _open_middle(back, sewn / 2), Vector(along.x, along.y))
    told = "Stitch the welts and bags to the backs, slash and turn them, close the sides of the bags."
    return BackPocket(pieces=made.pieces, marks=made.marks, fused="the welts", steps=(Assembling(told, made.seams),))


def patch(back: Trued, cut: Trousers) -> BackPocket:
    """The patch pocket, its middle a little nearer to the centre than to the side."""
    along = back.waist.end - back.waist.start
    made = patch_pocket(_open_middle(back, FROM_CENTRE), Vector(along.x, along.y), down=UNDER_A_YOKE if cut.back == "yoke" else PATCH_DOWN + over_the_waist(cut))
    told = "Hem the patch pockets, turn their edges in and stitch them on the backs."
    return BackPocket(pieces=(made.piece,), marks=made.marks, steps=(Assembling(told),))


UNDER_A_YOKE = 5.0
"""A patch under a yoke lies 5 cm below its seam, to sit on the seat and not under it. Source: 5 to 7 cm,
common practice, no source."""

FROM_CENTRE = 11.5
"""A patch 14 cm wide starts 4.5 cm from the centre back."""

BACK_POCKETS: dict[BackPocketKind | None, Callable[[Trued, Trousers], BackPocket]] = {
    "welt": welt,
    "patch": patch,
    "none": no_back_pocket,
}
"""How each back pocket is cut."""


def _open_middle(drawn: Trued, closed_at: float) -> Point:
    """Where a distance along the closed waist lies on the open one; in the middle of a mouth."""
    at = closed_at
    for dart in drawn.darts:
        first = to_joint(drawn.waist, dart.first)
        if first < at - 0.01:
            at += dart.intake
        elif first < at + 0.01:
            return dart.first.toward(dart.second, 0.5)
    return drawn.waist.at(at)


def to_joint(path: Path, point: Point) -> float:
    """Distance along a path to one of its joints, in cm."""
    total = 0.0
    for segment in path.segments:
        if segment.start.distance(point) < 1e-6:
            return total
        total += segment.length()
    return total
