"""How the service does under load, in ratios of one run: `python tests/benchmarks/load.py`.

Bounds on two cores: no request without a whole answer, at 1, 8, 64 and 512 connections that ask for
mixed formats, none twice the same; past the queue's bound only well-formed 503 with Retry-After;
and the 95th percentile of JSON with a PDF a second beside it is at most twice that of JSON alone.
`--seconds 300` is the long run. Percentiles are seconds that a JSON pattern took. The clients share
the machine with the server.
"""

from __future__ import annotations

import argparse
import sys
import threading
import time
from itertools import islice
from pathlib import Path
from tempfile import TemporaryDirectory

import httpx

ROOT = Path(__file__).parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests" / "service")]

from asking import example  # noqa: E402 - found beside the tests
from loading import load, orders, percentile  # noqa: E402
from serving import Server  # noqa: E402

CONNECTIONS = (1, 8, 64, 512)
BESIDE = 2.0
PAUSE = 0.02
"""Seconds between one client's JSON orders, so that it measures waiting and not its own haste."""


def p95(server: Server, count: int) -> float:
    """95th percentile of JSON's latency for one client, in seconds."""
    asked = [o for name, o in islice(orders(), 3 * count) if name == "json"][:count]
    taken = []
    with httpx.Client(base_url=server.address, timeout=60) as client:
        for order in asked:
            began = time.perf_counter()
            client.post("v1/patterns", json=order).raise_for_status()
            taken.append(time.perf_counter() - began)
            time.sleep(PAUSE)
    return percentile(taken, 0.95)


def beside_pdf(server: Server, count: int) -> float:
    """The same with a PDF a second beside it."""
    over = threading.Event()

    def print_on() -> None:
        with httpx.Client(base_url=server.address, timeout=60) as client:
            while not over.is_set():
                began = time.perf_counter()
                client.post("v1/patterns?format=pdf", json=example()).raise_for_status()
                over.wait(max(0.0, began + 1 - time.perf_counter()))

    printing = threading.Thread(target=print_on)
    printing.start()
    time.sleep(1)
    try:
        return p95(server, count)
    finally:
        over.set()
        printing.join()


def crowds(server: Server, seconds: float) -> bool:
    """Load by load, a line each; whether all of them were answered."""
    print(  # noqa: T201
        f"{'connections':>11}{'sent':>9}{'a second':>10}{'200':>9}{'422':>7}{'503':>9}"
        f"{'p50':>8}{'p95':>8}  faults"
    )
    clean = True
    for connections in CONNECTIONS:
        tally = load(server.address, connections, seconds)
        seen, rate = tally.answers, tally.answers[200] / seconds
        taken = [tally.percentile("json", share) for share in (0.5, 0.95)]
        clean &= not tally.faults and seen.total() == tally.sent
        print(  # noqa: T201
            f"{connections:>11}{tally.sent:>9}{rate:>10.0f}{seen[200]:>9}{seen[422]:>7}"
            f"{seen[503]:>9}{taken[0]:>8.3f}{taken[1]:>8.3f}  {dict(tally.faults) or 'none'}",
            flush=True,
        )
    return clean


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--seconds", type=float, default=15, help="for each number of connections")
    parser.add_argument("--orders", type=int, default=300, help="for each percentile")
    asked = parser.parse_args()
    with TemporaryDirectory() as folder:
        server = Server(Path(folder) / "log", TAPELINE_ORDER_SECONDS="30")
        try:
            server.wait()
            p95(server, 50)
            alone = p95(server, asked.orders)
            ratio = beside_pdf(server, asked.orders) / alone
            print(f"p95 of JSON alone: {alone * 1000:.1f} ms")  # noqa: T201
            print(f"with a PDF a second beside it: {ratio:.2f} times that, at most {BESIDE:g}")  # noqa: T201
            clean = crowds(server, asked.seconds)
        finally:
            server.kill()
    return 0 if clean and ratio <= BESIDE else 1


if __name__ == "__main__":
    sys.exit(main())
