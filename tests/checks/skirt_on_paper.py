"""A skirt of rectangles whose every measure is known without measuring: an invented garment.

Front and back are pairs, 24 cm wide and 60 cm long, each with one dart of 3 cm by 12 cm in the
waist; the band is 84 cm long. Drawn on squared paper: x from 0 to 24, the hem at y = 0.
"""

from __future__ import annotations

from dataclasses import replace

import shapely

from drafting.geometry import Path, Point, Segment, polyline
from drafting.pattern import (
    Cut,
    Dart,
    Edge,
    Finish,
    FinishedPattern,
    FinishedPiece,
    Girth,
    Notch,
    Pattern,
    Piece,
    Role,
    Seam,
    SeamPart,
    Want,
)

WIDE, LONG, HIP = 24.0, 60.0, 40.0
INTAKE, DEEP = 3.0, 12.0
SEWN = WIDE - INTAKE
BAND = 4 * SEWN

PAIR = (Cut("main", 2, mirrored=True),)


def edge(
    name: str, *points: tuple[float, float], role: Role = Role.SEAM, kind: str = "seam"
) -> Edge:
    return Edge(name, polyline(*(Point(x, y) for x, y in points)), role, kind)


def dart(
    middle: float = 12.0, intake: float = INTAKE, deep: float = DEEP, top: float = LONG
) -> Dart:
    point = Point(middle, top - deep)
    right, left = Point(middle + intake / 2, top), Point(middle - intake / 2, top)
    return Dart("waist", right, left, point, Point(middle, top - deep + 1.25))


def panel(name: str, right: Edge, left: Edge, notches: tuple[Notch, ...]) -> Piece:
    waist = edge("waist", (WIDE, LONG), (13.5, LONG), (10.5, LONG), (0, LONG), kind="waist")
    return Piece(
        name=name,
        title=name.title(),
        cut=PAIR,
        edges=(edge("hem", (0, 0), (WIDE, 0), role=Role.HEM, kind="hem"), right, waist, left),
        darts=(dart(),),
        notches=notches,
        grain=(Point(12, 5), Point(12, 45)),
        levels=tuple((n, Point(0, y), Point(WIDE, y)) for n, y in (("hip", HIP), ("hem", 0.0))),
    )


def front() -> Piece:
    """Centre at x = 0; the waist notch is sewn 4 cm from the centre."""
    side = edge("side", (WIDE, 0), (WIDE, LONG), kind="side")
    centre = edge("centre", (0, LONG), (0, 0))
    notches = (Notch("side", HIP, 1, "hip"), Notch("waist", 20.0, 1, "front"))
    return panel("front", side, centre, notches)


def back() -> Piece:
    """Centre at x = 24; the waist notch is sewn 5 cm from the centre."""
    centre = edge("centre", (WIDE, 0), (WIDE, LONG))
    side = edge("side", (0, LONG), (0, 0), kind="side")
    notches = (Notch("side", LONG - HIP, 1, "hip"), Notch("waist", 5.0, 2, "back"))
    return panel("back", centre, side, notches)


def band() -> Piece:
    return Piece(
        name="band",
        title="Band",
        cut=(Cut("main", 1), Cut("fusible", 1)),
        edges=(
            edge("lower", (0, 0), (BAND, 0), kind="band"),
            edge("right_end", (BAND, 0), (BAND, 4), role=Role.OPENING),
            edge("upper", (BAND, 4), (0, 4), role=Role.FINISHED),
            edge("left_end", (0, 4), (0, 0), role=Role.OPENING),
        ),
        notches=(
            Notch("lower", 4, 1, "front"),
            Notch("lower", SEWN, 1, "side"),
            Notch("lower", 2 * SEWN - 5, 2, "back"),
            Notch("lower", 2 * SEWN + 5, 2, "back"),
            Notch("lower", 3 * SEWN, 1, "side"),
            Notch("lower", BAND - 4, 1, "front"),
        ),
        grain=(Point(40, 0.5), Point(40, 3.5)),
    )


SIDE = Seam("side", (SeamPart("front", "side"),), (SeamPart("back", "side", reversed=True),))
WAIST = Seam(
    "waist",
    (
        SeamPart("front", "waist", "both", 2, reversed=True),
        SeamPart("back", "waist", "both", 2, reversed=True),
    ),
    (SeamPart("band", "lower"),),
)


def skirt(
    *pieces: Piece, seams: tuple[Seam, ...] | None = None, wants: tuple[Want, ...] = ()
) -> Pattern:
    """The skirt, with the pieces given in place of its own."""
    given = {p.name: p for p in pieces}
    centre = [
        Seam(
            f"centre_{name}",
            (SeamPart(name, "centre", "right"),),
            (SeamPart(name, "centre", "left"),),
        )
        for name in ("front", "back")
    ]
    return Pattern(
        kind="skirt",
        title="Skirt on paper",
        pieces=tuple(given.pop(p.name, p) for p in (front(), back(), band()))
        + tuple(given.values()),
        seams=(SIDE, *centre, WAIST) if seams is None else seams,
        wants=wants,
    )


def with_edge(piece: Piece, changed: Edge) -> Piece:
    return replace(
        piece, edges=tuple(changed if e.name == changed.name else e for e in piece.edges)
    )


def outline(piece: Piece) -> Path:
    """The stitching line, also where its ends do not meet."""
    segments: list[Segment] = [s for e in piece.edges for s in e.path.segments]
    return Path(tuple(segments))


def beside(piece: Piece, by: float) -> Path:
    """A cutting line by another library: shapely's buffer with mitred corners."""
    area = shapely.Polygon([(p.x, p.y) for p in outline(piece).flattened(0.001)])
    area = area if area.is_valid else area.convex_hull  # some are spoilt on purpose
    ring = shapely.geometry.polygon.orient(area.buffer(by, join_style="mitre")).exterior
    return polyline(*(Point(x, y) for x, y in ring.coords))


def cut_out(piece: Piece, allowance: float = 1.0, line: Path | None = None) -> FinishedPiece:
    count = len(piece.edges)
    return FinishedPiece(
        piece=piece,
        allowances=(allowance,) * count,
        edge_cuts=(None,) * count,
        corners=(),
        cut_line=beside(piece, allowance) if line is None else line,
        notches=(),
    )


def finished(pattern: Pattern, *pieces: FinishedPiece) -> FinishedPattern:
    """A finished pattern with the pieces given in place of plainly cut ones."""
    given = {p.piece.name: p for p in pieces}
    cut = tuple(given.get(p.name) or cut_out(p) for p in pattern.pieces)
    return FinishedPattern(pattern=pattern, finish=Finish(), pieces=cut)


HIP_WANT = Want(
    name="finished_hip_girth",
    measuring=Girth("hip", ("front", "back")),
    wanted=96.0,
    low=95.5,
    high=97.0,
    reason="Four rectangles of 24 cm.",
)
