"""Bands of rib or jersey: sewn on while they are stretched, so they draw an edge in and lie flat.

Source: a neckband as long as 0.7 to 0.92 of its seam, the stretchier the shorter (0.85 on a worked
band that is kept with the tests), cuffs 0.75 to 0.85 and hem bands 0.85 to 0.9; a band must be
drawn over what passes it: common practice, no source.
"""

from __future__ import annotations

from itertools import pairwise

from drafting.geometry import Point, polyline
from drafting.pattern import Cut, Edge, Mark, Notch, Piece, Role, Seam, SeamPart

CUFF_SHARE, HEM_SHARE, BINDING_SHARE = 0.8, 0.88, 0.92
"""Length of a cuff, a hem band and a band on a bare armhole over the edge it is sewn to."""

SHORTEST, LONGEST = 0.68, 0.92
"""Least and greatest share of its seam that a neckband is."""

OVER_HEAD = 1.0
"""What a stretched neck must have over the head, cm."""


def neckband_share(stretch: float) -> float:
    """Length of a neckband over its seam, by how many percent the band stretches."""
    return min(LONGEST, max(SHORTEST, 1.0 - 0.3 * (stretch / 100) / 0.5))


def stretched(length: float, percent: float) -> float:
    """A length drawn out as far as the cloth goes, cm."""
    return length * (1.0 + percent / 100)


def shortest_passing(girth: float, percent: float) -> float:
    """The shortest length in cm that can be drawn over a girth."""
    return girth / (1.0 + percent / 100)


def ring_band(
    name: str,
    title: str,
    length: float,
    depth: float,
    joints: tuple[tuple[str, float], ...] = (),
    *,
    copies: int = 1,
    mitre: float = 0.0,
) -> Piece:
    """A band closed to a ring and folded along its middle, both its long edges in one seam.

    It lies across the cloth, for it must stretch along its length; the fold is the finished edge.

    Args:
        name: Name of the piece.
        title: What is written on it.
        length: Length of the ring along its seam, cm.
        depth: Finished depth, cm.
        joints: Name and distance in cm from the ring's join of what its notches meet.
        copies: How many rings are cut; more than one are cut in pairs.
        mitre: By how much the fold is shorter at each end, cm, where the ring turns a corner.
    """
    left = tuple(Point(x, y) for x, y in ((0, 0), (mitre, depth), (0, 2 * depth)))
    right = tuple(Point(length - p.x, p.y) for p in left)
    corners = (*left[:1], *right, *reversed(left[1:]), left[0])
    whole = ("edge", "right_end", "right_end_inside", "edge_inside", "left_end_inside", "left_end")
    edges = tuple(
        Edge(word, polyline(a, b), Role.FINISHED if word == "edge_inside" else Role.SEAM, "seam")
        for word, (a, b) in zip(whole, pairwise(corners), strict=True)
    )
    return Piece(
        name=name,
        title=title,
        cut=(Cut("main", copies, mirrored=copies > 1),),
        edges=edges,
        notches=tuple(Notch("edge", at, 1, match) for match, at in joints),
        grain=(Point(length / 2, 0.4 * depth), Point(length / 2, 1.6 * depth)),
        marks=(Mark("fold", polyline(left[1], right[1])),),
    )


def ring_closed(name: str) -> tuple[Seam, Seam]:
    """The seams that close a band to a ring: outside and inside of one line of stitching."""
    return tuple(
        Seam(
            f"{name}_ring{word}",
            (SeamPart(name, f"right_end{word}"),),
            (SeamPart(name, f"left_end{word}", reversed=True),),
        )
        for word in ("", "_inside")
    )  # type: ignore[return-value]
