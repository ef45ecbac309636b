"""Trousers, what must come out: wishes from the order and the body alone, and where the tape goes.

Bounds: hip as the block draws wider than its formula; fork, seat angle and crotch bands are common
practice, no source, derived from eight published methods; the rest is the house's own accuracy.
"""

from __future__ import annotations

from drafting.body import Body
from drafting.craft.rules import FOOT_GIRTH, OPENING_OVER_HIP
from drafting.garments.trousers.frame import Frame, hem_girth, knee_girth
from drafting.garments.trousers.spec import Trousers
from drafting.garments.trousers.trueing import Trued
from drafting.geometry import Path, Point, Vector, crossing_with_line
from drafting.pattern import (
    AngleBetween,
    CombinedLength,
    CrossShare,
    EdgeLength,
    Girth,
    LevelDepth,
    Measuring,
    Number,
    Want,
)

LEGS = ("front", "back")
WAIST = EdgeLength("waistband", ("waist",))
CROTCH_FRONT = EdgeLength("front", ("opening", "front_crotch"))
CROTCH_BACK = EdgeLength("back", ("back_crotch",))


def girths(body: Body, cut: Trousers) -> tuple[Want, ...]:
    """What goes round the body and the leg."""
    waist, hip = body.waist_girth + cut.waist_ease, body.hip_girth + cut.hip_ease
    knee, hem = float(knee_girth(body.hip_girth, cut)), float(hem_girth(body.hip_girth, cut))
    foot = body.value("heel_ankle_girth") if body.has("heel_ankle_girth") else FOOT_GIRTH[body.figure]
    return (
        _near("finished_waist_girth", WAIST, waist, 0.5, 0.5, "Band over body."),
        _near("finished_hip_girth", Girth("hip", LEGS), hip, 0.5, 3.0, "The block draws wider at the hip than its formula, since the back curve leaves the seat line above the hip."),
        _near("finished_knee_girth", Girth("knee", LEGS, 1), knee, 0.3, 0.3, "Round one leg."),
        _near("finished_hem_girth", Girth("hem", LEGS, 1), hem, 0.3, 0.3, "Round one leg."),
        Want(name="hem_passes_foot", measuring=Girth("hem", LEGS, 1), wanted=foot, low=foot, high=999.0, kind="must" if body.has("heel_ankle_girth") else "advice", reason="The hem must go over heel and instep; else it needs a slit or zip."),
    )


def lengths(body: Body, cut: Trousers) -> tuple[Want, ...]:
    """Heights of the body against the seams: a slanting seam is a little longer than the height."""
    outside = body.outside_leg_length - cut.hem_over_floor
    return (
        _near("crotch_line_depth", LevelDepth("front", "waist", "crotch"), body.body_rise, 0.3, 0.3, "Waist to crotch line."),
        _near("inside_leg_seam", EdgeLength("front", ("inseam",)), outside - body.body_rise, 0.3, 2.0, "The seam slants and is hollowed."),
        _near("outside_leg_seam", EdgeLength("front", ("side",)), outside, 0.5, 3.0, "The seam goes over the hip."),
    )


def opening(body: Body) -> Want:
    """Whether the garment goes over the hips."""
    needed = body.hip_girth + OPENING_OVER_HIP
    tape = CombinedLength(((1.0, WAIST), (2.0, EdgeLength("front", ("opening",)))))
    return Want(name="opening_passes_hip", measuring=tape, wanted=needed, low=needed, high=999.0, reason="Waist and twice the opening must reach the hip and 2 cm.")


def joins() -> tuple[Want, ...]:
    """Where seams cross, the lines run on: corners that meet make a straight angle."""
    return (
        _angle("crotch_point_angle", (("front", "inseam", "front_crotch"), ("back", "back_crotch", "inseam")), 3.0),
        _angle("side_waist_angle", (("front", "waist", "side"), ("back", "side", "waist")), 3.0),
        _angle("hem_angle", (("front", "side", "hem"), ("back", "hem", "side")), 2.0),
        _angle("hem_angle_inside", (("front", "hem", "inseam"), ("back", "inseam", "hem")), 2.0),
        *(_near(f"crease_centred_{piece}_{level}", CrossShare(piece, level), 0.0, 0.3, 0.3, "The leg is centred on its crease.") for piece in LEGS for level in ("knee", "hem")),
    )


