"""The API reference as OpenAPI 3.1: the routes' own, and the order as clients write it."""

from __future__ import annotations

import json
from dataclasses import is_dataclass
from typing import TYPE_CHECKING, Any, get_args, get_origin, get_type_hints

from fastapi.openapi.utils import get_openapi
from pydantic import TypeAdapter

from drafting import DRAFTING_VERSION
from drafting.body import MEASURES, RANGES
from drafting.drawing import Output
from drafting.export import FORMATS
from drafting.laying import Laying
from drafting.pattern import Finish
from service.answers import Problem
from service.checking import MeasurementCheck
from service.docstrings import describe
from service.drafts import sample_check, sample_lay, sample_order, sample_range
from service.field_words import fill_in
from service.laying.form import Cloths, LayRequest
from service.lengths import LONGEST_TEXT, PATTERN
from service.link_form import LinkPart
from service.plan import Each, Fields, IsLength, Plan, plan_of
from service.problems import MEDIA_TYPE, PROBLEMS
from service.ranges.form import RangePart
from service.teaching.form import SheetPart

if TYPE_CHECKING:
    from collections.abc import Iterator

    from fastapi import FastAPI

    from service.house import House

Schema = dict[str, Any]

TITLE = "Tapeline"
REF = "#/components/schemas/{model}"

ABOUT = """\
Send the measurements of a body, get a sewing pattern drafted to them.

Lengths in an order are in its `unit`; lengths in answers are in mm. Nothing that is sent is
stored or logged.
"""

WRITTEN_INCHES: Schema = {
    "title": "WrittenInches",
    "description": 'Inches as a tape is read; only with "unit": "in".',
    "type": "string",
    "maxLength": LONGEST_TEXT,
    "pattern": PATTERN,
    "examples": ["28 1/2", "28-1/2", "28½", '28 1/2"', "1/2"],
}


FOLLOW_UPS: dict[tuple[str, str], dict[str, tuple[str, dict[str, str]]]] = {
    ("/v1/garments", "get"): {
        "first": ("show_garment", {"kind": "$response.body#/garments/0/kind"}),
        "sample": ("draft_sample", {"kind": "$response.body#/garments/0/kind"}),
    },
    ("/v1/size-tables", "get"): {
        "first": ("show_size_table", {"table": "$response.body#/size_tables/0/name"}),
    },
    ("/v1/links", "post"): {
        "pattern": ("follow_link", {"token": "$response.body#/token"}),
    },
}
"""By address and method: which operation takes what from the answer, as OpenAPI's links tell it."""


def problem_answers(*codes: str) -> dict[int | str, dict[str, Any]]:
    """The entries of `responses=` for these problems."""
    found: dict[int | str, dict[str, Any]] = {}
    for code in codes:
        kind = PROBLEMS[code]
        told = found.setdefault(kind.status, {"description": "", "content": _PROBLEM_CONTENT})
        line = f"[{code}](/problems/{code}): {kind.title}."
        told["description"] = f"{told['description']} {line}".strip()
    return found


_PROBLEM_CONTENT = {MEDIA_TYPE: {"schema": {"$ref": REF.format(model="Problem")}}}


def api_reference(app: FastAPI, house: House) -> Schema:
    """The whole document."""
    document = get_openapi(
        title=TITLE, version=DRAFTING_VERSION, description=ABOUT, routes=app.routes
    )
    document["info"]["license"] = {"name": "MIT", "identifier": "MIT"}
    document["servers"] = [{"url": "/", "description": "Where this document comes from."}]
    _tell_keys(document)
    for operation in _operations(document):
        if "HTTPValidationError" in str(operation["responses"].get("422")):
            del operation["responses"]["422"]
    components: Schema = document["components"]["schemas"]
    for unused in ("HTTPValidationError", "ValidationError"):
        components.pop(unused, None)
    components["Problem"], parts = _with_parts(Problem)
    components.update({**parts, **order_schemas(house)})
    _put_examples(document, house)
    fill_in(components)
    for (path, method), links in FOLLOW_UPS.items():
        document["paths"][path][method]["responses"]["200"]["links"] = {
            name: {"operationId": target, "parameters": parameters}
            for name, (target, parameters) in links.items()
        }
    for operation in _operations(document):
        _say_what_comes(operation["responses"].get("200", {}), components)
    document["components"]["schemas"] = dict(sorted(components.items()))
    return document


def _tell_keys(document: Schema) -> None:
    """All that is sent for drafting may need a key."""
    document["components"]["securitySchemes"] = {
        "key": {
            "type": "http",
            "scheme": "bearer",
            "description": "Where an installation has keys, orders need one.",
        }
    }
    for path in document["paths"].values():
        if "get" in path:
            path["get"]["security"] = []
        if "post" in path:
            path["post"]["security"] = [{}, {"key": []}]
            for status, told in problem_answers("unauthorized", "too-many-requests").items():
                path["post"]["responses"].setdefault(str(status), told)


