"""The request for a link: an order, and for how long the link is to hold."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from pydantic import BaseModel, ConfigDict, Field, ValidationError
from pydantic_core import to_json

from service.problems import ProblemError, Trouble
from service.refusals import Form, refusals, what
from service.schemas import Order, OrderForm, invalid_order

if TYPE_CHECKING:
    from collections.abc import Mapping

LONGEST_LIFE = 315_360_000
"""Seconds; ten years."""


class LinkPart(BaseModel):
    """What a request for a link has beside the fields of an order."""

    model_config = ConfigDict(extra="forbid", strict=True)

    expires_in: int | None = Field(
        None,
        ge=60,
        le=LONGEST_LIFE,
        description="Seconds for which the link holds; without end where none are given.",
    )


PARTS = frozenset(LinkPart.model_fields)


@dataclass(frozen=True, slots=True)
class LinkOrder:
    """A request for a link.

    Attributes:
        order: The order to be linked.
        raw: The same as it was sent.
        seconds: For how long the link holds; None where it has no end.
    """

    order: Order
    raw: Mapping[str, Any]
    seconds: int | None


def read_link(raw: Any, form: OrderForm, longest: int) -> LinkOrder:
    """The request of decoded JSON.

    Args:
        raw: The request.
        form: The form that orders are filled in on.
        longest: Seconds for which a link may hold at most; 0 for no end.

    Raises:
        ProblemError: invalid-order, with every trouble that was found.
    """
    if not isinstance(raw, dict):
        detail = f"Send an object, not {what(raw)}."
        raise invalid_order([Trouble(pointer="", code="wrong_type", detail=detail, received=raw)])
    bare = {name: value for name, value in raw.items() if name not in PARTS}
    part, troubles = _part({n: v for n, v in raw.items() if n in PARTS}, longest)
    try:
        order = form.read(bare)
    except ProblemError as problem:
        raise invalid_order([*problem.troubles, *troubles]) from None
    if troubles or part is None:
        raise invalid_order(troubles)
    return LinkOrder(order, bare, part.expires_in or longest or None)


def _part(own: Mapping[str, Any], longest: int) -> tuple[LinkPart | None, list[Trouble]]:
    try:
        part = LinkPart.model_validate_json(to_json(own))
    except ValidationError as error:
        schema = LinkPart.model_json_schema()
        return None, refusals(error, Form(own, schema, lambda _: False, "cm"))
    if longest and (part.expires_in or 0) > longest:
        trouble = Trouble(
            pointer="/expires_in",
            code="out_of_range",
            detail=f"On this installation a link holds for at most {longest} seconds.",
            received=part.expires_in,
            allowed=[60, longest],
        )
        return None, [trouble]
    return part, []
