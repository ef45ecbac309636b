"""The vocabulary of measures from the waist down, in the order of the tape.

Source: terms and clauses of ISO 8559-1:2017 as quoted by others ("from memory" and "uncertain" are
marked so); how to take them: common practice, no source, and *Measurements for Fitting Pants*,
New Mexico State University Extension, Guide C-209.
"""

from __future__ import annotations

from drafting.body.measure import Measure


class LowerBody:
    """Waist, hip, legs. All heights are taken without shoes, from the floor straight up."""

    __slots__ = ()

    waist_girth = Measure(
        "waist",
        "Waist girth",
        "Tie a cord round the middle and bend to the sides until it settles in the hollow. Round "
        "the body on that cord, tape level, after breathing out, belly not drawn in.",
        iso="5.3.10",
    )
    top_hip_girth = Measure(
        "top hip",
        "Top hip girth",
        "Level round the body half way between waist cord and hip level, over the fullest belly.",
        iso="5.3.12",
    )
    hip_girth = Measure(
        "hip",
        "Hip girth",
        "Level round the fullest part of the seat, feet together, pockets empty; the tape must "
        "still slide.",
        iso="5.3.13",
    )
    maximum_hip_girth = Measure(
        "widest hip",
        "Maximum hip girth",
        "Level round the body wherever it is widest below the waist, be that seat, belly or thigh.",
        iso="5.3.14",
    )
    side_waist_to_hip = Measure(
        "waist to hip",
        "Side waist to hip",
        "Down the side from the waist cord, over the curve, to the level where the hip was taken.",
        "length",
        iso="5.4.21",
        by_side=True,
    )
    body_rise = Measure(
        "body rise",
        "Body rise",
        "Sit upright on a hard flat chair, feet flat on the floor. Down the side from the waist "
        "cord, over the curve, then straight to the seat of the chair. Needs a helper.",
        "length",
        iso="",
    )
    total_crotch_length = Measure(
        "crotch length",
        "Total crotch length",
        "From the waist cord at the centre front between the legs to the cord at the centre back, "
        "touching but not pulled.",
        "length",
        iso="5.4.18 (uncertain)",
    )
    front_crotch_length = Measure(
        "front crotch length",
        "Front crotch length",
        "The part of the crotch length from the front cord to the point straight under the body, "
        "where a weight hung on a thread shows it.",
        "length",
    )
    back_crotch_length = Measure(
        "back crotch length",
        "Back crotch length",
        "The part of the crotch length from the point straight under the body to the back cord.",
        "length",
    )
    outside_leg_length = Measure(
        "outside leg",
        "Outside leg length",
        "From the waist cord down the side over the hip, then straight to the floor, no shoes. "
        "Needs a helper.",
        "length",
        iso="",
        by_side=True,
    )
    inside_leg_height = Measure(
        "inside leg",
        "Inside leg height",
        "From the crotch straight down to the floor, no shoes, feet a hand's length apart. A book "
        "pushed up level between the legs gives the top. The floor counts, not the hem.",
        "height",
        iso="5.1.15",
    )
    thigh_girth = Measure(
        "thigh",
        "Thigh girth",
        "Level round the leg just under the fold of the seat, weight on both feet.",
        iso="5.3.20",
    )
    mid_thigh_girth = Measure(
        "mid thigh",
        "Mid-thigh girth",
        "Level round the leg half way between crotch and knee.",
        iso="5.3.21",
    )
    lower_thigh_girth = Measure(
        "lower thigh",
        "Lower thigh girth",
        "Level round the leg just above the kneecap.",
    )
    knee_girth = Measure(
        "knee",
        "Knee girth",
        "Round the middle of the kneecap; for trousers with the knee a little bent.",
        iso="5.3.22",
    )
    lower_knee_girth = Measure(
        "lower knee",
        "Lower knee girth",
        "Level round the leg just below the kneecap.",
        iso="5.3.23 (uncertain)",
    )
    calf_girth = Measure(
        "calf",
        "Calf girth",
        "Level round the fullest part of the lower leg, weight on both feet.",
        iso="5.3.24",
    )
    minimum_leg_girth = Measure(
        "narrowest leg",
        "Minimum leg girth",
        "Level round the narrowest part of the leg, a little above the ankle bone.",
        iso="5.3.25",
    )
    ankle_girth = Measure(
        "ankle",
        "Ankle girth",
        "Round the leg over the ankle bone, not above it.",
        iso="5.3.26 (from memory, uncertain)",
    )
    heel_ankle_girth = Measure(
        "heel and instep",
        "Heel to instep girth",
        "Round the foot over the point of the heel and the bend of the instep, foot stretched: "
        "what must pass through a narrow hem.",
    )
    stature = Measure(
        "height",
        "Stature",
        "Stand with the back to a wall, no shoes, head level; from the floor to a book laid flat "
        "on the head.",
        "height",
        iso="5.1.1",
    )
    waist_height = Measure(
        "waist height",
        "Waist height",
        "From the floor straight up to the level of the waist cord at the side.",
        "height",
        iso="",
    )
    hip_height = Measure(
        "hip height",
        "Hip height",
        "From the floor straight up to the level where the hip was taken.",
        "height",
        iso="",
    )
    knee_height = Measure(
        "knee height",
        "Knee height",
        "From the floor straight up to the middle of the kneecap.",
        "height",
        iso="",
    )
    ankle_height = Measure(
        "ankle height",
        "Ankle height",
        "From the floor straight up to the outer ankle bone.",
        "height",
        iso="",
    )
    body_mass_kg = Measure(
        "weight",
        "Body mass",
        "On scales, in light clothes, in kilograms.",
        "mass",
        iso="5.6.1",
    )
