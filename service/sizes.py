"""Sizes as orders name them: a table, and a size in it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Annotated, Any

from pydantic import BaseModel, ConfigDict, Field

from drafting.body import SIZE_TABLES, Body, Figure, SizeTable, size_body, size_findings
from drafting.pattern import Finding
from service.problems import ProblemError, Trouble
from service.suggestions import did_you_mean

TableName = Annotated[
    str,
    Field(
        description="Name of a table; GET /v1/size-tables lists them.",
        json_schema_extra={"enum": [*SIZE_TABLES]},
    ),
]


class SizeChoice(BaseModel):
    """A size out of a table, in place of measurements."""

    model_config = ConfigDict(extra="forbid", strict=True, frozen=True)

    table: TableName
    size: Annotated[str, Field(description="Name of a size in it, such as 88-regular.")]

    @property
    def figure(self) -> Figure:
        """Whose body it is."""
        return SIZE_TABLES[self.table].figure

    def body(self) -> tuple[Body, tuple[Finding, ...]]:
        """The size's body, and what is to be said of where it comes from."""
        return size_body(self.table, self.size), size_findings(self.table)


def one_source(raw: Mapping[str, Any]) -> Iterator[Trouble]:
    """What is wrong where an order gives no body, or two."""
    if "measurements" in raw and "size" in raw:
        detail = "Give measurements or a size, not both."
        yield Trouble(pointer="/size", code="one_way_only", detail=detail, received=raw["size"])
    elif "measurements" not in raw and "size" not in raw:
        detail = "The order needs measurements, or a size of a table (GET /v1/size-tables)."
        yield Trouble(pointer="/measurements", code="missing", detail=detail)


def size_troubles(raw: Mapping[str, Any]) -> Iterator[Trouble]:
    """What is wrong with an order's size, beyond its form."""
    asked = raw.get("size")
    if not isinstance(asked, dict) or not isinstance(asked.get("table"), str):
        return
    if asked["table"] not in SIZE_TABLES:
        yield no_table("/size/table", asked["table"])
        return
    table, size = SIZE_TABLES[asked["table"]], asked.get("size")
    if isinstance(size, str) and size not in table.sizes:
        yield no_size("/size/size", size, table)
    yield from other_figure(table, raw)


def no_table(at: str, name: object) -> Trouble:
    """The trouble of a table that is not there."""
    detail = f"Choose one of {', '.join(SIZE_TABLES)}.{did_you_mean(name, SIZE_TABLES)}"
    return Trouble(
        pointer=at, code="unknown_table", detail=detail, received=name, allowed=[*SIZE_TABLES]
    )


def other_figure(table: SizeTable, raw: Mapping[str, Any]) -> Iterator[Trouble]:
    """The trouble of an order that names another figure than its table's."""
    figure = raw.get("figure", table.figure)
    if figure != table.figure:
        yield Trouble(
            pointer="/figure",
            code="other_figure",
            detail=f"The sizes of the table {table.name} are bodies of {table.figure}.",
            received=figure,
            allowed=[table.figure],
        )


def no_size(at: str, name: str, table: SizeTable) -> Trouble:
    """The trouble of a size that the table does not have."""
    near = did_you_mean(name, table.sizes)
    return Trouble(
        pointer=at,
        code="unknown_size",
        detail=f"The table {table.name} has no size {name[:40]!r}.{near}",
        received=name,
        allowed=[*table.sizes],
    )


def asked_table(name: str) -> SizeTable:
    """The table of an address. Raises ProblemError (not-found)."""
    if name not in SIZE_TABLES:
        near = did_you_mean(name, SIZE_TABLES)
        detail = f"There is no such size table.{near} GET /v1/size-tables lists them all."
        raise ProblemError("not-found", detail)
    return SIZE_TABLES[name]


def asked_size(table: SizeTable, name: str) -> SizeChoice:
    """The size of an address. Raises ProblemError (not-found)."""
    if name not in table.sizes:
        near = did_you_mean(name, table.sizes)
        detail = f"The table has no such size.{near} GET /v1/size-tables/{table.name} lists all."
        raise ProblemError("not-found", detail)
    return SizeChoice(table=table.name, size=name)
