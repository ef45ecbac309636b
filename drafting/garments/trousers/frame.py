"""Trousers, the frame: level lines and the girths of the leg.

Half of a right leg is drawn; the crease is a plumb line, the side seam lies to its left, the
centre front and the inseam to its right. The waist is at the top.

Source: W. Aldrich, Metric Pattern Cutting for Women's Wear (women's trouser block).
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.body import Body
from drafting.craft.sheet import DraftSheet
from drafting.errors import SpecError
from drafting.garments.trousers.figure import BLOCK, Figure, changed
from drafting.garments.trousers.legs import LEGS, hem_girth, inside_leg, is_full, knee_girth
from drafting.garments.trousers.manners import MANNERS
from drafting.garments.trousers.spec import Trousers
from drafting.trace import Length, Place, smaller
from drafting.trace.length import number
from drafting.trace.place import corner_of_paper

LEAST_SEAT = 5.0
"""The hip line is drawn at least 5 cm above the crotch line; on real bodies the fullest seat can lie at
or below it (ANSUR II, 2012). Nearer to the crotch line a tape on the paper would go round the forks as
well, and the sides would lose what lies between the legs. Source: house method."""

LEAST_INSIDE = 3.0
"""The inseam is at least 3 cm long. Source: common practice, no source (shorts of 3 to 25 cm)."""

LEAST_SHANK = 12.0
"""The hem ends at least 12 cm below the knee line: shorter legs are another cut. House method."""


@dataclass(frozen=True, slots=True)
class Frame:
    """Level marks on the crease and the half widths of the leg, in cm.

    `end` is where a shorter leg is cut off, `natural` the waist under a raised top, `whole` the height
    under which the panels are whole.
    """

    waist: Place
    side_waist: Place
    hip: Place
    side_hip: Place
    crotch: Place
    knee: Place
    hem: Place
    knee_half: Length
    hem_half: Length
    end: Place | None = None
    natural: Place | None = None
    whole: float = 0.0


@dataclass(frozen=True, slots=True)
class Side:
    """How one side of an uneven body differs from the other; nothing, where the sides are even.

    Attributes:
        higher: How much longer this side is from waist to floor than the other, cm.
        hip_line: Depth in cm of the hip line at the centre, common to both sides; None: the side's own.
    """

    higher: float = 0.0
    hip_line: float | None = None


EVEN = Side()


def frame(body: Body, cut: Trousers, sheet: DraftSheet, own: Side = EVEN, person: Figure = BLOCK) -> Frame:
    """Square the level lines across the crease and settle the girths of the leg.

    A higher side is given its length at the side's waist only, so that crotch, knee and hem stay
    level. Source: common practice, no source.
    """
    sheet.heading("Frame", MANNERS[cut.method].source)
    waist = sheet.point("waist line", corner_of_paper(), "All heights are measured from it.")
    higher = own.higher + person.side_raised
    side_waist = waist if higher == 0 else sheet.point("side's waist line", waist.up(higher), "This side is higher; the leg is not longer.")
    crotch = sheet.point("crotch line", waist.down(changed(body.body_rise, person.rise)), "Where the legs part.")
    side_hip = sheet.point("hip line" if own.hip_line is None else "side's hip line", side_waist.down(_hip_depth(body, higher, sheet)), "Level of the fullest seat.")
    hip = side_hip if own.hip_line is None else sheet.point("hip line", waist.down(min(own.hip_line, float(body.body_rise) - LEAST_SEAT)), "Between the levels of the two sides.")
    floor = sheet.point("floor", waist.down(body.outside_leg_length), "Where the leg ends.")
    half_leg = sheet.length(
        "half the leg", Length(crotch.distance(floor), "crotch line to floor") / 2, "Inside leg, halved."
    )
    knee_up = LEGS[cut.leg].knee_up
    knee = sheet.point("knee line", crotch.down(half_leg - 5 - knee_up if knee_up else half_leg - 5), "A little above the knee, where it bends." if not knee_up else "Raised, where a flared leg is narrowest.")
    ground = sheet.point("floor under the heel", floor.down(Length(cut.shoe_height, "shoe height")), "The heel lifts the leg.") if cut.shoe_height else floor
    hem = sheet.point("hem line", ground.up(Length(cut.hem_over_floor, "hem over floor")), "Clear of the floor.")
    if knee.y - hem.y < LEAST_SHANK:
        raise SpecError(
            f"The hem would end only {knee.y - hem.y:.1f} cm below the knee line; lower it.",
            where="garment.hem_over_floor",
            received=cut.hem_over_floor,
            allowed=(0.0, max(0.0, cut.hem_over_floor - LEAST_SHANK + knee.y - hem.y)),
        )
    hem_half, knee_half = _leg(body, cut, sheet)
    return Frame(waist, side_waist, hip, side_hip, crotch, knee, hem, knee_half, hem_half, _end(crotch, floor, hem, cut, sheet))


def _end(crotch: Place, floor: Place, hem: Place, cut: Trousers, sheet: DraftSheet) -> Place | None:
    """Where a leg ends that is shorter than the full one."""
    if is_full(cut):
        return None
    inside = inside_leg(Length(crotch.distance(floor), "crotch line to floor"), cut)
    longest, shortest = crotch.y - hem.y, LEAST_INSIDE + MANNERS[cut.method].rise_ease
    if inside < shortest:
        raise SpecError(
            f'The crotch of method "{cut.method}" lies {MANNERS[cut.method].rise_ease:g} cm deeper than the body rise; its inside_leg can be {shortest:g} cm at least.',
            where="garment.inside_leg", received=float(inside), allowed=(shortest, longest),
        )
    if inside > longest:
        raise SpecError(
            f"An inside_leg of {inside:.1f} cm reaches below the hem of the full leg, {longest:.1f} cm down; leave it out, and set hem_over_floor or shoe_height instead.",
            where="garment.inside_leg", received=float(inside), allowed=(shortest, longest),
        )
    return sheet.point("end of the leg", crotch.down(inside), "The full leg is cut off here.")


def _hip_depth(body: Body, high_side: float, sheet: DraftSheet) -> float:
    """Waist to hip as measured, unless that reaches the crotch line."""
    deepest = body.body_rise + high_side - LEAST_SEAT
    low = sheet.compare(
        "a raised hip line",
        body.side_waist_to_hip,
        ">",
        deepest,
        "Does the fullest seat lie near the crotch line, or under it?",
        "Across the forks the hips cannot be measured; their width is kept down to there.",
    )
    return smaller(body.side_waist_to_hip, deepest) if low else body.side_waist_to_hip


def _leg(body: Body, cut: Trousers, sheet: DraftSheet) -> tuple[Length, Length]:
    manner = MANNERS[cut.method]
    less = manner.wider / 2 - manner.seam
    why = f"The back is {number(manner.wider)} cm wider each side." if manner.seam == 0 else f"The back is {number(manner.wider)} cm wider each side, and the seams are included."
    hem = sheet.length("hem girth", hem_girth(body, cut), "Round the whole leg.")
    knee = sheet.length("knee girth", knee_girth(body, cut), "Round the whole leg.")
    return sheet.length("half the front hem", hem / 4 - less, why), sheet.length("half the front knee", knee / 4 - less, why)
