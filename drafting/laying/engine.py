"""The engine that searches for short lays: `spyrrow`, strip packing of irregular shapes.

It is given the clearances and a time, runs in a thread of its own without holding up others, and
is not waited for longer than that time. What it finds is a proposal: the caller proves it.
"""

from __future__ import annotations

import os
from collections.abc import Iterator
from datetime import timedelta
from importlib.metadata import version
from threading import Thread

import shapely
import spyrrow

from drafting.laying.strip import Part, Spot, Spots, Strip, Way

NAME = "spyrrow"
VERSION = version(NAME)

SEED = 1
WORKERS = min(4, os.cpu_count() or 1)
"""Threads of one search."""
EXPLORING, PRESSING = 0.7, 0.2
"""Shares of the time for finding a lay and for pressing it together; it takes up to a tenth more
than it is given, and in tight cases a second. Then the best that it has told so far counts."""
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
    answers: list[spyrrow.StripPackingSolution] = []

    def run() -> None:
        try:
            answers.append(_instance(strip).solve(_config(seconds), told))
        except BaseException:  # noqa: BLE001 - a panic of the engine is no Exception; the plain lay is the answer then
            return

    searching = Thread(target=run)
    searching.start()
    searching.join(seconds)
    best = _shortest(told, answers)
    return None if best is None else tuple(_spots(strip, best))


def _config(seconds: float) -> spyrrow.StripPackingConfig:
    config = spyrrow.StripPackingConfig(
        total_computation_time=None,
        exploration_time=1,
        compression_time=1,
        seed=SEED,
        num_workers=WORKERS,
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


def _shortest(
    told: spyrrow.ProgressQueue, answers: list[spyrrow.StripPackingSolution]
) -> spyrrow.StripPackingSolution | None:
    """The best of what was told on the way and at the end."""
    kinds = (
        spyrrow.ReportType.ExplFeas,
        spyrrow.ReportType.CmprFeas,
        spyrrow.ReportType.Final,
    )
    sound = [found for kind, found in told.drain() if kind in kinds]
    return min((*answers, *sound), key=lambda found: found.width, default=None)


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
