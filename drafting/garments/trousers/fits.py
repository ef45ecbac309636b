"""Trousers, the fit: how much room there is over the body, and what a close or wide cut asks of the draft.

An ease that is ordered by itself wins over the fit, the fit over the method's own numbers.

Source: the eases by style, the crotch seam over the body's and the forks of classic and close trousers
are common practice, no source; they agree with *Measurements for Fitting Pants*, New Mexico State
University Extension, Guide C-209, where that gives figures. What stretch takes off: common practice, no
source.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from drafting.body import Body
from drafting.craft.casing import OVER_HIP
from drafting.craft.rules import FOOT_GIRTH
from drafting.craft.sheet import DraftSheet
from drafting.errors import SpecError
from drafting.garments.trousers.manners import MANNERS
from drafting.garments.trousers.spec import Fit, Trousers
from drafting.trace import Length, larger


@dataclass(frozen=True, slots=True, kw_only=True)
class Ease:
    """What a fit gives, in cm, all round the body or one leg.

    Attributes:
        waist: Band over body.
        hip: Trousers over body: as drafted, and the most that may be drawn.
        thigh: Least and most over the thigh.
        knee: Leg over knee.
        hem: Girth of the hem at hip 96, and what it gains for each cm of hip.
        forks: Both forks together, least and most, as shares of the hip.
        seat: Angle of the seat line in degrees and least raise of the centre back; None: the method's own.
        crotch: The crotch seam over the body's crotch length, least and most.
        close: Whether it clings, so that stretch of the cloth takes off ease.
    """

    waist: float
    hip: tuple[float, float]
    thigh: tuple[float, float]
    knee: float
    hem: tuple[float, float]
    forks: tuple[float, float]
    seat: tuple[float, float] | None
    crotch: tuple[float, float]
    close: bool


FITS: dict[Fit, Ease] = {
    "slim": Ease(waist=0.5, hip=(2.5, 4.0), thigh=(2.0, 4.0), knee=4.0, hem=(34.0, 0.125), forks=(0.16, 0.16), seat=(11.0, 3.0), crotch=(-1.0, 1.0), close=True),
    "classic": Ease(waist=1.0, hip=(4.0, 6.0), thigh=(6.0, 10.0), knee=11.0, hem=(42.0, 0.25), forks=(0.19, 0.20), seat=None, crotch=(-1.0, 3.0), close=True),
    "relaxed": Ease(waist=1.5, hip=(7.5, 10.0), thigh=(10.0, 14.0), knee=14.0, hem=(46.0, 0.25), forks=(0.20, 0.21), seat=None, crotch=(3.0, 5.0), close=False),
    "wide": Ease(waist=1.5, hip=(12.0, 14.0), thigh=(16.0, math.inf), knee=20.0, hem=(60.0, 0.25), forks=(0.217, 0.219), seat=None, crotch=(3.0, 5.0), close=False),
}
"""The table of eases, each value inside the trade's band for the style; forks of relaxed and wide
trousers lie between those of classic ones and the 22 % that only culottes pass. House method."""

USUAL_HEM = (44.0, 0.25)
"""Girth of the hem at hip 96, and what it gains for each cm of hip, where no fit is chosen. Source:
derived from the worked sizes of the block."""

CULOTTE_CROTCH = (4.0, 8.0)
"""Culottes hang 6 cm clear of the body's crotch length. Source: common practice, no source; the margin
is house method."""

STRETCHY_CROTCH = (-3.0, 0.0)
"""A close cut in a cloth that stretches: the crotch seam may be up to 3 cm shorter than the body's."""

MOST_OFF = 0.05
"""Ease in a stretching cloth goes down to 5 % under the body."""

MOST_OVER = 2.5
"""The block draws its hip up to 2.5 cm wider than hip and ease; where the hip line lies near the
crotch line it would be more, and is taken in at the sides. Source: house method, from the published
examples."""


def waist_ease(cut: Trousers) -> Length:
    """Band over body in cm, all round."""
    usual = MANNERS[cut.method].waist_ease if cut.fit is None else FITS[cut.fit].waist
    return Length(usual if cut.waist_ease is None else cut.waist_ease, "waist ease")


