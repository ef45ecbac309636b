"""A shirt's panels: from drawn lines to pieces with their notches, marks and level lines."""

from __future__ import annotations

from collections.abc import Iterable

from drafting.craft.button_stand import Edging
from drafting.craft.piecework import counter_clockwise, lengthen_lines, level_lines, plumb_grain
from drafting.craft.sleeve_cap import ARMHOLE_EDGES
from drafting.garments.shirt.block import Block
from drafting.garments.shirt.lines import Fronted, Yoked
from drafting.garments.shirt.sides import HIP, Side
from drafting.geometry import IDENTITY, Path, Point, join, polyline
from drafting.pattern import Cut, Edge, Mark, Notch, Piece, Pleat, Role

FRONT_NOTCH, BACK_NOTCH = 8.0, 9.0
"""The armhole's balance marks stand 8 cm from the underarm in front, 9 behind. Source: common
practice, no source."""

PLEAT_LONG = 10.0
"""A pleat's lines are drawn 10 cm down; it hangs open below the yoke."""

FROM_ARMHOLE = 10.5
"""A side pleat lies 10 cm from the armhole, over the blade, where the yoke's seam is still level. Source: common practice, no source."""

UPPER, LOWER = ARMHOLE_EDGES


def armhole_edges(path: Path, notch: float) -> tuple[Edge, Edge]:
    """An armhole from its top down, cut at its balance mark so far from the underarm."""
    above, below = path.transformed(IDENTITY).split(path.length() - notch)
    return Edge(UPPER, above, kind="armhole"), Edge(LOWER, below, kind="armhole")


def back_piece(block: Block, lines: Yoked, side: Side, fold: tuple[Path, Path, Path], pleats: tuple[Pleat, ...], hem_kind: str, *, checks: bool) -> Piece:
    """The back under the yoke, on the fold.

    Args:
        block: The block.
        lines: The back's lines.
        side: Its side and hem.
        fold: Yoke edge, centre and hem beyond the centre back, where a pleat lies, clockwise.
        pleats: The pleats in the yoke's seam.
        hem_kind: Which allowance the hem takes.
        checks: Whether it is marked for cloth with bars.
    """
    top, centre, foot = fold
    upper, lower = armhole_edges(lines.armhole.path, BACK_NOTCH)
    hem = join((side.hem.path.reversed(), foot)) if foot.length() > 0 else side.hem.path.reversed()
    edges = (
        Edge("yoke_seam", join((top, lines.top.path)) if top.length() > 0 else lines.top.path),
        upper, lower, Edge("side", side.upward.reversed(), kind="side"),
        Edge("hem", hem, Role.HEM, hem_kind), Edge("centre_back", centre, Role.FOLD, "raw"),
    )
    return _panel("back", "Shirt back", block, edges, side, checks=checks, pleats=pleats, half=True, underarm=block.back_underarm.y)


OVER_SHOULDER = "armhole_front"
"""The yoke's armhole before the ridge of the shoulder, where its seam lies forward."""


def yoke_pieces(lines: Yoked, block: Block) -> tuple[Piece, Piece]:
    """The yoke and its inside, on the fold; the inside is caught in the yoke's seams."""
    above = (("neck", lines.neck.path, "seam"), ("shoulder", lines.shoulder.path, "seam"))
    below = (("foot", lines.foot.path, "seam"),)
    hole = lines.yoke_armhole.path
    halves = zip((OVER_SHOULDER, UPPER), hole.split(block.forward), strict=True) if block.forward else ((UPPER, hole),)
    centre = Edge("centre_back", polyline(block.yoke, block.nape), Role.FOLD, "raw")
    armhole = tuple((n, p, "armhole") for n, p in halves)

    def piece(name: str, title: str, role: Role) -> Piece:
        clockwise = (*above, *armhole, *below)
        edges = (*(Edge(n, p.transformed(IDENTITY), role, k) for n, p, k in clockwise), centre)
        marks = (Notch(OVER_SHOULDER, block.forward, 1, "armhole-shoulder"),) if block.forward else ()
        low, high = block.yoke.y, block.nape.y
        grain = (Point(6, low + 0.1 * (high - low)), Point(6, low + 0.9 * (high - low)))
        return counter_clockwise(Piece(name=name, title=title, cut=(Cut("main", 1),), edges=edges, notches=marks, grain=grain, half=True))

    return piece("yoke", "Yoke", Role.SEAM), piece("yoke_inside", "Yoke, inside", Role.FINISHED)


