"""Orders sealed into tokens that stand in an address, and opened again. Nothing is kept.

A token is the order as packed JSON with the moment until which it holds, sealed by AES-256-GCM
under a fresh nonce: no one without a key can read it, change it, or tell whether two tokens hold
the same order.
"""

from __future__ import annotations

import base64
import binascii
import json
import secrets
import zlib
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from service.problems import ProblemError, Trouble
from service.settings import SettingsError

if TYPE_CHECKING:
    from cryptography.hazmat.primitives.ciphers.aead import AESGCM

KEY_BYTES = 32
NONCE_BYTES = 12
UNTIL_BYTES = 8
VERSION = b"\x01"
"""First byte of each token, sealed with it: what follows is as this module writes it."""

LONGEST_TOKEN = 6000
"""Characters; browsers, proxies and mail programs carry addresses of that length."""


@dataclass(frozen=True, slots=True)
class Opened:
    """What a token holds.

    Attributes:
        order: JSON of the order.
        seconds: For how long the token still holds; None where it has no end.
    """

    order: bytes
    seconds: int | None


class Links:
    """Seals with the first of its keys, opens with any of them; without a key it does neither.

    Args:
        keys: 32 bytes each, as URL-safe Base64.

    Raises:
        SettingsError: A key is none.
    """

    def __init__(self, keys: tuple[str, ...]) -> None:
        self._locks = tuple(_lock(key) for key in keys)

    @property
    def on(self) -> bool:
        """Whether this installation makes links."""
        return bool(self._locks)

    def refuse_off(self) -> None:
        """Raise ProblemError (not-found) where this installation makes no links."""
        if not self.on:
            raise ProblemError("not-found", "This installation makes no links.")

    def seal(self, order: Any, until: int | None) -> str:
        """A token for a decoded order, valid until a moment in seconds of the Unix clock.

        Raises:
            ProblemError: not-found where links are off, invalid-order where it would be too long.
        """
        self.refuse_off()
        packed = zlib.compress(json.dumps(order, separators=(",", ":")).encode(), 9)
        nonce = secrets.token_bytes(NONCE_BYTES)
        inside = (until or 0).to_bytes(UNTIL_BYTES) + packed
        sealed = VERSION + nonce + self._locks[0].encrypt(nonce, inside, VERSION)
        token = base64.urlsafe_b64encode(sealed).rstrip(b"=").decode()
        if len(token) > LONGEST_TOKEN:
            raise _too_long(len(token))
        return token

    def open(self, token: str, now: float, most: int) -> Opened:
        """What a token holds.

        Args:
            token: As it stands in the address.
            now: Seconds of the Unix clock.
            most: Longest order in bytes.

        Raises:
            ProblemError: not-found where links are off, and where the token is damaged, has
                expired or was sealed by another key.
        """
        self.refuse_off()
        inside = self._opened(token)
        until = int.from_bytes(inside[:UNTIL_BYTES])
        if until and now >= until:
            raise _leads_nowhere()
        order = zlib.decompressobj().decompress(inside[UNTIL_BYTES:], most)
        return Opened(order, int(until - now) if until else None)

    def _opened(self, token: str) -> bytes:
        from cryptography.exceptions import InvalidTag  # noqa: PLC0415 - only where links are on

        sealed = _bytes(token)
        if sealed[:1] != VERSION:
            raise _leads_nowhere()
        nonce, rest = sealed[1 : 1 + NONCE_BYTES], sealed[1 + NONCE_BYTES :]
        for lock in self._locks:
            try:
                return lock.decrypt(nonce, rest, VERSION)
            except (InvalidTag, ValueError):
                continue
        raise _leads_nowhere()


def _lock(key: str) -> AESGCM:
    from cryptography.hazmat.primitives.ciphers.aead import (  # noqa: PLC0415 - slow to load
        AESGCM,
    )

    try:
        plain = base64.urlsafe_b64decode(key + "=" * (-len(key) % 4))
    except (binascii.Error, ValueError):
        plain = b""
    if len(plain) != KEY_BYTES:
        detail = "TAPELINE_LINK_KEYS must hold keys as `python -m service key` makes them."
        raise SettingsError(detail)
    return AESGCM(plain)


def _bytes(token: str) -> bytes:
    if len(token) > LONGEST_TOKEN:
        raise _leads_nowhere()
    try:
        sealed = base64.b64decode(token + "=" * (-len(token) % 4), altchars=b"-_", validate=True)
    except (binascii.Error, ValueError):
        raise _leads_nowhere() from None
    if base64.urlsafe_b64encode(sealed).rstrip(b"=").decode() != token:
        raise _leads_nowhere()
    return sealed


def _leads_nowhere() -> ProblemError:
    detail = "This link leads nowhere: it is damaged, has expired, or was made elsewhere."
    return ProblemError("not-found", detail)


def _too_long(length: int) -> ProblemError:
    detail = (
        f"The link would be {length} characters long; at most {LONGEST_TOKEN} are made. Leave out "
        "what stands in the order by default, or shorten the reference."
    )
    trouble = Trouble(pointer="", code="link_too_long", detail=detail)
    return ProblemError("invalid-order", detail, (trouble,))
