"""Match marks at side and centres, for cloth with nap or checks.

Source: the side seams marked half way down, the centres at the bust line: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from drafting.craft.rules import NOTCH_FROM_CORNER
from drafting.garments.bodice.spec import Opening, Shape
from drafting.geometry import Point, nearest, polyline
from drafting.pattern import Mark, Notch, Piece, Role


def matched(panels: tuple[Piece, ...], opening: Opening, cut: Shape) -> tuple[Piece, ...]:
    """The panels with their match marks, if they are wanted."""
    del opening
    return tuple(_marked(p) for p in panels) if cut.match_marks else panels


def _marked(piece: Piece) -> Piece:
    """A notch half way down the side, and at the bust line on a sewn centre; a line on a folded one."""
    notches, marks = list(piece.notches), list(piece.marks)
    for edge in piece.edges:
        if edge.name == "side":
            notches.append(Notch("side", _drawn(piece, piece.sewn_length("side") / 2, forward=_downward(piece)), 1, "side-match"))
        level = piece.level("bust")
        if edge.name in ("zip", "edge") and level is not None:
            notches.append(Notch(edge.name, _at_height(piece, edge.name, level[0].y), 1, "centre-match"))
        if edge.role is Role.FOLD and level is not None:
            at = edge.path.start.x
            inward = 1.0 if abs(level[0].x - at) < abs(level[1].x - at) else -1.0
            marks.append(Mark("placement", polyline(Point(at, level[0].y), Point(at + 2.5 * inward, level[0].y))))
    return replace(piece, notches=tuple(notches), marks=tuple(marks))


def _downward(piece: Piece) -> bool:
    side = piece.edge("side").path
    return side.end.y < side.start.y


def _drawn(piece: Piece, sewn: float, *, forward: bool) -> float:
    """Where a sewn distance from the underarm lies along the drawn side, over its dart."""
    path, whole = piece.edge("side").path, piece.edge("side").path.length()
    for dart in piece.darts_on("side"):
        first = path.distance_of(*nearest(path, dart.first)[:2])
        if sewn > first - NOTCH_FROM_CORNER / 4:
            sewn = sewn + dart.intake if sewn > first else first - NOTCH_FROM_CORNER / 4
    return sewn if forward else whole - sewn


def _at_height(piece: Piece, edge: str, height: float) -> float:
    path = piece.edge(edge).path
    return min(path.length(), abs(height - path.start.y))
