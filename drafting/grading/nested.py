"""The nested drawing of a range as SVG and PDF: all sizes of each piece over each other."""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.drawing import WORDS, Composed, Ground, Legend, Note, Output, legend
from drafting.drawing.nest import Nest, NestSize, lay_nest, nest
from drafting.drawing.nest_words import NEST_WORDS, NestWords
from drafting.errors import ConstructionError
from drafting.export import dxf, svg
from drafting.export.language import told
from drafting.export.plan import MAX_PAGES
from drafting.export.sheets import LEGEND_WIDTH, WorkContent
from drafting.grading.sizes import SizeDrafted, SizeRange
from drafting.workroom import Work

PREFIX = "nest"
"""Every id in the SVG starts with it."""


@dataclass(frozen=True, slots=True)
class NestContent:
    """A nest with its legend, ready for any page.

    Attributes:
        drawn: The nest.
        output: Language and unit of its texts.
        works: The sizes that are drawn, in its language.
        unsound: Whether a size is drawn that cannot be cut.
    """

    drawn: Nest
    output: Output
    works: tuple[Work, ...]
    unsound: bool

    def legend(
        self, *, width: float = LEGEND_WIDTH, closing: tuple[str, ...] = (), keep_free: float = 0.0
    ) -> Legend:
        """The legend, `width` cm broad, with room left for a map where asked."""
        return legend(
            self.drawn.title,
            reference="",
            verdict="unsound" if self.unsound else "sound",
            cautions=self.works[0].pattern.pattern.cautions,
            words=WORDS[self.output.language],
            closing=closing,
            width=width,
            keep_free=keep_free,
        )

    def cover(self, width: float, height: float) -> tuple[Note, ...]:  # noqa: ARG002 - of no size
        """No cover: the key tells the sizes, and each order has its own pattern."""
        return ()

    def lay(
        self,
        legend: Legend | None,
        ground: Ground,
        notes: tuple[Note, ...] = (),  # noqa: ARG002 - there is no cover
    ) -> Composed:
        """The pieces, the key, and the legend where one is given, on one sheet."""
        return lay_nest(self.drawn, legend, ground)


def nested_content(sizes: SizeRange, output: Output, *, allow_unsound: bool = False) -> NestContent:
    """Draw the nest of a range.

    Args:
        sizes: The range.
        output: Language and unit of the texts.
        allow_unsound: Draw unsound sizes too, each marked in the key; else the key tells that
            they are left out, as it tells of sizes that cannot be drafted.

    Raises:
        ConstructionError: There is no size to draw.
    """
    words, more = WORDS[output.language], NEST_WORDS[output.language]
    drawn = [s for s in sizes.sizes if s.sound or (s.work is not None and allow_unsound)]
    works = tuple(told(s.work, output) for s in drawn if s.work is not None)
    if not works:
        raise ConstructionError("No size of the range can be cut.", where="sizes")
    layers = tuple(
        NestSize(s.name, work.pattern, "" if s.sound else words.not_for_cutting)
        for s, work in zip(drawn, works, strict=True)
    )
    left_out = tuple((s.name, _reason(s, more)) for s in sizes.sizes if s not in drawn)
    return NestContent(
        drawn=nest(layers, left_out=left_out, unit=output.unit, words=words, more=more),
        output=output,
        works=works,
        unsound=not all(size.sound for size in drawn),
    )


def _reason(size: SizeDrafted, more: NestWords) -> str:
    return more.refused if size.work is None else more.failed


def nested_svg(sizes: SizeRange, output: Output, *, allow_unsound: bool = False) -> bytes:
    """The nest as one SVG drawing, one unit a millimetre; each size is a group by itself.

    Raises:
        ConstructionError: There is no size to draw.
    """
    content = nested_content(sizes, output, allow_unsound=allow_unsound)
    return svg.render(content.lay(content.legend(), None).sheet, PREFIX)


def nested_pdf(
    sizes: SizeRange,
    output: Output,
    *,
    allow_unsound: bool = False,
    max_pages: int = MAX_PAGES,
) -> bytes:
    """The nest as pages to tape together; each size is a layer that a reader can show and hide.

    Raises:
        ConstructionError: There is no size to draw.
        OutputError: Margin or overlap leave no room, or there would be too many pages.
    """
    from drafting.export import pdf  # noqa: PLC0415 - loaded with the first PDF

    content = nested_content(sizes, output, allow_unsound=allow_unsound)
    return pdf.render(content, output, max_pages)


def nested_dxf(sizes: SizeRange, output: Output, *, allow_unsound: bool = False) -> bytes:
    """The nest as DXF: a block for each piece and size, laid where the nest lays it.

    Raises:
        ConstructionError: There is no size to draw.
    """
    content = nested_content(sizes, output, allow_unsound=allow_unsound)
    composed = content.lay(None, None)
    moves = {g.name: m for g, m in zip(composed.sheet.groups, composed.moves, strict=True)}
    aligned = {
        (place, piece.common.name): own.then(moves[piece.common.name])
        for piece in content.drawn.pieces
        for place, own in piece.aligned
    }
    placed = (
        dxf.Placed(work, piece, aligned[place, name], f"{name}_{work.reference}")
        for place, work in enumerate(content.works)
        for piece in WorkContent.of(work, replace(output, view="print")).pieces
        for name in (piece.finished.piece.name,)
    )
    middle = content.works[len(content.works) // 2]
    return dxf.render(tuple(placed), composed.sheet, middle, output)
