"""Every sentence that a sheet may carry, one table for each language."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from typing import Literal

from drafting.language import InEveryLanguage, Language, decimal, inch, say

Unit = Literal["cm", "in"]

SHORT = 25.4
"""Lengths under 10 in are told to the sixteenth of an inch; nobody reads a girth so finely."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Words:
    """The sheet's words in one language; braces are filled with the values named in them."""

    piece_of: str
    cut: str
    cut_mirrored: str
    on_fold: str
    place_on_fold: str
    grain: str
    lengthen: str
    allowances: str
    allowances_all: str
    allowances_none: str
    allowance_zero: str
    toile: str
    not_for_cutting: str
    line: str
    square_mm: str
    square_in: str
    measure_first: str
    map: str
    joining: str
    page_of: str
    joins: str
    pages: str
    no_shape: str
    cautions: tuple[str, ...]
    cloths: tuple[tuple[str, str], ...]
    numerals: tuple[str, ...]
    description: str
    language: Language = "en"

    def name(self, name: str) -> str:
        """A stable name of an edge or a level as words."""
        return say(plain(name), self.language)

    def cloth(self, name: str) -> str:
        """Word for a cloth; its own name where there is none."""
        return dict(self.cloths).get(name, plain(name))

    def level(self, name: str) -> str:
        """Word for a level line."""
        english = f"{plain(name)} line"
        said = say(english, self.language)
        return said if said != english else self.line.format(name=self.name(name))


ENGLISH = Words(
    piece_of="Piece {number} of {total}",
    cut="Cut {quantity} {cloth}",
    cut_mirrored="Cut {quantity} {cloth}, {half} mirrored (left + right)",
    on_fold="Cut on the fold",
    place_on_fold="place on the fold",
    grain="grain",
    lengthen="lengthen or shorten here",
    allowances="Allowances included: {values}",
    allowances_all="Allowance included: {value} on every edge",
    allowances_none="No allowances: add them before cutting",
    allowance_zero="{edge} none",
    toile="Toile",
    not_for_cutting="NOT FOR CUTTING",
    line="{name} line",
    square_mm="100 mm",
    square_in="4 in",
    measure_first="Measure before cutting",
    map="How the pages join",
    joining=(
        "Trim the left and upper edge of each page along the dashed lines and lay it on its "
        "neighbours so that the diamonds become whole; or trim both pages and butt them. Rows are "
        "lettered downward, columns numbered across."
    ),
    page_of="{page} / {pages}",
    joins="joins {tile}",
    pages="{count} pages of {paper} beside this one",
    no_shape="A letter that this document's font does not have is drawn as \ufffd.",
    cautions=(
        "Print at 100 % (actual size), never fitted to the page.",
        (
            "Measure both squares, across and down, before cutting: if one is off by more than "
            "0.5 mm, print again."
        ),
        "Sew a toile first.",
        "This pattern tells a person's body measures: keep it as you would keep a letter.",
    ),
    cloths=(
        ("main", "main fabric"),
        ("lining", "lining"),
        ("pocketing", "pocketing"),
        ("fusible", "fusible interfacing"),
    ),
    numerals=("none", "one", "two", "three", "four", "five", "six"),
    description="Sewing pattern true to scale, {count} pieces: {pieces}. Lengths in mm.",
)

WORDS = InEveryLanguage(ENGLISH)
"""The sheet's words."""


def plain(name: str) -> str:
    """A stable name as words."""
    return name.replace("_", " ")


def numeral(words: Words, count: int) -> str:
    """A small number as a word."""
    return words.numerals[count] if count < len(words.numerals) else str(count)


@lru_cache(maxsize=4096)
def amount(cm: float, unit: Unit, language: Language = "en") -> str:
    """A length as a tape shows it: to 0.1 cm, or to a fraction of an inch, never a decimal.

    Girths and lengths go to the eighth, what is shorter than `SHORT` to the sixteenth.
    """
    if unit == "cm":
        return f"{decimal(cm, language)} cm"
    parts = 16 if abs(cm) < SHORT else 8
    whole, part = divmod(round(abs(cm) / 2.54 * parts), parts)
    sign = "-" if cm < 0 and (whole or part) else ""
    told = (str(whole) if whole or not part else "", str(Fraction(part, parts)) if part else "")
    return f"{sign}{' '.join(t for t in told if t)} {inch(language)}"
