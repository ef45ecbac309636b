"""What can be drafted, what is measured, what is allowed."""

from __future__ import annotations

import pytest
from asking import EXAMPLES

from drafting.body import MEASURES
from drafting.garments import GARMENTS
from service.settings import Settings


def test_every_garment_is_listed_and_shown(service):
    listed = service.get("/v1/garments").json()["garments"]
    assert [garment["kind"] for garment in listed] == list(GARMENTS)
    for garment in listed:
        shown = service.get(garment["href"]).json()
        assert shown["needs"]
        assert shown["sources"]
        assert shown["pieces"]
        assert service.get(garment["sample"]).status_code == 200


def test_every_option_is_described_with_its_limits(service):
    for kind in GARMENTS:
        options = service.get(f"/v1/garments/{kind}").json()["options"]
        for name, option in options["properties"].items():
            assert option.get("description"), name


def test_the_example_of_a_garment_can_be_sent(service):
    for kind in GARMENTS:
        example = service.get(f"/v1/garments/{kind}").json()["example"]
        assert service.order(example).status_code == 200


def test_the_vocabulary_is_told_whole_and_for_a_garment(service):
    told = service.get("/v1/measurements").json()["measurements"]
    assert [measure["name"] for measure in told] == list(MEASURES)
    for measure in told:
        low, high = measure["possible"]
        assert 0 <= low < high
        assert measure["how"]
    few = service.get("/v1/measurements?garment=trousers").json()["measurements"]
    assert {m["name"] for m in few} >= set(GARMENTS["trousers"].needs)
    assert len(few) < len(told)


def test_terms_of_the_standard_are_told_where_known(service):
    told = {m["name"]: m for m in service.get("/v1/measurements").json()["measurements"]}
    waist = told["waist_girth"]
    assert (waist["iso_term"], waist["iso_clause"]) == ("Waist girth", "5.3.10")


def test_the_limits_are_those_in_force(service):
    told = service.get("/v1/limits").json()
    assert told["body_bytes"] == Settings().max_body_bytes == 262_144
    assert told["order_seconds"] == Settings().order_seconds == 30


def test_the_service_says_that_it_is_there(service):
    assert service.get("/healthz").json() == {"status": "ok"}
    assert service.get("/readyz").json() == {"status": "ok"}


@pytest.mark.parametrize("path", sorted(EXAMPLES.glob("*.json")), ids=lambda p: p.stem)
def test_examples_say_that_they_are_invented(path):
    assert "invented" in path.read_text("utf-8")
