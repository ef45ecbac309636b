"""The pattern as JSON: everything in mm and mm², Y down, each piece in its own frame.

A piece's frame has its origin at the upper left corner of the box round its stitching line.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from drafting import DRAFTING_VERSION
from drafting.checks import finished_measurements
from drafting.export.compact import compact
from drafting.export.identity import Plain, body, in_mm, pattern_id
from drafting.export.language import unit_of
from drafting.export.paths import MM, bounds, downward, joined, path_data, rounded
from drafting.export.sheets import cautions, told_pieces

if TYPE_CHECKING:
    from drafting.checks import SeamMeasured
    from drafting.drawing import Output
    from drafting.geometry import Point, Transform, Vector
    from drafting.pattern import (
        Check,
        Dart,
        Finding,
        FinishedNotch,
        FinishedPattern,
        FinishedPiece,
        Notion,
        Pleat,
        SeamPart,
        SewingStep,
    )
    from drafting.workroom import Work

FACTORS = {"cm": MM, "deg": 1.0, "kg": 1.0, "count": 1.0}


def write(work: Work, output: Output) -> bytes:
    """The pattern as UTF-8 JSON, on one line."""
    return compact(document(work, output))


def document(work: Work, output: Output) -> Plain:
    """The pattern as plain values, in the order in which the answer lists them."""
    finished = work.pattern
    pattern = finished.pattern
    return {
        "id": pattern_id(work),
        "drafting_version": DRAFTING_VERSION,
        "unit": "mm",
        "verdict": work.verdict,
        "garment": in_mm(work.spec),
        "body": body(work),
        **_shrinkage(output),
        "pieces": [_piece(p, i) for i, p in enumerate(told_pieces(work, output), 1)],
        "seams": [_seam(s) for s in work.seams],
        "sewing": [_step(s) for s in pattern.sewing],
        "checks": [_check(c) for c in finished.checks],
        "finished_measurements": _finished_measurements(finished),
        "notions": [_notion(n) for n in pattern.notions],
        "findings": [finding_document(f, finished.checks) for f in finished.findings],
        "cautions": list(cautions(work, output)),
    }


def _shrinkage(output: Output) -> Plain:
    """What the pieces are drawn larger for, in percent, where they are."""
    along, across = output.shrinkage.lengthwise, output.shrinkage.crosswise
    if not (along or across):
        return {}
    return {"shrinkage": {"lengthwise": rounded(along), "crosswise": rounded(across)}}


def _piece(finished: FinishedPiece, order: int) -> Plain:
    piece = finished.piece
    left, _, _, top = piece.outline.bounds()
    to = downward(left, top)
    edges = _edges(finished, to)
    return {
        "name": piece.name,
        "title": piece.title,
        "number": piece.number or order,
        "half": piece.half,
        "cut": [
            {"cloth": c.cloth, "quantity": c.quantity, "mirrored": c.mirrored} for c in piece.cut
        ],
        "edges": edges,
        "stitch_line": joined([edge["path"] for edge in edges]),
        "cut_line": path_data(finished.cut_line, to),
        "area": rounded(piece.outline.area() * MM * MM),
        "darts": [_dart(d, to) for d in piece.darts],
        "pleats": [_pleat(p, to) for p in piece.pleats],
        "notches": [_notch(n, to) for n in finished.notches],
        "grain_line": [_point(p, to) for p in piece.grain],
        "levels": {name: [_point(a, to), _point(b, to)] for name, a, b in piece.levels},
        "lengthen_lines": [[_point(a, to), _point(b, to)] for a, b in piece.lengthen],
        "marks": [{"kind": m.kind, "path": path_data(m.path, to)} for m in piece.marks],
        "labels": [
            {
                "text": label.text,
                "at": _point(label.at, to),
                "height": rounded(label.height * MM),
                "angle": rounded(-label.angle),
            }
            for label in finished.labels
        ],
    }


def _edges(finished: FinishedPiece, to: Transform) -> list[Plain]:
    return [
        {
            "name": edge.name,
            "path": path_data(edge.path, to),
            "cut_length": _mm(edge.path.length()),
            "length": _mm(finished.piece.sewn_length(edge.name)),
            "allowance": _mm(allowance),
            "role": str(edge.role),
        }
        for edge, allowance in zip(finished.piece.edges, finished.allowances, strict=True)
    ]


def _dart(dart: Dart, to: Transform) -> Plain:
    return {
        "edge": dart.edge,
        "intake": _mm(dart.intake),
        "length": _mm(dart.length),
        "legs": [_mm(leg) for leg in dart.legs],
        "mouth": [_point(dart.first, to), _point(dart.second, to)],
        "point": _point(dart.point, to),
        "drill": _point(dart.drill, to),
        "bends": [_point(bend, to) for bend in dart.bends or ()],
    }


def _pleat(pleat: Pleat, to: Transform) -> Plain:
    fold, placed = pleat.lines
    return {
        "edge": pleat.edge,
        "intake": _mm(pleat.intake),
        "depth": _mm(pleat.intake / 2),
        "mouth": [_point(pleat.first, to), _point(pleat.second, to)],
        "fold": path_data(fold, to),
        "placement": path_data(placed, to),
    }


def _notch(finished: FinishedNotch, to: Transform) -> Plain:
    notch = finished.notch
    return {
        "edge": notch.edge,
        "at": _mm(notch.at),
        "count": notch.count,
        "match": notch.match,
        "point": _point(finished.point, to),
        "direction": _direction(finished.direction),
    }


def _seam(measured: SeamMeasured) -> Plain:
    seam = measured.seam
    sides = zip((seam.one, seam.two), measured.lengths, strict=True)
    return {
        "name": seam.name,
        "sides": [
            [_part(p, length) for p, length in zip(parts, lengths, strict=True)]
            for parts, lengths in sides
        ],
        "ease": {
            "kind": seam.ease.kind,
            "wanted": _mm(seam.ease.wanted),
            "min": _mm(seam.ease.low),
            "max": _mm(seam.ease.high),
        },
        "difference": _mm(measured.difference),
        "tolerance": _mm(measured.tolerance),
        "matches": measured.matches,
    }


def _part(part: SeamPart, length: float) -> Plain:
    return {
        "piece": part.piece,
        "edge": part.edge,
        "copy": part.copy,
        "count": part.count,
        "reversed": part.reversed,
        "length": _mm(length),
    }


def _step(step: SewingStep) -> Plain:
    return {"text": step.text, "seams": list(step.seams), "darts": list(step.darts)}


def _check(check: Check) -> Plain:
    factor = FACTORS[check.unit]
    return {
        "name": check.name,
        "kind": check.kind,
        "unit": "deg" if check.unit == "deg" else "mm",
        "wanted": rounded(check.wanted * factor),
        "allowed": bounds(check.low, check.high, factor),
        "drafted": rounded(check.drafted * factor),
        "passed": check.passed,
    }


def _finished_measurements(finished: FinishedPattern) -> Plain:
    units = {want.name: want.unit for want in finished.pattern.finished_measurements}
    return {
        name: rounded(value * FACTORS[units[name]])
        for name, value in finished_measurements(finished.pattern)
    }


def _notion(notion: Notion) -> Plain:
    length = {} if notion.length is None else {"length": _mm(notion.length)}
    return {"name": notion.name, "quantity": notion.quantity, **length}


def finding_document(finding: Finding, checks: tuple[Check, ...] = ()) -> Plain:
    """A finding, its numbers in mm (degrees, kilograms and counts stay).

    Args:
        finding: In cm.
        checks: Those that it may speak of.
    """
    factor = FACTORS[unit_of(finding, checks)]
    told: dict[str, Any] = {
        "code": finding.code,
        "severity": finding.severity,
        "where": finding.where,
        "message": finding.message,
    }
    if finding.measured is not None:
        told["measured"] = rounded(finding.measured * factor)
    if finding.allowed is not None:
        told["allowed"] = bounds(*finding.allowed, factor)
    return told


def _mm(cm: float) -> float:
    return rounded(cm * MM)


def _point(point: Point, to: Transform) -> list[float]:
    image = to.point(point)
    return [rounded(image.x), rounded(image.y)]


def _direction(vector: Vector) -> list[float]:
    return [round(vector.x, 6) + 0.0, round(-vector.y, 6) + 0.0]
