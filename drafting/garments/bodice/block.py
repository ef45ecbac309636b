"""What every method hands on: back and front of a bodice, half of it, centre back to the left.

Source: each method names its own.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.craft.darts import PlannedDart
from drafting.trace import Length, Place, Stroke


@dataclass(frozen=True, slots=True, kw_only=True)
class Levels:
    """Level lines and widths of the half.

    Attributes:
        nape: The nape, at the centre back.
        bust: The bust line at the centre back.
        waist: The waist at the centre back.
        front_bust: The bust line at the centre front.
        front_waist: The waist at the centre front.
        underarm: Where back and front meet under the arm.
        side_waist: The waist plumb under it.
    """

    nape: Place
    bust: Place
    waist: Place
    front_bust: Place
    front_waist: Place
    underarm: Place
    side_waist: Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Back:
    """A back as drafted.

    Attributes:
        neck: Where shoulder and neck meet.
        shoulder: The end of the shoulder.
        dart: The shoulder dart, from the neck outward.
        armhole: From the shoulder down to the underarm.
        width: Half the back as drafted, cm.
        steep: Height in cm of the neck over the nape.
    """

    neck: Place
    shoulder: Place
    dart: PlannedDart
    armhole: Stroke
    width: Length
    steep: Length


@dataclass(frozen=True, slots=True, kw_only=True)
class Front:
    """A front as drafted, its bust dart open where the method has it.

    Attributes:
        centre_neck: The centre front at the neck.
        neck: Where shoulder and neck meet.
        start: Where the shoulder starts: the neck point, or the outer leg of a dart beside it.
        shoulder: The end of the shoulder.
        bust_point: Where all darts point to.
        angle: How wide the bust dart opens, degrees.
        above: The armhole from the shoulder to the dart; None where no dart is in it.
        armhole: The armhole, or its stretch below the dart, to the underarm.
    """

    centre_neck: Place
    neck: Place
    start: Place
    shoulder: Place
    bust_point: Place
    angle: Length
    above: Stroke | None
    armhole: Stroke


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """Both halves and their levels."""

    levels: Levels
    back: Back
    front: Front
