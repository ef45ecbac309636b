"""One garment over many sizes."""

from __future__ import annotations

from dataclasses import replace
from typing import Annotated, Any

from fastapi import APIRouter, Query, Request
from fastapi.responses import Response
from pydantic.json_schema import SkipJsonSchema

from service.caching import VARY
from service.house import HouseDep
from service.languages import LanguageHeader, preferred_language
from service.logs import outlined
from service.openapi import problem_answers
from service.ranges.answers import RangeAnswer
from service.ranges.task import RANGE_FORMATS, draft_range
from service.reading import read_body, refuse_other_media
from service.routes.patterns import PICTURE_POLICY

router = APIRouter(tags=["size ranges"])

RangeFormatQuery = Annotated[
    str | SkipJsonSchema[None],
    Query(
        alias="format",
        description="Format of the answer; goes before `output.format` and Accept.",
        json_schema_extra={"enum": [*RANGE_FORMATS]},
    ),
]

RANGE_BODY: dict[str, Any] = {
    "requestBody": {
        "required": True,
        "content": {"application/json": {"schema": {"$ref": "#/components/schemas/SizeRange"}}},
    }
}


@router.post(
    "/v1/size-ranges",
    operation_id="draft_size_range",
    summary="Draft a size range",
    response_model=RangeAnswer,
    openapi_extra=RANGE_BODY,
    responses={
        200: {
            "description": "The range, in the format asked for.",
            "content": {
                each.media_type: {"schema": {"type": "string", "contentMediaType": each.media_type}}
                for each in RANGE_FORMATS.values()
                if each.name != "json"
            },
        },
        **problem_answers(
            "malformed-json",
            "not-acceptable",
            "request-timeout",
            "too-large",
            "unsupported-media-type",
            "invalid-order",
            "cannot-draft",
            "unusual-body",
            "busy",
            "too-slow",
            "worker-lost",
            "no-workers",
            "not-ready",
        ),
    },
)
async def draft_size_range(
    request: Request,
    house: HouseDep,
    format_: RangeFormatQuery = None,
    accept_language: LanguageHeader = None,
) -> Response:
    """Draft a garment anew in each of many sizes.

    JSON tells every pattern, the table of finished measures and seam lengths, and how each point
    of the draft moves from size to size. SVG, PDF and DXF are one drawing with all sizes of each
    piece over each other, each size on a layer and with a line of its own (in DXF a block for each
    piece and size). ZIP has a file for each size
    in the format that `each` names, the tables, and a manifest. CSV is the table of measures. A
    size that cannot be cut is told, not hidden.
    """
    settings, language = house.settings, preferred_language(accept_language)
    refuse_other_media(request.headers)
    with house.ranges.take("As many size ranges as this installation takes"):
        body = await read_body(request, settings.max_body_bytes, settings.order_seconds)
        done = await house.hands.run(
            draft_range,
            replace(house.tools, seconds=settings.range_seconds, language=language),
            body,
            format_,
            request.headers.get("accept"),
            settings.range_sizes,
        )
    if done.fault:
        outlined(done.fault, request.scope["state"]["request_id"])
    headers = {"Content-Type": done.media_type, "Cache-Control": "no-store"}
    if done.failed:
        return Response(done.body, done.status, headers)
    headers["Content-Disposition"] = f'inline; filename="sizes.{done.extension}"'
    headers |= {"Content-Language": done.language, "Vary": VARY}
    if done.media_type.startswith("image/"):
        headers["Content-Security-Policy"] = PICTURE_POLICY
    return Response(done.body, headers=headers)
