"""The cutting line as a whole: closed, simple, at its allowance, with its caps and notches."""

from __future__ import annotations

import math
import random

import pytest
from drawn import dot, inner_distances, line, on_cap, prove, ring
from hypothesis import assume, example, given, settings
from hypothesis import strategies as st
from paper_pieces import (
    SEWING,
    finished,
    half_leg,
    hook_panel,
    piece,
    polygon,
    scoop,
    wedge,
    wild_piece,
)
from shapely import Polygon

from drafting.geometry import Cubic, Path, Point, mirror, polyline
from drafting.pattern import (
    Allowances,
    Edge,
    Finish,
    FinishedPiece,
    Notch,
    Pattern,
    Seam,
    SeamPart,
)
from drafting.pattern.finish import finish_pattern

NONE = {"seam": 0.0, "hem": 0.0}


def assert_whole(cut: FinishedPiece) -> None:
    """Closed, counter-clockwise, free of crossings, round the net piece, made of its parts."""
    drawn = ring(cut.cut_line)
    assert drawn.is_simple
    assert drawn.is_ccw
    if not cut.piece.darts:  # a cap may dip under the straight stroke over its mouth
        assert Polygon(drawn).buffer(2e-3).contains(ring(cut.piece.outline))
    parts = [
        p
        for edge, corner in zip(cut.edge_cuts, cut.corners, strict=True)
        for p in (edge, corner.path)
        if p is not None
    ]
    assert sum(p.length() for p in parts) == pytest.approx(cut.cut_line.length(), abs=1e-4)


@pytest.mark.parametrize(
    "net",
    [polygon(Point(0, 0), Point(20, 0), Point(20, 30), Point(0, 30)), hook_panel(), scoop(3.0)],
    ids=["square", "panel", "scoop"],
)
def test_without_allowances_the_cutting_line_is_the_stitching_line(net):
    cut = finished(net, SEWING, **NONE)
    assert cut.cut_line.segments == net.outline.segments
    assert all(c.path is None for c in cut.corners)


def test_without_allowances_a_dart_still_gets_its_cap():
    cut = finished(wedge(6, 10), SEWING, **NONE)
    assert_whole(cut)
    assert cut.cut_line.area() == pytest.approx(cut.piece.outline.area() + 6 * 0.9 / 2, abs=1e-6)


@pytest.mark.parametrize("allowance", [0.3, 0.6, 1.0, 1.5, 2.5])
@pytest.mark.parametrize("angle", [75, 90, 105])
def test_the_cut_of_each_edge_runs_at_its_allowance(angle, allowance):
    cut = finished(hook_panel(angle), SEWING, seam=allowance, side=1.5, hem=4.0)
    assert_whole(cut)
    for n, wanted in enumerate(cut.allowances):
        measured = inner_distances(cut, n)
        assert len(measured) > 20
        assert min(measured) == pytest.approx(wanted, abs=0.01)
        assert max(measured) == pytest.approx(wanted, abs=0.01)


@pytest.mark.parametrize(
    ("intake", "length", "leg", "cap"),
    # handbook §2, worked: legs square to the waist; cap over the line between the leg ends
    [(2, 12, 12.04, 0.083), (6, 10, 10.44, 0.9)],
)
def test_the_cap_over_a_dart_square_to_the_waist_is_as_high_as_worked_by_hand(
    intake, length, leg, cap
):
    net = wedge(intake, length)
    cut = finished(net, **NONE)
    top = max(p.y for p in (s.start for s in cut.cut_line.segments))
    assert net.darts[0].legs == pytest.approx((leg, leg), abs=0.005)
    assert top - length == pytest.approx(cap, abs=0.005)


