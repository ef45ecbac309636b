"""Trousers, the panels: fronts and backs with their notches and level lines."""

from __future__ import annotations

from dataclasses import replace

from drafting.craft.piecework import lengthen_lines, level_lines, plumb_grain, turned_over
from drafting.craft.rules import CROTCH_NOTCH, NOTCH_FROM_CORNER
from drafting.craft.slant_pocket import SlantPocket
from drafting.garments.trousers.frame import Frame
from drafting.garments.trousers.trueing import Trued
from drafting.geometry import Line, Path, Point, join
from drafting.pattern import Cut, Edge, Mark, Notch, Piece, Role

PAIR = (Cut("main", 2, mirrored=True),)


def front_piece(drawn: Trued, level: Frame, fly: float, pocket: SlantPocket | None, marks: tuple[Mark, ...]) -> Piece:
    """The front: the centre seam is divided at the fly's end, the corner cut away for a pocket."""
    slit, crotch = drawn.crotch.split(fly)
    waist, mouth, side = (drawn.waist, (), drawn.side) if pocket is None else (pocket.waist, (Edge("pocket_mouth", pocket.mouth, kind="pocket"),), pocket.side)
    edges = (
        Edge("waist", waist, kind="waist"),
        *mouth,
        Edge("side", side, kind="side"),
        Edge("hem", drawn.hem, Role.HEM, "hem"),
        Edge("inseam", drawn.inseam.reversed(), kind="inseam"),
        Edge("front_crotch", crotch.reversed(), kind="crotch"),
        Edge("fly", slit.reversed(), kind="opening"),
    )
    notches = (*_crotch_notch("front_crotch", crotch.length(), 1), Notch("fly", 0.0, 1, "fly-end"))
    hip_notch = hip_is_clear(drawn, pocket)
    return replace(_panel("front", "Trouser front", drawn, level, edges, notches, hip_notch=hip_notch), marks=marks)


def back_piece(drawn: Trued, level: Frame, marks: tuple[Mark, ...], *, hip_notch: bool) -> Piece:
    """The back, turned over so that it lies right side up as the wearer's right."""
    edges = (
        Edge("waist", drawn.waist, kind="waist"),
        Edge("side", drawn.side, kind="side"),
        Edge("hem", drawn.hem, Role.HEM, "hem"),
        Edge("inseam", drawn.inseam.reversed(), kind="inseam"),
        Edge("back_crotch", drawn.crotch.reversed(), kind="crotch"),
    )
    notches = _crotch_notch("back_crotch", drawn.crotch.length(), 2)
    return turned_over(replace(_panel("back", "Trouser back", drawn, level, edges, notches, hip_notch=hip_notch), marks=marks))


def _panel(
    name: str, title: str, drawn: Trued, level: Frame, edges: tuple[Edge, ...], others: tuple[Notch, ...], *, hip_notch: bool
) -> Piece:
    outline = join(e.path for e in edges)
    top, side = edges[0].path, next(e.path for e in edges if e.name == "side")
    heights = (("hip", level.hip.y), ("crotch", level.crotch.y), ("knee", level.knee.y))
    return Piece(
        name=name,
        title=title,
        cut=PAIR,
        edges=edges,
        darts=drawn.darts,
        notches=(*_side_notches(drawn, side)[0 if hip_notch else 1 :], *_inseam_notches(drawn), *others),
        grain=_grain(outline, drawn, level),
        levels=(("waist", top.end, top.start), *level_lines(outline, heights), *_hem_level(outline, drawn)),
        lengthen=lengthen_lines(outline, _halfway(level)),
    )


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
    """Between waist and hip, crotch and knee, knee and hem."""
    pairs = ((level.waist, level.hip), (level.crotch, level.knee), (level.knee, level.hem))
    return tuple((a.y + b.y) / 2 for a, b in pairs)


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


def hip_is_clear(drawn: Trued, pocket: SlantPocket | None) -> bool:
    """Whether the hip notch stands clear of the pocket's end on the front; else no panel has one."""
    side = drawn.side if pocket is None else pocket.side
    return _side_notches(drawn, side)[0].at > NOTCH_FROM_CORNER


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