def front_piece(block: Block, lines: Fronted, side: Side, edging: Edging, marks: Iterable[Mark], notches: tuple[Notch, ...], *, checks: bool) -> Piece:
    """A front with its edge; with `checks` it is marked for cloth with bars."""
    upper, lower = armhole_edges(lines.armhole.path, FRONT_NOTCH)
    edges = (
        Edge("side", side.upward, kind="side"),
        Edge(LOWER, lower.path.reversed(), kind="armhole"), Edge(UPPER, upper.path.reversed(), kind="armhole"),
        Edge("shoulder", lines.shoulder.path.reversed()), *edging.edges,
    )
    return _panel("front", "Shirt front", block, edges, side, checks=checks, marks=(*edging.fold, *marks), notches=notches, darts=side.darts, underarm=block.front_underarm.y)


def _panel(name: str, title: str, block: Block, edges: tuple[Edge, ...], side: Side, *, underarm: float, checks: bool, **more: object) -> Piece:
    """A panel walked clockwise, with the notches of its side and armhole."""
    outline = join(e.path.transformed(IDENTITY) for e in edges)
    by_name = {e.name: e.path for e in edges}
    below, whole = side.below.path.length(), by_name["side"].length()
    marked = _side_notches(name, below, whole, checks=checks)
    marked += (Notch(UPPER, 0.0 if name == "front" else by_name[UPPER].length(), 1 if name == "front" else 2, f"armhole-{name}"),)
    low = max(side.hem.path.start.y, side.hem.path.end.y)
    levels = (("chest", underarm), ("waist", block.waist.y), *((("hip", y),) if (y := block.waist.y - HIP) > low + 2 else ()))
    extra = dict(more)
    notches = (*marked, *extra.pop("notches", ()))  # type: ignore[misc]
    piece = Piece(
        name=name, title=title, cut=(Cut("main", 1),) if extra.get("half") else (Cut("main", 2, mirrored=True),),
        edges=tuple(Edge(e.name, e.path.transformed(IDENTITY), e.role, e.kind) for e in edges),
        notches=notches, grain=plumb_grain(outline, _grain_at(block, name)),
        levels=level_lines(outline, levels), lengthen=lengthen_lines(outline, ((block.waist.y + low) / 2,)), **extra,  # type: ignore[arg-type]
    )
    return counter_clockwise(piece)


GRAIN_FROM_CENTRE = 14.0
"""The front's grain arrow keeps its distance from the centre front in every size."""


def _grain_at(block: Block, name: str) -> float:
    return block.side.x * 0.5 if name == "back" else block.centre.x - GRAIN_FROM_CENTRE


def _side_notches(name: str, below: float, whole: float, *, checks: bool) -> tuple[Notch, ...]:
    """Marks at the waist, and for checks half way to the hem, told along the side as the panel walks it."""
    heights = (("side-waist", below), *((("side-bar", below / 2),) if checks else ()))
    return tuple(Notch("side", at if name == "front" else whole - at, 1, match) for match, at in heights)


BAR_LONG = 4.0
"""Marks for stripes and checks are 4 cm long."""


def bar(at: Point, aside: float) -> Mark:
    """A level mark from a place on an edge inward: both pieces' bars meet on it."""
    return Mark("match", polyline(at, Point(at.x + aside, at.y)))


def stripe(at: Point) -> Mark:
    """A plumb mark down from a place: both pieces' stripes meet on it."""
    return Mark("match", polyline(at, Point(at.x, at.y - BAR_LONG)))


def centre_fold(block: Block, extra: float) -> tuple[Path, Path, Path]:
    """What lies beyond the centre back, clockwise from the yoke edge: its top, the fold, its hem.

    Args:
        block: The block.
        extra: Width of it in cm; 0 where no pleat is laid.
    """
    high, low = Point(block.yoke.x, block.yoke.y), Point(block.hem.x, block.hem.y)
    up, down = Point(high.x - extra, high.y), Point(low.x - extra, low.y)
    return polyline(up, high), polyline(down, up), polyline(low, down)


def back_pleats(block: Block, kind: str, intake: float) -> tuple[Pleat, ...]:
    """The pleat in half of the back's yoke edge, that edge walked from the centre outward."""
    if kind == "none":
        return ()
    y = block.yoke.y
    if kind == "centre":
        first = block.yoke.x - intake + BOX_HALF
        return (_pleat(first, first + intake, y, toward_first=False),)
    outer = block.yoke_end.x - FROM_ARMHOLE
    return (_pleat(outer - intake, outer, y, toward_first=False),)


BOX_HALF = 2.0
"""A box pleat's face is 4 cm wide. Source: common practice, no source."""


def _pleat(one: float, two: float, y: float, *, toward_first: bool) -> Pleat:
    first, second = (polyline(Point(x, y), Point(x, y - PLEAT_LONG)) for x in (one, two))
    return Pleat("yoke_seam", first, second, toward_first=toward_first)
