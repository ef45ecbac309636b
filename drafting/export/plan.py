"""What goes on which page: paper upright or sideways, tiles in use, the legend's place."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from drafting.drawing import (
    ISO_PAPERS,
    PAPER_NAMES,
    PAPERS,
    WORDS,
    Composed,
    Legend,
    Note,
    Output,
    Paper,
    PaperName,
    Roll,
    Tiling,
    tiles_of,
)
from drafting.drawing.legend import LEAST_WIDTH
from drafting.errors import OutputError
from drafting.export.joints import Joints
from drafting.export.joints import name as tile_name

if TYPE_CHECKING:
    from drafting.export.sheets import Content

LEAST_TILE = 5.0
"""A page must show at least 5 cm of the drawing that its neighbours do not."""
BIG = 38.0
"""From this breadth and height on, in cm, a page has room for the legend beside the pieces."""
BIG_LEGEND = 21.0
"""Breadth of the legend there, cm."""
BIG_COVER = (19.0, 27.7)
"""Breadth and height of the cover there, cm."""
MAP = 7.0
"""Height kept for the map of the pages, cm."""
LONGEST = 508.0
"""Greatest side of a page in cm: 14400 points. From memory: ISO 32000-1, Annex C."""
MM = 10.0
MAX_PAGES = 200
"""More pages than this nobody tapes."""


@dataclass(frozen=True, slots=True)
class Plan:
    """The pages of a document.

    Attributes:
        paper: The paper upright; the pages before the drawing.
        page: The pages of the drawing: the same, or turned sideways where that takes fewer.
        margin: Free edge in cm.
        legend: Squares, cautions, and room for the map.
        composed: The whole sheet.
        joints: The pages in use and how they join.
        notes: The cover, where it has pages of its own; they come after the legend.
        front: Whether the legend has a page of its own, the first; else it lies on the sheet.
        wanted: Numbers of the pages to give, from 1, in their order.
    """

    paper: Paper
    page: Paper
    margin: float
    legend: Legend
    composed: Composed
    joints: Joints
    notes: tuple[Note, ...] = ()
    front: bool = False
    wanted: tuple[int, ...] = ()

    @property
    def tiled(self) -> bool:
        """Whether pages are joined or at least have a legend apart: they tell their names then."""
        return self.front or len(self.joints.tiles) > 1

    @property
    def fronts(self) -> int:
        """How many pages come before the drawing."""
        return len(self.notes) + self.front

    @property
    def pages(self) -> int:
        """How many pages there are, given or not."""
        return len(self.joints.tiles) + self.fronts

    @property
    def names(self) -> dict[str, int]:
        """Number of each page by what it may be asked for with: its number or its tile's name."""
        numbers = {str(n): n for n in range(1, self.pages + 1)}
        tiles = {tile_name(t): n for n, t in enumerate(self.joints.tiles, 1 + self.fronts)}
        return numbers | tiles


def planned(content: Content, output: Output, max_pages: int) -> Plan:
    """The plan with the fewest pages.

    Raises:
        OutputError: Margin or overlap leave no room, a piece is broader than the roll, there is
            no page of a name asked for, or there would be too many pages.
    """
    plan = _least(content, output)
    plan = replace(plan, wanted=_wanted(plan, output))
    if len(plan.wanted) > max_pages:
        raise _too_many(content, output, len(plan.wanted), max_pages)
    return plan


def _wanted(plan: Plan, output: Output) -> tuple[int, ...]:
    names = plan.names
    for page in output.pages:
        if page.upper() not in names:
            raise OutputError(
                f"There is no page {page!r}: the document has {plan.pages} pages.",
                where="output.pages",
                code="unknown_page",
                received=page,
                allowed=list(names),
            )
    asked = {names[page.upper()] for page in output.pages}
    return tuple(sorted(asked or range(1, plan.pages + 1)))


