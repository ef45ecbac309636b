"""What form a draft sheet takes: paper, scale, language, and whether its numbers are left out."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal

from annotated_types import MaxLen

from drafting.drawing import Language, PaperName, Unit


@dataclass(frozen=True, slots=True, kw_only=True)
class DraftForm:
    """The form of a draft sheet.

    Attributes:
        paper: Paper of the class sheet: A4, Letter, or another sheet of a fixed size; A4 in place
            of rolls.
        scale: Figures of the class sheet are drawn at 1 to this; a larger one is taken where the
            draft is too tall for the paper. None takes the largest figures that fit: 1:4 or 1:5.
        language: Language of the sentences.
        unit: Unit of the lengths in texts.
        blank: Whether the numbers of the body are left out, with the solutions on a last page.
        date: What stands after "Date"; nothing is filled in where it is empty.
    """

    paper: PaperName = "a4"
    scale: Literal[4, 5] | None = None
    language: Language = "en"
    unit: Unit = "cm"
    blank: bool = False
    date: Annotated[str, MaxLen(40)] = ""
