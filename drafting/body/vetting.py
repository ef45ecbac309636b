"""From what an order says to a body that can be drafted for: all troubles told at once."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING

from drafting.body.body import MEASURES, Body, Figure, Measured
from drafting.body.completing import BASIS, LENGTHS, estimated, lacking, vague_findings
from drafting.body.contradictions import contradictions
from drafting.body.deriving import derived, disagreements
from drafting.body.plausibility import UNLIKELY, differences, doubts, refusals, remarks
from drafting.body.prediction import predict
from drafting.body.ranges import RANGES
from drafting.body.survey import ESTIMABLE
from drafting.body.taking import Given, Taken, take, within
from drafting.errors import MeasurementError
from drafting.pattern import Finding

if TYPE_CHECKING:
    from drafting.body.plausibility import Doubt

SIDES_UNUSUAL = 3.0
"""cm by which left and right seldom differ. Judgement."""


def prepare(
    given: Given,
    figure: Figure,
    needs: tuple[str, ...],
    optional: tuple[str, ...] = (),
    accept_unusual: bool = False,  # noqa: FBT001, FBT002 - a client's plain yes or no
) -> tuple[Body, tuple[Finding, ...]]:
    """Vet the measures of an order and make them a body that a garment can be drafted for.

    What is needed and was not given is derived from other measures given, else predicted from all
    of them. Waist and hip are always to be given, and one of `LENGTHS` where a leg is needed.

    Args:
        given: Measures in cm (kilograms, degrees) by the vocabulary's names.
        figure: Whose ranges and statistics hold.
        needs: Measures that the garment cannot be drafted without.
        optional: Measures that it uses where they were given or follow from what was given; they
            are not predicted.
        accept_unusual: Draft even where the measures hardly belong to one body.

    Returns:
        The body, and findings on what is unusual, disagrees, or is estimated.

    Raises:
        MissingMeasureError: Something must be measured that nothing given can stand for.
        MeasurementError: `out_of_range`, `contradicting_measures`, `unusual_body`,
            `incomplete_sides` or `one_value_only`. The first trouble is raised and carries all
            others in `also`.
    """
    taken = take(given)
    follows = derived(taken.values)
    doubted = _vet(taken, follows, figure, needs, accept_unusual=accept_unusual)
    lacks = tuple(n for n in needs if n not in taken.values and n not in follows)
    kept = {name: one for name, one in follows.items() if name in (*needs, *optional)}
    added = kept | estimated(taken.values, figure, lacks)
    body = Body(figure, taken.measured() | added, taken.measured_sides())
    return body, (*_remarks(taken, follows, figure, doubted), *vague_findings(added))


def measurement_check(
    given: Given,
    figure: Figure,
    accept_unusual: bool = False,  # noqa: FBT001, FBT002 - a client's plain yes or no
) -> tuple[Body, tuple[Finding, ...]]:
    """Vet and complete measures without drafting: every measure that can be told is added.

    Nothing is needed; where waist, hip or a length is lacking, only what follows from the given
    measures is added, and a note says what else to measure. Arguments, results and errors as of
    `prepare`.
    """
    taken = take(given)
    known = taken.values.keys()
    absent = [name for name in BASIS if name not in known]
    if not known & set(LENGTHS):
        absent.append(LENGTHS[0])
    wanted = () if absent else ESTIMABLE
    names = tuple(name for name in MEASURES if name in wanted and name not in known)
    possible = tuple(name for name in names if name != "bust_girth")
    follows = tuple(derived(taken.values))
    body, findings = prepare(given, figure, possible, follows, accept_unusual)
    return body, (*findings, *(_incomplete(name) for name in absent))


def raise_first(troubles: tuple[MeasurementError, ...]) -> None:
    """Raise the first trouble, which then carries the others; nothing where there is none."""
    if troubles:
        first, *others = troubles
        first.also = tuple(others)
        raise first


def _vet(
    taken: Taken,
    follows: Mapping[str, Measured],
    figure: Figure,
    needs: tuple[str, ...],
    *,
    accept_unusual: bool,
) -> tuple[Doubt, ...]:
    """Raise what stands against drafting; return what is only to be doubted."""
    troubles = list(taken.troubles)
    troubles += contradictions(taken.values)
    troubles += _impossible(follows)
    doubted = () if troubles else doubts(taken.values, figure)
    troubles += () if accept_unusual else refusals(doubted)
    spoiled = {trouble.where.split(".")[1] for trouble in taken.troubles}
    troubles += lacking({*taken.values, *follows, *spoiled}, needs)
    raise_first(tuple(troubles))
    return doubted


def _impossible(follows: Mapping[str, Measured]) -> Iterator[MeasurementError]:
    for name, one in follows.items():
        if not within(one.value, RANGES[name].hard):
            parts = " and ".join(one.sources)
            yield MeasurementError(
                f"{parts} cannot both be right: the {MEASURES[name].word} that follows from them "
                "is not possible on an adult. Take both again.",
                where=f"measurements.{one.sources[0]}",
                code="contradicting_measures",
                received=one.value,
                allowed=RANGES[name].hard,
            )


def _remarks(
    taken: Taken, follows: Mapping[str, Measured], figure: Figure, doubted: tuple[Doubt, ...]
) -> Iterator[Finding]:
    yield from (
        _unusual(n, v, figure) for n, v in taken.values.items() if _is_unusual(n, v, figure)
    )
    yield from remarks(doubted)
    yield from disagreements(taken.values)
    yield from differences(taken.values, figure)
    yield from _unlikely_rise(taken, follows, figure)
    yield from _uneven(taken)


def _is_unusual(name: str, value: float, figure: Figure) -> bool:
    usual = RANGES[name].soft(figure)
    return usual is not None and not within(value, usual)


def _unusual(name: str, value: float, figure: Figure) -> Finding:
    return Finding(
        code=f"unusual_{name}",
        severity="warning",
        where=name,
        message=f"{MEASURES[name].title} is outside of what is usual. Take it again to be sure.",
        measured=value,
        allowed=RANGES[name].soft(figure),
    )


def _unlikely_rise(
    taken: Taken, follows: Mapping[str, Measured], figure: Figure
) -> Iterator[Finding]:
    """A rise by difference is checked against the statistics, which never correct it."""
    rise = follows.get("body_rise")
    if rise is None:
        return
    rest = {name: v for name, v in taken.values.items() if name != "inside_leg_height"}
    expected = predict(figure, rest, ("body_rise",))["body_rise"]
    if abs(expected.off(rise.value, rise.sd or 0.0)) > UNLIKELY:
        yield Finding(
            code="unlikely_body_rise",
            severity="warning",
            where="body_rise",
            message="The body rise, outside leg less inside leg, does not go with the other "
            "measures. Measure it sitting, or take both legs again.",
            measured=rise.value,
            allowed=(expected.value - 3 * expected.sd, expected.value + 3 * expected.sd),
        )


def _uneven(taken: Taken) -> Iterator[Finding]:
    for name, pair in taken.sides.items():
        if abs(pair["left"] - pair["right"]) > SIDES_UNUSUAL:
            yield Finding(
                code=f"uneven_{name}",
                severity="warning",
                where=name,
                message=f"{MEASURES[name].title} differs much from left to right. Take both again.",
                measured=pair["left"] - pair["right"],
                allowed=(-SIDES_UNUSUAL, SIDES_UNUSUAL),
            )


def _incomplete(name: str) -> Finding:
    return Finding(
        code=f"missing_{name}",
        severity="note",
        where=name,
        message=f"{MEASURES[name].title} is needed to estimate what was not measured. "
        f"{MEASURES[name].how}",
    )
