"""How the pages of a tiled sheet are told apart and joined. Lengths in cm, Y up, sheet's frame.

Where two pages meet, a thin dashed line runs down the middle of what both show, and diamonds sit
on it. Both pages carry line and diamonds at the same places of the drawing: laid over each other
the diamonds cover each other; trimmed along the lines, the halves make diamonds.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from drafting.drawing import Item, Role, Stroke, Text, Tiling, Words
from drafting.geometry import RIGHT, UP, Path, Point, Transform, Vector, polyline

Tile = tuple[int, int]

DIAMOND = 0.4
"""Half a diamond's diagonal."""
PLACES = (0.25, 0.75)
"""Two diamonds a joint, so that pages cannot be laid askew."""
LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"
"""Rows' letters; I and O would be read as figures."""
NAME = 0.8
SMALL = 0.22
"""Heights of capitals of a tile's name and of the small words."""
RULER, RULER_INCHES = 10, 4
"""Rulers on each page: 10 cm on one side and 4 in on the other, to check the print anywhere."""
WHOLE, HALF = 0.25, 0.15
"""Lengths of their ticks at whole and half units, cm."""
INCHES = 0.3
"""Room for the inches' ticks between a ruler and the joint."""
READING = 0.16
RULED = 0.75
"""What the rulers take up beside the joint, cm."""


@dataclass(frozen=True, slots=True)
class Joints:
    """The pages in use and how they lie on the sheet.

    Attributes:
        tiles: Row and column of each page, in reading order.
        tiling: The pages' size and overlap.
        height: Height of the sheet.
    """

    tiles: tuple[Tile, ...]
    tiling: Tiling
    height: float

    def corner(self, tile: Tile) -> Point:
        """Lower left corner of a tile on the sheet."""
        row, column = tile
        top = self.height - row * self.tiling.down
        return Point(column * self.tiling.across, top - self.tiling.height)

    def marks(self) -> tuple[Stroke, ...]:
        """All lines and diamonds, to be drawn with the sheet."""
        strokes: list[Stroke] = []
        used = set(self.tiles)
        for row, column in self.tiles:
            low = self.corner((row, column))
            if (row, column + 1) in used:
                x = self.tiling.joint_across(column)
                strokes += _joint(Point(x, low.y), Point(x, low.y + self.tiling.height))
            if (row + 1, column) in used:
                y = self.height - self.tiling.joint_down(row)
                strokes += _joint(Point(low.x, y), Point(low.x + self.tiling.width, y))
        return tuple(strokes)

    @property
    def beside(self) -> float:
        """How far inside a page's edges its name and rulers stand, clear of every joint."""
        return self.tiling.overlap + 0.15

    def rulers(self) -> Iterator[Item]:
        """The rulers that every page has, from the page's lower left corner."""
        wide, high = (side - 2 * self.beside for side in (self.tiling.width, self.tiling.height))
        yield from rulers(Point(self.beside, self.beside), wide, high)

    def names(self, tile: Tile, page: str, words: Words) -> Iterator[Text]:
        """The tile's name, its page number, and along each joint the neighbour's name."""
        low, tiling, beside = self.corner(tile), self.tiling, self.beside
        corner = Point(low.x + beside, low.y + beside)
        yield Text(name(tile), corner + Vector(1.1, 1.5), NAME, Role.GRID)
        yield Text(page, corner + Vector(1.1, 0.9), SMALL, Role.GRID)
        middle, centre = low.y + tiling.height / 2, low.x + tiling.width / 2
        (row, column), right = tile, low.x + tiling.width - beside
        top = low.y + tiling.height - beside
        near: dict[Tile, tuple[Point, float]] = {
            (row, column - 1): (Point(corner.x + RULED + SMALL, middle), 90.0),
            (row, column + 1): (Point(right, middle), 90.0),
            (row - 1, column): (Point(centre, top - SMALL), 0.0),
            (row + 1, column): (Point(centre, corner.y + RULED), 0.0),
        }
        for other, (at, angle) in near.items():
            if other in self.tiles:
                told = words.joins.format(tile=name(other))
                yield Text(told, at, SMALL, Role.GRID, angle, "middle")

    def map(self, cut_lines: tuple[Stroke, ...], box: tuple[float, float, float, float]) -> Map:
        """The whole sheet small, in a box of (left, lower, right, upper) edges."""
        tiling = self.tiling
        rows, columns = (1 + max(t[k] for t in self.tiles) for k in (0, 1))
        wide, high = columns * tiling.across + tiling.overlap, tiling.tall(rows)
        scale = min((box[2] - box[0]) / wide, (box[3] - box[1]) / high)
        return Map(self, cut_lines, scale, box[0], box[3])


