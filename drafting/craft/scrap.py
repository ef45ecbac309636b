"""Scrap paper: a garment is drafted on it where only its lines are wanted, not how they were found.

An order for a pattern needs no draft sheet, and a chapter that tries a value throws the trial away.
Every line comes out as on the draft sheet, to the last digit; only nothing of it is remembered.
"""

from __future__ import annotations

from collections.abc import Callable

from drafting.craft.sheet import DraftSheet, found_place, solved
from drafting.trace import Length, Outline, Place, Stroke
from drafting.trace.length import bare
from drafting.trace.place import Dot
from drafting.trace.step import Moved, Sign, stands


class Scrap(DraftSheet):
    """A draft sheet that keeps no steps: places come back without their way, lengths bare.

    What it gives back is for drawing on; on a draft sheet it would have no words.
    """

    def beside(self, word: str) -> Scrap:
        """The same paper."""
        return self

    def heading(self, title: str, source: str = "") -> None:
        """Nothing: no step stands under it."""

    def point(self, name: str, place: Place | None, why: str, *, source: str = "") -> Place:
        """The place alone. Raises ConstructionError where the construction found none."""
        place = found_place(name, place)
        return place if isinstance(place, Dot) else Dot(place.x, place.y)

    def length(self, name: str, value: float, why: str, *, source: str = "") -> Length:
        """The bare number."""
        return bare(value)

    def stroke(self, stroke: Stroke, why: str, *, source: str = "") -> Stroke:
        """The line as it is."""
        return stroke

    def outline(
        self, name: str, lines: tuple[Stroke, ...], why: str, *, source: str = ""
    ) -> Outline:
        """Nothing: nobody traces it."""
        return NO_OUTLINE

    def compare(
        self,
        name: str,
        measured: float,
        sign: Sign,
        limit: float,
        question: str,
        why: str,
        *,
        source: str = "",
    ) -> bool:
        """Decide by holding a length against another."""
        return stands(measured, sign, limit)

    def solve(
        self,
        name: str,
        measure: Callable[[float], float],
        wanted: float,
        between: tuple[float, float],
        why: str,
        *,
        source: str = "",
    ) -> Length:
        """Find the value that brings what is measured to what is wanted.

        Raises:
            ConstructionError: No value between the bounds does it.
        """
        return bare(solved(name, measure, wanted, between))

    def true(
        self,
        name: str,
        moved: Moved | Callable[[], Moved],
        why: str,
        *,
        agree: str = "",
        source: str = "",
    ) -> None:
        """Nothing, and nothing is measured for it."""

    def _add(self, *_: object) -> None:
        """Nothing is kept."""


NO_OUTLINE = Outline(())
