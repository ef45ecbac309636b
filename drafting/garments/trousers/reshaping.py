"""Trousers, the top reshaped: what the cut changes of the waist and the darts that a method draws.

No darts under an elastic, a flat front or pleats in it, one dart or two behind, or darts that end in the
seam of a yoke; before it a lowered waist, after it a raised one.

Source: front pleats of 2 to 4 cm, the first on the crease, closed for 6 to 10 cm, the side swung out so
that the hip gains half; yokes 6 to 8 cm deep at the centre back and 3 to 5 cm at the side; a single
back dart of 3.5 to 4 cm at most: common practice, no source. What a flat front gives to the side seam
and to the back: house method.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from drafting.craft.darts import PlannedDart
from drafting.craft.sheet import DraftSheet
from drafting.errors import SpecError
from drafting.garments.trousers.frame import Frame
from drafting.garments.trousers.panel import Panel, side_parts
from drafting.garments.trousers.spec import BackShape, FrontShape, Trousers
from drafting.garments.trousers.waistline import (
    Panels,
    again,
    into_the_welt,
    lowered,
    past_the_band,
    raised,
    set_out,
    taken,
)
from drafting.trace import Length, Place, larger, smaller


def reshaped(level: Frame, front: Panel, back: Panel, cut: Trousers, sheet: DraftSheet) -> Panels:
    """The panels as the cut has them at the top.

    Raises:
        SpecError: The body does not allow what was ordered.
    """
    level, front, back = lowered(level, front, back, cut, sheet)
    front, back = FRONTS[cut.front](level, front, back, cut, sheet)
    back = BACKS[cut.back](level, back, cut, sheet)
    front = front if pleat_widths(cut) else past_the_band(level, front, cut, sheet)
    back = back if cut.back == "yoke" else past_the_band(level, back, cut, sheet)
    return raised(level, front, into_the_welt(back, cut, sheet), cut, sheet)


def _as_drawn(level: Frame, front: Panel, back: Panel, cut: Trousers, sheet: DraftSheet) -> tuple[Panel, Panel]:  # noqa: ARG001 - a row of the table
    """Darts as the method and the figure have them."""
    return front, back


def _flat(level: Frame, front: Panel, back: Panel, cut: Trousers, sheet: DraftSheet) -> tuple[Panel, Panel]:
    """No front darts: half of what they took goes to the side seam, half to the back's side."""
    lost = taken(front)
    sheet.heading("Flat front", "common practice, no source")
    if not sheet.compare("front darts left out", Length(lost, "taken by the front darts"), ">", 0, "Has the front darts?", "Half of them goes into the side seam, half behind it."):
        return front, back
    share = Length(0.0 if cut.waistband == "elastic" else lost / 2, "half the front darts")
    spread = FRONT_SIDE_TAKES
    if lost / 2 > spread:
        raise SpecError(
            f'front "flat" would have to lose {lost:.1f} cm more at the side seams between hip_girth and waist_girth than they can take: choose front "dart" or a pleat.',
            where="garment.front", received="flat",
        )
    one = set_out("flat front", front, level.side_waist, front.waist_sewn + share, (), "Without darts.", sheet)
    plan = again(back)
    two = set_out("back of a flat front", back, level.side_waist, back.waist_sewn - share, plan, "Narrower by what the front is wider.", sheet)
    return one, two


FRONT_SIDE_TAKES = 2.6
"""A front without darts loses at most 2.6 cm more at its side seam. House method."""


def pleat_widths(cut: Trousers) -> tuple[float, ...]:
    """What each front pleat takes out of the waist, from the crease, in cm."""
    many = {"one_pleat": 1, "two_pleats": 2}.get(cut.front or "", 0)
    first = (4.0 if many == 1 else 3.5) if cut.pleat_depth is None else cut.pleat_depth
    return (first, max(1.5, first - 1.0))[:many]


def hip_gain(cut: Trousers) -> float:
    """How much wider pleats make each front at the hip, cm: half of what they take over a usual dart."""
    return max(0.0, sum(pleat_widths(cut)) - USUAL_DART) / 2


USUAL_DART = 2.0
BETWEEN_PLEATS, LEAST_BETWEEN = 3.0, 1.8
BESIDE_PLEATS = 6.6
"""Two pleats lie 3 cm apart, as near as 1.8 cm where there are less than 6.6 cm for a pocket beside them.
House method."""


def _pleated(level: Frame, front: Panel, back: Panel, cut: Trousers, sheet: DraftSheet) -> tuple[Panel, Panel]:
    """Pleats in the place of the front darts, the first on the crease, the side swung out for them."""
    sheet.heading("Front pleats", "common practice, no source")
    widths = tuple(sheet.length(f"pleat {n}", w, "It opens below, down to the knee.") for n, w in enumerate(pleat_widths(cut), 1))
    hip = sheet.point("pleated front side at the hip", front.hip_side.left(Length(hip_gain(cut), "hip gained")), "The side is swung out about the knee.")
    centre = front.waist_centre
    side = sheet.point("pleated front side at the waist", centre.reaching(level.side_waist, front.waist_sewn + sum(widths), "left"), "A quarter of the top, pleats open.")
    crease = Length(centre.x, "centre front to the crease")
    apart = larger(Length(LEAST_BETWEEN), smaller(Length(BETWEEN_PLEATS), front.waist_sewn - crease - BESIDE_PLEATS))
    if len(widths) > 1:
        apart = sheet.length("between the pleats", apart, "Nearer to each other on a narrow front, so that a pocket has room.")
    places = (crease, crease + (widths[0] + widths[-1]) / 2 + apart)
    planned = tuple(_pleat(n, centre, side, at, width, level, sheet) for n, (at, width) in enumerate(zip(places, widths, strict=False), 1))
    drawn = sheet.draw("pleated front side", side_parts(side, hip, front.leg, front.bulge), "Round over the wider hip.")
    return replace(front, hip_side=hip, waist_side=side, darts=planned, side=drawn), back


