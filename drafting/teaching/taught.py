"""A draft as it is taught: chapters of numbered steps, the tables, what to mind."""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import groupby
from typing import TYPE_CHECKING

from drafting.drawing.words import plain
from drafting.geometry import Point
from drafting.language import phrase, say, taught_in
from drafting.teaching.cutting_out import cut_out
from drafting.teaching.form import DraftForm
from drafting.teaching.labels import Labels, labels_of
from drafting.teaching.tables import (
    CheckRow,
    MeasureRow,
    allowance_rows,
    check_rows,
    measure_rows,
)
from drafting.teaching.tape import on_tape
from drafting.teaching.telling import Teller
from drafting.teaching.words import TeachingWords, teaching_words
from drafting.trace import Outline, Place, Step, Stroke
from drafting.trace.place import corner_of_paper

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from drafting.garments.garment import Garment, Symptom
    from drafting.workroom import Work

EDGE = 5.0
"""Room in cm that the draft keeps to the paper's edges."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TaughtStep:
    """One step in words.

    Attributes:
        number: From 1, through all chapters.
        heading: What it gives.
        sentences: What to do.
        formula: How it is found, in the trade's words.
        worked: The same with this body's numbers.
        result: What comes out, as a tape shows it.
        reason: Why it is done.
        source: Where the rule comes from.
        sums: Its arithmetic alone, each formula with its numbers and its result.
        step: The step as it was recorded.
    """

    number: int
    heading: str
    sentences: tuple[str, ...]
    formula: str
    worked: str
    result: str
    reason: str
    source: str
    sums: tuple[str, ...]
    step: Step

    @property
    def paper(self) -> int:
        """The sheet of paper that it is drawn on, 0 for the draft itself."""
        return self.step.paper

    @property
    def place(self) -> Place | None:
        """The point that it adds."""
        return self.step.value if isinstance(self.step.value, Place) else None

    @property
    def line(self) -> Stroke | None:
        """The line that it adds."""
        return self.step.value if isinstance(self.step.value, Stroke) else None


@dataclass(frozen=True, slots=True)
class Chapter:
    """Steps under one heading; its letter is that of its points, empty where it has none."""

    letter: str
    heading: str
    steps: tuple[TaughtStep, ...]

    @property
    def paper(self) -> int:
        """The sheet of paper that its steps are drawn on, 0 for the draft itself."""
        return self.steps[0].paper


@dataclass(frozen=True, slots=True, kw_only=True)
class TaughtDraft:
    """Everything that a draft sheet tells.

    Attributes:
        title: The garment.
        method: The drafting method, empty where the garment has but one way.
        form: The sheet's form.
        chapters: The construction.
        steps: All its steps in order.
        drafted: How many of them draw the draft; those after them take the pieces from it.
        darts: Both legs' ends and the point of each dart, by the name of each of them.
        labels: What the points are called.
        corner: Upper left corner of the paper, in the draft's own frame, cm.
        size: Width and height of the paper that the draft needs, cm.
        measures: What was measured.
        checks: What to measure on the draft.
        allowances: Kinds of edge with their allowances, cm.
        symptoms: What a toile may show.
        cautions: The garment's own.
        sources: Where the rules come from.
        invented: Whether the body is a reference body.
    """

    title: str
    method: str
    form: DraftForm
    chapters: tuple[Chapter, ...]
    steps: tuple[TaughtStep, ...]
    drafted: int
    darts: Mapping[str, tuple[Place, Place, Place]]
    labels: Labels
    corner: Point
    size: tuple[float, float]
    measures: tuple[MeasureRow, ...]
    checks: tuple[CheckRow, ...]
    allowances: tuple[tuple[str, float], ...]
    symptoms: tuple[Symptom, ...]
    cautions: tuple[str, ...]
    sources: tuple[str, ...]
    invented: bool

    @property
    def words(self) -> TeachingWords:
        """The sheet's language."""
        return teaching_words(self.form.language)

    def say(self, text: str) -> str:
        """A text of the draft in the sheet's language."""
        return phrase(text, self.form.language)

    def tape(self, cm: float) -> str:
        """A length as the sheet's tape shows it."""
        return on_tape(cm, self.form.unit, self.form.language)

    @property
    def outlines(self) -> tuple[tuple[str, Outline], ...]:
        """The outlines that the draft gives, by their pieces' names; the last of each."""
        steps = (t.step for t in self.steps)
        return tuple({s.name: s.value for s in steps if isinstance(s.value, Outline)}.items())


