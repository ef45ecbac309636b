"""How batches do, in ratios of one run: by hand, `python tests/benchmarks/batches.py`.

Bounds on two cores: two workers draft at least 1.6 times as fast as one; an order of a batch costs
at most 1.15 times what drafting and writing it costs in one process; the 95th percentile of single
orders' latency during a batch is at most 3 times that of a quiet service; the server's memory grows
by at most 20 MB from the first to the last of fifty batches. Fewer orders give a quicker, rougher
answer. Costs are computing time, which other programs on the machine do not change; the other
numbers are only good on a machine that has nothing else to do.
"""

from __future__ import annotations

import argparse
import json
import sys
import threading
import time
from pathlib import Path
from tempfile import TemporaryDirectory

import httpx

ROOT = Path(__file__).parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests" / "service")]

from asking import example  # noqa: E402 - found beside the tests
from serving import Server, busy, workers  # noqa: E402

from drafting.garments import GARMENTS  # noqa: E402
from service.batching.task import Tools, draft_line  # noqa: E402

NDJSON = {"Content-Type": "application/x-ndjson"}


def orders(count: int) -> list[bytes]:
    """Trousers for invented persons, no two alike."""
    found = []
    for number in range(count):
        order = {"id": number, **example()}
        hip = 92 + number % 300 / 10
        order["measurements"] = {**order["measurements"], "hip_girth": hip, "waist_girth": hip - 27}
        found.append(json.dumps(order).encode() + b"\n")
    return found


def in_process(lines: list[bytes]) -> float:
    """Computing seconds for each order, drafted and written in this process."""
    tools = Tools.of(GARMENTS, 32, 30.0)
    draft_line(tools, lines[0], "json")  # what is done once
    began = time.process_time()
    for line in lines:
        assert draft_line(tools, line, "json").status == 200
    return (time.process_time() - began) / len(lines)


def send(server: Server, lines: list[bytes]) -> float:
    """Seconds for a batch; every order must be answered well."""
    began = time.perf_counter()
    with httpx.stream(
        "POST", f"{server.address}v1/batches", content=b"".join(lines), headers=NDJSON, timeout=600
    ) as answer:
        for line in answer.iter_lines():
            last = line
    end = json.loads(last)
    assert (end["type"], end["failed"], end["done"]) == ("end", 0, len(lines))
    return time.perf_counter() - began


def started(folder: str, count: int) -> Server:
    server = Server(Path(folder) / f"{count}.log", TAPELINE_BATCH_WORKERS=str(count))
    server.wait()
    return server


def cost(server: Server, lines: list[bytes]) -> float:
    """Computing seconds of the server and its workers for each order of a batch."""
    pids = [server.process.pid, *workers(server)]
    before = busy(pids)
    send(server, lines)
    return (busy(pids) - before) / len(lines)


def p95(server: Server, count: int = 40) -> float:
    """95th percentile of the latency of single orders, in seconds."""
    taken = []
    with httpx.Client(base_url=server.address, timeout=60) as client:
        for _ in range(count):
            began = time.perf_counter()
            client.post("v1/patterns", json=example()).raise_for_status()
            taken.append(time.perf_counter() - began)
    return sorted(taken)[int(0.95 * count) - 1]


def while_busy(server: Server, lines: list[bytes]) -> float:
    """The same while batches run one after the other."""
    over = threading.Event()

    def keep_busy() -> None:
        while not over.is_set():
            send(server, lines)

    batches = threading.Thread(target=keep_busy)
    batches.start()
    time.sleep(1)
    try:
        return p95(server)
    finally:
        over.set()
        batches.join()


def memory(server: Server) -> float:
    """MB that the server's own process holds."""
    status = Path(f"/proc/{server.process.pid}/status").read_text()
    return int(status.split("VmRSS:")[1].split()[0]) / 1024


def told(what: str, value: float, bound: float, *, at_least: bool = False) -> None:
    held = value >= bound if at_least else value <= bound
    sign = "at least" if at_least else "at most"
    print(f"{what:<58}{value:>8.2f}   {sign} {bound:<6g}{'ok' if held else 'NOT MET'}", flush=True)  # noqa: T201


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--orders", type=int, default=1000, help="orders in a batch")
    parser.add_argument("--batches", type=int, default=50, help="batches for the memory")
    asked = parser.parse_args()
    lines = orders(asked.orders)
    alone = in_process(lines[: min(200, asked.orders)])
    print(f"one order in one process: {alone * 1000:.1f} ms of computing")  # noqa: T201
    with TemporaryDirectory() as folder:
        one, two = started(folder, 1), started(folder, 2)
        try:
            for server in (one, two):
                send(server, lines[:8])  # starts the workers
            told(
                "computing for an order of a batch / in one process", cost(one, lines) / alone, 1.15
            )
            speeds = [send(server, lines) for server in (one, two)]
            told(
                "two workers' throughput / one worker's", speeds[0] / speeds[1], 1.6, at_least=True
            )
            quiet = p95(two)
            told(
                "p95 of single orders, during a batch / quiet", while_busy(two, lines) / quiet, 3.0
            )
            before = memory(two)
            for _ in range(asked.batches - 1):
                send(two, lines)
            told(f"MB gained over {asked.batches} batches", memory(two) - before, 20.0)
        finally:
            one.kill()
            two.kill()


if __name__ == "__main__":
    main()
