"""Where a piece's stitching line runs along a draft's lines, and how the piece lies on them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import product
from typing import TYPE_CHECKING

from drafting.drawing.words import plain
from drafting.geometry import (
    IDENTITY,
    Cubic,
    Line,
    Path,
    Point,
    Segment,
    Transform,
    Vector,
    mirror,
    nearest,
    shift,
    turn,
)

if TYPE_CHECKING:
    from drafting.pattern import Piece
    from drafting.trace import Stroke

ON = 1e-3
"""A stretch within 0.001 cm of a line lies on it: ten times finer than a pencil's width."""
SHARES = (0.0, 0.25, 0.5, 0.75, 1.0)
"""Where a stretch is held against a line."""
SHORT = 1e-6
"""Stretches shorter than this (cm) are none."""

THERE = (IDENTITY, mirror(Point(0, 0), Vector(0, 1)))
"""A piece lies where it was drawn, or was turned over about the plumb line through the origin."""

Box = tuple[float, float, float, float]


@dataclass(frozen=True, slots=True)
class Stretch:
    """A segment of a piece's outline.

    Attributes:
        edge: Name of the piece's edge.
        segment: Where it runs, in the draft's frame.
        line: The drawn line on which it lies; None where it lies on none.
        first: Distance along that line at which it starts, cm.
        last: Distance at which it ends, cm.
    """

    edge: str
    segment: Segment
    line: Stroke | None = None
    first: float = 0.0
    last: float = 0.0

    @property
    def backward(self) -> bool:
        """Whether it runs against the line."""
        return self.last < self.first


@dataclass(frozen=True, slots=True)
class Laid:
    """A piece as it lies on the draft.

    Attributes:
        stretches: Its outline, each segment with the line it lies on.
        aside: Whether it is drawn beside the draft, for nothing of it was drawn there.
        over: Whether the piece is the other side of what was drawn.
    """

    stretches: tuple[Stretch, ...]
    aside: bool
    over: bool


@dataclass(frozen=True, slots=True)
class Lines:
    """The lines of a draft, with the box of each segment, newest first."""

    strokes: tuple[tuple[Stroke, tuple[tuple[Box, Path, float], ...]], ...]

    @classmethod
    def of(cls, strokes: Iterable[Stroke]) -> Lines:
        """Measure the lines once."""
        return cls(tuple((s, tuple(_measured(s))) for s in reversed(tuple(strokes))))

    def lay(self, piece: Piece) -> Laid:
        """Lay a piece on the draft as it was traced from it, or aside where it was not."""
        found = [(by, tuple(self._held(piece, by))) for by in self._moves(piece)]
        by, stretches = max(found, key=lambda f: _drawn(f[1]))
        if _is_traced(stretches, there=by in THERE):
            return Laid(stretches, aside=False, over=by.turns_over)
        own = [Stretch(e.name, s) for e in piece.edges for s in e.path.segments]
        return Laid(tuple(own), aside=True, over=False)

    def _held(self, piece: Piece, by: Transform) -> Iterator[Stretch]:
        for edge in piece.edges:
            for segment in edge.path.segments:
                if segment.length() > SHORT:
                    yield self.held(edge.name, segment.transformed(by), plain(piece.name))

    def held(self, edge: str, segment: Segment, of: str) -> Stretch:
        """A segment with the newest line on which it lies; best one of its own panel."""
        points = [segment.at(t) for t in SHARES]
        for stroke, parts in sorted(self.strokes, key=lambda s: of not in s[0].name):
            ends = _on(parts, points)
            if ends:
                return Stretch(edge, segment, stroke, *ends)
        return Stretch(edge, segment)

    def _moves(self, piece: Piece) -> Iterator[Transform]:
        """How the piece may have been moved: not at all, turned over, or from a like curve."""
        yield from THERE
        longest = max((s for e in piece.edges for s in e.path.segments), key=_bent)
        if not isinstance(longest, Cubic):
            return
        for stroke, _ in self.strokes:
            for drawn, back in product(stroke.path.segments, (False, True)):
                if isinstance(drawn, Cubic) and abs(_chord(drawn) - _chord(longest)) < ON:
                    yield from _onto(longest, drawn.reversed() if back else drawn)


def _measured(stroke: Stroke) -> Iterator[tuple[Box, Path, float]]:
    start = 0.0
    for segment in stroke.path.segments:
        yield segment.bounds(), Path((segment,)), start
        start += segment.length()


def _on(
    parts: tuple[tuple[Box, Path, float], ...], points: list[Point]
) -> tuple[float, float] | None:
    """Where points that lie on one segment of a line start and end along the line."""
    for box, path, before in parts:
        if all(_inside(box, p) for p in points) and all(_touches(path, p) for p in points):
            ends = (nearest(path, p) for p in (points[0], points[-1]))
            first, last = (before + path.distance_of(i, t) for i, t, _ in ends)
            return first, last
    return None


def _inside(box: Box, p: Point) -> bool:
    left, low, right, top = box
    return left - ON <= p.x <= right + ON and low - ON <= p.y <= top + ON


def _touches(path: Path, p: Point) -> bool:
    return nearest(path, p)[2] < ON


def _drawn(stretches: tuple[Stretch, ...]) -> float:
    """How much of an outline lies on drawn lines, cm."""
    return sum(s.segment.length() for s in stretches if s.line)


def _is_traced(stretches: tuple[Stretch, ...], *, there: bool) -> bool:
    """Whether at least half of it was drawn, or a curve of it just there."""
    curved = any(s.line and isinstance(s.segment, Cubic) for s in stretches)
    whole = sum(s.segment.length() for s in stretches)
    return (there and curved) or _drawn(stretches) > whole / 2


def _bent(segment: Segment) -> float:
    return segment.length() if isinstance(segment, Cubic) else 0.0


def _chord(segment: Segment) -> float:
    return segment.start.distance(segment.end)


def _onto(piece: Cubic, drawn: Cubic) -> Iterator[Transform]:
    """The moves that lay one curve's ends on another's: turned only, and turned over first."""
    for over in (IDENTITY, mirror(piece.start, piece.end - piece.start)):
        laid = piece.transformed(over)
        off, angle = drawn.start - laid.start, _angle(drawn) - _angle(laid)
        by = over.then(turn(angle, laid.start)).then(shift(off.x, off.y))
        if piece.transformed(by).at(0.5).distance(drawn.at(0.5)) < ON:
            yield by


def _angle(segment: Segment) -> float:
    return (segment.end - segment.start).angle


def straight(segment: Segment) -> bool:
    """Whether a segment runs straight."""
    return isinstance(segment, Line)
