"""The block of text: what it says, and that it covers nothing."""

from dataclasses import replace

import pytest
from hand_made import band, finished, front, pattern, yoke
from rulers import length_of, misplaced

from drafting.drawing import Text, draw_pieces, label_piece
from drafting.drawing.lettering import width
from drafting.pattern import Cut, Finish

LONG = "Order 1042 for the evening class, second fitting, the cloth with the broad stripe; " * 4
REFERENCES = ("", "order 1042", LONG, "W" * 200, "Жакет Анны № 7", "φόρεμα 12", "№ <b>&'\"")
PIECES = (front, yoke, band)


def labels(piece, **changed):
    asked = {
        "title": "Hand-made trousers",
        "number": 1,
        "total": 3,
        "reference": "order 1042",
        "finish": Finish(),
        "verdict": "sound",
    }
    return label_piece(finished(piece), **(asked | changed))


def words(found):
    return " ".join(label.text for label in found)


def test_a_label_tells_piece_number_cutting_reference_and_allowance():
    said = words(labels(front()))
    for wanted in (
        "Trouser front",
        "Hand-made trousers",
        "Piece 1 of 3",
        "Cut 2 main fabric, one mirrored (left + right)",
        "order 1042",
        "Allowance included: 1 cm on every edge",
    ):
        assert wanted in said


def test_each_cloth_has_its_own_instruction_and_a_half_piece_says_fold():
    said = words(labels(yoke()))
    assert "Cut 1 main fabric" in said
    assert "Cut 1 fusible interfacing" in said
    assert "Cut on the fold" in said


def test_four_cut_mirrored_means_two_of_each_hand():
    piece = replace(front(), cut=(Cut("pocketing", 4, mirrored=True),))
    assert "Cut 4 pocketing, two mirrored (left + right)" in words(labels(piece))


def test_edges_with_another_allowance_are_named_with_it():
    piece = front()
    edges = {e.name: 1.0 for e in piece.edges} | {"hem": 4.0, "waist": 0.0}
    uneven = replace(finished(piece), allowances=tuple(edges[e.name] for e in piece.edges))
    said = words(
        label_piece(
            uneven, title="T", number=1, total=1, reference="", finish=Finish(), verdict="sound"
        )
    )
    assert "Allowances included: 1 cm, hem 4 cm, waist none" in said


def test_inches_are_told_as_fractions():
    assert "Allowance included: 3/8 in on every edge" in words(labels(front(), unit="in"))


def test_a_net_pattern_says_that_allowances_are_missing():
    net = replace(finished(front()), allowances=(0.0,) * 5)
    said = words(
        label_piece(
            net, title="T", number=1, total=1, reference="", finish=Finish(), verdict="sound"
        )
    )
    assert "No allowances: add them before cutting" in said


@pytest.mark.parametrize("draw", PIECES)
def test_an_unsound_pattern_is_not_for_cutting_on_every_piece(draw):
    assert "NOT FOR CUTTING" in words(labels(draw(), verdict="unsound"))
    assert "NOT FOR CUTTING" not in words(labels(draw()))


def test_a_toile_says_so():
    assert "Toile" in words(labels(front(), finish=Finish(purpose="toile")))


def test_letters_are_six_millimetres_on_a_big_piece():
    assert min(label.height for label in labels(front())) == pytest.approx(0.6)


@pytest.mark.parametrize("reference", REFERENCES)
@pytest.mark.parametrize("draw", PIECES)
def test_no_letter_of_a_reference_is_lost(draw, reference):
    said = words(labels(draw(), reference=reference)).replace(" ", "")
    assert reference.replace(" ", "") in said


@pytest.mark.parametrize("verdict", ["sound", "unsound"])
@pytest.mark.parametrize("reference", REFERENCES)
@pytest.mark.parametrize("draw", PIECES)
def test_texts_lie_inside_the_stitching_line_and_cover_nothing(draw, reference, verdict):
    (drawn,) = draw_pieces(pattern(draw()), reference=reference, verdict=verdict)
    assert misplaced(drawn.group) == []


def test_every_level_and_lengthen_line_is_named():
    drawn = draw_pieces(pattern(front()), reference="", verdict="sound")[0]
    said = [t.text for t in drawn.group.items if isinstance(t, Text)]
    for name in ("waist line", "hip line", "crotch line", "knee line", "grain"):
        assert said.count(name) == 1
    assert said.count("lengthen or shorten here") == 2


@pytest.mark.parametrize("text", ["Trouser front", "Жакет Анны № 7", "Ωμέγα ½", "Ÿ (g) , |"])
def test_widths_agree_with_another_reader_of_the_font(text):
    assert width(text, 0.6) == pytest.approx(length_of(text, 0.6), rel=1e-3)
