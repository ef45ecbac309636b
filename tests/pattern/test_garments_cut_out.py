"""Every garment's cutting lines: at their allowances, with corners that prove themselves."""

from __future__ import annotations

import pytest
from drawn import beyond, dot, inner_distances, prove, ring
from shapely import Polygon

from drafting.body import Body
from drafting.craft.sheet import DraftSheet
from drafting.garments import GARMENTS
from drafting.pattern import Allowances, CornerRule, Finish, FinishedPattern, Role
from drafting.pattern.finish import finish_pattern

FINISHES = {
    "usual": Finish(),
    "tailored": Finish(
        allowances=Allowances(seam=1.5, side=2.0, crotch=1.0, inseam=1.8, waist=1.2, hem=5.0)
    ),
    "narrow": Finish(allowances=Allowances(seam=0.6, hem=2.0)),
    "toile": Finish(purpose="toile"),
}


AT_A_HEM = (CornerRule.MIRRORED, CornerRule.SMOOTH, CornerRule.STEP, CornerRule.FOLD)


@pytest.fixture(name="cut", params=[(g, f) for g in GARMENTS for f in FINISHES], ids=str)
def cut_out(request) -> FinishedPattern:
    kind, finish = request.param
    garment = GARMENTS[kind]
    net = garment.draw(Body.of(dict(garment.sample)), garment.spec(kind=kind), DraftSheet())
    return finish_pattern(net, FINISHES[finish])


def test_each_edge_is_cut_at_its_allowance(cut):
    for piece in cut.pieces:
        for n, wanted in enumerate(piece.allowances):
            for measured in inner_distances(piece, n):
                assert measured == pytest.approx(wanted, abs=0.01)


def test_each_corner_proves_the_rule_that_it_names(cut):
    for piece in cut.pieces:
        for n in range(len(piece.corners)):
            prove(piece, n)


def test_each_cutting_line_is_closed_simple_and_round_the_net_piece(cut):
    for piece in cut.pieces:
        drawn = ring(piece.cut_line)
        assert drawn.is_simple
        assert drawn.is_ccw
        assert Polygon(drawn).buffer(1e-3).covers(Polygon(ring(piece.piece.outline)).buffer(-0.3))
        assert all(c is not None for c in piece.edge_cuts)


def test_no_corner_of_a_garment_has_to_be_cut_off(cut):
    rules = {c.rule for piece in cut.pieces for c in piece.corners}
    assert CornerRule.BEVEL not in rules


def test_both_sides_of_a_seam_have_the_same_allowance(cut):
    for seam in cut.pattern.seams:
        widths = {cut.piece(part.piece).allowance(part.edge) for part in (*seam.one, *seam.two)}
        assert len(widths) == 1, seam.name


def test_every_hem_is_mirrored_or_goes_on(cut):
    for piece in cut.pieces:
        edges = piece.piece.edges
        for n, corner in enumerate(piece.corners):
            roles = {edges[n].role, edges[(n + 1) % len(edges)].role}
            if Role.HEM in roles and len(roles) == 2:
                assert corner.rule in AT_A_HEM


def test_notches_end_on_the_cutting_line(cut):
    for piece in cut.pieces:
        drawn = ring(piece.cut_line)
        for notch in piece.notches:
            assert drawn.distance(dot(notch.cut)) < 1e-4
            assert notch.point.distance(notch.cut) <= 2.5 * piece.allowance(notch.notch.edge) + 1e-6


@pytest.mark.parametrize("finish", FINISHES)
def test_at_the_crotch_front_and_back_start_flush(finish):
    garment = GARMENTS["trousers"]
    net = garment.draw(Body.of(dict(garment.sample)), garment.spec(kind="trousers"), DraftSheet())
    cut = finish_pattern(net, FINISHES[finish])
    out = []
    for name in ("front", "back"):
        piece = cut.piece(name)
        there = {"inseam", f"{name}_crotch"}
        (n,) = (k for k, c in enumerate(piece.corners) if {c.before, c.after} == there)
        assert piece.corners[n].squared_to == "inseam"
        out.append(beyond(piece, n))
    # 3 degrees off a straight angle at 2.5 cm, the most that trueing leaves, are 0.004 cm
    assert out[0] == pytest.approx(out[1], abs=0.01)
