"""Faults on real processes: workers killed, clients that leave, that read slowly or not at all."""

from __future__ import annotations

import asyncio
import json
import os
import signal
import socket
import sys
import time
from collections import Counter
from contextlib import ExitStack, aclosing
from pathlib import Path

import dying
import httpx
import pytest
from asking import example
from serving import Server, busy, workers
from starlette.requests import ClientDisconnect

from service.batching.flow import AHEAD, Count, Job, flow
from service.batching.hands import LocalHands
from service.batching.lines import Ticket
from service.batching.streamed import Places, Streamed
from service.batching.task import Done, Tools
from service.problems import ProblemError

pytestmark = pytest.mark.skipif(sys.platform != "linux", reason="looks at processes in /proc")

NDJSON = {"Content-Type": "application/x-ndjson"}
SETTINGS = {
    "TAPELINE_BATCH_WORKERS": "2",
    "TAPELINE_BATCHES_AT_ONCE": "1",
    "TAPELINE_BEAT_SECONDS": "0.2",
    "TAPELINE_READER_SECONDS": "2",
}


@pytest.fixture(name="server", scope="module")
def server_fixture(tmp_path_factory):
    server = Server(tmp_path_factory.mktemp("faults") / "log", **SETTINGS)
    try:
        server.wait()
        yield server
    finally:
        server.kill()


def orders(count: int) -> bytes:
    order = example()
    lines = []
    for number in range(count):
        order["measurements"] = {**order["measurements"], "hip_girth": 98 + number / 50}
        lines.append(json.dumps({"id": str(number), **order}) + "\n")
    return "".join(lines).encode()


def batch(server: Server, count: int, timeout: float = 60.0):
    """The answer to a batch, to be read as it comes."""
    return httpx.stream(
        "POST",
        f"{server.address}v1/batches",
        content=orders(count),
        headers=NDJSON,
        timeout=timeout,
    )


def assert_each_once(answers: list[dict], count: int) -> None:
    """Every order has exactly one answer, and the end says so."""
    times = Counter(a["id"] for a in answers if a["type"] in ("result", "problem"))
    assert times == {str(number): 1 for number in range(count)}
    end = answers[-1]
    assert (end["type"], end["done"], end["total"]) == ("end", count, count)


def test_killing_a_worker_in_mid_batch_loses_no_order(server):
    count, answers, killed = 16, [], None
    with batch(server, count) as answer:
        for line in answer.iter_lines():
            answers.append(json.loads(line))
            if killed is None and sum(a["type"] == "result" for a in answers) == 5:
                killed = workers(server)[0]
                os.kill(killed, signal.SIGKILL)
    assert_each_once(answers, count)
    assert answers[-1]["failed"] == 0
    assert killed is not None
    assert killed not in workers(server)
    assert httpx.post(f"{server.address}v1/patterns", json=example()).status_code == 200


def test_a_client_that_leaves_stops_the_work_within_two_seconds(server):
    with batch(server, 200) as answer:
        lines = answer.iter_lines()
        while json.loads(next(lines))["type"] != "result":
            pass
    left = time.monotonic()
    pids = workers(server)
    assert len(pids) == 2
    time.sleep(max(0.0, 2.0 - (time.monotonic() - left)))
    before = busy(pids)
    time.sleep(0.5)
    assert busy(pids) - before < 0.05  # two workers would have done most of a second
    with batch(server, 1) as answer:  # and its place is free
        assert answer.status_code == 200
        assert json.loads(answer.read().splitlines()[-1])["failed"] == 0


def wire(server: Server, count: int) -> socket.socket:
    """A connection that has sent a batch, with little room for what comes back."""
    found = socket.socket()
    found.setsockopt(socket.SOL_SOCKET, socket.SO_RCVBUF, 4096)
    found.connect(("127.0.0.1", server.port))
    body = orders(count)
    head = (
        "POST /v1/batches HTTP/1.1\r\nHost: x\r\nContent-Type: application/x-ndjson\r\n"
        f"Connection: close\r\nContent-Length: {len(body)}\r\n\r\n"
    )
    found.sendall(head.encode() + body)
    return found


def received(found: socket.socket) -> bytes:
    got = b""
    while chunk := found.recv(65536):
        got += chunk
    return got


def test_a_slow_reader_gets_everything(server):
    count = 12
    with wire(server, count) as reader:
        reader.settimeout(30)
        held = reader.recv(1000)
        for _ in range(4):
            time.sleep(0.4)
            held += reader.recv(1000)
        held += received(reader)
    lines = [part for part in held.split(b"\r\n") if part.startswith(b"{")]
    assert_each_once([json.loads(line) for part in lines for line in part.splitlines()], count)


def test_a_reader_that_takes_nothing_is_given_up_and_its_place_is_free():
    closed = []

    async def parts():
        try:
            while True:
                yield b"x"
        finally:
            closed.append(True)

    async def scene() -> int:
        places, held, sent = Places(1), ExitStack(), []
        held.enter_context(places.take("One"))

        async def send(message: object) -> None:
            sent.append(message)
            if len(sent) > 3:
                await asyncio.Event().wait()

        async def receive() -> None:
            await asyncio.Event().wait()

        answer = Streamed(parts(), held, 0.1, {})
        with pytest.raises(ClientDisconnect):
            await answer({"type": "http"}, receive, send)
        return places.free

    assert asyncio.run(scene()) == 1
    assert closed


class Counting:
    """Hands that are done at once, and count what they were given."""

    given = 0

    async def width(self) -> int:
        return 2

    async def run(self, *_: object) -> Done:
        self.given += 1
        return Done(200, "application/json", b"{}")

    def close(self) -> None:
        """Nothing to do."""


def test_no_more_is_drafted_ahead_than_the_reader_takes():
    async def scene():
        hands = Counting()
        job = Job(hands, Tools(b"", 32, 1.0), None, "")
        tickets = [Ticket(n, n, b"{}") for n in range(100)]
        taken = 0
        async with aclosing(flow(tickets, Count(100), job, 60.0)) as answers:
            async for _ in answers:
                taken += 1
                await asyncio.sleep(0.001)
                assert hands.given <= taken + AHEAD * 2
        return taken, hands.given

    assert asyncio.run(scene()) == (100, 100)


def test_workers_do_not_outlive_a_server_that_is_killed(tmp_path):
    server = Server(tmp_path / "log", **SETTINGS)
    try:
        server.wait()
        with batch(server, 2) as answer:
            answer.read()
        pids = workers(server)
        assert pids
    finally:
        server.kill()
    for _ in range(40):
        if not any(_alive(pid) for pid in pids):
            return
        time.sleep(0.1)
    raise AssertionError("a worker lives on")


def _alive(pid: int) -> bool:
    try:
        stat = Path(f"/proc/{pid}/stat").read_text()
    except OSError:
        return False
    return stat.rsplit(")", 1)[1].split()[0] != "Z"


def test_a_task_that_kills_its_workers_takes_no_other_with_it():
    async def scene():
        hands = LocalHands(2)
        tasks = [hands.run(dying.live, n, 0.02) for n in range(20)]
        tasks.insert(7, hands.run(dying.die, 1))
        found = await asyncio.gather(*tasks, return_exceptions=True)
        hands.close()
        return found

    found = asyncio.run(scene())
    lost = found.pop(7)
    assert isinstance(lost, ProblemError)
    assert lost.code == "worker-lost"
    assert found == list(range(20))
