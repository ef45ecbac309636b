"""What an answer costs, in ratios of one run: by hand, `python tests/benchmarks/service.py`.

Costs are computing time of the whole process, which other programs on the machine hardly change.
The floor is the same application answering as many bytes after validating the same order, but
without drafting. Every order is for another body, so nothing can be remembered from the last one.

Bounds: JSON at most 12 times the floor, aim 6; SVG at most 2 times JSON, DXF at most 3 times;
what a client has already (304) less than the floor; a pattern drafted, finished and checked in
2 ms is the aim; cost linear in pieces and in sizes;
start to the first answer under 1.5 s; at most 150 MB a worker.
"""

from __future__ import annotations

import asyncio
import json
import os
import sys
import time
from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace
from functools import partial
from io import BytesIO
from itertools import count
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory
from typing import TypeVar
from unittest.mock import patch

import httpx
import orjson
import shapely
from fastapi import FastAPI
from reportlab.pdfgen.canvas import Canvas

ROOT = Path(__file__).parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests" / "service")]

from asking import example  # noqa: E402 - found beside the tests
from serving import Server, busy  # noqa: E402

from drafting.body import SIZE_TABLES, Body, size_body  # noqa: E402
from drafting.checks import check, seams  # noqa: E402
from drafting.drawing import Output  # noqa: E402
from drafting.export.json import document, write  # noqa: E402
from drafting.export.sheets import told_pieces  # noqa: E402
from drafting.garments import GARMENTS  # noqa: E402
from drafting.geometry import Cubic  # noqa: E402
from drafting.geometry import Path as Line  # noqa: E402
from drafting.grading import range_document, size_range  # noqa: E402
from drafting.pattern import Finish, FinishedPattern, Pattern  # noqa: E402
from drafting.pattern.finish import finish_pattern  # noqa: E402
from drafting.workroom import Work, draft  # noqa: E402
from service.app import create_app  # noqa: E402
from service.drafts import Drafted, body_of, drafted, worked  # noqa: E402
from service.schemas import Order, OrderForm  # noqa: E402
from service.settings import Settings  # noqa: E402
from service.waste import settle  # noqa: E402

T = TypeVar("T")

FORM = OrderForm(GARMENTS)
FLAT = 0.005
SAMPLE = "/v1/garments/trousers/sample"
BOUNDS = {
    "json": ("floor", 12.0),
    "svg": ("json", 2.0),
    "dxf": ("json", 3.0),
    "unchanged": ("floor", 1.0),
}
START, MEMORY, STEADY = 1.5, 150.0, 1.25
Rows = list[tuple[str, str]]


def orders() -> Iterable[dict]:
    """Trousers for invented persons, no two alike."""
    for number in count():
        order = {**example(), "reference": f"order {number}"}
        hip = 92 + number % 997 / 40
        yield order | {
            "measurements": order["measurements"] | {"hip_girth": hip, "waist_girth": hip - 27}
        }


def cost(task: Callable[[], object]) -> float:
    """Milliseconds of computing, all threads of this process together."""
    began = time.process_time()
    task()
    return (time.process_time() - began) * 1e3


