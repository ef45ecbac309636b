"""A garment for a body whose two sides differ: left and right pieces, each drafted by itself.

Source: a half draft for each side: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from itertools import groupby
from typing import assert_never

from drafting.craft.piecework import turned_over
from drafting.pattern import (
    AngleBetween,
    CombinedLength,
    CornerDepth,
    CrossShare,
    Cut,
    EdgeLength,
    Girth,
    LevelDepth,
    Measuring,
    Number,
    Pattern,
    Piece,
    Seam,
    SeamPart,
    SewingStep,
    Want,
)

SIDES = ("right", "left")


def by_sides(right: Pattern, left: Pattern, traced_left: frozenset[str]) -> Pattern:
    """One pattern of two: pairs become a right and a left piece, single pieces stay single.

    Args:
        right: The pattern drafted for the wearer's right side.
        left: The pattern drafted for the left side, drawn as if it were the right.
        traced_left: Single pieces that are traced from the left side's panels.
    """
    pairs = frozenset(p.name for p in right.pieces if p.is_pair)
    return replace(
        right,
        pieces=tuple(_pieces(right, left, pairs, traced_left)),
        seams=tuple(s for seam in right.seams for s in _seams(seam, pairs)),
        sewing=tuple(_step(step, right, pairs) for step in right.sewing),
        wants=_wants(right.wants, left.wants, pairs),
        finished_measurements=_wants(
            right.finished_measurements, left.finished_measurements, pairs
        ),
        findings=tuple(dict.fromkeys((*right.findings, *left.findings))),
    )


def _pieces(
    right: Pattern, left: Pattern, pairs: frozenset[str], traced_left: frozenset[str]
) -> list[Piece]:
    found = []
    for piece in right.pieces:
        other = left.piece(piece.name)
        if piece.name in pairs:
            found += [_single(piece, "right"), _single(turned_over(other), "left")]
        else:
            found.append(other if piece.name in traced_left else piece)
    return found


def _single(piece: Piece, side: str) -> Piece:
    cut = tuple(Cut(c.cloth, c.quantity // 2 if c.mirrored else c.quantity) for c in piece.cut)
    return replace(piece, name=f"{piece.name}_{side}", title=f"{piece.title}, {side}", cut=cut)


def _seams(seam: Seam, pairs: frozenset[str]) -> list[Seam]:
    parts = (*seam.one, *seam.two)
    if any(p.copy == "each" and p.piece in pairs for p in parts):
        return [
            Seam(f"{seam.name}_{side}", _parts(seam.one, side), _parts(seam.two, side), seam.ease)
            for side in SIDES
        ]
    named = (
        tuple(_named(p, pairs) for p in _in_turn(side, pairs)) for side in (seam.one, seam.two)
    )
    one, two = named
    return [replace(seam, one=one, two=two)]


def _in_turn(parts: tuple[SeamPart, ...], pairs: frozenset[str]) -> tuple[SeamPart, ...]:
    """Parts of which both copies lie in a side, one by one: the right ones, then back the left."""
    found: list[SeamPart] = []
    for both, run in groupby(parts, key=lambda p: p.copy == "both" and p.piece in pairs):
        own = tuple(run)
        if both:
            found += [replace(p, copy="right", count=1) for p in own]
            back = (replace(p, copy="left", count=1, reversed=not p.reversed) for p in own[::-1])
            found += back
        else:
            found += own
    return tuple(found)


def _parts(parts: tuple[SeamPart, ...], side: str) -> tuple[SeamPart, ...]:
    return tuple(_part(p, side) for p in parts)


def _named(part: SeamPart, pairs: frozenset[str]) -> SeamPart:
    return _part(part, part.copy) if part.piece in pairs else part


def _part(part: SeamPart, side: str) -> SeamPart:
    """The part on one side; a left piece is turned over, so its edge runs the other way."""
    return SeamPart(f"{part.piece}_{side}", part.edge, reversed=part.reversed != (side == "left"))


def _step(step: SewingStep, right: Pattern, pairs: frozenset[str]) -> SewingStep:
    seams = {s.name: s for s in right.seams}
    names = tuple(s.name for n in step.seams for s in _seams(seams[n], pairs))
    darts = tuple(f"{d}_{side}" if d in pairs else d for d in step.darts for side in SIDES)
    return replace(step, seams=names, darts=tuple(dict.fromkeys(darts)))


def _wants(
    right: tuple[Want, ...], left: tuple[Want, ...], pairs: frozenset[str]
) -> tuple[Want, ...]:
    """Wishes for both sides; those that touch single pieces only stay one."""
    found = []
    for one, two in zip(right, left, strict=True):
        if not isinstance(one.measuring, Number) and not named_in(one.measuring) & pairs:
            found.append(one)
            continue
        for side, want in zip(SIDES, (one, two), strict=True):
            tape = renamed(want.measuring, _sided(side, pairs))
            if side == "left":
                tape = _seen_from_the_left(tape)
            found.append(replace(want, name=f"{want.name}_{side}", measuring=tape))
    return tuple(found)


def _sided(side: str, pairs: frozenset[str]) -> Callable[[str], str]:
    return lambda name: f"{name}_{side}" if name in pairs else name


def _seen_from_the_left(tape: Measuring) -> Measuring:
    """On a piece that was turned over, corners and edges are met the other way round."""
    if isinstance(tape, AngleBetween):
        return AngleBetween(tuple((p, after, before) for p, before, after in tape.corners))
    if isinstance(tape, CornerDepth):
        return replace(tape, at_start=not tape.at_start)
    return tape


def named_in(tape: Measuring) -> frozenset[str]:
    """The pieces that a tape touches."""
    names: list[str] = []
    renamed(tape, lambda name: names.append(name) or name)  # type: ignore[func-returns-value]
    return frozenset(names)


def renamed(tape: Measuring, name: Callable[[str], str]) -> Measuring:
    """The same tape laid on pieces of other names."""
    match tape:
        case Girth():
            return _renamed_girth(tape, name)
        case CombinedLength(parts, around):
            told = tuple((f, replace(p, piece=name(p.piece))) for f, p in parts)
            return CombinedLength(told, around and _renamed_girth(around, name))
        case AngleBetween(corners):
            return AngleBetween(tuple((name(p), a, b) for p, a, b in corners))
        case EdgeLength() | CrossShare() | LevelDepth() | CornerDepth():
            return replace(tape, piece=name(tape.piece))
        case Number():
            return tape
        case _:
            assert_never(tape)


def _renamed_girth(tape: Girth, name: Callable[[str], str]) -> Girth:
    return replace(tape, pieces=tuple(map(name, tape.pieces)), under=tuple(map(name, tape.under)))
