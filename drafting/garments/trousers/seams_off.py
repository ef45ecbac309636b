"""Trousers, the seams taken off a block that was drafted with them.

Every sewn edge goes in by the seam's width, measured square to it; at knee and hem level, as the block's
own sums do. The hem stays. What the curves were guided by goes in with them.

Source: that the seams have to come off, and by how much, follows from the block's own sums; how is house
method.
"""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Literal

from drafting.craft.curves import hook
from drafting.craft.darts import PlannedDart
from drafting.craft.pencil import draw_dart, hooked
from drafting.craft.sheet import DraftSheet
from drafting.garments.trousers.frame import Frame
from drafting.garments.trousers.panel import Leg, Panel, long_seams
from drafting.geometry import RIGHT, Vector
from drafting.trace import RIGHTWARD, Length, Place, along, straight

WHY = "A seam's width in from both edges."


def levels_off(level: Frame, seam: float, sheet: DraftSheet) -> Frame:
    """The level lines of the stitching: the waist and the crotch curves lie a seam's width lower."""
    sheet.heading("Seams off", "house method, from the block's own sums")
    waist = sheet.point("seam of the waist", level.waist.down(seam), "The stitching line.")
    side = waist if level.side_waist is level.waist else sheet.point("side's seam of the waist", level.side_waist.down(seam), "The stitching line.")
    return replace(
        level, waist=waist, side_waist=side,
        crotch=sheet.point("crotch line of the seams", level.crotch.down(seam), "The cloth lies under the crotch curve."),
        knee_half=level.knee_half - seam, hem_half=level.hem_half - seam,
    )


def seams_off(drafted: Panel, seam: float, less: float, sheet: DraftSheet) -> Panel:
    """The stitching lines of a panel that was drafted with its seams.

    Args:
        drafted: The panel, cut edge to cut edge.
        seam: Width of the seams in cm.
        less: How much shorter the sewn waist is than the cut one, cm.
        sheet: Records every step.
    """
    name = drafted.name
    centre, across = drafted.hook_start - drafted.waist_centre, drafted.waist_side - drafted.waist_centre
    waist_centre = sheet.point(f"net {name} centre at the waist", inside(drafted.waist_centre, -centre, across, seam), WHY)
    waist_side = sheet.point(f"net {name} side at the waist", inside(drafted.waist_side, across, drafted.side.path.start_tangent, seam), WHY)
    start = sheet.point(f"net {name} curve start", drafted.hook_start.square_out(drafted.waist_centre, drafted.hook_start, seam, "right"), "Square in from the centre line.")
    corner = sheet.point(f"net {name} crotch corner", drafted.corner.left(seam).down(seam), "The same, for the curve to be guided by.")
    fork = sheet.point(f"net {name} fork", inside(drafted.fork, -drafted.inseam.path.start_tangent, -RIGHT, seam), WHY)
    hip_side = sheet.point(f"net {name} side at the hip", drafted.hip_side.right(seam), "In from the side seam.")
    below = Leg(_in(name, "side", drafted.leg.side, seam, "right", sheet), _in(name, "inseam", drafted.leg.inner, seam, "left", sheet))

    out = drafted.diagonal - seam + seam * math.sqrt(2)
    curve, diagonal = hook(start, start - waist_centre, fork, RIGHT, corner, out)
    bend = hooked(start, along(waist_centre, start), fork, RIGHTWARD, curve, corner, diagonal)
    crotch = sheet.draw(f"net {name} crotch", (*straight(waist_centre, start), bend), "A seam's width under the edge.")
    side, inseam = long_seams(f"net {name}", waist_side, hip_side, fork, below, drafted.bulge, drafted.hollow, sheet)
    sewn = sheet.length(f"net {name} waist", drafted.waist_sewn - less, "Without its two seams.")
    return replace(
        drafted, waist_centre=waist_centre, waist_side=waist_side, hip_side=hip_side, corner=corner, hook_start=start,
        fork=fork, diagonal=diagonal, leg=below, waist_sewn=sewn, crotch=crotch, side=side, inseam=inseam,
        darts=tuple(_dart(f"net {name} dart {i}", d, waist_centre, waist_side, seam, sheet) for i, d in enumerate(drafted.darts, 1)),
    )


def inside(corner: Place, arriving: Vector, leaving: Vector, by: float) -> Place:
    """The place that lies so far inside both lines that meet at a corner, the cloth on their left."""
    one, two = arriving.unit.left, leaving.unit.left
    step = (one + two) * (by / (1 + one.dot(two)))
    return corner.nudged(step.x, step.y)


def _in(name: str, seam_name: str, places: tuple[Place, ...], by: float, way: Literal["left", "right"], sheet: DraftSheet) -> tuple[Place, ...]:
    """Knee and hem of a long seam, brought in level."""
    stations = zip(("knee", "hem"), places, strict=True)
    return tuple(sheet.point(f"net {name} {seam_name} at the {at}", p.right(by) if way == "right" else p.left(by), "In from the seam.") for at, p in stations)


def _dart(label: str, dart: PlannedDart, centre: Place, side: Place, seam: float, sheet: DraftSheet) -> PlannedDart:
    """The dart from the waist seam to the same point, as wide as before."""
    across = dart.far - dart.near
    middle = dart.near + across * 0.5
    deep, width = dart.point.distance(middle) - seam, across.length
    at = (middle + across.unit.right * seam - centre).dot((side - centre).unit)
    on_seam = sheet.point(f"{label} middle", centre.towards(side, Length(at)), "Under the middle of the dart's mouth.")
    return draw_dart(label, (centre, side), on_seam, width, deep, "left", sheet)
