"""Hands on other machines, lent by an engine that is there already: Dask distributed.

Tasks go to the scheduler's workers through its client's executor; the engine repeats what a dying
worker drops. The workers must have this package installed, in the same version.
"""

from __future__ import annotations

import asyncio
import time
from asyncio import to_thread
from typing import TYPE_CHECKING, Any, TypeVar

from service.batching.hands import LoopLock, lost
from service.limits import RETRY_AFTER
from service.problems import ProblemError

if TYPE_CHECKING:
    from collections.abc import Callable
    from concurrent.futures import Future

T = TypeVar("T")

CONNECT_SECONDS = 5.0
"""A scheduler that does not answer within 5 seconds is away; nobody asks it again for as long."""
RETRIES = 2
"""So often the engine repeats a task that failed, beside those that lost their worker."""
LEAST_WIDTH = 2
"""What a cluster is taken to do at the same time where it cannot be asked."""


class ClusterHands:
    """The workers of a Dask scheduler, found when first needed and again when they were lost."""

    def __init__(self, address: str, seconds: float) -> None:
        self._address = address
        self._seconds = seconds
        self._client: Any = None
        self._away_until = 0.0
        self._connecting = LoopLock()

    async def width(self) -> int:
        """How many tasks the cluster works on at the same time."""
        try:
            client = await self._ready()
            threads: dict[str, int] = await to_thread(client.nthreads)
        except (ProblemError, OSError):
            return LEAST_WIDTH
        return max(sum(threads.values()), LEAST_WIDTH)

    async def run(self, work: Callable[..., T], *args: object) -> T:
        """The function's result.

        Raises:
            ProblemError: no-workers, where the scheduler or its workers are away; worker-lost.
        """
        client = await self._ready()
        future = client.get_executor(pure=False, retries=RETRIES).submit(work, *args)
        try:
            async with asyncio.timeout(self._seconds):
                return await _result(future)
        except TimeoutError:
            raise away(f"No worker answered within {self._seconds:g} seconds.") from None
        except _SchedulerLostError:
            await self._forget(client)
            raise away("The scheduler was lost while it had this order.") from None
        except Exception as error:
            if type(error).__name__ == "KilledWorker":
                raise lost() from None
            raise

    async def _ready(self) -> Any:
        """The client, connected."""
        async with self._connecting.here():
            if self._client is not None and self._client.status != "running":
                await self._forget(self._client)
            if self._client is None:
                await self._connect()
            return self._client

    async def _connect(self) -> None:
        if time.monotonic() < self._away_until:
            raise away("The scheduler does not answer.")
        try:
            self._client = await to_thread(_client, self._address)
        except (OSError, TimeoutError):
            self._away_until = time.monotonic() + CONNECT_SECONDS
            raise away("The scheduler does not answer.") from None

    async def _forget(self, client: Any) -> None:
        """Let go of a client whose scheduler is lost."""
        if self._client is client:
            self._client = None
            await to_thread(client.close, 1)

    def close(self) -> None:
        """Leave the cluster; what waits there is dropped."""
        client, self._client = self._client, None
        if client is not None:
            client.close(1)


class _SchedulerLostError(Exception):
    """The engine has cancelled a task that nobody here cancelled."""


def _client(address: str) -> Any:
    """A client of the scheduler. Raises OSError where there is none, or no engine is installed."""
    try:
        from distributed import Client  # noqa: PLC0415 - only those who have a cluster need it
    except ImportError:
        raise OSError("the engine is not installed: pip install 'tapeline[cluster]'") from None
    connect: Any = Client
    return connect(address, timeout=CONNECT_SECONDS, set_as_default=False)


async def _result(future: Future[T]) -> T:
    """The future's result; told apart whether we or the engine cancelled it."""
    loop = asyncio.get_running_loop()
    done = asyncio.Event()

    def wake(_: object) -> None:
        if not loop.is_closed():
            loop.call_soon_threadsafe(done.set)

    future.add_done_callback(wake)
    try:
        await done.wait()
    except asyncio.CancelledError:
        future.cancel()
        raise
    if future.cancelled():
        raise _SchedulerLostError
    return future.result()


def away(detail: str) -> ProblemError:
    """The problem of an order that no worker of the cluster could be given."""
    return ProblemError("no-workers", detail, headers=RETRY_AFTER)
