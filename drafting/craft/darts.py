"""Darts: closing them, drawing the seam across them, opening them again."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import Protocol, TypeVar

from drafting.craft.rules import DRILL_SHORT
from drafting.errors import ConstructionError
from drafting.geometry import (
    IDENTITY,
    JOIN,
    Path,
    Point,
    Transform,
    Vector,
    crossing_with_line,
    join,
    polyline,
    shift,
    turn,
)
from drafting.pattern import Dart, Pleat


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

    @property
    def near_leg(self) -> tuple[Point, Vector]:
        """The point, and the direction to the near leg's end."""
        return self.point, self.near - self.point

    def made(self, edge: str, near: Point, far: Point) -> Dart:
        """The dart, its legs ending on a seam."""
        return Dart(edge, near, far, self.point, drill_hole(near, far, self.point))


@dataclass(frozen=True, slots=True)
class ThroughDart(PlannedDart):
    """A dart that runs through the natural waist up to a raised top: widest at the waist.

    Attributes:
        near_bend: Where the nearer leg bends, at the waist.
        far_bend: Where the farther leg does.

    Source: from memory: a high waist's darts narrow again above the natural waist.
    """

    near_bend: Point
    far_bend: Point

    @property
    def closing(self) -> Transform:
        """The move that lays the far leg's upper part on the near one's."""
        near, far = self.near - self.near_bend, self.far - self.far_bend
        turned = turn(math.degrees(math.atan2(far.cross(near), far.dot(near))), self.far_bend)
        aside = self.near_bend - self.far_bend
        return turned.then(shift(aside.x, aside.y))

    @property
    def near_leg(self) -> tuple[Point, Vector]:
        """The bend, and the direction to the near leg's end."""
        return self.near_bend, self.near - self.near_bend

    def made(self, edge: str, near: Point, far: Point) -> Dart:
        """The dart, its legs ending on a seam; a plain one on a seam along the waist itself."""
        whole = PlannedDart.made(self, edge, near, far)
        if near.distance(self.near_bend) < AT_THE_WAIST:
            return whole
        return replace(whole, bends=(self.near_bend, self.far_bend))


AT_THE_WAIST = 0.05
"""cm; a seam that lies so near to the bends goes through them."""

Made_co = TypeVar("Made_co", Dart, Pleat, covariant=True)


class Planned(Protocol[Made_co]):
    """A dart or a pleat as it is drafted: it can be closed, and cut where a seam crosses it."""

    @property
    def closing(self) -> Transform:
        """The move that lays the far leg on the near one."""
        ...

    @property
    def near_leg(self) -> tuple[Point, Vector]:
        """A point inside on the near leg, and the direction from there to the seam."""
        ...

    def made(self, edge: str, near: Point, far: Point) -> Made_co:
        """The dart or pleat, its legs ending on a seam."""
        ...


def closings(taken: tuple[Planned[Made_co], ...]) -> tuple[Transform, ...]:
    """How each stretch of cloth moves when darts or pleats are closed, the first one staying put.

    Stretch i lies after i of them; its move is that of the one before it, then those of all nearer
    to the centre.
    """
    moves = [IDENTITY]
    for one in taken:
        moves.append(one.closing.then(moves[-1]))
    return tuple(moves)


def reopen(
    seam: Path, taken: tuple[Planned[Made_co], ...], edge: str
) -> tuple[Path, tuple[Made_co, ...]]:
    """Cut a seam drawn over closed darts or pleats at the legs and open them again.

    Both legs of each come out equally long, and the seam runs smooth over the fold, because it was
    drawn as one curve while they were closed.

    Args:
        seam: The seam line from the centre to the side, drawn with all of them closed.
        taken: The darts or pleats from the centre to the side, as planned.
        edge: Name of the edge.

    Returns:
        The open seam line, straight across each mouth, and the darts or pleats on it.

    Raises:
        ConstructionError: A fold does not meet the seam line.

    Source: closing the dart and redrawing the seam over the fold, common practice, no source.
    """
    moves, rest, parts, opened = closings(taken), seam, list[Path](), list[Made_co]()
    for one, inner, outer in zip(taken, moves, moves[1:], strict=False):
        before, rest = _cut_at_fold(rest, one.near_leg, inner, edge)
        near, far = inner.inverse.point(before.end), outer.inverse.point(before.end)
        parts += [before.transformed(inner.inverse), polyline(near, far)]
        opened.append(one.made(edge, near, far))
    parts.append(rest.transformed(moves[-1].inverse))
    return join(parts), tuple(opened)


def _cut_at_fold(
    rest: Path, leg: tuple[Point, Vector], inner: Transform, edge: str
) -> tuple[Path, Path]:
    """The seam before and after the fold of a closed dart or pleat."""
    hits = crossing_with_line(rest, inner.point(leg[0]), inner.vector(leg[1]))
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
