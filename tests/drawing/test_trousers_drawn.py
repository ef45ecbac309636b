"""Whole trousers drawn: small, slanted and half pieces among them, on every kind of sheet."""

from itertools import combinations

import pytest
from rulers import misplaced

from drafting.body import Body
from drafting.drawing import WORDS, Tiling, compose, draw_pieces
from drafting.garments.trousers import GARMENT
from drafting.garments.trousers.spec import Trousers
from drafting.pattern import Finish
from drafting.workroom import work

SHEETS = {
    "one sheet": None,
    "a4": Tiling(19.0, 27.7, 1.0),
    "a4 sideways": Tiling(27.7, 19.0, 1.0),
    "a0": Tiling(82.1, 116.9, 1.0),
}


def drafted(finish=None, **measures):
    body = Body.of(dict(GARMENT.sample) | measures)
    return work(GARMENT, body, Trousers(kind="trousers"), finish or Finish())


def drawn(order, reference="order 1042 for the class on Tuesday"):
    return draw_pieces(order.pattern, reference=reference, verdict=order.verdict)


@pytest.fixture(scope="module")
def pieces():
    return drawn(drafted())


@pytest.mark.parametrize("sheet", SHEETS)
def test_no_text_leaves_its_piece_or_lies_on_a_mark(pieces, sheet):
    composed = compose("T", pieces, WORDS["en"], ground=SHEETS[sheet])
    wrong = {g.name: names for g in composed.sheet.groups if (names := misplaced(g))}
    assert wrong == {}


@pytest.mark.parametrize("sheet", SHEETS)
def test_cutting_lines_stay_a_centimetre_apart(pieces, sheet):
    composed = compose("T", pieces, WORDS["en"], ground=SHEETS[sheet])
    assert all(a.distance(b) >= 1.0 - 1e-6 for a, b in combinations(composed.areas, 2))


@pytest.mark.parametrize("hip", [86.0, 120.0])
@pytest.mark.parametrize("purpose", ["garment", "toile"])
def test_small_and_large_bodies_keep_their_texts_inside(hip, purpose):
    order = drafted(Finish(purpose=purpose), hip_girth=hip, waist_girth=hip - 26)
    assert {g.group.name: misplaced(g.group) for g in drawn(order) if misplaced(g.group)} == {}


def test_letters_are_six_millimetres_on_fronts_and_backs_and_a_millimetre_anywhere(pieces):
    heights = {p.group.name: min(t.height for t in p.finished.labels) for p in pieces}
    assert heights["front"] == heights["back"] == pytest.approx(0.6)
    assert min(heights.values()) >= 0.1
