"""Darts closed on paper, against circles and triangles."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from skirt_on_paper import DEEP, INTAKE, LONG, SEWN, WIDE, dart, edge, finished, front, skirt

from drafting.checks import CHECKS, closed_edge
from drafting.checks.along import mouths, nearest, sewn_at
from drafting.checks.closing import angle_over
from drafting.geometry import Line, Path, Point, bulged, curve, polyline
from drafting.pattern import Dart, Edge, Piece


def test_a_closed_edge_is_as_long_as_what_is_sewn_and_has_no_gap():
    path = closed_edge(front(), "waist")
    assert path.length() == pytest.approx(SEWN, abs=1e-6)
    for before, after in zip(path.segments, path.segments[1:], strict=False):
        assert before.end.distance(after.start) < 1e-6


def test_the_first_stretch_stays_and_the_second_turns_about_the_dart_point():
    path = closed_edge(front(), "waist")
    assert path.start == Point(WIDE, LONG)
    # the far end keeps its distance from the dart's point and turns by the dart's angle
    point = front().darts[0].point
    assert path.end.distance(point) == pytest.approx(Point(0, LONG).distance(point), abs=1e-9)
    opening = 2 * math.atan(INTAKE / 2 / DEEP)
    turned = (Point(0, LONG) - point).angle_to(path.end - point)
    assert math.radians(turned) == pytest.approx(opening, abs=1e-9)


@given(st.floats(0.5, 6), st.floats(5, 20))
def test_a_straight_waist_dips_over_a_closed_dart_by_its_angle(intake, deep):
    wedge = dart(12, intake, deep)
    waist = polyline(Point(WIDE, LONG), wedge.first, wedge.second, Point(0, LONG))
    piece = replace(front(), darts=(wedge,), edges=(Edge("waist", waist),))
    angle = angle_over(piece, mouths(piece, "waist")[0])
    assert angle == pytest.approx(180 + 2 * math.degrees(math.atan(intake / 2 / deep)), abs=1e-6)


def fan(*opened: float, radius: float = 30.0) -> Piece:
    """Sectors of a circle of 30° each, with wedges between them: darts that meet in the centre."""
    turned, segments, darts = 60.0, [], []
    for wedge in (*opened, 0.0):
        start, end = at_angle(radius, turned), at_angle(radius, turned + 30)
        segments.append(arc(radius, turned, turned + 30))
        turned += 30 + wedge
        if wedge:
            after = at_angle(radius, turned)
            segments.append(polyline(end, after))
            darts.append(Dart("waist", end, after, Point(0, 0), Point(0, 1)))
        assert start.distance(Point(0, 0)) == pytest.approx(radius)
    path = segments[0].joined(*segments[1:])
    return replace(front(), edges=(Edge("waist", path),), darts=tuple(darts))


def at_angle(radius: float, degrees: float) -> Point:
    return Point(radius * math.cos(math.radians(degrees)), radius * math.sin(math.radians(degrees)))


def arc(radius: float, start: float, end: float) -> Path:
    step = math.radians(end - start)
    handle = radius * 4 / 3 * math.tan(step / 4)
    a, b = at_angle(radius, start), at_angle(radius, end)
    leave = (a - Point(0, 0)).unit.left * handle
    arrive = (b - Point(0, 0)).unit.left * handle
    return curve(a, a + leave, b + -arrive, b)


@given(st.lists(st.floats(1, 20), min_size=1, max_size=3))
def test_a_fan_closes_to_one_arc_of_the_circle(wedges):
    piece = fan(*wedges)
    path = closed_edge(piece, "waist")
    spread = 30 * (len(wedges) + 1)
    assert path.length() == pytest.approx(30 * math.radians(spread), abs=1e-3)
    assert path.end.distance(at_angle(30, 60 + spread)) < 1e-6
    for p in path.flattened(0.01):
        assert p.distance(Point(0, 0)) == pytest.approx(30, abs=1e-3)
    for mouth in mouths(piece, "waist"):
        assert angle_over(piece, mouth) == pytest.approx(180, abs=0.01)


def test_a_corner_over_a_closed_dart_is_remarked_and_a_smooth_one_is_not():
    found = CHECKS["darts_smooth"](finished(skirt()))
    assert {(f.code, f.severity) for f in found} == {("dart_not_smooth", "warning")}
    assert found[0].measured == pytest.approx(180 + 2 * math.degrees(math.atan(1.5 / 12)), abs=1e-6)
    smooth = CHECKS["darts_smooth"](finished(skirt(fan(8.0))))
    assert [f.where for f in smooth] == ["back.waist"]


def test_legs_of_unequal_length_leave_a_step_in_the_closed_edge():
    crooked = Dart(
        "waist", Point(13.5, LONG), Point(10.5, LONG), Point(13.5, LONG - DEEP), Point(13, 50)
    )
    piece = replace(front(), darts=(crooked,))
    step = math.hypot(INTAKE, DEEP) - DEEP
    assert closed_edge(piece, "waist").length() == pytest.approx(SEWN + step, abs=1e-6)


def test_a_mark_behind_a_dart_moves_forward_by_its_mouth():
    assert sewn_at(front(), "waist", 5) == pytest.approx(5)
    assert sewn_at(front(), "waist", 20) == pytest.approx(20 - INTAKE)
    assert sewn_at(front(), "waist", 12) == pytest.approx(10.5)  # inside the mouth


@given(st.floats(0.02, 0.98), st.floats(-2, 2))
def test_the_nearest_place_on_a_curve_is_where_the_point_was_lifted_from_it(t, lifted):
    segment = bulged(Point(0, 0), Point(40, 0), 3)
    path = Path((segment, Line(segment.end, Point(60, 0))))
    foot = segment.at(t)
    at, gap = nearest(path, foot + segment.tangent(t).left * lifted)
    assert gap == pytest.approx(abs(lifted), abs=1e-6)
    assert path.at(at).distance(foot) < 1e-4


def test_the_nearest_place_on_a_straight_edge_is_the_foot():
    path = edge("e", (0, 0), (10, 0), (10, 10)).path
    assert nearest(path, Point(4, 3)) == pytest.approx((4, 3))
    assert nearest(path, Point(12, 7)) == pytest.approx((17, 2))
    assert nearest(path, Point(-3, -4)) == pytest.approx((0, 5))


def test_each_dart_turns_what_lies_behind_it_about_its_own_point():
    two = (dart(18, 2, 10), dart(6, 3, 14))
    corners = (p for d in two for p in (d.first, d.second))
    waist = Edge("waist", polyline(Point(WIDE, LONG), *corners, Point(0, LONG)))
    path = closed_edge(replace(front(), edges=(waist,), darts=two), "waist")
    assert len(path.segments) == 3  # no stroke was needed to bridge a gap
    assert path.length() == pytest.approx(WIDE - 2 - 3, abs=1e-6)
    turned = sum(2 * math.degrees(math.atan(d.intake / 2 / d.length)) for d in two)
    assert path.start_tangent.angle_to(path.end_tangent) == pytest.approx(turned, abs=1e-6)
