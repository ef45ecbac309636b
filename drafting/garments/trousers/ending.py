"""Trousers, the end of a shorter leg: cut off the full one, with room for the leg to move.

Source: shorts gain 1 to 2 cm at each seam of the hem: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from drafting.body import Body
from drafting.craft.sheet import DraftSheet
from drafting.errors import SpecError
from drafting.garments.trousers.frame import LEAST_SHANK, Frame
from drafting.garments.trousers.legs import dips, hem_girth, is_full
from drafting.garments.trousers.panel import Leg, Panel, inseam_parts, side_parts
from drafting.garments.trousers.spec import Trousers
from drafting.garments.trousers.trueing import Trued
from drafting.geometry import Point, Vector, crossing_with_line
from drafting.trace import Length, Place, Stroke, along

MOVING = 1.0
"""A hem above the knee is 1 cm wider at each seam. Source: common practice, no source."""


def end_legs(level: Frame, front: Panel, back: Panel, cut: Trousers, sheet: DraftSheet) -> tuple[Frame, Panel, Panel]:
    """End the legs where they are ordered to, and say how their hems hang.

    Raises:
        SpecError: The hem that is ordered leaves no leg.
    """
    level, front, back = _cut_off(level, front, back, cut, sheet)
    lower = dips(cut, short=front.leg.short and cut.leg != "culottes")
    front, back = (p if p.dip == dip else replace(p, dip=dip) for p, dip in zip((front, back), lower, strict=True))
    return level, front, back


def _cut_off(level: Frame, front: Panel, back: Panel, cut: Trousers, sheet: DraftSheet) -> tuple[Frame, Panel, Panel]:
    """Cut shorter legs off the full ones, and redraw their long seams.

    Raises:
        SpecError: The hem that is ordered leaves no leg.
    """
    if cut.leg == "culottes":
        return _as_a_skirt(level, front, back, cut, sheet)
    end = level.end
    if end is None:
        return level, front, back
    sheet.heading("Shorter legs", "common practice, no source")
    short = sheet.compare("a leg without a knee", Length(level.knee.y - end.y, "knee line to the end of the leg"), "<", LEAST_SHANK, "Does the leg end less than 12 cm below the knee line?", "Its seams then run from the thigh to the hem in one.")
    found = tuple((_reached(p.side, end, "side"), _reached(p.inseam, end, "inseam")) for p in (front, back))
    gain = sheet.length("gain at each seam of the hem", _gain(found, short=short, cut=cut), "Room to move, or to the girth that is ordered.")
    front, back = (_ended(p, places, gain, sheet, short=short) for p, places in zip((front, back), found, strict=True))
    return replace(level, hem=end), front, back


def _as_a_skirt(level: Frame, front: Panel, back: Panel, cut: Trousers, sheet: DraftSheet) -> tuple[Frame, Panel, Panel]:
    """Culottes: the inseam plumb from the fork, the side plumb from the hip or leaning out to the hem.

    Source: centre and inseam on the grain, as a skirt with forks: common practice, no source.
    """
    end = level.end or level.hem
    sheet.heading("Culottes", "common practice, no source")
    found = tuple((p.hip_side.level_with(end), p.fork.level_with(end)) for p in (front, back))
    gain = sheet.length("gain at each side of the hem", Length(0.0) if cut.hem_girth is None else 2 * _gain(found, short=True, cut=cut), "They hang plumb, or to the girth that is ordered.")
    front, back = (_hung(p, places, gain, sheet) for p, places in zip((front, back), found, strict=True))
    return replace(level, hem=end), front, back


def _hung(panel: Panel, places: tuple[Place, Place], gain: Length, sheet: DraftSheet) -> Panel:
    """A panel that hangs from the hip and the fork."""
    side = sheet.point(f"{panel.name} side at the hem", places[0].nudged(-gain, 0), "It hangs straight from the hip.")
    inner = sheet.point(f"{panel.name} inseam at the hem", places[1], "Plumb under the fork.")
    return _with_leg(panel, Leg((side,), (inner,), fall=along(panel.hip_side, side)), f"hanging {panel.name}", sheet)


def hem_of(front: Trued, back: Trued, body: Body, cut: Trousers) -> float:
    """Girth of the hem in cm: as settled, or as it was cut off the leg."""
    if (cut.leg != "culottes" and is_full(cut)) or cut.hem_girth is not None:
        return float(cut.hem_girth or hem_girth(body, cut))
    return sum(p.hem.start.distance(p.hem.end) for p in (front, back))


def _reached(seam: Stroke, end: Place, name: str) -> Place:
    """Where a long seam reaches the level at which the leg ends."""
    hits = crossing_with_line(seam.path, Point(0, end.y), Vector(1, 0))
    if not hits:
        raise SpecError(f"The inside_leg is too short: the {name} does not reach that level.", where="garment.inside_leg")
    return seam.at(Length(seam.path.distance_of(*hits[-1])))


def _gain(found: tuple[tuple[Place, Place], ...], *, short: bool, cut: Trousers) -> Length:
    """What each of the four seams gains at the hem, cm."""
    if cut.hem_girth is None:
        return Length(MOVING if short else 0.0)
    drawn = sum(inner.x - side.x for side, inner in found)
    gain = (Length(cut.hem_girth, "hem girth") - Length(drawn, "the leg there")) / 4
    low, high = GAINS
    if not low <= gain <= high:
        raise SpecError(
            f"The leg is {drawn:.1f} cm round where it ends; at that length or inside_leg the hem_girth can be {drawn + 4 * low:.1f} to {drawn + 4 * high:.1f} cm.",
            where="garment.hem_girth", received=cut.hem_girth, allowed=(drawn + 4 * low, drawn + 4 * high),
        )
    return gain


GAINS = (-4.0, 6.0)
"""What each seam of a shorter leg's hem may gain, cm; narrower legs are tapered. House method."""


def _ended(panel: Panel, places: tuple[Place, Place], gain: Length, sheet: DraftSheet, *, short: bool) -> Panel:
    """A panel with its leg ended at places of its long seams, and a gain there."""
    why = "Where the leg's seam comes down to."
    side, inner = (
        sheet.point(f"{panel.name} {seam} at the leg's end", at.nudged(gain * way, 0), why)
        for seam, at, way in (("side", places[0], -1.0), ("inseam", places[1], 1.0))
    )
    below = Leg((side,), (inner,)) if short else Leg((panel.leg.side[0], side), (panel.leg.inner[0], inner))
    return _with_leg(panel, below, f"shorter {panel.name}", sheet)


def _with_leg(panel: Panel, below: Leg, name: str, sheet: DraftSheet) -> Panel:
    """A panel with its long seams drawn anew to another leg."""
    return replace(
        panel, leg=below,
        side=sheet.draw(f"{name} side", side_parts(panel.waist_side, panel.hip_side, below, panel.bulge, panel.natural_side), "From the hip to the new hem."),
        inseam=sheet.draw(f"{name} inseam", inseam_parts(panel.fork, below, panel.hollow), "From the fork to the new hem."),
    )

