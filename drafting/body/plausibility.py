"""Whether measures belong to one body: each against what all the others let one expect.

Source: the reference statistics of `survey.py`; the pair of waist and hip, which the surveyed
soldiers hold too narrow, by NHANES 2017 to March 2020 (civilians of all builds).
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from drafting.body.body import MEASURES, Figure
from drafting.body.completing import BASIS
from drafting.body.prediction import Prediction, predict, widening
from drafting.body.survey import ESTIMABLE, joint, reading_sd
from drafting.errors import MeasurementError
from drafting.pattern import Finding

UNLIKELY = 3.0
"""sd past which a measure is worth a second look; 0.2 to 0.6 % of the surveyed people pass it."""

UNUSUAL = 5.0
"""sd past which the measures are not taken for one body; the most that 6,068 showed is 4.6."""


@dataclass(frozen=True, slots=True)
class Doubt:
    """A measure that does not go with the others.

    Attributes:
        name: The measure.
        value: As given, in cm (kg).
        expected: What the others let one expect.
        off: How many sd it lies off.
        beside: Those of the others that tell most of it.
    """

    name: str
    value: float
    expected: Prediction
    off: float
    beside: tuple[str, ...]

    def within(self, times: float) -> tuple[float, float]:
        """The bounds so many sd about what was expected."""
        slack = times * abs((self.value - self.expected.value) / self.off)
        return round(self.expected.value - slack, 1), round(self.expected.value + slack, 1)


@dataclass(frozen=True, slots=True)
class Build:
    """Hip girth by stature and waist girth, of civilians of all builds (cm).

    Attributes:
        constant: Of the regression.
        by_stature: Factor of the stature.
        by_waist: Factor of the waist girth, taken at the hip bone.
        sd: What the regression leaves.
        stature: The middle of all, where it was not given.
        lower: How much that waist exceeds the natural one, half of what lean people show.
        lower_sd: How well that is known.
        hip: The middle of all hips; larger bodies vary in proportion.
        waist: The middle of all waists at the hip bone.
        waist_sd: Their sd.
    """

    constant: float
    by_stature: float
    by_waist: float
    sd: float
    stature: float
    lower: float
    lower_sd: float
    hip: float
    waist: float
    waist_sd: float

    def expected(self, values: Mapping[str, float]) -> Prediction:
        """The hip girth to be expected of a natural waist girth, and of a stature if known."""
        stature = values.get("stature", self.stature)
        waist = values["waist_girth"] + self.lower
        hip = self.constant + self.by_stature * stature + self.by_waist * waist
        spread = math.hypot(self.sd, self.by_waist * self.lower_sd)
        size = max(1.0, values["hip_girth"] / self.hip)
        far = widening(((waist - self.waist) / self.waist_sd) ** 2, 1)
        return Prediction(hip, spread * size * far)


BUILDS: dict[Figure, Build] = {
    "women": Build(-1.33, 0.2008, 0.7955, 6.75, 160.1, 7.0, 8.9, 106.7, 97.1, 16.5),
    "men": Build(-2.22, 0.2385, 0.6411, 5.15, 173.8, 1.5, 4.5, 102.7, 100.6, 16.6),
}
"""Source: regressions and percentiles of NHANES 2017 to March 2020. The waists' difference by
Heinz et al. (2003) is 13.9 (sd 5.5) on women, 3.1 (4.2) on men, and shrinks with build: half of it
is taken, and the other half added to its sd."""


def doubts(given: Mapping[str, float], figure: Figure) -> tuple[Doubt, ...]:
    """The given measures (cm, kg) that lie more than 3 sd off, the farthest first."""
    found = (*_girths(given, figure), *_others(given, figure))
    return tuple(sorted(found, key=lambda doubt: -abs(doubt.off)))


def _girths(given: Mapping[str, float], figure: Figure) -> Iterator[Doubt]:
    if {"waist_girth", "hip_girth"} <= given.keys():
        expected = BUILDS[figure].expected(given)
        off = expected.off(given["hip_girth"])
        if abs(off) > UNLIKELY:
            yield Doubt("hip_girth", given["hip_girth"], expected, off, ("waist_girth",))


def _others(given: Mapping[str, float], figure: Figure) -> Iterator[Doubt]:
    known = {name: value for name, value in given.items() if name in ESTIMABLE}
    for name, value in known.items():
        if name in BASIS:
            continue
        rest = {other: known[other] for other in known if other != name}
        expected = predict(figure, rest, (name,))[name]
        off = expected.off(value, reading_sd(name))
        if abs(off) > UNLIKELY:
            yield Doubt(name, value, expected, off, _nearest(name, tuple(rest), figure))


def _nearest(name: str, others: tuple[str, ...], figure: Figure) -> tuple[str, ...]:
    """The three of the others that tell most of it."""
    part = joint(figure).part((name, *others))
    told = {
        other: abs(part.covariance[0][i]) / math.sqrt(part.covariance[i][i])
        for i, other in enumerate(others, 1)
    }
    return tuple(sorted(told, key=lambda other: -told[other])[:3])


def refusals(doubted: tuple[Doubt, ...]) -> Iterator[MeasurementError]:
    """The troubles among the doubts: those past 5 sd."""
    for doubt in doubted:
        if abs(doubt.off) > UNUSUAL:
            yield MeasurementError(
                f"{_sentence(doubt)} If the tape is right, send accept_unusual.",
                where=f"measurements.{doubt.name}",
                code="unusual_body",
                received=doubt.value,
                allowed=doubt.within(UNUSUAL),
            )


def remarks(doubted: tuple[Doubt, ...]) -> Iterator[Finding]:
    """The doubts as warnings."""
    for doubt in doubted:
        yield Finding(
            code=f"unlikely_{doubt.name}",
            severity="warning",
            where=doubt.name,
            message=_sentence(doubt),
            measured=doubt.value,
            allowed=doubt.within(UNLIKELY),
        )


USUAL_APART: tuple[tuple[str, str, tuple[float, float]], ...] = (
    ("bust_girth", "under_bust_girth", (5.0, 30.0)),
    ("side_neck_point_to_waist_front", "back_neck_point_to_waist", (-2.0, 9.0)),
)
"""Measures that on most bodies differ by so many cm. Source: common practice, no source."""


def differences(given: Mapping[str, float], figure: Figure) -> Iterator[Finding]:
    """A warning for each pair of measures (cm) of a woman's body that differs unusually."""
    for one, other, (low, high) in USUAL_APART if figure == "women" else ():
        if one in given and other in given and not low <= given[one] - given[other] <= high:
            yield Finding(
                code=f"unusual_difference_{one}",
                severity="warning",
                where=one,
                message=f"{MEASURES[one].title} differs from the {MEASURES[other].word} by more or "
                "less than is usual. Take both again to be sure.",
                measured=given[one] - given[other],
                allowed=(low, high),
            )


def _sentence(doubt: Doubt) -> str:
    size = "large" if doubt.off > 0 else "small"
    others = ", ".join(MEASURES[name].word for name in doubt.beside)
    return (
        f"{MEASURES[doubt.name].title} is very {size} beside the other measures. "
        f"Take it again, and then {others}."
    )
