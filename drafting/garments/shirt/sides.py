"""A shirt's sides and hems: in at the waist, room at the hip, the bust dart opened in the front's side.

Source: 2 cm in at the waist and 1 cm at the hem, W. Aldrich, Metric Pattern Cutting for Menswear;
least room at waist and hip, the dart's place and its end 3 cm short of the bust point: common
practice, no source.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from drafting.body import Body
from drafting.craft.darts import PlannedDart, reopen
from drafting.craft.pencil import folds
from drafting.craft.sheet import DraftSheet
from drafting.errors import ConstructionError
from drafting.garments.shirt.block import Block
from drafting.garments.shirt.lines import hem_parts, swung
from drafting.garments.shirt.spec import Shirt
from drafting.geometry import Cubic, Path, Vector, smooth
from drafting.pattern import Dart
from drafting.trace import (
    DOWNWARD,
    UPWARD,
    Bearing,
    Bend,
    Length,
    Place,
    Straight,
    Stroke,
    running,
    smaller,
)

AT_WAIST, AT_HIP = 8.0, 6.0
"""Least room in cm round waist and hip of a shirt that does not stretch. Source: common practice, no source."""

HIP = 20.0
"""The hip lies some 20 cm under the waist. Source: common practice, no source."""

CLEAR = 3.0
"""Where the side goes on for 3 cm or more below the hip, it is plumb from the hip down."""

MOUTH = 5.5
SHORT_OF_BUST = 3.0


@dataclass(frozen=True, slots=True)
class Side:
    """A panel's side and hem.

    Attributes:
        above: From the waist up to the underarm, a dart in it closed.
        opened: The same with the dart open.
        below: From the waist down to the hem.
        hem: From the centre to the side.
        darts: The bust dart, the side walked upward.
    """

    above: Stroke
    opened: Path
    below: Stroke
    hem: Stroke
    darts: tuple[Dart, ...] = ()

    @property
    def arriving(self) -> Bearing:
        """Direction in which the armhole arrives, square to the side."""
        return running(self.above, "end")

    @property
    def upward(self) -> Path:
        """The whole side from the hem to the underarm."""
        return self.below.path.reversed().joined(self.opened)


@dataclass(frozen=True, slots=True)
class Shaping:
    """What each side edge is taken in at waist and hem, cm; less than nought lets it out."""

    waist: Length
    hem: Length


def shaping(body: Body, cut: Shirt, sheet: DraftSheet) -> Shaping:
    """How far the sides are taken in, with room left for waist and hip where they are known."""
    sheet.heading("Sides", "W. Aldrich, Metric Pattern Cutting for Menswear; room for waist and hip common practice, no source")
    wished = Length(float(cut.waist_shaping or 0.0), "waist shaping")
    whole = body.bust_girth + Length(float(cut.chest_ease or 0.0), "chest ease")
    waist, hem = wished, wished / 2
    if body.has("waist_girth"):
        waist = smaller(wished, (whole - body.waist_girth - AT_WAIST) / 4)
    if body.has("hip_girth"):
        hem = smaller(wished / 2, (whole - body.hip_girth - AT_HIP) / 4)
    return Shaping(
        sheet.length("taken in at the waist", waist, "As wished, while the waist keeps its room."),
        sheet.length("taken in at the hem", hem, "Half of it, while the hip keeps its room."),
    )


def back_side(block: Block, cut: Shirt, take: Shaping, sheet: DraftSheet) -> Side:
    """Draw the back's side and hem."""
    waist, below = _below_waist("back", block, take, float(cut.tail or 0.0), sheet)
    end = below.end
    above = sheet.draw("back side above the waist", (swung(waist, UPWARD, block.back_underarm, UPWARD),), "Plumb at waist and underarm.")
    hem = sheet.draw("back hem", hem_parts(block.hem, end, toward_side="right"), "Square to the centre and to the side.")
    return Side(above, above.path, below, hem)