@pytest.mark.parametrize("allowance", [0.0, 1.0, 2.5])
@pytest.mark.parametrize("lean", [-12, 0, 4, 12])
@pytest.mark.parametrize("bow", [0.0, 0.15, -0.2])
@pytest.mark.parametrize("toward_first", [True, False])
@pytest.mark.parametrize(("intake", "length"), [(1.5, 9), (3, 12), (6, 10)])
def test_folded_and_pressed_the_intake_ends_on_the_cutting_line_it_lies_under(
    intake, length, toward_first, bow, lean, allowance
):
    """Fold the drawn paper: over the leg, and the far half first over the middle."""
    net = wedge(intake, length, toward_first=toward_first, lean=lean, bow=bow)
    cut = finished(net, {"waist": 3, "left": 1, "right": 1}, seam=allowance, hem=2.0)
    assert_whole(cut)
    (dart,) = net.darts
    leg = (dart.first if toward_first else dart.second) - dart.point
    middle = dart.first.toward(dart.second, 0.5) - dart.point
    over_leg, over_middle = mirror(dart.point, leg), mirror(dart.point, middle)
    drawn = line(cut.edge_cuts[0])
    near = 0
    for k in range(201):
        d = drawn.interpolate(k / 200, normalized=True)
        p = Point(d.x, d.y)
        if not on_cap(cut, net.edge("waist"), p):
            continue
        if (leg.cross(middle) > 0) != (middle.cross(p - dart.point) < 0):
            p = over_middle.point(p)
        assert drawn.distance(dot(over_leg.point(p))) < 0.005
        near += 1
    assert near > 5


def test_a_cap_depends_on_the_way_it_is_pressed_where_the_waist_is_crooked():
    one, other = (finished(_crooked(first), seam=1.0).cut_line for first in (True, False))
    assert line(one).hausdorff_distance(line(other)) > 0.05


def _crooked(toward_first: bool):
    """Legs equal, waist square to the one leg and leaning on the other."""
    net = wedge(6, 10, toward_first=toward_first)
    first, mouth, last = net.edges[0].path.segments
    turned = last.transformed(mirror(last.start, last.end - last.start))
    bent = Path((first, mouth, type(last)(turned.start, Point(turned.end.x, turned.end.y - 1.5))))
    left = Edge("left", polyline(bent.end, net.edges[1].path.end), kind="side")
    return piece(Edge("waist", bent, kind="waist"), left, *net.edges[2:], darts=net.darts)


@pytest.mark.parametrize("radius", [0.3, 0.8, 1.5, 4.0])
@pytest.mark.parametrize("allowance", [0.5, 1.0, 2.0])
def test_where_the_line_bends_tighter_than_the_allowance_no_loop_is_left(radius, allowance):
    cut = finished(scoop(radius), seam=allowance)
    assert_whole(cut)
    away = line(scoop(radius).outline)
    drawn = ring(cut.cut_line)
    for k in range(600):
        p = drawn.interpolate(k / 600, normalized=True)
        assert p.distance(away) >= allowance - 0.01


@pytest.mark.parametrize("allowance", [0.5, 1.0, 2.0, 3.0])
@pytest.mark.parametrize("tight", [0.2, 0.6, 1.2])
def test_a_tight_hollow_curve_in_a_seam_is_cut_round(tight, allowance):
    hollow = Path(
        (Cubic(Point(20, 20), Point(10 - 8 * tight, 8), Point(10 + 8 * tight, 8), Point(0, 20)),)
    )
    net = piece(
        Edge("top", hollow),
        Edge("left", polyline(Point(0, 20), Point(0, 0))),
        Edge("bottom", polyline(Point(0, 0), Point(20, 0))),
        Edge("right", polyline(Point(20, 0), Point(20, 20))),
    )
    cut = finished(net, seam=allowance)
    assert_whole(cut)
    stitched = line(net.outline)
    for p in _steps(cut, 400):
        assert p.distance(stitched) >= allowance - 0.01


def _steps(cut: FinishedPiece, count: int):
    drawn = ring(cut.cut_line)
    return [drawn.interpolate(k / count, normalized=True) for k in range(count)]


@settings(max_examples=80, deadline=None)
@given(st.integers(0, 10**6))
@example(400111)  # bends tighter than the allowance just before a corner
@example(400366)
def test_pieces_of_any_shape_get_a_whole_cutting_line_at_their_allowances(seed):
    rnd = random.Random(seed)  # noqa: S311 - a shape, no secret
    net = wild_piece(rnd)
    assume(ring(net.outline).is_simple)
    ranks = {f"e{n}": rnd.randrange(4) for n in range(len(net.edges))}
    widths = {k: rnd.choice([0.0, 0.6, 1.0, 1.5, 2.5]) for k in ("side", "crotch", "waist")}
    cut = finished(net, ranks, hem=rnd.choice([1.0, 2.0, 4.0]), **widths)
    assert_whole(cut)
    for n, wanted in enumerate(cut.allowances):
        for measured in inner_distances(cut, n):
            assert measured == pytest.approx(wanted, abs=0.01)


