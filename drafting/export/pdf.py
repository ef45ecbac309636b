"""The pattern as a PDF that is printed at 100 % and taped together.

The whole sheet is drawn once, as a form, and every page shows its part of it. On small papers the
first page carries the squares to measure, the cautions and a map of the pages; on big ones these
lie on the sheet itself, in its upper left corner. No metadata about persons, no dates.
"""

from __future__ import annotations

from io import BytesIO
from itertools import groupby
from typing import TYPE_CHECKING, Any

from reportlab.pdfbase.pdfdoc import PDFDictionary, PDFInfo, PDFString
from reportlab.pdfgen.canvas import Canvas

from drafting import DRAFTING_VERSION
from drafting.drawing import WORDS, Group, Item, Paper, Role, Sheet, Stroke, Words
from drafting.export.ink import FONT, POINT, Ink
from drafting.export.joints import Tile
from drafting.export.layers import put_on_layers
from drafting.export.plan import Plan, planned
from drafting.export.sheets import Content, WorkContent
from drafting.geometry import shift

if TYPE_CHECKING:
    from drafting.drawing import Output
    from drafting.workroom import Work

MAX_PAGES = 200
"""More pages than this nobody tapes."""
SHEET = "sheet"
NAME = "Tapeline"


def write(work: Work, output: Output, max_pages: int = MAX_PAGES) -> bytes:
    """The pattern as a PDF.

    Args:
        work: What left the workroom.
        output: Paper, margin and overlap.
        max_pages: Greatest number of pages.

    Raises:
        OutputError: Margin or overlap leave no room, or there would be too many pages.
    """
    return render(WorkContent.of(work, output), output, max_pages)


def render(content: Content, output: Output, max_pages: int = MAX_PAGES) -> bytes:
    """Any content as a PDF; layers of its sheet become layers that a reader can show and hide.

    Raises:
        OutputError: Margin or overlap leave no room, or there would be too many pages.
    """
    return _written(planned(content, output, max_pages), WORDS[output.language])


def _written(plan: Plan, words: Words) -> bytes:
    out = BytesIO()
    canvas = undated(out, _size(plan.paper), plan.composed.sheet.title)
    _form(canvas, plan)
    forms = (SHEET, *_layers(canvas, plan.composed.sheet))
    if plan.cover:
        _cover(canvas, plan)
    canvas.setPageSize(_size(plan.page))
    for number, tile in enumerate(plan.joints.tiles, 1 + plan.cover):
        page = words.page_of.format(page=number, pages=plan.pages)
        _page(canvas, plan, tile, page, words, forms)
    canvas.save()
    return out.getvalue()


def undated(out: BytesIO, size: tuple[float, float], title: str) -> Canvas:
    """A canvas that is printed at its own size, with a title, and no date or person in it.

    Args:
        out: Where the bytes go.
        size: Breadth and height of the pages in points.
        title: For the document's metadata.
    """
    canvas = Canvas(
        out,
        pagesize=size,
        invariant=1,
        pageCompression=1,
        lang="en",
        initialFontName=FONT,  # type: ignore[arg-type]  # the stubs say number
    )
    document: Any = canvas._doc  # type: ignore[attr-defined]  # noqa: SLF001 - no other way in
    document.info = _Undated(title)
    canvas.setViewerPreference("PrintScaling", "None")
    return canvas


class _Undated(PDFInfo):
    """Metadata that tells the title and who wrote the file, and no date."""

    def __init__(self, title: str) -> None:
        super().__init__()
        self.title = title

    def format(self, document: Any) -> Any:
        writer = f"{NAME} {DRAFTING_VERSION}"
        told = {"Title": self.title, "Creator": writer, "Producer": writer}
        return PDFDictionary({k: PDFString(v) for k, v in told.items()}).format(document)


def _size(page: Paper) -> tuple[float, float]:
    return page.width / 10 * POINT, page.height / 10 * POINT


def _form(canvas: Canvas, plan: Plan) -> None:
    """Draw the whole sheet once."""
    sheet = plan.composed.sheet
    canvas.beginForm(SHEET, 0, 0, sheet.width * POINT, sheet.height * POINT)
    ink = Ink(canvas)
    ink.items(plan.joints.marks())
    for group in sheet.groups:
        ink.items(() if group.layer else group.items)
    if not plan.cover and len(plan.joints.tiles) > 1:
        corner = plan.composed.moves[0]
        ink.items(tuple(i.transformed(shift(corner.e, corner.f)) for i in _map(plan)))
    canvas.endForm()


def _layers(canvas: Canvas, sheet: Sheet) -> tuple[str, ...]:
    """Draw each layer as a form of its own; gives their names."""
    layers = [(name, tuple(of)) for name, of in groupby(sheet.groups, lambda g: g.layer) if name]
    forms = tuple(f"layer-{number}" for number in range(len(layers)))
    for form, (_, groups) in zip(forms, layers, strict=True):
        canvas.beginForm(form, 0, 0, sheet.width * POINT, sheet.height * POINT)
        for group in groups:
            Ink(canvas).items(group.items)
        canvas.endForm()
    put_on_layers(canvas, dict(zip(forms, (name for name, _ in layers), strict=True)))
    return forms


def _cover(canvas: Canvas, plan: Plan) -> None:
    canvas.saveState()
    canvas.translate(plan.margin * POINT, (plan.paper.height / 10 - plan.margin) * POINT)
    Ink(canvas).items((*plan.legend.group.items, *_map(plan)))
    canvas.restoreState()
    canvas.showPage()


def _map(plan: Plan) -> tuple[Item, ...]:
    """The map of the pages, under the text of the legend's right column, in the legend's frame."""
    legend = plan.legend
    lower = plan.paper.height / 10 - 2 * plan.margin if plan.cover else legend.height
    box = (legend.column, -lower, legend.width, -legend.text_end - 0.2)
    return tuple(plan.joints.map(_cut_lines(plan.composed.sheet.groups), box).items())


def _cut_lines(groups: tuple[Group, ...]) -> tuple[Stroke, ...]:
    return tuple(
        item
        for group in groups
        for item in group.items
        if isinstance(item, Stroke) and item.role is Role.CUT
    )


def _page(
    canvas: Canvas, plan: Plan, tile: Tile, page: str, words: Words, forms: tuple[str, ...]
) -> None:
    tiling, corner = plan.joints.tiling, plan.joints.corner(tile)
    canvas.saveState()
    canvas.translate(plan.margin * POINT, plan.margin * POINT)
    window = canvas.beginPath()
    window.rect(0, 0, tiling.width * POINT, tiling.height * POINT)
    canvas.clipPath(window, stroke=0, fill=0)
    canvas.translate(-corner.x * POINT, -corner.y * POINT)
    Ink(canvas).items(tuple(plan.joints.names(tile, page, words)))
    for form in forms:
        canvas.doForm(form)
    canvas.restoreState()
    canvas.showPage()
