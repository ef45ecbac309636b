"""Trousers, the choices: what goes with what, and what an option is where nobody chose it."""

from __future__ import annotations

from dataclasses import replace

from drafting.craft.clashes import Clash, among, chosen, other_than, refuse_clashes
from drafting.garments.trousers.spec import Trousers

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

    Clash("inside_leg", chosen, "length", other_than("full"), "Both say where the leg ends."),
    Clash("hem_over_floor", other_than(2.0), "length", other_than("full"), "Both say where the leg ends."),
    Clash("hem_over_floor", other_than(2.0), "inside_leg", chosen, "Both say where the leg ends."),
    Clash("shoe_height", chosen, "length", other_than("full"), "A heel lengthens only a leg that reaches the shoe."),
    Clash("shoe_height", chosen, "inside_leg", chosen, "The inside leg is cut as long as it is ordered."),
    Clash("turn_ups", chosen, "hem", among("shaped"), "A turn-up is folded along a straight line."),
    Clash("turn_ups", chosen, "leg", among("flared"), "A flared hem is too bowed to be folded up."),
)
"""What excludes what."""


def usual(cut: Trousers) -> Trousers:
    """The options with what was left open settled by what was chosen."""
    closure = cut.closure or ("none" if cut.waistband == "elastic" else "fly")
    waistband = cut.waistband or ("elastic" if closure == "none" else "straight")
    return replace(
        cut, closure=closure, waistband=waistband,
        front_pocket=cut.front_pocket or ("none" if closure == "side_zip" else "slant"),
        back_pocket=cut.back_pocket or ("none" if waistband == "elastic" else "patch" if cut.back == "yoke" else "welt"),
        front=cut.front or ("flat" if waistband == "elastic" else "dart"),
        back=cut.back or ("flat" if waistband == "elastic" else "darts"),
        belt_loops=(closure == "fly" and waistband in LOOPED) if cut.belt_loops is None else cut.belt_loops,
    )


def settled(cut: Trousers) -> Trousers:
    """The options, each of them settled.

    Raises:
        SpecError: Two options exclude each other; it names both.
    """
    wished = usual(cut)
    refuse_clashes(wished, CLASHES)
    return wished


OPEN = ("front", "back", "closure", "waistband", "front_pocket", "back_pocket", "belt_loops")
"""Options that are settled by other ones where nobody chose them."""
