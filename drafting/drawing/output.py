"""What form the answer takes: format, paper, margins, language. Paper is always in mm."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal, get_args

from annotated_types import Interval

from drafting.drawing.words import Language, Unit

FormatName = Literal["json", "svg", "pdf"]
View = Literal["print"]
PaperName = Literal["a4", "a3", "a2", "a1", "a0", "letter", "legal", "tabloid"]
PAPER_NAMES: tuple[PaperName, ...] = get_args(PaperName)


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
}
"""Papers by name. Sources: ISO 216 (A sizes), ANSI/ASME Y14.1 (Letter is A, Tabloid is B);
Legal 8 1/2 by 14 in, common practice, no source."""

ISO_PAPERS: tuple[PaperName, ...] = ("a4", "a3", "a2", "a1", "a0")
"""What is at hand where A4 is; elsewhere the others are."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Output:
    """The form of the answer. Lengths of paper are in mm, whatever the order's unit.

    Attributes:
        format: json, svg or pdf; None leaves the choice to the caller.
        view: print is true to scale.
        paper: Paper of a PDF's pages.
        margin: Free edge of each page in mm; 10 suits nearly all printers.
        overlap: How much of the drawing neighbouring pages both show, in mm.
        language: Language of titles, labels and messages.
        unit: Unit of the lengths in texts.
    """

    format: FormatName | None = None
    view: View = "print"
    paper: PaperName = "a4"
    margin: Annotated[float, Interval(ge=0, le=100)] = 10.0
    overlap: Annotated[float, Interval(ge=0, le=100)] = 10.0
    language: Language = "en"
    unit: Unit = "cm"
