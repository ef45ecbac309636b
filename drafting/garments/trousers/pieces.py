"""Trousers, the panels: fronts and backs with their notches and level lines."""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.craft.around import ZIP
from drafting.craft.piecework import lengthen_lines, level_lines, plumb_grain, turned_over
from drafting.craft.pleats import pleat_of
from drafting.craft.rules import CROTCH_NOTCH, NOTCH_FROM_CORNER
from drafting.craft.turn_up import turn_up
from drafting.craft.yoke import cut_yoke
from drafting.garments.trousers.frame import LEAST_SHANK, Frame
from drafting.garments.trousers.openings import Opening
from drafting.garments.trousers.pockets import BackPocket, FrontPocket, Stretch, divided
from drafting.garments.trousers.reshaping import pleat_widths, yoke_depths
from drafting.garments.trousers.spec import Trousers
from drafting.garments.trousers.trueing import Trued
from drafting.geometry import Line, Path, Point, join
from drafting.pattern import Cut, Edge, Mark, Notch, Piece, Role

PAIR = (Cut("main", 2, mirrored=True),)


@dataclass(frozen=True, slots=True)
class Foot:
    """The edges at the foot of a leg, from the side to the inseam, and the folds marked there."""

    edges: tuple[Edge, ...]
    marks: tuple[Mark, ...] = ()


def foot(drawn: Trued, turned_up: float) -> Foot:
    """A plain hem, or a turn-up of a depth in cm."""
    if not turned_up:
        return Foot((Edge("hem", drawn.hem, Role.HEM, "hem"),))
    made = turn_up(drawn.side, drawn.hem, drawn.inseam, turned_up)
    edges = (
        Edge("side_turn_up", made.side, kind="side"),
        Edge("hem", made.hem, Role.HEM, "hem"),
        Edge("inseam_turn_up", made.inseam.reversed(), kind="inseam"),
    )
    return Foot(edges, made.marks)


def front_piece(drawn: Trued, level: Frame, pocket: FrontPocket, opening: Opening, below: Foot, cut: Trousers) -> Piece:
    """The front, as pocket and opening divide its edges, its pleats laid."""
    edges = (
        Edge("waist", pocket.waist, kind="waist"),
        *pocket.mouth,
        *divided(pocket.side, (*opening.stretches, *pocket.stretches)),
        *below.edges,
        Edge("inseam", drawn.inseam.reversed(), kind="inseam"),
        *opening.centre,
    )
    notches = (*_crotch_notch("front_crotch", opening.centre[0].path.length(), 1), *opening.notches, *pocket.notches)
    piece = _panel("front", "Trouser front", drawn, level, edges, notches, (*opening.marks, *below.marks), hip_notch=hip_is_clear(drawn, edges))
    return _pleated(piece, cut) if pleat_widths(cut) else piece


CREASED = 8.0
"""A pleat is creased, or stitched, for 6 to 10 cm. Source: common practice, no source."""


def _pleated(front: Piece, cut: Trousers) -> Piece:
    """What was planned as darts, laid in pleats."""
    forward = cut.pleat_direction == "forward"
    return replace(front, darts=(), pleats=tuple(pleat_of(d, CREASED, toward_first=forward) for d in front.darts))


def yoked(back: Trued, cut: Trousers) -> tuple[Trued, tuple[Piece, ...]]:
    """The back below a yoke, and the yoke with the darts closed in it; the back as it is without one."""
    if cut.back != "yoke":
        return back, ()
    made = cut_yoke(back.closed_top(), back.side, back.crotch, back.panel.darts, yoke_depths(back.panel))
    edges = (
        Edge("waist", made.top, kind="waist"),
        Edge("side", made.yoke_side, kind="side"),
        Edge("foot", made.foot.reversed(), kind="seam"),
        Edge("centre", made.yoke_centre.reversed(), kind="crotch"),
    )
    grain = plumb_grain(join(e.path for e in edges))
    piece = Piece(name="back_yoke", title="Back yoke", cut=PAIR, edges=edges, grain=grain)
    return replace(back, waist=made.seam, side=made.side, crotch=made.centre, darts=()), (turned_over(piece),)


def below_yoke(stretches: tuple[Stretch, ...], yoke: tuple[Piece, ...]) -> tuple[Stretch, ...]:
    """How the back's side is divided, where a yoke has taken the top of its first stretch."""
    if not (stretches and yoke):
        return stretches
    (name, kind, length), *rest = stretches
    return (name, kind, length - yoke[0].sewn_length("side")), *rest


def back_piece(drawn: Trued, level: Frame, stretches: tuple[Stretch, ...], opening: Opening, pocket: FrontPocket, behind: BackPocket, below: Foot, *, top: str, hip_notch: bool) -> Piece:
    """The back, turned over so that it lies right side up as the wearer's right."""
    edges = (
        Edge(top, drawn.waist, kind="waist" if top == "waist" else "seam"),
        *divided(drawn.side, stretches),
        *below.edges,
        Edge("inseam", drawn.inseam.reversed(), kind="inseam"),
        Edge("back_crotch", drawn.crotch.reversed(), kind="crotch"),
    )
    zipped = tuple(n for n in opening.notches if n.edge == ZIP)
    notches = (*_crotch_notch("back_crotch", drawn.crotch.length(), 2), *zipped, *pocket.notches)
    return turned_over(_panel("back", "Trouser back", drawn, level, edges, notches, (*behind.marks, *below.marks), hip_notch=hip_notch))


