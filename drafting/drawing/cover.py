"""The cover: what is cut, bought, measured and sewn, in columns of text over small drawings.

Centimetres, Y up, the origin at each page's upper left corner, so everything lies at negative y.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from drafting.drawing.compose import Drawn, Note
from drafting.drawing.lettering import ABOVE, BELOW, PITCH, SLACK, width, wrapped
from drafting.drawing.sheet import Group, Item, Pen, Role, Stroke, Text
from drafting.geometry import Point, Transform, polyline, shift

TITLE, HEADING, BODY = 0.5, 0.3, 0.23
"""Heights of capitals in cm."""
COLUMN = 9.0
"""A column of text is at least so broad, in cm."""
GUTTER = 0.8
HANGING = 0.5
"""Lines after the first of a row are set in by so much."""
PICTURE = 5.5
"""Height in cm of the tallest piece as it is drawn small."""
ROWS = 2
"""Rows of small drawings, at most."""
APART = 0.5
NAME = 0.17
"""Height of capitals of a small drawing's number."""
SMALL = Pen(0.2)
"""How small drawings are drawn."""


@dataclass(frozen=True, slots=True)
class Row:
    """A line of a list: what it is, and its value at the column's right edge, if it has one."""

    text: str
    value: str = ""


@dataclass(frozen=True, slots=True)
class Section:
    """A heading and the rows under it."""

    heading: str
    rows: tuple[Row, ...]


@dataclass(frozen=True, slots=True)
class Cover:
    """What the cover tells.

    Attributes:
        title: Title of the pattern.
        remarks: Sentences under the title: the reference, the scale.
        sections: Lists, in the order of reading; empty ones are left out.
        pieces: To be drawn small.
    """

    title: str
    remarks: tuple[str, ...]
    sections: tuple[Section, ...]
    pieces: tuple[Drawn, ...]


def cover_notes(cover: Cover, room: float, height: float) -> tuple[Note, ...]:
    """The cover on as many pages as it takes.

    Args:
        cover: What it tells.
        room: Breadth of a page in cm.
        height: Height of a page in cm; the last page is as high as it needs to be.
    """
    head, top = _head(cover, room)
    flow = _Flow(room, height, top, head)
    for section in cover.sections:
        if section.rows:
            flow.section(section)
    return tuple(
        Note(Group(f"cover-{n}", cover.title, tuple(items)), room, low)
        for n, (items, low) in enumerate(flow.pages, 1)
    )


class _Flow:
    """Text that runs down columns and over pages."""

    def __init__(self, room: float, height: float, top: float, head: list[Item]) -> None:
        count = max(1, int((room + GUTTER) / (COLUMN + GUTTER)))
        self.breadth = (room - (count - 1) * GUTTER) / count
        self.lefts = [k * (self.breadth + GUTTER) for k in range(count)]
        self.height, self.top, self.column = height, top, 0
        self.y = top
        self.pages: list[tuple[list[Item], float]] = [(head, top)]

    def section(self, section: Section) -> None:
        """A heading with at least its first row under it, then the other rows."""
        tall = (ABOVE + BELOW + 1) * HEADING
        first = self._lines(section.rows[0])
        self._need(tall + len(first) * PITCH * BODY)
        self.y += HEADING
        self._put(section.heading, 0.0, HEADING)
        rule = self.y - BELOW * HEADING / 4
        left = self.lefts[self.column]
        line = polyline(Point(left, -rule), Point(left + self.breadth, -rule))
        self._page().append(Stroke(line, Role.SQUARE))
        for row in section.rows:
            self._row(row)

    def _row(self, row: Row) -> None:
        lines = self._lines(row)
        self._need(len(lines) * PITCH * BODY)
        end = self.lefts[self.column] + self.breadth
        for k, line in enumerate(lines):
            if row.value and k == 0:
                at = Point(end, -(self.y + ABOVE * BODY))
                self._page().append(Text(row.value, at, BODY, Role.CAUTION, 0.0, "end"))
            self._put(line, HANGING if k else 0.0, BODY)

    def _lines(self, row: Row) -> tuple[str, ...]:
        taken = width(row.value, BODY) * SLACK + APART if row.value else HANGING
        return wrapped(row.text, BODY, self.breadth - taken)

    def _put(self, text: str, inset: float, height: float) -> None:
        base = self.y + ABOVE * height
        at = Point(self.lefts[self.column] + inset, -base)
        self._page().append(Text(text, at, height, Role.CAUTION))
        self.y += PITCH * height
        items, low = self.pages[-1]
        self.pages[-1] = (items, max(low, base + BELOW * height))

    def _page(self) -> list[Item]:
        return self.pages[-1][0]

    def _need(self, tall: float) -> None:
        """Go on to the next column or page where so much does not fit under what is written."""
        if self.y + tall <= self.height or self.y == self.top:
            return
        self.column += 1
        if self.column == len(self.lefts):
            self.column, self.top = 0, 0.0
            self.pages.append(([], 0.0))
        self.y = self.top


def _head(cover: Cover, room: float) -> tuple[list[Item], float]:
    """Title, remarks and small drawings over the whole breadth, and how far down they reach."""
    items: list[Item] = []
    y = 0.0
    for text, height in ((cover.title, TITLE), *((r, BODY) for r in cover.remarks)):
        for line in wrapped(text, height, room):
            items.append(Text(line, Point(0.0, -(y + ABOVE * height)), height, Role.CAUTION))
            y += PITCH * height
    pictures, reach = _pictures(cover.pieces, room)
    items += [item.transformed(shift(0.0, -(y + APART))) for item in pictures]
    return items, y + APART + reach + APART


def _pictures(pieces: tuple[Drawn, ...], room: float) -> tuple[list[Item], float]:
    """All pieces at one scale, in rows, each with its number under it."""
    boxes = [piece.finished.cut_line.bounds() for piece in pieces]
    small = PICTURE / max(high - low for _, low, _, high in boxes)
    while True:
        rows = _in_rows(boxes, small, room)
        if len(rows) <= ROWS:
            break
        small *= 0.9
    items: list[Item] = []
    y = 0.0
    for row in rows:
        tall = max(boxes[k][3] - boxes[k][1] for k in row) * small
        x = 0.0
        for k in row:
            left, _, right, high = boxes[k]
            to = Transform(a=small, d=small, e=x - small * left, f=-y - small * high)
            items += _picture(pieces[k], to, Point(x + small * (right - left) / 2, -y - tall))
            x += small * (right - left) + APART
        y += tall + PITCH * NAME + APART
    return items, y - APART


def _in_rows(
    boxes: list[tuple[float, float, float, float]], small: float, room: float
) -> list[list[int]]:
    """Numbers of the pieces in each row."""
    rows: list[list[int]] = []
    used = room
    for k, (left, _, right, _) in enumerate(boxes):
        size = small * (right - left)
        if not rows or used + APART + size > room:
            rows.append([])
            used = -APART
        rows[-1].append(k)
        used += APART + size
    return rows


def _picture(piece: Drawn, to: Transform, foot: Point) -> Iterator[Item]:
    strokes = [item for item in piece.group.items if isinstance(item, Stroke)]
    cut = any(stroke.role is Role.CUT for stroke in strokes)
    for item in strokes:
        if item.role in ({Role.CUT} if cut else {Role.STITCH, Role.FOLD}):
            yield Stroke(item.path.transformed(to), Role.SQUARE, pen=SMALL)
    number = piece.finished.piece.number
    at = Point(foot.x, foot.y - PITCH * NAME)
    yield Text(str(number), at, NAME, Role.CAUTION, 0.0, "middle")
