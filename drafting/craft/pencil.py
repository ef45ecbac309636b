"""Lines that several garments draw, told by what lies on the paper.

The craft's curves come as plain geometry, for they are drawn many times while a draft is trued;
here the one that stays is given its words: between which places, in which directions.
"""

from __future__ import annotations

from drafting.craft.darts import PlannedDart, closings
from drafting.craft.sheet import DraftSheet
from drafting.geometry import Cubic, Path, Point
from drafting.trace import (
    Bearing,
    Bend,
    Fold,
    Place,
    Stroke,
    along,
    middle_of,
    past_diagonal,
    running,
)
from drafting.trace.place import corner_of_paper


def hooked(
    start: Place,
    leaving: Bearing,
    end: Place,
    arriving: Bearing,
    drawn: Cubic,
    corner: Place,
    diagonal: float,
) -> Bend:
    """A crotch curve as a part of a line: directions at both ends, and past the diagonal's end.

    Args:
        start: Where it leaves the straight.
        leaving: Direction there.
        end: The fork.
        arriving: Direction there.
        drawn: The curve.
        corner: The crotch corner.
        diagonal: How far out (cm) the curve cuts the corner's diagonal.
    """
    return Bend(start, end, leaving, arriving, drawn, past_diagonal(corner, diagonal))


def shaped(start: Place, end: Place, arriving: Bearing, drawn: Cubic) -> Bend:
    """A swept curve as a part of a line: its middle so far out, its end in a given direction."""
    leaving = along(start, end).to(drawn.tangent(0.0))
    return Bend(start, end, leaving, arriving, drawn, middle_of(drawn))


def draw_dart(
    label: str,
    ends: tuple[Place, Place],
    middle: Place,
    intake: float,
    length: float,
    turn: str,
    sheet: DraftSheet,
    *,
    why: str = "Ends above the fullest seat.",
) -> PlannedDart:
    """Draw a dart square to a seam line, half of it on each side of its middle.

    Args:
        label: What it is called, "front dart".
        ends: The seam line's ends, at the centre and at the side.
        middle: The middle of its mouth, recorded already.
        intake: Width of the mouth, cm.
        length: From the middle to the point, cm.
        turn: To which hand it points, seen from the centre to the side: "left" or "right".
        sheet: Records both legs' ends and the point.
        why: Where it ends, one sentence.
    """
    centre, side = ends
    each = "Half of the dart lies on each side of its middle."
    return PlannedDart(
        sheet.point(f"{label} near leg", middle.towards(centre, intake / 2), each),
        sheet.point(f"{label} far leg", middle.towards(side, intake / 2), each),
        sheet.point(f"{label} point", middle.square_out(centre, side, length, turn), why),
    )


def draw_rectangle(
    piece: str,
    corner: Place,
    width: float,
    depth: float,
    sheet: DraftSheet,
    why: str,
) -> Place:
    """Draw a piece that is a rectangle, and trace it.

    Args:
        piece: Name of the piece.
        corner: Its upper left corner, recorded already.
        width: In cm, to the right.
        depth: In cm, downward.
        sheet: Records corners, lines and outline.
        why: Why it is so wide and so deep.

    Returns:
        The lower left corner.
    """
    name = piece.replace("_", " ")
    right = sheet.point(f"{name}, upper right", corner.right(width), why)
    low = sheet.point(f"{name}, lower left", corner.down(depth), why)
    last = sheet.point(f"{name}, lower right", right.level_with(low), "Squared down.")
    lines = tuple(
        sheet.line(f"{name}, {side}", a, b, why="On the straight grain, or across it.")
        for side, a, b in (
            ("top", corner, right),
            ("right", right, last),
            ("foot", last, low),
            ("left", low, corner),
        )
    )
    sheet.outline(piece, lines, "Trace it from the draft; allowances are added outside.")
    return low


def draw_waist(
    name: str,
    closed: Cubic,
    opened: Path,
    ends: tuple[Place, Place],
    leaving: Bearing,
    side: Stroke,
    darts: tuple[PlannedDart, ...],
    sheet: DraftSheet,
    why: str,
    *,
    source: str = "",
) -> Stroke:
    """Record a seam drawn over closed darts, from the centre to the side.

    Args:
        name: The trade's word for it.
        closed: The seam while the darts are closed.
        opened: The seam as it lies with the darts open.
        ends: Where it starts at the centre, and where it ends at the side with the darts open.
        leaving: A direction at the centre that the seam's own is told by.
        side: The side seam, starting where the waist ends.
        darts: From the centre to the side.
        sheet: Records the line.
        why: One sentence.
        source: Where the rule comes from.
    """
    arriving = closings(darts)[-1].inverse.vector(closed.tangent(1.0))
    bend = Bend(*ends, leaving.to(closed.tangent(0.0)), running(side, "start").to(arriving), closed)
    return sheet.draw_over(name, bend, folds(darts), opened, why, source=source)


def folds(darts: tuple[PlannedDart, ...]) -> tuple[Fold, ...]:
    """The darts as they are closed for a line drawn over them."""
    return tuple(Fold(*map(placed, (d.near, d.far, d.point))) for d in darts)


def placed(point: Point) -> Place:
    """The point as a place on the paper."""
    return point if isinstance(point, Place) else corner_of_paper(point.x, point.y)
