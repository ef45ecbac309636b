"""What front and back have in common: the leg, the long seams, the darts of a panel."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise

from drafting.craft.curves import swept
from drafting.craft.darts import PlannedDart
from drafting.craft.pencil import draw_dart, shaped
from drafting.craft.sheet import DraftSheet
from drafting.garments.trousers.figure import changed
from drafting.garments.trousers.frame import Frame
from drafting.geometry import DOWN, Cubic, Line, Point, Segment, smooth, with_handles
from drafting.trace import (
    DOWNWARD,
    UPWARD,
    Bearing,
    Bend,
    Length,
    Part,
    Place,
    Stroke,
    along,
    straight,
)


@dataclass(frozen=True, slots=True)
class Leg:
    """A panel's leg below the thigh: the places at which each seam goes on to the hem.

    Attributes:
        side: Side seam at the knee and at the hem; at the hem alone where the leg ends above the knee.
        inner: The same of the inseam.
        fall: Direction in which the side seam hangs straight from the hip to the hem, as a skirt's does;
            None where it hangs plumb from the hip and is shaped to the leg.
    """

    side: tuple[Place, ...]
    inner: tuple[Place, ...]
    fall: Bearing | None = None

    @property
    def short(self) -> bool:
        """Whether the leg ends before it gets straight; its seams then end plumb."""
        return len(self.side) == 1

    @property
    def hem_side(self) -> Place:
        """Side seam at the hem."""
        return self.side[-1]

    @property
    def hem_inner(self) -> Place:
        """Inseam at the hem."""
        return self.inner[-1]

    @property
    def down_the_side(self) -> Bearing:
        """Direction in which the side seam arrives at the straight leg."""
        return self.fall or (DOWNWARD if self.short else along(*self.side))

    @property
    def down_the_inside(self) -> Bearing:
        """Direction in which the inseam arrives at the straight leg."""
        return DOWNWARD if self.short else along(*self.inner)

    @property
    def up_the_inside(self) -> Bearing:
        """Direction in which the inseam leaves the hem."""
        return UPWARD if self.short else along(*reversed(self.inner))


@dataclass(frozen=True, slots=True, kw_only=True)
class Panel:
    """One leg panel as drafted, before trueing; the side seam to the left.

    Attributes:
        name: "front" or "back".
        waist_centre: Centre seam at the waist.
        waist_side: Side seam at the waist.
        hip_side: Side seam at the hip line.
        corner: Crotch corner, where the centre line stands on the crotch line.
        hook_start: Where the crotch curve leaves the straight centre line.
        fork: Crotch point, where the crotch seam meets the inseam.
        diagonal: How far out on the corner's diagonal the crotch curve passes, cm.
        leg: The points below.
        waist_sewn: Wanted length of the waist with its darts closed, cm.
        darts: Darts from the centre to the side.
        bulge: How far the hip curve stands out between waist and hip, cm.
        hollow: How far the inseam is hollowed between fork and knee, cm.
        dip: How much lower than level the middle of the hem hangs, cm.
        natural_side: Where the side seam passes the natural waist under a raised top.
        crotch: Line from the waist to the fork.
        side: Line from the waist to the hem.
        inseam: Line from the fork to the hem.
    """

    name: str
    waist_centre: Place
    waist_side: Place
    hip_side: Place
    corner: Place
    hook_start: Place
    fork: Place
    diagonal: float
    leg: Leg
    waist_sewn: Length
    darts: tuple[PlannedDart, ...]
    bulge: float
    hollow: float
    crotch: Stroke
    side: Stroke
    inseam: Stroke
    dip: float = 0.0
    natural_side: Place | None = None


def leg(name: str, level: Frame, wider: float, swing: float, sheet: DraftSheet) -> Leg:
    """Set out knee and hem, half of each girth to both sides of the crease.

    A swung leg goes outward at the hem, and half as far at the knee.
    """
    knee, hem = level.knee_half + wider, level.hem_half + wider
    why = "Centred on the crease." if wider == 0 else "The back is wider than the front by this on each side."
    sides = (
        sheet.point(f"{name} side at the knee", level.knee.left(changed(knee, swing / 2)), why),
        sheet.point(f"{name} side at the hem", level.hem.left(changed(hem, swing)), why),
    )
    hem_inner = sheet.point(f"{name} inseam at the hem", level.hem.right(changed(hem, -swing)), why)
    return Leg(sides, (sheet.point(f"{name} inseam at the knee", level.knee.right(changed(knee, -swing / 2)), why), hem_inner))


def side_line(waist: Point, hip: Place, below: Leg, bulge: float, natural: Place | None = None) -> Iterator[Segment]:
    """The side seam from waist to hem, stroke by stroke: hip curve, plumb at the hip, then into the straight leg.

    From a raised top it comes down straight, and is hollow at the natural waist.

    Source: W. Aldrich, Metric Pattern Cutting for Women's Wear; plumb at the hip is house method.
    """
    fall = below.fall.vector.unit if below.fall else DOWN
    hip_curve = swept(natural or waist, hip, fall, -abs(bulge), least=0.0)
    if natural:
        yield smooth(waist, (natural - waist).unit, natural, hip_curve.tangent(0.0))
    yield hip_curve
    yield smooth(hip, fall, below.side[0], below.down_the_side.vector.unit)
    yield from (Line(a, b) for a, b in pairwise(below.side))


def inseam_line(fork: Place, below: Leg, hollow: float) -> tuple[Segment, ...]:
    """The inseam from fork to hem, hollowed above the knee, straight below it.

    A short leg's leaves the fork along the straight line and ends plumb.

    Source: W. Aldrich, Metric Pattern Cutting for Women's Wear; the short leg's: house method.
    """
    thigh = _thigh(fork, below, hollow)
    return (thigh, *(Line(a, b) for a, b in pairwise(below.inner)))


def _thigh(fork: Place, below: Leg, hollow: float) -> Cubic:
    """The inseam above the straight leg: bent evenly, or more toward the knee where it slants much."""
    knee, way = below.inner[0], below.down_the_inside.vector.unit
    chord = knee - fork
    bent = math.asin(max(-1.0, min(1.0, chord.unit.cross(way))))
    if below.short:
        return swept(fork, knee, way, -hollow, least=0.0, most=0.0)
    crossing = chord.length - 2 * hollow / math.tan(bent) if bent > 0 else 0.0
    if crossing <= chord.length / 2:
        return swept(fork, knee, way, -hollow)
    far = min(crossing, LOWEST_BEND * chord.length)
    corner = fork + chord.unit * far + chord.unit.right * ((chord.length - far) * math.tan(bent))
    return with_handles(fork, corner - fork, knee, way, corner.distance(fork) * 2 / 3, corner.distance(knee) * 2 / 3)


LOWEST_BEND = 0.85
"""The directions of the inseam's ends cross at most 85 % of the way down to the knee, so that it is hollow
all the way; under a large thigh it is hollowed more than usual for it. House method."""


def side_parts(waist: Place, hip: Place, below: Leg, bulge: float, natural: Place | None = None) -> tuple[Part, ...]:
    """The side seam, told by what lies on the paper."""
    *over, hip_curve, thigh = curves(side_line(waist, hip, below, bulge, natural))
    return (
        *(shaped(waist, natural, along(natural, hip).to(bend.tangent(1.0)), bend) for bend in over if natural),
        shaped(natural or waist, hip, below.fall or DOWNWARD, hip_curve),
        Bend(hip, below.side[0], below.fall or DOWNWARD, below.down_the_side, thigh),
        *straight(*below.side),
    )


def inseam_parts(fork: Place, below: Leg, hollow: float) -> tuple[Part, ...]:
    """The inseam, told by what lies on the paper."""
    (thigh,) = curves(inseam_line(fork, below, hollow))
    return (shaped(fork, below.inner[0], below.down_the_inside, thigh), *straight(*below.inner))


def curves(line: Iterable[Segment]) -> tuple[Cubic, ...]:
    """Those stretches of a line that are curves."""
    return tuple(s for s in line if isinstance(s, Cubic))


def long_seams(
    name: str, waist: Place, hip: Place, fork: Place, below: Leg, bulge: float, hollow: float, sheet: DraftSheet
) -> tuple[Stroke, Stroke]:
    """Draw the side seam and the inseam."""
    side = sheet.draw(f"{name} side", side_parts(waist, hip, below, bulge), "Round over the hip, hanging plumb from it.")
    inseam = sheet.draw(f"{name} inseam", inseam_parts(fork, below, hollow), "The thigh narrows fast under the fork.")
    return side, inseam


def darts(
    name: str, centre: Place, side: Place, plan: tuple[tuple[float, float, float], ...], sheet: DraftSheet
) -> tuple[PlannedDart, ...]:
    """Draw darts square to the waist line: (distance from the centre to the middle, intake, length)."""
    drawn = []
    for number, (at, intake, length) in enumerate(plan, 1):
        label = f"{name} dart" if len(plan) == 1 else f"{name} dart {number}"
        middle = sheet.point(f"{label} middle", centre.towards(side, at), "In the middle of the dart's mouth.")
        drawn.append(draw_dart(label, (centre, side), middle, intake, length, "left", sheet))
    return tuple(drawn)
