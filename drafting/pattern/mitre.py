"""Two cutting lines brought to their crossing; cut off where that would run too far."""

from __future__ import annotations

from drafting.geometry import Line, Path, Point, Vector, crossings, meet
from drafting.pattern.arm import (
    MITRE_LIMIT,
    TINY,
    Arm,
    Place,
    Stop,
    Turn,
    is_convex,
    own_end,
    reach,
    through,
)


def mitre(first: Arm, second: Arm) -> Turn | None:
    """The cutting lines carried on straight, or trimmed, to where they cross.

    Source: common practice, no source.

    Returns:
        The turn; None where they do not cross, or farther out than MITRE_LIMIT allowances.
    """
    limit = MITRE_LIMIT * max(first.allowance, second.allowance)
    meeting = _carried(first, second) or _trimmed(first, second, limit)
    if meeting is None or _too_far(first.at, meeting, limit):
        return None
    return through(*meeting)


def joined(first: Arm, second: Arm) -> Turn:
    """A mitre where there is one, else a bevel, else a straight stroke: two runs of one edge."""
    return mitre(first, second) or bevel(first, second) or straight(first, second)


def straight(first: Arm, second: Arm) -> Turn:
    """From the end of the one line to the end of the other.

    Where the stitching line is too tight for its allowance this makes a loop, which is taken out
    when the whole cutting line is known.
    """
    return through(own_end(first), own_end(second))


def _too_far(corner: Point, meeting: tuple[Stop, Stop], limit: float) -> bool:
    """A crossing outside the corner may be too far off; one that trims both lines never is."""
    one, two = meeting
    outside = one.is_carried_on or two.is_carried_on
    return outside and one.point.distance(corner) > limit + TINY


def _carried(first: Arm, second: Arm) -> tuple[Stop, Stop] | None:
    """Where the straight continuations of both cutting lines meet."""
    a, b = first.end, second.end
    if a.distance(b) < TINY:
        return own_end(first), own_end(second)
    along, toward = first.onward, second.onward
    p = meet(a, along, b, toward)
    if p is None or (p - a).dot(along) < -TINY or (p - b).dot(toward) < -TINY:
        return None
    return Stop(first.last, a, p), Stop(second.last, b, p)


def _trimmed(first: Arm, second: Arm, limit: float) -> tuple[Stop, Stop] | None:
    """The crossing nearest to the corner of two cutting lines, each carried on by the limit."""
    found = crossings(carried_on(first, limit), carried_on(second, limit))
    if not found:
        return None
    best = min(found, key=lambda c: c.point.distance(first.at))
    return stop_at(first, best.first, best.point), stop_at(second, best.second, best.point)


def carried_on(arm: Arm, by: float) -> Path:
    """The arm's cutting line carried on straight by some cm."""
    end = arm.end
    return Path((*arm.cut.segments, Line(end, end + arm.onward * max(by, TINY))))


def extended(cut: Path, by: float) -> Path:
    """A line carried on straight by some cm."""
    return Path((*cut.segments, Line(cut.end, cut.end + cut.end_tangent * max(by, TINY))))


def stop_at(arm: Arm, place: Place, p: Point) -> Stop:
    """The stop at a place of the arm's extended cutting line."""
    beyond = place[0] == len(arm.cut.segments)
    return Stop(arm.last, arm.end, p) if beyond else Stop(place, p, p)


def bevel(first: Arm, second: Arm) -> Turn | None:
    """Cut off square to the point of the mitre, MITRE_LIMIT allowances from the corner.

    None at an inner corner, which has no point to cut off, and where a bend tighter than the
    allowance ends one of the lines short of the corner.
    """
    if not (is_convex(first, second) and first.runs_true and second.runs_true):
        return None
    limit = MITRE_LIMIT * max(first.allowance, second.allowance)
    out = _spike(first, second)
    on = first.at + out * limit
    one, two = reach(first, on, out.left, on), reach(second, on, out.left, on)
    if one is None or two is None:
        return None
    near = max(one.point.distance(on), two.point.distance(on)) < 2 * limit
    return through(one, two) if near else None


def _spike(first: Arm, second: Arm) -> Vector:
    """The direction in which two cutting lines run to a point."""
    tip = _carried(first, second)
    out = tip[0].point - first.at if tip else first.ahead + second.ahead
    return out.unit if out.length > TINY else first.outward
