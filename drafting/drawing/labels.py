"""The block of text on each piece, laid where it covers nothing.

The block lies inside the stitching line and keeps off darts, notches, holes, the grain arrow and
the names of lines; it is set as big as the room allows, wrapped narrower before it is set smaller.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from typing import Literal

import shapely
from shapely import affinity

from drafting.drawing.lettering import ABOVE, BELOW, PITCH, width, wrapped
from drafting.drawing.marking import Room, mark_piece
from drafting.drawing.shapes import line
from drafting.drawing.words import ENGLISH, Unit, Words, amount, numeral, plain
from drafting.geometry import Point, polyline, turn
from drafting.pattern import Cut, Finish, FinishedPattern, FinishedPiece, Label, Piece
from drafting.pattern import Role as EdgeRole

Verdict = Literal["sound", "sound_with_remarks", "unsound"]

CAPITALS = 0.6
"""Height in cm of capitals on a piece with room enough: text on plots is at least 6 mm."""
HEADING = 1.5
"""The piece's own name is set this much bigger."""
INSET = 0.5
"""Texts stay this far inside the stitching line, cm."""
SCALES = (1.0, 0.85, 0.7, 0.58, 0.48, 0.4, 0.33, 0.27, 0.22, 0.18, 0.14, 0.1, 0.07, 0.05)
"""Scales tried, biggest first; the last is for a 500-letter reference on a belt loop."""
ROOMS = (16.0, 12.0, 9.0, 7.0, 5.5)
"""Breadths of the block tried, in heights of capitals times 1.67 (cm at full size)."""
ROW = 0.5
"""Room is sounded along rows half a centimetre apart."""

_ORIGIN = Point(0.0, 0.0)


@dataclass(frozen=True, slots=True)
class _Block:
    """Lines of text with their heights, and the breadth and height of the whole, in cm."""

    lines: tuple[tuple[str, float], ...]
    width: float
    height: float


def label_piece(
    finished: FinishedPiece,
    *,
    title: str,
    number: int,
    total: int,
    reference: str,
    finish: Finish,
    verdict: Verdict,
    unit: Unit = "cm",
    words: Words = ENGLISH,
) -> tuple[Label, ...]:
    """The labels of one piece, in its own frame, cm, Y up.

    Args:
        finished: The piece.
        title: Title of the pattern.
        number: The piece's number, from 1.
        total: How many pieces there are.
        reference: The order's reference, as typed; may be empty.
        finish: What the paper is for.
        verdict: An unsound pattern is marked NOT FOR CUTTING.
        unit: Unit of the allowances in the text.
        words: The sheet's language.
    """
    texts = (
        *([words.not_for_cutting] if verdict == "unsound" else []),
        finished.piece.title,
        title,
        words.piece_of.format(number=number, total=total),
        *_instructions(finished.piece, words),
        *([words.toile] if finish.purpose == "toile" else []),
        *([reference] if reference.strip() else []),
        _allowances(finished, unit, words),
    )
    big = 2 if verdict == "unsound" else 1
    return _laid(
        finished, tuple((t, HEADING if i < big else 1.0) for i, t in enumerate(texts)), words
    )


def labelled(
    pattern: FinishedPattern,
    *,
    reference: str,
    verdict: Verdict,
    unit: Unit = "cm",
    words: Words = ENGLISH,
) -> FinishedPattern:
    """The pattern with the labels of every piece laid."""
    pieces = pattern.pieces
    return replace(
        pattern,
        pieces=tuple(
            replace(
                piece,
                labels=label_piece(
                    piece,
                    title=pattern.pattern.title,
                    number=piece.piece.number or i,
                    total=len(pieces),
                    reference=reference,
                    finish=pattern.finish,
                    verdict=verdict,
                    unit=unit,
                    words=words,
                ),
            )
            for i, piece in enumerate(pieces, 1)
        ),
    )


def _instructions(piece: Piece, words: Words) -> Iterator[str]:
    for cut in piece.cut:
        yield _cut_words(cut, words)
    if piece.half:
        yield words.on_fold


