"""From a request for a draft sheet to its bytes."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from drafting.errors import DraftingError, OutputError
from drafting.export import draft_beside, draft_json, draft_svg, pattern_id
from drafting.export.compact import compact
from drafting.language import taught_in
from drafting.teaching.comparing import Compared, side_by_side
from drafting.teaching.taught import TaughtDraft, teach
from drafting.workroom import Work
from service.drafts import Drafted, worked
from service.schemas import OrderForm
from service.teaching.form import SheetOrder
from service.troubles import drafting_problem


@dataclass(frozen=True, slots=True)
class SheetFormat:
    """What a draft sheet can be answered as: one row of `SHEET_FORMATS`."""

    name: str
    media_type: str
    extension: str
    write: Callable[[SheetOrder, Work, TaughtDraft, int | None], bytes]
    beside: Callable[[Compared], bytes]


def drawn_sheet(
    asked: SheetOrder, form: OrderForm, chosen: SheetFormat, step: int | None
) -> Drafted:
    """Draft an order and teach it.

    Args:
        asked: The request.
        form: The form that orders are filled in on.
        chosen: The format of the answer.
        step: Number of the step that a picture shows; None for the finished draft.

    Raises:
        ProblemError: The craft refuses the order, the pattern is unsound, or the sheet cannot be
            made as it is asked for.
    """
    done = worked(asked.order, form, steps=True)
    other = worked(asked.other, form, steps=True) if asked.other else None
    try:
        body = _beside(asked, done, other, chosen) if other else _sheet(asked, done, chosen, step)
    except DraftingError as error:
        raise drafting_problem(
            error, asked.order.unit, lambda _: False, asked.form.language
        ) from None
    return Drafted(
        body,
        chosen.media_type,
        chosen.extension,
        done.verdict,
        pattern_id(done),
        language=taught_in(asked.form.language),
    )


def _sheet(asked: SheetOrder, done: Work, chosen: SheetFormat, step: int | None) -> bytes:
    draft = teach(done, asked.order.garment, asked.form, invented=asked.invented)
    if step is not None and chosen.name != "svg":
        raise OutputError("A step is shown by a picture: ask for format svg.", where="step")
    return chosen.write(asked, done, draft, step)


def _beside(asked: SheetOrder, one: Work, two: Work, chosen: SheetFormat) -> bytes:
    drafts = tuple(
        teach(work, asked.order.garment, asked.form, invented=asked.invented) for work in (one, two)
    )
    return chosen.beside(side_by_side((one, two), (drafts[0], drafts[1])))


def _json(asked: SheetOrder, done: Work, draft: TaughtDraft, _: int | None) -> bytes:
    told = draft_json.document(done, draft)
    if asked.frames:
        steps = (step.number for step in draft.steps)
        told["frames"] = [draft_svg.write(draft, number).decode() for number in steps]
    return compact(told)


def _svg(_: SheetOrder, __: Work, draft: TaughtDraft, step: int | None) -> bytes:
    return draft_svg.write(draft, step)


def _pdf(asked: SheetOrder, done: Work, draft: TaughtDraft, _: int | None) -> bytes:
    from drafting.export import draft_pdf  # noqa: PLC0415 - a service writes PDF in other processes

    if not asked.form.blank:
        return draft_pdf.write(draft)
    told = replace(asked.form, blank=False)
    return draft_pdf.write(draft, teach(done, asked.order.garment, told))


def _beside_pdf(compared: Compared) -> bytes:
    from drafting.export import draft_beside_pdf  # noqa: PLC0415 - as above

    return draft_beside_pdf.write(compared)


SHEET_FORMATS: dict[str, SheetFormat] = {
    "json": SheetFormat("json", "application/json", "json", _json, draft_beside.write_json),
    "svg": SheetFormat("svg", "image/svg+xml", "svg", _svg, draft_beside.write_svg),
    "pdf": SheetFormat("pdf", "application/pdf", "pdf", _pdf, _beside_pdf),
}
"""JSON tells every step; SVG is a picture of one of them, or of the finished draft; PDF is the
class sheet. The first is the default."""
