"""The press: writes in other processes what takes long, so that no quick answer waits for it."""

from __future__ import annotations

import asyncio
import time
from contextlib import contextmanager
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Generic, TypeVar

from service.batching.hands import LocalHands
from service.batching.streamed import Places
from service.batching.task import TooSlowError, time_limit
from service.limits import RETRY_AFTER, Pace, too_slow
from service.logs import OutlinedError, outline
from service.problems import ProblemError

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Mapping

    from service.settings import Settings

T = TypeVar("T")

HEAVY = frozenset({"pdf", "png", "zip"})
"""Formats that take several times as long as JSON."""


@dataclass(frozen=True, slots=True)
class Printed(Generic[T]):
    """What came of a task in another process: its result, or the outline of a fault."""

    result: T | None
    fault: Mapping[str, Any] | None = None


class Press:
    """Worker processes for heavy formats, with a bounded queue and a time for each task.

    Tasks are calls of a module's functions with plain values. A task that runs out of time is
    stopped where it is, and its worker takes the next.
    """

    def __init__(self, settings: Settings) -> None:
        self._hands = LocalHands(settings.heavy_workers)
        self._count = settings.heavy_workers + settings.queue_length
        self._places = Places(self._count)
        self._seconds = settings.order_seconds
        self._pace = Pace(settings.order_seconds)

    async def run(self, task: Callable[[], T]) -> T:
        """The task's result.

        Raises:
            ProblemError: busy, too-slow or worker-lost, or what the task itself raises.
            OutlinedError: The task has a fault.
        """
        with self._places.take("As many heavy documents as this installation prints"), self._turn():
            try:
                async with asyncio.timeout(self._seconds):
                    printed: Printed[T] = await self._hands.run(pressed, task, self._seconds)
            except TimeoutError:
                raise too_slow(self._seconds) from None
        if printed.fault is not None:
            raise OutlinedError(printed.fault)
        return printed.result  # type: ignore[return-value]

    @contextmanager
    def _turn(self) -> Iterator[None]:
        """A turn in the queue, timed. Raises ProblemError (busy) where it would come too late."""
        came, ahead = time.monotonic(), self._count - self._places.free - 1
        if self._pace.is_too_slow(ahead):
            detail = f"{ahead} heavy documents are in hand or waiting."
            raise ProblemError("busy", detail, headers=RETRY_AFTER)
        try:
            yield
        finally:
            self._pace.moved(ahead, time.monotonic() - came)

    async def warm(self) -> None:
        """Start a worker before the first task needs it."""
        await self._hands.run(pressed, ready, self._seconds)

    def close(self) -> None:
        """Stop the workers when they have done what they hold, and wait for that."""
        self._hands.close()


def ready() -> bool:
    """A task that shows that a worker is there."""
    return True


def pressed(task: Callable[[], T], seconds: float) -> Printed[T]:
    """A task's result, in the process that was asked for it."""
    try:
        with time_limit(seconds):
            return Printed(task())
    except ProblemError:
        raise
    except TooSlowError:
        raise too_slow(seconds) from None
    except Exception as error:  # noqa: BLE001 - its message stays here: it may quote the order
        return Printed(None, outline(type(error), error.__traceback__))
