"""The cutting line: simple, around the stitching line, nowhere nearer than the allowance."""

from __future__ import annotations

from collections.abc import Iterator

import shapely
from shapely.ops import substring

from drafting.checks.along import mouths
from drafting.checks.outline import area_of, flat, is_simple, polygon, wedge
from drafting.geometry import JOIN
from drafting.pattern import NO_EASE, Edge, Finding, FinishedPattern, FinishedPiece, Piece, Seam

CUT_TOLERANCE = 0.01
"""The cutting line keeps its distance to 0.1 mm."""

TRIM = 1.5
"""Beside each corner, 1.5 times the allowance are left to the corner's own rule."""

FINE = 0.001
"""Greatest error in cm of a curve flattened to measure its distance from another."""


def cut_lines_sound(finished: FinishedPattern) -> tuple[Finding, ...]:
    """Find cutting lines that are open, cross themselves, or do not hold the stitching line."""
    return tuple(f for piece in finished.pieces for f in _line(piece))


def allowances_kept(finished: FinishedPattern) -> tuple[Finding, ...]:
    """Find edges whose cutting line runs nearer than their allowance."""
    return tuple(f for piece in finished.pieces for f in _kept(piece))


def allowances_agree(finished: FinishedPattern) -> tuple[Finding, ...]:
    """Warn where the edges of a plain seam are cut with different allowances."""
    return tuple(
        Finding(
            code="allowances_differ",
            severity="warning",
            where=seam.name,
            message=f"The edges of the {seam.name} seam have allowances of "
            f"{' and '.join(f'{a:g}' for a in sorted(found))} cm; cut them alike.",
            measured=max(found) - min(found),
            allowed=(0.0, JOIN),
        )
        for seam in finished.pattern.seams
        if seam.ease == NO_EASE and max(found := _allowances(finished, seam)) - min(found) > JOIN
    )


def _allowances(finished: FinishedPattern, seam: Seam) -> set[float]:
    return {finished.piece(p.piece).allowance(p.edge) for p in (*seam.one, *seam.two)}


def _line(piece: FinishedPiece) -> Iterator[Finding]:
    name, cut = piece.piece.name, piece.cut_line
    if cut.start.distance(cut.end) > JOIN:
        yield _error("cut_line_open", name, f"The cutting line of {name} is not closed.")
    elif not is_simple(cut):
        yield _error("cut_line_crosses", name, f"The cutting line of {name} crosses itself.")
    elif cut.area() <= 0:
        yield _error("cut_line_clockwise", name, f"The cutting line of {name} runs clockwise.")
    elif not area_of(cut).buffer(CUT_TOLERANCE).covers(_sewn_area(piece.piece)):
        yield _error(
            "stitch_line_outside",
            name,
            f"The cutting line of {name} runs inside its stitching line.",
        )


def _sewn_area(piece: Piece) -> shapely.Geometry:
    """The area inside the stitching line but for darts and pleats, whose caps may dip under it."""
    taken = [wedge(one).buffer(CUT_TOLERANCE) for one in piece.taken]
    return shapely.make_valid(polygon(piece)).difference(shapely.union_all(taken))


def _kept(piece: FinishedPiece) -> Iterator[Finding]:
    cut = shapely.LinearRing(flat(piece.cut_line, FINE))
    for edge, allowance in zip(piece.piece.edges, piece.allowances, strict=True):
        stretches = _between(piece.piece, edge, TRIM * allowance)
        nearest = min((float(cut.distance(line)) for line in stretches), default=allowance)
        if nearest < allowance - CUT_TOLERANCE:
            yield Finding(
                code="allowance_short",
                severity="error",
                where=f"{piece.piece.name}.{edge.name}",
                message=f"Beside {edge.name} of {piece.piece.name} the cutting line comes as "
                f"near as {nearest:.2f} cm; the allowance is {allowance:g} cm.",
                measured=nearest,
                allowed=(allowance - CUT_TOLERANCE, allowance),
            )


def _between(piece: Piece, edge: Edge, trim: float) -> Iterator[shapely.Geometry]:
    """The stretches of an edge between corners and mouths, trimmed; over mouths stand caps."""
    line = shapely.LineString(flat(edge.path, FINE))
    taken = sorted((m.first, m.last) for m in mouths(piece, edge.name))
    starts, ends = (0.0, *(b for _, b in taken)), (*(a for a, _ in taken), line.length)
    for start, end in zip(starts, ends, strict=True):
        if end - start > 2 * trim:
            yield substring(line, start + trim, end - trim)


def _error(code: str, where: str, message: str) -> Finding:
    return Finding(code=code, severity="error", where=where, message=message)
