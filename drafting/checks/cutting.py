"""The cutting line: simple, around the stitching line, nowhere nearer than the allowance."""

from __future__ import annotations

import math
from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Sequence

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from drafting.checks.along import mouths
from drafting.checks.outline import FLAT, Corners, held, hold, numbered, wedges
from drafting.geometry import JOIN
from drafting.pattern import (
    NO_EASE,
    Edge,
    Finding,
    FinishedPattern,
    FinishedPiece,
    Piece,
    Role,
    Seam,
)

CUT_TOLERANCE = 0.01
"""The cutting line keeps its distance to 0.1 mm."""

TRIM = 1.5
"""Beside each corner, 1.5 times the allowance are left to the corner's own rule."""

BEYOND = 10.0
"""A cutting line that leaves a fold at a sharp angle runs along it for up to 10 cm more."""


def cut_lines_sound(finished: FinishedPattern) -> tuple[Finding, ...]:
    """Find cutting lines that are open, cross themselves, or do not hold the stitching line."""
    pieces = finished.pieces
    hold(piece.cut_line for piece in pieces)
    hold(piece.piece for piece in pieces)
    holding = _surely_holding(pieces)
    return tuple(
        f for piece, sure in zip(pieces, holding, strict=True) for f in _line(piece, sure=sure)
    )


def allowances_kept(finished: FinishedPattern) -> tuple[Finding, ...]:
    """Find edges whose cutting line runs nearer than their allowance."""
    every = [beside for piece in finished.pieces for beside in _beside(piece)]
    gaps = _nearest([held(beside.piece.cut_line).ring for beside in every], every)
    return tuple(
        f
        for beside, gap in zip(every, gaps, strict=True)
        if gap < beside.allowance - CUT_TOLERANCE
        for f in _short(beside)
    )


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


def _line(piece: FinishedPiece, *, sure: bool) -> Iterator[Finding]:
    name, cut = piece.piece.name, piece.cut_line
    if cut.start.distance(cut.end) > JOIN:
        yield _error("cut_line_open", name, f"The cutting line of {name} is not closed.")
    elif not held(cut).simple:
        yield _error("cut_line_crosses", name, f"The cutting line of {name} crosses itself.")
    elif cut.area() <= 0:
        yield _error("cut_line_clockwise", name, f"The cutting line of {name} runs clockwise.")
    elif not (sure or _holds(held(cut).area, piece.piece)):
        yield _error(
            "stitch_line_outside",
            name,
            f"The cutting line of {name} runs inside its stitching line.",
        )


def _surely_holding(pieces: Sequence[FinishedPiece]) -> list[bool]:
    """Of each piece, whether two sound lines are drawn, one around the other; asked all at once."""
    drawn = [(held(piece.cut_line), held(piece.piece)) for piece in pieces]
    sound = [(c.area, n.area) if c.simple and n.simple else (None, None) for c, n in drawn]
    holding: list[bool] = shapely.covers(*np.array(sound, object).T).tolist()
    return holding


def _holds(cut: shapely.Polygon, piece: Piece) -> bool:
    """Whether the cutting line holds the piece but for darts and pleats: caps may dip under it."""
    taken = [area.buffer(CUT_TOLERANCE) for area in wedges(piece.taken)] if piece.taken else []
    sewn = shapely.make_valid(held(piece).area).difference(shapely.union_all(taken))
    return bool(cut.buffer(CUT_TOLERANCE).covers(sewn))


def _off_the_folds(piece: FinishedPiece, cut: BaseGeometry) -> BaseGeometry:
    """The cutting line without the folds it runs along: an edge may leave a fold at any angle."""
    folds = [e.path for e in piece.piece.edges if e.role is Role.FOLD]
    if not folds:
        return cut
    ends = [((f.end - f.start).unit * BEYOND, f) for f in folds]
    lines = [((a.x, a.y), (b.x, b.y)) for v, f in ends for a, b in ((f.start + -v, f.end + v),)]
    return cut.difference(shapely.MultiLineString(lines).buffer(CUT_TOLERANCE / 10))


