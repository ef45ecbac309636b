"""Trousers, the pins of a fitting, as they stand in an order.

Source: as in `corrections`.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal

from annotated_types import Interval

from drafting.pattern.allowance import LENGTH

Pin = Literal[
    "let_out_sides", "let_out_front_side", "let_out_back_side", "lengthen_rise", "lengthen_front_fork", "lengthen_back_fork",
    "scoop_front", "scoop_back", "raise_front", "raise_back", "raise_sides", "seat_wedge", "lean_seat", "thigh_room", "swing_leg",
]


@dataclass(frozen=True, slots=True, kw_only=True)
class Correction:
    """One thing that a fitter pinned on the toile.

    Attributes:
        pin: What is changed; the garment's list of symptoms says which one helps.
        by: By how much; negative for the opposite.
    """

    pin: Pin
    by: Annotated[float, Interval(ge=-4, le=4), LENGTH]
