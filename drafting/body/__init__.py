"""The body: the vocabulary of measures, and a person's values with their origin.

Lengths are centimetres, masses kilograms, angles degrees.
"""

from drafting.body.body import MEASURES, Body, Figure, Measured, Origin
from drafting.body.measure import Kind, Measure
from drafting.body.ranges import RANGES, Ranges
from drafting.body.vetting import prepare

__all__ = [
    "MEASURES",
    "RANGES",
    "Body",
    "Figure",
    "Kind",
    "Measure",
    "Measured",
    "Origin",
    "Ranges",
    "prepare",
]
