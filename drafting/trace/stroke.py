"""A pencil line that knows how it was drawn."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.geometry import Path
from drafting.trace.length import Length, number
from drafting.trace.place import Place

STROKES = {
    "straight": "Join {0} with a straight line.",
    "bulged": "Join {0}, the middle {1} to the {2} of the straight line.",
    "hook": "Join {0} with a curve that leaves along {1} and touches the point {2}.",
    "curve": "Join {0} with a smooth curve: {1}.",
}
"""The ways to draw a line, each with the words for it."""


@dataclass(frozen=True, slots=True)
class Stroke:
    """A drawn line: its path in cm, the way it was drawn, and the places and amounts it used."""

    path: Path
    how: str
    through: tuple[Place, ...]
    operands: tuple[Place | float | str, ...] = ()
    name: str = ""

    def words(self) -> str:
        """The sentence that tells how to draw it."""
        ends = " and ".join(p.name or "the point before" for p in self.through)
        return STROKES[self.how].format(ends, *(_text(o) for o in self.operands))


def _text(value: Place | float | str) -> str:
    if isinstance(value, Place):
        return value.name
    if isinstance(value, Length):
        return value.formula
    return value if isinstance(value, str) else f"{number(value)} cm"
