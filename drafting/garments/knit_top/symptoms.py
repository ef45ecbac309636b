"""Knit top, after the toile: what a fitter may see, and what is changed on the pattern.

Source: common practice, no source. A toile of a knit is sewn of a cloth that stretches alike.
"""

from __future__ import annotations

from drafting.garments.garment import Symptom

SYMPTOMS = (
    Symptom("The neck gapes or stands away.", "The neckband is too long.", "Shorten the band; stretch it more over the front.", 1.0, 3.0),
    Symptom("The neckband stands up or puckers.", "The band is too short or too wide.", "Lengthen the band, or make it narrower.", 1.0, 2.0),
    Symptom("Folds from the neck to the armhole.", "The shoulders slope more than the pattern.", "Lower the shoulder tip, and the underarm with it.", 0.5, 1.0),
    Symptom("Pulls from the neck to the shoulder tip.", "The shoulders are squarer than the pattern.", "Raise the shoulder tip, and the underarm with it.", 0.5, 1.0),
    Symptom("The shoulder seam hangs off the bone.", "The shoulder is too long, or has grown.", "Shorten it; catch a tape in the seam.", 0.5, 1.5),
    Symptom("Draws from the bust to the armhole.", "A full bust without a dart.", "Add at the sides, and length at the front side, eased on over the bust.", 1.0, 2.0),
    Symptom("The hem lifts in front.", "A full bust or abdomen.", "Lengthen the front at the side, running out at the centre.", 1.0, 2.5),
    Symptom("Lifting the arm lifts the whole top.", "The armhole is too deep.", "Raise the underarm of body and sleeve.", 1.0, 2.0),
    Symptom("The sleeve drags from crown to underarm.", "The cap is too high and too narrow.", "Lower the cap and widen the sleeve by as much.", 0.5, 1.5),
    Symptom("Rides up over the hips.", "The hem is too narrow.", "Let the sides out from the waist down.", 0.5, 1.5),
    Symptom("The hem or band flares.", "It was stretched while it was sewn, or the band is too long.", "Steam it back, or shorten the band.", 1.0, 3.0),
)
"""Amounts in cm."""
