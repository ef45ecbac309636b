"""Trousers, after the toile: what a fitter pins, as changes of the figure that the draft is drawn for.

Source: symptoms, causes and usual amounts are common practice, no source; the rise: University pants
measures handout; too much slope behind gives a long, baggy seat, and width from front to back: Gunther F.
Hertzer, Garment Cutting in the Twentieth Century (1892).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from drafting.craft.sheet import DraftSheet
from drafting.errors import SpecError
from drafting.garments.garment import Symptom
from drafting.garments.trousers.figure import Figure
from drafting.garments.trousers.pins import Correction, Pin
from drafting.trace import Length


@dataclass(frozen=True, slots=True)
class Pinned:
    """What a pin does to the figure, within which bounds (cm), and why."""

    change: Callable[[Figure, float], Figure]
    low: float
    high: float
    why: str


PINS: dict[Pin, Pinned] = {
    "let_out_sides": Pinned(lambda f, by: replace(f, hips_front=f.hips_front + by, hips_back=f.hips_back + by), -1.5, 2.0, "At the hip, each edge of both side seams."),
    "let_out_front_side": Pinned(lambda f, by: replace(f, hips_front=f.hips_front + by), -1.5, 2.0, "The front's edge of the side seams only."),
    "let_out_back_side": Pinned(lambda f, by: replace(f, hips_back=f.hips_back + by), -1.5, 2.0, "The back's edge of the side seams only."),
    "lengthen_rise": Pinned(lambda f, by: replace(f, rise=f.rise + by), -3.0, 3.0, "The crotch line goes down, front and back alike."),
    "lengthen_front_fork": Pinned(lambda f, by: replace(f, front_fork=f.front_fork + by), -1.5, 1.5, "At the inseam, run out above the knee."),
    "lengthen_back_fork": Pinned(lambda f, by: replace(f, back_fork=f.back_fork + by), -2.0, 2.0, "At the inseam, run out above the knee."),
    "scoop_front": Pinned(lambda f, by: replace(f, front_scoop=f.front_scoop + by), -0.5, 1.0, "The curve is cut nearer to the corner."),
    "scoop_back": Pinned(lambda f, by: replace(f, back_scoop=f.back_scoop + by), -0.5, 1.0, "The curve is cut nearer to the corner."),
    "raise_front": Pinned(lambda f, by: replace(f, front_raised=f.front_raised + by), -2.0, 3.0, "At the centre front, to nothing at the side."),
    "raise_back": Pinned(lambda f, by: replace(f, raised=f.raised + by), -2.0, 3.0, "At the centre back, to nothing at the side."),
    "raise_sides": Pinned(lambda f, by: replace(f, side_raised=f.side_raised + by), -1.5, 2.0, "At the side seam, to nothing at the centres."),
    "seat_wedge": Pinned(lambda f, by: replace(f, raised=f.raised + by, leaning=f.leaning + 0.5 * by), -2.0, 2.5, "A wedge opened at the hip behind, to nothing at the side."),
    "lean_seat": Pinned(lambda f, by: replace(f, leaning=f.leaning + by), -1.5, 1.5, "The seat line leans more at the waist."),
    "thigh_room": Pinned(lambda f, by: replace(f, front_fork=f.front_fork + by, back_fork=f.back_fork + by), -1.0, 1.5, "Both inseams are pushed out at the fork."),
    "swing_leg": Pinned(lambda f, by: replace(f, swing=f.swing + by), -2.5, 2.5, "The leg hangs off its grain: hem outward, the knee half as much."),
}
"""Every pin by its name; a test proves that each symptom leads to one."""

SYMPTOMS = (
    Symptom("Level creases across the hip; pockets stand open; the legs ride up.", "Too narrow at the hip.", "Add at each side edge, run out to the knee.", 0.5, 1.5, "let_out_sides"),
    Symptom("Plumb folds beside the hip.", "Too wide at the hip.", "Take off at each side edge.", -1.0, -0.5, "let_out_sides"),
    Symptom("Cuts in at the crotch and drags the band down.", "The rise is too short.", "Cut front and back across at the hip line and spread.", 1.0, 2.0, "lengthen_rise"),
    Symptom("The crotch hangs low and shortens the step.", "The rise is too long.", "Fold front and back across at the hip line.", -2.0, -1.0, "lengthen_rise"),
    Symptom("Creases fan upward and outward from the front crotch.", "The front fork is too short.", "Lengthen the front fork, blend in well above the knee.", 0.5, 1.0, "lengthen_front_fork"),
    Symptom("Loose cloth falls in folds from the front crotch.", "The front fork is too long.", "Shorten the front fork.", -1.0, -0.5, "lengthen_front_fork"),
    Symptom("Creases run from the back fork up to the hip; the seat is tight.", "A full seat: the back fork is too short.", "Lengthen the back fork, blend in well above the knee.", 0.5, 1.5, "lengthen_back_fork"),
    Symptom("The seat is tight and draws the back waist down.", "A full seat: the back crotch seam is too short.", "Cut across from the centre back to the side and open a wedge.", 1.0, 2.5, "seat_wedge"),
    Symptom("The back curve cuts in below the seat.", "The back curve is too shallow.", "Cut the curve nearer to its corner.", 0.3, 0.7, "scoop_back"),
    Symptom("The front curve cuts in.", "The front curve is too shallow.", "Cut the curve nearer to its corner.", 0.3, 0.7, "scoop_front"),
    Symptom("Loose folds hang under the seat.", "A flat seat: the back is too long.", "Fold a wedge out at the centre back and shorten the back fork.", -2.0, -1.0, "seat_wedge"),
    Symptom("Baggy standing, tight sitting.", "The seat line is too upright.", "Lean the seat line more and raise the centre back.", 0.5, 1.5, "lean_seat"),
    Symptom("A level fold under the back of the band.", "A hollow back.", "Let the side out first; else take a wedge out at the centre back.", -2.0, -0.5, "raise_back"),
    Symptom("The band dips in front and side seams swing forward.", "A full abdomen.", "Raise the centre front and leave the front dart out.", 1.0, 2.5, "raise_front"),
    Symptom("Cloth heaps under the front of the band.", "A flat abdomen.", "Lower the centre front.", -1.5, -0.5, "raise_front"),
    Symptom("The side seam bows to the front.", "The front is too narrow at the hip.", "Add at the front's side edge.", 0.5, 1.0, "let_out_front_side"),
    Symptom("The side seam bows to the back.", "The back is too narrow at the hip.", "Add at the back's side edge.", 0.5, 1.0, "let_out_back_side"),
    Symptom("The band dips at the sides.", "Hips that curve out high.", "Raise the waist at the side seam.", 0.5, 1.5, "raise_sides"),
    Symptom("Tight round the thigh; the front pulls across.", "A full thigh.", "Add at both inseams, blend in at the knee.", 0.5, 1.5, "thigh_room"),
    Symptom("Slanting folds from the knee to the inside ankle.", "Legs that bow at the knee.", "Cut across at the crotch line and shift the leg outward.", 0.5, 1.5, "swing_leg"),
    Symptom("Slanting folds from the knee to the outside ankle.", "Legs that knock at the knee.", "Cut across at the crotch line and shift the leg inward.", -1.5, -0.5, "swing_leg"),
    Symptom("The band stands off at the centre back.", "A waist that is small against the hip.", "Deepen the back darts.", 0.5, 1.0),
    Symptom("The back leg catches on the calf.", "Strong calves.", "Add at the back's side and inseam from the knee down.", 0.3, 0.8),
    Symptom("The hem breaks in front and lifts behind.", "A level hem on a leg that leans forward.", "Slope the hem: longer behind.", 0.5, 1.5),
    Symptom("One side hangs lower.", "Hips or legs of two heights.", "Raise the waist on the higher side by the difference.", 0.0, 0.0),
)
"""What a fitting may show; the class sheet and the list of garments both tell it from here."""


def corrected(person: Figure, pins: tuple[Correction, ...], sheet: DraftSheet) -> Figure:
    """The figure with what was pinned on the toile, in the order of the pins.

    Raises:
        SpecError: A pin goes beyond what its place can take.
    """
    for number, pin in enumerate(pins):
        made = PINS[pin.pin]
        if not made.low <= pin.by <= made.high:
            raise SpecError(
                f"{pin.pin} can be pinned by {made.low:g} to {made.high:g} cm; for more, measure again and order anew.",
                where=f"garment.corrections.{number}.by",
                received=pin.by,
                allowed=(made.low, made.high),
            )
        sheet.length(f"toile: {pin.pin.replace('_', ' ')}", Length(pin.by), made.why)
        person = made.change(person, pin.by)
    return person
