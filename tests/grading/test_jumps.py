"""Rules that jump are found at the sizes where they jump, and no others are."""

from __future__ import annotations

import pytest
import tabard

from drafting.grading import grade_report, size_range
from drafting.grading.documents import grade_document


def report(*waists: float):
    bodies = tabard.bodies(*waists)
    return grade_report(size_range(tabard.GARMENT, bodies, tabard.Tabard(), tabard.FINISH))


def by_code(found, code):
    return [f for f in found.findings if f.code == code]


def test_even_rules_on_even_sizes_give_no_finding():
    assert report(68, 71, 74, 77).findings == ()


def test_points_are_followed_from_size_to_size():
    found = report(68, 72, 76)
    steps = {point.name: point.steps for point in found.points}
    assert found.origin == "foot"
    assert [s.x for s in steps["hem corner"]] == pytest.approx([2.0, 2.0])
    assert [s.y for s in steps["top"]] == pytest.approx([2.0, 2.0])


def test_a_jump_inside_the_range_is_placed_between_two_sizes():
    (found,) = by_code(report(70, 74, 78, 82, 86), "uneven_step")
    assert found.sizes == ("78", "82")
    assert set(found.names) == {"hem corner", "finished hem_width"}
    assert found.by == pytest.approx(tabard.JUMP)


def test_a_jump_at_the_end_of_the_range_is_placed_in_three_sizes():
    (found,) = by_code(report(70, 74, 78, 82), "uneven_step")
    assert found.sizes == ("74", "78", "82")


def test_sizes_that_step_unevenly_themselves_are_not_blamed_on_the_rules():
    found = report(66, 68, 72, 76)
    assert by_code(found, "uneven_step") == []
    (bodies,) = by_code(found, "uneven_sizes")
    assert bodies.sizes == ("66", "68", "72")
    assert set(bodies.names) == {"waist_girth", "hip_girth"}
    assert bodies.by == pytest.approx(2.0)


def test_a_jump_is_seen_through_sizes_that_step_unevenly():
    found = by_code(report(70, 74, 78, 84, 90), "uneven_step")
    assert any("hem corner" in f.names and f.by == pytest.approx(tabard.JUMP) for f in found)


def test_a_dart_that_appears_is_a_decision_that_changes_and_a_point_that_others_have_not():
    found = report(82, 86, 90, 94)
    (decision,) = by_code(found, "decision_changes")
    assert (decision.where, decision.sizes) == ("a dart", ("90", "94"))
    assert decision.message == "Is the waist over 90 cm? No for 90, yes for 94: a dart."
    (points,) = by_code(found, "points_differ")
    assert points.names == ("dart point",)


def test_a_limit_that_is_reached_is_told():
    found = report(63, 65, 67, 69)  # half of the hip passes 45 cm at a waist of 66
    (limit,) = by_code(found, "limit_reached")
    assert (limit.where, limit.sizes) == ("length", ("65", "67"))
    assert "1/2 hip" in limit.message


def test_the_report_for_clients_is_in_millimetres_with_y_down():
    told = grade_document(report(70, 74, 78, 82, 86))
    points = {point["name"]: point["steps"] for point in told["points"]}
    assert points["top"] == [[0.0, -20.0]] * 4
    assert points["hem corner"] == [[20.0, 0.0], [20.0, 0.0], [35.0, 0.0], [20.0, 0.0]]
    (finding,) = told["findings"]
    assert finding["by"] == 15.0
    assert finding["sizes"] == ["78", "82"]


def test_what_jumps_is_told_in_other_languages_with_its_sizes():
    found = report(82, 86, 90, 94)
    german = {f["code"]: f["message"] for f in grade_document(found, "de")["findings"]}
    assert "(90 – 94)" in german["decision_changes"]
    assert "Entscheidung" in german["decision_changes"]
    english = {f["code"]: f["message"] for f in grade_document(found)["findings"]}
    assert all(german[code] != english[code] for code in english)
