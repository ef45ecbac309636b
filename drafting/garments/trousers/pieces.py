"""Trousers, the pieces: fronts, backs and a waistband, with their notches and seams."""

from __future__ import annotations

from drafting.craft.piecework import lengthen_lines, level_lines, turned_over
from drafting.craft.rules import CROTCH_NOTCH, NOTCH_FROM_CORNER
from drafting.craft.waistband import straight_waistband, waistband_seams
from drafting.garments.trousers.frame import Frame
from drafting.garments.trousers.spec import Trousers
from drafting.garments.trousers.trueing import Trued
from drafting.geometry import Path, Point, join
from drafting.pattern import Cut, Ease, Edge, Notch, Piece, Role, Seam, SeamPart

PAIR = (Cut("main", 2, mirrored=True),)


def front_piece(drawn: Trued, level: Frame, opening: float) -> Piece:
    """The front: the centre seam is divided at the end of the opening."""
    slit, crotch = drawn.crotch.split(opening)
    edges = (
        Edge("waist", drawn.waist, kind="waist"),
        Edge("side", drawn.side, kind="side"),
        Edge("hem", drawn.hem, Role.HEM, "hem"),
        Edge("inseam", drawn.inseam.reversed(), kind="inseam"),
        Edge("front_crotch", crotch.reversed(), kind="crotch"),
        Edge("opening", slit.reversed(), Role.OPENING, "opening"),
    )
    notches = (*_crotch_notch("front_crotch", crotch.length(), 1), Notch("opening", 0.0, 1, "opening-end"))
    return _panel("front", "Trouser front", drawn, level, edges, notches)


def back_piece(drawn: Trued, level: Frame) -> Piece:
    """The back, turned over so that it lies right side up as the wearer's right."""
    edges = (
        Edge("waist", drawn.waist, kind="waist"),
        Edge("side", drawn.side, kind="side"),
        Edge("hem", drawn.hem, Role.HEM, "hem"),
        Edge("inseam", drawn.inseam.reversed(), kind="inseam"),
        Edge("back_crotch", drawn.crotch.reversed(), kind="crotch"),
    )
    notches = _crotch_notch("back_crotch", drawn.crotch.length(), 2)
    return turned_over(_panel("back", "Trouser back", drawn, level, edges, notches))


def _panel(
    name: str, title: str, drawn: Trued, level: Frame, edges: tuple[Edge, ...], others: tuple[Notch, ...]
) -> Piece:
    outline = join(e.path for e in edges)
    side, centre = drawn.waist.end, drawn.waist.start
    heights = (("hip", level.hip.y), ("crotch", level.crotch.y), ("knee", level.knee.y))
    levels = (("waist", side, centre), *level_lines(outline, heights), ("hem", drawn.hem.start, drawn.hem.end))
    return Piece(
        name=name,
        title=title,
        cut=PAIR,
        edges=edges,
        darts=drawn.darts,
        notches=(*_side_notches(drawn), *_inseam_notches(drawn), *others),
        grain=(Point(0, level.hem.y + 12), Point(0, level.crotch.y - 4)),
        levels=levels,
        lengthen=lengthen_lines(outline, tuple(_halfway(level))),
    )


def _halfway(level: Frame) -> tuple[float, ...]:
    """Between waist and hip, crotch and knee, knee and hem."""
    pairs = ((level.waist, level.hip), (level.crotch, level.knee), (level.knee, level.hem))
    return tuple((a.y + b.y) / 2 for a, b in pairs)


def _side_notches(drawn: Trued) -> tuple[Notch, ...]:
    """Single at the hip, double at the knee; both walked from the hem, where the seams agree."""
    whole, shank = drawn.side.length(), drawn.side.segments[-1].length()
    hip = whole - _hip_over_hem(drawn)
    return (Notch("side", hip, 1, "side-hip"), Notch("side", whole - shank, 2, "side-knee"))


def _hip_over_hem(drawn: Trued) -> float:
    """Distance along the side from the hem to the hip notch, the same for front and back.

    Walked along the curves the two hip lines lie some millimetres apart, so the notch goes by the
    straight leg and the height above it.
    """
    return drawn.panel.leg.hem_side.distance(drawn.panel.leg.knee_side) + (
        drawn.panel.hip_side.y - drawn.panel.leg.knee_side.y
    )


def _inseam_notches(drawn: Trued) -> tuple[Notch, ...]:
    shank, thigh = (s.length() for s in reversed(drawn.inseam.segments))
    return (Notch("inseam", shank, 2, "inseam-knee"), Notch("inseam", shank + thigh / 2, 1, "inseam-thigh"))


def _crotch_notch(edge: str, length: float, count: int) -> tuple[Notch, ...]:
    """Near the crotch point where there is room, walked from it."""
    if length < CROTCH_NOTCH + NOTCH_FROM_CORNER:
        return ()
    return (Notch(edge, CROTCH_NOTCH, count, edge.replace("_", "-")),)


def waistband(band: float, front: Piece, back: Piece, cut: Trousers) -> Piece:
    """The straight band, notched where the side seams and the centre back meet it."""
    quarter = (front.sewn_length("waist"), back.sewn_length("waist"))
    share = band / (2 * sum(quarter))
    side, centre = quarter[0] * share, band / 2
    joints = (("left-side", side), ("centre-back", centre), ("right-side", band - side))
    return straight_waistband(band, cut.band_depth, cut.underlap, joints)


def seams(fullness: float) -> tuple[Seam, ...]:
    """All seams, in the order in which they are sewn."""
    return (
        Seam("side", (SeamPart("front", "side"),), (SeamPart("back", "side", reversed=True),)),
        Seam("inseam", (SeamPart("front", "inseam"),), (SeamPart("back", "inseam", reversed=True),)),
        _centre("front_crotch", "front"),
        _centre("back_crotch", "back"),
        *waistband_seams(),
        Seam("waist", _top(), (SeamPart("waistband", "waist"),), Ease("ease", fullness, fullness, fullness)),
    )


def _centre(edge: str, piece: str) -> Seam:
    return Seam(edge, (SeamPart(piece, edge, "right"),), (SeamPart(piece, edge, "left"),))


def _top() -> tuple[SeamPart, ...]:
    """The trouser top from the left centre front round the back to the right one."""
    return (
        SeamPart("front", "waist", "left"),
        SeamPart("back", "waist", "left"),
        SeamPart("back", "waist", "right", reversed=True),
        SeamPart("front", "waist", "right", reversed=True),
    )


def straight_centre(drawn: Trued) -> float:
    """Length in cm of the straight line from the waist to where the crotch curve begins."""
    return Path(drawn.crotch.segments[:1]).length()