def front_side(block: Block, cut: Shirt, take: Shaping, back: Side, sheet: DraftSheet) -> Side:
    """Draw the front's side, with its bust dart where it has one, and its hem."""
    waist, below = _below_waist("front", block, take, float(cut.tail or 0.0), sheet)
    end = below.end
    foot = sheet.point("hem at the centre front", block.centre.level_with(block.hem), "As low as behind.")
    hem = sheet.draw("front hem", hem_parts(foot, end, toward_side="left"), "Square to the centre and to the side.")
    if block.bust_point is None:
        above = sheet.draw("front side above the waist", (swung(waist, UPWARD, block.front_underarm, UPWARD),), "As long as the back's.")
        return Side(above, above.path, below, hem)
    dart, drawn = _bust_dart(block, waist, float(back.above.path.length()), sheet)
    opened, darts = reopen(Path((drawn,)), (dart,), "side")
    part = Bend(waist, block.front_underarm, UPWARD, UPWARD, drawn)
    above = sheet.draw_over("front side above the waist", part, folds((dart,)), opened, "Drawn with the dart closed, as long as the back's.")
    return Side(above, opened, below, hem, darts)


def _below_waist(name: str, block: Block, take: Shaping, tail: float, sheet: DraftSheet) -> tuple[Place, Stroke]:
    """The waist at the side, and the side from there down to the hem."""
    line, sign = block.side, 1.0 if name == "back" else -1.0
    waist = sheet.point(f"{name} side at the waist", _moved(line.level_with(block.waist), take.waist, sign), "Shaped to the figure.")
    foot = block.hem.up(Length(tail, "tail")) if tail else block.hem
    end = sheet.point(f"{name} side at the hem", _moved(line.level_with(foot), take.hem, sign), "Where front and back meet at the hem.")
    if waist.y - end.y < HIP + CLEAR:
        return waist, sheet.draw(f"{name} side below the waist", (swung(waist, DOWNWARD, end, DOWNWARD),), "Plumb at waist and hem.")
    hip = sheet.point(f"{name} side at the hip", end.up(waist.y - HIP - end.y), "Some 20 cm under the waist; from here down the side is plumb.")
    parts = (swung(waist, DOWNWARD, hip, DOWNWARD), Straight(hip, end))
    return waist, sheet.draw(f"{name} side below the waist", parts, "Out to the hip, and plumb from there.")


def _moved(place: Place, taken: Length, sign: float) -> Place:
    """Toward the centre by so much, or away from it where that is less than nought."""
    inward = float(taken) >= 0
    by = taken if inward else Length(0.0) - taken
    return place.left(by) if inward == (sign > 0) else place.right(by)


def _bust_dart(block: Block, waist: Place, wanted: float, sheet: DraftSheet) -> tuple[PlannedDart, Cubic]:
    """The dart so wide that the side, the dart closed, is as long as the back's."""
    bust = block.bust_point
    if bust is None:
        raise ConstructionError("There is no bust point for the dart.", where="bust dart")
    low = sheet.point("bust dart lower leg", block.side.down(smaller(MOUTH, Length(block.side.y - waist.y, "side to the waist") / 2)), "On the side, below the underarm, so that the dart rises to the bust.")
    point = sheet.point("bust dart end", bust.towards(low, SHORT_OF_BUST), "Short of the bust point, so that it ends in no peak.")
    long = low.distance(point)

    def planned(width: float) -> PlannedDart:
        return PlannedDart(low, low.swung(point, -_degrees(width, long)), point)

    def seam(width: float) -> Cubic:
        closed = planned(width).closing
        return smooth(waist, Vector(0, 1), closed.point(block.front_underarm), closed.vector(Vector(0, 1)))

    width = sheet.solve("bust dart width", lambda w: seam(w).length(), wanted, (0.05, min(12.0, 1.5 * long)), "So that the side, the dart closed, is as long as the back's.")
    high = sheet.point("bust dart upper leg", low.swung(point, -_degrees(width, long)), "Both legs are equally long.")
    return PlannedDart(low, high, point), seam(float(width))


def _degrees(width: float, long: float) -> float:
    """The angle at the end of a dart so wide and so long."""
    return 2 * math.degrees(math.asin(min(1.0, float(width) / (2 * long))))
