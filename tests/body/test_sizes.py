"""Bodies by size."""

from itertools import pairwise

import pytest

from drafting.body import ESTIMABLE, RANGES, SIZE_TABLES, prepare, size_body, size_findings

# Steps of the standard as seen in a copy: women's bust and waist by 4 then 6, hip by 4 then 5; men
# by 4 (then 6, from memory).
STEPS = {"women": ({4, 6}, {4, 6}, {4, 5}), "men": ({4, 6}, {4, 6}, None)}
ALL = [(table, size) for table in SIZE_TABLES for size in SIZE_TABLES[table].sizes]


@pytest.mark.parametrize("table", SIZE_TABLES)
def test_girths_go_in_the_standards_steps(table):
    regular = [s.label for n, s in SIZE_TABLES[table].sizes.items() if n.endswith("-regular")]
    for name, steps in zip(("bust_girth", "waist_girth", "hip_girth"), STEPS[table], strict=True):
        found = {b[name] - a[name] for a, b in pairwise(regular)}
        assert found <= steps if steps else all(1 <= step <= 4 for step in found)


@pytest.mark.parametrize("table", SIZE_TABLES)
def test_what_is_from_memory_says_so(table):
    assert SIZE_TABLES[table].from_memory
    assert any("from memory" in source for source in SIZE_TABLES[table].sources)


@pytest.mark.parametrize(("table", "size"), ALL)
def test_every_size_is_a_whole_body_that_an_order_could_have_given(table, size):
    body = size_body(table, size)
    assert set(body.measured) == set(ESTIMABLE)
    assert {one.origin for one in body.measured.values()} == {"size table"}
    needs = ("waist_girth", "hip_girth", "side_waist_to_hip", "body_rise", "outside_leg_length")
    prepare({name: body.value(name) for name in needs}, body.figure, needs)
    for name, one in body.measured.items():
        low, high = RANGES[name].hard
        assert low < one.value < high


def test_only_what_the_label_says_is_taken_for_known():
    body = size_body("women", "88-regular")
    assert [n for n in body.measured if body.taken(n)] == [
        "bust_girth", "waist_girth", "hip_girth", "stature",
    ]  # fmt: skip
    assert body.measured["total_crotch_length"].sd > 2
    assert body.measured["total_crotch_length"].sources


def test_an_ordinary_size_is_near_what_the_trade_uses():
    # from memory: W. Aldrich, Metric Pattern Cutting for Women's Wear, size 12 (hip 96): body rise
    # 28, waist to hip 20.6, waist to floor 104 for a height of about 164
    short, regular = (size_body("women", f"88-{tall}") for tall in ("short", "regular"))
    assert regular.hip_girth == 96
    assert regular.body_rise == pytest.approx(28.0, abs=1.0)
    assert regular.side_waist_to_hip == pytest.approx(20.6, abs=1.0)
    half_way = (short.outside_leg_length + regular.outside_leg_length) / 2
    assert half_way == pytest.approx(104.0, abs=1.5)


def test_taller_bodies_have_longer_legs_and_the_same_girths():
    short, tall = size_body("men", "96-short"), size_body("men", "96-tall")
    assert tall.outside_leg_length - short.outside_leg_length == pytest.approx(0.71 * 16, abs=0.5)
    assert tall.thigh_girth == pytest.approx(short.thigh_girth, abs=1.5)


def test_an_unknown_size_is_a_key_error():
    with pytest.raises(KeyError):
        size_body("women", "89-regular")


@pytest.mark.parametrize("table", SIZE_TABLES)
def test_a_draft_by_a_size_from_memory_says_so(table):
    (note,) = size_findings(table)
    assert (note.severity, note.where) == ("note", "size")
    assert "from memory" in note.message
