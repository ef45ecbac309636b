"""Strokes and texts of a sheet written on a reportlab canvas. Points of 1/72 in, Y up.

The operators are written as text into the canvas's stream: reportlab's own calls format number by
number, which takes most of the time of a document. Its font does the subsets. Operators by
ISO 32000-1, 8.5 and 9.4 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator
from io import BytesIO
from typing import Any

from reportlab import rl_config
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

from drafting.drawing import Item, Stroke, Text
from drafting.drawing.lettering import CAPITAL, carried, font_file, width, writable
from drafting.export.style import CLEARED, TEXT_GREY, Style, look
from drafting.geometry import Cubic, Path, Point, direction

POINT = 72 / 2.54
"""Points in a centimetre."""
FONT = "NotoSans"
BYTE_ORDER = "\ufeff"
START = {"start": 0.0, "middle": 0.5, "end": 1.0}

rl_config.useA85 = 0  # streams stay binary: a fifth smaller; nothing reads these files as text
pdfmetrics.registerFont(TTFont(FONT, BytesIO(font_file().read_bytes())))


class Ink:
    """A canvas that takes centimetres; the look of its lines and texts is left as last set."""

    def __init__(self, canvas: Any) -> None:
        self.canvas = canvas
        self.font: Any = pdfmetrics.getFont(FONT)

    def items(self, items: tuple[Item, ...]) -> None:
        """Draw strokes and texts, each in the look of its role."""
        code, last = self.canvas._code, None  # noqa: SLF001 - the stream being written
        for item in items:
            if isinstance(item, Stroke):
                style = look(item)
                if style != last:
                    code.append(_looking(style))
                    last = style
                code.append(" ".join(_drawn(item.path)))
            else:
                code += self._text(item)

    def _text(self, text: Text) -> Iterator[str]:
        """A line of text; a letter without a shape is seen as a box, read as typed."""
        written, along = writable(text.text), direction(text.angle)
        length = width(written, text.height)
        start = START[text.anchor] * length
        x, y = f"{along.x:.5f}", f"{along.y:.5f}"
        turned = f"{x} {y} {-along.y:.5f} {x} {_at(text.at + along * -start)}"
        if text.role in CLEARED:
            tall, long = text.height * POINT, length * POINT
            yield f"q {turned} cm 1 g 0 {-0.3 * tall:.2f} {long:.2f} {1.4 * tall:.2f} re f Q"
        shown = self._shown(written, text.height / CAPITAL * POINT)
        grey = TEXT_GREY.get(text.role, 0.0)
        line = f"BT {grey:g} g {turned} Tm {shown} ET"
        if text.text == written:
            yield line
            return
        told = (BYTE_ORDER + carried(text.text)).encode("utf-16-be").hex()
        yield f"/Span <</ActualText <{told}>>> BDC {line} EMC"

    def _shown(self, written: str, size: float) -> str:
        """The operators that show a text in the subsets of the font."""
        document = self.canvas._doc  # noqa: SLF001 - what the subsets belong to
        return " ".join(
            f"{self.font.getSubsetInternalName(subset, document)} {size:.2f} Tf "
            f"<{letters.hex()}> Tj"
            for subset, letters in self.font.splitString(written, document)
        )


def _looking(style: Style) -> str:
    dashes = " ".join(f"{d / 10 * POINT:.2f}" for d in style.dashes)
    return f"{style.width / 10 * POINT:.2f} w [{dashes}] 0 d {style.grey:g} G"


def _drawn(path: Path) -> Iterator[str]:
    """The operators that draw a line; one that ends where it starts is closed."""
    yield f"{_at(path.start)} m"
    for s in path.segments:
        if isinstance(s, Cubic):
            yield f"{_at(s.leaving)} {_at(s.arriving)} {_at(s.end)} c"
        else:
            yield f"{_at(s.end)} l"
    closed = len(path.segments) > 1 and path.start.distance(path.end) < 1e-6
    yield "s" if closed else "S"


def _at(point: Point) -> str:
    return f"{point.x * POINT:.2f} {point.y * POINT:.2f}"
