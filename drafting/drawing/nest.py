"""A nest: all sizes of each piece laid over each other on one stated point, each with its own line.

What differs from size to size (outline, darts, notches, marks) is drawn for every size on a layer
of its own; grain, shared point and texts are drawn once, from the middle size. Centimetres, Y up.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from itertools import chain

import shapely

from drafting.drawing.arrange import Block, Ground, Roll, arrange
from drafting.drawing.compose import LEGEND, Composed
from drafting.drawing.legend import Legend
from drafting.drawing.nest_key import key
from drafting.drawing.nest_piece import NestedPiece, Texts, nest_piece
from drafting.drawing.nest_words import ENGLISH_NEST, NestWords
from drafting.drawing.sheet import Group, Sheet
from drafting.drawing.words import ENGLISH, Unit, Words
from drafting.geometry import Transform
from drafting.pattern import FinishedPattern


@dataclass(frozen=True, slots=True)
class NestSize:
    """One size of a nest: its name, its pattern, and what the key says beside the name."""

    name: str
    pattern: FinishedPattern
    note: str = ""


@dataclass(frozen=True, slots=True)
class Nest:
    """A nest that is drawn but not yet laid on paper.

    Attributes:
        title: Title of the pattern.
        description: What the drawing shows, for those who cannot see it.
        pieces: Every piece with all its sizes; the key stands first.
    """

    title: str
    description: str
    pieces: tuple[NestedPiece, ...]


def nest(
    sizes: tuple[NestSize, ...],
    *,
    left_out: tuple[tuple[str, str], ...] = (),
    unit: Unit = "cm",
    words: Words = ENGLISH,
    more: NestWords = ENGLISH_NEST,
) -> Nest:
    """Draw the sizes of a pattern over each other.

    Args:
        sizes: In the order of the range; at least one.
        left_out: Sizes that are not drawn, and why; the key tells them.
        unit: Unit of the lengths in texts.
        words: The sheet's language.
        more: The nest's own words in the same language.
    """
    names = tuple(size.name for size in sizes)
    patterns = [size.pattern for size in sizes]
    texts = Texts(names, patterns[len(patterns) // 2].pattern.title, unit, words, more)
    pieces = dict.fromkeys(p.piece.name for pattern in patterns for p in pattern.pieces)
    told = key(names, tuple(s.note for s in sizes), left_out, more)
    drawn = (nest_piece(name, patterns, texts) for name in pieces)
    description = more.description.format(count=len(names), sizes=", ".join(names))
    return Nest(texts.title, description, (NestedPiece((), told.area, told.group), *drawn))


def lay_nest(drawn: Nest, legend: Legend | None = None, ground: Ground = None) -> Composed:
    """Lay a nest, and the legend where one is given, on one sheet.

    Args:
        drawn: The nest.
        legend: Laid among the pieces.
        ground: What it will be printed on, if it will.

    Returns:
        What shows always comes first, then one layer after the other.
    """
    pieces = list(drawn.pieces)
    if legend is not None:
        area = shapely.box(0.0, -legend.height, legend.width, 0.0)
        pieces.insert(0, NestedPiece((), area, legend.group))
    tiled = not isinstance(ground, Roll | None)
    blocks = tuple(
        Block(p.common.name, p.area, may_turn=False, pinned=p.common.name == LEGEND and tiled)
        for p in pieces
    )
    laid = arrange(blocks, ground)
    moved = list(chain.from_iterable(map(_moved, pieces, laid.moves)))
    moved.sort(key=lambda m: m[0])
    sheet = Sheet(
        width=laid.width,
        height=laid.height,
        title=drawn.title,
        description=drawn.description,
        groups=tuple(group for _, group, _ in moved),
    )
    return Composed(sheet, replace(laid, moves=tuple(move for _, _, move in moved)))


def _moved(piece: NestedPiece, move: Transform) -> Iterable[tuple[int, Group, Transform]]:
    """A piece's groups where they lie, each with the number of its layer, and its move."""
    yield 0, piece.common.transformed(move), move
    for place, group in piece.sizes:
        yield place + 1, group.transformed(move), move
