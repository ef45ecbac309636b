"""What is worth a remark about a lay. Lengths in cm."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING

from drafting.drawing.words import amount
from drafting.laying.cloth import USUAL_WIDTHS, Cloth, ClothKind
from drafting.laying.matching import Mismatch
from drafting.laying.plan import Amount, ClothPlan
from drafting.laying.solving import Layout
from drafting.pattern import Finding

if TYPE_CHECKING:
    from drafting.workroom import Work

WORTH = 10.0
"""A saving of less than 10 cm of cloth is not worth another width."""


def on_orders(works: tuple[Work, ...], cloths: Mapping[ClothKind, Cloth]) -> tuple[Finding, ...]:
    """What concerns whole orders: patterns that are not for cutting, cloths left out."""
    unsound = tuple(
        Finding(
            code="not_for_cutting",
            severity="error",
            where=f"orders.{number}",
            message=f"The pattern of order {number} fails its checks: it is not for cutting.",
        )
        for number, work in enumerate(works, 1)
        if work.verdict == "unsound"
    )
    return (*unsound, *_left_out(works, cloths))


def _left_out(works: tuple[Work, ...], cloths: Mapping[ClothKind, Cloth]) -> tuple[Finding, ...]:
    """Cloths that the orders need and that were not described."""
    needed = {c.cloth: None for w in works for p in w.pattern.pieces for c in p.piece.cut}
    return tuple(
        Finding(
            code="cloth_not_laid",
            severity="note",
            where=f"cloths.{kind}",
            message=f"The orders also need {kind}; it was not described and is not laid.",
        )
        for kind in needed
        if kind not in cloths
    )


def mismatches(missed: list[Mismatch], kind: str) -> tuple[Finding, ...]:
    """Seams that do not meet on the repeat, the greatest miss of each."""
    worst: dict[str, Mismatch] = {}
    for miss in missed:
        known = worst.get(miss.seam)
        if known is None or _size(miss) > _size(known):
            worst[miss.seam] = miss
    return tuple(
        Finding(
            code="seam_off_repeat",
            severity="warning",
            where=f"cloths.{kind}.repeat.match",
            message=f"The {seam.replace('_', ' ')} seam misses the repeat by "
            f"{amount(_size(miss), 'cm')}: other seams already set both of its pieces.",
            measured=_size(miss),
            allowed=(0.0, 0.0),
        )
        for seam, miss in worst.items()
    )


def _size(miss: Mismatch) -> float:
    return max(abs(miss.along), abs(miss.across))


def on_plan(plan: ClothPlan) -> Iterator[Finding]:
    """How the cloth must lie for the plan to hold."""
    where = f"cloths.{plan.kind}"
    for code, message in _how_it_lies(plan):
        yield Finding(code=code, severity="note", where=where, message=message)


def _how_it_lies(plan: ClothPlan) -> Iterator[tuple[str, str]]:
    cloth, repeat = plan.cloth, plan.cloth.repeat
    if cloth.folded:
        message = (
            "Fold the cloth lengthwise, right sides together: the wrong side is up. A piece cut "
            "double gives a right and a left."
        )
        yield "right_sides_together", message
    else:
        yield "right_side_up", "Lay the cloth open, right side up; mirrored pieces lie face down."
    if any(p.layers == "upper" for p in plan.placements):
        yield (
            "upper_layer_only",
            "Single pieces are cut from the upper layer only, pattern face down where shown so.",
        )
    if cloth.folded and any(s.kind == "open" for s in plan.stretches):
        yield (
            "open_stretch",
            "Open the cloth, right side up, beyond the folded stretch: single pieces lie there.",
        )
    if cloth.shrinkage_lengthwise or cloth.shrinkage_crosswise:
        yield "wash_first", "Wash and press the cloth before cutting; the plan is of washed cloth."
    if repeat.lengthwise:
        yield "square_on_bar", "Square the cloth's end along the middle of a bar."
    if repeat.crosswise and cloth.folded:
        yield "fold_on_stripe", "Fold the cloth along the middle of a stripe."
    if (repeat.lengthwise or repeat.crosswise) and not cloth.one_way:
        message = (
            "Pieces may lie head down: a repeat that is not the same from both ends, or from both "
            "sides, needs one_way."
        )
        yield "even_repeat_only", message


def widths(
    plan: ClothPlan, bought: Mapping[float, Amount], layouts: Mapping[float, Layout]
) -> Iterator[Finding]:
    """Whether a wider cloth saves a length, or a narrower one would do.

    Args:
        plan: The plan.
        bought: What would be bought of each width that was tried.
        layouts: The lays on them.
    """
    own = plan.cloth.width
    for width in sorted(w for w in bought if w > own):
        if plan.buy.exact - bought[width].exact >= WORTH:
            least = needed_width(layouts[width], plan.cloth)
            yield _width_finding(
                plan,
                "wider_saves",
                f"Cloth of {amount(least, 'cm')} or more would take "
                f"{amount(bought[width].metric, 'cm')}, "
                f"{amount(plan.buy.exact - bought[width].exact, 'cm')} less.",
                least,
            )
            break
    least = needed_width(layouts[own], plan.cloth)
    enough = {w for w in USUAL_WIDTHS if least <= w < own}
    enough |= {w for w in bought if w < own and bought[w].metric <= plan.buy.metric}
    if enough:
        width = min(enough)
        yield _width_finding(
            plan,
            "narrower_will_do",
            f"Cloth of {amount(width, 'cm')} takes no more of its length.",
            width,
        )


def needed_width(layout: Layout, cloth: Cloth) -> float:
    """Least width of cloth to buy on which a lay has room."""
    widest = max(
        (2 if bed.kind == "folded" else 1) * (breadth + cloth.selvedge)
        + (0 if bed.kind == "folded" else cloth.selvedge)
        for bed, breadth in zip(layout.beds, layout.breadths, strict=True)
    )
    return widest / (1 - cloth.shrinkage_crosswise / 100)


def _width_finding(plan: ClothPlan, code: str, message: str, width: float) -> Finding:
    return Finding(
        code=code,
        severity="note",
        where=f"cloths.{plan.kind}.width",
        message=message,
        measured=width,
    )
