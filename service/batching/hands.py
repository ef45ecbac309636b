"""Those who do the work beside the event loop, behind one interface: here, or on other machines."""

from __future__ import annotations

import asyncio
import multiprocessing
import os
import signal
import threading
from concurrent.futures import ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from typing import TYPE_CHECKING, Protocol, TypeVar

from service.limits import RETRY_AFTER
from service.problems import ProblemError
from service.waste import settle

if TYPE_CHECKING:
    from collections.abc import Callable
    from multiprocessing.context import BaseContext

T = TypeVar("T")

ATTEMPTS = 3
"""So often a task is tried whose worker dies; from the second time on no other such task runs
beside it, so that one that kills its workers takes no others with it for long."""

WORK = [
    "service.ranges.task",
    "service.laying.task",
    "drafting.export.draft_pdf",
    "drafting.export.lay_plans",
    "drafting.export.pdf",
]
"""Modules that workers are born with, so that none of them loads these by itself."""

POLITE = 5
"""Workers step back by so much (Unix niceness) behind the server, which drafts single orders."""


class Hands(Protocol):
    """Runs tasks, each answered exactly once."""

    async def width(self) -> int:
        """How many tasks run at the same time."""
        ...

    async def run(self, work: Callable[..., T], *args: object) -> T:
        """The result of a function of a module, called with plain values elsewhere.

        Raises:
            ProblemError: worker-lost or no-workers.
        """
        ...

    def close(self) -> None:
        """Take no more; what waits is dropped."""
        ...


class LoopLock:
    """A lock that may be asked for in one event loop after the other."""

    def __init__(self) -> None:
        self._held: tuple[asyncio.AbstractEventLoop, asyncio.Lock] | None = None

    def here(self) -> asyncio.Lock:
        """The lock of the running loop."""
        loop = asyncio.get_running_loop()
        if self._held is None or self._held[0] is not loop:
            self._held = (loop, asyncio.Lock())
        return self._held[1]


class LocalHands:
    """Worker processes of this machine, started when first needed and again when one dies."""

    def __init__(self, count: int) -> None:
        self._count = count or os.cpu_count() or 1
        self._pool: ProcessPoolExecutor | None = None
        self._starting = threading.Lock()
        self._alone = LoopLock()

    async def width(self) -> int:
        """How many worker processes there are."""
        return self._count

    async def run(self, work: Callable[..., T], *args: object) -> T:
        """The function's result; tried again where the worker dies meanwhile."""
        try:
            return await self._once(work, *args)
        except BrokenProcessPool:
            async with self._alone.here():
                for _ in range(ATTEMPTS - 1):
                    try:
                        return await self._once(work, *args)
                    except BrokenProcessPool:
                        continue
        raise lost()

    async def _once(self, work: Callable[..., T], *args: object) -> T:
        pool = self._pool
        if pool is None:
            pool = await asyncio.to_thread(self._started)
        try:
            return await asyncio.wrap_future(pool.submit(work, *args))
        except BrokenProcessPool:
            self._drop(pool)
            raise

    def _started(self) -> ProcessPoolExecutor:
        """The pool, with its workers on their way; takes as long as they take to be born."""
        with self._starting:
            pool = self._pool
            if pool is None:
                try:
                    pool = self._new(plain=False)
                except OSError:
                    pool = self._new(plain=True)
                self._pool = pool
            return pool

    def _new(self, *, plain: bool) -> ProcessPoolExecutor:
        context = _context(plain=plain)
        pool = ProcessPoolExecutor(self._count, mp_context=context, initializer=_settle_in)
        pool.submit(os.getpid)
        return pool

    def _drop(self, broken: ProcessPoolExecutor) -> None:
        if self._pool is broken:
            self._pool = None
            broken.shutdown(wait=False, cancel_futures=True)

    def close(self) -> None:
        """Stop the workers when they have done what they hold, and wait for that."""
        with self._starting:
            pool, self._pool = self._pool, None
        if pool is not None:
            pool.shutdown(wait=True, cancel_futures=True)


def lost() -> ProblemError:
    """The problem of an order whose workers die one after the other."""
    detail = f"Each of {ATTEMPTS} workers that took this order up died over it or beside it."
    return ProblemError("worker-lost", detail, headers=RETRY_AFTER)


def _context(*, plain: bool) -> BaseContext:
    """How workers are started: never as copies of a process that has threads.

    The quick way needs a file in the temp folder; the plain one needs none.
    """
    if plain or "forkserver" not in multiprocessing.get_all_start_methods():
        return multiprocessing.get_context("spawn")
    context = multiprocessing.get_context("forkserver")
    context.set_forkserver_preload(WORK)
    return context


def _settle_in() -> None:
    """A new worker: leaves Ctrl-C to the server, steps back behind it, and ends with it."""
    settle()
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    if hasattr(os, "nice"):
        os.nice(POLITE)
    threading.Thread(target=_end_with_parent, daemon=True).start()


def _end_with_parent() -> None:
    parent = multiprocessing.parent_process()
    if parent is not None:
        parent.join()
        os._exit(1)
