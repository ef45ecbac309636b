"""The shortest lay that the plain arrangement and the engine find, for one cloth.

A cloth is laid on one bed, or on two: folded, and beyond that opened, for single pieces.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from typing import Literal

from drafting.laying import engine, plain
from drafting.laying.cloth import Cloth
from drafting.laying.parts import Cutter, Wanted
from drafting.laying.proof import is_sound
from drafting.laying.strip import Grid, Part, Spots, Strip, reach

FOLD = 0.5
"""What does not lie on the fold stays 0.5 cm off it, so that the blade passes. Source: common
practice, no source."""

BedKind = Literal["open", "folded"]

NEAR = 0.2
"""A lay within this of the least possible length, in cm, is not searched further."""


@dataclass(frozen=True, slots=True)
class Bed:
    """A stretch of cloth on the table, open or folded, and what is to lie on it."""

    kind: BedKind
    strip: Strip


@dataclass(frozen=True, slots=True)
class Layout:
    """A whole lay of one cloth.

    Attributes:
        beds: The stretches, one after the other.
        spots: What lies on each, from the stretch's own start.
        engine: Who found it.
        spent: Seconds of searching that were used up.
    """

    beds: tuple[Bed, ...]
    spots: tuple[Spots, ...]
    engine: Literal["plain", "spyrrow"]
    spent: float = 0.0

    @property
    def starts(self) -> tuple[float, ...]:
        """Where each bed begins along the cloth, in cm: on a bar where there are any."""
        found, at = [], 0.0
        for bed, spots in zip(self.beds, self.spots, strict=True):
            step = bed.strip.grid.along
            found.append(step * math.ceil(at / step - 1e-9) if step else at)
            at = found[-1] + reach(spots) + 2 * bed.strip.clear
        return tuple(found)

    @property
    def length(self) -> float:
        """Length of cloth in cm, its ends not counted."""
        return self.starts[-1] + reach(self.spots[-1])

    @property
    def breadths(self) -> tuple[float, ...]:
        """How far across from the selvedge or the fold each bed is used, in cm."""
        return tuple(max(s.y + s.way.breadth for s in spots) for spots in self.spots)


@dataclass(frozen=True, slots=True)
class Case:
    """Pieces to be laid on a cloth, with the gap asked for."""

    cloth: Cloth
    wants: tuple[Wanted, ...]
    gap: float

    @property
    def count(self) -> int:
        """How many pieces are cut."""
        return sum(want.cut.quantity for want in self.wants)

    def variants(self) -> Iterator[tuple[Bed, ...]]:
        """The ways to lay beds: open; or folded, single pieces from the upper layer or beyond."""
        cutter = Cutter(self.gap, self.cloth.one_way)
        if not self.cloth.folded:
            yield self._beds(self._parts(cutter.open), ())
            return
        double, upper, single = (
            self._parts(cut) for cut in (cutter.double, cutter.upper, cutter.single)
        )
        yield self._beds((), (*double, *upper))
        if single:
            yield self._beds(single, double)

    def _parts(self, cut: Callable[[Wanted], Iterator[Part]]) -> tuple[Part, ...]:
        return tuple(part for want in self.wants for part in cut(want))

    def _beds(self, opened: tuple[Part, ...], folded: tuple[Part, ...]) -> tuple[Bed, ...]:
        cloth, repeat = self.cloth, self.cloth.repeat
        clear = Cutter(self.gap, cloth.one_way).clear
        grid = Grid(repeat.lengthwise, repeat.crosswise, cloth.usable / 2)
        at_fold = replace(grid, across_from=0.0)
        beds = (
            Bed("folded", Strip(folded, cloth.usable_folded, clear, at_fold, FOLD)),
            Bed("open", Strip(opened, cloth.usable, clear, grid)),
        )
        return tuple(bed for bed in beds if bed.strip.parts)


def least_length(layout: Layout, cloth: Cloth) -> float:
    """What no lay can undercut, in cm: the area over the breadth, and the longest piece."""
    parts = [part for bed in layout.beds for part in bed.strip.parts]
    area = sum(part.area for part in parts)
    return max(area / cloth.usable, *(part.ways[0].length for part in parts))


def shortest(case: Case, seconds: float, *, hasty: bool = False) -> Layout:
    """The shortest lay found; on a two-way cloth no longer than the plain one with tops one way.

    Args:
        case: What to lay on what.
        seconds: Time for the engine; 0 for none.
        hasty: Whether few plain arrangements will do; they will where the engine is to follow.
    """
    hasty = hasty or seconds >= engine.LEAST
    own = min((_plain(beds, hasty=hasty) for beds in case.variants()), key=_rank)
    stricter: tuple[Layout, ...] = (
        () if case.cloth.one_way else (_plain(_one_way(own.beds), hasty=hasty),)
    )
    best = min((own, *stricter), key=_rank)
    if seconds < engine.LEAST or best.length < least_length(best, case.cloth) + NEAR:
        return best
    searched = replace(own, spots=tuple(_searched(own, seconds)), engine="spyrrow")
    return replace(min((best, searched), key=_rank), spent=seconds)


def _one_way(beds: tuple[Bed, ...]) -> tuple[Bed, ...]:
    """The same with all tops toward the cloth's start."""
    return tuple(
        replace(bed, strip=replace(bed.strip, parts=tuple(map(_top_first, bed.strip.parts))))
        for bed in beds
    )


def _top_first(part: Part) -> Part:
    return replace(part, ways=tuple(way for way in part.ways if way.turn == 0))


def widened(layout: Layout, case: Case) -> Layout:
    """The same lay on a wider cloth, moved across where a repeat is counted from the middle."""
    if not case.cloth.repeat.crosswise or case.cloth.folded:
        return layout
    moved = []
    for bed, spots in zip(layout.beds, layout.spots, strict=True):
        by = case.cloth.usable / 2 - bed.strip.grid.across_from
        moved.append(tuple(replace(spot, y=spot.y + by) for spot in spots))
    return replace(layout, spots=tuple(moved))


def _rank(layout: Layout) -> tuple[float, bool]:
    return round(layout.length, 3), layout.engine != "plain"


def _plain(beds: tuple[Bed, ...], *, hasty: bool) -> Layout:
    spots = tuple(plain.arrange(bed.strip, hasty=hasty) for bed in beds)
    return Layout(beds, spots, "plain")


def _searched(layout: Layout, seconds: float) -> Iterator[Spots]:
    """For each bed the shorter of what lies there and what the engine finds and can be proven."""
    total = sum(bed.strip.count for bed in layout.beds)
    for bed, spots in zip(layout.beds, layout.spots, strict=True):
        strip = bed.strip
        found = engine.search(strip, seconds * strip.count / total)
        if found is not None and strip.is_bound:
            found = plain.follow(strip, found)
        sound = found is not None and is_sound(strip, found)
        yield min(spots, found, key=reach) if found and sound else spots
