"""Numbers of the trade that more than one page needs, each with its name and source."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class SizeBand:
    """A number that steps with the hip girth: (greatest hip in cm, value) rows, the last open."""

    name: str
    rows: tuple[tuple[float, float], ...]
    source: str

    def at(self, hip: float) -> float:
        """The value for a hip girth in cm."""
        for greatest, value in self.rows:
            if hip <= greatest:
                return value
        return self.rows[-1][1]


_BLOCK = "W. Aldrich, Metric Pattern Cutting for Women's Wear (sizes read as hip girths)"

FRONT_DIAGONAL = SizeBand("front crotch diagonal", ((102, 3.0), (124, 3.25), (999, 3.5)), _BLOCK)
BACK_DIAGONAL = SizeBand("back crotch diagonal", ((102, 4.25), (124, 4.5), (999, 4.75)), _BLOCK)
KNEE_OVER_HEM = SizeBand("knee over hem", ((102, 1.3), (124, 1.5), (999, 1.7)), _BLOCK)

HIP_CURVE = 0.5
"""A side seam stands 0.5 cm out over the straight line from waist to hip, cm. Source: W. Aldrich,
Metric Pattern Cutting for Women's Wear; for skirts from memory: the same."""

FRONT_HOLLOW, BACK_HOLLOW = 0.75, 1.25
"""How far a trouser's inseams are hollowed between fork and knee, cm. Source: W. Aldrich, Metric
Pattern Cutting for Women's Wear (front); from memory: the same (back)."""

BACK_DARTS = (12.0, 10.0)
"""Lengths in cm of a trouser back's darts, the one nearer to the centre first. Source: from memory:
W. Aldrich, Metric Pattern Cutting for Women's Wear."""

MOST_DART = 3.0
"""A trouser back's dart that would be wider than 3 cm is shared among several. Source: common
practice, no source."""

WAIST_LOWERED = 1.0
"""A skirt's waist is 1 cm lower at the centre back than at the sides. Source: common practice, no
source."""

ZIP_ABOVE_HIP = 2.0
"""A zip in a plain seam reaches down to 2 cm above the hip line. Source: common practice, no
source."""

SHOULDER_SLOPE = {"women": 23.3, "men": 27.7}
"""Degrees of the shoulder that the upper body's drafts suit: the mean of ANSUR II (2012), by the
drop of the shoulder's end and the shoulder's length (derived)."""

HAND_OVER_WRIST = 1.205
"""Girth of the hand over that of the wrist, where nobody measured it. Source: ANSUR II (2012)."""

DRILL_SHORT = 1.3
"""A dart's drill hole stands 1.3 cm (1/2 in) short of its point so that it is hidden in the seam.
Source: Suzy Furrer, bodice sloper class handout, 2017."""

NOTCH_FROM_CORNER = 2.0
"""No notch nearer than 2 cm to a corner, where it could not be read. Source: common practice, no
source."""

CROTCH_NOTCH = 7.5
"""Crotch notches stand 7.5 cm from the crotch point: single in front, double behind. Source:
common practice, no source."""

HEM_OVER_FLOOR = 2.0
"""A worn trouser hem ends about 2 cm above the floor. Source: common practice, no source."""

OPENING_OVER_HIP = 2.0
"""Waist and twice the opening must reach the hip and 2 cm, or it cannot be put on. Source: common
practice, no source."""

OPENING_ABOVE_HOOK = 2.5
"""A fly ends at least 2.5 cm above the place where the crotch curve begins, so that the zip lies
in a straight line. Source: common practice, no source."""

CLOSURE_LENGTH = 18.0
"""Usual length of a fly below the band, 17.8 to 18.4 cm on a factory specification. Source:
common practice, no source."""

FOOT_GIRTH = {"women": 34.0, "men": 37.0}
"""Girth over heel and instep when nobody measured it. Source: common practice, no source."""

HEAD_GIRTH = {"women": 58.0, "men": 59.0}
"""Girth of the head when nobody measured it: five heads in six are smaller. Source: ANSUR II
(2012), mean and standard deviation, 56.1 and 1.9 cm of women, 57.4 and 1.6 cm of men."""
