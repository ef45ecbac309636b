"""Lay plans over HTTP: orders and cloths in, lengths and places out, and what stands against it."""

from __future__ import annotations

import asyncio
import io
import time
from xml.etree import ElementTree as ET

import apron
import ezdxf
import pypdfium2
import pytest
from asking import Service, refused, trouble
from pydantic import TypeAdapter

from drafting.garments import GARMENTS
from drafting.laying import engine
from service.app import create_app
from service.laying.answers import LayAnswer
from service.settings import Settings

STANDARD = {
    "waist_girth": 74,
    "hip_girth": 101,
    "side_waist_to_hip": 20.5,
    "body_rise": 27.5,
    "outside_leg_length": 103,
}
TROUSERS = {"measurements": STANDARD, "garment": {"kind": "trousers"}, "reference": "order 1042"}
APRON = {"measurements": {"waist_girth": 80}, "garment": {"kind": "apron"}}
PLAIN = {"budget": 0}


def asked(*orders, **more):
    return {"orders": list(orders or (TROUSERS,)), "laying": PLAIN, **more}


@pytest.fixture(name="app", scope="module")
def app_fixture():
    settings = Settings(batch_workers=1, lay_budget=0.2)
    app = create_app(settings, {**GARMENTS, "apron": apron.GARMENT})
    yield app
    app.state.house.hands.close()


@pytest.fixture(name="lays", scope="module")
def lays_fixture(app):
    service = Service(app)
    return lambda document, query="", **headers: service.ask(
        "POST", f"/v1/lay-plans{query}", json=document, headers=headers
    )


def test_a_pair_of_trousers_is_laid_and_the_answer_has_the_promised_shape(lays):
    found = lays(asked(cloths={"main": {"width": 150}, "fusible": {}}))
    assert found.status_code == 200
    assert found.headers["cache-control"] == "no-store"
    answer = found.json()
    TypeAdapter(LayAnswer).validate_python(answer, strict=True)
    assert [cloth["cloth"] for cloth in answer["cloths"]] == ["main", "fusible"]
    assert answer["budget"] == 0.0
    assert {f["code"] for f in answer["findings"]} == {"cloth_not_laid"}


def test_without_cloths_all_that_the_orders_need_are_laid(lays):
    answer = lays(asked()).json()
    assert [cloth["cloth"] for cloth in answer["cloths"]] == ["main", "pocketing", "fusible"]
    assert {cloth["options"]["width"] for cloth in answer["cloths"]} == {1500.0}


def test_the_budget_is_the_installations_unless_the_request_names_one(lays):
    main = {"main": {}}
    request = {"orders": [TROUSERS], "cloths": main}
    assert lays(request).json()["budget"] == 0.2
    named = lays({**request, "laying": {"budget": 0.1}}).json()
    assert named["budget"] == 0.1
    assert named["engine"] == {"name": "spyrrow", "version": engine.VERSION}


def test_several_orders_share_a_cloth_and_keep_their_names(lays):
    other = {**TROUSERS, "reference": "order 1043"}
    answer = lays(asked(TROUSERS, other, cloths={"main": {}})).json()
    placements = answer["cloths"][0]["placements"]
    assert {(p["order"], p["reference"]) for p in placements} == {
        (1, "order 1042"),
        (2, "order 1043"),
    }


def test_a_size_range_is_laid_in_place_of_orders(lays):
    sizes = {"table": "women", "names": ["84-regular", "88-regular"]}
    request = {
        "range": {"garment": {"kind": "trousers"}, "sizes": sizes},
        "cloths": {"main": {}},
        "laying": PLAIN,
    }
    placements = lays(request).json()["cloths"][0]["placements"]
    assert {p["reference"] for p in placements} == {"84-regular", "88-regular"}


def test_lengths_of_cloth_are_in_the_requests_unit(lays):
    inches = asked(unit="in", cloths={"main": {"width": "59 1/16", "selvedge": "1/2"}})
    options = lays(inches).json()["cloths"][0]["options"]
    assert options["width"] == pytest.approx(59.0625 * 25.4, abs=0.01)
    assert options["selvedge"] == pytest.approx(12.7)


def test_svg_and_pdf_are_drawn(lays):
    request = asked(cloths={"main": {}, "pocketing": {}})
    svg = lays(request, accept="image/*")
    assert svg.headers["content-type"] == "image/svg+xml"
    assert ET.fromstring(svg.content).tag.endswith("svg")  # noqa: S314 - own bytes
    pdf = lays({**request, "output": {"format": "pdf", "paper": "a3"}})
    assert pdf.headers["content-disposition"] == 'inline; filename="lay-plan.pdf"'
    assert _pages(pdf.content) == [pytest.approx((420.0, 297.0), abs=0.2)] * 2


def test_on_whole_paper_the_pdf_is_at_full_size(lays):
    request = asked(cloths={"pocketing": {"width": 90}})
    length = lays(request).json()["cloths"][0]["length"]
    pdf = lays({**request, "output": {"format": "pdf", "paper": "whole"}})
    ((wide, high),) = _pages(pdf.content)
    assert high == pytest.approx(900 + 80, abs=1)
    assert wide == pytest.approx(length + 2 * 20 + 80, abs=1)


def test_a_cutter_is_given_dxf(lays):
    found = lays(asked(cloths={"pocketing": {}}), accept="image/vnd.dxf")
    assert found.headers["content-type"] == "image/vnd.dxf"
    drawing = ezdxf.read(io.StringIO(found.text))
    assert len(drawing.modelspace().query("INSERT")) == 6


def _pages(pdf):
    document = pypdfium2.PdfDocument(io.BytesIO(pdf))
    try:
        return [tuple(side * 25.4 / 72 for side in page.get_size()) for page in document]
    finally:
        document.close()


