"""Pieces traced off the draft: every stretch of the outline told on the sheet as it is cut.

Source: common practice, no source.
"""

from __future__ import annotations

from drafting.craft.sheet import DraftSheet
from drafting.craft.trueing import nudged
from drafting.pattern import Piece
from drafting.trace import Place, Stroke


def traced(pieces: tuple[Piece, ...], origin: Place, sheet: DraftSheet) -> None:
    """Record corners, lines and outline of each piece, measured from a place of the draft.

    Args:
        pieces: As they lie on the draft.
        origin: A recorded place.
        sheet: Records them.
    """
    for piece in pieces:
        name = piece.name.replace("_", " ")
        corners = [sheet.point(f"{name}: {_words(e.name)} starts", nudged(origin, float(e.path.start.x - origin.x), float(e.path.start.y - origin.y)), "A corner or a joint of the piece.") for e in piece.edges]
        ends = (*corners[1:], corners[0])
        lines: list[Stroke] = []
        for edge, start, end in zip(piece.edges, corners, ends, strict=True):
            lines.append(sheet.curve(f"{name}: {_words(edge.name)}", start, end, edge.path.segments, "as it lies on the draft", "Traced with its darts where they are wanted."))
        sheet.outline(piece.name, tuple(lines), "Trace it from the draft; allowances are added outside.")


def _words(name: str) -> str:
    return name.replace("_", " ")
