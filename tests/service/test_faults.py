"""What happens to a server in the world: after each fault it answers as before."""

from __future__ import annotations

import json
import os
import shutil
import signal
import socket
import subprocess
import sys
import threading
import time
from contextlib import ExitStack, contextmanager, suppress
from pathlib import Path

import apron
import httpx
import pytest
from asking import Service, example
from serving import Server, is_worker, workers

from service.app import create_app
from service.settings import Settings

pytestmark = [
    pytest.mark.slow,
    pytest.mark.skipif(sys.platform != "linux", reason="looks at processes in /proc"),
]

PATIENCE = 10.0
"""Seconds that a hasty server waits for an order."""

LONG = {"TAPELINE_ORDER_SECONDS": "60"}


@contextmanager
def started(log: Path, **environment: str):
    server = Server(log, **environment)
    try:
        server.wait()
        yield server
    finally:
        server.kill()


@pytest.fixture(name="server", scope="module")
def server_fixture(tmp_path_factory):
    with started(tmp_path_factory.mktemp("faults") / "log", **LONG) as server:
        yield server


@pytest.fixture(name="hasty")
def hasty_fixture(tmp_path):
    with started(tmp_path / "log", TAPELINE_ORDER_SECONDS=str(PATIENCE)) as server:
        yield server


def assert_as_before(server: Server) -> None:
    """Every kind of work is done: here, at the press, by the batch workers."""
    with httpx.Client(base_url=server.address, timeout=60) as client:
        for name in ("json", "svg", "pdf"):
            answer = client.post(f"v1/patterns?format={name}", json=example())
            assert answer.status_code == 200, answer.text[:300]
        lay = {"orders": [example()], "cloths": {"main": {"width": 150}}, "laying": {"budget": 0}}
        assert client.post("v1/lay-plans", json=lay).status_code == 200
        assert client.get("readyz").status_code == 200


def request(body: bytes, *, name: str = "json", length: int | None = None) -> bytes:
    head = (
        f"POST /v1/patterns?format={name} HTTP/1.1\r\nHost: x\r\nConnection: close\r\n"
        f"Content-Type: application/json\r\nContent-Length: {length or len(body)}\r\n\r\n"
    )
    return head.encode() + body


def wire(server: Server) -> socket.socket:
    return socket.create_connection(("127.0.0.1", server.port), 30)


def read_all(end: socket.socket) -> bytes:
    """What comes, until the other side hangs up; gently or not."""
    got = b""
    with suppress(ConnectionResetError):
        while chunk := end.recv(65536):
            got += chunk
    return got


def sockets(server: Server) -> int:
    """How many sockets the server's own process holds open."""
    held = Path(f"/proc/{server.process.pid}/fd").iterdir()
    return sum(each.is_socket() for each in held)


def until(what, seconds: float = 20.0) -> None:
    end = time.monotonic() + seconds
    while not what():
        assert time.monotonic() < end
        time.sleep(0.1)


def test_a_client_that_sends_a_byte_a_second_is_given_up_and_holds_no_one_up(hasty):
    body = json.dumps(example()).encode()
    with ExitStack() as stack:
        slow = [stack.enter_context(wire(hasty)) for _ in range(40)]
        for end in slow:
            end.sendall(request(b"", length=len(body)))
        began = time.monotonic()

        def drip(end: socket.socket) -> None:
            for byte in body[:40]:
                try:
                    end.sendall(bytes([byte]))
                except OSError:
                    break
                time.sleep(1)

        drips = [threading.Thread(target=drip, args=(end,)) for end in slow]
        for each in drips:
            each.start()
        for _ in range(3):
            quick = httpx.post(f"{hasty.address}v1/patterns", json=example(), timeout=30)
            assert quick.status_code == 200
        assert time.monotonic() - began < PATIENCE
        got = [read_all(end) for end in slow]
        assert {each[:13] for each in got} <= {b"HTTP/1.1 408 ", b""}
        assert any(got)
        assert time.monotonic() - began < 5 * PATIENCE
        for each in drips:
            each.join()
    assert_as_before(hasty)


def test_a_client_that_reads_a_byte_a_second_holds_no_one_up(server):
    with ExitStack() as stack:
        slow = [stack.enter_context(wire(server)) for _ in range(10)]
        for end in slow:
            end.setsockopt(socket.SOL_SOCKET, socket.SO_RCVBUF, 2048)
            end.sendall(request(json.dumps(example()).encode(), name="svg"))
        for _ in range(5):
            assert [end.recv(1) for end in slow] == [b"H"] * 10 or all(end.recv(1) for end in slow)
            time.sleep(1)
        assert_as_before(server)


