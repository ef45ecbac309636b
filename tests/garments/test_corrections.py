"""After the toile: each pin moves what a fitter moves, and the seams still match.

Amounts are common practice, no source.
"""

from __future__ import annotations

import pytest

from drafting.errors import SpecError
from drafting.garments import GARMENTS
from drafting.garments.trousers.corrections import PINS, SYMPTOMS
from drafting.garments.trousers.pins import Correction


def pinned(make, pin: str, by: float, **options):
    return make(corrections=(Correction(pin=pin, by=by),), **options)


@pytest.mark.parametrize("pin", PINS)
@pytest.mark.parametrize("end", ["low", "high"])
def test_seams_still_match_at_both_ends_of_every_pin(make, pin, end):
    done = pinned(make, pin, getattr(PINS[pin], end))
    assert all(s.matches for s in done.seams)
    assert [f for f in done.pattern.findings if f.severity == "error"] == []


@pytest.mark.parametrize("pin", PINS)
def test_no_pin_goes_further_than_its_place_can_take(make, pin):
    with pytest.raises(SpecError, match=pin) as refused:
        pinned(make, pin, PINS[pin].high + 0.1)
    assert refused.value.where == "garment.corrections.0.by"


def _measured(done) -> dict[str, float]:
    pattern = done.pattern.pattern
    front, back = pattern.piece("front"), pattern.piece("back")
    return {
        "hip": {c.name: c.drafted for c in done.pattern.checks}["finished_hip_girth"],
        "inseam": front.edge("inseam").path.length(),
        "front crotch": front.edge("fly").path.length() + front.edge("front_crotch").path.length(),
        "back crotch": back.edge("back_crotch").path.length(),
        "side": pattern.piece("side_piece").edge("side").path.length()
        + front.edge("side").path.length(),
        "front raise": front.edge("fly").path.end.y,
        "back raise": back.edge("waist").path.end.y,
        "hem middle": sum(p.x for p in front.level("hem")[:2]) / 2,
    }


@pytest.mark.parametrize(
    ("pin", "by", "what", "least", "most"),
    [
        ("let_out_sides", 1.0, "hip", 3.8, 4.2),  # four edges of 1 cm
        ("let_out_sides", -0.5, "hip", -2.2, -1.8),
        ("lengthen_rise", 1.5, "inseam", -1.6, -1.4),
        ("lengthen_rise", 1.5, "front crotch", 1.0, 2.2),
        ("lengthen_front_fork", 1.0, "front crotch", 0.6, 1.1),
        ("lengthen_back_fork", 1.0, "back crotch", 0.7, 1.1),
        ("scoop_front", 0.7, "front crotch", 0.2, 0.8),
        ("scoop_back", 0.7, "back crotch", 0.2, 0.9),
        ("raise_front", 1.5, "front raise", 1.49, 1.51),
        ("raise_back", -1.0, "back raise", -1.01, -0.99),
        ("raise_sides", 1.0, "side", 0.8, 1.1),
        ("seat_wedge", 2.0, "back crotch", 1.6, 2.4),
        ("seat_wedge", -1.5, "back crotch", -1.9, -1.0),
        ("swing_leg", 1.0, "hem middle", -1.01, -0.99),  # outward is to the side, on the left
    ],
)
def test_each_pin_moves_what_it_says(make, pin, by, what, least, most):
    before, after = _measured(make()), _measured(pinned(make, pin, by))
    assert least <= after[what] - before[what] <= most


def test_pins_add_up(make):
    two = make(
        corrections=(Correction(pin="raise_back", by=0.5), Correction(pin="raise_back", by=0.5))
    )
    one = pinned(make, "raise_back", 1.0)
    assert _measured(two) == pytest.approx(_measured(one))


def test_every_symptom_leads_to_a_pin_within_its_bounds():
    for symptom in (s for s in SYMPTOMS if s.pin):
        pin = PINS[symptom.pin]
        assert pin.low <= symptom.low <= symptom.high <= pin.high
    assert {s.pin for s in SYMPTOMS} - {""} == set(PINS)
    assert GARMENTS["trousers"].symptoms == SYMPTOMS


def test_pins_are_recorded_as_steps(make):
    names = [s.name for s in pinned(make, "seat_wedge", 1.0).steps]
    assert "toile: seat wedge" in names


@pytest.mark.parametrize("by", [-2.4, -0.6, 0.6, 2.4])
@pytest.mark.parametrize(
    "options", [{"fit": "wide"}, {"knee_girth": 62.0, "hem_girth": 44.0}, {"front": "two_pleats"}]
)
def test_a_swung_leg_keeps_its_hem_whatever_its_shape(make, options, by):
    """A slanting hem bows to one side of its level line at one end, to the other at the other."""
    plain, swung = make(**options), pinned(make, "swing_leg", by, **options)
    assert [f for f in swung.pattern.findings if f.severity == "error"] == []
    hems = [
        {c.name: c.drafted for c in w.pattern.checks}["finished_hem_girth"] for w in (plain, swung)
    ]
    assert hems[0] == pytest.approx(hems[1], abs=0.01)
