"""The shirt's choices: what goes with what, and what an option is where nobody chose it.

Source of eases: 20 cm at the chest, 4 cm of armhole depth and 3 cm of back are W. Aldrich, Metric
Pattern Cutting for Menswear, a classic shirt less its allowances; the women's classic, and slim and
relaxed by method: common practice, no source.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.craft.clashes import Clash, among, given, other_than, refuse_clashes
from drafting.craft.rules import SHOULDER_SLOPE
from drafting.errors import SpecError
from drafting.garments.shirt.block import Block
from drafting.garments.shirt.spec import CollarKind, Fit, Method, Shirt
from drafting.trace import Length, Place

CLASHES = (
    Clash("bust_dart", given, "method", other_than("womens"), "Only the women's draft has a bust dart."),
    Clash("tail", given, "hem", among("straight"), "Only a curved hem rises at the side."),
    Clash("pleat_intake", given, "back_pleat", among("none"), "There is no pleat."),
    Clash("collar_fall", given, "collar", among("stand"), "The stand alone has no leaf."),
    Clash("collar_point", given, "collar", among("stand"), "The stand alone has no leaf."),
    Clash("placket", given, "sleeve", among("short"), "A short sleeve has no slit."),
    Clash("cuff", other_than("square"), "sleeve", among("short"), "A short sleeve has no cuff."),
    Clash("cuff_depth", other_than(6.5), "sleeve", among("short"), "A short sleeve has no cuff."),
    Clash("cuff_ease", other_than(6.0), "sleeve", among("short"), "A short sleeve has no cuff."),
)
"""What excludes what."""

OPEN = (
    "chest_ease", "neck_ease", "waist_shaping", "lap", "chest_pocket", "collar_fall", "collar_point", "placket", "tail", "pleat_intake",
)
"""Options that are settled by other ones where nobody chose them."""


@dataclass(frozen=True, slots=True)
class Eases:
    """What a fit has over the body, cm.

    Attributes:
        chest: All round.
        depth: Armhole under the armpit.
        back: Half the back at the blades.
        chest_width: Half the front above the bust.
        waist: What each side edge is taken in.
    """

    chest: float
    depth: float
    back: float
    chest_width: float
    waist: float


EASES: dict[tuple[Method, Fit], Eases] = {
    ("mens", "slim"): Eases(12.0, 2.5, 1.5, 5.5, 3.0),
    ("mens", "classic"): Eases(20.0, 4.0, 3.0, 6.5, 2.0),
    ("mens", "relaxed"): Eases(26.0, 5.0, 4.0, 7.2, 0.0),
    ("womens", "slim"): Eases(8.0, 2.0, 0.8, 2.6, 3.0),
    ("womens", "classic"): Eases(12.0, 3.0, 1.3, 3.2, 2.0),
    ("womens", "relaxed"): Eases(18.0, 4.0, 2.2, 4.0, 0.0),
}

POINTS: dict[CollarKind, float] = {"classic": 7.2, "spread": 7.0, "button_down": 8.0, "stand": 7.0}
"""Length of the leaf's front edge, cm: 6.5 to 8, common practice, no source."""

LEAF_OVER_STAND = 1.2
"""The leaf covers the neck seam: 1 to 1.5 cm deeper than the stand. Source: common practice, no source."""


def eases(cut: Shirt) -> Eases:
    """The fit's eases; what the back and the front have changes with a chest ease that was chosen."""
    usual = EASES[cut.method, cut.fit]
    if cut.chest_ease is None:
        return usual
    more = (cut.chest_ease - usual.chest) / 8
    return replace(usual, chest=cut.chest_ease, back=usual.back + more, chest_width=usual.chest_width + more * 2 / 3)


DROPS = (-2.0, 3.0)


def shoulder_drop(body: Body, cut: Shirt) -> Length:
    """How much lower than in the draft the shoulder ends lie, cm: as ordered, else by a measured slope.

    Source: a shoulder end moved by the difference, the whole armhole with it: published lessons on
    fitting, common practice.
    """
    if cut.shoulder_drop is not None:
        return Length(cut.shoulder_drop, "shoulder drop")
    if not (body.taken("shoulder_slope") and body.has("shoulder_length")):
        return Length(0.0)
    own, usual = (math.sin(math.radians(d)) for d in (body.value("shoulder_slope"), SHOULDER_SLOPE[body.figure]))
    return Length(min(max(body.value("shoulder_length") * (own - usual), DROPS[0]), DROPS[1]), "shoulder drop")


