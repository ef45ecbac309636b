"""Knit top, the frame: widths from the cloth's stretch, levels from the body.

Source: a knit block without darts, front and back alike but for the neck; the neck's width and depth
from memory: W. Aldrich, Metric Pattern Cutting for Women's Wear; eases and reductions: common
practice, no source.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise

from drafting.body import Body
from drafting.craft.sheet import DraftSheet
from drafting.errors import SpecError
from drafting.garments.knit_top.spec import (
    BELOW_HIP,
    EASES,
    REDUCTIONS,
    STABLE,
    WOVEN_EASE,
    KnitTop,
    has_sleeve,
    hem_band_depth,
)
from drafting.trace import Length, larger, smaller

HALF_STRETCH = 0.5
"""Worn, a cloth is drawn out by half of what it stretches at the most. Common practice, no source."""

USUAL_SLOPE, STEEPEST, FLATTEST, OVER_BONE = 20.0, 26.0, 14.0, 2.0
"""Degrees of a shoulder seam; where it was measured 2 degrees flatter than the shoulder. House method."""

BINDING = 1.5
"""Finished depth of a band on a bare armhole, cm. House method."""

LEAST_UNDER_ARM = 8.0
INSET = 0.5
"""The armhole runs at least 0.5 cm inside the shoulder's end. House method."""

UNDERARM_ROOM = 2.5
"""From the back's width to the side at the underarm, cm, at the least. House method."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Frame:
    """Widths of a quarter and depths under the nape, cm.

    Attributes:
        bust: A quarter at the underarm.
        waist: A quarter at the waist.
        hip: A quarter at the hip.
        across: Half the back's width at the armhole.
        neck: Half the neck's width at its base.
        rise: From the nape up to where the shoulder meets the neck.
        pit: From there down to the hollow of the throat.
        shoulder: The shoulder seam from the base of the neck.
        slope: Its slope, degrees.
        scye: Nape to underarm.
        waist_depth: Nape to waist.
        hip_depth: Nape to hip.
        length: Nape to the body's edge, without a hem band.
        ease: Finished bust over body.
        shaped: Whether the sides follow the waist.
    """

    bust: Length
    waist: Length
    hip: Length
    across: Length
    neck: Length
    rise: Length
    pit: Length
    shoulder: Length
    slope: float
    scye: Length
    waist_depth: Length
    hip_depth: Length
    length: Length
    ease: float
    shaped: bool

    def at(self, depth: float) -> float:
        """A quarter's width at a depth under the nape, cm: from level to level in a straight line."""
        rows = [(float(self.scye), float(self.bust)), (float(self.hip_depth), float(self.hip))]
        if self.shaped:
            rows.insert(1, (float(self.waist_depth), float(self.waist)))
        for (upper, a), (lower, b) in pairwise(rows):
            if depth <= lower:
                return a + (b - a) * (depth - upper) / (lower - upper)
        return rows[-1][1]


def reduction(stretch: float) -> float:
    """The share by which a fitted top is smaller than the body, for a stretch in percent."""
    for (low, a), (high, b) in pairwise(REDUCTIONS):
        if stretch <= high:
            return a + (b - a) * max(0.0, stretch - low) / (high - low)
    return REDUCTIONS[-1][1]


def least_girth(body: float, stretch: float) -> float:
    """The smallest finished girth in cm for a girth of the body, the cloth drawn out by half its stretch."""
    return body / (1 + HALF_STRETCH * stretch / 100)


def bust_ease(body: Body, cut: KnitTop) -> float:
    """Finished bust over body, cm: as ordered, else by fit and stretch.

    Raises:
        SpecError: The cloth does not stretch so far.
    """
    bust = body.value("bust_girth")
    stable = WOVEN_EASE if cut.stretch < STABLE else 0.0
    usual = EASES[cut.fit].bust - (reduction(cut.stretch) * bust if cut.fit == "fitted" else 0.0) + stable
    ease = usual if cut.bust_ease is None else cut.bust_ease
    least = least_girth(bust, cut.stretch) - bust
    if ease < least - 1e-9:
        raise SpecError(
            f"With a stretch of {cut.stretch:g} percent bust_ease is {least:.1f} cm at the least: give more of it, or a cloth of more stretch.",
            where="garment.bust_ease", received=ease, allowed=(least, 40.0),
        )
    return ease


