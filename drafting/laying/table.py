"""The cloth on the table, drawn small: edges, selvedges, fold, ends, stripes and a ruler."""

from __future__ import annotations

import math
from collections.abc import Iterator

from drafting.drawing import Item, Pen, Role, Stroke, Text, Unit
from drafting.geometry import Point, Transform, polyline
from drafting.laying.plan import ClothPlan, Stretch
from drafting.laying.view import SMALL, View

MARKS: dict[Unit, float] = {"cm": 10.0, "in": 10.16}
"""The ruler has a mark every 10 cm of cloth, or every 4 in; every fifth is longer, with its
number."""
EDGE, HAIR, BROKEN = Pen(0.5), Pen(0.08), Pen(0.15, (1.5, 1.0))
"""Looks of the cloth's edge, of a stripe's middle, of a selvedge."""
BESIDE = 0.15
"""Between a line and its name, in cm of paper."""
RULER = 0.55
"""The ruler lies so far under the cloth, in cm of paper."""


def cloth(plan: ClothPlan, view: View, to: Transform) -> Iterator[Item]:
    """Everything under the pieces.

    Args:
        plan: The plan.
        view: Words and unit.
        to: From the plan's frame to the sheet.
    """
    yield from _stripes(plan, to)
    for number, stretch in enumerate(plan.stretches):
        first, last = number == 0, number == len(plan.stretches) - 1
        start = stretch.start - (plan.cloth.ends if first else 0.0)
        end = stretch.start + stretch.length + (plan.cloth.ends if last else 0.0)
        yield from _stretch(plan, stretch, (start, end), view, to)
    for x in (0.0, plan.length):
        yield _line(to, (x, 0.0), (x, high(plan)), BROKEN)
    yield from _ruler(plan, view, to)
    at = to.point(Point(-plan.cloth.ends, high(plan) / 2))
    at = Point(at.x - BESIDE * view.size, at.y)
    yield Text(view.words.start, at, SMALL * view.size, Role.CAUTION, 90.0, "middle")


def high(plan: ClothPlan) -> float:
    """Breadth of the cloth as it lies, in cm: half of it where it is folded all along."""
    folded = all(stretch.kind == "folded" for stretch in plan.stretches)
    return plan.cloth.table_width / (2 if folded else 1)


def long(plan: ClothPlan) -> float:
    """Length of the cloth that is drawn, in cm: what the pieces take and both ends."""
    return plan.length + 2 * plan.cloth.ends


def _stretch(
    plan: ClothPlan, stretch: Stretch, ends: tuple[float, float], view: View, to: Transform
) -> Iterator[Item]:
    words, folded = view.words, stretch.kind == "folded"
    top, inset = plan.cloth.table_width / (2 if folded else 1), plan.cloth.selvedge
    (left, right), middle = ends, sum(ends) / 2
    corners = ((left, 0.0), (left, top), (right, top), (right, 0.0))
    closed = corners if folded else (*corners, corners[0])
    yield Stroke(polyline(*(to.point(Point(*c)) for c in closed)), Role.CUT, pen=EDGE)
    yield _line(to, (left, top - inset), (right, top - inset), BROKEN)
    over = to.point(Point(middle, top))
    name = words.selvedges if folded else words.selvedge
    at = Point(over.x, over.y + BESIDE * view.size)
    yield Text(name, at, SMALL * view.size, Role.CAUTION, 0.0, "middle")
    under = to.point(Point(middle, 0.0))
    name = words.fold if folded else words.selvedge
    at = Point(under.x, under.y - (BESIDE + SMALL) * view.size)
    yield Text(name, at, SMALL * view.size, Role.CAUTION, 0.0, "middle")
    if folded:
        yield Stroke(_line(to, (left, 0.0), (right, 0.0), BROKEN).path, Role.FOLD)
    else:
        yield _line(to, (left, inset), (right, inset), BROKEN)


def _stripes(plan: ClothPlan, to: Transform) -> Iterator[Stroke]:
    """Middles of bars and of stripes, in each stretch."""
    repeat = plan.cloth.repeat
    for stretch in plan.stretches:
        folded = stretch.kind == "folded"
        top = plan.cloth.table_width / (2 if folded else 1)
        end = stretch.start + stretch.length
        for x in _multiples(repeat.lengthwise, 0.0, stretch.start, end):
            yield _line(to, (x, 0.0), (x, top), HAIR)
        middle = 0.0 if folded else plan.cloth.table_width / 2
        for y in _multiples(repeat.crosswise, middle, 0.0, top):
            yield _line(to, (stretch.start, y), (end, y), HAIR)


def _multiples(step: float | None, middle: float, low: float, high: float) -> Iterator[float]:
    """Every `step` from a middle, within bounds; none without a step."""
    if step:
        first, last = math.ceil((low - middle) / step), math.floor((high - middle) / step)
        yield from (middle + step * n for n in range(first, last + 1))


def _ruler(plan: ClothPlan, view: View, to: Transform) -> Iterator[Item]:
    """Marks along the cloth from its squared end, every fifth one longer and numbered."""
    size, base = view.size, to.point(Point(0.0, 0.0)).y
    foot = base - RULER * size
    mark = MARKS[view.unit]
    for n in range(math.floor(plan.length / mark) + 1):
        x = to.point(Point(n * mark, 0.0)).x
        is_long = n % 5 == 0
        tall = (0.2 if is_long else 0.1) * size
        yield Stroke(polyline(Point(x, foot), Point(x, foot + tall)), Role.LEVEL)
        if is_long:
            at = Point(x, foot - (0.1 + SMALL) * size)
            yield Text(view.told(n * mark), at, SMALL * size, Role.CAUTION, 0.0, "middle")
    ends = (to.point(Point(x, 0.0)).x for x in (0.0, plan.length))
    yield Stroke(polyline(*(Point(x, foot) for x in ends)), Role.LEVEL)


def _line(to: Transform, start: tuple[float, float], end: tuple[float, float], pen: Pen) -> Stroke:
    return Stroke(polyline(to.point(Point(*start)), to.point(Point(*end))), Role.LEVEL, pen=pen)
