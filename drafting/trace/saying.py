"""How places and lengths are put into words: by names or a drawing's labels, in a language."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Protocol


class Named(Protocol):
    """Anything that carries the trade's word for itself: a place, a line."""

    @property
    def name(self) -> str:
        """The trade's word; empty where it was never recorded."""


def as_it_is(text: str) -> str:
    """The text itself: English needs no translating."""
    return text


@dataclass(frozen=True, slots=True)
class Saying:
    """What the words of a step call its places and lengths.

    Attributes:
        place: Says a place or a line: its name, or its label on the drawing.
        length: Says a length in cm: its formula, or its number as a tape shows it.
        word: Says the words between them, with their gaps, in the language that is spoken.
    """

    place: Callable[[Named], str]
    length: Callable[[float], str]
    word: Callable[[str], str] = as_it_is

    def fill(self, text: str, *told: str) -> str:
        """A text with gaps in the language, its gaps filled."""
        return self.word(text).format(*told)
