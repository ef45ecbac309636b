"""The block with its bust dart in the armhole: all widths from the bust.

Source: from memory: Bunka Fashion College, Bunka Fashion Series 1, adult women; no print that gave the
formulas was seen. The neck of a small-necked figure and a shoulder no longer than the body's are the
house's own.
"""

from __future__ import annotations

from math import radians, sin

from drafting.body import Body
from drafting.craft.armhole import round_corner, upper
from drafting.craft.pencil import draw_dart
from drafting.craft.sheet import DraftSheet
from drafting.garments.bodice.block import Back, Block, Front, Levels
from drafting.garments.bodice.figure import Figure, dart_angle
from drafting.trace import (
    DOWNWARD,
    LEFTWARD,
    RIGHTWARD,
    Bend,
    Length,
    Place,
    Stroke,
    along,
    past_diagonal,
    smaller,
)
from drafting.trace.place import corner_of_paper, meeting

_MEMORY = "from memory: Bunka Fashion Series 1"

NECKLINE_OVER_WIDTH = 5.51
"""The whole neckline of this block over its front neck width, by the worked examples kept with the tests."""

MOST_OVER_NECK = 2.5
"""cm by which the block's neckline may exceed the neck before its width is taken from the neck instead. House
method."""

MOST_OVER_SHOULDER = 1.0
"""cm by which the front shoulder may exceed the body's. House method: shoulders do not grow with the bust."""


def draft(body: Body, figure: Figure, sheet: DraftSheet) -> Block:
    """Draft half a bodice, the bust dart open in the armhole."""
    levels, back_line, chest, corner_line, blade = _frame(body, figure, sheet)
    neck_width = _neck_width(body, sheet)
    front, shoulder = _front(body, figure, levels, (back_line, chest, corner_line, blade), neck_width, sheet)
    back = _back(body, figure, levels, back_line, (neck_width, shoulder, blade), corner_line, sheet)
    return Block(levels=levels, back=back, front=front)


def _frame(body: Body, figure: Figure, sheet: DraftSheet) -> tuple[Levels, Place, Place, Place, Place]:
    sheet.heading("Frame", _MEMORY)
    nape = sheet.point("nape", corner_of_paper(0.0, figure.above), "All heights are measured from it.")
    bust = sheet.point("bust line", nape.down(body.bust_girth / 12 + 13.7), "Level of the armhole.")
    waist = sheet.point("waist line", nape.down(body.back_neck_point_to_waist), "The back's own length.")
    half = sheet.length("half width", body.bust_girth / 2 + figure.ease / 2, "Half the bust and its ease.")
    front_bust = sheet.point("bust line at the centre front", bust.right(half), "Half the bodice.")
    front_waist = sheet.point("waist at the centre front", waist.right(half), "Squared down.")
    spare = (figure.ease - 12) / 2
    back_line = sheet.point("back width line", bust.right(body.bust_girth / 8 + 7.4 + spare * 0.16), "Half the back.")
    chest = sheet.point("chest line", front_bust.left(body.bust_girth / 8 + 6.2 + spare * 0.08), "Half the chest.")
    corner_line = sheet.point("armhole corner line", chest.left(body.bust_girth / 32), "As far out as the bust dart will need.")
    blade = sheet.point("blade line", nape.down(8), "Over the shoulder blades.")
    middle = sheet.point("middle of the armhole", back_line.between(corner_line, 0.5), "The side seam stands here.")
    underarm = sheet.point("underarm", middle.down(figure.deeper) if figure.deeper else middle, "Where back and front meet.")
    side_waist = sheet.point("side at the waist", underarm.level_with(waist), "Squared down.")
    levels = Levels(nape=nape, bust=bust, waist=waist, front_bust=front_bust, front_waist=front_waist, underarm=underarm, side_waist=side_waist)
    return levels, back_line, chest, corner_line, blade


def _neck_width(body: Body, sheet: DraftSheet) -> Length:
    """By the bust, unless the neck is far smaller than it lets one expect."""
    own = sheet.length("neck width by the bust", body.bust_girth / 24 + 3.4, "Half the width of the neck in front.")
    most = Length((float(body.neck_base_girth) + MOST_OVER_NECK) / NECKLINE_OVER_WIDTH, "greatest width for this neck")
    wide = sheet.compare("a small neck", own, ">", most, "Would the neckline be much wider than the neck?", "Necks do not grow with the bust as the rule has it.")
    return most if wide else own


