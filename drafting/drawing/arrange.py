"""Pieces laid on paper: grain upright, never overlapping, few pages. Deterministic.

Several orders and sheet heights are tried, and the arrangement that touches the fewest tiles is
kept. Lengths in cm; while pieces are packed Y runs downward from the sheet's upper edge, since
paper fills from the top.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from itertools import permutations

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import affinity

from drafting.drawing.packing import AROUND, BAND, Laid, Ways, pack, profiles
from drafting.errors import OutputError
from drafting.geometry import Transform

ALL_ORDERS = 4
"""Up to so many pieces every order is tried (24 of them); beyond it, three sorted ones."""

ONTO_SIDE = Transform(0.0, 1.0, -1.0, 0.0)
"""A quarter turn to the left: a roll's length comes to lie along X."""

Tile = tuple[int, int]
"""Row and column of a page on a sheet, from its upper left corner."""


@dataclass(frozen=True, slots=True)
class Block:
    """Something to lay.

    Attributes:
        name: For people.
        area: Its cutting line as a polygon, Y up.
        may_turn: Whether it may be turned by 180 degrees.
        pinned: Whether it lies in the sheet's upper left corner; at most one of them.
    """

    name: str
    area: shapely.Polygon
    may_turn: bool = True
    pinned: bool = False


@dataclass(frozen=True, slots=True)
class Tiling:
    """Tiles laid over a sheet from its upper left corner, in cm.

    Attributes:
        width: Breadth of the drawing on one page.
        height: Its height.
        overlap: What two neighbours both show.
    """

    width: float
    height: float
    overlap: float

    @property
    def across(self) -> float:
        """From one tile's left edge to the next one's."""
        return self.width - self.overlap

    @property
    def down(self) -> float:
        """From one tile's upper edge to the next one's."""
        return self.height - self.overlap

    def joint_across(self, column: int) -> float:
        """Where, from the left, the middle line between a column of tiles and the next one is."""
        return (column + 1) * self.across + self.overlap / 2

    def joint_down(self, row: int) -> float:
        """How far under the sheet's upper edge the line between a row and the next one is."""
        return (row + 1) * self.down + self.overlap / 2

    def tall(self, rows: int) -> float:
        """Height of a sheet of so many rows."""
        return rows * self.down + self.overlap

    def rows(self, height: float) -> int:
        """Least number of rows that hold a height."""
        return max(1, math.ceil((height - self.overlap) / self.down - 1e-9))

    def columns(self, width: float) -> int:
        """Least number of columns that hold a width."""
        return max(1, math.ceil((width - self.overlap) / self.across - 1e-9))


@dataclass(frozen=True, slots=True)
class Roll:
    """Paper of a given breadth and any length, in cm; the grain runs along it.

    Attributes:
        width: What can be drawn on.
        edges: What stays free on both sides together.
    """

    width: float
    edges: float = 0.0

    def check(self, block: Block) -> None:
        """Raises OutputError where a block is too broad, with the roll that would do."""
        left, _, right, _ = block.area.bounds
        least = math.ceil((right - left + 2 * AROUND) / BAND - 1e-9) * BAND
        if least > self.width:
            whole, least = self.width + self.edges, least + self.edges
            raise OutputError(
                f"The piece {block.name} is {10 * (right - left):.0f} mm broad, too much for a "
                f"roll of {10 * whole:.0f} mm: choose a roll of at least {10 * least:.0f} mm.",
                where="output.roll_width",
                code="roll_too_narrow",
                received=10 * whole,
                allowed=10 * least,
            )


Ground = Tiling | Roll | tuple[Tiling, ...] | None
"""What is laid on: pages, a roll, pages of several shapes to choose from, or one piece of paper."""


@dataclass(frozen=True, slots=True)
class Arrangement:
    """Where each block goes on a sheet.

    Attributes:
        width: Breadth of the sheet, cm.
        height: Its height.
        moves: The move of each block, in their order; Y up, the origin at the sheet's lower left.
        areas: What each block covers there.
        tiling: The pages, where it will be printed on pages.
        tiles: Those of them that carry something, in reading order.
    """

    width: float
    height: float
    moves: tuple[Transform, ...]
    areas: tuple[shapely.Polygon, ...]
    tiling: Tiling | None = None
    tiles: tuple[Tile, ...] = ()


