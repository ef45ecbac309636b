"""What every cut must be: sound, simple in outline, each edge sewn once, each seam in its turn."""

from __future__ import annotations

from collections import Counter

import shapely

from drafting.pattern import Pattern, Piece, Role
from drafting.workroom import Work


def sound(done: Work, *, but: frozenset[str] = frozenset()) -> None:
    """Sound by its checks, and its outlines simple by another library."""
    errors = [f for f in done.pattern.findings if f.severity == "error" and f.code not in but]
    assert errors == []
    assert all(s.matches for s in done.seams)
    for piece in done.pattern.pieces:
        for line in (piece.piece.outline, piece.cut_line):
            points = shapely.LineString([(p.x, p.y) for p in line.flattened(0.01)])
            ring = shapely.remove_repeated_points(points, 1e-9)
            assert shapely.LinearRing(ring.coords).is_simple, piece.piece.name


def copies(piece: Piece) -> int:
    """How many copies of a piece, or halves of them, are sewn."""
    cut = sum(c.quantity for c in piece.cut if c.cloth != "fusible")
    return cut * 2 if piece.half else cut


def each_edge_sewn_once(pattern: Pattern) -> None:
    """Counted from the seams alone, not by the checks."""
    wanted = {
        (p.name, e.name): copies(p) for p in pattern.pieces for e in p.edges if e.role is Role.SEAM
    }
    used: Counter[tuple[str, str]] = Counter()
    for seam in pattern.seams:
        for part in (*seam.one, *seam.two):
            piece = pattern.piece(part.piece)
            used[part.piece, part.edge] += copies(piece) if part.copy == "each" else part.count
    assert dict(used) == wanted


def each_seam_in_turn(pattern: Pattern) -> None:
    """Each seam is sewn once, and its sides hang together before it is sewn."""
    assert [n for step in pattern.sewing for n in step.seams] == [s.name for s in pattern.seams]
    groups = {p.name: {p.name} for p in pattern.pieces}
    for seam in pattern.seams:
        for side in (seam.one, seam.two):
            members = {part.piece for part in side}
            assert members <= groups[side[0].piece], f"{seam.name}: {members} do not hang together"
        whole = set.union(*(groups[p.piece] for p in (*seam.one, *seam.two)))
        groups.update(dict.fromkeys(whole, whole))
