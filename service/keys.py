"""Who may send orders, and how many: keys and a rate, for small installations without a gateway.

An installation keeps only the digests of its keys. A key is 32 random bytes, so a plain SHA-256 is
enough: there is nothing to guess from a list of words.
"""

from __future__ import annotations

import hashlib
import hmac
import math
import re
import time
from dataclasses import dataclass
from typing import TYPE_CHECKING

from starlette.datastructures import Headers

from service.problems import ProblemError, problem_response
from service.settings import SettingsError

if TYPE_CHECKING:
    from collections.abc import Callable

    from starlette.types import ASGIApp, Receive, Scope, Send

    from service.metrics import Metrics

MINUTE = 60.0
_DIGEST = re.compile("[0-9a-f]{64}")
_BEARER = re.compile(r"bearer +(?P<key>[\x21-\x7e]{1,200})", re.IGNORECASE)
_ASKS_FOR_KEY = {"WWW-Authenticate": 'Bearer realm="tapeline"'}


def digest(key: str) -> str:
    """SHA-256 of a key, in hexadecimal digits: what `TAPELINE_API_KEYS` holds."""
    return hashlib.sha256(key.encode()).hexdigest()


@dataclass(slots=True)
class Allowance:
    """How many requests a key may still make: filled by the minute's rate, never beyond it."""

    left: float
    told_at: float

    def take(self, rate: float, now: float) -> float:
        """Take one request; gives the seconds to wait where there is none left, else nought."""
        self.left = min(rate, self.left + (now - self.told_at) * rate / MINUTE)
        self.told_at = now
        if self.left < 1.0:
            return (1.0 - self.left) * MINUTE / rate
        self.left -= 1.0
        return 0.0


class Porter:
    """Knows the keys, and counts what is asked with each.

    Args:
        digests: Digests of the keys; without any, everyone may order.
        rate: Requests a minute for each key; 0 for any number.
        clock: Seconds that never go back.

    Raises:
        SettingsError: A digest is none.
    """

    def __init__(
        self, digests: tuple[str, ...], rate: int, clock: Callable[[], float] = time.monotonic
    ) -> None:
        if not all(_DIGEST.fullmatch(each) for each in digests):
            detail = "TAPELINE_API_KEYS must hold digests as `python -m service key` shows them."
            raise SettingsError(detail)
        if rate and not digests:
            raise SettingsError("TAPELINE_KEY_RATE is a rate for each key: set TAPELINE_API_KEYS.")
        self._digests = digests
        self._rate = float(rate)
        self._clock = clock
        self._allowances = {each: Allowance(self._rate, clock()) for each in digests}

    def let_in(self, authorization: str) -> None:
        """Let a request in by its Authorization header.

        Raises:
            ProblemError: unauthorized or too-many-requests.
        """
        if not self._digests:
            return
        known = self._known(authorization)
        if known is None:
            detail = "Send a key of this installation: Authorization: Bearer KEY."
            raise ProblemError("unauthorized", detail, headers=_ASKS_FOR_KEY)
        wait = self._allowances[known].take(self._rate, self._clock()) if self._rate else 0.0
        if wait:
            detail = f"A key may make {self._rate:g} requests a minute."
            headers = {"Retry-After": str(math.ceil(wait))}
            raise ProblemError("too-many-requests", detail, headers=headers)

    def _known(self, authorization: str) -> str | None:
        """The digest of the key; all are compared, each in a time that tells nothing."""
        said = _BEARER.fullmatch(authorization.strip())
        own = digest(said["key"] if said else "")
        found = [each for each in self._digests if hmac.compare_digest(each, own)]
        return found[0] if found and said else None


class Gate:
    """ASGI middleware: what works for a client (POST) needs a key where the installation has any.

    Reference data and samples, health and pages stay open, and so do links, which are keys
    themselves.
    """

    def __init__(self, app: ASGIApp, porter: Porter, metrics: Metrics) -> None:
        self.app = app
        self._porter = porter
        self._metrics = metrics

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Let a request in, or answer why not, before its body is read."""
        if scope["type"] == "http" and scope["method"] == "POST":
            try:
                self._porter.let_in(Headers(scope=scope).get("authorization", ""))
            except ProblemError as problem:
                self._metrics.problem(problem.code)
                await problem_response(problem)(scope, receive, send)
                return
        await self.app(scope, receive, send)
