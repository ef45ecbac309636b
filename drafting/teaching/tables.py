"""The tables of a draft sheet: measures, what to check, allowances. Values in cm or degrees."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from drafting.body import MEASURES
from drafting.drawing.words import plain
from drafting.pattern import AngleBetween, Role
from drafting.trace import Outline

if TYPE_CHECKING:
    from drafting.checks import SeamMeasured
    from drafting.garments.garment import Garment
    from drafting.pattern import Check, SeamPart
    from drafting.workroom import Work


@dataclass(frozen=True, slots=True)
class MeasureRow:
    """One measure as it goes into the draft.

    Attributes:
        name: The vocabulary's name.
        word: What formulas call it.
        title: Its name in full.
        taken: As taken, cm.
        origin: Where the value comes from.
        ease: What the garment has over it, all round, cm; None where the order names none.
    """

    name: str
    word: str
    title: str
    taken: float
    origin: str
    ease: float | None

    @property
    def used(self) -> float:
        """Measure and ease, cm."""
        return self.taken + (self.ease or 0.0)


@dataclass(frozen=True, slots=True)
class CheckRow:
    """Something to measure on the finished draft.

    Attributes:
        what: In words.
        wanted: What it should be.
        drafted: What it is.
        low: Least value that will do.
        high: Greatest value that will do.
        unit: "cm" or "deg".
        kind: A seam's two sides, a corner, or a girth or length.
    """

    what: str
    wanted: float
    drafted: float
    low: float
    high: float
    unit: Literal["cm", "deg"]
    kind: Literal["seam", "corner", "measure"]


Say = Callable[[str], str]
"""Says a text in the sheet's language."""


def measure_rows(work: Work, garment: Garment, say: Say) -> tuple[MeasureRow, ...]:
    """The measures that the garment was drafted from, in the order in which it names them."""
    used = dict.fromkeys((*garment.needs, *(n for n in garment.optional if work.body.taken(n))))
    return tuple(
        MeasureRow(
            name=name,
            word=say(MEASURES[name].word),
            title=say(MEASURES[name].title),
            taken=work.body.value(name),
            origin=work.body.measured[name].origin,
            ease=getattr(work.spec, f"{MEASURES[name].word.replace(' ', '_')}_ease", None),
        )
        for name in used
        if work.body.has(name) and MEASURES[name].unit == "cm"
    )


def check_rows(work: Work, say: Say) -> tuple[CheckRow, ...]:
    """Seams of the drafted panels, corners that run on, girths and lengths."""
    return (*_seams(work, say), *_corners(work, say), *_measures(work, say))


def drafted_pieces(work: Work) -> frozenset[str]:
    """Names of the pieces whose outline the draft gives."""
    return frozenset(s.name for s in work.steps if isinstance(s.value, Outline))


def _seams(work: Work, say: Say) -> Iterator[CheckRow]:
    """Seams that join two different drafted panels, part by part."""
    panels = drafted_pieces(work)
    for measured in work.seams:
        one, two = measured.seam.one, measured.seam.two
        pieces = [{part.piece for part in side} for side in (one, two)]
        once = all(part.count == 1 for part in (*one, *two))
        if once and all(p & panels for p in pieces) and pieces[0] != pieces[1]:
            yield _seam(measured, say)


def _both(measured: SeamMeasured, say: Say) -> str:
    one, two = (_side(s, say) for s in (measured.seam.one, measured.seam.two))
    return f"{one} = {two}"


def _side(parts: tuple[SeamPart, ...], say: Say) -> str:
    return " + ".join(_edge(p, say) for p in parts)


def _edge(part: SeamPart, say: Say) -> str:
    piece, edge = plain(part.piece), plain(part.edge)
    return say(edge) if edge.startswith(piece) else say(f"{piece}: {edge}")


def _seam(measured: SeamMeasured, say: Say) -> CheckRow:
    drafted = sum(measured.lengths[0])
    wanted, slack = drafted - measured.difference, measured.tolerance
    return CheckRow(
        _both(measured, say), wanted, drafted, wanted - slack, wanted + slack, "cm", "seam"
    )


def _corners(work: Work, say: Say) -> Iterator[CheckRow]:
    tapes = {want.name: want.measuring for want in work.pattern.pattern.wants}
    for check in work.pattern.checks:
        if isinstance(tapes.get(check.name), AngleBetween):
            yield _row(check, "corner", say)


def _measures(work: Work, say: Say) -> Iterator[CheckRow]:
    """What must come out, but for corners; twice the panels for the girths."""
    for check in work.pattern.checks:
        if check.kind == "must" and check.unit == "cm" and check.wanted:
            yield _row(check, "measure", say)


def _row(check: Check, kind: Literal["corner", "measure"], say: Say) -> CheckRow:
    name = say(plain(check.name))
    return CheckRow(name, check.wanted, check.drafted, check.low, check.high, check.unit, kind)


def allowance_rows(work: Work, say: Say) -> tuple[tuple[str, float], ...]:
    """Kinds of edge on the drafted panels, each with its allowance in cm, widest last."""
    panels = drafted_pieces(work)
    found: dict[str, float] = {}
    for piece in work.pattern.pieces:
        if piece.piece.name in panels or not panels:
            for edge, allowance in zip(piece.piece.edges, piece.allowances, strict=True):
                if edge.role is not Role.FOLD:
                    found.setdefault(edge.kind, allowance)
    rows = sorted(found.items(), key=lambda row: (row[1], row[0]))
    return tuple((say(plain(kind)), cm) for kind, cm in rows)
