"""An answer that is sent while it is made, and ends at once when nobody takes it any more."""

from __future__ import annotations

import asyncio
from contextlib import ExitStack, contextmanager
from typing import TYPE_CHECKING

from starlette.requests import ClientDisconnect
from starlette.responses import StreamingResponse

from service.limits import RETRY_AFTER
from service.problems import ProblemError

if TYPE_CHECKING:
    from collections.abc import AsyncGenerator, Iterator, Mapping

    from starlette.types import Message, Receive, Scope, Send


class Streamed(StreamingResponse):
    """Sends what a generator makes; closes it whatever happens, and gives its place free.

    A client that takes nothing for `patience` seconds is given up: the connection is closed, which
    shows it that the answer is cut.
    """

    def __init__(
        self,
        content: AsyncGenerator[bytes, None],
        place: ExitStack,
        patience: float,
        headers: Mapping[str, str],
    ) -> None:
        super().__init__(content, headers=headers)
        self._content = content
        self._place = place
        self._patience = patience

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Send it."""
        with self._place:
            try:
                await super().__call__(scope, receive, send)
            finally:
                await self._content.aclose()

    async def stream_response(self, send: Send) -> None:
        """Send the parts, each within the time that a client is given to take it."""

        async def patiently(message: Message) -> None:
            try:
                async with asyncio.timeout(self._patience):
                    await send(message)
            except TimeoutError:
                raise ClientDisconnect from None

        await super().stream_response(patiently)


class Places:
    """A few places for what takes long; who finds none is asked to come again.

    Attributes:
        free: How many are free.
    """

    def __init__(self, count: int) -> None:
        self.free = count

    @contextmanager
    def take(self, what: str) -> Iterator[None]:
        """Hold a place.

        Raises:
            ProblemError: busy.
        """
        if self.free <= 0:
            raise ProblemError("busy", f"{what} are running already.", headers=RETRY_AFTER)
        self.free -= 1
        try:
            yield
        finally:
            self.free += 1
