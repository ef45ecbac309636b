"""Necklines: on the shoulder as wide, at the centre as deep as asked, running on over the shoulder seam.

Source: common practice, no source; a lowered or widened neckline gapes, so what is too much of it is turned
into the bust dart: a quarter of a centimetre for each 2.5 that it is lowered, half for a wide one.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import degrees

from drafting.errors import SpecError
from drafting.garments.bodice.block import Front
from drafting.garments.bodice.spec import NeckLine, Shape
from drafting.geometry import LEFT, Line, Path, Point, Vector, meet, with_handles

DEPTHS: dict[NeckLine, float] = {"round": 1.0, "v": 9.0, "boat": 0.0, "square": 6.0}
WIDTHS: dict[NeckLine, float] = {"round": 1.0, "v": 1.0, "boat": 4.5, "square": 3.0}
"""Below the base of the neck at the centre front, and along each shoulder, cm. House method."""

LEAST_STRAP = 3.0
"""A shoulder is at least 3 cm long. Source: common practice, no source."""

OVER_BUST = 3.0
"""A neckline ends at least 3 cm above the bust point. Source: common practice, no source."""

TILT = 20.0
"""Degrees by which the back neckline meets the shoulder flatter than square, and the front one steeper, so that
the back's curve is no hook and both still run on over the seam. House method."""

BACK_LOWERED = 0.3
"""The nape is lowered by this share of what the neckline is widened. House method."""


@dataclass(frozen=True, slots=True)
class NeckSize:
    """How deep and how wide, cm, and by how many degrees the bust dart takes up what would gape."""

    depth: float
    width: float
    gape: float


def neck_size(cut: Shape, front: Front, shoulder: float) -> NeckSize:
    """Settle the neckline.

    Raises:
        SpecError: It reaches the bust, or leaves too narrow a shoulder.
    """
    depth = DEPTHS[cut.neckline] if cut.neck_depth is None else cut.neck_depth
    width = min(WIDTHS[cut.neckline], shoulder - LEAST_STRAP - 1) if cut.neck_width is None else cut.neck_width
    deepest = front.centre_neck.y - front.bust_point.y - OVER_BUST
    if depth > deepest:
        raise SpecError(f"The neckline would reach the bust; its depth is at most {deepest:.1f} cm.", where="garment.neck_depth", received=depth, allowed=(0.0, deepest))
    if shoulder - width < LEAST_STRAP:
        raise SpecError(f"The neckline would leave too narrow a shoulder; its width is at most {shoulder - LEAST_STRAP:.1f} cm.", where="garment.neck_width", received=width, allowed=(0.0, shoulder - LEAST_STRAP))
    over = max(0.0, depth - 1.5) * 0.1 + max(0.0, width - 1.5) * 0.12
    away = front.centre_neck.distance(front.bust_point)
    return NeckSize(depth, width, degrees(over / away))


def front_neck(shape: NeckLine, centre: Point, side: Point, shoulder: Vector) -> Path:
    """From the centre front to the shoulder, which it meets a little steeper than square.

    Args:
        shape: Its shape.
        centre: The lowest point, at the centre.
        side: Where it meets the shoulder.
        shoulder: Direction of the shoulder, from the neck outward.
    """
    up = (shoulder.unit.right if shoulder.unit.right.y > 0 else shoulder.unit.left).rotated(-tilted(shape))
    match shape:
        case "v":
            chord = centre.distance(side)
            return Path((with_handles(centre, side - centre, side, up, 0.5 * chord, 0.26 * chord),))
        case "square":
            corner = meet(side, up, centre, LEFT) or centre
            return Path((Line(centre, corner), Line(corner, side)))
        case _:
            return curved_neck(centre, side, up, 0.62 if shape == "boat" else 0.56)


def curved_neck(centre: Point, side: Point, up: Vector, full: float) -> Path:
    """A round neckline, level at the centre; `full` is the share of the way that its handles reach."""
    wide, high = abs(side.x - centre.x), abs(side.y - centre.y)
    out = Vector(-1.0 if side.x < centre.x else 1.0, 0.0)
    return Path((with_handles(centre, out, side, up, full * wide, max(0.5 * full * high, min(0.56 * high, 4.5))),))


def tilted(shape: NeckLine) -> float:
    """By how many degrees the neckline misses the square at the shoulder."""
    return TILT if shape in ("round", "boat") else 0.0


def back_neck(shape: NeckLine, nape: Point, side: Point, shoulder: Vector) -> Path:
    """From the nape to the shoulder, level at the centre."""
    up = (shoulder.unit.right if shoulder.unit.right.y > 0 else shoulder.unit.left).rotated(-tilted(shape))
    wide, high = abs(side.x - nape.x), side.y - nape.y
    return Path((with_handles(nape, Vector(1.0, 0.0), side, up, 0.42 * wide, max(0.3 * wide, 0.7 * high)),))
