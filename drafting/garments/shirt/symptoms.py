"""A shirt, after the toile: what a fitter may see, and what is changed on the pattern.

Source: common practice, no source.
"""

from __future__ import annotations

from drafting.garments.garment import Symptom

SYMPTOMS = (
    Symptom("Creases point from the chest to the armholes and the front gapes between buttons.", "Too narrow across the chest or bust.", "Add at each side edge; with a full bust widen the bust dart.", 0.5, 1.5),
    Symptom("Plumb folds hang beside the armholes.", "Too wide across chest or back.", "Take off at the side edges, and at the armholes above.", 0.5, 1.0),
    Symptom("Folds slant from the neck to the armhole.", "Shoulders slope more than the draft's.", "Lower the shoulder ends, and the whole armhole with them.", 0.5, 1.0, "shoulder_drop"),
    Symptom("Folds lie across between neck and shoulder ends.", "Shoulders squarer than the draft's.", "Raise the shoulder ends, and the whole armhole with them.", -1.0, -0.5, "shoulder_drop"),
    Symptom("Tight across the blades when the arms reach forward.", "The back is too narrow, or has no pleat.", "Add at the back armhole, or deepen the pleat.", 0.5, 1.0),
    Symptom("A level fold lies under the collar behind.", "The neck is cut too high behind, or the back is long.", "Lower the back neck, and lengthen the stand to match.", 0.3, 0.8),
    Symptom("The collar pinches when it is buttoned.", "The neck seam is too short.", "Lower the throat; cut the stand as much longer.", 0.3, 0.8),
    Symptom("The collar stands away from the neck behind.", "The neck seam is too long, or the stand rises too little.", "Raise the stand's front end, or raise the throat.", 0.3, 0.8),
    Symptom("The front swings apart at the hem.", "A full abdomen, or a round back.", "Lengthen the front at the neck; or let the sides out from the waist.", 0.5, 1.5),
    Symptom("Folds slant from the sleeve's crown to the underarm in front.", "The arm hangs farther forward than the sleeve.", "Turn the sleeve forward in the armhole.", 0.5, 1.0),
    Symptom("The sleeve lifts the shirt when the arm is raised.", "The armhole is too deep or the cap too high.", "Raise the underarm; lower the cap and widen the sleeve.", 1.0, 2.0),
    Symptom("The cuff slides up the arm when it bends.", "The sleeve is too short.", "Lengthen the sleeve across its middle.", 1.0, 2.0),
)
