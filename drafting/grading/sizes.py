"""Many sizes of one garment: every one is drafted anew, none is stretched from another."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from drafting.body import Body
from drafting.errors import DraftingError
from drafting.garments.garment import Garment
from drafting.pattern import Finding, Finish
from drafting.workroom import Work, work


@dataclass(frozen=True, slots=True, kw_only=True)
class SizeDrafted:
    """One size of a range.

    Attributes:
        name: What the size is called.
        body: Its measures in cm.
        work: What left the workroom; None where the size cannot be drafted.
        refusal: Why it cannot be drafted; None where it was.
    """

    name: str
    body: Body
    work: Work | None = None
    refusal: DraftingError | None = None

    @property
    def sound(self) -> bool:
        """Whether it can be cut."""
        return self.work is not None and self.work.verdict != "unsound"


@dataclass(frozen=True, slots=True, kw_only=True)
class SizeRange:
    """One garment in many sizes, the smallest first as the caller listed them.

    A size that is unsound or cannot be drafted stays in the range and says so.
    """

    garment: Garment
    spec: Any
    finish: Finish
    sizes: tuple[SizeDrafted, ...]

    @property
    def names(self) -> tuple[str, ...]:
        """Names of all sizes, drafted or not."""
        return tuple(size.name for size in self.sizes)

    @property
    def works(self) -> tuple[tuple[str, Work], ...]:
        """Name and work of every size that could be drafted."""
        return tuple((s.name, s.work) for s in self.sizes if s.work is not None)


def size_range(
    garment: Garment, bodies: tuple[tuple[str, Body], ...], spec: Any, finish: Finish
) -> SizeRange:
    """Draft a garment for each of these bodies.

    Args:
        garment: The chapter.
        bodies: Name and body of each size, in the order of the range; at least one.
        spec: The chapter's options, the same for all sizes.
        finish: Purpose and allowances, the same for all sizes.

    Raises:
        ValueError: There is no size, or two have the same name.
    """
    names = [name for name, _ in bodies]
    if not names or len(set(names)) < len(names):
        raise ValueError("a range has at least one size, and each its own name")
    sizes = tuple(draft_size(garment, name, body, spec, finish) for name, body in bodies)
    return SizeRange(garment=garment, spec=spec, finish=finish, sizes=sizes)


def draft_size(
    garment: Garment,
    name: str,
    body: Body,
    spec: Any,
    finish: Finish,
    findings: tuple[Finding, ...] = (),
) -> SizeDrafted:
    """Draft one size; a refusal is part of the answer.

    Args:
        garment: The chapter.
        name: What the size is called; written on each of its pieces.
        body: Measures in cm.
        spec: The chapter's options.
        finish: Purpose and allowances.
        findings: Remarks of the vetting, told before the draft's own.
    """
    try:
        done = work(garment, body, spec, finish, reference=name, findings=findings)
    except DraftingError as error:
        return SizeDrafted(name=name, body=body, refusal=error)
    return SizeDrafted(name=name, body=body, work=done)
