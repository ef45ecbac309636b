"""The body: the vocabulary of measures, and a person's values with their origin.

Lengths are centimetres, masses kilograms, angles degrees. Source: each page names its own.
"""

from drafting.body.body import MEASURES, Body, Figure, Measured, Origin, Side
from drafting.body.completing import LENGTHS
from drafting.body.measure import Kind, Measure
from drafting.body.ranges import RANGES, Ranges
from drafting.body.sizes import SIZE_TABLES, Size, SizeTable, size_body, size_findings
from drafting.body.survey import ESTIMABLE
from drafting.body.taking import Given
from drafting.body.vetting import measurement_check, prepare

__all__ = [
    "ESTIMABLE",
    "LENGTHS",
    "MEASURES",
    "RANGES",
    "SIZE_TABLES",
    "Body",
    "Figure",
    "Given",
    "Kind",
    "Measure",
    "Measured",
    "Origin",
    "Ranges",
    "Side",
    "Size",
    "SizeTable",
    "measurement_check",
    "prepare",
    "size_body",
    "size_findings",
]
