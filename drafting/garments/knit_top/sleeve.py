"""Knit top, the sleeve: set in without ease, both halves nearly alike.

Source: cap of a quarter to a third of the armhole, no ease, 2 to 4 cm over the upper arm; a sleeve's
end at least 2 cm over the arm there: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from drafting.body import Body
from drafting.craft.cap_curve import Armhole
from drafting.craft.piecework import counter_clockwise, lengthen_lines, level_lines, plumb_grain
from drafting.craft.rules import HAND_OVER_WRIST
from drafting.craft.scrap import Scrap
from drafting.craft.sheet import DraftSheet
from drafting.craft.sleeve_cap import Cap, CapWish, draw_cap
from drafting.craft.stretch_band import shortest_passing
from drafting.garments.knit_top.frame import least_girth
from drafting.garments.knit_top.neck import APART
from drafting.garments.knit_top.spec import EASES, Fit, KnitTop, cuff_depth
from drafting.geometry import IDENTITY, Path, Point, join, polyline, with_handles
from drafting.pattern import Cut, Edge, Mark, Piece, Role
from drafting.trace import Bend, Length, Stroke, along, larger, middle_of
from drafting.trace.place import corner_of_paper

HEIGHTS: dict[Fit, tuple[float, float]] = {"fitted": (0.22, 0.36), "regular": (0.22, 0.33), "loose": (0.16, 0.27)}
"""Least and greatest height of the cap as shares of the armhole: the looser, the flatter. Source: a quarter to
three tenths, a sixth to a fifth in casual cuts: common practice, no source."""

STEEPEST = 12.0
"""Degrees by which the sides of a sleeve lean inward at the most. House method."""

SHARES = {"short": 0.4, "three_quarter": 0.75, "long": 1.0}
"""Length over the arm's; a short sleeve ends between armpit and elbow. Common practice, no source."""

FOREARM = 0.86
"""Forearm over upper arm, where nobody measured it. Source: ANSUR II (2012)."""

LEAST_UNDERARM = 5.0
SETTLED_AFTER = 3
"""The cap's height and the lean of the sides below it depend on each other, and settle in three rounds."""

OVER_HAND = 1.0
"""What a stretched end has over the hand, cm, at the least. House method."""



@dataclass(frozen=True, slots=True, kw_only=True)
class SleeveLines:
    """A sleeve as drawn.

    Attributes:
        cap: The cap.
        back: From the back underarm to the hem.
        hem: From the back to the front.
        front: From the front underarm to the hem.
        end: Girth of its end, cm.
        level: Height of the underarm on the paper.
    """

    cap: Cap
    back: Path
    hem: Path
    front: Path
    end: Length
    level: float


def wish(body: Body, cut: KnitTop) -> CapWish:
    """What is asked of the cap: no ease, and never under what the arm needs."""
    eases, arm = EASES[cut.fit], body.value("upper_arm_girth")
    least = eases.least_arm if cut.fit != "fitted" else min(0.0, least_girth(arm, cut.stretch) - arm)
    return CapWish(arm=arm, room=eases.arm, least_room=least, ease=0.0, most_ease=1.0, heights=HEIGHTS[cut.fit], front_share=0.5)


def hand(body: Body) -> float:
    """Girth in cm of the hand: as measured, else by the wrist."""
    return body.value("hand_girth") if body.has("hand_girth") else body.value("wrist_girth") * HAND_OVER_WRIST


def end_girth(body: Body, cut: KnitTop, least: float, sheet: DraftSheet) -> Length:
    """Girth of the sleeve where it ends, before a cuff draws it in; `least` keeps its sides from leaning too far."""
    spare, leaning = Length(EASES[cut.fit].wrist, "ease"), Length(least, "what the sides may lean to")
    if cut.sleeve == "short":
        return sheet.length("sleeve's end", larger(body.upper_arm_girth + spare / 2, leaning), "Easy round the arm.")
    if cut.sleeve == "three_quarter":
        return sheet.length("sleeve's end", larger(body.upper_arm_girth * FOREARM + spare, leaning), "Easy round the forearm.")
    passes = Length(shortest_passing(hand(body) + OVER_HAND, cut.stretch), "to pass the hand")
    return sheet.length("sleeve's end", larger(larger(body.wrist_girth + spare, passes), leaning), "Easy round the wrist, and the stretched end passes the hand.")


