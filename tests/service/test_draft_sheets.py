"""Draft sheets over HTTP: a garment in, its construction out, in words, pictures and pages."""

from __future__ import annotations

import json
from xml.etree import ElementTree as ET

import pypdfium2
import pytest
from asking import Service, refused, trouble
from pydantic import TypeAdapter

from drafting.garments import GARMENTS
from service.app import create_app
from service.settings import Settings
from service.teaching.answers import BesideAnswer, DraftSheetAnswer

BODY = {"waist_girth": 74, "hip_girth": 101, "side_waist_to_hip": 20.5}
SKIRT = {"measurements": BODY, "garment": {"kind": "straight_skirt", "length": 60}}


@pytest.fixture(name="sheets", scope="module")
def sheets_fixture():
    service = Service(create_app(Settings(), GARMENTS))
    return lambda document, query="", **headers: service.ask(
        "POST", f"/v1/draft-sheets{query}", json=document, headers=headers
    )


def steps(answer):
    return [step for chapter in answer["chapters"] for step in chapter["steps"]]


@pytest.mark.parametrize("kind", GARMENTS)
def test_every_garment_is_taught_on_its_reference_body(sheets, kind):
    found = sheets({"garment": {"kind": kind}})
    assert found.status_code == 200
    TypeAdapter(DraftSheetAnswer).validate_python(found.json(), strict=True)
    told = {m["name"]: m["taken"] for m in found.json()["measures"]}
    sample = dict(GARMENTS[kind].sample)
    assert all(told[name] == pytest.approx(10 * sample[name]) for name in GARMENTS[kind].needs)


def test_an_order_is_taught_with_its_own_numbers_and_headers(sheets):
    found = sheets({**SKIRT, "date": "2026-05-02"})
    answer = found.json()
    assert answer["date"] == "2026-05-02"
    assert found.headers["cache-control"] == "no-store"
    assert found.headers["pattern-id"] == answer["id"]
    assert found.headers["pattern-verdict"] == answer["verdict"]
    assert [s["number"] for s in steps(answer)] == list(range(1, len(steps(answer)) + 1))


def test_inches_are_told_as_a_tape_shows_them(sheets):
    inches = {
        "unit": "in",
        "measurements": {"waist_girth": 29, "hip_girth": "39 3/4", "side_waist_to_hip": 8},
        "garment": {"kind": "straight_skirt"},
    }
    answer = sheets(inches).json()
    assert answer["shown_in"] == "in"
    assert {m["shown"] for m in answer["measures"]} >= {"29 in", "39 3/4 in", "8 in"}


def test_a_step_is_shown_by_a_picture(sheets):
    for step in (1, 7):
        found = sheets(SKIRT, f"?format=svg&step={step}")
        assert found.headers["content-type"] == "image/svg+xml"
        title = ET.fromstring(found.content).find("{http://www.w3.org/2000/svg}title").text  # noqa: S314
        assert title.startswith(f"{step}. ")
    assert sheets(SKIRT, accept="image/*").content != found.content


@pytest.mark.parametrize("query", ["?format=svg&step=9999", "?format=pdf&step=2", "?step=2"])
def test_a_step_that_cannot_be_shown_is_refused(sheets, query):
    found = refused(sheets(SKIRT, query), 422, "invalid-order")
    assert trouble(found, "/output/step")["code"] == "cannot_print"


def test_frames_are_the_pictures_of_all_steps(sheets):
    answer = sheets({**SKIRT, "sheet": {"frames": True}}).json()
    assert len(answer["frames"]) == len(steps(answer))
    assert answer["frames"][6] == sheets(SKIRT, "?format=svg&step=7").text


def test_the_class_sheet_is_a_pdf_on_the_paper_asked_for(sheets):
    for paper, size in (("letter", (612, 792)), ("a4", (595.3, 841.9)), ("roll", (595.3, 841.9))):
        found = sheets({**SKIRT, "output": {"format": "pdf", "paper": paper}})
        document = pypdfium2.PdfDocument(found.content)
        assert document[0].get_size() == pytest.approx(size, abs=0.1)
    assert found.headers["content-disposition"] == 'inline; filename="straight_skirt-draft.pdf"'


def test_an_exercise_hides_the_numbers_and_solves_them_last(sheets):
    plain, blank = (
        sheets({**SKIRT, "sheet": {"blank": blank}}, "?format=pdf") for blank in (False, True)
    )
    texts = [
        [p.get_textpage().get_text_bounded() for p in pypdfium2.PdfDocument(f.content)]
        for f in (plain, blank)
    ]
    assert "26.75" in " ".join(texts[0])
    assert "Solutions" not in " ".join(texts[0])
    assert "26.75" not in " ".join(texts[1][:-2])
    assert "26.75" in " ".join(texts[1][-2:])


def test_two_methods_are_laid_over_each_other(sheets):
    both = {**SKIRT, "sheet": {"compare": "proportional"}}
    answer = sheets(both).json()
    TypeAdapter(BesideAnswer).validate_python(answer, strict=True)
    assert answer["methods"] == ["block", "proportional"]
    hips = next(d for d in answer["lengths"] if d["what"] == "back hip")
    # hip/4 + ease/4 + 0.75 against hip/4 + ease/4 - 1, in mm; the two methods' own rules
    assert hips["difference"] == pytest.approx(-17.5)
    svg = ET.fromstring(sheets(both, "?format=svg").content)  # noqa: S314 - own bytes
    assert {e.get("id") for e in svg} >= {"beside-method-1", "beside-method-2"}
    assert sheets(both, "?format=pdf").content.startswith(b"%PDF")


@pytest.mark.parametrize(
    ("sheet", "at", "code"),
    [
        ({"compare": "magic"}, "/sheet/compare", "not_a_choice"),
        ({"compare": "block"}, "/sheet/compare", "not_a_choice"),
        ({"blank": "yes"}, "/sheet/blank", "wrong_type"),
        ({"colour": 1}, "/sheet/colour", "unknown_field"),
        (7, "/sheet", "wrong_type"),
    ],
)
def test_a_sheet_that_cannot_be_is_refused(sheets, sheet, at, code):
    found = refused(sheets({**SKIRT, "sheet": sheet}), 422, "invalid-order")
    assert trouble(found, at)["code"] == code


def test_a_garment_with_one_method_has_nothing_to_compare(sheets):
    found = refused(
        sheets({"garment": {"kind": "circle_skirt"}, "sheet": {"compare": "block"}}),
        422,
        "invalid-order",
    )
    assert "leave compare out" in trouble(found, "/sheet/compare")["detail"]


def test_the_orders_own_troubles_are_told_with_the_sheets(sheets):
    wrong = {**SKIRT, "measurements": {"wasit_girth": 74}, "sheet": {"blank": 1}}
    found = refused(sheets(wrong), 422, "invalid-order")
    assert {t["pointer"] for t in found["errors"]} >= {"/measurements/wasit_girth", "/sheet/blank"}


def test_a_body_that_cannot_be_drafted_is_refused_as_a_pattern_is(sheets):
    short = {**SKIRT, "garment": {"kind": "straight_skirt", "length": 25}}
    assert sheets(short).status_code == 422
    assert refused(sheets([1]), 422, "invalid-order")


def test_the_same_request_gives_the_same_bytes(sheets):
    for query in ("", "?format=svg", "?format=pdf"):
        assert sheets(SKIRT, query).content == sheets(SKIRT, query).content


def test_the_answer_carries_no_more_than_was_sent(sheets):
    """No clock: no date unless one is given."""
    answer = sheets(SKIRT).json()
    assert answer["date"] == ""
    assert "2026" not in json.dumps(answer)
