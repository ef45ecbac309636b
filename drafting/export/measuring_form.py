"""A blank form to write measures on, as a PDF: figures with numbers, and a row for each measure."""

from __future__ import annotations

from collections.abc import Sequence
from io import BytesIO

from reportlab.platypus import (
    BaseDocTemplate,
    Flowable,
    Frame,
    KeepTogether,
    PageTemplate,
    Spacer,
    Table,
    TableStyle,
)

from drafting.body.measure import Measure
from drafting.drawing import PAPERS, Sheet
from drafting.drawing.measuring import TAPES, VIEWS, figure
from drafting.export.flow import MARGIN, SMALL, STEP, TITLE, Drawing, text
from drafting.export.ink import POINT
from drafting.export.pdf import undated

FIGURES = 0.5
"""Figures are drawn at this share of their size, so that three stand side by side."""

BEFORE = (
    "Wear thin, close clothes and no shoes. Tie a cord round the waist, let it settle, and leave "
    "it on. Stand easily, look ahead, breathe out. Take each measure twice; where the two differ "
    "by more than 1 cm, take it a third time. H beside a number: with a helper."
)
HEADS = ("", "Measure", "How it is taken", "First", "Second")
SHARES = (0.07, 0.21, 0.46, 0.13, 0.13)
ROWS = TableStyle(
    [
        ("GRID", (0, 0), (-1, -1), 0.4, "#777777"),
        ("VALIGN", (0, 0), (-1, -1), "MIDDLE"),
        ("TOPPADDING", (0, 0), (-1, -1), 2),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 4),
    ]
)


def write(measures: Sequence[Measure], title: str, paper: str = "a4") -> bytes:
    """A form for some measures.

    Args:
        measures: In the order in which they are to be taken.
        title: What they are taken for.
        paper: Name of a sheet of paper; A4 where it is none.
    """
    size = PAPERS.get(paper, PAPERS["a4"])  # type: ignore[call-overload]
    points = (size.width / 10 * POINT, size.height / 10 * POINT)
    edge = MARGIN * POINT
    room = (points[0] - 2 * edge, points[1] - 2 * edge)
    frame = Frame(edge, edge, *room, leftPadding=0, rightPadding=0, topPadding=0, bottomPadding=0)
    out = BytesIO()
    template = BaseDocTemplate(out, pagesize=points)
    template.addPageTemplates(PageTemplate(frames=[frame]))
    template.build(
        _story(measures, title, room[0]), canvasmaker=lambda *_, **__: undated(out, points, title)
    )
    return out.getvalue()


def _story(measures: Sequence[Measure], title: str, width: float) -> list[Flowable]:
    numbers = {measure.name: number for number, measure in enumerate(measures, 1)}
    rows: list[tuple[Flowable, ...]] = [tuple(text(head, SMALL) for head in HEADS)]
    rows += [_row(measure, numbers[measure.name]) for measure in measures]
    columns = [width * share for share in SHARES]
    return [
        text(title, TITLE),
        text("Name or number of the order: ______________________   Date: ______________"),
        text("Unit:  cm  /  inches      Figure:  women  /  men"),
        Spacer(0, 6),
        text(BEFORE, SMALL),
        Spacer(0, 6),
        KeepTogether([_figures(numbers, width)]),
        Spacer(0, 8),
        Table(rows, columns, style=ROWS, repeatRows=1),
    ]


def _row(measure: Measure, number: int) -> tuple[Flowable, ...]:
    helped = " H" if "helper" in measure.how else ""
    unit = {"cm": "", "deg": " (degrees)", "kg": " (kg)"}[measure.unit]
    sides = "left:" if measure.by_side else ""
    return (
        text(f"{number}{helped}", STEP),
        text(measure.title + unit),
        text(measure.how, SMALL),
        text(sides, SMALL),
        text(sides.replace("left", "right"), SMALL),
    )


def _figures(numbers: dict[str, int], width: float) -> Table:
    """The figures that show any of these measures, side by side."""
    seen = {TAPES[name][0] for name in numbers if name in TAPES}
    sheets = [figure(view, numbers) for view in VIEWS if view in seen]
    return Table([[_drawing(sheet) for sheet in sheets]], [width / len(sheets)] * len(sheets))


def _drawing(sheet: Sheet) -> Flowable:
    return _Smaller(lambda: sheet.groups[0], sheet.width, sheet.height)


class _Smaller(Drawing):
    """A figure at a share of its size."""

    def wrap(self, *_: float) -> tuple[float, float]:
        return self.width * FIGURES, self.height * FIGURES

    def draw(self) -> None:
        self.canv.scale(FIGURES, FIGURES)
        super().draw()
