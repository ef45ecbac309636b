"""Skirts, the panels: from trued lines to pieces with their notches and level lines.

Source: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from drafting.craft.piecework import counter_clockwise, lengthen_lines, level_lines, plumb_grain
from drafting.craft.uprights import Upright
from drafting.garments.skirts.trueing import Lines
from drafting.geometry import Line, Path, Point, join
from drafting.pattern import Cut, Edge, Piece, Role

FOLD = (Cut("main", 1),)
PAIR = (Cut("main", 2, mirrored=True),)

UNDER = "waist_under"
"""Name of the edge at the top of what is laid under at the side."""


def panel_piece(
    title: str, lines: Lines, centre: Upright, side: Upright, *, hem: str = "hem", cloth: str = "main", sewn_on: bool = False
) -> Piece:
    """A panel: waist, side, hem and centre; on the fold where the centre is one.

    Args:
        title: What is written on it.
        lines: Its stitching lines.
        centre: Its upright edge at the centre, or nearer to it.
        side: Its upright edge at the side, or nearer to it.
        hem: Which allowance the hem takes.
        cloth: What it is cut of.
        sewn_on: Whether something is sewn to its lower edge, which is then called its foot.
    """
    edges = (
        Edge("waist", lines.waist, kind="waist"),
        *(() if lines.under is None else (Edge(UNDER, lines.under, kind="waist"),)),
        *side.edges,
        Edge("foot", lines.hem) if sewn_on else Edge("hem", lines.hem, Role.HEM, hem),
        *centre.hem,
        *centre.upward,
    )
    outline = join(e.path for e in edges)
    ends = (centre.hem[0].path.end if centre.hem else lines.hem.end, lines.side.end)
    hip = () if lines.hip is None else (("hip", lines.hip),)
    whole = (*level_lines(outline, hip), *(() if sewn_on else level_end(lines.hem, *ends)))
    below = () if lines.hip is None else ((lines.hip + lines.centre.end.y) / 2,)
    piece = Piece(
        name=lines.name,
        title=title,
        cut=tuple(replace(c, cloth=cloth) for c in (FOLD if centre.on_fold else PAIR)),
        edges=edges,
        darts=lines.darts,
        pleats=lines.pleats,
        notches=(*side.notches, *centre.notches_upward),
        grain=plumb_grain(outline),
        levels=tuple((n, a, b) if a.x < b.x else (n, b, a) for n, a, b in whole),
        lengthen=lengthen_lines(outline, below),
        marks=(*centre.marks, *lines.marks),
        half=centre.on_fold,
    )
    return counter_clockwise(piece)


def level_end(hem: Path, one: Point, two: Point) -> tuple[tuple[str, Point, Point], ...]:
    """The level line of a straight hem; a curved one has none."""
    return (("hem", one, two),) if isinstance(hem.segments[0], Line) and abs(one.y - two.y) < 1e-6 else ()
