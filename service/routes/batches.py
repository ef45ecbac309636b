"""Many orders in one request, answered as each is ready."""

from __future__ import annotations

from contextlib import ExitStack, aclosing
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from anyio import to_thread
from fastapi import APIRouter, Request
from fastapi.responses import Response

from drafting.export import FORMATS
from service.batching.answers import NDJSON, ZIP, Archive, Lines
from service.batching.flow import Count, Job, flow
from service.batching.lines import sort_out, split
from service.batching.streamed import Streamed
from service.formats import chosen, preferred
from service.house import HouseDep
from service.languages import LanguageHeader, preferred_language
from service.openapi import problem_answers
from service.problems import ProblemError
from service.reading import read_body, refuse_other_media
from service.routes.patterns import FormatQuery

if TYPE_CHECKING:
    from collections.abc import AsyncGenerator, Mapping

    from service.house import House

router = APIRouter(tags=["batches"])

TAKEN = ("application/x-ndjson", "application/ndjson", "application/jsonl")
"""Names of a body that holds JSON on each line; no registry has settled on one."""

WRITERS: dict[str, type[Lines | Archive]] = {NDJSON: Lines, ZIP: Archive}
"""How the answers are written, by the media type asked for; the first is the default."""

BATCH_BODY: dict[str, Any] = {
    "requestBody": {
        "required": True,
        "description": "One order on each line, as of `POST /v1/patterns`, with a field `id` "
        "more: a text or a whole number that no other order of the batch has.",
        "content": {name: {"schema": {"pattern": r"\S"}} for name in TAKEN},
    }
}

BATCH_ANSWER: dict[str, Any] = {
    "description": "Lines of JSON in the order in which they are ready, or a ZIP with a file for "
    "each pattern and manifest.json at the end.",
    "content": {
        NDJSON: {"schema": {"type": "string", "contentMediaType": NDJSON}},
        ZIP: {"schema": {"type": "string", "contentMediaType": ZIP}},
    },
}


@router.post(
    "/v1/batches",
    operation_id="draft_batch",
    summary="Draft many patterns",
    response_class=Response,
    openapi_extra=BATCH_BODY,
    responses={
        200: BATCH_ANSWER,
        **problem_answers(
            "malformed-json",
            "not-acceptable",
            "request-timeout",
            "too-large",
            "unsupported-media-type",
            "busy",
            "not-ready",
        ),
    },
)
async def draft_batch(
    request: Request,
    house: HouseDep,
    format_: FormatQuery = None,
    accept_language: LanguageHeader = None,
) -> Response:
    """Draft every order of a batch and answer each as it is ready.

    The whole request is read first. Then come lines of JSON, told apart by their `type`: `result`
    and `problem`, one for each line of the request, with its `line`, its `id`, the `status` that
    a single order would have been answered with, and the `answer` (JSON as it is, other formats
    as `text` or `base64`); `progress` now and then; and `end`, without which the answer was cut.
    A line that cannot be drafted never ends the batch. Whoever hangs up stops the work.
    """
    writer = _writer(request.headers.get("accept"))
    if format_ is not None:
        chosen(format_, None, None, FORMATS.values())
    settings = house.settings
    with ExitStack() as held:
        held.enter_context(house.batches.take("As many batches as this installation takes"))
        refuse_other_media(request.headers, TAKEN)
        body = await read_body(request, settings.batch_bytes, settings.batch_body_seconds)
        entries = await to_thread.run_sync(_entries, body, house)
        tools = replace(house.tools, language=preferred_language(accept_language))
        job = Job(house.hands, tools, format_, request.scope["state"]["request_id"])
        stream = _stream(entries, writer, house, job)
        return Streamed(stream, held.pop_all(), settings.reader_seconds, _headers(writer))


def _writer(accept: str | None) -> str:
    asked = preferred(accept, WRITERS)
    if asked is None:
        detail = f"What can be made: {', '.join(WRITERS)}."
        raise ProblemError("not-acceptable", detail)
    return asked


def _entries(body: bytes, house: House) -> list[Any]:
    return list(sort_out(split(body, house.settings), house.settings))


async def _stream(
    entries: list[Any], writer: str, house: House, job: Job
) -> AsyncGenerator[bytes, None]:
    count = Count(len(entries))
    async with aclosing(flow(entries, count, job, house.settings.beat_seconds)) as answers:
        async for part in WRITERS[writer]().write(answers, count):
            yield part


def _headers(writer: str) -> Mapping[str, str]:
    told = {"Content-Type": writer, "Cache-Control": "no-store", "X-Accel-Buffering": "no"}
    if writer == ZIP:
        told["Content-Disposition"] = 'attachment; filename="patterns.zip"'
    return told
