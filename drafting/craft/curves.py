"""The curves that a cutter draws with the hip curve and the French curve."""

from __future__ import annotations

import math
from collections.abc import Callable

from drafting.errors import ConstructionError
from drafting.geometry import Cubic, Point, Vector, cuts_ray, meet, through_ray, with_handles


def swept(
    start: Point, end: Point, arriving: Vector, by: float, least: float = -8.0, most: float = 12.0
) -> Cubic:
    """A curve that arrives in a given direction, its middle `by` cm off the straight line.

    Handles are a third of the chord, so the middle's distance is an eighth of the chord times the
    sum of the sines of the two end angles; the angle at the start is what is free.

    Args:
        start: Where it starts.
        end: Where it ends.
        arriving: Direction of the pencil at the end.
        by: Distance in cm of the middle to the left of the chord; negative to the right.
        least: Least angle in degrees at the start away from the chord, to the side of `by`.
        most: Greatest such angle.

    Source: common practice, no source.
    """
    chord = end - start
    side = math.copysign(1.0, by)
    turned = math.asin(max(-1.0, min(1.0, chord.unit.cross(arriving.unit))))
    # at the end the curve turns back toward the chord: a turn to the right bulges to the left
    free = 8 * abs(by) / chord.length + side * math.sin(turned)
    angle = math.degrees(math.asin(max(-1.0, min(1.0, free))))
    angle = max(least, min(most, angle))
    return with_handles(start, chord.rotated(side * angle), end, arriving, chord.length / 3)


ROUNDEST = (0.3, 0.95)
"""Shares of the handles between which a crotch curve stays fair: below it flattens in the middle,
above it turns a corner of less than some 5 cm radius. Source: house method, looked at on paper."""


def hook(
    start: Point, leaving: Vector, end: Point, arriving: Vector, corner: Point, diagonal: float
) -> tuple[Cubic, float]:
    """The curve of the crotch: one fair curve that passes the diagonal's end.

    Both handles are the same share of the way to the crossing of the two directions; the share is
    found so that the curve cuts the 45 degree diagonal of the corner at the given distance. Where
    no fair curve does, the roundest fair one is drawn.

    Args:
        start: Where the curve leaves the straight of the centre line.
        leaving: Direction of the pencil there (down).
        end: The fork.
        arriving: Direction of the pencil there (outward).
        corner: The crotch corner under the centre line.
        diagonal: Distance in cm from the corner along the diagonal.

    Returns:
        The curve, and the distance at which it cuts the diagonal.

    Raises:
        ConstructionError: The directions at its ends do not cross between them.

    Source: diagonals as in W. Aldrich, Metric Pattern Cutting for Women's Wear; how smooth it
    runs is house method.
    """
    crossing = meet(start, leaving, end, arriving)
    if (
        crossing is None
        or min((crossing - start).dot(leaving), (end - crossing).dot(arriving)) <= 0
    ):
        raise ConstructionError(
            "The crotch curve has no corner to turn: the rise is too short for so wide a fork. "
            "Measure body_rise and hip_girth again.",
            where="measurements.body_rise",
        )
    down, out = crossing.distance(start), crossing.distance(end)
    diagonally = Vector(1.0 if end.x > start.x else -1.0, 1.0)

    def draw(share: float) -> Cubic:
        return with_handles(start, leaving, end, arriving, share * down, share * out)

    return cutting(draw, corner, diagonally, diagonal, ROUNDEST)


def cutting(
    draw: Callable[[float], Cubic],
    corner: Point,
    diagonally: Vector,
    diagonal: float,
    fair: tuple[float, float],
) -> tuple[Cubic, float]:
    """Of the curves that differ by a share, the one that cuts a diagonal where it should.

    Args:
        draw: The curve for a share of the handles.
        corner: Where the diagonal starts.
        diagonally: Its direction.
        diagonal: The distance in cm at which it is to be cut.
        fair: Least and greatest share that gives a fair curve; where none does, the nearer of them.

    Returns:
        The curve, and the distance at which it cuts the diagonal.

    Source: common practice, no source.
    """
    found = through_ray(draw, corner, diagonally, diagonal, *fair)
    if found is not None:
        return found[1], diagonal
    ends = {share: cuts_ray(draw(share), corner, diagonally) for share in fair}
    share = min(ends, key=lambda s: abs(ends[s] - diagonal))
    return draw(share), ends[share]


def cornered(
    start: Point,
    leaving: Vector,
    end: Point,
    arriving: Vector,
    shares: tuple[float, float] = (0.55, 0.55),
) -> Cubic:
    """A curve that turns a corner as a quarter of an ellipse does.

    Each handle is a share of the way to where the two directions cross; where they do not cross
    between the ends, a share of two thirds of the chord.

    Args:
        start: Where it starts.
        leaving: Direction of the pencil there.
        end: Where it ends.
        arriving: Direction of the pencil there.
        shares: At the start and at the end: 0.55 is an ellipse; more fills the corner, less cuts
            it.

    Source: common practice, no source.
    """
    crossing = meet(start, leaving, end, arriving)
    plain = start.distance(end) * 2 / 3
    ahead = 0.0 if crossing is None else (crossing - start).dot(leaving.unit)
    behind = 0.0 if crossing is None else (end - crossing).dot(arriving.unit)
    out, back = (a if 0 < a < 2 * plain else plain for a in (ahead, behind))
    return with_handles(start, leaving, end, arriving, shares[0] * out, shares[1] * back)
