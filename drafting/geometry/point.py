"""Points and vectors in the plane. Centimetres, Y up; angles in degrees, counter-clockwise.

A pattern makes some ten thousand points, vectors, segments and lines. They are kept from change
by the type checker (`Final`), not at run time: to make one costs half as much.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

from mypy_extensions import mypyc_attr


@dataclass(slots=True, init=False, eq=False)
class Vector:
    """A displacement. A difference of two points; adding two points is an error of type."""

    x: Final[float]
    y: Final[float]

    def __init__(self, x: float, y: float) -> None:
        self.x = x
        self.y = y

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Vector) and self.x == other.x and self.y == other.y

    def __hash__(self) -> int:
        return hash((self.x, self.y))

    def __add__(self, other: Vector) -> Vector:
        return Vector(self.x + other.x, self.y + other.y)

    def __sub__(self, other: Vector) -> Vector:
        return Vector(self.x - other.x, self.y - other.y)

    def __mul__(self, factor: float) -> Vector:
        return Vector(self.x * factor, self.y * factor)

    def __rmul__(self, factor: float) -> Vector:
        return Vector(self.x * factor, self.y * factor)

    def __neg__(self) -> Vector:
        return Vector(-self.x, -self.y)

    def dot(self, other: Vector) -> float:
        """Scalar product."""
        return self.x * other.x + self.y * other.y

    def cross(self, other: Vector) -> float:
        """Signed area of the parallelogram; positive when `other` lies to the left."""
        return self.x * other.y - self.y * other.x

    @property
    def length(self) -> float:
        """Euclidean length."""
        return math.hypot(self.x, self.y)

    @property
    def unit(self) -> Vector:
        """Same direction, length one. Raises ZeroDivisionError on the zero vector."""
        size = math.hypot(self.x, self.y)
        return Vector(self.x / size, self.y / size)

    @property
    def left(self) -> Vector:
        """Turned a quarter to the left."""
        return Vector(-self.y, self.x)

    @property
    def right(self) -> Vector:
        """Turned a quarter to the right."""
        return Vector(self.y, -self.x)

    @property
    def angle(self) -> float:
        """Direction in degrees, -180 to 180, zero along +X."""
        return math.degrees(math.atan2(self.y, self.x))

    def rotated(self, degrees: float) -> Vector:
        """Turned counter-clockwise by an angle in degrees."""
        turn = math.radians(degrees)
        c, s = math.cos(turn), math.sin(turn)
        return Vector(self.x * c - self.y * s, self.x * s + self.y * c)

    def angle_to(self, other: Vector) -> float:
        """Unsigned angle between the two directions, 0 to 180 degrees."""
        return math.degrees(math.atan2(abs(self.cross(other)), self.dot(other)))


@mypyc_attr(allow_interpreted_subclasses=True)
@dataclass(slots=True, init=False, eq=False)
class Point:
    """A place on the paper. Point minus point is a Vector, point plus Vector a Point."""

    x: Final[float]
    y: Final[float]

    def __init__(self, x: float, y: float) -> None:
        self.x = x
        self.y = y

    def __eq__(self, other: object) -> bool:
        if type(other) is not type(self):  # a place is more than where it lies
            return False
        return isinstance(other, Point) and self.x == other.x and self.y == other.y

    def __hash__(self) -> int:
        return hash((self.x, self.y))

    def __add__(self, move: Vector) -> Point:
        return Point(self.x + move.x, self.y + move.y)

    def __sub__(self, other: Point) -> Vector:
        return Vector(self.x - other.x, self.y - other.y)

    def distance(self, other: Point) -> float:
        """Distance to another point."""
        return math.hypot(self.x - other.x, self.y - other.y)

    def toward(self, other: Point, share: float) -> Point:
        """The point at a share (0 here, 1 there) of the way to `other`."""
        return Point(self.x + (other.x - self.x) * share, self.y + (other.y - self.y) * share)

    @property
    def is_finite(self) -> bool:
        """Whether both coordinates are finite numbers."""
        return math.isfinite(self.x) and math.isfinite(self.y)


LEFT, RIGHT, UP, DOWN = Vector(-1, 0), Vector(1, 0), Vector(0, 1), Vector(0, -1)


def direction(degrees: float) -> Vector:
    """Unit vector at an angle, counter-clockwise from +X."""
    turn = math.radians(degrees)
    return Vector(math.cos(turn), math.sin(turn))
