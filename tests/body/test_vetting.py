"""From an order's measures to a body: every trouble is told, at once, and without numbers."""

import logging
import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drafting.body import MEASURES, RANGES, Body, prepare
from drafting.errors import MeasurementError, MissingMeasureError

NEEDS = ("waist_girth", "hip_girth", "side_waist_to_hip", "body_rise", "outside_leg_length")
GOOD = {
    "waist_girth": 74.3,
    "hip_girth": 101.7,
    "side_waist_to_hip": 20.6,
    "body_rise": 27.4,
    "outside_leg_length": 103.8,
}


def troubles(measures, figure="women", needs=NEEDS, **more):
    with pytest.raises(MeasurementError) as caught:
        prepare(measures, figure, needs, **more)
    return (caught.value, *caught.value.also)


def test_good_measures_make_a_body_without_a_remark():
    body, findings = prepare(GOOD, "women", NEEDS)
    assert {name: body.value(name) for name in NEEDS} == GOOD
    assert all(body.measured[name].origin == "measured" for name in NEEDS)
    assert findings == ()


@pytest.mark.parametrize(
    ("name", "value", "hint"),
    [
        ("hip_girth", 40.0, '"in"'),
        ("outside_leg_length", 41.0, '"in"'),
        ("hip_girth", 1017.0, '"mm"'),
        ("waist_girth", 743.0, '"mm"'),
        # cm that were declared to be inches arrive 2.54 times too large
        ("hip_girth", 101.7 * 2.54, '"cm"'),
        ("outside_leg_length", 103.8 * 2.54, '"cm"'),
        # cm that were declared to be mm arrive ten times too small
        ("hip_girth", 10.17, '"cm"'),
    ],
)
def test_a_slip_of_the_unit_is_told_with_the_way_out(name, value, hint):
    (trouble,) = troubles({**GOOD, name: value})
    assert trouble.code == "out_of_range"
    assert trouble.where == f"measurements.{name}"
    assert trouble.received == value
    assert trouble.allowed == RANGES[name].hard
    assert hint in trouble.message


def test_a_value_that_no_unit_mends_gets_no_hint():
    (trouble,) = troubles({**GOOD, "hip_girth": 5000.0})
    assert "unit" not in trouble.message


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf, 0.0, -100.0])
def test_what_is_no_size_of_a_body_is_out_of_range(value):
    (trouble,) = troubles({**GOOD, "hip_girth": value})
    assert (trouble.code, trouble.where) == ("out_of_range", "measurements.hip_girth")


@pytest.mark.parametrize(
    ("changes", "where", "also_named"),
    [
        ({"waist_girth": 140.0, "hip_girth": 65.0}, "waist_girth", "hip_girth"),
        ({"body_rise": 45.0, "outside_leg_length": 88.0}, "body_rise", "outside_leg_length"),
        ({"side_waist_to_hip": 34.9, "body_rise": 20.0}, "side_waist_to_hip", "body_rise"),
        ({"knee_girth": 60.0, "thigh_girth": 55.0}, "knee_girth", "thigh_girth"),
        ({"ankle_girth": 40.0, "calf_girth": 36.0}, "ankle_girth", "calf_girth"),
        ({"inside_leg_height": 105.0}, "inside_leg_height", "outside_leg_length"),
        ({"inside_leg_height": 51.0}, "outside_leg_length", "inside_leg_height"),
        ({"thigh_girth": 103.0}, "thigh_girth", "hip_girth"),
        ({"stature": 122.0}, "outside_leg_length", "stature"),
        ({"total_crotch_length": 46.0, "body_rise": 31.0}, "body_rise", "total_crotch_length"),
    ],
)
def test_measures_that_cannot_both_be_right_are_both_named(changes, where, also_named):
    found = [t for t in troubles(GOOD | changes) if t.code == "contradicting_measures"]
    trouble = next(t for t in found if t.where == f"measurements.{where}")
    assert also_named in trouble.message
    assert "again" in trouble.message


