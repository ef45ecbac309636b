"""Trousers, after the toile: what a fitter pins, as changes of the figure that the draft is drawn for.

Source: symptoms, causes and usual amounts are common practice, no source; too much slope behind gives a
long, baggy seat: Gunther F. Hertzer, Garment Cutting in the Twentieth Century.
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
    Symptom("Level pull lines at the hip, pockets gape", "too narrow at the hip", "let_out_sides", 0.5, 1.5),
    Symptom("Upright folds at the hip", "too wide at the hip", "let_out_sides", -1.0, -0.5),
    Symptom("Cuts in at the crotch, the band is pulled down", "rise too short", "lengthen_rise", 1.0, 2.0),
    Symptom("The crotch hangs low, loose folds under it", "rise too long", "lengthen_rise", -2.0, -1.0),
    Symptom("Lines rise outward from the front crotch", "front fork too short", "lengthen_front_fork", 0.5, 1.0),
    Symptom("Lines fall from the front crotch, loose cloth there", "front fork too long", "lengthen_front_fork", -1.0, -0.5),
    Symptom("Lines from the back fork up to the hip, seat tight", "full seat, back fork too short", "lengthen_back_fork", 0.5, 1.5),
    Symptom("The waist is pulled down behind, seat tight", "full seat, back too short", "seat_wedge", 1.0, 2.5),
    Symptom("The back curve cuts in below the seat", "curve too shallow", "scoop_back", 0.3, 0.7),
    Symptom("The front curve cuts in", "curve too shallow", "scoop_front", 0.3, 0.7),
    Symptom("Loose folds under the seat", "flat seat, back too long", "seat_wedge", -2.0, -1.0),
    Symptom("Baggy below the seat, seat tight when sitting", "seat line too upright", "lean_seat", 0.5, 1.5),
    Symptom("A level fold just under the back waist", "hollow back", "raise_back", -2.0, -0.5),
    Symptom("The front waist dips, the band bites in front", "full abdomen", "raise_front", 1.0, 2.5),
    Symptom("Cloth heaped under the front waist", "front too long", "raise_front", -1.5, -0.5),
    Symptom("The side seam bows to the front", "front too narrow at the hip", "let_out_front_side", 0.5, 1.0),
    Symptom("The side seam bows to the back", "back too narrow at the hip", "let_out_back_side", 0.5, 1.0),
    Symptom("The waist dips at the sides", "high hips", "raise_sides", 0.5, 1.5),
    Symptom("Thigh tight, the front pulls across", "full thigh", "thigh_room", 0.5, 1.5),
    Symptom("Lines from the knee to the inside of the ankle", "bowed legs", "swing_leg", 0.5, 1.5),
    Symptom("Lines from the knee to the outside of the ankle", "knock knees", "swing_leg", -1.5, -0.5),
)


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
