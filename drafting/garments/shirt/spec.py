"""What can be chosen about a shirt.

Source: limits and defaults are house method where no method or fit gives them.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal

from annotated_types import Interval

from drafting.pattern.allowance import LENGTH

Method = Literal["mens", "womens"]

Fit = Literal["slim", "classic", "relaxed"]

SleeveKind = Literal["long", "short"]

CollarKind = Literal["classic", "spread", "button_down", "stand"]

CuffKind = Literal["square", "rounded"]

PlacketKind = Literal["tower", "bound"]

BackPleat = Literal["none", "centre", "sides"]

FrontEdge = Literal["facing", "band"]

ShirtLap = Literal["left_over_right", "right_over_left"]

ChestPocket = Literal["none", "left", "both"]

HemShape = Literal["curved", "straight"]

Matched = Literal["none", "stripes", "checks"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Shirt:
    """A shirt with a collar on a stand, a yoke, and a front that buttons. Lengths in cm.

    Attributes:
        kind: Always "shirt".
        method: How it is drafted: "mens", a classic men's block whose shoulder seam lies forward;
            "womens", a women's close block let out, its bust dart at the side. Each drafts for
            either figure.
        fit: How close it sits: sets the eases of chest, armhole and back, and the waist.
        chest_ease: Finished chest or bust over body, all round; by default of the fit.
        neck_ease: Finished collar, button to buttonhole, over the neck; by default 1 cm, with
            method "womens" 2 cm.
        waist_shaping: How far each side edge is taken in at the waist; by default of the fit. Less
            where the waist needs the room.
        shoulder_drop: How much lower the shoulder ends lie than the draft has them, the whole armhole
            with them; less than nought for square shoulders. By default from the shoulder slope where
            it was measured, else none.
        bust_dart: Width of the bust dart at the side seam, with method "womens"; by default from
            bust and upper chest, less than 0.5 cm is none.
        length: Finished length at the centre back, nape to hem.
        hem: Curved, with tails, or straight.
        tail: How far a curved hem rises at the side; by default 7 cm.
        yoke_depth: Depth of the yoke at the centre back; by default a share of the armhole's.
        back_pleat: Fullness under the yoke: none; a box pleat at the centre; or one at each side.
        pleat_intake: What each half of the back takes in its pleat; by default 2 cm.
        front_edge: Buttons and buttonholes on a facing that is cut on, or on a separate band.
        button_stand: How far the front runs on beyond the centre front.
        lap: Which front carries the buttonholes; by default as the method's figure wears it.
        button_gap: Greatest distance from button to button down the front.
        collar: The leaf: classic, spread, or buttoned down; or the stand alone.
        collar_stand: Height of the collar's stand at the centre back.
        collar_fall: Depth of the leaf at the centre back; by default 1.2 cm more than the stand.
        collar_point: Length of the leaf's front edge; by default of its kind.
        sleeve: Long, with a cuff; or short.
        sleeve_length: From the shoulder seam to the end of cuff or hem; by default to the wrist and
            1 cm, or of a short sleeve 24 cm.
        cap_ease: How much longer the sleeve cap is than the armhole.
        cuff: Its corners square or rounded.
        cuff_depth: Finished depth of the cuff.
        cuff_ease: Buttoned cuff over the wrist.
        placket: The sleeve's slit: a tower of two strips; or bound with one. By default a tower for
            men's shirts.
        chest_pocket: None, one on the left, or two; by default one on men's shirts.
        match: Marks for cloth with stripes or checks: where the fronts, sides and pockets meet.
    """

    kind: Literal["shirt"]
    method: Method = "mens"
    fit: Fit = "classic"
    chest_ease: Annotated[float | None, Interval(ge=4, le=45), LENGTH] = None
    neck_ease: Annotated[float | None, Interval(ge=0, le=5), LENGTH] = None
    waist_shaping: Annotated[float | None, Interval(ge=0, le=4), LENGTH] = None
    shoulder_drop: Annotated[float | None, Interval(ge=-2, le=3), LENGTH] = None
    bust_dart: Annotated[float | None, Interval(ge=0, le=6), LENGTH] = None
    length: Annotated[float | None, Interval(ge=50, le=120), LENGTH] = None
    hem: HemShape = "curved"
    tail: Annotated[float | None, Interval(ge=2, le=14), LENGTH] = None
    yoke_depth: Annotated[float | None, Interval(ge=5, le=12), LENGTH] = None
    back_pleat: BackPleat = "centre"
    pleat_intake: Annotated[float | None, Interval(ge=1, le=5), LENGTH] = None
    front_edge: FrontEdge = "facing"
    button_stand: Annotated[float, Interval(ge=1.2, le=2.5), LENGTH] = 1.5
    lap: ShirtLap | None = None
    button_gap: Annotated[float, Interval(ge=6, le=12), LENGTH] = 9.0
    collar: CollarKind = "classic"
    collar_stand: Annotated[float, Interval(ge=2.5, le=4.5), LENGTH] = 3.2
    collar_fall: Annotated[float | None, Interval(ge=3.5, le=7), LENGTH] = None
    collar_point: Annotated[float | None, Interval(ge=4.5, le=11), LENGTH] = None
    sleeve: SleeveKind = "long"
    sleeve_length: Annotated[float | None, Interval(ge=12, le=90), LENGTH] = None
    cap_ease: Annotated[float, Interval(ge=0, le=3), LENGTH] = 0.5
    cuff: CuffKind = "square"
    cuff_depth: Annotated[float, Interval(ge=4, le=10), LENGTH] = 6.5
    cuff_ease: Annotated[float, Interval(ge=4, le=10), LENGTH] = 6.0
    placket: PlacketKind | None = None
    chest_pocket: ChestPocket | None = None
    match: Matched = "none"
