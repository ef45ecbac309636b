"""Where lines meet: against closed forms and shapely."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from closed_forms import arc, coordinates, cubics, fair_curves, fine_line, parabola, points, quarter
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from shapely import LineString
from shapely import Point as Dot

from drafting.geometry import (
    Cubic,
    Line,
    Path,
    Point,
    Vector,
    bulged,
    crossing_with_line,
    crossings,
    direction,
    distance_to,
    foot,
    meet,
    nearest,
    polyline,
    self_crossing,
    shift,
    turn,
)


def test_two_straight_lines_meet_where_their_equations_say():
    # y = 2 x + 1 and y = -x + 7 meet at (2, 5)
    assert meet(Point(0, 1), Vector(1, 2), Point(7, 0), Vector(-1, 1)) == Point(2, 5)
    assert meet(Point(0, 0), Vector(1, 2), Point(3, 1), Vector(-2, -4)) is None


@given(points, points, st.floats(0, 360))
def test_the_foot_of_a_perpendicular_is_square_to_the_line_and_nearest(p, on, degrees):
    along = direction(degrees)
    f = foot(p, on, along)
    assert abs((p - f).dot(along)) < 1e-9
    assert abs((f - on).cross(along)) < 1e-9


@pytest.mark.parametrize("height", [0.001, 0.5, 3.59])
def test_a_level_line_cuts_a_parabola_at_the_roots_of_its_equation(height):
    path = Path((parabola(0.1, 6),))
    hits = crossing_with_line(path, Point(0, height), Vector(1, 0))
    root = math.sqrt(height / 0.1)
    assert [path.segments[i].at(t).x for i, t in hits] == pytest.approx([-root, root], abs=1e-9)


def test_a_line_that_only_touches_a_curve_touches_it_once():
    hits = crossing_with_line(Path((parabola(0.1, 6),)), Point(0, 0), Vector(1, 0))
    assert [t for _, t in hits] == pytest.approx([0.5], abs=1e-9)


def test_a_line_just_clear_of_a_curve_does_not_meet_it():
    assert crossing_with_line(Path((parabola(0.1, 6),)), Point(0, -1e-6), Vector(1, 0)) == ()


def test_a_line_along_a_stroke_is_no_crossing():
    assert crossing_with_line(polyline(Point(0, 0), Point(9, 0)), Point(3, 0), Vector(1, 0)) == ()


@given(cubics, points, st.floats(0, 180))
def test_a_line_cuts_a_curve_as_often_as_it_cuts_its_fine_polyline(c, on, degrees):
    along = direction(degrees)
    path = Path((c,))
    hits = crossing_with_line(path, on, along)
    for i, t in hits:
        assert abs((path.segments[i].at(t) - on).cross(along)) < 1e-8
    fine = fine_line(path, 1e-4)
    heights = [(Point(x, y) - on).cross(along) for x, y in fine.coords]
    assume(min(abs(h) for h in heights) > 0.0)
    changes = sum((a > 0) != (b > 0) for a, b in pairwise(heights))
    near_turn = len(hits) - changes
    assert near_turn in (0, 1, 2)  # a polyline may miss a pair of roots between two of its corners
    if near_turn:
        assert min(abs(h) for h in heights) < 1e-2


@settings(max_examples=60, deadline=None)
@given(fair_curves(), fair_curves(), coordinates, coordinates, st.floats(-180, 180))
def test_two_curves_cross_where_their_fine_polylines_cross(a, b, x, y, degrees):
    other = b.transformed(turn(degrees, Point(0, 0))).transformed(shift(x, y / 5))
    first, second = Path((a,)), Path((other,))
    # curves a hundredth of a millimetre apart all along count as lying on top of each other
    assume(fine_line(first, 1e-3).hausdorff_distance(fine_line(second, 1e-3)) > 0.01)
    found = crossings(first, second)
    for c in found:
        assert a.at(c.first[1]).distance(other.at(c.second[1])) < 1e-6
    one, two = fine_line(first, 1e-6), fine_line(second, 1e-6)
    common = one.intersection(two)
    assume(common.length == 0)  # lines on top of each other are no crossings
    expected = list(getattr(common, "geoms", [] if common.is_empty else [common]))
    for p in expected:
        assert min(c.point.distance(Point(p.x, p.y)) for c in found) < 0.02
    clear = [
        c
        for c in found
        if a.tangent(c.first[1]).angle_to(other.tangent(c.second[1])) % 180 > 1
        and 1e-3 < c.first[1] < 0.999
        and 1e-3 < c.second[1] < 0.999
    ]
    assert len(clear) <= len(expected)


def test_two_circles_cross_at_the_radical_line():
    # radii 5 and 4, centres 6 apart: x = (36 + 25 - 16) / 12 = 3.75
    first = arc(5, 360, 48)
    second = arc(4, 360, 48).transformed(shift(6, 0))
    found = sorted((c.point.y, c.point.x) for c in crossings(first, second))
    y = math.sqrt(25 - 3.75**2)
    assert [x for _, x in found] == pytest.approx([3.75, 3.75], abs=1e-6)
    assert [h for h, _ in found] == pytest.approx([-y, y], abs=1e-6)


@pytest.mark.parametrize("degrees", [0, 10, 45, 117])
@pytest.mark.parametrize(("a", "b"), [(0.1, -0.1), (0.1, 0.3), (0.02, -0.5)])
def test_two_curves_that_touch_have_one_point_in_common(a, b, degrees):
    one = Path((parabola(a, 6),)).transformed(turn(degrees, Point(3, 1)))
    two = Path((parabola(b, 4),)).transformed(turn(degrees, Point(3, 1)))
    (found,) = crossings(one, two)
    touch = Path((Line(Point(0, 0), Point(1, 0)),)).transformed(turn(degrees, Point(3, 1))).start
    assert found.point.distance(touch) < 1e-4


def test_two_circles_that_touch_inside_have_one_point_in_common():
    first = Path((quarter(5),))
    second = Path((quarter(3),)).transformed(shift(2, 0))
    (found,) = crossings(first, second)
    assert found.point.distance(Point(5, 0)) < 1e-4


def test_curves_that_miss_each_other_by_a_hundredth_of_a_millimetre_do_not_meet():
    one, two = (
        Path((bulged(Point(0, 0), Point(20, 0), -1.0),)),
        polyline(Point(0, 1.001), Point(20, 1.001)),
    )
    assert crossings(one, two) == ()
    above = Path((bulged(Point(0, 2.001), Point(20, 2.001), 1.0),))
    assert crossings(one, above) == ()


def test_a_curve_on_top_of_itself_is_no_crossing():
    path = Path((quarter(5),))
    assert crossings(path, path) == ()


def test_two_curves_that_meet_at_their_ends_meet_there():
    a, b = quarter(5), quarter(5).transformed(turn(90, Point(0, 0)))
    (found,) = crossings(Path((a,)), Path((b,)))
    assert found.first == (0, pytest.approx(1))
    assert found.second == (0, pytest.approx(0))


def test_a_wave_and_its_mirror_image_cross_at_both_ends_and_in_the_middle():
    wave = Cubic(Point(-6, 0), Point(-2, 9), Point(2, -9), Point(6, 0))
    image = Cubic(Point(-6, 0), Point(-2, -9), Point(2, 9), Point(6, 0))
    found = crossings(Path((wave,)), Path((image,)))
    assert [c.point.x for c in found] == pytest.approx([-6, 0, 6], abs=1e-9)
    assert [c.point.y for c in found] == pytest.approx([0, 0, 0], abs=1e-9)


def test_nine_crossings_of_two_waves_are_all_found():
    wave = Cubic(Point(0, 0), Point(30, 10), Point(-20, 10), Point(10, 0))
    other = wave.transformed(turn(90, Point(5, 4)))
    one, two = Path((wave,)), Path((other,))
    expected = fine_line(one).intersection(fine_line(two))
    found = crossings(one, two)
    assert len(found) == len(expected.geoms) == 9
    for c in found:
        assert min(Dot(c.point.x, c.point.y).distance(p) for p in expected.geoms) < 1e-3


@given(fair_curves(), points)
def test_the_nearest_point_of_a_curve_is_as_near_as_shapelys(c, p):
    path = Path((c, Line(c.end, Point(70, 30))))
    i, t, away = nearest(path, p)
    assert away == pytest.approx(fine_line(path, 1e-7).distance(Dot(p.x, p.y)), abs=1e-3)
    assert path.segments[i].at(t).distance(p) == pytest.approx(away, abs=1e-12)
    assert distance_to(path, path.segments[i].at(t)) < 1e-7


def test_a_figure_of_eight_crosses_itself_and_a_square_does_not():
    eight = polyline(Point(0, 0), Point(4, 4), Point(4, 0), Point(0, 4), Point(0, 0))
    hit = self_crossing(eight.segments)
    assert hit is not None
    (i, t), (j, u) = hit
    assert eight.segments[i].at(t).distance(Point(2, 2)) < 1e-9
    assert eight.segments[j].at(u).distance(Point(2, 2)) < 1e-9
    square = polyline(Point(0, 0), Point(4, 0), Point(4, 4), Point(0, 4), Point(0, 0))
    assert self_crossing(square.segments) is None


@given(st.lists(points, min_size=4, max_size=8))
def test_a_closed_polyline_crosses_itself_where_shapely_says_that_it_is_not_simple(corners):
    ring = LineString([(p.x, p.y) for p in (*corners, corners[0])])
    sides = [LineString(s) for s in zip(ring.coords, ring.coords[1:], strict=False)]
    assume(all(s.length > 1e-2 for s in sides))
    gap = min(
        a.distance(b) for n, a in enumerate(sides) for b in sides[n + 2 : len(sides) - (n == 0)]
    )
    assume(gap == 0 or gap > 1e-6)
    assume(not any(a.intersection(b).length for a in sides for b in sides if a is not b))
    found = self_crossing(polyline(*corners, corners[0]).segments)
    assert (found is not None) == (gap == 0)
