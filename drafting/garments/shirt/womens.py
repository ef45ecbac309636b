"""The women's shirt: a close block let out, its bust dart moved to the side seam.

W. Aldrich, Metric Pattern Cutting for Women's Wear, the close-fitting block, for the back's neck,
shoulder and width (from memory); its shoulder dart is not drawn: the yoke's seam takes it. Opening
the bust dart at the side raises the front from the underarm up by the dart's width, so that the
front is drafted shorter and raised again. A cup more adds 1.05 cm (derived from turning such a
dart about the bust point). Other numbers: common practice, no source.
"""

from __future__ import annotations

from drafting.body import Body
from drafting.craft.sheet import DraftSheet
from drafting.garments.shirt.block import Block
from drafting.garments.shirt.choices import LEAST_ARMHOLE, eases, lower, shoulder_drop
from drafting.garments.shirt.spec import Shirt
from drafting.trace import Length, larger, smaller
from drafting.trace.place import corner_of_paper

SOURCE = "from memory: W. Aldrich, Metric Pattern Cutting for Women's Wear (close-fitting block), let out"
OWN = "common practice, no source"

WAIST_TO_HEM = 24.0
"""Worn over trousers a women's shirt ends at the hip, 22 to 26 cm under the waist. Source: common practice, no source."""

SHORTER = 3.0
"""The front is 3 cm shorter than the back from the underarm up, its dart closed. House method,
between 4.2 cm in the close block (reckoned) and none in drafts without a dart."""

CUP = 2.54
"""cm of bust over upper chest for each cup; two cups are what the draft counts with."""

MOST_DART = 6.0
NO_DART = 0.5
"""Less than half a centimetre is no dart."""

LEAST_DART = 1.0


def womens(body: Body, cut: Shirt, sheet: DraftSheet) -> Block:
    """Draw the frame, the neck and shoulder corners of a women's shirt."""
    own = eases(cut)
    ease = Length(own.chest, "bust ease")
    sheet.heading("Frame", SOURCE)
    nape = sheet.point("nape", corner_of_paper(), "The middle of the back neck; heights are measured from it.")
    sloped = shoulder_drop(body, cut)
    depth = sheet.length("armhole depth", body.scye_depth_length + own.depth, "The armhole lies under the armpit, so that the arm can lift.")
    underarm = sheet.point("underarm at the centre back", nape.down(depth + sloped if sloped else depth), "Level of the bottom of the back's armhole.")
    waist = sheet.point("waist at the centre back", nape.down(body.back_neck_point_to_waist + 1), "A little room in the length of the back.")
    hem = sheet.point("hem at the centre back", nape.down(Length(cut.length, "length")) if cut.length else waist.down(WAIST_TO_HEM), "Where the shirt ends.")
    half = sheet.length("half the shirt", body.bust_girth / 2 + ease / 2, "Half the bust and its ease.")
    level = sheet.point("centre front at the back's underarm", underarm.right(half), "Half the shirt away.")
    quarter = body.bust_girth / 4 + ease / 4
    side = sheet.point("side at the underarm", underarm.right(quarter), "Front and back share the half evenly.")
    dart = sheet.length("bust dart", dart_width(body, cut), "What the bust needs in length, taken out again at the side.")
    centre = sheet.point("centre front at the underarm", level.up(dart), "The front is raised by the width of the dart.")
    top = sheet.point("front side at the underarm", side.up(dart), "The dart takes it down to the back's again.")

    sheet.heading("Back corners", SOURCE)
    yoke = sheet.point("yoke at the centre back", nape.down(_yoke(cut, depth, sloped)), "A fifth of the armhole's depth, and a little.")
    neck = sheet.point("back neck", nape.right(body.neck_girth / 5 + 0.3).up(1.8), "The collar lies on its edge.")
    end = sheet.point("yoke end", yoke.right(smaller(body.across_back_width / 2 + own.back, quarter - LEAST_ARMHOLE)), "Half the back and room to reach.")
    drop = sheet.point("back shoulder level", lower(nape.down(body.scye_depth_length / 5 - 1.2), sloped), "The shoulder falls with the depth of the back.")
    shoulder = sheet.point("back shoulder end", drop.plumb_with(end).right(0.3), "A little outside the end of the yoke.")

    sheet.heading("Front corners", OWN)
    front = sheet.point("front neck", centre.up(depth + sloped + 1.8 - SHORTER if sloped else depth + 1.8 - SHORTER).left(body.neck_girth / 5 - 0.2), "The front is shorter than the back, its dart closed.")
    throat = sheet.point("drafted throat", centre.level_with(front).down(body.neck_girth / 5), "The depth of the front neck, to be trued to the collar.")
    slope = sheet.point("front shoulder level", lower(front.down(body.scye_depth_length / 5 - 0.4), sloped), "A little squarer than the back's, for the bust lifts it.")
    seam = sheet.length("front shoulder", Length(neck.distance(shoulder), "back shoulder"), "As long as the back's.")
    outer = sheet.point("front shoulder end", front.reaching(slope, seam, "left"), "On that level, as far as the shoulder is long.")
    chest = sheet.point("armhole at the chest", centre.up(4).left(body.bust_girth / 6 + own.chest_width), "Half the front above the bust, where the armhole turns to the side.")
    apex = None
    if dart > 0:
        apart = body.bust_point_width / 2 if body.has("bust_point_width") else body.bust_girth / 8 - 1.5
        apex = sheet.point("bust point", centre.down(larger(dart, 1.5)).left(apart), "The dart points to it and ends short of it.")
    return Block(
        nape=nape, waist=waist, hem=hem, yoke=yoke, back_neck=neck, back_shoulder=shoulder, yoke_end=end, back_underarm=side, side=side,
        front_neck=front, front_shoulder=outer, chest=chest, front_underarm=top, centre=centre, throat=throat, raised=dart, bust_point=apex,
    )


def dart_width(body: Body, cut: Shirt) -> Length:
    """Width of the bust dart at the side, cm: as ordered; else by the bust, and by the cup where it is known."""
    if cut.bust_dart is not None:
        return Length(cut.bust_dart, "bust dart ordered") if cut.bust_dart >= NO_DART else Length(0.0)
    usual = body.bust_girth / 32
    if not body.taken("upper_chest_girth"):
        return usual
    cups = (body.bust_girth - body.upper_chest_girth) / CUP
    return smaller(larger(usual + (cups - 2) * 1.05, LEAST_DART), MOST_DART)


def _yoke(cut: Shirt, depth: Length, sloped: Length) -> Length:
    """Depth of the yoke: as ordered, else so that enough of it is left under a sloping shoulder."""
    if cut.yoke_depth:
        return Length(cut.yoke_depth, "yoke depth")
    return depth / 5 + 2.5 + sloped if sloped > 0 else depth / 5 + 2.5
