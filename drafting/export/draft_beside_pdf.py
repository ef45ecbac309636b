"""Two methods side by side, as PDF."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from reportlab.platypus import CondPageBreak, Flowable

from drafting.drawing import Group
from drafting.export.flow import CHAPTER, SMALL, TITLE, Drawing, Pages, table, text
from drafting.export.ink import POINT
from drafting.teaching.comparing import names, overlaid
from drafting.teaching.lesson import SCALES

if TYPE_CHECKING:
    from drafting.drawing import Sheet
    from drafting.teaching.comparing import Compared, Difference


def write(compared: Compared) -> bytes:
    """Both outlines over each other, and tables of what differs."""
    words = compared.one.words
    one, two = names(compared)
    title = words.beside_title.format(title=compared.one.title, one=one, two=two)
    pages = Pages(compared.one, title)
    return pages.written(lambda: _story(compared, title, pages))


def _story(compared: Compared, title: str, pages: Pages) -> Iterator[Flowable]:
    words = compared.one.words
    sheet = _fitting(compared, pages)
    drawn = Group("sheet", title, tuple(i for g in sheet.groups for i in g.items))
    yield text(title, TITLE)
    yield text(words.aligned.format(place=compared.one.say(compared.anchor)), SMALL)
    yield Drawing(lambda: drawn, sheet.width, sheet.height)
    yield from _table(words.beside_measures, compared, compared.measures, pages)
    yield from _table(words.beside_lengths, compared, compared.lengths, pages)
    rows = [
        (compared.one.say(name), _shown(compared, x), _shown(compared, y))
        for name, x, y in compared.points
    ]
    if rows:
        moved = table([words.beside_point_columns, *rows], pages.shares(4, 2, 2, 2)[:3])
        yield CondPageBreak(3 * POINT)
        yield text(words.beside_points, CHAPTER)
        yield moved


def _fitting(compared: Compared, pages: Pages) -> Sheet:
    """The overlay at the largest scale that leaves room for its title."""
    for scale in SCALES:
        sheet = overlaid(compared, scale)
        if sheet.width <= pages.width and sheet.height <= pages.height - 2.0:
            return sheet
    return overlaid(compared, 2 * SCALES[-1])


def _table(
    heading: str, compared: Compared, rows: tuple[Difference, ...], pages: Pages
) -> Iterator[Flowable]:
    one, two = names(compared)
    columns = tuple(c.format(one=one, two=two) for c in compared.one.words.beside_columns)
    cells = [
        (d.what[:1].upper() + d.what[1:], *(_value(compared, d, v) for v in (d.one, d.two, d.by)))
        for d in rows
    ]
    if cells:
        yield CondPageBreak(3 * POINT)
        yield text(heading, CHAPTER)
        yield table([columns, *cells], pages.shares(5, 2, 2, 2))


def _value(compared: Compared, row: Difference, value: float | None) -> str:
    if value is None:
        return "–"
    return _shown(compared, value) if row.unit == "cm" else f"{value:.1f}°"


def _shown(compared: Compared, cm: float) -> str:
    return compared.one.tape(cm)
