"""The block with its bust dart in the shoulder, from the body's own widths.

Source: W. Aldrich, Metric Pattern Cutting for Women's Wear, close-fitting bodice block, by a published
lesson after it: half width, back width with its ease, chest line and bust dart were seen; necks, shoulders,
armhole points and bust point are from memory. Raising the neck of a full bust is the house's own.
"""

from __future__ import annotations

from math import asin, atan2, degrees, radians, sin

from drafting.body import Body
from drafting.craft.armhole import draw_armhole
from drafting.craft.pencil import draw_dart
from drafting.craft.rules import SizeBand
from drafting.craft.sheet import DraftSheet
from drafting.errors import ConstructionError
from drafting.garments.bodice.block import Back, Block, Front, Levels
from drafting.garments.bodice.figure import DEGREES_A_CUP, NARROWEST, Figure
from drafting.geometry import root
from drafting.trace import Length, Place
from drafting.trace.place import corner_of_paper

_MEMORY = "from memory: W. Aldrich, Metric Pattern Cutting for Women's Wear"
_SEEN = "W. Aldrich, Metric Pattern Cutting for Women's Wear"

BACK_DIAGONAL = SizeBand("back armhole diagonal", ((82, 2.25), (94, 2.5), (106, 3.0), (118, 3.25), (999, 3.5)), _MEMORY)
FRONT_DIAGONAL = SizeBand("front armhole diagonal", ((82, 1.75), (94, 2.0), (106, 2.25), (118, 2.5), (999, 3.0)), _MEMORY)
"""cm by bust girth."""

SLOPES = (14.0, 18.0)
"""Degrees of the front shoulder with the bust dart closed; the plain draft grows too square for a full bust.
House method."""

LEAST_GAP = 0.115
"""An armhole is at least this share of the bust wide, or the arm has no room. Source: common practice, no source."""

MOST_RAISED = 9.0

OVERHANG = 1.0
"""cm by which the back's width may lie farther out than the shoulder's end; shoulders do not grow with the bust.
House method."""


def draft(body: Body, figure: Figure, sheet: DraftSheet) -> Block:
    """Draft half a bodice, the bust dart open beside the neck."""
    levels, back_line, chest, dart = _frame(body, figure, sheet)
    back = _back(body, figure, levels, back_line, sheet)
    front = _front(body, figure, levels, chest, dart, back, sheet)
    return Block(levels=levels, back=back, front=front)


def _frame(body: Body, figure: Figure, sheet: DraftSheet) -> tuple[Levels, Place, Place, Length]:
    sheet.heading("Frame", _MEMORY)
    top = sheet.point("top line", corner_of_paper(0.0, figure.above), "The front neck lies on it, a little over the nape.")
    nape = sheet.point("nape", top.down(1.5), "The back neck is hollow; the nape lies lower than the neck's side.")
    bust = sheet.point("bust line", nape.down(body.scye_depth_length + 0.5), "Level of the armhole, with room under the arm.")
    waist = sheet.point("waist line", nape.down(body.back_neck_point_to_waist), "The back's own length.")
    half = sheet.length("half width", body.bust_girth / 2 + figure.ease / 2, "Half the bust and its ease.", source=_SEEN)
    front_bust = sheet.point("bust line at the centre front", bust.right(half), "Half the bodice.")
    front_waist = sheet.point("waist at the centre front", waist.right(half), "Squared down.")
    spare = (figure.ease - 10) / 2
    back_line = sheet.point("back width line", bust.right(body.across_back_width / 2 + 0.5 + spare * 0.16), "Half the back and ease to reach forward.", source=_SEEN)
    dart = sheet.length("bust dart at the neck", _dart(body, figure), "By the bust, and the cup where it is known.", source=_SEEN)
    chest = sheet.point("chest line", front_bust.left(body.across_front_width / 2 + dart / 2 + spare * 0.08), "Half the chest, and half the dart that opens in it.", source=_SEEN)
    least = Length(LEAST_GAP * float(body.bust_girth), "least armhole width")
    if sheet.compare("a narrow armhole", chest.x - back_line.x, "<", least, "Is the armhole narrower than the arm needs?", "Back and chest each give up half of what lacks."):
        lacks = Length((float(least) - (chest.x - back_line.x)) / 2, "half of what lacks")
        back_line = sheet.point("back width line, moved", back_line.left(lacks), "Room for the arm.")
        chest = sheet.point("chest line, moved", chest.right(lacks), "Room for the arm.")
    middle = sheet.point("middle of the armhole", back_line.between(chest, 0.5), "The side seam stands here.")
    underarm = sheet.point("underarm", middle.down(figure.deeper) if figure.deeper else middle, "Where back and front meet.")
    side_waist = sheet.point("side at the waist", underarm.level_with(waist), "Squared down.")
    return Levels(nape=nape, bust=bust, waist=waist, front_bust=front_bust, front_waist=front_waist, underarm=underarm, side_waist=side_waist), back_line, chest, dart