@dataclass(frozen=True, slots=True)
class Map:
    """The sheet drawn small: `scale` of its size, its upper left corner at (left, top)."""

    joints: Joints
    cut_lines: tuple[Stroke, ...]
    scale: float
    left: float
    top: float

    def items(self) -> Iterator[Item]:
        """Cut lines, the pages' cells, and their names."""
        scale, height = self.scale, self.joints.height
        to = Transform(a=scale, d=scale, e=self.left, f=self.top - scale * height)
        for cut_line in self.cut_lines:
            yield Stroke(cut_line.path.transformed(to), Role.LEVEL)
        for tile in self.joints.tiles:
            yield from self._cell(tile)

    def _cell(self, tile: Tile) -> Iterator[Item]:
        tiling, (row, column) = self.joints.tiling, tile
        wide, high = tiling.across * self.scale, tiling.down * self.scale
        x, y = self.left + column * wide, self.top - row * high
        a, b, c, d = Point(x, y), Point(x, y - high), Point(x + wide, y - high), Point(x + wide, y)
        yield Stroke(polyline(a, b, c, d, a), Role.GRID)
        size = min(0.35, wide / 3, high / 3)
        at = Point(x + wide / 2, y - high / 2 - size / 2)
        yield Text(name(tile), at, size, Role.CAUTION, 0.0, "middle")


def rulers(corner: Point, wide: float, high: float) -> Iterator[Item]:
    """Two rulers from a corner, to the right and up: centimetres inside, inches outside.

    Args:
        corner: Where both start.
        wide: Room to the right in cm.
        high: Room upward in cm.
    """
    for along, room in ((RIGHT, wide), (UP, high)):
        inward = UP if along is RIGHT else RIGHT
        base = corner + inward * INCHES
        for unit, count, tick in ((1.0, RULER, inward), (2.54, RULER_INCHES, -inward)):
            last = min(count, int(room / unit + 1e-9))
            if last > 0:
                yield Stroke(_comb(base, along, tick, unit, last), Role.GRID)
                yield from _readings(base, along, tick, unit, last)


def _comb(base: Point, along: Vector, tick: Vector, unit: float, last: int) -> Path:
    """The ruler as one line that runs out and back at every half unit."""
    points = [base]
    for k in range(2 * last + 1):
        at = base + along * (k * unit / 2)
        points += [at, at + tick * (HALF if k % 2 else WHOLE), at]
    return polyline(*points[1:])


def _readings(base: Point, along: Vector, tick: Vector, unit: float, last: int) -> Iterator[Text]:
    """What the ruler measures, past its end, on the side of its ticks."""
    told = f"{last} cm" if unit == 1.0 else f"{last} in"
    below = tick.dot(along.left) < 0
    aside = along.left * (-0.04 - READING if below else 0.04)
    yield Text(told, base + along * (last * unit + 0.08) + aside, READING, Role.GRID, along.angle)


def name(tile: Tile) -> str:
    """Row letter and column number: A1 at the upper left; after Z comes AA. No I and no O."""
    row, column = tile
    letters = ""
    row += 1
    while row:
        row, rest = divmod(row - 1, len(LETTERS))
        letters = LETTERS[rest] + letters
    return f"{letters}{column + 1}"


def _joint(start: Point, end: Point) -> Iterator[Stroke]:
    yield Stroke(polyline(start, end), Role.JOIN)
    for share in PLACES:
        at = start.toward(end, share)
        corners = [
            Point(at.x + x * DIAMOND, at.y + y * DIAMOND)
            for x, y in ((1, 0), (0, 1), (-1, 0), (0, -1), (1, 0))
        ]
        yield Stroke(polyline(*corners), Role.DIAMOND)