def test_sockets_that_are_closed_half_or_whole_are_given_back(server):
    assert_as_before(server)
    time.sleep(6)  # past keep-alive
    held, body = sockets(server), json.dumps(example()).encode()
    for number in range(60):
        with wire(server) as end:
            end.sendall(request(body)[: 80 + 20 * (number % 40)])
            if number % 3 == 0:
                end.shutdown(socket.SHUT_WR)
                read_all(end)
            elif number % 3 == 1:
                end.setsockopt(socket.SOL_SOCKET, socket.SO_LINGER, b"\1\0\0\0\0\0\0\0")
    assert_as_before(server)
    until(lambda: sockets(server) <= held + 2)


def test_a_client_that_has_said_all_and_closed_its_half_does_no_harm(server):
    for _ in range(10):
        with wire(server) as end:
            end.sendall(request(json.dumps(example()).encode()))
            end.shutdown(socket.SHUT_WR)
            got = read_all(end)
            assert got == b"" or got.startswith(b"HTTP/1.1 200 ")
    assert_as_before(server)


def presses(server: Server) -> list[int]:
    assert_as_before(server)
    found = workers(server)
    assert found
    return found


def test_killed_workers_are_replaced(server):
    for pid in presses(server):
        os.kill(pid, signal.SIGKILL)
    assert_as_before(server)


def test_a_worker_that_is_killed_over_an_order_loses_it_not(server):
    before, killed = set(presses(server)), []

    def kill() -> None:
        time.sleep(0.1)
        for pid in before:
            os.kill(pid, signal.SIGKILL)
            killed.append(pid)

    killing = threading.Thread(target=kill)
    killing.start()
    answer = httpx.post(f"{server.address}v1/patterns?format=zip", json=example(), timeout=60)
    killing.join()
    assert killed
    assert answer.status_code == 200
    assert_as_before(server)


def test_the_whole_pool_may_be_killed(server):
    presses(server)
    pool = Path(f"/proc/{server.process.pid}/task").glob("*/children")
    for pid in {int(pid) for each in pool for pid in each.read_text().split()}:
        os.kill(pid, signal.SIGKILL)
    until(lambda: not any(map(is_worker, workers(server))))
    assert_as_before(server)


@contextmanager
def full_disk(folder: Path):
    """A temp folder on which nothing more can be written."""
    folder.mkdir()
    mount = shutil.which("mount")
    asked = [mount or "mount", "-t", "tmpfs", "-o", "size=16k,nr_inodes=4", "none", str(folder)]
    if mount is None or subprocess.run(asked, check=False, capture_output=True).returncode:  # noqa: S603 - our own words
        pytest.skip("a file system can only be mounted by an administrator")
    try:
        (folder / "a").write_bytes(b"x" * 12288)
        for name in "bcd":
            try:
                (folder / name).write_bytes(b"x" * 4096)
            except OSError:
                break
        yield folder
    finally:
        subprocess.run(["umount", "-l", str(folder)], check=True)  # noqa: S603, S607 - as above


NO_OTHER = """
import os, tempfile
tempfile._candidate_tempdir_list = lambda: [os.environ["TMPDIR"]]
"""
"""Python looks for another folder by itself; a container may have none."""


def test_a_full_disk_under_the_temp_folder_stops_no_order(tmp_path):
    (tmp_path / "sitecustomize.py").write_text(NO_OTHER)
    with full_disk(tmp_path / "full") as full:
        full_up = {"TMPDIR": str(full), "PYTHONPATH": str(tmp_path), **LONG}
        with started(tmp_path / "log", **full_up) as server:
            for pid in presses(server):
                os.kill(pid, signal.SIGKILL)
            assert_as_before(server)
            assert server.stop() in (0, -signal.SIGTERM)


KEY = "azhHc2RrZmhzZGtqZmhza2RqZmhza2RqZmhza2RqZmg="


@pytest.mark.parametrize("jump", [-86_400.0, 86_400.0, 40 * 31_557_600.0])
def test_a_clock_that_jumps_changes_no_pattern(monkeypatch, jump):
    service = Service(create_app(Settings(link_keys=(KEY,)), {"apron": apron.GARMENT}))
    before = service.order(apron.order())
    link = service.ask("POST", "/v1/links", json=apron.order()).json()["href"]
    tag = service.get(link).headers["etag"]
    true = time.time
    monkeypatch.setattr(time, "time", lambda: true() + jump)
    after = service.order(apron.order())
    assert (after.status_code, after.content) == (200, before.content)
    assert service.get(link).headers["etag"] == tag
    assert service.get("/readyz").status_code == 200


def test_a_link_ends_by_the_clock_and_lives_again_when_the_clock_is_put_right(monkeypatch):
    service = Service(create_app(Settings(link_keys=(KEY,)), {"apron": apron.GARMENT}))
    order = {**apron.order(), "expires_in": 3600}
    link = service.ask("POST", "/v1/links", json=order).json()["href"]
    true = time.time
    for jump, status in ((0, 200), (7200, 404), (-7200, 200), (0, 200)):
        monkeypatch.setattr(time, "time", lambda jump=jump: true() + jump)
        assert service.get(link).status_code == status