@pytest.mark.parametrize(
    "changes",
    [
        {"waist_girth": 112.0, "hip_girth": 103.0},  # a waist larger than the hip
        {"side_waist_to_hip": 24.0, "body_rise": 24.0},  # hip line on the crotch line
        {"side_waist_to_hip": 25.0, "body_rise": 23.5},  # and under it
        {"waist_girth": 60.0, "hip_girth": 105.0},
    ],
)
def test_rare_but_real_bodies_are_not_refused(changes):
    body, _ = prepare(GOOD | changes, "women", NEEDS)
    assert body.value("hip_girth") == (GOOD | changes)["hip_girth"]


def test_all_troubles_of_an_order_are_told_at_once():
    order = {"hip_girth": 40.0, "body_rise": 4.0, "knee_girth": 60.0, "thigh_girth": 50.0}
    found = troubles(order)
    assert [(t.code, t.where.removeprefix("measurements.")) for t in found] == [
        ("out_of_range", "hip_girth"),
        ("out_of_range", "body_rise"),
        ("contradicting_measures", "knee_girth"),
        ("missing_measure", "waist_girth"),
        ("missing_measure", "outside_leg_length"),
    ]
    assert all(t.also == () for t in found[1:])


def test_a_needed_measure_that_statistics_do_not_know_is_missing():
    (trouble,) = troubles(GOOD, needs=(*NEEDS, "under_bust_girth"))
    assert isinstance(trouble, MissingMeasureError)
    assert trouble.where == "measurements.under_bust_girth"
    assert MEASURES["under_bust_girth"].how in trouble.message


def test_waist_and_hip_are_always_to_be_measured():
    found = troubles({"stature": 168.0})
    assert [t.where for t in found] == ["measurements.waist_girth", "measurements.hip_girth"]


def test_without_any_length_the_leg_is_missing_and_the_ways_to_mend_it_are_told():
    (trouble,) = troubles({"waist_girth": 74.0, "hip_girth": 101.0})
    assert trouble.where == "measurements.outside_leg_length"
    assert {"outside_leg_length", "inside_leg_height", "stature"} <= set(trouble.allowed)


def test_an_unusual_value_is_drafted_with_a_warning():
    _, findings = prepare({**GOOD, "waist_girth": 151.0, "hip_girth": 158.0}, "women", NEEDS)
    first = next(f for f in findings if f.code == "unusual_waist_girth")
    assert (first.severity, first.where, first.measured) == ("warning", "waist_girth", 151.0)
    assert first.allowed == (57.9, 150.0)


def test_no_message_repeats_a_number_of_the_body():
    order = {**GOOD, "hip_girth": 1017.3, "knee_girth": 60.7, "thigh_girth": 55.9}
    found = troubles(order)
    text = " ".join(repr(t) + str(t) + str(t.args) for t in found)
    assert not [value for value in order.values() if str(value) in text]


def test_a_logged_trouble_holds_no_number_of_the_body(caplog):
    order = {**GOOD, "hip_girth": 1017.3}
    try:
        prepare(order, "women", NEEDS)
    except MeasurementError:
        with caplog.at_level(logging.ERROR):
            logging.getLogger("any").exception("refused")
    assert "1017" not in caplog.text
    assert "hip" in caplog.text.lower()


@st.composite
def measures(draw):
    names = draw(st.lists(st.sampled_from(list(MEASURES)), max_size=8, unique=True))
    some = {name: draw(st.floats(*RANGES[name].hard)) for name in names}
    basic = {name: draw(st.floats(*RANGES[name].hard)) for name in NEEDS}
    return basic | some if draw(st.booleans()) else some


@settings(max_examples=150, deadline=None)
@given(measures(), st.sampled_from(["women", "men"]), st.booleans())
def test_possible_measures_give_a_body_or_a_trouble_that_names_a_measure(order, figure, accept):
    try:
        body, findings = prepare(order, figure, NEEDS, accept_unusual=accept)
    except MeasurementError as trouble:
        for one in (trouble, *trouble.also):
            assert one.where.removeprefix("measurements.") in MEASURES
            assert one.code in {
                "contradicting_measures",
                "missing_measure",
                *(() if accept else ("unusual_body",)),
            }
        return
    assert isinstance(body, Body)
    for name in (*NEEDS, *order):
        low, high = RANGES[name].hard
        assert low <= body.value(name) <= high
    assert all(f.where in MEASURES for f in findings)
