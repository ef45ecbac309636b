"""From the finished pattern to a display list: labels, marks, legend, arrangement on paper.

Exporters read a `Sheet` and know roles, not garments. Centimetres, Y up; paper in mm.
"""

from drafting.drawing.arrange import Arrangement, Block, Ground, Roll, Tiling, arrange, tiles_of
from drafting.drawing.compose import Composed, Drawn, Form, Note, compose, draw_pieces, label_pieces
from drafting.drawing.cover import Cover, cover_notes
from drafting.drawing.dressing import drawn_as, dressed
from drafting.drawing.labels import label_piece, piece_cuts
from drafting.drawing.legend import Legend, legend
from drafting.drawing.output import (
    ISO_PAPERS,
    PAPER_NAMES,
    PAPERS,
    SCALES,
    FormatName,
    Lines,
    Output,
    Paper,
    PaperName,
    ScaleName,
    Shrinkage,
    View,
    sheet_of,
)
from drafting.drawing.packing import GAP
from drafting.drawing.print_words import PRINT_WORDS, PrintWords
from drafting.drawing.sheet import Anchor, Group, Item, Pen, Role, Sheet, Stroke, Text
from drafting.drawing.words import WORDS, Unit, Words, amount
from drafting.language import Language

__all__ = [
    "GAP",
    "ISO_PAPERS",
    "PAPERS",
    "PAPER_NAMES",
    "PRINT_WORDS",
    "SCALES",
    "WORDS",
    "Anchor",
    "Arrangement",
    "Block",
    "Composed",
    "Cover",
    "Drawn",
    "Form",
    "FormatName",
    "Ground",
    "Group",
    "Item",
    "Language",
    "Legend",
    "Lines",
    "Note",
    "Output",
    "Paper",
    "PaperName",
    "Pen",
    "PrintWords",
    "Role",
    "Roll",
    "ScaleName",
    "Sheet",
    "Shrinkage",
    "Stroke",
    "Text",
    "Tiling",
    "Unit",
    "View",
    "Words",
    "amount",
    "arrange",
    "compose",
    "cover_notes",
    "draw_pieces",
    "drawn_as",
    "dressed",
    "label_piece",
    "label_pieces",
    "legend",
    "piece_cuts",
    "sheet_of",
    "tiles_of",
]
