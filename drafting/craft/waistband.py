"""Waistbands."""

from __future__ import annotations

from itertools import pairwise

from drafting.geometry import Point, polyline
from drafting.pattern import Cut, Edge, Mark, Notch, Piece, Role, Seam, SeamPart


def straight_waistband(
    length: float, depth: float, underlap: float, joints: tuple[tuple[str, float], ...]
) -> Piece:
    """A straight waistband cut in one with its inside, folded along the top.

    It stands upright: the lengthwise grain runs along the band. The right half is the outside, its
    right edge is sewn to the garment; the underlap is at the bottom, the wearer's left front.

    Args:
        length: Finished length in cm without the underlap, from centre front to centre front.
        depth: Finished depth in cm.
        underlap: Length in cm of the underlap.
        joints: Name and distance in cm from the wearer's left centre front of the garment's seams.

    Source: common practice, no source.
    """
    whole, top = 2 * depth, underlap + length
    corners = (
        Point(whole, 0), Point(whole, underlap), Point(whole, top), Point(depth, top),
        Point(0, top), Point(0, underlap), Point(0, 0), Point(depth, 0), Point(whole, 0),
    )  # fmt: skip
    names = (
        "underlap", "waist", "right_end", "right_end_inside",
        "inside_waist", "underlap_inside", "left_end_inside", "left_end",
    )  # fmt: skip
    edges = tuple(_edge(name, a, b) for name, (a, b) in zip(names, pairwise(corners), strict=True))
    return Piece(
        name="waistband",
        title="Waistband",
        cut=(Cut("main", 1), Cut("fusible", 1)),
        edges=edges,
        notches=tuple(Notch("waist", at, 1, match) for match, at in joints),
        grain=(Point(whole / 4, top * 0.3), Point(whole / 4, top * 0.7)),
        marks=(Mark("fold", polyline(Point(depth, 0), Point(depth, top))),),
    )


def _edge(name: str, start: Point, end: Point) -> Edge:
    role = Role.HEM if name == "inside_waist" else Role.SEAM
    kind = "band" if "end" in name else "waist"
    return Edge(name, polyline(start, end), role, kind)


def waistband_seams() -> tuple[Seam, ...]:
    """The seams that close a straight waistband's ends and underlap, folded right sides together."""
    return tuple(
        Seam(
            f"waistband_{edge}",
            (SeamPart("waistband", edge),),
            (SeamPart("waistband", f"{edge}_inside", reversed=True),),
        )
        for edge in ("right_end", "left_end", "underlap")
    )
