"""Lengths say the arithmetic they came from, as a cutter writes it."""

from __future__ import annotations

import pytest

from drafting.trace import Length, larger, smaller
from drafting.trace.length import said, share_words

HIP, WAIST, EASE = Length(94, "hip"), Length(68, "waist"), Length(4, "hip ease")


@pytest.mark.parametrize(
    ("length", "formula", "value"),
    [
        (HIP / 12 + 1.5, "1/12 hip + 1.5 cm", 94 / 12 + 1.5),
        ((HIP - WAIST) / 4 - 0.75, "1/4 (hip - waist) - 0.75 cm", 5.75),
        (HIP / 4 + EASE * 3 / 8, "1/4 hip + 3/8 hip ease", 25.0),
        ((HIP - WAIST) * 2 / 3 / 2, "1/3 (hip - waist)", 26 / 3),
        (0 + HIP / 2 + 0, "1/2 hip", 47.0),
        (5 - HIP, "5 cm - hip", -89.0),
        (HIP + (-0.5), "hip - 0.5 cm", 93.5),
        (HIP - (-0.5), "hip + 0.5 cm", 94.5),
        (HIP - (WAIST + 1), "hip - (waist + 1 cm)", 25.0),
        (HIP * 1.5, "3/2 hip", 141.0),
        (HIP * 2, "2 × hip", 188.0),
        (HIP * 0.1592, "0.1592 × hip", 94 * 0.1592),
        (Length(3.0) * 2 / 3, "2 cm", 2.0),
        (HIP + 1e-4, "hip", 94.0001),
        (Length(16), "16 cm", 16.0),
        (larger(HIP, WAIST - 2.5), "the larger of hip and (waist - 2.5 cm)", 94.0),
        (
            smaller(larger(4, WAIST), HIP),
            "the smaller of (the larger of 4 cm and waist) and hip",
            68,
        ),
    ],
)
def test_the_formula_is_the_arithmetic(length, formula, value):
    assert length.formula == formula
    assert float(length) == pytest.approx(value)


def test_names_give_way_to_numbers():
    assert (HIP / 12 + 1.5).with_numbers() == "1/12 × 94 cm + 1.5 cm"
    assert ((HIP - WAIST) / 4).with_numbers() == "1/4 (94 cm - 68 cm)"


def test_another_unit_shows_all_its_numbers():
    def inches(cm: float) -> str:
        return f"{float(cm) / 2.54:.1f} in"

    assert said(HIP / 4 + 2.54, inches) == "1/4 hip + 1.0 in"
    assert said(HIP / 4 + 2.54, inches, numbers=inches) == "1/4 × 37.0 in + 1.0 in"


def test_shares_are_fractions_where_they_are_simple():
    told = {0.25: "1/4", 3 / 8: "3/8", 1 / 12: "1/12", 2 / 3: "2/3", 0.3: "3/10", 0.1592: "0.1592"}
    assert {share: share_words(share) for share in told} == told


def test_a_length_is_a_number_to_everyone_else():
    assert abs(Length(-3, "x")) == 3
    assert max(HIP, WAIST) is HIP
    assert f"{HIP:.1f}" == "94.0"


def test_a_length_that_went_round_in_a_search_is_told_by_its_number():
    """Its formula would double at each turn."""
    length = Length(1.0, "start")
    for _ in range(200):
        length = length / 2 + length / 2
    assert length.formula == "1 cm"
    assert (Length(2.0, "hip") / 4 + 1).formula == "1/4 hip + 1 cm"
