"""The waist: what the half loses from bust to waist is shared out, and the seam trued over the closed darts.

Source: half to the side, three tenths to the back dart, two tenths to the front dart: common practice, no
source (the same shares stand in a published dress draft); no dart wider than it can be sewn flat: common
practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.body import Body
from drafting.craft.darts import PlannedDart, closings, reopen
from drafting.craft.pencil import draw_waist
from drafting.craft.sheet import DraftSheet
from drafting.craft.tops import PanelTop, even_tops
from drafting.garments.bodice.block import Block
from drafting.geometry import IDENTITY, UP, Line, Path
from drafting.pattern import Dart, Finding
from drafting.trace import LEFTWARD, RIGHTWARD, Length, Place, larger, smaller

MOST_BACK, MOST_FRONT, MOST_SECOND, MOST_SIDE = 3.6, 4.5, 3.0, 3.5
"""Widest darts in cm, and the most that one side of the side seam takes in."""

LEAST = 0.8
"""A narrower dart is not worth sewing; it goes into the side seam. House method."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Shares:
    """What each place takes of the half, cm; `side` is one side of the side seam, below zero where it flares.

    Attributes:
        side: Taken in at each side of the side seam.
        back: Widths of the back darts, from the centre.
        front: Width of the front dart; 0 for none.
        loose: What nothing takes: the waist stays so much looser.
    """

    side: Length
    back: tuple[Length, ...]
    front: Length
    loose: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Waisted:
    """One half's waist and side, trued.

    Attributes:
        corner: Where waist and side meet.
        planned: Its darts as drafted, from the centre.
        darts: The same as they end on the waist.
        waist: From the centre to the side, darts open.
        side: From the underarm down to the waist.
        sewn: Wanted length of the waist, darts closed, cm.
    """

    corner: Place
    planned: tuple[PlannedDart, ...]
    darts: tuple[Dart, ...]
    waist: Path
    side: Path
    sewn: Length


def shares(reduction: float, sheet: DraftSheet) -> Shares:
    """Share out what the half loses, cm."""
    if not sheet.compare("waist shaping", reduction, ">", 0.0, "Is the body smaller at the waist than at the bust?", "Else the sides flare, and there is no dart."):
        return Shares(side=Length(float(reduction) / 2, "half of what the waist needs more"), back=(), front=Length(0.0), loose=0.0)
    whole = Length(reduction, "waist reduction")
    back, front = smaller(whole * 0.3, Length(MOST_BACK)), smaller(whole * 0.2, Length(MOST_FRONT))
    rest = float(whole) - float(back) - float(front) - 2 * MOST_SIDE
    if sheet.decide("a hollow waist", rest > 0, "Would the side seam have to take more than 3.5 cm on each side?", "The front dart grows, and a second back dart is laid beside the first."):
        more = min(rest, MOST_FRONT - float(front))
        front = Length(float(front) + more, "wider front dart")
        second = min(max(0.0, rest - more), MOST_SECOND)
        backs = (back, Length(second, "second back dart")) if second >= LEAST else (back,)
        loose = max(0.0, rest - more - (second if second >= LEAST else 0.0))
        return Shares(side=Length(MOST_SIDE), back=backs, front=front, loose=loose)
    back = back if back >= LEAST else Length(0.0)
    front = front if front >= LEAST else Length(0.0)
    side = sheet.length("side taken in", (whole - back - front) / 2, "The rest, to back and front alike.")
    return Shares(side=side, back=(back,) if back else (), front=front, loose=0.0)


def shaped(block: Block, body: Body, waist_ease: float, sheet: DraftSheet) -> tuple[Waisted, Waisted, tuple[Finding, ...]]:
    """Plan the waist darts, true waist and sides; back first."""
    levels = block.levels
    sheet.heading("Waist", "common practice, no source")
    half = Length(levels.front_bust.x - levels.bust.x, "half width")
    wanted = sheet.length("half the waist", (body.waist_girth + Length(waist_ease, "waist ease")) / 2, "Body and ease, darts closed.")
    reduction = sheet.length("waist reduction", half - wanted, "What the half loses from bust to waist.")
    taken = shares(reduction, sheet)
    back_darts = _back_darts(block, taken, sheet)
    front_darts = _front_dart(block, taken, sheet)
    back_side = sheet.point("back side at the waist", _in(levels.side_waist, taken.side, -1), "Taken in." if taken.side > 0 else "The seam hangs plumb, or flares.")
    front_side = sheet.point("front side at the waist", _in(levels.side_waist, taken.side, 1), "Taken in as much." if taken.side > 0 else "The seam hangs plumb, or flares as much.")
    back_sewn = sheet.length("back waist", Length(back_side.x - levels.waist.x, "centre back to side") - sum(taken.back, Length(0.0)), "Darts closed.")
    front_sewn = sheet.length("front waist", Length(levels.front_waist.x - front_side.x, "side to centre front") - taken.front, "Darts closed.")
    back_top = _top("back", levels.waist, back_side, back_sewn, back_darts, levels.underarm)
    front_top = _top("front", levels.front_waist, front_side, front_sewn, front_darts, levels.underarm)
    (one, two), openings = even_tops(front_top, back_top, sheet)
    trued = (
        _drawn(two, openings[1], levels.waist, back_side, back_darts, levels.underarm, back_sewn, sheet),
        _drawn(one, openings[0], levels.front_waist, front_side, front_darts, levels.underarm, front_sewn, sheet),
    )
    return (*trued, _loose(taken.loose))


