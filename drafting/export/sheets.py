"""What every format asks of an order's work: the pieces drawn, the cautions, the legend."""

from __future__ import annotations

from typing import TYPE_CHECKING

from drafting.drawing import WORDS, draw_pieces, legend

if TYPE_CHECKING:
    from drafting.drawing import Drawn, Legend, Output
    from drafting.workroom import Work


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


def work_legend(
    work: Work,
    output: Output,
    *,
    width: float = 19.0,
    closing: tuple[str, ...] = (),
    keep_free: float = 0.0,
) -> Legend:
    """The legend of a work, `width` cm broad, with room left for a map where asked."""
    return legend(
        work.pattern.pattern.title,
        reference=work.reference,
        verdict=work.verdict,
        cautions=work.pattern.pattern.cautions,
        words=WORDS[output.language],
        closing=closing,
        width=width,
        keep_free=keep_free,
    )
