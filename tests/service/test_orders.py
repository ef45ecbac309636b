"""A good order gives a pattern, in every format and unit."""

from __future__ import annotations

import copy
import io
import json
import re
import time
import xml.etree.ElementTree as ET

import apron
import pikepdf
import pypdfium2
import pytest
from asking import EXAMPLES, example
from pydantic import TypeAdapter

from drafting import DRAFTING_VERSION
from drafting.export import FORMATS
from service.answers import PatternAnswer

BEGINNINGS = {
    "json": b"{", "svg": b"<?xml", "pdf": b"%PDF-", "png": b"\x89PNG", "dxf": b"999\n",
    "zip": b"PK",
}  # fmt: skip


@pytest.mark.parametrize("path", sorted(EXAMPLES.glob("*.json")), ids=lambda p: p.stem)
def test_every_example_order_gives_a_sound_pattern(service, path):
    answer = service.send(path.read_bytes())
    assert answer.status_code == 200, answer.text
    assert answer.headers["pattern-verdict"].startswith("sound")


@pytest.mark.parametrize("name", FORMATS)
def test_every_format_is_what_it_says_and_names_the_pattern(service, name):
    answer = service.order(example(), f"?format={name}")
    assert answer.status_code == 200
    assert answer.headers["content-type"] == FORMATS[name].media_type
    assert answer.content.startswith(BEGINNINGS[name])
    assert answer.headers["pattern-verdict"] == "sound"
    assert answer.headers["drafting-version"] == DRAFTING_VERSION
    assert answer.headers["cache-control"] == "no-store"
    assert answer.headers["content-disposition"] == f'inline; filename="trousers.{name}"'
    as_json = service.order(example(), "?format=json").json()
    assert answer.headers["pattern-id"] == as_json["id"]


def test_the_same_order_gives_the_same_bytes(service):
    for name in FORMATS:
        one, two = (service.order(example(), f"?format={name}").content for _ in range(2))
        assert one == two


def test_the_answer_has_the_shape_that_the_reference_promises(service):
    answer = service.order(example()).json()
    promised = TypeAdapter(PatternAnswer).validate_python(answer)
    assert promised == answer, "a field that the reference does not name"
    assert answer["verdict"] == "sound"
    assert {"front", "back", "waistband"} <= {piece["name"] for piece in answer["pieces"]}


def in_unit(order: dict, unit: str, factor: float) -> dict:
    changed = copy.deepcopy(order)
    changed["unit"] = unit
    changed["measurements"] = {k: v * factor for k, v in order["measurements"].items()}
    allowances = order["finish"]["allowances"]
    changed["finish"]["allowances"] = {k: v * factor for k, v in allowances.items()}
    return changed


@pytest.mark.parametrize(("unit", "factor"), [("mm", 10), ("in", 1 / 2.54)])
def test_a_body_gives_the_same_pattern_in_every_unit(service, unit, factor):
    in_cm = service.order(example()).json()
    other = service.order(in_unit(example(), unit, factor)).json()
    assert other["id"] == in_cm["id"]


@pytest.mark.parametrize(
    "written", ["29 1/2", "29-1/2", "29½", '29 1/2"', "29.5", "29,5", "29 1/2 in", " 29 ½ "]
)
def test_inches_may_be_written_as_a_tape_is_read(service, written):
    order = in_unit(example(), "in", 1 / 2.54)
    order["measurements"]["waist_girth"] = written
    answer = service.order(order)
    assert answer.status_code == 200, answer.text
    assert answer.json()["body"]["waist_girth"]["value"] == pytest.approx(29.5 * 25.4)


def test_the_paper_speaks_in_inches_when_the_order_does(service):
    order = in_unit(example(), "in", 1 / 2.54)
    assert "5/8 in" in service.order({**order, "finish": {"allowances": {"seam": 0.625}}}).text
    metric = {**order, "output": {"unit": "cm"}, "finish": {"allowances": {"seam": 0.625}}}
    assert "5/8 in" not in service.order(metric).text


