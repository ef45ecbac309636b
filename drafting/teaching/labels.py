"""What the points are called on the drawing: a letter for each chapter, a number in it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import groupby

from drafting.trace import Place, Step
from drafting.trace.saying import Named

LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"
"""Without I and O, which read as numbers."""


@dataclass(frozen=True, slots=True)
class Labels:
    """The labels of a draft's points.

    Attributes:
        by_name: Label by the point's name.
        places: The points by their labels, in drafting order.
    """

    by_name: Mapping[str, str]
    places: Mapping[str, Place]

    def __call__(self, named: Named) -> str:
        """The label of a point; the name of anything else."""
        return self.by_name.get(named.name, named.name)


def labels_of(steps: tuple[Step, ...]) -> Labels:
    """Hand out labels in the order of the pencil; each point gets one, no label comes twice."""
    pairs = tuple(_labelled(steps))
    return Labels({p.name: label for label, p in pairs}, dict(pairs))


def _labelled(steps: tuple[Step, ...]) -> Iterator[tuple[str, Place]]:
    chapters = groupby((s for s in steps if isinstance(s.value, Place)), lambda s: s.chapter)
    for letter, (_, of) in zip(_letters(), chapters, strict=False):
        for number, step in enumerate(of, 1):
            if isinstance(step.value, Place):
                yield f"{letter}{number}", step.value


def _letters() -> Iterator[str]:
    """A, B, ... Z, AA, AB, ..."""
    yield from LETTERS
    for letter in _letters():
        yield from (letter + last for last in LETTERS)
