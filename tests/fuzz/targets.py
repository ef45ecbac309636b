"""What is tried with bytes that no one would write: how orders are read and labels drawn."""

from __future__ import annotations

import json
import sys
from functools import cache
from pathlib import Path
from xml.etree.ElementTree import fromstring

ROOT = Path(__file__).parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests" / "service")]

import apron  # noqa: E402 - found beside the tests

from drafting.export import FORMATS  # noqa: E402
from drafting.garments import GARMENTS  # noqa: E402
from service.drafts import drafted  # noqa: E402
from service.problems import ProblemError, problem_response  # noqa: E402
from service.reading import decode  # noqa: E402
from service.schemas import OrderForm  # noqa: E402

DEPTH = 32
SEEDS = [path.read_bytes() for path in sorted((ROOT / "openapi" / "examples").glob("*.json"))]
WORDS = [
    "Quillby Yard, order 7",
    "<b>&amp;</b>",
    "]]>",
    "(a\\) Tj",
    "%%EOF",
    "0\r\nEOF\r\n",
    "مقاس",
]


@cache
def _form() -> OrderForm:
    return OrderForm({**GARMENTS, "apron": apron.GARMENT})


def orders(data: bytes) -> None:
    """An order is read, or refused by a problem that can be sent; nothing else."""
    try:
        _form().read(decode(data, DEPTH))
    except ProblemError as problem:
        answer = json.loads(problem_response(problem).body)
        assert 400 <= answer["status"] < 500


def labels(data: bytes) -> None:
    """A reference is refused, or stands in every format without breaking it."""
    order = {**apron.order(), "reference": data.decode("utf-8", "surrogateescape")}
    try:
        read = _form().read(decode(json.dumps(order).encode(), DEPTH))
    except ProblemError:
        return
    for name in ("svg", "pdf", "dxf", "json"):
        whole(name, drafted(read, _form(), FORMATS[name]).body)


def whole(name: str, body: bytes) -> None:
    """A document is one of its kind, from its first byte to its last."""
    match name:
        case "svg":
            root = fromstring(body)  # noqa: S314 - our own
            kinds = {each.tag.rpartition("}")[2] for each in root.iter()}
            assert not kinds & {"script", "foreignObject", "a", "image", "style"}, kinds
        case "json":
            json.loads(body)
        case "dxf":
            lines = body.split(b"\r\n") if b"\r\n" in body else body.split(b"\n")
            pairs = [*zip(map(bytes.strip, lines[::2]), lines[1::2], strict=False)]
            assert len(lines) % 2  # code and value in turn, and a line's end
            assert [k for k, pair in enumerate(pairs) if pair == (b"0", b"EOF")] == [len(pairs) - 1]
        case "pdf":
            assert body.startswith(b"%PDF-")
            assert body.rstrip().endswith(b"%%EOF")


TARGETS = {
    "orders": (orders, SEEDS),
    "labels": (labels, [word.encode() for word in WORDS]),
}
"""What is tried, and what the search starts from."""
