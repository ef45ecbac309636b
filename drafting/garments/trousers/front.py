"""Trousers, the front: half a leg, from the centre front outward.

Source: W. Aldrich, Metric Pattern Cutting for Women's Wear (women's trouser block); what happens on
figures without a waist is common practice, no source.
"""

from __future__ import annotations

from drafting.body import Body
from drafting.craft.closure import LEAST_OPENING, needed_opening
from drafting.craft.curves import hook
from drafting.craft.pencil import hooked
from drafting.craft.rules import FRONT_DIAGONAL, FRONT_HOLLOW, HIP_CURVE, OPENING_ABOVE_HOOK
from drafting.craft.sheet import DraftSheet
from drafting.garments.trousers.figure import Figure, changed
from drafting.garments.trousers.fits import fullness, hip_ease, top_girth
from drafting.garments.trousers.frame import Frame
from drafting.garments.trousers.panel import Panel, darts, leg, long_seams
from drafting.garments.trousers.spec import Trousers
from drafting.geometry import RIGHT
from drafting.trace import RIGHTWARD, Length, Place, along, larger, smaller, straight

DART_LENGTH = 10.0
"""Length of a front dart, cm. Source: W. Aldrich, Metric Pattern Cutting for Women's Wear."""

LOWEST_CURVE = 0.6
"""The curve starts no lower over the crotch line than six tenths of the fork's width. Source: house method."""

APART = 1.8
"""Two front darts stand 1.8 cm to both sides of the crease. Source: house method."""


def front(level: Frame, person: Figure, body: Body, cut: Trousers, sheet: DraftSheet) -> Panel:
    """Draw the front."""
    sheet.heading("Front", "W. Aldrich, Metric Pattern Cutting for Women's Wear")
    corner = sheet.point("front crotch corner", level.crotch.right(body.hip_girth / 12 + 1.5), "Plumb under the centre front.")
    hip_centre = sheet.point("centre front at the hip", corner.level_with(level.hip), "The opening lies above it.")
    hip_width = changed(body.hip_girth / 4 + hip_ease(body, cut) / 4 - 0.5, person.hips_front)
    hip_side = sheet.point("front side at the hip", at_side_hip(hip_centre.left(hip_width), level), "A quarter of the body and of its ease; the back has 0.5 cm more, the front as much less.")
    fork = sheet.point("front fork", corner.right(changed(body.hip_girth / 16 + 0.5, person.forks / 3 + person.front_fork)), "Half the body's depth, a third of it in front.")

    spare = sheet.length("front spare", (body.hip_girth + hip_ease(body, cut) - body.waist_girth) / 4 - 1.75, "What a quarter loses from hip to waist.")
    upright = sheet.decide("an upright centre front", person.plumb or body.hip_girth - body.waist_girth <= 3, "Is the waist within 3 cm of the hip, or the abdomen full?", "A full abdomen needs the centre front plumb.")
    square = sheet.point("waist over the front corner", corner.level_with(level.waist), "Squared up from the corner.")
    leaned = square.left(0 if upright else 1)
    waist_centre = sheet.point("centre front at the waist", leaned.up(person.front_raised) if person.front_raised else leaned, "Leans in toward a smaller waist.")
    intakes = () if person.no_front_darts else intake(spare, sheet)
    sewn = sheet.length("front waist", waist_quarter(body, cut), "A quarter of the trouser top.")
    waist_side = sheet.point("front side at the waist", waist_centre.reaching(level.side_waist, sewn + sum(intakes), "left"), "A quarter of the top, darts open.")

    below = leg("front", level, 0.0, person.swing, sheet)
    start = sheet.point("front curve start", corner.up(curve_height(hip_centre, corner, body.body_rise, 0.0, body, cut, sheet)), "The straight above it takes the fly.")
    curve, diagonal = hook(start, start - waist_centre, fork, RIGHT, corner, FRONT_DIAGONAL.at(body.hip_girth) - person.front_scoop)
    bend = hooked(start, along(waist_centre, start), fork, RIGHTWARD, curve, corner, diagonal)
    crotch = sheet.draw("front crotch", (*straight(waist_centre, start), bend), "Close, and still free to sit.")
    side, inseam = long_seams("front", waist_side, hip_side, fork, below, HIP_CURVE, FRONT_HOLLOW, sheet)
    return Panel(
        name="front", waist_centre=waist_centre, waist_side=waist_side, hip_side=hip_side, corner=corner,
        hook_start=start, fork=fork, diagonal=diagonal, leg=below, waist_sewn=sewn,
        darts=darts("front", waist_centre, waist_side, on_the_crease(waist_centre, intakes), sheet),
        bulge=HIP_CURVE, hollow=FRONT_HOLLOW, crotch=crotch, side=side, inseam=inseam,
    )


def curve_height(hip_centre: Place, corner: Place, rise: Length, band: float, body: Body, cut: Trousers, sheet: DraftSheet) -> Length:
    """How far over the crotch line the front curve starts: at the hip line, between one and one and a half widths of the fork.

    Lower, down to six tenths of that, where the hips need a longer fly, or a lowered waist leaves it short. `rise` is the height of the
    waist seam over the crotch line, `band` the depth of a band that opens above it, cm. Source: house method.
    """
    fork = body.hip_girth / 16 + 0.5
    usual = larger(smaller(Length(hip_centre.y - corner.y, "hip line over crotch line"), fork * 1.5), fork)
    if cut.closure in ("side_zip", "none"):
        return usual
    shortest = LEAST_OPENING + (cut.band_depth if cut.waistband == "contoured" else 0.0)
    straight = larger(needed_opening(body.hip_girth, top_girth(body, cut), band), Length(shortest, "shortest fly")) + OPENING_ABOVE_HOOK
    room = rise - straight + cut.waist_position if cut.waist_position else rise - straight
    if not sheet.compare("a lowered curve start", room, "<", usual, "Do the hips need a longer fly than the straight above the curve takes?", "Waist and twice the opening must pass the hips."):
        return usual
    return larger(room, fork * LOWEST_CURVE)


def at_side_hip(place: Place, level: Frame) -> Place:
    """The place, on the level of the side's own hip line where the sides of the body differ."""
    return place if level.side_hip is level.hip else place.level_with(level.side_hip)


def waist_quarter(body: Body, cut: Trousers) -> Length:
    """A quarter of the trouser top, darts closed: body, ease and the fullness over the band."""
    return (top_girth(body, cut) + Length(fullness(cut), "fullness")) / 4


def intake(spare: float, sheet: DraftSheet) -> tuple[float, ...]:
    """Widths of the front darts, none to two, never over 2 cm each."""
    if not sheet.compare("a front dart", spare, ">=", 3, "Does a front quarter lose 3 cm or more?", "Less goes into the side seam."):
        return ()
    two = sheet.compare("a second front dart", spare, ">", 7, "Does it lose more than 7 cm?", "One dart would leave too round a side seam.")
    return (2.0, 2.0) if two else (2.0,)


def on_the_crease(centre: Place, intakes: tuple[float, ...]) -> tuple[tuple[float, float, float], ...]:
    """One dart stands on the crease; of two, one to each side of it, clear of fly and pocket."""
    crease = Length(centre.x, "centre front to the crease")
    places = (crease,) if len(intakes) == 1 else (crease - APART, crease + APART)
    return tuple((at, width, DART_LENGTH) for at, width in zip(places, intakes, strict=False))
