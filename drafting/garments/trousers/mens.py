"""Trousers, the men's block: a classic plain front and a back with one dart, drafted with its seams.

The published block includes seams of 1 cm on all sewn edges. It is drafted so, cut edge to cut edge, and
the seams are then taken off (`seams_off`), since everything after it works on stitching lines. A straight
waistband is part of its rise; the hem has no allowance.

Source: W. Aldrich, Metric Pattern Cutting for Menswear (classic trouser block). The published block has
2 cm of ease at the seat, the front has no share in it; other eases are shared evenly. The step from hem
to knee is from memory: the same. The crotch diagonals, the inseams' hollows and what happens on figures
with a small or a very large waist are house method.
"""

from __future__ import annotations

from dataclasses import replace

from drafting.body import Body
from drafting.craft.curves import hook
from drafting.craft.pencil import hooked
from drafting.craft.rules import (
    BACK_DIAGONAL,
    BACK_HOLLOW,
    FRONT_DIAGONAL,
    FRONT_HOLLOW,
    HIP_CURVE,
    MOST_DART,
)
from drafting.craft.sheet import DraftSheet
from drafting.garments.trousers.back import spread
from drafting.garments.trousers.figure import Figure, changed
from drafting.garments.trousers.fits import hip_ease
from drafting.garments.trousers.frame import Frame
from drafting.garments.trousers.front import at_side_hip, curve_height, on_the_crease, waist_quarter
from drafting.garments.trousers.manners import band_in_rise
from drafting.garments.trousers.panel import Panel, darts, leg, long_seams
from drafting.garments.trousers.spec import Trousers
from drafting.geometry import RIGHT
from drafting.trace import RIGHTWARD, Length, along, larger, smaller, straight

SEAM = 1.0
"""The published block includes 1 cm on every sewn edge; proven by its own sums for waist, seat and hem."""

WIDER = 2.0
"""Knee and hem are 2 cm wider than the front at each seam. Source: as above."""

DART, DART_LENGTH = 2.5, 12.0
"""Width and length of the back's one dart, cm. Source: as above."""

MOST_PLAIN = 5.5
"""A front quarter that loses more than 5.5 cm gets a dart; else it is plain. House method."""


def with_seams(level: Frame, cut: Trousers, sheet: DraftSheet) -> Frame:
    """The level lines of the block: its top is a seam's width over the seam of the band."""
    band = Length(band_in_rise(cut), "waistband")
    top = sheet.point("top of the block", level.waist.down(band - SEAM) if band else level.waist.up(SEAM), "The rise, less the band, and a seam.")
    if level.side_waist is level.waist:
        return replace(level, waist=top, side_waist=top)
    side = sheet.point("side's top of the block", level.side_waist.down(band - SEAM) if band else level.side_waist.up(SEAM), "This side is higher.")
    return replace(level, waist=top, side_waist=side)


def front(level: Frame, person: Figure, body: Body, cut: Trousers, sheet: DraftSheet) -> Panel:
    """Draw the front, seams included."""
    sheet.heading("Front with its seams", "W. Aldrich, Metric Pattern Cutting for Menswear")
    corner = sheet.point("front crotch corner", level.crotch.right(body.hip_girth / 12 + 1.5), "Plumb under the centre front.")
    hip_centre = sheet.point("centre front at the hip", corner.level_with(level.hip), "The opening lies above it.")
    hip_width = changed(body.hip_girth / 4 + hip_ease(body, cut) / 4 + 1.5, person.hips_front)
    hip_side = sheet.point("front side at the hip", at_side_hip(hip_centre.left(hip_width), level), "A quarter of the seat and two seams; the back has the ease of the published block.")
    fork = sheet.point("front fork", corner.right(changed(body.hip_girth / 16 + 0.5, person.forks / 3 + person.front_fork)), "Half the body's depth, a third of it in front.")

    spare = sheet.length("front spare", (body.hip_girth + hip_ease(body, cut) - body.waist_girth) / 4 - 0.5, "What a quarter loses from seat to waist.")
    upright = sheet.decide("an upright centre front", person.plumb or body.hip_girth <= body.waist_girth, "Is the waist as large as the seat, or the abdomen full?", "A full abdomen needs the centre front plumb.")
    square = sheet.point("waist over the front corner", corner.level_with(level.waist), "Squared up from the corner.")
    leaned = square.left(0 if upright else 1)
    waist_centre = sheet.point("centre front at the waist", leaned.up(person.front_raised) if person.front_raised else leaned, "Leans in toward a smaller waist.")
    intakes = () if person.no_front_darts else intake(spare, sheet)
    sewn = sheet.length("front waist", waist_quarter(body, cut) + 2.25, "A quarter of the trouser top, a little more than the back's, and two seams.")
    waist_side = sheet.point("front side at the waist", waist_centre.reaching(level.side_waist, sewn + sum(intakes), "left"), "On the top of the block.")

    below = leg("front", level, 0.0, person.swing, sheet)
    start = sheet.point("front curve start", corner.up(curve_height(hip_centre, corner, Length(level.waist.y - corner.y - SEAM, "rise"), band_in_rise(cut), body, cut, sheet)), "The straight above it takes the fly.")
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


