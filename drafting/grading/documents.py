"""A range, its table and its grade report as plain values for JSON, and the table as CSV.

Lengths in mm, Y down.
"""

from __future__ import annotations

import csv
from collections.abc import Callable
from io import StringIO
from typing import Any

from drafting import DRAFTING_VERSION
from drafting.drawing import Output
from drafting.drawing.words import plain
from drafting.errors import DraftingError
from drafting.export.identity import in_mm
from drafting.export.json import document
from drafting.export.language import told as in_language
from drafting.export.paths import MM, number, rounded
from drafting.geometry import Vector
from drafting.grading.grade import grade_report
from drafting.grading.measures import MeasureRow, MeasureTable, measure_table
from drafting.grading.report import GradeFinding, GradeReport, PointMoves
from drafting.grading.sizes import SizeDrafted, SizeRange
from drafting.language import Language, finding_text, say

Plain = dict[str, Any]

FACTORS = {"cm": MM, "deg": 1.0}
UNITS = {"cm": "mm", "deg": "deg"}


def refusal_document(error: DraftingError) -> Plain:
    """Why a size cannot be drafted."""
    return {"code": error.code, "where": error.where, "message": error.message}


def range_document(
    sizes: SizeRange,
    output: Output,
    *,
    allow_unsound: bool = False,
    refuse: Callable[[DraftingError], Plain] = refusal_document,
) -> Plain:
    """The whole range: each size's pattern or refusal, the table, and the grade report.

    Args:
        sizes: The range.
        output: Language and unit of the texts.
        allow_unsound: Give the patterns of unsound sizes too; else only what failed.
        refuse: Tells why a size cannot be drafted.
    """
    return {
        "drafting_version": DRAFTING_VERSION,
        "unit": "mm",
        "garment": in_mm(sizes.spec),
        "sizes": [_size(size, output, refuse, allow_unsound) for size in sizes.sizes],
        "measures": table_document(measure_table(sizes)),
        "grade": grade_document(grade_report(sizes), output.language),
    }


def _size(
    size: SizeDrafted,
    output: Output,
    refuse: Callable[[DraftingError], Plain],
    allow_unsound: bool,  # noqa: FBT001 - as the client's plain yes or no
) -> Plain:
    told = {"name": size.name, **size_told(size, refuse)}
    if size.work is not None and (size.sound or allow_unsound):
        told["pattern"] = document(in_language(size.work, output), output)
    return told


def size_told(size: SizeDrafted, refuse: Callable[[DraftingError], Plain]) -> Plain:
    """The verdict of a size, and what failed or why it cannot be drafted."""
    if size.work is None:
        return {
            "verdict": "refused",
            "refusal": refuse(size.refusal or DraftingError("Not drafted.")),
        }
    errors = [f.message for f in size.work.pattern.findings if f.severity == "error"]
    return {"verdict": size.work.verdict, **({"failed": errors} if errors else {})}


def table_document(table: MeasureTable) -> Plain:
    """The table: names of the sizes, and in each row one value for each of them."""
    return {
        "sizes": list(table.sizes),
        "rows": [
            {"kind": row.kind, "name": row.name, "unit": UNITS[row.unit], "values": _values(row)}
            for row in table.rows
        ],
    }


def table_csv(table: MeasureTable) -> str:
    """The table as CSV with a heading (RFC 4180); an empty field where a size has no value."""
    out = StringIO()
    rows = csv.writer(out)
    rows.writerow(["kind", "measure", "unit", *table.sizes])
    for row in table.rows:
        values = ("" if value is None else number(value) for value in _values(row))
        rows.writerow([row.kind, row.name, UNITS[row.unit], *values])
    return out.getvalue()


def _values(row: MeasureRow) -> list[float | None]:
    factor = FACTORS[row.unit]
    return [None if value is None else rounded(value * factor) for value in row.values]


def grade_document(report: GradeReport, language: Language = "en") -> Plain:
    """The grade report; steps are [right, down] in mm, one for each pair of neighbouring sizes."""
    return {
        "sizes": list(report.sizes),
        "origin": report.origin,
        "points": [_point(point) for point in report.points],
        "findings": [_finding(finding, language) for finding in report.findings],
    }


def _point(point: PointMoves) -> Plain:
    return {
        "chapter": point.chapter,
        "name": point.name,
        "steps": [None if step is None else _down(step) for step in point.steps],
    }


def _down(step: Vector) -> list[float]:
    return [rounded(step.x * MM), rounded(-step.y * MM)]


def _finding(finding: GradeFinding, language: Language) -> Plain:
    text = finding_text(finding.code, language)
    told: Plain = {
        "code": finding.code,
        "where": finding.where,
        "sizes": list(finding.sizes),
        "message": text.format(where=_where(finding, language)) if text else finding.message,
        "names": list(finding.names),
    }
    if finding.by is not None:
        told["by"] = rounded(finding.by * FACTORS[finding.unit])
    return told


def _where(finding: GradeFinding, language: Language) -> str:
    """What a sentence in another language speaks of, and between which sizes."""
    said = say(plain(finding.where), language)
    return f"{said[:1].upper()}{said[1:]} ({' – '.join(finding.sizes)})"