def arrange(blocks: tuple[Block, ...], ground: Ground = None) -> Arrangement:
    """Lay blocks on a sheet.

    Args:
        blocks: What to lay; at least one.
        ground: The pages or the roll that the sheet will be printed on; of several kinds of pages
            the one that takes the fewest, the first of equals. Without it the sheet is one piece
            of paper as high as the tallest block, and all blocks stand upright.

    Returns:
        The sheet's size and the move of each block, in the order given.

    Raises:
        OutputError: A block is broader than the roll.
    """
    match ground:
        case Roll():
            return _on_roll(blocks, ground)
        case None:
            return _laid_out(blocks, _ways(blocks, may_turn=False), None)
        case _:
            ways = _ways(blocks, may_turn=True)
            tilings = ground if isinstance(ground, tuple) else (ground,)
            laid = (_on_tiles(blocks, ways, tiling) for tiling in tilings)
            return min(laid, key=lambda laid: len(laid.tiles))


def _on_roll(blocks: tuple[Block, ...], roll: Roll) -> Arrangement:
    """Blocks on a roll, which lies on its side while they are laid."""
    for block in blocks:
        roll.check(block)
    lying = tuple(replace(b, area=image(b.area, ONTO_SIDE)) for b in blocks)
    laid = _laid_out(lying, _ways(lying, may_turn=True), roll)
    upright = Transform(0.0, -1.0, 1.0, 0.0, 0.0, laid.width)
    moves = tuple(ONTO_SIDE.then(move).then(upright) for move in laid.moves)
    return Arrangement(roll.width, laid.width, moves, _areas(blocks, moves))


def _on_tiles(blocks: tuple[Block, ...], ways: tuple[Ways, ...], tiling: Tiling) -> Arrangement:
    laid = _laid_out(blocks, ways, tiling)
    return replace(laid, tiling=tiling, tiles=tiles_of(laid.areas, laid.height, tiling))


def _areas(blocks: tuple[Block, ...], moves: tuple[Transform, ...]) -> tuple[shapely.Polygon, ...]:
    return tuple(image(block.area, move) for block, move in zip(blocks, moves, strict=True))


def _ways(blocks: tuple[Block, ...], *, may_turn: bool) -> tuple[Ways, ...]:
    return tuple(tuple(profiles(b.area, may_turn=b.may_turn and may_turn)) for b in blocks)


def _laid_out(
    blocks: tuple[Block, ...], ways: tuple[Ways, ...], paper: Tiling | Roll | None
) -> Arrangement:
    """Blocks on a sheet that grows to the right."""
    tiling = paper if isinstance(paper, Tiling) else None
    tallest = max(w[0].bands for w in ways) * BAND
    packed = (
        pack(ways, order, int(height / BAND + 1e-9))
        for height in _heights(tallest, len(blocks), paper)
        for order in _orders(blocks, ways, thorough=paper is not None)
    )
    laid = min(packed, key=lambda laid: _cost(laid, tiling))
    return _arrangement(blocks, laid, tiling)


def image(area: shapely.Polygon, move: Transform) -> shapely.Polygon:
    """An area where a move takes it."""
    return affinity.affine_transform(area, [move.a, move.c, move.b, move.d, move.e, move.f])


