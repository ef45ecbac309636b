"""Trousers, the figure: how the seat, the abdomen and the back change the block.

Forks, seat angle and raise start from the block's own; a figure that was told, or a crotch length that
was measured, moves them within their bounds.

Source: the amounts for flat and full seats, abdomen and hollow back are common practice, no source;
that forks are moved a third in front and two thirds behind: an Eastern European school rule, common
practice, no source; the band over the measured crotch length: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.craft.sheet import DraftSheet
from drafting.garments.trousers.spec import Trousers
from drafting.geometry import root
from drafting.pattern import Finding
from drafting.trace import Length

CROTCH_BAND = (-1.0, 3.0)
"""The crotch seam may be 1 cm shorter to 3 cm longer than the body's crotch length."""

FORKS = (0.14, 0.22)
"""Both forks together, as shares of the hip."""

RAISE = (0.0, 4.0)
SEAT_ANGLE = (4.0, 16.0)


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

    def angle(self, rise: float) -> float:
        """Angle of the seat line in degrees for a body rise in cm; it leans from half way up."""
        return math.degrees(math.atan2(self.leaning, rise / 2 + self.raised))


BLOCK = Figure()
"""The block's own figure."""


def changed(usual: Length, by: float) -> Length:
    """A length, with a change where there is one."""
    return usual + Length(by) if by else usual


def figure(cut: Trousers, sheet: DraftSheet) -> Figure:
    """Decide what the figure that was told makes of the block."""
    sheet.heading("Figure")
    drawn = Figure()
    if sheet.decide("a flat seat", cut.seat == "flat", "Is the seat flat?", "A flat seat needs a shorter, more upright back."):
        drawn = replace(drawn, forks=drawn.forks - 0.7, raised=1.0, leaning=1.2)
    if sheet.decide("a full seat", cut.seat == "full", "Is the seat full?", "A full seat needs a longer, more leaning back."):
        drawn = replace(drawn, forks=drawn.forks + 1.0, raised=3.5, leaning=3.0)
    if sheet.decide("a full abdomen", cut.abdomen == "full", "Is the abdomen full?", "The front goes up over it, plumb and without darts."):
        drawn = replace(drawn, forks=drawn.forks + 0.5, front_raised=1.5, plumb=True, no_front_darts=True)
    if sheet.decide("a hollow back", cut.hollow_back, "Is the back hollow above the seat?", "Cloth would stand in folds under the band."):
        drawn = replace(drawn, raised=drawn.raised - 1.0)
    return drawn


def fitted(
    body: Body, start: Figure, drawn_length: Callable[[Figure], float], sheet: DraftSheet
) -> tuple[Figure, tuple[Finding, ...]]:
    """Bring the drawn crotch seam into the band over the body's measured crotch length.

    First the forks move, then the raise of the centre back, then the seat angle, each as far as it
    may; what is left is told.

    Args:
        body: The measures; nothing is changed where no crotch length was measured.
        start: The figure to start from.
        drawn_length: Length in cm of the trued crotch seam that a figure gives.
        sheet: Records the decisions.
    """
    if not body.taken("total_crotch_length"):
        return start, ()
    measured = body.value("total_crotch_length")
    low, high = measured + CROTCH_BAND[0], measured + CROTCH_BAND[1]
    drawn = drawn_length(start)
    if not sheet.decide("a fitted crotch seam", not low <= drawn <= high, "Does the block's crotch seam leave the band over the measured length?", "From 1 cm shorter to 3 cm longer sits well."):
        return start, ()
    goal = low if drawn < low else high
    for turn in range(3):
        name, change, bounds = _moves(body, start)[turn]
        start, drawn = _moved(name, start, change, bounds, goal, drawn_length, sheet)
        if abs(drawn - goal) < 0.01:
            return start, ()
    return start, (_residue(drawn, measured, low, high),)


Change = Callable[[Figure, float], Figure]


def _moves(body: Body, start: Figure) -> tuple[tuple[str, Change, tuple[float, float]], ...]:
    """What may be moved, how, and between which values: forks, raise, seat angle."""
    hip, rise = float(body.hip_girth), float(body.body_rise)
    block = hip * 17 / 96 + 1.625  # front hip/16 + 0.5; back that and half of it, and a quarter of the corner
    height = rise / 2 + start.raised
    leans = (height * math.tan(math.radians(SEAT_ANGLE[0])), height * math.tan(math.radians(SEAT_ANGLE[1])))
    return (
        ("forks", lambda f, v: replace(f, forks=v), (FORKS[0] * hip - block, FORKS[1] * hip - block)),
        ("raise of the centre back", lambda f, v: replace(f, raised=v), RAISE),
        ("lean of the seat line", lambda f, v: replace(f, leaning=v), leans),
    )


def _moved(
    name: str, start: Figure, change: Change, bounds: tuple[float, float], goal: float,
    drawn_length: Callable[[Figure], float], sheet: DraftSheet,
) -> tuple[Figure, float]:
    """Move one thing until the seam has its length, or as far as it may go."""
    def off(value: float) -> float:
        return drawn_length(change(start, value)) - goal

    found = root(off, *bounds, 0.005)
    if found is None:
        found = min(bounds, key=lambda v: abs(off(v)))
    now = change(start, found)
    drawn = drawn_length(now)
    sheet.found(name, found, goal, bounds, drawn, "The crotch seam follows the body's crotch length.")
    return now, drawn


def _residue(drawn: float, measured: float, low: float, high: float) -> Finding:
    return Finding(
        code="crotch_length_missed",
        severity="warning",
        where="total_crotch_length",
        message="Forks, raise and seat angle at their limits do not bring the crotch seam to the measured length; measure it again, and sew a toile.",
        measured=drawn - measured,
        allowed=(low - measured, high - measured),
    )
