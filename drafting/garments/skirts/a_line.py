"""The A-line skirt: the straight skirt with its darts closed, so that the hem opens.

Each dart is closed about its point, and what lies between it and the side swings out at the hem;
where the darts do not suffice the rest is spread from the waist. About half as much again is added
at the side seam. Front and back swing by the same angle, so that their side seams lean alike.

Source: closing darts into the hem and adding half of it at the side, at most 6 cm; grain at the
centre: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Annotated, Literal

from annotated_types import Interval

from drafting.body import Body
from drafting.craft.clashes import Clash, given, refuse_clashes
from drafting.craft.darts import PlannedDart
from drafting.craft.hemline import leg, skirt_length
from drafting.craft.scrap import Scrap
from drafting.craft.sheet import DraftSheet
from drafting.errors import SpecError
from drafting.garments.garment import Garment, ValidRange
from drafting.garments.skirts import straight
from drafting.garments.skirts.block import Moving, Panel, as_drafted, block
from drafting.garments.skirts.making import HIP, made_up
from drafting.garments.skirts.options import SHAPED, Shaped
from drafting.garments.skirts.remarks import remarks
from drafting.garments.skirts.symptoms import SYMPTOMS
from drafting.garments.skirts.trueing import hem_line, true
from drafting.garments.skirts.wants import at_least
from drafting.geometry import Point
from drafting.pattern import Pattern
from drafting.pattern.allowance import LENGTH
from drafting.trace import Length, Place

LEAST_FLARE, MOST_FLARE = 4.0, 25.0
"""Degrees by which a quarter opens: less is a straight skirt, more is a circle's. House method."""

MOST_AT_SIDE = 6.0

