"""The pattern as a PDF that is printed at 100 % and taped together.

The whole sheet is drawn once, as a form, and every page shows its part of it. On small papers the
first page carries the squares to measure, the cautions and a map of the pages; on big ones these
lie on the sheet itself, in its upper left corner. No metadata about persons, no dates.
"""

from __future__ import annotations

from dataclasses import dataclass
from io import BytesIO
from typing import TYPE_CHECKING

from reportlab.pdfgen.canvas import Canvas

from drafting import DRAFTING_VERSION
from drafting.drawing import (
    PAPERS,
    WORDS,
    Composed,
    Group,
    Item,
    Legend,
    Paper,
    PaperName,
    Role,
    Stroke,
    Tiling,
    Words,
    compose,
    tiles_of,
)
from drafting.drawing.legend import LEAST_WIDTH
from drafting.errors import OutputError
from drafting.export.ink import POINT, Ink
from drafting.export.joints import Joints
from drafting.export.sheets import labelled_pattern, work_legend
from drafting.geometry import shift

if TYPE_CHECKING:
    from drafting.drawing import Output
    from drafting.pattern import FinishedPattern
    from drafting.workroom import Work

MAX_PAGES = 200
"""More pages than this nobody tapes."""
LEAST_TILE = 5.0
"""A page must show at least 5 cm of the drawing that its neighbours do not."""
BIG = (38.0, 50.0)
"""From this breadth and height on, in cm, a page has room for the legend beside the pieces."""
MAP = 7.0
"""Height kept for the map of the pages, cm."""
SHEET = "sheet"
NAME = "Tapeline"


@dataclass(frozen=True, slots=True)
class _Plan:
    """What goes on which page."""

    paper: Paper
    margin: float
    legend: Legend
    composed: Composed
    joints: Joints
    cover: bool

    @property
    def pages(self) -> int:
        return len(self.joints.tiles) + self.cover


def write(work: Work, output: Output, max_pages: int = MAX_PAGES) -> bytes:
    """The pattern as a PDF.

    Args:
        work: What left the workroom.
        output: Paper, margin and overlap.
        max_pages: Greatest number of pages.

    Raises:
        OutputError: Margin or overlap leave no room, or there would be too many pages.
    """
    pattern = labelled_pattern(work, output)
    plan = _plan(work, pattern, output, output.paper)
    if plan.pages > max_pages:
        raise _too_many(work, pattern, output, plan.pages, max_pages)
    return _render(work, plan, WORDS[output.language])


def _plan(work: Work, pattern: FinishedPattern, output: Output, name: PaperName) -> _Plan:
    paper, words = PAPERS[name], WORDS[output.language]
    tiling = _tiling(paper, output)
    cover = tiling.width < BIG[0] or tiling.height < BIG[1]
    legend = work_legend(
        work,
        output,
        width=tiling.width if cover else 21.0,
        closing=(words.joining,),
        keep_free=MAP,
    )
    if tiling.width < LEAST_WIDTH or legend.height > tiling.height:
        raise _no_room(paper, output, "margin")
    composed = compose(pattern, words, legend=None if cover else legend, tiling=tiling)
    height = composed.sheet.height
    joints = Joints(tiles_of(composed.areas, height, tiling), tiling, height)
    return _Plan(paper, output.margin / 10, legend, composed, joints, cover)


def _tiling(paper: Paper, output: Output) -> Tiling:
    """The pages as tiles, in cm. Raises OutputError where margin and overlap leave no room."""
    wide, high = ((side - 2 * output.margin) / 10 for side in (paper.width, paper.height))
    tiling = Tiling(wide, high, output.overlap / 10)
    if min(wide, high) < LEAST_TILE:
        raise _no_room(paper, output, "margin")
    if min(tiling.across, tiling.down) < LEAST_TILE:
        raise _no_room(paper, output, "overlap")
    return tiling


def _no_room(paper: Paper, output: Output, at_fault: str) -> OutputError:
    return OutputError(
        f"The {at_fault} leaves too little of a page of {paper.width:g} by {paper.height:g} mm: "
        f"choose a smaller {at_fault} or a bigger paper.",
        where=f"output.{at_fault}",
        code="no_room_on_paper",
        received=getattr(output, at_fault),
    )


