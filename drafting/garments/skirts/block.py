"""The straight skirt, drafted two ways: half of it in one rectangle, centre back to the left.

The block: W. Aldrich, Metric Pattern Cutting for Women's Wear (widths, waist quarters, raised
side); the places and lengths of the darts are from memory: the same.
The proportional draft: half of what hip and waist differ by is shared out, a half to the side seam,
three tenths to the back dart and two tenths to the front dart (common practice, no source; a worked
example is kept with the tests).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from drafting.body import Body
from drafting.craft.darts import PlannedDart
from drafting.craft.pencil import draw_dart
from drafting.craft.sheet import DraftSheet
from drafting.errors import SpecError
from drafting.garments.skirts.options import Shaped, fullness
from drafting.trace import Length, Place, smaller
from drafting.trace.place import corner_of_paper

LEAST_BELOW_HIP = 10.0
"""A skirt ends at least 10 cm below the hip line; shorter ones are another cut. House method."""

MOST_AT_SIDE = 4.5
"""A side seam takes 4 to 5 cm from hip to waist at the most, or it stands off. Common practice."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Panel:
    """A quarter of a straight skirt as drafted, before trueing.

    Attributes:
        name: "front" or "back".
        centre: Waist at the centre.
        side: Waist at the side.
        hip_centre: Centre at the hip line.
        hip_side: Side at the hip line.
        hem_centre: Centre at the hem.
        hem_side: Side at the hem.
        sewn: Wanted length of the waist with its darts closed, cm.
        darts: Darts from the centre to the side.
    """

    name: str
    centre: Place
    side: Place
    hip_centre: Place
    hip_side: Place
    hem_centre: Place
    hem_side: Place
    sewn: Length
    darts: tuple[PlannedDart, ...]


Moving = Callable[[Panel, Panel, DraftSheet], tuple[Panel, Panel]]
"""Shifts the darts of back and front."""


def as_drafted(back: Panel, front: Panel, sheet: DraftSheet) -> tuple[Panel, Panel]:
    """Leaves all darts where they were drafted."""
    del sheet
    return back, front


@dataclass(frozen=True, slots=True)
class Frame:
    """The rectangle: corners at the waist, hip and hem of the centre back and the centre front."""

    back: tuple[Place, Place, Place]
    front: tuple[Place, Place, Place]
    side: tuple[Place, Place]


def block(body: Body, cut: Shaped, length: Length, sheet: DraftSheet) -> tuple[Panel, Panel]:
    """Draft back and front of the straight skirt by the method that is asked for."""
    return (_block if cut.method == "block" else _proportional)(body, cut, length, sheet)


def frame(half: Length, back: Length, body: Body, length: Length, sheet: DraftSheet) -> Frame:
    """Square out the rectangle and the side line in it."""
    top = sheet.point("waist at the back corner", corner_of_paper(), "All heights are measured from it.")
    hip = sheet.point("hip at the centre back", top.down(body.side_waist_to_hip), "Level of the fullest seat.")
    hem = sheet.point("hem at the centre back", top.down(length), "Where the skirt ends.")
    if hip.y - hem.y < LEAST_BELOW_HIP:
        raise SpecError(
            f"The skirt would end {hip.y - hem.y:.1f} cm below the hip line; make it longer.",
            where="garment.length", received=float(length), allowed=(float(body.side_waist_to_hip) + LEAST_BELOW_HIP, 130.0),
        )
    corner = sheet.point("waist at the front corner", top.right(half), "Half the skirt.")
    side = sheet.point("side at the hip", hip.right(back), "The side line stands here, plumb.")
    return Frame(
        (top, hip, hem),
        (corner, sheet.point("hip at the centre front", corner.level_with(hip), "Squared down."), sheet.point("hem at the centre front", corner.level_with(hem), "Squared down.")),
        (side, sheet.point("side at the hem", side.level_with(hem), "Squared down; the skirt hangs straight.")),
    )


