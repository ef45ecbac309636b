"""Trueing: what a method leaves untrue is redrawn, and each redrawing says what moved.

A panel's side may lie to the left or to the right of its centre.

Source: walking the seams, closing the darts, squaring the corners are common practice, no source.
"""

from __future__ import annotations

from drafting.geometry import Cubic, Point, Transform, Vector, smooth, with_handles


def square_to_ends(start: Point, before: Vector, end: Point, after: Vector) -> Cubic:
    """A shallow curve that meets the line at each end at a right angle.

    Args:
        start: First point.
        before: Direction of the line that arrives at `start`; the cloth on its left.
        end: Last point.
        after: Direction of the line that leaves `end`; the cloth on its left.
    """
    return smooth(start, before.left, end, after.right)


def seam_over_darts(
    centre: Point,
    square: Vector,
    side: Point,
    down: Vector,
    opened: float,
    closed: Transform,
) -> Cubic:
    """The seam line from centre to side, drawn while the darts are closed.

    Args:
        centre: Where it starts.
        square: Direction in which it leaves, square to the centre line.
        side: Where it ends while the darts are open.
        down: Direction of the side seam there, away from the seam line.
        opened: By how many degrees the corner at the side is wider than a right angle.
        closed: How the cloth at the side moves when the darts are closed.
    """
    hand = turning(square, down)
    end, away = closed.point(side), closed.vector(down)
    chord = centre.distance(end)
    arriving = (away.right * hand).rotated(hand * opened)
    return with_handles(centre, square, end, arriving, 0.4 * chord, 0.25 * chord)


def natural_opening(
    centre: Point, square: Vector, side: Point, down: Vector, closed: Transform
) -> float:
    """By how many degrees the corner at the side is wider than 90 if the seam bends evenly."""
    hand = turning(square, down)
    chord = (closed.point(side) - centre).unit
    arriving = chord * (2 * chord.dot(square)) - square
    return turned(closed.vector(down).right * hand, arriving) * hand


def turning(along: Vector, down: Vector) -> float:
    """1 where `down` lies to the left of `along` (the side to the left of the centre), else -1."""
    return 1.0 if along.cross(down) > 0 else -1.0


def turned(a: Vector, b: Vector) -> float:
    """Degrees from one direction to another, positive counter-clockwise."""
    return b.angle_to(a) * (1.0 if a.cross(b) >= 0 else -1.0)
