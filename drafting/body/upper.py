"""The vocabulary of measures from the waist up, in the order of the tape.

Source: terms and clauses of ISO 8559-1:2017 as quoted by others ("from memory" and "uncertain" are
marked so); how to take them: common practice, no source, and *Check Your Pattern for Proper Fit*,
New Mexico State University Extension, Guide C-220.
"""

from __future__ import annotations

from drafting.body.measure import Measure


class UpperBody:
    """Neck, shoulders, trunk, arms. A thin chain round the base of the neck helps to find it."""

    __slots__ = ()

    head_girth = Measure(
        "head",
        "Head girth",
        "Level round the head over the middle of the forehead and the fullest part behind.",
        iso="5.3.1 (from memory, uncertain)",
    )
    neck_girth = Measure(
        "neck",
        "Neck girth",
        "Level round the neck just below the larynx, a finger inside the tape.",
        iso="5.3.2",
    )
    neck_base_girth = Measure(
        "neck base",
        "Neck base girth",
        "Round the base of the neck on a chain that lies over the nape bone and the hollow of the "
        "throat.",
        iso="5.3.3",
    )
    bust_girth = Measure(
        "bust",
        "Bust girth",
        "Level round the fullest part of the bust or chest and over the shoulder blades, arms "
        "down, breathing quietly, over the underwear to be worn.",
        iso="5.3.4",
    )
    chest_girth = Measure(
        "chest",
        "Chest girth",
        "Round the trunk right under the arms, arms down.",
        iso="5.3.6",
    )
    upper_chest_girth = Measure(
        "upper chest",
        "Upper chest girth",
        "Under the arms, above the bust in front and across the widest back.",
        iso="5.3.7",
    )
    under_bust_girth = Measure(
        "under bust",
        "Under bust girth",
        "Level round the ribs right under the bust.",
        iso="5.3.8",
    )
    armscye_girth = Measure(
        "armscye",
        "Armscye girth",
        "Over the shoulder point and under the arm, arm hanging, not tight.",
        iso="5.3.15",
    )
    upper_arm_girth = Measure(
        "upper arm",
        "Upper-arm girth",
        "Round the fullest part of the upper arm, arm hanging and relaxed.",
        iso="5.3.16",
    )
    elbow_girth = Measure(
        "elbow",
        "Elbow girth",
        "Round the elbow with the arm bent.",
        iso="5.3.17 (from memory, uncertain)",
    )
    forearm_girth = Measure(
        "forearm",
        "Forearm girth",
        "Round the fullest part below the elbow, arm hanging.",
        iso="5.3.18 (from memory, uncertain)",
    )
    wrist_girth = Measure(
        "wrist",
        "Wrist girth",
        "Round the wrist over its bone, a finger inside the tape.",
        iso="5.3.19",
    )
    hand_girth = Measure(
        "hand",
        "Hand girth",
        "Round the knuckles without the thumb, hand flat.",
        iso="5.5.1",
    )
    bust_point_width = Measure(
        "bust point width",
        "Bust point width",
        "Straight across from one bust point to the other.",
        "length",
        iso="5.2.3",
    )
    armscye_front_to_back_width = Measure(
        "armscye width",
        "Armscye front to back width",
        "Straight from the front to the back fold of the arm, beside the body.",
        "length",
        iso="5.2.4",
    )
    shoulder_length = Measure(
        "shoulder",
        "Shoulder length",
        "From where the neck chain crosses the shoulder to the outer edge of the shoulder bone; "
        "moving the arm shows where the bone ends.",
        "length",
        iso="5.4.1",
    )
    back_shoulder_width = Measure(
        "back shoulder width",
        "Back shoulder width",
        "Across the back from one shoulder point to the other, the shortest way over the body.",
        "length",
        iso="5.4.2",
    )
    across_back_shoulder_width = Measure(
        "shoulder width over the nape",
        "Across back shoulder width",
        "Over the back from one shoulder point to the other by way of the nape bone.",
        "length",
        iso="5.4.3",
    )
    across_back_width = Measure(
        "back width",
        "Across back width",
        "Across the shoulder blades between the arm folds, arms hanging.",
        "length",
        iso="5.4.4 (uncertain)",
    )
    back_neck_point_to_waist = Measure(
        "back length",
        "Back neck point to waist",
        "From the nape bone down the middle of the back to the waist cord; a bent head shows the "
        "bone, then look straight ahead again.",
        "length",
        iso="5.4.5",
    )
    scye_depth_length = Measure(
        "scye depth",
        "Scye depth length",
        "From the nape bone down the back to the level of a strip of paper held under the arms.",
        "length",
        iso="5.4.6",
    )
    across_front_width = Measure(
        "front width",
        "Across front width",
        "Across the chest above the bust between the front arm folds.",
        "length",
        iso="5.4.7",
    )
    front_neck_point_to_waist = Measure(
        "front length",
        "Front neck point to waist",
        "From the hollow of the throat down the middle of the front to the waist cord.",
        "length",
        iso="5.4.8",
    )
    side_neck_point_to_bust_point = Measure(
        "neck to bust point",
        "Side neck point to bust point",
        "From where the neck chain crosses the shoulder to the bust point.",
        "length",
        iso="5.4.10",
    )
    side_neck_point_to_waist_front = Measure(
        "neck over bust to waist",
        "Side neck point to waist, over the bust",
        "From where the neck chain crosses the shoulder over the bust point to the waist cord, the "
        "tape not pressed in under the bust.",
        "length",
        iso="5.4.11 or 5.4.12 (uncertain)",
        term="Neck shoulder to waist",
    )
    upper_arm_length = Measure(
        "upper arm length",
        "Upper arm length",
        "From the shoulder point to the tip of the elbow, arm bent.",
        "length",
        iso="5.4.14",
    )
    lower_arm_length = Measure(
        "lower arm length",
        "Lower arm length",
        "From the tip of the bent elbow to the wrist bone.",
        "length",
        iso="5.4.15",
    )
    back_neck_point_to_wrist_length = Measure(
        "nape to wrist",
        "Back neck point to wrist length",
        "From the nape bone over the shoulder point and the bent elbow to the wrist bone.",
        "length",
        iso="5.4.17",
    )
    outer_arm_length = Measure(
        "arm",
        "Outer arm length",
        "From the shoulder point over the slightly bent elbow to the wrist bone.",
        "length",
        iso="5.7.8",
    )
    back_neck_height = Measure(
        "nape height",
        "Back neck height",
        "From the floor straight up to the nape bone.",
        "height",
        iso="",
        term="Cervicale height",
    )
    shoulder_slope = Measure(
        "shoulder slope",
        "Shoulder slope",
        "The angle between the shoulder and a level line, in degrees.",
        "angle",
        iso="5.6.2",
    )
