"""The legend: what the sheet is, two squares to measure, and what to mind before cutting.

Centimetres, Y up, the origin at the block's upper left corner, so everything lies at negative y.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from drafting.drawing.labels import Verdict
from drafting.drawing.lettering import ABOVE, BELOW, PITCH, has_shapes, wrapped
from drafting.drawing.sheet import Group, Item, Role, Stroke, Text
from drafting.drawing.words import Words
from drafting.geometry import Path, Point, polyline

MILLIMETRE_SQUARE = 10.0
"""Side in cm of the metric test square: at 97 % it reads 97 mm, which no ruler overlooks."""
INCH_SQUARE = 10.16
"""Side in cm of the 4 in test square."""
GUTTER = 0.7
TITLE, BODY = 0.6, 0.32
"""Heights of capitals in cm."""
PARAGRAPH = 0.8
"""Room between paragraphs, in heights of capitals."""
LEAST_WIDTH = INCH_SQUARE + GUTTER + 3.0
"""Both squares one below the other, and a column of text beside them."""
SHRINKS = (1.0, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.2, 0.12)


@dataclass(frozen=True, slots=True)
class Legend:
    """The legend's strokes and texts.

    Attributes:
        group: What to draw.
        width: Breadth in cm.
        height: Height in cm.
        text_end: How far below the top the text in the right column ends, in cm; what is under
            it is free.
    """

    group: Group
    width: float
    height: float
    text_end: float

    @property
    def column(self) -> float:
        """Where the right column starts, in cm from the left."""
        return INCH_SQUARE + GUTTER


@dataclass(frozen=True, slots=True)
class Square:
    """A square to measure: its side in cm as it is drawn, and what is written beside it."""

    side: float
    text: str


def legend(
    title: str,
    *,
    reference: str,
    verdict: Verdict,
    cautions: tuple[str, ...],
    words: Words,
    closing: tuple[str, ...] = (),
    width: float = 19.0,
    keep_free: float = 0.0,
    scale: Square | None = None,
) -> Legend:
    """Lay the legend.

    Args:
        title: Title of the pattern.
        reference: The order's reference, as typed.
        verdict: An unsound pattern is marked NOT FOR CUTTING.
        cautions: The garment's own, beside the usual ones.
        words: The sheet's language.
        closing: Sentences to end with.
        width: Breadth in cm; at least LEAST_WIDTH.
        keep_free: Height in cm to leave free under the text in the right column.
        scale: The square of the drawing's scale, in place of the one in inches.
    """
    heads = [words.not_for_cutting] if verdict == "unsound" else []
    items: list[Item] = list(_lines([*heads, title], TITLE, 0.0, 0.0, width))
    top = -min(item.at.y for item in items if isinstance(item, Text)) + 0.8
    items += _square(words.square_mm, words.measure_first, MILLIMETRE_SQUARE, "square-mm", top)
    lower = top + MILLIMETRE_SQUARE + GUTTER
    if scale is None:
        items += _square(words.square_in, words.measure_first, INCH_SQUARE, "square-in", lower)
        height = lower + INCH_SQUARE
    else:
        items += _scale_square(scale, lower)
        height = lower + scale.side
    texts = [reference] if reference.strip() else []
    texts += [*words.cautions, *cautions]
    if not has_shapes(reference + title):
        texts.append(words.no_shape)
    texts += closing
    column, end = _column(texts, top, height - top - keep_free, width)
    return Legend(Group("legend", title, (*items, *column)), width, height, end)


def _column(texts: list[str], top: float, room: float, width: float) -> tuple[list[Text], float]:
    """The right column's text, shrunk until it fits the room, and where it ends."""
    left = INCH_SQUARE + GUTTER
    lines: list[Text] = []
    end = top
    for shrink in SHRINKS:
        height = BODY * shrink
        lines, end = [], top
        for text in texts:
            paragraph = list(_lines([text], height, left, end, width - left))
            lines += paragraph
            end = -paragraph[-1].at.y + (BELOW + PARAGRAPH) * height
        if end - top <= room:
            break
    return lines, end


def _lines(
    texts: list[str], height: float, left: float, top: float, breadth: float
) -> Iterator[Text]:
    y = top + ABOVE * height
    for text in texts:
        for part in wrapped(text, height, breadth):
            yield Text(part, Point(left, -y), height, Role.CAUTION)
            y += PITCH * height


def _scale_square(square: Square, top: float) -> Iterator[Item]:
    yield Stroke(_box(square.side, top), Role.SQUARE, "square-scale")
    at = Point(square.side + 0.4, -top - square.side / 2 - BODY / 2)
    yield Text(square.text, at, BODY, Role.CAUTION)


def _box(side: float, top: float) -> Path:
    a, b = Point(0.0, -top), Point(side, -top)
    c, d = Point(side, -top - side), Point(0.0, -top - side)
    return polyline(d, c, b, a, d)


def _square(name: str, advice: str, side: float, code: str, top: float) -> Iterator[Item]:
    yield Stroke(_box(side, top), Role.SQUARE, code)
    middle = -top - side / 2
    yield Text(name, Point(side / 2, middle + 0.2), 0.7, Role.CAUTION, 0.0, "middle")
    yield Text(advice, Point(side / 2, middle - 0.8), BODY, Role.CAUTION, 0.0, "middle")