def _in(place: Place, by: Length, way: int) -> Place:
    """The side at the waist, so far in, or out where the sides flare."""
    if not by:
        return place
    toward_left = (by > 0) == (way < 0)
    size = by if by > 0 else -1 * by
    return place.left(size) if toward_left else place.right(size)


def _back_darts(block: Block, taken: Shares, sheet: DraftSheet) -> tuple[PlannedDart, ...]:
    """Over the back's middle, or two beside it; they end a little under the bust line."""
    places = {0: (), 1: (0.5,), 2: (0.38, 0.72)}[len(taken.back)]
    levels, found = block.levels, list[PlannedDart]()
    for number, (share, wide) in enumerate(zip(places, taken.back, strict=True), 1):
        name = "back waist dart" if len(places) == 1 else f"back waist dart {number}"
        middle = sheet.point(f"{name} middle", levels.waist.right(block.back.width * share), "By the width of the back.")
        up = sheet.point(f"{name} point", middle.level_with(levels.bust).down(2 + 2 * (number - 1)), "Under the shoulder blade.")
        found.append(_dart(name, middle, up, wide, "right", sheet))
    return tuple(found)


def _front_dart(block: Block, taken: Shares, sheet: DraftSheet) -> tuple[PlannedDart, ...]:
    if not taken.front:
        return ()
    middle = sheet.point("front waist dart middle", block.front.bust_point.level_with(block.levels.front_waist), "Plumb under the bust point.")
    up = sheet.point("front waist dart point", block.front.bust_point.down(2), "It stops short of the bust point.")
    return (_dart("front waist dart", middle, up, taken.front, "left", sheet),)


def _dart(name: str, middle: Place, up: Place, wide: Length, toward_side: str, sheet: DraftSheet) -> PlannedDart:
    each = "Half of the dart on each side of its middle."
    near, far = (middle.left(wide / 2), middle.right(wide / 2)) if toward_side == "right" else (middle.right(wide / 2), middle.left(wide / 2))
    return PlannedDart(sheet.point(f"{name} near leg", near, each), sheet.point(f"{name} far leg", far, each), up)


def _top(name: str, centre: Place, corner: Place, sewn: Length, darts: tuple[PlannedDart, ...], underarm: Place) -> PanelTop:
    return PanelTop(name=name, centre=centre, down=UP, corner=corner, sewn=sewn, closed=closings(darts)[-1], draw_side=lambda place: (Line(place, underarm),))


def _drawn(top: PanelTop, opened: float, centre: Place, drafted: Place, darts: tuple[PlannedDart, ...], underarm: Place, sewn: Length, sheet: DraftSheet) -> Waisted:
    corner = sheet.point(f"trued {top.name} side at the waist", drafted.nudged_to(top.corner), "Where the waist and the side seam meet.")
    side = sheet.line(f"{top.name} side", corner, underarm, why="Straight, so that back and front agree.")
    closed = top.waist(opened)
    waist, made = reopen(Path((closed,)), darts, "waist")
    way = RIGHTWARD if corner.x > centre.x else LEFTWARD
    draw_waist(f"{top.name} waist", closed, waist, (centre, corner), way, side, darts, sheet, "Square to the centre, smooth over the closed darts and over the side seam.")
    return Waisted(corner=corner, planned=darts, darts=made, waist=waist.transformed(IDENTITY), side=side.path.reversed().transformed(IDENTITY), sewn=larger(sewn, 0.0))


def _loose(by: float) -> tuple[Finding, ...]:
    if by < 0.25:
        return ()
    return (
        Finding(
            code="waist_loose", severity="warning", where="waist_girth",
            message="Darts and side seams can take no more: the waist comes out looser than asked. Choose a princess line, or less bust_ease.",
            measured=2 * by, allowed=(0.0, 0.5),
        ),
    )
