"""Strokes and texts of a sheet written on a reportlab canvas. Points of 1/72 in, Y up."""

from __future__ import annotations

from io import BytesIO
from typing import Any

from reportlab import rl_config
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

from drafting.drawing import Item, Stroke, Text
from drafting.drawing.lettering import CAPITAL, carried, font_bytes, writable
from drafting.export.style import CLEARED, TEXT_GREY, Style, look
from drafting.geometry import Cubic, Path, direction

POINT = 72 / 2.54
"""Points in a centimetre."""
FONT = "NotoSans"
BYTE_ORDER = "\ufeff"

rl_config.useA85 = 0  # streams stay binary: a fifth smaller; nothing reads these files as text
pdfmetrics.registerFont(TTFont(FONT, BytesIO(font_bytes())))


class Ink:
    """A canvas that takes centimetres."""

    def __init__(self, canvas: Any) -> None:
        self.canvas = canvas

    def items(self, items: tuple[Item, ...]) -> None:
        """Draw strokes and texts, each in the look of its role."""
        for item in items:
            if isinstance(item, Stroke):
                self.stroke(item.path, look(item))
            else:
                self.text(item)

    def stroke(self, path: Path, style: Style) -> None:
        """Draw a line."""
        canvas = self.canvas
        canvas.setLineWidth(style.width / 10 * POINT)
        canvas.setDash([d / 10 * POINT for d in style.dashes])
        canvas.setStrokeGray(style.grey)
        canvas.drawPath(self._path(path), stroke=1, fill=0)

    def _path(self, path: Path) -> Any:
        drawn = self.canvas.beginPath()
        drawn.moveTo(path.start.x * POINT, path.start.y * POINT)
        for segment in path.segments:
            end = segment.end
            if isinstance(segment, Cubic):
                a, b = segment.leaving, segment.arriving
                drawn.curveTo(
                    a.x * POINT, a.y * POINT, b.x * POINT, b.y * POINT, end.x * POINT, end.y * POINT
                )
            else:
                drawn.lineTo(end.x * POINT, end.y * POINT)
        if len(path.segments) > 1 and path.start.distance(path.end) < 1e-6:
            drawn.close()
        return drawn

    def text(self, text: Text) -> None:
        """Write a line of text; a letter without a shape is seen as a box, read as typed."""
        size, written = text.height / CAPITAL * POINT, writable(text.text)
        along = direction(text.angle)
        length = pdfmetrics.stringWidth(written, FONT, size)
        start = {"start": 0.0, "middle": 0.5, "end": 1.0}[text.anchor] * length
        x, y = text.at.x * POINT - along.x * start, text.at.y * POINT - along.y * start
        if text.role in CLEARED:
            self._cleared(text, x, y, length)
        line = self.canvas.beginText()
        line.setFont(FONT, size)
        line.setFillGray(TEXT_GREY.get(text.role, 0.0))
        line.setTextTransform(along.x, along.y, -along.y, along.x, x, y)
        line.textOut(written)
        self._tagged(line, text.text, written)

    def _cleared(self, text: Text, x: float, y: float, length: float) -> None:
        """White out what lies under a line of text, from its tails to its capitals."""
        canvas, tall = self.canvas, text.height * POINT
        canvas.saveState()
        canvas.translate(x, y)
        canvas.rotate(text.angle)
        canvas.setFillGray(1)
        canvas.rect(0, -0.3 * tall, length, 1.4 * tall, stroke=0, fill=1)
        canvas.restoreState()

    def _tagged(self, line: Any, typed: str, written: str) -> None:
        """Draw a text; where it is not what was typed, tell readers what was."""
        if typed == written:
            self.canvas.drawText(line)
            return
        told = (BYTE_ORDER + carried(typed)).encode("utf-16-be").hex()
        self.canvas.addLiteral(f"/Span <</ActualText <{told}>>> BDC")
        self.canvas.drawText(line)
        self.canvas.addLiteral("EMC")
