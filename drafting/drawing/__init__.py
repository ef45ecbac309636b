"""From the finished pattern to a display list: labels, marks, legend, arrangement on paper.

Exporters read a `Sheet` and know roles, not garments. Centimetres, Y up; paper in mm.
"""

from drafting.drawing.arrange import GAP, Arrangement, Block, Tiling, arrange, tiles_of
from drafting.drawing.compose import Composed, Drawn, compose, draw_pieces
from drafting.drawing.labels import label_piece
from drafting.drawing.legend import Legend, legend
from drafting.drawing.output import (
    ISO_PAPERS,
    PAPER_NAMES,
    PAPERS,
    FormatName,
    Output,
    Paper,
    PaperName,
    View,
)
from drafting.drawing.sheet import Anchor, Group, Item, Pen, Role, Sheet, Stroke, Text
from drafting.drawing.words import WORDS, Language, Unit, Words, amount

__all__ = [
    "GAP",
    "ISO_PAPERS",
    "PAPERS",
    "PAPER_NAMES",
    "WORDS",
    "Anchor",
    "Arrangement",
    "Block",
    "Composed",
    "Drawn",
    "FormatName",
    "Group",
    "Item",
    "Language",
    "Legend",
    "Output",
    "Paper",
    "PaperName",
    "Pen",
    "Role",
    "Sheet",
    "Stroke",
    "Text",
    "Tiling",
    "Unit",
    "View",
    "Words",
    "amount",
    "arrange",
    "compose",
    "draw_pieces",
    "label_piece",
    "legend",
    "tiles_of",
]
