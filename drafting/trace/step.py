"""One step of the construction, as it was recorded."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from drafting.trace.length import Length, number
from drafting.trace.place import Place
from drafting.trace.stroke import Stroke

StepKind = Literal["point", "length", "line", "decision", "solved", "trued"]


@dataclass(frozen=True, slots=True)
class Step:
    """What was drawn or decided, and why.

    Attributes:
        kind: What sort of step it is.
        chapter: The heading that it stands under.
        name: The trade's word for what it gives.
        value: The place, length or stroke; the answer of a decision; the value of a solution;
            for a trued step the list of (what moved, how far in cm).
        why: One sentence.
        how: For decisions the question, for solutions what was brought to what.
        source: Where the rule comes from; empty where the chapter's own source holds.
    """

    kind: StepKind
    chapter: str
    name: str
    value: Place | Length | Stroke | bool | float | tuple[tuple[str, float], ...]
    why: str
    how: str | Place | Length = ""
    source: str = ""

    @property
    def formula(self) -> str:
        """How it was found, in the trade's words."""
        if isinstance(self.how, Place):
            return _place_words(self.how)
        if isinstance(self.how, Length):
            return self.how.formula
        return self.value.words() if isinstance(self.value, Stroke) else self.how


def _place_words(place: Place) -> str:
    moves = ", ".join(m.words() for m in place.moves)
    return f"from the {place.base.name}: {moves}" if place.base else moves


def moved_words(moves: tuple[tuple[str, float], ...]) -> str:
    """What a trueing step moved and how far: "back fork 0.12 cm, side at the waist 0.3 cm"."""
    return ", ".join(f"{what} {number(far)} cm" for what, far in moves) or "nothing moved"
