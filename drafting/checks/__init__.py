"""What was drawn against what was wanted; each check measures the drawn lines and gives findings.

Lengths in cm, angles in degrees.
"""

from drafting.checks.check import CHECKS, check
from drafting.checks.closing import closed_edge
from drafting.checks.copies import copies
from drafting.checks.measure import corner_angle, finished_measurements, measure, width
from drafting.checks.sewing import SEAM_TOLERANCE, SeamMeasured, seams, walk

__all__ = [
    "CHECKS",
    "SEAM_TOLERANCE",
    "SeamMeasured",
    "check",
    "closed_edge",
    "copies",
    "corner_angle",
    "finished_measurements",
    "measure",
    "seams",
    "walk",
    "width",
]
