"""Addresses that carry an order, sealed: for pictures in a page and links in a mail."""

from __future__ import annotations

import time
from datetime import UTC, datetime
from typing import TYPE_CHECKING, Annotated, Any

from fastapi import APIRouter, Path, Request
from fastapi.responses import JSONResponse, Response

from drafting.export import FORMATS
from service.answers import LinkAnswer, PatternAnswer
from service.formats import chosen
from service.house import HouseDep
from service.languages import LanguageHeader, preferred_language, spoken
from service.link_form import read_link
from service.openapi import problem_answers
from service.reading import decode, read_json
from service.routes.patterns import (
    DRAFTING_PROBLEMS,
    PATTERN_CONTENT,
    PATTERN_HEADERS,
    READING_PROBLEMS,
    FormatQuery,
    Keeping,
    kept_pattern,
)

if TYPE_CHECKING:
    from service.links import Opened

router = APIRouter(tags=["links"])

TokenPath = Annotated[str, Path(description="What `POST /v1/links` answered as `token`.")]

LINK_BODY: dict[str, Any] = {
    "requestBody": {
        "required": True,
        "content": {"application/json": {"schema": {"$ref": "#/components/schemas/LinkOrder"}}},
    }
}

UNINDEXED = {"X-Robots-Tag": "noindex, nofollow, noarchive"}
"""A link that leaked onto a page is not to be found by everyone."""


@router.post(
    "/v1/links",
    operation_id="make_link",
    summary="Make a link",
    response_model=LinkAnswer,
    openapi_extra=LINK_BODY,
    responses=problem_answers("not-found", *READING_PROBLEMS, *DRAFTING_PROBLEMS),
)
async def make_link(request: Request, house: HouseDep) -> Response:
    """Seal an order into an address that draws its pattern.

    The order is drafted once, so that no link is made that leads to a problem. It is then kept in
    the address alone, encrypted and authenticated: nothing of it can be read there, and who
    changes a letter gets 404. Each call makes another address. Off unless the installation has
    keys for it.
    """
    house.links.refuse_off()
    raw = await read_json(request, house.settings)
    asked = read_link(raw, house.form, house.settings.link_seconds)
    form = chosen(None, asked.order.output.format, None, FORMATS.values())
    await house.draft(asked.order, form)
    until = int(time.time()) + asked.seconds if asked.seconds else None
    told = _told(house.links.seal(asked.raw, until), until)
    return JSONResponse(told, headers={"Cache-Control": "no-store"})


@router.get(
    "/v1/links/{token}",
    operation_id="follow_link",
    summary="Follow a link",
    response_model=PatternAnswer,
    responses={
        200: {
            "description": "The pattern, in the format asked for.",
            "content": PATTERN_CONTENT,
            "headers": PATTERN_HEADERS,
        },
        **problem_answers("not-found", *DRAFTING_PROBLEMS),
    },
)
async def follow_link(
    request: Request,
    house: HouseDep,
    token: TokenPath,
    format_: FormatQuery = None,
    accept_language: LanguageHeader = None,
) -> Response:
    """Draw the pattern that a link stands for, in the format that `?format=` asks for.

    The pattern tells a person's measures: it may be kept by whoever asks, not by caches on the
    way.
    """
    settings = house.settings
    opened = house.links.open(token, time.time(), settings.max_body_bytes)
    raw = decode(opened.order, settings.max_json_depth)
    order = house.read(spoken(raw, preferred_language(accept_language)))
    asked = chosen(format_, order.output.format, request.headers.get("accept"), FORMATS.values())
    language, control = order.output.language, _keep(opened, settings.max_age)
    keeping = Keeping(order.garment.kind, ("link", token), language, control)
    answer = await kept_pattern(request, house, asked, keeping, lambda: order)
    answer.headers.update(UNINDEXED)
    return answer


def _keep(opened: Opened, max_age: int) -> str:
    seconds = max_age if opened.seconds is None else min(max_age, opened.seconds)
    return f"private, max-age={seconds}"


def _told(token: str, until: int | None) -> LinkAnswer:
    href = f"/v1/links/{token}"
    ends = None if until is None else datetime.fromtimestamp(until, UTC).isoformat()
    return {
        "token": token,
        "href": href,
        "formats": {name: f"{href}?format={name}" for name in FORMATS},
        "expires": ends and ends.replace("+00:00", "Z"),
    }
