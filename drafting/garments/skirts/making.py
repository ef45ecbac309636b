"""Skirts of a back and a front, made up: panels to pieces, waist, lining, seams and wishes."""

from __future__ import annotations

from drafting.body import Body
from drafting.craft.around import ZIP, Round
from drafting.craft.closure import zip_opening
from drafting.craft.contour import Contour
from drafting.craft.hemline import leg
from drafting.craft.rules import ZIP_ABOVE_HIP
from drafting.craft.seam_pocket import SeamPocket
from drafting.craft.sheet import DraftSheet
from drafting.craft.uprights import on_fold, plain_seam
from drafting.craft.vent import Foot, centre_seam
from drafting.garments.skirts import wants as wish
from drafting.garments.skirts.assembly import assembly
from drafting.garments.skirts.finishing import opened_by, side_pocket
from drafting.garments.skirts.lining import Lining, lining
from drafting.garments.skirts.options import Shaped, band, facing_depth, fullness
from drafting.garments.skirts.pieces import panel_piece
from drafting.garments.skirts.trueing import Lines
from drafting.garments.skirts.waists import (
    Waist,
    below_band,
    contoured_band,
    eased,
    facing,
    straight_band,
)
from drafting.pattern import (
    CombinedLength,
    EdgeLength,
    Finding,
    Girth,
    Notion,
    Pattern,
    Piece,
    Want,
)
from drafting.trace import Length

HIP = Girth("hip", ("back", "front"), 2)
"""The tape round the hip line."""

LEAST_UNDER_ZIP = 10.0
"""A zip ends at least 10 cm above the hem, a vent or a slit. House method."""


def made_up(
    kind: str, title: str, body: Body, cut: Shaped, drawn: tuple[Lines, Lines], length: Length, foot: Foot | None, sheet: DraftSheet,
    *, wants: tuple[Want, ...], hem: tuple[float, float], hem_kind: str = "hem", findings: tuple[Finding, ...] = (),
) -> Pattern:
    """Put a skirt of a back and a front together.

    Args:
        kind: The garment's kind.
        title: Its title.
        body: The body.
        cut: The options.
        drawn: Back and front, trued.
        length: Waist to hem.
        foot: The vent or slit at the centre back.
        sheet: Records what is decided.
        wants: The kind's own wishes.
        hem: Wanted girth of the hem, and by how much it may be off, cm.
        hem_kind: Which allowance the hem takes.
        findings: Remarks of the draft.
    """
    top = sheet.length("finished waist", body.waist_girth + Length(cut.waist_ease, "waist ease"), "Body and ease.")
    depth = band(cut).band_depth if cut.waistband == "contoured" else 0.0
    taken = 0.0 if foot is None or cut.closure == "side" else foot.length
    slit = float(zip_opening(body.hip_girth, top, body.side_waist_to_hip - ZIP_ABOVE_HIP, length - LEAST_UNDER_ZIP - taken, depth, sheet))
    shell, inner, bands = _tops(*drawn, cut)
    pocket = side_pocket(shell[1].side, ("front", "back"), cut, sheet)
    pieces, layer = panels(*shell, slit, foot, cut, hem_kind, pocket)
    lined = _lining(shell, inner, slit, foot, cut) if cut.lining else None
    waist = _waist(pieces, layer, bands, float(top), lined, cut)
    darts = tuple(p.name for p in pieces if p.darts)
    seams, sewing = assembly(darts, layer, foot, lined, waist, pocket=pocket)
    round_hem = wish.all_round(tuple((p.name, "hem") for p in pieces))
    vent = () if foot is None else (EdgeLength("back", (foot.edge,)),)
    opening = (EdgeLength("back", (ZIP,)), *((EdgeLength("waistband_back", (ZIP,)),) if depth else ()))
    centre = (EdgeLength("front", ("centre_front",)), *((EdgeLength("waistband_front", ("centre",)),) if depth else ()))
    return Pattern(
        kind=kind,
        title=title,
        pieces=(*pieces, *(pocket.pieces if pocket else ()), *waist.pieces, *(lined.pieces if lined else ())),
        seams=seams,
        sewing=sewing,
        wants=(
            wish.finished_waist(body, cut.waist_ease, waist.tape),
            *wants,
            wish.near("finished_hem_girth", round_hem, hem[0], hem[1], hem[1], "As drafted."),
            wish.near("skirt_length", CombinedLength(tuple((1.0, part) for part in centre)), float(length), 1.6, 0.5, "Waist to hem at the centre front, which one of the methods lowers by 1.5 cm."),
            wish.passes_hip(body, waist.tape, opening),
            wish.stride(body, leg(body), float(length), round_hem, vent),
            *wish.passes_hand(body, "front", pocket),
            *wish.crossings(layer),
        ),
        finished_measurements=wish.told(("waist_girth", waist.tape), ("hip_girth", HIP), ("hem_girth", round_hem), ("side_seam", EdgeLength("front", wish.down_the_side(pieces[1])))),
        notions=(Notion("zip", 1, float(round(slit + depth))), *wish.pocket_tape(pocket), *waist.notions, Notion("sewing thread")),
        findings=findings,
    )


