"""Seams: the copies that lie in each side, their lengths, and the walk along both from the start.

The side of a seam is laid out in the order of its parts. Parts with copy `both` stand for the
right half of a symmetric side; the left half follows as its mirror image: front and back, both,
are laid as right front, right back, left back, left front.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby

import shapely

from drafting.checks.along import sewn_at
from drafting.checks.closing import closed_edge, closed_point
from drafting.checks.outline import at as shapely_point
from drafting.checks.outline import flat
from drafting.geometry import remembered
from drafting.pattern import Ease, Pattern, Piece, Seam, SeamPart

SEAM_TOLERANCE = 0.05
"""Plain seams match to 0.05 cm after trueing: the house's own bound; no hand sews finer."""

WALK_TOLERANCE = 1e-4
"""Flattening error in cm of the walk; over a whole leg it shortens no line by 0.001 cm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SeamMeasured:
    """A seam as drawn, in cm.

    Attributes:
        seam: The seam.
        lengths: Sewn length of one copy of each part, side one and side two.
        difference: Side one less side two less the wanted ease, all copies counted.
        tolerance: By how much the sides may miss each other.
        matches: Whether they do: within the tolerance, or within the bounds of the ease.
    """

    seam: Seam
    lengths: tuple[tuple[float, ...], tuple[float, ...]]
    difference: float
    tolerance: float
    matches: bool


@dataclass(slots=True, init=False)
class Laid:
    """One copy of an edge in a side of a seam, and which way it is walked."""

    part: SeamPart
    against: bool

    def __init__(self, part: SeamPart, *, against: bool) -> None:
        self.part = part
        self.against = against


@dataclass(slots=True, init=False)
class Balance:
    """A balance mark on a side: name, distance in cm from the seam's start, count of notches."""

    match: str
    at: float
    count: int

    def __init__(self, match: str, at: float, count: int) -> None:
        self.match = match
        self.at = at
        self.count = count


@dataclass(frozen=True, slots=True)
class Side:
    """A side of a seam as it is walked: its length, the joints of its parts, its marks; all cm."""

    length: float
    joints: tuple[float, ...]
    marks: tuple[Balance, ...]


@remembered
def seams(pattern: Pattern) -> tuple[SeamMeasured, ...]:
    """Measure every seam, in sewing order. Raises KeyError on a piece or edge that is not there."""
    return tuple(_measured(seam, pattern) for seam in pattern.seams)


def has_range(ease: Ease) -> bool:
    """Whether the ease may lie between two bounds, rather than be what is wanted."""
    return ease.high > ease.low


def allowed_difference(ease: Ease) -> tuple[float, float]:
    """Least and greatest cm by which side one may be longer than side two, tolerance apart."""
    return (ease.low, ease.high) if has_range(ease) else (ease.wanted, ease.wanted)


def laid(parts: tuple[SeamPart, ...]) -> tuple[Laid, ...]:
    """Every copy that lies in a side of a seam, in the order of the walk."""
    found: list[Laid] = []
    for both, run in groupby(parts, key=lambda p: p.copy == "both"):
        half = [
            Laid(p, against=p.reversed)
            for p in run
            for _ in range(p.count // 2 if both else p.count)
        ]
        found += half
        if both:
            found += [Laid(copy.part, against=not copy.against) for copy in reversed(half)]
    return tuple(found)


def side(pattern: Pattern, parts: tuple[SeamPart, ...]) -> Side:
    """Walk a side of a seam by the numbers: drawn lengths less dart mouths."""
    start, joints, marks = 0.0, [0.0], []
    for copy in laid(parts):
        piece = pattern.piece(copy.part.piece)
        length = piece.sewn_length(copy.part.edge)
        for mark in _marks(piece, copy.part.edge):
            way = length - mark.at if copy.against else mark.at
            marks.append(Balance(mark.match, start + way, mark.count))
        start += length
        joints.append(start)
    return Side(start, tuple(joints), tuple(marks))


def unfolded(pattern: Pattern, parts: tuple[SeamPart, ...]) -> Side:
    """Walk a side of a seam on paper: darts folded away, the line that is left rolled out straight.

    Finds on the closed lines themselves what `side` finds by subtraction.
    """
    start, joints, marks = 0.0, [0.0], []
    for copy in laid(parts):
        piece, edge = pattern.piece(copy.part.piece), copy.part.edge
        line = shapely.LineString(flat(closed_edge(piece, edge), WALK_TOLERANCE))
        for mark in (n for n in piece.notches if n.edge == edge):
            way = float(line.project(shapely_point(closed_point(piece, edge, mark.at))))
            way = line.length - way if copy.against else way
            marks.append(Balance(mark.match, start + way, mark.count))
        start += line.length
        joints.append(start)
    return Side(start, tuple(joints), tuple(marks))


def walk(pattern: Pattern, seam: Seam) -> float:
    """Largest gap in cm between what should meet when the two sides are laid along each other.

    Compared are the notches of the same name and the seam's end. Ease that is wanted is no gap:
    at a notch, side one may be ahead by as much as has been eased in until there.
    Raises KeyError on a piece or edge that is not there.
    """
    one, two = unfolded(pattern, seam.one), unfolded(pattern, seam.two)
    low, high = allowed_difference(seam.ease)
    gaps = [beyond(a.at - b.at, *drift(seam.ease)) for a, b in pairs(one, two)]
    return max([*gaps, beyond(one.length - two.length, low, high)])


def drift(ease: Ease) -> tuple[float, float]:
    """By how much cm side one may be ahead of side two somewhere along the seam."""
    low, high = allowed_difference(ease)
    return min(0.0, low), max(0.0, high)


def beyond(value: float, low: float, high: float) -> float:
    """How far a value lies outside its bounds; zero inside."""
    return max(low - value, value - high, 0.0)


def pairs(one: Side, two: Side) -> tuple[tuple[Balance, Balance], ...]:
    """Marks of the same name on both sides, in the order of the walk; what is over is left out."""
    names = sorted({m.match for m in one.marks})
    return tuple(
        pair for name in names for pair in zip(_named(one, name), _named(two, name), strict=False)
    )


def _named(walked: Side, name: str) -> list[Balance]:
    return sorted((m for m in walked.marks if m.match == name), key=lambda m: m.at)


def _marks(piece: Piece, edge: str) -> list[Balance]:
    return [
        Balance(n.match, sewn_at(piece, edge, n.at), n.count)
        for n in piece.notches
        if n.edge == edge
    ]


def _measured(seam: Seam, pattern: Pattern) -> SeamMeasured:
    one, two = (
        tuple(pattern.piece(p.piece).sewn_length(p.edge) for p in parts)
        for parts in (seam.one, seam.two)
    )
    longer = _total(seam.one, one) - _total(seam.two, two)
    return SeamMeasured(
        seam=seam,
        lengths=(one, two),
        difference=longer - seam.ease.wanted,
        tolerance=SEAM_TOLERANCE,
        matches=beyond(longer, *allowed_difference(seam.ease)) <= SEAM_TOLERANCE,
    )


def _total(parts: tuple[SeamPart, ...], lengths: tuple[float, ...]) -> float:
    return sum(p.count * length for p, length in zip(parts, lengths, strict=True))
