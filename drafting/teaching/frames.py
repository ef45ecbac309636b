"""A picture for each step, and the finished draft with all its construction lines.

All pictures of a draft are of one size, so that they can follow each other on a screen. Beside the
draft there is room for an enlarged detail of crotch, darts, and what is too small to see.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from drafting.drawing import Group, Item, Role, Sheet, Stroke, Text
from drafting.drawing.lettering import PITCH, wrapped
from drafting.drawing.lettering import width as _breadth
from drafting.geometry import Point, Vector, polyline, shift
from drafting.teaching.figures import Scene, figure
from drafting.teaching.taught import TaughtDraft, TaughtStep
from drafting.teaching.view import Box, View, around
from drafting.trace import Bend, Outline

SCALE = 5.0
"""Pictures are drawn at 1:5, as on the class sheet."""
DETAIL = 6.6
"""Breadth and height of a detail on paper, cm."""
DETAIL_SCALES = (1.0, 2.0, 3.0)
SMALL = 1.3
"""Moves up to this length (cm) are enlarged."""
LEAST_WIDTH = 9.0
"""A picture is at least so broad (cm), so that heading and ruler have room."""
HEAD, FOOT = 1.3, 1.1
"""Room for the heading over a picture and for the ruler under it, cm."""
RULER = {"cm": (20.0, 4), "in": (20.32, 4)}
"""Length of the ruler (cm on the draft) and how many parts it has."""
CAPTION = 0.18
HEADINGS = (0.3, 0.25, 0.2)
"""Heights of capitals tried for a heading, cm."""


def whole_view(draft: TaughtDraft, scale: float) -> View:
    """The window that shows the whole draft, its level lines within."""
    left, top = draft.corner.x + 2.0, draft.corner.y - 2.0
    right, low = draft.corner.x + draft.size[0] - 2.0, draft.corner.y - draft.size[1] + 2.0
    return View((left, low, right, top), scale)


@dataclass(frozen=True, slots=True)
class Detail:
    """A window worth enlarging, and the scale at which it fits."""

    box: Box
    scale: float

    @property
    def view(self) -> View:
        """The window, widened to a square that fills a detail's room."""
        half = (DETAIL - 0.8) / 2 * self.scale
        x, y = (self.box[0] + self.box[2]) / 2, (self.box[1] + self.box[3]) / 2
        return View((x - half, y - half, x + half, y + half), self.scale, 0.4)


def detail_of(draft: TaughtDraft, step: TaughtStep) -> Detail | None:
    """What of a step is worth enlarging: a crotch curve, a dart, a small move."""
    points = list(_enlarged(draft, step))
    if not points:
        return None
    box = around(points, 1.0)
    size = max(box[2] - box[0], box[3] - box[1])
    fitting = (s for s in DETAIL_SCALES if size / s <= DETAIL - 0.8)
    return Detail(box, next(fitting, size / (DETAIL - 0.8)))


def _enlarged(draft: TaughtDraft, step: TaughtStep) -> Iterator[Point]:
    place, line = step.place, step.line
    if place is not None:
        darts = draft.darts
        yield from darts.get(place.name, ())
        if place.base and 0 < place.distance(place.base) <= SMALL and place.name not in darts:
            yield from (place, place.base)
    if line is not None:
        for part in line.parts:
            if isinstance(part, Bend) and part.guide and part.guide.verb == "diagonal":
                low = part.segment.bounds()
                yield from (Point(low[0], low[1]), Point(low[2], low[3]))
        for fold in line.folds:
            yield from (fold.near, fold.far, fold.point)


def frame(draft: TaughtDraft, number: int, scale: float = SCALE) -> Sheet:
    """The picture of one step.

    Args:
        draft: The draft.
        number: The step's number, from 1. Raises IndexError where there is none.
        scale: 1 to this.
    """
    if number < 1:
        raise IndexError(number)
    return _frame(draft, draft.steps[number - 1], scale, _beside(draft))


