"""Pieces laid on cloth: how much of it, and where each piece goes."""

from __future__ import annotations

from dataclasses import replace
from typing import Annotated, Any

from fastapi import APIRouter, Query, Request
from fastapi.responses import Response
from pydantic.json_schema import SkipJsonSchema

from drafting import DRAFTING_VERSION
from service.caching import VARY
from service.house import HouseDep
from service.languages import LanguageHeader, preferred_language
from service.laying.answers import LayAnswer
from service.laying.task import LAY_FORMATS, draw_lay
from service.logs import outlined
from service.openapi import problem_answers
from service.reading import read_body, refuse_other_media
from service.routes.patterns import DRAFTING_PROBLEMS, PICTURE_POLICY, READING_PROBLEMS

router = APIRouter(tags=["lay plans"])

LayFormatQuery = Annotated[
    str | SkipJsonSchema[None],
    Query(
        alias="format",
        description="Format of the answer; goes before `output.format` and Accept.",
        json_schema_extra={"enum": [*LAY_FORMATS]},
    ),
]

LAY_BODY: dict[str, Any] = {
    "requestBody": {
        "required": True,
        "content": {"application/json": {"schema": {"$ref": "#/components/schemas/LayRequest"}}},
    }
}


@router.post(
    "/v1/lay-plans",
    operation_id="lay_pieces_on_cloth",
    summary="Lay pieces on cloth",
    response_model=LayAnswer,
    openapi_extra=LAY_BODY,
    responses={
        200: {
            "description": "The plan, in the format asked for.",
            "content": {
                each.media_type: {"schema": {"type": "string", "contentMediaType": each.media_type}}
                for each in LAY_FORMATS.values()
                if each.name != "json"
            },
        },
        **problem_answers(*READING_PROBLEMS, *DRAFTING_PROBLEMS, "worker-lost", "no-workers"),
    },
)
async def lay_pieces_on_cloth(
    request: Request,
    house: HouseDep,
    format_: LayFormatQuery = None,
    accept_language: LanguageHeader = None,
) -> Response:
    """Say how long the cloth must be, and where each piece goes on it.

    Takes whole orders, or a size range, and each cloth's width, selvedges, nap, folding, stripes
    and shrinkage. JSON tells the length to buy, exactly and as shops cut it, and each piece's
    place, turn and mirroring; SVG and PDF are a small drawing for the table, and on paper "roll"
    or "whole" the PDF is at full size; DXF is for a cutter. The engine searches by the clock: the
    same request may give a slightly other plan, unless the budget is 0.
    """
    settings, language = house.settings, preferred_language(accept_language)
    refuse_other_media(request.headers)
    with house.lays.take("As many lay plans as this installation makes"):
        body = await read_body(request, settings.max_body_bytes, settings.order_seconds)
        done = await house.hands.run(
            draw_lay,
            replace(house.tools, seconds=settings.lay_seconds, language=language),
            body,
            format_,
            request.headers.get("accept"),
            settings.range_sizes,
            settings.lay_budget,
        )
    if done.fault:
        outlined(done.fault, request.scope["state"]["request_id"])
    headers = {"Content-Type": done.media_type, "Cache-Control": "no-store"}
    if done.failed:
        return Response(done.body, done.status, headers)
    headers["Content-Disposition"] = f'inline; filename="lay-plan.{done.extension}"'
    headers |= {"Content-Language": done.language, "Vary": VARY}
    headers["Drafting-Version"] = DRAFTING_VERSION
    if done.media_type.startswith("image/"):
        headers["Content-Security-Policy"] = PICTURE_POLICY
    return Response(done.body, headers=headers)
