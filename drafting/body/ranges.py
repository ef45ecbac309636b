"""What is usual, and what is possible at all, for each measure of an adult.

Hard: outside it the number is taken for a slip of the pen or of the unit. Soft: outside it the
body is unusual, and a second look at the tape is worth while. Centimetres (kilograms, degrees).

Source: soft ranges are the 0.5 to 99.5 percentile over ANSUR II (2012 Anthropometric Survey of
U.S. Army Personnel, public release of 2017), NHANES 2017 to March 2020 and Heinz, Peterson,
Johnson and Kerk (2003), "Exploring Relationships in Body Dimensions", Journal of Statistics
Education 11(2). Hard ranges are what those sets ever held, widened by judgement.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from drafting.body.body import Figure

Bounds = tuple[float, float]

SURVEYS = "ANSUR II 2012, NHANES 2017-2020, Heinz et al. 2003"
ANSUR = "ANSUR II 2012"
KIN = "as a measure beside it, widened by judgement; surveyed by none"
OWN = "judgement; surveyed by none"

RISE_OFFSET = 3.5
"""cm by which a seated rise exceeds a survey's waist height less crotch height (provisional)."""

RISE_OFFSET_SD = 1.5
"""cm; how well that offset is known."""


@dataclass(frozen=True, slots=True)
class Ranges:
    """The bounds of one measure.

    Attributes:
        hard: What is possible on an adult.
        women: What is usual on women, where a survey says so.
        men: What is usual on men, where a survey says so.
        basis: Where the numbers come from.
    """

    hard: Bounds
    women: Bounds | None = None
    men: Bounds | None = None
    basis: str = OWN

    def soft(self, figure: Figure) -> Bounds | None:
        """What is usual on such a figure; None where no survey says it."""
        return self.women if figure == "women" else self.men


_RISE = (
    "ANSUR II 2012, ISO waist height less crotch height, plus 3.5 cm between survey and seated "
    "rise (provisional), opened by its sd of 1.5 cm each way"
)
_SPLIT = "ANSUR II 2012, navel level, lengthened by the way up to the ISO waist"

