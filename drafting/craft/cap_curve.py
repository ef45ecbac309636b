"""The curve of a sleeve cap: chords and width by the triangle, bulges and hollows by the shape.

Source: cap height, chords and width as three sides of one triangle, of which two fix the third, and
where the curve bulges and is hollow: common practice, no source; the UK and Bunka amounts that the
shape is set to are from memory: W. Aldrich, Metric Pattern Cutting for Women's Wear; Bunka Fashion
Series 1.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from drafting.errors import ConstructionError
from drafting.geometry import DOWN, LEFT, RIGHT, Cubic, Path, Point, Vector, root, with_handles

CLOSE = 1e-7
"""Less than this (cm) is nothing."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Armhole:
    """What the sleeve is set into, in cm, as sewn (darts and seams in it closed).

    Attributes:
        front: From the shoulder down to the underarm.
        back: The same at the back.
        front_notch: From the underarm up to the front's balance mark.
        back_notch: The same at the back.
    """

    front: float
    back: float
    front_notch: float
    back_notch: float

    @property
    def length(self) -> float:
        """All round."""
        return self.front + self.back


@dataclass(frozen=True, slots=True)
class Shape:
    """One half of the curve: where it crosses the straight line, how steeply, and its handles."""

    crossing: float
    steeper: float
    crown: float
    inner: float
    hollow: float


FRONT = Shape(0.48, 13.0, 0.46, 0.36, 0.30)
BACK = Shape(0.36, 9.0, 0.42, 0.36, 0.25)
"""Front: bulges by 1.75 over a quarter of the straight line below the crown, hollow by 1.1 above
the underarm; back: 1.95 and 0.6; of an armhole of 42.5 and a cap of a third of it. Set so that the
curve is as long as the worked sleeves kept with the tests, to 0.4 cm."""


def chord_widths(front: float, back: float, height: float) -> tuple[float, float]:
    """Half widths in cm of a sleeve whose straight lines from crown to underarm are so long.

    Raises:
        ConstructionError: The cap is higher than a line is long.
    """
    if height >= min(front, back):
        raise ConstructionError(
            "The sleeve cap is higher than its armhole is long.", where="sleeve cap"
        )
    return math.sqrt(front**2 - height**2), math.sqrt(back**2 - height**2)


def halves(
    armhole: Armhole, height: float, width: float, back_longer: float
) -> tuple[float, float]:
    """Front and back half of a sleeve's width in cm, the two chords longer or shorter alike."""
    least = height - min(armhole.front, armhole.back + back_longer) + CLOSE

    def over(by: float) -> float:
        return (
            sum(chord_widths(armhole.front + by, armhole.back + back_longer + by, height)) - width
        )

    by = root(over, least, least + width + height)
    if by is None:  # so narrow that even the shorter chord stands upright: share it evenly
        return width / 2, width / 2
    return chord_widths(armhole.front + by, armhole.back + back_longer + by, height)


def half(
    under: Point, crown: Point, side: Vector, shape: Shape, roundness: float
) -> tuple[Vector, Cubic, Cubic]:
    """From the crown to the underarm: the direction at the crossing, and the two curves."""
    chord = under - crown
    hand = 1.0 if chord.x < 0 else -1.0
    crossing = under.toward(crown, shape.crossing)
    there = chord.unit.rotated(hand * shape.steeper * min(1.0, roundness))
    upper, lower = crown.distance(crossing), crossing.distance(under)
    out, square = (LEFT if chord.x < 0 else RIGHT), (side.left if chord.x > 0 else side.right)
    above = with_handles(
        crown, out, crossing, there, roundness * shape.crown * upper, shape.inner * upper
    )
    below = with_handles(
        crossing, there, under, square, shape.inner * lower, roundness * shape.hollow * lower
    )
    return there, above, below


def cap_curve(front: Point, crown: Point, back: Point, lean: float, roundness: float) -> Path:
    """The whole cap from the front underarm over the crown; `lean` as in `draw_cap`."""
    _, *one = half(front, crown, DOWN.rotated(-lean), FRONT, roundness)
    _, *two = half(back, crown, DOWN.rotated(lean), BACK, roundness)
    return Path(tuple(one)).reversed().joined(Path(tuple(two)))