def _dart(body: Body, figure: Figure) -> Length:
    """7 cm at bust 88 and 0.6 more with each 4 cm, as wide again as the cup asks over a leg of about 26 cm."""
    own = Length(7.0) + (body.bust_girth - 88) * 0.15
    if figure.cup == 0:
        return own if own > LEAST_DART else Length(LEAST_DART)
    leg = 25.7 + 0.133 * (float(body.bust_girth) - 88)
    wider = degrees(2 * asin(min(0.9, float(own) / (2 * leg)))) + DEGREES_A_CUP * figure.cup
    return Length(2 * leg * sin(radians(max(NARROWEST, wider) / 2)), "dart by the cup")


LEAST_DART = 3.0


def _back(body: Body, figure: Figure, levels: Levels, line: Place, sheet: DraftSheet) -> Back:
    sheet.heading("Back", _MEMORY)
    wide = sheet.length("back neck width", body.neck_base_girth / 5 - 0.2, "A fifth of the neck, less a little.")
    neck = sheet.point("back neck point", levels.nape.right(wide).up(1.5), "On the top line.")
    guide = sheet.point("back shoulder level", levels.nape.down(body.scye_depth_length / 5 - 0.7 + figure.dropped), "A fifth of the armhole's depth down, less a little.")
    along = sheet.length("back shoulder", body.shoulder_length + 1 - figure.narrowed, "The shoulder and 1 cm for its dart.")
    shoulder = sheet.point("back shoulder end", neck.reaching(guide, along, "right"), "The shoulder slopes down to this level.")
    middle = sheet.point("back shoulder dart middle", neck.between(shoulder, 0.5), "Half way along.")
    dart = draw_dart("back shoulder dart", (neck, shoulder), middle, 1.0, Length(5.0), "right", sheet, why="Ends on the blade.")
    most = Length(shoulder.x + OVERHANG, "shoulder end and overhang")
    if sheet.compare("a back wider than the shoulders", Length(line.x, "back width line"), ">", most, "Does the back reach more than 1 cm farther out than the shoulder?", "The armhole would bulge: its line is moved in."):
        line = sheet.point("back width line, moved in", line.left(line.x - float(most)), "Under the end of the shoulder.")
    guide_high = sheet.point("half the armhole's depth", levels.bust.between(guide, 0.5), "Half way from the bust line to the shoulder's level.")
    across = sheet.point("back armhole touches the width line", line.level_with(guide_high), "Here the back is widest.")
    diagonal = Length(BACK_DIAGONAL.at(body.bust_girth))
    armhole = draw_armhole("back armhole", neck, shoulder, across, levels.underarm, diagonal, sheet, "Square to the shoulder, level under the arm.")
    return Back(neck=neck, shoulder=shoulder, dart=dart, armhole=armhole, width=Length(line.x), steep=Length(1.5))


