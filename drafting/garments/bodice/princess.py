"""Princess lines: all darts of a front, or of a back, taken up by one seam.

Source: from the shoulder or the armhole over the bust point to the waist dart, both edges rounded and walked
to one length, notched 4 to 5 cm either side of the bust point: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.craft.darts import split_at_point
from drafting.errors import ConstructionError
from drafting.garments.bodice.shaping import Whole, WholeBack
from drafting.geometry import Path, Point, Vector, root, turn, with_handles
from drafting.pattern import Dart

NOTCH_BESIDE = 4.5

IN_SHOULDER, IN_ARMHOLE = 0.5, 0.5
"""Shares of the shoulder and of the armhole at which the line starts. House method."""

WALK = 1.5
"""cm by which the side panel's line may be moved at the bust so that both are as long."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lines:
    """Both edges of a princess line and what it divides, plain lines, cm.

    Attributes:
        centre: The centre panel's edge: of a front from the top down, of a back from the waist up.
        side: The side panel's edge, the other way.
        shoulder_centre: The shoulder's stretch at the centre panel; None where it has none.
        shoulder_side: The same at the side panel.
        armhole_centre: The armhole's stretch at the centre panel.
        armhole_side: The same at the side panel.
        waist_centre: The waist at the centre panel.
        waist_side: The same at the side panel.
        side_seam: The side seam of the side panel.
        marks: Distances of the notches along each panel's edge.
        darts: Darts that stay in the centre panel.
        side_darts: Darts that stay in the side panel.
    """

    centre: Path
    side: Path
    shoulder_centre: Path | None
    shoulder_side: Path | None
    armhole_centre: Path | None
    armhole_side: Path
    waist_centre: Path
    waist_side: Path
    side_seam: Path
    marks: tuple[tuple[float, ...], tuple[float, ...]]
    darts: tuple[Dart, ...] = ()
    side_darts: tuple[Dart, ...] = ()


def through(start: Point, middle: Point, end: Point) -> Path:
    """A line from place to place, round as it passes the middle one."""
    before, after = (middle - start), (end - middle)
    along = before.unit + after.unit
    a, b = start.distance(middle), middle.distance(end)
    one = with_handles(start, _leaving(before, along), middle, along, 0.36 * a, 0.36 * a)
    two = with_handles(middle, along, end, after, 0.36 * b, 0.3 * b)
    return Path((one, two))


def _leaving(chord: Vector, along: Vector) -> Vector:
    """Leave so that the curve bends one way only."""
    turned = chord.angle_to(along) * (1.0 if chord.cross(along) >= 0 else -1.0)
    return chord.rotated(-0.6 * turned)


def walked(start: Point, middle: Point, end: Point, length: float) -> Path:
    """The same, its middle moved aside until it is so long.

    Raises:
        ConstructionError: No move of up to 1.5 cm does it.
    """
    across = (end - start).unit.left

    def moved(by: float) -> Path:
        return through(start, middle + across * by, end)

    by = root(lambda d: moved(d).length() - length, 0.0, WALK)
    by = root(lambda d: moved(d).length() - length, -WALK, 0.0) if by is None else by
    if by is None:
        raise ConstructionError("The princess line cannot be walked to one length.", where="shaping")
    return moved(by)


def front_lines(whole: Whole, *, from_shoulder: bool) -> Lines:
    """Divide a front that was laid whole along a line over the bust point."""
    back = turn(whole.degrees, whole.pivot)
    near, far = whole.waist_centre.start, back.point(whole.waist_side.end)
    if from_shoulder:
        inner, outer = whole.shoulder.split(whole.shoulder.length() * IN_SHOULDER)
        top, arm_centre, arm_side, shoulder_side = inner.end, None, whole.armhole.transformed(back), outer.transformed(back)
        shoulder_centre: Path = inner
    else:
        over, under = whole.armhole.split(whole.armhole.length() * IN_ARMHOLE)
        top, arm_centre, arm_side, shoulder_side = over.end, over, under.transformed(back), None
        shoulder_centre = whole.shoulder
    centre = through(top, whole.pivot, near)
    side = walked(far, whole.pivot, back.point(top), centre.length())
    upper = centre.segments[0].length()
    marks = (upper - NOTCH_BESIDE, upper + NOTCH_BESIDE)
    whole_length = centre.length()
    return Lines(
        centre=centre, side=side, shoulder_centre=shoulder_centre, shoulder_side=shoulder_side, armhole_centre=arm_centre, armhole_side=arm_side,
        waist_centre=whole.waist_centre, waist_side=whole.waist_side.transformed(back), side_seam=whole.side.transformed(back),
        marks=(marks, tuple(whole_length - m for m in marks)),
    )


def back_line(back: WholeBack, *, from_shoulder: bool) -> Lines:
    """Divide a back from its shoulder dart, or from the armhole, to its waist dart."""
    waist_darts = [d for d in back.darts if d.edge == "waist"]
    shoulder_darts = [d for d in back.darts if d.edge == "shoulder"]
    if waist_darts:
        dart = waist_darts[0]
        to_near, rest = split_at_point(back.waist, dart.first)
        to_far = Path(rest.segments[1:])
        near, far, tip = dart.first, dart.second, dart.point
    else:
        to_near, to_far = back.waist.split(back.waist.length() / 2)
        near = far = to_near.end
        tip = near.toward(back.neckline.start, 0.45)
    over, under = None, back.armhole.reversed()
    darts: tuple[Dart, ...] = ()
    if from_shoulder and shoulder_darts:
        one = shoulder_darts[0]
        outer, rest = split_at_point(back.shoulder, one.first)
        inner = Path(rest.segments[1:])
        top_side, top_centre = outer.end, inner.start
    elif from_shoulder:
        outer, inner = back.shoulder.split(back.shoulder.length() / 2)
        top_side = top_centre = inner.start
    else:
        over, under = under.split(under.length() * IN_ARMHOLE)
        outer, inner = None, back.shoulder
        top_side = top_centre = over.end
        darts = tuple(shoulder_darts)
    centre = through(near, tip, top_centre)
    side = walked(top_side, tip, far, centre.length())
    low = centre.segments[0].length()
    return Lines(
        centre=centre, side=side, shoulder_centre=inner, shoulder_side=outer, armhole_centre=None if over is None else over.reversed(),
        armhole_side=under.reversed(), waist_centre=to_near, waist_side=to_far, side_seam=back.side,
        marks=((low,), (centre.length() - low,)), darts=darts, side_darts=tuple(waist_darts[1:]),
    )
