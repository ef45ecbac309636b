"""Trousers, the figure: how the seat, the abdomen and the back change the draft.

Source: the amounts for flat and full seats, abdomen and hollow back are common practice, no source.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from drafting.craft.sheet import DraftSheet
from drafting.garments.trousers.spec import Trousers
from drafting.trace import Length


@dataclass(frozen=True, slots=True)
class Figure:
    """What the figure makes of the block; the defaults are the block's own.

    Attributes:
        forks: Change of both forks together, cm; a third of it in front.
        raised: How far the centre back is raised over the waist line, cm.
        leaning: How far the seat line leans in at the waist, cm.
        front_raised: How far the centre front is raised over the waist line, cm.
        plumb: Whether the centre front stands plumb.
        no_front_darts: Whether the front darts go.
        rise: Change of the body rise, cm.
        front_fork: Change of the front fork alone, cm.
        back_fork: Change of the back fork alone, cm.
        front_scoop: How much nearer to the corner the front curve is cut, cm.
        back_scoop: How much nearer to the corner the back curve is cut, cm.
        side_raised: How far the sides are raised over the waist line, cm.
        hips_front: Change of each front's edge at the hip, cm.
        hips_back: Change of each back's edge at the hip, cm.
        swing: How far the hem goes outward, the knee half as far, cm.
        least_forks: What the forks must be changed by at least, cm, to give a measured thigh its room.
    """

    forks: float = 0.0
    raised: float = 2.0
    leaning: float = 2.0
    front_raised: float = 0.0
    plumb: bool = False
    no_front_darts: bool = False
    rise: float = 0.0
    front_fork: float = 0.0
    back_fork: float = 0.0
    front_scoop: float = 0.0
    back_scoop: float = 0.0
    side_raised: float = 0.0
    hips_front: float = 0.0
    hips_back: float = 0.0
    swing: float = 0.0
    least_forks: float = -math.inf

    def angle(self, rise: float) -> float:
        """Angle of the seat line in degrees for a body rise in cm; it leans from half way up."""
        return math.degrees(math.atan2(self.leaning, rise / 2 + self.raised))


BLOCK = Figure()
"""The block's own figure."""


def changed(usual: Length, by: float) -> Length:
    """A length, with a change where there is one."""
    return usual + Length(by) if by else usual


def figure(drawn: Figure, cut: Trousers, sheet: DraftSheet) -> Figure:
    """Decide what the figure that was told makes of the method's own draft, or of the fit's."""
    sheet.heading("Figure", "common practice, no source")
    if sheet.decide("a flat seat", cut.seat == "flat", "Is the seat flat?", "A flat seat needs a shorter, more upright back."):
        drawn = replace(drawn, forks=drawn.forks - 0.7, raised=drawn.raised - 1.0, leaning=drawn.leaning - 0.8)
    if sheet.decide("a full seat", cut.seat == "full", "Is the seat full?", "A full seat needs a longer, more leaning back."):
        drawn = replace(drawn, forks=drawn.forks + 1.0, raised=drawn.raised + 1.5, leaning=drawn.leaning + 1.0)
    if sheet.decide("a full abdomen", cut.abdomen == "full", "Is the abdomen full?", "The front goes up over it, plumb and without darts."):
        drawn = replace(drawn, forks=drawn.forks + 0.5, front_raised=1.5, plumb=True, no_front_darts=True)
    if sheet.decide("a hollow back", cut.hollow_back, "Is the back hollow above the seat?", "Cloth would stand in folds under the band."):
        drawn = replace(drawn, raised=drawn.raised - 1.0)
    return drawn
