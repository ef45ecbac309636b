"""Layers of a PDF that a reader can show and hide (optional content, ISO 32000-1, 8.11).

Each layer is a form, drawn once; all are shown at first, so the document prints as it is.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from reportlab.pdfbase.pdfdoc import (
    PDFArray,
    PDFDictionary,
    PDFName,
    PDFObjectReference,
    PDFResourceDictionary,
    PDFStream,
    PDFString,
)

from drafting.drawing import Item, PrintWords, Role, Sheet
from drafting.export.ink import POINT, Ink

if TYPE_CHECKING:
    from reportlab.pdfgen.canvas import Canvas

ALWAYS = ""
"""The layer that is none: what shows whatever is hidden."""
GRID = "grid"

LAYERS: dict[str, frozenset[Role]] = {
    "levels": frozenset({Role.LEVEL, Role.LENGTHEN}),
    "stitching": frozenset({Role.STITCH, Role.DART}),
    "marks": frozenset({Role.FOLD, Role.GRAIN, Role.DRILL, Role.MARK}),
    "labels": frozenset({Role.LABEL}),
    GRID: frozenset({Role.GRID, Role.JOIN, Role.DIAMOND}),
    "cutting": frozenset({Role.CUT, Role.NOTCH}),
}
"""Layers in the order of drawing, and what lies on each; the rest always shows. Joining marks come
after the labels, which white out what is under them, and cutting lines over all."""


LAYERED = frozenset().union(*LAYERS.values())


class Layers:
    """The forms of a sheet, on layers of its own where it has any, else by what lines are for.

    Attributes:
        forms: Names of the forms that every page shows, in the order of drawing.
    """

    def __init__(self, canvas: Canvas, sheet: Sheet, words: PrintWords) -> None:
        self.canvas, self.sheet, self.words = canvas, sheet, words
        self.own_layers = any(group.layer for group in sheet.groups)
        self.forms: tuple[str, ...] = ()
        self.titles: dict[str, str] = {}

    def draw(self, marks: tuple[Item, ...], always: tuple[Item, ...]) -> None:
        """Draw the sheet once, form by form.

        Args:
            marks: Where the pages join.
            always: What shows whatever is hidden.
        """
        if self.own_layers:
            self._form("sheet", ALWAYS, (*self._of(ALWAYS), *marks, *always))
            layers = dict.fromkeys(group.layer for group in self.sheet.groups if group.layer)
            for number, layer in enumerate(layers):
                self._form(f"layer-{number}", layer, self._of(layer))
            return
        items = (*marks, *self._of(ALWAYS))
        self._form("sheet", ALWAYS, (*(i for i in items if i.role not in LAYERED), *always))
        for code, roles in LAYERS.items():
            drawn = tuple(item for item in items if item.role in roles)
            if drawn:
                self._form(f"layer-{code}", self.words.layers[code], drawn)

    def _of(self, layer: str) -> tuple[Item, ...]:
        return tuple(i for g in self.sheet.groups if g.layer == layer for i in g.items)

    def grid(self, name: str, items: tuple[Item, ...]) -> None:
        """Draw a part of the grid that many pages show, as a form of that name."""
        self._draw(name, ALWAYS if self.own_layers else self.words.layers[GRID], items)

    def on_page(self, items: tuple[Item, ...]) -> None:
        """Draw on the page itself what no other has, on the layer of the grid."""
        if not self.own_layers:
            self.canvas.addLiteral(f"/OC /{GRID} BDC")
        Ink(self.canvas).items(items)
        if not self.own_layers:
            self.canvas.addLiteral("EMC")

    def _form(self, name: str, layer: str, items: tuple[Item, ...]) -> None:
        self._draw(name, layer, items)
        self.forms = (*self.forms, name)

    def _draw(self, name: str, layer: str, items: tuple[Item, ...]) -> None:
        width, height = self.sheet.width * POINT, self.sheet.height * POINT
        self.canvas.beginForm(name, 0, 0, width, height)
        Ink(self.canvas).items(items)
        self.canvas.endForm()
        self.titles[name] = layer

    def put(self) -> None:
        """Tell the document of its layers, when all forms are drawn."""
        document: Any = self.canvas._doc  # type: ignore[attr-defined]  # noqa: SLF001 - no other way in
        layers = {
            title: document.Reference(
                PDFDictionary({"Type": PDFName("OCG"), "Name": PDFString(title)})
            )
            for title in dict.fromkeys(self.titles.values())
            if title != ALWAYS
        }
        for form, title in self.titles.items():
            if title != ALWAYS:
                drawn = document.idToObject[document.getXObjectName(form)]
                drawn.Contents = PDFStream(PDFDictionary({"OC": layers[title]}), drawn.stream)
        self._share(document, layers)
        if layers:
            listed = PDFArray(list(layers.values()))
            shown = PDFDictionary({"Order": listed, "ON": listed})
            catalog = document.Catalog
            catalog.__NoDefault__ = [*catalog.__NoDefault__, "OCProperties"]
            catalog.OCProperties = PDFDictionary({"OCGs": listed, "D": shown})

    def _share(self, document: Any, layers: dict[str, Any]) -> None:
        """Let all pages have the forms and the grid's layer in common, told once."""
        names = map(document.getXObjectName, self.titles)
        grid = self.words.layers[GRID]
        shared = PDFResourceDictionary(
            XObject={name: PDFObjectReference(name) for name in names},
            Properties={GRID: layers[grid]} if grid in layers else {},
        )
        shared.basicFonts()
        reference = document.Reference(shared)
        for page in document.Pages.pages:
            page.Resources = reference
