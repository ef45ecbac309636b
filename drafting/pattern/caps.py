"""The cap over a dart's mouth: what the folded intake needs to end on the cutting line.

Source: common practice, no source (fold the dart on the paper and cut along the seam).
"""

from __future__ import annotations

from drafting.geometry import Path, Point, Vector, crossing_with_line, mirror
from drafting.pattern.arm import Arm, Stop, Turn, own_end, reach, strokes, through
from drafting.pattern.mitre import extended
from drafting.pattern.piece import Dart


def cap(dart: Dart, before: Arm, after: Arm) -> Turn:
    """The cutting line over a dart's mouth.

    The neighbour toward which the dart is pressed is mirrored about its leg as far as the fold in
    the middle of the intake, and from there about the fold to the other leg.

    Args:
        dart: The dart.
        before: The stretch of the edge that ends at the first leg.
        after: The stretch that starts at the second leg, running toward it.
    """
    one = reach(before, dart.point, before.at - dart.point)
    two = reach(after, dart.point, after.at - dart.point)
    if one is None or two is None:
        return through(one or own_end(before), two or own_end(after))
    if dart.toward_first:
        return _folded(dart.point, before, one, after, two)
    return _folded(dart.point, after, two, before, one).turned


def _folded(point: Point, lies_on: Arm, start: Stop, other: Arm, end: Stop) -> Turn:
    fold = fold_line(point, lies_on.at, other.at)
    flap = _flap(point, lies_on, start, fold)
    if flap is None:
        return through(start, end)
    back = flap.reversed().transformed(mirror(point, fold))
    bridge = strokes((back.end, end.point, end.on))
    out = strokes((start.on, start.point))
    return Turn(start.place, end.place, (*out, *flap.segments, *back.segments, *bridge))


def fold_line(point: Point, first: Point, second: Point) -> Vector:
    """Direction of the fold in the middle of the intake: it lays one leg on the other."""
    return (first - point).unit + (second - point).unit


def _flap(point: Point, arm: Arm, start: Stop, fold: Vector) -> Path | None:
    """The arm's cutting line mirrored about its leg, from the leg to the fold."""
    kept = arm.cut.split_at(*start.place)[0].reversed().segments
    away = Path((*strokes((start.point, start.on)), *kept))
    width = 2 * start.point.distance(point)
    image = extended(away, width).transformed(mirror(point, arm.at - point))
    hits = crossing_with_line(image, point, fold)
    ahead = [h for h in hits if (image.segments[h[0]].at(h[1]) - point).dot(fold) > 0]
    return image.split_at(*ahead[0])[0] if ahead else None
