"""Trousers, the back, drawn over the front.

Source: W. Aldrich, Metric Pattern Cutting for Women's Wear (women's trouser block); the inseam's
1 cm at knee and hem, its hollow, and the places and lengths of the darts are from memory: the same.
"""

from __future__ import annotations

from drafting.body import Body
from drafting.craft.curves import hook
from drafting.craft.pencil import hooked
from drafting.craft.rules import BACK_DARTS, BACK_DIAGONAL, BACK_HOLLOW, MOST_DART
from drafting.craft.sheet import DraftSheet
from drafting.garments.trousers.figure import Figure, changed
from drafting.garments.trousers.fits import hip_ease
from drafting.garments.trousers.frame import Frame
from drafting.garments.trousers.front import at_side_hip, waist_quarter
from drafting.garments.trousers.panel import Panel, darts, leg, long_seams
from drafting.garments.trousers.spec import Trousers
from drafting.geometry import RIGHT
from drafting.trace import RIGHTWARD, Length, along, larger, straight

WIDER = 1.0
"""Knee and hem are 1 cm wider than the front at each seam. Source: as above."""


def back(level: Frame, front: Panel, person: Figure, body: Body, cut: Trousers, sheet: DraftSheet) -> Panel:
    """Draw the back over the front."""
    sheet.heading("Back", "W. Aldrich, Metric Pattern Cutting for Women's Wear; inseam and darts from memory")
    out = sheet.length("front corner from the crease", Length(front.corner.x, "crease to front corner"), "Read off the front.")
    corner = sheet.point("back crotch corner", front.corner.left(out / 4), "The seat needs more cloth behind the leg.")
    hip_centre = sheet.point("back centre line at the hip", corner.level_with(level.hip), "Squared up from the corner.")
    square = sheet.point("waist over the back corner", corner.level_with(level.waist), "Squared up further.")
    start = sheet.point("back curve start", square.between(corner, 0.5 + person.back_scoop / 8), "Half way down; the seat line leans from here.")
    leaned = sheet.point("seat line at the waist", square.left(person.leaning), "The seat line leans in toward the waist.")
    waist_centre = sheet.point("centre back at the waist", leaned.up(person.raised), "Raised, for sitting and bending.")

    spare = sheet.length("back spare", (body.hip_girth + hip_ease(body, cut) - body.waist_girth) / 4 - 1.75, "What a quarter loses from hip to waist.")
    intakes = intake(spare, sheet)
    sewn = sheet.length("back waist", waist_quarter(body, cut), "A quarter of the trouser top.")
    waist_side = sheet.point("back side at the waist", waist_centre.reaching(level.side_waist, sewn + sum(intakes), "left"), "On the waist line.")

    extension = body.hip_girth / 16 + 0.5
    wide = sheet.point("fork carried out", front.fork.right(changed(extension / 2, person.forks / 3 + person.back_fork - person.front_fork)), "Two thirds of the body's depth lie behind.")
    fork = sheet.point("back fork", wide.down(0.5), "Lowered, so that the longer curve takes the inseam to length.")
    hip_width = changed(body.hip_girth / 4 + hip_ease(body, cut) / 4 + 0.5, person.hips_back)
    hip_side = sheet.point("back side at the hip", at_side_hip(hip_centre.left(hip_width), level), "A quarter of the body and of its ease, and 0.5 cm more.")

    below = leg("back", level, WIDER, person.swing, sheet)
    curve, diagonal = hook(start, start - waist_centre, fork, RIGHT, corner, BACK_DIAGONAL.at(body.hip_girth) - person.back_scoop)
    bend = hooked(start, along(waist_centre, start), fork, RIGHTWARD, curve, corner, diagonal)
    crotch = sheet.draw("back crotch", (*straight(waist_centre, start), bend), "Long and flat, to pass under the seat.")
    side, inseam = long_seams("back", waist_side, hip_side, fork, below, 0.0, BACK_HOLLOW, sheet)
    return Panel(
        name="back", waist_centre=waist_centre, waist_side=waist_side, hip_side=hip_side, corner=corner,
        hook_start=start, fork=fork, diagonal=diagonal, leg=below, waist_sewn=sewn,
        darts=darts("back", waist_centre, waist_side, spread(sewn, intakes, BACK_DARTS), sheet),
        bulge=0.0, hollow=BACK_HOLLOW, crotch=crotch, side=side, inseam=inseam,
    )


def spread(sewn: Length, intakes: tuple[float, ...], lengths: tuple[float, float]) -> tuple[tuple[Length, float, float], ...]:
    """Darts that divide the waist evenly: (distance from the centre, intake, length)."""
    return tuple(
        ((sewn + sum(intakes)) * (i + 1) / (len(intakes) + 1), width, lengths[min(i, 1)])
        for i, width in enumerate(intakes)
    )


def intake(spare: float, sheet: DraftSheet) -> tuple[float, ...]:
    """Widths of the back darts, none to three: 2 cm each of two, more or fewer as the figure asks.

    Source: W. Aldrich, Metric Pattern Cutting for Women's Wear (two of 2 cm); on other figures
    common practice, no source.
    """
    wanted = spare - 0.25 if spare < 4.25 else larger(4.0, spare - 4.5)
    if not sheet.compare("back darts", wanted, ">=", 1, "Must the darts of a back quarter take 1 cm or more?", "Less goes into the side seam."):
        return ()
    if sheet.compare("a single back dart", wanted, "<", 2.5, "Would one dart of less than 2.5 cm do?", "Two tiny darts pucker."):
        return (sheet.length("back dart", wanted, "All in one."),)
    three = sheet.compare("a third back dart", wanted, ">", 2 * MOST_DART, "Would two darts be wider than 3 cm each?", "A wide dart pokes out at its point.")
    many = 3 if three else 2
    return (sheet.length("back dart", wanted / many, "The darts share it evenly."),) * many
