"""An edge as seen from the corner where it ends, and what can be asked of it there.

A corner has two arms, and every rule for corners is written for two arms that both run *toward*
the corner: the edge that starts there is turned round. So no rule is written twice.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from drafting.geometry import Line, Path, Point, Segment, Vector, crossing_with_line, meet

MITRE_LIMIT = 2.5
"""A corner may stand off by 2.5 allowances, else it is cut off. Source: common practice."""

TINY = 1e-6
"""Points nearer than this (cm) are one."""

Place = tuple[int, float]
"""Segment number and t on a cutting line."""


@dataclass(slots=True, init=False)
class Arm:
    """One of the two lines that meet at a corner.

    Attributes:
        at: The corner, on the stitching line.
        ahead: Unit direction in which the stitching line arrives at the corner.
        outward: Unit direction from the stitching line to the cutting line, at the corner.
        cut: The cutting line beside it, running toward the corner, not yet trimmed there.
        allowance: Its distance in cm.
        end: Where the cutting line ends by itself.
        last: The place of that end.
        tangent: The unit direction in which the cutting line ends.
    """

    at: Point
    ahead: Vector
    outward: Vector
    cut: Path
    allowance: float
    end: Point
    last: Place
    tangent: Vector

    def __init__(
        self, at: Point, ahead: Vector, outward: Vector, cut: Path, allowance: float
    ) -> None:
        self.at = at
        self.ahead = ahead
        self.outward = outward
        self.cut = cut
        self.allowance = allowance
        self.end = cut.end
        self.last = len(cut.segments) - 1, 1.0
        self.tangent = cut.end_tangent

    @property
    def onward(self) -> Vector:
        """The unit direction in which the cutting line is carried on straight."""
        return self.tangent if self.tangent.dot(self.ahead) > 0 else self.ahead

    @property
    def runs_true(self) -> bool:
        """Whether the cutting line ends square out from the corner and runs toward it.

        It does not where the stitching line bends inward tighter than the allowance.
        """
        foot = self.at + self.outward * self.allowance
        return foot.distance(self.end) < 1e-3 and self.tangent.dot(self.ahead) > 0.99


@dataclass(slots=True, init=False)
class Stop:
    """Where an arm's cutting line ends: at `point`, carried on straight from `on` to there."""

    place: Place
    on: Point
    point: Point

    def __init__(self, place: Place, on: Point, point: Point) -> None:
        self.place = place
        self.on = on
        self.point = point

    @property
    def is_carried_on(self) -> bool:
        """Whether it lies off the cutting line itself."""
        return self.on is not self.point and self.on != self.point


@dataclass(slots=True, init=False)
class Turn:
    """How the cutting line goes from one arm to the other: a place on each, and the way between."""

    first: Place
    second: Place
    segments: tuple[Segment, ...]

    def __init__(self, first: Place, second: Place, segments: tuple[Segment, ...]) -> None:
        self.first = first
        self.second = second
        self.segments = segments

    @property
    def turned(self) -> Turn:
        """The same, gone from the second arm to the first."""
        back = tuple([s.reversed() for s in reversed(self.segments)])
        return Turn(self.second, self.first, back)


def is_convex(first: Arm, second: Arm) -> bool:
    """Whether the corner points outward (less than 180 degrees of cloth)."""
    return second.ahead.dot(first.outward) > 0


def own_end(arm: Arm) -> Stop:
    """The arm's cutting line as far as it goes by itself."""
    return Stop(arm.last, arm.end, arm.end)


def reach(arm: Arm, on: Point, along: Vector, near: Point | None = None) -> Stop | None:
    """Where the arm's cutting line, carried on straight if need be, meets an endless line.

    Of several places the one nearest to `near` (the corner, unless given) counts.
    """
    goal = near or arm.at
    found = []
    for i, t in crossing_with_line(arm.cut, on, along):
        p = arm.cut.segments[i].at(t)
        found.append(Stop((i, t), p, p))
    end, ahead = arm.end, arm.onward
    beyond = meet(end, ahead, on, along)
    if beyond is not None and (beyond - end).dot(ahead) > -TINY:
        found.append(Stop(arm.last, end, beyond))
    return min(found, key=lambda s: s.point.distance(goal), default=None)


def through(first: Stop, second: Stop, *between: Point) -> Turn:
    """A turn of straight strokes: out along one arm, over some points, and in along the other."""
    points = (first.on, first.point, *between, second.point, second.on)
    return Turn(first.place, second.place, strokes(points))


def strokes(points: tuple[Point, ...]) -> tuple[Segment, ...]:
    """Straight strokes through points, without those of no length.

    The first and the last point stay exactly where they are.
    """
    kept = [points[0]]
    kept += [p for q, p in pairwise(points) if p is not q and p.distance(q) > TINY]
    if len(kept) == 1:
        return ()
    kept[-1] = points[-1]
    return tuple([Line(a, b) for a, b in pairwise(kept)])
