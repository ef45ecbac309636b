"""What every format asks of an order's work: the pieces drawn, the cautions, the legend."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Protocol

from drafting.drawing import WORDS, compose, draw_pieces, legend

if TYPE_CHECKING:
    from drafting.drawing import Composed, Drawn, Legend, Output, Tiling
    from drafting.workroom import Work

LEGEND_WIDTH = 19.0
"""cm, where nothing asks for another breadth."""


def drawn_pieces(work: Work, output: Output) -> tuple[Drawn, ...]:
    """The pieces drawn and labelled, in the language and unit asked for."""
    return draw_pieces(
        work.pattern,
        reference=work.reference,
        verdict=work.verdict,
        unit=output.unit,
        words=WORDS[output.language],
    )


def cautions(work: Work, output: Output) -> tuple[str, ...]:
    """The usual cautions and the garment's own."""
    return (*WORDS[output.language].cautions, *work.pattern.pattern.cautions)


class Content(Protocol):
    """What a document shows: a legend, and everything laid on one sheet."""

    def legend(
        self, *, width: float = LEGEND_WIDTH, closing: tuple[str, ...] = (), keep_free: float = 0.0
    ) -> Legend:
        """The legend, `width` cm broad, with room left for a map where asked."""
        ...

    def lay(self, legend: Legend | None, tiling: Tiling | None) -> Composed:
        """Everything on one sheet, among it the legend where one is given."""
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
            reference=self.work.reference,
            verdict=self.work.verdict,
            cautions=self.work.pattern.pattern.cautions,
            words=WORDS[self.output.language],
            closing=closing,
            width=width,
            keep_free=keep_free,
        )

    def lay(self, legend: Legend | None, tiling: Tiling | None) -> Composed:
        """The pieces, and the legend where one is given, on one sheet."""
        title, words = self.work.pattern.pattern.title, WORDS[self.output.language]
        return compose(title, self.pieces, words, legend=legend, tiling=tiling)
