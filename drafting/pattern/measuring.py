"""How a check lays its tape on the drawn lines. Data only; `drafting.checks` does the measuring."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Girth:
    """Sum over the pieces of the width at a level line, times the copies that go round the body.

    `under` names pieces that fill a cut-away corner of the first piece and lie in its frame; only
    what shows of them counts. `less` is what of it does not go round: laps, facings that are folded
    in, pleats that are laid (cm, all copies together).
    """

    level: str
    pieces: tuple[str, ...]
    copies: int = 2
    under: tuple[str, ...] = ()
    less: float = 0.0


@dataclass(frozen=True, slots=True)
class EdgeLength:
    """Sewn length of edges of one piece, times a number of copies (less a fixed length)."""

    piece: str
    edges: tuple[str, ...]
    copies: int = 1


@dataclass(frozen=True, slots=True)
class CombinedLength:
    """Sum of several edge lengths, each with a factor (so that differences can be asked for).

    Attributes:
        parts: Factor and edge.
        around: A girth that they are added to.
    """

    parts: tuple[tuple[float, EdgeLength], ...]
    around: Girth | None = None


@dataclass(frozen=True, slots=True)
class AngleBetween:
    """Angles inside the pieces at corners that meet when sewn, added up, in degrees.

    Each corner is (piece, edge that ends there, edge that starts there).
    """

    corners: tuple[tuple[str, str, str], ...]


@dataclass(frozen=True, slots=True)
class CrossShare:
    """Distance in cm between the middle of a level line and the piece's crease (grain) line."""

    piece: str
    level: str


@dataclass(frozen=True, slots=True)
class LevelDepth:
    """Vertical distance in cm between the levels of two lines of a piece."""

    piece: str
    upper: str
    lower: str


@dataclass(frozen=True, slots=True)
class CornerDepth:
    """Vertical distance in cm from the corner at an edge's end (or start) down to a level line."""

    piece: str
    edge: str
    level: str
    at_start: bool = False


@dataclass(frozen=True, slots=True)
class Number:
    """A number that the chapter itself measured on its drawing, and says how."""

    value: float
    how: str


Measuring = (
    Girth
    | EdgeLength
    | CombinedLength
    | AngleBetween
    | CrossShare
    | LevelDepth
    | CornerDepth
    | Number
)
