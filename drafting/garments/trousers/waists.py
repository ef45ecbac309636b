"""Trousers, the waist: a straight or a contoured band, a facing, or an elastic casing.

Each is taken from the trued panels and says what is sewn to what. The bands and facings of a fly are
here; those that open at the side go as a skirt's do.

Source: as in `craft.waists`, `craft.casing` and `craft.fly`: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.craft import waists as shared
from drafting.craft.around import ZIP, Round, along_round, stations
from drafting.craft.casing import casing
from drafting.craft.contour import Contour, Top, cut_contours, upright
from drafting.craft.fly import over_under
from drafting.craft.loops import loop_count, loop_places
from drafting.craft.waistband import (
    band_underlap,
    contoured_quarter,
    straight_band_ends,
    straight_waistband,
)
from drafting.craft.waists import eased, facing_of, inside_of
from drafting.errors import SpecError
from drafting.garments.trousers.fits import fullness, underlap
from drafting.garments.trousers.manners import band_in_rise
from drafting.garments.trousers.pockets import to_joint
from drafting.garments.trousers.spec import Closure, Trousers, Waistband
from drafting.garments.trousers.trueing import Trued, straight_centre
from drafting.garments.trousers.waistline import shaped_depth
from drafting.pattern import (
    CombinedLength,
    EdgeLength,
    Measuring,
    Notion,
    Piece,
    Role,
    Seam,
    SeamPart,
)

Contours = tuple[Contour, Contour]
"""What was cut off the front's top, and off the back's."""


def cut_off(front: Trued, back: Trued, cut: Trousers) -> tuple[Trued, Trued, Contours | None]:
    """The panels that the waist is sewn to, and the tops that a shaped waist is cut from."""
    depth = shaped_depth(cut)
    if not depth:
        return front, back, None
    room = min(straight_centre(p) for p in (front, back))
    if depth > room:
        option = "facing_depth" if cut.waistband == "faced" else "band_depth"
        raise SpecError(
            f"The centre seams run straight for {room:.1f} cm below the waist_position; a {option} of {depth:g} cm reaches into their curve. Make one of them smaller.",
            where=f"garment.{option}", received=depth, allowed=(0.0, room),
        )
    below = contoured(front, back, depth)
    return below if cut.waistband == "contoured" else (front, back, below[2])


def contoured(front: Trued, back: Trued, depth: float) -> tuple[Trued, Trued, Contours]:
    """The panels without their tops, and the bands that were cut off."""
    one, two = (Top(p.closed, p.side, p.crotch, p.panel.darts) for p in (front, back))
    bands = cut_contours(one, two, depth)
    front_below, back_below = (
        replace(panel, waist=band.waist, side=band.side, crotch=band.centre, darts=band.darts)
        for panel, band in zip((front, back), bands, strict=True)
    )
    return front_below, back_below, bands


@dataclass(frozen=True, slots=True, kw_only=True)
class Made:
    """The cut panels that a waist is made for.

    Attributes:
        top: Finished girth of the waist in cm.
        around: The pieces from the front to the back that the waist is sewn to.
        contours: What was cut off their tops, or traced from them; None where nothing was.
        body: The body.
        cut: The options.
        even: Whether both sides are alike; a shaped waist is then cut on the fold behind, else with a seam.
    """

    top: float
    around: tuple[Piece, ...]
    contours: Contours | None
    body: Body
    cut: Trousers
    even: bool = True

    @property
    def names(self) -> tuple[str, ...]:
        """Their names, from the front to the back."""
        return tuple(p.name for p in self.around)


@dataclass(frozen=True, slots=True, kw_only=True)
class Waist:
    """What finishes the waist.

    Attributes:
        pieces: Its pieces.
        making: Seams that make it up before it is sewn on.
        joining: The waist seam, and what is sewn with it.
        closing: Seams after that.
        tape: Where the tape lies along the finished waist.
        down: Edges that the tape goes over down the side, above the panels.
        centres: Edges that the tape goes over at the two centres, above the crotch seam.
        opens: Edges of it that open with the trousers.
        told: What is done with it at the machine, and afterwards.
        fused: What is fused for it, in words.
        over_shield: Whether it is sewn over the top of a fly's shield; else that is closed by itself.
        notions: What is bought for it.
    """

    pieces: tuple[Piece, ...]
    making: tuple[Seam, ...] = ()
    joining: tuple[Seam, ...]
    closing: tuple[Seam, ...] = ()
    tape: Measuring
    down: tuple[EdgeLength, ...] = ()
    centres: tuple[EdgeLength, ...] = ()
    opens: tuple[EdgeLength, ...] = ()
    told: tuple[str, str]
    fused: str = "the waistband"
    over_shield: bool = True
    notions: tuple[Notion, ...]


BAND_TOLD = "Baste the loops on, make up the waistband, sew it to the trouser top and to the shield, easing the top in between side and dart."
HOOKED = "Sew hook, bar and buttonhole; bar the fly and the pocket ends; press the creases."


def straight_fly(made: Made) -> Waist:
    """The straight band over a fly, notched where the seams meet it, marked where the loops go."""
    cut, length = made.cut, made.top
    front, back = made.around[0], made.around[-1]
    quarter = (sum(p.sewn_length("waist") for p in made.around[:-1]), back.sewn_length("waist"))
    share = length / (2 * sum(quarter))
    side, crease = quarter[0] * share, _to_crease(front) * share
    joints = (("band-side", side), ("band-centre-back", length / 2), ("band-side-far", length - side))
    loops = loop_places(length, crease, side, side + quarter[1] * share / 2, loop_count(float(made.body.waist_girth))) if cut.belt_loops else ()
    against = cut.lap == "left_over_right"
    band = straight_waistband(length, cut.band_depth, underlap(cut), joints, loops, underlap_right=against)
    first, last = reversed(over_under(cut.lap))
    top = (*(SeamPart(p, "waist", first) for p in made.names), *(SeamPart(p, "waist", last, reversed=True) for p in reversed(made.names)))
    return Waist(
        pieces=(band,), making=straight_band_ends(),
        joining=(
            _shield_top(SeamPart("waistband", "underlap", reversed=not against)),
            Seam("waist", top, (SeamPart("waistband", "waist", reversed=against),), eased(fullness(cut))),
        ),
        tape=EdgeLength("waistband", ("waist",)), down=across(cut), centres=2 * across(cut), opens=across(cut), told=(BAND_TOLD, HOOKED), notions=_band_notions(length, cut),
    )


def across(cut: Trousers) -> tuple[EdgeLength, ...]:
    """The tape across a straight band, where it is part of the rise."""
    return (EdgeLength("waistband", ("overlap_end",)),) if band_in_rise(cut) else ()


def _band_notions(length: float, cut: Trousers) -> tuple[Notion, ...]:
    return Notion("hook and bar"), Notion("button"), Notion("fusible, length of the waistband", 1, length + underlap(cut))


def _shield_top(under: SeamPart) -> Seam:
    return Seam("fly_shield_top", (SeamPart("fly_shield", "top"),), (under,))


def _to_crease(front: Piece) -> float:
    """Sewn distance along the front waist from the centre to the crease."""
    taken = front.taken_on("waist")
    waist = front.edge("waist").path
    return to_joint(waist, taken[0].first) if taken else waist.length() / 2


def contoured_fly(made: Made) -> Waist:
    """The contoured band: quarters and their facings, the back on the fold, and an underlap."""
    assert made.contours is not None  # noqa: S101 - a contoured band is cut off the panels
    cut, (front, back) = made.cut, made.contours
    outside = (
        contoured_quarter("waistband_front", "Waistband front", *upright(front), on_fold=False),
        contoured_quarter("waistband_back", "Waistband back", *upright(back), on_fold=made.even),
    )
    inside = tuple(inside_of(piece, joined=False) for piece in outside)
    lower = (SeamPart("waistband_front", "waist", "both", 2, reversed=True), SeamPart("waistband_back", "waist", "both", 2, reversed=True))
    return Waist(
        pieces=(*outside, *inside, band_underlap(cut.band_depth, underlap(cut))),
        making=(*_behind(("waistband_back", "waistband_back_facing"), made), *_contoured_seams(cut)),
        joining=(_shield_top(SeamPart("band_underlap", "foot", reversed=True)), Seam("waist", _both(made.names), lower, eased(fullness(cut)))),
        tape=_twice(("waistband_front", "waistband_back"), "top"),
        down=(EdgeLength("waistband_front", ("side",)),), centres=CONTOURED_CENTRES, opens=(EdgeLength("waistband_front", ("centre",)),),
        told=(BAND_TOLD, HOOKED), notions=_band_notions(made.top, cut),
    )


CONTOURED_CENTRES = (EdgeLength("waistband_front", ("centre",)), EdgeLength("waistband_back", ("centre",)))


def _contoured_seams(cut: Trousers) -> tuple[Seam, ...]:
    over, under = over_under(cut.lap)
    top = ("waistband_front", "waistband_back")
    return (
        Seam("waistband_side", (SeamPart("waistband_front", "side"),), (SeamPart("waistband_back", "side"),)),
        Seam("waistband_facing_side", (SeamPart("waistband_front_facing", "side"),), (SeamPart("waistband_back_facing", "side"),)),
        Seam("waistband_underlap_join", (SeamPart("waistband_front", "centre", under),), (SeamPart("band_underlap", "join"),)),
        Seam("waistband_underlap_join_inside", (SeamPart("waistband_front_facing", "centre", under),), (SeamPart("band_underlap", "join_inside", reversed=True),)),
        Seam("waistband_underlap_end", (SeamPart("band_underlap", "end"),), (SeamPart("band_underlap", "end_inside", reversed=True),)),
        Seam("waistband_overlap_end", (SeamPart("waistband_front", "centre", over),), (SeamPart("waistband_front_facing", "centre", over),)),
        Seam("waistband_top", _both(top, "top"), _both(tuple(f"{p}_facing" for p in top), "top")),
    )


def _behind(names: tuple[str, ...], made: Made) -> tuple[Seam, ...]:
    """The centre back seams of a shaped waist that cannot be cut on the fold."""
    def seam(name: str) -> Seam:
        return Seam(f"{name}_centre", (SeamPart(name, "centre", "right"),), (SeamPart(name, "centre", "left"),))

    return () if made.even else tuple(map(seam, names))


def _both(names: tuple[str, ...], edge: str = "waist") -> tuple[SeamPart, ...]:
    return tuple(SeamPart(p, edge, "both", 2) for p in names)


def _twice(names: tuple[str, ...], edge: str) -> CombinedLength:
    return CombinedLength(tuple((2.0, EdgeLength(p, (edge,))) for p in names))


def faced_fly(made: Made) -> Waist:
    """A facing turned to the inside, its ends felled to the fly; the shield's top is closed by itself."""
    assert made.contours is not None  # noqa: S101 - a facing is traced from the panels
    front, back = made.contours
    pieces = (
        facing_of(contoured_quarter("facing_front", "Front facing", *upright(front), on_fold=False), joined=False),
        facing_of(contoured_quarter("facing_back", "Back facing", *upright(back), on_fold=made.even), joined=False),
    )
    pieces = (_free_ends(pieces[0]), pieces[1])
    names = ("facing_front", "facing_back")
    lower = tuple(SeamPart(p, "waist", "both", 2) for p in names)
    return Waist(
        pieces=pieces, making=(*_behind(("facing_back",), made), Seam("facing_side", (SeamPart("facing_front", "side"),), (SeamPart("facing_back", "side"),))),
        joining=(Seam("waist", _both(made.names), lower),),
        closing=(Seam("fly_shield_top", (SeamPart("fly_shield", "top"),), (SeamPart("fly_shield", "top_inside", reversed=True),)),),
        tape=_twice(names, "waist"), told=FACED_TOLD, fused="the facing", over_shield=False,
        notions=(Notion("hook and eye"), Notion("fusible, for the facing"), Notion("stay tape, length of the waist", 1, made.top)),
    )