def _least(content: Content, output: Output) -> Plan:
    match output.paper:
        case "roll":
            return _on_roll(content, output)
        case "whole":
            return _whole(content, output)
    return _on_sheets(content, output, PAPERS[output.paper])


def _on_sheets(content: Content, output: Output, paper: Paper) -> Plan:
    """On pages upright, or sideways where that takes fewer."""
    sideways, words = Paper(paper.height, paper.width), WORDS[output.language]
    ways = (upright, _) = _tiling(paper, output), _tiling(sideways, output)
    front = upright.width < BIG
    legend = content.legend(
        width=upright.width if front else BIG_LEGEND,
        closing=(words.joining,),
        keep_free=MAP,
    )
    if upright.width < LEAST_WIDTH or legend.height > upright.height:
        raise _no_room(paper, output, "margin")
    notes = content.cover(*((upright.width, upright.height) if front else BIG_COVER))
    composed = content.lay(None, ways) if front else content.lay(legend, ways, notes)
    tiling = composed.laid.tiling or upright
    joints = Joints(composed.laid.tiles, tiling, composed.sheet.height)
    page, margin = (paper if tiling == upright else sideways), output.margin / MM
    return Plan(paper, page, margin, legend, composed, joints, notes if front else (), front)


def _on_roll(content: Content, output: Output) -> Plan:
    """A page as broad as the roll and as long as the pattern; more of them past what one can be."""
    edges = 2 * output.margin / MM
    roll = Roll(output.roll_width / MM - edges, edges)
    if roll.width < BIG_LEGEND + 1:
        raise _no_room(Paper(output.roll_width, LONGEST * MM), output, "margin")
    legend = content.legend(width=BIG_LEGEND)
    composed = content.lay(legend, roll, content.cover(*BIG_COVER))
    height, margin = composed.sheet.height, output.margin / MM
    long = min(height, LONGEST - 2 * margin)
    tiling = Tiling(roll.width, long, output.overlap / MM)
    joints = Joints(tiles_of(composed.areas, height, tiling), tiling, height)
    page = Paper(output.roll_width, (long + 2 * margin) * MM)
    return Plan(page, page, margin, legend, composed, joints)


def _whole(content: Content, output: Output) -> Plan:
    """One page of exactly the pattern's size, without margins, as a projector wants it."""
    legend = content.legend(width=BIG_LEGEND)
    composed = content.lay(legend, None)
    wide, high = composed.sheet.width, composed.sheet.height
    if max(wide, high) > LONGEST:
        raise OutputError(
            f"The pattern is {wide:.0f} by {high:.0f} cm, and a page can be at most "
            f"{LONGEST:.0f} cm: draw fewer pieces, or choose paper roll.",
            where="output.paper",
            code="page_too_big",
            received=output.paper,
        )
    tiling = Tiling(wide, high, 0.0)
    page = Paper(wide * MM, high * MM)
    return Plan(page, page, 0.0, legend, composed, Joints(((0, 0),), tiling, high))


def _tiling(page: Paper, output: Output) -> Tiling:
    """The pages as tiles, in cm. Raises OutputError where margin and overlap leave no room."""
    wide, high = ((side - 2 * output.margin) / MM for side in (page.width, page.height))
    tiling = Tiling(wide, high, output.overlap / MM)
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
    fits = (
        name
        for name in _bigger(output.paper)
        if _least(content, replace(output, paper=name)).pages <= max_pages
    )
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


def _bigger(paper: PaperName) -> Iterator[PaperName]:
    """Sheets bigger than this one, of its kind first, and at last the roll."""
    if paper not in PAPER_NAMES:
        return

    def area(name: PaperName) -> float:
        return PAPERS[name].width * PAPERS[name].height

    def order(name: PaperName) -> tuple[bool, float]:
        return (name in ISO_PAPERS) != (paper in ISO_PAPERS), area(name)

    yield from sorted((n for n in PAPER_NAMES if area(n) > area(paper)), key=order)
    yield "roll"
