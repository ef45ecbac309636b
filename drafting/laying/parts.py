"""From finished pieces to what is laid on a cloth: shapes, how often, and in which ways.

Centimetres. A piece's frame has its grain upright; on the cloth the grain runs along X, and with
turn 0 the piece's top lies toward the cloth's start.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import groupby
from typing import TYPE_CHECKING

import shapely
from shapely import affinity

from drafting.drawing.shapes import polygon
from drafting.geometry import (
    IDENTITY,
    Path,
    Point,
    Segment,
    Transform,
    join,
    mirror,
    polyline,
    shift,
)
from drafting.laying.strip import FREE, Anchor, Part, Turn, Way
from drafting.pattern import Cut, Edge, FinishedPiece, Role

if TYPE_CHECKING:
    from drafting.workroom import Work

FLAT = 0.02
"""Cutting lines are flattened to 0.02 cm for laying; clearances make up for it."""
SIMPLE = 0.01
"""Clearances are then thinned by so much."""
ALIKE = 0.005
"""A shape is its own mirror image when less than this share of its area differs."""
ON_FOLD = 1e-3
"""A stroke of the cutting line within this distance of the fold lies on it, cm."""

TURNS: dict[Turn, Transform] = {
    0: Transform(0.0, 1.0, -1.0, 0.0),
    180: Transform(0.0, -1.0, 1.0, 0.0),
}
"""From a piece's frame to the cloth's: grain along X."""
OVER = Transform(a=-1.0)
"""Face down."""

Times = tuple[tuple[int, ...], ...]


@dataclass(frozen=True, slots=True)
class Wanted:
    """A piece to be cut from a cloth for one order.

    Attributes:
        order: Number of the order, from 0.
        finished: The piece.
        cut: How many, and whether in pairs.
        anchor: What of the piece must lie on the repeat, in its frame.
    """

    order: int
    finished: FinishedPiece
    cut: Cut
    anchor: Anchor = FREE

    @property
    def name(self) -> str:
        """Name of the piece."""
        return self.finished.piece.name

    @property
    def rights(self) -> tuple[int, ...]:
        """Numbers of the copies cut face up, from 1."""
        return tuple(range(1, self.cut.quantity - len(self.lefts) + 1))

    @property
    def lefts(self) -> tuple[int, ...]:
        """Numbers of the copies cut face down."""
        half = self.cut.quantity // 2 if self.cut.mirrored else 0
        return tuple(range(self.cut.quantity - half + 1, self.cut.quantity + 1))


def wanted(works: tuple[Work, ...], cloth: str) -> tuple[Wanted, ...]:
    """All pieces that are cut from a cloth, order by order."""
    return tuple(
        Wanted(order, finished, cut)
        for order, work in enumerate(works)
        for finished in work.pattern.pieces
        for cut in finished.piece.cut
        if cut.cloth == cloth and cut.quantity > 0
    )


@dataclass(frozen=True, slots=True)
class Cutter:
    """How the parts of a cloth are made: room round each shape, and whether tops lie one way."""

    gap: float
    one_way: bool

    @property
    def clear(self) -> float:
        """How far a clearance stands off its outline, in cm."""
        return self.gap / 2 + FLAT + SIMPLE

    def open(self, want: Wanted) -> Iterator[Part]:
        """What is laid on open cloth, right side up: rights face up, lefts face down."""
        for face_down, copies in ((False, want.rights), (True, want.lefts)):
            if copies:
                yield self.part(want, "down" if face_down else "up", _each(copies), (face_down,))

    def double(self, want: Wanted) -> Iterator[Part]:
        """What is laid on folded cloth and cut through both layers, or on the fold."""
        if lies_on_fold(want.finished):
            yield self._on_fold(want)
        elif pairs := _pairs(want):
            yield self.part(want, "double", pairs, (False, True))

    def single(self, want: Wanted) -> Iterator[Part]:
        """What is left of a piece when all that can be cut double is taken; for open cloth."""
        if lies_on_fold(want.finished):
            return
        double = {copy for pair in _pairs(want) for copy in pair}
        for face_down, copies in ((False, want.rights), (True, want.lefts)):
            left = tuple(c for c in copies if c not in double)
            if left:
                yield self.part(want, "single", _each(left), (face_down,))

    def upper(self, want: Wanted) -> Iterator[Part]:
        """The same for folded cloth, cut from the upper layer only: its wrong side is up."""
        for part in self.single(want):
            face_down = not part.ways[0].mirrored
            yield self.part(want, "upper", part.copies, (face_down,))

    def part(self, want: Wanted, code: str, times: Times, faces: tuple[bool, ...]) -> Part:
        """A part in every way allowed."""
        path = whole(want.finished)
        ways = tuple(
            self._way(path, want, turn, face_down=face) for face in faces for turn in self._turns()
        )
        return Part(f"{want.order}:{want.name}:{code}", want.order, want.name, times, ways)

    def _on_fold(self, want: Wanted) -> Part:
        """A half piece, its fold at the lower edge whichever way it is turned."""
        path = want.finished.cut_line
        middle, on = path_middle(path), fold_line(want.finished)[0].x
        ways = tuple(
            self._way(path, want, turn, face_down=(middle < on) == (turn == 0))
            for turn in self._turns()
        )
        times = _each(tuple(range(1, want.cut.quantity + 1)))
        code = f"{want.order}:{want.name}:fold"
        return Part(code, want.order, want.name, times, ways, on_fold=True)

    def _turns(self) -> tuple[Turn, ...]:
        return (0,) if self.one_way else (0, 180)

    def _way(self, path: Path, want: Wanted, turn: Turn, *, face_down: bool) -> Way:
        move = (OVER if face_down else IDENTITY).then(TURNS[turn])
        left, low, _, _ = path.transformed(move).bounds()
        move = move.then(shift(-left, -low))
        outline = polygon(path.transformed(move), FLAT)
        anchor = _moved(want.anchor, move)
        return Way(turn, face_down, move, outline, self._clearance(outline), anchor)

    def _clearance(self, outline: shapely.Polygon) -> shapely.Polygon:
        around = outline.buffer(self.clear, join_style="mitre", mitre_limit=1.5)
        thinned = shapely.Polygon(around.exterior).simplify(SIMPLE)
        return shapely.Polygon(shapely.get_exterior_ring(thinned))


def _moved(anchor: Anchor, move: Transform) -> Anchor:
    """The anchor on the cloth: along and across stay what they are."""
    at = move.point(Point(anchor.across or 0.0, anchor.along or 0.0))
    return Anchor(None if anchor.along is None else at.x, None if anchor.across is None else at.y)


def whole(finished: FinishedPiece) -> Path:
    """The cutting line of the whole piece, unfolded where it is drawn as a half; closed."""
    if not finished.piece.half:
        return finished.cut_line
    on, end = fold_line(finished)
    over = mirror(on, end - on)
    runs = _off_fold(finished.cut_line, over)
    if len(runs) == 1:
        half = Path(runs[0])
        return join((half, half.transformed(over).reversed()))
    return _united(finished.cut_line, over)


def _united(half: Path, over: Transform) -> Path:
    """A half and its image as one outline of straight strokes, where its fold is interrupted."""
    both = polygon(half, FLAT).union(polygon(half.transformed(over), FLAT))
    ring = shapely.get_coordinates(shapely.get_exterior_ring(both.buffer(0))).tolist()
    return polyline(*(Point(x, y) for x, y in ring))


def fold_edge(finished: FinishedPiece) -> Edge:
    """The fold of a half piece. Raises KeyError where it has none."""
    for edge in finished.piece.edges:
        if edge.role is Role.FOLD:
            return edge
    raise KeyError(f"{finished.piece.name} is a half without a fold")


def fold_line(finished: FinishedPiece) -> tuple[Point, Point]:
    """Start and end of a half piece's fold."""
    fold = fold_edge(finished)
    return fold.path.start, fold.path.end


