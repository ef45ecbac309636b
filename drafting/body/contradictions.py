"""Measures that cannot both be right on one body.

Only the impossible stands here. A waist larger than the hip, a hip line at or under the crotch
line, and the like are real people and are drafted.

Source: nesting of girths and heights holds for all 6,068 people of ANSUR II (2012); the factors
are judgement, far outside of what surveys hold.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from drafting.errors import MeasurementError

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping


@dataclass(frozen=True, slots=True)
class Rule:
    """`less` must be less than `factor` times `more`, and what to look at where it is not."""

    less: str
    more: str
    factor: float
    advice: str

    def broken(self, values: Mapping[str, float]) -> bool:
        """Whether both measures are there and cannot both be right."""
        if self.less not in values or self.more not in values:
            return False
        return values[self.less] >= self.factor * values[self.more]


_SWAPPED = "See whether the two were swapped, and take both again."
_FLOOR = "Both end on the floor, without shoes: take both again."
_CORD = "Both start at the waist cord: take both again."

RULES: tuple[Rule, ...] = (
    Rule("waist_girth", "hip_girth", 2.0, "Take both again, level all round."),
    Rule("hip_girth", "waist_girth", 2.5, "Take both again, level all round."),
    Rule("body_rise", "outside_leg_length", 0.5, _CORD),
    Rule("side_waist_to_hip", "outside_leg_length", 0.5, _CORD),
    Rule("side_waist_to_hip", "body_rise", 1.5, _CORD),
    Rule("total_crotch_length", "body_rise", 5.0, _CORD),
    Rule("body_rise", "total_crotch_length", 0.65, _CORD),
    Rule("front_crotch_length", "total_crotch_length", 0.8, _SWAPPED),
    Rule("back_crotch_length", "total_crotch_length", 0.85, _SWAPPED),
    Rule("inside_leg_height", "outside_leg_length", 1.0, _FLOOR),
    Rule("inside_leg_height", "waist_height", 1.0, _FLOOR),
    Rule("outside_leg_length", "inside_leg_height", 2.0, _FLOOR),
    Rule("knee_height", "inside_leg_height", 0.9, _FLOOR),
    Rule("ankle_height", "knee_height", 0.5, _FLOOR),
    Rule("hip_height", "outside_leg_length", 1.0, _FLOOR),
    Rule("hip_height", "waist_height", 1.0, _FLOOR),
    Rule("inside_leg_height", "stature", 0.7, _FLOOR),
    Rule("outside_leg_length", "stature", 0.85, _FLOOR),
    Rule("waist_height", "stature", 0.85, _FLOOR),
    Rule("back_neck_height", "stature", 1.0, _FLOOR),
    Rule("waist_height", "back_neck_height", 1.0, _FLOOR),
    Rule("thigh_girth", "hip_girth", 1.0, _SWAPPED),
    Rule("mid_thigh_girth", "hip_girth", 1.0, _SWAPPED),
    Rule("knee_girth", "thigh_girth", 1.0, _SWAPPED),
    Rule("calf_girth", "thigh_girth", 1.0, _SWAPPED),
    Rule("minimum_leg_girth", "calf_girth", 1.0, _SWAPPED),
    Rule("ankle_girth", "calf_girth", 1.0, _SWAPPED),
    Rule("neck_girth", "bust_girth", 1.0, _SWAPPED),
    Rule("upper_arm_girth", "bust_girth", 1.0, _SWAPPED),
    Rule("wrist_girth", "upper_arm_girth", 1.0, _SWAPPED),
    Rule("upper_arm_length", "outer_arm_length", 1.0, _SWAPPED),
    Rule("lower_arm_length", "outer_arm_length", 1.0, _SWAPPED),
    Rule("outer_arm_length", "back_neck_point_to_wrist_length", 1.0, _SWAPPED),
    Rule("shoulder_length", "across_back_shoulder_width", 0.6, _SWAPPED),
    Rule("neck_girth", "neck_base_girth", 1.15, _SWAPPED),
    Rule("under_bust_girth", "bust_girth", 1.15, _SWAPPED),
    Rule("bust_point_width", "across_front_width", 1.0, _SWAPPED),
    Rule("scye_depth_length", "back_neck_point_to_waist", 0.85, _SWAPPED),
    Rule("side_neck_point_to_bust_point", "side_neck_point_to_waist_front", 1.0, _SWAPPED),
)


def contradictions(values: Mapping[str, float]) -> Iterator[MeasurementError]:
    """A MeasurementError for each pair of measures (cm) that cannot both be right."""
    return (_trouble(rule, values) for rule in RULES if rule.broken(values))


def _trouble(rule: Rule, values: Mapping[str, float]) -> MeasurementError:
    limit = "" if rule.factor == 1.0 else f"{rule.factor:g} times "
    return MeasurementError(
        f"{rule.less} and {rule.more} cannot both be right: {rule.less} must be less than {limit}"
        f"{rule.more}. {rule.advice}",
        where=f"measurements.{rule.less}",
        code="contradicting_measures",
        received=values[rule.less],
        allowed=(0.0, round(rule.factor * values[rule.more], 2)),
    )
