"""Whether the service stays as it is over many orders: `python tests/benchmarks/soak.py`.

Bounds: after the first tenth of the orders the memory of the server and of its workers moves by at
most 5 MB each, and so does the number of its open files by at most 5. `--orders 50000` is the long
run. Formats are mixed, no order comes twice.
"""

from __future__ import annotations

import argparse
import os
import sys
import time
from collections import Counter
from concurrent.futures import ThreadPoolExecutor
from itertools import islice
from pathlib import Path
from tempfile import TemporaryDirectory

import httpx

ROOT = Path(__file__).parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests" / "service")]

from loading import orders  # noqa: E402 - found beside the tests
from serving import Server, workers  # noqa: E402

MEMORY, FILES = 5.0, 5
TENTHS = 10
EXPECTED = {200, 422}


def held(pid: int) -> tuple[float, int]:
    """MB of memory and number of open files of a process."""
    status = Path(f"/proc/{pid}/status").read_text()
    memory = int(status.split("VmRSS:")[1].split()[0]) / 1024
    return memory, len(os.listdir(f"/proc/{pid}/fd"))  # noqa: PTH208 - counted only


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--orders", type=int, default=500)
    asked = parser.parse_args()
    with TemporaryDirectory() as folder:
        server = Server(Path(folder) / "log", TAPELINE_ORDER_SECONDS="60")
        try:
            server.wait()
            return soak(server, asked.orders)
        finally:
            server.kill()


def soak(server: Server, count: int) -> int:
    """Send the orders, tell what is held after each tenth, and judge the last nine."""
    waiting, seen = orders(), []
    with httpx.Client(base_url=server.address, timeout=120) as client:
        for tenth in range(TENTHS):
            began, part = time.perf_counter(), list(islice(waiting, count // TENTHS))
            with ThreadPoolExecutor(4) as hands:
                statuses = Counter(hands.map(lambda o: _send(client, o[1]), part))
            assert set(statuses) <= EXPECTED, statuses
            pids = [server.process.pid, *sorted(workers(server))]
            now = [held(pid) for pid in pids]
            seen.append(now)
            told = ", ".join(f"{mb:.1f} MB {files} files" for mb, files in now)
            rate = len(part) / (time.perf_counter() - began)
            print(f"{tenth + 1:>3}/{TENTHS}  {rate:6.1f} orders a second  {told}", flush=True)  # noqa: T201
    return _judged(seen)


def _send(client: httpx.Client, order: dict) -> int:
    return client.post("v1/patterns", json=order).status_code


def _judged(seen: list[list[tuple[float, int]]]) -> int:
    gained = [
        (max(abs(later[who][0] - seen[0][who][0]) for later in seen[1:]),
         max(abs(later[who][1] - seen[0][who][1]) for later in seen[1:]))
        for who in range(len(seen[0]))
    ]  # fmt: skip
    for memory, files in gained:
        print(f"moved by {memory:.1f} MB (at most {MEMORY:g}), {files} files (at most {FILES})")  # noqa: T201
    return int(any(memory > MEMORY or files > FILES for memory, files in gained))


if __name__ == "__main__":
    sys.exit(main())
