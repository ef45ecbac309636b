"""Measures that are sums of others: what is missing is derived, what is there twice is compared.

Source: common practice, no source. Each reading counts with 1 cm, so a difference of two with
1.4 cm (handbook rule for the rise as outside leg less inside leg).
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from drafting.body.body import MEASURES, Measured
from drafting.pattern import Finding

READING = 1.0
"""cm; what one reading along the body is good for when sums are taken of it."""


@dataclass(frozen=True, slots=True)
class Sum:
    """A measure as the sum of some others less some others.

    Attributes:
        whole: The measure.
        plus: What is added up.
        minus: What is taken off.
        tolerance: cm by which two good tapes may disagree; None where another sum says the same.
    """

    whole: str
    plus: tuple[str, ...]
    minus: tuple[str, ...] = ()
    tolerance: float | None = None

    @property
    def parts(self) -> tuple[str, ...]:
        """Everything that it is made of."""
        return (*self.plus, *self.minus)

    def value(self, values: Mapping[str, float]) -> float:
        """The sum in cm."""
        return sum(values[n] for n in self.plus) - sum(values[n] for n in self.minus)


SUMS: tuple[Sum, ...] = (
    Sum("outside_leg_length", ("waist_height",), (), 2.0),
    Sum("outside_leg_length", ("inside_leg_height", "body_rise")),
    Sum("outside_leg_length", ("hip_height", "side_waist_to_hip"), (), 2.0),
    Sum("body_rise", ("outside_leg_length",), ("inside_leg_height",), 2.0),
    Sum("inside_leg_height", ("outside_leg_length",), ("body_rise",)),
    Sum("side_waist_to_hip", ("outside_leg_length",), ("hip_height",)),
    Sum("hip_height", ("outside_leg_length",), ("side_waist_to_hip",)),
    Sum("total_crotch_length", ("front_crotch_length", "back_crotch_length"), (), 2.0),
    Sum("front_crotch_length", ("total_crotch_length",), ("back_crotch_length",)),
    Sum("back_crotch_length", ("total_crotch_length",), ("front_crotch_length",)),
    Sum("outer_arm_length", ("upper_arm_length", "lower_arm_length"), (), 1.5),
    Sum("upper_arm_length", ("outer_arm_length",), ("lower_arm_length",)),
    Sum("lower_arm_length", ("outer_arm_length",), ("upper_arm_length",)),
)
"""In the order in which they are tried. No survey's offset enters a client's own difference."""


def derived(given: Mapping[str, float]) -> dict[str, Measured]:
    """What follows from the given measures (cm) by sums alone; no given measure among it."""
    values, found = dict(given), dict[str, Measured]()
    for one in SUMS:
        if one.whole not in values and all(part in values for part in one.parts):
            sd = math.hypot(*(_sd(part, found) for part in one.parts))
            found[one.whole] = Measured(one.value(values), "derived", sd, one.parts)
            values[one.whole] = found[one.whole].value
    return found


def disagreements(given: Mapping[str, float]) -> Iterator[Finding]:
    """A warning for each measure that was given twice, as itself and as a sum, and disagrees."""
    return (
        _disagreement(one, given)
        for one in SUMS
        if one.tolerance is not None
        and all(name in given for name in (one.whole, *one.parts))
        and abs(given[one.whole] - one.value(given)) > one.tolerance
    )


def _sd(part: str, found: Mapping[str, Measured]) -> float:
    return found[part].sd or READING if part in found else READING


def _disagreement(one: Sum, given: Mapping[str, float]) -> Finding:
    wanted, slack = one.value(given), one.tolerance or 0.0
    return Finding(
        code=f"disagreeing_{one.whole}",
        severity="warning",
        where=one.whole,
        message=f"{MEASURES[one.whole].title} disagrees with {words(one)} by more than two good "
        "tapes would. Take them again, from the same cord to the same floor.",
        measured=given[one.whole],
        allowed=(wanted - slack, wanted + slack),
    )


def words(one: Sum) -> str:
    """The sum in words: "outside leg less inside leg"."""
    plus = " and ".join(MEASURES[name].word for name in one.plus)
    return " less ".join((plus, *(MEASURES[name].word for name in one.minus)))
