"""Length, area, box and position along a curve, against closed forms and shapely."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from closed_forms import (
    arc,
    cubics,
    fair_curves,
    fine_line,
    parabola,
    parabola_length,
    points,
    quarter,
)
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon

from drafting.geometry import Cubic, Line, Path, Point, curve, polyline, shift, turn


@pytest.mark.parametrize("accuracy", [1e-2, 1e-4, 1e-6, 1e-9])
@pytest.mark.parametrize(("a", "half"), [(0.001, 40), (0.05, 20), (0.5, 10), (5, 4)])
def test_the_length_of_a_parabola_is_its_closed_form_to_the_accuracy_asked(a, half, accuracy):
    assert abs(parabola(a, half).length(accuracy) - parabola_length(a, half)) < accuracy


@pytest.mark.parametrize("degrees", [15, 90, 200, 340])
@pytest.mark.parametrize("radius", [0.5, 6, 80])
def test_the_length_of_a_circle_drawn_finely_is_radius_times_angle(radius, degrees):
    drawn = arc(radius, degrees, steps=60)
    assert drawn.length() == pytest.approx(radius * math.radians(degrees), abs=1e-6)


@given(cubics)
def test_even_a_wild_curve_with_cusps_is_as_long_as_shapely_says_to_a_hundredth_mm(c):
    assert c.length() == pytest.approx(fine_line(Path((c,)), 1e-8).length, abs=1e-3)


@given(fair_curves())
def test_the_length_of_a_fair_curve_is_shapelys_on_a_fine_polyline(c):
    assert c.length() == pytest.approx(fine_line(Path((c,)), 1e-8).length, abs=2e-5)


def test_the_area_of_a_circle_drawn_finely_is_pi_r_squared_and_counter_clockwise_is_positive():
    circle = arc(10, 360, steps=60)
    assert circle.area() == pytest.approx(math.pi * 100, abs=1e-6)
    assert circle.reversed().area() == pytest.approx(-math.pi * 100, abs=1e-6)


def test_the_area_under_a_parabola_is_two_thirds_of_its_box():
    segment = parabola(0.1, 6)
    loop = Path((segment, Line(segment.end, segment.start)))
    assert abs(loop.area()) == pytest.approx(2 / 3 * 12 * 3.6, abs=1e-12)


@given(points, points, fair_curves(), st.floats(-180, 180))
def test_area_is_shapelys_wherever_the_piece_lies(p, q, c, degrees):
    loop = Path((c, Line(c.end, q), Line(q, c.start)))
    moved = loop.transformed(turn(degrees, p)).transformed(shift(17, -30))
    ring = Polygon(fine_line(loop, 1e-6).coords).exterior
    xy = ring.coords
    shoelace = sum(a[0] * b[1] - b[0] * a[1] for a, b in pairwise(xy)) / 2
    assert loop.area() == pytest.approx(shoelace, abs=1e-3)
    assert moved.area() == pytest.approx(loop.area(), abs=1e-9)


@given(cubics)
def test_the_box_of_a_curve_touches_the_curve_on_all_four_sides(c):
    x0, y0, x1, y1 = fine_line(Path((c,)), 1e-4).bounds
    assert c.bounds() == pytest.approx((x0, y0, x1, y1), abs=2e-4)
    low_x, low_y, high_x, high_y = c.bounds()
    assert low_x <= x0 + 1e-9
    assert low_y <= y0 + 1e-9
    assert high_x >= x1 - 1e-9
    assert high_y >= y1 - 1e-9


@given(fair_curves(), st.floats(0, 1))
def test_the_point_at_a_distance_lies_there_on_shapelys_line(c, share):
    path = Path((Line(Point(-5, 3), c.start), c))
    distance = share * path.length()
    found = fine_line(path, 1e-8).interpolate(distance)
    assert path.at(distance).distance(Point(found.x, found.y)) < 1e-4
    assert path.distance_of(*path.locate(distance)) == pytest.approx(distance, abs=1e-6)


@settings(deadline=None, max_examples=50)
@given(fair_curves(), st.floats(0.001, 0.999))
def test_a_split_line_joined_again_is_the_line(c, share):
    path = Path((Line(Point(-5, 3), c.start), c, Line(c.end, Point(80, 1))))
    head, tail = path.split(share * path.length())
    again = head.joined(tail)
    assert head.end.distance(tail.start) < 1e-9
    assert head.length() == pytest.approx(share * path.length(), abs=1e-6)
    assert again.length() == pytest.approx(path.length(), abs=1e-6)
    before, after = fine_line(path), fine_line(again)
    for k in range(21):
        assert before.distance(after.interpolate(k / 20, normalized=True)) < 1e-6
        assert after.distance(before.interpolate(k / 20, normalized=True)) < 1e-6


@given(fair_curves(), st.floats(0, 1), st.floats(0, 1))
def test_a_stretch_between_two_places_is_as_long_as_the_way_between_them(c, one, two):
    path = Path((Line(Point(-5, 3), c.start), c, Line(c.end, Point(80, 1))))
    low, high = sorted((one * path.length(), two * path.length()))
    if high - low < 1e-3:
        return
    part = path.stretch(path.locate(low), path.locate(high))
    assert part.length() == pytest.approx(high - low, abs=1e-5)
    assert part.start.distance(path.at(low)) < 1e-6
    assert part.end.distance(path.at(high)) < 1e-6


@pytest.mark.parametrize("tolerance", [0.1, 0.005, 0.0005])
@given(c=cubics)
def test_a_flattened_curve_strays_no_farther_than_the_tolerance(tolerance, c):
    fine = fine_line(Path((c,)), 1e-4)
    drawn = fine_line(polyline(*Path((c,)).flattened(tolerance)))
    steps = [fine.interpolate(k / 40, normalized=True) for k in range(41)]
    assert max(drawn.distance(p) for p in steps) <= tolerance + 2e-4


def test_the_tangent_is_right_where_a_handle_lies_on_its_end():
    c = Cubic(Point(0, 0), Point(0, 0), Point(4, 3), Point(8, 3))
    assert c.tangent(0).angle == pytest.approx(math.degrees(math.atan2(3, 4)))
    d = Cubic(Point(0, 0), Point(4, 3), Point(8, 3), Point(8, 3))
    assert d.tangent(1).angle == pytest.approx(0)


def test_curvature_of_a_finely_drawn_circle_is_one_over_its_radius_and_left_is_positive():
    c = arc(7, 10, steps=1).segments[0]
    assert isinstance(c, Cubic)
    assert c.curvature(0.5) == pytest.approx(1 / 7, rel=1e-4)
    assert c.reversed().curvature(0.5) == pytest.approx(-1 / 7, rel=1e-4)


def test_a_quarter_circle_by_one_cubic_strays_by_the_published_0_027_percent():
    # Riskus 2006, "Approximation of a cubic Bézier curve by circular arcs": 0.0273 % of the radius
    c = quarter(1)
    out = max(c.at(k / 200).distance(Point(0, 0)) for k in range(201)) - 1
    assert out == pytest.approx(2.73e-4, abs=2e-6)


def test_lines_that_do_not_meet_are_not_joined():
    with pytest.raises(ValueError, match="do not meet"):
        polyline(Point(0, 0), Point(1, 0)).joined(curve(*[Point(2, k) for k in range(4)]))
