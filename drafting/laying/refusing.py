"""Why a cloth cannot be laid, and what would help. Lengths in cm."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import TYPE_CHECKING

from shapely import affinity

from drafting.drawing.shapes import polygon
from drafting.drawing.words import amount
from drafting.errors import OutputError, SpecError
from drafting.laying.cloth import Cloth
from drafting.laying.parts import Wanted, lies_on_fold, whole
from drafting.laying.solving import FOLD, Case

if TYPE_CHECKING:
    from drafting.workroom import Work

MOST_PIECES = 300
"""More pieces than this are not laid on one cloth at once."""
SEAM = 1.0
"""Allowance on each side of a seam that would divide a piece too broad for the cloth."""
GRAINS = ((90, "across the cloth"), (45, "on the bias"))
"""Other grains that might fit, in degrees."""


def no_pieces(works: tuple[Work, ...], kind: str) -> OutputError:
    """Nothing is cut from a cloth that was described."""
    kinds = sorted({c.cloth for w in works for p in w.pattern.pieces for c in p.piece.cut})
    return OutputError(
        f"No piece is cut from {kind}: leave it out, or ask for what the orders need.",
        where=f"cloths.{kind}",
        code="no_pieces_of_cloth",
        received=kind,
        allowed=kinds,
    )


def check(case: Case, kind: str) -> None:
    """Refuse a case that cannot be laid.

    Raises:
        OutputError: Too many pieces, or one that is too broad for the cloth.
        SpecError: A repeat broader than the cloth, or selvedges that leave nothing.
    """
    if case.count > MOST_PIECES:
        raise OutputError(
            f"{case.count} pieces of {kind} are too many for one lay, which takes "
            f"{MOST_PIECES}: lay fewer orders at a time.",
            where=f"cloths.{kind}",
            code="too_many_pieces",
            received=case.count,
            allowed=(1, MOST_PIECES),
        )
    _check_cloth(case.cloth, kind)
    troubles = tuple(_too_broad(case, kind))
    if troubles:
        raise OutputError(
            troubles[0].message,
            where=troubles[0].where,
            code=troubles[0].code,
            received=troubles[0].received,
            allowed=troubles[0].allowed,
            also=troubles[1:],
        )


def fits(case: Case) -> bool:
    """Whether no piece is too broad for the cloth."""
    breadth = case.cloth.usable_folded if case.cloth.folded else case.cloth.usable
    return breadth > 0 and all(_breadth(case, w) <= _room(case, w) + 1e-6 for w in case.wants)


def _check_cloth(cloth: Cloth, kind: str) -> None:
    across = cloth.repeat.crosswise
    if min(cloth.usable, cloth.usable_folded) <= 0:
        raise SpecError(
            "The selvedges leave nothing of the cloth's width.",
            where=f"cloths.{kind}.selvedge",
            code="no_cloth_left",
            received=cloth.selvedge,
        )
    if across and across > cloth.usable:
        raise SpecError(
            f"A crosswise repeat of {amount(across, 'cm')} is broader than the cloth between its "
            f"selvedges, {amount(cloth.usable, 'cm')}.",
            where=f"cloths.{kind}.repeat.crosswise",
            code="repeat_longer_than_cloth",
            received=across,
            allowed=(0.0, cloth.usable),
        )


def repeat_too_long(length: float, cloth: Cloth, kind: str) -> SpecError | None:
    """The trouble of a lengthwise repeat longer than the cloth that the pieces take."""
    along = cloth.repeat.lengthwise
    if not along or along <= length:
        return None
    return SpecError(
        f"A lengthwise repeat of {amount(along, 'cm')} is longer than the cloth that the pieces "
        f"take, {amount(length, 'cm')}: lay them without a repeat.",
        where=f"cloths.{kind}.repeat.lengthwise",
        code="repeat_longer_than_cloth",
        received=along,
        allowed=(0.0, length),
    )


def _too_broad(case: Case, kind: str) -> Iterator[OutputError]:
    for want in case.wants:
        breadth, room = _breadth(case, want), _room(case, want)
        if breadth <= room + 1e-6:
            continue
        layers = " folded" if case.cloth.folded else ""
        yield OutputError(
            f"{want.finished.piece.title} ({want.name}) of order {want.order + 1} is "
            f"{amount(breadth, 'cm')} broad, {amount(breadth - room, 'cm')} more than the"
            f"{layers} cloth has between its edges. {_advice(case, want, room)}",
            where=f"cloths.{kind}.width",
            code="cloth_too_narrow",
            received=case.cloth.width,
            allowed=(_needed(case, want, breadth), math.inf),
        )


def _breadth(case: Case, want: Wanted) -> float:
    """Breadth of what is laid of a piece: on folded cloth, of a half piece the half."""
    half = case.cloth.folded and lies_on_fold(want.finished)
    left, _, right, _ = (want.finished.cut_line if half else whole(want.finished)).bounds()
    return right - left


def _room(case: Case, want: Wanted) -> float:
    """Breadth of the cloth where a piece may lie: a single one may lie beyond, on open cloth."""
    cloth = case.cloth
    if not cloth.folded or (want.cut.quantity == 1 and not lies_on_fold(want.finished)):
        return cloth.usable
    return cloth.usable_folded - (0.0 if lies_on_fold(want.finished) else FOLD)


def _needed(case: Case, want: Wanted, breadth: float) -> float:
    """Least width to buy on which a piece of this breadth has room."""
    cloth, room = case.cloth, _room(case, want)
    layers = 1 if room == cloth.usable else 2
    on_table = cloth.table_width + layers * (breadth - room)
    return on_table / (1 - cloth.shrinkage_crosswise / 100)


def _advice(case: Case, want: Wanted, room: float) -> str:
    """What would help: open cloth, another grain, or a seam."""
    area = polygon(whole(want.finished), 0.05)
    left, _, right, _ = area.bounds
    if case.cloth.folded and right - left <= case.cloth.usable:
        return "Lay the cloth open: there it fits."
    for angle, words in GRAINS:
        low, _, high, _ = affinity.rotate(area, angle).bounds
        if high - low <= room and not case.cloth.one_way:
            return (
                f"With the grain {words} it is {amount(high - low, 'cm')} broad and fits, where "
                "the cloth and the design allow it."
            )
    parts = math.ceil((right - left) / max(room - 2 * SEAM, 1.0))
    each = (right - left) / parts + 2 * SEAM
    return (
        f"No other grain helps; {_seams(parts - 1)} along the grain would, {parts} parts of some "
        f"{amount(each, 'cm')}."
    )


def _seams(count: int) -> str:
    return "a seam" if count == 1 else f"{count} seams"
