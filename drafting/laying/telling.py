"""What stands beside a drawn lay plan: what to buy, which piece is which, what to mind."""

from __future__ import annotations

from collections.abc import Iterator

from babel.numbers import format_decimal

from drafting.drawing import WORDS
from drafting.language import Language, decimal
from drafting.laying.plan import ClothPlan
from drafting.laying.view import BODY, SMALL, TITLE, View

Line = tuple[str, float]
"""A text and the height of its capitals in cm of paper."""


def above(plan: ClothPlan, view: View) -> Iterator[Line]:
    """What the plan is of, and what to buy."""
    words = view.words
    if any(finding.severity == "error" for finding in view.findings):
        yield WORDS[view.language].not_for_cutting, TITLE
    yield view.title(plan.kind), TITLE
    yield "; ".join(_orders(plan, view)), BODY
    yield words.cloth.format(**_cloth(plan, view)), BODY
    yield words.buy.format(**_amounts(plan, view)), BODY
    found = words.plain
    if plan.engine != "plain":
        found = words.engine.format(
            engine=plan.engine, budget=decimal(view.laying.budget, view.language)
        )
    yield f"{words.used.format(use=decimal(plan.use, view.language))}; {found}.", BODY


def below(plan: ClothPlan, view: View) -> Iterator[Line]:
    """The pieces' numbers, the signs, and the remarks."""
    pieces = {(p.finished.piece.number, p.finished.piece.title) for p in plan.placements}
    yield "; ".join(f"{number} {title}" for number, title in sorted(pieces)) + ".", SMALL
    if view.orders > 1:
        yield view.words.numbers, SMALL
    yield view.words.signs, SMALL
    if plan.cloth.repeat.lengthwise or plan.cloth.repeat.crosswise:
        yield view.words.repeat, SMALL
    for finding in (*view.findings, *plan.findings):
        yield finding.message, SMALL


def _orders(plan: ClothPlan, view: View) -> Iterator[str]:
    """The orders' garments and names."""
    orders = {p.order: (p.garment, p.reference) for p in plan.placements}
    for number, (garment, reference) in sorted(orders.items()):
        told = f"{garment}, {reference}" if reference else garment
        one = view.orders == 1
        yield told if one else view.words.orders.format(number=number, garment=told)


def _cloth(plan: ClothPlan, view: View) -> dict[str, str]:
    words = view.words
    folded = any(stretch.kind == "folded" for stretch in plan.stretches)
    return {
        "width": view.told(plan.cloth.width),
        "layers": words.folded if folded else words.open,
        "direction": words.one_way if plan.cloth.one_way else words.two_way,
    }


def _amounts(plan: ClothPlan, view: View) -> dict[str, str]:
    return {
        "metric": f"{metres(plan.buy.metric, view.language)} m",
        "yards": f"{eighths(plan.buy.yards)} yd",
        "length": view.told(plan.length),
        "exact": view.told(plan.buy.exact),
    }


def metres(cm: float, language: Language) -> str:
    """A length in metres, to the centimetre."""
    return str(format_decimal(cm / 100, "0.00", locale=language))


def eighths(yards: float) -> str:
    """Yards as shops say them: 1 3/8."""
    whole, part = divmod(round(yards * 8), 8)
    below_it = 8
    while part and part % 2 == 0:
        part, below_it = part // 2, below_it // 2
    parts = ([str(whole)] if whole else []) + ([f"{part}/{below_it}"] if part else [])
    return " ".join(parts) or "0"
