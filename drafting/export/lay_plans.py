"""A lay plan as JSON (mm and mm², Y down), as one small SVG, and as a PDF with a page a cloth.

In the JSON a plan's frame has its origin at the upper left corner of the cloth as it lies: X runs
along the cloth from its squared end, Y down to the lower selvedge or the fold.
"""

from __future__ import annotations

from dataclasses import replace
from io import BytesIO
from typing import TYPE_CHECKING

from drafting import DRAFTING_VERSION
from drafting.drawing import PAPERS, Sheet
from drafting.drawing.output import sheet_of
from drafting.errors import OutputError
from drafting.export import svg
from drafting.export.compact import compact
from drafting.export.identity import Plain, in_mm
from drafting.export.ink import POINT, Ink
from drafting.export.json import finding_document
from drafting.export.language import told_finding, told_piece
from drafting.export.lay_full import write_full
from drafting.export.paths import MM, downward, path_data, rounded
from drafting.export.pdf import undated
from drafting.geometry import shift
from drafting.language import say
from drafting.laying.engine import NAME, VERSION
from drafting.laying.picture import pictures
from drafting.laying.table import high

if TYPE_CHECKING:
    from drafting.drawing import Output
    from drafting.geometry import Transform
    from drafting.laying import Amount, ClothPlan, LayPlan, Placement
    from drafting.workroom import Work

PREFIX = "lay"
"""Ids of the SVG start with it."""
LEAST_ROOM = 12.0
"""A small plan needs at least so much breadth and height, in cm."""
APART = 1.0
"""Between two cloths in one SVG, in cm of paper."""


def write_json(plan: LayPlan, output: Output) -> bytes:
    """The plan as UTF-8 JSON, on one line."""
    return compact(document(told_plan(plan, output)))


def told_plan(plan: LayPlan, output: Output) -> LayPlan:
    """The plan with titles and remarks in the language and unit asked for; names and codes stay."""
    language, unit = output.language, output.unit

    def told(placement: Placement) -> Placement:
        finished = placement.finished
        return replace(
            placement,
            garment=say(placement.garment, language),
            finished=replace(finished, piece=told_piece(finished.piece, language)),
        )

    cloths = tuple(
        replace(
            cloth,
            placements=tuple(map(told, cloth.placements)),
            findings=tuple(told_finding(f, language, unit) for f in cloth.findings),
        )
        for cloth in plan.cloths
    )
    findings = tuple(told_finding(f, language, unit) for f in plan.findings)
    return replace(plan, cloths=cloths, findings=findings)


def document(plan: LayPlan) -> Plain:
    """The plan as plain values."""
    return {
        "drafting_version": DRAFTING_VERSION,
        "unit": "mm",
        "budget": plan.laying.budget,
        "gap": rounded(plan.laying.gap * MM),
        "engine": {"name": NAME, "version": VERSION},
        "cloths": [_cloth(cloth) for cloth in plan.cloths],
        "findings": [finding_document(finding) for finding in plan.findings],
    }


def _cloth(plan: ClothPlan) -> Plain:
    return {
        "cloth": plan.kind,
        "options": in_mm(plan.cloth),
        "usable_width": _mm(plan.cloth.usable),
        "stretches": [
            {"layers": s.kind, "start": _mm(s.start), "length": _mm(s.length)}
            for s in plan.stretches
        ],
        "length": _mm(plan.length),
        "buy": _amount(plan.buy),
        "use": rounded(plan.use),
        "area": rounded(plan.area * MM * MM),
        "waste": rounded(plan.waste * MM * MM),
        "least_length": _mm(plan.bound),
        "ratio": rounded(plan.ratio),
        "engine": plan.engine,
        "placements": [_placement(p, downward(0.0, high(plan))) for p in plan.placements],
        "findings": [finding_document(finding) for finding in plan.findings],
        "alternatives": [
            {
                "width": _mm(other.width),
                "buy": None if other.buy is None else _amount(other.buy),
                "engine": other.engine,
            }
            for other in plan.alternatives
        ],
    }


def _amount(amount: Amount) -> Plain:
    return {
        "exact": _mm(amount.exact),
        "metric": _mm(amount.metric),
        "yards": amount.yards,
    }


def _placement(placement: Placement, to: Transform) -> Plain:
    piece, outline = placement.finished.piece, placement.outline.transformed(to)
    left, upper, right, lower = outline.bounds()
    corner, _, _, top = piece.outline.bounds()
    matrix = downward(corner, top).inverse.then(placement.move).then(to)
    return {
        "order": placement.order,
        "reference": placement.reference,
        "piece": piece.name,
        "title": piece.title,
        "number": piece.number,
        "copies": list(placement.copies),
        "layers": placement.layers,
        "turn": placement.turn,
        "mirrored": placement.mirrored,
        "x": rounded(left),
        "y": rounded(upper),
        "length": rounded(right - left),
        "breadth": rounded(lower - upper),
        "matrix": [rounded(getattr(matrix, name)) for name in "abcdef"],
        "outline": path_data(placement.outline, to),
    }


def _mm(cm: float) -> float:
    return rounded(cm * MM)


def write_svg(plan: LayPlan, output: Output) -> bytes:
    """All cloths under each other, drawn small, for a page as broad as the paper is high."""
    width, height = _room(output)
    told = told_plan(plan, output)
    sheets = pictures(told, output, width=width, height=height)
    tall = sum(sheet.height for sheet in sheets) + APART * (len(sheets) - 1)
    groups, top = [], tall
    for sheet in sheets:
        groups += [g.transformed(shift(0.0, top - sheet.height)) for g in sheet.groups]
        top -= sheet.height + APART
    whole = Sheet(
        width=width,
        height=tall,
        title="; ".join(sheet.title for sheet in sheets),
        description=" ".join(sheet.description for sheet in sheets),
        groups=tuple(groups),
    )
    return svg.render(whole, PREFIX)


def write_pdf(works: tuple[Work, ...], plan: LayPlan, output: Output) -> bytes:
    """A page for each cloth: drawn small on paper of a fixed size, turned sideways; else full size.

    Args:
        works: The orders that were laid, in their order.
        plan: Their plan.
        output: Paper, margin, language and unit.

    Raises:
        OutputError: The margins leave no room, or the roll is too narrow.
    """
    if output.paper not in PAPERS:
        return write_full(works, plan, output)
    paper, out = sheet_of(output), BytesIO()
    width, height = _room(output)
    sheets = pictures(told_plan(plan, output), output, width=width, height=height)
    size = (paper.height / MM * POINT, paper.width / MM * POINT)
    title = "; ".join(sheet.title for sheet in sheets)
    canvas = undated(out, size, title, output.language)
    for sheet in sheets:
        top = size[1] - (output.margin / MM + sheet.height) * POINT
        canvas.translate(output.margin / MM * POINT, top)
        for group in sheet.groups:
            Ink(canvas).items(group.items)
        canvas.showPage()
    canvas.save()
    return out.getvalue()


def _room(output: Output) -> tuple[float, float]:
    """Breadth and height within the margins of the sheet turned sideways, in cm.

    Raises:
        OutputError: The margins leave no room for a plan.
    """
    paper = sheet_of(output)
    wide, high = (side / MM - 2 * output.margin / MM for side in (paper.height, paper.width))
    if wide < LEAST_ROOM or high < LEAST_ROOM:
        raise OutputError(
            f"The margin leaves too little of a page of {paper.width:g} by {paper.height:g} mm: "
            "choose a smaller margin or a bigger paper.",
            where="output.margin",
            code="no_room_on_paper",
            received=output.margin,
        )
    return wide, high
