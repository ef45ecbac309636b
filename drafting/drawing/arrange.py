"""Pieces laid on paper: grain upright, never overlapping, few pages. Deterministic.

Each piece is pushed from the right against what already lies there, at the height and the way up
(0 or 180 degrees) that wastes least; several orders and sheet heights are tried, and the one that
touches the fewest tiles is kept. Lengths in cm; inside this module Y runs downward from the
sheet's upper edge, since paper fills from the top.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from itertools import pairwise, permutations

import numpy as np
import shapely
from numpy.lib.stride_tricks import sliding_window_view
from numpy.typing import NDArray
from shapely import affinity

from drafting.errors import OutputError
from drafting.geometry import Transform

GAP = 1.0
"""Cut lines stay at least this far apart, so that pieces can be cut out roughly first."""
AROUND = GAP / 2 + 0.03
"""Room kept round each block: half the gap, and what flattening its curves may have cut off."""
BAND = 1.0
"""Outlines are compared along bands of this height."""
ALL_ORDERS = 4
"""Up to so many pieces every order is tried (24 of them); beyond it, three sorted ones."""

HEIGHTS = 24
"""So many heights on the sheet are tried for a block, evenly spread."""

ONTO_SIDE = Transform(0.0, 1.0, -1.0, 0.0)
"""A quarter turn to the left: a roll's length comes to lie along X."""

Reach = NDArray[np.float64]


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


@dataclass(frozen=True, slots=True)
class Arrangement:
    """Where each block goes on a sheet (cm, Y up, origin at the lower left), in their order."""

    width: float
    height: float
    moves: tuple[Transform, ...]


@dataclass(frozen=True, slots=True)
class _Profile:
    """A block's least and greatest x in each band, from its top, with half the gap round it.

    `breadth` is the greatest x of all; `narrowest`, `widest` and `size` are the least, the
    greatest and the sum of the bands' breadths; `lead` is the sum of the least xs.
    """

    left: Reach
    right: Reach
    turned: bool
    bands: int
    breadth: float
    narrowest: float
    widest: float
    size: float
    lead: float

    @classmethod
    def of(cls, ring: Reach, count: int, *, turned: bool) -> _Profile:
        """Of a closed polyline, Y downward from its top."""
        left, right = _reaches(ring, count)
        wide = right - left
        sums = (right.max(), wide.min(), wide.max(), wide.sum(), left.sum())
        return cls(left, right, turned, count, *map(float, sums))


@dataclass(frozen=True, slots=True)
class _Laid:
    """One block's place: its profile, x of the profile's zero, and first band."""

    profile: _Profile
    x: float
    band: int


def arrange(blocks: tuple[Block, ...], paper: Tiling | Roll | None = None) -> Arrangement:
    """Lay blocks on a sheet.

    Args:
        blocks: What to lay; at least one.
        paper: The pages or the roll that the sheet will be printed on; without it the sheet is
            one piece of paper as high as the tallest block, and all blocks stand upright.

    Returns:
        The sheet's size and the move of each block, in the order given.

    Raises:
        OutputError: A block is broader than the roll.
    """
    if not isinstance(paper, Roll):
        return _laid_out(blocks, paper)
    for block in blocks:
        paper.check(block)
    lying = tuple(replace(b, area=image(b.area, ONTO_SIDE)) for b in blocks)
    laid = _laid_out(lying, paper)
    upright = Transform(0.0, -1.0, 1.0, 0.0, 0.0, laid.width)
    moves = tuple(ONTO_SIDE.then(move).then(upright) for move in laid.moves)
    return Arrangement(paper.width, laid.width, moves)


