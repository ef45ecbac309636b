"""How much is done at once: a few workers, a bounded queue in front of them, a time for each."""

from __future__ import annotations

import asyncio
import threading
import time
from concurrent.futures import ThreadPoolExecutor
from typing import TYPE_CHECKING, TypeVar

from service.problems import ProblemError

if TYPE_CHECKING:
    from collections.abc import Callable
    from concurrent.futures import Future

    from service.settings import Settings

T = TypeVar("T")

RETRY_AFTER = {"Retry-After": "2"}
"""Seconds after which a full house has usually drafted what was waiting."""


PATIENCE = 0.5
"""Share of an order's time that it may be expected to wait; the rest is for the work itself."""

NEWEST = 0.125
"""Weight of the newest order in what orders ahead are said to take."""


class Pace:
    """How fast a queue moves, so that no order waits in it whose time would run out there.

    Threads that share one interpreter and a machine with much else to do make a queue slow that is
    short enough on a quiet one: its length alone is no promise.
    """

    def __init__(self, seconds: float) -> None:
        self._patience = PATIENCE * seconds
        self._each = 0.0

    def is_too_slow(self, ahead: int) -> bool:
        """Whether an order would wait too long behind so many others, those in hand among them."""
        return ahead * self._each > self._patience

    def moved(self, ahead: int, seconds: float) -> None:
        """An order is done, so many seconds after it came to stand behind others."""
        self._each += NEWEST * (seconds / (ahead + 1) - self._each)


class Workbench:
    """Runs orders beside the event loop, so that a long one never holds up the others.

    An order that runs out of time is answered at once; its thread cannot be stopped and keeps its
    place until it is done, so that no more work is taken than there are hands.
    """

    def __init__(self, settings: Settings) -> None:
        self._hands = max(settings.workers, 1)
        self._places = self._hands + settings.queue_length
        self._seconds = settings.order_seconds
        self._pace = Pace(settings.order_seconds)
        self._taken = 0
        self._lock = threading.Lock()
        self.open()

    @property
    def is_open(self) -> bool:
        """Whether another order would be taken, and more may come."""
        return not (self._closed or self._leaving or self._is_full)

    @property
    def _is_full(self) -> bool:
        return self._taken >= self._places or self._pace.is_too_slow(self._taken)

    @property
    def taken(self) -> int:
        """Orders in hand or waiting."""
        return self._taken

    async def run(self, task: Callable[[], T]) -> T:
        """The task's result.

        Raises:
            ProblemError: busy, too-slow or not-ready.
        """
        work = self._take(task)
        try:
            async with asyncio.timeout(self._seconds):
                return await asyncio.wrap_future(work)
        except TimeoutError:
            raise too_slow(self._seconds) from None

    def open(self) -> None:
        """Take orders."""
        self._workers = ThreadPoolExecutor(self._hands, "tapeline")
        self._closed = self._leaving = False

    def leave(self) -> None:
        """Say that no more orders should come; those that do are still taken."""
        self._leaving = True

    def close(self) -> None:
        """Take no more orders; what is in hand is finished."""
        with self._lock:
            self._closed = True
        self._workers.shutdown(wait=False, cancel_futures=False)

    def _take(self, task: Callable[[], T]) -> Future[T]:
        with self._lock:
            if self._closed:
                detail = "The service is stopping."
                raise ProblemError("not-ready", detail, headers=RETRY_AFTER)
            if self._is_full:
                detail = f"{self._taken} orders are in hand or waiting."
                raise ProblemError("busy", detail, headers=RETRY_AFTER)
            work = self._workers.submit(task)
            came, ahead = time.monotonic(), self._taken
            self._taken += 1
        work.add_done_callback(lambda _: self._leave(came, ahead))
        return work

    def _leave(self, came: float, ahead: int) -> None:
        with self._lock:
            self._taken -= 1
            self._pace.moved(ahead, time.monotonic() - came)


def too_slow(seconds: float) -> ProblemError:
    """The problem of an order that ran out of time."""
    detail = f"The pattern was not ready within {seconds:g} seconds."
    return ProblemError("too-slow", detail, headers=RETRY_AFTER)
