"""The grade report: every labelled point followed from size to size, and every jump named."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from drafting.geometry import Point
from drafting.grading.evenness import unevenness
from drafting.grading.report import GradeFinding, GradeReport, PointMoves
from drafting.grading.sizes import SizeRange
from drafting.trace import Length, Place, Step
from drafting.workroom import Work

StepKey = tuple[str, str]


def grade_report(sizes: SizeRange) -> GradeReport:
    """How a garment grows over a range; sizes that could not be drafted are passed over."""
    works = sizes.works
    found = [_points(work) for _, work in works]
    keys = dict.fromkeys(key for points in found for key in points)
    return GradeReport(
        sizes=tuple(name for name, _ in works),
        origin=next((name for _, name in keys), ""),
        points=tuple(
            PointMoves(chapter, name, tuple(p.get((chapter, name)) for p in found))
            for chapter, name in keys
        ),
        findings=(
            *(f for a, b in pairwise(works) for f in _between(a, b)),
            *unevenness(sizes),
        ),
    )


def _points(work: Work) -> dict[StepKey, Point]:
    return {
        (step.chapter, step.name): Point(step.value.x, step.value.y)
        for step in work.steps
        if step.kind == "point" and isinstance(step.value, Place)
    }


def _between(one: tuple[str, Work], two: tuple[str, Work]) -> Iterator[GradeFinding]:
    """What two neighbouring sizes decide otherwise or have no part in."""
    sizes = (one[0], two[0])
    steps = tuple({(s.chapter, s.name): s for s in work.steps} for _, work in (one, two))
    for key, before in steps[0].items():
        after = steps[1].get(key)
        if after is not None and before.kind == after.kind == "decision":
            yield from _decision(before, after, sizes)
        elif after is not None:
            yield from _limits(before, after, sizes)
    yield from _differing(steps[0], steps[1], sizes)


def _decision(before: Step, after: Step, sizes: tuple[str, str]) -> Iterator[GradeFinding]:
    if before.value == after.value:
        return
    answers = tuple("yes" if step.value else "no" for step in (before, after))
    yield GradeFinding(
        code="decision_changes",
        where=before.name,
        sizes=sizes,
        message=f"{before.question} {answers[0].capitalize()} for {sizes[0]}, {answers[1]} for "
        f"{sizes[1]}: {before.name}.",
        names=(before.name,),
    )


def _limits(before: Step, after: Step, sizes: tuple[str, str]) -> Iterator[GradeFinding]:
    """Lengths that are the larger or the smaller of two, where the other one is taken now."""
    choices = zip(_choices(before), _choices(after), strict=False)
    for (length, taken), (_, then) in choices:
        if taken != then:
            yield GradeFinding(
                code="limit_reached",
                where=before.name,
                sizes=sizes,
                message=f"The {before.name} goes by {length.formula}: it is {taken} for "
                f"{sizes[0]}, {then} for {sizes[1]}.",
                names=(before.name,),
            )


def _choices(step: Step) -> list[tuple[Length, str]]:
    """Each choice between two lengths in a step, and the formula of the one taken."""
    how = step.how
    if isinstance(how, Place):
        lengths = [o for move in how.moves for o in move.operands if isinstance(o, Length)]
        return [choice for length in lengths for choice in _chosen(length)]
    return list(_chosen(how)) if isinstance(how, Length) else []


def _chosen(length: float) -> Iterator[tuple[Length, str]]:
    if not isinstance(length, Length) or not isinstance(length.how, tuple):
        return
    sign, a, b = length.how
    if sign in ("larger", "smaller"):
        taken = a if float(a) == float(length) else b
        words = taken if isinstance(taken, Length) else Length(taken)
        yield length, words.formula
    yield from _chosen(a)
    yield from _chosen(b)


def _differing(
    one: dict[StepKey, Step], two: dict[StepKey, Step], sizes: tuple[str, str]
) -> Iterator[GradeFinding]:
    """Points that only one of two neighbours has."""
    for have, lack, (has, lacks) in ((one, two, sizes), (two, one, sizes[::-1])):
        names = tuple(s.name for k, s in have.items() if s.kind == "point" and k not in lack)
        if names:
            yield GradeFinding(
                code="points_differ",
                where=names[0],
                sizes=sizes,
                message=f"{has} has what {lacks} has not: {', '.join(names)}.",
                names=names,
            )
