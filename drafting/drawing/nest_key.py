"""The key of a nest: a sample of each size's line beside its name."""

from __future__ import annotations

from dataclasses import dataclass

import shapely

from drafting.drawing.lettering import width, wrapped
from drafting.drawing.nest_lines import outline_pen
from drafting.drawing.nest_words import NestWords
from drafting.drawing.sheet import Group, Item, Role, Stroke, Text
from drafting.geometry import Point, polyline

TITLE, BODY, SMALL = 0.5, 0.35, 0.25
"""Heights of capitals, cm."""
SAMPLE = 4.5
"""Length of a line's sample, cm."""
PITCH = 0.75
BREADTH = 11.0
NAME = "key"


@dataclass(frozen=True, slots=True)
class Key:
    """The key's strokes and texts, and the box that they fill."""

    group: Group
    area: shapely.Polygon


def key(
    names: tuple[str, ...],
    notes: tuple[str, ...],
    left_out: tuple[tuple[str, str], ...],
    words: NestWords,
) -> Key:
    """Lay the key; its origin is the upper left corner.

    Args:
        names: Of the sizes, in the order of the range.
        notes: What else is said of each size; empty for most.
        left_out: Sizes that are not drawn, and why.
        words: The sheet's language.
    """
    items: list[Item] = [Text(words.key, Point(0.0, -TITLE), TITLE, Role.CAUTION)]
    y = -TITLE - 0.9
    for place, (name, note) in enumerate(zip(names, notes, strict=True)):
        line = polyline(Point(0.0, y + BODY / 2), Point(SAMPLE, y + BODY / 2))
        items.append(Stroke(line, Role.CUT, pen=outline_pen(place)))
        told = f"{words.size.format(name=name)} {note}".strip()
        items.append(Text(told, Point(SAMPLE + 0.4, y), BODY, Role.CAUTION))
        y -= PITCH
    texts = [words.left_out.format(name=n, reason=why) for n, why in left_out]
    for text in (*texts, words.how):
        for part in wrapped(text, SMALL, BREADTH):
            items.append(Text(part, Point(0.0, y), SMALL, Role.CAUTION))
            y -= 0.5
    return Key(Group(NAME, words.key, tuple(items)), shapely.box(0.0, y, _breadth(items), 0.0))


def _breadth(items: list[Item]) -> float:
    return max(t.at.x + width(t.text, t.height) for t in items if isinstance(t, Text))
