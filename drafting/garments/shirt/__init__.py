"""The shirt, for men and women: collar on a stand, yoke, buttoned front, sleeve with slit and cuff.

A chapter of the handbook: frame and corners by one of the methods, the lines between them, sides,
sleeve, collar, cuffs and details, pieces and seams, and what must come out.
"""

from __future__ import annotations

from drafting.garments.garment import Garment, ValidRange
from drafting.garments.shirt.making import draw
from drafting.garments.shirt.spec import Shirt
from drafting.garments.shirt.symptoms import SYMPTOMS

GARMENT = Garment(
    kind="shirt",
    title="Shirt",
    summary="A shirt with a collar on a stand, a yoke and a buttoned front; long sleeves with slit and cuff, or short ones; for men, or for women with a bust dart.",
    spec=Shirt,
    needs=("bust_girth", "neck_girth", "across_back_width", "scye_depth_length", "back_neck_point_to_waist", "upper_arm_girth", "outer_arm_length", "wrist_girth"),
    optional=("shoulder_length", "shoulder_slope", "waist_girth", "hip_girth", "upper_chest_girth", "bust_point_width", "hand_girth", "stature"),
    pieces=("front", "back", "yoke", "yoke_inside", "collar", "collar_stand", "collar_stand_inside", "sleeve", "placket_over", "placket_under", "cuff", "cuff_inside", "chest_pocket"),
    valid=(ValidRange("bust_girth", 80, 134), ValidRange("neck_girth", 29, 50)),
    sources=(
        "W. Aldrich, Metric Pattern Cutting for Menswear (men's classic shirt, its allowances taken off)",
        "from memory: W. Aldrich, Metric Pattern Cutting for Women's Wear (close-fitting block, let out)",
        "common practice, no source (collar, cuff, slit, buttons, pocket, hem, trueing)",
    ),
    sample=(
        ("bust_girth", 96.0), ("waist_girth", 80.0), ("hip_girth", 102.0), ("neck_girth", 35.0), ("across_back_width", 38.0), ("scye_depth_length", 22.5),
        ("back_neck_point_to_waist", 42.0), ("upper_arm_girth", 30.0), ("outer_arm_length", 57.0), ("wrist_girth", 16.0), ("shoulder_length", 13.5),
    ),
    symptoms=SYMPTOMS,
    draw=draw,
)
