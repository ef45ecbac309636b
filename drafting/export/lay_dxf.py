"""A lay plan as a DXF for a cutter: a block for each piece laid, in millimetres, Y up.

Layers and texts are those of the pattern's own DXF. The first cloth's squared end and lower edge
lie at the origin, X runs along the cloth; further cloths lie below it. A piece on the fold is cut
as its half.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import TYPE_CHECKING

from drafting.drawing import Drawn, Sheet
from drafting.export.dxf import Placed, render
from drafting.export.language import told
from drafting.export.lay_full import Plotted, plotted
from drafting.geometry import shift
from drafting.laying import table
from drafting.pattern import Cut

if TYPE_CHECKING:
    from drafting.drawing import Output
    from drafting.laying import ClothPlan, LayPlan, Placement
    from drafting.workroom import Work

APART = 50.0
"""Between two cloths, in cm."""


def write_dxf(works: tuple[Work, ...], plan: LayPlan, output: Output) -> bytes:
    """The plans of all cloths as an ASCII DXF.

    Args:
        works: The orders that were laid, in their order.
        plan: Their plan.
        output: Language of the texts and the curves' tolerance.
    """
    works = tuple(told(work, output) for work in works)
    blocks: list[Placed] = []
    low = 0.0
    for number, cloth in enumerate(plan.cloths):
        low -= number and table.high(cloth) + APART
        blocks += _blocks(works, cloth, low, output)
    sheet = Sheet(
        width=max(cloth.length for cloth in plan.cloths),
        height=table.high(plan.cloths[0]),
        title="",
        description="",
        groups=(),
    )
    return render(tuple(blocks), sheet, works[0], output)


def _blocks(
    works: tuple[Work, ...], cloth: ClothPlan, low: float, output: Output
) -> Iterator[Placed]:
    """Each piece of a cloth whose lower edge lies at a height in cm."""
    pieces = plotted(works, cloth, output)
    for placement, piece in zip(cloth.placements, pieces, strict=True):
        copies = "_".join(map(str, placement.copies))
        name = f"{placement.order}_{placement.piece}_{copies}_{cloth.kind}"
        move = piece.move.then(shift(0.0, low))
        yield Placed(works[placement.order - 1], _cut(piece, placement, cloth), move, name)


def _cut(piece: Plotted, placement: Placement, cloth: ClothPlan) -> Drawn:
    """The piece, its cutting instruction that of this one place."""
    finished = piece.drawn.finished
    cut = Cut(cloth.kind, len(placement.copies), mirrored=placement.layers == "double")
    return replace(
        piece.drawn, finished=replace(finished, piece=replace(finished.piece, cut=(cut,)))
    )
