"""Bodies whose left and right differ."""

import pytest

from drafting.body import prepare
from drafting.errors import MeasurementError

NEEDS = ("waist_girth", "hip_girth", "side_waist_to_hip", "body_rise", "outside_leg_length")
EVEN = {
    "waist_girth": 74.0,
    "hip_girth": 101.0,
    "side_waist_to_hip": 20.5,
    "body_rise": 27.5,
    "outside_leg_length": 103.0,
}
UNEVEN = EVEN | {
    "outside_leg_length": {"left": 102.2, "right": 103.8},
    "side_waist_to_hip": {"left": 20.0, "right": 21.0},
}


def test_each_side_has_its_own_body_and_the_plain_value_is_the_mean():
    body, findings = prepare(UNEVEN, "women", NEEDS)
    assert not body.even
    assert body.value("outside_leg_length") == pytest.approx(103.0)
    assert body.measured["outside_leg_length"].origin == "derived"
    assert body.side("left").value("outside_leg_length") == 102.2
    assert body.side("right").value("outside_leg_length") == 103.8
    assert body.side("right").value("side_waist_to_hip") == 21.0
    assert body.side("left").measured["outside_leg_length"].origin == "measured"
    assert body.side("left").value("body_rise") == 27.5
    assert body.side("left").even
    assert findings == ()


def test_a_body_measured_on_one_side_is_even():
    body, _ = prepare(EVEN, "women", NEEDS)
    assert body.even
    assert body.side("left") == body.side("right") == body


def test_alike_sides_are_even():
    same = EVEN | {"outside_leg_length": {"left": 103.0, "right": 103.0}}
    assert prepare(same, "women", NEEDS)[0].even


def test_sides_far_apart_are_told_and_farther_are_refused():
    apart = EVEN | {"outside_leg_length": {"left": 101.0, "right": 105.0}}
    assert "uneven_outside_leg_length" in {f.code for f in prepare(apart, "women", NEEDS)[1]}
    slip = EVEN | {"outside_leg_length": {"left": 93.0, "right": 104.0}}
    with pytest.raises(MeasurementError) as caught:
        prepare(slip, "women", NEEDS)
    assert caught.value.code == "contradicting_measures"


@pytest.mark.parametrize(
    ("name", "value", "code", "where"),
    [
        ("outside_leg_length", {"left": 40.0, "right": 103.0}, "out_of_range", ".left"),
        ("outside_leg_length", {"left": 103.0}, "incomplete_sides", ""),
        ("hip_girth", {"left": 101.0, "right": 101.0}, "one_value_only", ""),
    ],
)
def test_what_is_wrong_with_a_side_is_told_where_it_stands(name, value, code, where):
    with pytest.raises(MeasurementError) as caught:
        prepare(EVEN | {name: value}, "women", NEEDS)
    assert (caught.value.code, caught.value.where) == (code, f"measurements.{name}{where}")
    assert caught.value.also == ()
