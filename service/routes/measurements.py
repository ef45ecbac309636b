"""The vocabulary of measures."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

from fastapi import APIRouter, Query, Request
from fastapi.responses import Response
from pydantic.json_schema import SkipJsonSchema

from drafting.body import MEASURES, RANGES
from drafting.language import page_text
from service.caching import kept_json
from service.catalogue_answers import MeasureAnswer, MeasureList
from service.house import HouseDep
from service.languages import LanguageDep
from service.openapi import problem_answers

if TYPE_CHECKING:
    from collections.abc import Iterable

    from drafting.body import Measure
    from drafting.language import Language

router = APIRouter(tags=["measurements"])

GarmentQuery = Annotated[
    str | SkipJsonSchema[None],
    Query(description="Kind of a garment: only the measures that it uses."),
]


@router.get(
    "/v1/measurements",
    operation_id="list_measurements",
    summary="List the measures",
    response_model=MeasureList,
    responses=problem_answers("not-found"),
)
async def list_measurements(
    request: Request, house: HouseDep, language: LanguageDep, garment: GarmentQuery = None
) -> Response:
    """Every measure with its title, how to take it, its standard's term and its range."""
    names: Iterable[str] = MEASURES
    if garment is not None:
        chapter = house.garment(garment)
        names = (*chapter.needs, *chapter.optional)
    told: MeasureList = {"measurements": [_told(MEASURES[name], language) for name in names]}
    return kept_json(request, house.settings, told, {"Content-Language": language})


def _told(measure: Measure, language: Language) -> MeasureAnswer:
    ranges = RANGES[measure.name]
    return {
        "name": measure.name,
        "title": page_text(measure.title, language),
        "how": page_text(measure.how, language),
        "kind": measure.kind,
        "unit": measure.unit,
        "by_side": measure.by_side,
        "iso_term": measure.iso_term,
        "iso_clause": measure.iso or None,
        "possible": list(ranges.hard),
        "usual": {
            "women": list(ranges.women) if ranges.women else None,
            "men": list(ranges.men) if ranges.men else None,
        },
        "basis": ranges.basis,
    }
