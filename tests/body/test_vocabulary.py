"""The vocabulary: complete, readable, and in the standard's words where it has them."""

import pickle
from itertools import chain

import pytest

from drafting.body import ESTIMABLE, MEASURES, RANGES, Body, Measure
from drafting.body.lower import LowerBody
from drafting.body.upper import UpperBody
from drafting.errors import MissingMeasureError
from drafting.trace import Length

# Clauses of ISO 8559-1:2017 as quoted from its free preview or by two textbooks; terms whose
# clause nobody quoted stand with None.
CLAUSES = {
    "stature": "5.1.1", "body_mass_kg": "5.6.1", "inside_leg_height": "5.1.15",
    "waist_height": None, "hip_height": None, "knee_height": None, "ankle_height": None,
    "back_neck_height": None, "body_rise": None, "outside_leg_length": None,
    "waist_girth": "5.3.10", "top_hip_girth": "5.3.12", "hip_girth": "5.3.13",
    "maximum_hip_girth": "5.3.14", "thigh_girth": "5.3.20", "mid_thigh_girth": "5.3.21",
    "knee_girth": "5.3.22", "lower_knee_girth": "5.3.23", "calf_girth": "5.3.24",
    "minimum_leg_girth": "5.3.25", "ankle_girth": "5.3.26", "total_crotch_length": "5.4.18",
    "side_waist_to_hip": "5.4.21", "head_girth": "5.3.1", "neck_girth": "5.3.2",
    "neck_base_girth": "5.3.3",
    "bust_girth": "5.3.4", "chest_girth": "5.3.6", "upper_chest_girth": "5.3.7",
    "under_bust_girth": "5.3.8", "armscye_girth": "5.3.15", "upper_arm_girth": "5.3.16",
    "elbow_girth": "5.3.17", "forearm_girth": "5.3.18", "wrist_girth": "5.3.19",
    "hand_girth": "5.5.1", "bust_point_width": "5.2.3", "armscye_front_to_back_width": "5.2.4",
    "shoulder_length": "5.4.1", "back_shoulder_width": "5.4.2",
    "across_back_shoulder_width": "5.4.3", "across_back_width": "5.4.4",
    "back_neck_point_to_waist": "5.4.5", "scye_depth_length": "5.4.6",
    "across_front_width": "5.4.7", "front_neck_point_to_waist": "5.4.8",
    "side_neck_point_to_bust_point": "5.4.10", "side_neck_point_to_waist_front": "5.4.11",
    "upper_arm_length": "5.4.14", "lower_arm_length": "5.4.15",
    "back_neck_point_to_wrist_length": "5.4.17", "outer_arm_length": "5.7.8",
    "shoulder_slope": "5.6.2",
}  # fmt: skip
OUR_OWN = {"heel_ankle_girth", "lower_thigh_girth", "front_crotch_length", "back_crotch_length"}
DOUBTED = {
    "head_girth", "lower_knee_girth", "ankle_girth", "total_crotch_length", "elbow_girth",
    "forearm_girth", "across_back_width", "side_neck_point_to_waist_front",
}  # fmt: skip


def test_the_vocabulary_holds_the_standards_terms_and_a_few_of_our_own():
    assert set(MEASURES) == set(CLAUSES) | OUR_OWN


@pytest.mark.parametrize("name", CLAUSES)
def test_a_clause_is_the_quoted_one_and_says_where_it_is_not_sure(name):
    clause = MEASURES[name].iso
    assert clause is not None
    assert clause.startswith(CLAUSES[name] or "")
    assert bool(clause) == (CLAUSES[name] is not None)
    assert ("uncertain" in clause) == (name in DOUBTED)
    assert MEASURES[name].iso_term


def test_our_own_measures_claim_no_clause():
    assert all(MEASURES[n].iso is None and MEASURES[n].iso_term is None for n in OUR_OWN)


@pytest.mark.parametrize("measure", MEASURES.values(), ids=lambda m: m.name)
def test_every_measure_says_what_it_is_and_how_it_is_taken(measure):
    assert measure.title[0].isupper()
    assert len(measure.how) > 30
    assert measure.how.endswith(".")
    assert measure.word == measure.word.lower()
    assert measure.unit == {"angle": "deg", "mass": "kg"}.get(measure.kind, "cm")


@pytest.mark.parametrize("name", MEASURES)
def test_every_measure_has_a_range_and_says_where_it_comes_from(name):
    ranges = RANGES[name]
    assert 0 < ranges.hard[0] < ranges.hard[1]
    assert len(ranges.basis) > 10
    for figure in ("women", "men"):
        soft = ranges.soft(figure)
        assert soft is None or ranges.hard[0] < soft[0] < soft[1] < ranges.hard[1]
    assert (ranges.women is None) == (ranges.men is None)


def test_words_and_names_are_each_used_once():
    words = [m.word for m in MEASURES.values()]
    assert len(set(words)) == len(words)
    assert list(MEASURES) == [m.name for m in MEASURES.values()]
    assert set(RANGES) == set(MEASURES)
    assert set(ESTIMABLE) <= set(MEASURES)


def test_the_table_lists_every_measure_of_both_halves_of_the_body():
    listed = chain(vars(LowerBody).values(), vars(UpperBody).values())
    assert [m for m in listed if isinstance(m, Measure)] == list(MEASURES.values())


def test_only_what_hangs_beside_the_body_may_differ_by_side():
    by_side = {m.name for m in MEASURES.values() if m.by_side}
    assert by_side == {"outside_leg_length", "side_waist_to_hip"}


def test_a_body_reads_its_measures_as_lengths_that_know_their_word():
    body = Body.of({"hip_girth": 94, "waist_girth": 70})
    share = (body.hip_girth - body.waist_girth) / 4
    assert isinstance(body.hip_girth, Length)
    assert share == 6.0
    assert share.formula == "1/4 (hip - waist)"
    assert body.value("hip_girth") == 94.0
    assert type(body.value("hip_girth")) is float


def test_a_measure_that_the_body_lacks_is_named_with_the_way_to_take_it():
    body = Body.of({"hip_girth": 94})
    with pytest.raises(MissingMeasureError, match="body_rise") as caught:
        _ = body.body_rise
    assert caught.value.where == "measurements.body_rise"
    assert "chair" in caught.value.message
    assert not body.has("body_rise")


def test_a_body_can_be_sent_to_another_process():
    body = Body.of({"hip_girth": 94}, "men")
    again = pickle.loads(pickle.dumps(body))  # noqa: S301 - our own bytes
    assert again == body
    assert again.hip_girth.formula == "hip"
