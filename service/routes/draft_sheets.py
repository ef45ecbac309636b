"""The construction of a garment, step by step, for a class."""

from __future__ import annotations

from functools import partial
from typing import Annotated, Any

from fastapi import APIRouter, Query, Request
from fastapi.responses import Response
from pydantic import Field
from pydantic.json_schema import SkipJsonSchema

from service.formats import chosen
from service.house import HouseDep
from service.languages import LanguageHeader, preferred_language, spoken
from service.openapi import problem_answers
from service.reading import read_json
from service.routes.patterns import (
    DRAFTING_PROBLEMS,
    PATTERN_HEADERS,
    READING_PROBLEMS,
    pattern_headers,
)
from service.teaching.answers import BesideAnswer, DraftSheetAnswer
from service.teaching.form import read_sheet
from service.teaching.task import SHEET_FORMATS, drawn_sheet

router = APIRouter(tags=["draft sheets"])

SheetFormatQuery = Annotated[
    str | SkipJsonSchema[None],
    Query(
        alias="format",
        description="Format of the answer; goes before `output.format` and Accept.",
        json_schema_extra={"enum": [*SHEET_FORMATS]},
    ),
]

StepQuery = Annotated[
    Annotated[int, Field(ge=1, le=9999)] | SkipJsonSchema[None],
    Query(description="Number of the step that an SVG shows; else all of them."),
]

SHEET_BODY: dict[str, Any] = {
    "requestBody": {
        "required": True,
        "content": {"application/json": {"schema": {"$ref": "#/components/schemas/SheetOrder"}}},
    }
}


@router.post(
    "/v1/draft-sheets",
    operation_id="teach_draft",
    summary="Teach a draft",
    response_model=DraftSheetAnswer | BesideAnswer,
    openapi_extra=SHEET_BODY,
    responses={
        200: {
            "description": "The draft sheet, in the format asked for.",
            "content": {
                each.media_type: {"schema": {"type": "string", "contentMediaType": each.media_type}}
                for each in SHEET_FORMATS.values()
                if each.name != "json"
            },
            "headers": PATTERN_HEADERS,
        },
        **problem_answers(*READING_PROBLEMS, *DRAFTING_PROBLEMS),
    },
)
async def teach_draft(
    request: Request,
    house: HouseDep,
    format_: SheetFormatQuery = None,
    step: StepQuery = None,
    accept_language: LanguageHeader = None,
) -> Response:
    """Tell how the garment of an order is drafted, each step with its numbers and reason.

    Takes an order as `POST /v1/patterns` does; without measurements and size it drafts a reference
    body. JSON tells every step in words and in moves that a program can carry out; SVG is the
    picture of one step (`?step=`) or of the finished draft; PDF is the class sheet, on Letter or
    A4, with figures at 1:4 or 1:5. `sheet` makes an exercise of it, or lays two drafting methods
    over each other.
    """
    raw = await read_json(request, house.settings)
    asked = read_sheet(spoken(raw, preferred_language(accept_language)), house.form)
    output = asked.order.output
    written = chosen(format_, output.format, request.headers.get("accept"), SHEET_FORMATS.values())
    done = await house.run(partial(drawn_sheet, asked, house.form, written, step), written.name)
    headers = pattern_headers(done, f"{asked.order.garment.kind}-draft")
    return Response(done.body, headers={**headers, "Cache-Control": "no-store"})
