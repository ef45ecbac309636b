"""Trousers, the choices: what goes with what, and what an option is where nobody chose it."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from drafting.craft.clashes import Clash, among, chosen, other_than, refuse_clashes
from drafting.errors import SpecError
from drafting.garments.trousers.spec import Trousers


def raised(value: float) -> bool:
    """Whether a waist position lies over the natural waist."""
    return value > 0


LOOPED = ("straight", "contoured")

CLASHES = (
    Clash("closure", among("none"), "waistband", other_than("elastic"), "Without a closure the waist must stretch over the hips."),
    Clash("waistband", among("elastic"), "closure", other_than("none"), "An elastic waist passes the hips by itself."),
    Clash("closure", among("side_zip"), "front_pocket", other_than("none"), "The zip lies where the pocket would open."),
    Clash("front", other_than("flat"), "waistband", among("elastic"), "What is drawn in by elastic has no darts and no pleats."),
    Clash("back", other_than("flat"), "waistband", among("elastic"), "What is drawn in by elastic has no darts."),
    Clash("back", among("flat"), "waistband", other_than("elastic"), "Only an elastic draws a back in that has no darts."),
    Clash("back", among("yoke"), "back_pocket", among("welt"), "The yoke takes away the darts that a welt pocket ends."),
    Clash("back", among("yoke"), "closure", among("side_zip"), "The zip would cross the seam of the yoke."),
    Clash("back", among("yoke"), "waistband", among("faced"), "The facing would end where the darts of the yoke do."),
    Clash("pleat_depth", chosen, "front", other_than("one_pleat", "two_pleats"), "There is no pleat."),
    Clash("belt_loops", chosen, "waistband", other_than("straight", "contoured"), "Loops are sewn to a band."),
    Clash("belt_loops", chosen, "closure", other_than("fly"), "A belt needs its buckle over a fly."),
    Clash("waist_fullness", chosen, "waistband", other_than("straight"), "Only a straight band has the trouser top eased onto it."),
    Clash("waist_ease", chosen, "waistband", among("elastic"), "The elastic holds the waist."),
    Clash("pocket_inset", chosen, "front_pocket", among("in_seam", "none"), "There is no mouth that cuts the corner off."),
    Clash("pocket_mouth", chosen, "front_pocket", among("none"), "There is no pocket in front."),
    Clash("underlap", chosen, "waistband", among("faced", "elastic"), "There is no band to lap under."),

    Clash("waist_position", raised, "waistband", among("straight", "elastic"), "Only a facing or a contoured band follows the body over the natural waist."),
    Clash("waist_position", raised, "front", among("one_pleat", "two_pleats"), "Pleats open from the natural waist down."),
    Clash("waist_position", raised, "back", among("yoke"), "The yoke takes away the darts that run through the waist."),
    Clash("waist_position", raised, "front_pocket", among("slant", "curved"), "Their mouths start at the natural waist, under the top."),
    Clash("waist_position", raised, "back_pocket", among("welt"), "Its bag hangs from the natural waist, under the top."),

    Clash("inside_leg", chosen, "length", other_than("full"), "Both say where the leg ends."),
    Clash("hem_over_floor", other_than(2.0), "length", other_than("full"), "Both say where the leg ends."),
    Clash("hem_over_floor", other_than(2.0), "inside_leg", chosen, "Both say where the leg ends."),
    Clash("shoe_height", chosen, "length", other_than("full"), "A heel lengthens only a leg that reaches the shoe."),
    Clash("shoe_height", chosen, "inside_leg", chosen, "The inside leg is cut as long as it is ordered."),
    Clash("turn_ups", chosen, "hem", among("shaped"), "A turn-up is folded along a straight line."),
    Clash("knee_girth", chosen, "leg", among("culottes"), "They hang from the hip and have no knee."),
    Clash("knee_ease", chosen, "leg", among("culottes"), "They hang from the hip and have no knee."),
    Clash("turn_ups", chosen, "leg", among("culottes"), "They are hemmed as a skirt is."),
    Clash("turn_ups", chosen, "leg", among("flared"), "A flared hem is too bowed to be folded up."),
)
"""What excludes what."""


def usual(cut: Trousers) -> Trousers:
    """The options with what was left open settled by what was chosen."""
    high = raised(cut.waist_position)
    closure = cut.closure or ("none" if cut.waistband == "elastic" else "fly")
    waistband = cut.waistband or ("elastic" if closure == "none" else "faced" if high else "straight")
    return replace(
        cut, closure=closure, waistband=waistband,
        facing_depth=cut.facing_depth or (cut.waist_position if high else USUAL_FACING),
        front_pocket=cut.front_pocket or ("none" if closure == "side_zip" else "in_seam" if high else "slant"),
        back_pocket=cut.back_pocket or ("none" if high or waistband == "elastic" else "patch" if cut.back == "yoke" else "welt"),
        front=cut.front or ("flat" if waistband == "elastic" else "dart"),
        back=cut.back or ("flat" if waistband == "elastic" else "darts"),
        belt_loops=(closure == "fly" and waistband in LOOPED) if cut.belt_loops is None else cut.belt_loops,
    )


USUAL_FACING, LEAST_RAISED = 6.0, 3.0
"""Depth of a facing, and least height of a raised waist, cm. House method."""


def _high_enough(cut: Trousers) -> None:
    """Refuse a raised waist that has no room for what finishes it."""
    height = cut.waist_position
    if 0 < height < LEAST_RAISED:
        raise SpecError(
            f"A waist_position of {height:g} cm leaves no room for a facing or band over the natural waist: raise it by {LEAST_RAISED:g} cm at least, or leave it at 0.",
            where="garment.waist_position", received=height, allowed=(LEAST_RAISED, None),
        )
    option, depth = ("band_depth", cut.band_depth) if cut.waistband == "contoured" else ("facing_depth", cut.facing_depth or 0.0)
    if height > 0 and depth > height:
        raise SpecError(
            f"A {option} of {depth:g} cm reaches below the natural waist, where the darts bend, with a waist_position of {height:g} cm: make it {height:g} cm at most.",
            where=f"garment.{option}", received=depth, allowed=(None, height),
        )


def settled(cut: Trousers) -> Trousers:
    """The options, each of them settled.

    Raises:
        SpecError: Two options exclude each other; it names both.
    """
    wished = usual(cut)
    refuse_clashes(wished, CLASHES)
    _high_enough(wished)
    return wished


def allowed(cut: Trousers, resolved: tuple[tuple[str, Any], ...]) -> tuple[tuple[str, Any], ...]:
    """Of what the draft settled, what an order of the same cut may say."""
    told = replace(cut, **dict(resolved))
    barred = {c.option for c in CLASHES if c.this(getattr(told, c.option)) and c.that(getattr(told, c.other))}
    if cut.knee_ease is not None:
        barred.add("knee_girth")
    return tuple((name, value) for name, value in resolved if name not in barred)


OPEN = ("front", "back", "closure", "waistband", "front_pocket", "back_pocket", "belt_loops", "facing_depth")
"""Options that are settled by other ones where nobody chose them."""