def _front(body: Body, figure: Figure, levels: Levels, chest: Place, dart: Length, back: Back, sheet: DraftSheet) -> Front:
    sheet.heading("Front", _MEMORY)
    deep = sheet.length("front neck depth", body.neck_base_girth / 5 - 0.2, "As deep as the back neck is wide.")
    wide = sheet.length("front neck width", body.neck_base_girth / 5 - 0.7, "A little narrower than the back.")
    corner = sheet.point("top of the centre front", levels.front_bust.up(levels.nape.y + 1.5 - levels.bust.y), "On the top line.")
    neck = sheet.point("front neck point", corner.left(wide), "Where the shoulder starts.")
    centre = sheet.point("centre front at the neck", corner.down(deep), "The hollow of the throat.")
    bust_point = _bust_point(body, levels, chest, neck, sheet)
    level = sheet.point("front shoulder level", back.shoulder.down(1.5), "The front shoulder ends lower than the back one.")
    along = sheet.length("front shoulder", body.shoulder_length - figure.narrowed, "The shoulder without a dart.")
    outer = sheet.point("bust dart, outer leg", _outer(neck, bust_point, dart), "On an equal leg, as far off as the dart is wide.")
    end = sheet.point("front shoulder end", outer.reaching(level, along, "left"), "The shoulder slopes down to this level.")
    angle = Length(2 * degrees(asin(dart / 2 / neck.distance(bust_point))), "bust dart angle")
    raised = _raised(body, levels, neck, bust_point, level, along, angle, sheet)
    if raised > 0:
        by = sheet.length("raised front neck", raised, "The front is longer over a full bust, and its shoulder less square.", source="common practice, no source")
        neck = sheet.point("raised front neck point", neck.up(by), "Straight up.")
        centre = sheet.point("raised centre front at the neck", centre.up(by), "The neck keeps its shape.")
        outer = sheet.point("raised bust dart, outer leg", neck.swung(bust_point, float(angle)), "On an equal leg, the dart's angle kept.")
        end = sheet.point("raised front shoulder end", outer.reaching(level, along, "left"), "On the same level.")
    across = sheet.point("front armhole touches the chest line", chest.up((centre.y - raised - levels.bust.y) / 3), "A third of the way up to the neck.")
    diagonal = Length(FRONT_DIAGONAL.at(body.bust_girth))
    armhole = draw_armhole("front armhole", outer, end, across, levels.underarm, diagonal, sheet, "Hollower than the back: the arm moves forward.")
    return Front(centre_neck=centre, neck=neck, start=outer, shoulder=end, bust_point=bust_point, angle=angle, above=None, armhole=armhole)


def _bust_point(body: Body, levels: Levels, chest: Place, neck: Place, sheet: DraftSheet) -> Place:
    """Half way between chest line and centre, 2.5 cm under the bust line, or where it was measured."""
    own = chest.between(levels.front_bust, 0.5).down(2.5)
    if body.taken("bust_point_width"):
        own = levels.front_bust.left(body.bust_point_width / 2 + 0.25).down(2.5)
    if body.taken("side_neck_point_to_bust_point"):
        down = body.side_neck_point_to_bust_point
        beside = abs(neck.x - own.x)
        if float(down) > beside + 5:
            own = own.up((float(down) ** 2 - beside**2) ** 0.5 * -1 + neck.y - own.y)
    return sheet.point("bust point", own, "All darts of the front point to it.")


def _outer(neck: Place, bust_point: Place, dart: Length) -> Place:
    """The far leg's end, as far from the near one as the dart is wide."""
    leg = neck.distance(bust_point)
    if dart >= 1.5 * leg:
        raise ConstructionError("The bust dart is wider than its legs are long; measure the bust again.", where="measurements.bust_girth")
    return neck.swung(bust_point, degrees(2 * asin(float(dart) / 2 / leg)))


def _slope(outer: Place, end: Place, angle: float) -> float:
    """Slope in degrees of the front shoulder when the dart is closed."""
    return degrees(atan2(outer.y - end.y, outer.x - end.x)) - float(angle)


def _raised(body: Body, levels: Levels, neck: Place, bust_point: Place, level: Place, along: Length, angle: Length, sheet: DraftSheet) -> float:
    """By how much the neck of the front is raised, cm: by the measured front, and for the shoulder's slope."""
    def sloped(by: float) -> float:
        turned = neck.up(by).swung(bust_point, float(angle))
        there = turned.reaching(level, along, "left")
        return 60.0 if there is None else _slope(turned, there, float(angle))

    longer = 0.0
    if body.taken("side_neck_point_to_waist_front"):
        longer = min(MOST_RAISED - 3, max(0.0, body.value("side_neck_point_to_waist_front") - (neck.y - levels.front_waist.y)))
    square = sheet.decide("a square front shoulder", sloped(0.0) < SLOPES[0], "Would the shoulder slope less than 14 degrees with the dart closed?", "The block's front is too short for a full bust: its neck is raised.")
    if longer == 0 and not square:
        return 0.0
    by = (root(lambda k: sloped(k) - SLOPES[0], 0.0, MOST_RAISED) or 0.0) if square else 0.0
    return max(by, min(longer, root(lambda k: sloped(k) - 26.0, 0.0, MOST_RAISED) or longer))
