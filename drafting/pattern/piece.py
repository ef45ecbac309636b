"""A pattern piece, net: its stitching line as named edges, and everything marked on it."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from enum import StrEnum
from typing import Final

from drafting.geometry import (
    Memory,
    Path,
    Point,
    Transform,
    Vector,
    loop,
    meet,
    nearest,
    remembered,
)


class Role(StrEnum):
    """What becomes of an edge.

    SEAM is sewn to another edge, HEM turned up, FOLD cut on the fold, OPENING left open; FINISHED
    is matched to no edge: neatened, or caught in a seam or under a row of stitching.
    """

    SEAM = "seam"
    HEM = "hem"
    FOLD = "fold"
    OPENING = "opening"
    FINISHED = "finished"


RAW = "raw"
"""Kind of an edge that stays as it is cut: no allowance, only neatened."""


@dataclass(slots=True, init=False, unsafe_hash=True)
class Edge:
    """A named stretch of the stitching line.

    Attributes:
        name: Unique within the piece, the trade's word in snake_case.
        path: The line in cm; it crosses dart mouths and open pleats in a straight stroke.
        role: What becomes of the edge.
        kind: Which allowance it takes (a field name of `Allowances`): side, inseam, crotch, ...;
            RAW for none.
    """

    name: Final[str]
    path: Final[Path]
    role: Final[Role]
    kind: Final[str]

    def __init__(self, name: str, path: Path, role: Role = Role.SEAM, kind: str = "seam") -> None:
        self.name = name
        self.path = path
        self.role = role
        self.kind = kind

    def transformed(self, by: Transform) -> Edge:
        """The edge's image, drawn in the same order."""
        return Edge(self.name, self.path.transformed(by), self.role, self.kind)

    def reversed(self) -> Edge:
        """The edge drawn the other way."""
        return Edge(self.name, self.path.reversed(), self.role, self.kind)


@dataclass(frozen=True, slots=True)
class Dart:
    """A wedge that is sewn away.

    Attributes:
        edge: The edge that it opens from.
        first: Leg end on the edge, the one that comes first along it.
        second: The other leg end.
        point: Where the stitching of the dart ends.
        toward_first: Whether it is pressed toward the first leg (the cap is folded that way).
        drill: Where the drill hole goes, short of the point so that it does not show.
        bends: Where the first and the second leg bend, in a dart that runs through a waist below
            its edge; None where they are straight.
    """

    edge: str
    first: Point
    second: Point
    point: Point
    drill: Point
    toward_first: bool = True
    bends: tuple[Point, Point] | None = None

    @property
    def intake(self) -> float:
        """Width at the seam in cm."""
        return self.first.distance(self.second)

    @property
    def sides(self) -> tuple[tuple[Point, ...], tuple[Point, ...]]:
        """The corners of each leg, from the edge to the point."""
        one, two = ((bend,) for bend in self.bends) if self.bends else ((), ())
        return (self.first, *one, self.point), (self.second, *two, self.point)

    @property
    def around(self) -> tuple[Point, ...]:
        """Its corners, from the first leg's end down to the point and up to the second's."""
        first, second = self.sides
        return (*first, *second[-2::-1])

    @property
    def outward(self) -> tuple[Vector, Vector]:
        """Unit directions of the two legs, from inside the piece to the edge."""
        first, second = self.sides
        return (first[0] - first[1]).unit, (second[0] - second[1]).unit

    @property
    def inner(self) -> Point:
        """The inner end of the line that it is folded on."""
        return self.point

    @property
    def under_first(self) -> bool:
        """Whether its intake comes to lie under the stretch of the edge before it."""
        return self.toward_first

    @property
    def legs(self) -> tuple[float, float]:
        """Lengths of the first and the second leg in cm."""
        one, two = (sum(map(Point.distance, side, side[1:])) for side in self.sides)
        return one, two

    @property
    def length(self) -> float:
        """From the middle of the mouth to the point, in cm."""
        return self.first.toward(self.second, 0.5).distance(self.point)

    def transformed(self, by: Transform, *, swap: bool = False) -> Dart:
        """The dart's image; with `swap` the edge runs the other way and the legs trade names."""
        first, second = (self.second, self.first) if swap else (self.first, self.second)
        return replace(
            self,
            first=by.point(first),
            second=by.point(second),
            point=by.point(self.point),
            drill=by.point(self.drill),
            toward_first=self.toward_first != swap,
            bends=self._bent(by, swap=swap),
        )

    def _bent(self, by: Transform, *, swap: bool) -> tuple[Point, Point] | None:
        if self.bends is None:
            return None
        one, two = self.bends[::-1] if swap else self.bends
        return by.point(one), by.point(two)


