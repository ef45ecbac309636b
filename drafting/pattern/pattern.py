"""A whole pattern, net."""

from __future__ import annotations

from dataclasses import dataclass, field

from drafting.geometry import Memory
from drafting.pattern.finding import Finding, Want
from drafting.pattern.piece import Piece
from drafting.pattern.seam import Seam


@dataclass(frozen=True, slots=True)
class Notion:
    """What is bought beside the cloth: zip, button, thread; length in cm where it has one."""

    name: str
    quantity: int = 1
    length: float | None = None


@dataclass(frozen=True, slots=True)
class SewingStep:
    """One step at the machine.

    Attributes:
        text: What is done, one sentence.
        seams: Names of the seams that it closes.
        darts: Names of the pieces whose darts it sews.
    """

    text: str
    seams: tuple[str, ...] = ()
    darts: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Pattern:
    """Pieces on the stitching line and the seams that join them, in sewing order.

    Attributes:
        kind: The garment's kind.
        title: What is written on each sheet.
        pieces: In cutting-list order.
        seams: In sewing order.
        wants: What the finished garment must measure, from the order and the body alone.
        finished_measurements: Name and the way to measure, told in the answer.
        sewing: The order of assembly; closes the seams in the order in which they are listed.
        notions: What is bought beside the cloth.
        findings: Remarks of the draft itself (a limit reached, a value out of the known range).
        cautions: Sentences for this garment beside the usual ones.
        resolved: Options that the draft settled itself, by name, so that the answer tells them all.
    """

    kind: str
    title: str
    pieces: tuple[Piece, ...]
    seams: tuple[Seam, ...]
    wants: tuple[Want, ...] = ()
    finished_measurements: tuple[Want, ...] = ()
    sewing: tuple[SewingStep, ...] = ()
    notions: tuple[Notion, ...] = ()
    findings: tuple[Finding, ...] = ()
    cautions: tuple[str, ...] = ()
    resolved: tuple[tuple[str, float], ...] = ()
    memory: Memory = field(default_factory=Memory, init=False, repr=False, compare=False)

    def piece(self, name: str) -> Piece:
        """The piece of that name. Raises KeyError."""
        for piece in self.pieces:
            if piece.name == name:
                return piece
        raise KeyError(f"no piece {name!r}")
