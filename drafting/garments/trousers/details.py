"""Trousers, the details: waistband, fly, pockets, loops, each taken from the draft."""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.craft.contour import Contour, Top, cut_contours, upright
from drafting.craft.fly import over_under
from drafting.craft.loops import belt_loop, loop_count, loop_places
from drafting.craft.sheet import DraftSheet
from drafting.craft.slant_pocket import SlantPocket, slant_pocket
from drafting.craft.waistband import (
    band_underlap,
    contoured_quarter,
    straight_band_ends,
    straight_waistband,
)
from drafting.craft.welt_pocket import BAG_WIDTH, WeltPocket, welt_pocket
from drafting.garments.trousers.fits import underlap
from drafting.garments.trousers.manners import MANNERS
from drafting.garments.trousers.spec import Trousers
from drafting.garments.trousers.trueing import Trued
from drafting.geometry import Path, Point, Vector, turn
from drafting.pattern import Piece, Role, Seam, SeamPart


def contoured(front: Trued, back: Trued, depth: float) -> tuple[Trued, Trued, tuple[Contour, Contour]]:
    """The panels without their tops, and the bands that were cut off."""
    one, two = (Top(p.closed, p.side, p.crotch, p.panel.darts) for p in (front, back))
    bands = cut_contours(one, two, depth)
    front_below, back_below = (
        replace(panel, waist=band.waist, side=band.side, crotch=band.centre, darts=band.darts)
        for panel, band in zip((front, back), bands, strict=True)
    )
    return front_below, back_below, bands


def front_pocket(drawn: Trued, cut: Trousers, sheet: DraftSheet) -> SlantPocket | None:
    """The slant pocket, beside the front dart nearest to the side."""
    if cut.front_pocket == "none":
        return None
    clear_of = min((d.second.x for d in drawn.darts), default=None)
    return slant_pocket(drawn.waist, drawn.side, cut.pocket_mouth, cut.pocket_inset, clear_of, sheet, "slant", MANNERS[cut.method].pocket)


def back_pocket(drawn: Trued, cut: Trousers) -> WeltPocket | None:
    """The welt pocket under the middle of the back waist, between or on the darts."""
    if cut.back_pocket == "none":
        return None
    sewn = drawn.waist.length() - sum(d.intake for d in drawn.darts)
    half = min(BAG_WIDTH, sewn - 1.0) / 2
    closed = drawn.closed_top()
    over = closed.between(sewn / 2 - half, sewn / 2 + half)
    chord = over.end - over.start
    level = turn(180.0 - chord.angle, over.start)
    along = drawn.waist.end - drawn.waist.start
    return welt_pocket(over.transformed(level), _open_middle(drawn, sewn / 2), Vector(along.x, along.y))


def _open_middle(drawn: Trued, closed_at: float) -> Point:
    """Where a distance along the closed waist lies on the open one; in the middle of a mouth."""
    at = closed_at
    for dart in drawn.darts:
        first = _along(drawn.waist, dart.first)
        if first < at - 0.01:
            at += dart.intake
        elif first < at + 0.01:
            return dart.first.toward(dart.second, 0.5)
    return drawn.waist.at(at)


def _along(path: Path, point: Point) -> float:
    """Distance along a path to one of its joints."""
    total = 0.0
    for segment in path.segments:
        if segment.start.distance(point) < 1e-6:
            return total
        total += segment.length()
    return total


@dataclass(frozen=True, slots=True)
class Band:
    """A waistband: its pieces, the seams before and the seam to the trouser top, and who sews what.

    Attributes:
        pieces: The pieces.
        making: The seams that make the band.
        lower: The side of the waist seam that the band is.
        underlap: The part that the fly shield's top is sewn to.
    """

    pieces: tuple[Piece, ...]
    making: tuple[Seam, ...]
    lower: tuple[SeamPart, ...]
    underlap: SeamPart


