"""Tiers: straight strips gathered to what hangs over them.

Source: quarters marked on both edges: common practice, no source.
"""

from __future__ import annotations

from drafting.craft.piecework import plumb_grain
from drafting.geometry import Point, join, polyline
from drafting.pattern import Cut, Ease, Edge, Notch, Piece, Role, Seam, SeamPart


def tier_piece(
    name: str, title: str, width: float, depth: float, copies: int, *, last: bool
) -> Piece:
    """One of the equal panels that make a tier.

    Args:
        name: Name of the piece.
        title: What is written on it.
        width: Width of the panel, cm.
        depth: Depth of the tier, cm.
        copies: How many panels make the tier: 1, 2 or a multiple of 4.
        last: Whether its lower edge is the hem; else another tier is sewn to it.
    """
    corners = (Point(0, 0), Point(width, 0), Point(width, depth), Point(0, depth))
    foot = polyline(corners[0], corners[1])
    edges = (
        Edge("hem", foot, Role.HEM, "hem") if last else Edge("foot", foot),
        Edge("right", polyline(corners[1], corners[2])),
        Edge("top", polyline(corners[2], corners[3])),
        Edge("left", polyline(corners[3], corners[0])),
    )
    quarters = {1: (1 / 4, 1 / 2, 3 / 4), 2: (1 / 2,)}.get(copies, ())
    marked = ("top",) if last else ("top", "foot")
    notches = tuple(
        Notch(edge, width * share, 1, f"{name}-{edge}-quarter")
        for edge in marked
        for share in quarters
    )
    return Piece(
        name=name,
        title=title,
        cut=(Cut("main", copies),),
        edges=edges,
        notches=notches,
        grain=plumb_grain(join(e.path for e in edges)),
    )


def tier_seams(
    over: tuple[SeamPart, ...], tiers: tuple[tuple[Piece, int, float], ...]
) -> tuple[tuple[Seam, ...], ...]:
    """For each tier the seam that closes it, and the one that gathers it to what is over it.

    Args:
        over: The lower edge that the first of these tiers hangs from.
        tiers: Piece, number of its copies, and what is gathered in, cm; from the top down.
    """
    found = []
    for piece, copies, full in tiers:
        name = piece.name
        closed = Seam(
            f"{name}_joins", (SeamPart(name, "right", reversed=True),), (SeamPart(name, "left"),)
        )
        own = (SeamPart(name, "top", "each", copies),)
        gathered = Seam(f"{name}_gathered", own, over, Ease("gathers", full, full, full))
        found.append((closed, gathered))
        over = (SeamPart(name, "foot", "each", copies),)
    return tuple(found)
