"""Size ranges over HTTP: which sizes, in which form, and what stands against them."""

from __future__ import annotations

import csv
import io
import json
import zipfile

import apron
import pikepdf
import pytest
from asking import Service, refused, trouble
from pydantic import TypeAdapter

from drafting.body import size_body
from drafting.garments import GARMENTS
from service.app import create_app
from service.ranges.answers import RangeAnswer
from service.settings import Settings

TABLE = {"table": "women", "from": "84-regular", "to": "92-regular"}
SMALL = {"waist_girth": 68, "hip_girth": 94, "side_waist_to_hip": 20, "body_rise": 27}
OWN = [
    {"name": "S", "measurements": {**SMALL, "outside_leg_length": 102}},
    {"name": "M", "measurements": {**SMALL, "waist_girth": 72, "hip_girth": 98,
                                   "outside_leg_length": 103}},
]  # fmt: skip


def asked(sizes=TABLE, **more):
    return {"garment": {"kind": "trousers"}, "sizes": sizes, **more}


@pytest.fixture(name="ranges", scope="module")
def ranges_fixture():
    app = create_app(Settings(batch_workers=1, range_sizes=5), {**GARMENTS, "apron": apron.GARMENT})
    service = Service(app)
    yield lambda document, query="", **headers: service.ask(
        "POST", f"/v1/size-ranges{query}", json=document, headers=headers
    )
    app.state.house.hands.close()


def test_sizes_from_one_to_another_are_those_of_their_stature(ranges):
    answer = ranges(asked()).json()
    assert [size["name"] for size in answer["sizes"]] == ["84-regular", "88-regular", "92-regular"]
    for size in answer["sizes"]:
        body = size_body("women", size["name"])
        told = size["pattern"]["body"]["hip_girth"]
        assert told["value"] == body.value("hip_girth") * 10
        assert told["origin"] == "size table"


def test_sizes_of_two_statures_take_all_between(ranges):
    found = ranges(asked({"table": "women", "from": "84-short", "to": "88-regular"}))
    names = [size["name"] for size in found.json()["sizes"]]
    assert names == ["84-short", "84-regular", "84-tall", "88-short", "88-regular"]


def test_sizes_may_be_listed(ranges):
    names = ["92-tall", "84-short"]
    answer = ranges(asked({"table": "women", "names": names}), "?format=csv")
    assert next(csv.reader(io.StringIO(answer.text)))[3:] == names


def test_the_answer_has_the_shape_that_the_reference_promises(ranges):
    answer = ranges(asked()).json()
    TypeAdapter(RangeAnswer).validate_python(answer, strict=True)
    assert answer["measures"]["sizes"] == answer["grade"]["sizes"]


def test_own_sizes_are_vetted_and_completed_like_any_body(ranges):
    answer = ranges(asked({"own": OWN})).json()
    small, middle = answer["sizes"]
    assert small["pattern"]["body"]["waist_girth"] == {"value": 680.0, "origin": "measured"}
    rows = {row["name"]: row["values"] for row in answer["measures"]["rows"]}
    assert [v for k, v in rows.items() if k == "body_rise"] == [[270.0, 270.0]]
    assert middle["verdict"] == "sound"


def test_own_sizes_may_speak_in_inches(ranges):
    inches = [
        {"name": "8", "measurements": {"waist_girth": "28 1/2", "hip_girth": 39, "stature": 66}},
        {"name": "10", "measurements": {"waist_girth": 30, "hip_girth": "40 1/2", "stature": 66}},
    ]
    answer = ranges(asked({"own": inches}, unit="in")).json()
    assert answer["sizes"][0]["pattern"]["body"]["waist_girth"]["value"] == 723.9


def test_all_troubles_of_all_own_sizes_are_told_where_they_stand(ranges):
    own = [
        {"name": "S", "measurements": {"waist_girth": 68}},
        {"name": "M", "measurements": {**OWN[1]["measurements"], "hip_girth": 9}},
    ]
    problem = refused(ranges(asked({"own": own})), 422, "invalid-order")
    assert trouble(problem, "/sizes/own/0/measurements/hip_girth")["code"] == "missing_measure"
    assert trouble(problem, "/sizes/own/1/measurements/hip_girth")["code"] == "out_of_range"


BAD_SIZES = {
    "no way": ({"table": "women"}, "/sizes", "one_way_only"),
    "two ways": ({**TABLE, "own": OWN}, "/sizes", "one_way_only"),
    "half a way": ({"table": "women", "from": "84-regular"}, "/sizes", "missing"),
    "own of a table": ({"table": "women", "own": OWN}, "/sizes/table", "one_way_only"),
    "no table": ({"names": ["84-regular"]}, "/sizes/table", "unknown_table"),
    "unknown table": ({**TABLE, "table": "womn"}, "/sizes/table", "unknown_table"),
    "unknown size": ({"table": "women", "names": ["84"]}, "/sizes/names/0", "unknown_size"),
    "unknown end": ({**TABLE, "to": "9x"}, "/sizes/to", "unknown_size"),
    "backward": ({**TABLE, "from": "96-regular"}, "/sizes/from", "wrong_way_round"),
    "too many": ({**TABLE, "to": "116-regular"}, "/sizes", "too_many_sizes"),
    "twice": ({"own": [OWN[0], OWN[0]]}, "/sizes/own", "size_twice"),
    "a formula": ({"own": [{**OWN[0], "name": "=1+1"}]}, "/sizes/own/0/name", "bad_size_name"),
    "no list": ({"own": 3}, "/sizes/own", "wrong_type"),
    "unknown field": ({**TABLE, "form": 1}, "/sizes/form", "unknown_field"),
    "no object": ([], "/sizes", "wrong_type"),
}


