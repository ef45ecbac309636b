"""The reference statistics: how the measures of this vocabulary hang together on real people.

Source: means and covariances of ANSUR II, the 2012 Anthropometric Survey of U.S. Army Personnel
(public release of 2017; 1,986 women and 4,082 men of 17 to 58 years), kept in `survey.json`.
Girths that survey lacks come from regressions on the people of Heinz, Peterson, Johnson and Kerk
(2003), "Exploring Relationships in Body Dimensions", Journal of Statistics Education 11(2).

The survey's waist is at the navel or, for heights, half way between lowest rib and hip bone. The
waist of this vocabulary is where a cord settles, and the crotch is where a tape is held, not
pressed. `LINKS` says for each measure how it is put together from the survey's; what a conversion
does not know is carried along as its standard deviation.
"""

from __future__ import annotations

import json
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Mapping

    from drafting.body.body import Figure

WAIST_CORD = (1.0, 1.0)
"""cm by which the cord settles above the middle of rib and hip bone, and its sd. Judgement."""

CROTCH_TAPE = (-2.5, 1.1)
"""cm from the survey's firmly pressed crotch to where a tape is held, and its sd. Judgement.

Together with the cord it makes the 3.5 cm (sd 1.5) by which a seated rise exceeds the survey's
difference of heights (provisional; one size table, from memory, stands behind it).
"""


@dataclass(frozen=True, slots=True)
class Link:
    """How a measure is put together from the survey's own.

    Attributes:
        terms: The survey's fields, each with its factor.
        plus: A constant in cm.
        sd: What the conversion does not know, in cm.
    """

    terms: tuple[tuple[str, float], ...]
    plus: float = 0.0
    sd: float = 0.0


def _same(field: str, sd: float = 0.0) -> Link:
    return Link(((field, 1.0),), sd=sd)


_WAIST = "waist_height_iso_mid_rib_crest"
_NAVEL = "waist_height_omphalion"

LINKS: dict[str, Link] = {
    "stature": _same("stature"),
    "body_mass_kg": _same("body_mass_kg"),
    "bust_girth": _same("bust_or_chest_girth", sd=1.0),
    "hip_girth": _same("hip_girth"),
    "lower_thigh_girth": _same("lower_thigh_girth"),
    "calf_girth": _same("calf_girth", sd=0.7),
    "minimum_leg_girth": _same("ankle_girth_min", sd=0.6),
    "heel_ankle_girth": _same("heel_ankle_girth"),
    "waist_height": Link(((_WAIST, 1.0), ("waist_cord", 1.0))),
    "outside_leg_length": Link(((_WAIST, 1.0), ("waist_cord", 1.0)), sd=0.5),
    "side_waist_to_hip": Link(((_WAIST, 1.0), ("waist_cord", 1.0), ("hip_height", -1.0)), sd=0.5),
    "hip_height": _same("hip_height"),
    "inside_leg_height": Link((("inside_leg_height", 1.0), ("crotch_tape", 1.0))),
    "body_rise": Link(
        (
            (_WAIST, 1.0),
            ("waist_cord", 1.0),
            ("inside_leg_height", -1.0),
            ("crotch_tape", -1.0),
        ),
    ),
    "knee_height": _same("knee_height"),
    "ankle_height": _same("ankle_height"),
    "total_crotch_length": Link(
        (
            ("crotch_length_omphalion", 1.0),
            (_WAIST, 2.0),
            (_NAVEL, -2.0),
            ("waist_cord", 2.0),
        ),
    ),
    "back_crotch_length": Link(
        (
            ("crotch_length_posterior_omphalion", 1.0),
            (_WAIST, 1.0),
            (_NAVEL, -1.0),
            ("waist_cord", 1.0),
        ),
    ),
    "front_crotch_length": Link(
        (
            ("crotch_length_omphalion", 1.0),
            ("crotch_length_posterior_omphalion", -1.0),
            (_WAIST, 1.0),
            (_NAVEL, -1.0),
            ("waist_cord", 1.0),
        ),
    ),
    "back_neck_height": _same("back_neck_height"),
    "neck_girth": _same("neck_girth"),
    "neck_base_girth": _same("neck_base_girth"),
    "shoulder_length": _same("shoulder_length"),
    "across_back_width": _same("back_width_interscye_i"),
    "upper_arm_girth": _same("upper_arm_girth_flexed", sd=1.0),
    "wrist_girth": _same("wrist_girth", sd=0.25),
    "hand_girth": _same("hand_girth"),
    "outer_arm_length": _same("arm_length_outer"),
    "upper_arm_length": _same("upper_arm_length", sd=1.0),
    "back_neck_point_to_waist": Link(
        (
            ("back_neck_point_to_waist_omphalion", 1.0),
            (_WAIST, -1.0),
            (_NAVEL, 1.0),
            ("waist_cord", -1.0),
        ),
    ),
    "front_neck_point_to_waist": Link(
        (
            ("front_neck_point_to_waist_omphalion_sitting", 1.0),
            (_WAIST, -1.0),
            (_NAVEL, 1.0),
            ("waist_cord", -1.0),
        ),
        sd=1.0,
    ),
}
"""How each measure comes out of the survey; this is the one table between the two vocabularies."""

