"""Collars measured by another library: lengths that agree, and what every shirtmaker expects."""

from __future__ import annotations

import math

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from drafting.craft.collar import Leaf, NeckSeam, draw_leaf, draw_stand, leaf_piece, stand_pieces
from drafting.craft.sheet import DraftSheet
from drafting.trace.place import corner_of_paper

CLASSIC, SPREAD = Leaf(1.0, 16.0), Leaf(1.6, -4.0)


def made(back=9.5, front=10.5, stand=1.5, height=3.2, leaf=CLASSIC, fall=4.4, point=7.2):
    sheet = DraftSheet()
    seam = NeckSeam(back=back, front=front, stand=stand)
    drawn = draw_stand(seam, height, corner_of_paper(), sheet)
    return drawn, draw_leaf(drawn, leaf, fall, point, corner_of_paper(0, -20), sheet)


def line(path) -> shapely.LineString:
    return shapely.LineString([(p.x, p.y) for p in path.flattened(0.0005)])


@given(st.floats(6, 13), st.floats(7, 16), st.floats(1.2, 2.5), st.floats(2.5, 4.5))
def test_the_stand_is_as_long_as_the_neck_and_the_leaf_as_the_stand(back, front, stand, height):
    drawn, leaf = made(back, front, stand, height)
    assert line(drawn.neck.path).length == pytest.approx(back + front + stand, abs=0.001)
    assert line(leaf.seam.path).length == pytest.approx(line(drawn.top.path).length, abs=0.001)
    outline = line(
        drawn.neck.path.joined(drawn.front_end.path.reversed(), drawn.top.path.reversed())
    )
    assert outline.is_simple


@given(st.floats(6, 13), st.floats(7, 16))
def test_the_outer_edge_is_longer_than_the_seam(back, front):
    """It lies over the stand, farther out than the seam. Source: common practice, no source."""
    for leaf in (CLASSIC, SPREAD):
        _, drawn = made(back, front, leaf=leaf)
        assert line(drawn.outer.path).length > line(drawn.seam.path).length


def test_the_stand_rises_and_is_lower_in_front():
    """1.25 to 2 cm of rise at the front; common practice, no source."""
    drawn, _ = made()
    assert 1.25 <= drawn.neck.path.end.y - drawn.neck.path.start.y <= 2.0
    behind = drawn.top.path.start.y - drawn.neck.path.start.y
    before = line(drawn.neck.path).distance(
        shapely.Point(drawn.top.path.end.x, drawn.top.path.end.y)
    )
    assert behind == pytest.approx(3.2)
    assert 0.2 < behind - before < 0.7


def test_the_button_sits_at_half_the_stands_height_over_the_centre_front():
    drawn, _ = made()
    button = shapely.Point(drawn.middle.x, drawn.middle.y)
    low, high = line(drawn.neck.path).distance(button), line(drawn.top.path).distance(button)
    assert low == pytest.approx(high, abs=0.1)
    foot = line(drawn.neck.path).project(button)
    assert foot == pytest.approx(20.0, abs=0.1)  # half the neck seam, from the centre back


def test_points_of_a_spread_collar_lie_farther_apart():
    """Turned down, the fronts hang from the button: leaning forward they meet."""
    leans = []
    for leaf in (CLASSIC, SPREAD):
        _, drawn = made(leaf=leaf)
        edge = drawn.front.path.end - drawn.front.path.start
        assert math.hypot(edge.x, edge.y) == pytest.approx(7.2)
        leans.append(math.degrees(math.atan2(edge.x, edge.y)))
    assert leans[0] > leans[1] + 10


def test_pieces_are_marked_for_the_shoulder_the_centre_and_the_leaf():
    drawn, leaf = made()
    stand, inside = stand_pieces(drawn, leaf=True)
    assert {(n.match, n.edge) for n in stand.notches} == {
        ("neck-shoulder", "neck"), ("centre-front", "overlap"), ("leaf-end", "top"),
    }  # fmt: skip
    assert stand.notches[0].at == pytest.approx(9.5)
    assert stand.edge("neck").path.length() == pytest.approx(20.0, abs=0.001)
    assert inside.outline.area() == pytest.approx(stand.outline.area())
    assert {m.kind for m in leaf_piece(leaf, buttoned=True).marks} == {"buttonhole"}
    assert leaf_piece(leaf, buttoned=False).marks == ()
