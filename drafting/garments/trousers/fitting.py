"""Trousers, fitting the draft: fork, raise and seat line brought to the fit and to the measured body.

They start from the method's own. A chosen fit settles them first; then a measured thigh gets its room;
then the crotch seam is brought to the body's measured crotch length. Each moves within its bounds, by
drawing the panels on scrap paper and laying the tape on them.

Source: that forks are moved a third in front and two thirds behind: an Eastern European school rule,
common practice, no source; the bounds: common practice, no source, derived from eight published methods.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.craft.sheet import DraftSheet
from drafting.garments.trousers.figure import Figure
from drafting.garments.trousers.fits import FITS, Ease, crotch_band, thigh_ease
from drafting.garments.trousers.manners import MANNERS, band_in_rise
from drafting.garments.trousers.spec import Trousers
from drafting.geometry import root
from drafting.trace import Length, larger, smaller
from drafting.trace.length import number

FORKS, CULOTTE_FORKS = (0.14, 0.22), (0.24, 0.28)
"""Both forks together, as shares of the hip; culottes need long ones, to hang as a skirt."""


def fork_shares(cut: Trousers) -> tuple[float, float]:
    """Least and most of both forks together, as shares of the hip."""
    return CULOTTE_FORKS if cut.leg == "culottes" else FORKS

SPARE = 0.02
"""The forks stop so far (cm) short of their bound, for moving them moves the corner a little too."""

SEAT_ANGLE = (4.0, 16.0)
"""Least and greatest angle of the seat line against the plumb, degrees."""

THIGH_LINE = 2.5
"""The thigh is measured 2.5 cm (1 in) under the crotch line. Source: common practice, no source."""


@dataclass(frozen=True, slots=True)
class OnScrap:
    """What the tape says of a pair of panels drawn on scrap paper, in cm.

    Attributes:
        crotch: The whole crotch seam, from waist to waist over a band that is part of the rise.
        longer: How much longer the back's part of it is than the front's.
        forks: Both forks together.
        front_fork: The front's part of them.
        thigh: Round one leg on the thigh line.
    """

    crotch: float
    longer: float
    forks: float
    front_fork: float
    thigh: float


Scrap = Callable[[Figure], OnScrap]
"""Draws the panels for a figure on scrap paper and lays the tape on them."""


def seated(body: Body, cut: Trousers, drawn: Scrap, sheet: DraftSheet) -> Figure:
    """The forks and the seat line of the method, or of the fit where it asks for others."""
    manner = MANNERS[cut.method]
    own = Figure(raised=manner.raised, leaning=manner.leaning)
    if cut.leg == "culottes":
        return _for_culottes(own, body, drawn, sheet)
    person = own if cut.fit is None else _by_fit(own, FITS[cut.fit], body, cut, drawn, sheet)
    person = _upright(person, body, cut, sheet)
    return _held(person, drawn, sheet) if manner.raise_held else person


LOWER = 3.0
"""The crotch of culottes lies 2 to 4 cm lower. Source: common practice, no source."""


def _for_culottes(own: Figure, body: Body, drawn: Scrap, sheet: DraftSheet) -> Figure:
    """Long forks, a low crotch, and both centres on the grain.

    Source: front fork an eighth of the hip less 2 cm, back fork an eighth and 2 cm: common practice, no source.
    """
    there = drawn(own)
    front = sheet.length("culottes' front fork", body.hip_girth / 8 - 2, "Long, so that they hang as a skirt does.")
    back = sheet.length("culottes' back fork", body.hip_girth / 8 + 2, "Longer than the front's.")
    lower = sheet.length("culottes' crotch lower", Length(LOWER), "Clear of the body when standing.")
    sheet.decide("centres on the grain", True, "Do they hang as a skirt does?", "Centre front and centre back stand plumb.")  # noqa: FBT003 - culottes always do
    return replace(
        own, rise=float(lower), front_fork=float(front) - there.front_fork, back_fork=float(back) - (there.forks - there.front_fork),
        leaning=0.0, raised=0.0, plumb=True,
    )


UPRIGHT = 4.5
"""Least angle in degrees of a seat line that stands nearly upright. House method."""


def _upright(person: Figure, body: Body, cut: Trousers, sheet: DraftSheet) -> Figure:
    """A nearly upright seat line over a waist that is as large as the hips: it has nothing to lean in to."""
    if not sheet.decide("an upright seat line", body.waist_girth >= body.hip_girth, "Is the waist as large as the hips?", "What it leaned in the sides would have to stand out over the hips."):
        return person
    upright = math.tan(math.radians(UPRIGHT)) * (drawn_rise(body, cut) / 2 + person.raised)
    return replace(person, leaning=min(person.leaning, upright))


MOST_LONGER = 8.8
"""Held back so far that the back's crotch seam is within the 4 to 9 cm by which it should be longer than
the front's. Source: common practice, no source; the margin is house method."""


def _held(person: Figure, drawn: Scrap, sheet: DraftSheet) -> Figure:
    """The centre back raised less, where the back's crotch seam would be too long for the front's."""
    longer = Length(drawn(person).longer, "back crotch over front crotch")
    if not sheet.compare("a raise held back", longer, ">", MOST_LONGER, "Would the back's crotch seam be too long for the front's?", "Cloth would stand in folds under the seat; the customary raise gives way."):
        return person
    bounds = (0.0, person.raised)
    return _moved("raise of the centre back", person, _raised, bounds, MOST_LONGER, lambda f: drawn(f).longer, "As far as the proportion of the seams allows.", sheet)[0]


