"""Trousers, the manners of drafting: what each method does of its own accord, in numbers.

Source: each row names its own.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.craft.rules import KNEE_OVER_HEM, SizeBand
from drafting.craft.slant_pocket import USUAL, UsualMouth
from drafting.garments.trousers.spec import Method, Trousers


@dataclass(frozen=True, slots=True, kw_only=True)
class Manner:
    """A method's own numbers, in cm.

    Attributes:
        title: What it is called.
        source: Where its rules come from.
        waist_ease: Band over body, all round.
        waist_fullness: Trouser top over a straight band, all round.
        hip_ease: Trousers over body, all round.
        underlap: How far the band laps under.
        raised: How far the centre back is raised.
        most_raised: How far it may be raised to give the crotch seam its length.
        raise_held: Whether it must be held back, so that the back's crotch seam keeps in proportion to the front's.
        leaning: How far the seat line leans in at the waist.
        wider: How much wider than the front the back is at each side of knee and hem.
        knee_step: How much wider than the hem a half panel is at the knee.
        seam: Width of the seams that its draft includes.
        rise_ease: How much deeper than the body rise the crotch seam lies.
        pocket: Where the slant pocket's mouth lies.
        band_in_rise: Whether a straight band is part of the rise; else it stands above the waist.
    """

    title: str
    source: str
    waist_ease: float
    waist_fullness: float
    hip_ease: float
    underlap: float
    raised: float
    most_raised: float
    raise_held: bool
    leaning: float
    wider: float
    knee_step: SizeBand
    seam: float
    rise_ease: float
    pocket: UsualMouth
    band_in_rise: bool


INCH = 2.54

MENS_KNEE = SizeBand("knee over hem, men", ((999, 1.5),), "from memory: W. Aldrich, Metric Pattern Cutting for Menswear")

MANNERS: dict[Method, Manner] = {
    # W. Aldrich, Metric Pattern Cutting for Women's Wear
    "block": Manner(
        title="two-dart block", source="W. Aldrich, Metric Pattern Cutting for Women's Wear", waist_ease=1.0, waist_fullness=1.0, hip_ease=4.0, underlap=4.0,
        raised=2.0, most_raised=4.0, raise_held=False, leaning=2.0, wider=1.0, knee_step=KNEE_OVER_HEM, seam=0.0, rise_ease=0.0, pocket=USUAL, band_in_rise=False,
    ),
    # W. Aldrich, Metric Pattern Cutting for Menswear; hem to knee from memory: the same
    "mens_block": Manner(
        title="men's block", source="W. Aldrich, Metric Pattern Cutting for Menswear", waist_ease=1.0, waist_fullness=0.0, hip_ease=2.0, underlap=4.0,
        raised=1.0, most_raised=4.0, raise_held=False, leaning=2.0, wider=2.0, knee_step=MENS_KNEE, seam=1.0, rise_ease=1.0, pocket=USUAL, band_in_rise=True,
    ),
    # common practice, no source; the seat line's inch is house method
    "quarter": Manner(
        title="quarter draft", source="common practice, no source", waist_ease=0.0, waist_fullness=0.0, hip_ease=4 * INCH, underlap=2 * INCH,
        raised=2 * INCH, most_raised=2.5 * INCH, raise_held=True, leaning=INCH, wider=INCH / 2, knee_step=KNEE_OVER_HEM, seam=0.0, rise_ease=0.0,
        pocket=UsualMouth(2 * INCH, None, 6 * INCH), band_in_rise=False,
    ),
}
"""The numbers by the method's name."""


def band_in_rise(cut: Trousers) -> float:
    """Depth in cm of a straight band that is part of the method's rise."""
    return cut.band_depth if MANNERS[cut.method].band_in_rise and cut.waistband == "straight" else 0.0
