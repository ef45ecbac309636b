"""The tape on drawn lines, against closed forms."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st
from skirt_on_paper import DEEP, HIP, INTAKE, LONG, WIDE, dart, edge, front, skirt, with_edge

from drafting.checks import corner_angle, finished_measurements, measure, width
from drafting.geometry import Path, Point, bulged, polyline, turn
from drafting.pattern import (
    AngleBetween,
    CombinedLength,
    CornerDepth,
    CrossShare,
    Edge,
    EdgeLength,
    Girth,
    LevelDepth,
    Measuring,
    Number,
    Piece,
    Role,
    Want,
)


def at_level(piece: Piece, y: float, name: str = "high") -> Piece:
    return replace(piece, levels=((name, Point(0, y), Point(WIDE, y)), *piece.levels))


def test_girth_is_the_sum_of_the_widths_times_the_copies():
    assert measure(Girth("hip", ("front", "back")), skirt()) == pytest.approx(4 * WIDE, abs=1e-9)
    assert measure(Girth("hip", ("front",), copies=1), skirt()) == pytest.approx(WIDE, abs=1e-9)


@given(st.floats(0.01, DEEP - 0.01))
def test_a_dart_that_reaches_the_level_is_closed_when_sewn(below):
    piece = at_level(front(), LONG - below)
    taken = INTAKE * (1 - below / DEEP)  # similar triangles
    assert width(piece, "high") == pytest.approx(WIDE - taken, abs=1e-6)


def test_a_dart_that_ends_above_the_level_takes_nothing():
    assert width(at_level(front(), LONG - DEEP - 0.01), "high") == pytest.approx(WIDE, abs=1e-9)


@given(st.floats(1, 59), st.floats(-3, 3))
def test_width_follows_the_curve_of_the_side(y, out):
    side = Edge("side", Path((bulged(Point(WIDE, 0), Point(WIDE, LONG), -out),)), kind="side")
    piece = replace(at_level(with_edge(front(), side), y), darts=())
    parabola = 4 * out * (y / LONG) * (1 - y / LONG)
    assert width(piece, "high") == pytest.approx(WIDE + parabola, abs=1e-6)


def test_width_at_a_straight_hem_and_at_the_waist_is_that_of_the_edge():
    assert width(front(), "hem") == pytest.approx(WIDE, abs=1e-4)
    assert width(at_level(front(), LONG), "high") == pytest.approx(WIDE - INTAKE, abs=1e-4)


def test_a_level_beside_a_hem_by_a_rounding_error_is_measured_at_the_hem():
    assert width(at_level(front(), -1e-6), "high") == pytest.approx(WIDE, abs=1e-4)


def test_width_leaves_out_what_lies_outside_the_outline():
    # a U: two legs of 5 cm with 14 cm of air between them, from y = 0 to 30
    piece = Piece(
        name="u",
        title="U",
        cut=(),
        edges=(
            edge(
                "u", (0, 0), (5, 0), (5, 30), (19, 30), (19, 0), (24, 0), (24, 40), (0, 40), (0, 0)
            ),
        ),
        grain=(Point(2, 1), Point(2, 39)),
        levels=(("low", Point(0, 10), Point(24, 10)), ("top", Point(0, 35), Point(24, 35))),
    )
    assert width(piece, "low") == pytest.approx(10.0, abs=1e-9)
    assert width(piece, "top") == pytest.approx(24.0, abs=1e-9)


def test_width_is_measured_on_the_outline_and_not_on_the_level_line_drawn():
    short = replace(front(), levels=(("hip", Point(3, HIP), Point(20, HIP)),))
    assert width(short, "hip") == pytest.approx(WIDE, abs=1e-9)


def test_a_level_that_is_not_drawn_or_does_not_cross_is_refused():
    with pytest.raises(KeyError, match="no knee line"):
        width(front(), "knee")
    with pytest.raises(ValueError, match="does not cross"):
        width(at_level(front(), 70), "high")


def patch(*corners: tuple[float, float]) -> Piece:
    """A piece that lies in the front's frame and fills what is cut away of it."""
    return replace(front(), name="patch", edges=(edge("round", *corners),), darts=(), levels=())


def shown(level: float, *corners: tuple[float, float]) -> float:
    plain = replace(at_level(front(), level), darts=())
    pattern = skirt(plain, patch(*corners))
    return measure(Girth("high", ("front",), 1, under=("patch",)), pattern) - WIDE


@given(st.floats(30.01, 49.99))
def test_of_a_piece_under_the_front_only_what_stands_out_counts(level):
    # a triangle from x = 20 to 29 at its foot, at y = 30; its tip lies at (20, 50)
    wide = 9 * (50 - level) / 20
    assert shown(level, (20, 30), (29, 30), (20, 50), (20, 30)) == pytest.approx(
        max(0.0, 20 + wide - WIDE), abs=1e-6
    )


def test_a_piece_that_the_level_passes_by_or_that_lies_wholly_under_shows_nothing():
    beyond = (20, 30), (29, 30), (29, 50), (20, 50), (20, 30)
    under = (5, 30), (20, 30), (20, 50), (5, 50), (5, 30)
    assert shown(29.9, *beyond) == shown(50.1, *beyond) == shown(40, *under) == 0
    assert shown(40, *beyond) == pytest.approx(5, abs=1e-6)


