"""Measures that hardly belong to one body, and that few honest bodies are troubled."""
# ruff: noqa: T201 - what was measured on real people is to be read with pytest -s

import numpy as np
import pytest

from drafting.body import ESTIMABLE, measurement_check, prepare
from drafting.body.plausibility import BUILDS, doubts
from drafting.body.survey import joint
from drafting.errors import MeasurementError

NEEDS = ("waist_girth", "hip_girth", "side_waist_to_hip", "body_rise", "outside_leg_length")
GOOD = {
    "waist_girth": 74.0,
    "hip_girth": 101.0,
    "body_rise": 27.5,
    "outside_leg_length": 104.0,
    "side_waist_to_hip": 20.5,
    "stature": 165.0,
    "knee_height": 45.5,
}


@pytest.mark.parametrize("figure", ["women", "men"])
def test_few_real_people_are_troubled(people, figure):
    """Each person with nine measures; whoever is doubted would be asked to measure again."""
    found = [doubts(person, figure) for person in people[figure]]
    doubted = sum(bool(d) for d in found) / len(found)
    refused = sum(any(abs(one.off) > 5 for one in d) for d in found)
    print(f"{figure}: {doubted:.1%} doubted, {refused} of {len(found)} refused")
    assert doubted < 0.10
    assert refused == 0


@pytest.mark.parametrize("figure", ["women", "men"])
def test_no_body_drawn_from_the_statistics_is_refused(figure):
    together = joint(figure)
    names = [n for n in together.names if n not in {"front_crotch_length", "back_crotch_length"}]
    part = together.part(tuple(names))
    random = np.random.default_rng(2017)
    draws = random.multivariate_normal(part.mean, part.covariance, 200)
    taken = ("waist_girth", "hip_girth", "outside_leg_length", "body_rise", "side_waist_to_hip")
    bodies = [{n: d[names.index(n)] for n in taken} for d in draws]
    found = [doubts(body, figure) for body in bodies]
    assert not [d for d in found if any(abs(one.off) > 5 for one in d)]
    assert sum(bool(d) for d in found) / len(found) < 0.03


def test_good_measures_raise_no_doubt():
    _, findings = prepare(GOOD, "women", NEEDS)
    assert findings == ()


@pytest.mark.parametrize(
    ("name", "slip"),
    [
        ("outside_leg_length", 140.0),  # 104 read as 140
        ("stature", 195.0),  # 165 read as 195
        ("knee_height", 54.5),  # 45.5 typed the other way round
    ],
)
def test_a_slip_within_the_possible_is_refused_and_named_first(name, slip):
    with pytest.raises(MeasurementError) as caught:
        prepare(GOOD | {name: slip}, "women", NEEDS)
    assert caught.value.code == "unusual_body"
    assert caught.value.where == f"measurements.{name}"
    assert caught.value.received == slip
    assert caught.value.allowed[0] < GOOD[name] < caught.value.allowed[1]
    assert "again" in caught.value.message
    assert "accept_unusual" in caught.value.message


def test_an_unusual_body_is_drafted_where_the_client_insists():
    order = GOOD | {"knee_height": 54.5}
    body, findings = prepare(order, "women", NEEDS, accept_unusual=True)
    assert body.value("knee_height") == 54.5
    assert {f.severity for f in findings if f.code == "unlikely_knee_height"} == {"warning"}


def test_between_three_and_five_sd_is_a_warning():
    _, findings = prepare(GOOD | {"knee_height": 50.2}, "women", NEEDS)
    first = next(f for f in findings if f.code == "unlikely_knee_height")
    assert first.severity == "warning"
    assert first.allowed[1] < 50.2
    assert "outside leg" in first.message


@pytest.mark.parametrize("figure", ["women", "men"])
@pytest.mark.parametrize("hip", [60, 75, 90, 105, 120, 140, 165, 190, 210, 230])
@pytest.mark.parametrize("less", [-10, 0, 15, 30, 45])
def test_no_hip_from_60_to_230_is_refused_for_its_waist(figure, hip, less):
    waist = min(max(hip - less, 45), 220)
    order = {
        "waist_girth": waist,
        "hip_girth": hip,
        "stature": 165.0 if figure == "women" else 176.0,
    }
    body, _ = prepare(order, figure, NEEDS)
    assert body.value("hip_girth") == hip


# NHANES 2017 to March 2020, waist at the hip bone over hip, percentiles 0.5, 50 and 99.5.
RATIOS = {"women": (106.7, 0.725, 0.903, 1.072), "men": (102.7, 0.781, 0.977, 1.145)}


@pytest.mark.parametrize("figure", ["women", "men"])
def test_waists_that_99_of_100_civilians_have_raise_no_doubt(figure):
    hip, *ratios = RATIOS[figure]
    for ratio in ratios:
        waist = hip * ratio - BUILDS[figure].lower
        assert doubts({"waist_girth": waist, "hip_girth": hip}, figure) == ()


@pytest.mark.parametrize(("waist", "hip"), [(150.0, 80.0), (50.0, 120.0)])
def test_a_waist_that_goes_with_no_hip_is_doubted(waist, hip):
    (doubt,) = doubts({"waist_girth": waist, "hip_girth": hip}, "women")
    assert (doubt.name, doubt.beside) == ("hip_girth", ("waist_girth",))


@pytest.mark.parametrize(
    ("changes", "where"),
    [
        ({"inside_leg_height": 74.0}, "body_rise"),  # 104 less 74 is 30, the rise was 27.5
        ({"waist_height": 101.5}, "outside_leg_length"),
        ({"hip_height": 81.0}, "outside_leg_length"),
        (
            {"total_crotch_length": 74.0, "front_crotch_length": 33.0, "back_crotch_length": 38.0},
            "total_crotch_length",
        ),
        (
            {"outer_arm_length": 56.0, "upper_arm_length": 33.0, "lower_arm_length": 26.0},
            "outer_arm_length",
        ),
    ],
)
def test_what_was_measured_twice_and_disagrees_is_told(changes, where):
    _, findings = measurement_check(GOOD | changes, "women")
    first = next(f for f in findings if f.code.startswith("disagreeing_"))
    assert (first.where, first.severity) == (where, "warning")
    assert not first.allowed[0] <= first.measured <= first.allowed[1]


def test_what_was_measured_twice_and_agrees_is_not():
    twice = {
        "inside_leg_height": 76.8,
        "waist_height": 103.5,
        "total_crotch_length": 71.0,
        "front_crotch_length": 32.5,
        "back_crotch_length": 38.0,
    }
    _, findings = measurement_check(GOOD | twice, "women")
    assert not [f for f in findings if f.code.startswith("disagreeing_")]


def test_legs_whose_difference_is_no_rise_contradict_each_other():
    order = {"waist_girth": 74.0, "hip_girth": 101.0, "outside_leg_length": 90.0}
    with pytest.raises(MeasurementError) as caught:
        prepare(order | {"inside_leg_height": 80.0}, "women", NEEDS)
    assert caught.value.code == "contradicting_measures"
    assert "inside_leg_height" in caught.value.message


def test_the_same_measures_in_another_order_give_the_same_doubts():
    order = GOOD | {"knee_height": 51.5, "calf_girth": 46.0, "thigh_girth": 50.0}
    turned = dict(reversed(order.items()))
    one, other = doubts(order, "women"), doubts(turned, "women")
    assert [d.name for d in one] == [d.name for d in other]
    assert [d.off for d in one] == pytest.approx([d.off for d in other])
    assert len(one) >= 2
    assert set(order) <= set(ESTIMABLE)