@pytest.mark.parametrize(("sizes", "at", "code"), BAD_SIZES.values(), ids=BAD_SIZES)
def test_sizes_that_cannot_be_told_are_pointed_at(ranges, sizes, at, code):
    problem = refused(ranges(asked(sizes)), 422, "invalid-order")
    assert trouble(problem, at)["code"] == code


def test_everything_that_is_wrong_is_told_at_once(ranges):
    document = {
        "measurements": {},
        "garment": {"kind": "trousers", "hem_girth": 900},
        "sizes": {"table": "womn", "names": []},
        "each": "dwg",
        "refrence": "x",
    }
    problem = refused(ranges(document), 422, "invalid-order")
    told = {error["pointer"] for error in problem["errors"]}
    assert {"/measurements", "/garment/hem_girth", "/refrence"} <= told
    assert any(at.startswith("/sizes") for at in told)


def test_another_figure_than_the_tables_is_refused(ranges):
    problem = refused(ranges(asked(figure="men")), 422, "invalid-order")
    assert trouble(problem, "/figure")["code"] == "other_figure"


def test_the_nest_comes_as_svg_and_pdf(ranges):
    drawing = ranges(asked(), Accept="image/*")
    assert drawing.headers["content-type"] == "image/svg+xml"
    assert drawing.headers["cache-control"] == "no-store"
    assert b'id="nest-front-size-3"' in drawing.content
    document = ranges(asked(output={"format": "pdf", "paper": "a0"}))
    assert document.headers["content-type"] == "application/pdf"
    with pikepdf.open(io.BytesIO(document.content)) as pdf:
        assert len(pdf.Root.OCProperties.OCGs) == 3


def test_a_file_for_each_size_comes_as_zip(ranges):
    answer = ranges(asked(each="svg"), Accept="application/zip")
    archive = zipfile.ZipFile(io.BytesIO(answer.content))
    names = archive.namelist()
    assert names[:3] == [f"trousers-{n}-regular.svg" for n in (84, 88, 92)]
    assert names[-1] == "manifest.json"


def aprons(trouble, **measures):
    own = [{"name": name, "measurements": {"waist_girth": w}} for name, w in measures.items()]
    return {"garment": {"kind": "apron", "trouble": trouble}, "sizes": {"own": own}}


def test_sizes_that_fail_their_checks_are_told_and_not_hidden(ranges):
    document = aprons("unsound", S=70, M=74)
    sizes = ranges(document).json()["sizes"]
    assert [size["verdict"] for size in sizes] == ["unsound", "unsound"]
    assert all(size["failed"] and "pattern" not in size for size in sizes)
    wanted = ranges({**document, "allow_unsound": True}).json()["sizes"]
    assert all(size["verdict"] == "unsound" and "pattern" in size for size in wanted)


def test_sizes_that_cannot_be_drafted_say_why_in_the_orders_unit(ranges):
    (size,) = ranges({**aprons("construction", S=28), "unit": "in"}).json()["sizes"]
    assert size["verdict"] == "refused"
    assert size["refusal"]["detail"] == "The tie needs 5 in to 10 in more."
    assert size["refusal"]["received"] == 2.0


def test_a_nest_of_nothing_is_refused(ranges):
    refused(ranges(aprons("unsound", S=70), "?format=svg"), 422, "cannot-draft")


def test_a_fault_is_answered_and_leaves_nothing_of_the_order(ranges, caplog):
    refused(ranges(aprons("fault", S=73.1357)), 500, "internal-error")
    assert "fault" in caplog.text
    records = json.dumps([record.__dict__ for record in caplog.records], default=str)
    assert "73.1357" not in caplog.text + records


def test_other_media_formats_and_bodies_are_refused(ranges, service):
    refused(ranges(asked(), "?format=dwg"), 406, "not-acceptable")
    sent = {"Content-Type": "application/x-ndjson"}
    answer = service.ask("POST", "/v1/size-ranges", content=b"{}", headers=sent)
    refused(answer, 415, "unsupported-media-type")
    answer = service.ask(
        "POST", "/v1/size-ranges", content=b"{", headers={"Content-Type": "application/json"}
    )
    refused(answer, 400, "malformed-json")


def test_the_examples_of_the_reference_are_taken(ranges, service):
    reference = service.get("/openapi.json").json()
    content = reference["paths"]["/v1/size-ranges"]["post"]["requestBody"]["content"]
    for example in content["application/json"]["examples"].values():
        assert ranges(example["value"]).status_code == 200
