"""Balance marks: what carries the same name on the two sides of a seam must meet."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.checks.sewing import SEAM_TOLERANCE, Balance, Side, beyond, drift, pairs, side
from drafting.pattern import Finding, FinishedPattern, Seam

NOTCH_TOLERANCE = SEAM_TOLERANCE
"""Notches meet as closely as the seam's ends do."""


def notches_meet(finished: FinishedPattern) -> tuple[Finding, ...]:
    """Find notches without a partner, shifted against it, or of another count.

    Distances are sewn ones from the seam's start, dart mouths left out. Wanted ease may lie
    anywhere along the seam. A notch may also meet a joint or the end of the other side.
    """
    pattern = finished.pattern
    marked = {(piece.name, n.edge) for piece in pattern.pieces for n in piece.notches}
    return tuple(
        finding
        for seam in pattern.seams
        if any((p.piece, p.edge) in marked for p in (*seam.one, *seam.two))
        for finding in _on_seam(seam, side(pattern, seam.one), side(pattern, seam.two))
    )


def notches_on_edges(finished: FinishedPattern) -> tuple[Finding, ...]:
    """Find notches that lie past the end of their edge."""
    return tuple(
        Finding(
            code="notch_off_edge",
            severity="error",
            where=f"{piece.name}.{notch.edge}",
            message=f"The notch {notch.match} lies at {notch.at:.2f} cm of an edge that is "
            f"{length:.2f} cm long.",
            measured=notch.at,
            allowed=(0.0, length),
        )
        for piece in finished.pattern.pieces
        for notch in piece.notches
        if beyond(notch.at, 0.0, length := piece.edge(notch.edge).path.length()) > 1e-6
    )


def _on_seam(seam: Seam, one: Side, two: Side) -> Iterator[Finding]:
    paired = pairs(one, two)
    for a, b in paired:
        yield from _compared(seam, a, b)
    yield from _alone(seam, one, two, [a for a, _ in paired])
    yield from _alone(seam, two, one, [b for _, b in paired])


def _compared(seam: Seam, a: Balance, b: Balance) -> Iterator[Finding]:
    low, high = drift(seam.ease)
    if beyond(a.at - b.at, low, high) > NOTCH_TOLERANCE:
        yield Finding(
            code="notch_shifted",
            severity="error",
            where=seam.name,
            message=f"The notches {a.match} of the {seam.name} seam lie at {a.at:.2f} and "
            f"{b.at:.2f} cm from its start and do not meet.",
            measured=a.at - b.at,
            allowed=(low - NOTCH_TOLERANCE, high + NOTCH_TOLERANCE),
        )
    if a.count != b.count:
        yield Finding(
            code="notch_count_differs",
            severity="error",
            where=seam.name,
            message=f"The notch {a.match} of the {seam.name} seam is cut {a.count} times on one "
            f"side and {b.count} times on the other.",
        )


def _alone(seam: Seam, here: Side, there: Side, paired: list[Balance]) -> Iterator[Finding]:
    low, high = drift(seam.ease)
    room = max(-low, high) + NOTCH_TOLERANCE
    left = list(here.marks)
    for mark in paired:
        left.remove(mark)
    for mark in left:
        if not any(abs(mark.at - joint) <= room for joint in there.joints):
            yield Finding(
                code="notch_unpaired",
                severity="error",
                where=seam.name,
                message=f"The notch {mark.match} at {mark.at:.2f} cm of the {seam.name} seam "
                "has no partner on the other side.",
                measured=mark.at,
            )
