"""A blank form to write measures on, as a PDF: figures with numbers, and a row for each measure."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
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
from drafting.language import Language, page_text

FIGURES = 0.5
"""Figures are drawn at this share of their size, so that three stand side by side."""

BEFORE = (
    "Wear thin, close clothes and no shoes. Tie a cord round the waist, let it settle, and leave "
    "it on. Stand easily, look ahead, breathe out. Take each measure twice; where the two differ "
    "by more than 1 cm, take it a third time. H beside a number: with a helper."
)
HEADS = ("", "Measure", "How it is taken", "First", "Second")
ORDER = "Name or number of the order: {blank}   Date: {blank}"
CHOICE = "Unit: cm / inches      Figure: women / men"
LEFT, RIGHT, DEGREES = "left:", "right:", "{title} (degrees)"
BLANK, NO_BREAK = "_" * 18, "\N{NO-BREAK SPACE}"
SHARES = (0.07, 0.21, 0.46, 0.13, 0.13)
ROWS = TableStyle(
    [
        ("GRID", (0, 0), (-1, -1), 0.4, "#777777"),
        ("VALIGN", (0, 0), (-1, -1), "MIDDLE"),
        ("TOPPADDING", (0, 0), (-1, -1), 2),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 4),
    ]
)


def write(
    measures: Sequence[Measure], title: str, paper: str = "a4", language: Language = "en"
) -> bytes:
    """A form for some measures.

    Args:
        measures: In the order in which they are to be taken.
        title: What they are taken for, in the language.
        paper: Name of a sheet of paper; A4 where it is none.
        language: Of the form; what its catalogue lacks stays English.
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
        _story(measures, title, room[0], language),
        canvasmaker=lambda *_, **__: undated(out, points, title),
    )
    return out.getvalue()


def _story(
    measures: Sequence[Measure], title: str, width: float, language: Language
) -> list[Flowable]:
    say = partial(_said, language)
    numbers = {measure.name: number for number, measure in enumerate(measures, 1)}
    rows: list[tuple[Flowable, ...]] = [tuple(text(say(head), SMALL) for head in HEADS)]
    rows += [_row(measure, numbers[measure.name], say) for measure in measures]
    columns = [width * share for share in SHARES]
    return [
        text(title, TITLE),
        text(say(ORDER).format(blank=BLANK)),
        text(say(CHOICE).replace("  ", 2 * NO_BREAK)),
        Spacer(0, 6),
        text(say(BEFORE), SMALL),
        Spacer(0, 6),
        KeepTogether([_figures(numbers, width)]),
        Spacer(0, 8),
        Table(rows, columns, style=ROWS, repeatRows=1),
    ]


def _said(language: Language, words: str) -> str:
    return page_text(words, language)


def _row(measure: Measure, number: int, say: Callable[[str], str]) -> tuple[Flowable, ...]:
    helped = " H" if "helper" in measure.how else ""
    sides = (LEFT, RIGHT) if measure.by_side else ("", "")
    shape = {"cm": "{title}", "deg": DEGREES, "kg": "{title} (kg)"}[measure.unit]
    return (
        text(f"{number}{helped}", STEP),
        text(say(shape).format(title=say(measure.title))),
        text(say(measure.how), SMALL),
        *(text(say(side), SMALL) for side in sides),
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
