"""The bodice, close-fitting to the waist, for women: two methods, with or without sleeves.

A chapter of the handbook: figure, frame, back and front by one of the methods, waist, the bust dart moved to
where it is wanted, neckline and facings, sleeve, pieces and seams, and what must come out.
"""

from __future__ import annotations

from drafting.body import Body
from drafting.craft.assembling import Assembling, in_order
from drafting.craft.sheet import DraftSheet
from drafting.garments.bodice import wants
from drafting.garments.bodice.assembly import sewing
from drafting.garments.bodice.made import Cut, cut_out
from drafting.garments.bodice.pieces import hemmed
from drafting.garments.bodice.spec import Bodice
from drafting.garments.bodice.symptoms import SYMPTOMS
from drafting.garments.garment import Garment, ValidRange
from drafting.pattern import Notion, Pattern

NEEDS = (
    "bust_girth", "waist_girth", "back_neck_point_to_waist", "neck_base_girth", "shoulder_length", "across_back_width",
    "across_front_width", "scye_depth_length", "upper_arm_girth", "wrist_girth", "outer_arm_length",
)
OPTIONAL = (
    "bust_point_width", "side_neck_point_to_bust_point", "side_neck_point_to_waist_front", "upper_chest_girth", "under_bust_girth",
    "shoulder_slope", "hand_girth",
)
SAMPLE = (
    ("bust_girth", 92.0), ("waist_girth", 74.0), ("back_neck_point_to_waist", 40.5), ("neck_base_girth", 37.5), ("shoulder_length", 12.8),
    ("across_back_width", 35.5), ("across_front_width", 33.5), ("scye_depth_length", 21.3), ("upper_arm_girth", 28.5), ("wrist_girth", 16.0), ("outer_arm_length", 58.0),
)
SOURCES = (
    "W. Aldrich, Metric Pattern Cutting for Women's Wear (shoulder dart: half width, back width, chest and dart, by a published lesson after it)",
    "from memory: W. Aldrich, Metric Pattern Cutting for Women's Wear (shoulder dart: necks, shoulders, armholes, bust point; sleeve: height, elbow)",
    "from memory: Bunka Fashion Series 1 (armhole dart: all of it)",
    "common practice, no source (waist, moving of darts, princess lines, necklines, facings, trueing)",
)


def draw(body: Body, cut: Bodice, sheet: DraftSheet) -> Pattern:
    """Draft a bodice for a body; the pieces are net, in cm, Y up.

    Raises:
        MissingMeasureError: A needed measure is not there.
        SpecError: An option cannot be had on this body, or excludes another.
        ConstructionError: A step of the construction has no answer for this body.
    """
    made: Cut = cut_out(body, cut, cut.opening, sheet)
    hem = Assembling("Neaten the lower edge, turn it up over a stay tape and sew it by hand; press.")
    seams, steps = in_order((*sewing(made.body), hem))
    return Pattern(
        kind="bodice", title="Bodice", pieces=tuple(hemmed(p) for p in made.pieces), seams=seams, sewing=steps,
        wants=(*wants.wants(body, cut, made.body, made.sleeve, made.bust, made.ease, made.loose), *(() if made.sleeve is None else (wants.armhole_advice(body, made.armhole, made.ease),))),
        finished_measurements=wants.told(made.body, made.sleeve, made.bust),
        findings=made.findings, resolved=made.resolved,
        notions=(*made.notions, Notion("fusible, for the facings"), Notion("stay tape, length of the waist", 1, None), Notion("sewing thread")),
    )


GARMENT = Garment(
    kind="bodice",
    title="Bodice",
    summary="A close-fitting bodice to the waist, by two methods: bust dart where it is wanted or a princess line, four necklines with facings, set-in sleeves or none.",
    spec=Bodice,
    needs=NEEDS,
    optional=OPTIONAL,
    pieces=("back", "front", "sleeve", "neck_facing_back", "neck_facing_front"),
    valid=(ValidRange("bust_girth", 76, 124), ValidRange("waist_girth", 58, 112)),
    sources=SOURCES,
    sample=SAMPLE,
    symptoms=SYMPTOMS,
    draw=draw,
)
