"""Roots, fitted curves and moves of the plane."""

from __future__ import annotations

import math

import pytest
from closed_forms import cubics, points
from hypothesis import assume, given
from hypothesis import strategies as st

from drafting.geometry import (
    IDENTITY,
    Path,
    Point,
    Vector,
    bulged,
    corner_of,
    direction,
    mirror,
    root,
    scale,
    shift,
    smooth,
    through_ray,
    turn,
    with_handles,
)


@pytest.mark.parametrize("accuracy", [1e-3, 1e-6, 1e-9, 1e-12])
@pytest.mark.parametrize(
    ("f", "low", "high", "answer"),
    [
        (lambda x: x * x - 2, 0, 2, math.sqrt(2)),
        (math.cos, 0, 3, math.pi / 2),
        (lambda x: math.exp(x) - 10, 0, 5, math.log(10)),
        (lambda x: x**9, -1, 1.5, 0.0),
        (lambda x: 3 - x, 0, 10, 3.0),
    ],
)
def test_a_root_is_found_to_the_accuracy_asked(f, low, high, answer, accuracy):
    found = root(f, low, high, accuracy)
    assert found is not None
    assert abs(f(found)) < accuracy or abs(found - answer) < accuracy


def test_no_change_of_sign_is_no_root():
    assert root(lambda x: x * x + 1, -1, 1) is None


def test_a_root_at_a_bound_is_the_bound():
    assert root(lambda x: x, 0, 1) == 0
    assert root(lambda x: x - 1, 0, 1) == 1


def test_a_step_that_jumps_over_zero_is_closed_in_upon_and_ends():
    found = root(lambda x: -1.0 if x < 0.3 else 1.0, 0, 1)
    assert found == pytest.approx(0.3, abs=1e-6)


def test_few_calls_are_enough_for_a_smooth_function():
    calls = []

    def f(x):
        calls.append(x)
        return math.tanh(x) - 0.4

    root(f, -3, 6)
    assert len(calls) <= 16


@given(points, points, st.floats(-5, 5))
def test_a_bulge_stands_off_its_chord_by_what_was_asked(a, b, left):
    assume(a.distance(b) > 0.1)
    middle = bulged(a, b, left).at(0.5)
    chord = (b - a).unit
    assert chord.cross(middle - a) == pytest.approx(left, abs=1e-9)
    assert (middle - a).dot(chord) == pytest.approx(a.distance(b) / 2, abs=1e-9)


@given(st.floats(-170, 170), st.floats(-170, 170), st.floats(0.1, 0.9))
def test_a_smooth_curve_leaves_and_arrives_as_told(leave, arrive, tension):
    c = smooth(Point(0, 0), direction(leave), Point(10, 0), direction(arrive), tension)
    assert c.tangent(0).angle_to(direction(leave)) < 1e-6
    assert c.tangent(1).angle_to(direction(arrive)) < 1e-6


@pytest.mark.parametrize("distance", [2.6, 3.0, 3.4])
def test_a_curve_through_a_ray_cuts_it_at_the_distance(distance):
    def draw(k):
        return with_handles(Point(10, 0), Vector(-1, 0), Point(0, 10), Vector(0, 1), k)

    found = through_ray(draw, Point(0, 0), Vector(1, 1), distance, 2.0, 9.5)
    assert found is not None
    hit = min((found[1].at(k / 5000) for k in range(5001)), key=lambda p: abs(p.x - p.y))
    assert hit.distance(Point(0, 0)) == pytest.approx(distance, abs=5e-3)


def test_a_ray_that_no_curve_of_the_family_reaches_gives_none():
    def draw(k):
        return with_handles(Point(10, 0), Vector(-1, 0), Point(0, 10), Vector(0, 1), k)

    assert through_ray(draw, Point(0, 0), Vector(1, 1), 30.0, 2.0, 9.5) is None
    assert through_ray(draw, Point(50, 50), Vector(1, 1), 3.0, 2.0, 9.5) is None


def test_the_corner_of_a_curve_is_where_its_end_tangents_cross():
    assert corner_of(Point(0, 5), Vector(0, -1), Point(4, 0), Vector(1, 0)) == Point(0, 0)
    assert corner_of(Point(0, 5), Vector(1, 0), Point(4, 0), Vector(1, 0)) is None


moves = st.one_of(
    st.builds(shift, st.floats(-50, 50), st.floats(-50, 50)),
    st.builds(turn, st.floats(-360, 360), points),
    st.builds(lambda p, d: mirror(p, direction(d)), points, st.floats(0, 360)),
)


@given(moves, cubics)
def test_a_move_without_scaling_keeps_lengths_and_its_inverse_undoes_it(move, c):
    path = Path((c,))
    moved = path.transformed(move)
    assert moved.length() == pytest.approx(path.length(), abs=1e-5)
    back = moved.transformed(move.inverse)
    assert back.start.distance(path.start) < 1e-9
    assert back.segments[0].at(0.5).distance(c.at(0.5)) < 1e-9


@given(moves, moves, points)
def test_one_move_after_another_is_the_one_and_then_the_other(first, second, p):
    assert first.then(second).point(p).distance(second.point(first.point(p))) < 1e-9
    assert IDENTITY.then(first).point(p) == first.point(p)


@given(points, points, st.floats(0, 360))
def test_mirroring_twice_is_standing_still_and_the_axis_stays(p, on, degrees):
    m = mirror(on, direction(degrees))
    assert m.point(m.point(p)).distance(p) < 1e-9
    assert m.point(on).distance(on) < 1e-9
    assert m.turns_over
    assert not turn(degrees, on).turns_over


def test_scale_has_one_factor_unless_two_are_given():
    assert scale(2).point(Point(3, 4)) == Point(6, 8)
    assert scale(2, -1).point(Point(3, 4)) == Point(6, -4)
