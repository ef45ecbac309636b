"""The names of the sizes at a piece's corners, where they cover nothing.

Where the corners of the sizes lie close together their names stand in a column outside, each with
a thin line to its own corner; where they lie well apart, each name stands beside its corner.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations, product

import shapely
from shapely.geometry.base import BaseGeometry

from drafting.drawing.lettering import boxes, width
from drafting.drawing.sheet import Pen, Role, Stroke, Text
from drafting.geometry import Point, Vector, direction, polyline

HEIGHT = 0.25
"""Height of capitals of a size's name, cm."""
PITCH = 0.46
"""From one name to the next, cm."""
LEADER = Pen(0.12)
SAME = 0.04
"""Corners nearer than this (cm) are the same on paper: their sizes are named together."""
WIDE = 1.2
"""Corners farther apart than this (cm) are named each by itself."""
CLEAR = 0.15
"""Names stay this far from the piece, cm."""
FAR = tuple(0.6 + 0.4 * k for k in range(16))
"""Distances from the corner that are tried for a column, cm."""
TURNS = (0.0, 30.0, -30.0, 60.0, -60.0, 90.0, -90.0)
"""Directions that are tried, in degrees from straight outward."""
NEAR = ((0.5, 0.2), (0.5, -0.45), (0.5, 0.6), (0.5, -0.85), (1.0, 0.3), (1.0, -0.55))
"""Offsets that are tried for a name beside its corner, to the right or left and up, cm."""
MOST = 4
"""So many corners are named at most, as far apart as may be."""
APART = 8.0
"""Named corners lie at least this far apart, cm."""


@dataclass(frozen=True, slots=True)
class Row:
    """Sizes (places in the range) whose corner is the same on paper, where it is, their names."""

    sizes: tuple[int, ...]
    at: Point
    text: str


@dataclass(frozen=True, slots=True)
class Fan:
    """One corner over all sizes, the highest first, and the way out of the piece."""

    rows: tuple[Row, ...]
    outward: Vector

    @classmethod
    def of(cls, points: Sequence[Point | None], names: Sequence[str], outward: Vector) -> Fan:
        """A fan of the corner of every size, None where a size has none."""
        groups: list[list[int]] = []
        for place, point in enumerate(points):
            if point is not None:
                _put(groups, place, points)
        rows = (
            Row(tuple(group), at, ", ".join(names[i] for i in group))
            for group in groups
            if (at := points[group[0]]) is not None
        )
        return cls(tuple(sorted(rows, key=_downward)), outward)

    @property
    def spread(self) -> float:
        """Greatest distance between two of its points, cm."""
        return max(self._gaps(), default=0.0)

    @property
    def is_wide(self) -> bool:
        """Whether there is room for a name between any two of its points."""
        return min(self._gaps(), default=0.0) > WIDE

    def _gaps(self) -> Iterator[float]:
        return (a.at.distance(b.at) for a, b in combinations(self.rows, 2))


def _put(groups: list[list[int]], place: int, points: Sequence[Point | None]) -> None:
    """Put a size to those whose corner is the same on paper, or by itself."""
    at = points[place]
    for group in groups:
        first = points[group[0]]
        if first is not None and at is not None and first.distance(at) < SAME:
            group.append(place)
            return
    groups.append([place])


def _downward(row: Row) -> tuple[float, float]:
    return -round(row.at.y, 6), round(row.at.x, 6)


@dataclass(frozen=True, slots=True)
class Named:
    """A name written at a corner: which sizes it tells (places in the range), text and leader."""

    sizes: tuple[int, ...]
    text: Text
    leader: Stroke


