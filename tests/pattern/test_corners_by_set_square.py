"""Each corner of a cutting line is what it says, measured on the drawn line."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from drawn import across, beyond, prove, vertices
from paper_pieces import SEWING, finished, half_leg, hook_panel, piece, polygon

from drafting.geometry import Cubic, Path, Point, direction, polyline, shift, turn
from drafting.pattern import CornerRule, Edge, Role

SQUARE = (Point(0, 0), Point(20, 0), Point(20, 30), Point(0, 30))


def test_corners_of_edges_sewn_together_are_mitred():
    net = finished(polygon(*SQUARE), seam=1.5)
    assert {c.rule for c in net.corners} == {CornerRule.MITRE}
    for n in range(4):
        prove(net, n)
    assert net.cut_line.area() == pytest.approx(23 * 33)


def test_a_rectangle_on_the_fold_has_no_allowance_beyond_it():
    roles = (Role.SEAM, Role.FOLD, Role.SEAM, Role.SEAM)
    cut = finished(polygon(*SQUARE, roles=roles), seam=1.5)
    assert [c.rule.value for c in cut.corners] == ["fold", "fold", "mitre", "mitre"]
    for n in range(4):
        prove(cut, n)
    assert cut.cut_line.area() == pytest.approx(21.5 * 33)
    assert cut.allowance("e1") == 0


@pytest.mark.parametrize("angle", [60, 80, 90, 100, 120])
def test_a_neckline_that_meets_the_fold_at_any_angle_ends_on_the_fold(angle):
    top = Point(20, 30)
    end = top + direction(90 + angle).left * 0 + direction(270 - angle) * 25
    corners = (Point(0, 0), Point(20, 0), top, end)
    roles = (Role.SEAM, Role.FOLD, Role.SEAM, Role.SEAM)
    cut = finished(polygon(*corners, roles=roles), seam=1.2)
    prove(cut, 1)
    # closed form: the fold is carried on by allowance / sin(angle)
    tip = max(p.y for p in vertices(cut.cut_line) if abs(p.x - 20) < 1e-9)
    assert tip - 30 == pytest.approx(1.2 / math.sin(math.radians(angle)), abs=1e-9)


@pytest.mark.parametrize("angle", [30, 45, 60, 75, 90, 105, 120, 150])
@pytest.mark.parametrize(("first", "second"), [(1.0, 1.0), (1.0, 2.5), (2.0, 0.6), (1.5, 0.0)])
def test_a_corner_is_squared_to_the_seam_that_is_sewn_first(angle, first, second):
    far = Point(20, 0) + direction(180 - angle) * 25
    net = polygon(
        Point(0, 0), Point(20, 0), far, far + direction(175) * 30, kinds=("side", "crotch") * 2
    )
    ranks = {"e0": 0, "e1": 1, "e2": 2, "e3": 3}
    cut = finished(net, ranks, side=first, crotch=second)
    assert cut.corners[0].rule is CornerRule.SQUARED
    assert cut.corners[0].squared_to == "e0"
    prove(cut, 0)
    # closed form: the other cutting line meets the seam's line allowance / sin(angle) beyond
    assert beyond(cut, 0) == pytest.approx(second / math.sin(math.radians(angle)), abs=1e-6)


@pytest.mark.parametrize("angle", [60, 90, 120])
def test_the_other_way_round_the_corner_is_squared_to_the_other_seam(angle):
    far = Point(20, 0) + direction(180 - angle) * 25
    net = polygon(Point(0, 0), Point(20, 0), far, far + direction(175) * 30)
    cut = finished(net, {"e0": 1, "e1": 0, "e2": 2, "e3": 3}, seam=1.3)
    assert cut.corners[0].squared_to == "e1"
    prove(cut, 0)


def test_two_pieces_whose_corners_make_a_straight_line_end_flush_when_sewn():
    """Laid with the sewn edges on each other, both stick out by the same."""
    one, two = (finished(hook_panel(a), SEWING, seam=1.0) for a in (75, 105))
    assert one.corners[4].squared_to == two.corners[4].squared_to == "inseam"
    assert beyond(one, 4) == pytest.approx(beyond(two, 4), abs=0.01)


@pytest.mark.parametrize("angle", [70, 80, 90, 100, 110])
@pytest.mark.parametrize("crotch", [0.6, 1.0, 2.5])
def test_a_hook_of_any_shape_is_squared_across_the_inseam(angle, crotch):
    cut = finished(hook_panel(angle), SEWING, inseam=1.5, crotch=crotch)
    for n in range(5):
        prove(cut, n)
    assert cut.corners[4].rule is CornerRule.SQUARED


def test_a_sharp_point_that_would_run_off_is_cut_off():
    net = polygon(Point(0, 0), Point(30, -4), Point(30, 4))
    cut = finished(net, seam=1.0)
    assert cut.corners[2].rule is CornerRule.BEVEL
    prove(cut, 2)
    # the point of the mitre would stand at 1 / sin(half the angle) = 7.6 cm
    assert min(p.x for p in vertices(cut.cut_line)) == pytest.approx(-2.5, abs=1e-9)


def test_a_squared_corner_too_far_off_becomes_a_mitre_or_is_cut_off():
    net = polygon(Point(0, 0), Point(30, -4), Point(30, 4))
    cut = finished(net, {"e2": 0, "e0": 1, "e1": 2}, seam=1.0)
    assert cut.corners[2].rule is CornerRule.BEVEL
    prove(cut, 2)


def test_at_the_limit_mitre_and_bevel_are_the_same_line():
    half = math.asin(1 / 2.5)

    def spike(wider):
        y = 30 * math.tan(half + wider)
        return finished(polygon(Point(0, 0), Point(30, -y), Point(30, y)), seam=1.0)

    mitred, cut_off = spike(1e-6), spike(-1e-6)
    assert mitred.corners[2].rule is CornerRule.MITRE
    assert cut_off.corners[2].rule is CornerRule.BEVEL
    assert mitred.cut_line.area() == pytest.approx(cut_off.cut_line.area(), abs=1e-2)


@pytest.mark.parametrize("angle", [200, 240, 270, 300])
def test_an_inner_corner_is_trimmed_where_the_cutting_lines_cross(angle):
    # cloth below two edges that meet at an inner corner
    right, left = direction(90 - angle / 2) * -1, direction(90 + angle / 2) * -1
    right, left = direction(90 + angle / 2 - 180), direction(90 - angle / 2 + 180)
    corner = Point(0, 0)
    a, b = corner + right * 20, corner + left * 20
    if a.x < b.x:
        a, b = b, a
    net = polygon(a, corner, b, Point(b.x, -40), Point(a.x, -40))
    cut = finished(net, seam=1.0)
    assert cut.corners[0].rule is CornerRule.MITRE
    assert cut.corners[0].path is None
    prove(cut, 0)


def test_equal_allowances_on_a_smooth_line_go_on_smoothly():
    middle = Point(10, 0.3)
    net = polygon(Point(0, 0), middle, Point(20, 0), Point(20, 30), Point(0, 30))
    cut = finished(net, {"e0": 0, "e1": 5}, seam=1.0)
    assert cut.corners[0].rule is CornerRule.SMOOTH
    prove(cut, 0)


@pytest.mark.parametrize("sag", [-0.4, -0.1, 0.0, 0.1, 0.4])
@pytest.mark.parametrize(("one", "two"), [(1.0, 2.5), (2.0, 0.0), (0.6, 1.0)])
def test_unequal_allowances_on_a_smooth_line_make_a_step_straight_across(sag, one, two):
    net = polygon(
        Point(0, 0),
        Point(10, sag),
        Point(20, 0),
        Point(20, 30),
        Point(0, 30),
        kinds=("side", "crotch", "waist", "waist", "waist"),
    )
    cut = finished(net, side=one, crotch=two)
    assert cut.corners[0].rule is CornerRule.STEP
    prove(cut, 0)


def test_the_turned_hem_of_a_tapered_leg_is_as_wide_as_the_leg_it_lies_on():
    # handbook §3: half hem 10.5, half knee 11.8 at 43 above, 4 cm turned up: half width 10.62
    # at the cut edge; straight on down it would be 10.38
    cut = half_leg()
    edge = [p.x for p in vertices(cut.cut_line) if abs(p.y + 4) < 1e-9]
    assert max(edge) == pytest.approx(10.62, abs=0.005)
    assert min(edge) == pytest.approx(-10.62, abs=0.005)
    for n in range(4):
        prove(cut, n)


@pytest.mark.parametrize("hem", [1.0, 2.5, 4.0, 8.0])
@pytest.mark.parametrize("side", [0.0, 1.0, 2.0])
def test_a_hem_of_any_depth_folds_onto_the_leg(hem, side):
    cut = half_leg(hem, side)
    assert [c.rule.value for c in cut.corners].count("mirrored") == 2
    prove(cut, 0)
    prove(cut, 3)
    # twice the slope's gain over the hem, beside the side's own width
    wide = across(cut, cut.corners[0], direction(0), direction(270), hem * 0.999)
    level = across(cut, cut.corners[0], direction(0), direction(270), 0.0)
    assert wide - level == pytest.approx(hem * 0.999 * (11.8 - 10.5) / 43, abs=1e-3)


def test_the_hem_of_a_flared_skirt_narrows_below_the_fold():
    net = polygon(
        Point(-30, 0), Point(30, 0), Point(22, 50), Point(-22, 50),
        roles=(Role.HEM, Role.SEAM, Role.SEAM, Role.SEAM),
        kinds=("hem", "side", "waist", "side"),
    )  # fmt: skip
    cut = finished(net, {"e1": 0, "e3": 0, "e2": 1}, hem=3.0, seam=1.0)
    prove(cut, 0)
    prove(cut, 3)
    assert across(cut, cut.corners[0], direction(0), direction(270), 2.9) < across(
        cut, cut.corners[0], direction(0), direction(270), 0.0
    )


def test_a_bowed_hem_and_curved_sides_still_fold_onto_the_leg_at_the_corner():
    hem = Path((Cubic(Point(-10, 0), Point(-4, 0.5), Point(4, 0.5), Point(10, 0)),))
    side = Path((Cubic(Point(10, 0), Point(10.2, 10), Point(12, 30), Point(13, 40)),))
    left = Path((Cubic(Point(-13, 40), Point(-12, 30), Point(-10.2, 10), Point(-10, 0)),))
    net = piece(
        Edge("hem", hem, Role.HEM, "hem"),
        Edge("side", side),
        Edge("top", polyline(Point(13, 40), Point(-13, 40))),
        Edge("left", left),
    )
    cut = finished(net, {"side": 0, "left": 1, "top": 2}, hem=4.0, seam=1.0)
    prove(cut, 0)
    prove(cut, 3)


def test_a_hem_beside_a_fold_ends_on_the_fold():
    roles = (Role.HEM, Role.FOLD, Role.SEAM, Role.SEAM)
    net = polygon(*SQUARE, roles=roles, kinds=("hem", "seam", "waist", "side"))
    cut = finished(net, {"e2": 1, "e3": 0}, hem=4.0, seam=1.0)
    assert cut.corners[0].rule is CornerRule.FOLD
    prove(cut, 0)
    prove(cut, 3)


@pytest.mark.parametrize("rule", list(CornerRule))
def test_every_rule_is_used_somewhere_here(rule):
    hems = (Role.HEM, Role.SEAM, Role.SEAM, Role.SEAM)
    folds = (Role.FOLD, Role.SEAM, Role.SEAM, Role.SEAM)
    flat = (Point(0, 0), Point(10, 0), Point(20, 0), Point(20, 30), Point(0, 30))
    kinds = ("side", "crotch", "side", "side", "side")
    cases = (
        finished(polygon(*SQUARE), seam=1.0),
        finished(polygon(*SQUARE), {"e0": 0}, seam=1.0),
        finished(polygon(*SQUARE, roles=hems), seam=1.0),
        finished(polygon(*SQUARE, roles=folds), seam=1.0),
        finished(polygon(*flat), seam=1.0),
        finished(polygon(*flat, kinds=kinds), side=1.0, crotch=2.0),
        finished(polygon(Point(0, 0), Point(30, -1), Point(30, 1)), seam=1.0),
    )
    assert any(c.rule is rule for cut in cases for c in cut.corners)


def _crooked(cut):
    """The same cutting line, laid on the paper 0.3 mm off and turned by a degree."""
    move = turn(1.0, Point(10, 10)).then(shift(0.03, 0.02))
    return replace(
        cut,
        cut_line=cut.cut_line.transformed(move),
        edge_cuts=tuple(c and c.transformed(move) for c in cut.edge_cuts),
        corners=tuple(replace(c, path=c.path and c.path.transformed(move)) for c in cut.corners),
    )


@pytest.mark.parametrize("rule", list(CornerRule))
def test_the_set_square_finds_each_kind_of_corner_crooked_when_it_is(rule):
    flat = (Point(0, 0), Point(10, 0), Point(20, 0), Point(20, 30), Point(0, 30))
    kinds = ("side", "crotch", "side", "side", "side")
    cut, n = {
        CornerRule.MITRE: (finished(polygon(*SQUARE), seam=1.0), 0),
        CornerRule.SQUARED: (finished(polygon(*SQUARE), {"e0": 0}, seam=1.0), 0),
        CornerRule.MIRRORED: (half_leg(), 0),
        CornerRule.FOLD: (finished(polygon(*SQUARE, roles=(Role.FOLD, *[Role.SEAM] * 3))), 0),
        CornerRule.SMOOTH: (finished(polygon(*flat)), 0),
        CornerRule.STEP: (finished(polygon(*flat, kinds=kinds), side=1.0, crotch=2.0), 0),
        CornerRule.BEVEL: (finished(polygon(Point(0, 0), Point(30, -1), Point(30, 1))), 2),
    }[rule]
    assert cut.corners[n].rule is rule
    prove(cut, n)
    with pytest.raises(AssertionError):
        prove(_crooked(cut), n)