@dataclass(frozen=True, slots=True)
class Pleat:
    """Cloth that is folded away at an edge and left to open below.

    Two lines run down from the edge. One of them becomes the fold that shows; it is laid on the
    other, and the cloth between them lies double underneath.

    Attributes:
        edge: The edge that it is laid into.
        one: The line that starts first along the edge, from the edge down, straight at its top.
        two: The other line, from the edge down, straight at its top.
        toward_first: Whether line two is the fold, laid on line one; else line one is the fold.
    """

    edge: str
    one: Path
    two: Path
    toward_first: bool = True

    @property
    def first(self) -> Point:
        """Where line one starts."""
        return self.one.start

    @property
    def second(self) -> Point:
        """Where line two starts."""
        return self.two.start

    @property
    def intake(self) -> float:
        """Width that it takes out of the seam, in cm: twice its depth."""
        return self.first.distance(self.second)

    @property
    def outward(self) -> tuple[Vector, Vector]:
        """Unit directions of the two lines at the edge, from inside the piece."""
        return -self.one.start_tangent, -self.two.start_tangent

    @property
    def inner(self) -> Point:
        """Where the line that it is folded on underneath ends being straight."""
        return self.one.segments[0].end.toward(self.two.segments[0].end, 0.5)

    @property
    def under_first(self) -> bool:
        """Whether its intake comes to lie under the stretch of the edge before it.

        It lies under the cloth whose edge is the fold.
        """
        return not self.toward_first

    @property
    def lines(self) -> tuple[Path, Path]:
        """The fold that shows and the line that it is laid on, each from the edge down."""
        return (self.two, self.one) if self.toward_first else (self.one, self.two)

    @property
    def point(self) -> Point | None:
        """Where the tops of the two lines, carried on, meet; None where they run side by side."""
        one, two = self.outward
        return meet(self.first, one, self.second, two)

    def transformed(self, by: Transform, *, swap: bool = False) -> Pleat:
        """The pleat's image; with `swap` the edge runs the other way and the lines trade names."""
        one, two = (self.two, self.one) if swap else (self.one, self.two)
        return replace(
            self,
            one=one.transformed(by),
            two=two.transformed(by),
            toward_first=self.toward_first != swap,
        )


Taken = Dart | Pleat
"""What is taken out of an edge before it is sewn to another."""


@dataclass(slots=True, init=False, unsafe_hash=True)
class Notch:
    """A balance mark across an edge.

    Attributes:
        edge: Name of the edge.
        at: Distance in cm along the drawn edge from its start (over dart mouths).
        count: 1 single, 2 double, 3 triple.
        match: Name shared with the notch on the other side of the seam.
    """

    edge: Final[str]
    at: Final[float]
    count: Final[int]
    match: Final[str]

    def __init__(self, edge: str, at: float, count: int, match: str) -> None:
        self.edge = edge
        self.at = at
        self.count = count
        self.match = match


@dataclass(slots=True, init=False, unsafe_hash=True)
class Mark:
    """A line or hole inside the piece: drill, button, buttonhole, fold, placement, stitching."""

    kind: Final[str]
    path: Final[Path]

    def __init__(self, kind: str, path: Path) -> None:
        self.kind = kind
        self.path = path


