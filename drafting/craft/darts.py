"""Darts: closing them, drawing the seam across them, opening them again."""

from __future__ import annotations

import math
from dataclasses import dataclass

from drafting.craft.rules import DRILL_SHORT
from drafting.errors import ConstructionError
from drafting.geometry import (
    IDENTITY,
    JOIN,
    Path,
    Point,
    Transform,
    crossing_with_line,
    join,
    polyline,
    turn,
)
from drafting.pattern import Dart


@dataclass(frozen=True, slots=True)
class PlannedDart:
    """A dart as it is drafted on a straight seam line.

    Attributes:
        near: Leg end nearer to the centre.
        far: Leg end nearer to the side.
        point: Where it ends.
    """

    near: Point
    far: Point
    point: Point

    @property
    def closing(self) -> Transform:
        """The turn about the point that lays the far leg on the near one."""
        near, far = self.near - self.point, self.far - self.point
        return turn(math.degrees(math.atan2(far.cross(near), far.dot(near))), self.point)


def closings(darts: tuple[PlannedDart, ...]) -> tuple[Transform, ...]:
    """How each stretch of cloth moves when the darts are closed, the first stretch staying put.

    Stretch i lies after i darts; its move is the turn of the dart before it, then those of all
    darts nearer to the centre.
    """
    moves = [IDENTITY]
    for dart in darts:
        moves.append(dart.closing.then(moves[-1]))
    return tuple(moves)


def reopen(seam: Path, darts: tuple[PlannedDart, ...], edge: str) -> tuple[Path, tuple[Dart, ...]]:
    """Cut a seam drawn over closed darts at the legs and open the darts again.

    Both legs of each dart come out equally long, and the seam runs smooth over the fold, because
    it was drawn as one curve while the darts were closed.

    Args:
        seam: The seam line from the centre to the side, drawn with all darts closed.
        darts: The darts from the centre to the side, as planned.
        edge: Name of the edge.

    Returns:
        The open seam line, straight across each mouth, and the darts on it.

    Raises:
        ConstructionError: A dart's fold does not meet the seam line.

    Source: closing the dart and redrawing the seam over the fold, common practice, no source.
    """
    moves, rest, parts, opened = closings(darts), seam, list[Path](), list[Dart]()
    for dart, inner, outer in zip(darts, moves, moves[1:], strict=False):
        before, rest = _cut_at_fold(rest, dart, inner, edge)
        near, far = inner.inverse.point(before.end), outer.inverse.point(before.end)
        parts += [before.transformed(inner.inverse), polyline(near, far)]
        opened.append(Dart(edge, near, far, dart.point, drill_hole(near, far, dart.point)))
    parts.append(rest.transformed(moves[-1].inverse))
    return join(parts), tuple(opened)


def _cut_at_fold(rest: Path, dart: PlannedDart, inner: Transform, edge: str) -> tuple[Path, Path]:
    """The seam before and after the fold of a closed dart."""
    base, fold = inner.point(dart.point), inner.vector(dart.near - dart.point)
    hits = crossing_with_line(rest, base, fold)
    if not hits:
        raise ConstructionError("A dart does not reach the seam line.", where=f"{edge} dart")
    return rest.split_at(*hits[0])


def split_at_point(path: Path, point: Point) -> tuple[Path, Path]:
    """A path before and after one of its own joints. Raises ValueError where it is none."""
    for i, segment in enumerate(path.segments):
        if segment.end.distance(point) < JOIN and i + 1 < len(path.segments):
            return Path(path.segments[: i + 1]), Path(path.segments[i + 1 :])
    raise ValueError("the point is no joint of the path")


def drill_hole(near: Point, far: Point, point: Point) -> Point:
    """The drill hole on the dart's middle line, short of the point."""
    middle = near.toward(far, 0.5)
    return point + (middle - point).unit * min(DRILL_SHORT, middle.distance(point) / 3)
