"""The pattern as it is cut: cutting line, corners, notches carried out to it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from drafting.geometry import Path, Point, Vector
from drafting.pattern.allowance import Finish
from drafting.pattern.finding import Check, Finding
from drafting.pattern.pattern import Pattern
from drafting.pattern.piece import Label, Notch, Piece


class CornerRule(StrEnum):
    """How the cutting line turns from one edge's allowance into the next one's.

    mitre: the two cutting lines meet; bevel: cut off where the mitre would run too far;
    squared: at a right angle to the seam that is sewn first, so that raw edges coincide;
    mirrored: reflected over the hem fold, so that the turned hem lies flat on a tapered leg;
    fold: ends on the fold; step: two allowances on a smooth line; smooth: one on a smooth line.
    """

    MITRE = "mitre"
    BEVEL = "bevel"
    SQUARED = "squared"
    MIRRORED = "mirrored"
    FOLD = "fold"
    STEP = "step"
    SMOOTH = "smooth"


@dataclass(slots=True, init=False, unsafe_hash=True)
class Corner:
    """A corner of the cutting line.

    Attributes:
        before: Edge that ends there.
        after: Edge that starts there.
        rule: How it was made.
        at: The corner on the stitching line.
        path: The piece of cutting line that the corner adds; None where the two lines just meet.
        squared_to: Name of the edge that is sewn first, where the rule is squared.
    """

    before: Final[str]
    after: Final[str]
    rule: Final[CornerRule]
    at: Final[Point]
    path: Final[Path | None]
    squared_to: Final[str | None]

    def __init__(
        self,
        before: str,
        after: str,
        rule: CornerRule,
        at: Point,
        path: Path | None = None,
        squared_to: str | None = None,
    ) -> None:
        self.before = before
        self.after = after
        self.rule = rule
        self.at = at
        self.path = path
        self.squared_to = squared_to


@dataclass(frozen=True, slots=True)
class FinishedNotch:
    """A notch carried out to the cutting line.

    Attributes:
        notch: The net notch.
        point: On the stitching line.
        cut: On the cutting line, square out from `point`.
        direction: Unit vector from the stitching line outward.
    """

    notch: Notch
    point: Point
    cut: Point
    direction: Vector


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedPiece:
    """A piece with its cutting line.

    Attributes:
        piece: The net piece.
        allowances: Allowance in cm of each edge, in the order of the edges.
        edge_cuts: Cutting line beside each edge, in the order of the edges, without the corners;
            None where an edge is too short to keep any between its corners.
        corners: The corner at the end of each edge, in the order of the edges.
        cut_line: The whole cutting line, closed, counter-clockwise.
        notches: Notches carried out.
        labels: Texts inside the piece.
    """

    piece: Piece
    allowances: tuple[float, ...]
    edge_cuts: tuple[Path | None, ...]
    corners: tuple[Corner, ...]
    cut_line: Path
    notches: tuple[FinishedNotch, ...]
    labels: tuple[Label, ...] = ()

    def allowance(self, edge: str) -> float:
        """Allowance in cm of an edge. Raises KeyError."""
        for e, allowance in zip(self.piece.edges, self.allowances, strict=True):
            if e.name == edge:
                return allowance
        raise KeyError(edge)


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedPattern:
    """The pattern ready to be cut, with what was measured on it.

    Attributes:
        pattern: The net pattern.
        finish: Purpose and allowances.
        pieces: Finished pieces, in the order of the pattern's.
        checks: Every wish beside its drawn value.
        findings: All remarks: the body's, the draft's, the checks'.
    """

    pattern: Pattern
    finish: Finish
    pieces: tuple[FinishedPiece, ...]
    checks: tuple[Check, ...] = ()
    findings: tuple[Finding, ...] = ()

    def piece(self, name: str) -> FinishedPiece:
        """The finished piece of that name. Raises KeyError."""
        for piece in self.pieces:
            if piece.piece.name == name:
                return piece
        raise KeyError(f"no piece {name!r}")
