"""Waistbands: straight, and contoured from the draft.

Source: finished 3 to 4 cm deep, an underlap of 3 to 5 cm, notches at the side seams and the centre
back; a contoured band is traced from the block with its darts closed: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from drafting.craft.piecework import counter_clockwise, plumb_grain, turned_over
from drafting.geometry import Path, Point, join, polyline
from drafting.pattern import Cut, Edge, Mark, Notch, Piece, Role, Seam, SeamPart


def straight_waistband(
    length: float,
    depth: float,
    underlap: float,
    joints: tuple[tuple[str, float], ...],
    loops: tuple[float, ...] = (),
    *,
    underlap_right: bool = False,
    joined_inside: bool = False,
    free_underlap: bool = False,
) -> Piece:
    """A straight waistband cut in one with its inside, folded along the top.

    It stands upright: the lengthwise grain runs along the band, the underlap is at the bottom.

    Args:
        length: Finished length in cm without the underlap, from the opening round to it.
        depth: Finished depth in cm.
        underlap: Length in cm of the underlap.
        joints: Name and distance in cm from the underlapping side of the opening, of the
            garment's seams.
        loops: Distances of the belt loops from the same place.
        underlap_right: Whether the underlap lies at the right end as the band is worn, seen from
            outside; else at the left end, where a left back or a right front laps over it.
        joined_inside: Whether the inside's lower edge is sewn to something else than the garment's
            top, as to a lining; else it is turned under.
        free_underlap: Whether the underlap is sewn to its own inside; else to something behind
            the opening, as to a fly's shield.
    """
    turned = {"waist_inside": not joined_inside, "underlap_inside": not free_underlap}
    whole, top = 2 * depth, float(underlap + length)
    corners = (
        Point(whole, 0), Point(whole, underlap), Point(whole, top), Point(depth, top),
        Point(0, top), Point(0, underlap), Point(0, 0), Point(depth, 0), Point(whole, 0),
    )  # fmt: skip
    names = (
        "underlap", "waist", "overlap_end", "overlap_end_inside",
        "waist_inside", "underlap_inside", "underlap_end_inside", "underlap_end",
    )  # fmt: skip
    piece = Piece(
        name="waistband",
        title="Waistband",
        cut=(Cut("main", 1), Cut("fusible", 1)),
        edges=tuple(
            _edge(n, a, b, hem=turned.get(n, False))
            for n, (a, b) in zip(names, pairwise(corners), strict=True)
        ),
        notches=tuple(Notch("waist", at, 1, match) for match, at in joints),
        grain=(Point(whole / 4, top * 0.3), Point(whole / 4, top * 0.7)),
        marks=(
            Mark("fold", polyline(Point(depth, 0), Point(depth, top))),
            *(_loop(depth, whole, underlap + at) for at in loops),
        ),
    )
    return turned_over(piece) if underlap_right else piece


def _edge(name: str, start: Point, end: Point, *, hem: bool) -> Edge:
    role = Role.HEM if hem else Role.SEAM
    kind = "band" if "end" in name else "waist"
    return Edge(name, polyline(start, end), role, kind)


def _loop(depth: float, whole: float, at: float) -> Mark:
    """Where a belt loop is sewn, across the band's outside."""
    return Mark("placement", polyline(Point(depth + 0.5, at), Point(whole - 0.5, at)))


def straight_band_ends() -> tuple[Seam, ...]:
    """The seams that close a straight waistband's ends, folded right sides together."""
    return tuple(
        Seam(
            f"waistband_{end}",
            (SeamPart("waistband", end),),
            (SeamPart("waistband", f"{end}_inside", reversed=True),),
        )
        for end in ("overlap_end", "underlap_end")
    )


def underlap_closed() -> Seam:
    """The seam of an underlap to its own inside, right sides together."""
    return Seam(
        "waistband_underlap",
        (SeamPart("waistband", "underlap"),),
        (SeamPart("waistband", "underlap_inside", reversed=True),),
    )


def band_underlap(depth: float, width: float) -> Piece:
    """The underlap of a contoured band, folded along the top; its right half is the outside.

    It stands with the fold upright: the join to the band is at the top, the free end at the foot.

    Args:
        depth: Finished depth of the band, cm.
        width: Finished width of the underlap, cm.
    """
    whole = 2 * depth
    corners = (
        Point(whole, 0), Point(whole, width), Point(depth, width), Point(0, width),
        Point(0, 0), Point(depth, 0), Point(whole, 0),
    )  # fmt: skip
    names = ("foot", "join", "join_inside", "foot_inside", "end_inside", "end")
    edges = tuple(
        Edge(n, polyline(a, b), Role.HEM if n == "foot_inside" else Role.SEAM, _underlap_kind(n))
        for n, (a, b) in zip(names, pairwise(corners), strict=True)
    )
    return Piece(
        name="band_underlap",
        title="Waistband underlap",
        cut=(Cut("main", 1), Cut("fusible", 1)),
        edges=edges,
        grain=(Point(0.75 * whole, 0.15 * width), Point(0.75 * whole, 0.85 * width)),
        marks=(Mark("fold", polyline(Point(depth, 0), Point(depth, width))),),
    )


def _underlap_kind(name: str) -> str:
    return "waist" if "foot" in name else "band"


BAND_CLOTH = (Cut("main", 2, mirrored=True), Cut("fusible", 2, mirrored=True))


def contoured_quarter(
    name: str, title: str, top: Path, side: Path, foot: Path, centre: Path, *, on_fold: bool
) -> Piece:
    """A quarter of a contoured band, from the draft with its darts closed.

    Args:
        name: Name of the piece.
        title: What is written on it.
        top: The finished waist, from the centre to the side, cm.
        side: From the waist down the side.
        foot: The seam to the garment, from the centre to the side.
        centre: From the waist down the centre.
        on_fold: Whether the centre lies on the fold (the back), which must then be plumb.
    """
    role, kind = (Role.FOLD, "raw") if on_fold else (Role.SEAM, "band")
    edges = (
        Edge("top", top, kind="band"),
        Edge("side", side, kind="band"),
        Edge("waist", foot.reversed(), kind="waist"),
        Edge("centre", centre.reversed(), role, kind),
    )
    outline = join(e.path for e in edges)
    left, _, right, _ = outline.bounds()
    cut = (
        BAND_CLOTH
        if not on_fold
        else tuple(replace(c, quantity=1, mirrored=False) for c in BAND_CLOTH)
    )
    inset = 0.2 * (right - left)
    grain = plumb_grain(outline, left + inset if centre.start.x < side.start.x else right - inset)
    quarter = Piece(name=name, title=title, cut=cut, edges=edges, grain=grain, half=on_fold)
    return counter_clockwise(quarter)
