"""Bodies by size, and a garment in a size."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING, Annotated, Any

from fastapi import APIRouter, Path, Request
from fastapi.responses import Response

from drafting.body import SIZE_TABLES, size_body
from drafting.export import FORMATS
from drafting.export.identity import body_document
from drafting.export.paths import MM, rounded
from service.answers import PatternAnswer
from service.caching import kept_json
from service.catalogue_answers import SizeTableAnswer, SizeTableList, TableSizeAnswer
from service.drafts import size_order
from service.formats import chosen
from service.house import HouseDep
from service.languages import LanguageDep, spoken
from service.openapi import problem_answers
from service.routes.patterns import (
    DRAFTING_PROBLEMS,
    PATTERN_CONTENT,
    PATTERN_HEADERS,
    FormatQuery,
    Keeping,
    kept_pattern,
)
from service.sizes import asked_size, asked_table

if TYPE_CHECKING:
    from drafting.body import Size, SizeTable

router = APIRouter(tags=["size tables"])

TablePath = Annotated[str, Path(description="Name of a table, as `GET /v1/size-tables` lists it.")]
SizePath = Annotated[str, Path(description="Name of a size in the table, such as 88-regular.")]
KindPath = Annotated[str, Path(description="Kind of a garment, as `GET /v1/garments` lists it.")]


@router.get(
    "/v1/size-tables",
    operation_id="list_size_tables",
    summary="List the size tables",
    response_model=SizeTableList,
)
async def list_size_tables(request: Request, house: HouseDep) -> Response:
    """Every table of body sizes, with the names of its sizes and where its numbers come from."""
    told: SizeTableList = {"size_tables": [_summary(table) for table in SIZE_TABLES.values()]}
    return kept_json(request, house.settings, told)


@router.get(
    "/v1/size-tables/{table}",
    operation_id="show_size_table",
    summary="Show a size table",
    response_model=SizeTableAnswer,
    responses=problem_answers("not-found"),
)
async def show_size_table(request: Request, house: HouseDep, table: TablePath) -> Response:
    """Every size of a table with its whole body.

    What the label says is given; the other measures are what statistics expect of such a body, each
    with its standard deviation.
    """
    return kept_json(request, house.settings, _told(asked_table(table).name))


@router.get(
    "/v1/size-tables/{table}/{size}/{kind}",
    operation_id="draft_size",
    summary="Draft a garment in a size",
    response_model=PatternAnswer,
    responses={
        200: {
            "description": "The pattern, in the format asked for.",
            "content": PATTERN_CONTENT,
            "headers": PATTERN_HEADERS,
        },
        **problem_answers("not-found", *DRAFTING_PROBLEMS),
    },
)
async def draft_size(
    request: Request,
    house: HouseDep,
    table: TablePath,
    size: SizePath,
    kind: KindPath,
    language: LanguageDep,
    format_: FormatQuery = None,
) -> Response:
    """The garment as its options stand by themselves, in a size of a table. May be cached."""
    known = asked_table(table)
    choice, garment = asked_size(known, size), house.garment(kind)
    asked = chosen(format_, None, request.headers.get("accept"), FORMATS.values())
    keeping = Keeping(kind, ("size", table, size, str(known.sizes[size].label)), language)
    order = spoken(size_order(garment, choice), language)
    return await kept_pattern(request, house, asked, keeping, lambda: house.read(order))


def _summary(table: SizeTable) -> Any:
    address = f"/v1/size-tables/{table.name}"
    return {
        "name": table.name,
        "title": table.title,
        "figure": table.figure,
        "from_memory": table.from_memory,
        "sources": list(table.sources),
        "sizes": list(table.sizes),
        "href": address,
        "garment": f"{address}/{{size}}/{{kind}}",
    }


@cache
def _told(name: str) -> SizeTableAnswer:
    table = SIZE_TABLES[name]
    bodies = [_size(table, size) for size in table.sizes.values()]
    told: Any = {**_summary(table), "unit": "mm", "sizes": bodies}
    whole: SizeTableAnswer = told
    return whole


def _size(table: SizeTable, size: Size) -> TableSizeAnswer:
    return {
        "name": size.name,
        "label": {measure: rounded(value * MM) for measure, value in size.label.items()},
        "body": body_document(size_body(table.name, size.name)),
    }
