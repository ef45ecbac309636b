"""Trousers, the quarter draft: the dressmaker's quick draft in quarters of hip and waist, net.

The front is drawn first; the back is traced from it and carried out. Its amounts are whole inches. A
fit that is chosen, or an ease that is ordered, wins over them, and the steps say so. The back leg is an
inch wider than the front one; each front takes half of that less, so that the leg comes out as asked.

Source: common practice, no source; second darts, the back's diagonal and the lean of the seat line, which
the quick draft leaves to the eye, are house method.
"""

from __future__ import annotations

from drafting.body import Body
from drafting.craft.curves import hook
from drafting.craft.pencil import hooked
from drafting.craft.rules import BACK_DARTS, BACK_HOLLOW, FRONT_HOLLOW, HIP_CURVE, SizeBand
from drafting.craft.sheet import DraftSheet
from drafting.garments.trousers.back import intake, spread
from drafting.garments.trousers.figure import Figure, changed
from drafting.garments.trousers.fits import hip_ease, thigh_ease
from drafting.garments.trousers.frame import Frame
from drafting.garments.trousers.front import at_side_hip, curve_height, waist_quarter
from drafting.garments.trousers.manners import INCH, MANNERS
from drafting.garments.trousers.panel import Leg, Panel, darts, inseam_line, leg, long_seams
from drafting.garments.trousers.spec import Trousers
from drafting.geometry import RIGHT, Path, Vector, crossing_with_line, root
from drafting.trace import RIGHTWARD, Length, Place, along, straight

FRONT_DIAGONAL, BACK_DIAGONAL = INCH, 1.5 * INCH
DART, DART_LENGTH = INCH, 4 * INCH
THIGH_LINE = 4 * INCH
MOST_SIDE = 6.5
"""A front quarter that loses more than 6.5 cm at the side seam gets a second dart. House method."""

CARRIED_OUT = SizeBand("back fork over front fork", ((110, 2 * INCH), (124, 3 * INCH), (999, 3.5 * INCH)), "common practice, no source (sizes read as hip girths)")


def front(level: Frame, person: Figure, body: Body, cut: Trousers, sheet: DraftSheet) -> Panel:
    """Draw the front in quarters."""
    sheet.heading("Front in quarters", "common practice, no source")
    share = hip_ease(body, cut) / 4
    sheet.decide("an inch over a quarter of the hip", abs(share - INCH) < 0.005, "Is the hip ease left to the method?", "An inch is customary; a fit or a hip ease that is chosen wins.")
    width = sheet.length("front width", body.hip_girth / 4 + share, "A quarter of the hip and of its ease.")
    extension = sheet.length("crotch extension", changed(width / 4, person.forks / 3 + person.front_fork), "A quarter of the front width; forks that the fit asks for win.")
    corner = sheet.point("front crotch corner", level.crotch.right((width - extension) / 2), "So that the crease is in the middle of the crotch width.")
    hip_centre = sheet.point("centre front at the hip", corner.level_with(level.hip), "The opening lies above it.")
    hip_side = sheet.point("front side at the hip", at_side_hip(hip_centre.left(changed(width, person.hips_front)), level), "The front's width.")
    fork = sheet.point("front fork", corner.right(extension), "The crotch width's inner end.")

    square = sheet.point("waist over the front corner", corner.level_with(level.waist), "Squared up from the corner.")
    waist_centre = sheet.point("centre front at the waist", square.up(person.front_raised), "Raised over a full abdomen.") if person.front_raised else square
    sewn = sheet.length("front waist", waist_quarter(body, cut), "A quarter of the waist.")
    intakes = () if person.no_front_darts else front_intake(width - sewn, sheet)
    waist_side = sheet.point("front side at the waist", waist_centre.reaching(level.side_waist, sewn + sum(intakes), "left"), "A quarter of the waist, darts open.")

    below = leg("front", level, 0.0, person.swing, sheet)
    thigh = sheet.point("thigh line", level.crotch.down(THIGH_LINE), "Four inches under the crotch line.")
    hollow = hollowed("front", fork, below, FRONT_HOLLOW, -MANNERS[cut.method].wider / 2, thigh, body, cut, sheet)
    start = sheet.point("front curve start", corner.up(curve_height(hip_centre, corner, body.body_rise, 0.0, body, cut, sheet)), "The straight above it takes the fly.")
    curve, diagonal = hook(start, start - waist_centre, fork, RIGHT, corner, FRONT_DIAGONAL - person.front_scoop)
    bend = hooked(start, along(waist_centre, start), fork, RIGHTWARD, curve, corner, diagonal)
    crotch = sheet.draw("front crotch", (*straight(waist_centre, start), bend), "An inch out on the corner's diagonal.")
    side, inseam = long_seams("front", waist_side, hip_side, fork, below, HIP_CURVE, hollow, sheet)
    return Panel(
        name="front", waist_centre=waist_centre, waist_side=waist_side, hip_side=hip_side, corner=corner,
        hook_start=start, fork=fork, diagonal=diagonal, leg=below, waist_sewn=sewn,
        darts=darts("front", waist_centre, waist_side, _on_the_crease(waist_centre, intakes), sheet),
        bulge=HIP_CURVE, hollow=hollow, crotch=crotch, side=side, inseam=inseam,
    )


