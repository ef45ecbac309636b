"""Corners of the cutting line: which rule a corner takes, and how each rule draws it.

Source of the rules: common practice, no source; that corners are squared so that the cut edges
of the seam coincide: Helen Joseph-Armstrong, "Patternmaking for Fashion Design" (from memory).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from drafting.geometry import Path, Segment, Vector, crossings, mirror
from drafting.pattern.arm import (
    MITRE_LIMIT,
    TINY,
    Arm,
    Stop,
    Turn,
    is_convex,
    own_end,
    reach,
    strokes,
    through,
)
from drafting.pattern.finished import CornerRule
from drafting.pattern.mitre import bevel, carried_on, extended, joined, mitre, stop_at, straight
from drafting.pattern.piece import Role

SMOOTH_ANGLE = 10.0
"""Edges that turn by less than this (degrees) go on smoothly: no corner of a garment is so flat."""


PLUMB = 1e-6
"""A line that leaves the plumb or the level by less than this in its length hangs straight."""

MOST_BOW = 15.0
"""Hems whose chord leaves their tangent by more (degrees) cannot be turned up in one piece."""


Rule = Callable[[Arm, Arm], Turn | None]
"""Draws a corner between two arms, the one that the rule speaks of first; None where it fails."""


@dataclass(slots=True, init=False)
class Side:
    """An arm and what the rules must know of its edge; rank 0 is sewn first."""

    arm: Arm
    edge: str
    role: Role
    rank: int

    def __init__(self, arm: Arm, edge: str, role: Role, rank: int) -> None:
        self.arm = arm
        self.edge = edge
        self.role = role
        self.rank = rank


@dataclass(slots=True, init=False)
class Made:
    """A corner that has been drawn."""

    rule: CornerRule
    turn: Turn
    squared_to: str | None

    def __init__(self, rule: CornerRule, turn: Turn, squared_to: str | None = None) -> None:
        self.rule = rule
        self.turn = turn
        self.squared_to = squared_to


def turn_corner(before: Side, after: Side) -> Made:
    """Draw the cutting line from the edge that ends at a corner into the one that starts there."""
    return (
        _folded(before, after)
        or _flat(before, after)
        or _hemmed(before, after)
        or _sewn(before, after)
        or _plain(before, after)
        or Made(CornerRule.STEP, _shoulder(before.arm, after.arm))
    )


def _folded(before: Side, after: Side) -> Made | None:
    """Beside a fold the cutting line ends exactly on the fold's line."""
    first = before.role is Role.FOLD
    if not (first or after.role is Role.FOLD):
        return None
    turn = _either_way(_to_fold, before, after, first=first)
    return None if turn is None else Made(CornerRule.FOLD, turn)


def _flat(before: Side, after: Side) -> Made | None:
    """Two edges of one smooth line: joined, or a step square across where allowances differ."""
    one, two = before.arm, after.arm
    if one.ahead.angle_to(-two.ahead) > SMOOTH_ANGLE:
        return None
    if abs(one.allowance - two.allowance) < TINY:
        return Made(CornerRule.SMOOTH, joined(one, two))
    across = (one.outward + two.outward).unit
    stops = reach(one, one.at, across, one.end), reach(two, two.at, across, two.end)
    first, second = stops[0] or own_end(one), stops[1] or own_end(two)
    return Made(CornerRule.STEP, through(first, second))


def _hemmed(before: Side, after: Side) -> Made | None:
    """Over a hem's fold the neighbour is mirrored, so that the turned hem lies on it flat."""
    first = before.role is Role.HEM
    if first == (after.role is Role.HEM):
        return None
    turn = _either_way(_over_hem, before, after, first=first)
    return None if turn is None else Made(CornerRule.MIRRORED, turn)


def _sewn(before: Side, after: Side) -> Made | None:
    """Square to the seam that is sewn first, so that its raw edges coincide when pressed open."""
    if before.rank == after.rank:
        return None
    first = before.rank < after.rank
    turn = _either_way(_squared, before, after, first=first)
    name = (before if first else after).edge
    return None if turn is None else Made(CornerRule.SQUARED, turn, name)


