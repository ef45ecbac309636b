"""Bodices, after the toile: what a fitter may see, and what is changed on the pattern.

Source: Hertzer, Garment Cutting in the Twentieth Century (1892; stooping and erect figures); else common
practice, no source.
"""

from __future__ import annotations

from drafting.garments.garment import Symptom

SYMPTOMS = (
    Symptom("Draws across the bust; the side seam is pulled forward.", "A full bust.", "Slash to the bust point and spread; the bust dart grows with it.", 0.5, 2.5),
    Symptom("Loose folds over the bust.", "A small bust.", "Lap the same slash; the bust dart shrinks with it.", 0.5, 1.5),
    Symptom("Folds from the neck to the armhole.", "Sloping shoulders.", "Lower the end of the shoulder and the whole armhole by as much.", 0.5, 1.5),
    Symptom("Folds from the end of the shoulder to the bust.", "Square shoulders.", "Raise the end of the shoulder and the whole armhole by as much.", 0.5, 1.5),
    Symptom("Tight across the blades.", "A broad or round back.", "Move the back width out; deepen the shoulder dart.", 0.5, 1.5),
    Symptom("The back rides up and stands off the neck.", "A stooping back.", "Slash across the blades to the armhole and lengthen the centre back.", 1.0, 2.5),
    Symptom("A level fold across the back above the waist.", "An erect or hollow back.", "Shorten the centre back, running out at the side.", 0.5, 1.5),
    Symptom("Gapes at the armhole in front.", "A hollow chest, or a bust dart too small.", "Fold what gapes into the bust dart.", 0.5, 1.0),
    Symptom("The neckline gapes.", "Lowered or widened beyond the shape of the body.", "Fold what gapes into the bust dart.", 0.25, 1.0),
    Symptom("The sleeve binds and draws from the crown.", "A large upper arm, or a cap too low.", "Deepen the armhole, and give the sleeve more room.", 0.5, 2.0),
    Symptom("The sleeve swings back or forward.", "The arm hangs otherwise than the sleeve.", "Turn the sleeve in the armhole: move its shoulder notch.", 0.5, 1.5),
    Symptom("A dart ends in a peak.", "It is too long or too wide.", "End it farther from the bust point.", 0.5, 2.0),
)
"""For bodice and dress; amounts in cm."""
