"""Pieces on paper: apart, grain upright, every bit of them on some page."""

from dataclasses import replace
from itertools import combinations

import pytest
import shapely
from hand_made import band, front, numbered, pattern, yoke
from hypothesis import given, settings
from hypothesis import strategies as st
from rulers import misplaced, sampled
from shapely import affinity

from drafting.drawing import (
    WORDS,
    Block,
    Role,
    Roll,
    Text,
    Tiling,
    arrange,
    compose,
    draw_pieces,
    legend,
    tiles_of,
)
from drafting.errors import OutputError

A4 = Tiling(19.0, 27.7, 1.0)
A2 = Tiling(40.0, 57.4, 1.0)
PAPERS = [None, A4, Tiling(27.7, 19.0, 1.0), Tiling(19.6, 25.9, 0.0), A2]


def placed(block, move):
    return affinity.affine_transform(block.area, [move.a, move.c, move.b, move.d, move.e, move.f])


def pieces():
    return draw_pieces(
        pattern(front(), numbered(yoke(), 2), band()), reference="order 1042", verdict="sound"
    )


def a_legend():
    return legend(
        "Hand-made", reference="order 1042", verdict="sound", cautions=(), words=WORDS["en"]
    )


@pytest.mark.parametrize("tiling", PAPERS)
def test_cutting_lines_stay_a_centimetre_apart_and_grain_upright(tiling):
    composed = compose("T", pieces(), WORDS["en"], legend=a_legend(), ground=tiling)
    for move in composed.moves:
        assert (abs(move.a), move.b, move.c) == (1.0, 0.0, 0.0)
        assert move.a == move.d  # never mirrored
    cut_lines = [
        shapely.Polygon(sampled(item.path, 1))
        for group in composed.sheet.groups
        for item in group.items
        if getattr(item, "role", None) is Role.CUT
    ]
    assert len(cut_lines) == 3
    assert all(a.distance(b) >= 1.0 - 1e-6 for a, b in combinations(cut_lines, 2))
    sheet = shapely.box(0, 0, composed.sheet.width, composed.sheet.height)
    assert all(sheet.contains(line) for line in cut_lines)


def test_without_pages_nothing_stands_on_its_head():
    composed = compose("T", pieces(), WORDS["en"], legend=a_legend())
    assert all(move.a == 1.0 for move in composed.moves)


@pytest.mark.parametrize("tiling", [PAPERS[2], PAPERS[3], A2])
def test_texts_on_a_piece_on_its_head_stand_upright_and_still_cover_nothing(tiling):
    pair = pattern(front(), replace(front(), name="second", number=2))
    drawn = draw_pieces(pair, reference="order 1042", verdict="sound")
    composed = compose("T", drawn, WORDS["en"], legend=None, ground=tiling)
    assert any(move.a < 0 for move in composed.moves)  # else nothing is tried here
    for group in composed.sheet.groups:
        assert misplaced(group) == []
        for text in (item for item in group.items if isinstance(item, Text)):
            assert -60 < (text.angle + 180) % 360 - 180 < 120


def test_the_legend_lies_in_the_corner_of_a_big_sheet():
    composed = compose("T", pieces(), WORDS["en"], legend=a_legend(), ground=A2)
    assert composed.moves[0].e == pytest.approx(0.53)
    assert composed.moves[0].f == pytest.approx(composed.sheet.height - 0.53)


@pytest.mark.parametrize("tiling", PAPERS[1:])
def test_every_bit_of_every_piece_is_on_a_page_and_no_page_is_empty(tiling):
    composed = compose("T", pieces(), WORDS["en"], ground=tiling)
    whole = shapely.union_all(composed.areas)
    height = composed.sheet.height
    tiles = tiles_of(composed.areas, height, tiling)
    windows = [
        shapely.box(
            column * tiling.across,
            height - row * tiling.down - tiling.height,
            column * tiling.across + tiling.width,
            height - row * tiling.down,
        )
        for row, column in tiles
    ]
    assert all(window.intersects(whole) for window in windows)
    assert shapely.union_all(windows).buffer(1e-9).contains(whole)


def test_trouser_pieces_take_fewer_pages_than_their_boxes_would():
    composed = compose("T", pieces(), WORDS["en"], ground=A4)
    boxes = [area.bounds for area in composed.areas]
    alone = sum(A4.columns(b[2] - b[0] + 1) * A4.rows(b[3] - b[1] + 1) for b in boxes)
    assert len(tiles_of(composed.areas, composed.sheet.height, A4)) <= alone


sides = st.tuples(st.floats(1, 45), st.floats(1, 130))


@settings(max_examples=25, deadline=None)
@given(st.lists(sides, min_size=1, max_size=7), st.sampled_from(PAPERS))
def test_any_rectangles_lie_apart_on_the_sheet(sizes, tiling):
    blocks = tuple(
        Block(str(i), shapely.box(3, -2, 3 + w, -2 + h)) for i, (w, h) in enumerate(sizes)
    )
    laid = arrange(blocks, tiling)
    areas = [placed(b, m) for b, m in zip(blocks, laid.moves, strict=True)]
    assert all(a.distance(b) >= 1.0 - 1e-6 for a, b in combinations(areas, 2))
    sheet = shapely.box(0, 0, laid.width, laid.height)
    assert all(sheet.contains(a) for a in areas)


def test_the_same_blocks_always_lie_the_same():
    blocks = tuple(Block(str(i), shapely.box(0, 0, 10 + i, 60 - i)) for i in range(6))
    assert arrange(blocks, A4) == arrange(blocks, A4)


@settings(max_examples=15, deadline=None)
@given(st.lists(sides, min_size=1, max_size=7), st.sampled_from([59.0, 89.4, 104.7]))
def test_on_a_roll_rectangles_lie_apart_across_its_breadth_with_the_grain_along_it(sizes, width):
    blocks = tuple(
        Block(str(i), shapely.box(3, -2, 3 + w, -2 + h)) for i, (w, h) in enumerate(sizes)
    )
    laid = arrange(blocks, Roll(width))
    areas = [placed(b, m) for b, m in zip(blocks, laid.moves, strict=True)]
    assert all(a.distance(b) >= 1.0 - 1e-6 for a, b in combinations(areas, 2))
    assert shapely.box(0, 0, width, laid.height).contains(shapely.union_all(areas))
    for move in laid.moves:
        assert (abs(move.a), move.b, move.c) == (1.0, 0.0, 0.0)
        assert move.a == move.d


def test_what_is_broader_than_a_roll_is_refused_by_name_with_the_roll_that_would_do():
    blocks = (Block("cape", shapely.box(0, 0, 70, 50)), Block("collar", shapely.box(0, 0, 9, 9)))
    with pytest.raises(OutputError, match="piece cape is 700 mm broad") as caught:
        arrange(blocks, Roll(59.0, edges=2.0))
    assert caught.value.received == 610.0
    assert arrange(blocks, Roll(caught.value.allowed / 10 - 2.0, edges=2.0))