def _block(body: Body, cut: Shaped, length: Length, sheet: DraftSheet) -> tuple[Panel, Panel]:
    sheet.heading("Frame", "W. Aldrich, Metric Pattern Cutting for Women's Wear")
    ease = Length(cut.hip_ease, "hip ease")
    half = sheet.length("half the skirt", body.hip_girth / 2 + ease / 2, "Half the hip and its ease.")
    width = sheet.length("back hip", body.hip_girth / 4 + ease / 4 + 0.75, "The back has 1.5 cm more of the ease than the front.")
    level = frame(half, width, body, length, sheet)
    quarter = sheet.length("waist quarter", waist_quarter(body, cut), "A quarter of the skirt top, darts closed.")

    sheet.heading("Back", "W. Aldrich, Metric Pattern Cutting for Women's Wear; dart lengths from memory")
    back_spare = sheet.length("back spare", width - quarter, "What a back quarter loses from hip to waist.")
    takes = back_darts(back_spare, sheet)
    along = sheet.point("back waist laid out", level.back[0].right(quarter + sum(takes)), "A quarter of the top and its darts.")
    side = sheet.point("back side at the waist", along.up(1.25), "Raised: the side seam leans, and is longer than the plumb line.")
    shares = {0: (), 1: (1 / 2,), 2: (1 / 3, 2 / 3)}[len(takes)]
    back = Panel(
        name="back", centre=level.back[0], side=side, hip_centre=level.back[1], hip_side=level.side[0], hem_centre=level.back[2], hem_side=level.side[1],
        sewn=quarter, darts=_darts("back", level.back[0], side, tuple(zip(shares, takes, (14.0, 12.5), strict=False)), body, sheet),
    )
    sheet.heading("Front", "W. Aldrich, Metric Pattern Cutting for Women's Wear; dart from memory")
    spare = sheet.length("front spare", half - width - quarter, "What a front quarter loses from hip to waist.")
    takes = front_darts(spare, sheet)
    along = sheet.point("front waist laid out", level.front[0].left(quarter + sum(takes)), "A quarter of the top and its darts.")
    side = sheet.point("front side at the waist", along.up(1.25), "As high as the back's.")
    shares = {0: (), 1: (2 / 3,), 2: (2 / 5, 3 / 4)}[len(takes)]
    front = Panel(
        name="front", centre=level.front[0], side=side, hip_centre=level.front[1], hip_side=level.side[0], hem_centre=level.front[2], hem_side=level.side[1],
        sewn=quarter, darts=_darts("front", level.front[0], side, tuple(zip(shares, takes, (10.0, 9.0), strict=False)), body, sheet),
    )
    return back, front


def _proportional(body: Body, cut: Shaped, length: Length, sheet: DraftSheet) -> tuple[Panel, Panel]:
    sheet.heading("Frame", "common practice, no source")
    narrower = Length(1.0 if cut.back_narrower is None else cut.back_narrower, "back narrower")
    ease = Length(cut.hip_ease, "hip ease")
    half = sheet.length("half the skirt", body.hip_girth / 2 + ease / 2, "Half the hip and its ease.")
    width = sheet.length("back hip", body.hip_girth / 4 + ease / 4 - narrower, "The side seam lies a little behind.")
    level = frame(half, width, body, length, sheet)
    top = body.waist_girth + Length(cut.waist_ease, "waist ease") + Length(fullness(cut.waistband, cut.waist_fullness), "fullness")
    spare = sheet.length("spare of the half", half - top / 2, "What half the skirt loses from hip to waist.")
    wanted = _shares(spare, sheet)

    sheet.heading("Back", "common practice, no source")
    centre = sheet.point("centre back at the waist", level.back[0].down(1), "Lowered: the back is hollow at the waist.")
    takes = _in_darts("back", wanted[1], 4.0, sheet)
    in_ = sheet.length("back side taken in", wanted[0] + wanted[1] - sum(takes), "The rest of the back's share.")
    side = sheet.point("back side at the waist", level.side[0].level_with(level.back[0]).left(in_), "On the waist line.")
    shares = {0: (), 1: (1 / 2,), 2: (1 / 3, 2 / 3)}[len(takes)]
    sewn = sheet.length("back waist", width - in_ - sum(takes), "What is left, darts closed.")
    back = Panel(
        name="back", centre=centre, side=side, hip_centre=level.back[1], hip_side=level.side[0], hem_centre=level.back[2], hem_side=level.side[1],
        sewn=sewn, darts=_darts("back", centre, side, tuple(zip(shares, takes, (13.0, 13.0), strict=False)), body, sheet),
    )
    sheet.heading("Front", "common practice, no source")
    centre = sheet.point("centre front at the waist", level.front[0].down(1.5), "Lowered, so that the hem hangs level.")
    takes = _in_darts("front", wanted[2], 3.0, sheet)
    in_ = sheet.length("front side taken in", wanted[0] + wanted[2] - sum(takes), "The rest of the front's share.")
    side = sheet.point("front side at the waist", level.side[0].level_with(level.front[0]).right(in_), "On the waist line.")
    shares = {0: (), 1: (1 / 2,), 2: (2 / 5, 3 / 4)}[len(takes)]
    sewn = sheet.length("front waist", half - width - in_ - sum(takes), "What is left, darts closed.")
    front = Panel(
        name="front", centre=centre, side=side, hip_centre=level.front[1], hip_side=level.side[0], hem_centre=level.front[2], hem_side=level.side[1],
        sewn=sewn, darts=_darts("front", centre, side, tuple(zip(shares, takes, (8.0, 8.0), strict=False)), body, sheet),
    )
    return back, front


