"""Trousers: women's classic straight cut at the natural waist, drafted by a two-dart block, net.

A chapter of the handbook: frame, front, back, trueing, pieces and seams, and what must come out.
Needs the waist, the hip, the waist to hip, the body rise and the outside leg.
"""

from __future__ import annotations

from drafting.body import Body
from drafting.craft.closure import opening_length
from drafting.craft.sheet import DraftSheet
from drafting.garments.garment import Garment, ValidRange
from drafting.garments.trousers import pieces, wants
from drafting.garments.trousers.back import back
from drafting.garments.trousers.frame import frame
from drafting.garments.trousers.front import front
from drafting.garments.trousers.spec import Trousers
from drafting.garments.trousers.trueing import true
from drafting.pattern import Notion, Pattern
from drafting.trace import Length


def draw(body: Body, cut: Trousers, sheet: DraftSheet) -> Pattern:
    """Draft trousers for a body; the pieces are net, in cm, Y up.

    Raises:
        MissingMeasureError: A needed measure is not there.
        SpecError: An option cannot be had on this body.
        ConstructionError: A step of the construction has no answer for this body.
    """
    level = frame(body, cut, sheet)
    front_drawn = front(level, body, cut, sheet)
    back_drawn = back(level, front_drawn, body, cut, sheet)
    front_true, back_true = true(front_drawn, back_drawn, sheet)

    sheet.heading("Pieces")
    band = sheet.length("waistband", body.waist_girth + Length(cut.waist_ease, "waist ease"), "Body and ease; the trouser top is eased on.")
    slit = opening_length(body.hip_girth, band, pieces.straight_centre(front_true), sheet)
    front_cut = pieces.front_piece(front_true, level, slit)
    back_cut = pieces.back_piece(back_true, level)
    return Pattern(
        kind="trousers",
        title="Trousers",
        pieces=(front_cut, back_cut, pieces.waistband(band, front_cut, back_cut, cut)),
        seams=pieces.seams(cut.waist_fullness),
        wants=(
            *wants.girths(body, cut),
            *wants.lengths(body, cut),
            wants.opening(body),
            *wants.joins(),
            *wants.block(body, front_true, back_true, level),
        ),
        finished_measurements=wants.finished(),
        notions=(Notion("hook and bar"), Notion("fusible for the waistband", 1, float(band) + cut.underlap)),
    )


GARMENT = Garment(
    kind="trousers",
    title="Trousers",
    summary="Women's classic straight trousers at the natural waist: fronts with a dart, backs with two, a straight waistband.",
    spec=Trousers,
    needs=("waist_girth", "hip_girth", "side_waist_to_hip", "body_rise", "outside_leg_length"),
    optional=("heel_ankle_girth", "total_crotch_length"),
    pieces=("front", "back", "waistband"),
    valid=(ValidRange("waist_girth", 56, 110), ValidRange("hip_girth", 80, 130), ValidRange("body_rise", 23, 34)),
    sources=(
        "W. Aldrich, Metric Pattern Cutting for Women's Wear (frame, front, back as far as the inseam)",
        "from memory: W. Aldrich, Metric Pattern Cutting for Women's Wear (back inseam below the knee, back darts)",
        "common practice, no source (trueing, opening, waistband)",
    ),
    sample=(
        ("waist_girth", 74.0),
        ("hip_girth", 101.0),
        ("side_waist_to_hip", 20.5),
        ("body_rise", 27.5),
        ("outside_leg_length", 103.0),
    ),
    draw=draw,
)
