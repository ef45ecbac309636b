"""Pieces drawn by hand for these tests: a trouser-like front, a fold piece, a narrow band.

Their cutting lines come from shapely, not from the project, so a fault there cannot hide here.
"""

from dataclasses import replace

import shapely

from drafting.geometry import Path, Point, curve, join, polyline
from drafting.pattern import (
    Cut,
    Dart,
    Edge,
    Finish,
    FinishedNotch,
    FinishedPattern,
    FinishedPiece,
    Mark,
    Notch,
    Pattern,
    Piece,
    Role,
)


def at(x, y):
    return Point(float(x), float(y))


def front():
    """Roughly a straight trouser front: crease at x = 0, waist at the top."""
    edges = (
        Edge("hem", polyline(at(-10.5, 0), at(10.5, 0)), Role.HEM, "hem"),
        Edge(
            "inseam",
            join((
                polyline(at(10.5, 0), at(11.8, 43)),
                curve(at(11.8, 43), at(12.2, 56), at(13.6, 70), at(15.4, 76)),
            )),
            kind="inseam",
        ),
        Edge(
            "crotch",
            join((
                curve(at(15.4, 76), at(12.6, 76.6), at(10, 79.5), at(9.6, 83.4)),
                polyline(at(9.6, 83.4), at(8.4, 104)),
            )),
            kind="crotch",
        ),
        Edge("waist", curve(at(8.4, 104), at(2, 103.6), at(-6, 104), at(-11, 104.6)), kind="waist"),
        Edge(
            "side",
            join((
                curve(at(-11, 104.6), at(-13, 98), at(-14.4, 90), at(-14.4, 83.4)),
                curve(at(-14.4, 83.4), at(-14.4, 70), at(-12.2, 56), at(-11.8, 43)),
                polyline(at(-11.8, 43), at(-10.5, 0)),
            )),
            kind="side",
        ),
    )  # fmt: skip
    waist = edges[3].path
    middle = waist.length() / 2
    first, second = waist.at(middle - 1), waist.at(middle + 1)
    point = Point((first.x + second.x) / 2, first.y - 10)
    dart = Dart("waist", first, second, point, Point(point.x, point.y + 1.2))
    return Piece(
        name="front",
        title="Trouser front",
        cut=(Cut("main", 2, mirrored=True),),
        edges=edges,
        darts=(dart,),
        notches=(
            Notch("side", 21.5, 1, "side-hip"),
            Notch("side", 62.0, 2, "side-knee"),
            Notch("inseam", 43.0, 2, "inseam-knee"),
            Notch("crotch", 8.0, 1, "front-crotch"),
        ),
        grain=(at(0, 10), at(0, 85)),
        levels=(
            ("waist", at(-10.9, 104), at(8.4, 104)),
            ("hip", at(-14.4, 83.4), at(9.6, 83.4)),
            ("crotch", at(-14.2, 76), at(15.4, 76)),
            ("knee", at(-11.8, 43), at(11.8, 43)),
        ),
        lengthen=((at(-12.8, 58), at(12.3, 58)), (at(-11.2, 22), at(11.1, 22))),
        number=1,
    )


def yoke():
    """A half piece on the fold, with a round corner."""
    edges = (
        Edge("lower", polyline(at(0, 0), at(18, 0)), kind="seam"),
        Edge("side", curve(at(18, 0), at(19, 4), at(18.5, 8), at(17, 12)), kind="side"),
        Edge("upper", curve(at(17, 12), at(11, 11), at(5, 11), at(0, 11.5)), kind="waist"),
        Edge("fold", polyline(at(0, 11.5), at(0, 0)), Role.FOLD, "fold"),
    )
    return Piece(
        name="yoke",
        title="Back yoke",
        cut=(Cut("main", 1), Cut("fusible", 1)),
        edges=edges,
        notches=(Notch("lower", 9.0, 1, "yoke"),),
        grain=(at(9, 1.5), at(9, 10.0)),
        half=True,
        number=2,
    )


def band():
    """A straight waistband, long way up, with its fold line."""
    corners = (at(0, 0), at(8, 0), at(8, 79), at(0, 79), at(0, 0))
    names = ("end", "seam", "overlap", "facing")
    return Piece(
        name="waistband",
        title="Waistband",
        cut=(Cut("main", 1), Cut("fusible", 1)),
        edges=tuple(
            Edge(n, polyline(a, b)) for n, a, b in zip(names, corners, corners[1:], strict=False)
        ),
        notches=(Notch("seam", 37.0, 1, "centre-back"), Notch("seam", 19.0, 2, "side")),
        grain=(at(4, 24.5), at(4, 54.5)),
        marks=(Mark("fold", polyline(at(4, 0), at(4, 79))),),
        number=3,
    )


def finished(piece, allowance=1.0):
    """The piece with one allowance all round; on the fold none."""
    ring = shapely.Polygon([(p.x, p.y) for p in piece.outline.flattened(0.005)])
    around = ring.buffer(allowance, join_style="mitre", mitre_limit=2.5)
    if piece.half:
        around = around.intersection(shapely.box(0, -50, 200, 200))
    points = [Point(x, y) for x, y in shapely.orient_polygons(around).exterior.coords]
    edge_allowances = tuple(0.0 if e.role is Role.FOLD else allowance for e in piece.edges)
    notches = tuple(_notch(piece, n, allowance) for n in piece.notches)
    return FinishedPiece(
        piece=piece,
        allowances=edge_allowances,
        edge_cuts=tuple(None for _ in piece.edges),
        corners=(),
        cut_line=polyline(*points[:-1], points[0]),
        notches=notches,
    )


def _notch(piece, notch, allowance):
    path = piece.edge(notch.edge).path
    point, out = path.at(notch.at), path.tangent_at(notch.at).right
    return FinishedNotch(notch, point, point + out * allowance, out)


def pattern(*pieces, finish=None):
    pieces = pieces or (front(), yoke(), band())
    net = Pattern(kind="hand_made", title="Hand-made trousers", pieces=pieces, seams=())
    return FinishedPattern(
        pattern=net, finish=finish or Finish(), pieces=tuple(finished(p) for p in pieces)
    )


def numbered(piece, number):
    return replace(piece, number=number)


__all__ = ["Path", "at", "band", "finished", "front", "numbered", "pattern", "yoke"]
