"""Skirts, the lining: traced from the skirt, shorter, its darts laid as pleats.

Source: 2 to 3 cm shorter than the finished skirt, darts laid as pleats away from the skirt's, a
slit 5 to 10 cm longer than the vent: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.craft.around import Round
from drafting.craft.trueing import square_to_ends
from drafting.craft.uprights import on_fold, plain_seam
from drafting.craft.vent import Foot, centre_seam
from drafting.garments.skirts.pieces import panel_piece
from drafting.garments.skirts.trueing import LEVEL, Lines
from drafting.geometry import Line, Path, Point, polyline
from drafting.pattern import Dart, Piece, Pleat

SHORTER = 2.5
SLIT_OVER_VENT = 6.0
PLEAT = 4.0
"""A pleat is creased for 4 cm from the waist, or half of its dart. House method."""


@dataclass(frozen=True, slots=True)
class Lining:
    """A skirt's lining: its pieces from the centre back to the centre front, and its round."""

    pieces: tuple[Piece, ...]
    layer: Round


def lining(back: Lines, front: Lines, slits: tuple[float, float], foot: Foot | None) -> Lining:
    """Cut a lining.

    Args:
        back: The skirt's back from where the lining hangs.
        front: The skirt's front from there.
        slits: Length in cm of the zip's opening below that, at the centre back and at the side.
        foot: The vent or slit of the skirt.
    """
    one, two = shortened(back), shortened(front)
    at_back, at_side = slits
    slit = None if foot is None else Foot("slit", foot.length + SLIT_OVER_VENT - SHORTER)
    seamed = at_back > 0 or foot is not None
    centre = centre_seam("centre_back", one.centre, at_back, slit, one.away) if seamed else on_fold("centre_back", one.centre)
    sides = tuple(plain_seam("side", p.side, at_side, kind="side", hip=p.below_hip) for p in (one, two))
    pieces = (
        _as_lining(panel_piece("Back lining", one, centre, sides[0], cloth="lining")),
        _as_lining(panel_piece("Front lining", two, on_fold("centre_front", two.centre), sides[1], cloth="lining")),
    )
    uprights = (centre.sewn, sides[0].sewn, ())
    return Lining(pieces, Round(tuple(p.name for p in pieces), uprights, "lining"))


def shortened(lines: Lines) -> Lines:
    """A quarter with its hem so much higher, still square to side and centre."""
    side = lines.side.split(lines.side.length() - SHORTER)[0]
    centre = lines.centre.split(lines.centre.length() - SHORTER)[0]
    start, end = side.end, centre.end
    if abs(start.y - end.y) < LEVEL:
        hem = Path((Line(start, end),))
    else:
        hand = 1.0 if start.x < end.x else -1.0
        hem = Path((square_to_ends(start, side.end_tangent * hand, end, -centre.end_tangent * hand),))
    return replace(lines, side=side, centre=centre, hem=hem)


def _as_lining(piece: Piece) -> Piece:
    """The darts laid as pleats, the other way round than the skirt's darts lie."""
    return replace(piece, name=f"{piece.name}_lining", darts=(), pleats=tuple(_pleat(d) for d in piece.darts))


def _pleat(dart: Dart) -> Pleat:
    long = min(PLEAT, dart.length / 2)

    def crease(leg: Point) -> Path:
        return polyline(leg, leg + (dart.point - leg).unit * long)

    return Pleat(dart.edge, crease(dart.first), crease(dart.second), toward_first=not dart.toward_first)
