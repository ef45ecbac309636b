"""Answers that may be kept: strong tags, and 304 for those who have them already."""

from __future__ import annotations

import hashlib
from typing import TYPE_CHECKING

from fastapi.responses import Response

from drafting.export.compact import compact
from service.coding import coding

if TYPE_CHECKING:
    from collections.abc import Mapping

    from starlette.requests import Request

    from service.settings import Settings

VARY = "Accept, Accept-Language, Accept-Encoding"


def tag(*parts: str | bytes) -> str:
    """A strong entity tag of all that decides the bytes of an answer."""
    digest = hashlib.sha256()
    for part in parts:
        digest.update(part if isinstance(part, bytes) else part.encode())
        digest.update(b"\0")
    return f'"{digest.hexdigest()[:32]}"'


def cached_headers(settings: Settings, etag: str) -> dict[str, str]:
    """Headers of an answer that may be kept."""
    return {
        "ETag": etag,
        "Cache-Control": f"public, max-age={settings.max_age}",
        "Vary": VARY,
    }


def has_it(request: Request, etag: str) -> bool:
    """Whether the client says that it has the answer of that tag."""
    said = request.headers.get("if-none-match", "")
    tags = {each.strip().removeprefix("W/") for each in said.split(",")}
    return etag in tags or said.strip() == "*"


def not_modified(headers: Mapping[str, str]) -> Response:
    """304 with the headers of the answer that the client has."""
    return Response(status_code=304, headers=dict(headers))


def kept(
    request: Request,
    settings: Settings,
    body: bytes,
    media_type: str,
    headers: Mapping[str, str] | None = None,
) -> Response:
    """An answer that may be kept, or 304 where the client has these very bytes."""
    etag = tag(media_type, coding(request), body)
    held = {**cached_headers(settings, etag), **(headers or {})}
    if has_it(request, held["ETag"]):
        return not_modified(held)
    return Response(body, headers=held, media_type=media_type)


def kept_json(
    request: Request, settings: Settings, told: object, headers: Mapping[str, str] | None = None
) -> Response:
    """A JSON answer that may be kept."""
    return kept(request, settings, compact(told), "application/json", headers)