def top_girth(body: Body, cut: Trousers) -> Length:
    """Finished girth of the waist in cm: body and ease, or as wide as the hips where elastic draws it in."""
    if cut.waistband == "elastic":
        return body.hip_girth + OVER_HIP
    return body_girth(body, cut) + waist_ease(cut)


UPWARD = 0.6
"""How much wider (cm) the body is for each centimetre above the natural waist. House method: from a
waist to the ribs some 8 cm are gained on 15."""


def body_girth(body: Body, cut: Trousers) -> Length:
    """Girth of the body in cm where the trousers' top lies: rounder toward the hip than straight.

    Source: a quarter of a sine from the waist to the hip, three quarters of the rise down, so that it
    is the same for uneven sides: house method.
    """
    if cut.waist_position > 0:
        return body.waist_girth + Length(cut.waist_position, "waist raised") * UPWARD
    if cut.waist_position == 0:
        return body.waist_girth
    share = min(1.0, -cut.waist_position / (0.75 * float(body.body_rise)))
    return body.waist_girth + (body.hip_girth - body.waist_girth) * math.sin(share * math.pi / 2)


def fullness(cut: Trousers) -> float:
    """Trouser top over band, in cm: the method's own with a straight band, else none.

    Raises:
        SpecError: Fullness is asked for where nothing is there to ease it onto.
    """
    if cut.waistband in ("straight", None):
        return MANNERS[cut.method].waist_fullness if cut.waist_fullness is None else cut.waist_fullness
    if cut.waist_fullness:
        raise SpecError(
            f'With waistband "{cut.waistband}" the trouser top itself is the waist, so waist_fullness must be 0: leave it out, or choose waistband "straight".',
            where="garment.waist_fullness",
            received=cut.waist_fullness,
            allowed=(0.0, 0.0),
        )
    return 0.0


def underlap(cut: Trousers) -> float:
    """How far in cm the band laps under: as ordered, or as the method does."""
    return MANNERS[cut.method].underlap if cut.underlap is None else cut.underlap


def hip_ease(body: Body, cut: Trousers) -> Length:
    """Trousers over body at the hip in cm, all round."""
    if cut.hip_ease is not None:
        return Length(cut.hip_ease, "hip ease")
    usual = MANNERS[cut.method].hip_ease if cut.fit is None else FITS[cut.fit].hip[0]
    return Length(max(_stretched(usual, body.hip_girth, cut), _hanging(body, cut)), "hip ease")


def _hanging(body: Body, cut: Trousers) -> float:
    """What lets the trousers hang from a waist that is larger than the hips: as wide there as at their top, cm."""
    if cut.waistband == "elastic":
        return -math.inf
    girth = body.waist_girth if cut.waist_position > 0 else body_girth(body, cut)
    return float(girth + waist_ease(cut) - body.hip_girth)


def most_over(cut: Trousers) -> float:
    """How far in cm the drawn hip may exceed hip and ease: as the block does, or to the fit's most."""
    if cut.fit is None:
        return MOST_OVER
    least, most = FITS[cut.fit].hip
    return most - least


def _stretched(ease: float, girth: Length, cut: Trousers) -> Length:
    """Ease less half the cloth's stretch, not under 5 % of the body; loose cuts keep theirs."""
    if not clings(cut):
        return Length(ease)
    return larger(ease - girth * (cut.stretch / 200), girth * -MOST_OFF)


def clings(cut: Trousers) -> bool:
    """Whether the cloth stretches and the cut is close enough to stretch it."""
    return cut.stretch > 0 and (cut.fit is None or FITS[cut.fit].close)


def hem_girth(body: Body, cut: Trousers) -> Length:
    """Girth of the hem in cm: as ordered, or by fit and hip; a close one passes the foot.

    Source: the usual hem is derived from the worked sizes of the block.
    """
    if cut.hem_girth is not None:
        return Length(cut.hem_girth, "hem girth")
    girth, step = USUAL_HEM if cut.fit is None else FITS[cut.fit].hem
    usual = (body.hip_girth - 96) * step + girth
    if body.hip_girth > LARGE:
        usual = usual + (body.hip_girth - LARGE) / 12
    return larger(usual, foot_girth(body)) if cut.fit == "slim" else usual


