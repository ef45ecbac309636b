"""The class sheet as a PDF: title, tools, measures, terms, steps with figures, checks, and so on.

In the order in which classes expect it: common practice, no source. No metadata about persons; the
only date is the one that was given.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from io import BytesIO
from typing import TYPE_CHECKING, Any
from xml.sax.saxutils import escape

from reportlab.lib.colors import Color
from reportlab.lib.styles import ParagraphStyle
from reportlab.platypus import (
    BaseDocTemplate,
    CondPageBreak,
    Flowable,
    Frame,
    KeepTogether,
    PageBreak,
    PageTemplate,
    Paragraph,
    Spacer,
    Table,
    TableStyle,
)

from drafting.drawing import PAPERS, Group
from drafting.drawing.words import plain
from drafting.export.ink import FONT, POINT, Ink, writable
from drafting.export.pdf import undated
from drafting.geometry import Point
from drafting.pattern.allowance import TOILE_ALLOWANCE
from drafting.teaching.figures import figure
from drafting.teaching.frames import enlarged, finished_scene, ruler, whole_view
from drafting.teaching.lesson import TOGETHER, Lesson, lesson, scale_for
from drafting.teaching.tape import figures, on_tape

if TYPE_CHECKING:
    from drafting.teaching.figures import Scene
    from drafting.teaching.frames import Detail
    from drafting.teaching.tables import CheckRow, MeasureRow
    from drafting.teaching.taught import Chapter, TaughtDraft, TaughtStep
    from drafting.teaching.view import View
    from drafting.teaching.words import TeachingWords

MARGIN, FOOT = 1.2, 0.8
"""Free edge of a page, and the room of its foot line, cm."""
GUTTER = 0.5
LEAST_COLUMN = 4.8
"""Steps are set at least this wide (cm); else the figure stands under them."""
CAPTION, RULER = 0.6, 0.9
"""Room under a detail for its caption, and under a figure for its ruler, cm."""
LEAST_FIGURE = 5.0
"""Room that the ruler and its words need, cm."""
FEW = 3
"""A page that was begun takes on at least so many of the steps to come."""

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


def write(draft: TaughtDraft, solutions: TaughtDraft | None = None) -> bytes:
    """The class sheet.

    Args:
        draft: The draft; with its form's `blank` the numbers are left out.
        solutions: The same draft with its numbers, for the last page of a blank sheet.
    """
    pages = _Pages(draft)
    story = tuple(_story(draft, solutions, pages))
    counted = pages.build(story, 0)[1]
    story = tuple(_story(draft, solutions, pages))
    return pages.build(story, counted)[0]


class _Pages:
    """Paper, its usable room, and the foot line."""

    def __init__(self, draft: TaughtDraft) -> None:
        paper = PAPERS[draft.form.paper]
        self.draft = draft
        self.size = (paper.width / 10, paper.height / 10)
        self.width = self.size[0] - 2 * MARGIN
        self.height = self.size[1] - 2 * MARGIN - FOOT
        self._drawn: dict[tuple[int, frozenset[int], View], Group] = {}
        self.scale = scale_for(draft, (self.width - LEAST_COLUMN - GUTTER, self.height - 2.5))

    def drawn(self, scene: Scene, view: View, draw: Callable[[], Group]) -> Callable[[], Group]:
        """A figure that is drawn but once, however often the pages are laid."""

        def once() -> Group:
            key = (scene.upto, scene.new, view)
            if key not in self._drawn:
                self._drawn[key] = draw()
            return self._drawn[key]

        return once

    def build(self, story: tuple[Flowable, ...], pages: int) -> tuple[bytes, int]:
        """The pages, and how many there are."""
        out = BytesIO()
        size = (self.size[0] * POINT, self.size[1] * POINT)
        title = self.draft.words.sheet_title.format(title=self.draft.title)
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

        def foot(canvas: Any, document: Any) -> None:
            canvas.setFont(FONT, 7.5)
            text = self.draft.words.page.format(page=document.page, pages=pages)
            canvas.drawString(MARGIN * POINT, MARGIN * POINT, writable(title))
            canvas.drawRightString(size[0] - MARGIN * POINT, MARGIN * POINT, text)

        template = BaseDocTemplate(out, pagesize=size)
        template.addPageTemplates(PageTemplate(frames=[frame], onPage=foot))
        template.build(list(story), canvasmaker=lambda *_, **__: undated(out, size, title))
        return out.getvalue(), template.page


class _Drawing(Flowable):
    """A figure among the text."""

    def __init__(
        self, drawn: Callable[[], Group], width: float, height: float, low: float = 0.0
    ) -> None:
        """Take what is drawn when its turn comes; it reaches `low` cm under its origin."""
        super().__init__()
        self.drawn, self.low = drawn, low
        self.width, self.height = width * POINT, height * POINT

    def wrap(self, *_: float) -> tuple[float, float]:
        return self.width, self.height

    def draw(self) -> None:
        self.canv.saveState()
        self.canv.translate(0, self.low * POINT)
        Ink(self.canv).items(self.drawn().items)
        self.canv.restoreState()


def _text(text: str, style: Any = BODY) -> Paragraph:
    return Paragraph(escape(writable(text)), style)


def _table(
    rows: list[tuple[str, ...]], widths: tuple[float, ...], style: TableStyle = GRID
) -> Table:
    cells = [[_text(cell, CELL) for cell in row] for row in rows]
    columns = [w * POINT for w in widths]
    return Table(cells, columns, style=style, repeatRows=int(style is GRID), hAlign="LEFT")


def _shares(pages: _Pages, *shares: float) -> tuple[float, ...]:
    whole = sum(shares)
    return tuple(pages.width * share / whole for share in shares)


def _story(draft: TaughtDraft, solutions: TaughtDraft | None, pages: _Pages) -> Iterator[Flowable]:
    yield from _head(draft, pages)
    yield from _measures(draft, pages)
    yield from _key(draft, pages)
    yield from _chapters(draft, pages)
    yield from _whole(draft, pages)
    yield from _checks(draft, pages)
    yield from _finishing(draft, pages)
    yield from _toile(draft, pages)
    yield from _section(draft.words.cautions_heading, (*draft.words.cautions, *draft.cautions))
    yield from _marks(draft, pages)
    yield from _section(draft.words.sources_heading, draft.sources)
    if solutions is not None:
        yield from _solutions(solutions, pages)


def _section(heading: str, sentences: tuple[str, ...]) -> Iterator[Flowable]:
    yield KeepTogether([_text(heading, CHAPTER), *(_text(f"– {s}") for s in sentences)])


def _head(draft: TaughtDraft, pages: _Pages) -> Iterator[Flowable]:
    words = draft.words
    method = f" ({plain(draft.method)})" if draft.method else ""
    yield _text(words.sheet_title.format(title=draft.title + method), TITLE)
    date = words.date.format(date=draft.form.date or "________________")
    yield Table([[_text(words.learner), _text(date)]], [w * POINT for w in _shares(pages, 3, 2)])
    if draft.invented:
        yield _text(words.invented, SMALL)
    yield from _section(words.aims_heading, words.aims)
    width, height = (on_tape(side, draft.form.unit) for side in draft.size)
    paper = words.paper_needed.format(width=width, height=height)
    yield _text(words.tools_heading, CHAPTER)
    yield _text(", ".join(words.tools)[:1].upper() + ", ".join(words.tools)[1:] + ". " + paper)


def _measures(draft: TaughtDraft, pages: _Pages) -> Iterator[Flowable]:
    words = draft.words
    rows = [words.measures_columns, *(_measure(draft, row) for row in draft.measures)]
    yield _text(words.measures_heading, CHAPTER)
    yield _table(list(rows), _shares(pages, 5, 2, 2, 2, 2, 2))
    yield Spacer(0, 3)
    yield _text(words.measures_note, SMALL)


def _measure(draft: TaughtDraft, row: MeasureRow) -> tuple[str, ...]:
    def shown(cm: float) -> str:
        return draft.words.blank if draft.form.blank else on_tape(cm, draft.form.unit)

    ease = "–" if row.ease is None else shown(row.ease)
    name = f"{row.title} ({row.word})" if row.word.lower() != row.title.lower() else row.title
    shares = (shown(row.taken / part) for part in (1, 2, 4))
    return (name, *shares, ease, shown(row.used))


def _key(draft: TaughtDraft, pages: _Pages) -> Iterator[Flowable]:
    words = draft.words
    spoken = " ".join(f"{s.formula} {' '.join(s.sentences)}" for s in draft.steps)
    rows: list[tuple[str, ...]] = [row for row in words.key.values() if _used(row[0], spoken)]
    letters = [f"{c.letter} {c.heading.lower()}" for c in draft.chapters if c.letter]
    yield _text(words.key_heading, CHAPTER)
    yield _text(words.label_key.format(labels=", ".join(letters)))
    yield _table(rows, _shares(pages, 3, 7), LINES)


def _used(term: str, spoken: str) -> bool:
    """Whether the sheet speaks of a term: one of its words, or its last words."""
    return any(part.strip() in spoken.lower() for part in term.split(","))


def _chapters(draft: TaughtDraft, pages: _Pages) -> Iterator[Flowable]:
    """All steps with their figures, as many together as a page takes, from a new page on."""
    yield PageBreak()
    left = pages.height
    for chapter in draft.chapters:
        told, steps = _chapter_head(draft, chapter), chapter.steps
        while steps:
            block, count = _most(draft, steps, told, left, pages)
            if block is None:
                yield PageBreak()
                left = pages.height
                block, count = _most(draft, steps, told, left, pages)
            yield from block or ()
            left -= _height(block or (), pages)
            told, steps = (), steps[count:]


def _chapter_head(draft: TaughtDraft, chapter: Chapter) -> tuple[Flowable, ...]:
    letter = f"{chapter.letter}  " if chapter.letter else ""
    heading = _text(letter + chapter.heading, CHAPTER)
    sources = {s.source for s in chapter.steps}
    if len(sources) > 1:
        return (heading,)
    return heading, _text(draft.words.source.format(source=sources.pop()), SMALL)


def _most(
    draft: TaughtDraft,
    steps: tuple[TaughtStep, ...],
    told: tuple[Flowable, ...],
    left: float,
    pages: _Pages,
) -> tuple[tuple[Flowable, ...] | None, int]:
    """As many of the steps as the page still takes, with their figure, and how many that are.

    Nothing where the page has been begun and takes but a few of more to come.
    """
    fresh = left >= pages.height
    for count in range(min(TOGETHER, len(steps)), 0, -1):
        if not fresh and count < min(FEW, len(steps)):
            return None, 0
        if 0 < len(steps) - count < FEW <= count:
            continue  # else a page would begin with a lonely step
        block = (*told, _beside(draft, lesson(draft, steps[:count], pages.scale), pages))
        if _height(block, pages) <= left or (fresh and count == 1):
            return block, count
    return None, 0


def _height(block: tuple[Flowable, ...], pages: _Pages) -> float:
    """What flowables take of a page's height, cm."""
    room = (pages.width * POINT, pages.height * POINT)
    return sum(f.wrap(*room)[1] + f.getSpaceBefore() + f.getSpaceAfter() for f in block) / POINT


