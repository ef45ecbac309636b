"""The straight skirt: darts, side seams that hang plumb from the hip, room to step at the back.

Half of it is drafted in one rectangle, by the block or by the proportional draft; trued; and cut:
front on the fold, back with a centre seam where a zip, a vent or a slit asks for one.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from drafting.body import Body
from drafting.craft.clashes import refuse_clashes
from drafting.craft.hemline import leg, needed_hem, skirt_length
from drafting.craft.sheet import DraftSheet
from drafting.craft.vent import HemOpening, room_to_step
from drafting.garments.garment import Garment, ValidRange
from drafting.garments.skirts.block import Moving, as_drafted, block
from drafting.garments.skirts.making import made_up
from drafting.garments.skirts.options import SHAPED, Shaped
from drafting.garments.skirts.remarks import remarks
from drafting.garments.skirts.symptoms import SYMPTOMS
from drafting.garments.skirts.trueing import true
from drafting.garments.skirts.wants import near
from drafting.pattern import Girth, Pattern
from drafting.trace import Length


@dataclass(frozen=True, slots=True, kw_only=True)
class StraightSkirt(Shaped):
    """A straight skirt at the natural waist. Lengths in cm.

    Attributes:
        kind: Always "straight_skirt".
        method: How it is drafted: "block", the block of the handbook with one dart in front and
            two behind; "proportional", which shares out what hip and waist differ by.
        hip_ease: Skirt over body at the hip line, all round.
        hem_opening: Vent or slit at the centre back, or none; "auto" cuts a vent where the hem is
            too narrow for stairs.
    """

    kind: Literal["straight_skirt"]
    hem_opening: HemOpening = "auto"


def draw(body: Body, cut: StraightSkirt, sheet: DraftSheet, moved: Moving = as_drafted) -> Pattern:
    """Draft a straight skirt for a body; the pieces are net, in cm, Y up.

    `moved` may shift the darts of back and front before the waist is trued, as to meet a bodice's.

    Raises:
        MissingMeasureError: A needed measure is not there.
        SpecError: An option cannot be had on this body, or excludes another.
        ConstructionError: A step of the construction has no answer for this body.
    """
    refuse_clashes(cut, SHAPED)
    under = leg(body)
    sheet.heading("Length", "common practice, no source")
    length = sheet.length("skirt length", skirt_length(cut.length, cut.hem_at, under), "Waist to hem.")
    back, front = true(*moved(*block(body, cut, length, sheet), sheet), sheet)
    sheet.heading("Details", "common practice, no source")
    hem = body.hip_girth + Length(cut.hip_ease, "hip ease")
    foot = room_to_step(cut.hem_opening, needed_hem(body, under, length), hem, length, body.side_waist_to_hip, under, sheet)
    return made_up(
        "straight_skirt", "Straight skirt", body, cut, (back, front), length, foot, sheet,
        wants=(
            near("finished_hip_girth", Girth("hip", ("back", "front"), 2), hem, 0.5, 0.5, "Body and ease."),
        ),
        hem=(hem, 0.5), findings=remarks(body, cut.length, under),
    )


GARMENT = Garment(
    kind="straight_skirt",
    title="Straight skirt",
    summary="A straight skirt at the natural waist: darts, zip, vent where the hem is narrow; waistband or facing, lining on request.",
    spec=StraightSkirt,
    needs=("waist_girth", "hip_girth", "side_waist_to_hip"),
    optional=("outside_leg_length", "inside_leg_height", "knee_height", "stature", "knee_girth", "calf_girth", "ankle_girth"),
    pieces=("back", "front", "waistband"),
    valid=(ValidRange("waist_girth", 56, 120), ValidRange("hip_girth", 80, 140)),
    sources=(
        "W. Aldrich, Metric Pattern Cutting for Women's Wear (block: widths, waist quarters)",
        "from memory: W. Aldrich, Metric Pattern Cutting for Women's Wear (block: dart places and lengths)",
        "common practice, no source (proportional draft, trueing, vent, zip, waistband, facing, lining)",
    ),
    sample=(("waist_girth", 74.0), ("hip_girth", 101.0), ("side_waist_to_hip", 20.5), ("outside_leg_length", 103.0)),
    symptoms=SYMPTOMS,
    draw=draw,
)
