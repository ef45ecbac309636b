"""What can be chosen about a pair of trousers."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal

from annotated_types import Interval

from drafting.pattern.allowance import LENGTH

Girth = Annotated[float | None, Interval(ge=20, le=250), LENGTH]


@dataclass(frozen=True, slots=True, kw_only=True)
class Trousers:
    """Classic straight trousers at the natural waist. Lengths in cm.

    Attributes:
        kind: Always "trousers".
        method: How the pattern is drafted: "block", the two-dart block of the handbook.
        waist_ease: Waistband over body, all round.
        waist_fullness: Trouser top over waistband, all round; eased on when the band is sewn.
        hip_ease: Trousers over body at the hip line, all round.
        hem_girth: Girth of the hem; by default 44 cm at hip 96 and 1 cm more for each 4 cm of hip.
        knee_girth: Girth at the knee; by default the hem and some 5 cm.
        hem_over_floor: How far above the floor the hem ends.
        band_depth: Depth of the finished waistband.
        underlap: How far the waistband laps under at the centre front.
    """

    kind: Literal["trousers"]
    method: Literal["block"] = "block"
    waist_ease: Annotated[float, Interval(ge=0, le=10), LENGTH] = 1.0
    waist_fullness: Annotated[float, Interval(ge=0, le=3), LENGTH] = 1.0
    hip_ease: Annotated[float, Interval(ge=0, le=30), LENGTH] = 4.0
    hem_girth: Girth = None
    knee_girth: Girth = None
    hem_over_floor: Annotated[float, Interval(ge=0, le=30), LENGTH] = 2.0
    band_depth: Annotated[float, Interval(ge=2, le=8), LENGTH] = 4.0
    underlap: Annotated[float, Interval(ge=2, le=6), LENGTH] = 4.0
