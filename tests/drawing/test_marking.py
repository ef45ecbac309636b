"""Marks on a piece: notches square to the edge, darts, holes, arrows, brackets."""

import math

import pytest
import shapely
from hand_made import band, finished, front, yoke
from rulers import area, sampled

from drafting.drawing import WORDS, Role, Stroke, Text
from drafting.drawing.marking import mark_piece


def strokes(piece, role, allowance=1.0):
    items = mark_piece(finished(piece, allowance), WORDS["en"])
    return [item for item in items if isinstance(item, Stroke) and item.role is role]


@pytest.mark.parametrize("draw", [front, yoke, band])
def test_each_notch_starts_on_the_cutting_line_and_runs_in_square(draw):
    piece = draw()
    cut_line = finished(piece).cut_line
    ring = shapely.LineString(sampled(cut_line, 1))
    found = strokes(piece, Role.NOTCH)
    assert len(found) == sum(n.count for n in piece.notches)
    for stroke in found:
        outer, inner = stroke.path.start, stroke.path.end
        assert ring.distance(shapely.Point(outer.x, outer.y)) < 0.01
        assert outer.distance(inner) == pytest.approx(0.4)
        assert area(cut_line).contains(shapely.Point(inner.x, inner.y))
        # square: the nearest point of the cutting line to the inner end is the outer end
        near = ring.interpolate(ring.project(shapely.Point(inner.x, inner.y)))
        assert math.hypot(near.x - outer.x, near.y - outer.y) < 0.02


def test_double_notches_lie_one_centimetre_apart():
    piece = band()
    middles = sorted(s.path.start.y for s in strokes(piece, Role.NOTCH))
    assert middles == pytest.approx([18.5, 19.5, 37.0])


@pytest.mark.parametrize(("allowance", "depth"), [(1.0, 0.4), (0.6, 0.3), (0.4, 0.15)])
def test_a_notch_stops_short_of_the_stitching_line(allowance, depth):
    for stroke in strokes(band(), Role.NOTCH, allowance):
        assert stroke.path.length() == pytest.approx(depth)


def test_dart_legs_run_from_the_point_through_the_seam_to_the_cutting_line():
    piece = front()
    (dart,) = piece.darts
    cut_line = shapely.LineString(sampled(finished(piece).cut_line, 1))
    ends = [p for s in strokes(piece, Role.DART) for p in (s.path.start, s.path.end)]
    assert sum(p.distance(dart.point) < 1e-9 for p in ends) == 2
    assert sum(cut_line.distance(shapely.Point(p.x, p.y)) < 1e-6 for p in ends) == 2
    assert sum(s.path.length() for s in strokes(piece, Role.DRILL)) == pytest.approx(1.2)


def test_stitching_is_drawn_edge_by_edge_and_a_fold_is_none():
    assert [s.name for s in strokes(front(), Role.STITCH)] == [
        "stitch-hem",
        "stitch-inseam",
        "stitch-crotch",
        "stitch-waist",
        "stitch-side",
    ]
    assert "stitch-fold" in [s.name for s in strokes(yoke(), Role.FOLD)]
    assert "stitch-fold" not in [s.name for s in strokes(yoke(), Role.STITCH)]


def test_a_fold_carries_a_bracket_inside_and_its_words():
    piece = yoke()
    items = mark_piece(finished(piece), WORDS["en"])
    assert "place on the fold" in [i.text for i in items if isinstance(i, Text)]
    cloth = area(piece.outline).buffer(1e-6)
    for stroke in strokes(piece, Role.FOLD):
        assert cloth.contains(shapely.LineString(sampled(stroke.path, 1)))


def test_the_grain_arrow_has_a_head_at_both_ends():
    piece = front()
    low, high = piece.grain
    tips = [s.path.segments[0].end for s in strokes(piece, Role.GRAIN) if len(s.path.segments) == 2]
    assert {(t.x, t.y) for t in tips} == {(low.x, low.y), (high.x, high.y)}


def test_lines_for_lengthening_are_double():
    found = strokes(front(), Role.LENGTHEN)
    assert len(found) == 4
    assert abs(found[0].path.start.y - found[1].path.start.y) == pytest.approx(0.3)
