"""The men's classic shirt: a draft whose shoulder seam lies forward of the shoulder's ridge.

W. Aldrich, Metric Pattern Cutting for Menswear, the classic shirt: that draft holds allowances of
1 cm. Here each of its lines lies 1 cm further in: numbers are those that a worked example gives.
"""

from __future__ import annotations

from drafting.body import Body
from drafting.craft.sheet import DraftSheet
from drafting.garments.shirt.block import Block
from drafting.garments.shirt.choices import LEAST_ARMHOLE, eases, lower, shoulder_drop
from drafting.garments.shirt.spec import Shirt
from drafting.trace import Length, smaller
from drafting.trace.place import corner_of_paper

SOURCE = "W. Aldrich, Metric Pattern Cutting for Menswear (classic shirt, its allowances taken off)"

WAIST_TO_HEM = 34.0
"""A shirt to be tucked in ends 32 to 36 cm under the waist. Source: common practice, no source."""


def mens(body: Body, cut: Shirt, sheet: DraftSheet) -> Block:
    """Draw the frame, the neck and shoulder corners of a men's shirt."""
    own = eases(cut)
    ease = Length(own.chest, "chest ease")
    sheet.heading("Frame", SOURCE)
    nape = sheet.point("nape", corner_of_paper(), "The middle of the back neck; heights are measured from it.")
    drop = shoulder_drop(body, cut)
    depth = sheet.length("armhole depth", body.scye_depth_length + own.depth, "The armhole lies under the armpit, so that the arm can lift.")
    underarm = sheet.point("underarm at the centre back", nape.down(depth + drop if drop else depth), "Level of the bottom of the armhole.")
    waist = sheet.point("waist at the centre back", nape.down(body.back_neck_point_to_waist + 2), "A little room in the length of the back.")
    hem = sheet.point("hem at the centre back", nape.down(Length(cut.length, "length")) if cut.length else waist.down(WAIST_TO_HEM), "Where the shirt ends.")
    half = sheet.length("half the shirt", body.bust_girth / 2 + ease / 2, "Half the chest and its ease.")
    centre = sheet.point("centre front at the underarm", underarm.right(half), "Half the shirt away.")
    quarter = body.bust_girth / 4 + ease / 4 + 0.5
    side = sheet.point("side at the underarm", underarm.right(quarter), "The back has 1 cm more of the half than the front.")

    sheet.heading("Back corners", SOURCE)
    yoke = sheet.point("yoke at the centre back", nape.down(Length(cut.yoke_depth, "yoke depth") if cut.yoke_depth else depth / 5 + 1), "A fifth of the armhole's depth, and a little.")
    neck = sheet.point("back neck", nape.right(body.neck_girth / 5 + 0.25).up(4.3), "The back reaches over the shoulder; the collar lies on its edge.")
    end = sheet.point("yoke end", yoke.right(smaller(body.across_back_width / 2 + own.back, quarter - LEAST_ARMHOLE)), "Half the back and room to reach.")
    shoulder = sheet.point("back shoulder end", lower(end.level_with(nape).up(0.95), drop), "Straight over the end of the yoke.")

    sheet.heading("Front corners", SOURCE)
    front = sheet.point("front neck", centre.level_with(nape).left(body.neck_girth / 5 - 0.3).down(4.73), "Lower than the nape: the seam lies in front of the shoulder's ridge.")
    throat = sheet.point("drafted throat", centre.level_with(front).down(body.neck_girth / 5 - 2.73), "The depth of the front neck, to be trued to the collar.")
    level = sheet.point("front shoulder level", lower(nape.down(depth / 5 + 3.2), drop), "A little under the level of a usual yoke.")
    seam = sheet.length("front shoulder", Length(neck.distance(shoulder), "back shoulder") + EASED, "Eased onto the yoke, for the hollow before the shoulder.")
    outer = sheet.point("front shoulder end", front.reaching(level, seam, "left"), "On that level, as far as the shoulder is long.")
    chest = sheet.point("armhole at the chest", centre.up(4).left(body.bust_girth / 6 + own.chest_width), "Half the chest, where the armhole turns to the side.")
    return Block(
        nape=nape, waist=waist, hem=hem, yoke=yoke, back_neck=neck, back_shoulder=shoulder, yoke_end=end, back_underarm=side, side=side,
        front_neck=front, front_shoulder=outer, chest=chest, front_underarm=side, centre=centre, throat=throat, raised=Length(0.0, "bust dart"), forward=FORWARD,
    )


FORWARD = 3.0
"""The seam lies 3 cm before the ridge at the shoulder end: so far on the back armhole is still 2 cm longer than the front's, as usual (reckoned)."""


EASED = 0.3
"""The front shoulder is 0.3 cm longer than the yoke's, as in the draft."""
