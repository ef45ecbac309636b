"""Skirts, the waist: what is cut off the top of the draft for a contoured band.

Source: contoured bands are traced with the darts closed: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from drafting.craft.contour import Contour, Top, cut_contours
from drafting.craft.waists import Waist, contoured_band, eased, facing, straight_band
from drafting.garments.skirts.trueing import Lines

__all__ = ["Waist", "below_band", "contoured_band", "eased", "facing", "straight_band"]


def below_band(back: Lines, front: Lines, depth: float) -> tuple[Lines, Lines, tuple[Contour, Contour]]:
    """Back and front without a band of a depth in cm that was cut off their tops, and that band."""
    two, one = (Top(p.closed, p.side, p.centre, p.planned) for p in (back, front))
    front_band, back_band = cut_contours(one, two, depth)
    return _under(back, back_band), _under(front, front_band), (back_band, front_band)


def _under(lines: Lines, band: Contour) -> Lines:
    return replace(lines, waist=band.waist, side=band.side, centre=band.centre, darts=band.darts)
