"""A lay plan drawn small, one sheet for each cloth, for the person at the table.

A sheet shows the cloth from its squared end rightward, with selvedges, fold, pieces, names and
grain, and what to buy. Lengths on the sheet are in cm of paper, Y up.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from drafting.drawing import WORDS, Group, Item, Output, Role, Sheet, Stroke, Text, Unit
from drafting.drawing.lettering import PITCH, SLACK, wrapped
from drafting.geometry import Point, Transform, polyline
from drafting.laying import table
from drafting.laying.naming import named
from drafting.laying.plan import ClothPlan, LayPlan
from drafting.laying.telling import Line, above, below
from drafting.laying.view import SMALL, View
from drafting.laying.words import LAY_WORDS

SCALES = (5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100, 150, 200, 300, 500)
"""Scales tried; the biggest drawing that has room is made."""
BARS: dict[Unit, tuple[float, str]] = {"cm": (5.0, "50 mm"), "in": (5.08, "2 in")}
"""A bar to measure: its length in cm of paper, and what it reads."""
BESIDE, OVER, UNDER = 0.6, 0.7, 1.3
"""Room for words beside, over and under the cloth, in cm of paper."""
COLUMN, GUTTER = 8.4, 0.6
"""Breadth of the texts where they stand to the right of the cloth, and room before them."""
MEASURE = 1.2
"""Room for the bar."""


@dataclass(frozen=True, slots=True)
class Layout:
    """Where things stand on a sheet, in cm of paper.

    Attributes:
        scale: One centimetre of paper is so many of cloth.
        to: From the plan's frame to the sheet.
        height: Height of the sheet.
        texts: The texts.
    """

    scale: int
    to: Transform
    height: float
    texts: tuple[Text, ...]


def pictures(plan: LayPlan, output: Output, *, width: float, height: float) -> tuple[Sheet, ...]:
    """One sheet for each cloth.

    Args:
        plan: The plan.
        output: Language and unit of the texts.
        width: Breadth of the paper inside its margins, in cm.
        height: Its height; a sheet is as high as it needs, at most this.
    """
    view = view_of(plan, output)
    return tuple(_picture(cloth, view, width, height) for cloth in plan.cloths)


def view_of(plan: LayPlan, output: Output) -> View:
    """How a plan is drawn in a language and unit."""
    orders = max((p.order for cloth in plan.cloths for p in cloth.placements), default=1)
    words = LAY_WORDS[output.language]
    return View(plan.laying, words, output.unit, output.language, orders, plan.findings)


def _picture(plan: ClothPlan, view: View, width: float, height: float) -> Sheet:
    head, foot = tuple(above(plan, view)), tuple(below(plan, view))
    layout = min(
        (_stacked(plan, head, foot, width, height), _beside(plan, (*head, *foot), width, height)),
        key=lambda found: found.scale,
    )
    cloth = WORDS[view.language].cloth(plan.kind)
    pieces = tuple(
        named(placement, view, layout.to, f"{plan.kind}-{number}")
        for number, placement in enumerate(plan.placements, 1)
    )
    measure = _measure(view, width, layout.scale)
    return Sheet(
        width=width,
        height=layout.height,
        title=view.title(plan.kind),
        description=_description(plan, view, cloth, layout.scale),
        groups=(
            Group(f"{plan.kind}-text", cloth, (*layout.texts, *measure)),
            Group(f"{plan.kind}-cloth", cloth, tuple(table.cloth(plan, view, layout.to))),
            *pieces,
        ),
    )


def _stacked(
    plan: ClothPlan, head: tuple[Line, ...], foot: tuple[Line, ...], width: float, height: float
) -> Layout:
    """Texts over and under the cloth."""
    over, under = _high(head, width) + OVER, _high(foot, width) + UNDER + MEASURE
    scale = _scale(plan, width - BESIDE, height - over - under)
    tall = under + table.high(plan) / scale + over
    texts = (*_lines(head, 0.0, tall, width), *_lines(foot, 0.0, under - UNDER, width))
    return Layout(scale, _to(plan, scale, under), tall, texts)


def _beside(plan: ClothPlan, lines: tuple[Line, ...], width: float, height: float) -> Layout:
    """Texts to the right of the cloth."""
    scale = _scale(plan, width - BESIDE - COLUMN - GUTTER, height - OVER - UNDER)
    drawn = table.high(plan) / scale + OVER + UNDER
    tall = max(drawn, _high(lines, COLUMN) + MEASURE)
    texts = tuple(_lines(lines, width - COLUMN, tall, COLUMN))
    return Layout(
        scale if tall <= height else SCALES[-1] + 1,
        _to(plan, scale, tall - drawn + UNDER),
        tall,
        texts,
    )


def _to(plan: ClothPlan, scale: int, foot: float) -> Transform:
    left = BESIDE + plan.cloth.ends / scale
    return Transform(a=1 / scale, d=1 / scale, e=left, f=foot)


def _scale(plan: ClothPlan, width: float, height: float) -> int:
    fits = (
        scale
        for scale in SCALES
        if table.long(plan) <= width * scale and table.high(plan) <= height * scale
    )
    return next(fits, SCALES[-1])


def _description(plan: ClothPlan, view: View, cloth: str, scale: int) -> str:
    return view.words.description.format(
        cloth=cloth,
        count=sum(len(p.copies) for p in plan.placements),
        length=view.told(plan.length),
        scale=scale,
    )


def _high(lines: tuple[Line, ...], width: float) -> float:
    return sum(PITCH * size * len(_rows(text, size, width)) for text, size in lines)


def _rows(text: str, size: float, width: float) -> tuple[str, ...]:
    """The text broken to a breadth, with room for a viewer's broader letters."""
    return wrapped(text, size, width / SLACK)


def _lines(lines: tuple[Line, ...], left: float, top: float, width: float) -> Iterator[Text]:
    for text, size in lines:
        for row in _rows(text, size, width):
            top -= PITCH * size
            yield Text(row, Point(left, top + 0.4 * size), size, Role.CAUTION)


def _measure(view: View, width: float, scale: int) -> Iterator[Item]:
    """A bar to measure, at the lower right, and the scale over it."""
    bar, length = BARS[view.unit]
    left, right = Point(width - bar, 0.55), Point(width, 0.55)
    for at in (left, right):
        yield Stroke(polyline(Point(at.x, 0.45), Point(at.x, 0.65)), Role.SQUARE)
    yield Stroke(polyline(left, right), Role.SQUARE, "bar")
    told = view.words.bar.format(length=length)
    yield Text(told, Point(width - bar / 2, 0.15), SMALL, Role.CAUTION, 0.0, "middle")
    told = view.words.scale.format(scale=scale, mark=view.told(table.MARKS[view.unit]))
    yield Text(told, Point(width, 0.8), SMALL, Role.CAUTION, 0.0, "end")
