"""One step of the construction, as it was recorded."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from drafting.geometry import Path
from drafting.trace.length import Length
from drafting.trace.place import BY_NAME, Place
from drafting.trace.saying import Saying
from drafting.trace.stroke import Stroke

StepKind = Literal["point", "length", "line", "decision", "solved", "trued", "outline"]
Sign = Literal[">=", ">", "<=", "<"]
Moved = tuple[tuple[str, float], ...]

BROUGHT = "brought to {0}, tried between {1} and {2}"
STRETCH = "{0} from {1} to {2}"
ALONG = "along {0}"
FROM, AT = "from {0}: {1}", "at {0}"
"""The words of a step, with their gaps."""


def stands(measured: float, sign: Sign, limit: float) -> bool:
    """Whether a length stands to another as a sign says."""
    a, b = float(measured), float(limit)
    return {">=": a >= b, ">": a > b, "<=": a <= b, "<": a < b}[sign]


@dataclass(frozen=True, slots=True)
class Compared:
    """What a decision goes by: a length, how it is held against another, and that other."""

    measured: Length
    sign: Sign
    limit: Length

    @property
    def holds(self) -> bool:
        """Whether it is so."""
        return stands(self.measured, self.sign, self.limit)

    def words(self, saying: Saying = BY_NAME) -> str:
        """Both lengths with the sign between them: "front spare >= 3 cm"."""
        return f"{saying.length(self.measured)} {self.sign} {saying.length(self.limit)}"


@dataclass(frozen=True, slots=True)
class Solved:
    """How a value was found by trial.

    Attributes:
        wanted: What it was brought to, cm.
        between: The least and the greatest value tried.
        reached: What was measured with the value found.
    """

    wanted: Length
    between: tuple[float, float]
    reached: float

    def words(self, saying: Saying = BY_NAME) -> str:
        """What it was brought to, and between which limits it was sought."""
        low, high = (saying.length(Length(v)) for v in self.between)
        return saying.fill(BROUGHT, saying.length(self.wanted), low, high)


@dataclass(frozen=True, slots=True)
class Leg:
    """A line, or a stretch of it, as an outline walks it.

    Attributes:
        line: The line.
        backward: Whether it is walked from its end to its start.
        stretch: Where the walk joins it and where it leaves it; None where all of it is walked.
        first: Distance along the line at which the walk joins it, cm.
        last: Distance at which it leaves it, cm.
    """

    line: Stroke
    backward: bool
    stretch: tuple[Place, Place] | None = None
    first: float = 0.0
    last: float = 0.0

    @property
    def path(self) -> Path:
        """Where the line is walked, in the line's own direction."""
        if self.stretch is None:
            return self.line.path
        return self.line.path.between(*sorted((self.first, self.last)))

    def words(self, saying: Saying = BY_NAME) -> str:
        """The line, and from where to where if not all of it."""
        if self.stretch is None:
            return saying.place(self.line)
        start, end = (saying.place(p) for p in self.stretch)
        return saying.fill(STRETCH, saying.place(self.line), start, end)


@dataclass(frozen=True, slots=True)
class Outline:
    """The lines that bound a piece of the draft, in walking order."""

    legs: tuple[Leg, ...]

    @property
    def length(self) -> float:
        """Once round, in cm."""
        return sum(leg.path.length() for leg in self.legs)

    def words(self, saying: Saying = BY_NAME) -> str:
        """The lines in walking order."""
        return saying.fill(ALONG, ", ".join(leg.words(saying) for leg in self.legs))


Value = Place | Length | Stroke | Outline | bool | float | Moved
How = str | Place | Length | Compared | Solved | Stroke | Outline


@dataclass(slots=True, unsafe_hash=True)
class Step:
    """What was drawn or decided, and why.

    Attributes:
        kind: What sort of step it is.
        chapter: The heading that it stands under.
        name: The trade's word for what it gives.
        value: The place, length, stroke or outline; the answer of a decision; the value of a
            solution; for a trued step the list of (what moved, how far in cm).
        why: One sentence.
        how: How it was found. For decisions what was compared, else the question; for trueings
            what was brought to agree.
        source: Where the rule comes from.
        question: What a decision asks.
        paper: The sheet of paper it is drawn on: 0 for the draft, more for pieces drawn apart.
    """

    kind: Final[StepKind]
    chapter: Final[str]
    name: Final[str]
    value: Final[Value]
    why: Final[str]
    how: Final[How] = ""
    source: Final[str] = ""
    question: Final[str] = ""
    paper: Final[int] = 0

    @property
    def formula(self) -> str:
        """How it was found, in the trade's words."""
        return self.words(BY_NAME)

    def words(self, saying: Saying) -> str:
        """How it was found, with places and lengths said in a given way."""
        match self.how:
            case Place():
                return _place_words(self.how, saying)
            case Length():
                return saying.length(self.how)
            case str():
                return saying.word(self.how or self.question)
            case _:
                return self.how.words(saying)


def _place_words(place: Place, saying: Saying) -> str:
    moves = ", ".join(m.words(saying) for m in place.moves)
    if place.base is None:
        return moves
    base = saying.place(place.base)
    return saying.fill(FROM, base, moves) if moves else saying.fill(AT, base)
