"""What one worker does with a size range, from the request's bytes to the answer's."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from typing import Any

from drafting.errors import DraftingError
from drafting.export import FORMATS
from drafting.export.archive import MEDIA_TYPE as ZIP
from drafting.export.compact import compact
from drafting.grading import (
    SizeRange,
    draft_size,
    measure_table,
    nested_dxf,
    nested_pdf,
    nested_svg,
    range_archive,
    range_document,
)
from drafting.grading.documents import table_csv
from service.batching.task import Done, Tools, guarded
from service.formats import chosen
from service.languages import spoken
from service.problems import ProblemError, told_trouble
from service.ranges.form import RangeOrder, read_range
from service.reading import decode
from service.schemas import OrderForm
from service.troubles import drafting_problem


@dataclass(frozen=True, slots=True)
class RangeFormat:
    """What a range can be answered as: one row of `RANGE_FORMATS`."""

    name: str
    media_type: str
    extension: str
    write: Callable[[SizeRange, RangeOrder, OrderForm], bytes]


def draft_range(
    tools: Tools, body: bytes, format_: str | None, accept: str | None, most: int
) -> Done:
    """Draft a size range.

    Args:
        tools: Chapters and limits.
        body: The request as JSON.
        format_: Value of `?format=`.
        accept: The Accept header.
        most: Greatest number of sizes.
    """
    return guarded(tools, lambda: _drafted(tools, body, format_, accept, most))


def _drafted(tools: Tools, body: bytes, format_: str | None, accept: str | None, most: int) -> Done:
    raw = decode(body, tools.json_depth)
    asked = read_range(spoken(raw, tools.language), tools.form, most)
    order = asked.order
    written = chosen(format_, order.output.format, accept, RANGE_FORMATS.values())
    sizes = SizeRange(
        garment=order.garment,
        spec=order.spec,
        finish=order.finish,
        sizes=tuple(
            draft_size(order.garment, s.name, s.body, order.spec, order.finish, s.findings)
            for s in asked.sizes
        ),
    )
    try:
        document = written.write(sizes, asked, tools.form)
    except DraftingError as error:
        raise _problem(error, asked, tools.form) from None
    language = order.output.language
    return Done(200, written.media_type, document, written.extension, language=language)


def _problem(error: DraftingError, asked: RangeOrder, form: OrderForm) -> ProblemError:
    order = asked.order
    return drafting_problem(error, order.unit, form.is_length(order.raw), order.output.language)


def _refusal(asked: RangeOrder, form: OrderForm, error: DraftingError) -> dict[str, Any]:
    """Why a size cannot be drafted, in the order's unit."""
    return told_trouble(_problem(error, asked, form).troubles[0])


def _json(sizes: SizeRange, asked: RangeOrder, form: OrderForm) -> bytes:
    order = asked.order
    document = range_document(
        sizes,
        order.output,
        allow_unsound=order.allow_unsound,
        refuse=partial(_refusal, asked, form),
    )
    return compact(document)


def _svg(sizes: SizeRange, asked: RangeOrder, _: OrderForm) -> bytes:
    return nested_svg(sizes, asked.order.output, allow_unsound=asked.order.allow_unsound)


def _dxf(sizes: SizeRange, asked: RangeOrder, _: OrderForm) -> bytes:
    return nested_dxf(sizes, asked.order.output, allow_unsound=asked.order.allow_unsound)


def _pdf(sizes: SizeRange, asked: RangeOrder, _: OrderForm) -> bytes:
    return nested_pdf(sizes, asked.order.output, allow_unsound=asked.order.allow_unsound)


def _zip(sizes: SizeRange, asked: RangeOrder, form: OrderForm) -> bytes:
    each = next(f for name, f in FORMATS.items() if name == asked.each)
    return range_archive(
        sizes,
        each,
        asked.order.output,
        allow_unsound=asked.order.allow_unsound,
        refuse=partial(_refusal, asked, form),
    )


def _csv(sizes: SizeRange, _: RangeOrder, __: OrderForm) -> bytes:
    return table_csv(measure_table(sizes)).encode()


RANGE_FORMATS: dict[str, RangeFormat] = {
    "json": RangeFormat("json", "application/json", "json", _json),
    "svg": RangeFormat("svg", "image/svg+xml", "svg", _svg),
    "pdf": RangeFormat("pdf", "application/pdf", "pdf", _pdf),
    "dxf": RangeFormat("dxf", FORMATS["dxf"].media_type, "dxf", _dxf),
    "zip": RangeFormat("zip", ZIP, "zip", _zip),
    "csv": RangeFormat("csv", "text/csv", "csv", _csv),
}
"""JSON tells all; SVG, PDF and DXF are one nested drawing; ZIP has a file for each size; CSV is the
table of measures. The first is the default."""
