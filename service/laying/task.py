"""What one worker does with a request for a lay plan, from its bytes to the answer's."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from drafting.drawing import Output
from drafting.errors import DraftingError
from drafting.grading import draft_size
from drafting.laying import CLOTH_KINDS, Cloth, ClothKind, LayPlan, lay
from drafting.workroom import Work
from service.batching.task import Done, Tools, guarded
from service.drafts import unsound, worked
from service.formats import chosen
from service.languages import spoken
from service.laying.form import BLANK, LayOrder, pointing, read_lay
from service.ranges.form import RangeOrder
from service.reading import decode
from service.schemas import OrderForm
from service.troubles import drafting_problem

Works = tuple[Work, ...]


@dataclass(frozen=True, slots=True)
class LayFormat:
    """What a lay plan can be answered as: one row of `LAY_FORMATS`."""

    name: str
    media_type: str
    extension: str
    write: Callable[[Works, LayPlan, Output], bytes]


def draw_lay(
    tools: Tools, body: bytes, format_: str | None, accept: str | None, sizes: int, budget: float
) -> Done:
    """Draft orders and lay their pieces on cloth.

    Args:
        tools: Chapters and limits.
        body: The request as JSON.
        format_: Value of `?format=`.
        accept: The Accept header.
        sizes: Greatest number of sizes of a range.
        budget: Seconds of searching where the request names none.
    """
    return guarded(tools, lambda: _drawn(tools, body, format_, accept, sizes, budget))


def _drawn(
    tools: Tools, body: bytes, format_: str | None, accept: str | None, sizes: int, budget: float
) -> Done:
    raw = decode(body, tools.json_depth)
    asked = read_lay(spoken(raw, tools.language), tools.form, sizes, budget)
    written = chosen(format_, asked.output.format, accept, LAY_FORMATS.values())
    works = tuple(_works(asked, tools.form))
    try:
        plan = lay(works, asked.cloths or _needed(works), asked.laying)
        document = written.write(works, plan, asked.output)
    except DraftingError as error:
        raise drafting_problem(
            error, asked.unit, BLANK.is_length(asked.raw), asked.output.language
        ) from None
    language = asked.output.language
    return Done(200, written.media_type, document, written.extension, language=language)


def _works(asked: LayOrder, form: OrderForm) -> Iterator[Work]:
    """The work of each order or size, in their order. Raises ProblemError."""
    for place, order in enumerate(asked.orders):
        with pointing(f"/orders/{place}"):
            yield worked(order, form)
    if asked.sizes is not None:
        with pointing("/range"):
            yield from _sizes(asked.sizes, form)


def _sizes(asked: RangeOrder, form: OrderForm) -> Iterator[Work]:
    order = asked.order
    for size in asked.sizes:
        done = draft_size(
            order.garment, size.name, size.body, order.spec, order.finish, size.findings
        )
        if done.work is None:
            error = done.refusal or DraftingError("not drafted")
            raise drafting_problem(
                error, order.unit, form.is_length(order.raw), order.output.language
            )
        if done.work.verdict == "unsound" and not order.allow_unsound:
            raise unsound(done.work, order)
        yield done.work


def _needed(works: Works) -> dict[ClothKind, Cloth]:
    """Every cloth that the orders are cut from, as it comes."""
    needed = {c.cloth for w in works for p in w.pattern.pieces for c in p.piece.cut}
    return {kind: Cloth() for kind in CLOTH_KINDS if kind in needed}


def _json(_: Works, plan: LayPlan, output: Output) -> bytes:
    from drafting.export import lay_plans  # noqa: PLC0415 - workers write it, not the server

    return lay_plans.write_json(plan, output)


def _svg(_: Works, plan: LayPlan, output: Output) -> bytes:
    from drafting.export import lay_plans  # noqa: PLC0415 - as above

    return lay_plans.write_svg(plan, output)


def _pdf(works: Works, plan: LayPlan, output: Output) -> bytes:
    from drafting.export import lay_plans  # noqa: PLC0415 - as above

    return lay_plans.write_pdf(works, plan, output)


def _dxf(works: Works, plan: LayPlan, output: Output) -> bytes:
    from drafting.export import lay_dxf  # noqa: PLC0415 - as above

    return lay_dxf.write_dxf(works, plan, output)


LAY_FORMATS: dict[str, LayFormat] = {
    "json": LayFormat("json", "application/json", "json", _json),
    "svg": LayFormat("svg", "image/svg+xml", "svg", _svg),
    "pdf": LayFormat("pdf", "application/pdf", "pdf", _pdf),
    "dxf": LayFormat("dxf", "image/vnd.dxf", "dxf", _dxf),
}
"""JSON tells all; SVG and PDF are small drawings, and on paper of no fixed size the PDF is at full
size; DXF is for a cutter. The first is the default."""
