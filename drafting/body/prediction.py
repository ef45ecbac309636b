"""What a body's other measures let one expect of a measure.

Source: the normal distribution given some of its members, by textbook; the widening for bodies far
from the surveyed ones is that of Student's distribution of several variables.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from drafting.body.survey import joint, reading_sd

if TYPE_CHECKING:
    from collections.abc import Mapping

    from drafting.body.body import Figure

FREEDOM = 10.0
"""Degrees of freedom of the widening: how little a body far from the survey is trusted to follow
it. Judgement; an ordinary body is not touched by it."""


@dataclass(frozen=True, slots=True)
class Prediction:
    """What is to be expected: value and standard deviation in cm (kg)."""

    value: float
    sd: float

    def off(self, value: float, reading: float = 0.0) -> float:
        """How many sd a value lies off; `reading` is the sd with which that value was read."""
        return (value - self.value) / math.hypot(self.sd, reading)


def predict(
    figure: Figure, known: Mapping[str, float], wanted: tuple[str, ...]
) -> dict[str, Prediction]:
    """Expect the wanted measures from the known ones (cm, kg).

    Known measures that the statistics do not speak of are passed over; wanted ones must be of
    `ESTIMABLE`. Each known value is heeded with the error of its reading.
    """
    everyone = joint(figure, by_leg={"thigh_girth", "calf_girth"} <= known.keys())
    heeded = tuple(name for name in known if name in everyone.names)
    part = everyone.part((*heeded, *wanted))
    mean, rows, strangeness = list(part.mean), [list(row) for row in part.covariance], 0.0
    for name in heeded:
        mean, rows, surprise = _heed(mean, rows, known[name], reading_sd(name))
        strangeness += surprise
    wide = widening(strangeness, len(heeded))
    return {
        name: Prediction(mean[i], wide * math.sqrt(max(rows[i][i], 0.0)))
        for i, name in enumerate(wanted)
    }


def _heed(
    mean: list[float], rows: list[list[float]], value: float, sd: float
) -> tuple[list[float], list[list[float]], float]:
    """Means and covariances of the others once the first was read, and how surprising that was."""
    spread = rows[0][0] + sd * sd
    column = [row[0] for row in rows[1:]]
    miss = value - mean[0]
    moved = [m + c * miss / spread for m, c in zip(mean[1:], column, strict=True)]
    left = [
        [v - a * b / spread for v, b in zip(row[1:], column, strict=True)]
        for row, a in zip(rows[1:], column, strict=True)
    ]
    return moved, left, miss * miss / spread


def widening(strangeness: float, count: int) -> float:
    """Factor of the sd for a body whose `count` known measures are so strange.

    `strangeness` is the sum of squares of how many sd each lies off, given those before it.
    """
    return math.sqrt(max(1.0, (FREEDOM + strangeness) / (FREEDOM + count)))