def test_margins_are_mm_whatever_the_unit(service):
    order = in_unit(example(), "in", 1 / 2.54)
    same = [
        service.order({**o, "output": {"format": "pdf", "unit": "cm", "margin": 12}}).content
        for o in (order, example())
    ]
    assert len(same[0]) == len(same[1])


def test_angles_and_counts_are_not_lengths(apron_service):
    order = {
        "unit": "in",
        "measurements": {"waist_girth": 29, "hip_girth": 39},
        "garment": {
            "kind": "apron",
            "length": "20 1/2",
            "slope": 5,
            "pockets": 2,
            "fringe": ["1 1/2", 2],
        },
    }
    garment = apron_service.order(order).json()["garment"]
    assert garment["length"] == pytest.approx(20.5 * 25.4)
    assert (garment["slope"], garment["pockets"]) == (5, 2)
    assert garment["fringe"] == pytest.approx([38.1, 50.8])


def test_an_unsound_pattern_comes_only_when_it_is_allowed(apron_service):
    order = apron.order(trouble="unsound")
    assert apron_service.order(order).status_code == 422
    answer = apron_service.order({**order, "allow_unsound": True})
    assert answer.status_code == 200
    assert answer.headers["pattern-verdict"] == "unsound"
    assert "NOT FOR CUTTING" in answer.text
    picture = apron_service.order({**order, "allow_unsound": True}, "?format=svg")
    assert "NOT FOR CUTTING" in picture.text


WORDS = ("<script>alert(1)</script>", "&amp;", '"quotes"', ")", "\\", "Ωμέγα", "Київ")


def test_a_reference_is_text_and_never_markup(service):
    order = {**example(), "reference": " ".join(WORDS)}
    pieces = service.order(order).json()["pieces"]
    written = " ".join(label["text"] for piece in pieces for label in piece["labels"])
    assert all(word in written for word in WORDS), written
    drawn = ET.fromstring(service.order(order, "?format=svg").content)  # noqa: S314 - our own
    assert not any("script" in element.tag for element in drawn.iter())
    texts = " ".join("".join(element.itertext()) for element in drawn.iter())
    assert all(word in texts for word in WORDS)
    assert service.order(order, "?format=pdf").status_code == 200


def test_a_reference_does_not_change_the_id_of_a_pattern(service):
    ids = {service.order({**example(), "reference": said}).json()["id"] for said in ("", "a", "b")}
    assert len(ids) == 1


def test_the_sample_is_the_order_that_the_garment_shows(service):
    garment = service.get("/v1/garments/trousers").json()
    sample = service.get(garment["sample"])
    ordered = service.order(garment["example"])
    assert sample.json()["id"] == ordered.json()["id"]
    assert json.loads(sample.content) == ordered.json()


def test_a_date_stands_on_the_sheet_and_leaves_the_pattern_as_it_is(apron_service):
    order = {**apron.order(), "reference": "Tea room"}
    dated = {**order, "date": "2026-11-25"}
    ids = {apron_service.order(each).headers["pattern-id"] for each in (order, dated)}
    assert len(ids) == 1
    plain, told = (apron_service.order(each, "?format=svg").text for each in (order, dated))
    assert "Tea room, November 25, 2026" in told
    assert not re.search(r"20\d\d-\d\d-\d\d", plain)
    printed = apron_service.order(dated, "?format=pdf").content
    text = "".join(page.get_textpage().get_text_range() for page in pypdfium2.PdfDocument(printed))
    assert "November 25, 2026" in text


@pytest.mark.parametrize("name", FORMATS)
def test_no_document_tells_a_date_that_was_not_given(apron_service, name):
    order = apron_service.order(apron.order(), f"?format={name}").content
    year = time.strftime("%Y").encode()
    assert year not in order
    if name == "pdf":
        with pikepdf.open(io.BytesIO(order)) as document:
            assert not {"/CreationDate", "/ModDate"} & set(document.docinfo)