def _shares(spare: Length, sheet: DraftSheet) -> tuple[Length, Length, Length]:
    """Each side's, the back darts' and the front darts' share of what the half loses."""
    side = sheet.length("side share", spare / 4, "Half of it at the side seam, to both sides alike.")
    back = sheet.length("back share", spare * 0.3, "Three tenths in back darts.")
    return side, back, sheet.length("front share", spare * 0.2, "Two tenths in front darts.")


def _in_darts(name: str, share: Length, most: float, sheet: DraftSheet) -> tuple[Length, ...]:
    """None to two darts for a share."""
    if not sheet.compare(f"a {name} dart", share, ">=", 1.0, "Is the share 1 cm or more?", "Less goes into the side seam."):
        return ()
    two = sheet.compare(f"a second {name} dart", share, ">", most, "Would one dart be too wide?", "A wide dart pokes out at its point.")
    return (share / 2, share / 2) if two else (share,)


def waist_quarter(body: Body, cut: Shaped) -> Length:
    """A quarter of the skirt top, darts closed: body, ease and the fullness over the band."""
    return (body.waist_girth + Length(cut.waist_ease, "waist ease") + Length(fullness(cut.waistband, cut.waist_fullness), "fullness")) / 4


def back_darts(spare: Length, sheet: DraftSheet) -> tuple[Length, ...]:
    """Widths of the back darts, none to two: two of 2 cm, more or fewer as the figure asks.

    Source: two of 2 cm, W. Aldrich, Metric Pattern Cutting for Women's Wear; on other figures
    common practice, no source.
    """
    if not sheet.compare("back darts", spare, ">=", 1.5, "Does a back quarter lose 1.5 cm or more?", "Less goes into the side seam."):
        return ()
    if sheet.compare("a hollow waist", spare, ">", 4 + MOST_AT_SIDE, "Does it lose more than two darts of 2 cm and the side seam can take?", "Wider darts, up to 3.5 cm each."):
        wide = (spare - MOST_AT_SIDE) / 2
        return (wide, wide) if wide <= 3.5 else (Length(3.5), Length(3.5))
    if sheet.compare("a straight figure", spare, "<", 5.5, "Does it lose less than two darts of 2 cm and a rounded side take?", "The darts take three quarters of it."):
        wanted = spare * 8 / 11
        single = sheet.compare("a single back dart", wanted, "<=", 2.5, "Would one dart of up to 2.5 cm do?", "Two tiny darts pucker.")
        return (wanted,) if single else (wanted / 2, wanted / 2)
    return (Length(2.0), Length(2.0))


def front_darts(spare: Length, sheet: DraftSheet) -> tuple[Length, ...]:
    """Widths of the front darts, none to two, of 2 cm up to 2.5 cm each.

    Source: one of 2 cm, from memory: W. Aldrich, Metric Pattern Cutting for Women's Wear; on other
    figures common practice, no source.
    """
    if not sheet.compare("a front dart", spare, ">=", 3.0, "Does a front quarter lose 3 cm or more?", "Less goes into the side seam; a full abdomen needs none."):
        return ()
    wanted = spare - MOST_AT_SIDE
    if not sheet.compare("more than a front dart", wanted, ">", 2.0, "Would the side seam have to take more than 4.5 cm?", "The darts take the rest."):
        return (Length(2.0),)
    if not sheet.compare("a second front dart", wanted, ">", 2.5, "Would one dart be wider than 2.5 cm?", "A wide front dart pokes out at its point."):
        return (wanted,)
    each = wanted / 2
    return (each, each) if each <= 2.5 else (Length(2.5), Length(2.5))


def _darts(
    name: str, centre: Place, side: Place, plan: tuple[tuple[float, Length, float], ...], body: Body, sheet: DraftSheet
) -> tuple[PlannedDart, ...]:
    """Draw darts square to the waist line: (share of the way from centre to side, intake, length)."""
    down = "right" if side.x > centre.x else "left"
    drawn = []
    deepest = body.side_waist_to_hip - 2
    for number, (share, intake, length) in enumerate(plan, 1):
        label = f"{name} dart" if len(plan) == 1 else f"{name} dart {number}"
        middle = sheet.point(f"{label} middle", centre.between(side, share), "In the middle of the dart's mouth.")
        drawn.append(draw_dart(label, (centre, side), middle, intake, smaller(length, deepest), down, sheet))
    return tuple(drawn)
