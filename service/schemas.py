"""The order: from raw JSON to the craft's own values, every trouble told at once.

The craft's specs are stdlib dataclasses and serve as request models as they are; the envelope
around them is built here from the garments that the service is given.
"""

from __future__ import annotations

import pickle
from dataclasses import dataclass
from datetime import date
from functools import cache, cached_property
from itertools import islice
from typing import TYPE_CHECKING, Annotated, Any, Union, cast

from pydantic import AfterValidator, BaseModel, ConfigDict, Field, ValidationError, create_model
from pydantic_core import to_json

from drafting.body import MEASURES, Figure, Given
from drafting.drawing.output import Output
from drafting.pattern import Finish
from service.languages import named_language
from service.lengths import CM, Unit
from service.plan import (
    Choice,
    Fields,
    IsLength,
    Parts,
    Plan,
    is_length,
    lengths_to_cm,
    plan_of,
)
from service.problems import MOST_TROUBLES, ProblemError, Trouble, in_short, pointer
from service.refusals import Form, refusals, what
from service.sizes import SizeChoice, one_source, size_troubles
from service.suggestions import did_you_mean
from service.text import refuse_unprintable
from service.troubles import in_language

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator, Mapping

    from drafting.garments.garment import Garment
    from drafting.language import Language

SIDES = ("left", "right")

LONGEST_REFERENCE = 120
"""Characters of an order's reference; a line on a pattern piece holds no more."""

Reference = Annotated[str, Field(max_length=LONGEST_REFERENCE), AfterValidator(refuse_unprintable)]


@dataclass(frozen=True, slots=True, kw_only=True)
class Order:
    """An order as the craft takes it.

    Attributes:
        unit: Unit in which the client speaks.
        figure: Whose statistics hold.
        measurements: Measures in cm (kilograms, degrees) by the vocabulary's names; none of them
            where a size stands for them.
        size: A size out of a table, in place of measurements.
        garment: The chapter that drafts it.
        spec: Its options, lengths in cm.
        finish: Purpose and allowances in cm.
        output: The form of the answer.
        reference: The client's own words on each piece.
        date: The client's own date; documents carry no other.
        accept_unusual: Draft even where the measures hardly belong to one body.
        allow_unsound: Answer even a pattern that fails its checks.
        raw: The order as it was sent.
    """

    unit: Unit
    figure: Figure
    measurements: Given
    size: SizeChoice | None
    garment: Garment
    spec: Any
    finish: Finish
    output: Output
    reference: str
    date: date | None
    accept_unusual: bool
    allow_unsound: bool
    raw: Any


MEASUREMENTS: Plan = Fields({n: IsLength() for n, m in MEASURES.items() if m.unit == "cm"})


class Blank:
    """A form with nothing in it yet: which fields it has, and where lengths stand.

    Args:
        model: The fields.
        plan: Where their lengths stand.
        look: What is wrong beyond each field's own form.
    """

    def __init__(
        self,
        model: type[BaseModel],
        plan: Plan,
        look: Callable[[Mapping[str, Any]], Iterable[Trouble]],
    ) -> None:
        self.model = model
        self.plan = plan
        self._look = look

    @cached_property
    def limits(self) -> dict[str, Any]:
        """The fields' JSON Schema, which refusals quote."""
        return self.model.model_json_schema()

    def filled(self, raw: Any) -> tuple[Any, Unit]:
        """The fields, lengths in cm, and the unit that the client speaks in.

        Raises:
            ProblemError: invalid-order, with every trouble that was found.
        """
        if not isinstance(raw, dict):
            raise invalid_order([_no_object(raw)])
        unit = _unit(raw)
        troubles: list[Trouble] = []
        whole = _with_sheet_unit(raw, unit) if "output" in self.model.model_fields else raw
        cm = lengths_to_cm(whole, self.plan, unit, (), troubles)
        troubles += measure_troubles(raw.get("measurements"))
        troubles += self._look(raw)
        filled = self._validated(cm, raw, unit, troubles)
        if troubles or filled is None:
            raise invalid_order(troubles, named_language(raw))
        return filled, unit

    def is_length(self, raw: Any) -> Callable[[Parts], bool]:
        """A function that tells whether the field at a path of what was sent is a length."""
        return lambda parts: is_length(self.plan, raw, parts)

    def _validated(
        self, cm: Any, raw: Any, unit: Unit, troubles: list[Trouble]
    ) -> BaseModel | None:
        try:
            return self.model.model_validate_json(to_json(cm), strict=True)
        except ValidationError as error:
            told = {trouble.pointer for trouble in troubles}
            found = refusals(error, Form(raw, self.limits, self.is_length(raw), unit))
            troubles += [trouble for trouble in found if trouble.pointer not in told]
            return None


