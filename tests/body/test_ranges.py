"""Ranges against what surveys found."""

import pytest

from drafting.body import MEASURES, RANGES

# ANSUR II (2012), 1,986 women and 4,082 men, mm: least and greatest, women then men.
FOUND = {
    "stature": (1409, 1829, 1491, 1993),
    "bust_girth": (695, 1266, 774, 1469),
    "hip_girth": (798, 1341, 737, 1305),
    "thigh_girth": (448, 870, 412, 843),
    "lower_thigh_girth": (302, 600, 290, 540),
    "calf_girth": (282, 482, 266, 523),
    "minimum_leg_girth": (170, 275, 156, 293),
    "heel_ankle_girth": (264, 376, 258, 403),
    "waist_height": (844, 1184, 886, 1272),
    "outside_leg_length": (844, 1184, 886, 1272),
    "hip_height": (656, 995, 716, 1080),
    "inside_leg_height": (610, 947, 702, 1031),
    "knee_height": (346, 540, 397, 612),
    "ankle_height": (43, 79, 54, 93),
    "total_crotch_length": (560, 937, 522, 931),
    "side_waist_to_hip": (114, 254, 116, 274),
    "back_neck_height": (1184, 1587, 1269, 1738),
    "head_girth": (500, 635, 516, 633),
    "neck_girth": (275, 424, 311, 514),
    "neck_base_girth": (302, 457, 350, 545),
    "shoulder_length": (107, 175, 113, 185),
    "across_back_width": (270, 481, 328, 562),
    "upper_arm_girth": (216, 435, 246, 490),
    "forearm_girth": (200, 342, 233, 402),
    "wrist_girth": (124, 183, 141, 216),
    "hand_girth": (152, 214, 179, 248),
    "outer_arm_length": (410, 662, 488, 709),
    "back_neck_point_to_wrist_length": (636, 930, 732, 1058),
    "upper_arm_length": (249, 371, 270, 393),
    # cervicale to the navel, and the vertical to the ISO waist above it
    "back_neck_point_to_waist": (310, 532, 344, 598),
}

# The same people's percentiles 0.5 and 99.5, mm, of what no other survey has.
USUAL = {
    "lower_thigh_girth": (322, 512, 333, 501),
    "heel_ankle_girth": (275, 352, 304, 391),
    "waist_height": (898, 1160, 963, 1236),
    "hip_height": (718, 953, 772, 1029),
    "inside_leg_height": (674, 907, 730, 971),
    "knee_height": (383, 517, 419, 565),
    "ankle_height": (50, 76, 59, 88),
    "side_waist_to_hip": (141, 243, 142, 256),
    "total_crotch_length": (596, 860, 561, 856),
    "head_girth": (518, 619, 535, 618),
    "neck_girth": (289, 392, 342, 474),
    "shoulder_length": (111, 164, 123, 178),
    "hand_girth": (164, 209, 187, 239),
    "outer_arm_length": (465, 619, 515, 678),
}

# What is possible, as proposed from ANSUR II, NHANES 2017-2020 and Heinz et al. (2003), cm.
PROPOSED = {
    "stature": (120, 230), "waist_girth": (45, 220), "hip_girth": (60, 230),
    "bust_girth": (60, 220), "thigh_girth": (30, 120), "knee_girth": (24, 75),
    "calf_girth": (20, 75), "minimum_leg_girth": (14, 45), "heel_ankle_girth": (20, 55),
    "waist_height": (70, 150), "hip_height": (55, 130), "inside_leg_height": (50, 120),
    "knee_height": (28, 75), "ankle_height": (3, 14), "side_waist_to_hip": (8, 35),
    "total_crotch_length": (45, 130), "neck_girth": (24, 70), "neck_base_girth": (26, 75),
    "shoulder_length": (7, 25), "upper_arm_girth": (15, 75), "wrist_girth": (10, 30),
    "hand_girth": (13, 32), "outer_arm_length": (38, 85), "back_neck_height": (100, 205),
    "across_back_width": (22, 70), "body_mass_kg": (30, 300),
}  # fmt: skip


@pytest.mark.parametrize("name", FOUND)
def test_nobody_ever_surveyed_is_impossible(name):
    low, high = RANGES[name].hard
    assert low * 10 < min(FOUND[name])
    assert high * 10 > max(FOUND[name])


@pytest.mark.parametrize("name", USUAL)
def test_usual_is_what_99_of_100_surveyed_people_show(name):
    found = (*RANGES[name].soft("women"), *RANGES[name].soft("men"))
    assert found == pytest.approx([mm / 10 for mm in USUAL[name]], abs=0.06)


@pytest.mark.parametrize("name", PROPOSED)
def test_the_possible_is_as_proposed_from_the_surveys(name):
    assert RANGES[name].hard == PROPOSED[name]


def test_body_rise_is_the_surveys_crotch_depth_and_the_provisional_offset():
    # crotch depth, ISO waist, cm: women 20.0 to 29.5, men 19.6 to 30.3; offset 3.5, sd 1.5
    assert RANGES["body_rise"].women == pytest.approx((20.0 + 3.5 - 1.5, 29.5 + 3.5 + 1.5))
    assert RANGES["body_rise"].men == pytest.approx((19.6 + 3.5 - 1.5, 30.3 + 3.5 + 1.5))
    assert "provisional" in RANGES["body_rise"].basis


def test_girths_and_heights_sent_in_inches_as_cm_are_never_possible():
    # the middle of what is usual, in inches, must fall under the least possible
    for name in ("waist_girth", "hip_girth", "stature", "outside_leg_length", "inside_leg_height"):
        for soft in (RANGES[name].women, RANGES[name].men):
            assert sum(soft) / 2 / 2.54 < RANGES[name].hard[0]


def test_what_no_survey_has_says_so():
    silent = [n for n in MEASURES if RANGES[n].women is None]
    assert all("judgement" in RANGES[n].basis or "ANSUR" in RANGES[n].basis for n in silent)