def _cut_words(cut: Cut, words: Words) -> str:
    cloth = words.cloth(cut.cloth)
    if not cut.mirrored:
        return words.cut.format(quantity=cut.quantity, cloth=cloth)
    half = numeral(words, cut.quantity // 2)
    return words.cut_mirrored.format(quantity=cut.quantity, cloth=cloth, half=half)


def _allowances(finished: FinishedPiece, unit: Unit, words: Words) -> str:
    """The commonest allowance, then the edges that have another one, by name."""
    pairs = [
        (plain(edge.name), round(allowance, 3))
        for edge, allowance in zip(finished.piece.edges, finished.allowances, strict=True)
        if edge.role is not EdgeRole.FOLD
    ]
    counts = Counter(value for _, value in pairs)
    common = max(counts, key=lambda value: (counts[value], value))
    others = [_allowance(name, value, unit, words) for name, value in pairs if value != common]
    if others:
        first = amount(common, unit) if common else "0"
        return words.allowances.format(values=", ".join((first, *others)))
    if common == 0:
        return words.allowances_none
    return words.allowances_all.format(value=amount(common, unit))


def _allowance(name: str, value: float, unit: Unit, words: Words) -> str:
    return f"{name} {amount(value, unit)}" if value else words.allowance_zero.format(edge=name)


def _laid(
    finished: FinishedPiece, texts: tuple[tuple[str, float], ...], words: Words
) -> tuple[Label, ...]:
    """Lay the texts at the biggest scale that fits, upright before sideways, clear of lines first."""
    _, room = mark_piece(finished, words)
    areas = list(_areas(finished.piece, room))
    for scale in SCALES:
        for area, angle, least in areas:
            if scale < least:
                continue
            for breadth in ROOMS:
                block = _block(texts, CAPITALS * scale, breadth * scale)
                corner = area.place(block.width, block.height)
                if corner:
                    return _labels(block, corner, angle)
    return _labels(_block(texts, CAPITALS * SCALES[-1], 1.0), finished.piece.grain[0], 0.0)


def _areas(piece: Piece, room: Room) -> Iterator[tuple[_Area, float, float]]:
    """Areas to try, each with the angle of its texts and the least scale that is worth it."""
    firm = shapely.difference(room.inside.buffer(-INSET), shapely.union_all(room.taken))
    lines = [polyline(left, right) for left, right in piece.lengthen]
    lines += [polyline(left, right) for _, left, right in piece.levels]
    lines += [mark.path for mark in piece.marks]
    soft = shapely.union_all([line(path).buffer(0.3, quad_segs=2) for path in lines])
    clear = shapely.difference(firm, soft)
    for area, least in ((clear, 0.45), (firm, 0.0)):
        yield _Area(area), 0.0, least
        yield _Area(affinity.rotate(area, -90, origin=(0, 0))), 90.0, least


class _Area:
    """Free room, sounded along level rows."""

    def __init__(self, free: shapely.Geometry) -> None:
        self.free = free
        self.rows: list[list[tuple[float, float]]] = []
        self.low = 0.0
        self.middle = 0.0
        if free.is_empty:
            return
        shapely.prepare(free)
        left, self.low, right, high = free.bounds
        self.middle = free.centroid.y
        count = int((high - self.low) / ROW) + 1
        rows = shapely.linestrings(
            [[(left - 1, y), (right + 1, y)] for y in (self.low + ROW * i for i in range(count))]
        )
        self.rows = [_spans(crossed) for crossed in shapely.intersection(rows, free)]

    def place(self, wide: float, high: float) -> tuple[float, float] | None:
        """Lower left corner of a free box of that size, the nearest to the middle; or None."""
        count = int(high / ROW) + 2
        found = [
            (abs(self.low + ROW * start + high / 2 - self.middle), start, span)
            for start in range(len(self.rows) - count + 1)
            for span in _common(self.rows[start : start + count], wide)
        ]
        for _, start, (left, right) in sorted(found)[:40]:
            x, y = (left + right - wide) / 2, self.low + ROW * start + 0.01
            if self.free.contains(shapely.box(x, y, x + wide, y + high)):
                return x, y
        return None


def _spans(crossed: shapely.Geometry) -> list[tuple[float, float]]:
    parts = shapely.get_parts(crossed)
    bounds = [part.bounds for part in parts if not part.is_empty]
    return sorted((b[0], b[2]) for b in bounds)


def _common(rows: Iterable[list[tuple[float, float]]], wide: float) -> list[tuple[float, float]]:
    """Stretches at least `wide` long that all the rows have."""
    common: list[tuple[float, float]] | None = None
    for row in rows:
        common = (
            row if common is None else [(max(a, c), min(b, d)) for a, b in common for c, d in row]
        )
        common = [(a, b) for a, b in common if b - a >= wide]
        if not common:
            return []
    return common or []


def _block(texts: tuple[tuple[str, float], ...], height: float, breadth: float) -> _Block:
    lines = tuple(
        (line_, height * factor)
        for text, factor in texts
        for line_ in wrapped(text, height * factor, breadth)
    )
    widest = max(width(text, h) for text, h in lines)
    tall = sum(PITCH * h for _, h in lines[1:]) + (ABOVE * lines[0][1]) + BELOW * lines[-1][1]
    return _Block(lines, widest, tall)


def _labels(block: _Block, corner: tuple[float, float] | Point, angle: float) -> tuple[Label, ...]:
    x, low = (corner.x, corner.y) if isinstance(corner, Point) else corner
    y = low + block.height - ABOVE * block.lines[0][1]
    back = turn(angle, _ORIGIN)
    labels = []
    for i, (text, height) in enumerate(block.lines):
        y -= PITCH * height if i else 0.0
        labels.append(Label(text, back.point(Point(x, y)), height, angle))
    return tuple(labels)
