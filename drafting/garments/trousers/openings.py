"""Trousers, the opening: a fly in the centre front, a zip in the left side, or none where elastic holds."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.craft.around import ZIP
from drafting.craft.assembling import Assembling
from drafting.craft.closure import LEAST_OPENING, needed_opening, opening_length, zip_opening
from drafting.craft.fly import fly
from drafting.craft.rules import OPENING_ABOVE_HOOK, ZIP_ABOVE_HIP
from drafting.craft.sheet import DraftSheet
from drafting.errors import SpecError
from drafting.garments.trousers.fits import underlap, waist_ease
from drafting.garments.trousers.pockets import Stretch
from drafting.garments.trousers.spec import MOST_WAIST_EASE, Closure, Trousers
from drafting.garments.trousers.trueing import Trued, straight_centre
from drafting.pattern import Edge, EdgeLength, Mark, Notch, Notion, Piece, Role
from drafting.trace import Length

LEAST_UNDER_ZIP = 4.0
"""The side seam goes on at least 4 cm below a zip. House method."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Opening:
    """How the trousers open.

    Attributes:
        centre: The front's centre from the fork up.
        stretches: How it divides the side seam from its top down.
        pieces: Its pieces.
        marks: Marks on the front.
        notches: Notches on the front.
        steps: What is sewn before the side seams.
        slit: Edges of the front that stay open.
        crotch_told: How the crotch is sewn.
        fused: What is fused for it, in words.
        notions: What is bought for it.
    """

    centre: tuple[Edge, ...]
    stretches: tuple[Stretch, ...] = ()
    pieces: tuple[Piece, ...] = ()
    marks: tuple[Mark, ...] = ()
    notches: tuple[Notch, ...] = ()
    steps: tuple[Assembling, ...] = ()
    slit: tuple[EdgeLength, ...] = ()
    crotch_told: str = "Put one leg into the other and sew the crotch from the front waist round to the back waist."
    fused: str = ""
    notions: tuple[Notion, ...] = ()


def fly_front(front: Trued, top: Length, band: float, body: Body, cut: Trousers, sheet: DraftSheet) -> Opening:
    """The fly: the centre front is open down to its end, faced on one front, shielded on the other."""
    _room_for_a_fly(front, body, cut)
    end = _fly_length(front, top, band, body, cut, sheet)
    slit, crotch = front.crotch.split(end)
    made = fly(front.waist, slit, cut.lap, underlap(cut))
    return Opening(
        centre=(Edge("front_crotch", crotch.reversed(), kind="crotch"), Edge("fly", slit.reversed(), kind="opening")),
        pieces=made.pieces, marks=(made.stitched,), notches=(Notch("fly", 0.0, 1, "fly-end"),),
        steps=(Assembling("Face the lapping front down to the fly's end; close the foot of the shield; sew the zip with the shield to the other front.", (made.facing, *made.shield)),),
        slit=(EdgeLength("front", ("fly",)),), notions=(made.zip,), fused="the fly facing",
        crotch_told="Put one leg into the other and sew the crotch from the fly's end round to the back waist; finish the fly and stitch the J.",
    )


def _fly_length(front: Trued, top: Length, band: float, body: Body, cut: Trousers, sheet: DraftSheet) -> Length:
    """Length of the fly; of a raised top it is the natural waist below it that must pass the hips."""
    passing, depth = (body.waist_girth + waist_ease(cut), band - cut.waist_position) if cut.waist_position > 0 else (top, band)
    _let_the_hips_through(float(needed_opening(body.hip_girth, passing, depth)), straight_centre(front) - OPENING_ABOVE_HOOK, cut)
    return opening_length(body.hip_girth, passing, straight_centre(front), depth, sheet)


