"""Trousers, the top reshaped: what the cut changes of the waist and the darts that a method draws.

A lowered waist, no darts under an elastic, a flat front or pleats in it, one dart or two behind, or
darts that end in the seam of a yoke.

Source: front pleats of 2 to 4 cm, the first on the crease, closed for 6 to 10 cm, the side swung out so
that the hip gains half; yokes 6 to 8 cm deep at the centre back and 3 to 5 cm at the side; a single
back dart of 3.5 to 4 cm at most: common practice, no source. What a flat front gives to the side seam
and to the back, and how a waist widens on its way to the hip: house method.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import inf

from drafting.craft.darts import PlannedDart
from drafting.craft.sheet import DraftSheet
from drafting.craft.welt_pocket import WELT_DOWN, WELT_WIDTH
from drafting.errors import SpecError
from drafting.garments.trousers.frame import Frame
from drafting.garments.trousers.panel import Panel, darts, side_parts
from drafting.garments.trousers.spec import BackShape, FrontShape, Trousers
from drafting.garments.trousers.trueing import over_its_darts
from drafting.trace import Length, Place, straight

Panels = tuple[Frame, Panel, Panel]
Plan = tuple[tuple[float, float, float], ...]
"""Darts: distance from the centre to the middle, intake, length, in cm."""


def reshaped(level: Frame, front: Panel, back: Panel, cut: Trousers, sheet: DraftSheet) -> Panels:
    """The panels as the cut has them at the top.

    Raises:
        SpecError: The body does not allow what was ordered.
    """
    level, front, back = _lowered(level, front, back, cut, sheet)
    front, back = FRONTS[cut.front](level, front, back, cut, sheet)
    back = BACKS[cut.back](level, back, cut, sheet)
    front, back = (_past_the_band(level, p, cut, sheet) for p in (front, back))
    return level, front, _into_the_welt(back, cut, sheet)


def _lowered(level: Frame, front: Panel, back: Panel, cut: Trousers, sheet: DraftSheet) -> Panels:
    """The waist lowered: the centre line as it is, the top drawn anew where it crosses it."""
    down = -cut.waist_position
    if down <= 0:
        return level, front, back
    sheet.heading("Lowered waist", "common practice, no source")
    deep = Length(down, "waist lowered")
    side = sheet.point("lowered waist line at the side", level.side_waist.down(deep), "Below the natural waist.")
    waist = side if level.side_waist is level.waist else sheet.point("lowered waist line", level.waist.down(deep), "Below the natural waist.")
    room = side.y - level.side_hip.y
    if room < LEAST_OVER_HIP:
        highest = -(down + room - LEAST_OVER_HIP)
        raise SpecError(
            f"A waist_position of {cut.waist_position:g} cm leaves {room:.1f} cm over the hip line; side_waist_to_hip allows {highest:.1f} cm at the lowest.",
            where="garment.waist_position", received=cut.waist_position, allowed=(highest, None),
        )
    one, two = (_cut_lower(p, deep, side, sheet) for p in (front, back))
    return replace(level, waist=waist, side_waist=side), one, two


LEAST_OVER_HIP = 5.0
"""A lowered waist lies at least 5 cm over the hip line. House method."""

LEAST_LEFT = 0.6
"""Of a dart that would be narrower than 0.6 cm at a lowered waist nothing is left. House method."""

PAST_BAND = 2.5
"""A dart goes on at least 2.5 cm below a shaped band or facing. House method."""


def _cut_lower(panel: Panel, deep: Length, side: Place, sheet: DraftSheet) -> Panel:
    name = f"lowered {panel.name}"
    centre = sheet.point(f"{name} centre", panel.waist_centre.towards(panel.hook_start, deep), "Along the centre line.")
    plan = _few(tuple(_remaining(d, centre, float(deep)) for d in panel.darts), lambda dart: dart[1] >= LEAST_LEFT)
    moved = _set_out(name, replace(panel, waist_centre=centre), side, panel.waist_sewn, plan, "As wide as the body is there, darts open.", sheet)
    crotch = sheet.draw(f"{name} crotch", (*straight(centre, panel.hook_start), panel.crotch.parts[-1]), "As before, from the lower waist.")
    return replace(moved, crotch=crotch)


def _remaining(dart: PlannedDart, centre: Place, deep: float) -> tuple[float, float, float]:
    """What is left of a dart when the waist is lowered; no width of one that ends above."""
    middle = dart.near.toward(dart.far, 0.5)
    whole = middle.distance(dart.point)
    left = max(0.0, 1 - deep / whole)
    return centre.distance(middle.toward(dart.point, 1 - left)), dart.near.distance(dart.far) * left, whole * left


def _few(plan: Plan, can_be_sewn: Callable[[tuple[float, float, float]], bool]) -> Plan:
    """The darts, or fewer and wider ones in their place where they are too narrow; none where one would be."""
    for many in range(len(plan), 0, -1):
        made = _shared(plan, many)
        if all(map(can_be_sewn, made)):
            return made
    return ()


def _shared(plan: Plan, many: int) -> Plan:
    """So many darts in the place of others, that share evenly what those take."""
    if many == len(plan):
        return plan
    each, long = sum(width for _, width, _ in plan) / many, max(long for _, _, long in plan)
    steps = ((i + 0.5) * len(plan) / many - 0.5 for i in range(many))
    return tuple((plan[int(s)][0] + (s % 1) * (plan[min(int(s) + 1, len(plan) - 1)][0] - plan[int(s)][0]), each, long) for s in steps)


def _past_the_band(level: Frame, panel: Panel, cut: Trousers, sheet: DraftSheet) -> Panel:
    """Darts that go on below a shaped band or facing; a narrow one goes into the side seam."""
    plan, band = _again(panel), shaped_depth(cut)
    taken_over = cut.back == "yoke" if panel.name == "back" else _is_pleated(cut)
    kept = tuple((at, width, _shown(width, long, band, cut)) for at, width, long in _few(plan, lambda dart: _shows(dart, band, cut)))
    if not band or taken_over or kept == plan:
        return panel
    sheet.heading(f"{panel.name.capitalize()} darts below the band", "house method")
    return _set_out(f"{panel.name} below the band", panel, level.side_waist, panel.waist_sewn, kept, "As before.", sheet)


def _shown(width: float, long: float, band: float, cut: Trousers) -> float:
    """Length of a dart that shows below a band, and where that is cut off is wide enough to be sewn."""
    least = max(long, band + PAST_BAND)
    if cut.waistband != "contoured":
        return least
    return max(least, band * width / (width - LEAST_LEFT)) if width > LEAST_LEFT else inf


def _shows(dart: tuple[float, float, float], band: float, cut: Trousers) -> bool:
    """Whether a dart goes on below a band without becoming too long."""
    _, width, long = dart
    return _shown(width, long, band, cut) <= max(long, band + FARTHEST)


FARTHEST = 6.5
"""A dart goes on at most 6.5 cm below a shaped band; one that would have to go farther to be wide enough
to be sewn is left out. House method."""


def _into_the_welt(back: Panel, cut: Trousers, sheet: DraftSheet) -> Panel:
    """The back darts ended in the welt of a pocket, below a contoured band where there is one."""
    if not sheet.decide("darts that end in the welt", cut.back_pocket == "welt" and bool(back.darts), "Are there back darts over a welt pocket?", "Its bag then hangs from whole cloth."):
        return back
    deep = (cut.band_depth if cut.waistband == "contoured" else 0.0) + WELT_DOWN + WELT_WIDTH / 2

    def ended(lengths: tuple[float, ...], paper: DraftSheet) -> Panel:
        plan = tuple((at, width, long) for (at, width, _), long in zip(_again(back), lengths, strict=True))
        return replace(back, darts=darts("back to the welt", back.waist_centre, back.waist_side, plan, paper))

    tried = over_its_darts(ended((deep,) * len(back.darts), DraftSheet()))
    return ended(tuple(2 * deep - dart.length for dart in tried), sheet)


def shaped_depth(cut: Trousers) -> float:
    """How far below the top a shaped band or a facing reaches, cm."""
    return {"contoured": cut.band_depth, "faced": cut.facing_depth}.get(cut.waistband or "", 0.0)


def _set_out(name: str, panel: Panel, level: Place, sewn: Length, plan: Plan, why: str, sheet: DraftSheet) -> Panel:
    """A panel with its waist set out anew from the centre: its sewn length and its darts."""
    centre = panel.waist_centre
    side = sheet.point(f"{name} side at the waist", centre.reaching(level, sewn + sum(width for _, width, _ in plan), "left"), why)
    return replace(
        panel, waist_side=side, waist_sewn=sewn, darts=darts(name, centre, side, plan, sheet),
        side=sheet.draw(f"{name} side", side_parts(side, panel.hip_side, panel.leg, panel.bulge), "As before, from the corner where it now is."),
    )


def taken(panel: Panel) -> float:
    """What a panel's darts take out of its waist, cm."""
    return sum(d.near.distance(d.far) for d in panel.darts)


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
    one = _set_out("flat front", front, level.side_waist, front.waist_sewn + share, (), "Without darts.", sheet)
    plan = _again(back)
    two = _set_out("back of a flat front", back, level.side_waist, back.waist_sewn - share, plan, "Narrower by what the front is wider.", sheet)
    return one, two


