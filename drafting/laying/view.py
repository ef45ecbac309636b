"""How a lay plan is drawn: words, unit, sizes of texts in cm of paper."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.drawing import Language, Unit, amount
from drafting.laying.cloth import Laying
from drafting.laying.words import LayWords

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
    """

    laying: Laying
    words: LayWords
    unit: Unit
    language: Language
    orders: int

    def told(self, cm: float) -> str:
        """A length in words."""
        return amount(cm, self.unit)
