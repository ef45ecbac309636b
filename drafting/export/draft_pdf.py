"""The class sheet as a PDF: title, tools, measures, terms, steps with figures, checks, and so on.

In the order in which classes expect it: common practice, no source. No metadata about persons; the
only date is the one that was given.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from math import isinf
from typing import TYPE_CHECKING, Any

from reportlab.platypus import (
    CondPageBreak,
    Flowable,
    KeepTogether,
    PageBreak,
    Paragraph,
    Spacer,
    Table,
)

from drafting.drawing import Group
from drafting.drawing.words import plain
from drafting.export.flow import (
    BESIDE,
    CHAPTER,
    GUTTER,
    LINES,
    SMALL,
    STEP,
    TITLE,
    Drawing,
    Pages,
    table,
    text,
)
from drafting.export.ink import POINT
from drafting.geometry import Point
from drafting.pattern.allowance import TOILE_ALLOWANCE
from drafting.teaching.figures import figure
from drafting.teaching.frames import enlarged, finished_scene, ruler
from drafting.teaching.lesson import SCALES, TOGETHER, Lesson, lesson, scale_for, whole_window
from drafting.teaching.tape import figures
from drafting.teaching.view import View

if TYPE_CHECKING:
    from drafting.teaching.figures import Scene
    from drafting.teaching.frames import Detail
    from drafting.teaching.tables import CheckRow, MeasureRow
    from drafting.teaching.taught import Chapter, TaughtDraft, TaughtStep
    from drafting.teaching.words import TeachingWords

LEAST_COLUMN = 4.4
"""Steps are set at least this wide (cm); else the figure stands under them."""
CAPTION, RULER = 0.6, 0.9
"""Room under a detail for its caption, and under a figure for its ruler, cm."""
UNDER = 0.75
"""A figure may stand under its steps where it takes at most this share of a page's height."""
LEAST_FIGURE = 5.0
"""Room that the ruler and its words need, cm."""
HEADED = 3.0
"""Room for a chapter's heading over its figure, and for the ruler, cm."""
FEW = 3
"""A page that was begun takes on at least so many of the steps to come."""


def write(draft: TaughtDraft, solutions: TaughtDraft | None = None) -> bytes:
    """The class sheet.

    Args:
        draft: The draft; with its form's `blank` the numbers are left out.
        solutions: The same draft with its numbers, for the last page of a blank sheet.
    """
    pages = ClassPages(draft)
    return pages.written(lambda: _story(draft, solutions, pages))


class ClassPages(Pages):
    """The class sheet's pages: the scale of its figures, and what was drawn already."""

    def __init__(self, draft: TaughtDraft) -> None:
        """Find the scale at which the whole draft fits beside a column of text."""
        super().__init__(draft, draft.words.sheet_title.format(title=draft.title))
        self._drawn: dict[tuple[int, frozenset[int], View], Group] = {}
        self._told: dict[int, tuple[Paragraph, ...]] = {}
        beside = (self.width - LEAST_COLUMN - GUTTER, self.height - RULER)
        self.scale = scale_for(draft, beside, (self.width, UNDER * self.height))

    def drawn(self, scene: Scene, view: View, draw: Callable[[], Group]) -> Callable[[], Group]:
        """A figure that is drawn but once, however often the pages are laid."""

        def once() -> Group:
            key = (scene.upto, scene.new, view)
            if key not in self._drawn:
                self._drawn[key] = draw()
            return self._drawn[key]

        return once

    def told(self, step: TaughtStep) -> tuple[Paragraph, ...]:
        """A step's paragraphs, set but once."""
        if step.number not in self._told:
            self._told[step.number] = tuple(_step(self.draft, step))
        return self._told[step.number]

    def least(self, steps: tuple[TaughtStep, ...]) -> float:
        """What steps take of a page's height at least, where their text has all its breadth, cm."""
        room = (self.width * POINT, self.height * POINT)
        return sum(p.wrap(*room)[1] for s in steps for p in self.told(s)) / POINT


def _story(
    draft: TaughtDraft, solutions: TaughtDraft | None, pages: ClassPages
) -> Iterator[Flowable]:
    head = (*_head(draft, pages), *_measures(draft, pages), *_key(draft, pages))
    yield from head
    yield from _chapters(draft, pages, pages.height - _height(head, pages))
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
    yield KeepTogether(_listed(heading, sentences))


def _listed(heading: str, sentences: tuple[str, ...]) -> list[Flowable]:
    return [text(heading, CHAPTER), *(text(f"– {s}") for s in sentences)]


def _head(draft: TaughtDraft, pages: ClassPages) -> Iterator[Flowable]:
    words = draft.words
    method = f" ({draft.say(plain(draft.method))})" if draft.method else ""
    yield text(words.sheet_title.format(title=draft.title + method), TITLE)
    date = words.date.format(date=draft.form.date or "________________")
    yield Table([[text(words.learner), text(date)]], [w * POINT for w in pages.shares(3, 2)])
    if draft.invented:
        yield text(words.invented, SMALL)
    yield from _listed(words.aims_heading, words.aims)
    width, height = (draft.tape(side) for side in draft.size)
    paper = words.paper_needed.format(width=width, height=height)
    yield text(words.tools_heading, CHAPTER)
    yield text(", ".join(words.tools)[:1].upper() + ", ".join(words.tools)[1:] + ". " + paper)


