"""A body: its measures in cm, each with its origin."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, Literal

from drafting.body.lower import LowerBody
from drafting.body.measure import Measure
from drafting.body.upper import UpperBody
from drafting.errors import MissingMeasureError
from drafting.trace import Length
from drafting.trace.length import bare

if TYPE_CHECKING:
    from collections.abc import Mapping

Figure = Literal["women", "men"]
"""Whose statistics and ranges hold."""

Side = Literal["left", "right"]
"""The wearer's own left and right."""

Origin = Literal["measured", "derived", "estimated", "size table"]


@dataclass(frozen=True, slots=True)
class Measured:
    """One value of a body.

    Attributes:
        value: In cm (kilograms for a mass, degrees for an angle).
        origin: Taken on the body; worked out from other measures of it; predicted by statistics; or
            read from a size table.
        sd: Standard deviation in the value's unit; None for what was measured.
        sources: Names of the measures that it was worked out or predicted from.
    """

    value: float
    origin: Origin = "measured"
    sd: float | None = None
    sources: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Body(LowerBody, UpperBody):
    """A person's measures. `body.hip_girth` reads one as a `Length` called "hip".

    Attributes:
        figure: Whose statistics hold.
        measured: The values by the vocabulary's names.
        sides: Left and right of the measures that were taken on each side; their plain value in
            `measured` is the mean of the two.
    """

    figure: Figure
    measured: Mapping[str, Measured]
    sides: Mapping[str, Mapping[Side, Measured]] = field(default_factory=dict)

    @classmethod
    def of(cls, values: Mapping[str, float], figure: Figure = "women") -> Body:
        """A body of measured values in cm, unvetted."""
        return cls(figure, {name: Measured(float(value)) for name, value in values.items()})

    def has(self, name: str) -> bool:
        """Whether the measure is known, be it only by statistics."""
        return name in self.measured

    def taken(self, name: str) -> bool:
        """Whether the measure is known of this very body or size, not predicted by statistics."""
        if name not in self.measured:
            return False
        one = self.measured[name]
        return one.origin in {"measured", "derived"} or one.sd is None

    @property
    def even(self) -> bool:
        """Whether the two sides are alike, as far as was measured."""
        return all(pair["left"].value == pair["right"].value for pair in self.sides.values())

    def side(self, which: Side) -> Body:
        """The same body with that side's values on both sides."""
        own = {name: pair[which] for name, pair in self.sides.items()}
        return replace(self, measured={**self.measured, **own}, sides={})

    @property
    def bare(self) -> Body:
        """The same body, its measures read as plain numbers that do not know their names."""
        return BareBody(self.figure, self.measured, self.sides)

    def value(self, name: str) -> float:
        """The plain number. Raises MissingMeasureError where there is none."""
        return float(self.length(name))

    def length(self, name: str) -> Length:
        """The measure as a Length called by its short word.

        Raises:
            MissingMeasureError: The body has no such measure.
        """
        if name not in self.measured:
            raise missing(name)
        return Length(self.measured[name].value, MEASURES[name].word)


@dataclass(frozen=True, slots=True)
class BareBody(Body):
    """A body for a draft whose steps nobody will read."""

    def length(self, name: str) -> Length:
        """The measure's bare number. Raises MissingMeasureError where there is none."""
        try:
            return bare(self.measured[name].value)
        except KeyError:
            raise missing(name) from None


def missing(name: str) -> MissingMeasureError:
    """The trouble of a measure that was not given."""
    measure = MEASURES[name]
    return MissingMeasureError(
        f"The measure {name} ({measure.title}) is needed. {measure.how}",
        where=f"measurements.{name}",
    )


MEASURES: dict[str, Measure] = {
    measure.name: measure
    for part in (LowerBody, UpperBody)
    for measure in vars(part).values()
    if isinstance(measure, Measure)
}
"""The whole vocabulary by name, in the order of the tape."""
