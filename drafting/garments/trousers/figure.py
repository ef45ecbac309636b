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
from drafting.garments.trousers.fits import FITS, Ease, crotch_band
from drafting.garments.trousers.manners import MANNERS
from drafting.garments.trousers.spec import Trousers
from drafting.geometry import root
from drafting.pattern import Finding
from drafting.trace import Length, larger, smaller
from drafting.trace.length import number

FORKS = (0.14, 0.22)
"""Both forks together, as shares of the hip."""

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


def figure(body: Body, cut: Trousers, sheet: DraftSheet) -> Figure:
    """Decide what the fit, and the figure that was told, make of the method's own draft."""
    manner = MANNERS[cut.method]
    drawn = Figure(raised=manner.raised, leaning=manner.leaning)
    if cut.fit is not None:
        drawn = sitting(drawn, FITS[cut.fit], body, cut, sheet)
    sheet.heading("Figure")
    if sheet.decide("a flat seat", cut.seat == "flat", "Is the seat flat?", "A flat seat needs a shorter, more upright back."):
        drawn = replace(drawn, forks=drawn.forks - 0.7, raised=drawn.raised - 1.0, leaning=drawn.leaning - 0.8)
    if sheet.decide("a full seat", cut.seat == "full", "Is the seat full?", "A full seat needs a longer, more leaning back."):
        drawn = replace(drawn, forks=drawn.forks + 1.0, raised=drawn.raised + 1.5, leaning=drawn.leaning + 1.0)
    if sheet.decide("a full abdomen", cut.abdomen == "full", "Is the abdomen full?", "The front goes up over it, plumb and without darts."):
        drawn = replace(drawn, forks=drawn.forks + 0.5, front_raised=1.5, plumb=True, no_front_darts=True)
    if sheet.decide("a hollow back", cut.hollow_back, "Is the back hollow above the seat?", "Cloth would stand in folds under the band."):
        drawn = replace(drawn, raised=drawn.raised - 1.0)
    return drawn


def sitting(own: Figure, fit: Ease, body: Body, cut: Trousers, sheet: DraftSheet) -> Figure:
    """The forks and the seat line that a fit asks for, where they are not the method's own."""
    forks = own_forks(body, cut)
    low, high = (body.hip_girth * share for share in fit.forks)
    goal = larger(low, smaller(high, Length(forks, "the method's forks")))
    goal = sheet.length("both forks", goal, "A close cut has short forks, a wide one long ones.")
    raised, leaning = own.raised, own.leaning
    if sheet.decide("a leaning seat line", fit.seat is not None, "Does the fit ask for a seat line of its own?", "A close seat leans more and is raised more, to bend and sit in."):
        angle, least = fit.seat or (0.0, 0.0)
        raised = max(raised, least)
        leaning = math.tan(math.radians(angle)) * (drawn_rise(body, cut) / 2 + raised)
    return replace(own, forks=float(goal) - forks, raised=raised, leaning=leaning)


def own_forks(body: Body, cut: Trousers) -> float:
    """Both forks together in cm, as the method draws them of its own accord.

    The block's front fork is hip/16 + 0.5; the back's that and half of it, and a quarter of the corner.
    """
    return float(body.hip_girth) * 17 / 96 + 1.625


def drawn_rise(body: Body, cut: Trousers) -> float:
    """From the waist seam to the crotch line, in cm."""
    manner = MANNERS[cut.method]
    band = cut.band_depth if manner.band_in_rise and cut.waistband == "straight" else 0.0
    return float(body.body_rise) + manner.rise_ease - band


def fitted(
    body: Body, cut: Trousers, start: Figure, drawn_length: Callable[[Figure], float], sheet: DraftSheet
) -> tuple[Figure, tuple[Finding, ...]]:
    """Bring the drawn crotch seam into the band over the body's measured crotch length.

    First the forks move, then the raise of the centre back, then the seat angle, each as far as it
    may; what is left is told.

    Args:
        body: The measures; nothing is changed where no crotch length was measured.
        cut: The options.
        start: The figure to start from.
        drawn_length: Length in cm of the trued crotch seam that a figure gives.
        sheet: Records the decisions.
    """
    if not body.taken("total_crotch_length"):
        return start, ()
    measured = body.value("total_crotch_length")
    low, high = (measured + over for over in crotch_band(cut))
    drawn = drawn_length(start)
    if not sheet.decide("a fitted crotch seam", not low <= drawn <= high, "Does the crotch seam leave the band over the measured length?", f"{_signed(low - measured)} to {_signed(high - measured)} cm over the body sits well."):
        return start, ()
    goal = low if drawn < low else high
    for turn in range(3):
        name, change, bounds = _moves(body, cut, start)[turn]
        start, drawn = _moved(name, start, change, bounds, goal, drawn_length, sheet)
        if abs(drawn - goal) < 0.01:
            return start, ()
    return start, (_residue(drawn, measured, low, high),)


def _signed(value: float) -> str:
    return f"{'+' if value > 0 else ''}{number(value)}"


Change = Callable[[Figure, float], Figure]


def _moves(body: Body, cut: Trousers, start: Figure) -> tuple[tuple[str, Change, tuple[float, float]], ...]:
    """What may be moved, how, and between which values: forks, raise, seat angle."""
    hip, own = float(body.hip_girth), own_forks(body, cut)
    height = drawn_rise(body, cut) / 2 + start.raised
    leans = (height * math.tan(math.radians(SEAT_ANGLE[0])), height * math.tan(math.radians(SEAT_ANGLE[1])))
    return (
        ("forks", lambda f, v: replace(f, forks=v), (FORKS[0] * hip - own, FORKS[1] * hip - own)),
        ("raise of the centre back", lambda f, v: replace(f, raised=v), (0.0, MANNERS[cut.method].most_raised)),
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