def teach(work: Work, garment: Garment, form: DraftForm, *, invented: bool = False) -> TaughtDraft:
    """Put a work's construction into words.

    Args:
        work: What left the workroom.
        garment: Its chapter.
        form: The sheet's form.
        invented: Whether the body is a reference body.
    """
    form = replace(form, language=taught_in(form.language))
    steps = whole_steps(work)
    corner, size = paper_for(steps)
    labels = labels_of(steps)
    teller = Teller(
        words=teaching_words(form.language),
        labels=labels,
        unit=form.unit,
        origin=next((s.value for s in steps if isinstance(s.value, Place)), NOWHERE),
        corner=corner,
        blank=form.blank,
        language=form.language,
    )
    told = tuple(_told(n, s, teller, garment) for n, s in enumerate(steps, 1))
    return TaughtDraft(
        title=say(garment.title, form.language),
        method=str(getattr(work.spec, "method", "")),
        form=form,
        chapters=tuple(_chapters(told, labels, teller)),
        steps=told,
        drafted=len(work.steps),
        darts=dict(_darts(steps)),
        labels=labels,
        corner=corner,
        size=size,
        measures=measure_rows(work, garment, teller.say),
        checks=check_rows(work, teller.say),
        allowances=allowance_rows(work, teller.say),
        symptoms=tuple(_symptom(s, teller) for s in garment.symptoms),
        cautions=tuple(teller.reworded(text) for text in work.pattern.pattern.cautions),
        sources=tuple(teller.say(text) for text in garment.sources),
        invented=invented,
    )


def whole_steps(work: Work) -> tuple[Step, ...]:
    """The draft's own steps, and those that take every piece from it."""
    corner, _ = paper_for(work.steps)
    inside = Point(corner.x + EDGE, corner.y - EDGE)
    return (*work.steps, *cut_out(work.steps, work.pattern.pattern, inside))


NOWHERE = corner_of_paper()
"""Where a draft without points would start."""


def _told(number: int, step: Step, teller: Teller, garment: Garment) -> TaughtStep:
    return TaughtStep(
        number=number,
        heading=_heading(step, teller),
        sentences=teller.sentences(step),
        formula=teller.formula(step),
        worked=teller.worked(step),
        result=teller.result(step),
        reason=teller.reworded(step.why),
        source=teller.say(step.source) if step.source else "; ".join(garment.sources),
        sums=teller.sums(step),
        step=step,
    )


def _symptom(seen: Symptom, teller: Teller) -> Symptom:
    """A symptom in the language; the change says what is done, so that its amount has no sign."""
    low, high = sorted((abs(seen.low), abs(seen.high)))
    told = (teller.reworded(text) for text in (seen.symptom, seen.cause, seen.change))
    return replace(
        seen, **dict(zip(("symptom", "cause", "change"), told, strict=True)), low=low, high=high
    )


def _heading(step: Step, teller: Teller) -> str:
    name = teller.reworded(plain(step.name))
    return name[:1].upper() + name[1:]


def _chapters(told: tuple[TaughtStep, ...], labels: Labels, teller: Teller) -> Iterator[Chapter]:
    for heading, of in groupby(told, key=lambda t: t.step.chapter):
        steps = tuple(of)
        first = next((labels(t.place) for t in steps if t.place), "")
        yield Chapter(first.rstrip("0123456789"), teller.say(heading), steps)


def _darts(steps: tuple[Step, ...]) -> Iterator[tuple[str, tuple[Place, Place, Place]]]:
    for stroke in (s.value for s in steps if isinstance(s.value, Stroke)):
        for fold in stroke.folds:
            three = (fold.near, fold.far, fold.point)
            yield from ((place.name, three) for place in three)


def paper_for(steps: tuple[Step, ...]) -> tuple[Point, tuple[float, float]]:
    """The upper left corner and the size in cm of the paper that takes a whole draft."""
    boxes = [_box(s.value) for s in steps if isinstance(s.value, Place | Stroke)]
    if not boxes:
        return Point(-EDGE, EDGE), (2 * EDGE, 2 * EDGE)
    left, low = min(b[0] for b in boxes) - EDGE, min(b[1] for b in boxes) - EDGE
    right, top = max(b[2] for b in boxes) + EDGE, max(b[3] for b in boxes) + EDGE
    return Point(left, top), (right - left, top - low)


def _box(drawn: Place | Stroke) -> tuple[float, float, float, float]:
    if isinstance(drawn, Stroke):
        return drawn.path.bounds()
    return drawn.x, drawn.y, drawn.x, drawn.y
