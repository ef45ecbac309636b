"""What cannot be printed is refused over HTTP with what to change, in the order's language."""

import re

import pytest
from asking import example

REFUSED = {
    "margin": ({"margin": 90}, "/output/margin", "no_room_on_paper", "margin"),
    "overlap": ({"margin": 35, "overlap": 100}, "/output/overlap", "no_room_on_paper", "overlap"),
    "narrow roll": (
        {"paper": "roll", "roll_width": 400},
        "/output/roll_width",
        "roll_too_narrow",
        r"piece back is 4\d\d mm broad",
    ),
    "nothing left": (
        {"lines": "cut", "allowances": False},
        "/output/lines",
        "nothing_to_draw",
        "net or both",
    ),
    "no such piece": ({"pieces": ["wing"]}, "/output/pieces", "unknown_piece", "wing"),
    "no such page": ({"pages": ["Q9"]}, "/output/pages", "unknown_page", "Q9"),
}


def ordered(output):
    return {**example(), "output": output}


@pytest.mark.parametrize("case", REFUSED)
def test_what_cannot_be_printed_says_what_and_what_would_do(service, case):
    output, pointer, code, said = REFUSED[case]
    told = service.order(ordered({**output, "language": "en"}), "?format=pdf")
    assert told.status_code == 422
    (error,) = told.json()["errors"]
    assert (error["pointer"], error["code"]) == (pointer, code)
    assert re.search(said, error["detail"])
    assert told.headers["content-language"] == "en"


@pytest.mark.parametrize("case", REFUSED)
def test_it_says_so_in_german_too(service, case):
    output, pointer, code, _ = REFUSED[case]
    english = service.order(ordered({**output, "language": "en"}), "?format=pdf").json()
    told = service.order(ordered({**output, "language": "de"}), "?format=pdf")
    (error,) = told.json()["errors"]
    assert (error["pointer"], error["code"]) == (pointer, code)
    assert error["detail"] != english["errors"][0]["detail"]
    assert error["received"] == english["errors"][0]["received"]
    assert told.headers["content-language"] == "de"


@pytest.mark.parametrize("language", ["xx", "EN", "fr-FR", "", None, 7])
def test_an_unknown_language_is_refused_with_those_that_are_spoken(service, language):
    told = service.order(ordered({"language": language}))
    assert told.status_code == 422
    (error,) = told.json()["errors"]
    assert error["pointer"] == "/output/language"
    if isinstance(language, str):
        assert error["allowed"] == ["en", "fr", "de", "es", "it", "pt"]