def name_corners(
    fans: Sequence[Fan], area: BaseGeometry, lines: BaseGeometry
) -> tuple[tuple[Named, ...], BaseGeometry]:
    """Write the sizes' names at the corners where they differ most.

    Args:
        fans: The piece's corners.
        area: What all sizes of the piece cover.
        lines: Their outlines.

    Returns:
        The names, and the area that they and the piece cover together.
    """
    written: list[Named] = []
    for fan in _chosen(fans):
        group = _beside(fan, lines) if fan.is_wide else ()
        group = group or _outside(fan, area)
        taken = [*boxes([n.text for n in group]), *map(_line, group)]
        area, lines = shapely.union_all([area, *taken]), shapely.union_all([lines, *taken])
        written += group
    return tuple(written), area


def _chosen(fans: Sequence[Fan]) -> list[Fan]:
    chosen: list[Fan] = []
    for fan in sorted(fans, key=lambda f: -round(f.spread, 6)):
        near = any(f.rows[0].at.distance(fan.rows[0].at) < APART for f in chosen)
        if fan.spread > SAME and not near and len(chosen) < MOST:
            chosen.append(fan)
    return chosen


def _beside(fan: Fan, lines: BaseGeometry) -> tuple[Named, ...]:
    """Each name beside its own corner, clear of all lines; nothing where one finds no room."""
    found: list[Named] = []
    for row in fan.rows:
        tried = (_named(row, row.at + v, right=v.x > 0) for v in _offsets(fan.outward))
        first = next((n for n in tried if not _box(n).buffer(0.06).intersects(lines)), None)
        if first is None:
            return ()
        found.append(first)
        lines = shapely.union_all([lines, _box(first)])
    return tuple(found)


def _offsets(outward: Vector) -> Iterator[Vector]:
    """Places beside a corner, those outside the piece first."""
    aside = 1.0 if outward.x >= 0 else -1.0
    for side, (across, up) in product((aside, -aside), NEAR):
        yield Vector(side * across, up)


def _outside(fan: Fan, area: BaseGeometry) -> tuple[Named, ...]:
    """The names in a column at the nearest clear place outside."""
    column: tuple[Named, ...] = ()
    for far, turned in product(FAR, TURNS):
        both = (_column(rows, fan.outward, far, turned) for rows in (fan.rows, fan.rows[::-1]))
        column = min(both, key=_tangles)
        room = shapely.union_all(boxes([n.text for n in column])).buffer(CLEAR)
        if not room.intersects(area):
            break
    return column


def _column(rows: tuple[Row, ...], outward: Vector, far: float, turned: float) -> tuple[Named, ...]:
    out = direction(outward.angle + turned)
    wide, high = max(width(row.text, HEIGHT) for row in rows), PITCH * len(rows)
    lead = max((row.at for row in rows), key=lambda p: p.x * out.x + p.y * out.y)
    middle = lead + out * (far + abs(out.x) * wide / 2 + abs(out.y) * high / 2)
    right = middle.x >= sum(row.at.x for row in rows) / len(rows)
    x = middle.x - wide / 2 if right else middle.x + wide / 2
    top = middle.y + high / 2
    return tuple(
        _named(row, Point(x, top - PITCH * (k + 0.75)), right=right) for k, row in enumerate(rows)
    )


def _named(row: Row, at: Point, *, right: bool) -> Named:
    """A name whose base line starts (on the left: ends) at a point, and its leader."""
    text = Text(row.text, at, HEIGHT, anchor="start" if right else "end")
    end = Point(at.x - 0.1 if right else at.x + 0.1, at.y + HEIGHT / 2)
    return Named(row.sizes, text, Stroke(polyline(row.at, end), Role.MARK, pen=LEADER))


def _tangles(column: tuple[Named, ...]) -> int:
    """How many leaders cross each other."""
    return sum(_line(a).crosses(_line(b)) for a, b in combinations(column, 2))


def _line(named: Named) -> shapely.LineString:
    path = named.leader.path
    return shapely.LineString([(path.start.x, path.start.y), (path.end.x, path.end.y)])


def _box(named: Named) -> BaseGeometry:
    box: BaseGeometry = boxes([named.text])[0]
    return box
