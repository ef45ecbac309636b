"""The line of each size: told apart by its dashes and breadth alone, also on a bad photocopy.

Neighbours in the table look as unlike as may be. Source: common practice, no source.
"""

from __future__ import annotations

from drafting.drawing.sheet import Pen

BREADTH, BROAD, THIN = 0.4, 0.8, 0.2
"""Line breadths in mm: of the first sizes' outlines, of the later ones', of lines inside."""

DASHES: tuple[tuple[float, ...], ...] = (
    (),
    (4.0, 2.0),
    (0.8, 1.2),
    (9.0, 1.5, 0.8, 1.5),
    (2.0, 1.0, 2.0, 3.5),
    (5.0, 1.2, 0.8, 1.2, 0.8, 1.2),
    (1.8, 1.2),
    (12.0, 2.0),
    (0.8, 0.8, 0.8, 3.0),
    (9.0, 1.5, 2.5, 1.5, 2.5, 1.5),
)
"""Dashes and gaps in mm: solid, dashed, dotted, dash and dot, pairs of dashes, dash and two dots,
short dashes, long dashes, pairs of dots, one long and two short."""

LINES = tuple(Pen(breadth, dashes) for breadth in (BREADTH, BROAD) for dashes in DASHES)
"""Outlines of up to twenty sizes."""


def outline_pen(place: int) -> Pen:
    """The line of the size at a place of the range, from 0; after the last it starts anew."""
    return LINES[place % len(LINES)]


def inside_pen(place: int) -> Pen:
    """The thin line of the same dashes, for darts and the like."""
    return Pen(THIN, outline_pen(place).dashes)
