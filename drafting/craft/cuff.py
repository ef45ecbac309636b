"""A shirt cuff: two layers sewn together along three sides, buttoned over the wrist.

Drawn with its sleeve edge at the top, as it hangs on the right sleeve: the end that laps over lies
to the left.

Source: 6 to 7 cm deep, wrist and 5 to 7 cm round when buttoned and 2 cm to lap, one button in the
middle: common practice, no source.
"""

from __future__ import annotations

from drafting.craft.buttons import button, buttonhole
from drafting.craft.curves import cornered
from drafting.craft.sheet import DraftSheet
from drafting.craft.sleeve_placket import Placket
from drafting.geometry import IDENTITY, Path, Point
from drafting.pattern import Cut, Edge, Notch, Piece, Role, Seam, SeamPart
from drafting.trace import DOWNWARD, LEFTWARD, UPWARD, Bend, Place, Stroke, straight

ROUNDED = 2.0
"""A rounded cuff's corners take 2 cm of each side."""

FROM_END = 1.0
"""The buttonhole ends 1 cm inside the cuff's end."""


def draw_cuff(
    length: float, depth: float, corner: Place, sheet: DraftSheet, *, rounded: bool
) -> tuple[Stroke, ...]:
    """Draw a cuff.

    Args:
        length: From end to end, the lap with it, cm.
        depth: Finished depth, cm.
        corner: Its upper left corner.
        sheet: Records it.
        rounded: Whether its lower corners are rounded.

    Returns:
        Its edges: the sleeve's, from left to right; the under end; the free edge; the lapping end.
    """
    left = sheet.point("cuff, upper left", corner, "Its upper edge is sewn to the sleeve.")
    right = sheet.point("cuff, upper right", left.right(length), "Round the wrist and its lap.")
    low = sheet.point("cuff, lower right", right.down(depth), "The depth of the cuff.")
    last = sheet.point("cuff, lower left", left.level_with(low), "As deep.")
    if rounded:
        ends = _rounded(left, right, low, last, sheet)
    else:
        ends = tuple(
            sheet.draw(f"cuff, {name}", straight(a, b), "Straight.")
            for name, a, b in (
                ("under end", right, low),
                ("free edge", low, last),
                ("lapping end", last, left),
            )
        )
    top = sheet.line("cuff, sleeve edge", left, right, why="Sewn to the sleeve.")
    sheet.outline("cuff", (top, *ends), "Trace it from the draft; allowances are added outside.")
    return (top, *ends)


def _rounded(
    left: Place, right: Place, low: Place, last: Place, sheet: DraftSheet
) -> tuple[Stroke, ...]:
    why = "The corner is rounded."
    ends = [sheet.point("under end above its corner", low.up(ROUNDED), why)]
    ends += [sheet.point("free edge before the under end", low.left(ROUNDED), why)]
    ends += [sheet.point("free edge before the lapping end", last.right(ROUNDED), why)]
    ends += [sheet.point("lapping end above its corner", last.up(ROUNDED), why)]
    a, b, c, d = ends
    one = cornered(a, DOWNWARD.vector, b, LEFTWARD.vector)
    two = cornered(c, LEFTWARD.vector, d, UPWARD.vector)
    turned = Bend(a, b, DOWNWARD, LEFTWARD, one), Bend(c, d, LEFTWARD, UPWARD, two)
    return (
        sheet.draw("cuff, under end", straight(right, a), "Straight to the rounding."),
        sheet.draw(
            "cuff, free edge", (turned[0], *straight(b, c), turned[1]), "Both corners round."
        ),
        sheet.draw("cuff, lapping end", straight(d, left), "Straight from the rounding."),
    )


def cuff_pieces(edges: tuple[Stroke, ...], placket: Placket) -> tuple[Piece, Piece]:
    """The cuff and its inside, whose sleeve edge is turned under.

    Args:
        edges: As drawn.
        placket: The slit's strips, to whose feet the cuff's ends are sewn.
    """
    top, under, free, over = (e.path.transformed(IDENTITY).reversed() for e in edges)
    closing = (under, free, over)
    low, high = free.bounds()[1], top.start.y
    middle = (low + high) / 2
    marks = (
        button(Point(top.start.x - placket.lap / 2, middle)),
        buttonhole(Point(top.end.x + placket.lap / 2, middle), "level"),
    )
    x, inset = (top.start.x + top.end.x) / 2, 0.15 * (high - low)
    ends = tuple(
        Edge(name, path)
        for name, path in zip(("over_end", "free_edge", "under_end"), closing[::-1], strict=True)
    )
    lapped = _lapped(top, placket)
    sewn = next(e.path.length() for e in lapped if e.name == "sleeve_edge")
    notches: tuple[Notch, ...] = (Notch("sleeve_edge", 0.0, 1, "slit-under"),)
    if placket.over is not None:
        notches += (Notch("sleeve_edge", sewn, 1, "slit-over"),)
    inside = (Edge("sleeve_edge", top, Role.HEM),)

    def piece(
        name: str,
        title: str,
        cloths: tuple[str, ...],
        upper: tuple[Edge, ...],
        own: tuple[Notch, ...],
    ) -> Piece:
        cut = tuple(Cut(cloth, 2, mirrored=True) for cloth in cloths)
        grain = (Point(x, low + inset), Point(x, high - inset))
        return Piece(
            name=name,
            title=title,
            cut=cut,
            edges=(*upper, *ends),
            notches=own,
            grain=grain,
            marks=marks,
        )

    return (
        piece("cuff", "Cuff", ("main", "fusible"), lapped, notches),
        piece("cuff_inside", "Cuff, inside", ("main",), inside, ()),
    )


def _lapped(top: Path, placket: Placket) -> tuple[Edge, ...]:
    """The sleeve edge from its under end: the under strip's, the sleeve's, the over strip's."""
    under, rest = top.split(placket.under[1])
    if placket.over is None:
        return Edge("under_lap", under), Edge("sleeve_edge", rest)
    sleeve, over = rest.split(rest.length() - placket.over[1])
    return Edge("under_lap", under), Edge("sleeve_edge", sleeve), Edge("over_lap", over)


def cuff_seams(placket: Placket, sleeve: tuple[SeamPart, ...]) -> tuple[Seam, ...]:
    """The seams of a cuff to the strips of a slit and to the sleeve between them.

    Args:
        placket: The slit's strips.
        sleeve: The sleeve's edges, from the slit's back round to its front.
    """
    strips = (
        ("cuff_under_lap", "under_lap", placket.under),
        ("cuff_over_lap", "over_lap", placket.over),
    )
    laps = tuple(
        Seam(name, (SeamPart(strip[0], "foot"),), (SeamPart("cuff", edge),))
        for name, edge, strip in strips
        if strip is not None
    )
    return (*laps, Seam("cuff", sleeve, (SeamPart("cuff", "sleeve_edge"),)))


def cuff_closed() -> tuple[Seam, ...]:
    """The seams of a cuff to its inside, right sides together."""
    return tuple(
        Seam(f"cuff_{edge}", (SeamPart("cuff", edge),), (SeamPart("cuff_inside", edge),))
        for edge in ("under_end", "free_edge", "over_end")
    )
