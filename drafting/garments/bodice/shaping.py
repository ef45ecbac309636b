"""Front and back made ready to cut: neckline, armhole and shoulder trued, the bust dart where it is wanted.

The front is first laid whole, all its bust shaping parked in the waist; there neckline, armhole and facings
are traced. Then it is cut where the dart is wanted and turned about the bust point.

Source: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import radians, sin

from drafting.craft.armhole import upper
from drafting.craft.darts import PlannedDart, reopen, split_at_point
from drafting.craft.pivot import open_dart, over_fold, smoothed
from drafting.craft.sheet import DraftSheet
from drafting.garments.bodice.block import Block, Front
from drafting.garments.bodice.necks import BACK_LOWERED, NeckSize, back_neck, front_neck
from drafting.garments.bodice.spec import NeckLine, Place
from drafting.garments.bodice.waist import Waisted
from drafting.geometry import (
    DOWN,
    IDENTITY,
    Cubic,
    Line,
    Path,
    Point,
    Vector,
    crossing_with_line,
    curve,
    join,
    polyline,
    turn,
)
from drafting.pattern import Dart, Edge
from drafting.trace import Length

SHORT: dict[Place, float] = {"shoulder": 4.5, "armhole": 3.0, "side": 3.0, "french": 3.0, "waist": 2.0}
"""How far from the bust point each dart ends, cm. Source: common practice, no source."""

UNDER_ARM = 6.0
OVER_WAIST = 5.0
"""A side dart starts 6 cm under the armhole, a French dart 5 cm over the waist. Common practice, no source."""

IN_ARMHOLE = 0.55
"""Share of the armhole from the shoulder down to a dart in it. House method."""

LEAST_FOR_DART = 7.0
"""cm of shoulder under which a back shoulder dart is not sewn; half a centimetre is eased instead."""

EASED = 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class Whole:
    """A front with all its bust shaping parked in the waist, plain lines, cm.

    Attributes:
        neckline: From the centre front to the shoulder.
        shoulder: From the neckline outward.
        armhole: From the shoulder to the underarm.
        side: From the underarm down.
        waist_side: From the side to the waist dart.
        waist_centre: From the waist dart to the centre front.
        centre: From the waist up to the neckline.
        pivot: The bust point.
        degrees: How far it is turned.
        waist_dart: The waist dart as planned, with its legs' ends on the waist; None for none.
    """

    neckline: Path
    shoulder: Path
    armhole: Path
    side: Path
    waist_side: Path
    waist_centre: Path
    centre: Path
    pivot: Point
    degrees: float
    waist_dart: Dart | None


@dataclass(frozen=True, slots=True, kw_only=True)
class WholeBack:
    """A back with trued shoulder and armhole, plain lines, cm.

    Attributes:
        centre: From the nape down to the waist.
        waist: From the centre to the side, darts open.
        side: From the waist up to the underarm.
        armhole: From the underarm up to the shoulder.
        shoulder: From its end to the neckline, the dart open.
        neckline: From the shoulder to the nape.
        closed: The shoulder from the neckline outward, the dart closed.
        darts: Shoulder dart and waist darts.
    """

    centre: Path
    waist: Path
    side: Path
    armhole: Path
    shoulder: Path
    neckline: Path
    closed: Path
    darts: tuple[Dart, ...]


def whole_front(block: Block, waist: Waisted, shape: NeckLine, size: NeckSize, where: Place | None, sheet: DraftSheet) -> Whole:
    """Lay the front whole: the bust dart closed, what would gape turned away, the neckline drawn.

    `where` the dart goes says which corners stay turned; they are told on the sheet.
    """
    front = block.front
    total = float(front.angle) + size.gape
    turned, nudged = turn(-total, front.bust_point), turn(-size.gape, front.bust_point)
    sheet.heading("Bust dart", "common practice, no source")
    sheet.length("bust dart 10 cm from its point", Length(20 * sin(radians(total / 2))), "The angle stays wherever the dart is moved. What a low neckline would gape is in it.")
    why = "The dart is closed: all between it and its new place turns about the bust point."
    if where in ("armhole", "side", "french", "waist") and (size.gape or not front.above):
        sheet.point("turned front shoulder end", front.shoulder.swung(front.bust_point, -(size.gape if front.above else total)), why)
    if where in ("side", "french", "waist"):
        sheet.point("turned front underarm", block.levels.underarm.swung(front.bust_point, -total), why)
    over = polyline(front.start, front.shoulder).transformed(nudged if front.above else turned)
    shoulder = over.split(size.width)[1] if size.width > 0 else over
    begin = shoulder.start
    low = Point(front.centre_neck.x, front.centre_neck.y - size.depth)
    neckline = front_neck(shape, low, begin, shoulder.start_tangent)
    waist_side, waist_centre, dart = _divided(waist, front)
    under = squared(front.armhole.path, waist.side)
    return Whole(
        neckline=neckline, shoulder=shoulder, armhole=_armhole(front, under, size.gape, total), side=waist.side.transformed(turned),
        waist_side=waist_side.transformed(turned), waist_centre=waist_centre,
        centre=Path((Line(waist_centre.end, low),)), pivot=Point(front.bust_point.x, front.bust_point.y), degrees=total, waist_dart=dart,
    )


def squared(armhole: Path, side: Path) -> Path:
    """An armhole that ends square to the side seam, so that it runs on over it; both in cm from the top down."""
    *rest, last = armhole.segments
    if not isinstance(last, Cubic):
        return armhole
    down = side.start_tangent
    along = down.left if down.left.dot(last.tangent(1.0)) > 0 else down.right
    return Path((*rest, replace(last, arriving=last.end + along * -last.arriving.distance(last.end))))


def _armhole(front: Front, under: Path, gape: float, total: float) -> Path:
    """The armhole with the bust dart closed, smooth where the dart was."""
    below = under.transformed(turn(-total, front.bust_point))
    if front.above is None:
        return below
    above = front.above.path.transformed(turn(-gape, front.bust_point))
    return join(smoothed(above, below))


def _divided(waist: Waisted, front: Front) -> tuple[Path, Path, Dart | None]:
    """The waist from the side to the waist dart, from there to the centre, and the dart."""
    if waist.darts:
        dart = waist.darts[0]
        to_near, rest = split_at_point(waist.waist, dart.first)
        far = Path(rest.segments[1:])
        return far.reversed(), to_near.reversed(), Dart("waist", dart.second, dart.first, dart.point, dart.drill)
    hit = crossing_with_line(waist.waist, front.bust_point, DOWN)[0]
    to_centre, to_side = waist.waist.split_at(*hit)
    return to_side.reversed(), to_centre.reversed(), None


def front_edges(whole: Whole, where: Place, notch: float) -> tuple[tuple[Edge, ...], tuple[Dart, ...]]:
    """The front's edges from the neckline round to the centre, the bust dart where it is wanted.

    Upright darts are pressed toward the centre, bust darts down.

    Args:
        whole: The front laid whole.
        where: Where the dart goes.
        notch: Length in cm of the armhole from the shoulder to its balance mark; 0 where it is not divided.
    """
    upper_edges = (Edge("shoulder", whole.shoulder), *divided_armhole(whole.armhole, notch), Edge("side", bendable(whole.side) if where == "french" else whole.side, kind="side"), Edge("waist_side", whole.waist_side, kind="waist"))
    if where == "waist":
        edges, bust = upper_edges, None
        waist, dart = over_fold(whole.waist_side, whole.waist_centre, whole.pivot, SHORT["waist"], "waist")
        waist_darts: tuple[Dart, ...] = (dart,)
    else:
        name, at = _cut_at(whole, where)
        opened = open_dart(upper_edges, name, at, whole.pivot, whole.degrees, SHORT[where])
        edges, bust = _squared_again(opened.edges), opened.dart
        waist, waist_darts = _waist(edges[-1].path, whole)
    bust = bust if bust is None or where == "shoulder" else replace(bust, toward_first=False)
    edges = (Edge("neckline", whole.neckline, kind="neckline"), *edges[:-1], Edge("waist", waist, kind="waist"), Edge("centre_front", whole.centre))
    return edges, (*((bust,) if bust else ()), *(replace(d, toward_first=False) for d in waist_darts))


def bendable(line: Path) -> Path:
    """A straight line as a curve, so that a dart near its end leaves the direction there as it is."""
    a, b = line.start, line.end
    return curve(a, a.toward(b, 1 / 3), a.toward(b, 2 / 3), b)


def _squared_again(edges: tuple[Edge, ...]) -> tuple[Edge, ...]:
    """The armhole square to the side once more, where a dart was opened in the side."""
    side = next(e for e in edges if e.name == "side").path
    last = [e.name for e in edges if e.name.startswith("armhole")][-1]
    return tuple(replace(e, path=squared(e.path, side)) if e.name == last else e for e in edges)


def _waist(side: Path, whole: Whole) -> tuple[Path, tuple[Dart, ...]]:
    if whole.waist_dart is None:
        return join((side, whole.waist_centre)), ()
    mouth = polyline(whole.waist_dart.first, whole.waist_dart.second)
    return join((side, mouth, whole.waist_centre)), (whole.waist_dart,)


def _cut_at(whole: Whole, where: Place) -> tuple[str, float]:
    """Edge and distance at which the front is cut."""
    side = whole.side.length()
    table = {
        "shoulder": ("shoulder", whole.shoulder.length() / 2),
        "armhole": ("armhole", whole.armhole.length() * IN_ARMHOLE),
        "side": ("side", min(UNDER_ARM, 0.4 * side)),
        "french": ("side", max(side - OVER_WAIST, 0.6 * side)),
    }
    return table[where]


def divided_armhole(armhole: Path, notch: float) -> tuple[Edge, ...]:
    """The armhole from the shoulder to its notch and on to the underarm; in one where there is no notch."""
    if notch <= 0:
        return (Edge("armhole", armhole, kind="armhole"),)
    over, under = armhole.split(notch)
    return Edge("armhole", over, kind="armhole"), Edge("armhole_under", under, kind="armhole")


def whole_back(block: Block, waist: Waisted, shape: NeckLine, size: NeckSize, shoulder: float) -> WholeBack:
    """True the back: shoulder to the front's length over its closed dart, armhole square to it, neckline.

    Args:
        block: As drafted.
        waist: Its waist.
        shape: The neckline's shape.
        size: Its size.
        shoulder: Length in cm of the front's shoulder as sewn.
    """
    back = block.back
    direction = (back.shoulder - back.neck).unit
    remaining = back.neck.distance(back.shoulder) - size.width
    begin: Point = back.neck + direction * size.width
    if remaining < LEAST_FOR_DART:
        begin = back.shoulder + direction * -(shoulder + EASED)
        open_line = closed = Path((Line(begin, back.shoulder),))
        darts: tuple[Dart, ...] = ()
        outward = direction
    else:
        planned = _replanned(back.dart, begin, back.shoulder, moved=size.width > 2)
        toward = (planned.closing.point(back.shoulder) - begin).unit
        closed = polyline(begin, begin + toward * shoulder)
        open_line, darts = reopen(closed, (planned,), "shoulder")
        outward = open_line.end_tangent
    end = open_line.end
    armhole = _redrawn(squared(back.armhole.path, waist.side), end, outward)
    nape = Point(block.levels.nape.x, block.levels.nape.y - BACK_LOWERED * max(0.0, size.width - 1.0))
    neckline = back_neck(shape, nape, begin, open_line.start_tangent)
    walked = tuple(Dart("shoulder", d.second, d.first, d.point, d.drill, toward_first=False) for d in darts)
    return WholeBack(
        centre=Path((Line(nape, waist.waist.start),)), waist=waist.waist, side=waist.side.reversed(), armhole=armhole.reversed(),
        shoulder=open_line.reversed(), neckline=neckline.reversed(), closed=closed, darts=(*walked, *waist.darts),
    )


def _replanned(dart: PlannedDart, begin: Point, end: Point, *, moved: bool) -> PlannedDart:
    """The shoulder dart, in the middle of what a wide neckline leaves of the shoulder."""
    if not moved:
        return dart
    along = (end - begin).unit
    half, deep = dart.near.distance(dart.far) / 2, dart.near.toward(dart.far, 0.5).distance(dart.point)
    middle = begin.toward(end, 0.5)
    down: Vector = along.right if along.right.y < 0 else along.left
    return PlannedDart(middle + along * -half, middle + along * half, middle + down * deep)


def _redrawn(armhole: Path, end: Point, outward: Vector) -> Path:
    """The armhole from a moved shoulder end, square to the shoulder there."""
    first, *rest = armhole.segments
    above = upper(end + outward * -5.0, end, first.end)
    return Path((above, *rest)).transformed(IDENTITY)
