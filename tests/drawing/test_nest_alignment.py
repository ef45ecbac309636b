"""Where sizes of a piece lie on one another, on pieces drawn by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hand_made import at, band, front, yoke

from drafting.drawing.nest_align import anchors
from drafting.geometry import shift


def moved(piece, x, y):
    """The whole piece drawn elsewhere on its paper."""
    by = shift(x, y)
    return replace(
        piece,
        edges=tuple(edge.transformed(by) for edge in piece.edges),
        levels=tuple((name, by.point(a), by.point(b)) for name, a, b in piece.levels),
        grain=(by.point(piece.grain[0]), by.point(piece.grain[1])),
    )


def test_a_panel_lies_on_grain_and_crotch_line_wherever_it_was_drawn():
    one, two = anchors((front(), moved(front(), 3, -7)))
    assert (one.kind, one.names) == ("grain_level", ("crotch",))
    assert (one.at.x, one.at.y) == pytest.approx((0, 76))
    assert (two.at.x, two.at.y) == pytest.approx((3, 69))


def test_the_level_is_one_that_all_sizes_have():
    other = replace(front(), levels=tuple(line for line in front().levels if line[0] != "crotch"))
    one, two = anchors((front(), other))
    assert one.names == two.names == ("hip",)


def test_a_piece_on_the_fold_lies_on_its_fold():
    piece = replace(yoke(), levels=(("bust", at(0, 6), at(18, 6)),))
    (found,) = anchors((piece,))
    assert (found.kind, found.names) == ("fold_level", ("bust",))
    assert (found.at.x, found.at.y) == pytest.approx((0, 6))


def test_a_panel_with_an_upright_centre_seam_lies_on_it():
    edges = tuple(replace(e, name="centre_back") if e.name == "facing" else e for e in band().edges)
    piece = replace(band(), edges=edges, levels=(("hip", at(0, 30), at(8, 30)),))
    (found,) = anchors((piece,))
    assert (found.kind, found.names) == ("centre_level", ("centre_back", "hip"))
    assert (found.at.x, found.at.y) == pytest.approx((0, 30))


def test_sizes_of_which_one_has_no_centre_seam_lie_on_the_grain():
    edges = tuple(replace(e, name="centre_back") if e.name == "facing" else e for e in band().edges)
    level = (("hip", at(0, 30), at(8, 30)),)
    one, two = anchors((replace(band(), edges=edges, levels=level), replace(band(), levels=level)))
    assert one.kind == two.kind == "grain_level"


def test_a_piece_without_levels_lies_on_centre_and_waist_where_it_has_them():
    names = {"end": "hem", "seam": "side", "overlap": "waist", "facing": "centre_front"}
    edges = tuple(replace(e, name=names[e.name]) for e in band().edges)
    (found,) = anchors((replace(band(), edges=edges),))
    assert set(found.names) == {"waist", "centre_front"}
    assert (found.at.x, found.at.y) == pytest.approx((0, 79))


def test_a_piece_without_levels_lies_on_its_lowest_corner_to_the_left():
    one, two = anchors((band(), moved(band(), 5, 5)))
    assert (one.kind, set(one.names)) == ("corner", {"end", "facing"})
    assert (two.at.x, two.at.y) == pytest.approx((5, 5))


def test_a_piece_without_shared_corners_lies_on_the_foot_of_its_grain():
    other = replace(
        band(), edges=tuple(replace(edge, name=f"other {edge.name}") for edge in band().edges)
    )
    one, _ = anchors((band(), other))
    assert one.kind == "foot"
    assert one.at == band().grain[0]