FACED_TOLD = (
    "Join the facing at the sides, sew it to the stayed waist, turn it in and fell its ends.",
    "Sew on hook and eye; bar the opening and the pocket ends; press the creases.",
)


def _free_ends(piece: Piece) -> Piece:
    """A front facing, its ends at the opening turned in and felled."""
    return replace(piece, edges=tuple(replace(e, role=Role.FINISHED, kind="facing") if e.name == "centre" else e for e in piece.edges))


def straight_side(made: Made) -> Waist:
    """The straight band over a zip in the left side."""
    band = shared.straight_band(_round(made), made.around[::-1], made.top, eased(fullness(made.cut)), shared.Band(made.cut.band_depth, underlap(made.cut)))
    told = ("Make up the waistband and sew it to the trouser top, easing the top in between side and dart.", "Sew on hook and bar; press the creases.")
    return replace(_as_skirts(band, told), down=across(made.cut), centres=2 * across(made.cut), opens=across(made.cut))


def contoured_side(made: Made) -> Waist:
    """The contoured band that the zip in the left side runs through."""
    assert made.contours is not None  # noqa: S101 - a contoured band is cut off the panels
    band = shared.contoured_band(_round(made), made.contours[::-1], made.cut.band_depth, None)
    told = ("Make up the waistband, sew it to the trouser top, run the zip up through it and turn its inside in.", "Sew on hook and eye; press the creases.")
    return replace(_as_skirts(band, told), down=(EdgeLength("waistband_front", (ZIP,)),), centres=CONTOURED_CENTRES, opens=(EdgeLength("waistband_front", (ZIP,)),))


