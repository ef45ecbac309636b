"""A set of measures, looked over before anything is cut."""

from __future__ import annotations

from typing import Any

from fastapi import APIRouter, Request
from fastapi.responses import JSONResponse, Response

from service.caching import VARY
from service.catalogue_answers import MeasurementCheckAnswer
from service.checking import checked
from service.house import HouseDep
from service.languages import LanguageHeader, preferred_language
from service.openapi import problem_answers
from service.reading import read_json

router = APIRouter(tags=["measurements"])

CHECK_BODY: dict[str, Any] = {
    "requestBody": {
        "required": True,
        "content": {
            "application/json": {"schema": {"$ref": "#/components/schemas/MeasurementCheck"}}
        },
    }
}


@router.post(
    "/v1/measurement-checks",
    operation_id="check_measurements",
    summary="Check measurements",
    response_model=MeasurementCheckAnswer,
    openapi_extra=CHECK_BODY,
    responses=problem_answers(
        "malformed-json",
        "request-timeout",
        "too-large",
        "unsupported-media-type",
        "invalid-order",
        "unusual-body",
    ),
)
async def check_measurements(
    request: Request, house: HouseDep, accept_language: LanguageHeader = None
) -> Response:
    """Vet a set of measures and complete it, without drafting.

    What was not measured is derived from other measures, or estimated from all of them, each with
    its standard deviation and what it comes from. Findings tell what is unusual, what does not go
    with the rest, and which estimates are too vague to cut cloth on.
    """
    language = preferred_language(accept_language)
    told = checked(await read_json(request, house.settings), language)
    headers = {"Cache-Control": "no-store", "Content-Language": language, "Vary": VARY}
    return JSONResponse(told, headers=headers)
