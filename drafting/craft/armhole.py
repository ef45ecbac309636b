"""The armhole: from the shoulder's end down the width line, round a corner, to the underarm.

Source: square to the shoulder, plumb where it touches the line of the back's or the chest's width,
level under the arm, past a point on the diagonal of the corner: common practice, no source.
"""

from __future__ import annotations

from drafting.craft.curves import cutting
from drafting.craft.sheet import DraftSheet
from drafting.geometry import (
    DOWN,
    LEFT,
    RIGHT,
    Cubic,
    Point,
    Vector,
    with_handles,
)
from drafting.trace import (
    DOWNWARD,
    LEFTWARD,
    RIGHTWARD,
    Bend,
    Place,
    Stroke,
    along,
    past_diagonal,
)

FAIR = (0.2, 0.9)
"""Shares of the handles between which the curve under the arm stays fair. House method."""


def round_corner(start: Point, end: Point, corner: Point, diagonal: float) -> tuple[Cubic, float]:
    """A curve from plumb to level that cuts the corner's diagonal so far out, if a fair one does.

    Returns:
        The curve, and the distance at which it cuts the diagonal.
    """
    diagonal = float(diagonal)  # a length that remembers its formula ends here
    out = RIGHT if end.x > start.x else LEFT
    down, across = corner.distance(start), corner.distance(end)
    diagonally = Vector(out.x, 1.0)

    def draw(share: float) -> Cubic:
        return with_handles(start, DOWN, end, out, share * down, share * across)

    return cutting(draw, corner, diagonally, diagonal, FAIR)


def upper(neck: Point, end: Point, across: Point, level: Vector = DOWN) -> Cubic:
    """From the shoulder's end, square to the shoulder, to where it touches the width line."""
    along_shoulder = (end - neck).unit
    square = along_shoulder.right if along_shoulder.right.y < 0 else along_shoulder.left
    chord = end.distance(across)
    return with_handles(end, square, across, level, 0.32 * chord, 0.4 * chord)


def draw_armhole(
    name: str,
    neck: Place,
    end: Place,
    across: Place,
    underarm: Place,
    diagonal: float,
    sheet: DraftSheet,
    why: str,
    *,
    source: str = "",
) -> Stroke:
    """Draw one half of an armhole, from the shoulder to the underarm.

    Args:
        name: "back armhole" or "front armhole".
        neck: Where the shoulder starts at the neck.
        end: Where it ends.
        across: Where the armhole touches the line of the width, plumb.
        underarm: Where it ends, level.
        diagonal: cm from the corner under `across`, on its diagonal, to the curve.
        sheet: Records the corner and the line.
        why: One sentence.
        source: Where the rule comes from.
    """
    corner = sheet.point(
        f"{name} corner", across.level_with(underarm), "The width line meets the underarm line."
    )
    lower, reached = round_corner(across, underarm, corner, diagonal)
    above = upper(neck, end, across)
    shoulder = along(neck, end)
    out = RIGHTWARD if underarm.x > across.x else LEFTWARD
    parts = (
        Bend(end, across, shoulder.to(above.tangent(0.0)), DOWNWARD, above),
        Bend(across, underarm, DOWNWARD, out, lower, past_diagonal(corner, reached)),
    )
    return sheet.draw(name, parts, why, source=source)
