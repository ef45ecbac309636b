"""From the finished pattern to a sheet: pieces drawn, labelled, laid side by side."""

from __future__ import annotations

from dataclasses import dataclass

import shapely
from shapely import affinity

from drafting.drawing.arrange import Arrangement, Block, Tiling, arrange
from drafting.drawing.legend import Legend
from drafting.drawing.marking import mark_piece
from drafting.drawing.shapes import polygon
from drafting.drawing.sheet import Group, Sheet, Text
from drafting.drawing.words import Words
from drafting.geometry import Transform
from drafting.pattern import FinishedPattern, FinishedPiece

LEGEND = "legend"


@dataclass(frozen=True, slots=True)
class Composed:
    """A sheet, the area that each of its groups covers, and how each was moved, in one order."""

    sheet: Sheet
    areas: tuple[shapely.Polygon, ...]
    moves: tuple[Transform, ...]


def draw_piece(finished: FinishedPiece, words: Words) -> Group:
    """One piece with all its marks and labels, in its own frame."""
    items, _ = mark_piece(finished, words)
    labels = tuple(Text(l.text, l.at, l.height, angle=l.angle) for l in finished.labels)
    return Group(finished.piece.name, finished.piece.title, (*items, *labels))


def compose(
    pattern: FinishedPattern,
    words: Words,
    *,
    legend: Legend | None = None,
    tiling: Tiling | None = None,
) -> Composed:
    """Lay the pieces, and the legend where one is given, on one sheet.

    Args:
        pattern: The finished pattern, labelled.
        words: The sheet's language.
        legend: Laid among the pieces; it stays upright.
        tiling: The pages it will be printed on, if it will.
    """
    groups = [draw_piece(piece, words) for piece in pattern.pieces]
    blocks = [Block(p.piece.name, polygon(p.cut_line, 0.05)) for p in pattern.pieces]
    if legend is not None:
        groups.insert(0, legend.group)
        area = shapely.box(0.0, -legend.height, legend.width, 0.0)
        blocks.insert(0, Block(LEGEND, area, may_turn=False, pinned=tiling is not None))
    laid = arrange(tuple(blocks), tiling)
    sheet = Sheet(
        width=laid.width,
        height=laid.height,
        title=pattern.pattern.title,
        description=words.description.format(
            count=len(pattern.pieces), pieces=", ".join(p.piece.title for p in pattern.pieces)
        ),
        groups=tuple(g.transformed(move) for g, move in zip(groups, laid.moves, strict=True)),
    )
    return Composed(sheet, _areas(blocks, laid), laid.moves)


def _areas(blocks: list[Block], laid: Arrangement) -> tuple[shapely.Polygon, ...]:
    return tuple(
        affinity.affine_transform(block.area, [m.a, m.c, m.b, m.d, m.e, m.f])
        for block, m in zip(blocks, laid.moves, strict=True)
    )