def _laid_out(blocks: tuple[Block, ...], paper: Tiling | Roll | None) -> Arrangement:
    """Blocks on a sheet that grows to the right; a roll lies on its side."""
    on_paper, tiling = paper is not None, paper if isinstance(paper, Tiling) else None
    profiles = tuple(tuple(_profiles(b, may_turn=b.may_turn and on_paper)) for b in blocks)
    tallest = max(p[0].bands for p in profiles) * BAND
    laid = min(
        (
            _pack(profiles, order, int(height / BAND + 1e-9))
            for height in _heights(tallest, len(blocks), paper)
            for order in _orders(blocks, profiles, thorough=on_paper)
        ),
        key=lambda laid: _cost(laid, tiling),
    )
    return _arrangement(blocks, laid, tiling)


def image(area: shapely.Polygon, move: Transform) -> shapely.Polygon:
    """An area where a move takes it."""
    return affinity.affine_transform(area, [move.a, move.c, move.b, move.d, move.e, move.f])


def tiles_of(
    areas: Iterable[shapely.Geometry], height: float, tiling: Tiling
) -> tuple[tuple[int, int], ...]:
    """Row and column of every tile that carries something, in reading order.

    Args:
        areas: What is drawn, placed on the sheet, Y up.
        height: Height of the sheet.
        tiling: The pages.
    """
    whole = shapely.union_all(list(areas))
    shapely.prepare(whole)
    rows, columns = tiling.rows(height - whole.bounds[1]), tiling.columns(whole.bounds[2])
    cells = [(row, column) for row in range(rows) for column in range(columns)]
    boxes = [
        shapely.box(
            tiling.joint_across(column - 1) if column else -1.0,
            height - (tiling.joint_down(row) if row < rows - 1 else tiling.tall(rows)),
            tiling.joint_across(column) if column < columns - 1 else whole.bounds[2] + 1.0,
            height - (tiling.joint_down(row - 1) if row else -1.0),
        )
        for row, column in cells
    ]
    return tuple(c for c, hit in zip(cells, shapely.intersects(whole, boxes), strict=True) if hit)


def _profiles(block: Block, *, may_turn: bool) -> Iterator[_Profile]:
    around = block.area.buffer(AROUND, quad_segs=8)
    _, low, _, high = around.bounds
    ring = shapely.get_coordinates(around.exterior)
    count = max(1, math.ceil((high - low) / BAND - 1e-9))
    down = np.column_stack((ring[:, 0], high - ring[:, 1]))
    yield _Profile.of(down, count, turned=False)
    if may_turn:
        over = np.column_stack((-ring[:, 0], ring[:, 1] - low))
        yield _Profile.of(over, count, turned=True)


def _reaches(ring: Reach, count: int) -> tuple[Reach, Reach]:
    """Least and greatest x of a closed polyline in each band of its height."""
    left, right = np.full(count, np.inf), np.full(count, -np.inf)
    for start, end in pairwise(ring.tolist()):
        (x0, y0), (x1, y1) = sorted((start, end), key=lambda p: p[1])
        slope = (x1 - x0) / (y1 - y0) if y1 > y0 else 0.0
        for band in range(min(int(y0 / BAND), count - 1), min(int(y1 / BAND), count - 1) + 1):
            upper, lower = max(y0, band * BAND), min(y1, (band + 1) * BAND)
            xs = (
                x0 + (upper - y0) * slope,
                x0 + (lower - y0) * slope,
                *((x1,) if y1 == y0 else ()),
            )
            left[band], right[band] = min(left[band], *xs), max(right[band], *xs)
    return left, right


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
    blocks: tuple[Block, ...], profiles: tuple[tuple[_Profile, ...], ...], *, thorough: bool
) -> list[tuple[int, ...]]:
    first = tuple(i for i, block in enumerate(blocks) if block.pinned)
    others = tuple(i for i, block in enumerate(blocks) if not block.pinned)
    if thorough and len(others) <= ALL_ORDERS:
        return [(*first, *order) for order in permutations(others)]

    def area(i: int) -> float:
        return float(np.sum(profiles[i][0].right - profiles[i][0].left))

    def breadth(i: int) -> float:
        return float(np.max(profiles[i][0].right) - np.min(profiles[i][0].left))

    def height(i: int) -> float:
        return float(profiles[i][0].bands)

    return [
        (*first, *sorted(others, key=lambda i: (-size(i), i))) for size in (area, height, breadth)
    ]


