"""A batch while it runs: a bounded number of orders in hand, answers as they are ready."""

from __future__ import annotations

import asyncio
import time
from collections.abc import AsyncGenerator, Iterable, Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from service.batching.lines import Id, Spoiled, Ticket
from service.batching.task import Done, Tools, draft_line, faulty, refused
from service.logs import outlined
from service.problems import ProblemError

if TYPE_CHECKING:
    from service.batching.hands import Hands

AHEAD = 2
"""So many orders for each hand are given out: one in work, and the next."""


@dataclass(frozen=True, slots=True)
class Answered:
    """One line of the batch with its answer."""

    line: int
    id: Id
    done: Done


@dataclass(slots=True)
class Count:
    """How far a batch is."""

    total: int
    done: int = 0
    failed: int = 0
    began: float = 0.0

    def add(self, answered: Answered) -> None:
        """Count one more answer."""
        self.done += 1
        self.failed += answered.done.failed

    @property
    def seconds(self) -> float:
        """Since the batch began."""
        return time.monotonic() - self.began


@dataclass(frozen=True, slots=True)
class Job:
    """What is done with each order of a batch.

    Attributes:
        hands: Who does it.
        tools: What they need to know.
        format_: Format that goes before the orders' own.
        request_id: Stands beside a fault in the log.
    """

    hands: Hands
    tools: Tools
    format_: str | None
    request_id: str

    async def answer(self, ticket: Ticket) -> Answered:
        """Draft one order; whatever happens is its answer."""
        try:
            done = await self.hands.run(draft_line, self.tools, ticket.body, self.format_)
        except ProblemError as problem:
            done = refused(problem)
        except Exception as error:  # noqa: BLE001 - one order never ends the batch
            done = faulty(error)
        if done.fault:
            outlined(done.fault, self.request_id)
        return Answered(ticket.line, ticket.id, done)


async def flow(
    entries: Iterable[Ticket | Spoiled], count: Count, job: Job, beat: float
) -> AsyncGenerator[Answered | Count, None]:
    """Answer all lines of a batch, each exactly once, in the order in which they are ready.

    Args:
        entries: The lines.
        count: Kept up to date.
        job: What is done with each order.
        beat: Seconds from one progress report to the next.

    Yields:
        Answers, and every `beat` seconds the count. When it is closed early, what is not yet in
        work is dropped.
    """
    waiting, window = iter(entries), AHEAD * await job.hands.width()
    count.began = told = time.monotonic()
    in_hand: set[asyncio.Task[Answered]] = set()
    try:
        while True:
            ready = [*_give_out(waiting, in_hand, window, job)]
            if in_hand:
                ready += await _ready(in_hand, told + beat - time.monotonic())
            for answered in ready:
                count.add(answered)
                yield answered
            if count.done == count.total:
                return
            if time.monotonic() >= told + beat:
                told = time.monotonic()
                yield count
    finally:
        for task in in_hand:
            task.cancel()
        await asyncio.gather(*in_hand, return_exceptions=True)


def _give_out(
    waiting: Iterator[Ticket | Spoiled],
    in_hand: set[asyncio.Task[Answered]],
    window: int,
    job: Job,
) -> Iterator[Answered]:
    """Give out orders until the window is full; lines without an order are answered at once."""
    while len(in_hand) < window:
        entry = next(waiting, None)
        if entry is None:
            return
        if isinstance(entry, Spoiled):
            yield Answered(entry.line, entry.id, refused(entry.problem))
        else:
            in_hand.add(asyncio.create_task(job.answer(entry)))


async def _ready(in_hand: set[asyncio.Task[Answered]], seconds: float) -> list[Answered]:
    """Take out what is ready, waiting for the first, but not longer than so many seconds."""
    ready, _ = await asyncio.wait(
        in_hand, timeout=max(seconds, 0.0), return_when=asyncio.FIRST_COMPLETED
    )
    in_hand -= ready
    return [task.result() for task in ready]