def block(body: Body, front: Trued, back: Trued, level: Frame) -> tuple[Want, ...]:
    """The block's own sanity."""
    hip, forks = float(body.hip_girth), (_reach(front), _reach(back))
    hooks = CombinedLength(((1.0, CROTCH_BACK), (-1.0, CROTCH_FRONT)))
    drawn = "drawn fork to the crotch corner, level"
    return (
        Want(name="back_crotch_over_front", measuring=hooks, wanted=6.0, low=4.0, high=9.0, kind="advice", reason="The seat needs the longer half of the crotch seam."),
        Want(name="forks_together", measuring=Number(sum(forks), drawn), wanted=0.19 * hip, low=0.14 * hip, high=0.22 * hip, kind="advice", reason="14 to 22 % of the hip."),
        Want(name="front_fork", measuring=Number(forks[0], drawn), wanted=0.34 * sum(forks), low=0.28 * sum(forks), high=0.38 * sum(forks), kind="advice", reason="A third of the forks lies in front."),
        Want(name="seat_angle", measuring=Number(_lean(back), "drawn centre back against the plumb line"), wanted=8.0, low=4.0, high=16.0, kind="advice", unit="deg", reason="Upright for a flat seat, leaning for a full one."),
        Want(name="hem_to_knee_even", measuring=Number(_shank_spread(front, back, level), "longest less shortest of the four edges between hem and knee line"), wanted=0.0, low=0.0, high=0.05, reason="All four edges agree below the knee."),
    )


def finished() -> tuple[Want, ...]:
    """What a customer is told of the finished garment, besides the checked measures."""
    crotch = CombinedLength(((1.0, CROTCH_FRONT), (1.0, CROTCH_BACK)))
    return tuple(
        _near(name, tape, 0.0, 0.0, 0.0, "")
        for name, tape in (
            ("waist_girth", WAIST),
            ("hip_girth", Girth("hip", LEGS)),
            ("thigh_girth", Girth("crotch", LEGS, 1)),
            ("knee_girth", Girth("knee", LEGS, 1)),
            ("hem_girth", Girth("hem", LEGS, 1)),
            ("inside_leg_seam", EdgeLength("front", ("inseam",))),
            ("outside_leg_seam", EdgeLength("front", ("side",))),
            ("crotch_seam_length", crotch),
            ("front_opening", EdgeLength("front", ("opening",))),
        )
    )


def _near(name: str, tape: Measuring, wanted: float, less: float, more: float, reason: str) -> Want:
    wanted = float(wanted)
    return Want(name=name, measuring=tape, wanted=wanted, low=wanted - less, high=wanted + more, reason=reason)


def _angle(name: str, corners: tuple[tuple[str, str, str], ...], slack: float) -> Want:
    return Want(name=name, measuring=AngleBetween(corners), wanted=180.0, low=180 - slack, high=180 + slack, unit="deg", reason="Sewn together the line runs on without a corner.")


def _reach(panel: Trued) -> float:
    """From the crotch corner to the drawn fork, along the level, in cm."""
    return panel.crotch.end.x - panel.panel.corner.x


def _lean(back: Trued) -> float:
    """Angle of the drawn centre back against the plumb line, in degrees."""
    return 90.0 + back.crotch.start_tangent.angle


def _shank_spread(front: Trued, back: Trued, level: Frame) -> float:
    """Longest less shortest of the four edges between hem and knee line, in cm."""
    found = [_below(path, level.knee.y) for p in (front, back) for path in (p.side, p.inseam)]
    return max(found) - min(found)


def _below(path: Path, height: float) -> float:
    i, t = crossing_with_line(path, Point(0, height), Vector(1, 0))[-1]
    return path.split_at(i, t)[1].length()
