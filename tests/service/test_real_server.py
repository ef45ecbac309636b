"""The server as it is started, on loopback, over real sockets."""

from __future__ import annotations

import json
import signal
import socket
import time
import zlib
from pathlib import Path

import httpx
import pytest
from asking import example, refused
from serving import Server

ROOT = Path(__file__).parents[2]
MARK, LABEL = 73.1357, "Marked-label-Zyqqur"


@pytest.fixture(name="server", scope="module")
def server_fixture(tmp_path_factory):
    server = Server(tmp_path_factory.mktemp("server") / "log")
    try:
        server.wait()
        yield server
    finally:
        server.kill()


def test_it_prints_the_address_of_its_first_page(server):
    assert f"Tapeline: {server.address}\n" in server.logs.read_text()
    assert "<h1>Tapeline</h1>" in httpx.get(server.address).text


@pytest.mark.parametrize("name", ["json", "svg", "pdf"])
def test_an_order_gives_a_pattern(server, name):
    answer = httpx.post(f"{server.address}v1/patterns?format={name}", json=example())
    assert answer.status_code == 200
    assert answer.headers["pattern-verdict"] == "sound"
    assert "server" not in answer.headers


def test_head_has_no_body_on_the_wire(server):
    asked = b"HEAD /v1/garments HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n"
    got = server.raw(asked, hang_up=False)
    head, _, body = got.partition(b"\r\n\r\n")
    assert b" 200 " in head
    assert b"content-length" in head.lower()
    assert body == b""


def test_a_body_over_the_limit_is_refused_on_the_wire(server):
    answer = httpx.post(
        f"{server.address}v1/patterns",
        content=(b" " * 4096 for _ in range(100)),
        headers={"Content-Type": "application/json"},
    )
    refused(answer, 413, "too-large")


def test_what_is_no_http_does_no_harm(server):
    for sent in (b"\x16\x03\x01 nonsense\r\n\r\n", b"GET", b"POST / HTTP/1.1\r\nContent-Le", b""):
        assert b" 500 " not in server.raw(sent)
    cut_off = b"POST /v1/patterns HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\n"
    server.raw(cut_off + b"Content-Length: 100\r\n\r\n{")
    assert httpx.get(server.address + "healthz").status_code == 200


def test_an_impatient_client_does_no_harm(server):
    with pytest.raises(httpx.TimeoutException):
        httpx.post(f"{server.address}v1/patterns?format=pdf", json=example(), timeout=0.01)
    assert httpx.post(f"{server.address}v1/patterns", json=example()).status_code == 200


def test_a_batch_is_packed_and_still_comes_line_by_line(server):
    lines = "".join(json.dumps({**example(), "id": n}) + "\n" for n in range(3))
    headers = {"Content-Type": "application/x-ndjson", "Accept-Encoding": "gzip"}
    address = f"{server.address}v1/batches"
    unpack, whole = zlib.decompressobj(31), b""
    with httpx.stream("POST", address, content=lines, headers=headers, timeout=60) as answer:
        assert answer.headers["content-encoding"] == "gzip"
        for part in answer.iter_raw():
            whole += unpack.decompress(part)
            assert whole.endswith(b"\n") or not whole, "half a line waits to be packed"
    assert [json.loads(line)["type"] for line in whole.splitlines()][-1] == "end"


@pytest.fixture(name="leaving")
def leaving_fixture(tmp_path):
    server = Server(tmp_path / "log", TAPELINE_LEAVE_SECONDS="1.5")
    try:
        server.wait()
        yield server
    finally:
        server.kill()


def test_it_says_first_that_it_leaves_then_finishes_what_it_has_begun(leaving):
    body = json.dumps(example()).encode()
    head = (
        b"POST /v1/patterns HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\n"
        b"Connection: close\r\nContent-Length: %d\r\n\r\n" % len(body)
    )
    with socket.create_connection(("127.0.0.1", leaving.port), 30) as begun:
        begun.sendall(head + body[:50])
        time.sleep(0.3)
        leaving.process.send_signal(signal.SIGTERM)
        time.sleep(0.3)
        refused(httpx.get(leaving.address + "readyz"), 503, "not-ready")
        assert httpx.get(leaving.address + "healthz").status_code == 200
        late = httpx.post(f"{leaving.address}v1/patterns", json=example(), timeout=30)
        assert late.status_code == 200, "who has not heard of it yet is still served"
        until_closed(leaving)
        assert leaving.process.poll() is None
        begun.sendall(body[50:])
        got = b""
        while chunk := begun.recv(65536):
            got += chunk
    assert got.startswith(b"HTTP/1.1 200 ")
    assert leaving.process.wait(20) in (0, -signal.SIGTERM)


def until_closed(server: Server) -> None:
    """Wait until the server takes no new connections."""
    for _ in range(100):
        try:
            httpx.get(server.address + "healthz")
        except httpx.TransportError:
            return
        time.sleep(0.1)
    raise TimeoutError


def test_told_twice_it_does_not_wait(tmp_path):
    server = Server(tmp_path / "log", TAPELINE_LEAVE_SECONDS="600")
    try:
        server.wait()
        server.process.send_signal(signal.SIGTERM)
        time.sleep(0.5)
        assert server.process.poll() is None
        assert server.stop() in (0, -signal.SIGTERM)
    finally:
        server.kill()


def test_it_stops_cleanly_and_has_logged_nothing_of_the_orders(server):
    order = example()
    order["measurements"]["waist_girth"] = MARK
    order["reference"] = LABEL
    id_ = httpx.post(f"{server.address}v1/patterns?x={LABEL}", json=order).json()["id"]
    httpx.post(f"{server.address}v1/patterns", json={**order, "unit": LABEL})
    httpx.get(f"{server.address}{LABEL}")
    httpx.request(LABEL, f"{server.address}v1/patterns")
    server.raw(f"GET /{LABEL} HTTP/9\r\n{LABEL}: {LABEL}\r\n\r\n".encode())
    assert server.stop() in (0, -signal.SIGTERM)
    first, *lines = server.logs.read_text().splitlines()
    assert first.startswith("Tapeline: http")
    told = [json.loads(line) for line in lines]
    assert told[-1]["event"].startswith("Finished server process")
    assert len([line for line in told if line["event"] == "request"]) > 10
    assert not [line for line in told if line["level"] in ("error", "critical")]
    for secret in (str(MARK), LABEL, id_, "127.0.0.1:"):
        assert secret not in "\n".join(lines).replace(server.address.rstrip("/"), "")
