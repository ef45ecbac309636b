"""One entry of the vocabulary: what a measure is called, how it is taken, and how it is read.

Source: terms and clauses: ISO 8559-1; how each is taken: own words, common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal, Protocol, overload

if TYPE_CHECKING:
    from drafting.trace import Length

Kind = Literal["girth", "length", "height", "angle", "mass"]
"""Round the body, along it, from the floor straight up, in degrees, in kilograms."""


class Reader(Protocol):
    """A body, as far as a measure cares."""

    def length(self, name: str) -> Length:
        """The measure of that name in cm, called by its short word."""
        ...


@dataclass(frozen=True, slots=True)
class Measure:
    """A measure of the vocabulary, and the way to read it off a body: `body.hip_girth`.

    Reading gives a `Length` in cm (kilograms for a mass, degrees for an angle) that is called by
    the short word, or raises MissingMeasureError where the body has none.

    Attributes:
        word: The short trade word that formulas use.
        title: Its name in full.
        how: How it is taken, in own words.
        kind: What sort of measure it is.
        iso: Clause of ISO 8559-1; "" where the standard has the term but the clause is not known;
            None where the standard is not known to have it.
        term: The standard's term, where it differs from the title.
        by_side: Whether left and right may be given apart.
        name: The field in orders; set by the class that lists it.
    """

    word: str
    title: str
    how: str
    kind: Kind = "girth"
    iso: str | None = None
    term: str = ""
    by_side: bool = False
    name: str = ""

    def __set_name__(self, owner: type, name: str) -> None:
        object.__setattr__(self, "name", name)

    @property
    def iso_term(self) -> str | None:
        """The term of ISO 8559-1, or None where the standard is not known to have one."""
        return None if self.iso is None else self.term or self.title

    @property
    def unit(self) -> Literal["cm", "deg", "kg"]:
        """What its number counts."""
        return {"angle": "deg", "mass": "kg"}.get(self.kind, "cm")  # type: ignore[return-value]

    @overload
    def __get__(self, body: None, owner: type) -> Measure: ...
    @overload
    def __get__(self, body: Reader, owner: type) -> Length: ...
    def __get__(self, body: Reader | None, owner: type) -> Measure | Length:
        """The entry itself from the class, its length from a body."""
        return self if body is None else body.length(self.name)