def _beside(draft: TaughtDraft, lesson: Lesson, pages: _Pages) -> Table:
    steps = [p for step in lesson.steps for p in _step(draft, step)]
    if lesson.view is None:
        return Table([[steps]], [pages.width * POINT], style=BESIDE)
    drawn = list(_figure(draft, lesson.scene, lesson.view, pages))
    details = [_detail(lesson.scene, d, pages) for d in lesson.details]
    wide = max(d.width for d in (*drawn, *details)) / POINT
    column = pages.width - GUTTER - wide
    if column < LEAST_COLUMN:
        return Table([[steps], [[*drawn, *details]]], [pages.width * POINT], style=BESIDE)
    columns = (column + GUTTER, wide)
    _shared(details, (steps, drawn), columns)
    return Table([[steps, drawn]], [c * POINT for c in columns], style=BESIDE)


def _shared(
    details: list[_Drawing],
    columns: tuple[list[Any], list[Any]],
    widths: tuple[float, float],
) -> None:
    """Set each detail under the shorter column."""
    for detail in details:
        heights = [
            sum(f.wrap(w * POINT, 1e6)[1] for f in column)
            for column, w in zip(columns, widths, strict=True)
        ]
        columns[0 if heights[0] < heights[1] else 1].append(detail)


def _step(draft: TaughtDraft, step: TaughtStep) -> Iterator[Paragraph]:
    words = draft.words
    yield _text(words.step_heading.format(number=step.number, heading=step.heading), STEP)
    yield _text(" ".join(step.sentences))
    told = step.sums or ((step.result,) if step.step.kind in ("line", "trued", "outline") else ())
    for text in told:
        yield _text(text, SMALL)
    yield _text(words.reason.format(reason=step.reason), SMALL)


