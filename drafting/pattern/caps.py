"""The cap over the mouth of a dart or pleat: the folded intake ends on the cutting line too.

Source: common practice, no source (fold the dart on the paper and cut along the seam).
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.geometry import Path, Point, Vector, crossing_with_line, mirror
from drafting.pattern.arm import Arm, Stop, Turn, own_end, reach, strokes, through
from drafting.pattern.mitre import extended
from drafting.pattern.piece import Taken


def cap(taken: Taken, before: Arm, after: Arm) -> Turn:
    """The cutting line over the mouth of a dart or a pleat.

    The neighbour under which it comes to lie is mirrored about its leg as far as the fold in the
    middle of the intake, and from there about the fold to the other leg.

    Args:
        taken: The dart or pleat.
        before: The stretch of the edge that ends at the first leg.
        after: The stretch that starts at the second leg, running toward it.
    """
    first, second = taken.outward
    one, two = reach(before, before.at, first), reach(after, after.at, second)
    if one is None or two is None:
        return through(one or own_end(before), two or own_end(after))
    fold = Fold(taken.inner, first + second)
    if taken.under_first:
        return _folded(fold, before, first, one, two)
    return _folded(fold, after, second, two, one).turned


@dataclass(frozen=True, slots=True)
class Fold:
    """The line in the middle of the intake: a point inside the piece, the way to the edge."""

    on: Point
    along: Vector


def _folded(fold: Fold, lies_on: Arm, leg: Vector, start: Stop, end: Stop) -> Turn:
    flap = _flap(fold, lies_on, leg, start)
    if flap is None:
        return through(start, end)
    back = flap.reversed().transformed(mirror(fold.on, fold.along))
    bridge = strokes((back.end, end.point, end.on))
    out = strokes((start.on, start.point))
    return Turn(start.place, end.place, (*out, *flap.segments, *back.segments, *bridge))


def _flap(fold: Fold, arm: Arm, leg: Vector, start: Stop) -> Path | None:
    """The arm's cutting line mirrored about its leg, from the leg to the fold."""
    kept = arm.cut.split_at(*start.place)[0].reversed().segments
    away = Path((*strokes((start.point, start.on)), *kept))
    width = 2 * start.point.distance(fold.on)
    image = extended(away, width).transformed(mirror(arm.at, leg))
    hits = crossing_with_line(image, fold.on, fold.along)
    ahead = [h for h in hits if (image.segments[h[0]].at(h[1]) - fold.on).dot(fold.along) > 0]
    return image.split_at(*ahead[0])[0] if ahead else None
