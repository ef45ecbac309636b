"""The pattern as a PNG: a small picture for mails and lists, black on white, with its own font.

The picture is the drawing for screens, drawn by resvg with the font that ships with the package and
no other, so that it is the same everywhere.
"""

from __future__ import annotations

from dataclasses import replace
from importlib.resources import as_file
from typing import TYPE_CHECKING

import resvg_py

from drafting.drawing.lettering import font_file, writable
from drafting.drawing.sheet import Text
from drafting.export import svg
from drafting.export.paths import MM
from drafting.export.screen import Page
from drafting.export.sheets import WorkContent

if TYPE_CHECKING:
    from drafting.drawing import Group, Output
    from drafting.workroom import Work


def write(work: Work, output: Output) -> bytes:
    """The pattern as a PNG, its longer side as many pixels as asked for.

    Raises:
        OutputError: There is nothing to draw.
    """
    output = replace(output, view="screen")
    sheet = WorkContent.of(work, output).lay(None, None).sheet
    pixel = MM * max(sheet.width, sheet.height) / output.pixels
    seen = replace(sheet, groups=tuple(map(_seen, sheet.groups)))
    drawing = svg.render(seen, svg.PREFIX, Page(pixel))
    width, height = (max(1, round(MM * side / pixel)) for side in (sheet.width, sheet.height))
    with as_file(font_file()) as font:
        return bytes(
            resvg_py.svg_to_bytes(
                svg_string=drawing.decode(),
                background="#ffffff",
                skip_system_fonts=True,
                font_files=[str(font)],
                width=width,
                height=height,
            )
        )


def _seen(group: Group) -> Group:
    """The group with a box for each letter that the font does not have."""
    items = (replace(i, text=writable(i.text)) if isinstance(i, Text) else i for i in group.items)
    return replace(group, items=tuple(items))