def test_a_notch_is_carried_square_out_to_the_cutting_line():
    cut = finished(hook_panel(), SEWING, seam=1.0, side=1.5)
    for notch in cut.notches:
        edge = cut.piece.edge(notch.notch.edge)
        assert line(edge.path).distance(dot(notch.point)) < 1e-6
        assert line(edge.path).project(dot(notch.point)) == pytest.approx(notch.notch.at, abs=1e-3)
        assert ring(cut.cut_line).distance(dot(notch.cut)) < 1e-4
        assert notch.point.distance(notch.cut) == pytest.approx(
            cut.allowance(notch.notch.edge), abs=0.005
        )
        assert abs(notch.direction.cross(notch.cut - notch.point)) < 1e-9


@pytest.mark.parametrize("depth", [3, 6, 10, 15])
def test_a_notch_in_an_inner_corner_ends_on_the_cutting_line_that_is_there(depth):
    corners = (Point(20, 0), Point(10, -depth), Point(0, 0), Point(0, -40), Point(20, -40))
    net = polygon(*corners)
    length = Point(20, 0).distance(Point(10, -depth))
    near = (Notch("e0", length - 0.4, 1, "inner"), Notch("e1", 0.0, 1, "pit"))
    cut = finished(piece(*net.edges, notches=near), seam=1.0)
    for notch in cut.notches:
        assert ring(cut.cut_line).distance(dot(notch.cut)) < 1e-6
        assert notch.cut.distance(notch.point) < 2.5
        assert abs(notch.direction.cross(notch.cut - notch.point)) < 1e-9
        assert notch.direction.dot(notch.cut - notch.point) > 0


def test_a_notch_at_the_end_of_a_dart_leg_follows_the_leg():
    net = wedge(3, 12, lean=5)
    at = net.edges[0].path.segments[0].length()
    marked = piece(*net.edges, darts=net.darts, notches=(Notch("waist", at, 1, "leg"),))
    (notch,) = finished(marked, seam=1.0).notches
    (dart,) = net.darts
    assert abs((notch.cut - dart.point).unit.cross(dart.first - dart.point)) < 1e-9
    assert notch.cut.distance(dart.point) > dart.first.distance(dart.point) + 0.9


def test_seams_give_the_edges_their_order_and_hems_come_last():
    pattern = Pattern(
        kind="paper",
        title="Paper",
        pieces=(hook_panel(),),
        seams=(
            Seam("inseam", (SeamPart("paper", "inseam"),), (SeamPart("paper", "inseam"),)),
            Seam("side", (SeamPart("paper", "side"),), (SeamPart("paper", "side"),)),
            Seam("crotch", (SeamPart("paper", "crotch"),), (SeamPart("paper", "crotch"),)),
        ),
    )
    cut = finish_pattern(pattern, Finish(allowances=Allowances(seam=1.2)))
    assert cut.checks == ()
    assert cut.findings == ()
    assert cut.pieces[0].labels == ()
    assert [(c.before, c.after, c.squared_to) for c in cut.pieces[0].corners] == [
        ("crotch", "waist", "crotch"),
        ("waist", "side", "side"),
        ("side", "hem", None),
        ("hem", "inseam", None),
        ("inseam", "crotch", "inseam"),
    ]


def test_a_toile_has_the_same_allowance_everywhere():
    pattern = Pattern(kind="paper", title="Paper", pieces=(half_leg().piece,), seams=())
    (cut,) = finish_pattern(pattern, Finish(purpose="toile")).pieces
    assert set(cut.allowances) == {2.5}
    assert_whole(cut)


def test_a_disc_of_one_edge_gets_a_ring_round_it():
    k = 4 / 3 * math.tan(math.pi / 8) * 5
    quarters = (
        Cubic(Point(5, 0), Point(5, k), Point(k, 5), Point(0, 5)),
        Cubic(Point(0, 5), Point(-k, 5), Point(-5, k), Point(-5, 0)),
        Cubic(Point(-5, 0), Point(-5, -k), Point(-k, -5), Point(0, -5)),
        Cubic(Point(0, -5), Point(k, -5), Point(5, -k), Point(5, 0)),
    )
    cut = finished(piece(Edge("rim", Path(quarters))), seam=1.0)
    assert_whole(cut)
    assert cut.cut_line.area() == pytest.approx(math.pi * 36, rel=1e-3)


def test_finished_corners_of_the_hook_panel_prove_themselves():
    cut = finished(hook_panel(), SEWING, seam=1.0)
    for n in range(5):
        prove(cut, n)