RANGES: dict[str, Ranges] = {
    "waist_girth": Ranges(
        (45, 220),
        (57.9, 150.0),
        (67.7, 153.0),
        SURVEYS + "; waists at the navel, the hip bone and the narrowest level together",
    ),
    "top_hip_girth": Ranges((50, 225), basis=KIN),
    "hip_girth": Ranges((60, 230), (80.8, 160.6), (82.0, 150.1), SURVEYS),
    "maximum_hip_girth": Ranges((60, 235), basis=KIN),
    "side_waist_to_hip": Ranges(
        (8, 35), (14.1, 24.3), (14.2, 25.6), ANSUR + ", vertical, from the ISO waist"
    ),
    "body_rise": Ranges((16, 50), (22.0, 34.5), (21.6, 35.3), _RISE),
    "total_crotch_length": Ranges(
        (45, 130),
        (59.6, 86.0),
        (56.1, 85.6),
        ANSUR + ", navel length plus twice the way up to the ISO waist",
    ),
    "front_crotch_length": Ranges((18, 65), basis=_SPLIT),
    "back_crotch_length": Ranges((22, 75), basis=_SPLIT),
    "outside_leg_length": Ranges(
        (70, 150), (89.8, 116.0), (96.3, 123.6), ANSUR + ", ISO waist height"
    ),
    "inside_leg_height": Ranges((50, 120), (67.4, 90.7), (73.0, 97.1), ANSUR),
    "thigh_girth": Ranges(
        (30, 120), (48.6, 78.2), (47.2, 79.6), "ANSUR II 2012, Heinz et al. 2003"
    ),
    "mid_thigh_girth": Ranges((26, 110), basis=KIN),
    "lower_thigh_girth": Ranges((24, 90), (32.2, 51.2), (33.3, 50.1), ANSUR),
    "knee_girth": Ranges((24, 75), (30.1, 44.4), (31.7, 42.9), "Heinz et al. 2003"),
    "lower_knee_girth": Ranges((20, 75), basis=KIN),
    "calf_girth": Ranges((20, 75), (29.5, 45.4), (30.3, 47.9), "ANSUR II 2012, Heinz et al. 2003"),
    "minimum_leg_girth": Ranges(
        (14, 45), (18.0, 26.0), (19.2, 27.7), "ANSUR II 2012, Heinz et al. 2003"
    ),
    "ankle_girth": Ranges((15, 50), basis=KIN),
    "heel_ankle_girth": Ranges((20, 55), (27.5, 35.2), (30.4, 39.1), ANSUR),
    "stature": Ranges((120, 230), (142.9, 180.2), (153.9, 196.3), SURVEYS),
    "waist_height": Ranges((70, 150), (89.8, 116.0), (96.3, 123.6), ANSUR + ", ISO waist"),
    "hip_height": Ranges((55, 130), (71.8, 95.3), (77.2, 102.9), ANSUR),
    "knee_height": Ranges((28, 75), (38.3, 51.7), (41.9, 56.5), ANSUR),
    "ankle_height": Ranges((3, 14), (5.0, 7.6), (5.9, 8.8), ANSUR),
    "body_mass_kg": Ranges((30, 300), (42.3, 154.6), (49.1, 163.5), SURVEYS),
    "head_girth": Ranges((44, 72), (51.8, 61.9), (53.5, 61.8), ANSUR),
    "neck_girth": Ranges((24, 70), (28.9, 39.2), (34.2, 47.4), ANSUR),
    "neck_base_girth": Ranges((26, 75), (32.6, 43.2), (37.7, 51.0), ANSUR),
    "bust_girth": Ranges(
        (60, 220), (77.3, 119.6), (85.8, 129.0), ANSUR + "; heavy bodies are missing from it"
    ),
    "chest_girth": Ranges((58, 220), basis=KIN),
    "upper_chest_girth": Ranges((58, 220), basis=KIN),
    "under_bust_girth": Ranges((50, 210), basis=KIN),
    "armscye_girth": Ranges((25, 90), basis=OWN),
    "upper_arm_girth": Ranges(
        (15, 75), (21.5, 49.6), (23.4, 49.1), SURVEYS + "; flexed and relaxed together"
    ),
    "elbow_girth": Ranges((15, 65), basis=KIN),
    "forearm_girth": Ranges((14, 60), (22.1, 31.7), (25.7, 37.4), ANSUR + ", flexed"),
    "wrist_girth": Ranges((10, 30), (13.1, 17.8), (15.0, 20.1), "ANSUR II 2012, Heinz et al. 2003"),
    "hand_girth": Ranges((13, 32), (16.4, 20.9), (18.7, 23.9), ANSUR),
    "bust_point_width": Ranges((10, 40), basis=OWN),
    "armscye_front_to_back_width": Ranges((5, 30), basis=OWN),
    "shoulder_length": Ranges((7, 25), (11.1, 16.4), (12.3, 17.8), ANSUR),
    "back_shoulder_width": Ranges((25, 70), basis=OWN),
    "across_back_shoulder_width": Ranges((25, 75), basis=OWN),
    "across_back_width": Ranges((22, 70), (30.0, 45.2), (34.7, 52.5), ANSUR),
    "back_neck_point_to_waist": Ranges(
        (25, 70), basis="ANSUR II 2012, to the navel and to the ISO waist together, widened"
    ),
    "scye_depth_length": Ranges((10, 40), basis=OWN),
    "across_front_width": Ranges((20, 70), basis=OWN),
    "front_neck_point_to_waist": Ranges(
        (20, 65), basis="ANSUR II 2012, sitting, to the navel, widened"
    ),
    "side_neck_point_to_bust_point": Ranges((15, 55), basis=OWN),
    "side_neck_point_to_waist_front": Ranges((28, 80), basis=OWN),
    "upper_arm_length": Ranges(
        (20, 55), (26.6, 35.9), (29.1, 38.4), ANSUR + ", to the radius, arm straight"
    ),
    "lower_arm_length": Ranges((15, 45), basis=OWN),
    "back_neck_point_to_wrist_length": Ranges((50, 125), (70.0, 90.6), (79.1, 100.3), ANSUR),
    "outer_arm_length": Ranges((38, 85), (46.5, 61.9), (51.5, 67.8), ANSUR),
    "back_neck_height": Ranges((100, 205), (124.7, 154.7), (135.7, 169.0), ANSUR),
    "shoulder_slope": Ranges((5, 45), basis=OWN),
}
"""Every measure of the vocabulary, proven complete by a test."""