class _Beside:
    """An edge, its allowance, and the stretches of it that the allowance must run beside."""

    __slots__ = ("allowance", "edge", "piece", "stretches")

    def __init__(
        self, piece: FinishedPiece, edge: Edge, allowance: float, stretches: list[Corners]
    ) -> None:
        self.piece = piece
        self.edge = edge
        self.allowance = allowance
        self.stretches = stretches


def _beside(piece: FinishedPiece) -> list[_Beside]:
    """The edges of a piece with an allowance; no line is nearer than none."""
    found = [
        _Beside(piece, edge, allowance, _between(piece.piece, edge, TRIM * allowance))
        for edge, allowance in zip(piece.piece.edges, piece.allowances, strict=True)
        if allowance > CUT_TOLERANCE
    ]
    return [beside for beside in found if beside.stretches]


def _nearest(cuts: Sequence[BaseGeometry], every: Sequence[_Beside]) -> list[float]:
    """How near each cutting line comes to the stretches of each edge, all asked at once."""
    if not every:
        return []
    points, numbers = numbered([stretch for beside in every for stretch in beside.stretches])
    counts = [len(beside.stretches) for beside in every]
    lines = shapely.linestrings(points, indices=numbers)
    gaps = shapely.distance(np.repeat(np.array(cuts, object), counts), lines)
    nearest: list[float] = np.minimum.reduceat(gaps, np.cumsum([0, *counts[:-1]])).tolist()
    return nearest


def _short(beside: _Beside) -> Iterator[Finding]:
    """An allowance that is not kept, unless only where the cutting line leaves folds."""
    name, edge, allowance = beside.piece.piece.name, beside.edge.name, beside.allowance
    cut = _off_the_folds(beside.piece, held(beside.piece.cut_line).ring)
    (nearest,) = _nearest([cut], [beside])
    if nearest < allowance - CUT_TOLERANCE:
        yield Finding(
            code="allowance_short",
            severity="error",
            where=f"{name}.{edge}",
            message=f"Beside {edge} of {name} the cutting line comes as near as {nearest:.2f} cm; "
            f"the allowance is {allowance:g} cm.",
            measured=nearest,
            allowed=(allowance - CUT_TOLERANCE, allowance),
        )


def _between(piece: Piece, edge: Edge, trim: float) -> list[Corners]:
    """The stretches of an edge between corners and mouths, trimmed; over mouths stand caps."""
    points = edge.path.coordinates(FLAT)
    along = _along(points)
    taken = sorted((m.first, m.last) for m in mouths(piece, edge.name))
    starts, ends = (0.0, *(b for _, b in taken)), (*(a for a, _ in taken), along[-1])
    return [
        _stretch(points, along, start + trim, end - trim)
        for start, end in zip(starts, ends, strict=True)
        if end - start > 2 * trim
    ]


def _along(points: Corners) -> list[float]:
    """How far along a line of strokes each corner lies."""
    x, y = points[0]
    way, found = 0.0, []
    for u, v in points:
        way += math.sqrt((u - x) * (u - x) + (v - y) * (v - y))
        found.append(way)
        x, y = u, v
    return found


def _stretch(points: Corners, along: list[float], start: float, end: float) -> Corners:
    """What of a line of strokes lies between two distances along it."""
    first, last = bisect_right(along, start), bisect_left(along, end)
    head = _walked(points, along, first, start)
    return [head, *points[first:last], _walked(points, along, last, end)]


def _walked(points: Corners, along: list[float], k: int, at: float) -> tuple[float, float]:
    """The point at a distance that is reached on the stroke to point k."""
    (x, y), (u, v) = points[k - 1], points[k]
    share = (at - along[k - 1]) / (along[k] - along[k - 1])
    return x + (u - x) * share, y + (v - y) * share


def _error(code: str, where: str, message: str) -> Finding:
    return Finding(code=code, severity="error", where=where, message=message)