def _front(body: Body, figure: Figure, levels: Levels, lines: tuple[Place, Place, Place, Place], neck_width: Length, sheet: DraftSheet) -> tuple[Front, Length]:
    back_line, chest, corner_line, blade = lines
    sheet.heading("Front", _MEMORY)
    top = sheet.point("top of the centre front", levels.front_bust.up(body.bust_girth / 5 + 8.3), "The front rises over the bust.")
    neck = sheet.point("front neck point", top.left(neck_width), "Where the shoulder starts.")
    centre = sheet.point("centre front at the neck", top.down(neck_width + 0.5), "A little deeper than wide.")
    falls = sheet.point("front shoulder direction", neck.slant(10, 180 + 22), "The shoulder slopes by 22 degrees.")
    meets = sheet.point("shoulder meets the chest line", meeting(neck, falls, chest, chest.up(10)), "Over the chest line.")
    own = Length(neck.distance(meets), "neck to chest line") + 1.8 - figure.narrowed
    most = body.shoulder_length + MOST_OVER_SHOULDER
    longer = sheet.compare("a long shoulder", own, ">", most, "Would the shoulder be much longer than the body's?", "Shoulders do not grow with the bust.")
    length = sheet.length("front shoulder", most if longer else own, "It ends a little beyond the chest line.")
    end = sheet.point("front shoulder end", neck.towards(meets, length).down(figure.dropped) if figure.dropped else neck.towards(meets, length), "The end of the front shoulder.")
    bust_point = sheet.point("bust point", _bust_point(body, levels, chest, neck), "All darts of the front point to it.")
    angle = Length(dart_angle(float(body.bust_girth) / 4 - 2.5, figure), "bust dart angle")
    sheet.length("armhole dart 10 cm from its point", Length(20 * sin(radians(float(angle) / 2))), "An angle of so many degrees as a quarter of the bust has cm, less 2.5, and the cup's.")
    height = sheet.point("corner height", levels.bust.up((blade.y - levels.bust.y) / 2 - 0.5), "Half way to the blade line, and a little lower.")
    low = sheet.point("bust dart, lower leg", corner_line.level_with(height), "On the armhole's corner line.")
    high = sheet.point("bust dart, upper leg", low.swung(bust_point, -float(angle)), "On an equal leg.")
    third = sheet.length("a third of half the armhole width", (corner_line.x - back_line.x) / 6, "For both hollows under the arm.")
    corner = sheet.point("front armhole corner", corner_line.level_with(levels.underarm), "Under the corner line.")
    below, reached = round_corner(low, levels.underarm, corner, third + 0.5)
    armhole = sheet.draw("front armhole below the dart", (Bend(low, levels.underarm, DOWNWARD, LEFTWARD, below, past_diagonal(corner, reached)),), "Hollow under the arm.")
    above = _above(neck, end, high, float(angle), sheet)
    front = Front(centre_neck=centre, neck=neck, start=neck, shoulder=end, bust_point=bust_point, angle=angle, above=above, armhole=armhole)
    return front, length


def _above(neck: Place, end: Place, high: Place, angle: float, sheet: DraftSheet) -> Stroke:
    """From the shoulder to the dart, so that it runs on into the part below when the dart is closed."""
    arriving = DOWNWARD.rotated(-angle)
    drawn = upper(neck, end, high, arriving.vector)
    leaving = along(neck, end).to(drawn.tangent(0.0))
    return sheet.draw("front armhole above the dart", (Bend(end, high, leaving, arriving, drawn),), "Square to the shoulder; it runs on over the closed dart.")


def _bust_point(body: Body, levels: Levels, chest: Place, neck: Place) -> Place:
    """A little outside of the middle of the chest, on the bust line, or where it was measured."""
    own = chest.between(levels.front_bust, 0.5).left(0.7)
    if body.taken("bust_point_width"):
        own = levels.front_bust.left(body.bust_point_width / 2 + 0.25)
    if body.taken("side_neck_point_to_bust_point"):
        down, beside = float(body.side_neck_point_to_bust_point), abs(neck.x - own.x)
        if down > beside + 5:
            own = own.up(neck.y - own.y - (down**2 - beside**2) ** 0.5)
    return own


def _back(body: Body, figure: Figure, levels: Levels, back_line: Place, given: tuple[Length, Length, Place], corner_line: Place, sheet: DraftSheet) -> Back:
    neck_width, front_shoulder, blade = given
    sheet.heading("Back", _MEMORY)
    wide = sheet.length("back neck width", neck_width + 0.2, "A little wider than the front.")
    steep = sheet.length("back neck height", wide / 3, "A third of its width.")
    neck = sheet.point("back neck point", levels.nape.right(wide).up(steep), "Where the shoulder starts.")
    taken = sheet.length("back shoulder dart width", body.bust_girth / 32 - 0.8, "The back is rounder the larger it is.")
    length = sheet.length("back shoulder", front_shoulder + taken, "The front shoulder and the dart.")
    end = neck.slant(length, -18)
    shoulder = sheet.point("back shoulder end", end.down(figure.dropped) if figure.dropped else end, "The shoulder slopes by 18 degrees.")
    under = sheet.point("under the back shoulder dart", blade.right(Length(back_line.x, "back width") / 2 + 1), "A little outside of the middle of the back.")
    plumb = sheet.point("over it on the shoulder", meeting(neck, shoulder, under, under.up(10)), "Straight up.")
    middle = sheet.point("back shoulder dart middle", plumb.towards(shoulder, taken / 2 + 1.0), "Outside of the plumb line.")
    depth = sheet.length("back shoulder dart length", smaller(Length(middle.distance(under), "down to the blade line"), Length(8.0)), "It ends at the blade line.")
    dart = draw_dart("back shoulder dart", (neck, shoulder), middle, taken, depth, "right", sheet, why="Ends on the blade.")
    half = sheet.point("back armhole touches the width line", back_line.up((blade.y - back_line.y) / 2 - 0.5), "Here the back is widest.")
    third = Length((corner_line.x - back_line.x) / 6, "a third of half the armhole width")
    corner = sheet.point("back armhole corner", back_line.level_with(levels.underarm), "The width line meets the underarm line.")
    lower, reached = round_corner(half, levels.underarm, corner, third + 0.8)
    over = upper(neck, shoulder, half)
    parts = (
        Bend(shoulder, half, along(neck, shoulder).to(over.tangent(0.0)), DOWNWARD, over),
        Bend(half, levels.underarm, DOWNWARD, RIGHTWARD, lower, past_diagonal(corner, reached)),
    )
    armhole = sheet.draw("back armhole", parts, "Square to the shoulder, level under the arm.")
    return Back(neck=neck, shoulder=shoulder, dart=dart, armhole=armhole, width=Length(back_line.x), steep=steep)
