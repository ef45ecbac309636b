"""The request for a lay plan: orders or a size range, and the cloths they are cut from."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, replace
from typing import Annotated, Any

from pydantic import BaseModel, ConfigDict, Field

from drafting.drawing.output import Output
from drafting.laying import Cloth, ClothKind, Laying
from service.lengths import Unit
from service.plan import Fields, plan_of
from service.problems import ProblemError, Trouble, in_short
from service.ranges.form import RangeOrder, read_range
from service.schemas import Blank, Order, OrderForm, invalid_order

MOST_ORDERS = 50
"""Orders laid together; the number of their pieces has a limit of its own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Cloths:
    """What is asked of each cloth; each is laid by itself.

    Attributes:
        main: The garment's own.
        lining: Its lining.
        pocketing: For pocket bags.
        fusible: Interfacing that is ironed on.
    """

    main: Cloth | None = None
    lining: Cloth | None = None
    pocketing: Cloth | None = None
    fusible: Cloth | None = None

    @property
    def given(self) -> dict[ClothKind, Cloth]:
        """Those that were described."""
        named: tuple[tuple[ClothKind, Cloth | None], ...] = (
            ("main", self.main),
            ("lining", self.lining),
            ("pocketing", self.pocketing),
            ("fusible", self.fusible),
        )
        return {kind: cloth for kind, cloth in named if cloth is not None}


class LayRequest(BaseModel):
    """Orders, or a size range, laid on cloth together."""

    model_config = ConfigDict(extra="forbid")

    unit: Unit = Field("cm", description="Unit of the cloths' lengths; each order has its own.")
    orders: Annotated[list[Any], Field(min_length=1, max_length=MOST_ORDERS)] | None = Field(
        None, description="Whole orders, as for POST /v1/patterns."
    )
    range: Any | None = Field(
        None, description="A size range in place of orders, as for POST /v1/size-ranges."
    )
    cloths: Cloths = Field(
        Cloths(),
        description="The cloths to lay; none described: those that the orders need, 150 cm wide.",
    )
    laying: Laying = Field(Laying(), description="How to search.")
    output: Output = Field(
        Output(),
        description=(
            "The form of the answer. Paper of a fixed size is for a small plan; roll and whole are "
            "for one at full size."
        ),
    )


@dataclass(frozen=True, slots=True)
class LayOrder:
    """A request for a lay plan as the craft takes it.

    Attributes:
        unit: Unit of the cloths' lengths, as sent.
        orders: Orders to lay.
        sizes: A size range in their place.
        cloths: What is asked of each cloth; none where the orders are to say which.
        laying: How to search.
        output: The form of the answer.
        raw: The request as it was sent.
    """

    unit: Unit
    orders: tuple[Order, ...]
    sizes: RangeOrder | None
    cloths: dict[ClothKind, Cloth]
    laying: Laying
    output: Output
    raw: Any


def _one_source(raw: Mapping[str, Any]) -> Iterator[Trouble]:
    if ("orders" in raw) == ("range" in raw):
        detail = "Send either orders or a size range."
        allowed = ["orders", "range"]
        yield Trouble(
            pointer="", code="one_way_only", detail=detail, received=None, allowed=allowed
        )


BLANK = Blank(
    LayRequest,
    Fields({"cloths": plan_of(Cloths), "laying": plan_of(Laying)}),
    _one_source,
)


def read_lay(raw: Any, form: OrderForm, most_sizes: int, budget: float) -> LayOrder:
    """The request of decoded JSON.

    Args:
        raw: The request.
        form: The form that orders are filled in on.
        most_sizes: Greatest number of sizes of a range.
        budget: Seconds of searching where the request names none.

    Raises:
        ProblemError: invalid-order, with every trouble that was found, or unusual-body.
    """
    filled, unit = BLANK.filled(raw)
    orders = _orders(filled.orders or [], form)
    sizes = None
    if filled.range is not None:
        with pointing("/range"):
            sizes = read_range(filled.range, form, most_sizes)
    asked = raw.get("laying")
    named = isinstance(asked, dict) and "budget" in asked
    laying = filled.laying if named else replace(filled.laying, budget=budget)
    return LayOrder(unit, orders, sizes, filled.cloths.given, laying, filled.output, raw)


@contextmanager
def pointing(at: str) -> Iterator[None]:
    """A block whose problems speak of a part of the request. Raises ProblemError."""
    try:
        yield
    except ProblemError as problem:
        raise pointed(problem, at) from None


def pointed(problem: ProblemError, at: str) -> ProblemError:
    """The problem with its troubles told of a part of the request."""
    troubles = tuple(replace(t, pointer=at + t.pointer) for t in problem.troubles)
    detail = in_short(troubles) if troubles else f"{problem.detail} ({at})"
    return ProblemError(problem.code, detail, troubles, headers=problem.headers)


def _orders(raws: list[Any], form: OrderForm) -> tuple[Order, ...]:
    """All orders, or every trouble of all of them."""
    orders: list[Order] = []
    troubles: list[Trouble] = []
    for place, raw in enumerate(raws):
        try:
            orders.append(form.read(raw))
        except ProblemError as problem:
            troubles += pointed(problem, f"/orders/{place}").troubles
    if troubles:
        raise invalid_order(troubles)
    return tuple(orders)
