"""The top of two panels trued against each other: waists to their length, sides even.

Source: walking the sides, closing the darts and redrawing the waist over them, square to the centre
and running on over the side seam, are common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace

from drafting.craft.sheet import DraftSheet
from drafting.craft.trueing import natural_opening, seam_over_darts
from drafting.errors import ConstructionError
from drafting.geometry import Cubic, Path, Point, Segment, Transform, Vector, root

EVEN = 1e-4
"""Seams are brought to within 0.0001 cm of each other, far inside the 0.05 cm that is asked."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelTop:
    """A panel's waist while its corner at the side is being trued; the side may lie either way.

    Attributes:
        name: "front" or "back".
        centre: Where the waist meets the centre.
        down: Direction of the centre line there, away from the waist.
        corner: Where the waist meets the side.
        sewn: Wanted length of the waist with its darts closed, cm.
        closed: How the cloth at the side moves when the darts are closed.
        draw_side: The side seam downward, for a corner, stroke by stroke: where only its direction
            is asked for, only the first is drawn.
    """

    name: str
    centre: Point
    down: Vector
    corner: Point
    sewn: float
    closed: Transform
    draw_side: Callable[[Point], Iterable[Segment]]

    @property
    def side(self) -> Path:
        """The side seam downward."""
        return Path(tuple(self.draw_side(self.corner)))

    @property
    def square(self) -> Vector:
        """Direction in which the waist leaves the centre."""
        out = self.down.unit.right
        return out if out.dot(self.corner - self.centre) > 0 else -out

    def opening(self) -> float:
        """By how many degrees the corner is wider than 90 if the waist bends evenly."""
        down = self._down(self.corner)
        return natural_opening(self.centre, self.square, self.corner, down, self.closed)

    def waist(self, opened: float) -> Cubic:
        """The waist with its darts closed, the corner `opened` degrees wider than 90."""
        return self._waist_to(self.corner, opened)

    def _waist_to(self, corner: Point, opened: float) -> Cubic:
        down = self._down(corner)
        return seam_over_darts(self.centre, self.square, corner, down, opened, self.closed)

    def _down(self, corner: Point) -> Vector:
        """Direction in which the side leaves a corner."""
        return next(iter(self.draw_side(corner))).tangent(0.0)

    def to_length(self, opened: float) -> PanelTop:
        """Shift the corner along the waist until the closed waist has its length.

        Raises:
            ConstructionError: No shift of up to 3 cm does it.
        """
        size = self.centre.distance(self.corner)

        def at(shift: float) -> Point:
            return self.corner.toward(self.centre, shift / size)

        wanted = float(self.sewn)
        shift = root(
            lambda s: self._waist_to(at(s), opened).length() - wanted, -3.0, 3.0, EVEN / 10
        )
        if shift is None:
            raise ConstructionError(
                f"The {self.name} waist cannot be brought to its length.", where="waist"
            )
        return replace(self, corner=at(shift))

    def shorter(self, by: float) -> PanelTop:
        """The same with its corner moved along the side, away from the waist, by so many cm."""
        along = math.copysign(by, by * self.down.y)
        return replace(self, corner=self.corner + Vector(0.0, along))

    def error(self, opened: float) -> float:
        """How far the closed waist is from its length, cm."""
        return abs(self.waist(opened).length() - float(self.sewn))


def even_tops(
    front: PanelTop, back: PanelTop, sheet: DraftSheet
) -> tuple[tuple[PanelTop, PanelTop], tuple[float, float]]:
    """Move the corners at the side until the waists have their length and the sides are even.

    Returns:
        The tops with their corners moved, and by how many degrees each corner is wider than 90.

    Raises:
        ConstructionError: A waist cannot be brought to its length.
    """
    one, two, openings = front, back, shared_openings(front, back)
    for _ in range(30):
        one, two = one.to_length(openings[0]), two.to_length(openings[1])
        gap = (one.side.length() - two.side.length()) / 2
        openings = shared_openings(one, two)
        if abs(gap) < EVEN / 4 and max(one.error(openings[0]), two.error(openings[1])) < EVEN:
            break
        one, two = one.shorter(gap), two.shorter(-gap)
        openings = shared_openings(one, two)
    moved = tuple(
        (f"{new.name} side at the waist", old.corner.distance(new.corner))
        for old, new in ((front, one), (back, two))
    )
    why = "Side to side, and each waist to its length with the darts closed."
    agree = "back side = front side, each waist = its length"
    sheet.true("waist and sides", moved, why, agree=agree)
    return (one, two), openings


def shared_openings(one: PanelTop, two: PanelTop) -> tuple[float, float]:
    """Corner angles over 90 degrees, as even as the curves allow, summing to none."""
    a, b = one.opening(), two.opening()
    return (a - b) / 2, (b - a) / 2


def dip(waist: Path, side: Point) -> float:
    """Greatest distance in cm of a waist from the straight line between its start and `side`."""
    along = (side - waist.start).unit
    return max(abs((p - waist.start).cross(along)) for p in waist.flattened(0.05))