def _by_fit(own: Figure, fit: Ease, body: Body, cut: Trousers, drawn: Scrap, sheet: DraftSheet) -> Figure:
    """The method's own forks and seat line, brought to the fit."""
    forks = Length(drawn(own).forks, "the method's forks")
    low, high = (body.hip_girth * share for share in fit.forks)
    goal = sheet.length("both forks", larger(low, smaller(high, forks)), "A close cut has short forks, a wide one long ones; the fit wins over the method.")
    own = replace(own, forks=float(goal) - float(forks))
    if not sheet.decide("a leaning seat line", fit.seat is not None, "Does the fit ask for a seat line of its own?", "A close seat leans more and is raised more, to bend and sit in."):
        return own
    angle, least = fit.seat or SEAT_ANGLE
    raised = max(own.raised, least)
    return replace(own, raised=raised, leaning=math.tan(math.radians(angle)) * (drawn_rise(body, cut) / 2 + raised))


def drawn_rise(body: Body, cut: Trousers) -> float:
    """From the waist seam to the crotch line, in cm."""
    return float(body.body_rise) + MANNERS[cut.method].rise_ease - band_in_rise(cut)


def roomy(body: Body, cut: Trousers, start: Figure, drawn: Scrap, sheet: DraftSheet) -> Figure:
    """Carry the forks out until a measured thigh has the least room that the fit gives, or as far as they may go.

    Nothing is changed where no thigh was measured, or neither a fit nor a thigh ease is chosen.
    """
    if not body.taken("thigh_girth") or (cut.fit is None and cut.thigh_ease is None):
        return start
    least, there = body.length("thigh_girth") + Length(thigh_ease(cut)[0], "thigh ease"), drawn(start)
    if not sheet.compare("a full thigh", Length(there.thigh, "drawn thigh"), "<", least, "Is the drawn thigh less than the thigh and its room?", "The inseams are pushed out at the fork."):
        return start
    bounds = (start.forks, max(start.forks, start.forks + fork_shares(cut)[1] * float(body.hip_girth) - there.forks))
    now, _ = _moved("forks for the thigh", start, _forks, bounds, float(least), lambda f: drawn(f).thigh, "The thigh gets its room.", sheet)
    return replace(now, least_forks=now.forks)


def fitted(body: Body, cut: Trousers, start: Figure, drawn: Scrap, sheet: DraftSheet) -> Figure:
    """Bring the drawn crotch seam into the band over the body's measured crotch length.

    First the forks move, then the raise of the centre back, then the seat angle, each as far as it
    may; what is left the checks tell.

    Args:
        body: The measures; nothing is changed where no crotch length was measured.
        cut: The options.
        start: The figure to start from.
        drawn: Draws on scrap paper.
        sheet: Records the decisions.
    """
    if not body.taken("total_crotch_length"):
        return start
    measured, there = body.value("total_crotch_length"), drawn(start)
    low, high = (measured + over for over in crotch_band(cut))
    if not sheet.decide("a fitted crotch seam", not low <= there.crotch <= high, "Does the crotch seam leave the band over the measured length?", f"{_signed(low - measured)} to {_signed(high - measured)} cm over the body sits well."):
        return start
    goal = low if there.crotch < low else high
    own = there.forks - start.forks
    for turn in range(3):
        name, change, bounds = _moves(body, cut, own, start)[turn]
        start, length = _moved(name, start, change, bounds, goal, lambda f: drawn(f).crotch, "The crotch seam follows the body's crotch length.", sheet)
        if abs(length - goal) < 0.01:
            break
    return start


def _signed(value: float) -> str:
    return f"{'+' if value > 0 else ''}{number(value)}"


Change = Callable[[Figure, float], Figure]


def _forks(person: Figure, value: float) -> Figure:
    return replace(person, forks=value)


def _raised(person: Figure, value: float) -> Figure:
    return replace(person, raised=value)


def _moves(body: Body, cut: Trousers, own: float, start: Figure) -> tuple[tuple[str, Change, tuple[float, float]], ...]:
    """What may be moved, how, and between which values: forks, raise, seat angle."""
    hip, height = float(body.hip_girth), drawn_rise(body, cut) / 2 + start.raised
    leans = (height * math.tan(math.radians(SEAT_ANGLE[0])), height * math.tan(math.radians(SEAT_ANGLE[1])))
    shares = fork_shares(cut)
    most = shares[1] * hip - own - SPARE
    return (
        ("forks", _forks, (min(most, max(shares[0] * hip - own, start.least_forks)), most)),
        ("raise of the centre back", _raised, (0.0, MANNERS[cut.method].most_raised)),
        ("lean of the seat line", lambda f, v: replace(f, leaning=v), leans),
    )


def _moved(
    name: str, start: Figure, change: Change, bounds: tuple[float, float], goal: float,
    measure: Callable[[Figure], float], why: str, sheet: DraftSheet,
) -> tuple[Figure, float]:
    """Move one thing until what is measured reaches its goal, or as far as it may go."""
    def off(value: float) -> float:
        return measure(change(start, value)) - goal

    found = root(off, *bounds, 0.005)
    if found is None:
        found = min(bounds, key=lambda v: abs(off(v)))
    now = change(start, found)
    reached = measure(now)
    sheet.found(name, found, goal, bounds, reached, why)
    return now, reached
