"""What class sheets are set from: paragraphs, tables, drawings among the text, and the pages."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from io import BytesIO
from typing import TYPE_CHECKING, Any
from xml.sax.saxutils import escape

from reportlab.lib.colors import Color
from reportlab.lib.styles import ParagraphStyle
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import (
    BaseDocTemplate,
    Flowable,
    Frame,
    PageTemplate,
    Paragraph,
    Table,
    TableStyle,
)

from drafting.drawing import PAPERS
from drafting.drawing.lettering import writable
from drafting.export.ink import FONT, POINT, Ink
from drafting.export.pdf import undated

if TYPE_CHECKING:
    from drafting.drawing import Group
    from drafting.teaching.taught import TaughtDraft

MARGIN, FOOT = 1.0, 0.6
"""Free edge of a page, and the room of its foot line, cm."""
GUTTER = 0.5
"""Between text and figure, cm."""
GREY, RULE = Color(0.35, 0.35, 0.35), Color(0.6, 0.6, 0.6)


def _style(size: float, *, before: float = 0.0, after: float = 1.5, color: Any = None) -> Any:
    return ParagraphStyle(
        f"s{size}-{before}",
        fontName=FONT,
        fontSize=size,
        leading=size * 1.3,
        spaceBefore=before,
        spaceAfter=after,
        textColor=color or Color(0, 0, 0),
    )


TITLE = _style(18, after=6)
CHAPTER = _style(13, before=8, after=4)
STEP = _style(10, before=5, after=1)
BODY = _style(8.5)
SMALL = _style(7.5, color=GREY)
CELL = _style(8, after=0)

LINES = TableStyle(
    [
        ("LINEBELOW", (0, 0), (-1, -1), 0.25, RULE),
        ("VALIGN", (0, 0), (-1, -1), "TOP"),
        ("LEFTPADDING", (0, 0), (-1, -1), 2),
        ("RIGHTPADDING", (0, 0), (-1, -1), 6),
        ("TOPPADDING", (0, 0), (-1, -1), 2),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 2),
    ]
)
GRID = TableStyle([("LINEBELOW", (0, 0), (-1, 0), 0.7, Color(0, 0, 0))], parent=LINES)
BESIDE = TableStyle(
    [
        ("VALIGN", (0, 0), (-1, -1), "TOP"),
        ("LEFTPADDING", (0, 0), (-1, -1), 0),
        ("RIGHTPADDING", (0, 0), (0, -1), GUTTER * POINT),
        ("RIGHTPADDING", (1, 0), (1, -1), 0),
        ("TOPPADDING", (0, 0), (-1, -1), 0),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 0),
    ]
)


class Pages:
    """Paper, its usable room in cm, and the foot line."""

    def __init__(self, draft: TaughtDraft, title: str) -> None:
        """Take the draft's paper and language, and the document's title."""
        paper = PAPERS.get(draft.form.paper, PAPERS["a4"])
        self.draft, self.title = draft, title
        self.size = (paper.width / 10, paper.height / 10)
        self.width = self.size[0] - 2 * MARGIN
        self.height = self.size[1] - 2 * MARGIN - FOOT

    def shares(self, *shares: float) -> tuple[float, ...]:
        """Widths of columns by their shares, cm."""
        whole = sum(shares)
        return tuple(self.width * share / whole for share in shares)

    def written(self, story: Callable[[], Iterable[Flowable]]) -> bytes:
        """The pages as bytes; the foot lines are written last, for they tell how many there are."""
        out = BytesIO()
        size = (self.size[0] * POINT, self.size[1] * POINT)
        frame = Frame(
            MARGIN * POINT,
            (MARGIN + FOOT) * POINT,
            self.width * POINT,
            self.height * POINT,
            leftPadding=0,
            rightPadding=0,
            topPadding=0,
            bottomPadding=0,
        )

        language = self.draft.form.language
        canvas = undated(out, size, self.title, language, made=_Counting)
        if isinstance(canvas, _Counting):
            canvas.foot = self._foot
        template = BaseDocTemplate(out, pagesize=size)
        template.addPageTemplates(PageTemplate(frames=[frame]))
        template.build(list(story()), canvasmaker=lambda *_, **__: canvas)
        return out.getvalue()

    def _foot(self, canvas: Canvas, page: int, pages: int) -> None:
        canvas.setFont(FONT, 7.5)
        text = self.draft.words.page.format(page=page, pages=pages)
        canvas.drawString(MARGIN * POINT, MARGIN * POINT, writable(self.title))
        canvas.drawRightString((self.size[0] - MARGIN) * POINT, MARGIN * POINT, text)


class _Counting(Canvas):
    """A canvas that keeps its pages until it is saved, and then writes a foot line on each."""

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.foot: Callable[[Canvas, int, int], None] = lambda *_: None
        self._kept: list[dict[str, Any]] = []

    def showPage(self) -> None:  # noqa: N802 - reportlab's name
        self._kept.append(dict(self.__dict__))
        self._startPage()  # type: ignore[attr-defined]  # as the base class does

    def save(self) -> None:
        kept = tuple(self._kept)
        for number, page in enumerate(kept, 1):
            self.__dict__.update(page)
            self.foot(self, number, len(kept))
            super().showPage()
        super().save()


class Drawing(Flowable):
    """A figure among the text."""

    def __init__(
        self, drawn: Callable[[], Group], width: float, height: float, low: float = 0.0
    ) -> None:
        """Take what is drawn when its turn comes; it reaches `low` cm under its origin."""
        super().__init__()
        self.drawn, self.low = drawn, low
        self.width, self.height = width * POINT, height * POINT

    def wrap(self, *_: float) -> tuple[float, float]:
        """Its breadth and height in points, whatever room there is."""
        return self.width, self.height

    def draw(self) -> None:
        """Draw it where the canvas stands."""
        self.canv.saveState()
        self.canv.translate(0, self.low * POINT)
        Ink(self.canv).items(self.drawn().items)
        self.canv.restoreState()


def text(text: str, style: Any = BODY) -> Paragraph:
    """A paragraph, letters without a shape as boxes."""
    return Paragraph(escape(writable(text)), style)


def table(
    rows: list[tuple[str, ...]], widths: tuple[float, ...], style: TableStyle = GRID
) -> Table:
    """A table of texts; columns of the given widths in cm, the first row its heading."""
    cells = [[text(cell, CELL) for cell in row] for row in rows]
    columns = [w * POINT for w in widths]
    return Table(cells, columns, style=style, repeatRows=int(style is GRID), hAlign="LEFT")
