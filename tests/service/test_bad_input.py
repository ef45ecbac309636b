"""Whatever is wrong with an order: a problem that points at the field and says what to change."""

from __future__ import annotations

import json
import re
from typing import Any

import apron
import pytest
from asking import example, refused, trouble

from service.settings import Settings


def changed(path: str, value: Any) -> dict[str, Any]:
    """The example with one field set; the path is a JSON pointer."""
    order = example()
    *above, last = path.strip("/").split("/")
    here = order
    for part in above:
        here = here.setdefault(part, {})
    here[last] = value
    return order


WRONG: list[tuple[str, Any, str, str]] = [
    ("/measurements/waist_girth", "74", "unreadable_length", "number of cm"),
    ("/measurements/waist_girth", True, "wrong_type", "not true"),
    ("/measurements/waist_girth", None, "wrong_type", "not null"),
    ("/measurements/waist_girth", [74], "wrong_type", "not a list"),
    ("/measurements/waist_girth", -74, "out_of_range", "not possible"),
    ("/measurements/waist_girth", 0, "out_of_range", "not possible"),
    ("/measurements/waist_girth", 1e308, "out_of_range", "as measured"),
    ("/measurements/waist_girth", -1e308, "out_of_range", "as measured"),
    ("/measurements/waist_girth", 29, "out_of_range", '"unit": "in"'),
    ("/measurements/waist_girth", 740, "out_of_range", '"unit": "mm"'),
    ("/measurements/waist_girth", {"left": 74, "right": 74}, "one_value_only", "one value"),
    ("/measurements/outside_leg_length", {"left": 103}, "incomplete_sides", "left and right"),
    ("/measurements/waist_girt", 74, "unknown_measure", "'waist_girth'"),
    ("/measurements/shoulder_slope", "20", "wrong_type", "Send a number"),
    ("/measurements", [], "wrong_type", "an object"),
    ("/unit", "inch", "not_a_choice", "'in'"),
    ("/unit", 5, "not_a_choice", "'cm'"),
    ("/figure", "woman", "not_a_choice", "'women'"),
    ("/garment", "trousers", "wrong_type", "an object"),
    ("/garment/kind", "trouser", "unknown_garment", "trousers"),
    ("/garment/method", "blok", "not_a_choice", "'block'"),
    ("/garment/hem_girth", 5, "out_of_range", "20 cm to 250 cm"),
    ("/garment/hem_girth", True, "wrong_type", "a number"),
    ("/garment/hemgirth", 44, "unknown_field", "'hem_girth'"),
    ("/finish/purpose", "muslin", "not_a_choice", "'toile'"),
    ("/finish/allowances/hem", 40, "out_of_range", "0 cm to 15 cm"),
    ("/finish/allowances/hems", 4, "unknown_field", "'hem'"),
    ("/output/paper", "A4", "not_a_choice", "'a4'"),
    ("/output/format", "dwg", "not_a_choice", "'svg'"),
    ("/output/margin", 1e308, "out_of_range", "from 0 to 100"),
    ("/output/margin", "10", "wrong_type", "a number"),
    ("/reference", 7, "wrong_type", "a text"),
    ("/reference", "x" * 121, "text_too_long", "120"),
    ("/reference", "x" * 10_000, "text_too_long", "120"),
    ("/reference", "a\nb", "unprintable_character", "U+000A"),
    ("/reference", "a\u0000b", "unprintable_character", "U+0000"),
    ("/reference", "a\u202eb", "unprintable_character", "U+202E"),
    ("/reference", "a\uffffb", "unprintable_character", "U+FFFF"),
    ("/date", "25.11.2026", "unreadable_date", "year, month and day"),
    ("/date", "2026-02-30", "unreadable_date", "of the calendar"),
    ("/date", "2026-11-25T10:00:00", "unreadable_date", "2026-11-25"),
    ("/date", 20261125, "unreadable_date", "year, month and day"),
    ("/date", None, "unreadable_date", "year, month and day"),
    ("/accept_unusual", "yes", "wrong_type", "true or false"),
    ("/allow_unsound", 1, "wrong_type", "true or false"),
    ("/refrence", "x", "unknown_field", "'reference'"),
    ("/a~1b", "x", "unknown_field", "no field"),
]