def intake(spare: float, sheet: DraftSheet) -> tuple[float, ...]:
    """Widths of the front darts, where the waist is so small that a plain front cannot lose it."""
    if not sheet.compare("a front dart", spare, ">", MOST_PLAIN, "Does a front quarter lose more than 5.5 cm?", "A plain front loses it all at the side seam."):
        return ()
    two = sheet.compare("a second front dart", spare, ">", MOST_PLAIN + 3, "Does it lose more than 8.5 cm?", "One dart would leave too round a side seam.")
    return (2.0, 2.0) if two else (2.0,)


def back(level: Frame, front: Panel, person: Figure, body: Body, cut: Trousers, sheet: DraftSheet) -> Panel:
    """Draw the back over the front, seams included."""
    sheet.heading("Back with its seams", "W. Aldrich, Metric Pattern Cutting for Menswear")
    out = sheet.length("front corner from the crease", Length(front.corner.x, "crease to front corner"), "Read off the front.")
    corner = sheet.point("back crotch corner", front.corner.left(out / 4), "The seat needs more cloth behind the leg.")
    hip_centre = sheet.point("back centre line at the hip", corner.level_with(level.hip), "Squared up from the corner.")
    square = sheet.point("waist over the back corner", corner.level_with(level.waist), "Squared up further.")
    start = sheet.point("back curve start", square.between(corner, 0.5), "Half way down; the seat line leans from here.")
    leaned = sheet.point("seat line at the waist", square.left(person.leaning), "The seat line leans in toward the waist.")
    waist_centre = sheet.point("centre back at the waist", leaned.up(person.raised), "Raised, for sitting and bending.")

    intakes = back_intake(sheet.length("back spare", (body.hip_girth + hip_ease(body, cut) - body.waist_girth) / 4 - 0.5, "What a quarter loses from seat to waist."), sheet)
    sewn = sheet.length("back waist", waist_quarter(body, cut) + 1.75, "A quarter of the trouser top, a little less than the front's, and two seams.")
    waist_side = sheet.point("back side at the waist", waist_centre.reaching(level.side_waist, sewn + sum(intakes), "left"), "On the top of the block.")

    extension = (body.hip_girth / 16 + 0.5) / 2 + 0.5
    wide = sheet.point("fork carried out", front.fork.right(changed(extension, person.forks / 3 + person.back_fork - person.front_fork)), "Two thirds of the body's depth lie behind.")
    fork = sheet.point("back fork", wide.down(0.5), "Lowered, so that the longer curve takes the inseam to length.")
    hip_width = changed(body.hip_girth / 4 + hip_ease(body, cut) / 4 + 2.5, person.hips_back)
    hip_side = sheet.point("back side at the hip", at_side_hip(hip_centre.left(hip_width), level), "A quarter of the seat, the back's share of ease and two seams.")

    below = leg("back", level, WIDER, person.swing, sheet)
    curve, diagonal = hook(start, start - waist_centre, fork, RIGHT, corner, BACK_DIAGONAL.at(body.hip_girth) - person.back_scoop)
    bend = hooked(start, along(waist_centre, start), fork, RIGHTWARD, curve, corner, diagonal)
    crotch = sheet.draw("back crotch", (*straight(waist_centre, start), bend), "Long and flat, to pass under the seat.")
    side, inseam = long_seams("back", waist_side, hip_side, fork, below, 0.0, BACK_HOLLOW, sheet)
    return Panel(
        name="back", waist_centre=waist_centre, waist_side=waist_side, hip_side=hip_side, corner=corner,
        hook_start=start, fork=fork, diagonal=diagonal, leg=below, waist_sewn=sewn,
        darts=darts("back", waist_centre, waist_side, spread(sewn, intakes, (DART_LENGTH, DART_LENGTH)), sheet),
        bulge=0.0, hollow=BACK_HOLLOW, crotch=crotch, side=side, inseam=inseam,
    )


def back_intake(spare: float, sheet: DraftSheet) -> tuple[float, ...]:
    """Widths of the back darts: one of 2.5 cm on the usual figure, fewer or more as the waist asks."""
    if not sheet.compare("back darts", spare, ">=", 1.25, "Does a back quarter lose 1.25 cm or more?", "Less goes into the side seam."):
        return ()
    wanted = sheet.length("taken by back darts", smaller(spare - 0.25, larger(DART, spare - 4.5)), "The rest goes into side seam and seat line.")
    several = sheet.compare("several back darts", wanted, ">", MOST_DART, "Would one dart be wider than 3 cm?", "A wide dart pokes out at its point.")
    many = (2 if wanted <= 2 * MOST_DART else 3) if several else 1
    return (float(wanted) / many,) * many
