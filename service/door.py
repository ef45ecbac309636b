"""The door that every request comes in and every answer goes out by.

Gives each request an id, answers HEAD like GET without the body, adds the headers that every
answer carries, answers what nobody else caught, and writes the one line of the log.
"""

from __future__ import annotations

import re
import time
import uuid
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from starlette.datastructures import MutableHeaders
from starlette.requests import ClientDisconnect

from drafting import DRAFTING_VERSION
from service.logs import fault, request_line
from service.problems import ProblemError, problem_response

if TYPE_CHECKING:
    from starlette.types import ASGIApp, Message, Receive, Scope, Send

    from service.metrics import Metrics

PAGE_POLICY = (
    "default-src 'none'; img-src 'self' data:; style-src 'self'; base-uri 'none'; "
    "form-action 'none'; frame-ancestors 'none'"
)
"""What the service's own pages may load: pictures and styles from here, no script."""

PAGE_HEADERS = {
    "Cross-Origin-Opener-Policy": "same-origin",
    "Permissions-Policy": "camera=(), geolocation=(), microphone=(), payment=(), usb=()",
    "X-Frame-Options": "DENY",
}
"""What the service's own pages need not and may not do. Encryption in transit is a gateway's."""

CLIENT_LEFT = 499
"""Status in the log of a request whose client has gone; nobody receives it."""


@dataclass(slots=True)
class Visit:
    """One request while it is in the house."""

    head: bool
    request_id: str = field(default_factory=lambda: uuid.uuid4().hex)
    began: float = field(default_factory=time.perf_counter)
    status: int = 0
    received: int = 0
    sent: int = 0


class Door:
    """ASGI middleware around the whole service."""

    def __init__(self, app: ASGIApp, metrics: Metrics) -> None:
        self.app = app
        self._metrics = metrics

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Let a request in; lifespan and the like pass through."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        visit = Visit(scope["method"] == "HEAD")
        known = {**scope.get("state", {}), "request_id": visit.request_id}
        inside = {**scope, "state": known, **({"method": "GET"} if visit.head else {})}
        sends = _Sender(visit, send)
        try:
            await self._serve(inside, _counted(visit, receive), sends, visit)
        finally:
            self._tell(visit, scope["method"], inside)

    async def _serve(self, scope: Scope, receive: Receive, sends: _Sender, visit: Visit) -> None:
        try:
            await self.app(scope, receive, sends)
        except ClientDisconnect:
            visit.status = CLIENT_LEFT
        except Exception as error:  # noqa: BLE001 - the last one who can answer
            fault(error, visit.request_id)
            if not visit.status:
                self._metrics.problem("internal-error")
                detail = "Something went wrong in the service; the order was not kept."
                answer = problem_response(ProblemError("internal-error", detail))
                await answer(scope, receive, sends)

    def _tell(self, visit: Visit, method: str, scope: Scope) -> None:
        """Log the request, and count it."""
        seconds = time.perf_counter() - visit.began
        known = method if method in METHODS else "other"
        route = getattr(scope.get("route"), "path", "none")
        status = visit.status or CLIENT_LEFT
        request_line(
            request_id=visit.request_id,
            method=known,
            route=route,
            status=status,
            ms=round(seconds * 1000, 1),
            bytes_in=visit.received,
            bytes_out=visit.sent,
        )
        self._metrics.answered(
            method=known,
            route=route,
            status=status,
            seconds=seconds,
            received=visit.received,
            sent=visit.sent,
        )


@dataclass(slots=True)
class _Sender:
    visit: Visit
    send: Send

    async def __call__(self, message: Message) -> None:
        if message["type"] == "http.response.start":
            self.visit.status = message["status"]
            dress(MutableHeaders(scope=message), self.visit.request_id)
        elif message["type"] == "http.response.body":
            if self.visit.head:
                message = {**message, "body": b""}
            self.visit.sent += len(message.get("body", b""))
        await self.send(message)


def dress(headers: MutableHeaders, request_id: str) -> None:
    """Add the headers that every answer carries."""
    headers["Request-Id"] = request_id
    headers["Drafting-Version"] = DRAFTING_VERSION
    headers["X-Content-Type-Options"] = "nosniff"
    headers["Referrer-Policy"] = "no-referrer"
    headers.setdefault("Content-Security-Policy", PAGE_POLICY)
    headers.setdefault("Cross-Origin-Resource-Policy", "same-origin")
    if headers.get("content-type", "").startswith("text/html"):
        for name, value in PAGE_HEADERS.items():
            headers[name] = value
    if "vary" in headers:
        headers["Vary"] = ", ".join(dict.fromkeys(re.split(r"\s*,\s*", headers["vary"])))
    if "allow" in headers and "GET" in headers["allow"]:
        headers["Allow"] = _with_head(headers["allow"])


def _with_head(allow: str) -> str:
    methods = {method.strip() for method in allow.split(",")}
    return ", ".join(sorted(methods | {"HEAD"}))


def _counted(visit: Visit, receive: Receive) -> Receive:
    async def counting() -> Message:
        message = await receive()
        visit.received += len(message.get("body", b""))
        return message

    return counting


METHODS = frozenset({"GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS", "TRACE"})
"""Methods that are logged by name; any other text is the client's own."""
