"""The steps as they stand on a class sheet: a few at a time, with a figure beside them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import chain

from drafting.geometry import Point
from drafting.teaching.figures import Scene, spoken_of
from drafting.teaching.frames import Detail, detail_of, whole_view
from drafting.teaching.taught import TaughtDraft, TaughtStep
from drafting.teaching.view import Box, View, around
from drafting.trace import Outline

TOGETHER = 6
"""So many steps share a figure. Source: a figure for each five or six steps, class sheets, common
practice, no source."""
SCALES: tuple[float, ...] = (4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0, 20.0)
"""Figures are drawn at 1:4 or 1:5; smaller only where the paper is too small for that."""
ROOM = 1.5
"""Room (cm on the draft) round what a figure shows."""
LEAST = 12.0
"""A figure shows at least so much of the draft each way, cm."""
DETAILS = 2
"""Most details beside one figure."""


@dataclass(frozen=True, slots=True)
class Lesson:
    """Steps that share a figure.

    Attributes:
        steps: The steps.
        scene: What the figure shows.
        view: Its window and scale; None where the steps draw nothing.
        details: What is enlarged.
    """

    steps: tuple[TaughtStep, ...]
    scene: Scene
    view: View | None
    details: tuple[Detail, ...]


def scale_for(draft: TaughtDraft, *rooms: tuple[float, float], paper: int = 0) -> float:
    """The largest scale at which all of a paper fits into one of the rooms, width and height."""
    whole = whole_window(draft, paper)
    wanted: tuple[float, ...] = (float(draft.form.scale),) if draft.form.scale else ()
    for scale in (*wanted, *SCALES):
        view = View(whole, scale)
        if any(view.width <= wide and view.height <= high for wide, high in rooms):
            return scale
    return SCALES[-1]


def whole_window(draft: TaughtDraft, paper: int = 0) -> Box:
    """The window that shows everything that was drawn on a paper, with a little room."""
    points = [p for s in draft.steps if s.paper == paper for p in _touched(s)]
    return around(points, ROOM) if points else (0.0, 0.0, LEAST, LEAST)


def lesson(draft: TaughtDraft, steps: tuple[TaughtStep, ...], scale: float) -> Lesson:
    """Steps with the figure that shows what they draw."""
    scene = Scene(draft, steps[-1].number, frozenset(s.number for s in steps))
    box = _window(draft, steps, scale)
    view = None if box is None else View(box, scale)
    found = [d for s in steps if (d := detail_of(draft, s))]
    return Lesson(steps, scene, view, tuple(_apart(found))[:DETAILS])


def _window(draft: TaughtDraft, steps: tuple[TaughtStep, ...], scale: float) -> Box | None:
    """What the new steps draw and go by, with some room, within the whole draft."""
    points = [p for s in steps for p in _touched(s)]
    if not points:
        return None
    left, low, right, top = around(points, ROOM)
    wide, high = max(0.0, LEAST - (right - left)) / 2, max(0.0, LEAST - (top - low)) / 2
    whole = whole_view(draft, scale).window
    return (
        max(left - wide, whole[0]),
        max(low - high, whole[1]),
        min(right + wide, whole[2]),
        min(top + high, whole[3]),
    )


def _touched(step: TaughtStep) -> Iterator[Point]:
    if step.place is None and step.line is None and not isinstance(step.step.value, Outline):
        return
    if step.place:
        yield step.place
    paths = [step.line.path] if step.line else []
    if isinstance(step.step.value, Outline):
        paths = [leg.path for leg in step.step.value.legs]
    for path in paths:
        left, low, right, top = path.bounds()
        yield from (Point(left, low), Point(right, top))
    yield from chain(spoken_of(step))


def _apart(details: list[Detail]) -> Iterator[Detail]:
    """Details that do not show what another one shows already, the widest first."""
    kept: list[Detail] = []
    for detail in sorted(details, key=lambda d: -d.scale):
        if not any(_within(detail.box, other.view.window) for other in kept):
            kept.append(detail)
            yield detail


def _within(inner: Box, outer: Box) -> bool:
    return (
        inner[0] >= outer[0]
        and inner[1] >= outer[1]
        and inner[2] <= outer[2]
        and inner[3] <= outer[3]
    )
