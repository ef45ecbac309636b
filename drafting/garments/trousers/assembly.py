"""Trousers, the order of assembly: what is sewn when. Pockets before the long seams, the band last.

Source: common practice, no source.
"""

from __future__ import annotations

from drafting.craft.assembling import Assembling, in_order
from drafting.craft.fly import Fly, over_under
from drafting.craft.slant_pocket import SlantPocket
from drafting.craft.welt_pocket import WeltPocket
from drafting.garments.trousers.details import Band
from drafting.garments.trousers.spec import Trousers
from drafting.pattern import NO_EASE, Ease, Seam, SeamPart, SewingStep


def assembly(
    darts: tuple[str, ...], pocket: SlantPocket | None, welt: WeltPocket | None, fly: Fly, band: Band, eased: float, cut: Trousers
) -> tuple[tuple[Seam, ...], tuple[SewingStep, ...]]:
    """All seams in sewing order, and the steps that close them."""
    steps = (
        Assembling("Fuse the waistband, the fly facing and the welts; transfer notches, dart points and pocket ends."),
        *((Assembling("Sew the darts and press them toward the centre.", (), darts),) if darts else ()),
        *(() if welt is None else (Assembling("Stitch the welts and bags to the backs, slash and turn them, close the sides of the bags.", welt.seams),)),
        *(() if pocket is None else _slant(pocket)),
        Assembling("Face the lapping front down to the fly's end; close the foot of the shield; sew the zip with the shield to the other front.", (fly.facing, *fly.shield)),
        Assembling("Sew the side seams.", (_side(pocket),)),
        Assembling("Sew the inseams.", (Seam("inseam", (SeamPart("front", "inseam"),), (SeamPart("back", "inseam", reversed=True),)),)),
        Assembling("Put one leg into the other and sew the crotch from the fly's end round to the back waist; finish the fly and stitch the J.", (_centre("front_crotch", "front"), _centre("back_crotch", "back"))),
        Assembling("Baste the loops on, make up the waistband, sew it to the trouser top and to the shield, easing the top in between side and dart.", (*band.making, _shield_top(band), _waist(pocket, band, eased, cut))),
        Assembling("Turn up and sew the hems."),
        Assembling("Sew hook, bar and buttonhole; bar the fly and the pocket ends; press the creases."),
    )
    return in_order(steps)


def _slant(pocket: SlantPocket) -> tuple[Assembling, Assembling]:
    caught = ("pocket_top", "pocket_side")
    own = tuple(s for s in pocket.seams if s.name not in caught)
    return (
        Assembling("Join facings and side pieces to their bags; sew the taped pocket mouths, turn and stitch them; close the bags.", own),
        Assembling("Baste the pockets to the waist and to the side.", tuple(s for s in pocket.seams if s.name in caught)),
    )


def _side(pocket: SlantPocket | None) -> Seam:
    piece = () if pocket is None else (SeamPart("side_piece", "side"),)
    return Seam("side", (*piece, SeamPart("front", "side")), (SeamPart("back", "side", reversed=True),))


def _centre(edge: str, piece: str) -> Seam:
    return Seam(edge, (SeamPart(piece, edge, "right"),), (SeamPart(piece, edge, "left"),))


def _waist(pocket: SlantPocket | None, band: Band, eased: float, cut: Trousers) -> Seam:
    """From the underlapping centre front round the body to the other one."""
    right = (
        ("front", "waist"),
        *((("side_piece", "waist"),) if pocket is not None else ()),
        ("back", "waist"),
    )
    first, last = reversed(over_under(cut.lap))
    ease = Ease("ease", eased, eased, eased) if eased else NO_EASE
    if len(band.lower) > 1:
        return Seam("waist", tuple(SeamPart(p, e, "both", 2) for p, e in right), band.lower, ease)
    top = (*(SeamPart(p, e, first) for p, e in right), *(SeamPart(p, e, last, reversed=True) for p, e in reversed(right)))
    return Seam("waist", top, band.lower, ease)


def _shield_top(band: Band) -> Seam:
    return Seam("fly_shield_top", (SeamPart("fly_shield", "top"),), (band.underlap,))
