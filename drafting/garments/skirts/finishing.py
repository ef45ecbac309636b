"""Skirts, what finishes a skirt of smooth panels: pocket, facing, lining.

Source: facings and linings traced from the panels, the lining 2 to 3 cm shorter: common practice,
no source.
"""

from __future__ import annotations

from dataclasses import replace

from drafting.craft.around import Round
from drafting.craft.contour import Contour
from drafting.craft.seam_pocket import SeamPocket, seam_pocket
from drafting.craft.sheet import DraftSheet
from drafting.craft.waists import facing, straight_band
from drafting.garments.skirts.lining import Lining
from drafting.garments.skirts.options import Lined, Pocketed, band, facing_depth, pocket_mouth
from drafting.garments.skirts.waists import Waist
from drafting.geometry import Path, turn
from drafting.pattern import Ease, Piece

LININGS = {
    "skirt": "Lining",
    "back": "Back lining",
    "side_back": "Side back lining",
    "side_front": "Side front lining",
    "front": "Front lining",
}
"""What is written on a lining, by the panel that it is traced from."""


def side_pocket(side: Path, panels: tuple[str, str], cut: Pocketed, sheet: DraftSheet) -> SeamPocket | None:
    """The pocket in the side seam, if one is asked for; its bag hangs as the seam does when worn.

    Args:
        side: The side of the panel before it, from the waist down, cm.
        panels: Names of the pieces before and behind the seam.
        cut: The options.
        sheet: Records where it lies.

    Raises:
        SpecError: The side seam is too short for it.
    """
    mouth = pocket_mouth(cut)
    if not mouth:
        return None
    hung = side.transformed(turn(-90.0 - (side.end - side.start).angle, side.start))
    return seam_pocket(hung, mouth, sheet, panels=panels, option="pocket")


def opened_by(pocket: SeamPocket | None) -> tuple[float, float] | None:
    """Lengths in cm of the seam over a pocket, and of its opening."""
    return None if pocket is None else (pocket.above, pocket.mouth)


def above_lining(cut: Lined, waistband: str) -> float:
    """How far under the waist the lining begins, cm: at the facing's lower edge, or at the waist."""
    return facing_depth(cut) if waistband == "facing" else 0.0


def traced(waist: Path, side: Path, centre: Path, foot: Path, depth: float) -> Contour:
    """A facing traced from a panel without darts.

    Args:
        waist: The panel's waist, from the centre to the side, cm.
        side: Its side from the waist down.
        centre: Its centre from the waist down.
        foot: The facing's lower edge, from the centre to the side.
        depth: How far under the waist that lies, along side and centre.
    """
    (band_side, below), (band_centre, under) = side.split(depth), centre.split(depth)
    return Contour(waist, band_side, foot, band_centre, foot, (), below, under)


def finished_top(
    layer: Round, pieces: tuple[Piece, ...], contours: tuple[Contour, ...], top: float, ease: Ease, lined: Lining | None, cut: Lined
) -> Waist:
    """The straight band, or the facing where something was traced for one."""
    hung = None if lined is None else lined.layer
    if not contours:
        return straight_band(layer, pieces, top, ease, band(cut), hung)
    made = facing(layer, contours, hung)
    return replace(made, pieces=tuple(replace(f, notches=tuple(n for n in p.notches if n.edge == "waist")) for f, p in zip(made.pieces, pieces, strict=True)))


def as_lining(pieces: tuple[Piece, ...], layer: Round) -> Lining:
    """Panels without darts, cut of lining."""
    cut = tuple(
        replace(
            p, name=f"{p.name}_lining", title=LININGS[p.name], cut=tuple(replace(c, cloth="lining") for c in p.cut),
            notches=tuple(n for n in p.notches if n.edge != "waist"),
        )
        for p in pieces
    )
    return Lining(cut, Round(tuple(p.name for p in cut), layer.uprights, "lining"))
