"""A work told in another language: titles, notions, order of sewing, remarks, cautions."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from drafting.language import Language, decimal, finding_text, say

if TYPE_CHECKING:
    from drafting.pattern import Finding, Pattern, Piece
    from drafting.workroom import Work


def told(work: Work, language: Language) -> Work:
    """The same work with its texts in a language; names and codes stay English."""
    if language == "en":
        return work
    finished = work.pattern
    pattern = replace(
        finished,
        pattern=_pattern(finished.pattern, language),
        pieces=tuple(replace(p, piece=told_piece(p.piece, language)) for p in finished.pieces),
        findings=tuple(told_finding(f, language) for f in finished.findings),
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


def told_finding(finding: Finding, language: Language) -> Finding:
    """The sentence of the finding's code with its numbers, in cm or degrees; else as it is."""
    text = finding_text(finding.code, language)
    if text is None:
        return finding
    low, high = finding.allowed or (None, None)
    told_values = {
        "where": finding.where.replace("_", " "),
        "measured": _amount(finding.measured, finding.unit, language),
        "low": _amount(low, finding.unit, language),
        "high": _amount(high, finding.unit, language),
    }
    return replace(finding, message=text.format(**told_values))


def _amount(value: float | None, unit: str, language: Language) -> str:
    sign = "°" if unit == "deg" else f" {unit}"
    return "–" if value is None else f"{decimal(value, language)}{sign}"
