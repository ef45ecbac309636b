"""A garment that the service has never heard of goes through every endpoint and format.

A square apron is registered here alone: no line of `service/` knows it.
"""

from __future__ import annotations

import base64
import json
from pathlib import Path as File

import apron
import pytest
from asking import Service

from drafting.export import FORMATS
from service.app import create_app
from service.settings import Settings

ORDER = apron.order(length=50)
BODY = ORDER["measurements"]
GARMENT = ORDER["garment"]
NDJSON = {"Content-Type": "application/x-ndjson"}
SIZES = {"table": "women", "from": "84-regular", "to": "92-regular"}


@pytest.fixture(name="aprons", scope="module")
def aprons_fixture():
    key = base64.urlsafe_b64encode(bytes(32)).decode()
    settings = Settings(batch_workers=1, lay_budget=0.2, link_keys=(key,))
    app = create_app(settings, {"apron": apron.GARMENT})
    yield Service(app)
    app.state.house.hands.close()


GETS = {
    "/": ("/",),
    "/assets/{name}": (),
    "/docs": ("/docs",),
    "/healthz": ("/healthz",),
    "/metrics": ("/metrics",),
    "/openapi.json": ("/openapi.json",),
    "/problems/{code}": ("/problems/not-found",),
    "/readyz": ("/readyz",),
    "/v1/garments": ("/v1/garments",),
    "/v1/garments/{kind}": ("/v1/garments/apron",),
    "/v1/garments/{kind}/sample": tuple(f"/v1/garments/apron/sample?format={f}" for f in FORMATS),
    "/v1/limits": ("/v1/limits",),
    "/v1/measurements": ("/v1/measurements", "/v1/measurements?garment=apron"),
    "/v1/size-tables": ("/v1/size-tables",),
    "/v1/size-tables/{table}": ("/v1/size-tables/women",),
    "/v1/size-tables/{table}/{size}/{kind}": tuple(
        f"/v1/size-tables/women/88-regular/apron?format={f}" for f in FORMATS
    ),
}
"""Every address that is got, with what is asked of it."""

POSTS = {
    "/v1/patterns": ORDER,
    "/v1/draft-sheets": {**ORDER, "measurements": BODY},
    "/v1/measurement-checks": {"measurements": BODY},
    "/v1/links": ORDER,
    "/v1/lay-plans": {"orders": [ORDER], "laying": {"budget": 0}},
    "/v1/size-ranges": {"garment": GARMENT, "sizes": SIZES},
}
"""Every address that is sent to, with what is sent."""

ELSEWHERE = {"/v1/batches", "/v1/links/{token}"}
"""Addresses with a test of their own."""


def formats(reference: dict, path: str) -> tuple[str, ...]:
    """The values of `?format=` that the reference tells for an address."""
    for parameter in reference["paths"][path]["post"].get("parameters", ()):
        if parameter["name"] == "format":
            found = json.dumps(parameter["schema"])
            return tuple(name for name in (*FORMATS, "csv") if f'"{name}"' in found)
    return ()


def test_every_address_of_the_reference_is_asked(aprons):
    told = set(aprons.get("/openapi.json").json()["paths"])
    assert told <= {*GETS, *POSTS, *ELSEWHERE}


@pytest.mark.parametrize("path", [p for asked in GETS.values() for p in asked])
def test_what_is_got_is_answered(aprons, path):
    assert aprons.get(path).status_code == 200


@pytest.mark.parametrize("path", POSTS)
def test_what_is_sent_is_answered_in_every_form(aprons, path):
    asked = formats(aprons.get("/openapi.json").json(), path)
    for query in ("", *(f"?format={name}" for name in asked)):
        answer = aprons.ask("POST", f"{path}{query}", json=POSTS[path])
        assert answer.status_code == 200, (query, answer.text[:300])
        assert answer.content


@pytest.mark.parametrize("name", FORMATS)
def test_a_batch_of_aprons_is_answered(aprons, name):
    lines = b"".join(json.dumps({"id": str(n), **ORDER}).encode() + b"\n" for n in range(3))
    answer = aprons.ask("POST", f"/v1/batches?format={name}", content=lines, headers=NDJSON)
    assert answer.status_code == 200
    assert b'"error"' not in answer.content


def test_a_link_to_an_apron_is_followed_in_every_format(aprons):
    link = aprons.ask("POST", "/v1/links", json=ORDER).json()
    address = next(v for v in link.values() if isinstance(v, str) and "/v1/links/" in v)
    path = "/v1/links/" + address.partition("/v1/links/")[2].partition("?")[0]
    for name in FORMATS:
        assert aprons.get(f"{path}?format={name}").status_code == 200


def test_the_reference_describes_the_aprons_options(aprons):
    schemas = aprons.get("/openapi.json").json()["components"]["schemas"]
    assert set(schemas["Apron"]["properties"]) == {
        "kind", "width", "length", "slope", "pockets", "fringe", "trouble",
    }  # fmt: skip
    assert all(field["description"] for field in schemas["Apron"]["properties"].values())


def test_the_service_does_not_know_aprons():
    service = File(__file__).parents[2] / "service"
    texts = [p.read_text("utf-8") for p in service.rglob("*.py")]
    assert texts
    assert not [t for t in texts if "apron" in t.lower()]


def test_no_skirt_is_named_in_the_service():
    """Nor any other garment but the one whose picture is on the first page."""
    service = File(__file__).parents[2] / "service"
    named = [p.name for p in service.rglob("*.py") if "_skirt" in p.read_text("utf-8")]
    assert named == []
