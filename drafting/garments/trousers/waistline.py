"""Trousers, the waistline: lowered or raised, and what becomes of the darts under it.

Source: high waists with their darts run on through the natural waist and narrower again over it: from
memory, the high-waisted blocks of W. Aldrich, Metric Pattern Cutting for Women's Wear; how a waist widens
on its way to the hip and to the ribs, and when a dart is too narrow to be sewn: house method.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import inf

from drafting.craft.darts import PlannedDart, ThroughDart
from drafting.craft.pencil import placed
from drafting.craft.scrap import Scrap
from drafting.craft.sheet import DraftSheet
from drafting.craft.welt_pocket import WELT_DOWN, WELT_WIDTH
from drafting.errors import SpecError
from drafting.garments.trousers.fits import UPWARD
from drafting.garments.trousers.frame import Frame
from drafting.garments.trousers.panel import Panel, darts, side_parts
from drafting.garments.trousers.spec import Trousers
from drafting.garments.trousers.trueing import over_its_darts
from drafting.trace import Length, Place, straight

Panels = tuple[Frame, Panel, Panel]
Plan = tuple[tuple[float, float, float], ...]
"""Darts: distance from the centre to the middle, intake, length, in cm."""


def lowered(level: Frame, front: Panel, back: Panel, cut: Trousers, sheet: DraftSheet) -> Panels:
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
    moved = set_out(name, replace(panel, waist_centre=centre), side, panel.waist_sewn, plan, "As wide as the body is there, darts open.", sheet)
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


def past_the_band(level: Frame, panel: Panel, cut: Trousers, sheet: DraftSheet) -> Panel:
    """Darts that go on below a shaped band or facing; a narrow one goes into the side seam."""
    band = shaped_depth(cut)
    if not band or cut.waist_position > 0:
        return panel
    plan = again(panel)
    kept = tuple((at, width, _shown(width, long, band, cut)) for at, width, long in _few(plan, lambda dart: _shows(dart, band, cut)))
    if kept == plan:
        return panel
    sheet.heading(f"{panel.name.capitalize()} darts below the band", "house method")
    return set_out(f"{panel.name} below the band", panel, level.side_waist, panel.waist_sewn, kept, "As before.", sheet)


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


def into_the_welt(back: Panel, cut: Trousers, sheet: DraftSheet) -> Panel:
    """The back darts ended in the welt of a pocket, below a contoured band where there is one."""
    if not sheet.decide("darts that end in the welt", cut.back_pocket == "welt" and bool(back.darts), "Are there back darts over a welt pocket?", "Its bag then hangs from whole cloth."):
        return back
    deep = (cut.band_depth if cut.waistband == "contoured" else 0.0) + WELT_DOWN + WELT_WIDTH / 2

    drafted = again(back)

    def ended(lengths: tuple[float, ...], paper: DraftSheet) -> Panel:
        plan = tuple((at, width, long) for (at, width, _), long in zip(drafted, lengths, strict=True))
        return replace(back, darts=darts("back to the welt", back.waist_centre, back.waist_side, plan, paper))

    tried = over_its_darts(ended((deep,) * len(back.darts), Scrap()))
    return ended(tuple(2 * deep - dart.length for dart in tried), sheet)


def shaped_depth(cut: Trousers) -> float:
    """How far below the top a shaped band or a facing reaches, cm."""
    return {"contoured": cut.band_depth, "faced": cut.facing_depth}.get(cut.waistband or "") or 0.0


def raised(level: Frame, front: Panel, back: Panel, cut: Trousers, sheet: DraftSheet) -> Panels:
    """The waist raised: the centre lines carried on, the darts narrower again, the sides hollow at the waist."""
    if cut.waist_position <= 0:
        return level, front, back
    sheet.heading("Raised waist", "from memory: W. Aldrich, Metric Pattern Cutting for Women's Wear; house method")
    up = Length(cut.waist_position, "waist raised")
    side = sheet.point("raised waist line at the side", level.side_waist.up(up), "Over the natural waist.")
    waist = side if level.side_waist is level.waist else sheet.point("raised waist line", level.waist.up(up), "Over the natural waist.")
    one, two = (_carried_up(p, up, side, sheet) for p in (front, back))
    return replace(level, waist=waist, side_waist=side, natural=level.waist), one, two


def _carried_up(panel: Panel, up: Length, side: Place, sheet: DraftSheet) -> Panel:
    name = f"raised {panel.name}"
    below = Length(panel.hook_start.distance(panel.waist_centre), "centre line")
    centre = sheet.point(f"{name} centre", panel.hook_start.towards(panel.waist_centre, below + up), "The centre line carried on.")
    gained = sheet.length(f"{name} gains", up * (UPWARD / 4), "The body widens toward the ribs; the darts give it, then the side.")
    each = _narrowed(panel, float(gained))
    through = tuple(_through(f"{name} dart {n}", d, up, width, sheet) for n, (d, width) in enumerate(zip(panel.darts, each, strict=True), 1))
    sewn = sheet.length(f"{name} waist", panel.waist_sewn + gained, "A quarter of the top.")
    corner = sheet.point(f"{name} side at the top", centre.reaching(side, sewn + sum(each), "left"), "A quarter of the top, darts open.")
    moved = replace(panel, waist_centre=centre, waist_side=corner, waist_sewn=sewn, darts=through, natural_side=panel.waist_side)
    return replace(
        moved,
        crotch=sheet.draw(f"{name} crotch", (*straight(centre, panel.hook_start), panel.crotch.parts[-1]), "As before, from the higher top."),
        side=sheet.draw(f"{name} side", side_parts(corner, panel.hip_side, panel.leg, panel.bulge, panel.waist_side), "Hollow at the natural waist."),
    )


LEAST_OF_A_DART = 0.4
"""A dart that runs through the waist keeps at least two fifths of its width at the top. House method."""


def _narrowed(panel: Panel, gained: float) -> tuple[float, ...]:
    """Widths of the darts at a raised top, cm."""
    widths = tuple(width for _, width, _ in again(panel))
    return tuple(max(LEAST_OF_A_DART * w, w - gained / len(widths)) for w in widths)


def _through(label: str, dart: PlannedDart, up: Length, width: float, sheet: DraftSheet) -> ThroughDart:
    """A dart carried on through the waist, square to it, to a width at the top."""
    middle = sheet.point(f"{label} at the waist", placed(dart.near).between(placed(dart.far), 0.5), "In the middle of its mouth.")
    deep = Length(dart.point.distance(middle), "dart")
    top = sheet.point(f"{label} middle at the top", placed(dart.point).towards(middle, deep + up), "Its middle line carried on.")
    near, far = (
        sheet.point(f"{label} {leg} leg at the top", top.square_out(placed(dart.point), middle, Length(width / 2), hand), "Narrower again than at the waist.")
        for leg, hand in (("near", "right"), ("far", "left"))
    )
    return ThroughDart(near, far, dart.point, dart.near, dart.far)


def set_out(name: str, panel: Panel, level: Place, sewn: Length, plan: Plan, why: str, sheet: DraftSheet) -> Panel:
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


def again(panel: Panel) -> Plan:
    """A panel's darts as a plan."""
    return tuple((panel.waist_centre.distance(d.near.toward(d.far, 0.5)), d.near.distance(d.far), d.near.toward(d.far, 0.5).distance(d.point)) for d in panel.darts)
