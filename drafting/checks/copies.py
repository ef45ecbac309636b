"""Every edge of every cut copy belongs to exactly one seam, or is a hem, fold, opening or finished.

A pair has right and left copies; a piece on the fold has a right and a left half in each copy;
any other piece has single copies. Fusible is ironed on, not sewn, and does not count.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from drafting.geometry import remembered
from drafting.pattern import Finding, FinishedPattern, Pattern, Piece, Role, Seam, SeamPart

NOT_SEWN = frozenset({"fusible"})
"""Cloths that are ironed to another piece. Source: common practice, no source."""

Place = tuple[str, str, str]
"""Piece, edge, and right, left or single."""


@remembered
def copies(piece: Piece) -> dict[str, int]:
    """How many right, left or single copies (or halves) of a piece are sewn."""
    found: Counter[str] = Counter()
    for cut in piece.cut:
        if cut.cloth in NOT_SEWN:
            continue
        if piece.half:
            found.update(right=cut.quantity, left=cut.quantity)
        elif cut.mirrored:
            found.update(right=cut.quantity - cut.quantity // 2, left=cut.quantity // 2)
        else:
            found.update(single=cut.quantity)
    return dict(found)


def edges_used_once(finished: FinishedPattern) -> tuple[Finding, ...]:
    """Find edges that no seam or more than one seam takes, and seams whose copies do not agree."""
    pattern = finished.pattern
    used: Counter[Place] = Counter()
    for seam in pattern.seams:
        for part in (*seam.one, *seam.two):
            for hand, count in _taken(pattern.piece(part.piece), part).items():
                used[part.piece, part.edge, hand] += count
    found = [f for piece in pattern.pieces for f in _unused(piece, used)]
    return (*found, *(f for seam in pattern.seams for f in _sewn_alike(pattern, seam)))


def _taken(piece: Piece, part: SeamPart) -> dict[str, int]:
    """Which copies a part takes, over all times that its seam is sewn."""
    cut = copies(piece)
    if part.copy == "each":
        return cut
    if part.copy != "both":
        return {part.copy if "single" not in cut else "single": part.count}
    if "single" in cut:
        return {"single": part.count}
    return {"right": part.count - part.count // 2, "left": part.count // 2}


def _unused(piece: Piece, used: Counter[Place]) -> Iterator[Finding]:
    for edge in piece.edges:
        for hand, count in copies(piece).items():
            taken = used[piece.name, edge.name, hand]
            if taken != (wanted := count if edge.role is Role.SEAM else 0):
                yield Finding(
                    code="edge_not_sewn" if taken < wanted else "edge_sewn_twice",
                    severity="error",
                    where=f"{piece.name}.{edge.name}",
                    message=f"The {edge.name} edge ({edge.role.value}) of the {hand} {piece.name} "
                    f"lies in {taken} seams; it should lie in {wanted}.",
                    measured=float(taken),
                    allowed=(float(wanted), float(wanted)),
                    unit="count",
                )


def _sewn_alike(pattern: Pattern, seam: Seam) -> Iterator[Finding]:
    times = {_times(pattern.piece(p.piece), p) for p in (*seam.one, *seam.two)}
    if len(times) != 1 or not all(t.is_integer() and t > 0 for t in times):
        told = ", ".join(f"{t:g}" for t in sorted(times))
        yield Finding(
            code="seam_copies_differ",
            severity="error",
            where=seam.name,
            message=f"The parts of the {seam.name} seam would be sewn {told} times; the copies "
            "that are cut do not come out even.",
        )


def _times(piece: Piece, part: SeamPart) -> float:
    """How often a seam is sewn, by one of its parts."""
    return sum(copies(piece).values()) / part.count if part.copy == "each" else 1.0
