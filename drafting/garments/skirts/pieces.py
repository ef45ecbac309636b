"""Skirts, the panels: from trued lines to pieces with their notches and level lines."""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.craft.around import ZIP
from drafting.craft.piecework import counter_clockwise, lengthen_lines, level_lines, plumb_grain
from drafting.craft.rules import NOTCH_FROM_CORNER
from drafting.craft.vent import CentreSeam, zip_notch
from drafting.garments.skirts.trueing import Lines
from drafting.geometry import Path, Point, join
from drafting.pattern import Cut, Edge, Notch, Piece, Role

FOLD = (Cut("main", 1),)
PAIR = (Cut("main", 2, mirrored=True),)


@dataclass(frozen=True, slots=True)
class Upright:
    """An upright edge of a panel, divided: its stretches from the waist down, and what is sewn.

    Attributes:
        edges: From the waist down to the hem.
        sewn: Names of those that are sewn, from the top down; () on a fold.
    """

    edges: tuple[Edge, ...]
    sewn: tuple[str, ...]


def on_fold(name: str, centre: Path) -> Upright:
    """A centre on the fold."""
    return Upright((Edge(name, centre, Role.FOLD, "raw"),), ())


def plain_seam(name: str, line: Path, slit: float = 0.0, kind: str = "side") -> Upright:
    """A seam, its top left to the zip for `slit` cm."""
    if not slit:
        return Upright((Edge(name, line, kind=kind),), (name,))
    top, rest = line.split(slit)
    return Upright((Edge(ZIP, top, kind="opening"), Edge(name, rest, kind=kind)), (ZIP, name))


def panel_piece(
    title: str, lines: Lines, centre: Upright | CentreSeam, side: Upright, *, hem: str = "hem", cloth: str = "main"
) -> Piece:
    """A quarter of the skirt: waist, side, hem and centre; on the fold where the centre is one."""
    foot = centre.hem if isinstance(centre, CentreSeam) else ()
    marks = centre.marks if isinstance(centre, CentreSeam) else ()
    half = any(e.role is Role.FOLD for e in centre.edges)
    edges = (
        Edge("waist", lines.waist, kind="waist"),
        *side.edges,
        Edge("hem", lines.hem, Role.HEM, hem),
        *foot,
        *(e.reversed() for e in reversed(centre.edges)),
    )
    outline = join(e.path for e in edges)
    ends = (foot[0].path.end if foot else lines.hem.end, lines.side.end)
    whole = (*level_lines(outline, (("hip", lines.hip),)), *level_end("hem", *ends))
    below = (lines.hip + lines.centre.end.y) / 2
    piece = Piece(
        name=lines.name,
        title=title,
        cut=tuple(replace(c, cloth=cloth) for c in (FOLD if half else PAIR)),
        edges=edges,
        darts=lines.darts,
        notches=notches(lines, centre, side),
        grain=plumb_grain(outline),
        levels=tuple((n, a, b) if a.x < b.x else (n, b, a) for n, a, b in whole),
        lengthen=lengthen_lines(outline, (below,)),
        marks=marks,
        half=half,
    )
    return counter_clockwise(piece)


def level_end(name: str, one: Point, two: Point) -> tuple[tuple[str, Point, Point], ...]:
    """The level line of a straight hem; a curved one has none."""
    return ((name, one, two),) if abs(one.y - two.y) < 1e-6 else ()


def notches(lines: Lines, centre: Upright | CentreSeam, side: Upright) -> tuple[Notch, ...]:
    """The zip's end, and a single notch at the hip, walked from the hem where the sides agree."""
    slit = sum(e.path.length() for e in side.edges if e.name == ZIP)
    below = lines.side.segments[-1].length()
    last = side.edges[-1]
    at = last.path.length() - below
    hip = (Notch(last.name, at, 1, f"{last.name}-hip"),) if at > NOTCH_FROM_CORNER else ()
    up = tuple(n for e in centre.edges if e.name == ZIP for n in zip_notch(e.path.length()))
    up += centre.notches if isinstance(centre, CentreSeam) else ()
    lengths = {e.name: e.path.length() for e in centre.edges}
    return (*hip, *zip_notch(slit), *(replace(n, at=lengths[n.edge] - n.at) for n in up))
