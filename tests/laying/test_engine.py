"""The engine proposes within its time, and when it fails the plain lay is the answer."""

from __future__ import annotations

import time
from dataclasses import replace
from importlib.metadata import version
from itertools import pairwise
from threading import Event, Thread

import pytest
from audit import audit, placed
from orders import order, piece

from drafting.laying import Cloth, Laying, engine, lay
from drafting.laying.parts import Cutter, wanted
from drafting.laying.strip import Strip


def strip_of(work, breadth):
    cutter = Cutter(0.2, one_way=False)
    parts = tuple(part for want in wanted((work,), "main") for part in cutter.open(want))
    return Strip(parts, breadth, cutter.clear)


def test_the_engine_is_named_when_its_lay_is_the_shortest(standard):
    plain = lay((standard,), {"main": Cloth()}, Laying(budget=0.0)).cloths[0]
    searched = lay((standard,), {"main": Cloth()}, Laying(budget=1.0)).cloths[0]
    assert plain.engine == "plain"
    assert searched.engine == "spyrrow"
    assert searched.length < plain.length


@pytest.mark.parametrize("trouble", [ValueError("no"), KeyboardInterrupt()])
def test_when_the_engine_fails_the_plain_lay_is_the_answer(trouble, standard, monkeypatch):
    def fails(*_):
        raise trouble

    monkeypatch.setattr(engine, "_instance", fails)
    (plan,) = lay((standard,), {"main": Cloth()}, Laying(budget=0.5)).cloths
    assert plan.engine == "plain"
    audit(plan, (standard,))


def test_a_lay_of_the_engine_that_overlaps_is_thrown_away(standard, monkeypatch):
    def heaped(strip, seconds):
        return tuple(
            engine.Spot(part, time, part.ways[0], 0.0, 0.0)
            for part in strip.parts
            for time in range(len(part.copies))
        )

    monkeypatch.setattr(engine, "search", heaped)
    (plan,) = lay((standard,), {"main": Cloth()}, Laying(budget=0.5)).cloths
    assert plan.engine == "plain"


def test_a_panic_inside_the_engine_is_survived():
    """A strip narrower than its part makes it panic."""
    made = order(piece("patch", (0, 0), (30, 0), (30, 10), (0, 10)))
    assert engine.search(strip_of(made, 20.0), 0.5) is None


def test_the_time_is_kept_even_where_the_engine_is_late(standard, monkeypatch):
    class Late:
        def solve(self, config, told):
            time.sleep(0.6)

    monkeypatch.setattr(engine, "_instance", lambda strip: Late())
    start = time.perf_counter()
    assert engine.search(strip_of(standard, 147.0), 0.1) is None
    assert time.perf_counter() - start < 0.5


def test_others_run_while_the_engine_searches(standard):
    """It lets go of the interpreter: a thread beside it gets its turns."""
    done, turns = Event(), []

    def count():
        while not done.wait(0.01):
            turns.append(time.perf_counter())

    beside = Thread(target=count)
    beside.start()
    lay((standard,), {"main": Cloth()}, Laying(budget=0.6))
    done.set()
    beside.join()
    pauses = [b - a for a, b in pairwise(turns)]
    assert max(pauses) < 0.3


def test_the_audit_notices_a_piece_that_is_moved(standard):
    (plan,) = lay((standard,), {"main": Cloth()}, Laying(budget=0.0)).cloths
    first, *others = plan.placements
    neighbour = min(others, key=lambda p: placed(p).distance(placed(first)))
    spoiled = replace(first, outline=neighbour.outline, move=neighbour.move)
    with pytest.raises(AssertionError):
        audit(replace(plan, placements=(spoiled, *others)), (standard,))
    with pytest.raises(AssertionError):
        audit(replace(plan, placements=tuple(others)), (standard,))


def test_the_version_of_the_engine_is_told():
    assert version("spyrrow") == engine.VERSION
