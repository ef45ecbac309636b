"""A plain arrangement: each part where it reaches least far along the cloth. Deterministic.

Parts are laid one by one, holes between earlier ones included; several orders and leanings are
tried and the shortest is kept. Follows a repeat and the fold exactly. Centimetres.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from functools import partial

import numpy as np
from numpy.typing import NDArray

from drafting.laying.bands import Profile, Steps, Taken, profile
from drafting.laying.strip import Part, Spot, Spots, Strip, Way, reach

BAND = 0.8
"""Breadth of a band in cm; finer ones cost time and save hardly any cloth."""
RECIPES = (
    ((2, 1, 0, 3), 0.1),
    ((3, 2, 0, 1), 0.0),
    ((2, 3, 0, 1), 0.1),
    ((2, 0, 1, 3), 0.0),
    ((2, 3, 1, 0), 0.1),
    ((0, 1, 2, 3), 0.1),
    ((0, 3, 2, 1), 0.1),
    ((3, 1, 2, 0), 0.1),
)
"""In which order the four biggest parts go down (two backs and two fronts), the others after them
by size; and how far, in cm along the cloth, a place 1 cm nearer to the edge is worth. Of 112 such
recipes these eight, best first, came within 0.2 % of the best lay on average, with trousers of
four sizes on cloths of seven widths, tops one way and either way."""
BY_SIZE = (((0, 1, 2, 3), 0.1), ((0, 1, 2, 3), 0.02))
"""Recipes for many parts."""
HASTY, MANY, EARNEST = 3, 30, 100
"""So many recipes are tried in haste; from so many parts on those by size; and beyond so many
parts only the first of them."""

Item = tuple[Part, int]


@dataclass(frozen=True, slots=True)
class _Bench:
    """A strip ready for laying: its bands, and each way's profile with its possible first bands.

    Attributes:
        strip: The strip.
        bands: How many bands it has.
        band: Breadth of a band.
        foot: y of the first band's lower edge.
        profiles: For each part its ways' profiles.
        firsts: For each part and way the numbers of the bands where it may begin.
    """

    strip: Strip
    bands: int
    band: float
    foot: float
    profiles: dict[str, tuple[Profile, ...]]
    firsts: dict[str, tuple[NDArray[np.intp], ...]]


def arrange(strip: Strip, *, hasty: bool = False) -> Spots:
    """The shortest of several plain arrangements of all parts.

    Args:
        strip: What to lay, and on what.
        hasty: Whether few arrangements will do, because something better is to follow.
    """
    bench = _bench(strip)
    items = [(part, time) for part in strip.parts for time in range(len(part.copies))]
    return _shortest(
        _lay(bench, _in_order(items, first), lean) for first, lean in _recipes(len(items), hasty)
    )


def follow(strip: Strip, spots: Spots) -> Spots:
    """Lay the parts in the order of another arrangement, keeping to the repeat and the fold."""
    bench = _bench(strip)
    order = [(s.part, s.time) for s in sorted(spots, key=lambda s: (s.x, s.y))]
    return _shortest(_lay(bench, order, lean) for lean in (0.0, 0.1))


def _shortest(found: Iterable[Spots]) -> Spots:
    return min(found, key=lambda spots: round(reach(spots), 6))


def _recipes(count: int, hasty: bool) -> tuple[tuple[tuple[int, ...], float], ...]:  # noqa: FBT001
    """What to try with so many parts."""
    if count <= MANY:
        return RECIPES[:HASTY] if hasty else RECIPES
    return BY_SIZE[:1] if hasty or count > EARNEST else BY_SIZE


def _in_order(items: list[Item], first: tuple[int, ...]) -> list[Item]:
    """The biggest parts in the order of a recipe, the others after them by size."""
    by_size = sorted(items, key=lambda item: -item[0].ways[0].outline.area)
    chosen = [by_size[i] for i in first if i < len(by_size)]
    return [*chosen, *by_size[len(first) :]]


def _bench(strip: Strip) -> _Bench:
    across = strip.grid.across
    band = across / math.ceil(across / BAND) if across else BAND
    foot = (0.0 if any(p.on_fold for p in strip.parts) else strip.floor) - strip.clear
    if across:
        below = math.ceil((strip.grid.across_from + strip.clear) / band - 1e-9)
        foot = strip.grid.across_from - below * band
    bands = math.ceil((strip.breadth + strip.clear - foot) / band) + 1
    shape = partial(_shape, strip, band)
    profiles = {p.code: tuple(shape(way) for way in p.ways) for p in strip.parts}
    bench = _Bench(strip, bands, band, foot, profiles, {})
    bench.firsts.update(
        {p.code: tuple(_firsts(bench, p, s) for s in profiles[p.code]) for p in strip.parts}
    )
    return bench


def _shape(strip: Strip, band: float, way: Way) -> Profile:
    """The way's profile, its anchor on a band's lower edge where it is bound across."""
    inset = 0.0
    if strip.grid.across and way.anchor.across is not None:
        inset = (-strip.clear - way.anchor.across) % band
        inset = 0.0 if band - inset < 1e-9 else inset
    return profile(way, strip.clear, band, inset)


def _firsts(bench: _Bench, part: Part, shape: Profile) -> NDArray[np.intp]:
    """Bands in which the part may begin."""
    strip, way = bench.strip, shape.way
    lift = shape.inset + strip.clear  # from a band's lower edge to the outline's lowest point
    firsts = np.arange(max(0, bench.bands - shape.bands) + 1)
    y = bench.foot + firsts * bench.band + lift
    floor = 0.0 if part.on_fold else strip.floor
    fits = (y > floor - 1e-6) & (y + way.breadth < strip.breadth + 1e-6)
    if part.on_fold:
        fits &= np.abs(y) < 1e-6
    if strip.grid.across and way.anchor.across is not None:
        off = (y + way.anchor.across - strip.grid.across_from) / strip.grid.across
        fits &= np.abs(off - np.round(off)) < 1e-6
    return firsts[fits]


def _lay(bench: _Bench, order: Iterable[Item], lean: float) -> Spots:
    taken = Taken(bench.bands)
    return tuple(_best(bench, taken, part, time, lean) for part, time in order)


def _best(bench: _Bench, taken: Taken, part: Part, time: int, lean: float) -> Spot:
    """Lay a part in the way and at the height where it costs least."""
    found = []
    ways = zip(bench.profiles[part.code], bench.firsts[part.code], strict=True)
    for k, (shape, firsts) in enumerate(ways):
        if not len(firsts):
            continue
        x = taken.least_x(shape, firsts, _steps(bench.strip, shape.way))
        cost = x + shape.way.length + lean * (firsts + shape.bands) * bench.band
        best = int(np.argmin(np.round(cost, 6)))
        found.append((round(float(cost[best]), 6), k, shape, float(x[best]), int(firsts[best])))
    _, _, shape, x_best, first = min(found, key=lambda f: f[:2])
    taken.add(shape, x_best, first)
    y = bench.foot + first * bench.band + shape.inset + bench.strip.clear
    return Spot(part, time, shape.way, x_best, 0.0 if part.on_fold else y)


def _steps(strip: Strip, way: Way) -> Steps:
    """Where the outline's start may lie along the cloth."""
    if not strip.grid.along or way.anchor.along is None:
        return Steps()
    return Steps(-way.anchor.along % strip.grid.along, strip.grid.along)
