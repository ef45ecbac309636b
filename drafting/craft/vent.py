"""Room to step in a narrow hem: a vent or a slit at the foot of the centre back seam.

Source: vents 15 to 30 cm long and 4 to 7 cm wide, faced with themselves, slits 12 to 25 cm, their
top at least 8 cm below the seat and not above the middle of the thigh: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from drafting.craft.hemline import LEAST_AT_KNEE, STAIRS, Leg
from drafting.craft.sheet import DraftSheet
from drafting.craft.uprights import Upright, plain_seam
from drafting.errors import SpecError
from drafting.geometry import Path, Point, Vector, polyline
from drafting.pattern import Edge, Mark, Notch, Role
from drafting.trace import Length, larger, smaller

HemOpening = Literal["auto", "vent", "slit", "none"]

VENT_LENGTHS, SLIT_LENGTHS = (15.0, 30.0), (12.0, 25.0)
VENT_WIDTH = 5.0
VENT_SLOPE = 2.0
"""The vent's upper edge falls by 2 cm from the seam to its free edge. House method."""
BELOW_SEAT = 8.0


@dataclass(frozen=True, slots=True)
class Foot:
    """What stands at the foot of a centre seam, and how long it is in cm."""

    kind: Literal["vent", "slit"]
    length: float

    @property
    def edge(self) -> str:
        """Name of the edge that opens."""
        return self.kind


def room_to_step(
    asked: HemOpening,
    needed: Length,
    hem: Length,
    length: Length,
    seat: Length,
    under: Leg,
    sheet: DraftSheet,
) -> Foot | None:
    """Decide on a vent or slit, and how long it is.

    Args:
        asked: What the order says.
        needed: Girth in cm that the hem must have to walk in.
        hem: Its girth without an opening.
        length: Waist to hem.
        seat: Waist to the fullest seat.
        under: The leg.
        sheet: Records the decision and the length.

    Raises:
        SpecError: A vent or slit is asked for and there is no room for one.
    """
    if asked == "none":
        return None
    kind: Literal["vent", "slit"] = "slit" if asked == "slit" else "vent"
    least, most = VENT_LENGTHS if kind == "vent" else SLIT_LENGTHS
    if asked == "auto" and not _too_narrow(needed, hem, length, under, sheet):
        return None
    thigh = (under.crotch + under.knee) / 2 - (under.floor - length)
    room = smaller(length - seat - BELOW_SEAT, thigh)
    if asked == "auto":
        told = f"Is there room for a {kind}, below the seat and the middle of the thigh?"
        if not sheet.compare(f"room for a {kind}", room, ">=", least, told, "Higher up it gapes."):
            return None
    elif room < least:
        raise SpecError(
            f"There is no room for a {kind} of at least {least:.0f} cm between the seat and the "
            'hem. Make the skirt longer, or choose hem_opening "none".',
            where="garment.hem_opening",
            received=asked,
            allowed=("auto", "none"),
        )
    wanted = (needed + STAIRS - hem) / 2 + (VENT_SLOPE if kind == "vent" else 0.0)
    found = smaller(smaller(larger(wanted, least), most), room)
    why = "Both sides of it together give the hem what it lacks for a step."
    return Foot(kind, float(sheet.length(f"{kind} length", found, why)))


def _too_narrow(needed: Length, hem: Length, length: Length, under: Leg, sheet: DraftSheet) -> bool:
    """Whether the hem is too narrow for stairs, or is narrow and reaches the knee."""
    at_knee = length > under.floor - under.knee - 2
    least = larger(needed + STAIRS, LEAST_AT_KNEE) if at_knee else needed + STAIRS
    told = "Is the hem too narrow to walk and climb stairs in?"
    return sheet.compare("an opening at the hem", hem, "<", least, told, "Room for a step.")


def centre_seam(name: str, centre: Path, slit: float, foot: Foot | None, away: Vector) -> Upright:
    """Divide a straight centre line: a zip at its top, a vent or slit at its foot.

    Args:
        name: Name of the sewn stretch.
        centre: From the waist down to the hem, cm.
        slit: Length in cm of the stretch that the zip joins; 0 for none.
        foot: What stands at its foot.
        away: Direction from the panel outward, square to the centre.
    """
    if foot is None:
        return plain_seam(name, centre, slit)
    above, below = centre.split(centre.length() - foot.length)
    seam = plain_seam(name, above, slit)
    if foot.kind == "slit":
        open_ = Edge("slit", below, Role.OPENING, "opening")
        notches = (*seam.notches, Notch("slit", 0.0, 1, "slit-top"))
        return Upright((*seam.edges, open_), seam.sewn, notches)
    edges, hem = _vent(below, away)
    marks = (Mark("fold", below),)
    return Upright((*seam.edges, *edges), (*seam.sewn, "vent_top"), seam.notches, hem, marks)


def _vent(below: Path, away: Vector) -> tuple[tuple[Edge, ...], tuple[Edge, ...]]:
    """The vent's upper edge, free edge and hem; both layers are sewn along the upper edge."""
    out, down = away.unit * VENT_WIDTH, below.start_tangent * VENT_SLOPE
    corner, end = below.start + out + down, below.end + out
    return (
        Edge("vent_top", polyline(below.start, corner)),
        Edge("vent", polyline(corner, end), Role.FINISHED, "facing"),
    ), (Edge("vent_hem", polyline(_plain(below.end), end), Role.HEM, "hem"),)


def _plain(p: Point) -> Point:
    return Point(p.x, p.y)
