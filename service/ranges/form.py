"""The request for a size range: an order with `sizes` in place of `measurements`."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Annotated, Any

from pydantic import (
    AfterValidator,
    BaseModel,
    ConfigDict,
    Field,
    ValidationError,
    WithJsonSchema,
)
from pydantic_core import PydanticCustomError, to_json

from drafting.body import SIZE_TABLES, Body, SizeTable, prepare, size_body, size_findings
from drafting.errors import DraftingError
from drafting.export import FORMATS
from drafting.pattern import Finding
from service.problems import ProblemError, Trouble, in_short
from service.refusals import Form, refusals, what
from service.schemas import Order, OrderForm, invalid_order
from service.sizes import no_size, no_table, other_figure
from service.suggestions import did_you_mean
from service.troubles import drafting_problem

if TYPE_CHECKING:
    from collections.abc import Mapping

SIZE_NAME = r"^[A-Za-z0-9][A-Za-z0-9 ./+_-]{0,19}$"
"""Short, and harmless in file names and spreadsheets."""


def _size_name(name: str) -> str:
    """The name itself. Raises PydanticCustomError where it is no size's."""
    if not re.fullmatch(SIZE_NAME, name):
        raise PydanticCustomError(
            "bad_size_name",
            "Call a size by 1 to 20 letters, digits, spaces and . / + _ -, a letter or a digit "
            "first.",
        )
    return name


SizeName = Annotated[
    str, AfterValidator(_size_name), WithJsonSchema({"type": "string", "pattern": SIZE_NAME})
]


class OwnSize(BaseModel):
    """A size of the client's own: its name, and measures as of an order."""

    model_config = ConfigDict(extra="forbid", strict=True)

    name: SizeName
    measurements: dict[str, Any]


class Sizes(BaseModel):
    """Which sizes: `names` of a `table`, all of it `from` one `to` another, or `own` ones.

    From a size to another of the same stature, only those of that stature are taken.
    """

    model_config = ConfigDict(extra="forbid", strict=True)

    table: str | None = None
    names: list[str] | None = Field(None, min_length=1)
    first: str | None = Field(None, alias="from")
    last: str | None = Field(None, alias="to")
    own: list[OwnSize] | None = Field(None, min_length=1)


class RangePart(BaseModel):
    """What a request for a size range has beside the fields of an order."""

    model_config = ConfigDict(extra="forbid", strict=True)

    sizes: Sizes
    each: str = Field("pdf", description="Format of each size's file in a ZIP.")


@dataclass(frozen=True, slots=True)
class AskedSize:
    """A size to draft: its name, its body, and remarks of the vetting."""

    name: str
    body: Body
    findings: tuple[Finding, ...] = ()


@dataclass(frozen=True, slots=True)
class RangeOrder:
    """A request for a size range as the craft takes it.

    Attributes:
        order: All that the sizes have in common; it has no measurements.
        sizes: In the order of the range.
        each: Name of the format of each size's file.
    """

    order: Order
    sizes: tuple[AskedSize, ...]
    each: str


PARTS = ("sizes", "each")


def read_range(raw: Any, form: OrderForm, most: int) -> RangeOrder:
    """The size range of decoded JSON.

    Args:
        raw: The request.
        form: The form that orders are filled in on.
        most: Greatest number of sizes.

    Raises:
        ProblemError: invalid-order, with every trouble that was found, or unusual-body.
    """
    if not isinstance(raw, dict):
        raise invalid_order([_trouble("", "wrong_type", f"Send an object, not {what(raw)}.", raw)])
    order, troubles = _common(raw, form)
    part = _part(raw, troubles)
    if part is None or order is None or troubles:
        raise invalid_order(troubles)
    sizes = _sizes(part.sizes, order, form, most)
    return RangeOrder(order, sizes, part.each)


def _common(raw: Mapping[str, Any], form: OrderForm) -> tuple[Order | None, list[Trouble]]:
    """What all sizes have in common, read as an order without measures."""
    troubles = []
    if "measurements" in raw:
        detail = "A size range has sizes; an own size has measurements."
        troubles.append(_trouble("/measurements", "unknown_field", detail, raw["measurements"]))
    common = {k: v for k, v in raw.items() if k not in PARTS}
    try:
        return form.read({**common, "measurements": {}}), troubles
    except ProblemError as problem:
        return None, [*troubles, *problem.troubles]


def _part(raw: Mapping[str, Any], troubles: list[Trouble]) -> RangePart | None:
    """The parts that only a range has; what is wrong with them is added to the troubles."""
    own = {k: v for k, v in raw.items() if k in PARTS}
    try:
        part = RangePart.model_validate_json(to_json(own))
    except ValidationError as error:
        schema = RangePart.model_json_schema()
        troubles += refusals(error, Form(own, schema, lambda _: False, "cm"))
        return None
    if part.each not in FORMATS:
        detail = f"Choose one of {', '.join(FORMATS)}.{did_you_mean(part.each, FORMATS)}"
        troubles.append(_trouble("/each", "not_a_choice", detail, part.each, [*FORMATS]))
    troubles += _shape(part.sizes)
    return part


