"""A pencil line that knows how it was drawn: straight parts and curves between named places."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import Final, Literal

from drafting.geometry import Cubic, Line, Path, Segment, Vector, bulged
from drafting.trace.bearing import Bearing, along, at_degrees
from drafting.trace.length import Length
from drafting.trace.place import BY_NAME, Move, Operand, Place, length, spoken, way
from drafting.trace.saying import Saying

Turn = Literal["left", "right"]


@dataclass(slots=True, unsafe_hash=True)
class Straight:
    """A straight part of a line."""

    start: Final[Place]
    end: Final[Place]

    @property
    def segment(self) -> Line:
        """The geometry."""
        return Line(self.start, self.end)


@dataclass(slots=True, unsafe_hash=True)
class Guide:
    """What a hand looks at while it bends a curve: a way of `GUIDES` and what it takes."""

    verb: Final[str]
    operands: Final[tuple[Operand, ...]]

    def words(self, saying: Saying = BY_NAME) -> str:
        """The guide as one says it: "past a point 3 cm out on the diagonal of the corner"."""
        return saying.fill(GUIDES[self.verb], *(spoken(o, saying) for o in self.operands))


GUIDES = {
    "diagonal": "past a point {1} out on the diagonal of {0}",
    "middle": "its middle {0} off the straight line, {2}",
}
"""What may guide a curve beside its end directions; {0}, {1} are the guide's operands."""


def past_diagonal(corner: Place, distance: float) -> Guide:
    """The curve cuts the 45 degree line of a corner so many cm out."""
    return Guide("diagonal", (corner, length(distance)))


def middle_out(by: float, side: Turn, along: Vector) -> Guide:
    """The curve's middle stands so many cm to the left or right of the straight line `along`."""
    off = along.left if side == "left" else along.right
    return Guide("middle", (length(by), side, way(off.x, off.y)))


def middle_of(drawn: Cubic) -> Guide:
    """How far a drawn curve's middle stands off its straight line."""
    chord = drawn.end - drawn.start
    out = chord.unit.cross(drawn.at(0.5) - drawn.start)
    return middle_out(abs(out), "left" if out >= 0 else "right", chord)


@dataclass(slots=True, unsafe_hash=True)
class Bend:
    """A curved part of a line: a cubic with named directions at both ends.

    Attributes:
        start: Where it starts.
        end: Where it ends.
        leaving: Direction of travel at the start.
        arriving: Direction of travel at the end.
        segment: The geometry, as it was drawn.
        guide: What a hand looks at while bending it.
    """

    start: Final[Place]
    end: Final[Place]
    leaving: Final[Bearing]
    arriving: Final[Bearing]
    segment: Final[Cubic]
    guide: Final[Guide | None] = None

    @property
    def handles(self) -> tuple[float, float]:
        """How far each end's handle reaches along its direction, cm."""
        drawn = self.segment
        return drawn.start.distance(drawn.leaving), drawn.arriving.distance(drawn.end)


@dataclass(slots=True, unsafe_hash=True)
class Bulge:
    """A shallow arc whose middle stands `by` cm to a side of the straight line."""

    start: Final[Place]
    end: Final[Place]
    by: Final[Length]
    side: Final[Turn]

    @property
    def segment(self) -> Cubic:
        """The geometry."""
        return bulged(self.start, self.end, float(self.by) if self.side == "left" else -self.by)

    @property
    def guide(self) -> Guide:
        """What a hand looks at while bending it."""
        return middle_out(self.by, self.side, self.end - self.start)


@dataclass(frozen=True, slots=True)
class Arc:
    """A part of a circle.

    Attributes:
        start: Where it starts.
        end: Where it ends.
        about: The circle's centre.
        degrees: How far it is swung, positive against the clock.
        path: The geometry, as it was drawn.
    """

    start: Place
    end: Place
    about: Place
    degrees: float
    path: Path


Part = Straight | Bend | Bulge | Arc


@dataclass(slots=True, unsafe_hash=True)
class Fold:
    """A dart that is closed while a line is drawn over it: both legs' ends and its point."""

    near: Final[Place]
    far: Final[Place]
    point: Final[Place]


