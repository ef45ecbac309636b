"""Tiers: straight strips gathered to what hangs over them.

Source: quarters marked on both edges: common practice, no source.
"""

from __future__ import annotations

from drafting.craft.piecework import plumb_grain
from drafting.geometry import Point, join, polyline
from drafting.pattern import Cut, Ease, Edge, Notch, Piece, Role, Seam, SeamPart


def tier_piece(number: int, width: float, depth: float, copies: int, *, last: bool) -> Piece:
    """One of the equal panels that make a tier.

    Args:
        number: Number of the tier, from 2.
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
    own = (("top", number),) if last else (("top", number), ("foot", number + 1))
    return Piece(
        name=f"tier_{number}",
        title=f"Tier {number}",
        cut=(Cut("main", copies),),
        edges=edges,
        notches=tuple(n for edge, tier in own for n in _quarters(edge, tier, width, copies)),
        grain=plumb_grain(join(e.path for e in edges)),
    )


def _quarters(edge: str, tier: int, width: float, copies: int) -> tuple[Notch, ...]:
    """The marks at the quarters of a tier that its panels' joints do not mark."""
    places: dict[int, dict[str, tuple[float, ...]]] = {
        1: {"side": (1 / 4, 3 / 4), "middle": (1 / 2,)},
        2: {"side": (1 / 2,)},
    }
    return tuple(
        Notch(edge, width * at, 1, f"tier_{tier}-{name}")
        for name, shares in places.get(copies, {}).items()
        for at in shares
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