def lies_on_fold(finished: FinishedPiece) -> bool:
    """Whether a piece is a half that can lie at a lengthwise fold: its fold runs with the grain."""
    if not finished.piece.half:
        return False
    on, end = fold_line(finished)
    return abs(end.x - on.x) < 0.01


def path_middle(path: Path) -> float:
    """Across the grain, the middle of the box round a path."""
    left, _, right, _ = path.bounds()
    return (left + right) / 2


def is_alike(outline: shapely.Polygon) -> bool:
    """Whether a shape is its own mirror image, turned over left to right."""
    over = affinity.scale(outline, -1, 1, origin="center")
    return bool(outline.symmetric_difference(over).area < ALIKE * outline.area)


def _off_fold(cut_line: Path, over: Transform) -> tuple[tuple[Segment, ...], ...]:
    """The segments that do not lie on the fold, in runs from fold to fold."""
    segments = cut_line.segments

    def lies_on(p: Point) -> bool:
        return p.distance(over.point(p)) < 2 * ON_FOLD

    on = [lies_on(s.start) and lies_on(s.end) for s in segments]
    first = next(i for i in range(len(on)) if on[i - 1] and not on[i])
    turned = [*range(first, len(on)), *range(first)]
    runs = groupby(turned, key=lambda i: on[i])
    return tuple(tuple(segments[i] for i in run) for folded, run in runs if not folded)


def _pairs(want: Wanted) -> Times:
    """Copies that one cut through double cloth gives: a right and a left, or two alike."""
    if want.cut.mirrored:
        return tuple(zip(want.rights, want.lefts, strict=False))
    if not want.finished.piece.notches and is_alike(polygon(whole(want.finished), FLAT)):
        rights = want.rights
        return tuple(zip(rights[::2], rights[1::2], strict=False))
    return ()


def _each(copies: tuple[int, ...]) -> Times:
    return tuple((copy,) for copy in copies)
