"""The main job: an order in, a pattern out."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Annotated, Any

from fastapi import APIRouter, Query, Request
from fastapi.responses import Response
from pydantic.json_schema import SkipJsonSchema

from drafting import DRAFTING_VERSION
from drafting.export import FORMATS
from service.answers import PatternAnswer
from service.caching import VARY, cached_headers, has_it, not_modified, tag
from service.coding import coding
from service.formats import chosen
from service.house import HouseDep
from service.languages import LanguageHeader, preferred_language, spoken
from service.openapi import problem_answers
from service.reading import read_json

if TYPE_CHECKING:
    from collections.abc import Callable

    from drafting.export import Format
    from drafting.language import Language
    from service.drafts import Drafted
    from service.house import House
    from service.schemas import Order

router = APIRouter(tags=["patterns"])

FormatQuery = Annotated[
    str | SkipJsonSchema[None],
    Query(
        alias="format",
        description="Format of the answer; goes before `output.format` and Accept.",
        json_schema_extra={"enum": [*FORMATS]},
    ),
]

PICTURE_POLICY = "default-src 'none'; style-src 'unsafe-inline'"
"""What a drawing may load when it is opened by itself: nothing but its own styles."""

PATTERN_HEADERS: dict[str, Any] = {
    "Pattern-Verdict": {
        "description": "Whether the pattern can be cut.",
        "schema": {"type": "string", "enum": ["sound", "sound_with_remarks", "unsound"]},
    },
    "Pattern-Id": {
        "description": "Digest of the resolved order without its reference.",
        "schema": {"type": "string"},
    },
    "Drafting-Version": {
        "description": "Changes with every change of a drawn line.",
        "schema": {"type": "string"},
    },
}

PATTERN_CONTENT: dict[str, Any] = {
    each.media_type: {"schema": {"type": "string", "contentMediaType": each.media_type}}
    for each in FORMATS.values()
    if each.name != "json"
}

ORDER_BODY: dict[str, Any] = {
    "requestBody": {
        "required": True,
        "content": {"application/json": {"schema": {"$ref": "#/components/schemas/Order"}}},
    }
}


READING_PROBLEMS = (
    "unauthorized",
    "malformed-json",
    "request-timeout",
    "too-large",
    "unsupported-media-type",
    "too-many-requests",
)
"""What can be wrong with a body before anyone looks at the order in it."""

DRAFTING_PROBLEMS = (
    "not-acceptable",
    "invalid-order",
    "cannot-draft",
    "unusual-body",
    "unsound-pattern",
    "busy",
    "too-slow",
    "not-ready",
)
"""What an order can meet on its way to a pattern."""


@router.post(
    "/v1/patterns",
    operation_id="draft_pattern",
    summary="Draft a pattern",
    response_model=PatternAnswer,
    openapi_extra=ORDER_BODY,
    responses={
        200: {
            "description": "The pattern, in the format asked for.",
            "content": PATTERN_CONTENT,
            "headers": PATTERN_HEADERS,
        },
        **problem_answers(*READING_PROBLEMS, *DRAFTING_PROBLEMS),
    },
)
async def draft_pattern(
    request: Request,
    house: HouseDep,
    format_: FormatQuery = None,
    accept_language: LanguageHeader = None,
) -> Response:
    """Draft the garment of an order for its body.

    Pure: the same order gives the same bytes, nothing is kept, retry freely. `*/*` gives JSON,
    `image/*` SVG.
    """
    raw = await read_json(request, house.settings)
    order = house.read(spoken(raw, preferred_language(accept_language)))
    asked = chosen(format_, order.output.format, request.headers.get("accept"), FORMATS.values())
    done = await house.draft(order, asked)
    headers = pattern_headers(done, order.garment.kind)
    return Response(done.body, headers={**headers, "Cache-Control": "no-store"})


@dataclass(frozen=True, slots=True)
class Keeping:
    """How a pattern may be kept by clients.

    Attributes:
        kind: Kind of the garment.
        parts: All that decides the pattern, beside the drafting version.
        language: Of its texts.
        control: Cache-Control where it is not that of reference data.
    """

    kind: str
    parts: tuple[str, ...]
    language: Language
    control: str = ""


async def kept_pattern(
    request: Request, house: House, asked: Format, keeping: Keeping, order: Callable[[], Order]
) -> Response:
    """A pattern that may be kept; not drafted for those who have it already.

    Args:
        request: Its headers tell what the client has.
        house: Drafts it.
        asked: Format of the answer.
        keeping: How it may be kept.
        order: Gives the order.
    """
    told = (DRAFTING_VERSION, asked.name, keeping.language, coding(request))
    etag = tag(keeping.kind, *keeping.parts, *told)
    headers = cached_headers(house.settings, etag)
    headers["Cache-Control"] = keeping.control or headers["Cache-Control"]
    if has_it(request, etag):
        return not_modified(headers)
    done = await house.draft(order(), asked)
    return Response(done.body, headers={**headers, **pattern_headers(done, keeping.kind)})


def pattern_headers(done: Drafted, kind: str) -> dict[str, str]:
    """Headers that every pattern carries, whatever its format."""
    headers = {
        "Content-Type": done.media_type,
        "Content-Disposition": f'inline; filename="{kind}.{done.extension}"',
        "Content-Language": done.language,
        "Vary": VARY,
        "Pattern-Verdict": done.verdict,
        "Pattern-Id": done.pattern_id,
        "Drafting-Version": DRAFTING_VERSION,
        "Cross-Origin-Resource-Policy": "cross-origin",
    }
    if done.media_type.startswith("image/"):
        headers["Content-Security-Policy"] = PICTURE_POLICY
    return headers
