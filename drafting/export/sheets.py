"""What every format asks of an order's work: the pieces drawn, the cautions, the legend."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Protocol, TypedDict

from drafting.drawing import (
    PRINT_WORDS,
    SCALES,
    WORDS,
    Form,
    Role,
    amount,
    compose,
    cover_notes,
    draw_pieces,
    drawn_as,
    dressed,
    label_pieces,
    legend,
)
from drafting.drawing.legend import MILLIMETRE_SQUARE, Square
from drafting.export.telling import cover_of

if TYPE_CHECKING:
    from drafting.drawing import Composed, Drawn, Ground, Legend, Lines, Note, Output, Unit, Words
    from drafting.pattern import FinishedPiece
    from drafting.workroom import Verdict, Work

LEGEND_WIDTH = 19.0
"""cm, where nothing asks for another breadth."""

LEFT_OUT: dict[Lines, frozenset[Role]] = {
    "both": frozenset(),
    "net": frozenset({Role.CUT}),
    "cut": frozenset({Role.STITCH}),
}
"""Which lines are not drawn."""


def told_pieces(work: Work, output: Output) -> tuple[FinishedPiece, ...]:
    """All pieces as the pattern has them, labelled in the language and unit asked for."""
    form = Form(remarks=shrinkage(output))
    return label_pieces(dressed(work.pattern, output), **_told(work, output), form=form)


def drawn_pieces(work: Work, output: Output) -> tuple[Drawn, ...]:
    """The pieces to draw: those asked for, in the lines and at the scale asked for.

    Raises:
        OutputError: A piece is named that is not there, or nothing would be left to draw.
    """
    pattern = drawn_as(work.pattern, output, PRINT_WORDS[output.language])
    form = Form(
        without=LEFT_OUT[output.lines],
        total=len(work.pattern.pieces),
        remarks=remarks(output),
        brief=output.view == "screen",
    )
    return draw_pieces(pattern, **_told(work, output), form=form)


class _Told(TypedDict):
    reference: str
    verdict: Verdict
    unit: Unit
    words: Words


def _told(work: Work, output: Output) -> _Told:
    """What labels say of every piece."""
    return {
        "reference": work.reference,
        "verdict": work.verdict,
        "unit": output.unit,
        "words": _words(output),
    }


def _words(output: Output) -> Words:
    """The sheet's words; where only net lines are drawn, allowances are still to be added."""
    words, more = WORDS[output.language], PRINT_WORDS[output.language]
    if output.lines != "net":
        return words
    return replace(words, allowances=more.add, allowances_all=more.add_all)


def remarks(output: Output) -> tuple[str, ...]:
    """What the drawing says of its own form: scale and shrinkage, where they are not nil."""
    words = PRINT_WORDS[output.language]
    true = output.view == "screen" or SCALES[output.scale] == 1
    scale = () if true else (words.scale.format(scale=output.scale),)
    return (*scale, *shrinkage(output))


def shrinkage(output: Output) -> tuple[str, ...]:
    """The sentence on cloth that shrinks, where it does."""
    shrinks = output.shrinkage
    if not (shrinks.lengthwise or shrinks.crosswise):
        return ()
    along, across = f"{shrinks.lengthwise:g}", f"{shrinks.crosswise:g}"
    words = PRINT_WORDS[output.language].shrinkage
    return (words.format(lengthwise=along, crosswise=across),)


def washed(output: Output) -> tuple[str, ...]:
    """Which numbers are those of the washed garment, where the cloth shrinks."""
    return (PRINT_WORDS[output.language].washed,) if shrinkage(output) else ()


def cautions(work: Work, output: Output) -> tuple[str, ...]:
    """The usual cautions, the garment's own, and what the pattern was drawn larger for."""
    own = work.pattern.pattern.cautions
    return (*WORDS[output.language].cautions, *own, *shrinkage(output), *washed(output))


class Content(Protocol):
    """What a document shows: a legend, a cover, and everything laid on one sheet."""

    def legend(
        self, *, width: float = LEGEND_WIDTH, closing: tuple[str, ...] = (), keep_free: float = 0.0
    ) -> Legend:
        """The legend, `width` cm broad, with room left for a map where asked."""
        ...

    def cover(self, width: float, height: float) -> tuple[Note, ...]:
        """The cover on pages of that size in cm; none where there is nothing to tell."""
        ...

    def lay(
        self,
        legend: Legend | None,
        ground: Ground,
        notes: tuple[Note, ...] = (),
    ) -> Composed:
        """Everything on one sheet, among it the legend and the notes that are given."""
        ...


@dataclass(frozen=True, slots=True)
class WorkContent:
    """The content of an order's work."""

    work: Work
    output: Output
    pieces: tuple[Drawn, ...]

    @classmethod
    def of(cls, work: Work, output: Output) -> WorkContent:
        """The work with its pieces drawn."""
        return cls(work, output, drawn_pieces(work, output))

    def legend(
        self, *, width: float = LEGEND_WIDTH, closing: tuple[str, ...] = (), keep_free: float = 0.0
    ) -> Legend:
        """The legend, `width` cm broad, with room left for a map where asked."""
        return legend(
            self.work.pattern.pattern.title,
            reference=self.work.called,
            verdict=self.work.verdict,
            cautions=self.work.pattern.pattern.cautions,
            words=WORDS[self.output.language],
            closing=(*remarks(self.output), *closing),
            width=width,
            keep_free=keep_free,
            scale=self._scale_square(),
        )

    def _scale_square(self) -> Square | None:
        output, size = self.output, SCALES[self.output.scale]
        if size == 1:
            return None
        side = MILLIMETRE_SQUARE if output.unit == "cm" else 4 * 2.54
        words = PRINT_WORDS[output.language].scale_square
        text = words.format(length=amount(side, output.unit), scale=output.scale)
        return Square(side / size, text)

    def cover(self, width: float, height: float) -> tuple[Note, ...]:
        """The cover on pages of that size in cm; none where single pieces are drawn."""
        if self.output.pieces or not self.output.cover:
            return ()
        told = cover_of(
            self.work, self.output, self.pieces, (*remarks(self.output), *washed(self.output))
        )
        return cover_notes(told, width, height)

    def lay(
        self,
        legend: Legend | None,
        ground: Ground,
        notes: tuple[Note, ...] = (),
    ) -> Composed:
        """The pieces, and the legend and the notes that are given, on one sheet."""
        title, words = self.work.pattern.pattern.title, WORDS[self.output.language]
        more = PRINT_WORDS[self.output.language]
        if self.output.view == "screen":
            words = replace(words, description=more.on_screen)
        elif SCALES[self.output.scale] != 1:
            scaled = more.scaled.replace("{scale}", self.output.scale)
            words = replace(words, description=scaled)
        return compose(title, self.pieces, words, legend=legend, notes=notes, ground=ground)