def frame(body: Body, cut: KnitTop, sheet: DraftSheet) -> Frame:
    """Settle widths and levels.

    Raises:
        SpecError: The cloth does not stretch so far, or the top is too short.
    """
    sheet.heading("Widths", "common practice, no source")
    eases, fitted = EASES[cut.fit], cut.fit == "fitted"
    ease = bust_ease(body, cut)
    spare = Length(ease, "bust ease")
    bust = sheet.length("quarter of the bust", (body.bust_girth + spare) / 4, "Front and back alike; the ease by the fit and by how far the cloth stretches.")
    share = 1 - reduction(cut.stretch) if fitted else 1.0
    hip = sheet.length("quarter of the hip", (body.hip_girth * share + (0.0 if fitted else eases.bust / 3)) / 4, "It goes over the hips.")
    hip = hip if fitted else larger(hip, bust)
    waist = sheet.length("quarter of the waist", smaller((body.waist_girth * share + 4.0) / 4, bust), "Easy over the waist.") if fitted else bust

    sheet.heading("Neck and shoulder", "from memory: W. Aldrich, Metric Pattern Cutting for Women's Wear")
    neck = sheet.length("half the neck's width", body.neck_base_girth / 5 - 0.2, "At the base of the neck.")
    rise = sheet.length("rise of the neck", neck / 3, "From the nape to where the shoulder meets the neck.")
    pit = sheet.length("depth of the front neck", neck + 0.2, "From there to the hollow of the throat.")
    bare = 0.0 if has_sleeve(cut) else BINDING
    shoulder = sheet.length("shoulder seam from the neck", body.shoulder_length + (eases.shoulder - bare), "The body's and what the fit adds, less a band on a bare armhole.")

    slope = _slope(body)
    reach = float(neck) + float(shoulder) * math.cos(math.radians(slope)) - INSET
    wide = smaller(body.across_back_width / 2 + (eases.across - bare / 2), smaller(bust - UNDERARM_ROOM, reach))
    across = sheet.length("half the width at the armhole", wide, "Half the back's width, within shoulder and side; the front alike.")

    sheet.heading("Levels", "common practice, no source")
    scye = sheet.length("nape to underarm", body.scye_depth_length + eases.scye, "The body's, and room to lift the arm.")
    down = body.back_neck_point_to_waist
    hips = sheet.length("nape to hip", down + body.side_waist_to_hip, "Level of the fullest seat.")
    whole = hips + BELOW_HIP if cut.length is None else Length(cut.length, "length")
    length = sheet.length("nape to the body's edge", whole - hem_band_depth(cut), "A hem band hangs below it.")
    if length < scye + LEAST_UNDER_ARM:
        shortest = float(scye) + LEAST_UNDER_ARM + hem_band_depth(cut)
        raise SpecError(f"The top would end under the arm; length is {shortest:.1f} cm at the least.", where="garment.length", received=float(whole), allowed=(shortest, 120.0))
    return Frame(
        bust=bust, waist=waist, hip=hip, across=across, neck=neck, rise=rise, pit=pit, shoulder=shoulder, slope=slope,
        scye=scye, waist_depth=down, hip_depth=hips, length=length, ease=ease, shaped=fitted,
    )


def _slope(body: Body) -> float:
    """Degrees of the shoulder seam: as measured, else as usual."""
    if not body.taken("shoulder_slope"):
        return USUAL_SLOPE
    return min(STEEPEST, max(FLATTEST, body.value("shoulder_slope") - OVER_BONE))
