"""What an answer costs, in ratios of one run: by hand, `python tests/benchmarks/service.py`.

Costs are computing time of the whole process, which other programs on the machine hardly change.
The floor is the same application answering as many bytes after validating the same order, but
without drafting. Every order is for another body, so nothing can be remembered from the last one.

Bounds: JSON at most 12 times the floor, aim 6; SVG at most 2 times JSON, DXF at most 3 times;
a pattern drafted, finished and checked in 2 ms is the aim; cost linear in pieces and in sizes;
start to the first answer under 1.5 s; at most 150 MB a worker.
"""

from __future__ import annotations

import argparse
import asyncio
import json
import sys
import time
from collections.abc import Callable, Iterable
from dataclasses import replace
from io import BytesIO
from itertools import count
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory
from unittest.mock import patch

import httpx
import orjson
import shapely
from fastapi import FastAPI
from reportlab.pdfgen.canvas import Canvas

ROOT = Path(__file__).parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests" / "service")]

from asking import example  # noqa: E402 - found beside the tests
from serving import Server  # noqa: E402

from drafting.checks import check, seams  # noqa: E402
from drafting.craft.sheet import DraftSheet  # noqa: E402
from drafting.drawing import Output  # noqa: E402
from drafting.export import FORMATS  # noqa: E402
from drafting.export.json import document, write  # noqa: E402
from drafting.export.sheets import told_pieces  # noqa: E402
from drafting.garments import GARMENTS  # noqa: E402
from drafting.geometry import Cubic, Path as Line  # noqa: E402
from drafting.pattern import FinishedPattern, Pattern  # noqa: E402
from drafting.pattern.finish import finish_pattern  # noqa: E402
from drafting.workroom import Work, work  # noqa: E402
from service.app import create_app  # noqa: E402
from service.drafts import Drafted, body_of, drafted, worked  # noqa: E402
from service.schemas import OrderForm  # noqa: E402
from service.settings import Settings  # noqa: E402

FORM = OrderForm(GARMENTS)
MEGABYTE = 1024 * 1024
FLAT = 0.005


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
        got: list[bytes] = []

        async def receive() -> dict:
            return {"type": "http.request", "body": body, "more_body": False}

        async def send(message: dict) -> None:
            assert message.get("status", 200) == 200, message
            got.append(message.get("body", b""))

        scope = {
            "type": "http", "asgi": {"version": "3.0"}, "http_version": "1.1", "method": "POST",
            "scheme": "http", "path": "/v1/patterns", "raw_path": b"/v1/patterns", "root_path": "",
            "query_string": f"format={form}".encode(), "client": ("127.0.0.1", 1),
            "server": ("127.0.0.1", 80),
            "headers": [(b"host", b"localhost"), (b"content-type", b"application/json")],
        }  # fmt: skip
        await self.app(scope, receive, send)
        return b"".join(got)


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
            with patch("service.routes.patterns.drafted", known):
                began = time.process_time()
                got = await client.order(body, "json" if way == "floor" else way)
                told.append((time.process_time() - began) * 1e3)
            sizes[way] = len(got)
        if turn == 1:  # what is done once has been done
            costs = {way: [] for way in costs}
    return {way: (median(told), sizes[way]) for way, told in costs.items()}


def stages() -> list[tuple[str, float]]:
    """Where the time of one pattern goes, station by station."""
    order = FORM.read(next(iter(orders())))
    body, _ = body_of(order)
    net = order.garment.draw(body, order.spec, DraftSheet())
    cut = finish_pattern(net, order.finish)
    done = worked(order, FORM)
    told = document(done, order.output)
    return [
        ("body", least(lambda: body_of(order))),
        ("draft", least(lambda: order.garment.draw(body, order.spec, DraftSheet()))),
        ("finish", least(lambda: finish_pattern(net, order.finish))),
        ("check", least(lambda: (check(cut), seams(net)))),
        ("label", least(lambda: told_pieces(done, order.output))),
        ("write JSON, labels within", least(lambda: document(done, order.output))),
        ("JSON to text", least(lambda: json.dumps(told, ensure_ascii=False))),
    ]


