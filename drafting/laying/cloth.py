"""What is asked of a lay: the cloths, their repeats, and how hard to search."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Annotated, Literal, get_args

from annotated_types import Interval, MaxLen

from drafting.pattern.allowance import LENGTH

ClothKind = Literal["main", "lining", "pocketing", "fusible"]
CLOTH_KINDS: tuple[ClothKind, ...] = get_args(ClothKind)

USUAL_WIDTHS = (90.0, 115.0, 140.0, 150.0)
"""Widths in which most cloth is sold, cm. Source: common practice, no source."""

RepeatLength = Annotated[float | None, Interval(ge=0.2, le=100), LENGTH]
Percent = Annotated[float, Interval(ge=0, le=20)]


@dataclass(frozen=True, slots=True, kw_only=True)
class Repeat:
    """Stripes or checks, and which edges must meet on them. Lengths in cm.

    The middle of a bar lies at the squared end of the cloth and the middle of a stripe on the
    middle of its width (folded: on the fold). Bars or stripes that look different from the other
    side need `one_way`.

    Attributes:
        lengthwise: From one bar to the next along the selvedge; none without bars.
        crosswise: From one stripe to the next across the cloth; none without stripes.
        match: Names of the edges whose seams must meet on the repeat. The first seam that joins
            two pieces sets them to each other exactly; later ones are measured and told.
    """

    lengthwise: RepeatLength = None
    crosswise: RepeatLength = None
    match: Annotated[tuple[str, ...], MaxLen(20)] = ("side",)


@dataclass(frozen=True, slots=True, kw_only=True)
class Cloth:
    """One kind of cloth on the table. Lengths in cm.

    Attributes:
        width: From selvedge to selvedge, both within, as bought.
        selvedge: What is left unused along each selvedge.
        ends: What is cut away at each end to square the cloth.
        one_way: Whether it has a nap or a pattern with a top, so that all tops lie one way.
        folded: Whether it is folded lengthwise, right sides together, and cut double.
        repeat: Stripes or checks.
        shrinkage_lengthwise: What the cloth loses in length when it is washed before cutting, in
            percent.
        shrinkage_crosswise: What it loses in width, in percent.
    """

    width: Annotated[float, Interval(ge=20, le=400), LENGTH] = 150.0
    selvedge: Annotated[float, Interval(ge=0, le=10), LENGTH] = 1.5
    ends: Annotated[float, Interval(ge=0, le=20), LENGTH] = 2.0
    one_way: bool = False
    folded: bool = False
    repeat: Repeat = field(default_factory=Repeat)
    shrinkage_lengthwise: Percent = 0.0
    shrinkage_crosswise: Percent = 0.0

    @property
    def table_width(self) -> float:
        """Width in cm when the cloth lies on the table, washed."""
        return self.width * (1 - self.shrinkage_crosswise / 100)

    @property
    def usable(self) -> float:
        """Breadth in cm between the selvedges, washed and open."""
        return self.table_width - 2 * self.selvedge

    @property
    def usable_folded(self) -> float:
        """Breadth in cm from the fold to the selvedges."""
        return self.table_width / 2 - self.selvedge


@dataclass(frozen=True, slots=True, kw_only=True)
class Laying:
    """How to search.

    Attributes:
        budget: Seconds that the engine may search, over all cloths and widths together; with 0
            the plain arrangement is the answer, the same every time.
        gap: Room left between two pieces, in cm.
        alternatives: Whether the usual widths are tried beside each cloth's own.
    """

    budget: Annotated[float, Interval(ge=0, le=30)] = 2.0
    gap: Annotated[float, Interval(ge=0, le=5), LENGTH] = 0.2
    alternatives: bool = False
