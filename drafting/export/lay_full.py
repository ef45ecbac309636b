"""A lay plan at full size: every piece with its marks where it lies, for a roll of paper.

A page is as broad as the cloth is long, so that it is plotted along the roll; a cloth longer than
a page can be goes on several, cut straight across.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from io import BytesIO
from typing import TYPE_CHECKING

from drafting.craft.piecework import turned_over
from drafting.drawing import PRINT_WORDS, WORDS, Drawn, Group, Output, draw_pieces, drawn_as
from drafting.errors import OutputError
from drafting.export.ink import POINT, Ink
from drafting.export.language import told
from drafting.export.paths import MM
from drafting.export.pdf import undated
from drafting.geometry import Transform, shift
from drafting.laying import table
from drafting.laying.parts import OVER
from drafting.laying.picture import view_of
from drafting.pattern import FinishedPattern
from drafting.pattern.finish import finish_pattern

if TYPE_CHECKING:
    from drafting.laying import ClothPlan, LayPlan, Placement
    from drafting.workroom import Work

ROOM = 4.0
"""Room round the cloth for words, in cm."""
SIZE = 4.0
"""Words are so many times as big as on a page held in the hand: 8 mm."""
LONGEST_PAGE = 500.0
"""Length of a page in cm; a PDF's page ends at 508. Source: ISO 32000-1, annex C."""


@dataclass(frozen=True, slots=True)
class Plotted:
    """A piece to be drawn at full size, and the move to where it lies; it never mirrors."""

    drawn: Drawn
    move: Transform

    @property
    def group(self) -> Group:
        """The piece's lines and texts where it lies."""
        return self.drawn.group.transformed(self.move)


class Faces:
    """The pieces of an order as they are laid: face up or down, whole or half; drawn when asked."""

    def __init__(self, work: Work, output: Output) -> None:
        self.work, self.output = work, output
        self._known: dict[tuple[bool, bool], dict[str, Drawn]] = {}

    def plotted(self, placement: Placement) -> Plotted:
        """The piece of a placement with its move."""
        key = (placement.mirrored, placement.layers == "fold")
        if key not in self._known:
            self._known[key] = {d.finished.piece.name: d for d in self._drawn(*key)}
        move = OVER.then(placement.move) if placement.mirrored else placement.move
        return Plotted(self._known[key][placement.piece], move)

    def _drawn(self, face_down: bool, on_fold: bool) -> tuple[Drawn, ...]:  # noqa: FBT001
        pattern = self.work.pattern
        if not on_fold:
            form = replace(self.output, unfold=True)
            pattern = drawn_as(pattern, form, PRINT_WORDS[self.output.language])
        if face_down:
            pattern = _turned(pattern)
        return draw_pieces(
            pattern,
            reference=self.work.reference,
            verdict=self.work.verdict,
            unit=self.output.unit,
            words=WORDS[self.output.language],
        )


def _turned(pattern: FinishedPattern) -> FinishedPattern:
    """Every piece seen from its other side, finished again."""
    net = replace(pattern.pattern, pieces=tuple(map(turned_over, pattern.pattern.pieces)))
    return replace(pattern, pattern=net, pieces=finish_pattern(net, pattern.finish).pieces)


def plotted(works: tuple[Work, ...], plan: ClothPlan, output: Output) -> Iterator[Plotted]:
    """Every piece of a cloth's plan at full size."""
    plain = Output(language=output.language, unit=output.unit)
    faces = [Faces(told(work, output), plain) for work in works]
    for placement in plan.placements:
        yield faces[placement.order - 1].plotted(placement)


def write_full(works: tuple[Work, ...], plan: LayPlan, output: Output) -> bytes:
    """The plans of all cloths at full size, one after the other.

    Args:
        works: The orders that were laid, in their order.
        plan: Their plan.
        output: Language and unit of the texts; on paper "roll" the roll's breadth is kept.

    Raises:
        OutputError: The roll is too narrow.
    """
    out = BytesIO()
    title = "; ".join(view_of(plan, output).title(cloth.kind) for cloth in plan.cloths)
    ink = Ink(undated(out, (1.0, 1.0), title, output.language))
    for number, cloth in enumerate(plan.cloths):
        _check_roll(cloth, output)
        _form(ink, f"cloth-{number}", works, plan, cloth, output)
        _pages(ink, f"cloth-{number}", cloth)
    ink.canvas.save()
    return out.getvalue()


def _size(cloth: ClothPlan) -> tuple[float, float]:
    return table.long(cloth) + 2 * ROOM, table.high(cloth) + 2 * ROOM


def _check_roll(cloth: ClothPlan, output: Output) -> None:
    _, high = _size(cloth)
    if output.paper == "roll" and high * MM > output.roll_width + 1e-6:
        raise OutputError(
            f"The plan of {cloth.kind} is {math.ceil(high * MM)} mm broad: choose a roll of that "
            'breadth, a folded cloth, or paper "whole".',
            where="output.roll_width",
            code="roll_too_narrow",
            received=output.roll_width,
            allowed=(math.ceil(high * MM), math.inf),
        )


def _form(
    ink: Ink,
    name: str,
    works: tuple[Work, ...],
    plan: LayPlan,
    cloth: ClothPlan,
    output: Output,
) -> None:
    """Draw the whole cloth once."""
    wide, high = _size(cloth)
    ink.canvas.beginForm(name, 0, 0, wide * POINT, high * POINT)
    to = shift(ROOM + cloth.cloth.ends, ROOM)
    view = replace(view_of(plan, output), size=SIZE)
    ink.items(tuple(table.cloth(cloth, view, to)))
    for piece in plotted(works, cloth, output):
        ink.items(piece.group.transformed(to).items)
    ink.canvas.endForm()


def _pages(ink: Ink, form: str, cloth: ClothPlan) -> None:
    """Show it, cut straight across where it is longer than a page may be."""
    wide, high = _size(cloth)
    for page in range(math.ceil(wide / LONGEST_PAGE)):
        left = page * LONGEST_PAGE
        ink.canvas.setPageSize((min(LONGEST_PAGE, wide - left) * POINT, high * POINT))
        ink.canvas.translate(-left * POINT, 0)
        ink.canvas.doForm(form)
        ink.canvas.showPage()
