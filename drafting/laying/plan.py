"""The plan of a lay: what is bought, what lies where, and what is worth a remark.

Lengths in cm, areas in cm². A plan's frame has X along the cloth from its squared end and Y across
it: from a selvedge where the cloth lies open, from the fold where it is folded.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from drafting.geometry import Path, Transform
from drafting.laying.cloth import Cloth, ClothKind, Laying
from drafting.laying.solving import BedKind
from drafting.laying.strip import Turn
from drafting.pattern import Finding, FinishedPiece

METRIC_STEP = 5.0
"""Shops that sell by the metre cut to 5 cm. Source: common practice, no source."""
EIGHTH_YARD = 11.43
"""And those that sell by the yard to an eighth of it. Source: common practice, no source."""

Layers = Literal["single", "double", "fold", "upper"]
"""How a piece is cut: from open cloth; through both layers; at the fold; from the upper layer."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Placement:
    """A piece laid on the cloth.

    Attributes:
        order: Number of the order, from 1.
        reference: The order's own name, as typed.
        garment: Title of its pattern.
        finished: The piece.
        copies: Numbers of the copies that are cut here, from 1: two where the cloth is double.
        layers: How it is cut.
        turn: 0 with its top toward the cloth's start, 180 with its top toward the end.
        mirrored: Whether the pattern lies face down.
        move: From the piece's frame to the plan's.
        outline: The cutting line where it lies; closed. Of a piece on the fold, one half.
    """

    order: int
    reference: str
    garment: str
    finished: FinishedPiece
    copies: tuple[int, ...]
    layers: Layers
    turn: Turn
    mirrored: bool
    move: Transform
    outline: Path

    @property
    def piece(self) -> str:
        """Name of the piece."""
        return self.finished.piece.name


@dataclass(frozen=True, slots=True)
class Stretch:
    """A stretch of the cloth, open or folded: where it begins, and its length."""

    kind: BedKind
    start: float
    length: float


@dataclass(frozen=True, slots=True)
class Amount:
    """A length of cloth to buy: exactly, and rounded up to what shops sell."""

    exact: float

    @property
    def metric(self) -> float:
        """In cm, a multiple of 5."""
        return METRIC_STEP * math.ceil(self.exact / METRIC_STEP - 1e-9)

    @property
    def yards(self) -> float:
        """In yards, a multiple of an eighth."""
        return math.ceil(self.exact / EIGHTH_YARD - 1e-9) / 8


@dataclass(frozen=True, slots=True)
class Alternative:
    """The same pieces on another width; `buy` is None where a piece is too broad for it."""

    width: float
    buy: Amount | None
    engine: str = "plain"


@dataclass(frozen=True, slots=True, kw_only=True)
class ClothPlan:
    """The lay of one cloth.

    Attributes:
        kind: Which cloth.
        cloth: What was asked of it.
        stretches: Open or folded, in their order along the cloth.
        placements: In the order of the stretches, from the cloth's start.
        length: Length of cloth that the pieces take, its ends not counted.
        area: Area of everything that is cut, all copies.
        bound: What no lay can undercut: the greater of area over breadth and the longest piece.
        buy: Length to buy: with both ends, one lengthwise repeat, and what washing takes.
        engine: Who found the lay.
        findings: What to mind, and which other width would save cloth.
        alternatives: Other widths, where they were asked for.
    """

    kind: ClothKind
    cloth: Cloth
    stretches: tuple[Stretch, ...]
    placements: tuple[Placement, ...]
    length: float
    area: float
    bound: float
    buy: Amount
    engine: str
    findings: tuple[Finding, ...] = ()
    alternatives: tuple[Alternative, ...] = ()

    @property
    def use(self) -> float:
        """Percent of the cloth between the selvedges, as long as the pieces take, that is used."""
        return 100 * self.area / (self.length * self.cloth.usable)

    @property
    def waste(self) -> float:
        """Area that is bought and not used, as it lies on the table; with selvedges and ends."""
        on_table = self.buy.metric * (1 - self.cloth.shrinkage_lengthwise / 100)
        return on_table * self.cloth.table_width - self.area

    @property
    def ratio(self) -> float:
        """Length over the least possible one; 1 is the best there can be."""
        return self.length / self.bound


@dataclass(frozen=True, slots=True, kw_only=True)
class LayPlan:
    """The lays of all cloths of one or several orders.

    Attributes:
        laying: How it was searched.
        cloths: One plan for each cloth.
        findings: What concerns all of them.
    """

    laying: Laying
    cloths: tuple[ClothPlan, ...]
    findings: tuple[Finding, ...] = ()
