"""Trousers, the tapes: along which edges of which pieces the garment is measured, as it was cut.

Source: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.pattern import CombinedLength, CornerDepth, EdgeLength, Girth, Measuring

LEGS = ("front", "back")


@dataclass(frozen=True, slots=True, kw_only=True)
class Tapes:
    """Where the tape goes.

    Attributes:
        waist: Along the finished waist.
        hip: Round the hip line, over the pocket.
        side: Down the side, over waist, pocket and front.
        front_crotch: From the waist to the fork.
        back_crotch: From the waist to the fork.
        crotch: The whole crotch seam from waist to waist, over a band that is cut off or part of the rise.
        rise: From the centre front's top down to the crotch line.
        opens: Edges that open, one side of each.
        slit: That of them in the front or its side.
        side_corner: Where waist and side meet, in front and behind.
        hem_corners: Edges that meet the hem at the side and at the inseam.
        mouth: Whether a front pocket's mouth is to be measured.
        short: Whether the leg has no knee.
    """

    waist: Measuring
    hip: Girth
    side: CombinedLength
    front_crotch: tuple[EdgeLength, ...]
    back_crotch: tuple[EdgeLength, ...]
    crotch: CombinedLength
    rise: CornerDepth
    opens: tuple[EdgeLength, ...]
    slit: tuple[EdgeLength, ...]
    side_corner: tuple[tuple[str, str, str], tuple[str, str, str]]
    hem_corners: tuple[str, str]
    mouth: bool
    short: bool


def together(*parts: EdgeLength, factor: float = 1.0) -> CombinedLength:
    """Edges added up, each so many times."""
    return CombinedLength(tuple((factor, part) for part in parts))


def parts_of(tape: Measuring) -> tuple[tuple[float, EdgeLength], ...]:
    """A tape along edges, as a sum."""
    return tape.parts if isinstance(tape, CombinedLength) else ((1.0, tape),) if isinstance(tape, EdgeLength) else ()
