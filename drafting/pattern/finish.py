"""Add the allowances: from the stitching line to the line that the scissors follow."""

from __future__ import annotations

from collections.abc import Callable

from drafting.geometry import Path, Point, Segment, Vector, crossing_with_line, nearest
from drafting.pattern.allowance import Finish
from drafting.pattern.arm import MITRE_LIMIT, TINY
from drafting.pattern.contour import Stretch, beside_edge, contour
from drafting.pattern.corners import Made, Side, turn_corner
from drafting.pattern.finished import Corner, FinishedNotch, FinishedPattern, FinishedPiece
from drafting.pattern.pattern import Pattern
from drafting.pattern.piece import RAW, Edge, Notch, Piece, Role, Taken

ON_LEG = 1e-3
"""A notch this near to a dart's leg end (cm) marks the leg, and follows it outward."""


def finish_pattern(pattern: Pattern, finish: Finish) -> FinishedPattern:
    """Give every piece its cutting line. Checks, findings and labels are left to others.

    Args:
        pattern: The net pattern; its seams stand in sewing order.
        finish: Allowance in cm for each kind of edge.
    """
    ranks = _ranks(pattern)
    last = len(pattern.seams)

    def finished(piece: Piece) -> FinishedPiece:
        return finish_piece(piece, finish, lambda edge: ranks.get((piece.name, edge), last))

    pieces = tuple(finished(piece) for piece in pattern.pieces)
    return FinishedPattern(pattern=pattern, finish=finish, pieces=pieces)


def _ranks(pattern: Pattern) -> dict[tuple[str, str], int]:
    """When each edge is first sewn: the number of its first seam."""
    ranks: dict[tuple[str, str], int] = {}
    for number, seam in enumerate(pattern.seams):
        for part in (*seam.one, *seam.two):
            ranks.setdefault((part.piece, part.edge), number)
    return ranks


def finish_piece(piece: Piece, finish: Finish, rank: Callable[[str], int]) -> FinishedPiece:
    """Give one piece its cutting line.

    Args:
        piece: The net piece.
        finish: Allowance in cm for each kind of edge.
        rank: When the edge of a name is sewn; the lower, the earlier. Edges of the same rank meet
            in a mitre, others are squared to the one sewn first.
    """
    allowances = tuple(edge_allowance(edge, finish) for edge in piece.edges)
    stretches = tuple(
        beside_edge(edge, piece.taken_on(edge.name), allowance)
        for edge, allowance in zip(piece.edges, allowances, strict=True)
    )
    made = _corners(piece, stretches, rank)
    width = {edge.name: a for edge, a in zip(piece.edges, allowances, strict=True)}
    line = contour(stretches, [m.turn for m in made])
    return FinishedPiece(
        piece=piece,
        allowances=allowances,
        edge_cuts=tuple(_path(segments) for segments in line.edges),
        corners=_described(piece, made, line.corners),
        cut_line=line.line,
        notches=tuple(
            _carried_out(piece, notch, width[notch.edge], line.line) for notch in piece.notches
        ),
    )


def edge_allowance(edge: Edge, finish: Finish) -> float:
    """Allowance of an edge in cm: none on a fold or on an edge that stays as it is cut."""
    return 0.0 if edge.role is Role.FOLD or edge.kind == RAW else finish.allowance(edge.kind)


def _path(segments: tuple[Segment, ...]) -> Path | None:
    return Path(segments) if segments else None


def _corners(
    piece: Piece, stretches: tuple[Stretch, ...], rank: Callable[[str], int]
) -> list[Made]:
    """The corner at the end of each edge."""
    ranks = [rank(edge.name) for edge in piece.edges]
    every = list(zip(piece.edges, stretches, ranks, strict=True))
    ends = [Side(s.runs[-1].end, edge.name, edge.role, r) for edge, s, r in every]
    starts = [Side(s.runs[0].start, edge.name, edge.role, r) for edge, s, r in every]
    return list(map(turn_corner, ends, [*starts[1:], starts[0]]))


def _described(
    piece: Piece, made: list[Made], paths: tuple[tuple[Segment, ...], ...]
) -> tuple[Corner, ...]:
    edges = piece.edges
    return tuple(
        Corner(edge.name, after.name, m.rule, edge.path.end, _path(path), m.squared_to)
        for edge, after, m, path in zip(edges, (*edges[1:], edges[0]), made, paths, strict=True)
    )


def _carried_out(piece: Piece, notch: Notch, allowance: float, line: Path) -> FinishedNotch:
    """A notch carried from the stitching line to the first cut that it meets square outward.

    In an inner corner, where it would run along the neighbour's allowance, the nearest cut counts.
    """
    path = piece.edge(notch.edge).path
    i, t = path.locate(notch.at)
    point = path.segments[i].at(t)
    outward = _along_leg(piece.taken_on(notch.edge), point) or path.segments[i].tangent(t).right
    cut = _outward(line, point, outward, MITRE_LIMIT * allowance + TINY)
    if cut is None:
        i, t, away = nearest(line, point)
        cut = line.segments[i].at(t)
        outward = (cut - point).unit if away > TINY else outward
    return FinishedNotch(notch, point, cut, outward)


def _along_leg(taken: tuple[Taken, ...], point: Point) -> Vector | None:
    for one in taken:
        for end, outward in zip((one.first, one.second), one.outward, strict=True):
            if point.distance(end) < ON_LEG:
                return outward
    return None


def _outward(line: Path, point: Point, outward: Vector, far: float) -> Point | None:
    """The first cut straight out from a point; None where it is farther than `far`."""
    hits = [line.segments[i].at(t) for i, t in crossing_with_line(line, point, outward)]
    ahead = [p for p in hits if -TINY < (p - point).dot(outward) < far]
    return min(ahead, key=lambda p: p.distance(point), default=None)
