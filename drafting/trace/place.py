"""A point that knows the words to find it."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

from drafting.geometry import Point, Vector, meet
from drafting.trace.length import Length, bare, number, said, share_words
from drafting.trace.saying import Named, Saying

Operand = Named | float | str


def name_of(place: Named) -> str:
    """What a place or line is called in words."""
    return place.name or "the point before"


BY_NAME = Saying(name_of, said)
"""Places by their names, lengths by their formulas."""


@dataclass(slots=True, unsafe_hash=True)
class Move:
    """One move of the pencil.

    Attributes:
        verb: A verb of `MOVES`.
        operands: What it takes: places, lengths, degrees, words.
        to: Where it led.
    """

    verb: Final[str]
    operands: Final[tuple[Operand, ...]]
    to: Final[Point]

    def words(self, saying: Saying = BY_NAME) -> str:
        """The move as one says it: "9.33 cm up", "straight down to the level of the hip line"."""
        told = (spoken(o, saying) for o in self.operands)
        if self.verb == "swing":  # which way it turns is said in words
            told = (text.removeprefix("-") for text in told)
        return saying.fill(MOVES[self.verb], *told)


MOVES = {
    "at": "anywhere on the paper with room about it",
    "right": "{0} to the right",
    "left": "{0} to the left",
    "up": "{0} up",
    "down": "{0} down",
    "level": "straight {1} to the level of {0}",
    "plumb": "straight to the {1} until plumb with {0}",
    "toward": "{1} toward {0}",
    "between": "{1} of the way to {0}",
    "slant": "{0} on a line at {1} degrees",
    "reach": "{1} to the {2}, to meet the level of {0}",
    "square": "{2} {4}, square to the line {0} - {1}",
    "meeting": "where the line {0} - {1} meets the line {2} - {3}",
    "along": "{1} along {0}",
    "before": "{1} along {0}, from its end",
    "swing": "{1} degrees {2} about {0}",
}
"""The verbs of the pencil, each with the words for it; {0}, {1} are its operands."""


def spoken(value: Operand, saying: Saying) -> str:
    """An operand in words: a length, a word, a plain number, or a place or line."""
    match value:
        case Length():
            return saying.length(value)
        case str():
            return saying.word(value)
        case float() | int():
            return saying.word(share_words(value) if 0 < value < 1 else number(value))
        case _:
            return saying.place(value)


def length(value: float) -> Length:
    """The value as a length, with its memory if it has one."""
    return value if isinstance(value, Length) else Length(value)


class Place(Point):
    """A point on the paper with the moves that led to it.

    Attributes:
        name: The trade's word once the sheet has recorded it, else empty.
        base: The named place that the moves start from; None for a corner of the paper.
        moves: The moves of the pencil from `base`.
    """

    __slots__ = ("base", "moves", "name")
    _kept = staticmethod(length)  # how a distance is remembered

    name: Final[str]
    base: Final[Place | None]
    moves: Final[tuple[Move, ...]]

    def __init__(
        self,
        x: float,
        y: float,
        name: str = "",
        base: Place | None = None,
        moves: tuple[Move, ...] = (),
    ) -> None:
        Point.__init__(self, x, y)
        self.name = name
        self.base = base
        self.moves = moves

    # Points compare by position; a name or a history makes no other point of it.
    def __eq__(self, other: object) -> bool:
        if not isinstance(other, Point):
            return NotImplemented
        return self.x == other.x and self.y == other.y

    def __hash__(self) -> int:
        return hash((self.x, self.y))

    # A history reaches back to the first point; its words are the step's business.
    def __repr__(self) -> str:
        return f"Place({self.x!r}, {self.y!r}, {self.name!r})"

    def _moved(self, x: float, y: float, verb: str, *operands: Operand) -> Place:
        base, before = (self, ()) if self.name else (self.base, self.moves)
        return Place(x, y, "", base, (*before, Move(verb, operands, Point(x, y))))

    def right(self, distance: float) -> Place:
        """So many cm to the right."""
        return self._moved(self.x + float(distance), self.y, "right", self._kept(distance))

    def left(self, distance: float) -> Place:
        """So many cm to the left."""
        return self._moved(self.x - float(distance), self.y, "left", self._kept(distance))

    def up(self, distance: float) -> Place:
        """So many cm up."""
        return self._moved(self.x, self.y + float(distance), "up", self._kept(distance))

    def down(self, distance: float) -> Place:
        """So many cm down."""
        return self._moved(self.x, self.y - float(distance), "down", self._kept(distance))

    def nudged(self, across: float, up: float) -> Place:
        """Moved a little to the right and up, or by minus as much to the left and down."""
        beside = self.right(across) if across > 0 else self.left(-across) if across < 0 else self
        return beside.up(up) if up > 0 else beside.down(-up) if up < 0 else beside

    def nudged_to(self, point: Point) -> Place:
        """Moved to where a point lies, told by how far across and how far up that is."""
        return self.nudged(point.x - self.x, point.y - self.y)

    def level_with(self, other: Place) -> Place:
        """Straight up or down to the level of another place."""
        way = "up" if other.y > self.y else "down"
        return self._moved(self.x, other.y, "level", other, way)

    def plumb_with(self, other: Place) -> Place:
        """Straight across to stand over or under another place."""
        way = "right" if other.x > self.x else "left"
        return self._moved(other.x, self.y, "plumb", other, way)

    def towards(self, other: Place, distance: float) -> Place:
        """So many cm on the line to another place."""
        step = (other - self).unit * float(distance)
        return self._moved(self.x + step.x, self.y + step.y, "toward", other, self._kept(distance))

    def between(self, other: Place, share: float) -> Place:
        """A share (0 to 1) of the way to another place."""
        x = self.x + (other.x - self.x) * float(share)
        y = self.y + (other.y - self.y) * float(share)
        return self._moved(x, y, "between", other, share)

    def slant(self, distance: float, degrees: float) -> Place:
        """So many cm in a direction: 0 degrees to the right, 90 up, 45 between them."""
        turn = math.radians(degrees)
        x = self.x + float(distance) * math.cos(turn)
        y = self.y + float(distance) * math.sin(turn)
        return self._moved(x, y, "slant", self._kept(distance), degrees)

    def swung(self, pivot: Place, degrees: float) -> Place:
        """Swung about another place by an angle, positive against the clock."""
        ray = (self - pivot).rotated(degrees)
        turn = "to the left" if degrees > 0 else "to the right"
        at = pivot + ray
        return self._moved(at.x, at.y, "swing", pivot, float(degrees), turn)

    def reaching(self, level: Place, distance: float, side: str) -> Place | None:
        """The place on another place's level that lies so far away, to the left or right.

        None where the level lies farther away than the distance.
        """
        rise = level.y - self.y
        across = float(distance) ** 2 - rise * rise
        if across < 0:
            return None
        x = self.x + (math.sqrt(across) if side == "right" else -math.sqrt(across))
        return self._moved(x, level.y, "reach", level, self._kept(distance), side)

    def square_out(self, start: Place, end: Place, distance: float, side: str) -> Place:
        """So many cm at a right angle to the line from `start` to `end`, to its left or right."""
        along = (end - start).unit
        step = (along.left if side == "left" else along.right) * float(distance)
        operands = (start, end, self._kept(distance), side, way(step.x, step.y))
        return self._moved(self.x + step.x, self.y + step.y, "square", *operands)


class Dot(Place):
    """A place on scrap paper: where it lies, not the way that led to it."""

    __slots__ = ()
    _kept = staticmethod(bare)

    def _moved(self, x: float, y: float, _: str, *__: Operand) -> Dot:
        return Dot(x, y)


def way(x: float, y: float) -> str:
    """The nearest of the paper's four directions, in words."""
    if abs(x) > abs(y):
        return "to the right" if x > 0 else "to the left"
    return "upward" if y > 0 else "downward"


def corner_of_paper(x: float = 0.0, y: float = 0.0) -> Place:
    """Where the pencil starts: any point of the paper, all else is measured from it."""
    at = Point(float(x), float(y))
    return Place(at.x, at.y, "", None, (Move("at", (), at),))


def meeting(a: Place, b: Place, c: Place, d: Place) -> Place | None:
    """Where the line a - b meets the line c - d; None where they are parallel."""
    point = meet(a, Vector(b.x - a.x, b.y - a.y), c, Vector(d.x - c.x, d.y - c.y))
    if point is None:
        return None
    return Place(point.x, point.y, "", None, (Move("meeting", (a, b, c, d), point),))