def _figure(draft: TaughtDraft, scene: Scene, view: View, pages: _Pages) -> Iterator[_Drawing]:
    """The figure, and its ruler."""
    group = pages.drawn(scene, view, lambda: figure(scene, view, "figure"))
    yield _Drawing(group, view.width, view.height)
    scale = Group("ruler", "", tuple(ruler(draft, view.scale, Point(0.3, 0.5))))
    yield _Drawing(lambda: scale, max(view.width, LEAST_FIGURE), RULER)


def _detail(scene: Scene, detail: Detail, pages: _Pages) -> _Drawing:
    room = detail.view
    group = pages.drawn(scene, room, lambda: enlarged(scene, detail, "detail"))
    return _Drawing(group, room.width, room.height + CAPTION + 0.2, CAPTION)


def _whole(draft: TaughtDraft, pages: _Pages) -> Iterator[Flowable]:
    """The finished draft with all its points."""
    scene, view = finished_scene(draft), whole_view(draft, pages.scale)
    heading = _text(draft.words.finished, CHAPTER)
    yield KeepTogether([heading, *_figure(draft, scene, view, pages)])


def _checks(draft: TaughtDraft, pages: _Pages) -> Iterator[Flowable]:
    words = draft.words
    rows = [words.checks_columns, *(_check(draft, row) for row in draft.checks)]
    yield CondPageBreak(5 * POINT)
    yield _text(words.checks_heading, CHAPTER)
    yield _table(list(rows), _shares(pages, 6, 4, 3, 3))