class OrderForm:
    """The form that orders are filled in on: built once from the garments on offer."""

    def __init__(self, garments: Mapping[str, Garment]) -> None:
        kinds = Choice({k: plan_of(g.spec) for k, g in garments.items()})
        plan = {"measurements": MEASUREMENTS, "garment": kinds, "finish": plan_of(Finish)}
        self.garments = garments
        self.blank = Blank(_envelope(garments), Fields(plan), _beyond)

    def __reduce__(self) -> tuple[Any, tuple[bytes]]:
        """In another process the form is made anew there, once, from the same garments."""
        return unpacked, (self._packed,)

    @cached_property
    def _packed(self) -> bytes:
        return packed(self.garments)

    @property
    def model(self) -> type[BaseModel]:
        """The fields of an order."""
        return self.blank.model

    def is_length(self, raw: Any) -> Callable[[Parts], bool]:
        """A function that tells whether the field at a path of that order is a length."""
        return self.blank.is_length(raw)

    def read(self, raw: Any) -> Order:
        """The order of decoded JSON.

        Raises:
            ProblemError: invalid-order, with every trouble that was found.
        """
        filled, unit = self.blank.filled(raw)
        return Order(
            unit=unit,
            figure=filled.size.figure if filled.size else filled.figure,
            measurements=filled.measurements,
            size=filled.size,
            garment=self.garments[filled.garment.kind],
            spec=filled.garment,
            finish=filled.finish,
            output=filled.output,
            reference=filled.reference,
            date=filled.date,
            accept_unusual=filled.accept_unusual,
            allow_unsound=filled.allow_unsound,
            raw=raw,
        )


def packed(garments: Mapping[str, Garment]) -> bytes:
    """Garments for another process; they must be importable there."""
    return pickle.dumps(dict(garments))


@cache
def unpacked(garments: bytes) -> OrderForm:
    """The form for packed garments."""
    return OrderForm(pickle.loads(garments))  # noqa: S301 - packed by the service itself


def _beyond(raw: Mapping[str, Any]) -> Iterator[Trouble]:
    yield from one_source(raw)
    yield from size_troubles(raw)


def _envelope(garments: Mapping[str, Garment]) -> type[BaseModel]:
    specs = tuple(garment.spec for garment in garments.values())
    union: Any = Union[specs]  # noqa: UP007 - built from a tuple
    garment: Any = Annotated[union, Field(discriminator="kind")] if len(specs) > 1 else union
    return create_model(
        "Order",
        __config__=ConfigDict(extra="forbid"),
        unit=_field(Unit, "Unit of all lengths in the order, except on paper.", default="cm"),
        figure=_field(Figure, "Whose ranges and statistics hold.", default="women"),
        measurements=_field(dict[str, Any], "Measures of the body by name.", default={}),
        size=_field(SizeChoice, "A size out of a table, in place of measurements.", default=None),
        garment=_field(garment, "The garment and its options.", default=...),
        finish=_field(Finish, "Purpose and allowances.", default=Finish()),
        output=_field(Output, "The form of the answer; on paper in mm.", default=Output()),
        reference=_field(Reference, "The client's own words, written on each piece.", default=""),
        date=_field(date, "The order's date; documents carry no other.", default=None),
        accept_unusual=_field(bool, "Draft even an unlikely set of measures.", default=False),
        allow_unsound=_field(bool, "Answer even a pattern that fails its checks.", default=False),
    )


