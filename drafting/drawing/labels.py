"""The block of text on each piece, laid where it covers nothing.

The block lies inside the stitching line and keeps off darts, notches, holes, the grain arrow and
the names of lines; it is set as big as the room allows, wrapped narrower before it is set smaller.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from drafting.drawing.block import Entry
from drafting.drawing.marking import free_room
from drafting.drawing.setting import Clearing, clearings, set_texts
from drafting.drawing.words import ENGLISH, Unit, Words, amount, numeral
from drafting.pattern import Cut, Finish, FinishedPiece, Label, Piece
from drafting.pattern import Role as EdgeRole

Verdict = Literal["sound", "sound_with_remarks", "unsound"]


HEADING = 1.5
"""The piece's own name is set this much bigger."""


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
    clearing: Clearing | None = None,
    remarks: tuple[str, ...] = (),
    brief: bool = False,
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
        clearing: The room for it, where it has been sounded.
        remarks: Sentences on the form of the drawing, such as its scale.
        brief: Say only what the piece is and what to cut, as big as it will go.
    """
    unsound, toile = verdict == "unsound", finish.purpose == "toile"
    heads = (
        *([Entry(words.not_for_cutting, HEADING)] if unsound else []),
        Entry(finished.piece.title, HEADING),
    )
    cuts = tuple(Entry(text) for text in piece_cuts(finished.piece, words))
    whole = (
        Entry(title),
        Entry(words.piece_of.format(number=number, total=total)),
        *cuts,
        *([Entry(words.toile)] if toile else []),
        *([Entry(reference, breakable=True)] if reference.strip() else []),
        *(Entry(text) for text in remarks),
        Entry(_allowances(finished, unit, words)),
    )
    entries = (*heads, *(cuts if brief else whole))
    return set_texts(entries, clearing or clearings([free_room(finished)])[0])


def piece_cuts(piece: Piece, words: Words) -> Iterator[str]:
    """What to cut from a piece: a sentence for each cloth, and whether on the fold."""
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
        (edge.name, round(allowance, 3))
        for edge, allowance in zip(finished.piece.edges, finished.allowances, strict=True)
        if edge.role is not EdgeRole.FOLD
    ]
    values = [value for _, value in pairs]
    common = max(values, key=lambda value: (values.count(value), value))
    others = [
        _allowance(words.name(name), value, unit, words) for name, value in pairs if value != common
    ]
    if others:
        first = amount(common, unit, words.language) if common else "0"
        return words.allowances.format(values=", ".join((first, *others)))
    if common == 0:
        return words.allowances_none
    return words.allowances_all.format(value=amount(common, unit, words.language))


def _allowance(name: str, value: float, unit: Unit, words: Words) -> str:
    return (
        f"{name} {amount(value, unit, words.language)}"
        if value
        else words.allowance_zero.format(edge=name)
    )
