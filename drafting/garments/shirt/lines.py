"""A shirt's lines: neck, shoulders, armholes, sides and hems, drawn between the block's places.

Source: armholes hollowed 1 cm in front, the yoke's seam 0.75 cm lower at the armhole, sides in at
the waist: W. Aldrich, Metric Pattern Cutting for Menswear; corners that make 180 degrees where two
seams cross, common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.craft.curves import cornered
from drafting.craft.sheet import DraftSheet
from drafting.garments.shirt.block import Block
from drafting.geometry import Vector, smooth, with_handles
from drafting.trace import (
    DOWNWARD,
    LEFTWARD,
    RIGHTWARD,
    Bearing,
    Bend,
    Place,
    Straight,
    Stroke,
    along,
)

HOLLOWED = "W. Aldrich, Metric Pattern Cutting for Menswear (yoke and hollow of the armhole); corners that meet, common practice, no source"

SHOULDER = 6.0
"""At the shoulder end the back's corner is 6 degrees wider than square, the front's as much narrower: the front's armhole is the hollower one. House method."""

YOKE_DART = 0.75
"""The back loses 0.75 cm at the armhole in the yoke's seam, over 10 cm: it shapes the blades."""

YOKE_DART_LONG = 10.0


def bend(start: Place, leaving: Bearing, end: Place, arriving: Bearing, shares: tuple[float, float] = (0.55, 0.55)) -> Bend:
    """A curve that turns a corner, told by its ends."""
    return Bend(start, end, leaving, arriving, cornered(start, leaving.vector, end, arriving.vector, shares))


def swung(start: Place, leaving: Bearing, end: Place, arriving: Bearing, tension: float = 1 / 3) -> Bend:
    """A shallow curve, told by its ends."""
    return Bend(start, end, leaving, arriving, smooth(start, leaving.vector, end, arriving.vector, tension))


@dataclass(frozen=True, slots=True)
class Yoked:
    """The back's lines above and below the yoke's seam.

    Attributes:
        neck: From the nape to the shoulder.
        shoulder: From the neck outward.
        yoke_armhole: From the shoulder down to the yoke's seam.
        foot: The yoke's seam, from the armhole to the centre back.
        top: The back's edge under it, from the centre back to the armhole.
        armhole: From there down to the side.
    """

    neck: Stroke
    shoulder: Stroke
    yoke_armhole: Stroke
    foot: Stroke
    top: Stroke
    armhole: Stroke


def back_lines(block: Block, sheet: DraftSheet) -> Yoked:
    """Draw the back's neck, shoulder and armhole, and the yoke's seam between."""
    sheet.heading("Back", HOLLOWED)
    outward = along(block.back_neck, block.back_shoulder)
    neck = sheet.draw("back neck curve", (bend(block.nape, RIGHTWARD, block.back_neck, outward.left),), "Level at the centre back, square to the shoulder.")
    shoulder = sheet.line("back shoulder line", block.back_neck, block.back_shoulder, why="The yoke's seam to the front.")
    leaving, chord = outward.rotated(SHOULDER - 90), along(block.back_shoulder, block.yoke_end)
    lean = _turned(chord.vector, leaving.vector)
    arriving = chord.rotated(-lean / 2)
    yoke_armhole = sheet.draw("yoke armhole", (swung(block.back_shoulder, leaving, block.yoke_end, arriving),), "Slightly hollow, a little wider than square at the shoulder.")
    foot = sheet.line("yoke seam", block.yoke_end, block.yoke, why="Straight on the grain, across the blades.")
    start = sheet.point("start of the back's shaping", block.yoke_end.left(YOKE_DART_LONG), "From here the back falls away from the yoke.")
    end = sheet.point("back at the yoke and armhole", block.yoke_end.down(YOKE_DART).left(0.04), "What the seam takes out here shapes the back over the blades.")
    fall = swung(start, RIGHTWARD, end, along(start, end).rotated(-_fall()))
    top = sheet.draw("back's yoke edge", (Straight(block.yoke, start), fall), "Level, and then a shallow curve down to the armhole.")
    below = arriving.rotated(-2 * _fall())
    armhole = sheet.draw("back armhole", (lower_armhole(end, below, block.back_underarm, RIGHTWARD),), "On from the yoke's armhole, level at the side.")
    return Yoked(neck, shoulder, yoke_armhole, foot, top, armhole)


