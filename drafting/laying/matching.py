"""Which point of each piece must lie on the repeat, so that stripes and checks meet in the seams.

Points are on the stitching line, at the notches that two edges share. All anchored points lie on
the middle of a bar and of a stripe, so a repeat that is even to both sides meets whichever way a
piece is turned. Source: common practice, no source (matched at the centre front and, at the side
seams, from the hip down).
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from drafting.errors import SpecError
from drafting.geometry import Point
from drafting.laying.cloth import Repeat
from drafting.laying.parts import fold_edge
from drafting.laying.strip import Anchor
from drafting.pattern import FinishedPattern, FinishedPiece, Seam

TELLING = 0.05
"""A seam off the repeat by more than this, in cm, is told."""

Set = dict[str, float]
"""For each piece the coordinate, in its own frame, that must lie on the repeat."""


@dataclass(frozen=True, slots=True)
class Meeting:
    """Two points that are sewn together: one on a piece, one on another or on its own copy."""

    seam: str
    one: str
    at_one: Point
    two: str
    at_two: Point


@dataclass(frozen=True, slots=True)
class Mismatch:
    """How far a seam is off the repeat, in cm: along or across the grain."""

    seam: str
    along: float = 0.0
    across: float = 0.0


def is_wanted(repeat: Repeat) -> bool:
    """Whether the cloth has bars or stripes."""
    return bool(repeat.lengthwise or repeat.crosswise)


def anchors(
    pattern: FinishedPattern, repeat: Repeat
) -> tuple[dict[str, Anchor], tuple[Mismatch, ...]]:
    """What of each matched piece must lie on the repeat, and what cannot be met.

    The first seam that joins two pieces sets the second to the first; a seam of two pieces that
    are both set is measured. Across the grain the centre of a piece that is sewn to its own copy,
    and the fold of a half piece, lie on the middle of a stripe.

    Args:
        pattern: The finished pattern.
        repeat: The repeat and the edges that must match.
    """
    meetings = tuple(m for s in pattern.pattern.seams for m in _meetings(pattern, s, repeat.match))
    own = [m for m in meetings if m.one == m.two]
    along: Set = {}
    across: Set = {m.one: m.at_one.x for m in own}
    across |= {p.piece.name: fold_edge(p).path.start.x for p in pattern.pieces if p.piece.half}
    off: list[Mismatch] = []
    if repeat.lengthwise:
        missed = _set(along, meetings, 1, repeat.lengthwise)
        off += (Mismatch(meeting.seam, along=gap) for meeting, gap in missed)
        for meeting in own:
            along.setdefault(meeting.one, meeting.at_one.y)
    if repeat.crosswise:
        missed = _set(across, meetings, 0, repeat.crosswise)
        off += (Mismatch(meeting.seam, across=gap) for meeting, gap in missed)
    else:
        across = {}
    names = along.keys() | across.keys()
    return {n: Anchor(along.get(n), across.get(n)) for n in names}, tuple(off)


def _set(
    found: Set, meetings: Iterable[Meeting], axis: int, step: float
) -> list[tuple[Meeting, float]]:
    """Set piece after piece to the ones before; returns seams that miss, with by how much."""
    off = []
    for meeting in meetings:
        if meeting.one == meeting.two:
            continue
        one, two = _coordinate(meeting.at_one, axis), _coordinate(meeting.at_two, axis)
        if meeting.two in found:
            found.setdefault(meeting.one, found[meeting.two] + one - two)
        base = found.setdefault(meeting.one, one)
        gap = found.setdefault(meeting.two, base + two - one) - (base + two - one)
        gap -= step * round(gap / step)
        if abs(gap) > TELLING:
            off.append((meeting, gap))
    return off


def _coordinate(p: Point, axis: int) -> float:
    return p.y if axis else p.x


def check_edges(patterns: tuple[FinishedPattern, ...], repeat: Repeat, where: str) -> None:
    """Refuse names that no order has.

    Raises:
        SpecError: An edge to match is none of the orders' sewn edges.
    """
    known = {
        part.edge
        for pattern in patterns
        for seam in pattern.pattern.seams
        for part in (*seam.one, *seam.two)
    }
    unknown = [name for name in repeat.match if name not in known]
    if unknown and repeat.match != Repeat().match:
        raise SpecError(
            f"No piece has a sewn edge {unknown[0]!r}; name the edges whose seams must match.",
            where=f"{where}.repeat.match",
            code="unknown_edge",
            received=unknown[0],
            allowed=sorted(known),
        )


def _meetings(pattern: FinishedPattern, seam: Seam, match: tuple[str, ...]) -> tuple[Meeting, ...]:
    """Where the edges of a seam's two sides meet, at the first notch that they share."""
    found = []
    for a in seam.one:
        for b in seam.two:
            if a.edge in match or b.edge in match:
                one, two = pattern.piece(a.piece), pattern.piece(b.piece)
                for at_one, at_two in _shared(one, a.edge, two, b.edge):
                    found.append(Meeting(seam.name, a.piece, at_one, b.piece, at_two))
    return tuple(found)


def _shared(
    one: FinishedPiece, edge_one: str, two: FinishedPiece, edge_two: str
) -> tuple[tuple[Point, Point], ...]:
    """The first notch of two edges, on both; of an edge sewn to its own copy, its upper end."""
    if one is two and edge_one == edge_two:
        path = one.piece.edge(edge_one).path
        upper = max(path.start, path.end, key=lambda p: p.y)
        return ((upper, upper),)
    theirs = {n.notch.match: n.point for n in two.notches if n.notch.edge == edge_two}
    for notch in one.notches:
        if notch.notch.edge == edge_one and notch.notch.match in theirs:
            return ((notch.point, theirs[notch.notch.match]),)
    return ()