def _say_what_comes(answer: Schema, components: Schema) -> None:
    """Describe an answer by its schema, where its route does not."""
    if answer.get("description") == "Successful Response":
        told = answer["content"].get("application/json", {}).get("schema", {})
        name = told.get("$ref", "").rpartition("/")[2]
        answer["description"] = components[name]["description"] if name else "A text to read."


def _with_parts(kind: Any) -> tuple[Schema, Schema]:
    schema = TypeAdapter(kind).json_schema(ref_template=REF)
    return schema, schema.pop("$defs", {})


def _operations(document: Schema) -> Iterator[Schema]:
    for path in document["paths"].values():
        yield from path.values()


def _put_examples(document: Schema, house: House) -> None:
    examples: dict[str, dict[str, Any]] = {
        kind: {"summary": garment.title, "value": sample_order(garment)}
        for kind, garment in house.garments.items()
    }
    _content(document, "/v1/patterns")["application/json"]["examples"] = examples
    ranges = {
        kind: {"summary": f"{garment.title}, sizes out of a table", "value": sample_range(kind)}
        for kind, garment in house.garments.items()
    }
    _content(document, "/v1/size-ranges")["application/json"]["examples"] = ranges
    linked = {
        kind: {"summary": each["summary"], "value": {**each["value"], "expires_in": 604_800}}
        for kind, each in examples.items()
    }
    _content(document, "/v1/links")["application/json"]["examples"] = linked
    lays = {
        kind: {"summary": f"{garment.title} on 150 cm", "value": sample_lay(garment)}
        for kind, garment in house.garments.items()
    }
    _content(document, "/v1/lay-plans")["application/json"]["examples"] = lays
    sheets = {
        kind: {"summary": f"{each['summary']}, step by step", "value": each["value"]}
        for kind, each in examples.items()
    }
    _content(document, "/v1/draft-sheets")["application/json"]["examples"] = sheets
    _content(document, "/v1/measurement-checks")["application/json"]["example"] = sample_check()
    orders = [
        {"id": f"{kind}-1", **sample_order(garment)} for kind, garment in house.garments.items()
    ]
    lines = "".join(json.dumps(order) + "\n" for order in orders)
    for content in _content(document, "/v1/batches").values():
        content["example"] = lines


def _content(document: Schema, path: str) -> Schema:
    content: Schema = document["paths"][path]["post"]["requestBody"]["content"]
    return content


def order_schemas(house: House) -> Schema:
    """Schemas of the order and all its parts, as clients write it: lengths in any unit."""
    order = house.form.model.model_json_schema(ref_template=REF)
    parts: Schema = order.pop("$defs")
    order["properties"]["measurements"] = _measurements()
    order["oneOf"] = [{"required": ["measurements"]}, {"required": ["size"]}]
    for kind in _dataclasses(Finish, Output, *(g.spec for g in house.garments.values())):
        describe(parts[kind.__name__], kind)
        _publish(parts[kind.__name__], plan_of(kind))
    order["properties"]["size"] = {
        "description": "A size out of a table, in place of measurements.",
        "$ref": REF.format(model="SizeChoice"),
    }
    for name in ("finish", "output", "date"):
        order["properties"][name].pop("default", None)
    parts |= range_schemas(order)
    parts["MeasurementCheck"] = check_schema()
    parts |= lay_schemas()
    parts["LinkOrder"] = link_schema(order)
    parts |= sheet_schemas(order)
    return {"Order": order, "Sides": SIDES, "WrittenInches": WRITTEN_INCHES, **parts}


def range_schemas(order: Schema) -> Schema:
    """Schemas of a size range: an order with sizes in place of measurements."""
    part = RangePart.model_json_schema(ref_template=REF)
    parts: Schema = part.pop("$defs")
    parts["OwnSize"]["properties"]["measurements"] = _measurements()
    part["properties"]["each"]["enum"] = [*FORMATS]
    common = {k: v for k, v in order["properties"].items() if k not in ("measurements", "size")}
    whole: Schema = {
        **{k: v for k, v in order.items() if k not in ("required", "oneOf", "properties")},
        "title": "SizeRange",
        "description": "An order with sizes in place of measurements.",
        "properties": {**common, **part["properties"]},
        "required": ["garment", "sizes"],
    }
    return {"SizeRange": whole, **parts}


def link_schema(order: Schema) -> Schema:
    """Schema of a request for a link: an order, and how long the link is to hold."""
    own = LinkPart.model_json_schema(ref_template=REF)["properties"]
    return {
        **order,
        "title": "LinkOrder",
        "description": "An order, and for how long a link to it is to hold.",
        "properties": {**order["properties"], **own},
    }


