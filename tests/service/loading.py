"""Many clients at once against a real server, and what became of each request."""

from __future__ import annotations

import asyncio
import itertools
import json
import time
from collections import Counter
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

import httpx
from asking import example

if TYPE_CHECKING:
    from collections.abc import Iterator

FORMATS = ("json", "svg", "json", "dxf", "json", "pdf", "json", "svg", "json", "wrong")
"""What is asked for, over and over; "wrong" is an order that cannot be read."""

PAUSE = 0.05
"""Seconds that a client waits who was turned away: much less than it was asked to."""


@dataclass(slots=True)
class Tally:
    """What became of the requests.

    Attributes:
        sent: How many were sent.
        answers: How many were answered with each status.
        faults: What went wrong, in short; empty where all is well.
        seconds: How long each pattern took that was asked for, by its format.
    """

    sent: int = 0
    answers: Counter[int] = field(default_factory=Counter)
    faults: Counter[str] = field(default_factory=Counter)
    seconds: dict[str, list[float]] = field(default_factory=dict)

    def percentile(self, name: str, share: float) -> float:
        """The seconds within which so large a share of a format's patterns came."""
        return percentile(self.seconds[name], share)


def percentile(taken: list[float], share: float) -> float:
    return sorted(taken)[max(int(share * len(taken)) - 1, 0)]


def orders() -> Iterator[tuple[str, dict[str, Any]]]:
    """Orders for invented persons, no two alike, each with the format that it asks for."""
    for number in itertools.count():
        order, hip = example(), 92 + number % 3000 / 100
        order["measurements"] |= {"hip_girth": hip, "waist_girth": hip - 27}
        name = FORMATS[number % len(FORMATS)]
        if name == "wrong":
            order["measurements"]["waist_girth"] = "wide"
        else:
            order["output"]["format"] = name
        yield name, order


def load(address: str, connections: int, seconds: float) -> Tally:
    """Keep a number of connections busy for a time."""
    return asyncio.run(_load(address, connections, seconds))


async def _load(address: str, connections: int, seconds: float) -> Tally:
    tally, waiting, until = Tally(), orders(), time.monotonic() + seconds
    async with asyncio.TaskGroup() as crowd:
        for _ in range(connections):
            crowd.create_task(_visit(address, waiting, until, tally))
    return tally


async def _visit(address: str, waiting: Iterator, until: float, tally: Tally) -> None:
    async with httpx.AsyncClient(base_url=address, timeout=60, verify=False) as client:  # noqa: S501 - plain http
        while time.monotonic() < until:
            name, order = next(waiting)
            tally.sent += 1
            began = time.perf_counter()
            try:
                answer = await client.post("v1/patterns", json=order)
            except httpx.TransportError as error:
                tally.faults[type(error).__name__] += 1
                continue
            note(tally, name, answer, time.perf_counter() - began)
            if answer.status_code == 503:
                await asyncio.sleep(PAUSE)


def note(tally: Tally, name: str, answer: httpx.Response, seconds: float) -> None:
    """Add an answer to the tally, and what is wrong with it."""
    tally.answers[answer.status_code] += 1
    if answer.status_code == 200:
        tally.seconds.setdefault(name, []).append(seconds)
    fault = _fault(name, answer)
    if fault:
        tally.faults[fault] += 1


def _fault(name: str, answer: httpx.Response) -> str:
    match answer.status_code:
        case 200 if name != "wrong":
            good = answer.headers["pattern-verdict"].startswith("sound") and answer.content
            return "" if good else "an empty pattern"
        case 422 if name == "wrong":
            return ""
        case 503:
            problem = json.loads(answer.content)
            waits = answer.headers.get("retry-after", "0")
            whole = problem["type"] == "/problems/busy" and int(waits) > 0
            return "" if whole else f"{name}: 503 {problem['type']}"
        case other:
            return f"{name}: {other}"
