"""Belt loops.

Source: 5 loops, 7 from a waist of 80 cm up, 1 to 1.5 cm wide and 1 to 1.5 cm longer than the band
is deep; at the front crease, the side and the centre back: common practice, no source.
"""

from __future__ import annotations

from drafting.geometry import Point, polyline
from drafting.pattern import Cut, Edge, Mark, Piece, Role

LOOP_WIDTH, LOOP_OVER = 1.2, 1.5
TURNED_IN = 1.0


def loop_count(waist: float) -> int:
    """How many loops for a waist girth in cm."""
    return 5 if waist < 80 else 7


def belt_loop(depth: float, count: int) -> Piece:
    """A strip folded in three, long enough to be turned in at both ends.

    Args:
        depth: Finished depth of the waistband, cm.
        count: How many loops are cut.
    """
    width, height = 3 * LOOP_WIDTH, depth + LOOP_OVER + 2 * TURNED_IN
    corners = (
        Point(width, 0),
        Point(width, height),
        Point(0, height),
        Point(0, 0),
        Point(width, 0),
    )
    names = ("right", "top", "left", "foot")
    edges = tuple(
        Edge(name, polyline(a, b), Role.FINISHED, "raw")
        for name, a, b in zip(names, corners, corners[1:], strict=False)
    )
    folds = tuple(
        Mark("fold", polyline(Point(x, 0), Point(x, height))) for x in (LOOP_WIDTH, 2 * LOOP_WIDTH)
    )
    grain = (Point(width / 2, 0.15 * height), Point(width / 2, 0.85 * height))
    return Piece(
        name="belt_loop",
        title="Belt loop",
        cut=(Cut("main", count),),
        edges=edges,
        grain=grain,
        marks=folds,
    )


def loop_places(
    band: float, crease: float, side: float, back: float, count: int
) -> tuple[float, ...]:
    """Distances in cm from one centre front along the band to the middle of each loop.

    Args:
        band: Length of the band from centre front to centre front.
        crease: Distance from the centre front to the front crease.
        side: To the side seam.
        back: To the back dart nearer to the side.
        count: 5 or 7.
    """
    half = (crease, side) if count == 5 else (crease, side, back)
    return (*half, band / 2, *(band - at for at in reversed(half)))