_NAVEL_GIRTH = "waist_girth_omphalion"
_BUST = "bust_or_chest_girth"


def _scye(by_rule: float, by_body: float, by_bust: float) -> Link:
    """Half the trade's rule, half the body's own drop from the nape to the armpit."""
    drop = (("back_neck_height", 0.5), ("axilla_height", -0.5))
    return Link(((_BUST, by_bust / 2), *drop), (by_rule + by_body) / 2, 1.3)


def _slope(by_drop: float, by_shoulder: float, plus: float) -> Link:
    """Degrees, from the drop of the shoulder point under the nape and the shoulder's length."""
    drop = (("back_neck_height", by_drop), ("acromion_height", -by_drop))
    return Link((*drop, ("shoulder_length", by_shoulder)), plus, 2.5)


UPPER_OF: dict[Figure, dict[str, Link]] = {
    "women": {
        "across_front_width": Link((("back_width_interscye_i", 1.0),), -2.9, 1.5),
        "scye_depth_length": _scye(13.7, 5.9, 1 / 12),
        "bust_point_width": Link(((_BUST, 0.125),), 7.6, 1.2),
        "side_neck_point_to_bust_point": Link(((_BUST, 0.18),), 10.2, 1.5),
        "shoulder_slope": _slope(4.61, -1.82, 20.02),
    },
    "men": {
        "across_front_width": Link((("back_width_interscye_i", 1.0),), -3.0, 1.7),
        "scye_depth_length": _scye(4.4, 6.7, 0.2),
        "bust_point_width": Link(((_BUST, 0.125),), 8.5, 1.5),
        "side_neck_point_to_bust_point": Link(((_BUST, 0.12),), 13.5, 2.0),
        "shoulder_slope": _slope(4.32, -2.0, 24.56),
    },
}
"""What no survey holds, by the trade's rules; figures differ.

Front width: as much narrower than the back as makes the UK size rule (from memory: W. Aldrich,
Metric Pattern Cutting for Women's Wear) true at the survey's mean bust; men's by judgement.
Scye depth: bust/12 + 13.7 (from memory: Bunka Fashion Series 1), men chest/5 + 4.4 (common
practice, no source), which exceed the surveyed plumb drop by 5.9 and 6.7 cm on the average: half by
the rule, half by the drop. Bust point: bust/8 + 7.6 across (from memory: Bunka Fashion Series 1);
down from the neck a line through the worked drafts of the bust blocks kept with the tests; men's by
judgement. Slope: the angle whose sine is the shoulder's drop, less 0.7 cm for the nape standing
over the side of the neck (assumed), over its length, told as a straight line about the mean.
"""

LINKS_OF: dict[Figure, dict[str, Link]] = {
    "women": {
        "waist_girth": Link(((_NAVEL_GIRTH, 0.3947), ("hip_girth", 0.4175)), -3.19, 3.9),
        "thigh_girth": _same("thigh_girth", sd=0.5),
        **UPPER_OF["women"],
    },
    "men": {
        "waist_girth": Link(((_NAVEL_GIRTH, 0.7131), ("hip_girth", 0.3506)), -12.25, 4.0),
        "thigh_girth": Link((("thigh_girth", 1.0),), -1.4, 1.4),
        **UPPER_OF["men"],
    },
}
"""The measures whose conversion differs by figure.

Source: natural waist from navel waist and hip, regressions on Heinz et al. (2003) with their
residual sd. Men's thighs: the two surveys hold them at other levels and differ by 2.8 cm on men of
the same stature, waist and hip; the middle is taken, and half of the difference as sd.
"""

KNEE_BY_BUILD: dict[Figure, Link] = {
    "women": Link(
        (("stature", 0.0804), (_NAVEL_GIRTH, 0.0131), ("hip_girth", 0.2448)), -2.52, 1.60
    ),
    "men": Link((("stature", 0.0597), (_NAVEL_GIRTH, 0.0096), ("hip_girth", 0.2227)), 3.96, 1.57),
}
"""Knee girth where the leg's own girths are not known: from stature, waist and hip.

Source: regressions on Heinz et al. (2003); their natural waist is put in terms of the navel's.
"""

KNEE_BY_LEG: dict[Figure, Link] = {
    "women": Link((("thigh_girth", 0.2186), ("calf_girth", 0.5017)), 5.20, 1.41),
    "men": Link((("thigh_girth", 0.1620), ("calf_girth", 0.4411)), 11.18, 1.49),
}
"""Knee girth where thigh and calf are known.

Source: regressions on Heinz et al. (2003); the men's constant is 11.63 there, for thighs that lie
2.8 cm under the survey's.
"""