def least(task: Callable[[], object], rounds: int = 12) -> float:
    """Milliseconds of the quicker half of some rounds."""
    return median(sorted(cost(task) for _ in range(rounds))[: rounds // 2])


class Client:
    """Asks an application by plain ASGI: what the asking itself costs is next to nothing."""

    def __init__(self, app: FastAPI) -> None:
        self.app = app

    async def order(self, body: bytes, form: str) -> bytes:
        """The answer to an order in a format."""
        _, got = await self._ask("POST", "/v1/patterns", f"format={form}", body, {})
        return got

    async def kept(self, path: str, etag: str = "") -> tuple[str, bytes]:
        """An answer that may be kept, and its tag; empty for those who have it."""
        headers, got = await self._ask("GET", path, "", b"", {"if-none-match": etag})
        return headers["etag"], got

    async def _ask(
        self, method: str, path: str, query: str, body: bytes, headers: dict[str, str]
    ) -> tuple[dict[str, str], bytes]:
        told: dict[str, str] = {}
        got: list[bytes] = []

        async def receive() -> dict:
            return {"type": "http.request", "body": body, "more_body": False}

        async def send(message: dict) -> None:
            assert message.get("status", 200) in (200, 304), message
            told.update({k.decode(): v.decode() for k, v in message.get("headers", ())})
            got.append(message.get("body", b""))

        sent = {"host": "localhost", "content-type": "application/json", **headers}
        scope = {
            "type": "http", "asgi": {"version": "3.0"}, "http_version": "1.1", "method": method,
            "scheme": "http", "path": path, "raw_path": path.encode(), "root_path": "",
            "query_string": query.encode(), "client": ("127.0.0.1", 1),
            "server": ("127.0.0.1", 80),
            "headers": [(k.encode(), v.encode()) for k, v in sent.items()],
        }  # fmt: skip
        await self.app(scope, receive, send)
        return told, b"".join(got)


async def answers(rounds: int) -> dict[str, tuple[float, int]]:
    """Median cost and size of an answer, the floor and the formats taking turns."""
    client, people = Client(create_app(Settings())), iter(orders())
    whole = await client.order(json.dumps(next(people)).encode(), "json")

    def undrafted(*_: object) -> Drafted:
        return Drafted(whole, "application/json", "json", "sound", "0" * 32)

    costs: dict[str, list[float]] = {way: [] for way in ("floor", "json", "svg", "dxf")}
    sizes: dict[str, int] = {}
    for turn in range(rounds + 2):
        body = json.dumps(next(people)).encode()
        for way, told in costs.items():
            known = undrafted if way == "floor" else drafted
            with patch("service.house.drafted", known):
                began = time.process_time()
                got = await client.order(body, "json" if way == "floor" else way)
                told.append((time.process_time() - began) * 1e3)
            sizes[way] = len(got)
        if turn == 1:  # what is done once has been done
            costs = {way: [] for way in costs}
    etag, _ = await client.kept(SAMPLE)
    again: list[float] = []
    for _ in range(rounds):
        began = time.process_time()
        _, nothing = await client.kept(SAMPLE, etag)
        again.append((time.process_time() - began) * 1e3)
        assert nothing == b""
    costs["unchanged"], sizes["unchanged"] = again, 0
    return {way: (median(told), sizes[way]) for way, told in costs.items()}


def stages(rounds: int) -> Rows:
    """Where the time of one pattern goes, station by station; every round has another body."""
    people = iter(orders())
    told: dict[str, list[float]] = {}

    def timed(name: str, task: Callable[[], T]) -> T:
        began = time.process_time()
        found = task()
        told.setdefault(name, []).append((time.process_time() - began) * 1e3)
        return found

    for _ in range(rounds):
        order = FORM.read(next(people))
        body, _ = timed("body", partial(body_of, order))
        drawn = partial(draft, order.garment, body, order.spec, steps=False)
        net, _ = timed("draft", drawn)
        cut = timed("finish", partial(finish_pattern, net, order.finish))
        timed("check", lambda: (check(cut), seams(net)))  # noqa: B023
        done = worked(order, FORM)
        timed("lay labels", partial(told_pieces, done, order.output))
        with patch("drafting.export.json.told_pieces", lambda *_: done.pattern.pieces):  # noqa: B023
            whole = timed("tell as JSON", partial(document, done, order.output))
        timed("JSON to text", partial(json.dumps, whole, ensure_ascii=False))
    return [(name, f"{median(each):8.2f} ms") for name, each in told.items()]


def strokes(cut: FinishedPattern) -> list[Line]:
    """Every line of the pattern."""
    lines = [p.cut_line for p in cut.pieces]
    lines += [e.path for p in cut.pieces for e in p.piece.edges]
    return lines + [m.path for p in cut.pieces for m in p.piece.marks]


def beside() -> Rows:
    """What libraries of compiled code need for the same lines."""
    order = FORM.read(next(iter(orders())))
    done = worked(order, FORM)
    lines = strokes(done.pattern)
    told = document(done, Output())
    outlines = [p.piece.outline.coordinates(FLAT) for p in done.pattern.pieces]

    def reportlab() -> None:
        canvas = Canvas(BytesIO(), invariant=1)
        for line in lines:
            path = canvas.beginPath()
            path.moveTo(line.start.x, line.start.y)
            for s in line.segments:
                points = (s.leaving, s.arriving, s.end) if isinstance(s, Cubic) else (s.end,)
                numbers = [n for p in points for n in (p.x, p.y)]
                (path.curveTo if len(points) == 3 else path.lineTo)(*numbers)
            canvas.drawPath(path)
        canvas.save()

    ways = {
        "shapely: the outlines as polygons": lambda: [shapely.Polygon(o) for o in outlines],
        "shapely: an offset of each": lambda: [shapely.Polygon(o).buffer(1) for o in outlines],
        "reportlab: the lines on a page": reportlab,
        "json: the same document": lambda: json.dumps(told),
        "orjson: the same document": lambda: orjson.dumps(told),
    }
    return [(name, f"{least(way):8.2f} ms") for name, way in ways.items()]


def copied(net: Pattern, times: int) -> Pattern:
    """A pattern with each piece so many times, each copy with the seams of its own."""
    if times == 1:
        return net

    def renamed(name: str, k: int) -> str:
        return f"{name}_{k}"

    def seam(s, k):
        one, two = (
            tuple(replace(p, piece=renamed(p.piece, k)) for p in side) for side in (s.one, s.two)
        )
        return replace(s, name=renamed(s.name, k), one=one, two=two)

    return replace(
        net,
        pieces=tuple(
            replace(p, name=renamed(p.name, k), number=k * len(net.pieces) + n)
            for k in range(times)
            for n, p in enumerate(net.pieces, 1)
        ),
        seams=tuple(seam(s, k) for k in range(times) for s in net.seams),
        wants=(),
        finished_measurements=(),
    )


def by_pieces() -> dict[int, float]:
    """For numbers of pieces, milliseconds to finish, check, label and write each."""
    order = FORM.read(next(iter(orders())))
    body, _ = body_of(order)
    done: Work = worked(order, FORM)
    found = {}
    for times in (1, 2, 4, 8):
        drawn = [draft(order.garment, body, order.spec, steps=False) for _ in range(4)]
        fresh = [copied(net, times) for net, _ in drawn]  # what was measured once is forgotten
        took = [cost(partial(through, each, done, order)) for each in fresh]
        pieces = len(fresh[0].pieces)
        found[pieces] = min(took) / pieces
    return found


def through(net: Pattern, done: Work, order: Order) -> bytes:
    """A net pattern finished, checked, labelled and written."""
    cut = finish_pattern(net, order.finish)
    checks, findings = check(cut)
    cut = replace(cut, checks=checks, findings=findings)
    return write(replace(done, pattern=cut, seams=seams(net)), order.output)


SIZES = tuple((name, size_body("women", name)) for name in list(SIZE_TABLES["women"].sizes)[:32])


def graded(sizes: tuple[tuple[str, Body], ...]) -> dict:
    """Skirts in these sizes, with their grade report."""
    garment = GARMENTS["straight_skirt"]
    spec = garment.spec(kind=garment.kind)
    return range_document(size_range(garment, sizes, spec, Finish()), Output())


def by_sizes() -> dict[int, float]:
    """For numbers of sizes, milliseconds for each size of a range of skirts.

    The report drafts each size that has two neighbours once more, on the mean of their bodies:
    ranges of one and two sizes have no such size, so they are not what longer ones are held to.
    """
    return {n: least(partial(graded, SIZES[:n]), 4) / n for n in (4, 8, 16, 32)}


def one_by_one() -> float:
    """Milliseconds for each of the same sizes as a range by itself, with nothing to report."""
    return sum(least(partial(graded, (size,)), 4) for size in SIZES) / len(SIZES)


def steady(costs: dict[int, float]) -> float:
    """How much more the last number costs than the first, each by itself."""
    return list(costs.values())[-1] / next(iter(costs.values()))


def resident(server: Server) -> float:
    """Megabytes that a process holds."""
    lines = Path(f"/proc/{server.process.pid}/status").read_text().splitlines()
    return next(int(line.split()[1]) for line in lines if line.startswith("VmRSS")) / 1024


def started(rounds: int) -> tuple[float, float, float]:
    """Seconds to a first answer on the clock and of computing; MB after orders in every format."""
    clock, computing, full = [], [], []
    people = iter(orders())
    with TemporaryDirectory() as folder:
        for _ in range(rounds):
            began = time.perf_counter()
            server = Server(Path(folder) / "log", PYTHONDONTWRITEBYTECODE="")  # as pip installs it
            first_answer(server, next(people))
            clock.append(time.perf_counter() - began)
            computing.append(busy([server.process.pid]))
            for form in ("json", "svg", "dxf", "pdf", "json") * 10:
                address = f"{server.address}v1/patterns?format={form}"
                httpx.post(address, json=next(people), timeout=60).raise_for_status()
            full.append(resident(server))
            server.kill()
    return min(clock), min(computing), max(full)


def first_answer(server: Server, order: dict) -> None:
    """Ask until somebody answers."""
    for _ in range(6000):
        try:
            httpx.post(server.address + "v1/patterns", json=order, timeout=60).raise_for_status()
        except httpx.TransportError:
            time.sleep(0.01)
        else:
            return
    raise TimeoutError(server.logs.read_text())


def printed(title: str, rows: Iterable[tuple[str, str]]) -> None:
    print(f"\n{title}")  # noqa: T201
    for first, rest in rows:
        print(f"  {first:36}{rest}")  # noqa: T201


def compared(told: dict[str, tuple[float, int]]) -> Iterator[tuple[str, str]]:
    """Each way's cost, and how it stands to what it is bound to."""
    for way, (ms, size) in told.items():
        ratio = ""
        if way in BOUNDS:
            other, bound = BOUNDS[way]
            ratio = f"{ms / told[other][0]:6.2f} x {other} (at most {bound:g})"
        yield way, f"{ms:8.2f} ms {size:8} bytes {ratio}"


def main() -> int:
    rounds = int(sys.argv[1]) if len(sys.argv) > 1 else 60
    settle()  # as the server does
    told = asyncio.run(answers(rounds))
    print(f"load {os.getloadavg()[0]:.1f} on {os.cpu_count()} cores")  # noqa: T201
    printed("an answer, computing time", compared(told))
    printed("stages of a trousers pattern", stages(rounds))
    printed("libraries of compiled code, for the same lines", beside())
    pieces, sizes = by_pieces(), by_sizes()
    printed("for each piece, of so many", ((f"{n}", f"{ms:8.2f} ms") for n, ms in pieces.items()))
    rows = [(f"{n}", f"{ms:8.2f} ms") for n, ms in sizes.items()]
    printed("for each size, of so many", [*rows, ("one by one", f"{one_by_one():8.2f} ms")])
    clock, computing, full = started(3)
    printed("a server", [
        ("first answer, by the clock", f"{clock:8.2f} s (at most {START:g})"),
        ("first answer, computing", f"{computing:8.2f} s"),
        ("memory after 50 orders", f"{full:8.1f} MB (at most {MEMORY:g})"),
    ])  # fmt: skip
    kept = all(told[way][0] <= bound * told[other][0] for way, (other, bound) in BOUNDS.items())
    linear = max(steady(pieces), steady(sizes)) <= STEADY
    return 0 if kept and linear and full <= MEMORY and clock <= START else 1


if __name__ == "__main__":
    sys.exit(main())
