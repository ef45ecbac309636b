"""The engine that searches for short lays: `spyrrow`, strip packing of irregular shapes.

It is given the clearances and a time, runs in a thread of its own without holding up others, and
is not waited for longer than that time. What it finds is a proposal: the caller proves it.
"""

from __future__ import annotations

from collections.abc import Iterator
from concurrent.futures import Future, ThreadPoolExecutor, wait
from datetime import timedelta
from importlib.metadata import version

import shapely
import spyrrow

from drafting.laying.strip import Part, Spot, Spots, Strip, Way

NAME = "spyrrow"
VERSION = version(NAME)

SEED = 1
EXPLORING, PRESSING = 0.65, 0.25
"""Shares of the time for finding a lay and for pressing it together; it takes up to a tenth more
than it is given, and in tight cases a second. Then the best that it has told so far counts."""
THREADS = 1
"""Threads of a search: one lay keeps one processor busy, and more were measured to find no more."""
LEAST = 0.05
"""With less time than this, in seconds, it is not asked."""


def search(strip: Strip, seconds: float) -> Spots | None:
    """Look for a short lay; the repeat and the fold are not minded.

    Args:
        strip: What to lay, and on what.
        seconds: Time to search.

    Returns:
        The shortest lay found; None where there is none or the engine fails.
    """
    if seconds < LEAST or not strip.count:
        return None
    told = spyrrow.ProgressQueue()
    pool = ThreadPoolExecutor(1)
    searching = pool.submit(_solved, strip, seconds, told)
    wait((searching,), timeout=seconds)
    pool.shutdown(wait=False)
    best = _answer(searching) if searching.done() else _best(told)
    return None if best is None else tuple(_spots(strip, best))


def _solved(
    strip: Strip, seconds: float, told: spyrrow.ProgressQueue
) -> spyrrow.StripPackingSolution:
    return _instance(strip).solve(_config(seconds), told)


def _answer(
    searching: Future[spyrrow.StripPackingSolution],
) -> spyrrow.StripPackingSolution | None:
    """What was found; None where the engine failed, be it by a panic, which is no Exception."""
    return None if searching.exception() else searching.result()


def _config(seconds: float) -> spyrrow.StripPackingConfig:
    config = spyrrow.StripPackingConfig(
        total_computation_time=None,
        exploration_time=1,
        compression_time=1,
        seed=SEED,
        num_workers=THREADS,
    )
    config.exploration_time = timedelta(seconds=EXPLORING * seconds)
    config.compression_time = timedelta(seconds=PRESSING * seconds)
    return config


def _instance(strip: Strip) -> spyrrow.StripPackingInstance:
    items = [
        spyrrow.Item(
            part.code,
            list(map(tuple, shapely.get_coordinates(part.ways[0].clearance)[:-1].tolist())),
            len(part.copies),
            sorted({float(w.turn - part.ways[0].turn) for w in _offered(part)}),
        )
        for part in strip.parts
    ]
    return spyrrow.StripPackingInstance("lay", strip.breadth - strip.floor + 2 * strip.clear, items)


def _offered(part: Part) -> tuple[Way, ...]:
    """The ways that differ from the first one in their turn only; the engine cannot turn over."""
    first = part.ways[0]
    return tuple(way for way in part.ways if way.mirrored == first.mirrored)


def _best(told: spyrrow.ProgressQueue) -> spyrrow.StripPackingSolution | None:
    """The shortest lay without overlap among those told on the way."""
    kinds = (
        spyrrow.ReportType.ExplFeas,
        spyrrow.ReportType.CmprFeas,
        spyrrow.ReportType.Final,
    )
    sound = (found for kind, found in told.drain() if kind in kinds)
    return min(sound, key=lambda found: found.width, default=None)


def _spots(strip: Strip, found: spyrrow.StripPackingSolution) -> Iterator[Spot]:
    """Where the outlines lie, from the engine's turns about the origin and moves."""
    parts = {part.code: part for part in strip.parts}
    times = dict.fromkeys(parts, 0)
    for item in found.placed_items:
        part = parts[item.id]
        first = part.ways[0]
        turned = round(item.rotation) % 360 == 180
        turn = 180 - first.turn if turned else first.turn
        way = next(w for w in _offered(part) if w.turn == turn)
        x, y = item.translation
        if turned:
            x, y = x - first.length, y - first.breadth
        yield Spot(part, times[item.id], way, x - strip.clear, y - strip.clear + strip.floor)
        times[item.id] += 1