LARGE = 124.0
"""Over the largest published hip the hem gains a third more for each cm, and the knee is no narrower
than 45 % of the hip and 1 cm: straight on from the published sizes the leg would narrow too fast under so
wide a thigh. House method, looked at on paper."""


def foot_girth(body: Body) -> Length:
    """What a hem must pass, in cm: as known, or the usual one of the figure."""
    return body.length("heel_ankle_girth") if body.has("heel_ankle_girth") else Length(FOOT_GIRTH[body.figure], "usual foot")


def knee_girth(body: Body, cut: Trousers) -> Length:
    """Girth at the knee in cm: as ordered, by the knee's ease, or the hem and four times the step of the size.

    A leg whose hem was not ordered does not widen below the knee.
    """
    if cut.knee_girth is not None:
        return Length(cut.knee_girth, "knee girth")
    if cut.knee_ease is not None:
        return knee_of(body) + Length(cut.knee_ease, "knee ease")
    if cut.fit is None:
        usual = hem_girth(body, cut) + 4 * MANNERS[cut.method].knee_step.at(body.hip_girth)
        full = body.hip_girth > LARGE and cut.hem_girth is None
        return larger(usual, body.hip_girth * 0.45 + 1) if full else usual
    eased = knee_of(body) + _stretched(FITS[cut.fit].knee, knee_of(body), cut)
    return eased if cut.hem_girth is not None else larger(eased, hem_girth(body, cut))


def knee_of(body: Body) -> Length:
    """Girth of the body's knee in cm, or what the hip lets one expect.

    Source: least squares on the people of Heinz, Peterson, Johnson and Kerk (2003), rounded; sd 1.7.
    """
    return body.length("knee_girth") if body.has("knee_girth") else body.hip_girth / 4 + 12


def thigh_ease(cut: Trousers) -> tuple[float, float]:
    """Least and most room over the thigh in cm."""
    if cut.thigh_ease is not None:
        return cut.thigh_ease, math.inf
    return (LEAST_THIGH, math.inf) if cut.fit is None else FITS[cut.fit].thigh


LEAST_THIGH = 2.5
"""Least room over the thigh where no fit is chosen. Source: *Measurements for Fitting Pants*, New
Mexico State University Extension, Guide C-209."""


def crotch_band(cut: Trousers) -> tuple[float, float]:
    """The crotch seam over the body's crotch length, least and most, in cm."""
    if cut.leg == "culottes":
        return CULOTTE_CROTCH
    return STRETCHY_CROTCH if cut.stretch > 0 and cut.fit == "slim" else FITS[cut.fit or "classic"].crotch


def sensible(cut: Trousers) -> None:
    """Refuse eases that exclude each other.

    Raises:
        SpecError: Names both options.
    """
    if cut.hip_ease is not None and cut.hip_ease < 0 and cut.stretch == 0:
        raise SpecError(
            "Only a cloth that stretches can be cut smaller than the body: give its stretch, or a hip_ease of 0 or more.",
            where="garment.hip_ease", received=cut.hip_ease, allowed=(0.0, None),
        )
    if cut.knee_ease is not None and cut.knee_girth is not None:
        raise SpecError("knee_ease and knee_girth both set the leg at the knee: leave one of them out.", where="garment.knee_ease", received=cut.knee_ease)


def settle(body: Body, cut: Trousers, sheet: DraftSheet) -> None:
    """Record what the fit gives.

    Raises:
        SpecError: Eases exclude each other.
    """
    sensible(cut)
    sheet.heading("Fit", "common practice, no source")
    sheet.decide("a chosen fit", cut.fit is not None, "Is a fit chosen?", f"{(cut.fit or 'none').capitalize()}: its eases take the place of the method's own.")
    sheet.decide("a clinging cut", clings(cut), "Does the cloth stretch, and is the cut close?", "Half the stretch comes off the hip and the knee, down to 5 % under the body; the fused band does not stretch.")
    sheet.length("waist ease", waist_ease(cut), "Band over body, all round.")
    hanging = cut.hip_ease is None and float(hip_ease(body, cut)) == _hanging(body, cut)
    sheet.decide("trousers that hang from the waist", hanging, "Is the waist larger than the hips and their ease?", "The sides then fall plumb from the waist; drawn in to the hips they would be hollow.")
    sheet.length("hip ease", hip_ease(body, cut), "Trousers over body, all round.")