@pytest.mark.parametrize(("path", "value", "code", "says"), WRONG)
def test_what_is_wrong_is_pointed_at(service, path, value, code, says):
    document = changed(path.replace("~1", "~"), value) if "~1" in path else changed(path, value)
    if "~1" in path:
        document = {**example(), "a/b": value}
    problem = refused(service.order(document), 422, "invalid-order")
    told = trouble(problem, path)
    assert told["code"] == code
    assert says in told["detail"]


def test_what_was_sent_is_told_back_shortened(service):
    problem = refused(service.order(changed("/reference", "x" * 10_000)), 422, "invalid-order")
    assert len(trouble(problem, "/reference")["received"]) < 150


@pytest.mark.parametrize("name", ["measurements", "garment"])
def test_a_missing_part_is_named(service, name):
    order = example()
    del order[name]
    told = trouble(refused(service.order(order), 422, "invalid-order"), f"/{name}")
    assert (told["code"], told["received"]) == ("missing", None)


def test_a_garment_without_a_kind_is_asked_for_one(service, apron_service):
    for each in (service, apron_service):
        problem = refused(each.order({**example(), "garment": {}}), 422, "invalid-order")
        assert trouble(problem, "/garment/kind")["code"] == "missing"


def test_a_missing_measure_is_named(service):
    order = example()
    del order["measurements"]["hip_girth"]
    problem = refused(service.order(order), 422, "invalid-order")
    assert trouble(problem, "/measurements/hip_girth")["code"] == "missing_measure"


def test_all_troubles_are_told_at_once(service):
    order = changed("/garment/hem_girth", 5)
    order["measurements"]["waist_girth"] = "wide"
    order["refrence"] = "x"
    problem = refused(service.order(order), 422, "invalid-order")
    pointers = {error["pointer"] for error in problem["errors"]}
    assert pointers == {"/garment/hem_girth", "/measurements/waist_girth", "/refrence"}
    assert "2 more" in problem["detail"]


def test_many_troubles_do_not_make_a_long_answer(service):
    order = example() | {f"field{i}": i for i in range(5000)}
    answer = service.order(order)
    assert len(refused(answer, 422, "invalid-order")["errors"]) == 50
    assert len(answer.content) < 20_000


@pytest.mark.parametrize(
    ("unit", "value", "low", "high", "words"),
    [
        ("cm", 5, 20, 250, "20 cm to 250 cm"),
        ("mm", 50, 200, 2500, "200 mm to 2500 mm"),
        ("in", 2, 7.875, 98.425, "7 7/8 in to 98 3/8 in"),
    ],
)
def test_limits_are_told_in_the_orders_unit(service, unit, value, low, high, words):
    order = {**example(), "unit": unit, "garment": {"kind": "trousers", "hem_girth": value}}
    told = trouble(refused(service.order(order), 422, "invalid-order"), "/garment/hem_girth")
    assert told["received"] == value
    assert told["allowed"] == pytest.approx([low, high], abs=0.001)
    assert words in told["detail"]


def test_a_value_within_the_limits_told_is_taken(apron_service):
    order = {**apron.order(), "unit": "in", "measurements": {"waist_girth": 29, "hip_girth": 40}}
    order["garment"]["length"] = 2
    told = trouble(refused(apron_service.order(order), 422, "invalid-order"), "/garment/length")
    for length in told["allowed"]:
        order["garment"]["length"] = length
        assert apron_service.order(order).status_code == 200


def test_measures_in_inches_are_refused_in_inches(service):
    order = {**example(), "unit": "in"}
    problem = refused(service.order(order), 422, "invalid-order")
    told = trouble(problem, "/measurements/hip_girth")
    assert told["received"] == 101
    assert told["allowed"] == pytest.approx([60 / 2.54, 230 / 2.54], abs=0.001)
    assert '"unit": "cm"' in told["detail"]


