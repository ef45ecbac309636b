"""Options that several skirts have, as their pages see them. Lengths in cm."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal

from annotated_types import Interval

from drafting.craft.around import Opening
from drafting.craft.hemline import HemAt
from drafting.errors import SpecError
from drafting.pattern.allowance import LENGTH

SkirtLength = Annotated[float | None, Interval(ge=30, le=130), LENGTH]
Ease = Annotated[float, Interval(ge=0, le=30), LENGTH]
WaistEase = Annotated[float, Interval(ge=0, le=10), LENGTH]
Fullness = Annotated[float | None, Interval(ge=0, le=3), LENGTH]
BandDepth = Annotated[float, Interval(ge=2, le=8), LENGTH]
FacingDepth = Annotated[float, Interval(ge=4, le=8), LENGTH]
Underlap = Annotated[float, Interval(ge=2, le=6), LENGTH]
Band = Literal["straight", "contoured", "facing"]


@dataclass(frozen=True, slots=True, kw_only=True)
class OnAWaist:
    """What can be chosen about any skirt; its attributes are told by each skirt."""

    length: SkirtLength = None
    hem_at: HemAt = "knee"
    waist_ease: WaistEase = 1.0
    closure: Opening = "centre_back"
    band_depth: BandDepth = 4.0
    underlap: Underlap = 4.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Shaped(OnAWaist):
    """What can be chosen about a skirt that is shaped over the hip by darts."""

    method: Literal["block", "proportional"] = "block"
    back_narrower: Annotated[float | None, Interval(ge=0, le=2), LENGTH] = None
    waist_fullness: Fullness = None
    hip_ease: Ease = 3.0
    waistband: Band = "straight"
    facing_depth: FacingDepth = 6.0
    lining: bool = False


def fullness(cut: Shaped) -> float:
    """Skirt top over waistband, in cm: 1 with a straight band, none where the top is the waist.

    Source: the skirt's top 1 cm longer than the band, eased on: W. Aldrich, Metric Pattern Cutting
    for Women's Wear.

    Raises:
        SpecError: Fullness is asked for where nothing is there to ease it onto.
    """
    if cut.waistband == "straight":
        return 1.0 if cut.waist_fullness is None else cut.waist_fullness
    if cut.waist_fullness:
        raise SpecError(
            f'With waistband "{cut.waistband}" the skirt top itself is the waist, so waist_fullness must be 0: leave it out, or choose waistband "straight".',
            where="garment.waist_fullness",
            received=cut.waist_fullness,
            allowed=(0.0, 0.0),
        )
    return 0.0
