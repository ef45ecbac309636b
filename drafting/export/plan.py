"""What goes on which page: paper upright or sideways, tiles in use, the legend's place."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from drafting.drawing import (
    ISO_PAPERS,
    PAPERS,
    WORDS,
    Composed,
    Legend,
    Output,
    Paper,
    PaperName,
    Tiling,
    tiles_of,
)
from drafting.drawing.legend import LEAST_WIDTH
from drafting.errors import OutputError
from drafting.export.joints import Joints

if TYPE_CHECKING:
    from drafting.export.sheets import Content

LEAST_TILE = 5.0
"""A page must show at least 5 cm of the drawing that its neighbours do not."""
BIG = 38.0
"""From this breadth and height on, in cm, a page has room for the legend beside the pieces."""
BIG_LEGEND = 21.0
"""Breadth of the legend there, cm."""
MAP = 7.0
"""Height kept for the map of the pages, cm."""


@dataclass(frozen=True, slots=True)
class Plan:
    """The pages of a document.

    Attributes:
        paper: The paper upright; the cover's page.
        page: The pages of the drawing: the same, or turned sideways where that takes fewer.
        margin: Free edge in cm.
        legend: Squares, cautions, and room for the map.
        composed: The whole sheet.
        joints: The pages in use and how they join.
        cover: Whether the legend has a page of its own, the first; else it lies on the sheet.
    """

    paper: Paper
    page: Paper
    margin: float
    legend: Legend
    composed: Composed
    joints: Joints
    cover: bool

    @property
    def pages(self) -> int:
        """How many pages, the cover among them."""
        return len(self.joints.tiles) + self.cover


def planned(content: Content, output: Output, max_pages: int) -> Plan:
    """The plan with the fewest pages.

    Raises:
        OutputError: Margin or overlap leave no room, or there would be too many pages.
    """
    plan = _least(content, output, output.paper)
    if plan.pages > max_pages:
        raise _too_many(content, output, plan.pages, max_pages)
    return plan


def _least(content: Content, output: Output, name: PaperName) -> Plan:
    paper = PAPERS[name]
    sideways = Paper(paper.height, paper.width)
    plans = [_plan(content, output, paper, page) for page in (paper, sideways)]
    return min(plans, key=lambda plan: plan.pages)


def _plan(content: Content, output: Output, paper: Paper, page: Paper) -> Plan:
    upright, tiling, words = _tiling(paper, output), _tiling(page, output), WORDS[output.language]
    cover = min(tiling.width, tiling.height) < BIG
    legend = content.legend(
        width=upright.width if cover else BIG_LEGEND,
        closing=(words.joining,),
        keep_free=MAP,
    )
    if upright.width < LEAST_WIDTH or legend.height > upright.height:
        raise _no_room(paper, output, "margin")
    composed = content.lay(None if cover else legend, tiling)
    height = composed.sheet.height
    joints = Joints(tiles_of(composed.areas, height, tiling), tiling, height)
    return Plan(paper, page, output.margin / 10, legend, composed, joints, cover)


def _tiling(page: Paper, output: Output) -> Tiling:
    """The pages as tiles, in cm. Raises OutputError where margin and overlap leave no room."""
    wide, high = ((side - 2 * output.margin) / 10 for side in (page.width, page.height))
    tiling = Tiling(wide, high, output.overlap / 10)
    if min(wide, high) < LEAST_TILE:
        raise _no_room(page, output, "margin")
    if min(tiling.across, tiling.down) < LEAST_TILE:
        raise _no_room(page, output, "overlap")
    return tiling


def _no_room(page: Paper, output: Output, at_fault: str) -> OutputError:
    return OutputError(
        f"The {at_fault} leaves too little of a page of {page.width:g} by {page.height:g} mm: "
        f"choose a smaller {at_fault} or a bigger paper.",
        where=f"output.{at_fault}",
        code="no_room_on_paper",
        received=getattr(output, at_fault),
    )


def _too_many(content: Content, output: Output, pages: int, max_pages: int) -> OutputError:
    """The trouble of too many pages, with the smallest paper that would do, of its kind first."""

    def area(name: PaperName) -> float:
        return PAPERS[name].width * PAPERS[name].height

    def order(name: PaperName) -> tuple[bool, float]:
        return (name in ISO_PAPERS) != (output.paper in ISO_PAPERS), area(name)

    bigger = sorted((n for n in PAPERS if area(n) > area(output.paper)), key=order)
    fits = (n for n in bigger if _least(content, output, n).pages <= max_pages)
    paper = next(fits, None)
    advice = f"paper {paper} would do" if paper else "no paper that is offered would do"
    return OutputError(
        f"The pattern would take {pages} pages of {output.paper}, at most {max_pages} are "
        f"printed; {advice}.",
        where="output.paper",
        code="too_many_pages",
        received=pages,
        allowed=max_pages,
    )