def _measures(draft: TaughtDraft, pages: ClassPages) -> Iterator[Flowable]:
    words = draft.words
    rows = [words.measures_columns, *(_measure(draft, row) for row in draft.measures)]
    yield text(words.measures_heading, CHAPTER)
    yield table(list(rows), pages.shares(5, 2, 2, 2, 2, 2))
    yield Spacer(0, 3)
    yield text(words.measures_note, SMALL)


def _measure(draft: TaughtDraft, row: MeasureRow) -> tuple[str, ...]:
    def shown(cm: float) -> str:
        return draft.words.blank if draft.form.blank else draft.tape(cm)

    ease = "–" if row.ease is None else shown(row.ease)
    name = f"{row.title} ({row.word})" if row.word.lower() != row.title.lower() else row.title
    shares = (shown(row.taken / part) for part in (1, 2, 4))
    return (name, *shares, ease, shown(row.used))


def _key(draft: TaughtDraft, pages: ClassPages) -> Iterator[Flowable]:
    words = draft.words
    spoken = " ".join(f"{s.step.formula} {s.step.kind}" for s in draft.steps)
    rows: list[tuple[str, ...]] = [row for word, row in words.key.items() if word in spoken]
    letters = [f"{c.letter} {c.heading.lower()}" for c in draft.chapters if c.letter]
    yield text(words.key_heading, CHAPTER)
    yield text(words.label_key.format(labels=", ".join(letters)))
    if rows:
        yield table(rows, pages.shares(3, 7), LINES)


def _chapters(draft: TaughtDraft, pages: ClassPages, left: float) -> Iterator[Flowable]:
    """All steps with their figures, as many together as a page takes; `left` cm of the first."""
    for chapter in draft.chapters:
        told, steps = _chapter_head(draft, chapter), chapter.steps
        scale = _scale(draft, chapter, pages)
        while steps:
            block, count = _most(draft, steps, told, left, pages, scale)
            if block is None:
                yield PageBreak()
                left = pages.height
                block, count = _most(draft, steps, told, left, pages, scale)
            yield from block or ()
            left -= _height(block or (), pages)
            told, steps = (), steps[count:]


def _scale(draft: TaughtDraft, chapter: Chapter, pages: ClassPages) -> float:
    """The sheet's scale; a piece drawn by itself takes the next at which all of it fits."""
    if not chapter.paper:
        return pages.scale
    room = (pages.width - LEAST_COLUMN - GUTTER, pages.height - HEADED)
    return max(pages.scale, scale_for(draft, room, paper=chapter.paper))


def _chapter_head(draft: TaughtDraft, chapter: Chapter) -> tuple[Flowable, ...]:
    letter = f"{chapter.letter}  " if chapter.letter else ""
    heading = text(letter + chapter.heading, CHAPTER)
    sources = {s.source for s in chapter.steps}
    if len(sources) > 1:
        return (heading,)
    return heading, text(draft.words.source.format(source=sources.pop()), SMALL)


