"""What lies on the cutting table: pieces with named edges, darts, notches, seams, allowances.

Net first (the stitching line), then finished (the cutting line). Centimetres, Y up.
"""

from drafting.pattern.allowance import Allowances, Finish
from drafting.pattern.finding import Check, Finding, Severity, Want
from drafting.pattern.finished import (
    Corner,
    CornerRule,
    FinishedNotch,
    FinishedPattern,
    FinishedPiece,
)
from drafting.pattern.measuring import (
    AngleBetween,
    CombinedLength,
    CornerDepth,
    CrossShare,
    EdgeLength,
    Girth,
    LevelDepth,
    Measuring,
    Number,
)
from drafting.pattern.pattern import Notion, Pattern, SewingStep
from drafting.pattern.piece import (
    Cut,
    Dart,
    Edge,
    Label,
    Mark,
    Notch,
    Piece,
    Pleat,
    Role,
    Taken,
)
from drafting.pattern.seam import NO_EASE, Copy, Ease, Seam, SeamPart

__all__ = [
    "NO_EASE",
    "Allowances",
    "AngleBetween",
    "Check",
    "CombinedLength",
    "Copy",
    "Corner",
    "CornerDepth",
    "CornerRule",
    "CrossShare",
    "Cut",
    "Dart",
    "Ease",
    "Edge",
    "EdgeLength",
    "Finding",
    "Finish",
    "FinishedNotch",
    "FinishedPattern",
    "FinishedPiece",
    "Girth",
    "Label",
    "LevelDepth",
    "Mark",
    "Measuring",
    "Notch",
    "Notion",
    "Number",
    "Pattern",
    "Piece",
    "Pleat",
    "Role",
    "Seam",
    "SeamPart",
    "Severity",
    "SewingStep",
    "Taken",
    "Want",
]
