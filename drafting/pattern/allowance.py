"""How the net pattern is finished: allowance for each kind of edge, and what the paper is for."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Annotated, Literal

from annotated_types import Interval

Purpose = Literal["garment", "toile"]


class LengthUnit:
    """Marks a field as a length: the service turns it from the order's unit into cm."""


LENGTH = LengthUnit()

Allowance = Annotated[float | None, Interval(ge=0, le=10), LENGTH]

TOILE_ALLOWANCE = 2.5
"""A toile is let out and pinned: 2.5 cm everywhere. Source: common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Allowances:
    """Allowance in cm for each kind of edge; what is not given takes the value of `seam`.

    Straight hems are turned up 3 to 5 cm, curved ones (flared and circle skirts) 1 to 2 cm, or they
    pucker. Source: common practice, no source.
    """

    seam: Annotated[float, Interval(ge=0, le=10), LENGTH] = 1.0
    side: Allowance = None
    inseam: Allowance = None
    crotch: Allowance = None
    waist: Allowance = None
    band: Allowance = None
    facing: Allowance = None
    pocket: Allowance = None
    opening: Allowance = None
    hem: Annotated[float, Interval(ge=0, le=15), LENGTH] = 4.0
    curved_hem: Annotated[float, Interval(ge=0, le=5), LENGTH] = 1.5

    def of(self, kind: str) -> float:
        """Allowance in cm for a kind of edge."""
        value: float | None = getattr(self, kind, None)
        return float(self.seam if value is None else value)


@dataclass(frozen=True, slots=True, kw_only=True)
class Finish:
    """What the paper is for. A toile has 2.5 cm on every edge and all level lines."""

    purpose: Purpose = "garment"
    allowances: Allowances = field(default_factory=Allowances)

    def allowance(self, kind: str) -> float:
        """Allowance in cm for a kind of edge, by the purpose."""
        return TOILE_ALLOWANCE if self.purpose == "toile" else self.allowances.of(kind)
