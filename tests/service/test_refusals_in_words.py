"""What a client reads whose order is refused: what to change, in its language and its unit."""

from __future__ import annotations

import re

import pytest
from asking import refused

ENGLISH = re.compile(r"\b(the|The|would|choose|give|Send|It|and)\b")


def trousers(unit="cm", language="en", garment=(), **measures):
    """Trousers for an invented person."""
    body = {"waist_girth": 60, "hip_girth": 104, "side_waist_to_hip": 20.5, "body_rise": 27.5}
    body |= {"outside_leg_length": 103} | measures
    factor = {"cm": 1.0, "mm": 10.0, "in": 1 / 2.54}[unit]
    return {
        "unit": unit,
        "measurements": {name: round(value * factor, 4) for name, value in body.items()},
        "garment": {"kind": "trousers", **dict(garment)},
        "output": {"language": language},
        "accept_unusual": True,
    }


def trouble(service, order):
    (told,) = refused(service.order(order), 422, "invalid-order")["errors"]
    return told


@pytest.mark.parametrize(
    ("language", "unit", "numbers"),
    [
        # hips 104 and 2, waist 60 and 1: (106 - 61) / 2 = 22.5 cm of fly, 8.86 in
        ("en", "cm", ("22.5 cm", "4.5 cm")),
        ("fr", "cm", ("22,5 cm", "4,5 cm")),
        ("de", "cm", ("22,5 cm", "4,5 cm")),
        ("en", "mm", ("225 mm", "45 mm")),
        ("fr", "mm", ("225 mm", "45 mm")),
        ("en", "in", ("8 7/8 in", "1 3/4 in")),
        ("fr", "in", ("8 7/8 po", "1 3/4 po")),
    ],
)
def test_hips_that_pass_no_fly_hear_what_lets_them_through(service, language, unit, numbers):
    told = trouble(service, trousers(unit, language))
    assert told["pointer"] == "/garment/closure"
    assert told["received"] == "fly"
    assert told["allowed"] == ["side_zip", "none"]
    names = ('closure "side_zip"', 'waistband "elastic"', "waist_ease")
    assert [part for part in (*numbers, *names) if part not in told["detail"]] == []
    assert language == "en" or not ENGLISH.search(told["detail"])


@pytest.mark.parametrize("language", ["fr", "de"])
@pytest.mark.parametrize(
    ("garment", "measures", "kept"),
    [
        ({"waist_ease": 20}, {"hip_girth": 96}, ("0 cm", "10 cm")),
        ({"leg": "flard"}, {"hip_girth": 96}, ("'flared'", "'culottes'")),
        ({"inside_leg": 90}, {"hip_girth": 96}, ("90 cm", "inside_leg")),
        ({"leg": "tapered", "hem_girth": 60}, {"hip_girth": 96}, ("60 cm", 'leg "straight"')),
        ({}, {"hip_girth": 96, "thigh_girth": 97}, ()),
    ],
)
def test_a_refusal_is_one_sentence_in_the_language(service, language, garment, measures, kept):
    told = trouble(service, trousers("cm", language, garment, waist_girth=70, **measures))
    assert [part for part in kept if part not in told["detail"]] == []
    assert not ENGLISH.search(told["detail"])


def test_a_limit_that_is_open_is_told_as_open(service):
    told = trouble(service, trousers(garment={"hip_ease": -2}, waist_girth=70, hip_girth=96))
    assert told["allowed"] == [0.0, None]


@pytest.mark.parametrize(
    ("unit", "sent", "hint"),
    [
        ("cm", 960.0, '"unit": "mm"'),  # 960 mm is a hip
        ("cm", 38.0, '"unit": "in"'),  # 38 in is one
        ("in", 96.0, '"unit": "cm"'),
        ("cm", 300.0, ""),  # 300 in, 300 mm are none
        ("in", 120.0, '"unit": "cm"'),
    ],
)
def test_another_unit_is_advised_only_where_the_number_fits_in_it(service, unit, sent, hint):
    order = trousers(unit)
    order["measurements"]["hip_girth"] = sent
    problem = refused(service.order(order), 422, "invalid-order")
    told = next(e for e in problem["errors"] if e["pointer"] == "/measurements/hip_girth")
    assert ("It would fit" in told["detail"]) == bool(hint)
    assert hint in told["detail"]
    assert f'"unit": "{unit}"' not in told["detail"]