def lower(place: Place, drop: Length) -> Place:
    """A place of the shoulder lowered, or raised, with it."""
    if not drop:
        return place
    return place.down(drop) if drop > 0 else place.up(Length(0.0) - drop)


def settled(cut: Shirt) -> Shirt:
    """The options, each of them settled but those that go by the body.

    Raises:
        SpecError: Two options exclude each other; it names both.
    """
    refuse_clashes(cut, CLASHES)
    women, long, leaf = cut.method == "womens", cut.sleeve == "long", cut.collar != "stand"
    own = eases(cut)
    fall = cut.collar_stand + LEAF_OVER_STAND if cut.collar_fall is None else cut.collar_fall
    if leaf and fall < cut.collar_stand + 0.5:
        raise SpecError(
            f"collar_fall {fall:g} does not cover the neck seam under collar_stand {cut.collar_stand:g}: make it at least 0.5 cm deeper.",
            where="garment.collar_fall", received=fall, allowed=(cut.collar_stand + 0.5, 7.0),
        )
    return replace(
        cut, chest_ease=own.chest, neck_ease=(2.0 if women else 1.0) if cut.neck_ease is None else cut.neck_ease,
        waist_shaping=own.waist if cut.waist_shaping is None else cut.waist_shaping,
        lap=cut.lap or ("right_over_left" if women else "left_over_right"),
        chest_pocket=cut.chest_pocket or ("none" if women else "left"),
        collar_fall=fall if leaf else None, collar_point=(cut.collar_point or POINTS[cut.collar]) if leaf else None,
        placket=(cut.placket or ("bound" if women else "tower")) if long else None,
        tail=(cut.tail or 7.0) if cut.hem == "curved" else None,
        pleat_intake=None if cut.back_pleat == "none" else cut.pleat_intake or 2.0,
    )


LEAST_ARMHOLE = 4.0
"""The back's armhole turns out to the side over 4 cm at the least, however wide the back."""

LEAST_YOKE = 2.0
"""At the armhole the yoke is 2 cm deep, at the least. House method."""

BELOW_WAIST, UNDER_YOKE = 8.0, 6.0
"""The side seam goes on 8 cm under the waist, the back's armhole 6 cm under the yoke. House method."""


def refuse_impossible(cut: Shirt, block: Block) -> None:
    """Look whether hem and yoke have room on this body.

    Raises:
        SpecError: The hem would rise above the waist, or the yoke leave no armhole; both options are named.
    """
    room = block.waist.y - block.hem.y - float(cut.tail or 0.0)
    if room < BELOW_WAIST:
        least = block.nape.y - block.waist.y + float(cut.tail or 0.0) + BELOW_WAIST
        raise SpecError(
            f"With length {block.nape.y - block.hem.y:.1f} and tail {float(cut.tail or 0.0):g} the side would end {room:.1f} cm under the waist: make it longer, or the tail lower.",
            where="garment.length", received=block.nape.y - block.hem.y, allowed=(least, 120.0),
        )
    left = block.yoke.y - block.side.y
    if left < UNDER_YOKE:
        raise SpecError(
            f'yoke_depth {block.nape.y - block.yoke.y:.1f} leaves {left:.1f} cm of armhole under the yoke with fit "{cut.fit}": make it less.',
            where="garment.yoke_depth", received=block.nape.y - block.yoke.y, allowed=(5.0, block.nape.y - block.side.y - UNDER_YOKE),
        )
    deep = block.back_shoulder.y - block.yoke_end.y
    if deep < LEAST_YOKE:
        raise SpecError(
            f"With this yoke_depth and shoulder_drop {deep:.1f} cm of the yoke are left at the armhole: make it deeper.",
            where="garment.yoke_depth", received=block.nape.y - block.yoke.y, allowed=(block.nape.y - block.back_shoulder.y + LEAST_YOKE, 12.0),
        )