@pytest.mark.parametrize("level", [30, 50])
def test_a_piece_that_ends_straight_on_the_level_shows_its_end(level):
    corners = (20, 30), (29, 30), (29, 50), (20, 50), (20, 30)
    assert shown(level, *corners) == pytest.approx(5, abs=1e-6)


def test_two_pieces_that_share_an_edge_neither_overlap_nor_leave_a_gap():
    assert shown(40, (WIDE, 30), (29, 30), (29, 50), (WIDE, 50), (WIDE, 30)) == pytest.approx(5)
    hollow = (20, 30), (29, 30), (29, 50), (27, 50), (27, 35), (26, 35), (26, 50), (20, 50)
    assert shown(40, *hollow, (20, 30)) == pytest.approx(4, abs=1e-6)  # 24 to 26, 27 to 29


def test_edge_length_leaves_the_dart_mouth_out():
    assert measure(EdgeLength("front", ("waist",), 2), skirt()) == pytest.approx(42, abs=1e-6)
    assert measure(EdgeLength("front", ("waist", "side")), skirt()) == pytest.approx(81, abs=1e-6)


def test_combined_length_takes_differences():
    parts = ((1.0, EdgeLength("front", ("side",))), (-1.0, EdgeLength("back", ("waist",), 2)))
    assert measure(CombinedLength(parts), skirt()) == pytest.approx(60 - 42, abs=1e-6)


@given(st.floats(20, 340), st.floats(0, 360))
def test_the_angle_at_a_corner_is_measured_inside_the_piece(angle, turned):
    # the corner at the origin; the piece lies to the left of both edges
    by = turn(turned, Point(0, 0))
    comes = polyline(
        Point(10 * math.cos(math.radians(angle)), 10 * math.sin(math.radians(angle))), Point(0, 0)
    )
    goes = polyline(Point(0, 0), Point(10, 0))
    edges = (Edge("comes", comes.transformed(by)), Edge("goes", goes.transformed(by)))
    piece = replace(front(), edges=edges)
    assert corner_angle(piece, "comes", "goes") == pytest.approx(angle, abs=1e-6)


def test_angles_that_meet_when_sewn_add_up():
    corners = (("front", "side", "waist"), ("back", "waist", "side"))
    assert measure(AngleBetween(corners), skirt()) == pytest.approx(180, abs=1e-9)


def test_an_angle_on_a_curve_is_that_of_its_tangent():
    # a parabola that stands 3 cm out over a chord of 60 leaves it at atan(4 · 3 / 60)
    side = Edge("side", Path((bulged(Point(WIDE, 0), Point(WIDE, LONG), -3),)))
    angle = corner_angle(with_edge(front(), side), "hem", "side")
    assert angle == pytest.approx(90 + math.degrees(math.atan(12 / 60)), abs=1e-9)


def test_an_angle_between_edges_that_do_not_meet_is_refused():
    with pytest.raises(ValueError, match="does not start where"):
        corner_angle(front(), "hem", "waist")


@given(st.floats(1, 23))
def test_cross_share_is_the_way_from_the_middle_of_the_level_to_the_crease(x):
    piece = replace(front(), grain=(Point(x, 5), Point(x, 45)))
    drafted = measure(CrossShare("front", "hip"), skirt(piece))
    assert drafted == pytest.approx(abs(x - WIDE / 2), abs=1e-9)


def test_level_depth_is_the_way_down_from_line_to_line():
    assert measure(LevelDepth("front", "hip", "hem"), skirt()) == pytest.approx(HIP, abs=1e-9)


def test_corner_depth_is_the_way_from_an_edges_end_down_to_a_line():
    ends, starts = (CornerDepth("front", "side", "hip", at_start=at) for at in (False, True))
    assert measure(ends, skirt()) == pytest.approx(LONG - HIP, abs=1e-9)
    assert measure(starts, skirt()) == pytest.approx(-HIP, abs=1e-9)


def test_every_way_to_measure_is_tried_here():
    tried = {value for value in globals().values() if isinstance(value, type)}
    assert set(get_args(Measuring)) <= tried


def test_a_number_stands_for_itself():
    assert measure(Number(3.5, "measured by the chapter"), skirt()) == 3.5


def test_finished_measurements_are_told_by_name():
    told = Want(
        name="waist_girth", measuring=EdgeLength("front", ("waist",), 4), wanted=0, low=0, high=0
    )
    pattern = replace(skirt(), finished_measurements=(told,))
    assert finished_measurements(pattern) == (("waist_girth", pytest.approx(84.0, abs=1e-6)),)


def test_a_second_dart_takes_its_own_share():
    piece = at_level(replace(front(), darts=(dart(18, 2, 10), dart(6, 3, 12))), LONG - 5)
    assert width(piece, "high") == pytest.approx(WIDE - 1.0 - 1.75, abs=1e-6)
    assert piece.edges[0].role is Role.HEM
