"""From what an order says to a body that can be drafted for: all troubles told at once."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from drafting.body.body import MEASURES, Body, Figure, missing
from drafting.body.contradictions import contradictions
from drafting.body.ranges import RANGES, Bounds
from drafting.errors import MeasurementError
from drafting.pattern import Finding

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

SLIPS: tuple[tuple[float, str], ...] = (
    (2.54, 'It would fit if it were inches: send "unit": "in".'),
    (1 / 2.54, 'It would fit if it were centimetres: send "unit": "cm".'),
    (0.1, 'It would fit if it were millimetres: send "unit": "mm".'),
    (10.0, 'It would fit if it were centimetres: send "unit": "cm".'),
)
"""Slips of the unit: the factor that mends the value, and what to say."""


def prepare(
    given: Mapping[str, float],
    figure: Figure,
    needs: tuple[str, ...],
    optional: tuple[str, ...] = (),  # noqa: ARG001 - predicted once the statistics are in
    accept_unusual: bool = False,  # noqa: ARG001, FBT001, FBT002 - a client's plain yes or no
) -> tuple[Body, tuple[Finding, ...]]:
    """Vet the measures of an order and make them a body.

    Args:
        given: Measures in cm (kilograms, degrees) by the vocabulary's names.
        figure: Whose ranges hold.
        needs: Measures without which the garment cannot be drafted.
        optional: Measures that the garment uses where there are any.
        accept_unusual: Draft even where the measures hardly belong to one body.

    Returns:
        The body, and findings on what is unusual.

    Raises:
        MissingMeasureError: A needed measure was not given.
        MeasurementError: `out_of_range` or `contradicting_measures`. The first trouble is raised
            and carries all others in `also`.
    """
    raise_first((*_missing(given, needs), *_impossible(given)))
    return Body.of(given, figure), tuple(_unusual(given, figure))


def raise_first(troubles: tuple[MeasurementError, ...]) -> None:
    """Raise the first trouble, which then carries the others; nothing where there is none."""
    if troubles:
        first, *others = troubles
        first.also = tuple(others)
        raise first


def _missing(given: Mapping[str, float], needs: tuple[str, ...]) -> Iterator[MeasurementError]:
    return (missing(name) for name in needs if name not in given)


def _impossible(given: Mapping[str, float]) -> Iterator[MeasurementError]:
    possible = {n: v for n, v in given.items() if _within(v, RANGES[n].hard)}
    yield from (_out_of_range(n, v) for n, v in given.items() if n not in possible)
    yield from contradictions(possible)


def _unusual(given: Mapping[str, float], figure: Figure) -> Iterator[Finding]:
    for name, value in given.items():
        usual = RANGES[name].soft(figure)
        if usual and not _within(value, usual):
            yield Finding(
                code=f"unusual_{name}",
                severity="warning",
                where=name,
                message=f"{MEASURES[name].title} is outside of what is usual: take it again.",
                measured=value,
                allowed=usual,
            )


def _out_of_range(name: str, value: float) -> MeasurementError:
    hard = RANGES[name].hard
    return MeasurementError(
        " ".join((f"{MEASURES[name].title} is not possible on an adult.", *_hints(name, value))),
        where=f"measurements.{name}",
        code="out_of_range",
        received=value,
        allowed=hard,
    )


def _hints(name: str, value: float) -> tuple[str, ...]:
    if MEASURES[name].unit != "cm" or not math.isfinite(value):
        return ()
    fits = (says for factor, says in SLIPS if _within(value * factor, _likely(name)))
    return tuple(fits)[:1]


def _likely(name: str) -> Bounds:
    ranges = RANGES[name]
    if ranges.women is None or ranges.men is None:
        return ranges.hard
    return min(ranges.women[0], ranges.men[0]), max(ranges.women[1], ranges.men[1])


def _within(value: float, bounds: Bounds) -> bool:
    return bounds[0] <= value <= bounds[1]