def draw_sleeve(body: Body, armhole: Armhole, beside: float, cut: KnitTop, sheet: DraftSheet) -> SleeveLines:
    """Draw the sleeve for an armhole, clear of what lies to the left of a place on the paper (cm).

    Raises:
        ConstructionError: The arm is too large for the armhole.
    """
    sheet.heading("Sleeve", "common practice, no source")
    dropped = Length(EASES[cut.fit].shoulder, "shoulder over the bone")
    arm = body.outer_arm_length * SHARES[cut.sleeve] - dropped - cuff_depth(cut)
    asked = wish(body, cut)
    tried = draw_cap(armhole, asked, corner_of_paper(), Scrap())
    long = sheet.length("sleeve length", larger(arm, tried.height + LEAST_UNDERARM), "From the shoulder seam to its end, less the cuff.")
    lean = 2 * (float(long) - tried.height) * math.tan(math.radians(STEEPEST))
    end = end_girth(body, cut, tried.width - lean, sheet)
    crown = sheet.point("crown", corner_of_paper(beside + APART + tried.width / 2), "The sleeve is drawn about the plumb line under it.")
    cap = draw_cap(armhole, asked, crown, sheet, _lean(armhole, asked, tried.height, float(long), float(end)))
    share = (cap.front.x - crown.x) - (cap.width - float(end)) / 2
    foot = sheet.point("middle of the sleeve's end", crown.down(long), "Plumb under the crown.")
    fore = sheet.point("front of the sleeve's end", foot.right(Length(share, "front share")), "Both sides lean alike.")
    aft = sheet.point("back of the sleeve's end", foot.left(end - Length(share, "front share")), "The rest of its girth.")
    back = sheet.line("back underarm seam", cap.back, aft, why="Straight.")
    front = sheet.line("front underarm seam", cap.front, fore, why="As long as the back's.")
    down, up = along(cap.back, aft), along(fore, cap.front)
    drawn = with_handles(aft, down.left.vector, fore, up.right.vector, aft.distance(fore) / 3)
    hem = sheet.draw("sleeve's end, drawn", (Bend(aft, fore, down.left, up.right, drawn, middle_of(drawn)),), "Square to both sides.")
    sheet.outline("sleeve", (cap.line, back, hem, front), "Trace it from the draft; allowances are added outside.")
    return SleeveLines(cap=cap, back=_plain(back), hem=_plain(hem), front=_plain(front), end=end, level=cap.front.y)


def _lean(armhole: Armhole, asked: CapWish, height: float, long: float, end: float) -> Callable[[float], float]:
    """For a width in cm, by how many degrees each side leans inward down to the end, under the cap as it will be."""
    def under(height: float) -> Callable[[float], float]:
        return lambda width: math.degrees(math.atan2((width - end) / 2, long - height))

    for _ in range(SETTLED_AFTER):
        height = draw_cap(armhole, asked, corner_of_paper(), Scrap(), under(height)).height
    return under(height)


def _plain(line: Stroke) -> Path:
    return line.path.transformed(IDENTITY)


def sleeve_piece(lines: SleeveLines, cut: KnitTop) -> Piece:
    """The sleeve: cap, back side, end, front side."""
    hem = Edge("hem", lines.hem, Role.HEM, "curved_hem") if cut.sleeve_end != "cuff" else Edge("hem", lines.hem)
    edges = (*lines.cap.edges(), Edge("underarm_back", lines.back, kind="side"), hem, Edge("underarm_front", lines.front.reversed(), kind="side"))
    outline = join(e.path for e in edges)
    low = min(p.y for p in (lines.hem.start, lines.hem.end))
    piece = Piece(
        name="sleeve", title="Sleeve", cut=(Cut("main", 2, mirrored=True),), edges=edges, notches=lines.cap.notches(),
        grain=plumb_grain(outline, lines.cap.crown.x), levels=level_lines(outline, (("underarm", lines.level),)),
        lengthen=lengthen_lines(outline, ((lines.level + low) / 2,)) if cut.sleeve != "short" else (),
        marks=_stripe(edges[0].path.end, edges[2].path.end) if cut.match_marks else (),
    )
    return counter_clockwise(piece)


def _stripe(front: Point, back: Point) -> tuple[Mark, ...]:
    """The stripe that meets the body's at the front mark, across the cap."""
    return (Mark("placement", polyline(Point(back.x, front.y), front)),)