@dataclass(slots=True)
class _Gap:
    """Free room to the left of a block that was pushed as far as it goes: from, to, per band."""

    low: Reach
    high: Reach

    def place(self, ways: tuple[_Profile, ...]) -> _Laid | None:
        """Where a block fits in, as high up and as far left as it goes; takes the room up."""
        room = self.high - self.low
        if np.count_nonzero(room >= ways[0].narrowest) < ways[0].bands:
            return None
        if float(room.max()) < ways[0].widest or float(room.sum()) < ways[0].size:
            return None
        for profile in ways:
            least = np.max(sliding_window_view(self.low, profile.bands) - profile.left, axis=1)
            most = np.min(sliding_window_view(self.high, profile.bands) - profile.right, axis=1)
            fits = np.flatnonzero(least <= most)
            if len(fits):
                band = int(fits[0])
                laid = _Laid(profile, float(least[band]), band)
                self.low[band : band + profile.bands] = laid.x + profile.right
                return laid
        return None


def _pack(
    profiles: tuple[tuple[_Profile, ...], ...], order: tuple[int, ...], bands: int
) -> tuple[_Laid, ...]:
    edge: Reach = np.zeros(bands)
    gaps: list[_Gap] = []
    laid: dict[int, _Laid] = {}
    for i in order:
        found = next((p for gap in gaps if (p := gap.place(profiles[i]))), None)
        if found:
            laid[i] = found
            continue
        place = laid[i] = _best_place(profiles[i], edge)
        part = slice(place.band, place.band + place.profile.bands)
        gap = _Gap(edge.copy(), edge.copy())
        gap.high[part] = place.x + place.profile.left
        gaps.append(gap)
        edge[part] = place.x + place.profile.right
    return tuple(laid[i] for i in range(len(profiles)))


def _best_place(ways: tuple[_Profile, ...], edge: Reach) -> _Laid:
    """The way up and the height at which the block reaches least far to the right."""
    found = []
    for profile in ways:
        step = max(1, (len(edge) - profile.bands) // HEIGHTS)
        windows = sliding_window_view(edge, profile.bands)[::step]
        xs = np.max(windows - profile.left, axis=1)
        ends = np.round(xs + profile.breadth, 6)
        waste = np.round(xs * profile.bands - np.sum(windows, axis=1), 6)
        k = int(np.lexsort((waste, ends))[0])
        key = (float(ends[k]), float(waste[k]) + profile.lead, k)
        found.append((key, _Laid(profile, float(xs[k]), k * step)))
    return min(found, key=lambda pair: pair[0])[1]


def _cost(laid: tuple[_Laid, ...], tiling: Tiling | None) -> tuple[float, ...]:
    wide = max(place.x + place.profile.breadth for place in laid)
    high = max(place.band + place.profile.bands for place in laid)
    if tiling is None:
        return (wide, high)
    return (len(_touched(laid, tiling)), wide * high)


def _touched(laid: tuple[_Laid, ...], tiling: Tiling) -> NDArray[np.int64]:
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
    blocks: tuple[Block, ...], laid: tuple[_Laid, ...], tiling: Tiling | None
) -> Arrangement:
    wide = max(place.x + place.profile.breadth for place in laid)
    high = max(place.band + place.profile.bands for place in laid) * BAND
    if tiling is not None:
        wide, high = (
            tiling.columns(wide) * tiling.across + tiling.overlap,
            tiling.tall(tiling.rows(high)),
        )
    moves = []
    for block, place in zip(blocks, laid, strict=True):
        _, low, _, top = block.area.bounds
        y = high - place.band * BAND - AROUND
        if place.profile.turned:
            moves.append(Transform(a=-1.0, d=-1.0, e=place.x, f=y + low))
        else:
            moves.append(Transform(e=place.x, f=y - top))
    return Arrangement(wide, high, tuple(moves))