def _tops(back: Lines, front: Lines, cut: Shaped) -> tuple[tuple[Lines, Lines], tuple[Lines, Lines], tuple[Contour, Contour] | None]:
    """The panels as they are cut, those that a lining is traced from, and what is cut from the top."""
    whole = (back, front)
    if cut.waistband == "straight":
        return whole, whole, None
    depth = band(cut).band_depth if cut.waistband == "contoured" else facing_depth(cut)
    *below, bands = below_band(back, front, depth)
    under = (below[0], below[1])
    return (under if cut.waistband == "contoured" else whole), under, bands


def panels(back: Lines, front: Lines, slit: float, foot: Foot | None, cut: Shaped, hem: str, pocket: SeamPocket | None) -> tuple[tuple[Piece, Piece], Round]:
    """Back and front as pieces: the front on the fold, the back with a seam where something needs one."""
    at_back = cut.closure == "centre_back"
    seamed = at_back or foot is not None
    centre = centre_seam("centre_back", back.centre, slit if at_back else 0.0, foot, back.away) if seamed else on_fold("centre_back", back.centre)
    sides = tuple(plain_seam("side", p.side, 0.0 if at_back else slit, kind="side", hip=p.below_hip, pocket=opened_by(pocket)) for p in (back, front))
    pieces = (
        panel_piece("Skirt back", back, centre, sides[0], hem=hem),
        panel_piece("Skirt front", front, on_fold("centre_front", front.centre), sides[1], hem=hem),
    )
    return pieces, Round(("back", "front"), (centre.sewn, sides[0].sewn, ()))


def _lining(shell: tuple[Lines, Lines], inner: tuple[Lines, Lines], slit: float, foot: Foot | None, cut: Shaped) -> Lining:
    """The lining, open as far down as the skirt."""
    at_back = cut.closure == "centre_back"
    down_centre = shell[0].centre.length() - inner[0].centre.length()
    down_side = shell[0].side.length() - inner[0].side.length()
    slits = (slit - down_centre, 0.0) if at_back else (0.0, slit - down_side)
    return lining(*inner, slits, foot)


def _waist(
    pieces: tuple[Piece, Piece], layer: Round, bands: tuple[Contour, Contour] | None, top: float, lined: Lining | None, cut: Shaped
) -> Waist:
    hung = None if lined is None else lined.layer
    if bands is None:
        return straight_band(layer, pieces, top, eased(fullness(cut.waistband, cut.waist_fullness)), band(cut), hung)
    return contoured_band(layer, bands, band(cut).band_depth, hung) if cut.waistband == "contoured" else facing(layer, bands, hung)
