"""The knit top: a T-shirt block for stretch cloth, without darts.

Back and front are alike from the shoulder down; what the cloth stretches takes the place of darts and,
in a fitted top, of ease. The sleeve is drawn to its armhole without ease, the neckband to its neck:
short enough to lie flat, long enough for the head.

Source: common practice, no source, where nothing else is said; a block without darts misfits full
busts, as its cautions say.
"""

from __future__ import annotations

from drafting.body import Body
from drafting.craft.assembling import Assembling, in_order
from drafting.craft.clashes import refuse_clashes
from drafting.craft.sheet import DraftSheet
from drafting.craft.sleeve_cap import armhole_seams
from drafting.garments.garment import Garment, ValidRange
from drafting.garments.knit_top.bands import Ring, bands
from drafting.garments.knit_top.body_pieces import armhole_of, body_piece, draw_panel
from drafting.garments.knit_top.frame import frame
from drafting.garments.knit_top.neck import halves, opened
from drafting.garments.knit_top.sleeve import SleeveLines, draw_sleeve, sleeve_piece
from drafting.garments.knit_top.spec import CLASHES, KnitTop, has_sleeve
from drafting.garments.knit_top.symptoms import SYMPTOMS
from drafting.garments.knit_top.wants import told, wants
from drafting.pattern import Notion, Pattern, Seam, SeamPart, SewingStep

FULL_BUST = 16.0
"""Bust over under bust, cm, from which on a block without darts pulls. Common practice, no source."""

PULLS = "This top has no darts: over a full bust it pulls from the armhole. Choose a cloth of more stretch, or a looser fit."


def draw(body: Body, cut: KnitTop, sheet: DraftSheet) -> Pattern:
    """Draft a knit top for a body; the pieces are net, in cm, Y up.

    Raises:
        MissingMeasureError: A needed measure is not there.
        SpecError: An option cannot be had on this body, or excludes another.
        ConstructionError: A step of the construction has no answer for this body.
    """
    refuse_clashes(cut, CLASHES)
    level = frame(body, cut, sheet)
    out = opened(body, level, cut, sheet)
    back, front = (draw_panel(half, level, cut, out, sheet) for half in halves(level))
    sleeve = draw_sleeve(body, armhole_of(back, front), front.half.nape.x, cut, sheet) if has_sleeve(cut) else None
    rings = bands(body, (back, front), sleeve, cut, sheet)
    seams, sewing = assembly(sleeve, rings, cut)
    return Pattern(
        kind="knit_top",
        title="Knit top",
        pieces=(
            body_piece(back, cut), body_piece(front, cut),
            *(() if sleeve is None else (sleeve_piece(sleeve, cut),)), *(ring.piece for ring in rings.values()),
        ),
        seams=seams,
        sewing=sewing,
        wants=wants(body, cut, (back, front), rings),
        finished_measurements=told(cut),
        notions=(Notion("clear elastic or stay tape for the shoulder seams", 2, round(back.shoulder.length(), 1)), Notion("stretch needle"), Notion("sewing thread")),
        findings=() if sleeve is None else sleeve.cap.findings,
        cautions=(PULLS,) if _full(body) else (),
    )


def _full(body: Body) -> bool:
    return body.has("under_bust_girth") and body.value("bust_girth") - body.value("under_bust_girth") > FULL_BUST


def assembly(sleeve: SleeveLines | None, rings: dict[str, Ring], cut: KnitTop) -> tuple[tuple[Seam, ...], tuple[SewingStep, ...]]:
    """All seams in sewing order: shoulders, neck, sleeves set in flat, sides and sleeves in one, ends.

    Source: common practice, no source.
    """
    shoulder = Seam("shoulder", (SeamPart("front", "shoulder"),), (SeamPart("back", "shoulder", reversed=True),))
    side = Seam("side", (SeamPart("front", "side"),), (SeamPart("back", "side", reversed=True),))
    under = Seam("sleeve_underarm", (SeamPart("sleeve", "underarm_front"),), (SeamPart("sleeve", "underarm_back", reversed=True),))

    def ringed(name: str, text: str) -> Assembling | None:
        return Assembling(text, (*rings[name].closing, rings[name].joining)) if name in rings else None

    return in_order((
        Assembling("Sew the shoulders, a tape caught in the seam so that they do not grow.", (shoulder,)),
        ringed("neckband", "Close the neckband to a ring, fold it, and sew it on, stretched evenly from mark to mark."),
        None if sleeve is None else Assembling("Set the sleeves in flat, the crown to the shoulder, mark to mark.", armhole_seams("front", "back", sleeve.cap)),
        Assembling("Sew the sides." if sleeve is None else "Sew sides and sleeves in one seam.", (side,) if sleeve is None else (side, under)),
        ringed("armhole_band", "Close the armhole bands to rings, fold them, and sew them on, stretched evenly."),
        ringed("cuff", "Close the cuffs to rings, fold them, and sew them on, stretched evenly."),
        ringed("hem_band", "Close the hem band to a ring, fold it, and sew it on, stretched evenly from mark to mark."),
        Assembling(_hems(cut)) if _hems(cut) else None,
        Assembling("Steam the bands back to their length."),
    ))


def _hems(cut: KnitTop) -> str:
    """What is turned up."""
    sleeves = has_sleeve(cut) and cut.sleeve_end != "cuff"
    if cut.hem == "turned":
        return "Turn up the hems and stitch them with a stretching stitch." if sleeves else "Turn up the hem and stitch it with a stretching stitch."
    return "Turn up the sleeves' hems and stitch them with a stretching stitch." if sleeves else ""


GARMENT = Garment(
    kind="knit_top",
    title="Knit top",
    summary="A T-shirt block for stretch cloth: fitted, regular or loose by the cloth's stretch, round or V neck, any sleeve or none.",
    spec=KnitTop,
    needs=(
        "bust_girth", "waist_girth", "hip_girth", "neck_base_girth", "shoulder_length", "across_back_width", "scye_depth_length",
        "back_neck_point_to_waist", "side_waist_to_hip", "upper_arm_girth", "wrist_girth", "outer_arm_length",
    ),
    optional=("shoulder_slope", "head_girth", "hand_girth", "under_bust_girth"),
    pieces=("back", "front", "sleeve", "neckband"),
    valid=(ValidRange("bust_girth", 76, 140),),
    sources=(
        "from memory: W. Aldrich, Metric Pattern Cutting for Women's Wear (width and depth of the neck)",
        "common practice, no source (eases by stretch, armhole, sleeve without ease, bands)",
    ),
    sample=(
        ("bust_girth", 92.0), ("waist_girth", 74.0), ("hip_girth", 101.0), ("neck_base_girth", 37.0), ("shoulder_length", 12.8),
        ("across_back_width", 36.0), ("scye_depth_length", 21.0), ("back_neck_point_to_waist", 41.0), ("side_waist_to_hip", 20.5),
        ("upper_arm_girth", 28.5), ("wrist_girth", 16.0), ("outer_arm_length", 58.0),
    ),
    symptoms=SYMPTOMS,
    draw=draw,
)