def tiles_of(areas: Iterable[shapely.Geometry], height: float, tiling: Tiling) -> tuple[Tile, ...]:
    """Row and column of every tile that carries something, in reading order.

    Args:
        areas: What is drawn, placed on the sheet, Y up.
        height: Height of the sheet.
        tiling: The pages.
    """
    drawn = np.array(list(areas), dtype=object)
    _, low, right, _ = shapely.total_bounds(drawn)
    rows, columns = tiling.rows(height - low), tiling.columns(right)
    cells = [(row, column) for row in range(rows) for column in range(columns)]
    boxes = [
        shapely.box(
            tiling.joint_across(column - 1) if column else -1.0,
            height - (tiling.joint_down(row) if row < rows - 1 else tiling.tall(rows)),
            tiling.joint_across(column) if column < columns - 1 else right + 1.0,
            height - (tiling.joint_down(row - 1) if row else -1.0),
        )
        for row, column in cells
    ]
    hit, _ = shapely.STRtree(drawn).query(boxes, predicate="intersects")
    return tuple(cells[k] for k in sorted(set(hit.tolist())))


def _heights(tallest: float, count: int, paper: Tiling | Roll | None) -> Iterator[float]:
    """Sheets as high as the tallest block and as high as two of them; between, little is won."""
    match paper:
        case None:
            yield tallest
        case Roll():
            yield paper.width
        case Tiling():
            least = paper.rows(tallest)
            rows = {least, least + 1, 2 * least - 1, 2 * least} if count > 1 else {least}
            for number in sorted(rows):
                yield paper.tall(number)


def _orders(
    blocks: tuple[Block, ...], ways: tuple[Ways, ...], *, thorough: bool
) -> Iterator[tuple[int, ...]]:
    """All orders of few blocks; of many, by area, by height and by breadth, the greatest first."""
    first = tuple(i for i, block in enumerate(blocks) if block.pinned)
    others = tuple(i for i, block in enumerate(blocks) if not block.pinned)
    if thorough and len(others) <= ALL_ORDERS:
        yield from ((*first, *order) for order in permutations(others))
        return
    upright = [w[0] for w in ways]
    sizes = (
        [p.size for p in upright],
        [float(p.bands) for p in upright],
        [p.breadth - float(p.left.min()) for p in upright],
    )
    orders = (sorted((-size[i], i) for i in others) for size in sizes)
    yield from dict.fromkeys((*first, *(i for _, i in order)) for order in orders)


def _cost(laid: tuple[Laid, ...], tiling: Tiling | None) -> tuple[float, ...]:
    wide = max(place.x + place.profile.breadth for place in laid)
    high = max(place.band + place.profile.bands for place in laid)
    if tiling is None:
        return (wide, high)
    return (len(_touched(laid, tiling)), wide * high)


def _touched(laid: tuple[Laid, ...], tiling: Tiling) -> NDArray[np.int64]:
    """Numbers of the tiles that the blocks' bands lie on."""
    half = tiling.overlap / 2
    bands = np.concatenate([p.band + np.arange(p.profile.bands) for p in laid])
    left = np.concatenate([p.x + p.profile.left for p in laid])
    right = np.concatenate([p.x + p.profile.right for p in laid])
    row = np.maximum(0, (((bands + 0.5) * BAND - half) // tiling.down).astype(np.int64))
    first = np.maximum(0, ((left - half) // tiling.across).astype(np.int64))
    last = np.maximum(0, ((right - half) // tiling.across).astype(np.int64))
    columns = int(np.max(last)) + 1
    steps = range(int(np.max(last - first)) + 1)
    return np.unique(np.concatenate([row * columns + np.minimum(first + k, last) for k in steps]))


def _arrangement(
    blocks: tuple[Block, ...], laid: tuple[Laid, ...], tiling: Tiling | None
) -> Arrangement:
    wide = max(place.x + place.profile.breadth for place in laid)
    high = max(place.band + place.profile.bands for place in laid) * BAND
    if tiling is not None:
        wide, high = (
            tiling.columns(wide) * tiling.across + tiling.overlap,
            tiling.tall(tiling.rows(high)),
        )
    moves: list[Transform] = []
    for block, place in zip(blocks, laid, strict=True):
        _, low, _, top = block.area.bounds
        y = high - place.band * BAND - AROUND
        if place.profile.turned:
            moves.append(Transform(a=-1.0, d=-1.0, e=place.x, f=y + low))
        else:
            moves.append(Transform(e=place.x, f=y - top))
    return Arrangement(wide, high, tuple(moves), _areas(blocks, tuple(moves)))