def _fall() -> float:
    """Degrees by which the back's yoke edge falls."""
    return Vector(YOKE_DART_LONG, YOKE_DART).angle


def _turned(one: Vector, two: Vector) -> float:
    """Degrees from one direction to another, positive to the left."""
    turned = two.angle - one.angle
    return (turned + 180) % 360 - 180


def lower_armhole(start: Place, leaving: Bearing, end: Place, arriving: Bearing) -> Bend:
    """The armhole from the blades or the chest down to the side: steep first, then round."""
    drop, out = abs(start.y - end.y), abs(end.x - start.x)
    drawn = with_handles(start, leaving.vector, end, arriving.vector, 0.78 * drop, 0.7 * out)
    return Bend(start, end, leaving, arriving, drawn)


@dataclass(frozen=True, slots=True)
class Fronted:
    """The front's lines.

    Attributes:
        shoulder: From the neck outward.
        armhole: From the shoulder down to the side.
    """

    shoulder: Stroke
    armhole: Stroke


def front_lines(block: Block, arriving: Bearing, sheet: DraftSheet) -> Fronted:
    """Draw the front's shoulder and armhole; `arriving` is its direction at the side."""
    sheet.heading("Front", HOLLOWED)
    shoulder = sheet.line("front shoulder line", block.front_neck, block.front_shoulder, why="Sewn to the yoke.")
    outward = along(block.front_neck, block.front_shoulder)
    leaving = outward.rotated(90 + SHOULDER)
    down, over = along(block.front_shoulder, block.chest), along(block.chest, block.front_underarm)
    turning = down.rotated(0.55 * _turned(down.vector, over.vector))
    parts = (
        swung(block.front_shoulder, leaving, block.chest, turning, 0.36),
        bend(block.chest, turning, block.front_underarm, arriving, (0.75, 0.55)),
    )
    armhole = sheet.draw("front armhole", parts, "Hollow before the arm, level at the side.")
    return Fronted(shoulder, armhole)


def front_neck_curve(block: Block, throat: Place) -> Bend:
    """The front neck from the shoulder to the centre front."""
    return bend(block.front_neck, along(block.front_neck, block.front_shoulder).left, throat, RIGHTWARD, (0.58, 0.58))


def true_neck(block: Block, neck: Stroke, wanted: float, sheet: DraftSheet) -> tuple[Place, Stroke]:
    """Lower or raise the front neck until the neck seam has its length.

    Args:
        block: The block.
        neck: The back neck.
        wanted: Length of the whole neck seam from centre front to centre front, cm.
        sheet: Records what was found.
    """
    drafted = block.throat

    def seam(by: float) -> float:
        return 2 * (neck.path.length() + front_neck_curve(block, drafted.down(by)).segment.length())

    deepest = min(10.0, drafted.y - block.centre.y - 2.0)
    by = sheet.solve("lowering of the throat", seam, wanted, (-3.0, deepest), "The neck seam is as long as the collar that was asked for.")
    throat = sheet.point("throat", drafted.down(by) if by >= 0 else drafted.up(-by), "The neck at the centre front.")
    curve = sheet.draw("front neck curve", (front_neck_curve(block, throat),), "Square to the shoulder, level at the centre front.")
    return throat, curve


def side_parts(top: Place, leaving: Bearing, waist: Place, hem: Place) -> tuple[Bend, Bend]:
    """A side seam: from the underarm in to the waist and out to the hem, plumb at waist and hem."""
    return swung(top, leaving, waist, DOWNWARD), swung(waist, DOWNWARD, hem, DOWNWARD)


def hem_parts(centre: Place, side: Place, *, toward_side: str) -> tuple[Bend, ...] | tuple[Straight, ...]:
    """A hem from the centre to the side: straight, or a tail that rises and ends square to the side."""
    if abs(centre.y - side.y) < 1e-9:
        return (Straight(centre, side),)
    way = RIGHTWARD if toward_side == "right" else LEFTWARD
    return (swung(centre, way, side, way, 0.5),)

