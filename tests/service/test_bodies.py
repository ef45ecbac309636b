"""Bodies as they are: by size, with two different sides, with half of the measures not taken."""

from __future__ import annotations

from typing import Any

import apron
import pytest
from asking import example, refused, trouble
from pydantic import TypeAdapter

from drafting.body import ESTIMABLE, MEASURES, SIZE_TABLES
from service.catalogue_answers import MeasurementCheckAnswer, SizeTableAnswer, SizeTableList

SIZE = {"table": "women", "size": "88-regular"}
FEW = {"waist_girth": 74, "hip_girth": 101, "stature": 168}


def by_size(**changes: Any) -> dict[str, Any]:
    return {"size": SIZE, "garment": {"kind": "trousers"}, **changes}


def test_a_size_stands_in_place_of_measurements(service):
    answer = service.order(by_size())
    assert answer.status_code == 200, answer.text
    told = answer.json()
    assert told["body"]["hip_girth"] == {"value": 960, "origin": "size table"}
    estimated = told["body"]["total_crotch_length"]
    assert estimated["origin"] == "size table"
    assert estimated["sd"] > 20
    assert estimated["from"] == ["bust_girth", "waist_girth", "hip_girth", "stature"]


def test_a_size_from_memory_says_so_in_the_answer(service):
    notes = {f["code"]: f for f in service.order(by_size()).json()["findings"]}
    assert "from memory" in notes["size_from_memory"]["message"]


def test_a_table_brings_its_figure_along(apron_service):
    size = {"table": "men", "size": "100-tall"}
    order = {"size": size, "garment": {"kind": "apron"}}
    ids = {
        apron_service.order(each).json()["id"]
        for each in (order, {**order, "figure": "men"}, {**order, "unit": "mm"})
    }
    assert len(ids) == 1


WRONG = [
    ({"measurements": {}}, "/size", "one_way_only"),
    ({"size": {"table": "womn", "size": "88-regular"}}, "/size/table", "unknown_table"),
    ({"size": {"table": "women", "size": "88"}}, "/size/size", "unknown_size"),
    ({"size": {"table": "women", "size": "88 regular"}}, "/size/size", "unknown_size"),
    ({"size": {"table": "women"}}, "/size/size", "missing"),
    ({"size": {**SIZE, "stature": 170}}, "/size/stature", "unknown_field"),
    ({"size": {"table": [], "size": "88"}}, "/size/table", "wrong_type"),
    ({"size": {"table": "women", "size": 88}}, "/size/size", "wrong_type"),
    ({"size": "88-regular"}, "/size", "wrong_type"),
    ({"size": None}, "/size", "wrong_type"),
    ({"figure": "men"}, "/figure", "other_figure"),
]


@pytest.mark.parametrize(("changes", "pointer", "code"), WRONG)
def test_a_size_that_is_not_there_is_pointed_at(service, changes, pointer, code):
    problem = refused(service.order(by_size(**changes)), 422, "invalid-order")
    assert trouble(problem, pointer)["code"] == code


def test_a_size_nearly_right_is_asked_after(service):
    problem = service.order(by_size(size={"table": "women", "size": "88 regular"})).json()
    assert "'88-regular'" in problem["detail"]


def test_the_tables_are_listed_with_where_they_come_from(service):
    told = service.get("/v1/size-tables").json()
    assert TypeAdapter(SizeTableList).validate_python(told) == told
    assert [table["name"] for table in told["size_tables"]] == list(SIZE_TABLES)
    for table in told["size_tables"]:
        assert table["from_memory"] is True
        assert any("from memory" in source for source in table["sources"])
        assert service.get(table["href"]).status_code == 200


def test_every_size_is_a_whole_body(service):
    for name, table in SIZE_TABLES.items():
        told = service.get(f"/v1/size-tables/{name}").json()
        assert TypeAdapter(SizeTableAnswer).validate_python(told) == told
        assert [size["name"] for size in told["sizes"]] == list(table.sizes)
        for size in told["sizes"]:
            assert set(size["body"]) == set(ESTIMABLE)
            assert size["label"] == {n: size["body"][n]["value"] for n in size["label"]}


def test_a_garment_in_a_size_is_what_the_order_gives(service):
    address = "/v1/size-tables/women/88-regular/trousers"
    got = service.get(address)
    assert got.status_code == 200
    assert got.json() == service.order(by_size()).json()
    assert got.headers["cache-control"].startswith("public")
    picture = service.get(address, Accept="image/*")
    assert picture.headers["content-type"] == "image/svg+xml"
    assert service.get(f"{address}?format=pdf").content.startswith(b"%PDF-")


def test_a_garment_in_a_size_that_is_had_is_not_drafted(service, monkeypatch):
    address = "/v1/size-tables/women/92-tall/trousers?format=svg"
    etag = service.get(address).headers["etag"]
    monkeypatch.setattr("service.drafts.work", None)
    again = service.get(address, If_None_Match=etag)
    assert (again.status_code, again.content) == (304, b"")
    others = ("/v1/size-tables/women/92-short/trousers?format=svg", address.replace("svg", "json"))
    assert all(service.get(o, If_None_Match=etag).status_code != 304 for o in others)


@pytest.mark.parametrize(
    ("address", "near"),
    [
        ("/v1/size-tables/womens", "'women'"),
        ("/v1/size-tables/womens/88-regular/trousers", "'women'"),
        ("/v1/size-tables/women/88-regula/trousers", "'88-regular'"),
        ("/v1/size-tables/women/88-regular/trouser", "'trousers'"),
    ],
)
def test_what_no_table_has_is_not_found(service, address, near):
    assert near in refused(service.get(address), 404, "not-found")["detail"]


