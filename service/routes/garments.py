"""What can be drafted."""

from __future__ import annotations

from dataclasses import asdict
from typing import TYPE_CHECKING, Annotated, Any

from fastapi import APIRouter, Path, Request
from fastapi.responses import Response
from pydantic import TypeAdapter

from drafting.export import FORMATS
from drafting.language import page_text
from service.answers import PatternAnswer
from service.caching import kept_json
from service.catalogue_answers import GarmentAnswer, GarmentList, GarmentSummary
from service.docstrings import describe
from service.drafts import sample_order
from service.formats import chosen
from service.house import HouseDep
from service.languages import LanguageDep, spoken
from service.openapi import problem_answers
from service.option_words import choices, tell
from service.routes.patterns import (
    PATTERN_CONTENT,
    PATTERN_HEADERS,
    FormatQuery,
    Keeping,
    kept_pattern,
)

if TYPE_CHECKING:
    from drafting.garments.garment import Garment
    from drafting.language import Language

router = APIRouter(tags=["garments"])

KindPath = Annotated[str, Path(description="Kind of a garment, as `GET /v1/garments` lists it.")]


@router.get(
    "/v1/garments",
    operation_id="list_garments",
    summary="List the garments",
    response_model=GarmentList,
    responses=problem_answers("not-found"),
)
async def list_garments(request: Request, house: HouseDep, language: LanguageDep) -> Response:
    """Everything that can be drafted."""
    told: GarmentList = {"garments": [_summary(g, language) for g in house.garments.values()]}
    return kept_json(request, house.settings, told, {"Content-Language": language})


@router.get(
    "/v1/garments/{kind}",
    operation_id="show_garment",
    summary="Show a garment",
    response_model=GarmentAnswer,
    responses=problem_answers("not-found"),
)
async def show_garment(
    request: Request, house: HouseDep, kind: KindPath, language: LanguageDep
) -> Response:
    """Options with their JSON Schema, measures needed and optional, pieces, range, sources."""
    told = _told(house.garment(kind), language)
    return kept_json(request, house.settings, told, {"Content-Language": language})


@router.get(
    "/v1/garments/{kind}/sample",
    operation_id="draft_sample",
    summary="Draft a sample",
    response_model=PatternAnswer,
    responses={
        200: {
            "description": "The pattern of an invented person.",
            "content": PATTERN_CONTENT,
            "headers": PATTERN_HEADERS,
        },
        **problem_answers("not-found", "not-acceptable", "busy", "too-slow", "not-ready"),
    },
)
async def draft_sample(
    request: Request,
    house: HouseDep,
    kind: KindPath,
    language: LanguageDep,
    format_: FormatQuery = None,
) -> Response:
    """The garment on its reference body: for pages, docs and first tries. May be cached."""
    garment = house.garment(kind)
    asked = chosen(format_, None, request.headers.get("accept"), FORMATS.values())
    keeping = Keeping(kind, ("sample", str(garment.sample)), language)
    return await kept_pattern(
        request, house, asked, keeping, lambda: house.read(spoken(sample_order(garment), language))
    )


def _summary(garment: Garment, language: Language) -> GarmentSummary:
    address = f"/v1/garments/{garment.kind}"
    return {
        "kind": garment.kind,
        "title": page_text(garment.title, language),
        "summary": page_text(garment.summary, language),
        "href": address,
        "sample": f"{address}/sample",
    }


def _told(garment: Garment, language: Language) -> GarmentAnswer:
    options = _options(garment)
    tell(options, language)
    summary = _summary(garment, language)
    return {
        "kind": garment.kind,
        "title": summary["title"],
        "summary": summary["summary"],
        "options": options,
        "choices": choices(options, language),
        "needs": list(garment.needs),
        "optional": list(garment.optional),
        "pieces": list(garment.pieces),
        "valid": [asdict(valid) for valid in garment.valid],  # type: ignore[misc]
        "sources": [page_text(source, language) for source in garment.sources],
        "symptoms": [asdict(symptom) for symptom in garment.symptoms],  # type: ignore[misc]
        "sample": f"/v1/garments/{garment.kind}/sample",
        "example": sample_order(garment),
    }


def _options(garment: Garment) -> dict[str, Any]:
    schema = TypeAdapter(garment.spec).json_schema()
    describe(schema, garment.spec)
    return schema
