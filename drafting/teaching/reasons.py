"""Why a detail's line runs as it does, in the trade's words; what it is sewn to says the rest.

Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from drafting.drawing.words import plain

if TYPE_CHECKING:
    from drafting.pattern import Pattern

TRACED = "Trace it from the draft; allowances are added outside."
APART = "It is drawn by itself; allowances are added outside."

LINES: dict[tuple[str, str], str] = {
    ("front", "pocket_mouth"): "Long enough for the hand, and where it slides in by itself.",
    ("side_piece", "inner"): "It reaches under the mouth, so that no pocketing shows.",
    ("pocket_facing", "inner"): "As deep behind the mouth as the eye sees into it.",
    ("pocket_bag", "foot"): "A hand's depth below the mouth.",
    ("pocket_bag", "inside"): "Beside the darts, so that the bag lies flat.",
    ("pocket_bag", "round"): "Hanging lower than the opening, so that nothing falls out.",
    ("fly_facing", "outer"): "Outside the stitched curve that holds it.",
    ("back", "vent_top"): "Falls outward, so that the layers lie flat when it is sewn.",
    ("back", "vent"): "Wide enough to stay closed at every step.",
    ("back_yoke", "foot"): "The darts are closed into it.",
}
"""By piece and edge."""

PIECES: dict[str, str] = {
    "fly_shield": "Double, folded along its middle; it keeps the zip off the skin.",
    "back_welt": "Twice as deep as the welt, for it is folded lengthwise.",
    "back_pocket_facing": "Lies behind the slit, so that no pocketing shows.",
    "back_pocket_bag": "One long bag, folded at its foot; its top follows the waist.",
    "back_patch": "Its top is folded in for a hem.",
    "belt_loop": "Folded in three lengthwise, turned in at both ends.",
    "waistband": "Twice the band's depth, for it is folded along its top.",
    "band_underlap": "Twice the band's depth, for it is folded along its top.",
}
"""By piece: why one that is drawn by itself is so wide and so long."""

BY_ROLE = {
    "seam": "Caught in a seam.",
    "hem": "It is turned in along here.",
    "fold": "On the fold: the other half is its mirror image.",
    "opening": "It stays open here.",
    "finished": "It ends here and is sewn to no other edge.",
}
"""By what becomes of an edge."""

TWIN = "Sewn to the same edge of its twin."
MEET = "Here {0} and {1} meet."
SEWN = "Sewn to {0}."
MOST = 3
"""A reason names at most so many edges."""


@dataclass(frozen=True, slots=True)
class Reasons:
    """The reasons for a pattern's lines."""

    pattern: Pattern

    def of_line(self, piece: str, edge: str) -> str:
        """Why an edge runs as it does: the trade's reason, else what becomes of it."""
        told = LINES.get((piece, edge))
        return told or self._by_seam(piece, edge)

    def _by_seam(self, piece: str, edge: str) -> str:
        sewn = dict.fromkeys(self._sewn(piece, edge))
        others = [f"{plain(p)} ({plain(e)})" for p, e in sewn if (p, e) != (piece, edge)]
        if others:
            return SEWN.format(", ".join(others[:MOST]))
        return TWIN if sewn else BY_ROLE[self._role(piece, edge)]

    def _role(self, piece: str, edge: str) -> str:
        edges = (e for p in self.pattern.pieces if p.name == piece for e in p.edges)
        return next(str(e.role) for e in edges if e.name == edge)

    def _sewn(self, piece: str, edge: str) -> Iterator[tuple[str, str]]:
        for seam in self.pattern.seams:
            for one, two in ((seam.one, seam.two), (seam.two, seam.one)):
                if any(part.piece == piece and part.edge == edge for part in one):
                    yield from ((part.piece, part.edge) for part in two)


def of_corner(before: str, after: str) -> str:
    """What a corner between two edges is."""
    return MEET.format(plain(before), plain(after))


def of_piece(piece: str) -> str:
    """Why a piece that is drawn by itself is as it is."""
    return PIECES.get(piece, APART)
