"""How places and lengths are put into words: by their names, or by a drawing's labels."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Protocol


class Named(Protocol):
    """Anything that carries the trade's word for itself: a place, a line."""

    @property
    def name(self) -> str:
        """The trade's word; empty where it was never recorded."""


@dataclass(frozen=True, slots=True)
class Saying:
    """What the words of a step call its places and lengths.

    Attributes:
        place: Says a place or a line: its name, or its label on the drawing.
        length: Says a length in cm: its formula, or its number as a tape shows it.
    """

    place: Callable[[Named], str]
    length: Callable[[float], str]
