"""Pieces on cloth: how much of it is needed, and where each piece goes."""

from drafting.laying.cloth import CLOTH_KINDS, USUAL_WIDTHS, Cloth, ClothKind, Laying, Repeat
from drafting.laying.lay import lay
from drafting.laying.plan import (
    Alternative,
    Amount,
    ClothPlan,
    Layers,
    LayPlan,
    Placement,
    Stretch,
)
from drafting.laying.refusing import MOST_PIECES

__all__ = [
    "CLOTH_KINDS",
    "MOST_PIECES",
    "USUAL_WIDTHS",
    "Alternative",
    "Amount",
    "Cloth",
    "ClothKind",
    "ClothPlan",
    "LayPlan",
    "Layers",
    "Laying",
    "Placement",
    "Repeat",
    "Stretch",
    "lay",
]
