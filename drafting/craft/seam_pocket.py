"""The pocket in the side seam: a stretch of the seam stays open, two bags of the cloth behind it.

Each bag is sewn to one edge of the opening, then both to each other all round.

Source: openings of 15 to 16 cm that start 4 to 6 cm below the waist, bags 15 cm wide that reach
10 cm below the opening: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.craft.piecework import plumb_grain
from drafting.craft.sheet import DraftSheet
from drafting.errors import SpecError
from drafting.geometry import Path, Point, Vector, join, with_handles
from drafting.pattern import Cut, Edge, Piece, Seam, SeamPart

DOWN_THE_SIDE = 5.0
LEAST_BELOW = 2.0
"""The seam goes on at least 2 cm below the opening. House method."""

SEAM_MOUTH = 16.0
"""Usual length in cm of the opening. Source: common practice, no source."""

BAG_WIDTH, BELOW_MOUTH, ABOVE_MOUTH = 15.0, 10.0, 3.0
PAIR = (Cut("main", 2, mirrored=True),)


@dataclass(frozen=True, slots=True)
class SeamPocket:
    """A pocket in the side seam.

    Attributes:
        above: Length in cm of the seam above the opening.
        mouth: Length in cm of the opening.
        pieces: The bag behind the front's edge, and the one behind the back's.
        seams: Of the bags, in sewing order: to the edges of the opening, then to each other.
    """

    above: float
    mouth: float
    pieces: tuple[Piece, Piece]
    seams: tuple[Seam, ...]


def seam_pocket(
    side: Path,
    mouth: float,
    sheet: DraftSheet,
    *,
    panels: tuple[str, str] = ("front", "back"),
    option: str = "front_pocket",
    over: float = 0.0,
) -> SeamPocket:
    """Leave a pocket open in a side seam.

    Args:
        side: The front's side from the waist down, cm; the front lies to its right.
        mouth: Length of the opening in cm.
        sheet: Records where it lies.
        panels: Names of the pieces before and behind the seam.
        option: Name of the option that asks for it.
        over: How far over the natural waist the side starts, cm.

    Raises:
        SpecError: The side seam is too short for it.
    """
    sheet.heading("Pocket in the side seam", "common practice, no source")
    down = over + DOWN_THE_SIDE
    room = side.length() - down - LEAST_BELOW
    if mouth > room:
        raise SpecError(
            f"The side seam has room for a pocket_mouth of {max(0.0, room):.1f} cm: make the "
            f'garment longer, or choose {option} "none".',
            where="garment.pocket_mouth",
            received=mouth,
            allowed=(0.0, max(0.0, room)),
        )
    above = sheet.length("seam above the pocket", down, "The hand finds it there.")
    sheet.length("pocket mouth", mouth, "A hand must pass.")
    edge = side.between(float(above), float(above) + mouth)
    pieces = (
        _bag("pocket_bag", "Pocket bag, front", edge),
        _bag("pocket_bag_under", "Pocket bag, back", edge),
    )
    return SeamPocket(float(above), mouth, pieces, _seams(*panels))


def _bag(name: str, title: str, mouth: Path) -> Piece:
    """A pear shape beside the opening, hanging lower than it."""
    edges = (
        Edge("mouth", mouth, kind="side"),
        Edge("round", _round(mouth), kind="pocket"),
    )
    grain = plumb_grain(join(e.path for e in edges))
    return Piece(name=name, title=title, cut=PAIR, edges=edges, grain=grain)


def _round(mouth: Path) -> Path:
    """From the opening's lower end round the bag to its upper end."""
    start, end = mouth.end, mouth.start
    low = min(start.y, end.y) - BELOW_MOUTH
    left, right = max(start.x, end.x), max(start.x, end.x) + BAG_WIDTH
    foot = Point(left + 0.55 * BAG_WIDTH, low)
    inside = Point(right, low + 0.6 * BELOW_MOUTH)
    top = Point(left + 0.5 * BAG_WIDTH, end.y + ABOVE_MOUTH)
    ways = (mouth.end_tangent, Vector(1, 0), Vector(0, 1), Vector(-1, 0), end - top)
    stops = (start, foot, inside, top, end)
    return Path(
        tuple(
            with_handles(a, leaving, b, arriving, a.distance(b) * 0.38)
            for a, b, leaving, arriving in zip(stops, stops[1:], ways, ways[1:], strict=False)
        )
    )


def _seams(front: str, back: str) -> tuple[Seam, ...]:
    """In sewing order; the bags to each other once the seam is sewn above and below them."""
    under = SeamPart("pocket_bag_under", "mouth")
    around = SeamPart("pocket_bag", "round"), SeamPart("pocket_bag_under", "round")
    return (
        Seam("pocket_mouth", (SeamPart(front, MOUTH),), (SeamPart("pocket_bag", "mouth"),)),
        Seam("pocket_mouth_back", (SeamPart(back, MOUTH, reversed=True),), (under,)),
        Seam("pocket_bag", (around[0],), (around[1],)),
    )


MOUTH = "pocket_mouth"
"""Name of the stretch of a side that stays open."""
