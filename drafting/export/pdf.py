"""The pattern as a PDF that is printed at 100 % and taped together.

The whole sheet is drawn once, a form for each layer, and every page shows its part of it. On small
papers the first page carries the squares to measure, the cautions and a map of the pages, and the
cover follows it; on big ones these lie on the sheet itself. No metadata about persons, no dates.
"""

from __future__ import annotations

from dataclasses import replace
from io import BytesIO
from typing import TYPE_CHECKING, Any

from reportlab.pdfbase.pdfdoc import PDFDictionary, PDFInfo, PDFString
from reportlab.pdfgen.canvas import Canvas

from drafting import DRAFTING_VERSION
from drafting.drawing import PRINT_WORDS, WORDS, Group, Item, Paper, Role, Stroke, Words
from drafting.export.ink import FONT, POINT, Ink
from drafting.export.joints import Tile
from drafting.export.layers import Layers
from drafting.export.plan import MAX_PAGES, Plan, planned
from drafting.export.sheets import Content, WorkContent
from drafting.geometry import Transform, shift
from drafting.language import Language

if TYPE_CHECKING:
    from drafting.drawing import Output
    from drafting.language import Language
    from drafting.workroom import Work

NAME = "Tapeline"
RULERS = "rulers"
"""The form of the rulers that every page of a tiled sheet has at the same place."""


def write(work: Work, output: Output, max_pages: int = MAX_PAGES) -> bytes:
    """The pattern as a PDF.

    Args:
        work: What left the workroom.
        output: Paper, margin and overlap.
        max_pages: Greatest number of pages.

    Raises:
        OutputError: The paper cannot take it, there is no such page, or there are too many.
    """
    output = replace(output, view="print")
    return render(WorkContent.of(work, output), output, max_pages)


def render(content: Content, output: Output, max_pages: int = MAX_PAGES) -> bytes:
    """Any content as a PDF; layers of its sheet become layers that a reader can show and hide.

    Raises:
        OutputError: The paper cannot take it, there is no such page, or there are too many.
    """
    return _written(planned(content, output, max_pages), output)


def _written(plan: Plan, output: Output) -> bytes:
    words = WORDS[output.language]
    out = BytesIO()
    title = plan.composed.sheet.title
    canvas = undated(out, _size(plan.paper), title, output.language)
    layers = Layers(canvas, plan.composed.sheet, PRINT_WORDS[output.language])
    always = () if plan.front else tuple(i.transformed(_corner(plan)) for i in _map(plan))
    layers.draw(plan.joints.marks(), always)
    if plan.tiled:
        layers.grid(RULERS, tuple(plan.joints.rulers()))
    fronts = ((*plan.legend.group.items, *_map(plan)), *(n.group.items for n in plan.notes))
    for number in plan.wanted:
        if number <= plan.fronts:
            _front(canvas, plan, fronts[number - 1])
        else:
            page = words.page_of.format(page=number, pages=plan.pages)
            _page(canvas, plan, plan.joints.tiles[number - plan.fronts - 1], page, layers, words)
    layers.put()
    canvas.save()
    return out.getvalue()


def undated(
    out: BytesIO,
    size: tuple[float, float],
    title: str,
    language: Language = "en",
    made: type[Canvas] = Canvas,
) -> Canvas:
    """A canvas that is printed at its own size, with a title, and no date or person in it.

    Args:
        out: Where the bytes go.
        size: Breadth and height of the pages in points.
        title: For the document's metadata.
        language: What its texts are in, for readers that speak them aloud.
        made: The kind of canvas.
    """
    canvas = made(
        out,
        pagesize=size,
        invariant=1,
        pageCompression=1,
        lang=language,
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


def _corner(plan: Plan) -> Transform:
    """From the legend's frame to the sheet's, where it lies on the sheet."""
    move = plan.composed.moves[0]
    return shift(move.e, move.f)


def _front(canvas: Canvas, plan: Plan, items: tuple[Item, ...]) -> None:
    """A page before the drawing; its frame has the origin at the upper left."""
    canvas.setPageSize(_size(plan.paper))
    canvas.saveState()
    canvas.translate(plan.margin * POINT, (plan.paper.height / 10 - plan.margin) * POINT)
    Ink(canvas).items(items)
    canvas.restoreState()
    canvas.showPage()


def _map(plan: Plan) -> tuple[Item, ...]:
    """The map of the pages, under the text of the legend's right column, in the legend's frame."""
    legend = plan.legend
    if len(plan.joints.tiles) == 1 and not plan.front:
        return ()
    lower = plan.paper.height / 10 - 2 * plan.margin if plan.front else legend.height
    box = (legend.column, -lower, legend.width, -legend.text_end - 0.2)
    return tuple(plan.joints.map(_outlines(plan.composed.sheet.groups), box).items())


def _outlines(groups: tuple[Group, ...]) -> tuple[Stroke, ...]:
    """What the map shows of the pieces: cutting lines, or stitching lines where there are none."""
    strokes = [item for group in groups for item in group.items if isinstance(item, Stroke)]
    cut = tuple(stroke for stroke in strokes if stroke.role is Role.CUT)
    return cut or tuple(s for s in strokes if s.role in {Role.STITCH, Role.FOLD})


def _page(canvas: Canvas, plan: Plan, tile: Tile, page: str, layers: Layers, words: Words) -> None:
    joints = plan.joints
    tiling, corner = joints.tiling, joints.corner(tile)
    x, y = corner.x * POINT, corner.y * POINT
    canvas.setPageSize(_size(plan.page))
    canvas.saveState()
    canvas.translate(plan.margin * POINT, plan.margin * POINT)
    window = canvas.beginPath()
    window.rect(0, 0, tiling.width * POINT, tiling.height * POINT)
    canvas.clipPath(window, stroke=0, fill=0)
    canvas.translate(-x, -y)
    if plan.tiled:
        layers.on_page(tuple(joints.names(tile, page, words)))
        canvas.translate(x, y)
        canvas.doForm(RULERS)
        canvas.translate(-x, -y)
    for form in layers.forms:
        canvas.doForm(form)
    canvas.restoreState()
    canvas.showPage()
