"""Exact plane geometry: points, lines, cubic curves, paths, crossings, offsets.

Knows no cloth. Centimetres, degrees, Y up. Where there is no answer (parallel lines, a curve that
does not reach) the functions return None; the caller, who knows what it means, makes the error.
"""

from drafting.geometry.array import array_of
from drafting.geometry.crossing import Crossing, crossing_with_line, crossings, foot, meet
from drafting.geometry.fitting import bulged, corner_of, cuts_ray, smooth, through_ray, with_handles
from drafting.geometry.loops import self_crossing
from drafting.geometry.memory import Memory, remembered
from drafting.geometry.nearest import distance_to, nearest
from drafting.geometry.offset import OFFSET_TOLERANCE, offset
from drafting.geometry.path import JOIN, Path, curve, join, loop, polyline
from drafting.geometry.point import DOWN, LEFT, RIGHT, UP, Point, Vector, direction
from drafting.geometry.segment import LENGTH_ACCURACY, Cubic, Line, Segment, quadratic
from drafting.geometry.solve import root
from drafting.geometry.transform import IDENTITY, Transform, mirror, scale, shift, turn

__all__ = [
    "DOWN",
    "IDENTITY",
    "JOIN",
    "LEFT",
    "LENGTH_ACCURACY",
    "OFFSET_TOLERANCE",
    "RIGHT",
    "UP",
    "Crossing",
    "Cubic",
    "Line",
    "Memory",
    "Path",
    "Point",
    "Segment",
    "Transform",
    "Vector",
    "array_of",
    "bulged",
    "corner_of",
    "crossing_with_line",
    "crossings",
    "curve",
    "cuts_ray",
    "direction",
    "distance_to",
    "foot",
    "join",
    "loop",
    "meet",
    "mirror",
    "nearest",
    "offset",
    "polyline",
    "quadratic",
    "remembered",
    "root",
    "scale",
    "self_crossing",
    "shift",
    "smooth",
    "through_ray",
    "turn",
    "with_handles",
]
