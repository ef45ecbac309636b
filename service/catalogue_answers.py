"""The shapes of answers that tell what can be drafted, measured and taken from a size table.

No field has a default: what stands here is in every answer, unless it is marked NotRequired.
"""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import Field, with_config
from typing_extensions import TypedDict

from service.answers import TOLD, BodyValue, Bounds, FindingAnswer


class ValidRangeAnswer(TypedDict):
    """Where a drafting method is known to be good; cm."""

    measure: str
    low: float
    high: float


class GarmentSummary(TypedDict):
    """A garment in the list."""

    kind: str
    title: str
    summary: str
    href: str
    sample: str


@with_config(TOLD)
class GarmentList(TypedDict):
    """Everything that can be drafted."""

    garments: list[GarmentSummary]


class SymptomAnswer(TypedDict):
    """What a fitter may see on the toile, and what helps, with its usual amount in cm."""

    symptom: str
    cause: str
    change: Annotated[str, Field(description="What is done on the pattern.")]
    low: float
    high: float
    pin: Annotated[
        str,
        Field(description="The correction in `garment.corrections` that does it; empty for none."),
    ]


@with_config(TOLD)
class GarmentAnswer(TypedDict):
    """What can be chosen about a garment, and what it needs."""

    kind: str
    title: str
    summary: str
    options: Annotated[
        dict[str, Any], Field(description="JSON Schema of `garment` in an order; lengths in cm.")
    ]
    choices: Annotated[
        dict[str, dict[str, str]],
        Field(
            description="What people call the values of an option, by the option's name and the "
            "value, in the answer's language."
        ),
    ]
    needs: Annotated[
        list[str],
        Field(
            description="Measures that it is drafted by. Those that an order lacks are derived or "
            "estimated; waist girth, hip girth and one length of the leg must be given."
        ),
    ]
    optional: Annotated[list[str], Field(description="Measures that are used where given.")]
    pieces: list[str]
    valid: list[ValidRangeAnswer]
    sources: list[str]
    symptoms: Annotated[
        list[SymptomAnswer],
        Field(description="What to ask after the toile."),
    ]
    sample: str
    example: Annotated[dict[str, Any], Field(description="An order that can be sent as it is.")]


class Usual(TypedDict):
    """Between these lie 99 of 100 adults; null where no survey says it."""

    women: Bounds | None
    men: Bounds | None


class MeasureAnswer(TypedDict):
    """A measure of the body and how it is taken."""

    name: str
    title: str
    how: str
    kind: Literal["girth", "length", "height", "angle", "mass"]
    unit: Literal["cm", "deg", "kg"]
    by_side: Annotated[bool, Field(description="Whether left and right may be given apart.")]
    iso_term: Annotated[str | None, Field(description="Term of ISO 8559-1, where known.")]
    iso_clause: Annotated[str | None, Field(description="Clause of ISO 8559-1, where known.")]
    possible: Annotated[Bounds, Field(description="Outside of these an order is refused.")]
    usual: Usual
    basis: Annotated[str, Field(description="Where the ranges come from.")]


@with_config(TOLD)
class MeasureList(TypedDict):
    """The vocabulary of measures, in the order of the tape."""

    measurements: list[MeasureAnswer]


@with_config(TOLD)
class MeasurementCheckAnswer(TypedDict):
    """A set of measures, vetted and completed. Lengths in mm."""

    drafting_version: str
    unit: Literal["mm"]
    figure: Literal["women", "men"]
    body: dict[str, BodyValue]
    findings: list[FindingAnswer]


class SizeTableHead(TypedDict):
    """What a table of body sizes is, and where it and what is drafted by it is found."""

    name: str
    title: str
    figure: Literal["women", "men"]
    from_memory: Annotated[
        bool, Field(description="Whether its steps were written down from memory of a standard.")
    ]
    sources: list[str]
    href: str
    garment: Annotated[str, Field(description="Address template of a garment in a size.")]


class SizeTableSummary(SizeTableHead):
    """A table of body sizes in the list."""

    sizes: Annotated[list[str], Field(description="Names of its sizes, the smallest first.")]


@with_config(TOLD)
class SizeTableList(TypedDict):
    """The tables of body sizes."""

    size_tables: list[SizeTableSummary]


class TableSizeAnswer(TypedDict):
    """A size of a table. Lengths in mm."""

    name: str
    label: Annotated[dict[str, float], Field(description="What the size's label says.")]
    body: dict[str, BodyValue]


@with_config(TOLD)
class SizeTableAnswer(SizeTableHead):
    """A table of body sizes. Lengths in mm."""

    unit: Literal["mm"]
    sizes: list[TableSizeAnswer]
