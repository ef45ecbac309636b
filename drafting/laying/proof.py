"""Whether a proposed lay may be cut: everything there, inside the cloth, apart from each other."""

from __future__ import annotations

from collections import Counter

import numpy as np
import shapely

from drafting.laying.parts import FLAT, SIMPLE
from drafting.laying.strip import Spots, Strip

TOLERANCE = 0.01
"""Pieces may come nearer than asked, or over an edge, by 0.01 cm."""


def is_sound(strip: Strip, spots: Spots) -> bool:
    """Whether a lay has every part in its number, keeps to the strip and keeps the gap."""
    laid = Counter((spot.part.code, spot.time) for spot in spots)
    asked = Counter((p.code, time) for p in strip.parts for time in range(len(p.copies)))
    return laid == asked and all(_is_inside(strip, spots)) and _are_apart(strip, spots)


def _is_inside(strip: Strip, spots: Spots) -> list[bool]:
    return [
        s.x > -TOLERANCE
        and s.y > (0.0 if s.part.on_fold else strip.floor) - TOLERANCE
        and s.y + s.way.breadth < strip.breadth + TOLERANCE
        for s in spots
    ]


def _are_apart(strip: Strip, spots: Spots) -> bool:
    areas = [spot.area for spot in spots]
    gap = 2 * (strip.clear - FLAT - SIMPLE)
    one, two = shapely.STRtree(areas).query(areas, predicate="dwithin", distance=gap)
    near = one < two
    pairs = np.array(areas, dtype=object)
    if gap < TOLERANCE:
        inside = shapely.buffer(pairs, -TOLERANCE / 2)
        return not bool(np.any(shapely.intersects(inside[one[near]], inside[two[near]])))
    return bool(np.all(shapely.distance(pairs[one[near]], pairs[two[near]]) > gap - TOLERANCE))