READING_SD: dict[str, float] = {
    "waist_girth": 0.75,
    "hip_girth": 0.75,
    "bust_girth": 0.75,
    "thigh_girth": 0.5,
    "body_mass_kg": 1.0,
    "outside_leg_length": 0.5,
    "inside_leg_height": 0.5,
    "body_rise": 0.5,
    "total_crotch_length": 0.75,
    "front_crotch_length": 0.75,
    "back_crotch_length": 0.75,
    "side_waist_to_hip": 0.5,
    "across_back_width": 0.5,
    "across_front_width": 0.5,
    "scye_depth_length": 0.5,
    "bust_point_width": 0.5,
    "side_neck_point_to_bust_point": 0.5,
    "back_neck_point_to_waist": 0.5,
    "front_neck_point_to_waist": 0.5,
    "shoulder_slope": 1.5,
}
"""sd in cm of one reading of the tape: half of the difference at which one measures again."""

USUAL_READING_SD = 0.25
"""The same for girths of limbs, and lengths and heights from bone to bone."""


@dataclass(frozen=True, slots=True)
class Joint:
    """Measures together: names, means (cm, kg) and covariances; rows and columns as the names."""

    names: tuple[str, ...]
    mean: tuple[float, ...]
    covariance: tuple[tuple[float, ...], ...]

    def part(self, names: tuple[str, ...]) -> Joint:
        """The same for some of the measures, in the order asked for."""
        at = [self.names.index(n) for n in names]
        rows = [tuple([row[j] for j in at]) for row in [self.covariance[i] for i in at]]
        return Joint(names, tuple([self.mean[i] for i in at]), tuple(rows))


ESTIMABLE: tuple[str, ...] = (*LINKS, *LINKS_OF["women"], "knee_girth")
"""Every measure that the statistics can speak of."""


def links(figure: Figure, *, by_leg: bool) -> dict[str, Link]:
    """How each of them comes out of the survey; the knee by its own leg, or by the build."""
    knee = KNEE_BY_LEG if by_leg else KNEE_BY_BUILD
    return LINKS | LINKS_OF[figure] | {"knee_girth": knee[figure]}


def reading_sd(name: str) -> float:
    """How far one reading of that measure is off, as an sd in cm (kg)."""
    return READING_SD.get(name, USUAL_READING_SD)


@cache
def joint(figure: Figure, *, by_leg: bool = False) -> Joint:
    """The measures of this vocabulary together, for a figure; `by_leg` as in `links`."""
    survey = _surveyed(figure)
    table = links(figure, by_leg=by_leg)
    rows = [_row(link, survey.names) for link in table.values()]
    mean = (
        link.plus + sum(f * survey.mean[i] for i, f in row)
        for link, row in zip(table.values(), rows, strict=True)
    )
    covariance = [[_shared(a, b, survey.covariance) for b in rows] for a in rows]
    for i, link in enumerate(table.values()):
        covariance[i][i] += link.sd**2
    return Joint(tuple(table), tuple(mean), tuple(map(tuple, covariance)))


def _row(link: Link, fields: tuple[str, ...]) -> tuple[tuple[int, float], ...]:
    return tuple((fields.index(field), factor) for field, factor in link.terms)


def _shared(
    one: tuple[tuple[int, float], ...],
    other: tuple[tuple[int, float], ...],
    covariance: tuple[tuple[float, ...], ...],
) -> float:
    return sum(f * g * covariance[i][j] for i, f in one for j, g in other)


def _surveyed(figure: Figure) -> Joint:
    """The survey's own fields in cm, and the cord and the tape beside them."""
    text = files("drafting.body").joinpath("survey.json").read_text(encoding="utf-8")
    data: dict[str, Any] = json.loads(text)
    fields: list[str] = data["fields"]
    unit = [1.0 if field.endswith("_kg") else 0.1 for field in fields]
    numbers: Mapping[str, Any] = data["figures"][figure]
    mean = [m * u for m, u in zip(numbers["mean"], unit, strict=True)]
    lower: list[list[float]] = numbers["covariance"]
    count = len(fields)
    own = [
        [lower[max(i, j)][min(i, j)] * unit[i] * unit[j] for j in range(count)] + [0.0, 0.0]
        for i in range(count)
    ]
    added = (WAIST_CORD, CROTCH_TAPE)
    rows = [*own, [0.0] * count + [added[0][1] ** 2, 0.0], [0.0] * (count + 1) + [added[1][1] ** 2]]
    names = (*fields, "waist_cord", "crotch_tape")
    return Joint(names, (*mean, *(a[0] for a in added)), tuple(map(tuple, rows)))
