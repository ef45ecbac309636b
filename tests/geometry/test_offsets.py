"""Lines beside lines, against closed forms and against shapely's distance to a fine polyline."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from closed_forms import arc, cubics, fair_curves, fine_line, parabola
from hypothesis import assume, example, given, settings
from hypothesis import strategies as st
from shapely import Point as Dot

from drafting.geometry import OFFSET_TOLERANCE, Cubic, Path, Point, offset, polyline
from drafting.geometry.offset import beside


@pytest.mark.parametrize("left", [-4, -1, 0.5, 3, 9])
def test_beside_a_circle_runs_a_circle(left):
    # to the left of a counter-clockwise circle is its inside
    for s in offset(arc(10, 350, 24), left):
        for k in range(11):
            assert s.at(k / 10).distance(Point(0, 0)) == pytest.approx(10 - left, abs=0.0021)


@pytest.mark.parametrize("tolerance", [0.1, 0.01, OFFSET_TOLERANCE, 1e-4, 1e-6])
@pytest.mark.parametrize("left", [-4.0, -1.0, 2.0])
def test_beside_a_parabola_runs_its_parallel_to_the_tolerance_asked(left, tolerance):
    # the parallel of y = a x² at u: (u - 2 a u d / w, a u² + d / w), w = sqrt(1 + 4 a² u²)
    a, half = 0.03, 15
    drawn = offset(Path((parabola(a, half),)), left, tolerance)
    w = [math.sqrt(1 + (2 * a * u) ** 2) for u in (-half, half)]
    ends = [
        Point(u - 2 * a * u * left / v, a * u * u + left / v)
        for u, v in zip((-half, half), w, strict=True)
    ]
    assert drawn[0].start.distance(ends[0]) < 1e-9
    assert drawn[-1].end.distance(ends[1]) < 1e-9
    line = fine_line(Path((parabola(a, half),)), 1e-9)
    for s in drawn:
        for k in range(21):
            p = s.at(k / 20)
            assert line.distance(Dot(p.x, p.y)) == pytest.approx(abs(left), abs=tolerance + 1e-7)


@pytest.mark.parametrize("tolerance", [0.1, 0.01, 0.001])
def test_a_coarser_tolerance_takes_no_more_curves(tolerance):
    path = Path((parabola(0.1, 8),))
    assert len(offset(path, -3, tolerance)) <= len(offset(path, -3, tolerance / 10))


def test_a_gentle_seam_needs_few_curves():
    # a side seam from waist to knee: 60 cm, 2 cm of shape
    seam = Path((Cubic(Point(0, 0), Point(2, 20), Point(2, 40), Point(0, 60)),))
    assert len(offset(seam, -1.0)) <= 2


@settings(max_examples=80)
@given(fair_curves(), st.sampled_from([-4, -1.5, -1, -0.6, 0.6, 1, 2.5]))
def test_beside_a_fair_curve_every_point_lies_at_the_distance_from_its_own_foot(c, left):
    """Square out from the curve, by the allowance, at points chosen by the curve alone."""
    drawn = Path(offset(Path((c,)), left))
    line = fine_line(drawn, 1e-7)
    for k in range(1, 20):
        t = k / 20
        n = c.tangent(t).left
        p = c.at(t) + n * left
        assert line.distance(Dot(p.x, p.y)) < OFFSET_TOLERANCE * 1.5


@given(fair_curves(), st.floats(-4, 4))
def test_the_segments_beside_a_smooth_curve_join_end_to_end(c, left):
    drawn = offset(Path((c,)), left)
    for a, b in pairwise(drawn):
        assert a.end.distance(b.start) < 1e-9


def bend(c, t):
    """Signed curvature by the textbook: x'y'' - y'x'' over speed cubed, from differences."""
    h = 1e-4
    before, here, after = (c.at(t + k * h) for k in (-1, 0, 1))
    dx, dy = (after.x - before.x) / 2 / h, (after.y - before.y) / 2 / h
    ddx, ddy = (
        (after.x - 2 * here.x + before.x) / h / h,
        (after.y - 2 * here.y + before.y) / h / h,
    )
    return (dx * ddy - dy * ddx) / math.hypot(dx, dy) ** 3


OFFSETS = st.sampled_from([-4, -1.5, -1, -0.6, 0.6, 1, 2.5])


@settings(max_examples=150)
@given(fair_curves(), OFFSETS)
def test_beside_a_seam_nowhere_as_tight_as_its_allowance_the_line_never_crosses_itself(c, left):
    """The seams of a garment; fair as they are, none of these runs back beside itself."""
    assume(max(left * bend(c, k / 200) for k in range(1, 200)) < 0.95)
    line = fine_line(Path(offset(Path((c,)), left)), 1e-5)
    if not line.is_simple:  # two far parts of one seam may come near each other: then shapely too
        assert not fine_line(Path((c,)), 1e-5).offset_curve(left).is_simple


@settings(max_examples=150)
@given(st.one_of(fair_curves(), cubics), OFFSETS)
@example(Cubic(Point(0, 0), Point(9, 9), Point(-3, 9), Point(6, 0)), 1)
def test_each_turning_back_beside_a_tight_bend_is_found(c, left):
    """Where the offset runs back, told by curvature at 30 places, a piece is told to run back."""
    places = [k / 31 for k in range(1, 31)]
    legs = [c.start.distance(c.leaving), c.leaving.distance(c.arriving), c.arriving.distance(c.end)]
    assume(min(legs) > 0.5)
    tight = [left * bend(c, t) > 1 for t in places]
    changes = sum(a != b for a, b in pairwise(tight))
    ways = [onward for onward, _ in beside(c, left)]
    assert sum(a != b for a, b in pairwise(ways)) >= changes


def test_beside_a_corner_the_segments_part_and_are_left_to_the_caller():
    one, two = offset(polyline(Point(0, 0), Point(5, 0), Point(5, 5)), -1)
    assert one.end == Point(5, -1)
    assert two.start == Point(6, 0)


def test_where_the_curve_is_tighter_than_the_distance_the_offset_turns_back_between_segments():
    bend = arc(1.0, 180, 2)
    drawn = offset(Path((bend.segments[0], *bend.segments[1:])), 2.0)
    # the centre lies 1 cm away, so the offset of 2 cm is a circle of 1 cm run the other way
    for s in drawn:
        assert s.at(0.5).distance(Point(0, 0)) == pytest.approx(1.0, abs=0.003)


def test_no_offset_is_the_line_itself():
    path = Path((parabola(0.1, 8),))
    assert offset(path, 0.0) == path.segments
