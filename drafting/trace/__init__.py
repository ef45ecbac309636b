"""Values that remember how they were found.

A `Length` is a number that also knows its formula; a `Place` is a point that knows the words to
find it; a `Stroke` is a line that knows how it was drawn, its `Bearing`s by what lies on the paper.
Text is built only when someone asks for it.
"""

from drafting.trace.bearing import (
    DOWNWARD,
    LEFTWARD,
    RIGHTWARD,
    UPWARD,
    Bearing,
    along,
    running,
)
from drafting.trace.length import Length, larger, smaller
from drafting.trace.place import Move, Place
from drafting.trace.saying import Saying
from drafting.trace.step import Compared, Leg, Outline, Solved, Step
from drafting.trace.stroke import (
    Arc,
    Bend,
    Bulge,
    Fold,
    Guide,
    Part,
    Straight,
    Stroke,
    guide_of,
    middle_of,
    middle_out,
    past_diagonal,
    path_of,
    straight,
)

__all__ = [
    "DOWNWARD",
    "LEFTWARD",
    "RIGHTWARD",
    "UPWARD",
    "Arc",
    "Bearing",
    "Bend",
    "Bulge",
    "Compared",
    "Fold",
    "Guide",
    "Leg",
    "Length",
    "Move",
    "Outline",
    "Part",
    "Place",
    "Saying",
    "Solved",
    "Step",
    "Straight",
    "Stroke",
    "along",
    "guide_of",
    "larger",
    "middle_of",
    "middle_out",
    "past_diagonal",
    "path_of",
    "running",
    "smaller",
    "straight",
]
