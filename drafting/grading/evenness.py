"""Where a garment jumps from size to size although the bodies do not.

Three neighbouring sizes grow evenly where the middle one is the mean of its neighbours. Bodies need
not: a table may step by 4 cm here and by 6 cm there. So the middle size is judged on the body that
is the mean of its neighbours' (drafted anew where it is another than the middle size's own): what
then is not the mean was made by the rules, not by the table.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import chain

from drafting.body import Body, Measured
from drafting.checks import SeamMeasured, seams
from drafting.craft.sheet import DraftSheet
from drafting.errors import DraftingError
from drafting.grading.measures import measured_on
from drafting.grading.report import GradeFinding
from drafting.grading.sizes import SizeRange
from drafting.pattern import Pattern
from drafting.trace import Length, Place, Step
from drafting.workroom import Work

EVEN = 0.1
"""Second differences up to 0.1 cm are even: no hand draws a step from size to size finer."""
EVEN_ANGLE = 0.5
"""The same for angles, in degrees."""
SAME_BODY = 0.01
"""Bodies whose measures lie within 0.01 cm are the same."""
TOLD = 4
"""So many names stand in a message; all of them in its list."""

Value = tuple[float, ...]
Values = Mapping[str, tuple[Value, float]]
"""By name, each with its tolerance."""


@dataclass(frozen=True, slots=True)
class _Net:
    """A size as far as it is compared: the construction, the net pattern, its seams."""

    steps: tuple[Step, ...]
    pattern: Pattern
    seams: tuple[SeamMeasured, ...]


@dataclass(frozen=True, slots=True)
class _Bend:
    """A second difference: at which middle size, of what, and how much (cm, or degrees)."""

    middle: int
    name: str
    by: Value
    tolerance: float

    @property
    def size(self) -> float:
        return math.hypot(*self.by)

    def is_undone_by(self, other: _Bend) -> bool:
        """Whether the next size's bend is the other side of the same jump."""
        against = sum(a * b for a, b in zip(self.by, other.by, strict=True))
        return other.middle == self.middle + 1 and against < 0


def unevenness(sizes: SizeRange) -> tuple[GradeFinding, ...]:
    """Findings `uneven_sizes` and `uneven_step`, in the order of the sizes."""
    names = tuple(name for name, _ in sizes.works)
    works = tuple(done for _, done in sizes.works)
    values = tuple(_values(_net(done)) for done in works)
    bends: dict[str, list[_Bend]] = {}
    for middle in range(1, len(works) - 1):
        before, after = values[middle - 1], values[middle + 1]
        mean = _drafted_evenly(sizes, works[middle - 1 : middle + 2])
        for bend in _bends(before, mean, after, middle):
            bends.setdefault(bend.name, []).append(bend)
    jumps: dict[tuple[int, ...], list[_Bend]] = {}
    for at, bend in chain.from_iterable(_jumps(found) for found in bends.values()):
        jumps.setdefault(at, []).append(bend)
    return (
        *_uneven_bodies(sizes, names, works),
        *(_told(tuple(names[i] for i in at), jumps[at]) for at in sorted(jumps)),
    )


def _bends(first: Values, mean: _Net | None, last: Values, middle: int) -> Iterator[_Bend]:
    if mean is None:
        return
    for name, (value, tolerance) in _values(mean).items():
        if name in first and name in last:
            ends = zip(first[name][0], value, last[name][0], strict=True)
            bend = _Bend(middle, name, tuple(a - 2 * b + c for a, b, c in ends), tolerance)
            if bend.size > tolerance + 1e-6:
                yield bend


def _net(done: Work) -> _Net:
    return _Net(done.steps, done.pattern.pattern, done.seams)


def _drafted_evenly(sizes: SizeRange, three: tuple[Work, ...]) -> _Net | None:
    """The middle size on the mean of its neighbours' bodies; None where that cannot be drafted."""
    mean = _mean(three[0].body, three[2].body)
    if _same(mean, three[1].body):
        return _net(three[1])
    sheet = DraftSheet()
    try:
        pattern = sizes.garment.draw(mean, sizes.spec, sheet)
    except DraftingError:
        return None
    return _Net(sheet.steps, pattern, seams(pattern))


