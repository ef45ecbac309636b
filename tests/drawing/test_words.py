"""Lengths in words, and tables that are whole."""

from dataclasses import fields

import pytest

from drafting.drawing import PAPER_NAMES, PAPERS, WORDS, amount


@pytest.mark.parametrize(
    ("cm", "unit", "told"),
    [
        (1.0, "cm", "1 cm"),
        (2.54, "cm", "2.5 cm"),
        (0.95, "in", "3/8 in"),
        (1.6, "in", "5/8 in"),
        (2.54, "in", "1 in"),
        (2.5, "in", "1 in"),
        (4.0, "in", "1 9/16 in"),
        (2.52, "in", "1 in"),
    ],
)
def test_lengths_are_told_as_tapes_have_them(cm, unit, told):
    assert amount(cm, unit) == told


def test_every_paper_has_a_size_and_every_language_every_sentence():
    assert set(PAPERS) == set(PAPER_NAMES)
    for words in WORDS.values():
        assert all(getattr(words, field.name) for field in fields(words))


@pytest.mark.parametrize(
    ("name", "width", "height"),
    [  # ISO 216; ANSI/ASME Y14.1 A and B, 8.5 x 11 and 11 x 17 in; Legal 8.5 x 14 in
        ("a4", 210, 297),
        ("a3", 297, 420),
        ("a2", 420, 594),
        ("a1", 594, 841),
        ("a0", 841, 1189),
        ("letter", 8.5 * 25.4, 11 * 25.4),
        ("legal", 8.5 * 25.4, 14 * 25.4),
        ("tabloid", 11 * 25.4, 17 * 25.4),
    ],
)
def test_papers_have_their_published_size(name, width, height):
    assert (PAPERS[name].width, PAPERS[name].height) == pytest.approx((width, height))
