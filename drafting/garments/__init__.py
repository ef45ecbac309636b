"""The handbook: one garment, one chapter. Each chapter names its sources, each page its own."""

from drafting.garments import bodice, dress, knit_top, shirt, trousers
from drafting.garments.garment import Garment, ValidRange
from drafting.garments.skirts import a_line, circle, gathered, gored, pleated, straight

GARMENTS: dict[str, Garment] = {
    "trousers": trousers.GARMENT,
    "straight_skirt": straight.GARMENT,
    "a_line_skirt": a_line.GARMENT,
    "gored_skirt": gored.GARMENT,
    "circle_skirt": circle.GARMENT,
    "gathered_skirt": gathered.GARMENT,
    "pleated_skirt": pleated.GARMENT,
    "shirt": shirt.GARMENT,
    "knit_top": knit_top.GARMENT,
    "bodice": bodice.GARMENT,
    "dress": dress.GARMENT,
}
"""All chapters by their kind; a test proves that no chapter in the folder is missing."""

__all__ = ["GARMENTS", "Garment", "ValidRange"]
