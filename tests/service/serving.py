"""A server as it is started, and the processes under it."""

from __future__ import annotations

import functools
import http.server
import os
import signal
import socket
import subprocess
import sys
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import httpx

ROOT = Path(__file__).parents[2]


def free_port() -> int:
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        return free.getsockname()[1]


class _Quiet(http.server.SimpleHTTPRequestHandler):
    """Tells nobody what it hands out."""

    def log_message(self, *_: object) -> None:
        pass


@contextmanager
def handed_out(folder: Path) -> Iterator[str]:
    """The address of a server of its own that hands out a folder's files."""
    handler = functools.partial(_Quiet, directory=folder)
    with http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler) as pages:
        serving = threading.Thread(target=pages.serve_forever)
        serving.start()
        yield f"http://127.0.0.1:{pages.server_port}"
        pages.shutdown()
        serving.join()


class Server:
    """A server process and what it has printed."""

    def __init__(self, logs: Path, **environment: str) -> None:
        self.port = free_port()
        self.logs = logs
        with logs.open("wb") as sink:
            self.process = subprocess.Popen(  # noqa: S603 - our own server
                [sys.executable, "-m", "service", "serve", "--port", str(self.port)],
                cwd=ROOT,
                env={**os.environ, "TAPELINE_ORDER_SECONDS": "5", **environment},
                stdout=sink,
                stderr=subprocess.STDOUT,
            )
        self.address = f"http://127.0.0.1:{self.port}/"

    def wait(self) -> None:
        for _ in range(200):
            try:
                httpx.get(self.address + "readyz").raise_for_status()
            except httpx.TransportError:
                time.sleep(0.1)
            else:
                return
        raise TimeoutError(self.logs.read_text())

    def stop(self) -> int:
        self.process.send_signal(signal.SIGTERM)
        return self.process.wait(20)

    def kill(self) -> None:
        if self.process.poll() is None:
            self.process.kill()
            self.process.wait()

    def raw(self, sent: bytes, *, hang_up: bool = True) -> bytes:
        """What comes back for bytes on the wire, until the server hangs up."""
        with socket.create_connection(("127.0.0.1", self.port), 10) as wire:
            wire.sendall(sent)
            if hang_up:
                wire.shutdown(socket.SHUT_WR)
            got = b""
            while chunk := wire.recv(65536):
                got += chunk
        return got


def children(pid: int) -> list[int]:
    """Processes that a process has started, and theirs."""
    found = []
    for task in Path(f"/proc/{pid}/task").glob("*/children"):
        for child in map(int, task.read_text().split()):
            found += [child, *children(child)]
    return found


def is_worker(pid: int) -> bool:
    """Whether it is a worker: started by the server of forks, or plainly by the server."""
    try:
        command = Path(f"/proc/{pid}/cmdline").read_text()
    except OSError:
        return False
    return "forkserver" in command or "spawn_main" in command


def workers(server: Server) -> list[int]:
    """The worker processes of a server."""
    forks = [pid for pid in children(server.process.pid) if is_worker(pid)]
    return [pid for pid in forks if not children(pid)]


def busy(pids: list[int]) -> float:
    """Seconds of computing that processes have done."""
    ticks = 0
    for pid in pids:
        fields = Path(f"/proc/{pid}/stat").read_text().rsplit(")", 1)[1].split()
        ticks += int(fields[11]) + int(fields[12])
    return ticks / os.sysconf("SC_CLK_TCK")
