"""A direction of the pencil that knows how it is found on the paper."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final, Literal

from drafting.geometry import DOWN, LEFT, RIGHT, UP, Vector, direction
from drafting.trace.place import BY_NAME, Operand, Place, spoken
from drafting.trace.saying import Saying

if TYPE_CHECKING:
    from drafting.trace.stroke import Stroke

End = Literal["start", "end"]

BEARINGS = {
    "right": "level, to the right",
    "left": "level, to the left",
    "up": "plumb, upward",
    "down": "plumb, downward",
    "along": "along {0} - {1}",
    "runs": "on from the {1} of {0}",
    "degrees": "at {0} degrees",
}
"""The ways to find a direction, each with the words for it; {0}, {1} are its operands."""

OPPOSITE = {"right": "left", "left": "right", "up": "down", "down": "up"}
"""The way that runs against another."""

SQUARE = {"along": "square to {0} - {1}", "runs": "square to the {1} of {0}"}
"""The words where it is turned by a quarter."""

TURNED = {
    "left": "{0}, turned {1} degrees to the left",
    "right": "{0}, turned {1} degrees to the right",
}
"""The words where it is turned aside."""


@dataclass(slots=True, unsafe_hash=True)
class Bearing:
    """A direction, told by what lies on the paper.

    Attributes:
        vector: The direction of travel, any length.
        verb: A way of `BEARINGS`.
        operands: What it takes: two places, or a line and its end, or degrees.
        turned: By how many degrees it is turned from there, to the left.
    """

    vector: Final[Vector]
    verb: Final[str]
    operands: Final[tuple[Operand, ...]] = ()
    turned: Final[float] = 0.0

    @property
    def left(self) -> Bearing:
        """Turned a quarter to the left."""
        return Bearing(self.vector.left, self.verb, self.operands, self.turned + 90.0)

    @property
    def right(self) -> Bearing:
        """Turned a quarter to the right."""
        return Bearing(self.vector.right, self.verb, self.operands, self.turned - 90.0)

    def rotated(self, degrees: float) -> Bearing:
        """Turned to the left by an angle in degrees."""
        turned = self.turned + degrees
        return Bearing(self.vector.rotated(degrees), self.verb, self.operands, turned)

    def to(self, vector: Vector) -> Bearing:
        """Turned so that it points as a vector does."""
        angle = math.atan2(self.vector.cross(vector), self.vector.dot(vector))
        return Bearing(vector, self.verb, self.operands, self.turned + math.degrees(angle))

    def _nearest(self) -> Bearing:
        """The same direction told from the nearer of two opposite ones, as left from right."""
        if self.verb not in OPPOSITE or abs(self.turned) <= 90:
            return self
        turned = self.turned - math.copysign(180.0, self.turned)
        return Bearing(self.vector, OPPOSITE[self.verb], self.operands, turned)

    def words(self, saying: Saying = BY_NAME) -> str:
        """The direction as one says it: "square to A1 - B2"."""
        near = self._nearest()
        if near is not self:
            return near.words(saying)
        operands = [spoken(o, saying) for o in self.operands]
        square = self.verb in SQUARE and abs(self.turned) > 45
        table = SQUARE if square else BEARINGS
        text = saying.fill(table[self.verb], *operands)
        rest = abs(self.turned) - 90 if square else abs(self.turned)
        if abs(rest) <= 0.05:
            return text
        side = "left" if (rest > 0) == (self.turned > 0) else "right"
        return saying.fill(TURNED[side], text, saying.word(f"{abs(rest):.1f}"))


RIGHTWARD = Bearing(RIGHT, "right")
LEFTWARD = Bearing(LEFT, "left")
UPWARD = Bearing(UP, "up")
DOWNWARD = Bearing(DOWN, "down")


def along(start: Place, end: Place) -> Bearing:
    """The direction of the straight line from one place to another."""
    return Bearing(end - start, "along", (start, end))


def running(line: Stroke, end: End) -> Bearing:
    """The direction in which a line runs at its start or its end."""
    vector = line.path.start_tangent if end == "start" else line.path.end_tangent
    return Bearing(vector, "runs", (line, end))


def at_degrees(degrees: float) -> Bearing:
    """A direction by its angle: 0 to the right, 90 up."""
    return Bearing(direction(degrees), "degrees", (degrees,))