def test_a_roll_too_narrow_is_refused_with_the_breadth_that_will_do(lays):
    request = asked(cloths={"main": {}}, output={"format": "pdf", "paper": "roll"})
    found = trouble(refused(lays(request), 422, "invalid-order"), "/output/roll_width")
    assert found["code"] == "roll_too_narrow"
    assert found["allowed"] == [1580.0, None]


def test_cloth_too_narrow_is_told_in_the_requests_unit(lays):
    request = asked(unit="in", cloths={"main": {"width": 12}})
    problem = refused(lays(request), 422, "invalid-order")
    for each in problem["errors"]:
        assert each["pointer"] == "/cloths/main/width"
        assert each["code"] == "cloth_too_narrow"
        assert " in broad" in each["detail"]
        assert 12 < each["allowed"][0] < 40


@pytest.mark.parametrize(
    ("cloths", "pointer", "code"),
    [
        ({"main": {"width": 5}}, "/cloths/main/width", "out_of_range"),
        ({"main": {"nap": True}}, "/cloths/main/nap", "unknown_field"),
        ({"velvet": {}}, "/cloths/velvet", "unknown_field"),
        ({"lining": {}}, "/cloths/lining", "no_pieces_of_cloth"),
        ({"main": {"width": 40, "selvedge": 10, "folded": True}}, "/cloths/main/width", None),
        (
            {"main": {"repeat": {"lengthwise": 10, "match": ["armhole"]}}},
            "/cloths/main/repeat/match",
            "unknown_edge",
        ),
        (
            {"main": {"width": 90, "repeat": {"crosswise": 95}}},
            "/cloths/main/repeat/crosswise",
            "repeat_longer_than_cloth",
        ),
    ],
)
def test_cloths_that_cannot_be_laid_are_refused_where_they_stand(lays, cloths, pointer, code):
    problem = refused(lays(asked(cloths=cloths)), 422, "invalid-order")
    assert problem["errors"][0]["pointer"] == pointer
    assert code is None or problem["errors"][0]["code"] == code


@pytest.mark.parametrize("budget", [-1, 31, "long", None])
def test_a_budget_out_of_range_is_refused(lays, budget):
    request = {"orders": [TROUSERS], "laying": {"budget": budget}}
    problem = refused(lays(request), 422, "invalid-order")
    assert problem["errors"][0]["pointer"] == "/laying/budget"


def test_troubles_of_all_orders_are_told_where_they_stand(lays):
    wrong = {**TROUSERS, "measurements": {**STANDARD, "hipp_girth": 101}}
    also = {**TROUSERS, "garment": {"kind": "toga"}}
    problem = refused(lays(asked(TROUSERS, wrong, also)), 422, "invalid-order")
    assert [e["pointer"] for e in problem["errors"]] == [
        "/orders/1/measurements/hipp_girth",
        "/orders/2/garment/kind",
    ]


def test_an_order_that_cannot_be_drafted_is_told_where_it_stands(lays):
    failing = {**APRON, "garment": {"kind": "apron", "trouble": "construction"}}
    problem = refused(lays(asked(TROUSERS, failing)), 422, "cannot-draft")
    assert problem["errors"][0]["pointer"].startswith("/orders/1")
    unsound = {**APRON, "garment": {"kind": "apron", "trouble": "unsound"}}
    problem = refused(lays(asked(unsound)), 422, "unsound-pattern")
    assert problem["errors"][0]["pointer"] == "/orders/0"
    assert lays(asked({**unsound, "allow_unsound": True})).status_code == 200


@pytest.mark.parametrize("document", [{}, {"orders": [], "range": {}}, {"orders": []}, [], 7])
def test_a_request_without_orders_is_refused(lays, document):
    refused(lays(document), 422, "invalid-order")


def test_too_many_orders_and_too_many_pieces_are_refused(lays):
    refused(lays(asked(*[TROUSERS] * 51)), 422, "invalid-order")
    many = refused(lays(asked(*[TROUSERS] * 16, cloths={"main": {}})), 422, "invalid-order")
    found = trouble(many, "/cloths/main")
    assert (found["code"], found["received"], found["allowed"]) == (
        "too_many_pieces",
        320,
        [1, 300],
    )


def test_an_unknown_format_is_refused(lays):
    refused(lays(asked(), "?format=gcode"), 406, "not-acceptable")


def test_other_calls_are_answered_while_a_lay_is_searched(app):
    """The engine works beside the event loop: the process is alive all the while."""
    service = Service(app)

    async def scene(client):
        request = {"orders": [TROUSERS], "cloths": {"main": {}}, "laying": {"budget": 1.0}}
        laying = asyncio.create_task(client.post("/v1/lay-plans", json=request))
        slowest, asked_for = 0.0, 0
        while not laying.done():
            start = time.perf_counter()
            assert (await client.get("/healthz")).status_code == 200
            slowest = max(slowest, time.perf_counter() - start)
            asked_for += 1
            await asyncio.sleep(0.02)
        return (await laying).status_code, slowest, asked_for

    status, slowest, asked_for = service.run(scene)
    assert status == 200
    assert asked_for > 10
    assert slowest < 0.5


def test_when_all_places_are_taken_the_client_is_asked_to_come_again():
    app = create_app(Settings(lays_at_once=0))
    found = Service(app).ask("POST", "/v1/lay-plans", json=asked())
    refused(found, 503, "busy")
    assert found.headers["retry-after"]


def test_the_limits_are_told(app):
    told = Service(app).get("/v1/limits").json()
    assert (told["lay_orders"], told["lay_pieces"], told["lay_budget"]) == (50, 300, 0.2)
