"""The API reference: fresh, complete, and true to the answers."""

from __future__ import annotations

import json
from pathlib import Path

import apron
import pytest
from asking import Service

from drafting.body import MEASURES
from drafting.export import FORMATS
from drafting.garments import GARMENTS
from service.app import create_app
from service.field_words import COMMON, OWN
from service.openapi import document_bytes
from service.problems import PROBLEMS
from service.settings import Settings

KEPT = Path(__file__).parents[2] / "openapi" / "openapi.json"


@pytest.fixture(name="reference", scope="module")
def reference_fixture(service):
    return service.get("/openapi.json").json()


def test_the_reference_in_the_repository_is_fresh():
    fresh = document_bytes(create_app(Settings()).openapi())
    assert KEPT.read_bytes() == fresh, "python -m service openapi -o openapi/openapi.json"


def test_every_path_of_the_contract_is_described(reference):
    assert set(reference["paths"]) == {
        "/",
        "/healthz",
        "/metrics",
        "/problems/{code}",
        "/readyz",
        "/v1/batches",
        "/v1/draft-sheets",
        "/v1/garments",
        "/v1/garments/{kind}",
        "/v1/garments/{kind}/sample",
        "/v1/lay-plans",
        "/v1/limits",
        "/v1/links",
        "/v1/links/{token}",
        "/v1/measurement-checks",
        "/v1/measurements",
        "/v1/patterns",
        "/v1/size-ranges",
        "/v1/size-tables",
        "/v1/size-tables/{table}",
        "/v1/size-tables/{table}/{size}/{kind}",
    }


def operations(reference):
    return [op for path in reference["paths"].values() for op in path.values()]


def test_every_operation_and_parameter_is_described(reference):
    for operation in operations(reference):
        assert operation["summary"]
        assert operation["description"]
        assert operation["operationId"]
        for parameter in operation.get("parameters", []):
            assert parameter["description"]


def test_every_problem_that_an_order_can_meet_is_declared(reference):
    told = reference["paths"]["/v1/patterns"]["post"]["responses"]
    elsewhere = {"not-found", "method-not-allowed", "internal-error", "worker-lost", "no-workers"}
    for code in PROBLEMS.keys() - elsewhere:
        answer = told[str(PROBLEMS[code].status)]
        assert code in answer["description"]
        assert set(answer["content"]) == {"application/problem+json"}
    assert set(told["200"]["content"]) == {f.media_type for f in FORMATS.values()}
    assert {"Pattern-Verdict", "Pattern-Id", "Drafting-Version"} <= set(told["200"]["headers"])


def test_every_reference_resolves(reference):
    def walk(node):
        if isinstance(node, dict):
            if isinstance(target := node.get("$ref"), str):
                assert target.rsplit("/", 1)[1] in reference["components"]["schemas"], target
            for value in node.values():
                walk(value)
        elif isinstance(node, list):
            for value in node:
                walk(value)

    walk(reference)
    assert "HTTPValidationError" not in json.dumps(reference)


def test_the_order_names_every_measure_and_option(reference):
    schemas = reference["components"]["schemas"]
    for field in schemas["Order"]["properties"].values():
        assert field["description"]
    assert set(schemas["Order"]["properties"]["measurements"]["properties"]) == set(MEASURES)
    for name in ("Trousers", "Finish", "Allowances", "Output"):
        assert schemas[name]["additionalProperties"] is False
    for field in schemas["Trousers"]["properties"].values():
        assert field["description"]


def test_lengths_are_described_in_any_unit(reference):
    hem = reference["components"]["schemas"]["Trousers"]["properties"]["hem_girth"]
    assert "20 to 250 cm" in hem["description"]
    assert {"type": "number"} in hem["anyOf"]
    assert not any("maximum" in choice for choice in hem["anyOf"])


def test_margins_keep_their_limits(reference):
    margin = reference["components"]["schemas"]["Output"]["properties"]["margin"]
    assert (margin["minimum"], margin["maximum"]) == (0, 100)


def test_answers_have_no_defaults(reference):
    for name, schema in reference["components"]["schemas"].items():
        if name.endswith(("Answer", "List", "Summary")) or name == "Problem":
            assert '"default":' not in json.dumps(schema), name


def test_the_examples_of_the_reference_are_taken(service, reference):
    body = reference["paths"]["/v1/patterns"]["post"]["requestBody"]
    for example in body["content"]["application/json"]["examples"].values():
        assert service.order(example["value"]).status_code == 200


def test_a_garment_of_ones_own_gets_through_every_endpoint_and_format(apron_service):
    assert "apron" in {g["kind"] for g in apron_service.get("/v1/garments").json()["garments"]}
    assert apron_service.get("/v1/garments/apron").json()["options"]["properties"]["slope"]
    for name in FORMATS:
        assert apron_service.get(f"/v1/garments/apron/sample?format={name}").status_code == 200
        assert apron_service.order(apron.order(length=50), f"?format={name}").status_code == 200
    schemas = apron_service.get("/openapi.json").json()["components"]["schemas"]
    kinds = schemas["Order"]["properties"]["garment"]["discriminator"]["mapping"]
    assert set(kinds) == {*GARMENTS, "apron"}


def test_a_single_garment_is_enough(only_aprons: Service):
    assert only_aprons.order(apron.order()).status_code == 200
    assert only_aprons.get("/").status_code == 200
    assert only_aprons.get("/openapi.json").status_code == 200
    problem = only_aprons.order({**apron.order(), "garment": {"kind": "apro"}}).json()
    assert problem["errors"][0]["pointer"] == "/garment/kind"
    assert problem["errors"][0]["code"] == "unknown_garment"


def fields(reference) -> dict[str, dict]:
    """Every field of every schema, by its schema's name and its own."""
    return {
        f"{name}.{field}": told
        for name, schema in reference["components"]["schemas"].items()
        for field, told in schema.get("properties", {}).items()
    }


def test_every_schema_field_and_answer_is_described(reference):
    for name, schema in reference["components"]["schemas"].items():
        assert schema.get("description"), name
    for name, told in fields(reference).items():
        assert told.keys() & {"description", "const", "$ref"}, name
    for operation in operations(reference):
        for answer in operation["responses"].values():
            assert answer["description"] not in ("", "Successful Response")


def test_no_words_are_kept_for_fields_that_are_not_there(reference):
    names = {*fields(reference), *reference["components"]["schemas"]}
    assert set(OWN) <= names
    assert set(COMMON) <= {name.rpartition(".")[2] for name in names}


def test_every_request_has_examples(reference):
    for path, operation in ((p, o["post"]) for p, o in reference["paths"].items() if "post" in o):
        for content in operation["requestBody"]["content"].values():
            assert {"example", "examples"} & set(content), path