def _pleat(number: int, centre: Place, side: Place, at: float, width: Length, level: Frame, sheet: DraftSheet) -> PlannedDart:
    """A pleat planned as a dart that ends at the knee, plumb under its middle."""
    middle = sheet.point(f"pleat {number} middle", centre.towards(side, at), "In the middle of its mouth." if number > 1 else "On the crease.")
    return PlannedDart(
        sheet.point(f"pleat {number} near line", middle.towards(centre, width / 2), "Half of it lies on each side of its middle."),
        sheet.point(f"pleat {number} far line", middle.towards(side, width / 2), "Half of it lies on each side of its middle."),
        sheet.point(f"pleat {number} foot", middle.level_with(level.knee), "Where it has opened."),
    )


FRONTS: dict[FrontShape | None, Callable[[Frame, Panel, Panel, Trousers, DraftSheet], tuple[Panel, Panel]]] = {
    "dart": _as_drawn,
    "flat": _flat,
    "one_pleat": _pleated,
    "two_pleats": _pleated,
}
"""What each front changes."""


def _back_as_drawn(level: Frame, back: Panel, cut: Trousers, sheet: DraftSheet) -> Panel:  # noqa: ARG001 - a row of the table
    """Darts as the method and the figure have them."""
    return back


def _undarted(level: Frame, back: Panel, cut: Trousers, sheet: DraftSheet) -> Panel:  # noqa: ARG001 - a row of the table
    """No darts; the elastic draws the waist in."""
    sheet.heading("Back without darts", "common practice, no source")
    return set_out("flat back", back, level.side_waist, back.waist_sewn, (), "Without darts.", sheet)


def _darted(many: int) -> Callable[[Frame, Panel, Trousers, DraftSheet], Panel]:
    def draw(level: Frame, back: Panel, cut: Trousers, sheet: DraftSheet) -> Panel:  # noqa: ARG001 - a row of the table
        """So many darts a side, that share what the method's own darts take."""
        sheet.heading("Back darts", "common practice, no source")
        drawn = taken(back)
        if drawn / many > MOST_SINGLE:
            raise SpecError(
                f'back "one_dart" would need a dart of {drawn:.1f} cm between waist_girth and hip_girth; at most {MOST_SINGLE:.1f} cm can be sewn: choose back "two_darts".',
                where="garment.back", received="one_dart",
            )
        each = sheet.length("each back dart", Length(max(drawn / many, LEAST_DART), "its share"), "Ordered by number; they share what has to be lost.")
        lengths = [long for _, _, long in again(back)] or [USUAL_LONG]
        whole = back.waist_sewn + many * each
        plan = tuple((whole * (i + 1) / (many + 1), each, lengths[min(i, len(lengths) - 1)]) for i in range(many))
        return set_out("back with its darts", back, level.side_waist, back.waist_sewn, plan, "A quarter of the top, darts open.", sheet)
    return draw


MOST_SINGLE, LEAST_DART, USUAL_LONG = 4.05, 1.0, 11.0


def _for_a_yoke(level: Frame, back: Panel, cut: Trousers, sheet: DraftSheet) -> Panel:
    """Darts that end in the seam of a yoke, to be closed in it."""
    sheet.heading("Darts for a yoke", "common practice, no source")
    above = cut.band_depth if cut.waistband == "contoured" else 0.0
    whole, (middle, side) = float(back.waist_sewn) + taken(back), yoke_depths(back)
    if min(back.waist_centre.y - middle, back.waist_side.y - side) - above < level.hip.y + OVER_THE_HIP:
        raise SpecError("The yoke would reach the hip line below so low a waist: raise waist_position, or choose another back.", where="garment.waist_position")
    plan = tuple((at, width, above + middle + (side - middle) * at / whole) for at, width, _ in again(back))
    return set_out("back under a yoke", back, level.side_waist, back.waist_sewn, plan, "As before.", sheet)


def yoke_depths(back: Panel) -> tuple[float, float]:
    """Depth of a yoke in cm at the centre back and at the side; a deeper one takes much dart with less of a bend."""
    return (7.8, 4.8) if taken(back) > MUCH_DART else (7.0, 4.0)


MUCH_DART = 3.0

OVER_THE_HIP = 0.5
"""A yoke ends at least half a centimetre over the hip line, so that the back's width there is its own. House method."""

BACKS: dict[BackShape | None, Callable[[Frame, Panel, Trousers, DraftSheet], Panel]] = {
    "darts": _back_as_drawn,
    "one_dart": _darted(1),
    "two_darts": _darted(2),
    "yoke": _for_a_yoke,
    "flat": _undarted,
}
"""What each back changes."""
