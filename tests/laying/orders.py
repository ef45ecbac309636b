"""Orders to lay: the standard figure's trousers, other sizes, and pieces drawn by hand.

The hand-drawn pieces' cutting lines are their stitching lines: their areas are known by sums.
"""

from dataclasses import replace
from types import SimpleNamespace

from drafting.body import Body
from drafting.garments import GARMENTS
from drafting.geometry import Point, polyline
from drafting.pattern import (
    Cut,
    Edge,
    Finish,
    FinishedNotch,
    FinishedPattern,
    FinishedPiece,
    Notch,
    Pattern,
    Piece,
    Role,
    Seam,
    SeamPart,
)
from drafting.workroom import work

STANDARD = {
    "waist_girth": 74.0,
    "hip_girth": 101.0,
    "body_rise": 27.5,
    "side_waist_to_hip": 20.5,
    "outside_leg_length": 103.0,
}
"""The handbook's standard figure."""


def trousers(reference="order 1042", **measures):
    garment = GARMENTS["trousers"]
    body = Body.of({**STANDARD, **measures})
    return work(garment, body, garment.spec(kind="trousers"), Finish(), reference=reference)


def piece(name, *corners, cut=("main", 1, False), half=False, notches=()):
    """A piece with straight edges named after their numbers; a half has its fold on the left."""
    points = [Point(float(x), float(y)) for x, y in corners]
    pairs = list(zip(points, [*points[1:], points[0]], strict=True))
    edges = tuple(
        Edge(
            f"{name}_{n}",
            polyline(a, b),
            Role.FOLD if half and a.x == b.x == points[0].x else Role.SEAM,
        )
        for n, (a, b) in enumerate(pairs)
    )
    net = Piece(
        name=name,
        title=name.replace("_", " ").capitalize(),
        cut=(Cut(*cut),),
        edges=edges,
        notches=tuple(Notch(f"{name}_{n}", at, 1, match) for n, at, match in notches),
        grain=_upright(points),
        half=half,
    )
    return FinishedPiece(
        piece=net,
        allowances=tuple(0.0 for _ in edges),
        edge_cuts=tuple(e.path for e in edges),
        corners=(),
        cut_line=polyline(*points, points[0]),
        notches=tuple(_carried(net, notch) for notch in net.notches),
    )


def _upright(points):
    """An arrow in the middle, half as long as the piece is high."""
    xs, ys = [p.x for p in points], [p.y for p in points]
    x, y, reach = sum(xs) / len(xs), sum(ys) / len(ys), (max(ys) - min(ys)) / 4
    return Point(x, y - reach), Point(x, y + reach)


def _carried(net, notch):
    path = net.edge(notch.edge).path
    at = path.at(notch.at)
    return FinishedNotch(notch, at, at, path.tangent_at(notch.at).right)


def order(*pieces, seams=(), reference="by hand", verdict="sound"):
    """A hand-drawn order, as much of it as a lay looks at."""
    numbered = tuple(_numbered(finished, number) for number, finished in enumerate(pieces, 1))
    net = Pattern(
        kind="hand_made", title="By hand", pieces=tuple(p.piece for p in numbered), seams=seams
    )
    pattern = FinishedPattern(pattern=net, finish=Finish(), pieces=numbered)
    return SimpleNamespace(pattern=pattern, reference=reference, verdict=verdict)


def _numbered(finished, number):
    return replace(finished, piece=replace(finished.piece, number=number))


def seam(name, one, two, copies=("each", "each")):
    (piece_one, edge_one), (piece_two, edge_two) = one, two
    return Seam(
        name,
        (SeamPart(piece_one, f"{piece_one}_{edge_one}", copies[0]),),
        (SeamPart(piece_two, f"{piece_two}_{edge_two}", copies[1]),),
    )