def _mean(one: Body, two: Body) -> Body:
    sides = {
        name: {side: _half_way(one.sides[name][side], two.sides[name][side]) for side in pair}
        for name, pair in one.sides.items()
        if name in two.sides
    }
    both = {n: _half_way(m, two.measured[n]) for n, m in one.measured.items() if two.has(n)}
    return Body(one.figure, both, sides)


def _half_way(one: Measured, two: Measured) -> Measured:
    """The mean, known as the first one is: a draft may heed where a measure comes from."""
    return replace(one, value=(one.value + two.value) / 2)


def _same(one: Body, two: Body) -> bool:
    return all(
        two.has(name) and abs(measured.value - two.value(name)) < SAME_BODY
        for name, measured in one.measured.items()
    )


def _values(done: _Net) -> Values:
    """Everything that can be uneven: points, named lengths, finished measures, seams."""
    found: dict[str, tuple[Value, float]] = {}
    for step in done.steps:
        if isinstance(step.value, Place):
            found[step.name] = ((step.value.x, step.value.y), EVEN)
        elif isinstance(step.value, Length) and step.kind == "length":
            found[step.name] = ((float(step.value),), EVEN)
    for (kind, name, unit), value in measured_on(done.pattern, done.seams):
        label = f"finished {name}" if kind == "finished" else name
        found[label] = ((value,), EVEN_ANGLE if unit == "deg" else EVEN)
    return found


def _jumps(bends: list[_Bend]) -> Iterator[tuple[tuple[int, ...], _Bend]]:
    """Each jump of one measure: the sizes it lies between, and its bend.

    A jump bends the row of sizes twice, before it and back after it; at the ends of the range one
    of the bends is not seen, and the jump lies somewhere in three sizes.
    """
    left = list(bends)
    while left:
        bend = left.pop(0)
        if left and bend.is_undone_by(left[0]):
            left.pop(0)
            yield (bend.middle, bend.middle + 1), bend
        else:
            yield (bend.middle - 1, bend.middle, bend.middle + 1), bend


def _told(sizes: tuple[str, ...], bends: list[_Bend]) -> GradeFinding:
    worst = sorted(bends, key=lambda bend: (-bend.size / bend.tolerance, bend.name))
    names = tuple(bend.name for bend in worst)
    return GradeFinding(
        code="uneven_step",
        where=names[0],
        sizes=sizes,
        message=f"From {' to '.join(sizes)} the step is not even at the {_listed(names)}.",
        names=names,
        by=worst[0].size,
        unit="deg" if worst[0].tolerance == EVEN_ANGLE else "cm",
    )


def _listed(names: tuple[str, ...]) -> str:
    more = len(names) - TOLD
    told = ", ".join(names[:TOLD])
    return f"{told} and {more} more" if more > 0 else told


def _uneven_bodies(
    sizes: SizeRange, names: tuple[str, ...], works: tuple[Work, ...]
) -> Iterator[GradeFinding]:
    used = (*sizes.garment.needs, *sizes.garment.optional)
    for k in range(1, len(works) - 1):
        bodies = [done.body for done in works[k - 1 : k + 2]]
        bends = {
            n: abs(bodies[0].value(n) - 2 * bodies[1].value(n) + bodies[2].value(n))
            for n in used
            if all(body.has(n) for body in bodies)
        }
        uneven = sorted((n for n in bends if bends[n] > EVEN + 1e-6), key=lambda n: -bends[n])
        if uneven:
            three = names[k - 1 : k + 2]
            yield GradeFinding(
                code="uneven_sizes",
                where=uneven[0],
                sizes=three,
                message=f"The sizes {' to '.join(three)} themselves step unevenly in "
                f"{_listed(tuple(uneven))}.",
                names=tuple(uneven),
                by=bends[uneven[0]],
            )
