"""The order of assembly: steps at the machine, each with the seams that it closes.

Source: common practice, no source; each chapter says where its order is another.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from drafting.pattern import Seam, SewingStep


@dataclass(frozen=True, slots=True)
class Assembling:
    """One step: what is done, the seams that it closes, the pieces whose darts it sews."""

    text: str
    seams: tuple[Seam, ...] = ()
    darts: tuple[str, ...] = ()


def in_order(
    steps: Iterable[Assembling | None],
) -> tuple[tuple[Seam, ...], tuple[SewingStep, ...]]:
    """All seams in sewing order, and the steps that name them; steps that are None are left out."""
    kept = [step for step in steps if step is not None]
    seams = tuple(seam for step in kept for seam in step.seams)
    told = tuple(SewingStep(s.text, tuple(seam.name for seam in s.seams), s.darts) for s in kept)
    return seams, told