def _panel(
    name: str, title: str, drawn: Trued, level: Frame, edges: tuple[Edge, ...], others: tuple[Notch, ...], marks: tuple[Mark, ...], *, hip_notch: bool
) -> Piece:
    outline = join(e.path for e in edges)
    top, side = edges[0].path, _named(edges, "side")
    natural = (("natural_waist", level.natural.y),) if level.natural and min(top.start.y, top.end.y) > level.natural.y + 0.5 else ()
    heights = (*natural, ("hip", level.hip.y), ("crotch", level.crotch.y), ("knee", level.knee.y))
    return Piece(
        name=name,
        title=title,
        cut=PAIR,
        edges=edges,
        darts=drawn.darts,
        notches=(*_side_notches(drawn, side)[0 if hip_notch else 1 :], *_inseam_notches(drawn), *others),
        grain=_grain(outline, drawn, level),
        levels=((edges[0].name, top.end, top.start), *level_lines(outline, heights), *_hem_level(outline, drawn)),
        lengthen=lengthen_lines(outline, _halfway(level)),
        marks=marks,
    )


def _named(edges: tuple[Edge, ...], name: str) -> Path:
    return next(e.path for e in edges if e.name == name)


def _hem_level(outline: Path, drawn: Trued) -> tuple[tuple[str, Point, Point], ...]:
    """From corner to corner of the hem; of a shaped one, just where the leg is whole."""
    if drawn.panel.dip:
        return level_lines(outline, (("hem", drawn.hem.bounds()[3] + 0.02),))
    return (("hem", drawn.hem.start, drawn.hem.end),)


def _grain(outline: Path, drawn: Trued, level: Frame) -> tuple[Point, Point]:
    """The crease, from the shin to the thigh; on a short leg plumb through the panel's fullest height."""
    if drawn.panel.leg.short:
        return plumb_grain(outline)
    return Point(0, level.hem.y + 12), Point(0, level.crotch.y - 4)


def _halfway(level: Frame) -> tuple[float, ...]:
    """Between the panels' top and the hip, crotch and knee, knee and hem; on a leg without a knee, crotch and hem."""
    legs = ((level.crotch.y, level.knee.y), (level.knee.y, level.hem.y)) if level.hem.y < level.knee.y - LEAST_SHANK else ((level.crotch.y, level.hem.y),)
    return tuple((a + b) / 2 for a, b in ((level.whole, level.hip.y), *legs) if a - b > LEAST_APART)


LEAST_APART = 2.5
"""A line to lengthen along lies between levels that are more than 2.5 cm apart. House method."""


def whole_below(level: Frame, front: Trued, back: Trued) -> Frame:
    """The frame with the height under which both panels are whole: the waist's, or of a top that ends lower."""
    lowest = min(p.y for panel in (front, back) for p in (panel.waist.start, panel.waist.end))
    waist = (level.natural or level.waist).y
    return replace(level, whole=lowest if lowest < waist - LOWER_TOP else waist)


LOWER_TOP = 1.0
"""A top that ends 1 cm lower than the waist line is cut off there, for a band or a yoke. House method."""


def _side_notches(drawn: Trued, side: Path) -> tuple[Notch, ...]:
    """Single at the hip, double at the knee; both walked from the hem, where the seams agree.

    Walked along the curves the two hip lines lie some millimetres apart, so the notch goes by the
    straight leg and the height above it.
    """
    whole, below, shank = side.length(), drawn.panel.leg, _shank(drawn.side)
    hip = Notch("side", whole - shank - (drawn.panel.hip_side.y - below.side[0].y), 1, "side-hip")
    return (hip,) if below.short else (hip, Notch("side", whole - shank, 2, "side-knee"))


def _shank(seam: Path) -> float:
    """Length in cm of a long seam's straight foot."""
    return seam.segments[-1].length() if isinstance(seam.segments[-1], Line) else 0.0


def hip_is_clear(drawn: Trued, edges: tuple[Edge, ...]) -> bool:
    """Whether the hip notch stands clear of what opens on the front; else no panel has one."""
    side = _named(edges, "side")
    return NOTCH_FROM_CORNER < _side_notches(drawn, side)[0].at < side.length()


def _inseam_notches(drawn: Trued) -> tuple[Notch, ...]:
    """Double at the knee, single half way up the thigh, where there is room."""
    shank = _shank(drawn.inseam)
    thigh = drawn.inseam.length() - shank
    knee = () if drawn.panel.leg.short else (Notch("inseam", shank, 2, "inseam-knee"),)
    middle = Notch("inseam", shank + thigh / 2, 1, "inseam-thigh")
    return (*knee, *((middle,) if thigh / 2 > 2 * NOTCH_FROM_CORNER else ()))


def _crotch_notch(edge: str, length: float, count: int) -> tuple[Notch, ...]:
    """Near the crotch point where there is room, walked from it."""
    if length < CROTCH_NOTCH + NOTCH_FROM_CORNER:
        return ()
    return (Notch(edge, CROTCH_NOTCH, count, edge.replace("_", "-")),)
