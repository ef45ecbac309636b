"""Darts and pleats closed on paper: the intake folded away, the edge brought together over it."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.checks.along import Mouth, mouths
from drafting.geometry import IDENTITY, JOIN, Line, Path, Point, Transform, shift, turn
from drafting.pattern import Dart, Piece, Taken

_BESIDE = 1e-4
"""Directions beside a mouth are taken this many cm away from it, clear of the corner."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """A stretch of an edge between two mouths, moved to where it lies when they are closed.

    Attributes:
        first: Distance in cm along the drawn edge where it starts.
        last: Where it ends.
        path: The stretch, moved.
        by: The move that brought it there.
    """

    first: float
    last: float
    path: Path
    by: Transform


def closing(taken: Taken) -> Transform:
    """The move that lays the second leg on the first.

    A dart turns about its point; of a pleat, and of a dart that runs through a waist, the second
    line is turned as the first one runs, and its start laid on the other's.
    """
    if isinstance(taken, Dart) and taken.bends:
        first, second = taken.outward
        return _laid(first.angle - second.angle, taken)
    if isinstance(taken, Dart):
        second, first = taken.second - taken.point, taken.first - taken.point
        return turn(first.angle - second.angle, taken.point)
    one, two = taken.one.start_tangent, taken.two.start_tangent
    return _laid(one.angle - two.angle, taken)


def _laid(turned: float, taken: Taken) -> Transform:
    aside = taken.first - taken.second
    return turn(turned, taken.second).then(shift(aside.x, aside.y))


def stretches(piece: Piece, edge: str) -> tuple[Stretch, ...]:
    """What is left of an edge when its darts and pleats are closed, in walking order.

    The stretch before the first one stays where it is; each later one moves with those before it.
    """
    path = piece.edge(edge).path
    bounds = [0.0]
    moves = [IDENTITY]
    for mouth in sorted(mouths(piece, edge), key=lambda m: m.first):
        bounds += [mouth.first, mouth.last]
        moves.append(closing(mouth.taken).then(moves[-1]))
    bounds.append(path.length())
    pairs = zip(bounds[::2], bounds[1::2], strict=True)
    return tuple(
        Stretch(a, b, path.between(a, b).transformed(move), move)
        for (a, b), move in zip(pairs, moves, strict=True)
        if b - a > JOIN
    )


def closed_edge(piece: Piece, edge: str) -> Path:
    """The line of an edge with all its darts and pleats closed, as it is sewn.

    Where the two legs of a dart differ in length their ends do not meet; a straight stroke
    bridges them, so that the difference shows in the length and in the angle there.
    """
    segments = list((parts := stretches(piece, edge))[0].path.segments)
    for part in parts[1:]:
        if segments[-1].end.distance(part.path.start) > JOIN:
            segments.append(Line(segments[-1].end, part.path.start))
        segments.extend(part.path.segments)
    return Path(tuple(segments))


def closed_point(piece: Piece, edge: str, at: float) -> Point:
    """Where a mark at a distance in cm along the drawn edge lies when they are closed."""
    point = piece.edge(edge).path.at(at)
    parts = stretches(piece, edge)
    home = min(parts, key=lambda s: max(s.first - at, at - s.last, 0.0))
    return home.by.point(point) if home.first <= at <= home.last else _end(home, at)


def angle_over(piece: Piece, mouth: Mouth) -> float:
    """Angle in degrees, measured in the piece, that the edge makes over a closed dart or pleat."""
    path = piece.edge(mouth.taken.edge).path
    before = path.tangent_at(mouth.first - _BESIDE)
    after = closing(mouth.taken).vector(path.tangent_at(mouth.last + _BESIDE))
    return 180.0 - _signed(before.angle, after.angle)


def _signed(first: float, second: float) -> float:
    return (second - first + 180.0) % 360.0 - 180.0


def _end(stretch: Stretch, at: float) -> Point:
    return stretch.path.start if at < stretch.first else stretch.path.end
