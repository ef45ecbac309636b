"""Cloths that cannot be laid: which piece, by how much, and what would help."""

from __future__ import annotations

import pytest
from orders import order, piece

from drafting.errors import OutputError, SpecError
from drafting.laying import Cloth, Laying, lay

PLAIN = Laying(budget=0.0)


def refusal(work, **cloth):
    with pytest.raises(OutputError) as refused:
        lay((work,), {"main": Cloth(**cloth)}, PLAIN)
    return refused.value


def test_a_piece_too_broad_is_named_with_what_is_missing(standard):
    refused = refusal(standard, width=30.0)
    back = next(p for p in standard.pattern.pieces if p.piece.name == "back")
    left, _, right, _ = back.cut_line.bounds()
    others = [refused, *refused.also]
    told = next(r for r in others if "(back)" in r.message)
    assert f"{right - left - 27.0:.1f}".rstrip("0").rstrip(".") in told.message
    assert told.code == "cloth_too_narrow"
    assert told.where == "cloths.main.width"
    assert told.allowed[0] == pytest.approx(right - left + 3.0)


def test_the_width_that_is_advised_will_do(standard):
    for folded in (False, True):
        refused = refusal(standard, width=40.0, folded=folded)
        width = max(r.allowed[0] for r in (refused, *refused.also))
        enough = Cloth(width=width + 1e-6, folded=folded)
        assert lay((standard,), {"main": enough}, PLAIN).cloths
        short = Cloth(width=width - 0.1, folded=folded)
        with pytest.raises(OutputError):
            lay((standard,), {"main": short}, PLAIN)


def test_open_cloth_is_advised_where_it_helps():
    made = order(piece("skirt", (0, 0), (60, 0), (55, 70), (5, 70), cut=("main", 2, True)))
    assert "Lay the cloth open" in refusal(made, width=100.0, folded=True).message


def test_another_grain_is_advised_where_it_helps():
    made = order(piece("band", (0, 0), (95, 0), (95, 20), (0, 20)))
    assert "across the cloth" in refusal(made, width=90.0).message


def test_a_seam_is_advised_where_no_grain_helps():
    made = order(piece("circle_skirt", (0, 0), (150, 0), (150, 140), (0, 140)))
    message = refusal(made, width=90.0).message
    assert "No other grain helps" in message
    assert "a seam along the grain would, 2 parts" in message


def test_no_pieces_of_a_cloth_says_which_cloths_there_are(standard):
    with pytest.raises(OutputError, match="lining") as refused:
        lay((standard,), {"lining": Cloth()}, PLAIN)
    assert refused.value.allowed == ["fusible", "main", "pocketing"]


def test_too_many_pieces_states_the_limit(standard):
    orders = (standard,) * 16
    with pytest.raises(OutputError, match="320 pieces") as refused:
        lay(orders, {"main": Cloth()}, PLAIN)
    assert refused.value.allowed == (1, 300)


def test_selvedges_that_leave_nothing_are_refused(standard):
    with pytest.raises(SpecError, match="leave nothing"):
        lay((standard,), {"main": Cloth(width=20.0, selvedge=10.0)}, PLAIN)
