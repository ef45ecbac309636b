"""Knit top, the options, what excludes what, and the eases of each fit. Lengths in cm."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal

from annotated_types import Interval

from drafting.craft.clashes import Clash, among, given, other_than
from drafting.pattern.allowance import LENGTH

Fit = Literal["fitted", "regular", "loose"]
Sleeve = Literal["long", "three_quarter", "short", "none"]
BandDepth = Annotated[float | None, Interval(ge=1, le=12), LENGTH]
Stretch = Annotated[float, Interval(ge=0, le=150)]


@dataclass(frozen=True, slots=True, kw_only=True)
class KnitTop:
    """A top of stretch cloth, without darts: front, back, sleeves, neckband. Lengths in cm.

    Attributes:
        kind: Always "knit_top".
        fit: Fitted, smaller than the body by what the cloth allows; regular; or loose.
        stretch: By how many percent the cloth stretches across, from 10 cm laid double.
        bust_ease: Finished bust over body, all round, below 0 for less; by default what fit and
            stretch say.
        neckline: Round or V.
        neck_drop: How much lower the front neck is cut; by default not for a round one, 8 cm for
            a V.
        neck_wider: How much wider the neck is cut at each shoulder, beside the neckband.
        neckband: Finished depth of the neckband.
        neckband_stretch: By how many percent the band's cloth stretches; rib has 60 or more.
        sleeve: Long, three quarters, short, or none.
        sleeve_end: The sleeve's hem turned up, or a cuff of rib; by default turned up.
        cuff: Finished depth of the cuff; by default 6 cm.
        length: Nape to hem; by default 4 cm below the hip line.
        hem: Turned up, or a band of rib.
        hem_band: Finished depth of the hem band; by default 6 cm.
        match_marks: Marks on which stripes or checks are laid, at the sides and the centres.
    """

    kind: Literal["knit_top"]
    fit: Fit = "regular"
    stretch: Stretch = 25.0
    bust_ease: Annotated[float | None, Interval(ge=-25, le=40), LENGTH] = None
    neckline: Literal["round", "v"] = "round"
    neck_drop: Annotated[float | None, Interval(ge=0, le=20), LENGTH] = None
    neck_wider: Annotated[float, Interval(ge=0, le=8), LENGTH] = 0.0
    neckband: Annotated[float, Interval(ge=1, le=6), LENGTH] = 2.0
    neckband_stretch: Stretch = 60.0
    sleeve: Sleeve = "short"
    sleeve_end: Literal["turned", "cuff"] | None = None
    cuff: BandDepth = None
    length: Annotated[float | None, Interval(ge=30, le=120), LENGTH] = None
    hem: Literal["turned", "band"] = "turned"
    hem_band: BandDepth = None
    match_marks: bool = False


CLASHES = (
    Clash("sleeve_end", given, "sleeve", among("none"), "There is no sleeve."),
    Clash("cuff", given, "sleeve_end", other_than("cuff"), "There is no cuff."),
    Clash("hem_band", given, "hem", among("turned"), "There is no hem band."),
    Clash("bust_ease", given, "fit", among("fitted"), "A fitted top is as small as its stretch allows; choose another fit for an ease of your own."),
)
"""What excludes what."""

V_DROP, CUFF, HEM_BAND, BELOW_HIP = 8.0, 6.0, 6.0, 4.0


@dataclass(frozen=True, slots=True)
class Eases:
    """What a fit adds to the body, cm.

    Attributes:
        bust: All round at the bust; of a fitted top nothing beside what its stretch takes away.
        shoulder: To the shoulder seam.
        across: To half the back's width at the armhole.
        scye: To the depth of the armhole.
        arm: Round the upper arm, as wished.
        least_arm: Round the upper arm at the least.
        wrist: Round the wrist, or the arm where the sleeve ends.
    """

    bust: float
    shoulder: float
    across: float
    scye: float
    arm: float
    least_arm: float
    wrist: float


EASES: dict[Fit, Eases] = {
    "fitted": Eases(0.0, -0.5, 0.0, 0.0, 2.0, 0.0, 2.0),
    "regular": Eases(6.0, 0.5, 0.5, 1.0, 5.0, 2.0, 4.0),
    "loose": Eases(14.0, 3.0, 1.5, 3.0, 12.0, 4.0, 6.0),
}
"""Source: bust -8 to -2, 4 to 8 and 10 to 20, upper arm 2 to 5, 10 to 15 in a loose one, a sleeve's
end 2 cm over the arm: common practice, no source."""

WOVEN_EASE, STABLE = 2.0, 18.0
"""Knits that stretch less than 18 percent are cut as woven cloth is, 2 cm wider. Common practice."""

REDUCTIONS = ((STABLE, 0.0), (25.0, 0.02), (50.0, 0.065), (75.0, 0.11), (150.0, 0.11))
"""Stretch in percent, and the share by which a fitted top is smaller than the body. Source: 2 percent at
a stretch of 25, 5 to 8 at 50, 10 to 12 from 75 on: common practice, no source."""


def drop(cut: KnitTop) -> float:
    """How much lower the front neck is cut, cm."""
    usual = V_DROP if cut.neckline == "v" else 0.0
    return usual if cut.neck_drop is None else cut.neck_drop


def cuff_depth(cut: KnitTop) -> float:
    """Depth of the cuff, cm; 0 where there is none."""
    return (cut.cuff or CUFF) if cut.sleeve_end == "cuff" else 0.0


def hem_band_depth(cut: KnitTop) -> float:
    """Depth of the hem band, cm; 0 where there is none."""
    return (cut.hem_band or HEM_BAND) if cut.hem == "band" else 0.0


def has_sleeve(cut: KnitTop) -> bool:
    """Whether sleeves are set in."""
    return cut.sleeve != "none"


