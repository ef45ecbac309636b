"""One order, one way through: body and options in, a finished and checked pattern out."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import Any, Literal

from drafting.body import Body
from drafting.checks import SeamMeasured, check, seams
from drafting.craft.scrap import Scrap
from drafting.craft.sheet import DraftSheet
from drafting.garments import Garment
from drafting.geometry import Memory
from drafting.pattern import Finding, Finish, FinishedPattern, Pattern
from drafting.pattern.finish import finish_pattern
from drafting.trace import Step

Verdict = Literal["sound", "sound_with_remarks", "unsound"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Work:
    """What leaves the workroom.

    Attributes:
        body: The measures used, each with its origin.
        spec: The garment's options, all resolved.
        finish: Purpose and allowances.
        steps: The construction in the order of the pencil; empty where it was not asked for.
        pattern: The finished pattern with its checks and findings.
        seams: Every seam with the lengths of its sides.
        verdict: Whether it can be cut: errors make it unsound, remarks are told.
        reference: The client's own name for the order, as typed; empty where none was given.
        date: The client's own date of the order, year, month, day; empty where none was given.
    """

    body: Body
    spec: Any
    finish: Finish
    steps: tuple[Step, ...]
    pattern: FinishedPattern
    seams: tuple[SeamMeasured, ...]
    verdict: Verdict
    reference: str = ""
    date: str = ""
    memory: Memory = field(default_factory=Memory, init=False, repr=False, compare=False)

    @property
    def called(self) -> str:
        """What documents call the order: its reference and its date."""
        return ", ".join(said for said in (self.reference.strip(), self.date) if said)


def work(
    garment: Garment,
    body: Body,
    spec: Any,
    finish: Finish,
    *,
    reference: str = "",
    date: str = "",
    findings: tuple[Finding, ...] = (),
    steps: bool = True,
) -> Work:
    """Draft, finish and check a garment for a body. Same order, same result.

    Args:
        garment: The chapter.
        body: Measures in cm, vetted.
        spec: The chapter's options, lengths in cm.
        finish: Purpose and allowances in cm.
        reference: The client's own name for the order.
        date: The client's own date of it; documents carry no other.
        findings: Remarks of the vetting, told before the draft's own.
        steps: Whether the construction is recorded: only draft sheets and comparisons of sizes
            tell it, and the pattern is the same without.

    Raises:
        DraftingError: The order cannot be drafted; its children say why.
    """
    net, told = draft(garment, body, spec, steps=steps)
    net = replace(net, pieces=tuple(replace(p, number=n) for n, p in enumerate(net.pieces, 1)))
    cut = finish_pattern(net, finish)
    checks, found = check(cut)
    remarks = (*findings, *_outside(garment, body), *net.findings, *found)
    return Work(
        body=body,
        spec=replace(spec, **dict(net.resolved)),
        finish=finish,
        steps=told,
        pattern=replace(cut, checks=checks, findings=remarks),
        seams=seams(net),
        verdict=verdict(remarks),
        reference=reference,
        date=date,
    )


def draft(
    garment: Garment, body: Body, spec: Any, *, steps: bool
) -> tuple[Pattern, tuple[Step, ...]]:
    """The net pattern and the steps that led to it; on scrap paper where nobody wants the steps.

    Raises:
        DraftingError: The order cannot be drafted; its children say why.
    """
    if not steps:
        return garment.draw(body.bare, spec, Scrap()), ()
    sheet = DraftSheet()
    return garment.draw(body, spec, sheet), sheet.steps


def verdict(findings: tuple[Finding, ...]) -> Verdict:
    """Unsound with an error among the findings, with remarks where there is a warning."""
    severities = {finding.severity for finding in findings}
    if "error" in severities:
        return "unsound"
    return "sound_with_remarks" if "warning" in severities else "sound"


def _outside(garment: Garment, body: Body) -> tuple[Finding, ...]:
    """Measures outside the range in which the method is known to be good."""
    return tuple(
        Finding(
            code="outside_known_range",
            severity="warning",
            where=valid.measure,
            message=f"The method is known to be good for {valid.measure} from {valid.low:g} to "
            f"{valid.high:g} cm; sew a toile first.",
            measured=body.value(valid.measure),
            allowed=(valid.low, valid.high),
        )
        for valid in garment.valid
        if body.has(valid.measure) and not valid.low <= body.value(valid.measure) <= valid.high
    )
