"""Where a hem hangs on the leg, and how wide it must be to walk in.

Heights are told from the floor, depths from the waist. Where a leg was not measured its heights
come by the proportions of one usual figure: waist to floor 104, knee 45.5 (from memory: W. Aldrich,
Metric Pattern Cutting for Women's Wear), crotch 76 and step 64 cm (derived).
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from drafting.body import Body
from drafting.pattern import Finding
from drafting.trace import Length

HemAt = Literal["mini", "above_knee", "knee", "below_knee", "mid_calf", "ankle", "floor"]

USUAL_FLOOR = 104.0
USUAL_KNEE, USUAL_CROTCH, USUAL_STEP = 45.5 / 104, 76 / 104, 64 / 104
STEP_OF_STATURE = 0.39
"""A step from heel to toe of the other foot, as a share of the stature. Derived."""

STAIRS = 12.5
"""Stairs ask for 10 to 15 cm more hem than walking does. Derived."""

LEAST_AT_KNEE = 105.0
"""A straight skirt that reaches the knee is given a vent where its hem is under 100 to 110 cm.
Source: common practice, no source."""

LEG_GIRTHS = ((10.0, 24.0), (30.0, 37.0), (42.0, 35.7), (47.0, 38.0), (55.0, 45.6), (76.0, 57.0))
"""Height over the floor and girth in cm of a usual leg with its knee at 47 cm. Derived."""

KNEE_OF_TABLE = 47.0


@dataclass(frozen=True, slots=True)
class Leg:
    """Heights over the floor and the length of a step, cm.

    Attributes:
        floor: Depth of the floor under the waist.
        crotch: Height of the crotch.
        knee: Height of the middle of the kneecap.
        step: Heel to toe, walking.
        known: Whether the depth of the floor was taken or follows from what was.
    """

    floor: Length
    crotch: Length
    knee: Length
    step: Length
    known: bool


def leg(body: Body) -> Leg:
    """The leg under a skirt: as measured, else by proportion."""
    known = body.has("outside_leg_length")
    floor = body.outside_leg_length if known else Length(USUAL_FLOOR, "usual waist to floor")
    return Leg(
        floor,
        body.inside_leg_height if body.has("inside_leg_height") else floor * USUAL_CROTCH,
        body.knee_height if body.has("knee_height") else floor * USUAL_KNEE,
        body.stature * STEP_OF_STATURE if body.has("stature") else floor * USUAL_STEP,
        known,
    )


def hem_height(hem: HemAt, under: Leg) -> Length:
    """Height in cm over the floor of a hem that is told by name.

    Source: common practice, no source.
    """
    heights: dict[HemAt, Length] = {
        "mini": (under.crotch + under.knee) / 2,
        "above_knee": under.knee + 8,
        "knee": under.knee,
        "below_knee": under.knee - 5,
        "mid_calf": under.knee * 0.64,
        "ankle": Length(10.0),
        "floor": Length(2.0),
    }
    return heights[hem]


def skirt_length(length: float | None, hem: HemAt | None, under: Leg) -> Length:
    """Waist to hem in cm: as ordered, else down to where the hem's name says, else to the knee."""
    if length is not None:
        return Length(length, "length")
    return under.floor - hem_height(hem or "knee", under)


def unknown_leg(length: float | None, under: Leg) -> tuple[Finding, ...]:
    """A note where a length was told by name and the leg is not known."""
    if length is not None or under.known:
        return ()
    return (
        Finding(
            code="usual_leg",
            severity="note",
            where="length",
            message="How long the legs are is not known, so the length goes by a usual figure: "
            "give outside_leg_length, or the length itself.",
        ),
    )


def walking_girth(step: float, crotch: float, height: float, leg_girth: float) -> float:
    """Girth in cm that a hem must have to walk in: a triangle under the crotch, and the leg.

    Args:
        step: Heel to toe, cm.
        crotch: Height of the crotch, cm.
        height: Height of the hem over the floor, cm.
        leg_girth: Girth of the leg there, cm.

    Source: derived (similar triangles under the crotch).
    """
    return 2 * step * max(0.0, crotch - height) / crotch + leg_girth


def leg_girth(body: Body, under: Leg, height: float) -> float:
    """Girth in cm of the leg at a height over the floor: measured ones, else a usual leg's."""
    share = float(under.knee) / KNEE_OF_TABLE
    own = {10.0: "ankle_girth", 30.0: "calf_girth", 47.0: "knee_girth"}
    rows = [
        (h * share, body.value(own[h]) if h in own and body.has(own[h]) else girth)
        for h, girth in LEG_GIRTHS
    ]
    if height <= rows[0][0]:
        return rows[0][1]
    for (low, a), (high, b) in pairwise(rows):
        if height <= high:
            return a + (b - a) * (height - low) / (high - low)
    return rows[-1][1]


def needed_hem(body: Body, under: Leg, length: float) -> Length:
    """Least girth in cm of the hem of a skirt of this length, to walk in."""
    height = max(0.0, float(under.floor - length))
    girth = leg_girth(body, under, height)
    wanted = walking_girth(float(under.step), float(under.crotch), height, girth)
    return Length(wanted, "girth to walk in")
