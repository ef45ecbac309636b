"""One step of the construction, as it was recorded."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from drafting.trace.length import Length, said
from drafting.trace.place import BY_NAME, Place
from drafting.trace.saying import Saying
from drafting.trace.stroke import Stroke

StepKind = Literal["point", "length", "line", "decision", "solved", "trued", "outline"]
Sign = Literal[">=", ">", "<=", "<"]
Moved = tuple[tuple[str, float], ...]


@dataclass(frozen=True, slots=True)
class Compared:
    """What a decision goes by: a length, how it is held against another, and that other."""

    measured: Length
    sign: Sign
    limit: Length

    @property
    def holds(self) -> bool:
        """Whether it is so."""
        a, b = float(self.measured), float(self.limit)
        return {">=": a >= b, ">": a > b, "<=": a <= b, "<": a < b}[self.sign]

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
        return f"brought to {saying.length(self.wanted)}, tried between {low} and {high}"


@dataclass(frozen=True, slots=True)
class Outline:
    """The lines that bound a piece of the draft, each with whether it is walked backward."""

    lines: tuple[tuple[Stroke, bool], ...]

    @property
    def length(self) -> float:
        """Once round, in cm."""
        return sum(stroke.path.length() for stroke, _ in self.lines)

    def words(self, saying: Saying = BY_NAME) -> str:
        """The lines in walking order."""
        return "along " + ", ".join(saying.place(stroke) for stroke, _ in self.lines)


Value = Place | Length | Stroke | Outline | bool | float | Moved
How = str | Place | Length | Compared | Solved | Stroke | Outline


@dataclass(frozen=True, slots=True)
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
    """

    kind: StepKind
    chapter: str
    name: str
    value: Value
    why: str
    how: How = ""
    source: str = ""
    question: str = ""

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
                return self.how or self.question
            case _:
                return self.how.words(saying)


def _place_words(place: Place, saying: Saying) -> str:
    moves = ", ".join(m.words(saying) for m in place.moves)
    if place.base is None:
        return moves
    base = saying.place(place.base)
    return f"from {base}: {moves}" if moves else f"at {base}"


def moved_words(moves: Moved) -> str:
    """What a trueing step moved and how far: "back fork 0.12 cm, side at the waist 0.3 cm"."""
    return ", ".join(f"{what} {said(far)}" for what, far in moves) or "nothing moved"