def strokes(cut: FinishedPattern) -> list[Line]:
    """Every line of the pattern."""
    lines = [p.cut_line for p in cut.pieces]
    lines += [e.path for p in cut.pieces for e in p.piece.edges]
    return lines + [m.path for p in cut.pieces for m in p.piece.marks]


def beside() -> list[tuple[str, float]]:
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

    return [
        ("shapely: polygons", least(lambda: [shapely.Polygon(o) for o in outlines])),
        ("shapely: an offset each", least(lambda: [shapely.Polygon(o).buffer(1) for o in outlines])),
        ("reportlab: the lines on a page", least(reportlab)),
        ("json: the same document", least(lambda: json.dumps(told))),
        ("orjson: the same document", least(lambda: orjson.dumps(told))),
    ]


def copied(net: Pattern, times: int) -> Pattern:
    """A pattern with each piece so many times, each copy with the seams of its own."""
    if times == 1:
        return net

    def renamed(name: str, k: int) -> str:
        return f"{name}_{k}"

    def seam(s, k: int):  # noqa: ANN001, ANN202
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


def by_pieces() -> list[tuple[int, float]]:
    """Number of pieces, and the cost of finishing, checking, labelling and writing each."""
    order = FORM.read(next(iter(orders())))
    body, _ = body_of(order)
    net = order.garment.draw(body, order.spec, DraftSheet())
    done: Work = worked(order, FORM)
    found = []
    for times in (1, 2, 4, 8):
        many = copied(net, times)

        def through(many: Pattern = many) -> None:
            cut = finish_pattern(many, order.finish)
            checks, findings = check(cut)
            cut = replace(cut, checks=checks, findings=findings)
            write(replace(done, pattern=cut, seams=seams(many)), order.output)

        pieces = len(many.pieces)
        found.append((pieces, least(through, 6) / pieces))
    return found


def by_sizes() -> list[tuple[int, float]]:
    """Number of sizes of a range, and the cost of each."""
    from drafting.grading import range_document, size_range  # noqa: F401, PLC0415

    return []


def printed(title: str, rows: Iterable[tuple[object, ...]]) -> None:
    print(f"\n{title}")  # noqa: T201
    for first, *rest in rows:
        print(f"  {first!s:32}", *rest)  # noqa: T201


def started(rounds: int) -> tuple[float, float, float, float]:
    """Seconds to the first answer, computing seconds of it, MB at rest and after some orders."""
    seconds, computing = [], []
    people = iter(orders())
    with TemporaryDirectory() as folder:
        for _ in range(rounds):
            began = time.perf_counter()
            server = Server(Path(folder) / "log")
            server.wait(0.01)
            httpx.post(server.address + "v1/patterns", json=next(people)).raise_for_status()
            seconds.append(time.perf_counter() - began)
            rest = resident(server)
            for form in ("json", "svg", "dxf", "pdf", "json") * 10:
                address = f"{server.address}v1/patterns?format={form}"
                httpx.post(address, json=next(people)).raise_for_status()
            full = resident(server)
            server.kill()
    return min(seconds), rest, full


if __name__ == "__main__":
    rounds = int(sys.argv[1]) if len(sys.argv) > 1 else 20
    told = asyncio.run(answers(rounds))
    floor = told["floor"][0]
    for way,(ms,size) in told.items(): print(f"{way:6} {ms:8.2f} ms {size:8} bytes  {ms/floor:5.1f} x floor  {ms/told['json'][0]:5.2f} x JSON")
    printed("stages", [(n, f"{ms:8.2f} ms") for n, ms in stages()])
    printed("beside", [(n, f"{ms:8.2f} ms") for n, ms in beside()])
    printed("pieces", [(n, f"{ms:8.2f} ms each") for n, ms in by_pieces()])
