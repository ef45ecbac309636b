"""How a lay plan is drawn: words, unit, sizes of texts in cm of paper."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.drawing import WORDS, Language, Unit, amount
from drafting.laying.cloth import Laying
from drafting.laying.words import LayWords
from drafting.pattern import Finding

TITLE, BODY, SMALL = 0.42, 0.24, 0.2
"""Heights of capitals in cm of paper."""


@dataclass(frozen=True, slots=True)
class View:
    """How a plan is drawn.

    Attributes:
        laying: How it was searched.
        words: Words of the plan.
        unit: Unit of the lengths in texts.
        language: The sheet's language.
        orders: How many orders there are.
        findings: Remarks on whole orders, told beside each cloth.
        size: How much bigger the words beside the cloth are than on a page held in the hand.
    """

    laying: Laying
    words: LayWords
    unit: Unit
    language: Language
    orders: int
    findings: tuple[Finding, ...] = ()
    size: float = 1.0

    def title(self, kind: str) -> str:
        """The title of a cloth's plan."""
        return self.words.title.format(cloth=WORDS[self.language].cloth(kind))

    def told(self, cm: float) -> str:
        """A length in words."""
        return amount(cm, self.unit, self.language)