def _most(
    draft: TaughtDraft,
    steps: tuple[TaughtStep, ...],
    told: tuple[Flowable, ...],
    left: float,
    pages: ClassPages,
    scale: float,
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
        if pages.least(steps[:count]) > left:
            continue
        block = _block(draft, steps[:count], told, pages, scale)
        if _height(block, pages) <= left:
            return block, count
    return (_shrunk(draft, steps[:1], told, pages), 1) if fresh else (None, 0)


def _block(
    draft: TaughtDraft,
    steps: tuple[TaughtStep, ...],
    told: tuple[Flowable, ...],
    pages: ClassPages,
    scale: float,
) -> tuple[Flowable, ...]:
    return (*told, _beside(draft, lesson(draft, steps, scale), pages))


def _shrunk(
    draft: TaughtDraft,
    steps: tuple[TaughtStep, ...],
    told: tuple[Flowable, ...],
    pages: ClassPages,
) -> tuple[Flowable, ...]:
    """A step whose figure is too large for a page at the sheet's scale, at one that fits."""
    blocks = (_block(draft, steps, told, pages, s) for s in SCALES if s > pages.scale)
    fitting = (block for block in blocks if _height(block, pages) <= pages.height)
    return next(fitting, _block(draft, steps, told, pages, 4 * SCALES[-1]))


def _height(block: tuple[Flowable, ...], pages: ClassPages) -> float:
    """What flowables take of a page's height, cm."""
    room = (pages.width * POINT, pages.height * POINT)
    return sum(f.wrap(*room)[1] + f.getSpaceBefore() + f.getSpaceAfter() for f in block) / POINT


def _beside(draft: TaughtDraft, lesson: Lesson, pages: ClassPages) -> Table:
    steps = [p for step in lesson.steps for p in pages.told(step)]
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
    details: list[Drawing],
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
    yield text(words.step_heading.format(number=step.number, heading=step.heading), STEP)
    yield text(" ".join(step.sentences))
    told = step.sums or ((step.result,) if step.step.kind in ("line", "trued", "outline") else ())
    for line in told:
        yield text(line, SMALL)
    yield text(words.reason.format(reason=step.reason), SMALL)


def _figure(draft: TaughtDraft, scene: Scene, view: View, pages: ClassPages) -> Iterator[Drawing]:
    """The figure, and its ruler."""
    group = pages.drawn(scene, view, lambda: figure(scene, view, "figure"))
    yield Drawing(group, view.width, view.height)
    scale = Group("ruler", "", tuple(ruler(draft, view.scale, Point(0.3, 0.5))))
    yield Drawing(lambda: scale, max(view.width, LEAST_FIGURE), RULER)


def _detail(scene: Scene, detail: Detail, pages: ClassPages) -> Drawing:
    room = detail.view
    group = pages.drawn(scene, room, lambda: enlarged(scene, detail, "detail"))
    return Drawing(group, room.width, room.height + CAPTION + 0.2, CAPTION)


def _whole(draft: TaughtDraft, pages: ClassPages) -> Iterator[Flowable]:
    """The finished draft with all its points."""
    scene, scale = finished_scene(draft), scale_for(draft, (pages.width, pages.height - 2.0))
    view = View(whole_window(draft), max(scale, pages.scale))
    heading = text(draft.words.finished, CHAPTER)
    yield KeepTogether([heading, *_figure(draft, scene, view, pages)])


def _checks(draft: TaughtDraft, pages: ClassPages) -> Iterator[Flowable]:
    words = draft.words
    rows = [words.checks_columns, *(_check(draft, row) for row in draft.checks)]
    yield CondPageBreak(5 * POINT)
    yield text(words.checks_heading, CHAPTER)
    yield table(list(rows), pages.shares(6, 4, 3, 3))


def _check(draft: TaughtDraft, row: CheckRow) -> tuple[str, ...]:
    words, form = draft.words, draft.form

    def shown(value: float) -> str:
        if form.blank:
            return words.blank
        return draft.tape(value) if row.unit == "cm" else f"{value:.0f}°"

    wanted = shown(row.wanted)
    if row.kind == "measure" and not form.blank:
        wanted = _allowed(draft, row, wanted)
    return row.what[:1].upper() + row.what[1:], wanted, shown(row.drafted), words.blank


def _allowed(draft: TaughtDraft, row: CheckRow, wanted: str) -> str:
    """What is wanted with its bounds; with no upper one it is the least that will do."""
    if isinf(row.high):
        return draft.words.at_least.format(value=wanted)
    form = draft.form
    low, high = (figures(bound, form.unit, form.language) for bound in (row.low, row.high))
    return f"{wanted} ({low} – {high})"


def _finishing(draft: TaughtDraft, pages: ClassPages) -> Iterator[Flowable]:
    words = draft.words
    yield from _section(words.finishing_heading, words.finishing)
    rows = [(kind, draft.tape(cm)) for kind, cm in draft.allowances]
    if rows:
        yield KeepTogether([table([words.allowance_columns, *rows], pages.shares(2, 2, 6)[:2])])


def _toile(draft: TaughtDraft, pages: ClassPages) -> Iterator[Flowable]:
    words = draft.words
    allowance = draft.tape(TOILE_ALLOWANCE)
    told = tuple(sentence.format(allowance=allowance) for sentence in words.toile)
    yield from _section(words.toile_heading, told)
    rows = [(s.symptom, s.cause, s.change, _between(draft, s.low, s.high)) for s in draft.symptoms]
    if rows:
        yield table([words.corrections_columns, *rows], pages.shares(5, 4, 5, 2))
    yield Spacer(0, 4)
    for sentence in words.after_corrections:
        yield text(f"– {sentence}")


def _between(draft: TaughtDraft, least: float, most: float) -> str:
    if not most:
        return "–"
    return f"{figures(least, draft.form.unit, draft.form.language)} – {draft.tape(most)}"


def _marks(draft: TaughtDraft, pages: ClassPages) -> Iterator[Flowable]:
    words: TeachingWords = draft.words
    rows = [words.marks_columns, *((mark, "", "10") for mark in words.marks)]
    marks = table(list(rows), pages.shares(4, 2, 1, 5)[:3])
    yield KeepTogether([text(words.marks_heading, CHAPTER), marks])


def _solutions(draft: TaughtDraft, pages: ClassPages) -> Iterator[Flowable]:
    """The numbers that a blank sheet leaves out, on pages of their own."""
    words = draft.words
    rows = [(f"{s.number}. {s.heading}", "; ".join(s.sums), s.result) for s in draft.steps]
    yield PageBreak()
    yield text(words.solutions_heading, CHAPTER)
    yield table([words.solutions_columns, *rows], pages.shares(4, 8, 4))
