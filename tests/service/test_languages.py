"""Which language answers speak: `output.language`, then `Accept-Language`, then English.

Source of the header's form: RFC 9110, 12.5.4; of looking up by the first part: RFC 4647, 3.4.
"""

import json

import pytest
from asking import example
from hypothesis import given
from hypothesis import strategies as st

from service.languages import LANGUAGES, preferred_language

FRENCH = {"accept-language": "fr-CA, fr;q=0.9, en;q=0.5"}


@pytest.mark.parametrize(
    ("header", "language"),
    [
        (None, "en"),
        ("", "en"),
        ("de", "de"),
        ("DE-at", "de"),
        ("fr;q=0.3, de;q=0.4", "de"),
        ("fr, de", "fr"),
        ("de;q=0, fr;q=0.1", "fr"),
        ("ja, zh-Hans;q=0.9", "en"),
        ("ja, de;q=0.1", "de"),
        ("*, de;q=0.5", "en"),
        ("de;q=0.5, en", "en"),
        ("fr ; q=0.7 ,de;q=0.8", "de"),
        ("de;q=2", "en"),
        ("d\u00e9, <script>, de-", "de"),
    ],
)
def test_the_header_is_read_as_the_standard_says(header, language):
    assert preferred_language(header) == language


@given(st.text(max_size=200))
def test_no_header_is_too_odd(header):
    assert preferred_language(header) in LANGUAGES


def an_order():
    """The example order without an output: it names no language."""
    return {name: value for name, value in example().items() if name != "output"}


def speaking(language):
    return {**an_order(), "output": {"language": language}}


ASKED = {
    "/v1/patterns": an_order,
    "/v1/draft-sheets": an_order,
    "/v1/lay-plans": lambda: {"orders": [an_order()], "laying": {"budget": 0}},
    "/v1/size-ranges": lambda: {
        "garment": {"kind": "straight_skirt"},
        "sizes": {"table": "women", "names": ["88-regular"]},
    },
}


@pytest.mark.parametrize("address", ASKED)
def test_every_answer_speaks_what_the_header_asks_for_and_says_so(service, address):
    """A draft sheet whose steps no catalogue has yet is told in English, and says that."""
    told = service.ask("POST", address, json=ASKED[address](), headers=FRENCH)
    assert told.status_code == 200
    speaks = told.headers["content-language"]
    assert speaks == "fr" or address == "/v1/draft-sheets"
    assert "Accept-Language" in told.headers["vary"]
    english = service.ask("POST", address, json=ASKED[address](), headers={"accept-language": "ja"})
    assert english.headers["content-language"] == "en"
    assert told.text != english.text or speaks == "en"


@pytest.mark.parametrize("address", ASKED)
def test_the_order_goes_before_the_header(service, address):
    asked = {**ASKED[address](), "output": {"language": "de"}}
    told = service.ask("POST", address, json=asked, headers=FRENCH)
    assert told.headers["content-language"] == "de" or address == "/v1/draft-sheets"
    bare = service.ask("POST", address, json=asked)
    assert told.content == bare.content


@pytest.mark.parametrize("address", ASKED)
def test_an_unknown_language_in_the_order_is_refused(service, address):
    asked = {**ASKED[address](), "output": {"language": "xx"}}
    told = service.ask("POST", address, json=asked, headers=FRENCH)
    assert told.status_code == 422
    assert told.json()["errors"][0]["pointer"] == "/output/language"
    assert {"fr", "de"} <= set(told.json()["errors"][0]["allowed"])


@pytest.mark.parametrize(
    "address", ["/v1/garments/trousers/sample", "/v1/size-tables/women/88-regular/trousers"]
)
def test_what_may_be_kept_has_a_tag_for_each_language(service, address):
    french, german = (
        service.ask("GET", address, headers={"accept-language": name}) for name in ("fr", "de")
    )
    assert french.headers["content-language"] == "fr"
    assert french.headers["etag"] != german.headers["etag"]
    assert french.json()["pieces"][0]["title"] == "Devant du pantalon"
    again = service.ask(
        "GET", address, headers={"accept-language": "fr", "if-none-match": french.headers["etag"]}
    )
    assert again.status_code == 304


def test_each_order_of_a_batch_speaks_its_own_language_or_the_header_s(service):
    lines = [{**an_order(), "id": 1}, {**speaking("de"), "id": 2}]
    told = service.ask(
        "POST",
        "/v1/batches",
        content="\n".join(json.dumps(line) for line in lines),
        headers={"content-type": "application/x-ndjson", **FRENCH},
    )
    answers = [json.loads(line) for line in told.text.splitlines()]
    titles = {a["id"]: a["answer"]["pieces"][0]["title"] for a in answers if a["type"] == "result"}
    assert titles == {1: "Devant du pantalon", 2: "Vorderhose"}
