"""A dart moved round a point: the angle stays, the width goes with the distance.

A contour that is whole along its upper edges is cut at a place and all that follows is turned about
the pivot; the wedge that opens is the dart. Its point is drawn back from the pivot, and the edge is
redrawn over the folded dart.

Source: moving darts about the bust point by turning, and shortening them along their middle line
with the base kept, common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.craft.darts import PlannedDart, drill_hole, reopen
from drafting.craft.trueing import turned
from drafting.geometry import Cubic, Line, Path, Point, Segment, Vector, join, polyline, turn
from drafting.pattern import Dart, Edge


@dataclass(frozen=True, slots=True)
class Opened:
    """A contour after a dart was opened in it.

    Attributes:
        edges: All edges in walking order; the dart's edge crosses its mouth in a straight stroke.
        dart: The dart.
    """

    edges: tuple[Edge, ...]
    dart: Dart


def open_dart(
    edges: tuple[Edge, ...], name: str, at: float, pivot: Point, degrees: float, short: float
) -> Opened:
    """Cut an edge of a contour and turn all that follows about the pivot.

    Args:
        edges: The contour in walking order.
        name: The edge that is cut.
        at: Where, in cm from its start.
        pivot: What is turned about, the bust point.
        degrees: By how much, positive against the clock.
        short: How far from the pivot the dart's point is drawn back, cm.
    """
    number = next(i for i, e in enumerate(edges) if e.name == name)
    before, after = edges[number].path.split(at)
    move = turn(degrees, pivot)
    path, dart = over_fold(before, after.transformed(move), pivot, short, name)
    rest = tuple(e.transformed(move) for e in edges[number + 1 :])
    return Opened((*edges[:number], replace(edges[number], path=path), *rest), dart)


def over_fold(
    before: Path, after: Path, pivot: Point, short: float, edge: str
) -> tuple[Path, Dart]:
    """An edge over a dart whose wedge opens from a pivot, redrawn so that it runs smooth when sewn.

    Args:
        before: The edge up to the dart's first leg.
        after: The edge from its second leg on.
        pivot: Where the legs would meet.
        short: How far the sewn point is drawn back from there, cm.
        edge: Name of the edge.

    Returns:
        The edge, straight across the mouth, and the dart.
    """
    first, second = before.end, after.start
    middle = first.toward(second, 0.5)
    point = pivot + (middle - pivot).unit * short
    planned = PlannedDart(first, second, point)
    if all(isinstance(s, Line) for s in (*before.segments, *after.segments)):
        closed = polyline(before.start, planned.closing.point(after.end))
        path, (dart,) = reopen(closed, (planned,), edge)
        return path, dart
    one, two = smoothed(before, after.transformed(planned.closing))
    path = join((one, polyline(first, second), two.transformed(planned.closing.inverse)))
    return path, Dart(edge, first, second, point, drill_hole(first, second, point))


def smoothed(before: Path, after: Path) -> tuple[Path, Path]:
    """Two lines that meet at a slight corner, their last and first handles turned to run on."""
    half = turned(before.end_tangent, after.start_tangent) / 2
    return _end_turned(before, half), _end_turned(after.reversed(), -half).reversed()


def _end_turned(path: Path, degrees: float) -> Path:
    last = _curved(path.segments[-1])
    handle: Vector = (last.arriving - last.end).rotated(degrees)
    return Path((*path.segments[:-1], replace(last, arriving=last.end + handle)))


def _curved(segment: Segment) -> Cubic:
    if isinstance(segment, Cubic):
        return segment
    a, b = segment.start, segment.end
    return Cubic(a, a.toward(b, 1 / 3), a.toward(b, 2 / 3), b)
