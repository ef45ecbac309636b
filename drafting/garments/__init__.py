"""The handbook: one garment, one chapter."""

from drafting.garments import trousers
from drafting.garments.garment import Garment, ValidRange
from drafting.garments.skirts import straight

GARMENTS: dict[str, Garment] = {
    "trousers": trousers.GARMENT,
    "straight_skirt": straight.GARMENT,
}
"""All chapters by their kind; a test proves that no chapter in the folder is missing."""

__all__ = ["GARMENTS", "Garment", "ValidRange"]
