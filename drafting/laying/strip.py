"""Shapes to be laid on a strip of cloth, and where they lie.

The strip runs along X from its squared end; Y goes across from 0, the selvedge or the fold, to its
breadth. Centimetres.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import shapely
from shapely import affinity

from drafting.geometry import Transform

Turn = Literal[0, 180]


@dataclass(frozen=True, slots=True)
class Anchor:
    """What must lie on a repeat: a coordinate along the grain, one across it, or both.

    For a piece, y and x of its frame; for a way, x and y of the cloth.
    """

    along: float | None = None
    across: float | None = None


FREE = Anchor()
"""Bound to nothing."""


@dataclass(frozen=True, slots=True)
class Way:
    """One way to put a part down; the box round its outline starts at the origin.

    Attributes:
        turn: 0 with the top toward the cloth's start, 180 with the top toward its end.
        mirrored: Whether the pattern lies face down.
        move: From the piece's frame to this one.
        outline: The cutting line's area.
        clearance: The same with half the gap round it; what must not overlap.
        anchor: What must lie on the repeat.
    """

    turn: Turn
    mirrored: bool
    move: Transform
    outline: shapely.Polygon
    clearance: shapely.Polygon
    anchor: Anchor = FREE

    @property
    def length(self) -> float:
        """Extent along the cloth in cm."""
        return float(self.outline.bounds[2])

    @property
    def breadth(self) -> float:
        """Extent across the cloth in cm."""
        return float(self.outline.bounds[3])


@dataclass(frozen=True, slots=True)
class Part:
    """Something to lay down a number of times.

    Attributes:
        code: Unique in the strip.
        order: Number of the order, from 0.
        piece: Name of the piece.
        copies: Numbers of the copies cut here, one tuple for each time it is laid; two where it
            lies on double cloth.
        ways: In which ways it may lie; the first one is preferred.
        on_fold: Whether it lies against the fold, at y = 0.
    """

    code: str
    order: int
    piece: str
    copies: tuple[tuple[int, ...], ...]
    ways: tuple[Way, ...]
    on_fold: bool = False

    @property
    def area(self) -> float:
        """Area in cm² of what is cut, all copies and layers together."""
        layers = sum(len(cut) for cut in self.copies) * (2 if self.on_fold else 1)
        return float(self.ways[0].outline.area) * layers


@dataclass(frozen=True, slots=True)
class Grid:
    """Where anchors may lie; None leaves a direction free.

    Attributes:
        along: Every multiple of it is an x.
        across: Every multiple of it, from `across_from`, is a y.
        across_from: Where the counting across begins.
    """

    along: float | None = None
    across: float | None = None
    across_from: float = 0.0


FREELY = Grid()
"""No repeat."""


@dataclass(frozen=True, slots=True)
class Strip:
    """Parts and the breadth that they must keep to.

    Attributes:
        parts: What to lay.
        breadth: Greatest y.
        clear: How far clearances stand off their outlines.
        grid: Where anchors may lie.
        floor: Least y of parts that do not lie on the fold.
    """

    parts: tuple[Part, ...]
    breadth: float
    clear: float
    grid: Grid = FREELY
    floor: float = 0.0

    @property
    def is_bound(self) -> bool:
        """Whether places are bound to a repeat or to the fold."""
        grid = self.grid
        return bool(grid.along or grid.across) or any(part.on_fold for part in self.parts)

    @property
    def count(self) -> int:
        """How many times something is laid."""
        return sum(len(part.copies) for part in self.parts)


@dataclass(frozen=True, slots=True)
class Spot:
    """One part laid: which of its times, in which way, and the outline box's lower left corner."""

    part: Part
    time: int
    way: Way
    x: float
    y: float

    @property
    def end(self) -> float:
        """How far along the cloth it reaches, in cm."""
        return self.x + self.way.length

    @property
    def area(self) -> shapely.Polygon:
        """What its outline covers."""
        return affinity.translate(self.way.outline, self.x, self.y)


Spots = tuple[Spot, ...]


def reach(spots: Spots) -> float:
    """Length of cloth in cm that these take."""
    return max((spot.end for spot in spots), default=0.0)
