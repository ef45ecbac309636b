"""What can be chosen about a dress.

Source: limits and defaults are house method where no method or fit gives them.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal

from annotated_types import Interval

from drafting.craft.hemline import HemAt
from drafting.garments.bodice.spec import Shape
from drafting.pattern.allowance import LENGTH

SkirtKind = Literal["straight", "a_line", "gored", "circle", "gathered", "pleated"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Dress(Shape):
    """A bodice and a skirt joined at the waist, with a zip at the centre back. Lengths in cm.

    Attributes:
        kind: Always "dress".
        method: How the bodice is drafted: "shoulder_dart", from the body's own widths with the bust
            dart in the shoulder; "armhole_dart", all widths from the bust, with the bust dart in the
            armhole.
        bust_ease: Dress over body at the bust, all round; by default the method's own, 10 or 12, and
            2 less without sleeves.
        waist_ease: Dress over body at the waist, all round.
        skirt: Which skirt.
        length: Waist to hem; by default to where `hem_at` says.
        hem_at: Where the hem hangs on the leg, unless `length` is given.
        hip_ease: Skirt over body at the hip line of a straight or an A-line skirt, all round.
    """

    kind: Literal["dress"]
    waist_ease: Annotated[float, Interval(ge=1, le=16), LENGTH] = 4.0
    skirt: SkirtKind = "straight"
    length: Annotated[float | None, Interval(ge=30, le=130), LENGTH] = None
    hem_at: HemAt = "knee"
    hip_ease: Annotated[float, Interval(ge=2, le=30), LENGTH] = 5.0