def _plain(before: Side, after: Side) -> Made | None:
    """A mitre, or a bevel where it would run too far; None at an inner corner without crossing."""
    if turn := mitre(before.arm, after.arm):
        return Made(CornerRule.MITRE, turn)
    turn = bevel(before.arm, after.arm)
    return None if turn is None else Made(CornerRule.BEVEL, turn)


def _shoulder(one: Arm, two: Arm) -> Turn:
    """At an inner corner the wider allowance ends square, and the other line starts there."""
    if one.allowance < two.allowance:
        return _shoulder(two, one).turned
    stop = reach(two, one.at, one.outward)
    return straight(one, two) if stop is None else through(own_end(one), stop)


def _either_way(rule: Rule, before: Side, after: Side, *, first: bool) -> Turn | None:
    """Draw by a rule that names its main arm first, whichever edge that is."""
    if first:
        return rule(before.arm, after.arm)
    turn = rule(after.arm, before.arm)
    return None if turn is None else turn.turned


def _to_fold(fold: Arm, other: Arm) -> Turn | None:
    stop = reach(other, fold.at, fold.ahead)
    return None if stop is None else through(own_end(fold), stop)


def _squared(seam: Arm, other: Arm) -> Turn | None:
    """From where the other cutting line meets the seam's own line, square out to the seam's cut."""
    stop = reach(other, seam.at, seam.ahead)
    if stop is None or not (is_convex(seam, other) and seam.runs_true and other.runs_true):
        return None
    beyond = (stop.point - seam.at).dot(seam.ahead)
    limit = MITRE_LIMIT * max(seam.allowance, other.allowance)
    if not -TINY < beyond <= limit + TINY:
        return None
    end = own_end(seam)
    return through(Stop(end.place, end.on, stop.point + seam.outward * seam.allowance), stop)


def _over_hem(hem: Arm, other: Arm) -> Turn | None:
    """The other cutting line's image about the hem's fold, down to the hem's cut."""
    start = reach(other, hem.at, _fold_line(hem, other))
    if start is None or hem.allowance < TINY or not (hem.runs_true and is_convex(hem, other)):
        return None
    image = _image(other, start, hem)
    depth = MITRE_LIMIT * hem.allowance
    found = crossings(extended(image, depth), carried_on(hem, depth))
    limit = MITRE_LIMIT * max(hem.allowance, other.allowance)
    if not found or max(p.distance(hem.at) for p in (start.point, found[0].point)) > limit:
        return None
    best = found[0]
    down = extended(image, depth).split_at(*best.first)[0].segments
    back = tuple(s.reversed() for s in reversed(down))
    stop = stop_at(hem, best.second, best.point)
    out = strokes((stop.on, stop.point))
    return Turn(stop.place, start.place, (*out, *back, *strokes((start.point, start.on))))


def _image(other: Arm, start: Stop, hem: Arm) -> Path:
    """The other arm's cutting line from the fold upward, mirrored about the fold."""
    kept = other.cut.split_at(*start.place)[0].reversed().segments
    back: tuple[Segment, ...] = (*strokes((start.point, start.on)), *kept)
    return Path(back).transformed(mirror(hem.at, _fold_line(hem, other)))


def _fold_line(hem: Arm, other: Arm) -> Vector:
    """The straight line that the hem folds about at its end: its chord, where it is bowed little.

    A bowed hem stands square to the seam, so its tangent would mirror the seam into itself; but
    the hem of a tapered leg must widen again below the fold, by twice the bow's half angle, which
    is just the mirror image about the chord. Beside a plumb seam that it meets square, as at the
    centre of a skirt, the cloth is as wide below the fold as above it: the hem's tangent serves.
    """
    if abs(other.ahead.x) < PLUMB and abs(hem.ahead.y) < PLUMB:
        return hem.ahead
    chord = (hem.cut.end - hem.cut.start).unit
    return chord if chord.angle_to(hem.ahead) <= MOST_BOW else hem.ahead
