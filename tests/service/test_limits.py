"""No more at once than there are hands and places to wait."""

from __future__ import annotations

import asyncio
import gc
import threading
import time
from collections import Counter
from functools import partial

import pytest
from asking import Service, example, refused

from service.app import create_app
from service.limits import Pace, Workbench
from service.problems import ProblemError
from service.settings import Settings, SettingsError, from_environment


def test_past_the_last_place_orders_are_turned_away():
    async def scene() -> list[str]:
        bench = Workbench(Settings(workers=1, queue_length=1))
        go_on = threading.Event()
        two = [asyncio.create_task(bench.run(go_on.wait)) for _ in range(2)]
        await asyncio.sleep(0)
        assert not bench.is_open
        with pytest.raises(ProblemError) as turned_away:
            await bench.run(go_on.wait)
        go_on.set()
        await asyncio.gather(*two)
        for _ in range(100):
            if bench.is_open:
                break
            await asyncio.sleep(0.01)
        assert bench.is_open
        assert await bench.run(lambda: "done") == "done"
        return [turned_away.value.code]

    assert asyncio.run(scene()) == ["busy"]


def test_an_order_given_up_keeps_its_place_until_its_hand_is_free():
    async def scene() -> None:
        bench = Workbench(Settings(workers=1, queue_length=0, order_seconds=0.05))
        go_on = threading.Event()
        with pytest.raises(ProblemError) as slow:
            await bench.run(go_on.wait)
        assert slow.value.code == "too-slow"
        with pytest.raises(ProblemError) as busy:
            await bench.run(go_on.wait)
        assert busy.value.code == "busy"
        go_on.set()

    asyncio.run(scene())


def test_a_queue_takes_no_order_whose_time_would_run_out_in_it():
    """One hand, 0.1 s each, 2 s an order: by the tenth ahead half of its time is gone."""

    async def scene() -> list[str]:
        bench = Workbench(Settings(workers=1, queue_length=500, order_seconds=2))
        for _ in range(40):
            await bench.run(partial(time.sleep, 0.1))
        crowd = (bench.run(partial(time.sleep, 0.1)) for _ in range(100))
        told = await asyncio.gather(*crowd, return_exceptions=True)
        assert bench.is_open
        return ["done" if each is None else each.code for each in told]

    told = Counter(asyncio.run(scene()))
    assert set(told) == {"done", "busy"}
    assert 5 <= told["done"] <= 12


def test_a_pace_forgets_a_slow_hour_and_never_turns_away_the_only_one():
    pace = Pace(10)
    for _ in range(50):
        pace.moved(0, 60.0)
    assert pace.is_too_slow(1)
    assert not pace.is_too_slow(0)
    for _ in range(50):
        pace.moved(0, 0.1)
    assert not pace.is_too_slow(20)


def test_a_full_house_is_answered_503_and_is_not_ready():
    service = Service(create_app(Settings(workers=1, queue_length=0)))
    bench = service.app.state.house.bench
    go_on = threading.Event()

    async def scene():
        async with service.client() as client:
            waiting = asyncio.create_task(bench.run(go_on.wait))
            await asyncio.sleep(0)
            answers = [
                await client.post("/v1/patterns", json=example()),
                await client.get("/v1/garments/trousers/sample"),
                await client.get("/readyz"),
                await client.get("/healthz"),
            ]
            go_on.set()
            await waiting
            return answers

    posted, sampled, ready, alive = asyncio.run(scene())
    for answer in (posted, sampled):
        refused(answer, 503, "busy")
        assert int(answer.headers["retry-after"]) > 0
    refused(ready, 503, "not-ready")
    assert alive.status_code == 200


def test_a_closed_house_takes_no_orders():
    service = Service(create_app(Settings()))
    service.app.state.house.bench.close()
    answer = service.order(example())
    refused(answer, 503, "not-ready")
    assert "retry-after" in answer.headers
    refused(service.get("/readyz"), 503, "not-ready")


def test_a_body_that_does_not_arrive_is_given_up():
    service = Service(create_app(Settings(order_seconds=0.05)))

    async def chunks():
        yield b"{"
        await asyncio.sleep(0.5)
        yield b"}"

    answer = service.ask(
        "POST", "/v1/patterns", content=chunks(), headers={"Content-Type": "application/json"}
    )
    refused(answer, 408, "request-timeout")


def test_many_orders_at_once_are_all_answered(service):
    async def scene():
        async with service.client() as client:
            orders = [
                {
                    **example(),
                    "measurements": {**example()["measurements"], "hip_girth": 98 + i / 10},
                }
                for i in range(8)
            ]
            posts = (client.post("/v1/patterns", json=order) for order in orders)
            return await asyncio.gather(*posts)

    answers = asyncio.run(scene())
    assert {answer.status_code for answer in answers} == {200}
    assert len({answer.headers["pattern-id"] for answer in answers}) == 8


def test_settings_come_from_the_environment():
    told = from_environment(
        {
            "TAPELINE_MAX_BODY_BYTES": "1000",
            "TAPELINE_ORDER_SECONDS": "2.5",
            "TAPELINE_CORS_ORIGINS": "https://a.example, https://b.example",
            "TAPELINE_HOST": "192.0.2.1",
            "HOME": "/",
        }
    )
    assert told == Settings(
        max_body_bytes=1000,
        order_seconds=2.5,
        cors_origins=("https://a.example", "https://b.example"),
        host="192.0.2.1",
    )


@pytest.mark.parametrize("value", ["many", "", "-1", "inf", "nan"])
def test_a_setting_that_cannot_be_used_is_named(value):
    with pytest.raises(SettingsError, match="TAPELINE_ORDER_SECONDS"):
        from_environment({"TAPELINE_ORDER_SECONDS": value})


def largest(unit: bytes, start: bytes = b"{", end: bytes = b"}") -> bytes:
    """As many numbered copies of a part as a body may hold."""
    parts, size = [start], len(start) + len(end)
    for number in range(100_000):
        part = unit.replace(b"#", str(number).encode())
        if size + len(part) > Settings().max_body_bytes - 20:
            break
        parts.append(part)
        size += len(part)
    return b"".join(parts) + b'"z": 1' + end


HEAVY = {
    "unknown fields": largest(b'"refrence#": 1, '),
    "unknown measures": largest(b'"waist_girt#": 1, ', b'{"measurements": {', b"}}"),
    "unknown options": largest(
        b'"hem_girt#": 1, ', b'{"measurements": {}, "garment": {"kind": "trousers", ', b"}}"
    ),
    "unreadable lengths": largest(
        b'"waist_girth#": "1 1/x", ', b'{"unit": "in", "measurements": {', b"}}"
    ),
    "a field twice, at the end": largest(b'"f#": 1, ', b"{", b', "z": 1}'),
    "lists": b'{"measurements": [' + b"[]," * 80_000 + b"[]]}",
    "escapes": b'{"reference": "' + b"\\u0041" * 40_000 + b'"}',
    "an open text": b'{"reference": "' + b'\\"' * 120_000,
    "one long number": b'{"unit": ' + b"1" * 250_000 + b"}",
}


@pytest.mark.parametrize("body", HEAVY.values(), ids=HEAVY.keys())
def test_the_worst_that_fits_is_refused_in_no_time(service, body):
    """Waste is looked for as in the server: not in what was there before."""
    gc.freeze()
    assert len(body) <= Settings().max_body_bytes
    began = time.process_time()
    answer = service.send(body)
    assert answer.status_code in (400, 422)
    assert time.process_time() - began < 1.0
    gc.unfreeze()
    assert len(answer.content) < 60_000
