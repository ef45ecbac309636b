"""The pattern as one SVG drawing, true to scale: one unit is one millimetre, Y down.

One group for each piece, with stable ids and a class for each role; no script, no style sheet, no
reference to anything outside. Texts are written as typed.
"""

from __future__ import annotations

import re
from functools import cache
from io import StringIO
from itertools import groupby
from typing import TYPE_CHECKING, Any

import svgwrite
from svgwrite.base import Desc, Title

from drafting.drawing import Group, Sheet, Stroke, Text
from drafting.drawing.compose import LEGEND
from drafting.drawing.lettering import CAPITAL, has_shape, width
from drafting.export.paths import MM, downward, number, path_data
from drafting.export.sheets import WorkContent
from drafting.export.style import CLEARED, TEXT_GREY, Style, look

if TYPE_CHECKING:
    from drafting.drawing import Output
    from drafting.geometry import Transform
    from drafting.workroom import Work

PREFIX = "pattern"
"""Every id starts with it."""

FONTS = "'Noto Sans', 'Helvetica', 'Arial', sans-serif"

NOT_XML = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
"""What an XML document cannot carry; drawn as the replacement character."""


def write(work: Work, output: Output) -> bytes:
    """The pattern as an SVG document in UTF-8."""
    content = WorkContent.of(work, output)
    return render(content.lay(content.legend(), None).sheet, PREFIX)


def render(sheet: Sheet, prefix: str) -> bytes:
    """Any sheet as an SVG document; ids start with the prefix."""
    width, height = number(sheet.width * MM), number(sheet.height * MM)
    drawing = svgwrite.Drawing(size=(f"{width}mm", f"{height}mm"), debug=False, id=prefix)
    drawing["viewBox"] = f"0 0 {width} {height}"
    drawing["role"] = "img"
    drawing["style"] = "background:#fff"
    drawing["aria-labelledby"] = f"{prefix}-title {prefix}-desc"
    drawing.elements[:0] = [
        _told(Title, sheet.title, f"{prefix}-title"),
        _told(Desc, sheet.description, f"{prefix}-desc"),
    ]
    to = downward(0.0, sheet.height)
    for place, (layer, groups) in enumerate(groupby(sheet.groups, key=lambda g: g.layer)):
        parent = _layer(drawing, layer, f"{prefix}-layer-{place}") if layer else drawing
        for group in groups:
            parent.add(_group(drawing, group, to, f"{prefix}-{group.name}"))
    out = StringIO()
    drawing.write(out)
    return out.getvalue().encode()


def _told(kind: type, text: str, code: str) -> Any:
    element = kind(carried(text))
    element.xml.set("id", code)
    return element


def carried(text: str) -> str:
    """The text with what XML cannot carry replaced."""
    return NOT_XML.sub("\ufffd", text)


def _layer(drawing: Any, title: str, code: str) -> Any:
    element = drawing.add(drawing.g(id=code, class_="layer"))
    element.elements.append(Title(carried(title)))
    return element


def _group(drawing: Any, group: Group, to: Transform, code: str) -> Any:
    element = drawing.g(
        id=code,
        class_="legend" if group.name == LEGEND else "piece",
        fill="none",
        stroke="#000",
        stroke_linejoin="round",
        stroke_linecap="butt",
    )
    element.elements.append(Title(carried(group.title)))
    for item in group.items:
        if isinstance(item, Stroke):
            element.add(_path(drawing, item, to, code))
        else:
            element.add(_text(drawing, item, to))
    return element


def _path(drawing: Any, stroke: Stroke, to: Transform, code: str) -> Any:
    names = {"id": f"{code}-{stroke.name}"} if stroke.name else {}
    return drawing.path(
        path_data(stroke.path, to), class_=stroke.role, **names, **_pen(look(stroke))
    )


@cache
def _pen(style: Style) -> dict[str, str]:
    pen = {"stroke_width": number(style.width)}
    if style.dashes:
        pen["stroke_dasharray"] = " ".join(map(number, style.dashes))
    if style.grey:
        pen["stroke"] = _grey(style.grey)
    return pen


def _text(drawing: Any, text: Text, to: Transform) -> Any:
    at = to.point(text.at)
    look = {
        "class_": text.role,
        "font_size": number(text.height * MM / CAPITAL),
        "font_family": FONTS,
        "fill": _grey(TEXT_GREY.get(text.role, 0.0)),
        "stroke": "none",
    }
    if text.role in CLEARED:
        halo = number(text.height * MM / 3)
        look |= {"stroke": "#fff", "stroke_width": halo, "paint_order": "stroke"}
    if text.anchor != "start":
        look["text_anchor"] = text.anchor
    if text.angle:
        look["transform"] = f"rotate({number(-text.angle)} {number(at.x)} {number(at.y)})"
    if text.text and all(map(has_shape, text.text)):
        look["textLength"] = number(width(text.text, text.height) * MM)
        look["lengthAdjust"] = "spacingAndGlyphs"
    return drawing.text(carried(text.text), x=[number(at.x)], y=[number(at.y)], **look)


def _grey(share: float) -> str:
    level = round(255 * share)
    return f"#{level:02x}{level:02x}{level:02x}"