def test_contradicting_measures_are_told(service):
    order = changed("/measurements/side_waist_to_hip", 34)
    order["measurements"]["body_rise"] = 20
    problem = refused(service.order(order), 422, "invalid-order")
    told = trouble(problem, "/measurements/side_waist_to_hip")
    assert told["code"] == "contradicting_measures"
    assert "body_rise" in told["detail"]


BAD_JSON: list[tuple[bytes, str]] = [
    (b"", "empty_body"),
    (b"  \n", "empty_body"),
    (b"{", "not_json"),
    (b"{'unit': 'cm'}", "not_json"),
    (b'{"unit": "cm"} {}', "not_json"),
    (b'{"unit": NaN}', "not_finite"),
    (b'{"unit": -Infinity}', "not_finite"),
    (b'{"unit": 1e999}', "not_finite"),
    (b'{"unit": ' + b"9" * 400 + b"}", "not_finite"),
    (b'{"unit": ' + b"9" * 5000 + b"}", "not_finite"),
    (b'{"unit": "cm", "unit": "in"}', "field_twice"),
    (b'{"garment": {"kind": "trousers", "kind": "trousers"}}', "field_twice"),
    (b'{"unit": "\xff"}', "not_utf8"),
    (b"\xef\xbb\xbf{}", "byte_order_mark"),
    ('{"unit": "cm"}'.encode("utf-16"), "not_utf8"),
    (b'{"reference": "\\ud800"}', "half_character"),
    (b'{"\\udfff": 1}', "half_character"),
    (b'[["\\udfff"]]', "half_character"),
    (b"[" * 100_000, "nested_too_deep"),
    (b'{"a":' * 33 + b"1" + b"}" * 33, "nested_too_deep"),
]


@pytest.mark.parametrize(("body", "code"), BAD_JSON)
def test_what_is_not_json_is_refused(service, body, code):
    problem = refused(service.send(body), 400, "malformed-json")
    assert trouble(problem, "")["code"] == code


def test_brackets_in_texts_are_not_depth(service):
    assert service.order({**example(), "reference": "[" * 60 + '"' + "{" * 40}).status_code == 200


@pytest.mark.parametrize("body", [b"[]", b"null", b"7", b'"order"', b"true"])
def test_json_that_is_no_object_is_refused(service, body):
    assert refused(service.send(body), 422, "invalid-order")["errors"][0]["pointer"] == ""


@pytest.mark.parametrize(
    "headers",
    [
        {"Content-Type": "text/plain"},
        {"Content-Type": "application/x-www-form-urlencoded"},
        {"Content-Type": "multipart/form-data; boundary=x"},
        {"Content-Type": ""},
        {"Content-Type": "application/json; charset=utf-16"},
        {"Content-Type": "application/jsonx"},
        {"Content-Encoding": "gzip"},
        {"Content-Encoding": "identity, br"},
    ],
)
def test_other_media_are_refused(service, headers):
    body = json.dumps(example()).encode()
    refused(service.send(body, **headers), 415, "unsupported-media-type")


def test_a_body_without_a_type_is_refused(service):
    answer = service.ask("POST", "/v1/patterns", content=b"{}")
    refused(answer, 415, "unsupported-media-type")


@pytest.mark.parametrize(
    "media", ["application/json", "Application/JSON; charset=UTF-8", "application/vnd.x+json"]
)
def test_json_by_another_name_is_taken(service, media):
    body = json.dumps(example()).encode()
    assert service.send(body, **{"Content-Type": media}).status_code == 200


def test_a_body_over_the_limit_is_refused_by_its_length(service):
    body = b" " * (Settings().max_body_bytes + 1)
    refused(service.send(body), 413, "too-large")
    refused(service.send(b"{}", **{"Content-Length": "9" * 40}), 413, "too-large")