def front_intake(spare: Length, sheet: DraftSheet) -> tuple[float, ...]:
    """Widths of the front darts: one of an inch, none where the quarter has little to lose, or two."""
    if not sheet.compare("a front dart", spare, ">=", DART + 1, "Does the quarter lose 1 cm more than the dart takes?", "An inch wide and four inches long."):
        return ()
    two = sheet.compare("a second front dart", spare - DART, ">", MOST_SIDE, "Would the side seam have to lose more than 6.5 cm?", "It would be too round at the hip.")
    return (DART, DART) if two else (DART,)


def _on_the_crease(centre: Place, intakes: tuple[float, ...]) -> tuple[tuple[float, float, float], ...]:
    """One dart stands on the crease; of two, one an inch to each side of it."""
    crease = Length(centre.x, "centre front to the crease")
    places = (crease,) if len(intakes) == 1 else (crease - DART, crease + DART)
    return tuple((at, width, DART_LENGTH) for at, width in zip(places, intakes, strict=False))


def back(level: Frame, front: Panel, person: Figure, body: Body, cut: Trousers, sheet: DraftSheet) -> Panel:
    """Trace the back from the front and carry it out."""
    sheet.heading("Back from the front", "common practice, no source")
    wider = MANNERS[cut.method].wider
    corner = sheet.point("back crotch corner", front.corner.down(0), "As in front.")
    more = changed(Length(CARRIED_OUT.at(body.hip_girth), "carried out"), person.forks / 3 + person.back_fork - person.front_fork)
    fork = sheet.point("back fork", front.fork.right(more), "Two inches farther out than the front's, three or more on large sizes; the seat is deeper than the front.")
    hip_side = sheet.point("back side at the hip", changed_across(front.hip_side, person.hips_front - person.hips_back), "As in front.")

    square = sheet.point("waist over the back corner", corner.level_with(level.waist), "Squared up from the corner.")
    start = sheet.point("back curve start", square.between(corner, 0.5), "Half way down; the seat line leans from here.")
    leaned = sheet.point("seat line at the waist", square.left(person.leaning), "An inch in, so that the seat line leans as in other drafts.")
    waist_centre = sheet.point("centre back at the waist", leaned.up(person.raised), "Two inches up, for sitting and bending.")
    sewn = sheet.length("back waist", waist_quarter(body, cut), "Sewn as long as the front's.")
    intakes = intake(sheet.length("back spare", Length(corner.x - front.hip_side.x, "back width") - sewn - person.leaning, "What the quarter has to lose."), sheet)
    waist_side = sheet.point("back side at the waist", waist_centre.reaching(level.side_waist, sewn + sum(intakes), "left"), "On the waist line, darts open.")

    below = leg("back", level, wider, person.swing, sheet)
    thigh = level.crotch.down(THIGH_LINE)
    hollow = hollowed("back", fork, below, BACK_HOLLOW, wider / 2, thigh, body, cut, sheet)
    curve, diagonal = hook(start, start - waist_centre, fork, RIGHT, corner, BACK_DIAGONAL - person.back_scoop)
    bend = hooked(start, along(waist_centre, start), fork, RIGHTWARD, curve, corner, diagonal)
    crotch = sheet.draw("back crotch", (*straight(waist_centre, start), bend), "Long and flat, to pass under the seat.")
    side, inseam = long_seams("back", waist_side, hip_side, fork, below, 0.0, hollow, sheet)
    return Panel(
        name="back", waist_centre=waist_centre, waist_side=waist_side, hip_side=hip_side, corner=corner,
        hook_start=start, fork=fork, diagonal=diagonal, leg=below, waist_sewn=sewn,
        darts=darts("back", waist_centre, waist_side, spread(sewn, intakes, BACK_DARTS), sheet),
        bulge=0.0, hollow=hollow, crotch=crotch, side=side, inseam=inseam,
    )


def changed_across(place: Place, by: float) -> Place:
    """The place, moved to the right where there is something to move."""
    return place.right(by) if by > 0 else place.left(-by)


HOLLOWS = (0.0, 2.5)
"""The inseam is straight at the least, hollowed by an inch at the most."""


def hollowed(
    name: str, fork: Place, below: Leg, usual: float, more: float, thigh: Place, body: Body, cut: Trousers, sheet: DraftSheet
) -> float:
    """How far the inseam is hollowed, so that it meets the thigh line a quarter of the thigh from the crease.

    Without a measured thigh, as usual. `more` is the panel's share of what the back is wider, cm.
    """
    if not sheet.decide(f"a {name} thigh by measure", body.taken("thigh_girth"), "Was the thigh measured?", "Half of its girth and ease lies in each panel, half of that on each side of the crease."):
        return usual
    wanted = sheet.length(f"{name} thigh from the crease", (body.length("thigh_girth") + Length(thigh_ease(cut)[0], "thigh ease")) / 4 + more, "On the thigh line, at the inseam.")

    def reached(hollow: float) -> float:
        line = Path(inseam_line(fork, below, hollow))
        i, t = crossing_with_line(line, thigh, Vector(1, 0))[-1]
        return line.segments[i].at(t).x

    found = root(lambda h: reached(h) - wanted, *HOLLOWS, 0.001)
    if found is None:
        found = min(HOLLOWS, key=lambda h: abs(reached(h) - wanted))
    sheet.found(f"{name} hollow", found, wanted, HOLLOWS, reached(found), "The inseam goes through the thigh line there, or as near as a fair line can.")
    return found