def frames(draft: TaughtDraft, scale: float = SCALE) -> Iterator[Sheet]:
    """The pictures of all steps, in order."""
    beside = _beside(draft)
    return (_frame(draft, step, scale, beside) for step in draft.steps)


def _beside(draft: TaughtDraft) -> float:
    """Room for details beside the draft, the same in all its pictures; none where none has any."""
    return DETAIL + 0.4 if any(detail_of(draft, s) for s in draft.steps) else 0.0


def _frame(draft: TaughtDraft, step: TaughtStep, scale: float, beside: float) -> Sheet:
    scene = Scene(draft, step.number, frozenset({step.number}))
    heading = f"{step.number}. {step.heading}"
    return _picture(draft, scene, scale, heading, beside, detail_of(draft, step))


def finished(draft: TaughtDraft, scale: float = SCALE) -> Sheet:
    """The finished draft with all its construction lines and labels; the outlines stand out."""
    return _picture(draft, finished_scene(draft), scale, draft.title, 0.0, None)


def finished_scene(draft: TaughtDraft) -> Scene:
    """All that was drawn, every point labelled, the outlines standing out."""
    steps = draft.steps
    new = frozenset(s.number for s in steps if isinstance(s.step.value, Outline))
    return Scene(draft, len(steps), new, whole=True)


def _picture(
    draft: TaughtDraft,
    scene: Scene,
    scale: float,
    heading: str,
    beside: float,
    detail: Detail | None,
) -> Sheet:
    view = whole_view(draft, scale)
    width, height = (
        max(view.width + beside, LEAST_WIDTH),
        max(view.height, DETAIL + 1.0) + HEAD + FOOT,
    )
    groups = [
        figure(scene, view, "draft").transformed(shift(0.0, FOOT)),
        Group("heading", heading, tuple(_heading(heading, width, height))),
        Group("ruler", "", tuple(ruler(draft, scale, Point(0.4, 0.55)))),
    ]
    if detail is not None:
        corner = Vector(view.width, height - HEAD - DETAIL - 0.4)
        groups.append(enlarged(scene, detail, "detail").transformed(shift(corner.x, corner.y)))
    return Sheet(
        width=width,
        height=height,
        title=heading,
        description=" ".join(s for step in scene.fresh for s in step.sentences) or heading,
        groups=tuple(groups),
    )


def enlarged(scene: Scene, detail: Detail, name: str) -> Group:
    """A detail in its frame, with its scale under it; origin at its lower left corner."""
    drawn = figure(scene, detail.view, name)
    w, h = detail.view.width, detail.view.height
    rim = polyline(Point(0, 0), Point(w, 0), Point(w, h), Point(0, h), Point(0, 0))
    words = scene.draft.words.detail.format(scale=f"{detail.scale:.2g}")
    caption = Text(words, Point(0.0, -0.35), CAPTION, Role.CAUTION)
    return Group(name, words, (*drawn.items, Stroke(rim, Role.FAINT), caption))


def _heading(text: str, width: float, height: float) -> Iterator[Item]:
    size = next(h for h in HEADINGS if h == HEADINGS[-1] or _breadth(text, h) < width - 1.0)
    for i, line in enumerate(wrapped(text, size, width - 1.0)):
        yield Text(line, Point(0.4, height - 0.6 - i * PITCH * size), size, Role.CAUTION)


def ruler(draft: TaughtDraft, scale: float, at: Point) -> Iterator[Item]:
    """A small ruler that shows the scale: so much on the draft, its parts marked."""
    size, parts = RULER[draft.form.unit]
    long, tick = size / scale, 0.12
    yield Stroke(polyline(at, at + Vector(long, 0.0)), Role.SQUARE)
    for i in range(parts + 1):
        foot = at + Vector(long * i / parts, 0.0)
        yield Stroke(polyline(foot, foot + Vector(0.0, tick)), Role.SQUARE)
    words = draft.words
    told = words.ruler.format(value=draft.tape(size))
    text = f"{words.scale.format(scale=f'{scale:g}')} – {told}"
    yield Text(text, at + Vector(0.0, -0.32), CAPTION, Role.CAUTION)
