"""An elastic casing: a ring of the cloth as wide as the hips, an elastic as short as the waist.

Source: the top passes the hips with 2 to 4 cm to spare, no darts, the casing 0.3 to 0.5 cm wider
than the elastic, the elastic 5 to 10 % shorter than the waist: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from drafting.geometry import Point, polyline
from drafting.pattern import Cut, Edge, Mark, Notch, Notion, Piece, Role, Seam, SeamPart

OVER_HIP = 2.0
"""The casing is 2 cm wider than the hip that must pass it."""

ELASTIC_SHARE = 0.93
ROOM = 0.4
"""The casing's depth over the elastic's width, in cm."""


@dataclass(frozen=True, slots=True)
class Casing:
    """An elastic casing: its piece, the seam that closes the ring, and the elastic to buy."""

    piece: Piece
    closing: Seam
    elastic: Notion


def casing(
    length: float, depth: float, waist: float, joints: tuple[tuple[str, float], ...]
) -> Casing:
    """Cut a casing, closed to a ring at the centre back, folded along its top.

    It stands upright: the lengthwise grain runs along it; its right half is the outside.

    Args:
        length: Length of the ring in cm.
        depth: Finished depth in cm.
        waist: Girth that the elastic holds, cm.
        joints: Name and distance in cm from the centre back of the garment's seams.
    """
    whole = 2 * depth
    corners = (
        Point(whole, 0), Point(whole, length), Point(0, length), Point(0, 0), Point(whole, 0),
    )  # fmt: skip
    names = (
        ("waist", Role.SEAM, "waist"), ("end", Role.SEAM, "band"),
        ("waist_inside", Role.HEM, "waist"), ("other_end", Role.SEAM, "band"),
    )  # fmt: skip
    piece = Piece(
        name="waistband",
        title="Elastic casing",
        cut=(Cut("main", 1),),
        edges=tuple(
            Edge(name, polyline(a, b), role, kind)
            for (name, role, kind), (a, b) in zip(names, pairwise(corners), strict=True)
        ),
        notches=tuple(Notch("waist", at, 1, match) for match, at in joints),
        grain=(Point(whole / 4, length * 0.3), Point(whole / 4, length * 0.7)),
        marks=(Mark("fold", polyline(Point(depth, 0), Point(depth, length))),),
    )
    closing = Seam(
        "waistband_ring",
        (SeamPart("waistband", "end"),),
        (SeamPart("waistband", "other_end", reversed=True),),
    )
    elastic = Notion(f"elastic, {depth - ROOM:.1f} cm wide", 1, waist * ELASTIC_SHARE)
    return Casing(piece, closing, elastic)