def faced_side(made: Made) -> Waist:
    """The facing over a zip in the left side."""
    assert made.contours is not None  # noqa: S101 - a facing is traced from the panels
    return replace(_as_skirts(shared.facing(_round(made), made.contours[::-1], None), FACED_TOLD), fused="the facing")


def _round(made: Made) -> Round:
    return Round(made.names[::-1], ((), (ZIP, "side"), ()))


def _as_skirts(band: shared.Waist, told: tuple[str, str]) -> Waist:
    """A waist as a skirt has it."""
    return Waist(pieces=band.pieces, making=band.making, joining=(band.joining,), closing=band.closing, tape=band.tape, told=told, notions=band.notions)


def elastic(made: Made) -> Waist:
    """The elastic casing, a ring as wide as the hips."""
    layer = Round(made.names[::-1], ((), *((("side",),) * (len(made.around) - 1)), ()))
    joints = stations(layer, made.around[::-1], "waist", 0)
    ring = casing(made.top, made.cut.band_depth, float(made.body.waist_girth), joints)
    return Waist(
        pieces=(ring.piece,), making=(ring.closing,), joining=(Seam("waist", along_round(layer, "waist", 0), (SeamPart("waistband", "waist"),)),),
        tape=EdgeLength("waistband", ("waist",)),
        fused="",
        told=("Close the casing to a ring but for a gap inside, sew it to the trouser top and turn it in.", "Draw the elastic in and close the gap; press the creases."),
        notions=(ring.elastic,),
    )


WAISTS: dict[tuple[Waistband | None, Closure | None], Callable[[Made], Waist]] = {
    ("straight", "fly"): straight_fly,
    ("straight", "side_zip"): straight_side,
    ("contoured", "fly"): contoured_fly,
    ("contoured", "side_zip"): contoured_side,
    ("faced", "fly"): faced_fly,
    ("faced", "side_zip"): faced_side,
    ("elastic", "none"): elastic,
}
"""How each waist is made over each closure; what is not here cannot be had."""
