"""Every garment of the handbook, sewn together on paper; and spoilt, to see that it is noticed."""

from __future__ import annotations

from dataclasses import replace

import pytest
import shapely

from drafting.body import Body
from drafting.checks import CHECKS, check, closed_edge, walk, width
from drafting.craft.sheet import DraftSheet
from drafting.garments import GARMENTS
from drafting.pattern import Finish, FinishedPattern, Pattern, Piece
from drafting.pattern.finish import finish_pattern


@pytest.fixture(name="net", params=GARMENTS)
def net_fixture(request) -> Pattern:
    garment = GARMENTS[request.param]
    return garment.draw(
        Body.of(dict(garment.sample)), garment.spec(kind=garment.kind), DraftSheet()
    )


NOTCHED_WHERE_EASED = {"circle_skirt", "gathered_skirt"}
"""Their seams without ease have no notch but the zip's end, both sides of it on one piece."""


def found(name: str, pattern: Pattern) -> set[str]:
    return {
        f.code for f in CHECKS[name](FinishedPattern(pattern=pattern, finish=Finish(), pieces=()))
    }


def instead(pattern: Pattern, piece: Piece) -> Pattern:
    return replace(
        pattern, pieces=tuple(piece if p.name == piece.name else p for p in pattern.pieces)
    )


@pytest.mark.parametrize("purpose", ["garment", "toile"])
def test_the_checks_find_no_error(net, purpose):
    checks, remarks = check(finish_pattern(net, Finish(purpose=purpose)))
    assert [f for f in remarks if f.severity == "error"] == []
    assert checks


def test_every_seam_walks_without_a_gap(net):
    gaps = {seam.name: walk(net, seam) for seam in net.seams}
    assert max(gaps.values()) < 0.01, gaps


def test_edges_with_darts_are_as_long_closed_as_sewn(net):
    for piece in net.pieces:
        for edge in {d.edge for d in piece.darts}:
            assert closed_edge(piece, edge).length() == pytest.approx(
                piece.sewn_length(edge), abs=1e-3
            )


def test_a_forgotten_seam_is_missed(net):
    for seam in net.seams:
        rest = tuple(s for s in net.seams if s is not seam)
        assert "edge_not_sewn" in found("edges_used_once", replace(net, seams=rest)), seam.name


def test_a_seam_sewn_twice_is_noticed(net):
    for seam in net.seams:
        twice = replace(net, seams=(*net.seams, seam))
        assert "edge_sewn_twice" in found("edges_used_once", twice), seam.name


def test_a_notch_moved_by_two_millimetres_on_one_side_is_noticed(net):
    moved = 0
    for seam in net.seams:
        one, two = ({(p.piece, p.edge) for p in parts} for parts in (seam.one, seam.two))
        for name, edge in one ^ two:
            piece = net.piece(name)
            for notch in (n for n in piece.notches if n.edge == edge):
                others = (n for n in piece.notches if n is not notch)
                # against the ease, which may lie anywhere along the seam
                shift = -0.2 if (name, edge) in one else 0.2
                spoilt = replace(piece, notches=(*others, replace(notch, at=notch.at + shift)))
                codes = found("notches_meet", instead(net, spoilt))
                eased = seam.ease.wanted > 0
                assert eased or codes & {"notch_shifted", "notch_unpaired"}, (seam.name, notch)
                moved += not eased
    assert moved > 0 or net.kind in NOTCHED_WHERE_EASED


def _line(path) -> shapely.LineString:
    return shapely.LineString([(p.x, p.y) for p in path.flattened(1e-5)])


def _corners(dart) -> list[tuple[float, float]]:
    return [(p.x, p.y) for p in (dart.first, dart.point, dart.second)]


def test_widths_are_those_of_another_library(net):
    measured = 0
    for piece in net.pieces:
        outline = [p for e in piece.edges for p in e.path.flattened(1e-5)]
        ring = shapely.LinearRing([(p.x, p.y) for p in outline])
        area = shapely.Polygon(shapely.remove_repeated_points(ring, 1e-9))
        assert area.is_valid
        for name, left, right in piece.levels:
            stroke = shapely.LineString([(-500.0, left.y), (500.0, right.y)])
            if left.y == right.y and name not in {"waist", "hem"}:
                wedges = (shapely.Polygon(_corners(d)) for d in piece.darts)
                taken = sum(w.intersection(area).intersection(stroke).length for w in wedges)
                for pleat in piece.pleats:
                    one, two = (_line(way).intersection(stroke) for way in (pleat.one, pleat.two))
                    taken += 0.0 if one.is_empty else one.distance(two)  # the pleat ends above
                assert width(piece, name) == pytest.approx(
                    area.intersection(stroke).length - taken, abs=1e-3
                )
                measured += 1
    assert measured > 0 or not any(piece.levels for piece in net.pieces)
