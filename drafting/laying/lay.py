"""Lay the pieces of one or several orders on their cloths. Lengths in cm."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from drafting.geometry import shift
from drafting.laying import matching, refusing, remarks
from drafting.laying.cloth import CLOTH_KINDS, USUAL_WIDTHS, Cloth, ClothKind, Laying
from drafting.laying.parts import Wanted, wanted, whole
from drafting.laying.plan import (
    Alternative,
    Amount,
    ClothPlan,
    Layers,
    LayPlan,
    Placement,
    Stretch,
)
from drafting.laying.solving import Bed, Case, Layout, least_length, shortest, widened
from drafting.laying.strip import FREE, Spot, reach
from drafting.pattern import Finding

if TYPE_CHECKING:
    from drafting.workroom import Work

WIDER = 10.0
"""A cloth so much wider, in cm, is tried to see whether it would save a length."""
PROBED = 60
"""With more pieces than this a wider cloth is not tried unasked."""
OWN, OTHERS, PROBE = 8, 4, 1
"""How the time is shared between a cloth's own width, each usual one, and the wider one."""

Layouts = dict[float, Layout]
"""For each width that the pieces fit on, its lay."""


@dataclass(frozen=True, slots=True)
class _Job:
    """A cloth to lay, the widths to try, and the weight of each in time."""

    kind: ClothKind
    case: Case
    weights: tuple[tuple[float, int], ...]
    findings: tuple[Finding, ...]

    @property
    def weight(self) -> float:
        return self.case.count * sum(weight for _, weight in self.weights)


def lay(
    works: tuple[Work, ...], cloths: Mapping[ClothKind, Cloth], laying: Laying | None = None
) -> LayPlan:
    """Lay the pieces of one or several orders, each cloth by itself.

    With a budget the engine searches by the clock, so two calls may differ a little; with none
    the plan is the same every time. On one call a two-way cloth takes no more than it would with
    all tops one way, and a wider one no more than a narrower.

    Args:
        works: What left the workroom, one or several.
        cloths: What is asked of each kind of cloth; kinds left out are not laid.
        laying: How to search.

    Raises:
        OutputError: No piece of a cloth, too many, or one too broad for it; says what would help.
        SpecError: A repeat longer than the cloth, an unknown edge, selvedges that leave nothing.
    """
    laying = laying or Laying()
    jobs = [_job(works, kind, cloths[kind], laying) for kind in CLOTH_KINDS if kind in cloths]
    plans: dict[ClothKind, ClothPlan] = {}
    waiting, left = sum(job.weight for job in jobs), laying.budget
    for job in sorted(jobs, key=lambda job: job.weight):  # small ones leave time for the rest
        layouts = _layouts(job, left * job.weight / waiting)
        left -= sum(layout.spent for layout in layouts.values())
        waiting -= job.weight
        plans[job.kind] = _plan(works, job, layouts, laying)
    ordered = tuple(plans[kind] for kind in CLOTH_KINDS if kind in plans)
    return LayPlan(laying=laying, cloths=ordered, findings=remarks.on_orders(works, cloths))


def _job(works: tuple[Work, ...], kind: ClothKind, cloth: Cloth, laying: Laying) -> _Job:
    """Prepare a cloth, or refuse it."""
    wants = wanted(works, kind)
    findings: tuple[Finding, ...] = ()
    if not wants:
        raise refusing.no_pieces(works, kind)
    if matching.is_wanted(cloth.repeat):
        wants, findings = _anchored(works, wants, cloth, kind)
    case = Case(cloth, wants, laying.gap)
    refusing.check(case, kind)
    usual = USUAL_WIDTHS if laying.alternatives else ()
    wider = (cloth.width + WIDER,) if case.count <= PROBED else ()
    weights = dict.fromkeys(wider, PROBE) | dict.fromkeys(usual, OTHERS) | {cloth.width: OWN}
    return _Job(kind, case, tuple(sorted(weights.items())), findings)


def _anchored(
    works: tuple[Work, ...], wants: tuple[Wanted, ...], cloth: Cloth, kind: str
) -> tuple[tuple[Wanted, ...], tuple[Finding, ...]]:
    """The pieces with their anchors on the repeat, and the seams that cannot meet."""
    matching.check_edges(tuple(w.pattern for w in works), cloth.repeat, f"cloths.{kind}")
    found = [matching.anchors(work.pattern, cloth.repeat) for work in works]
    anchored = tuple(
        replace(want, anchor=found[want.order][0].get(want.name, FREE)) for want in wants
    )
    missed = [m for _, mismatches in found for m in mismatches]
    return anchored, remarks.mismatches(missed, kind)


