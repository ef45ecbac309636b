"""Values that remember how they were found.

A `Length` is a number that also knows its formula; a `Place` is a point that knows the words to
find it. Text is built only when someone asks for it.
"""

from drafting.trace.length import Length, larger, smaller
from drafting.trace.place import Move, Place
from drafting.trace.step import Step
from drafting.trace.stroke import Stroke

__all__ = ["Length", "Move", "Place", "Step", "Stroke", "larger", "smaller"]
