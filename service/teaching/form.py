"""The request for a draft sheet: an order, or but a garment; and what the sheet is to be."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any, get_args, get_type_hints

from pydantic import BaseModel, ConfigDict, Field, ValidationError
from pydantic_core import to_json

from drafting.drawing import Output
from drafting.teaching.form import DraftForm
from service.problems import ProblemError, Trouble
from service.refusals import Form, refusals, what
from service.schemas import Order, OrderForm, invalid_order
from service.suggestions import did_you_mean

STEPS = {"1:4": 4, "1:5": 5}
"""Scales of the class sheet's figures, by the order's word for them."""


class SheetOptions(BaseModel):
    """What the sheet is to be."""

    model_config = ConfigDict(extra="forbid", strict=True)

    blank: bool = Field(
        default=False,
        description="Leave the body's numbers out, for an exercise; the PDF's last page has them.",
    )
    frames: bool = Field(
        default=False, description="In JSON, the picture of each step as SVG text."
    )
    compare: str | None = Field(
        default=None,
        max_length=60,
        description="Another drafting method of the garment: both outlines over each other, and "
        "a table of what differs, in place of the steps.",
    )


class SheetPart(BaseModel):
    """What a request for a draft sheet has beside the fields of an order."""

    model_config = ConfigDict(extra="forbid", strict=True)

    sheet: SheetOptions = Field(SheetOptions(), description="What the sheet is to be.")


@dataclass(frozen=True, slots=True)
class SheetOrder:
    """A request for a draft sheet as the craft takes it.

    Attributes:
        order: The order.
        other: The same by the method to compare with; None where none is asked for.
        form: The sheet's form.
        frames: Whether JSON brings the pictures.
        invented: Whether the body is the garment's reference body.
    """

    order: Order
    other: Order | None
    form: DraftForm
    frames: bool
    invented: bool


def read_sheet(raw: Any, form: OrderForm) -> SheetOrder:
    """The request of decoded JSON. Without measurements and size the reference body is drafted.

    Raises:
        ProblemError: invalid-order, with every trouble that was found.
    """
    if not isinstance(raw, dict):
        detail = f"Send an object, not {what(raw)}."
        raise invalid_order([Trouble(pointer="", code="wrong_type", detail=detail, received=raw)])
    own = {name: value for name, value in raw.items() if name in SheetPart.model_fields}
    bare = {name: value for name, value in raw.items() if name not in own}
    invented = "measurements" not in bare and "size" not in bare
    troubles: list[Trouble] = []
    part = _part(own, troubles)
    order = _order(bare | ({"measurements": {}} if invented else {}), form, troubles)
    if order is None or part is None:
        raise invalid_order(troubles)
    other = _other(order, part.sheet.compare, troubles)
    if troubles:
        raise invalid_order(troubles)
    if invented:
        order, other = (
            o and replace(o, measurements=dict(o.garment.sample)) for o in (order, other)
        )
    if order is None:
        raise TypeError("an order stays an order")
    return SheetOrder(order, other, _form(order, part.sheet), part.sheet.frames, invented)


def _part(own: Mapping[str, Any], troubles: list[Trouble]) -> SheetPart | None:
    try:
        return SheetPart.model_validate_json(to_json(own))
    except ValidationError as error:
        schema = SheetPart.model_json_schema()
        troubles += refusals(error, Form(own, schema, lambda _: False, "cm"))
        return None


def _order(bare: Mapping[str, Any], form: OrderForm, troubles: list[Trouble]) -> Order | None:
    try:
        return form.read(dict(bare))
    except ProblemError as problem:
        troubles += problem.troubles
        return None


def _other(order: Order, method: str | None, troubles: list[Trouble]) -> Order | None:
    """The order by another method."""
    if method is None:
        return None
    able = tuple(_methods(order))
    if method in able:
        return replace(order, spec=replace(order.spec, method=method))
    detail = (
        f"Choose another drafting method of this garment.{did_you_mean(method, able)}"
        if able
        else "This garment has but one drafting method: leave compare out."
    )
    troubles.append(
        Trouble(
            pointer="/sheet/compare",
            code="not_a_choice",
            detail=detail,
            received=method,
            allowed=list(able),
        )
    )
    return None


def _methods(order: Order) -> Iterator[str]:
    """The garment's other drafting methods."""
    hint = get_type_hints(type(order.spec)).get("method")
    yield from (m for m in get_args(hint) if isinstance(m, str) and m != order.spec.method)


def _form(order: Order, sheet: SheetOptions) -> DraftForm:
    output: Output = order.output
    return DraftForm(
        paper=output.paper,
        scale=STEPS.get(output.scale),  # type: ignore[arg-type]  # 4 or 5
        language=output.language,
        unit=output.unit,
        blank=sheet.blank,
        date=order.date.isoformat() if order.date else "",
    )
