"""From the bytes of a request to decoded JSON: whole, small enough, and plain."""

from __future__ import annotations

import asyncio
import json
import math
import re
from typing import TYPE_CHECKING, Any, NoReturn

from service.problems import ProblemError, Trouble

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from starlette.requests import Request

    from service.settings import Settings

_STRING = re.compile(rb'"(?:[^"\\]|\\.)*"?', re.DOTALL)
_JSON_TYPE = re.compile(r"application/(?:json|[a-z0-9.!#$&^_-]+\+json)")
_CHARSET = re.compile(r"charset\s*=\s*\"?([a-z0-9_-]+)")
_TAKES_JSON: Mapping[str, str] = {"Accept": "application/json"}
_BRACKETS = re.compile(rb"[\[\]{}]")


async def read_json(request: Request, settings: Settings) -> Any:
    """The request's body, decoded.

    Raises:
        ProblemError: unsupported-media-type, too-large, request-timeout or malformed-json.
    """
    refuse_other_media(request.headers)
    body = await read_body(request, settings.max_body_bytes, settings.order_seconds)
    return decode(body, settings.max_json_depth)


def refuse_other_media(headers: Mapping[str, str], taken: tuple[str, ...] = ()) -> None:
    """Raise unsupported-media-type unless the body says that it is plain JSON in UTF-8.

    Where media types are `taken`, it must be one of them instead.
    """
    name = taken[0] if taken else "application/json"
    coding = headers.get("content-encoding", "identity").strip().lower()
    if coding not in ("", "identity"):
        _refuse_media(f"The body is compressed ({coding[:40]}).", {"Accept-Encoding": "identity"})
    media, _, parameters = headers.get("content-type", "").lower().partition(";")
    if not media.strip():
        _refuse_media(f"The Content-Type header is missing; it must be {name}.", {"Accept": name})
    kind = media.strip()
    if not (kind in taken if taken else _JSON_TYPE.fullmatch(kind)):
        _refuse_media(f"The Content-Type header must be {name}.", {"Accept": name})
    charset = _CHARSET.search(parameters)
    if charset and charset[1] not in ("utf-8", "utf8", "us-ascii"):
        _refuse_media("JSON is sent in UTF-8.")


def _refuse_media(detail: str, headers: Mapping[str, str] = _TAKES_JSON) -> NoReturn:
    raise ProblemError("unsupported-media-type", detail, headers=headers)


async def read_body(request: Request, most: int, seconds: float) -> bytes:
    """The whole body, refused as soon as it says or shows that it is longer than `most` bytes."""
    said = request.headers.get("content-length", "")
    if said.isdecimal() and int(said[:20]) > most:
        raise _too_large(most)
    try:
        async with asyncio.timeout(seconds):
            return await _stream(request, most)
    except TimeoutError:
        detail = f"The body did not arrive within {seconds:g} seconds."
        raise ProblemError("request-timeout", detail, headers={"Connection": "close"}) from None


async def _stream(request: Request, most: int) -> bytes:
    body = bytearray()
    async for chunk in request.stream():
        body += chunk
        if len(body) > most:
            raise _too_large(most)
    return bytes(body)


def _too_large(most: int) -> ProblemError:
    return ProblemError("too-large", f"At most {most} bytes are taken; send one order at a time.")


def decode(body: bytes, deepest: int) -> Any:
    """JSON of plain objects, lists, texts, finite numbers, true, false and null.

    A field that stands twice in one object is refused, since readers differ on which one counts.
    A byte order mark is refused, as RFC 8259 allows.

    Raises:
        ProblemError: malformed-json.
    """
    if not body.strip():
        _malformed("empty_body", "The body is empty: send an order as JSON.")
    _refuse_deep(body, deepest)
    try:
        return _parsed(body.decode())
    except UnicodeDecodeError as error:
        _malformed("not_utf8", f"Byte {error.start + 1} of the body is not UTF-8.")
    except json.JSONDecodeError as error:
        where = f"line {error.lineno}, column {error.colno}"
        _malformed("not_json", f"{error.msg} at {where}.")


def _parsed(text: str) -> Any:
    if text.startswith("\N{BYTE ORDER MARK}"):
        _malformed("byte_order_mark", "The body starts with a byte order mark: send it without.")
    found = json.loads(
        text,
        object_pairs_hook=_object,
        parse_float=_float,
        parse_int=_int,
        parse_constant=_constant,
    )
    _refuse_halves(found)
    return found


def _refuse_halves(found: object) -> None:
    """Raise where a text holds half of a surrogate pair, which no document can carry."""
    try:
        json.dumps(found, ensure_ascii=False).encode()
    except UnicodeEncodeError:
        _malformed("half_character", "A text holds half of a character; send whole ones.")


def _malformed(code: str, detail: str) -> NoReturn:
    raise ProblemError("malformed-json", detail, (Trouble(pointer="", code=code, detail=detail),))


def _refuse_deep(body: bytes, deepest: int) -> None:
    depth = 0
    for bracket in _BRACKETS.findall(_STRING.sub(b"", body)):
        depth += 1 if bracket in b"[{" else -1
        if depth > deepest:
            _malformed("nested_too_deep", f"Objects and lists may stand {deepest} deep.")


def _object(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found = dict(pairs)
    if len(found) < len(pairs):
        shown = _twice(name for name, _ in pairs)[:40].encode("utf-8", "replace").decode()
        _malformed("field_twice", f"The field {shown!r} stands twice in one object.")
    return found


def _twice(names: Iterable[str]) -> str:
    """The first name that stands for the second time; "" where none does."""
    seen: set[str] = set()
    for name in names:
        if name in seen:
            return name
        seen.add(name)
    return ""


def _int(digits: str) -> float:
    return int(digits) if len(digits) < 16 else _float(digits)


def _float(text: str) -> float:
    number = float(text)
    if math.isinf(number):
        _malformed("not_finite", "A number is too large to hold: send plain decimal numbers.")
    return number


def _constant(name: str) -> NoReturn:
    _malformed("not_finite", f"{name} is no JSON: leave the field out where there is no number.")