def test_a_body_over_the_limit_is_refused_while_it_streams(service):
    seen = 0

    async def chunks():
        nonlocal seen
        for _ in range(10_000):
            seen += 1024
            yield b" " * 1024

    answer = service.ask(
        "POST", "/v1/patterns", content=chunks(), headers={"Content-Type": "application/json"}
    )
    refused(answer, 413, "too-large")
    assert seen < 2 * Settings().max_body_bytes


def test_a_body_of_just_the_limit_is_taken(service):
    body = json.dumps(example()).encode()
    assert service.send(body.ljust(Settings().max_body_bytes)).status_code == 200


def test_a_step_without_an_answer_cannot_be_drafted(apron_service):
    order = {**apron.order(trouble="construction"), "unit": "in"}
    order["measurements"] = {"waist_girth": 29, "hip_girth": 40}
    problem = refused(apron_service.order(order), 422, "cannot-draft")
    told = trouble(problem, "")
    assert told["detail"] == "The tie needs 5 in to 10 in more."
    assert told["received"] == pytest.approx(2)


def test_an_option_that_excludes_another_is_told_in_the_orders_unit(apron_service):
    order = {**apron.order(trouble="option"), "unit": "mm"}
    order["measurements"] = {"waist_girth": 740, "hip_girth": 1010}
    told = trouble(refused(apron_service.order(order), 422, "invalid-order"), "/garment/length")
    assert told["detail"] == "A length of 600 mm excludes pockets."
    assert (told["received"], told["allowed"]) == (600, [300, 508])


def test_paper_is_told_in_mm(apron_service):
    order = {**apron.order(trouble="paper"), "unit": "in"}
    order["measurements"] = {"waist_girth": 29, "hip_girth": 40}
    told = trouble(refused(apron_service.order(order), 422, "invalid-order"), "/output/margin")
    assert (told["received"], told["allowed"]) == (90, [0, 50])


def test_too_many_pages_are_refused_with_how_many_and_the_paper_that_would_do(service):
    """Pages that show but 5 cm each that their neighbours do not: hundreds of them."""
    output = {"format": "pdf", "margin": 35, "overlap": 88, "pairs": True}
    problem = refused(service.order({**example(), "output": output}), 422, "invalid-order")
    (error,) = problem["errors"]
    assert (error["pointer"], error["code"]) == ("/output/paper", "too_many_pages")
    assert error["received"] > error["allowed"] == 200
    assert f"{error['received']:.0f} pages" in error["detail"]
    assert re.search(r"paper \w+ would do", error["detail"])


def test_an_unsound_pattern_tells_what_failed(apron_service):
    order = {**apron.order(trouble="unsound"), "unit": "mm"}
    order["measurements"] = {"waist_girth": 740, "hip_girth": 1010}
    problem = refused(apron_service.order(order), 422, "unsound-pattern")
    told = {error["code"]: error for error in problem["errors"]}
    seam, cover = told["seam_mismatch"], told["failed_cover"]
    assert seam["received"] == pytest.approx(-50)
    assert seam["allowed"] == pytest.approx([-0.5, 0.5])
    assert cover["allowed"] == [5010, None]
    assert "at least 5010 mm" in cover["detail"]


def test_an_unusual_body_is_drafted_when_the_order_accepts_it(service):
    order = example()
    order["measurements"] |= {"body_rise": 38, "outside_leg_length": 92}
    problem = refused(service.order(order), 422, "unusual-body")
    assert problem["errors"][0]["pointer"].startswith("/measurements/")
    assert (
        service.order({**order, "accept_unusual": True, "allow_unsound": True}).status_code == 200
    )


def test_a_fault_is_answered_without_a_word_of_the_order(apron_service):
    answer = apron_service.order(apron.order(trouble="fault"))
    refused(answer, 500, "internal-error")
    assert "74" not in answer.text
    assert len(answer.headers["request-id"]) == 32


def test_an_order_that_takes_too_long_is_given_up(hasty_service):
    answer = hasty_service.order(apron.order(trouble="slow"))
    refused(answer, 503, "too-slow")
    assert int(answer.headers["retry-after"]) > 0