@dataclass(slots=True, unsafe_hash=True)
class Stroke:
    """A drawn line.

    Attributes:
        path: Where it runs, in cm, as it lies on the paper.
        parts: How it was drawn, part by part. With `folds` it is one curve, drawn while those
            darts are closed, and `path` is that curve after they were opened again.
        name: The trade's word for it.
        folds: Darts that were closed for it, from its start to its end.
        remark: What else there is to say of how it runs.
    """

    path: Final[Path]
    parts: Final[tuple[Part, ...]]
    name: Final[str] = ""
    folds: Final[tuple[Fold, ...]] = ()
    remark: Final[str] = ""

    @property
    def start(self) -> Place:
        """Where it starts."""
        return self.parts[0].start

    @property
    def end(self) -> Place:
        """Where it ends."""
        return self.parts[-1].end

    def at(self, distance: float) -> Place:
        """The place so many cm along the line from its start."""
        point = self.path.at(float(distance))
        return Place(point.x, point.y, "", None, (Move("along", (self, length(distance)), point),))

    def before_end(self, distance: float) -> Place:
        """The place so many cm along the line from its end."""
        point = self.path.at(self.path.length() - float(distance))
        return Place(point.x, point.y, "", None, (Move("before", (self, length(distance)), point),))

    def words(self, saying: Saying = BY_NAME) -> str:
        """How it is drawn, in one line of text."""
        told = "; ".join((*(words_of(p, saying) for p in self.parts), *self.notes()))
        return saying.fill(OVER_DARTS if self.folds else FROM, saying.place(self.start), told)

    def notes(self) -> tuple[str, ...]:
        """The remark, where there is one."""
        return (self.remark,) if self.remark else ()


FROM = "from {0} {1}"
OVER_DARTS = "with the darts closed from {0} {1}; open the darts again"
"""The words of a whole line; {1} are those of its parts."""

PARTS = {
    "straight": "straight to {0}",
    "aside": "straight {0}",
    "arc": "swung about {1} to {0}",
    "bulge": "bowed to {0}, {1}",
    "curve": "curved to {0}, {1}",
    "leaving": "leaving {0}",
    "arriving": "arriving {0}",
}
"""The words of a line's parts."""


def words_of(part: Part, saying: Saying = BY_NAME) -> str:
    """One part in words: "straight to the front curve start"; an end without a name by its move."""
    end = saying.place(part.end)
    match part:
        case Straight() if not part.end.name and part.end.moves:
            return saying.fill(PARTS["aside"], part.end.moves[-1].words(saying))
        case Straight():
            return saying.fill(PARTS["straight"], end)
        case Arc():
            return saying.fill(PARTS["arc"], end, saying.place(part.about))
        case Bulge():
            return saying.fill(PARTS["bulge"], end, part.guide.words(saying))
        case Bend():
            return saying.fill(PARTS["curve"], end, ", ".join(bend_words(part, saying)))


def bend_words(bend: Bend, saying: Saying = BY_NAME) -> tuple[str, ...]:
    """How a curve leaves, what guides it, and how it arrives."""
    leaving = saying.fill(PARTS["leaving"], bend.leaving.words(saying))
    guided = () if bend.guide is None else (bend.guide.words(saying),)
    first = () if bend.guide and bend.guide.verb == "middle" else (leaving,)
    arriving = saying.fill(PARTS["arriving"], bend.arriving.words(saying))
    return (*first, *guided, arriving)


def path_of(parts: tuple[Part, ...]) -> Path:
    """The parts as one path."""
    return Path(tuple(s for part in parts for s in _segments(part)))


def _segments(part: Part) -> tuple[Segment, ...]:
    return part.path.segments if isinstance(part, Arc) else (part.segment,)


def guide_of(part: Part) -> Guide | None:
    """What a hand looks at while drawing the part, if anything."""
    return part.guide if isinstance(part, Bend | Bulge) else None


def straight(*places: Place) -> tuple[Straight, ...]:
    """Straight parts through two or more places."""
    return tuple(Straight(a, b) for a, b in pairwise(places))


def measured_parts(segments: tuple[Segment, ...], start: Place, end: Place) -> tuple[Part, ...]:
    """Parts read off drawn segments: the joints measured from the start, directions in degrees."""
    joints = [_measured(start, s) for s in segments[:-1]]
    ends = pairwise((start, *joints, end))
    return tuple(_part(segment, a, b) for segment, (a, b) in zip(segments, ends, strict=True))


def _measured(start: Place, segment: Segment) -> Place:
    """A joint found from the line's start: so far across, so far up or down."""
    if isinstance(segment.end, Place) and segment.end.name:
        return segment.end
    across, up = segment.end.x - start.x, segment.end.y - start.y
    beside = start.right(across) if across >= 0 else start.left(-across)
    return beside.up(up) if up >= 0 else beside.down(-up)


def _part(segment: Segment, start: Place, end: Place) -> Part:
    if isinstance(segment, Line):
        return Straight(start, end)
    out, back = segment.leaving - segment.start, segment.end - segment.arriving
    leaving, arriving = (
        at_degrees(v.angle) if v.length else along(start, end) for v in (out, back)
    )
    return Bend(start, end, leaving, arriving, segment)