def _let_the_hips_through(needed: float, room: float, cut: Trousers) -> None:
    """Refuse hips that pass no fly that the front has room for, and say what would let them through; lengths in cm."""
    if needed <= room:
        return
    ease = math.ceil(2 * (float(waist_ease(cut)) + 2 * (needed - room) + 0.1)) / 2  # in half centimetres, rounded up
    ways = 'closure "side_zip"' if cut.waist_position > 0 else 'closure "side_zip", or waistband "elastic" without a closure'
    more = f", or give a waist_ease of {ease:g} cm" if ease <= MOST_WAIST_EASE else ""
    raise SpecError(
        f"The fly would have to be {math.ceil(10 * needed - 1e-6) / 10:g} cm long for the hips to pass, and above the crotch curve there is room for {math.floor(10 * room) / 10:g} cm: choose {ways}{more}.",
        where="garment.closure", received="fly", allowed=("side_zip",) if cut.waist_position > 0 else ("side_zip", "none"),
    )


def _room_for_a_fly(front: Trued, body: Body, cut: Trousers) -> None:
    """Refuse a rise, or a waist lowered so far, that leaves no fly."""
    room = straight_centre(front) - OPENING_ABOVE_HOOK
    if room < LEAST_OPENING and cut.waist_position >= 0:
        raise SpecError(
            f'A body_rise of {float(body.body_rise):.1f} cm leaves room for a fly of {room:.1f} cm, and it takes {LEAST_OPENING:g} cm: measure it again, or choose closure "side_zip", or waistband "elastic" without a closure.',
            where="measurements.body_rise", received=float(body.body_rise),
        )
    if room < LEAST_OPENING:
        raise SpecError(
            f'A waist_position of {cut.waist_position:g} cm leaves room for a fly of {room:.1f} cm, and it takes {LEAST_OPENING:g} cm: lower the waist less, or choose closure "side_zip" or "none".',
            where="garment.waist_position", received=cut.waist_position, allowed=(cut.waist_position + LEAST_OPENING - room, 0.0),
        )


def side_zip(front: Trued, top: Length, band: float, body: Body, cut: Trousers, sheet: DraftSheet) -> Opening:  # noqa: ARG001 - a row of the table
    """A zip in the left side seam, nearly down to the hip."""
    longest = Length(front.side.length() + band, "side seam") - LEAST_UNDER_ZIP
    reach = Length(front.waist.end.y + band - front.panel.hip_side.y, "waist to hip at the side") - ZIP_ABOVE_HIP
    slit = float(zip_opening(body.hip_girth, top, reach, longest, band, sheet))
    return Opening(
        centre=_whole(front), stretches=((ZIP, "opening", slit),), notches=(Notch(ZIP, slit, 1, "zip-end"),),
        slit=(EdgeLength("front", (ZIP,)),), notions=(Notion("zip", 1, float(round(slit + band))),),
    )


def unopened(front: Trued, top: Length, band: float, body: Body, cut: Trousers, sheet: DraftSheet) -> Opening:  # noqa: ARG001 - a row of the table
    """No opening: the waist itself passes the hips."""
    return Opening(centre=_whole(front))


def _whole(front: Trued) -> tuple[Edge, ...]:
    return (Edge("front_crotch", front.crotch.reversed(), kind="crotch"),)


CLOSURES: dict[Closure | None, Callable[[Trued, Length, float, Body, Trousers, DraftSheet], Opening]] = {
    "fly": fly_front,
    "side_zip": side_zip,
    "none": unopened,
}
"""How each closure is cut: front, finished top, depth of a band that opens with it, body, options."""


def shield_closed(pieces: tuple[Piece, ...]) -> tuple[Piece, ...]:
    """The fly's pieces with the shield's top sewn to its own inside, where no band lies over it."""
    return tuple(replace(p, edges=tuple(_sewn(e) for e in p.edges)) if p.name == "fly_shield" else p for p in pieces)


def _sewn(edge: Edge) -> Edge:
    return replace(edge, role=Role.SEAM) if edge.name == "top_inside" else edge


