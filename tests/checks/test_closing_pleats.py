"""Pleats folded on paper: what is left of the edge, and where its marks come to lie."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from skirt_on_paper import LONG, WIDE, front

from drafting.checks import closed_edge, width
from drafting.checks.along import mouths, sewn_at
from drafting.checks.closing import angle_over, closed_point, closing
from drafting.geometry import IDENTITY, Point, polyline
from drafting.pattern import Dart, Edge, Pleat


def pleated(*pleats: Pleat):
    """The paper front, 24 cm wide, its waist walked from right to left, straight over all."""
    waist = polyline(
        Point(WIDE, LONG), *(p for one in pleats for p in (one.first, one.second)), Point(0, LONG)
    )
    edges = tuple(Edge("waist", waist) if e.name == "waist" else e for e in front().edges)
    levels = (("hip", Point(0, 40), Point(WIDE, 40)),)
    return replace(front(), edges=edges, darts=(), pleats=pleats, notches=(), levels=levels)


def pleat(right: float, intake: float, below: float | None = None, deep: float = LONG) -> Pleat:
    """A pleat of an intake in cm at the waist, another one at its lower end."""
    taper = (intake - (intake if below is None else below)) / 2
    left = right - intake
    one = polyline(Point(right, LONG), Point(right - taper, LONG - deep))
    return Pleat("waist", one, polyline(Point(left, LONG), Point(left + taper, LONG - deep)))


def test_pleats_side_by_side_shorten_the_waist_by_their_intakes():
    piece = pleated(pleat(20, 4), pleat(12, 6))
    assert closed_edge(piece, "waist").length() == pytest.approx(WIDE - 10)
    assert piece.sewn_length("waist") == pytest.approx(WIDE - 10)


def test_a_mark_behind_a_pleat_moves_with_the_cloth():
    piece = pleated(pleat(20, 4))
    assert sewn_at(piece, "waist", 10) == pytest.approx(6)
    assert closed_point(piece, "waist", 10).x == pytest.approx(WIDE - 6)


def test_the_waist_runs_straight_over_pleats_that_stand_square_to_it():
    piece = pleated(pleat(20, 4), pleat(12, 6))
    assert [angle_over(piece, m) for m in mouths(piece, "waist")] == pytest.approx([180, 180])


@pytest.mark.parametrize(("intake", "below", "deep"), [(4, 2, 20), (6, 5, 30), (3, 0.5, 15)])
def test_a_pleat_that_narrows_turns_the_cloth_as_a_dart_with_its_lines_would(intake, below, deep):
    """Two lines that narrow from `intake` to `below` meet where a dart of them has its point."""
    one = pleat(14, intake, below, deep)
    away = deep * intake / (intake - below)
    point = Point(14 - intake / 2, LONG - away)
    assert one.point.distance(point) < 1e-9
    dart = Dart("waist", one.first, one.second, point, point)
    for probe in (Point(2, LONG), Point(5, 10)):
        folded = closing(one).point(probe)
        assert folded.distance(closing(dart).point(probe)) < 1e-9
    turned = 2 * math.degrees(math.atan((intake - below) / 2 / deep))
    piece = pleated(one)
    assert angle_over(piece, mouths(piece, "waist")[0]) == pytest.approx(180 + turned, abs=1e-6)


def test_the_girth_at_a_level_leaves_out_what_the_pleats_take_there():
    piece = pleated(pleat(20, 6, 4, 20), pleat(10, 2))
    assert width(piece, "hip") == pytest.approx(WIDE - 4 - 2)


def test_which_way_a_pleat_lies_is_kept_when_the_edge_is_walked_the_other_way():
    one = pleat(14, 4)
    fold, placed = one.lines
    other = one.transformed(IDENTITY, swap=True)
    assert (other.first, other.second) == (one.second, one.first)
    assert other.lines == (fold, placed)
