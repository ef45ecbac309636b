"""Where a shirt's named places lie, whichever method found them. Half the shirt, wearer's right.

The centre back lies to the left, the centre front to the right, the nape on the paper's zero.

Source: each method names its own.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.trace import Length, Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """The frame and the corners of the armhole and the neck.

    Attributes:
        nape: Neck at the centre back.
        waist: Waist level at the centre back.
        hem: Hem level at the centre back.
        yoke: Yoke seam at the centre back.
        back_neck: Neck at the shoulder, of the back.
        back_shoulder: Shoulder end, of the back.
        yoke_end: Yoke seam at the armhole.
        back_underarm: Top of the back's side.
        side: The side line at the back's underarm level, from which the sides are shaped.
        front_neck: Neck at the shoulder, of the front.
        front_shoulder: Shoulder end, of the front.
        chest: Where the armhole turns toward the side, in front.
        front_underarm: Top of the front's side.
        centre: Centre front at the front's underarm level.
        throat: Neck at the centre front as the method has it.
        forward: How far the shoulder seam lies before the ridge of the shoulder at its end, cm.
        raised: By how much the front lies higher than the back at the underarm: the bust dart.
        bust_point: The bust point, with a bust dart.
    """

    nape: Place
    waist: Place
    hem: Place
    yoke: Place
    back_neck: Place
    back_shoulder: Place
    yoke_end: Place
    back_underarm: Place
    side: Place
    front_neck: Place
    front_shoulder: Place
    chest: Place
    front_underarm: Place
    centre: Place
    throat: Place
    raised: Length
    forward: float = 0.0
    bust_point: Place | None = None