def _shape(sizes: Sizes) -> Iterator[Trouble]:
    """Exactly one way to say which sizes."""
    from_to = sizes.first is not None or sizes.last is not None
    ways = [sizes.names is not None, from_to, sizes.own is not None]
    if sum(ways) != 1:
        detail = 'Say either "names", or "from" and "to", of a table, or "own" sizes.'
        yield _trouble("/sizes", "one_way_only", detail, None, ["names", "from", "own"])
    elif sizes.own is not None and sizes.table is not None:
        detail = "Own sizes are not of a table: leave it out."
        yield _trouble("/sizes/table", "one_way_only", detail, sizes.table)
    elif sizes.own is None:
        if sizes.table not in SIZE_TABLES:
            yield no_table("/sizes/table", sizes.table)
        if from_to and (sizes.first is None or sizes.last is None):
            detail = 'Say both "from" and "to".'
            yield _trouble("/sizes", "missing", detail, None, ["from", "to"])


def _sizes(sizes: Sizes, order: Order, form: OrderForm, most: int) -> tuple[AskedSize, ...]:
    if sizes.own is not None:
        _refuse_many([s.name for s in sizes.own], most, "/sizes/own")
        return _own(sizes.own, order, form)
    table = SIZE_TABLES[str(sizes.table)]
    if figures := [*other_figure(table, order.raw)]:
        raise invalid_order(figures)
    names = _names(sizes, table)
    _refuse_many(names, most, "/sizes")
    findings = size_findings(table.name)
    return tuple(AskedSize(name, size_body(table.name, name), findings) for name in names)


def _refuse_many(names: list[str], most: int, at: str) -> None:
    if len(names) > most:
        detail = f"A range has at most {most} sizes."
        raise invalid_order([_trouble(at, "too_many_sizes", detail, len(names), [1, most])])
    twice = next((n for n in names if names.count(n) > 1), None)
    if twice is not None:
        detail = f"The size {twice} stands twice in the range."
        raise invalid_order([_trouble(at, "size_twice", detail, twice)])


def _names(sizes: Sizes, table: SizeTable) -> list[str]:
    if sizes.names is not None:
        unknown = [(i, n) for i, n in enumerate(sizes.names) if n not in table.sizes]
        if unknown:
            raise invalid_order([no_size(f"/sizes/names/{i}", n, table) for i, n in unknown])
        return sizes.names
    ends = (("from", str(sizes.first)), ("to", str(sizes.last)))
    unknown_ends = [no_size(f"/sizes/{k}", n, table) for k, n in ends if n not in table.sizes]
    if unknown_ends:
        raise invalid_order(unknown_ends)
    return _between(str(sizes.first), str(sizes.last), table)


def _between(first: str, last: str, table: SizeTable) -> list[str]:
    """From a size to another in the table's order; of one stature where both ends are of it."""
    names = list(table.sizes)
    low, high = names.index(first), names.index(last)
    if low > high:
        detail = f"The size {first} stands behind {last} in the table."
        raise invalid_order([_trouble("/sizes/from", "wrong_way_round", detail, first)])
    statures = [table.sizes[name].label.get("stature") for name in (first, last)]
    return [
        name
        for name in names[low : high + 1]
        if statures[0] != statures[1] or table.sizes[name].label.get("stature") == statures[0]
    ]


def _own(own: list[OwnSize], order: Order, form: OrderForm) -> tuple[AskedSize, ...]:
    """The client's own sizes, vetted like the body of an order; all troubles are told at once."""
    found, troubles, codes = [], list[Trouble](), set[str]()
    for place, size in enumerate(own):
        try:
            found.append(_vetted(size, order, form))
        except ProblemError as problem:
            codes.add(problem.code)
            at = f"/sizes/own/{place}"
            troubles += (replace(t, pointer=at + t.pointer) for t in problem.troubles)
    if troubles:
        code = codes.pop() if len(codes) == 1 else "invalid-order"
        raise ProblemError(code, in_short(troubles), tuple(troubles))
    return tuple(found)


def _vetted(size: OwnSize, order: Order, form: OrderForm) -> AskedSize:
    read = form.read({**order.raw, "measurements": size.measurements})
    garment = read.garment
    try:
        body, findings = prepare(
            read.measurements, read.figure, garment.needs, garment.optional, read.accept_unusual
        )
    except DraftingError as error:
        raise drafting_problem(
            error, read.unit, form.is_length(read.raw), read.output.language
        ) from None
    return AskedSize(size.name, body, findings)


def _trouble(
    at: str, code: str, detail: str, received: object = None, allowed: object = None
) -> Trouble:
    return Trouble(pointer=at, code=code, detail=detail, received=received, allowed=allowed)
