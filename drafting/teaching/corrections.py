"""What a toile may show, why, and what is changed on the pattern. Amounts in cm.

Sources: University pants measures handout (rise), Hertzer, Garment Cutting in the Twentieth
Century (1892; slope of the seat, width from front to back), New Dressmaker (1921; full abdomen in
a skirt), USDA, Fitting Dresses (skirts); the rest is common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Correction:
    """One thing that a fitting may show.

    Attributes:
        symptom: What is seen.
        cause: Why.
        change: What is done on the pattern.
        least: Usual amount from, cm.
        most: Usual amount to, cm; both 0 where no amount can be told.
    """

    symptom: str
    cause: str
    change: str
    least: float
    most: float


TROUSERS = (
    Correction(
        "Level creases across the hip; pockets stand open; the legs ride up.",
        "Too narrow at the hip.",
        "Add at each side edge, run out to the knee.",
        0.5,
        1.5,
    ),
    Correction(
        "Plumb folds beside the hip.",
        "Too wide at the hip.",
        "Take off at each side edge.",
        0.5,
        1.0,
    ),
    Correction(
        "Cuts in at the crotch and drags the band down.",
        "The rise is too short.",
        "Cut front and back across at the hip line and spread.",
        1.0,
        2.0,
    ),
    Correction(
        "The crotch hangs low and shortens the step.",
        "The rise is too long.",
        "Fold front and back across at the hip line.",
        1.0,
        2.0,
    ),
    Correction(
        "Creases fan upward and outward from the front crotch.",
        "The front fork is too short.",
        "Lengthen the front fork, blend in well above the knee.",
        0.5,
        1.0,
    ),
    Correction(
        "Loose cloth falls in folds from the front crotch.",
        "The front fork is too long.",
        "Shorten the front fork.",
        0.5,
        1.0,
    ),
    Correction(
        "The seat is tight and draws the back waist down.",
        "A full seat: the back crotch seam is too short.",
        "Cut across from the centre back to the side and open a wedge; then lengthen the fork.",
        1.0,
        2.5,
    ),
    Correction(
        "Loose folds hang under the seat.",
        "A flat seat: the back is too long.",
        "Fold a wedge out at the centre back and shorten the back fork.",
        1.0,
        2.0,
    ),
    Correction(
        "Baggy standing, tight sitting.",
        "The seat line is too upright or the curve too shallow.",
        "Lean the seat line more and raise the centre back.",
        0.5,
        1.5,
    ),
    Correction(
        "A level fold under the back of the band.",
        "A hollow back, or tight just below the waist.",
        "Let the side out first; else take a wedge out at the centre back.",
        0.5,
        2.0,
    ),
    Correction(
        "The band dips in front and side seams swing forward.",
        "A full abdomen.",
        "Raise the centre front and leave the front dart out.",
        1.0,
        2.5,
    ),
    Correction(
        "Cloth heaps under the front of the band.",
        "A flat abdomen.",
        "Lower the centre front.",
        0.5,
        1.5,
    ),
    Correction(
        "The side seam bows to the front or back.",
        "Width is shared wrongly between front and back.",
        "Add to one panel's side what is taken from the other's.",
        0.5,
        1.0,
    ),
    Correction(
        "The band stands off at the centre back.",
        "A waist that is small against the hip.",
        "Deepen the back darts.",
        0.5,
        1.0,
    ),
    Correction(
        "Slanting folds from the knee to the inside ankle.",
        "Legs that bow or knock at the knee.",
        "Cut across at the crotch line and shift the leg sideways.",
        0.5,
        1.5,
    ),
    Correction(
        "The back leg catches on the calf.",
        "Strong calves.",
        "Add at the back's side and inseam from the knee down.",
        0.3,
        0.8,
    ),
    Correction(
        "Tight round the thigh.",
        "A full thigh.",
        "Add at both inseams, blend in at the knee.",
        0.5,
        1.5,
    ),
    Correction(
        "The hem breaks in front and lifts behind.",
        "A level hem on a leg that leans forward.",
        "Slope the hem: longer behind.",
        0.5,
        1.5,
    ),
    Correction(
        "One side hangs lower.",
        "Hips or legs of two heights.",
        "Raise the waist on the higher side by the difference.",
        0.0,
        0.0,
    ),
)

SKIRTS = (
    Correction(
        "Draws across the hip and rides up.",
        "Too narrow at the hip.",
        "Add at each side edge; keep the side plumb.",
        0.5,
        1.5,
    ),
    Correction(
        "Loose at waist and hip.",
        "Too wide, or it has slipped.",
        "Deepen side seams and back darts.",
        0.5,
        1.0,
    ),
    Correction(
        "The hip line is not level.",
        "The waist sits at wrong heights.",
        "Raise or lower the waist there.",
        0.5,
        2.0,
    ),
    Correction(
        "Stands off in front; the hem lifts there.",
        "A full abdomen.",
        "Raise the front waist, running out at the hip; give the width back at the side.",
        2.5,
        4.0,
    ),
    Correction(
        "Stands off behind; the hem lifts there.",
        "A full seat.",
        "Raise and widen the back; longer, wider darts.",
        1.0,
        2.5,
    ),
    Correction(
        "A fold under the back waist.",
        "A hollow back.",
        "Lower the centre back, running out at the sides.",
        0.5,
        2.0,
    ),
    Correction(
        "Folds under the waist at the sides.",
        "Hips that curve out high.",
        "Let the side out a hand's breadth below the waist.",
        0.5,
        1.0,
    ),
    Correction(
        "Cups in under the seat.",
        "A flat seat, or a hem too narrow.",
        "Lower the centre back and straighten the side.",
        0.5,
        1.0,
    ),
    Correction(
        "A dart ends in a peak.",
        "It is too long or too wide.",
        "End it above the fullest level, or make two of it.",
        2.0,
        2.5,
    ),
    Correction(
        "The hem is not level.",
        "Hips of two heights.",
        "Raise the waist on the lower side; mark the hem last, from the floor.",
        0.0,
        0.0,
    ),
    Correction(
        "Hinders walking.",
        "The hem is narrow.",
        "Add a vent, or widen the side at the hem.",
        1.0,
        2.0,
    ),
)

CORRECTIONS = {"trouser": TROUSERS, "skirt": SKIRTS}
"""By a word in the garment's kind."""


def corrections_for(kind: str) -> tuple[Correction, ...]:
    """What a toile of a garment may show; nothing where no list is kept for its kind."""
    return next((rows for word, rows in CORRECTIONS.items() if word in kind), ())