LEAST_LEFT = 0.5
"""What is left of a dart is sewn only above half a degree. House method."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ALineSkirt(Shaped):
    """An A-line skirt at the natural waist. Lengths in cm.

    Attributes:
        kind: Always "a_line_skirt".
        method: How the straight skirt is drafted that it is made from: "block", or "proportional",
            which shares out what hip and waist differ by.
        flare: Degrees by which each quarter opens; by default as far as the darts of front and
            back both close.
        hem_girth: Girth of the hem, instead of `flare`.
        hip_ease: Skirt over body at the hip line before it is opened, all round.
    """

    kind: Literal["a_line_skirt"]
    flare: Annotated[float | None, Interval(ge=LEAST_FLARE, le=MOST_FLARE)] = None
    hem_girth: Annotated[float | None, Interval(ge=90, le=400), LENGTH] = None


CLASHES = (*SHAPED, Clash("flare", given, "hem_girth", given, "Both say how wide the hem is."))


def draw(body: Body, cut: ALineSkirt, sheet: DraftSheet, moved: Moving = as_drafted) -> Pattern:
    """Draft an A-line skirt for a body; the pieces are net, in cm, Y up.

    `moved` may shift the darts of back and front before the waist is trued, as to meet a bodice's.

    Raises:
        MissingMeasureError: A needed measure is not there.
        SpecError: An option cannot be had on this body, or excludes another.
        ConstructionError: A step of the construction has no answer for this body.
    """
    refuse_clashes(cut, CLASHES)
    under = leg(body)
    sheet.heading("Length", "common practice, no source")
    length = sheet.length("skirt length", skirt_length(cut.length, cut.hem_at, under), "Waist to hem.")
    back, front = moved(*block(body, cut, length, sheet), sheet)
    sheet.heading("Flare", "common practice, no source")
    degrees = flare(back, front, cut, length, sheet)
    back_open, front_open = (opened(panel, degrees, sheet) for panel in (back, front))
    wider = at_side(back, front, degrees)
    add = sheet.length("added at the side", wider, "Half of what a quarter opens, at most 6 cm.")
    drawn = true(leaned(back_open, add, sheet), leaned(front_open, add, sheet), sheet)
    sheet.heading("Details", "common practice, no source")
    hem = 2 * sum(p.hem.length() for p in drawn) if cut.hem_girth is None else cut.hem_girth
    hip = float(body.hip_girth + cut.hip_ease)
    return made_up(
        "a_line_skirt", "A-line skirt", body, cut, drawn, length, None, sheet,
        wants=(at_least("finished_hip_girth", HIP, hip - 0.5, "Body and ease, and what the darts open below their points."),),
        hem=(hem, 0.3), hem_kind="curved_hem", findings=remarks(body, cut.length, under),
    )


def flare(back: Panel, front: Panel, cut: ALineSkirt, length: Length, sheet: DraftSheet) -> float:
    """Degrees by which each quarter opens.

    Raises:
        SpecError: The girth of the hem cannot be had.
    """
    if cut.hem_girth is None:
        natural = min(sum(angle_of(d) for d in p.darts) for p in (back, front))
        found = cut.flare or max(LEAST_FLARE, min(MOST_FLARE, natural))
        why = f"{found:.1f} degrees, {'as ordered' if cut.flare else 'as far as the darts of front and back both close'}: the side seams lean alike."
        sheet.length("swing of a quarter at the hem", length * math.radians(found), why)
        return found
    low, high = (girth(back, front, a) for a in (0.0, MOST_FLARE))
    if not low < cut.hem_girth < high:
        raise SpecError(
            f"An A-line skirt of this length has a hem of {low:.0f} to {high:.0f} cm; for less choose a straight skirt, for more a circle.",
            where="garment.hem_girth", received=cut.hem_girth, allowed=(low, high),
        )
    swing = sheet.solve(
        "swing of a quarter at the hem", lambda s: girth(back, front, math.degrees(s / float(length))), cut.hem_girth,
        (0.0, math.radians(MOST_FLARE) * float(length)), "Brings the hem to its girth; front and back swing alike.",
    )
    return math.degrees(float(swing) / float(length))


def girth(back: Panel, front: Panel, degrees: float) -> float:
    """Girth of the hem in cm when each quarter is opened by so many degrees."""
    add = at_side(back, front, degrees)
    off = Scrap()
    return 2 * sum(hem_line(leaned(opened(p, degrees, off), add, off)).length() for p in (back, front))


def at_side(back: Panel, front: Panel, degrees: float) -> float:
    """What is added at each side, cm: half of what a quarter opens at the hem, at most 6."""
    open_ = sum(spread.opening for p in (back, front) for spread in spreads(p, degrees)) / 2
    return min(open_ / 2, MOST_AT_SIDE)


@dataclass(frozen=True, slots=True)
class Spread:
    """A cut from the hem up to a pivot, and by how many degrees it opens.

    Attributes:
        pivot: The dart's point; or a point of the waist.
        degrees: How far what lies beyond is turned.
        dart: Number of the dart that closes, from the centre; None at the waist.
        opening: How wide the cut opens at the hem, cm.
        name: What it is called.
    """

    pivot: Place
    degrees: float
    dart: int | None
    opening: float
    name: str


def angle_of(dart: PlannedDart) -> float:
    """Angle of a dart at its point, degrees."""
    return (dart.near - dart.point).angle_to(dart.far - dart.point)


def spreads(panel: Panel, degrees: float) -> tuple[Spread, ...]:
    """Which darts close how far, the one nearest to the side first; the rest from the waist."""
    left, found = degrees, list[Spread]()
    for n in reversed(range(len(panel.darts))):
        dart = panel.darts[n]
        take = min(left, angle_of(dart))
        if take > 1e-9:
            found.append(_spread(panel, placed(dart.point), take, n, f"{panel.name} dart {n + 1} closed"))
        left -= take
    if left > 1e-9:
        found.append(_spread(panel, _waist_pivot(panel), left, None, f"{panel.name} spread from the waist"))
    return tuple(found)


def _spread(panel: Panel, pivot: Place, degrees: float, dart: int | None, name: str) -> Spread:
    down = pivot.y - panel.hem_centre.y
    return Spread(pivot, degrees, dart, 2 * down * math.sin(math.radians(degrees) / 2), name)


def _waist_pivot(panel: Panel) -> Place:
    """On the waist, half way from the centre, or from the dart nearest to it, to the side."""
    start = panel.centre if not panel.darts else placed(panel.darts[0].near)
    return start.between(panel.side, 0.5) if not panel.darts else start


def placed(point: Point) -> Place:
    """The point as a place of the paper."""
    return point if isinstance(point, Place) else Place(point.x, point.y)


def opened(panel: Panel, degrees: float, sheet: DraftSheet) -> Panel:
    """The panel swung open, its waist closing: darts first, then from the waist."""
    hand = 1.0 if panel.side.x > panel.centre.x else -1.0
    for spread in spreads(panel, degrees):
        sheet.length(f"{spread.name}, at the hem", spread.opening, f"{spread.degrees:.1f} degrees about its pivot.")
        panel = _swung(panel, spread, spread.degrees * hand, sheet)
    return panel


def _swung(panel: Panel, spread: Spread, degrees: float, sheet: DraftSheet) -> Panel:
    """Everything beyond a pivot turned about it."""
    def swing(name: str, point: Point) -> Place:
        return sheet.point(f"{name}, {spread.name}", placed(point).swung(spread.pivot, degrees), "Swung about the pivot.")

    first = len(panel.darts) if spread.dart is None else spread.dart
    return replace(
        panel,
        side=swing(f"{panel.name} side at the waist", panel.side),
        hip_side=swing(f"{panel.name} side at the hip", panel.hip_side),
        hem_side=swing(f"{panel.name} side at the hem", panel.hem_side),
        darts=_darts(panel, first, spread, swing),
    )


def _darts(panel: Panel, first: int, spread: Spread, swing: Callable[[str, Point], Place]) -> tuple[PlannedDart, ...]:
    """The dart that closes made narrower, or gone; those beyond it swung along."""
    kept = list(panel.darts[:first])
    if spread.dart is not None:
        dart = panel.darts[first]
        if angle_of(dart) - spread.degrees > LEAST_LEFT:
            kept.append(replace(dart, far=swing(f"{panel.name} dart {first + 1} far leg", dart.far)))
    for n, dart in enumerate(panel.darts[first + 1 :], first + 2):
        label = f"{panel.name} dart {n}"
        kept.append(PlannedDart(swing(f"{label} near leg", dart.near), swing(f"{label} far leg", dart.far), swing(f"{label} point", dart.point)))
    return tuple(kept)


def leaned(panel: Panel, add: float, sheet: DraftSheet) -> Panel:
    """The side leaned out at the hem, as long below the hip as the centre is."""
    side = "left" if panel.side.x > panel.centre.x else "right"
    out = panel.hem_side.square_out(panel.hip_side, panel.hem_side, add, side)
    below = Length(panel.hip_centre.y - panel.hem_centre.y, "hip to hem")
    target = sheet.point(f"{panel.name} side leaned out", out, "More flare at the side.")
    return replace(panel, hem_side=sheet.point(f"{panel.name} side at the hem, to length", panel.hip_side.towards(target, below), "As long below the hip as the centre."))


GARMENT = Garment(
    kind="a_line_skirt",
    title="A-line skirt",
    summary="A skirt that widens evenly from the hip, made from the straight skirt by closing its darts; flare by degrees or by the hem.",
    spec=ALineSkirt,
    needs=straight.GARMENT.needs,
    optional=straight.GARMENT.optional,
    pieces=("back", "front", "waistband"),
    valid=(ValidRange("waist_girth", 56, 120), ValidRange("hip_girth", 80, 140)),
    sources=(
        "W. Aldrich, Metric Pattern Cutting for Women's Wear (block: widths, waist quarters)",
        "from memory: W. Aldrich, Metric Pattern Cutting for Women's Wear (block: dart places and lengths)",
        "common practice, no source (closing darts into the hem, trueing, zip, waistband, facing, lining)",
    ),
    sample=straight.GARMENT.sample,
    symptoms=SYMPTOMS,
    draw=draw,
)