def sheet_schemas(order: Schema) -> Schema:
    """Schemas of a request for a draft sheet: an order, its body left open, and the sheet."""
    own = SheetPart.model_json_schema(ref_template=REF)
    parts: Schema = own.pop("$defs")
    own["properties"]["sheet"].pop("default", None)
    whole: Schema = {
        **{k: v for k, v in order.items() if k not in ("oneOf", "required")},
        "title": "SheetOrder",
        "description": "An order, and what its draft sheet is to be; the body may be left out.",
        "properties": {**order["properties"], **own["properties"]},
        "required": ["garment"],
    }
    return {"SheetOrder": whole, **parts}


def lay_schemas() -> Schema:
    """Schemas of a request for a lay plan: whole orders, and cloths with lengths in any unit."""
    whole = LayRequest.model_json_schema(ref_template=REF)
    parts: Schema = whole.pop("$defs")
    properties = whole["properties"]
    many = next(c for c in properties["orders"].pop("anyOf") if c.get("type") == "array")
    properties["orders"] |= {**many, "items": {"$ref": REF.format(model="Order")}}
    properties["range"].pop("anyOf", None)
    properties["range"]["$ref"] = REF.format(model="SizeRange")
    for name in ("orders", "range", "cloths", "laying", "output"):
        properties[name].pop("default", None)
    whole["oneOf"] = [{"required": ["orders"]}, {"required": ["range"]}]
    own = {kind.__name__: kind for kind in _dataclasses(Cloths, Laying)}
    for name, kind in own.items():
        describe(parts[name], kind)
        _publish(parts[name], plan_of(kind))
    return {"LayRequest": whole, **{name: parts[name] for name in own}}


def check_schema() -> Schema:
    """Schema of a measurement check, lengths in any unit."""
    schema = MeasurementCheck.model_json_schema(ref_template=REF)
    schema["properties"]["measurements"] = _measurements()
    return schema


def _dataclasses(*kinds: Any) -> Iterator[type]:
    """These types and every dataclass in their fields."""
    for kind in kinds:
        if isinstance(kind, type) and is_dataclass(kind):
            yield kind
            yield from _dataclasses(*get_type_hints(kind, include_extras=True).values())
        elif get_origin(kind):
            yield from _dataclasses(*get_args(kind))


def _publish(schema: Schema, plan: Plan) -> None:
    """Turn the lengths of an object's schema to any unit, their limits to words."""
    if not isinstance(plan, Fields):
        return
    for name, part in plan.of.items():
        if isinstance(part, IsLength | Each):
            schema["properties"][name] = _any_unit(schema["properties"][name])


def _any_unit(field: Schema) -> Schema:
    """A field's schema with its lengths in any unit, their limits and default in words."""
    choices = field.get("anyOf", [field])
    words = (field.get("description"), _limits(choices), _default(field.get("default")))
    told = {"description": " ".join(word for word in words if word)}
    either = [open_to for choice in choices for open_to in _open(choice)]
    title = {"title": field["title"]} if "title" in field else {}
    return {**title, **told, **(either[0] if len(either) == 1 else {"anyOf": either})}


def _open(choice: Schema) -> tuple[Schema, ...]:
    """What a client may send for one choice of a field."""
    match choice.get("type"):
        case "number":
            return _LENGTH
        case "array":
            inside: Schema = {k: choice[k] for k in ("minItems", "maxItems") if k in choice}
            return ({"type": "array", "items": _any_unit(choice["items"]), **inside},)
        case _:
            return (choice,)


_LENGTH: tuple[Schema, ...] = ({"type": "number"}, {"$ref": REF.format(model="WrittenInches")})

SIDES: Schema = {
    "title": "Sides",
    "description": "A measure that differs by side.",
    "type": "object",
    "properties": {"left": {"anyOf": [*_LENGTH]}, "right": {"anyOf": [*_LENGTH]}},
    "required": ["left", "right"],
    "additionalProperties": False,
}


def _limits(choices: list[Schema]) -> str:
    bounds = next((c for c in choices if "minimum" in c and "maximum" in c), None)
    if bounds is None:
        return "A length in the order's unit."
    return f"A length in the order's unit, {bounds['minimum']:g} to {bounds['maximum']:g} cm."


def _default(value: object) -> str:
    return f"By default {value:g} cm." if isinstance(value, float | int) else ""


def _measurements() -> Schema:
    return {
        "title": "Measurements",
        "description": "Measures of the body by name; GET /v1/measurements lists them.",
        "type": "object",
        "additionalProperties": False,
        "properties": {name: _measure(name) for name in MEASURES},
    }


def _measure(name: str) -> Schema:
    measure, (low, high) = MEASURES[name], RANGES[name].hard
    possible = f"Possible: {low:g} to {high:g} {measure.unit}."
    described = {"title": measure.title, "description": f"{measure.how} {possible}"}
    if measure.unit != "cm":
        return {**described, "type": "number"}
    sides = ({"$ref": REF.format(model="Sides")},) if measure.by_side else ()
    return {**described, "anyOf": [*_LENGTH, *sides]}


def document_bytes(document: Schema) -> bytes:
    """The document as it is served and kept: indented, one order of keys."""
    return (json.dumps(document, indent=1, ensure_ascii=False) + "\n").encode()
