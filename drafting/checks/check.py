"""All checks in one table, and the one call that runs them on a finished pattern."""

from __future__ import annotations

from collections.abc import Callable
from math import isfinite

from drafting.checks.copies import edges_used_once
from drafting.checks.cutting import allowances_agree, allowances_kept, cut_lines_sound
from drafting.checks.measure import measure
from drafting.checks.notches import notches_meet, notches_on_edges
from drafting.checks.outline import hold
from drafting.checks.sewing import allowed_difference, seams
from drafting.checks.structure import (
    darts_smooth,
    darts_sound,
    lines_inside,
    names_once,
    outlines_sound,
    pleats_sound,
)
from drafting.pattern import Check, Finding, FinishedPattern, Pattern, Want


def seams_match(finished: FinishedPattern) -> tuple[Finding, ...]:
    """Find seams whose two sides are not of one length, wanted ease apart."""
    return tuple(
        Finding(
            code="seam_mismatch",
            severity="error",
            where=m.seam.name,
            message=f"The two sides of the {m.seam.name} seam are {m.difference:+.2f} cm off what "
            "is wanted.",
            measured=m.difference + m.seam.ease.wanted,
            allowed=(low - m.tolerance, high + m.tolerance),
        )
        for m in seams(finished.pattern)
        if not m.matches
        for low, high in (allowed_difference(m.seam.ease),)
    )


CHECKS: dict[str, Callable[[FinishedPattern], tuple[Finding, ...]]] = {
    "names_once": names_once,
    "edges_used_once": edges_used_once,
    "outlines_sound": outlines_sound,
    "darts_sound": darts_sound,
    "pleats_sound": pleats_sound,
    "darts_smooth": darts_smooth,
    "lines_inside": lines_inside,
    "notches_on_edges": notches_on_edges,
    "notches_meet": notches_meet,
    "seams_match": seams_match,
    "cut_lines_sound": cut_lines_sound,
    "allowances_kept": allowances_kept,
    "allowances_agree": allowances_agree,
}
"""Every structural check by name; each gives what it finds wrong, nothing where all is well."""


def check(pattern: FinishedPattern) -> tuple[tuple[Check, ...], tuple[Finding, ...]]:
    """Measure every wish of the pattern on its drawn lines, and look its structure over.

    Returns:
        Each wish beside its drawn value, in the pattern's order; and what was found wrong: first
        by the structural checks in the order of `CHECKS`, then a finding for each wish not met
        (an error where it is a must, a warning where it is advice).

    Raises:
        KeyError: A seam, notch, dart or wish names a piece, edge or level that is not there.
        ValueError: A wish cannot be measured on this pattern.
    """
    hold(line for p in pattern.pieces for line in (p.piece, p.cut_line))
    found = tuple(f for look in CHECKS.values() for f in look(pattern))
    checks = tuple(_checked(want, pattern.pattern) for want in pattern.pattern.wants)
    return checks, (*found, *(_failed(c) for c in checks if not c.passed))


def _checked(want: Want, pattern: Pattern) -> Check:
    return Check(
        name=want.name,
        kind=want.kind,
        unit=want.unit,
        wanted=want.wanted,
        low=want.low,
        high=want.high,
        drafted=measure(want.measuring, pattern),
        reason=want.reason,
    )


def _failed(check: Check) -> Finding:
    unit = "°" if check.unit == "deg" else " cm"
    name = check.name.replace("_", " ")
    told = f"The {name} is drawn {check.drafted:.2f}{unit}; allowed is"
    return Finding(
        code=f"failed_{check.name}",
        severity="error" if check.kind == "must" else "warning",
        where=check.name,
        message=f"{told} {_bounds(check)}{unit}. {check.reason}".strip(),
        measured=check.drafted,
        allowed=(check.low, check.high),
    )


def _bounds(check: Check) -> str:
    if isfinite(check.low) and isfinite(check.high):
        return f"{check.low:.2f} to {check.high:.2f}"
    return f"at least {check.low:.2f}" if isfinite(check.low) else f"at most {check.high:.2f}"
