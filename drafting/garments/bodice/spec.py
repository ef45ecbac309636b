"""What can be chosen about a bodice.

Source: limits and defaults are house method where no method or fit gives them.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal

from annotated_types import Interval

from drafting.pattern.allowance import LENGTH

Method = Literal["shoulder_dart", "armhole_dart"]
Place = Literal["shoulder", "armhole", "side", "french", "waist"]
Shaping = Literal["darts", "princess_shoulder", "princess_armhole"]
NeckLine = Literal["round", "v", "boat", "square"]
Opening = Literal["back_zip", "back_buttons", "front_zip", "front_buttons"]
SleeveLength = Literal["none", "short", "three_quarter", "long"]
SleeveFinish = Literal["plain", "elbow_dart", "cuff"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Shape:
    """What can be chosen about the upper body of any close-fitting garment. Lengths in cm.

    Attributes:
        bust_dart: Where the bust dart is moved to: the middle of the shoulder, the armhole, the side
            under the arm, low in the side slanting upward (French), or into the waist dart; by
            default the side. A princess line has none.
        shaping: Darts at the waist, or a princess line from the shoulder or the armhole that takes
            up all darts.
        neckline: Its shape.
        neck_depth: How far the neckline lies below the base of the neck at the centre front; by
            default 1 for a round one, 9 for a V, 0 for a boat, 6 for a square one.
        neck_width: How far it is widened along each shoulder; by default 1, 1, 4.5 and 3.
        sleeve: How long the sleeve is; none for armholes with facings.
        sleeve_finish: A plain hem, a dart at the elbow of a narrow long sleeve, or a band cuff on a
            long one, as wide as the hand needs, the sleeve gathered into it; by default plain, and
            the elbow dart where it is long.
        cap_ease: How much longer the sleeve cap is than the armhole; it is eased in.
        arm_ease: Sleeve over upper arm.
        cuff_depth: Finished depth of the cuff.
        match_marks: Whether marks are added at side and centres, for cloth with nap or checks.
    """

    method: Method = "shoulder_dart"
    bust_ease: Annotated[float | None, Interval(ge=4, le=24), LENGTH] = None
    waist_ease: Annotated[float, Interval(ge=1, le=16), LENGTH] = 6.0
    bust_dart: Place | None = None
    shaping: Shaping = "darts"
    neckline: NeckLine = "round"
    neck_depth: Annotated[float | None, Interval(ge=0, le=25), LENGTH] = None
    neck_width: Annotated[float | None, Interval(ge=0, le=9), LENGTH] = None
    sleeve: SleeveLength = "long"
    sleeve_finish: SleeveFinish | None = None
    cap_ease: Annotated[float, Interval(ge=0, le=5), LENGTH] = 2.5
    arm_ease: Annotated[float, Interval(ge=2.5, le=15), LENGTH] = 5.0
    cuff_depth: Annotated[float, Interval(ge=2, le=12), LENGTH] = 6.0
    match_marks: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Bodice(Shape):
    """A close-fitting bodice to the waist. Lengths in cm.

    Attributes:
        kind: Always "bodice".
        method: How it is drafted: "shoulder_dart", from the body's own widths with the bust dart in
            the shoulder; "armhole_dart", all widths from the bust, with the bust dart in the armhole.
        bust_ease: Bodice over body at the bust, all round; by default the method's own, 10 or 12, and
            2 less without sleeves.
        waist_ease: Bodice over body at the waist, all round.
        opening: Where it opens, and how.
    """

    kind: Literal["bodice"]
    opening: Opening = "back_zip"
