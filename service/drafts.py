"""From an order to the bytes of a pattern: the one way that routes and the command line go."""

from __future__ import annotations

from dataclasses import dataclass, replace
from time import perf_counter
from typing import TYPE_CHECKING, Any

from drafting.body import prepare
from drafting.errors import DraftingError
from drafting.export import pattern_id
from drafting.export.language import told_finding
from drafting.workroom import work
from service.lengths import reword, told, told_limits
from service.problems import ProblemError, Trouble, in_short
from service.troubles import drafting_problem

if TYPE_CHECKING:
    from drafting.body import Body
    from drafting.drawing import Output
    from drafting.drawing.words import Unit as SheetUnit
    from drafting.export import Format
    from drafting.garments.garment import Garment
    from drafting.language import Language
    from drafting.pattern import Finding
    from drafting.workroom import Work
    from service.schemas import Order, OrderForm
    from service.sizes import SizeChoice


@dataclass(frozen=True, slots=True)
class Drafted:
    """The bytes of a pattern and what its headers say.

    Attributes:
        body: The document.
        media_type: Of the document.
        extension: Ending of its file's name.
        verdict: Whether the pattern can be cut.
        pattern_id: Digest of the resolved order.
        stages: What was done to get it, each with its seconds.
        findings: Codes and severities of the remarks on it.
        language: Of its texts.
    """

    body: bytes
    media_type: str
    extension: str
    verdict: str
    pattern_id: str
    stages: tuple[tuple[str, float], ...] = ()
    findings: tuple[tuple[str, str], ...] = ()
    language: Language = "en"


def drafted(order: Order, form: OrderForm, chosen: Format) -> Drafted:
    """Draft an order and write it in a format.

    Raises:
        ProblemError: The craft refuses the order, or the pattern is unsound.
    """
    began = perf_counter()
    done = worked(order, form)
    drawn = perf_counter()
    made = encoded(done, order, form, chosen)
    stages = (("draft", drawn - began), ("write", perf_counter() - drawn))
    return replace(made, stages=stages)


def encoded(done: Work, order: Order, form: OrderForm, chosen: Format) -> Drafted:
    """A work in a format.

    Raises:
        ProblemError: It cannot be made in the form that the order asks for.
    """
    try:
        return _written(done, order.output, chosen)
    except DraftingError as error:
        raise refusal(error, order, form) from None


def worked(order: Order, form: OrderForm, *, steps: bool = False) -> Work:
    """The work of an order, refused where it is unsound and the order does not allow that.

    Raises:
        ProblemError: The craft refuses the order, or the pattern is unsound.
    """
    try:
        done = _draft(order, steps=steps)
    except DraftingError as error:
        raise refusal(error, order, form) from None
    if done.verdict == "unsound" and not order.allow_unsound:
        raise unsound(done, order)
    return done


def body_of(order: Order) -> tuple[Body, tuple[Finding, ...]]:
    """The body that an order is for, vetted and completed, and remarks on it.

    Raises:
        DraftingError: The measures cannot be drafted for.
    """
    garment = order.garment
    if order.size:
        return order.size.body()
    return prepare(
        order.measurements, order.figure, garment.needs, garment.optional, order.accept_unusual
    )


def _draft(order: Order, *, steps: bool) -> Work:
    body, findings = body_of(order)
    return work(
        order.garment,
        body,
        order.spec,
        order.finish,
        reference=order.reference,
        date=order.date.isoformat() if order.date else "",
        findings=findings,
        steps=steps,
    )


def _written(done: Work, output: Output, chosen: Format) -> Drafted:
    return Drafted(
        chosen.write(done, output),
        chosen.media_type,
        chosen.extension,
        done.verdict,
        pattern_id(done),
        findings=tuple((found.code, found.severity) for found in done.pattern.findings),
        language=output.language,
    )


def sample_order(garment: Garment) -> dict[str, Any]:
    """An order for the garment's reference body, an invented person, as a client would send it."""
    return {
        "unit": "cm",
        "figure": "women",
        "measurements": dict(garment.sample),
        "garment": {"kind": garment.kind},
    }


def sample_check() -> dict[str, Any]:
    """Measures of an invented person, as a client would send them to be looked over."""
    return {
        "unit": "cm",
        "figure": "women",
        "measurements": {
            "waist_girth": 74,
            "hip_girth": 101,
            "side_waist_to_hip": {"left": 20, "right": 21},
            "stature": 168,
        },
    }


def sample_range(kind: str) -> dict[str, Any]:
    """A size range as a client would ask for it."""
    return {
        "garment": {"kind": kind},
        "sizes": {"table": "women", "from": "84-regular", "to": "100-regular"},
    }


def sample_lay(garment: Garment) -> dict[str, Any]:
    """A request for a lay plan as a client would send it."""
    return {
        "unit": "cm",
        "orders": [sample_order(garment)],
        "cloths": {"main": {"width": 150, "one_way": False}},
        "laying": {"budget": 1},
    }


def size_order(garment: Garment, size: SizeChoice) -> dict[str, Any]:
    """An order for the garment as its options stand by themselves, in a size of a table."""
    return {"size": size.model_dump(), "garment": {"kind": garment.kind}}


def refusal(error: DraftingError, order: Order, form: OrderForm) -> ProblemError:
    """The problem of an order that the craft refuses, in the order's unit and language."""
    is_length = form.is_length(order.raw)
    return drafting_problem(error, order.unit, is_length, order.output.language)


def unsound(done: Work, order: Order) -> ProblemError:
    """The problem of a pattern that would not sew or fit: what failed, and by how much."""
    unit, language = order.unit, order.output.language
    counted = {check.name: check.unit for check in done.pattern.checks}
    found = (f for f in done.pattern.findings if f.severity == "error")
    on_sheet: SheetUnit = "in" if unit == "in" and language != "en" else "cm"
    errors = [told_finding(f, language, on_sheet, done.pattern.checks) for f in found]
    lengths = [counted.get(found.where, found.unit) == "cm" for found in errors]
    units = [unit if is_length else "cm" for is_length in lengths]
    troubles = tuple(_failure(found, u, language) for found, u in zip(errors, units, strict=True))
    headers = {"Content-Language": language}
    return ProblemError("unsound-pattern", in_short(troubles), troubles, headers=headers)


def _failure(found: Finding, unit: str, language: Language) -> Trouble:
    """What failed; "cm" leaves the numbers as they are, as for angles and counts."""
    return Trouble(
        pointer="",
        code=found.code,
        detail=reword(found.message, unit) if language == "en" else found.message,
        received=None if found.measured is None else told(found.measured, unit),
        allowed=None if found.allowed is None else told_limits(*found.allowed, unit),
    )