def _check(draft: TaughtDraft, row: CheckRow) -> tuple[str, ...]:
    words, form = draft.words, draft.form

    def shown(value: float) -> str:
        if form.blank:
            return words.blank
        return on_tape(value, form.unit) if row.unit == "cm" else f"{value:.0f}°"

    wanted = shown(row.wanted)
    if row.kind == "measure" and not form.blank and row.high < 900:  # 999 stands for no bound
        low, high = (figures(v, form.unit) for v in (row.low, row.high))
        wanted = f"{wanted} ({low} – {high})"
    return row.what[:1].upper() + row.what[1:], wanted, shown(row.drafted), words.blank


def _finishing(draft: TaughtDraft, pages: _Pages) -> Iterator[Flowable]:
    words = draft.words
    yield from _section(words.finishing_heading, words.finishing)
    rows = [(plain(kind), on_tape(cm, draft.form.unit)) for kind, cm in draft.allowances]
    if rows:
        table = _table([words.allowance_columns, *rows], _shares(pages, 2, 2, 6)[:2])
        yield KeepTogether([table])


def _toile(draft: TaughtDraft, pages: _Pages) -> Iterator[Flowable]:
    words = draft.words
    allowance = on_tape(TOILE_ALLOWANCE, draft.form.unit)
    told = tuple(sentence.format(allowance=allowance) for sentence in words.toile)
    yield from _section(words.toile_heading, told)
    rows = [
        (c.symptom, c.cause, c.change, _between(draft, c.least, c.most)) for c in draft.corrections
    ]
    if rows:
        yield _table([words.corrections_columns, *rows], _shares(pages, 5, 4, 5, 2))
    yield Spacer(0, 4)
    for sentence in words.after_corrections:
        yield _text(f"– {sentence}")


def _between(draft: TaughtDraft, least: float, most: float) -> str:
    if not most:
        return "–"
    return f"{figures(least, draft.form.unit)} – {on_tape(most, draft.form.unit)}"


def _marks(draft: TaughtDraft, pages: _Pages) -> Iterator[Flowable]:
    words: TeachingWords = draft.words
    rows = [words.marks_columns, *((mark, "", "10") for mark in words.marks)]
    table = _table(list(rows), _shares(pages, 4, 2, 1, 5)[:3])
    yield KeepTogether([_text(words.marks_heading, CHAPTER), table])


def _solutions(draft: TaughtDraft, pages: _Pages) -> Iterator[Flowable]:
    """The numbers that a blank sheet leaves out, on pages of their own."""
    words = draft.words
    rows = [(f"{s.number}. {s.heading}", "; ".join(s.sums), s.result) for s in draft.steps]
    yield PageBreak()
    yield _text(words.solutions_heading, CHAPTER)
    yield _table([words.solutions_columns, *rows], _shares(pages, 4, 8, 4))