FRONT_SIDE_TAKES = 2.6
"""A front without darts loses at most 2.6 cm more at its side seam. House method."""


def _again(panel: Panel) -> Plan:
    """A panel's darts as a plan."""
    return tuple((panel.waist_centre.distance(d.near.toward(d.far, 0.5)), d.near.distance(d.far), d.near.toward(d.far, 0.5).distance(d.point)) for d in panel.darts)


def pleat_widths(cut: Trousers) -> tuple[float, ...]:
    """What each front pleat takes out of the waist, from the crease, in cm."""
    many = {"one_pleat": 1, "two_pleats": 2}.get(cut.front or "", 0)
    first = (4.0 if many == 1 else 3.5) if cut.pleat_depth is None else cut.pleat_depth
    return (first, max(1.5, first - 1.0))[:many]


def _is_pleated(cut: Trousers) -> bool:
    """Whether the fronts are laid in pleats."""
    return bool(pleat_widths(cut))


def hip_gain(cut: Trousers) -> float:
    """How much wider pleats make each front at the hip, cm: half of what they take over a usual dart."""
    return max(0.0, sum(pleat_widths(cut)) - USUAL_DART) / 2


USUAL_DART = 2.0
BETWEEN_PLEATS = 3.0


def _pleated(level: Frame, front: Panel, back: Panel, cut: Trousers, sheet: DraftSheet) -> tuple[Panel, Panel]:
    """Pleats in the place of the front darts, the first on the crease, the side swung out for them."""
    sheet.heading("Front pleats", "common practice, no source")
    widths = tuple(sheet.length(f"pleat {n}", w, "It opens below, down to the knee.") for n, w in enumerate(pleat_widths(cut), 1))
    hip = sheet.point("pleated front side at the hip", front.hip_side.left(Length(hip_gain(cut), "hip gained")), "The side is swung out about the knee.")
    centre = front.waist_centre
    side = sheet.point("pleated front side at the waist", centre.reaching(level.side_waist, front.waist_sewn + sum(widths), "left"), "A quarter of the top, pleats open.")
    crease = Length(centre.x, "centre front to the crease")
    places = (crease, crease + (widths[0] + widths[-1]) / 2 + BETWEEN_PLEATS)
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
    return _set_out("flat back", back, level.side_waist, back.waist_sewn, (), "Without darts.", sheet)


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
        lengths = [long for _, _, long in _again(back)] or [USUAL_LONG]
        whole = back.waist_sewn + many * each
        plan = tuple((whole * (i + 1) / (many + 1), each, lengths[min(i, len(lengths) - 1)]) for i in range(many))
        return _set_out("back with its darts", back, level.side_waist, back.waist_sewn, plan, "A quarter of the top, darts open.", sheet)
    return draw


MOST_SINGLE, LEAST_DART, USUAL_LONG = 4.05, 1.0, 11.0


def _for_a_yoke(level: Frame, back: Panel, cut: Trousers, sheet: DraftSheet) -> Panel:
    """Darts that end in the seam of a yoke, to be closed in it."""
    sheet.heading("Darts for a yoke", "common practice, no source")
    above = cut.band_depth if cut.waistband == "contoured" else 0.0
    whole = float(back.waist_sewn) + taken(back)
    plan = tuple((at, width, above + YOKE[0] + (YOKE[1] - YOKE[0]) * at / whole) for at, width, _ in _again(back))
    return _set_out("back under a yoke", back, level.side_waist, back.waist_sewn, plan, "As before.", sheet)


YOKE = (7.0, 4.0)
"""Depth of a yoke in cm at the centre back and at the side."""

BACKS: dict[BackShape | None, Callable[[Frame, Panel, Trousers, DraftSheet], Panel]] = {
    "darts": _back_as_drawn,
    "one_dart": _darted(1),
    "two_darts": _darted(2),
    "yoke": _for_a_yoke,
    "flat": _undarted,
}
"""What each back changes."""