def straight_band(length: float, front: Piece, back: Piece, extra: float, cut: Trousers, body: Body) -> Band:
    """The straight band, notched where the seams meet it, marked where the loops go.

    Args:
        length: From centre front to centre front, cm.
        front: The front.
        back: The back.
        extra: Length in cm of the waist that the pocket's side piece adds to the front's.
        cut: The options.
        body: For the number of loops.
    """
    quarter = (front.sewn_length("waist") + extra, back.sewn_length("waist"))
    share = length / (2 * sum(quarter))
    side, crease = quarter[0] * share, _to_crease(front) * share
    joints = (("band-side", side), ("band-centre-back", length / 2), ("band-side-far", length - side))
    loops = loop_places(length, crease, side, side + quarter[1] * share / 2, loop_count(float(body.waist_girth))) if cut.belt_loops else ()
    piece = straight_waistband(length, cut.band_depth, underlap(cut), joints, loops, underlap_right=cut.lap == "left_over_right")
    against = cut.lap == "left_over_right"
    return Band((piece,), straight_band_ends(), (SeamPart("waistband", "waist", reversed=against),), SeamPart("waistband", "underlap", reversed=not against))


def _to_crease(front: Piece) -> float:
    """Sewn distance along the front waist from the centre to the crease."""
    darts = front.darts_on("waist")
    waist = front.edge("waist").path
    return _along(waist, darts[0].first) if darts else waist.length() / 2


def contoured_band(front: Contour, back: Contour, cut: Trousers) -> Band:
    """The contoured band: quarters and their facings, the back on the fold, and an underlap."""
    outside = (
        contoured_quarter("waistband_front", "Waistband front", *upright(front), on_fold=False),
        contoured_quarter("waistband_back", "Waistband back", *upright(back), on_fold=True),
    )
    inside = tuple(_as_facing(piece) for piece in outside)
    pieces = (*outside, *inside, band_underlap(cut.band_depth, underlap(cut)))
    lower = (SeamPart("waistband_front", "waist", "both", 2, reversed=True), SeamPart("waistband_back", "waist", "both", 2, reversed=True))
    return Band(pieces, _contoured_seams(cut), lower, SeamPart("band_underlap", "foot", reversed=True))


def _as_facing(piece: Piece) -> Piece:
    """The inside of a band quarter: alike, its lower edge turned under."""
    edges = tuple(replace(e, role=Role.HEM) if e.name == "waist" else e for e in piece.edges)
    cut = tuple(c for c in piece.cut if c.cloth == "main")
    return replace(piece, name=f"{piece.name}_facing", title=f"{piece.title} facing", edges=edges, cut=cut)


def _contoured_seams(cut: Trousers) -> tuple[Seam, ...]:
    over, under = over_under(cut.lap)
    top = ("waistband_front", "waistband_back")
    return (
        Seam("waistband_side", (SeamPart("waistband_front", "side"),), (SeamPart("waistband_back", "side"),)),
        Seam("waistband_facing_side", (SeamPart("waistband_front_facing", "side"),), (SeamPart("waistband_back_facing", "side"),)),
        Seam("waistband_underlap_join", (SeamPart("waistband_front", "centre", under),), (SeamPart("band_underlap", "join"),)),
        Seam("waistband_underlap_join_inside", (SeamPart("waistband_front_facing", "centre", under),), (SeamPart("band_underlap", "join_inside", reversed=True),)),
        Seam("waistband_underlap_end", (SeamPart("band_underlap", "end"),), (SeamPart("band_underlap", "end_inside", reversed=True),)),
        Seam("waistband_overlap_end", (SeamPart("waistband_front", "centre", over),), (SeamPart("waistband_front_facing", "centre", over),)),
        Seam("waistband_top", tuple(SeamPart(p, "top", "both", 2) for p in top), tuple(SeamPart(f"{p}_facing", "top", "both", 2) for p in top)),
    )


def loops(cut: Trousers, body: Body) -> tuple[Piece, ...]:
    """The belt loop, if loops are wanted."""
    return (belt_loop(cut.band_depth, loop_count(float(body.waist_girth))),) if cut.belt_loops else ()