def _field(kind: Any, description: str, *, default: Any) -> Any:
    return kind, Field(default, description=description)


def invalid_order(troubles: list[Trouble], language: Language = "en") -> ProblemError:
    """The problem of an order that has to be changed, told in a language where it can be."""
    told = tuple(in_language(t, _field_of(t.pointer), language) for t in troubles)
    headers = {"Content-Language": language}
    return ProblemError("invalid-order", in_short(told), told, headers=headers)


def _field_of(at: str) -> str:
    """The measure that a pointer leads to, else the last name in it."""
    parts = at.split("/")
    return parts[2] if parts[1:2] == ["measurements"] and len(parts) > 2 else parts[-1]


def _no_object(raw: object) -> Trouble:
    detail = f"An order is a JSON object, not {what(raw)}."
    return Trouble(pointer="", code="wrong_type", detail=detail, received=raw)


def _unit(raw: dict[str, Any]) -> Unit:
    """The order's unit. A wrong one is refused alone: no length can be judged without it."""
    unit = raw.get("unit", "cm")
    if not isinstance(unit, str) or unit not in CM:
        detail = f"Choose 'cm', 'mm' or 'in'.{did_you_mean(unit, CM)}"
        trouble = Trouble(
            pointer="/unit", code="not_a_choice", detail=detail, received=unit, allowed=[*CM]
        )
        raise invalid_order([trouble])
    return cast("Unit", unit)


def _with_sheet_unit(raw: dict[str, Any], unit: Unit) -> dict[str, Any]:
    """The order with inches on the sheet where it speaks in inches and asks for nothing else."""
    output = raw.get("output", {})
    if unit != "in" or not isinstance(output, dict) or "unit" in output:
        return raw
    return {**raw, "output": {**output, "unit": "in"}}


def measure_troubles(given: object) -> list[Trouble]:
    """What is wrong with the names and the kinds of measures, whatever their size."""
    if not isinstance(given, dict):
        return []
    found = (t for name, value in given.items() for t in _measure_troubles(name, value))
    return list(islice(found, MOST_TROUBLES))


def _measure_troubles(name: str, value: object) -> Iterator[Trouble]:
    at = ("measurements", name)
    if name not in MEASURES:
        detail = f"There is no measure {name[:60]!r}.{did_you_mean(name, MEASURES)}"
        more = " GET /v1/measurements lists them all."
        yield Trouble(
            pointer=pointer(at), code="unknown_measure", detail=detail + more, received=value
        )
    elif isinstance(value, dict):
        for side, one in value.items():
            yield from _side_troubles((*at, side), name, one)
    elif not _may_be_number(name, value):
        yield _no_number(at, value)


def _side_troubles(at: tuple[str, ...], name: str, value: object) -> Iterator[Trouble]:
    if at[-1] not in SIDES:
        near = did_you_mean(at[-1], SIDES)
        detail = f"A measure by side has the fields left and right.{near}"
        yield Trouble(
            pointer=pointer(at),
            code="unknown_field",
            detail=detail,
            received=value,
            allowed=[*SIDES],
        )
    elif not _may_be_number(name, value):
        yield _no_number(at, value)


def _may_be_number(name: str, value: object) -> bool:
    """Whether it is a number, or a text that was already read as one or refused as none."""
    if isinstance(value, str):
        return MEASURES[name].unit == "cm"
    return isinstance(value, float | int) and not isinstance(value, bool)


def _no_number(at: tuple[str, ...], value: object) -> Trouble:
    detail = f"Send a number, not {what(value)}."
    return Trouble(pointer=pointer(at), code="wrong_type", detail=detail, received=value)
