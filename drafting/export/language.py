"""A work told in another language or unit: titles, notions, order of sewing, remarks, the date."""

from __future__ import annotations

from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING

from drafting.body import MEASURES
from drafting.drawing.words import amount, plain
from drafting.language import Language, day, decimal, finding_text, say, with_lengths

if TYPE_CHECKING:
    from drafting.drawing import Output
    from drafting.drawing.words import Unit
    from drafting.pattern import Check, Finding, Pattern, Piece
    from drafting.workroom import Work


def told(work: Work, output: Output) -> Work:
    """The same work with its texts in the language and unit asked for; names and codes stay."""
    language, finished = output.language, work.pattern
    findings = tuple(
        told_finding(f, language, output.unit, finished.checks) for f in finished.findings
    )
    work = replace(work, date=day(work.date, language) if work.date else "")
    if language == "en":
        return replace(work, pattern=replace(finished, findings=findings))
    pattern = replace(
        finished,
        pattern=_pattern(finished.pattern, language),
        pieces=tuple(replace(p, piece=told_piece(p.piece, language)) for p in finished.pieces),
        findings=findings,
    )
    return replace(work, pattern=pattern)


def _pattern(pattern: Pattern, language: Language) -> Pattern:
    return replace(
        pattern,
        title=say(pattern.title, language),
        pieces=tuple(told_piece(p, language) for p in pattern.pieces),
        notions=tuple(replace(n, name=say(n.name, language)) for n in pattern.notions),
        sewing=tuple(replace(s, text=say(s.text, language)) for s in pattern.sewing),
        cautions=tuple(say(c, language) for c in pattern.cautions),
    )


def told_piece(piece: Piece, language: Language) -> Piece:
    """The piece with its title in a language."""
    title, _, side = piece.title.partition(", ")
    if side in ("left", "right"):
        return replace(piece, title=f"{say(title, language)}, {say(side, language)}")
    return replace(piece, title=say(piece.title, language))


def told_finding(
    finding: Finding, language: Language, unit: Unit = "cm", checks: tuple[Check, ...] = ()
) -> Finding:
    """A finding in a language and unit: the sentence of its code, else its own with its lengths.

    Args:
        finding: As it was found, in cm and English.
        language: Of the sentence.
        unit: Of its lengths.
        checks: Those that it may speak of, each with the unit that it counts in.
    """
    text = finding_text(finding.code, language)
    if text is None:
        told = partial(amount, unit=unit, language=language)
        kept = finding.message if unit == "cm" else with_lengths(finding.message, told)
        return replace(finding, message=kept)
    low, high = finding.allowed or (None, None)
    counted = unit_of(finding, checks)
    values = {
        name: _amount(value, counted, unit, language)
        for name, value in (("measured", finding.measured), ("low", low), ("high", high))
    }
    return replace(finding, message=_opened(text.format(where=_where(finding, language), **values)))


def unit_of(finding: Finding, checks: tuple[Check, ...]) -> str:
    """The unit of the check or measure that a finding speaks of, else the finding's own."""
    for check in checks:
        if check.name == finding.where:
            return check.unit
    return MEASURES[finding.where].unit if finding.where in MEASURES else finding.unit


def _where(finding: Finding, language: Language) -> str:
    """The measure by its title; a check, a seam, or a piece and its edge by their words."""
    if finding.where in MEASURES:
        return say(MEASURES[finding.where].title, language)
    return ", ".join(say(plain(part), language) for part in finding.where.split("."))


def _opened(sentence: str) -> str:
    return sentence[:1].upper() + sentence[1:]


def _amount(value: float | None, counted: str, unit: Unit, language: Language) -> str:
    if value is None or abs(value) == float("inf"):
        return "–"
    if counted == "cm":
        return amount(value, unit, language)
    sign = {"deg": "°", "count": ""}.get(counted, f" {counted}")
    return f"{decimal(value, language)}{sign}"
