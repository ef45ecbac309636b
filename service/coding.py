"""Answers packed for those who unpack them: gzip, where Accept-Encoding takes it."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from starlette.datastructures import Headers
from starlette.middleware.gzip import GZipResponder, IdentityResponder

if TYPE_CHECKING:
    from starlette.requests import Request
    from starlette.types import ASGIApp, Receive, Scope, Send

LEAST_BYTES = 1000
"""Shorter answers are sent as they are: packing them gains nothing."""

LEVEL = 6
"""A finer one takes longer and gains less than a hundredth."""

_WEIGHED = re.compile(
    r"\s*(?P<coding>\*|[a-z0-9!#$%&'+.^_`|~-]+)\s*(?:;\s*q=(?P<q>[01](?:\.\d{0,3})?)\s*)?"
)

LONGEST_HEADER = 1000
"""Characters of an Accept-Encoding header that are read."""


def takes_gzip(accept_encoding: str) -> bool:
    """Whether a header takes gzip: named, or under "*", and not with a weight of nought.

    >>> [takes_gzip(h) for h in ("gzip", "br, GZIP;q=0.5", "*", "deflate, *;q=0.1")]
    [True, True, True, True]
    >>> [takes_gzip(h) for h in ("", "br", "gzip;q=0", "*, gzip;q=0.000", "identity, *;q=0")]
    [False, False, False, False, False]
    """
    parts = accept_encoding.lower()[:LONGEST_HEADER].split(",")
    weights = {m["coding"]: float(m["q"] or 1) for p in parts if (m := _WEIGHED.fullmatch(p))}
    return weights.get("gzip", weights.get("*", 0.0)) > 0


def coding(request: Request) -> str:
    """The coding in which this request is answered; part of every entity tag."""
    told: str = request.scope["state"]["coding"]
    return told


class Packing:
    """ASGI middleware that packs answers, streamed ones as they come."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer in the coding that the client takes."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        packed = takes_gzip(Headers(scope=scope).get("accept-encoding", ""))
        scope["state"]["coding"] = "gzip" if packed else "identity"
        responder = (
            GZipResponder(self.app, LEAST_BYTES, LEVEL)
            if packed
            else IdentityResponder(self.app, LEAST_BYTES)
        )
        await responder(scope, receive, send)
