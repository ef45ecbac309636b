"""The pattern as one SVG drawing: true to scale for print, or dressed for screens.

One unit is one millimetre, Y down. One group for each piece, with stable ids and a class for each
role; no script and no reference to anything outside. Texts are written as typed.
"""

from __future__ import annotations

import re
from functools import cache
from io import StringIO
from itertools import groupby
from typing import TYPE_CHECKING, Any, Protocol

import svgwrite
from svgwrite.base import Desc, Title
from svgwrite.path import Path
from svgwrite.text import Text as Written

from drafting.drawing import Group, Sheet, Stroke, Text
from drafting.drawing.compose import LEGEND
from drafting.drawing.lettering import CAPITAL, has_shapes, width
from drafting.errors import OutputError
from drafting.export import screen
from drafting.export.identity import pattern_id
from drafting.export.paths import MM, downward, number, path_data
from drafting.export.sheets import WorkContent
from drafting.export.style import CLEARED, TEXT_GREY, Style, look

if TYPE_CHECKING:
    from drafting.drawing import Output
    from drafting.geometry import Transform
    from drafting.workroom import Work

PREFIX = "pattern"
"""Every id starts with it."""
PROPER = re.compile("[A-Za-z][A-Za-z0-9_-]*")
"""What an id may start with."""
DIGITS = 8
"""Digits of a pattern's id that tell its drawing from others on the same page."""

FONTS = "'Noto Sans', 'Helvetica', 'Arial', sans-serif"

NOT_XML = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
"""What an XML document cannot carry; drawn as the replacement character."""


class Dress(Protocol):
    """How a drawing looks, and what it says of its size."""

    @property
    def colour(self) -> str:
        """Colour of lines."""
        ...

    def root(self, drawing: Any, sheet: Sheet, prefix: str) -> None:
        """Size and style of the whole."""
        ...

    def pen(self, style: Style) -> dict[str, str]:
        """Attributes of a line."""
        ...

    def ink(self, text: Text) -> dict[str, str]:
        """Attributes of a text's colour."""
        ...


def write(work: Work, output: Output) -> bytes:
    """The pattern as an SVG document in UTF-8.

    Raises:
        OutputError: There is nothing to draw, or the prefix cannot start an id.
    """
    content = WorkContent.of(work, output)
    if output.view == "screen":
        sheet = content.lay(None, None).sheet
        return render(sheet, _prefix(output, f"{PREFIX}-{pattern_id(work)[:DIGITS]}"), screen.PAGE)
    return render(content.lay(content.legend(), None).sheet, _prefix(output, PREFIX))


def _prefix(output: Output, usual: str) -> str:
    if output.prefix and not PROPER.fullmatch(output.prefix):
        raise OutputError(
            "A prefix of ids has letters, digits, - and _, and starts with a letter.",
            where="output.prefix",
            code="bad_prefix",
            received=output.prefix,
        )
    return output.prefix or usual


class _Paper:
    """Black on white, true to scale."""

    colour = "#000"

    def root(self, drawing: Any, sheet: Sheet, prefix: str) -> None:  # noqa: ARG002
        drawing["width"], drawing["height"] = (
            f"{number(side * MM)}mm" for side in (sheet.width, sheet.height)
        )
        drawing["style"] = "background:#fff"

    def pen(self, style: Style) -> dict[str, str]:
        return _pen(style)

    def ink(self, text: Text) -> dict[str, str]:
        ink = {"fill": _grey(TEXT_GREY.get(text.role, 0.0)), "stroke": "none"}
        if text.role in CLEARED:
            halo = number(text.height * MM / 3)
            ink |= {"stroke": "#fff", "stroke_width": halo, "paint_order": "stroke"}
        return ink


PAPER = _Paper()


def render(sheet: Sheet, prefix: str, dress: Dress = PAPER) -> bytes:
    """Any sheet as an SVG document; ids start with the prefix."""
    drawing = svgwrite.Drawing(debug=False, id=prefix)
    del drawing.attribs["width"], drawing.attribs["height"]
    drawing["viewBox"] = f"0 0 {number(sheet.width * MM)} {number(sheet.height * MM)}"
    drawing["role"] = "img"
    drawing["aria-labelledby"] = f"{prefix}-title {prefix}-desc"
    drawing.elements[:0] = [
        _told(Title, sheet.title, f"{prefix}-title"),
        _told(Desc, sheet.description, f"{prefix}-desc"),
    ]
    dress.root(drawing, sheet, prefix)
    to = downward(0.0, sheet.height)
    for place, (layer, groups) in enumerate(groupby(sheet.groups, key=lambda g: g.layer)):
        parent = _layer(drawing, layer, f"{prefix}-layer-{place}") if layer else drawing
        for group in groups:
            parent.add(_group(drawing, group, to, f"{prefix}-{group.name}", dress))
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


def _group(drawing: Any, group: Group, to: Transform, code: str, dress: Dress) -> Any:
    element = drawing.g(
        id=code,
        class_="legend" if group.name == LEGEND else "piece",
        fill="none",
        stroke=dress.colour,
        stroke_linejoin="round",
        stroke_linecap="butt",
    )
    element.elements.append(Title(carried(group.title)))
    for item in group.items:
        if isinstance(item, Stroke):
            element.add(_path(drawing, item, to, code, dress))
        else:
            element.add(_text(drawing, item, to, dress))
    return element


def _path(drawing: Any, stroke: Stroke, to: Transform, code: str, dress: Dress) -> Any:
    names = {"id": f"{code}-{stroke.name}"} if stroke.name else {}
    pen = dress.pen(look(stroke))
    return Path(path_data(stroke.path, to), factory=drawing, class_=stroke.role, **names, **pen)


@cache
def _pen(style: Style) -> dict[str, str]:
    pen = {"stroke_width": number(style.width)}
    if style.dashes:
        pen["stroke_dasharray"] = " ".join(map(number, style.dashes))
    if style.grey:
        pen["stroke"] = _grey(style.grey)
    return pen


def _text(drawing: Any, text: Text, to: Transform, dress: Dress) -> Any:
    at = to.point(text.at)
    look = {
        "class_": text.role,
        "font_size": number(text.height * MM / CAPITAL),
        "font_family": FONTS,
        **dress.ink(text),
    }
    if text.anchor != "start":
        look["text_anchor"] = text.anchor
    if text.angle:
        look["transform"] = f"rotate({number(-text.angle)} {number(at.x)} {number(at.y)})"
    if text.text and has_shapes(text.text):
        look["textLength"] = number(width(text.text, text.height) * MM)
        look["lengthAdjust"] = "spacingAndGlyphs"
    element = Written(carried(text.text), factory=drawing, **look)
    element["x"], element["y"] = number(at.x), number(at.y)
    return element


def _grey(share: float) -> str:
    level = round(255 * share)
    return f"#{level:02x}{level:02x}{level:02x}"
