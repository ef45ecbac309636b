"""Options that several skirts have, as their pages see them, and what excludes what. Lengths in cm."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal

from annotated_types import Interval

from drafting.craft.around import Opening
from drafting.craft.clashes import Clash, among, chosen, given, other_than
from drafting.craft.hemline import HemAt
from drafting.craft.seam_pocket import SEAM_MOUTH
from drafting.craft.waists import Band
from drafting.pattern.allowance import LENGTH

WaistEase = Annotated[float, Interval(ge=0, le=10), LENGTH]
Waistband = Literal["straight", "contoured", "facing"]
ClothWidth = Annotated[float, Interval(ge=70, le=320), LENGTH]
HipEase = Annotated[float, Interval(ge=0, le=30), LENGTH]
Fullness = Annotated[float | None, Interval(ge=0, le=3), LENGTH]

BAND_DEPTH, UNDERLAP, FACING_DEPTH, WAIST_EASE = 4.0, 4.0, 6.0, 1.0
"""Usual measures in cm. Source: common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Hanging:
    """What can be chosen about any skirt.

    Attributes:
        length: Waist to hem; by default to where `hem_at` says.
        hem_at: Where the hem hangs on the leg; by default at the knee.
        band_depth: Depth of the finished waistband; by default 4 cm.
        underlap: How far a straight waistband laps under at the zip; by default 4 cm.
    """

    length: Annotated[float | None, Interval(ge=30, le=130), LENGTH] = None
    hem_at: HemAt | None = None
    band_depth: Annotated[float | None, Interval(ge=2, le=8), LENGTH] = None
    underlap: Annotated[float | None, Interval(ge=2, le=6), LENGTH] = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Pocketed(Hanging):
    """What can be chosen about a skirt that has side seams.

    Attributes:
        pocket: Pockets in the side seams, or none.
        pocket_mouth: Length of their openings; by default 16 cm.
    """

    pocket: Literal["none", "in_seam"] = "none"
    pocket_mouth: Annotated[float | None, Interval(ge=13, le=22), LENGTH] = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Lined(Pocketed):
    """What can be chosen about a smooth skirt that a zip closes.

    Attributes:
        waist_ease: Finished waist over body, all round.
        closure: Where the zip is: centre back, or left side.
        facing_depth: Depth of a facing; by default 6 cm.
        lining: Whether a lining is cut.
    """

    waist_ease: WaistEase = WAIST_EASE
    closure: Opening = "centre_back"
    facing_depth: Annotated[float | None, Interval(ge=4, le=8), LENGTH] = None
    lining: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Shaped(Lined):
    """What can be chosen about a skirt that is shaped over the hip by darts.

    Attributes:
        waistband: Straight, cut in one with its inside; contoured, shaped as the body; or none, but
            a facing inside.
        waist_fullness: Skirt top over waistband, all round, eased on when the band is sewn; by
            default 1 cm with a straight band, none else.
        back_narrower: With method "proportional": by how much the back quarter is narrower, and
            the front quarter wider, than a quarter of the skirt; by default 1 cm.
    """

    method: Literal["block", "proportional"] = "block"
    back_narrower: Annotated[float | None, Interval(ge=0, le=2), LENGTH] = None
    waistband: Waistband = "straight"
    waist_fullness: Fullness = None
    hip_ease: HipEase = 3.0


HANGING = (Clash("hem_at", given, "length", given, "Both say where the hem hangs."),)
POCKETED = (
    *HANGING,
    Clash("pocket", among("in_seam"), "closure", among("side"), "The zip lies where the pocket would open."),
    Clash("pocket_mouth", given, "pocket", among("none"), "There is no pocket."),
)
LINED = (
    *POCKETED,
    Clash("underlap", given, "waistband", other_than("straight"), "Only a straight waistband laps under at the zip."),
    Clash("band_depth", given, "waistband", among("facing"), "There is no waistband, but a facing inside."),
    Clash("facing_depth", given, "waistband", other_than("facing"), "There is a waistband and no facing."),
    Clash("waist_fullness", chosen, "waistband", other_than("straight"), "Where the skirt's top itself is the waist there is nothing to ease it onto."),
)
SHAPED = (*LINED, Clash("back_narrower", given, "method", among("block"), "The block says itself how wide the back is."))
"""What excludes what, by the options that a skirt has."""


def band(cut: Hanging) -> Band:
    """The waistband's depth and underlap, cm."""
    return Band(cut.band_depth or BAND_DEPTH, cut.underlap or UNDERLAP)


def facing_depth(cut: Lined) -> float:
    """Depth of a facing, cm."""
    return cut.facing_depth or FACING_DEPTH


def pocket_mouth(cut: Pocketed) -> float:
    """Length of a pocket's opening, cm; 0 where there is none."""
    return (cut.pocket_mouth or SEAM_MOUTH) if cut.pocket == "in_seam" else 0.0


def fullness(waistband: str, asked: float | None) -> float:
    """Skirt top over waistband, in cm: 1 with a straight band, none where the top is the waist.

    Source: the skirt's top 1 cm longer than the band, eased on: W. Aldrich, Metric Pattern Cutting
    for Women's Wear.
    """
    if asked is not None:
        return asked
    return 1.0 if waistband == "straight" else 0.0
