"""What front and back have in common: the leg, the long seams, the darts of a panel."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.craft.curves import swept
from drafting.craft.darts import PlannedDart
from drafting.craft.pencil import draw_dart, shaped
from drafting.craft.sheet import DraftSheet
from drafting.garments.trousers.figure import changed
from drafting.garments.trousers.frame import Frame
from drafting.geometry import DOWN, Cubic, Line, Vector, smooth
from drafting.trace import DOWNWARD, Bend, Length, Part, Place, Stroke, along, straight


@dataclass(frozen=True, slots=True)
class Leg:
    """The four points of a panel's leg below the crotch."""

    knee_side: Place
    hem_side: Place
    hem_inner: Place
    knee_inner: Place

    @property
    def up_the_side(self) -> Vector:
        """Direction of the straight side from hem to knee."""
        return (self.knee_side - self.hem_side).unit

    @property
    def down_the_inside(self) -> Vector:
        """Direction of the straight inseam from knee to hem."""
        return (self.hem_inner - self.knee_inner).unit


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


def leg(name: str, level: Frame, wider: float, swing: float, sheet: DraftSheet) -> Leg:
    """Set out knee and hem, half of each girth to both sides of the crease.

    A swung leg goes outward at the hem, and half as far at the knee.
    """
    knee, hem = level.knee_half + wider, level.hem_half + wider
    why = "Centred on the crease." if wider == 0 else "The back is wider than the front by this on each side."
    return Leg(
        sheet.point(f"{name} side at the knee", level.knee.left(changed(knee, swing / 2)), why),
        sheet.point(f"{name} side at the hem", level.hem.left(changed(hem, swing)), why),
        sheet.point(f"{name} inseam at the hem", level.hem.right(changed(hem, -swing)), why),
        sheet.point(f"{name} inseam at the knee", level.knee.right(changed(knee, -swing / 2)), why),
    )


def side_line(waist: Place, hip: Place, below: Leg, bulge: float) -> tuple[Cubic, Cubic, Line]:
    """The side seam from waist to hem: hip curve, plumb at the hip, then into the straight leg.

    Source: W. Aldrich, Metric Pattern Cutting for Women's Wear; plumb at the hip is house method.
    """
    hip_curve = swept(waist, hip, DOWN, -abs(bulge), least=0.0)
    thigh = smooth(hip, DOWN, below.knee_side, -below.up_the_side)
    return hip_curve, thigh, Line(below.knee_side, below.hem_side)


def inseam_line(fork: Place, below: Leg, hollow: float) -> tuple[Cubic, Line]:
    """The inseam from fork to hem, hollowed above the knee, straight below it.

    Source: W. Aldrich, Metric Pattern Cutting for Women's Wear.
    """
    thigh = swept(fork, below.knee_inner, below.down_the_inside, -hollow)
    return thigh, Line(below.knee_inner, below.hem_inner)


def side_parts(waist: Place, hip: Place, below: Leg, bulge: float) -> tuple[Part, ...]:
    """The side seam, told by what lies on the paper."""
    hip_curve, thigh, _ = side_line(waist, hip, below, bulge)
    into_the_leg = along(below.knee_side, below.hem_side)
    return (
        shaped(waist, hip, DOWNWARD, hip_curve),
        Bend(hip, below.knee_side, DOWNWARD, into_the_leg, thigh),
        *straight(below.knee_side, below.hem_side),
    )


def inseam_parts(fork: Place, below: Leg, hollow: float) -> tuple[Part, ...]:
    """The inseam, told by what lies on the paper."""
    thigh, _ = inseam_line(fork, below, hollow)
    into_the_leg = along(below.knee_inner, below.hem_inner)
    return (shaped(fork, below.knee_inner, into_the_leg, thigh), *straight(below.knee_inner, below.hem_inner))


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