@dataclass(frozen=True, slots=True)
class Label:
    """A text inside the piece.

    Attributes:
        text: What is written.
        at: Where its base line starts.
        height: Height of capitals in cm.
        angle: Direction of its base line in degrees, counter-clockwise from +X.
    """

    text: str
    at: Point
    height: float
    angle: float = 0.0


@dataclass(frozen=True, slots=True)
class Cut:
    """How many to cut and of what: cloth is main, lining, pocketing or fusible.

    `mirrored` means half of the quantity with the pattern turned over (a left and a right).
    """

    cloth: str
    quantity: int
    mirrored: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """One piece of the pattern, net, right side up, as the wearer's right where it is a pair.

    Attributes:
        name: Stable English snake_case name, unique in the pattern.
        title: What is written on it.
        cut: Cutting instruction for each cloth.
        edges: The stitching line in walking order, the cloth on the left (counter-clockwise),
            each edge starting where the one before it ended; closed.
        darts: In the order in which they stand along their edges.
        pleats: In the order in which they stand along their edges.
        notches: Balance marks.
        grain: Lengthwise grain, from bottom to top (vertical in the piece's frame).
        levels: Named level lines (waist, hip, crotch, knee, hem), each from left to right,
            clipped to the stitching line.
        lengthen: Lines where the piece may be lengthened or shortened, from left to right.
        marks: Inside lines and holes.
        half: Whether it is drawn on the fold; geometry and seams speak of the half.
        number: Its number among the pieces, from 1; given when the pattern is put together.
    """

    name: str
    title: str
    cut: tuple[Cut, ...]
    edges: tuple[Edge, ...]
    darts: tuple[Dart, ...] = ()
    pleats: tuple[Pleat, ...] = ()
    notches: tuple[Notch, ...] = ()
    grain: tuple[Point, Point]
    levels: tuple[tuple[str, Point, Point], ...] = ()
    lengthen: tuple[tuple[Point, Point], ...] = ()
    marks: tuple[Mark, ...] = ()
    half: bool = False
    number: int = field(default=0)
    memory: Memory = field(default_factory=Memory, init=False, repr=False, compare=False)

    @property
    def outline(self) -> Path:
        """The whole stitching line as one closed path."""
        return _outline(self)

    @property
    def is_pair(self) -> bool:
        """Whether a left and a right are cut from it."""
        return any(cut.mirrored for cut in self.cut)

    def edge(self, name: str) -> Edge:
        """The edge of that name. Raises KeyError."""
        for edge in self.edges:
            if edge.name == name:
                return edge
        raise KeyError(f"{self.name} has no edge {name!r}")

    def darts_on(self, edge: str) -> tuple[Dart, ...]:
        """The darts that open from an edge, in walking order."""
        return tuple(d for d in self.darts if d.edge == edge)

    @property
    def taken(self) -> tuple[Taken, ...]:
        """All darts and pleats."""
        return (*self.darts, *self.pleats)

    def taken_on(self, edge: str) -> tuple[Taken, ...]:
        """The darts and pleats that are taken out of an edge, in walking order."""
        if not (self.darts or self.pleats):
            return ()
        darts = self.darts_on(edge)
        pleats = tuple(p for p in self.pleats if p.edge == edge)
        if not (darts and pleats):
            return darts or pleats
        path = self.edge(edge).path
        return tuple(sorted((*darts, *pleats), key=lambda t: nearest(path, t.first)[:2]))

    def sewn_length(self, edge: str) -> float:
        """Length in cm of what is sewn of an edge: its line less its darts and pleats."""
        return self.edge(edge).path.length() - sum(t.intake for t in self.taken_on(edge))

    def level(self, name: str) -> tuple[Point, Point] | None:
        """Left and right end of a level line; None where the piece does not reach it."""
        for level, left, right in self.levels:
            if level == name:
                return left, right
        return None


@remembered
def _outline(piece: Piece) -> Path:
    return loop(edge.path for edge in piece.edges)