def _too_many(
    work: Work, pattern: FinishedPattern, output: Output, pages: int, max_pages: int
) -> OutputError:
    """The trouble of too many pages, with the smallest paper that would do."""
    bigger = sorted(PAPERS, key=lambda name: PAPERS[name].width * PAPERS[name].height)
    fits = [
        name
        for name in bigger
        if PAPERS[name].width * PAPERS[name].height
        > PAPERS[output.paper].width * PAPERS[output.paper].height
    ]
    would_do = next((n for n in fits if _plan(work, pattern, output, n).pages <= max_pages), None)
    advice = f"paper {would_do} would do" if would_do else "no paper that is offered would do"
    return OutputError(
        f"The pattern would take {pages} pages of {output.paper}, at most {max_pages} are "
        f"printed; {advice}.",
        where="output.paper",
        code="too_many_pages",
        received=pages,
        allowed=max_pages,
    )


def _render(work: Work, plan: _Plan, words: Words) -> bytes:
    out = BytesIO()
    size = (plan.paper.width / 10 * POINT, plan.paper.height / 10 * POINT)
    canvas = Canvas(out, pagesize=size, invariant=1, pageCompression=1, lang="en")
    canvas.setTitle(plan.composed.sheet.title)
    canvas.setAuthor(NAME)
    canvas.setCreator(f"{NAME} {DRAFTING_VERSION}")
    canvas.setProducer(f"{NAME} {DRAFTING_VERSION}")
    canvas.setViewerPreference("PrintScaling", "None")
    _form(canvas, plan)
    if plan.cover:
        _cover(canvas, plan)
    for number, tile in enumerate(plan.joints.tiles, 1 + plan.cover):
        page = words.page_of.format(page=number, pages=plan.pages)
        _page(canvas, plan, tile, page, words)
    canvas.save()
    return out.getvalue()


def _form(canvas: Canvas, plan: _Plan) -> None:
    """Draw the whole sheet once."""
    sheet = plan.composed.sheet
    canvas.beginForm(SHEET, 0, 0, sheet.width * POINT, sheet.height * POINT)
    ink = Ink(canvas)
    ink.items(plan.joints.marks())
    for group in sheet.groups:
        ink.items(group.items)
    if not plan.cover and len(plan.joints.tiles) > 1:
        corner = plan.composed.moves[0]
        ink.items(tuple(i.transformed(shift(corner.e, corner.f)) for i in _map(plan)))
    canvas.endForm()


def _cover(canvas: Canvas, plan: _Plan) -> None:
    canvas.saveState()
    canvas.translate(plan.margin * POINT, (plan.paper.height / 10 - plan.margin) * POINT)
    Ink(canvas).items((*plan.legend.group.items, *_map(plan)))
    canvas.restoreState()
    canvas.showPage()


def _map(plan: _Plan) -> tuple[Item, ...]:
    """The map of the pages, under the text of the legend's right column, in the legend's frame."""
    legend = plan.legend
    lower = plan.joints.tiling.height if plan.cover else legend.height
    box = (legend.column, -lower, legend.width, -legend.text_end - 0.2)
    return tuple(plan.joints.map(_cut_lines(plan.composed.sheet.groups), box).items())


def _cut_lines(groups: tuple[Group, ...]) -> tuple[Stroke, ...]:
    return tuple(
        item
        for group in groups
        for item in group.items
        if isinstance(item, Stroke) and item.role is Role.CUT
    )


def _page(canvas: Canvas, plan: _Plan, tile: tuple[int, int], page: str, words: Words) -> None:
    tiling, corner = plan.joints.tiling, plan.joints.corner(tile)
    canvas.saveState()
    canvas.translate(plan.margin * POINT, plan.margin * POINT)
    window = canvas.beginPath()
    window.rect(0, 0, tiling.width * POINT, tiling.height * POINT)
    canvas.clipPath(window, stroke=0, fill=0)
    canvas.translate(-corner.x * POINT, -corner.y * POINT)
    Ink(canvas).items(tuple(plan.joints.names(tile, page, words)))
    canvas.doForm(SHEET)
    canvas.restoreState()
    canvas.showPage()
