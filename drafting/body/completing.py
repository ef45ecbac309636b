"""What a garment needs and an order lacks: derived from what was given, or predicted.

Source: the reference statistics of `survey.py`.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from drafting.body.body import MEASURES, Figure, Measured, missing
from drafting.body.prediction import predict
from drafting.body.ranges import RANGES
from drafting.body.survey import ESTIMABLE
from drafting.body.upper import UpperBody
from drafting.errors import MissingMeasureError
from drafting.pattern import Finding

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

BASIS = ("waist_girth", "hip_girth")
"""Without these nothing is predicted below the waist."""

UPPER_BASIS = ("bust_girth",)
"""Without it, or waist and hip, nothing is predicted above the waist."""

NEVER = frozenset({*BASIS, "bust_girth"})
"""Girths that no other measure tells well enough to cut cloth on."""

LENGTHS = ("outside_leg_length", "inside_leg_height", "stature", "waist_height")
"""One of these is needed to predict how long a leg is; without any, it is known to 5 cm."""

ABOVE = frozenset(vars(UpperBody)) & frozenset(MEASURES)
"""Measures from the waist up."""

LONG = frozenset(
    {
        "outside_leg_length",
        "outer_arm_length",
        "upper_arm_length",
        "lower_arm_length",
        "back_neck_point_to_waist",
    }
    | {name for name, measure in MEASURES.items() if measure.kind == "height"}
)
"""Measures that go with the length of the bones."""

TOO_VAGUE = frozenset(
    {"body_rise", "total_crotch_length", "front_crotch_length", "back_crotch_length"}
)
"""Measures whose prediction is too vague to cut cloth on (sd of 2 to 3 cm)."""

CUTTING_SD = 1.5
"""cm; a length that is predicted worse than this is worth a remark."""


def lacking(known: Iterable[str], needs: Iterable[str]) -> tuple[MissingMeasureError, ...]:
    """What must still be measured: needed, and neither known nor to be predicted."""
    there = frozenset(known)
    absent = [name for name in needs if name not in there]
    hopeless = [name for name in absent if name in NEVER or name not in ESTIMABLE]
    vague = [name for name in absent if name not in hopeless]
    lacks = [name for name in _basis(vague, there) if name not in {*there, *hopeless}]
    long = [name for name in vague if name in LONG][: 0 if there.intersection(LENGTHS) else 1]
    return (*(missing(name) for name in (*hopeless, *lacks)), *(_one_of(name) for name in long))


def _basis(vague: Iterable[str], there: frozenset[str]) -> tuple[str, ...]:
    """What must have been measured to predict these."""
    halves = {name in ABOVE for name in vague}
    above = UPPER_BASIS if True in halves and not there.issuperset(BASIS) else ()
    return (*(BASIS if False in halves else ()), *above)


def _one_of(name: str) -> MissingMeasureError:
    return MissingMeasureError(
        f"How long the {_what(name)} is not known: give {name}, or one of {', '.join(LENGTHS)}.",
        where=f"measurements.{name}",
        allowed=tuple(dict.fromkeys((name, *LENGTHS))),
    )


def _what(name: str) -> str:
    """What is long, in words."""
    if name not in ABOVE or name == "back_neck_height":
        return "legs are"
    return "arms are" if "arm" in name else "back is"


def estimated(
    given: Mapping[str, float], figure: Figure, wanted: Iterable[str]
) -> dict[str, Measured]:
    """Predict the wanted measures from the given ones (cm, kg); see `predict`.

    A prediction never leaves the range that is possible on an adult, and is told to 0.1.
    """
    names = tuple(name for name in wanted if name in ESTIMABLE)
    inputs = tuple(name for name in given if name in ESTIMABLE)
    return {
        name: Measured(_possible(name, found.value), "estimated", found.sd, inputs)
        for name, found in predict(figure, given, names).items()
    }


def _possible(name: str, value: float) -> float:
    low, high = RANGES[name].hard
    return round(min(max(value, low), high), 1)


def vague_findings(values: Mapping[str, Measured]) -> Iterator[Finding]:
    """A finding for each vague estimate: a warning where cloth should not be cut on it."""
    return (
        _vague(n, one.value, one.sd) for n, one in values.items() if one.sd and _is_vague(n, one)
    )


def _is_vague(name: str, one: Measured) -> bool:
    lengthwise = MEASURES[name].kind in {"length", "height"}
    rough = one.sd is not None and one.sd > CUTTING_SD
    return one.origin == "estimated" and (name in TOO_VAGUE or (lengthwise and rough))


def _vague(name: str, value: float, sd: float) -> Finding:
    strict = name in TOO_VAGUE
    advice = "Measure it, or sew a toile." if strict else "Measure it to be sure."
    return Finding(
        code=f"estimated_{name}",
        severity="warning" if strict else "note",
        where=name,
        message=f"{MEASURES[name].title} was not given and is estimated from the other measures; "
        f"two bodies in three lie within these bounds. {advice}",
        measured=value,
        allowed=(value - sd, value + sd),
    )
