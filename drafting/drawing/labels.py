"""The block of text on each piece, laid where it covers nothing.

The block lies inside the stitching line and keeps off darts, notches, holes, the grain arrow and
the names of lines; it is set as big as the room allows, wrapped narrower before it is set smaller.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from typing import Literal

import shapely
from shapely import affinity
from shapely.geometry.base import BaseGeometry

from drafting.drawing.block import Entry, TextBlock, forced, running, stacked
from drafting.drawing.marking import Room, mark_piece
from drafting.drawing.sounding import Area
from drafting.drawing.words import ENGLISH, Unit, Words, amount, numeral, plain
from drafting.geometry import Point, turn
from drafting.pattern import Cut, Finish, FinishedPiece, Label, Piece
from drafting.pattern import Role as EdgeRole

Verdict = Literal["sound", "sound_with_remarks", "unsound"]

CAPITALS = 0.6
"""Height in cm of capitals on a piece with room enough: text on plots is at least 6 mm."""
HEADING = 1.5
"""The piece's own name is set this much bigger."""
THIN = 0.3
"""And this far from thin lines, at first."""
INSET = 0.5
"""Texts stay this far inside the stitching line, cm."""
SCALES = (1.0, 0.85, 0.72, 0.6, 0.5, 0.42, 0.35, 0.28, 0.22, 0.18, 0.14, 0.1, 0.07, 0.05)
"""Scales tried, biggest first; the last is for a long reference on a belt loop."""
CLEAR = 4
"""At so many scales the block is kept off thin lines too."""
LEAST = CAPITALS * SCALES[-1]

TRIALS = (
    *((breadth, stacked, 0.0) for breadth in (16.0, 12.0, 9.0)),
    *((breadth, stacked, 90.0) for breadth in (16.0, 12.0)),
    *((breadth, running, 90.0) for breadth in (40.0, 28.0, 20.0, 14.0)),
    *((breadth, running, 0.0) for breadth in (28.0, 20.0, 14.0)),
    (6.5, stacked, 0.0),
)
"""Ways to set the block, best first: breadth in cm at full size, form, angle of its lines."""


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
    room: Room | None = None,
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
        room: What `mark_piece` left free, where it is at hand.
    """
    unsound, toile = verdict == "unsound", finish.purpose == "toile"
    entries = (
        *([Entry(words.not_for_cutting, HEADING)] if unsound else []),
        Entry(finished.piece.title, HEADING),
        Entry(title),
        Entry(words.piece_of.format(number=number, total=total)),
        *(Entry(text) for text in _instructions(finished.piece, words)),
        *([Entry(words.toile)] if toile else []),
        *([Entry(reference, breakable=True)] if reference.strip() else []),
        Entry(_allowances(finished, unit, words)),
    )
    return _laid(finished.piece, entries, room or mark_piece(finished, words)[1])


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


def _laid(piece: Piece, entries: tuple[Entry, ...], room: Room) -> tuple[Label, ...]:
    """Lay the texts as big as they fit: clear of all lines, else over the thin ones."""
    firm = shapely.difference(room.inside.buffer(-INSET), shapely.union_all(room.taken))
    clear = shapely.difference(firm, shapely.union_all(room.thin).buffer(THIN, quad_segs=2))
    for free, scales in ((clear, SCALES[:CLEAR]), (firm, SCALES)):
        ways = _Ways(free)
        for scale in scales:
            for breadth, form, angle in TRIALS:
                block = form(entries, CAPITALS * scale, breadth * scale)
                corner = block and ways.area(angle).place(block.width, block.height)
                if block and corner:
                    return _labels(block, corner, angle)
    low = piece.grain[0]
    smallest = forced(entries, LEAST, 10 * LEAST)
    return _labels(smallest, (low.x, low.y), 0.0)


class _Ways:
    """One free room, sounded upright and sideways when first asked."""

    def __init__(self, free: BaseGeometry) -> None:
        self.free = free
        self.sounded: dict[float, Area] = {}

    def area(self, angle: float) -> Area:
        if angle not in self.sounded:
            turned = affinity.rotate(self.free, -angle, origin=(0, 0)) if angle else self.free
            self.sounded[angle] = Area(turned)
        return self.sounded[angle]


def _labels(block: TextBlock, corner: tuple[float, float], angle: float) -> tuple[Label, ...]:
    back = turn(angle, Point(0.0, 0.0))
    x, low = corner
    return tuple(
        Label(text, back.point(Point(x, low + base)), height, angle)
        for (text, height), base in zip(block.lines, block.base_lines, strict=True)
    )
