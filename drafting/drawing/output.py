"""What form the answer takes: format, paper, margins, language. Paper is always in mm."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal

from annotated_types import Interval, MaxLen

from drafting.drawing.words import Unit
from drafting.language import Language

FormatName = Literal["json", "svg", "pdf", "png", "dxf", "zip"]
View = Literal["print", "screen"]
Lines = Literal["both", "net", "cut"]
ScaleName = Literal["1:1", "1:2", "1:4", "1:5"]
PaperName = Literal[
    "a4", "a3", "a2", "a1", "a0", "letter", "legal", "tabloid", "a4-letter", "roll", "whole"
]


@dataclass(frozen=True, slots=True)
class Paper:
    """A sheet of paper, upright; width and height in mm."""

    width: float
    height: float


PAPERS: dict[PaperName, Paper] = {
    "a4": Paper(210, 297),
    "a3": Paper(297, 420),
    "a2": Paper(420, 594),
    "a1": Paper(594, 841),
    "a0": Paper(841, 1189),
    "letter": Paper(215.9, 279.4),
    "legal": Paper(215.9, 355.6),
    "tabloid": Paper(279.4, 431.8),
    "a4-letter": Paper(210, 275),
}
"""Sheets by name. Sources: ISO 216 (A sizes), ANSI/ASME Y14.1 (Letter is A, Tabloid is B);
Legal 8 1/2 by 14 in, common practice, no source. "a4-letter" is a page that fits on both: as broad
as A4, and a little lower than Letter, so that printers with a broad lower margin show all of it."""

PAPER_NAMES: tuple[PaperName, ...] = tuple(PAPERS)
"""The papers that are sheets of a fixed size."""

ISO_PAPERS: tuple[PaperName, ...] = ("a4", "a3", "a2", "a1", "a0")
"""What is at hand where A4 is; elsewhere the others are."""

SCALES: dict[ScaleName, int] = {"1:1": 1, "1:2": 2, "1:4": 4, "1:5": 5}
"""How many times smaller than life each scale draws."""

Percent = Annotated[float, Interval(ge=0, le=20)]
Names = Annotated[tuple[Annotated[str, MaxLen(60)], ...], MaxLen(200)]


@dataclass(frozen=True, slots=True, kw_only=True)
class Shrinkage:
    """By how many percent the cloth shrinks in its first wash; the pattern is drawn larger for it.

    Attributes:
        lengthwise: Along the grain.
        crosswise: Across it.
    """

    lengthwise: Percent = 0.0
    crosswise: Percent = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Output:
    """The form of the answer. Lengths of paper are in mm, whatever the order's unit.

    Attributes:
        format: json, svg, pdf, png, dxf, or a zip of them all; None leaves the choice to the
            caller.
        view: print is true to scale; screen is for web pages: it takes the size and the colours
            that the page gives it. A PDF is always for print.
        paper: Paper of a PDF's pages.
        roll_width: Breadth of the roll in mm where the paper is "roll": 610, 914 and 1067 are
            usual, 24, 36 and 42 in.
        margin: Free edge of each page in mm; 10 suits nearly all printers. One whole page has none.
        overlap: How much of the drawing neighbouring pages both show, in mm.
        scale: Smaller than life for class work; a square of that scale is drawn beside.
        pieces: Names of the pieces to draw; none named draws all of them.
        pages: Pages of a PDF to give, by the name of their tile ("B3") or by number ("7"); none
            named gives all of them.
        cover: Whether a PDF tells the cutting list, measures and order of sewing.
        lines: Draw the stitching lines alone (net), the cutting lines alone (cut), or both.
        allowances: Whether allowances are added; without them the piece is cut on the stitching
            line.
        pairs: Draw the left and the right of mirrored pieces, not one for both.
        unfold: Draw pieces that are cut on the fold whole.
        shrinkage: What the cloth shrinks by when it is washed: the pieces are drawn larger; seams,
            checks and finished measurements are told as they are after the wash.
        pixels: Longer side of a PNG.
        curve_tolerance: How far in mm the polylines of a DXF may stray from its curves.
        prefix: What the ids in an SVG start with; by default "pattern" for print and, on screens,
            a name of the pattern's own. Letters, digits, - and _, a letter first.
        language: Language of titles, labels and messages.
        unit: Unit of the lengths in texts.
    """

    format: FormatName | None = None
    view: View = "print"
    paper: PaperName = "a4"
    roll_width: Annotated[float, Interval(ge=300, le=2000)] = 914.0
    margin: Annotated[float, Interval(ge=0, le=100)] = 10.0
    overlap: Annotated[float, Interval(ge=0, le=100)] = 10.0
    scale: ScaleName = "1:1"
    pieces: Names = ()
    pages: Names = ()
    cover: bool = True
    lines: Lines = "both"
    allowances: bool = True
    pairs: bool = False
    unfold: bool = False
    shrinkage: Shrinkage = Shrinkage()
    pixels: Annotated[int, Interval(ge=64, le=2400)] = 600
    curve_tolerance: Annotated[float, Interval(ge=0.01, le=2)] = 0.1
    prefix: Annotated[str, MaxLen(40)] = ""
    language: Language = "en"
    unit: Unit = "cm"


def sheet_of(output: Output) -> Paper:
    """The sheet for a small document: the paper asked for; A4 where that is none of fixed size."""
    return PAPERS.get(output.paper, PAPERS["a4"])
