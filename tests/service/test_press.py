"""Heavy documents are written in other processes, and come out the same."""

from __future__ import annotations

import asyncio
import os
import time
from collections import Counter

import apron
import pytest
from asking import Service, refused

from drafting.export import FORMATS
from service.app import create_app
from service.limits import Workbench
from service.press import HEAVY, Press
from service.problems import PROBLEMS, ProblemError, Trouble
from service.settings import Settings


def house(**settings) -> Service:
    return Service(create_app(Settings(**settings), {"apron": apron.GARMENT}))


@pytest.fixture(name="pressing", scope="module")
def pressing_fixture():
    service = house()
    yield service
    service.app.state.house.press.close()


def test_heavy_formats_are_among_the_formats():
    assert set(FORMATS) >= HEAVY


@pytest.mark.parametrize("name", sorted(HEAVY))
def test_what_a_press_writes_is_what_a_thread_writes(pressing, name):
    order = apron.order()
    pressed = pressing.order(order, f"?format={name}")
    written = house(heavy_workers=0).order(order, f"?format={name}")
    assert pressed.status_code == written.status_code == 200
    assert pressed.content == written.content
    assert pressed.headers["pattern-id"] == written.headers["pattern-id"]


@pytest.mark.parametrize("trouble", ["unsound", "construction", "option", "paper"])
def test_a_problem_met_at_the_press_is_told_whole(pressing, trouble):
    order = apron.order(trouble=trouble)
    pressed = pressing.order(order, "?format=pdf")
    written = house(heavy_workers=0).order(order, "?format=pdf")
    assert pressed.status_code == written.status_code == 422
    assert pressed.json() == written.json()


def test_a_fault_at_the_press_is_a_fault_of_the_service(pressing):
    refused(pressing.order(apron.order(trouble="fault"), "?format=pdf"), 500, "internal-error")
    assert pressing.order(apron.order(), "?format=pdf").status_code == 200


def test_a_problem_travels_between_processes_whole():
    problem = ProblemError(
        "busy", "a detail", (Trouble(pointer="/a", code="b", detail="c"),), {"Retry-After": "2"}
    )
    kind, parts = problem.__reduce__()
    again = kind(*parts)
    for name in ("code", "detail", "troubles", "headers"):
        assert getattr(again, name) == getattr(problem, name)
    assert again.code in PROBLEMS


def own_process() -> int:
    return os.getpid()


def test_a_press_is_another_process_and_a_bench_is_not():
    async def scene() -> tuple[int, int]:
        press, bench = Press(Settings()), Workbench(Settings())
        pids = await press.run(own_process), await bench.run(own_process)
        await asyncio.to_thread(press.close)
        return pids

    pressed, benched = asyncio.run(scene())
    assert benched == os.getpid() != pressed


def long_work() -> None:
    time.sleep(30)


def test_what_takes_too_long_is_stopped_and_the_press_goes_on():
    async def scene() -> None:
        press = Press(Settings(order_seconds=2.5))
        await press.warm()
        began = time.monotonic()
        with pytest.raises(ProblemError) as slow:
            await press.run(long_work)
        assert slow.value.code == "too-slow"
        assert slow.value.headers["Retry-After"]
        assert await press.run(own_process)
        assert time.monotonic() - began < 15
        await asyncio.to_thread(press.close)

    asyncio.run(scene())


def test_past_the_last_place_documents_are_turned_away():
    async def scene() -> None:
        press = Press(Settings(heavy_workers=1, queue_length=1, order_seconds=20))
        await press.warm()
        two = [asyncio.create_task(press.run(short_work)) for _ in range(2)]
        await asyncio.sleep(0)
        with pytest.raises(ProblemError) as busy:
            await press.run(own_process)
        assert busy.value.code == "busy"
        await asyncio.gather(*two)
        assert await press.run(own_process)
        await asyncio.to_thread(press.close)

    asyncio.run(scene())


def test_documents_that_would_wait_too_long_are_turned_away_and_none_runs_out_of_time():
    async def scene() -> Counter[str]:
        press = Press(Settings(heavy_workers=1, queue_length=500, order_seconds=6))
        await press.warm()
        for _ in range(12):
            await press.run(short_work)
        crowd = (press.run(short_work) for _ in range(80))
        told = await asyncio.gather(*crowd, return_exceptions=True)
        assert await press.run(own_process)
        await asyncio.to_thread(press.close)
        return Counter("done" if each is None else each.code for each in told)

    told = asyncio.run(scene())
    assert set(told) == {"done", "busy"}
    assert told["done"] >= 2


def short_work() -> None:
    time.sleep(0.2)
