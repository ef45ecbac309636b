"""What an order gives, read: plain measures, measures by side, and what is wrong with each.

Source: house method; its bounds are those of `ranges`.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from drafting.body.body import MEASURES, Measured, Side
from drafting.body.ranges import RANGES, Bounds
from drafting.errors import MeasurementError

Given = Mapping[str, float | Mapping[Side, float]]
"""Measures in cm (kg, degrees); where the sides differ, {"left": .., "right": ..}."""

SIDES: tuple[Side, Side] = ("left", "right")

SIDES_APART = 10.0
"""cm; legs and hips farther apart than this are a slip of the pen. Judgement."""

SLIPS: tuple[tuple[float, str], ...] = (
    (2.54, 'It would fit if it were inches: send "unit": "in".'),
    (1 / 2.54, 'It would fit if it were centimetres: send "unit": "cm".'),
    (0.1, 'It would fit if it were millimetres: send "unit": "mm".'),
    (10.0, 'It would fit if it were centimetres: send "unit": "cm".'),
)
"""Slips of the unit: the factor that mends the value, and what to say."""


@dataclass(frozen=True, slots=True)
class Taken:
    """An order's measures, those by side as their mean.

    Attributes:
        values: All that can be worked with, in cm (kg, degrees).
        sides: Left and right, where given.
        troubles: What cannot be right by itself.
    """

    values: Mapping[str, float]
    sides: Mapping[str, Mapping[Side, float]]
    troubles: tuple[MeasurementError, ...]

    def measured(self) -> dict[str, Measured]:
        """The values with their origin; the mean of two sides is a derived one."""
        return {name: self._origin(name, value) for name, value in self.values.items()}

    def measured_sides(self) -> dict[str, Mapping[Side, Measured]]:
        """Left and right with their origin."""
        return {
            n: {s: Measured(float(v)) for s, v in pair.items()} for n, pair in self.sides.items()
        }

    def _origin(self, name: str, value: float) -> Measured:
        if name in self.sides:
            return Measured(value, "derived", None, (f"{name}.left", f"{name}.right"))
        return Measured(value)


def take(given: Given) -> Taken:
    """Read what an order gives; a measure with a trouble is left out of the values."""
    values, sides = dict[str, float](), dict[str, Mapping[Side, float]]()
    troubles: list[MeasurementError] = []
    for name, one in given.items():
        wrong = tuple(_troubles(name, one))
        troubles.extend(wrong)
        if wrong:
            continue
        values[name] = sum(one.values()) / 2 if isinstance(one, Mapping) else float(one)
        if isinstance(one, Mapping):
            sides[name] = one
    return Taken(values, sides, tuple(troubles))


def _troubles(name: str, one: float | Mapping[Side, float]) -> Iterator[MeasurementError]:
    if not isinstance(one, Mapping):
        yield from _range_troubles(name, f"measurements.{name}", one)
    elif not MEASURES[name].by_side:
        yield _side_trouble(name, "one_value_only", "takes one value, not left and right.")
    elif set(one) != set(SIDES):
        yield _side_trouble(name, "incomplete_sides", "by side needs both left and right.")
    else:
        sides = [(side, f"measurements.{name}.{side}") for side in SIDES]
        wrong = [t for side, where in sides for t in _range_troubles(name, where, one[side])]
        yield from wrong
        if not wrong and abs(one["left"] - one["right"]) > SIDES_APART:
            says = "differs too much from left to right: take both again."
            yield _side_trouble(name, "contradicting_measures", says)


def _side_trouble(name: str, code: str, says: str) -> MeasurementError:
    return MeasurementError(
        f"{MEASURES[name].title} {says}", where=f"measurements.{name}", code=code
    )


def _range_troubles(name: str, where: str, value: float) -> Iterator[MeasurementError]:
    if not within(value, RANGES[name].hard):
        says = (f"{MEASURES[name].title} is not possible on an adult.", *_hints(name, value))
        yield MeasurementError(
            " ".join(says),
            where=where,
            code="out_of_range",
            received=value,
            allowed=RANGES[name].hard,
        )


def _hints(name: str, value: float) -> tuple[str, ...]:
    if MEASURES[name].unit != "cm" or not math.isfinite(value):
        return ()
    fits = (says for factor, says in SLIPS if within(value * factor, _likely(name)))
    return tuple(fits)[:1]


def _likely(name: str) -> Bounds:
    ranges = RANGES[name]
    if ranges.women is None or ranges.men is None:
        return ranges.hard
    return min(ranges.women[0], ranges.men[0]), max(ranges.women[1], ranges.men[1])


def within(value: float, bounds: Bounds) -> bool:
    """Whether a value lies within bounds; what is no number never does."""
    return bounds[0] <= value <= bounds[1]
