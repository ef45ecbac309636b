"""What is wanted of a pattern, what was measured, and what is worth a remark."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from drafting.pattern.measuring import Measuring

Severity = Literal["note", "warning", "error"]
CheckKind = Literal["must", "advice"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Want:
    """A wish that comes only from the order and the body, and the tape that will prove it.

    Attributes:
        name: Stable name of the check.
        measuring: Where the tape is laid on the drawn lines.
        wanted: The wish, in cm or degrees.
        low: Least value that passes; -inf where none is too small.
        high: Greatest value that passes; inf where none is too large.
        kind: `must` decides the verdict; `advice` never does.
        unit: "cm" or "deg".
        reason: Why these bounds, one sentence; shown where the check fails or remarks.
    """

    name: str
    measuring: Measuring
    wanted: float
    low: float
    high: float
    kind: CheckKind = "must"
    unit: Literal["cm", "deg"] = "cm"
    reason: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Check:
    """A wish beside the drawn value."""

    name: str
    kind: CheckKind
    unit: Literal["cm", "deg"]
    wanted: float
    low: float
    high: float
    drafted: float
    reason: str = ""

    @property
    def passed(self) -> bool:
        """Whether the drawn value lies within the bounds (to a thousandth)."""
        return self.low - 1e-3 <= self.drafted <= self.high + 1e-3


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """Drafted, but worth a remark.

    Attributes:
        code: Stable snake_case name.
        severity: note, warning or error; an error makes the pattern unsound.
        where: Measure, piece, seam or check that it speaks of.
        message: What was found and what to do, in the order's language.
        measured: Value found, in the unit of what it speaks of, where there is one.
        allowed: Least and greatest value, where there are bounds; infinite where one is open.
        unit: What the two count, where `where` names no measure and no check that would tell.
    """

    code: str
    severity: Severity
    where: str
    message: str
    measured: float | None = None
    allowed: tuple[float, float] | None = None
    unit: Literal["cm", "deg", "count"] = "cm"