def test_two_sides_give_two_legs(service):
    order = example("trousers_uneven")
    told = service.order(order).json()
    names = {piece["name"] for piece in told["pieces"]}
    assert {"front_left", "front_right", "back_left", "back_right"} <= names
    assert told["body"]["outside_leg_length"] == {
        "value": 1037.5,
        "origin": "derived",
        "sides": {"left": 1030.0, "right": 1045.0},
        "from": ["outside_leg_length.left", "outside_leg_length.right"],
    }
    swapped = example("trousers_uneven")
    for name in ("outside_leg_length", "side_waist_to_hip"):
        pair = order["measurements"][name]
        swapped["measurements"][name] = {"left": pair["right"], "right": pair["left"]}
    assert service.order(swapped).json()["id"] != told["id"]


def test_sides_may_be_written_in_inches(apron_service):
    sides = {"left": "40 1/2", "right": 41}
    order = {
        "unit": "in",
        "measurements": {"waist_girth": 29, "hip_girth": 40, "outside_leg_length": sides},
    }
    answer = apron_service.ask("POST", "/v1/measurement-checks", json=order)
    told = answer.json()["body"]["outside_leg_length"]["sides"]
    assert told == {"left": pytest.approx(1028.7), "right": pytest.approx(1041.4)}


def test_what_can_be_estimated_need_not_be_measured(service):
    told = service.order({"measurements": FEW, "garment": {"kind": "trousers"}})
    assert told.status_code == 200, told.text
    body, findings = told.json()["body"], {f["code"]: f for f in told.json()["findings"]}
    assert body["body_rise"]["origin"] == "estimated"
    assert set(body["body_rise"]["from"]) == set(FEW)
    assert findings["estimated_body_rise"]["severity"] == "warning"
    assert told.headers["pattern-verdict"] == "sound_with_remarks"


@pytest.mark.parametrize("left_out", FEW)
def test_what_nothing_can_stand_for_is_asked_for(service, left_out):
    few = {name: value for name, value in FEW.items() if name != left_out}
    problem = refused(
        service.order({"measurements": few, "garment": {"kind": "trousers"}}), 422, "invalid-order"
    )
    assert {e["code"] for e in problem["errors"]} == {"missing_measure"}
    if left_out != "stature":
        assert trouble(problem, f"/measurements/{left_out}")


def check(service, document: Any, **headers: str):
    return service.ask("POST", "/v1/measurement-checks", json=document, headers=headers)


def test_measures_are_completed_without_drafting(service, monkeypatch):
    monkeypatch.setattr("service.drafts.work", None)
    answer = check(service, {"measurements": FEW})
    assert answer.status_code == 200, answer.text
    assert answer.headers["cache-control"] == "no-store"
    told = answer.json()
    assert TypeAdapter(MeasurementCheckAnswer).validate_python(told) == told
    assert told["figure"] == "women"
    origins = {name: one["origin"] for name, one in told["body"].items()}
    assert {n for n, o in origins.items() if o == "measured"} == set(FEW)
    assert set(origins) >= {"body_rise", "outside_leg_length", "knee_girth", "total_crotch_length"}
    assert all(one["sd"] > 0 for one in told["body"].values() if one["origin"] == "estimated")
    assert all(one["value"] > 0 for one in told["body"].values())


def test_a_check_tells_what_else_to_measure(service):
    told = check(service, {"measurements": {"waist_girth": 74}}).json()
    codes = {f["code"] for f in told["findings"]}
    assert codes >= {"missing_hip_girth"}
    assert set(told["body"]) == {"waist_girth"}


def test_a_check_tells_what_is_unusual_in_mm(service):
    told = check(service, {"measurements": {**FEW, "waist_girth": 56}}).json()
    (found,) = [f for f in told["findings"] if f["code"] == "unusual_waist_girth"]
    assert found["measured"] == 560
    assert found["allowed"] == pytest.approx([579, 1500])


def test_measures_of_no_one_body_are_refused_until_they_are_accepted(service):
    unusual = {**FEW, "body_rise": 38, "outside_leg_length": 92}
    problem = refused(check(service, {"measurements": unusual}), 422, "unusual-body")
    told = [e for e in problem["errors"] if e["code"] == "unusual_body"]
    assert told
    for error in told:
        assert MEASURES[error["pointer"].rsplit("/", 1)[1]]
        assert "accept_unusual" in error["detail"]
        low, high = error["allowed"]
        assert not low <= error["received"] <= high
    assert check(service, {"measurements": unusual, "accept_unusual": True}).status_code == 200


CHECKED_WRONG = [
    ({}, "/measurements", "missing"),
    ({"measurements": {"waist_girt": 74}}, "/measurements/waist_girt", "unknown_measure"),
    ({"measurements": {"waist_girth": 740}}, "/measurements/waist_girth", "out_of_range"),
    ({"measurements": {"waist_girth": "74"}}, "/measurements/waist_girth", "unreadable_length"),
    ({"measurements": FEW, "garment": {}}, "/garment", "unknown_field"),
    ({"measurements": FEW, "unit": "inch"}, "/unit", "not_a_choice"),
    ({"measurements": FEW, "accept_unusual": "yes"}, "/accept_unusual", "wrong_type"),
    ([], "", "wrong_type"),
]


@pytest.mark.parametrize(("document", "pointer", "code"), CHECKED_WRONG)
def test_a_check_points_at_what_is_wrong(service, document, pointer, code):
    problem = refused(check(service, document), 422, "invalid-order")
    assert trouble(problem, pointer)["code"] == code


def test_an_apron_in_a_size_can_fail_like_an_order(apron_service):
    problem = apron_service.order(
        {"size": SIZE, "garment": apron.order(trouble="unsound")["garment"]}
    )
    refused(problem, 422, "unsound-pattern")