def _layouts(job: _Job, seconds: float) -> Layouts:
    """The lay on every width, from narrow to wide; a wider one is never longer."""
    found: Layouts = {}
    total = sum(weight for _, weight in job.weights)
    for width, weight in job.weights:
        case = _on(job.case, width)
        if not refusing.fits(case):
            continue
        own = shortest(case, seconds * weight / total, hasty=weight == PROBE)
        narrower = [widened(layout, case) for layout in found.values()]
        best = min((own, *narrower), key=lambda layout: round(layout.length, 3))
        found[width] = replace(best, spent=own.spent)
    return found


def _on(case: Case, width: float) -> Case:
    return replace(case, cloth=replace(case.cloth, width=width))


def _plan(works: tuple[Work, ...], job: _Job, layouts: Layouts, laying: Laying) -> ClothPlan:
    cloth, layout = job.case.cloth, layouts[job.case.cloth.width]
    trouble = refusing.repeat_too_long(layout.length, cloth, job.kind)
    if trouble:
        raise trouble
    stretches = tuple(
        Stretch(bed.kind, start, reach(spots))
        for bed, spots, start in zip(layout.beds, layout.spots, layout.starts, strict=True)
    )
    plan = ClothPlan(
        kind=job.kind,
        cloth=cloth,
        stretches=stretches,
        placements=tuple(_placements(works, job.case, layout)),
        length=layout.length,
        area=sum(part.area for bed in layout.beds for part in bed.strip.parts),
        bound=least_length(layout, cloth),
        buy=amount_to_buy(layout.length, cloth),
        engine=layout.engine,
        alternatives=tuple(_alternatives(job, layouts)) if laying.alternatives else (),
    )
    told = (*job.findings, *remarks.on_plan(plan), *_other_widths(plan, layouts))
    return replace(plan, findings=told)


def amount_to_buy(length: float, cloth: Cloth) -> Amount:
    """What to buy for a lay: both ends, one repeat to start on a bar, and what washing takes."""
    on_table = length + 2 * cloth.ends + (cloth.repeat.lengthwise or 0.0)
    return Amount(on_table / (1 - cloth.shrinkage_lengthwise / 100))


def _placements(works: tuple[Work, ...], case: Case, layout: Layout) -> Iterator[Placement]:
    wants = {(want.order, want.name): want for want in case.wants}
    for bed, spots, start in zip(layout.beds, layout.spots, layout.starts, strict=True):
        edge = 0.0 if bed.kind == "folded" else case.cloth.selvedge
        for spot in sorted(spots, key=lambda s: (round(s.x, 3), round(s.y, 3))):
            want = wants[spot.part.order, spot.part.piece]
            move = spot.way.move.then(shift(start + spot.x, edge + spot.y))
            path = want.finished.cut_line if spot.part.on_fold else whole(want.finished)
            yield Placement(
                order=want.order + 1,
                reference=works[want.order].reference,
                garment=works[want.order].pattern.pattern.title,
                finished=want.finished,
                copies=spot.part.copies[spot.time],
                layers=_layers(bed, spot),
                turn=spot.way.turn,
                mirrored=spot.way.mirrored,
                move=move,
                outline=path.transformed(move),
            )


def _layers(bed: Bed, spot: Spot) -> Layers:
    if bed.kind == "open":
        return "single"
    if spot.part.on_fold:
        return "fold"
    return "double" if len(spot.part.copies[spot.time]) == 2 else "upper"


def _alternatives(job: _Job, layouts: Layouts) -> Iterator[Alternative]:
    for width in USUAL_WIDTHS:
        layout = layouts.get(width)
        if layout is None:
            yield Alternative(width, None)
        else:
            cloth = _on(job.case, width).cloth
            yield Alternative(width, amount_to_buy(layout.length, cloth), layout.engine)


def _other_widths(plan: ClothPlan, layouts: Layouts) -> Iterator[Finding]:
    """Whether a wider cloth saves a length, or a narrower one would do."""
    bought = {
        width: amount_to_buy(layout.length, replace(plan.cloth, width=width))
        for width, layout in layouts.items()
    }
    yield from remarks.widths(plan, bought, layouts)
