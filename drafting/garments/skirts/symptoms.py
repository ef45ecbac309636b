"""Skirts, after the toile: what a fitter may see, and what is changed on the pattern.

Source: New Dressmaker (1921; full abdomen), USDA, Fitting Dresses (the rest in part); else common
practice, no source.
"""

from __future__ import annotations

from drafting.garments.garment import Symptom

SYMPTOMS = (
    Symptom("Draws across the hip and rides up.", "Too narrow at the hip.", "Add at each side edge; keep the side plumb.", 0.5, 1.5),
    Symptom("Loose at waist and hip.", "Too wide, or it has slipped.", "Deepen side seams and back darts.", 0.5, 1.0),
    Symptom("The hip line is not level.", "The waist sits at wrong heights.", "Raise or lower the waist there.", 0.5, 2.0),
    Symptom("Stands off in front; the hem lifts there.", "A full abdomen.", "Raise the front waist, running out at the hip; give the width back at the side.", 2.5, 4.0),
    Symptom("Stands off behind; the hem lifts there.", "A full seat.", "Raise and widen the back; longer, wider darts.", 1.0, 2.5),
    Symptom("A fold under the back waist.", "A hollow back.", "Lower the centre back, running out at the sides.", 0.5, 2.0),
    Symptom("Folds under the waist at the sides.", "Hips that curve out high.", "Let the side out a hand's breadth below the waist.", 0.5, 1.0),
    Symptom("Cups in under the seat.", "A flat seat, or a hem too narrow.", "Lower the centre back and straighten the side.", 0.5, 1.0),
    Symptom("A dart ends in a peak.", "It is too long or too wide.", "End it above the fullest level, or make two of it.", 2.0, 2.5),
    Symptom("The hem is not level.", "Hips of two heights.", "Raise the waist on the lower side; mark the hem last, from the floor.", 0.0, 0.0),
    Symptom("Hinders walking.", "The hem is narrow.", "Add a vent, or widen the side at the hem.", 1.0, 2.0),
)
"""For every skirt; amounts in cm."""
