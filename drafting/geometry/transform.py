"""Affine moves of the plane: shift, turn, mirror, scale."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

from drafting.geometry.point import Point, Vector


@dataclass(slots=True, init=False, unsafe_hash=True)
class Transform:
    """x' = a x + c y + e, y' = b x + d y + f (the order of SVG's matrix)."""

    a: Final[float]
    b: Final[float]
    c: Final[float]
    d: Final[float]
    e: Final[float]
    f: Final[float]

    def __init__(
        self,
        a: float = 1.0,
        b: float = 0.0,
        c: float = 0.0,
        d: float = 1.0,
        e: float = 0.0,
        f: float = 0.0,
    ) -> None:
        self.a = a
        self.b = b
        self.c = c
        self.d = d
        self.e = e
        self.f = f

    def point(self, p: Point) -> Point:
        """The point's image."""
        return Point(self.a * p.x + self.c * p.y + self.e, self.b * p.x + self.d * p.y + self.f)

    def vector(self, v: Vector) -> Vector:
        """The direction's image: turned and scaled, not shifted."""
        return Vector(self.a * v.x + self.c * v.y, self.b * v.x + self.d * v.y)

    def then(self, other: Transform) -> Transform:
        """This move first, `other` after it."""
        return Transform(
            other.a * self.a + other.c * self.b,
            other.b * self.a + other.d * self.b,
            other.a * self.c + other.c * self.d,
            other.b * self.c + other.d * self.d,
            other.a * self.e + other.c * self.f + other.e,
            other.b * self.e + other.d * self.f + other.f,
        )

    @property
    def turns_over(self) -> bool:
        """Whether the move shows the other side of the paper (determinant below zero)."""
        return self.a * self.d - self.b * self.c < 0

    @property
    def inverse(self) -> Transform:
        """The move that undoes this one. Raises ZeroDivisionError when it is singular."""
        det = self.a * self.d - self.b * self.c
        a, b, c, d = self.d / det, -self.b / det, -self.c / det, self.a / det
        return Transform(a, b, c, d, -(a * self.e + c * self.f), -(b * self.e + d * self.f))


IDENTITY = Transform()


def shift(x: float, y: float) -> Transform:
    """Move by x to the right and y up."""
    return Transform(e=x, f=y)


def turn(degrees: float, about: Point) -> Transform:
    """Turn counter-clockwise about a point."""
    c, s = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    return Transform(
        c, s, -s, c, about.x - c * about.x + s * about.y, about.y - s * about.x - c * about.y
    )


def mirror(on: Point, along: Vector) -> Transform:
    """Mirror about the line through `on` in the direction `along`."""
    u = along.unit
    a, b = u.x * u.x - u.y * u.y, 2 * u.x * u.y
    return Transform(a, b, b, -a, on.x - a * on.x - b * on.y, on.y - b * on.x + a * on.y)


def scale(x: float, y: float | None = None) -> Transform:
    """Scale about the origin; one factor for both directions unless two are given."""
    return Transform(a=x, d=x if y is None else y)
