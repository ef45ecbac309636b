"""The pleated skirt: knife or box pleats on a waistband, or on a yoke.

A quarter is as wide as the hip asks for, and each pleat takes its depth twice beside that. Above
the hip the faces between the pleats narrow, so that the pleated top is exactly the waist, or the
yoke's lower edge. Left and right are mirror images, and knife pleats turn from the centre front to
the sides, and from the centre back too. The side seams are hidden: of knife pleats at the inner fold
of the front's last pleat, of box pleats where two folds meet; only where a zip opens a side do knife
pleats have them in the middle of a face.

Source: common practice, no source; the yoke from the straight skirt's block, as there.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Annotated, Literal

from annotated_types import Interval

from drafting.body import Body
from drafting.craft.around import ZIP, Opening, Round, along_round, upright_seams
from drafting.craft.assembling import Assembling
from drafting.craft.clashes import Clash, among, given, refuse_clashes
from drafting.craft.closure import zip_opening
from drafting.craft.contour import Contour, upright
from drafting.craft.hemline import leg, skirt_length
from drafting.craft.piecework import plumb_grain
from drafting.craft.pleating import Pleating, PleatKind, pleating
from drafting.craft.rules import WAIST_LOWERED, ZIP_ABOVE_HIP
from drafting.craft.sheet import DraftSheet
from drafting.craft.uprights import on_fold, plain_seam
from drafting.craft.waistband import contoured_quarter
from drafting.craft.waists import eased, straight_band, zips
from drafting.errors import SpecError
from drafting.garments.garment import Garment, ValidRange
from drafting.garments.skirts import straight
from drafting.garments.skirts import wants as wish
from drafting.garments.skirts.assembly import assembly
from drafting.garments.skirts.block import LEAST_BELOW_HIP, block
from drafting.garments.skirts.layouts import TITLES, Layout, Lie, chosen_layout
from drafting.garments.skirts.making import LEAST_UNDER_ZIP
from drafting.garments.skirts.options import (
    HANGING,
    WAIST_EASE,
    ClothWidth,
    Hanging,
    HipEase,
    Shaped,
    WaistEase,
    band,
)
from drafting.garments.skirts.pieces import UNDER, panel_piece
from drafting.garments.skirts.pleat_lines import Quarter, hidden, pleated
from drafting.garments.skirts.remarks import remarks
from drafting.garments.skirts.symptoms import SYMPTOMS
from drafting.garments.skirts.trueing import Lines, true
from drafting.garments.skirts.waists import below_band
from drafting.pattern import (
    CombinedLength,
    EdgeLength,
    Girth,
    Notion,
    Pattern,
    Piece,
    Seam,
    SeamPart,
)
from drafting.pattern.allowance import LENGTH
from drafting.trace import Length


@dataclass(frozen=True, slots=True, kw_only=True)
class PleatedSkirt(Hanging):
    """A pleated skirt at the natural waist. Lengths in cm.

    Attributes:
        kind: Always "pleated_skirt".
        pleats: Knife pleats turned to the sides; box pleats; or inverted ones, which meet where box
            pleats have their face.
        face: About how wide each face is that shows; a whole number of them goes into a quarter.
        pleat_depth: How deep each pleat is at the hip; by default so that the cloth lies three deep
            everywhere.
        top: The pleats hang from the waistband, or from a yoke under it.
        yoke_depth: Depth of the yoke; by default 10 cm.
        panels: How many panels the pleated part is cut in; by default as few as the cloth allows.
        cloth_width: Width of the cloth between its selvedges.
        hip_ease: Skirt over body at the hip line, pleats closed, all round.
        waist_ease: Finished waist over body, all round.
        closure: Where the zip is: centre back, or left side.
    """

    kind: Literal["pleated_skirt"]
    pleats: PleatKind = "knife"
    face: Annotated[float, Interval(ge=2, le=20), LENGTH] = 5.0
    pleat_depth: Annotated[float | None, Interval(ge=1, le=15), LENGTH] = None
    top: Literal["band", "yoke"] = "band"
    yoke_depth: Annotated[float | None, Interval(ge=6, le=16), LENGTH] = None
    panels: Literal[2, 3, 4] | None = None
    cloth_width: ClothWidth = 140.0
    hip_ease: HipEase = 4.0
    waist_ease: WaistEase = WAIST_EASE
    closure: Opening = "centre_back"


CLASHES = (*HANGING, Clash("yoke_depth", given, "top", among("band"), "There is no yoke."))
YOKE_DEPTH = 10.0


@dataclass(frozen=True, slots=True)
class Yoke:
    """A yoke: its pieces from the back to the front, its round, and the lines it is cut from."""

    pieces: tuple[Piece, Piece]
    layer: Round


def draw(body: Body, cut: PleatedSkirt, sheet: DraftSheet) -> Pattern:
    """Draft a pleated skirt for a body; the pieces are net, in cm, Y up.

    Raises:
        MissingMeasureError: A needed measure is not there.
        SpecError: An option cannot be had on this body, or excludes another.
        ConstructionError: A step of the construction has no answer for this body.
    """
    refuse_clashes(cut, CLASHES)
    under = leg(body)
    sheet.heading("Length", "common practice, no source")
    length = sheet.length("skirt length", skirt_length(cut.length, cut.hem_at, under), "Waist to hem.")
    if length < body.side_waist_to_hip + LEAST_BELOW_HIP:
        raise SpecError("The skirt would end less than 10 cm below the hip line; make it longer.", where="garment.length", received=float(length), allowed=(float(body.side_waist_to_hip) + LEAST_BELOW_HIP, 130.0))
    belt = sheet.length("finished waist", body.waist_girth + Length(cut.waist_ease, "waist ease"), "Body and ease.")
    reach = body.side_waist_to_hip - ZIP_ABOVE_HIP
    slit = float(zip_opening(body.hip_girth, belt, reach, length - LEAST_UNDER_ZIP, 0.0, sheet))
    if cut.top == "yoke":
        contours, yoke = yoked(body, cut, length, sheet)
        parts = tuple(_under_yoke(name, contour, shown, cut, sheet) for name, (contour, shown) in zip(("back", "front"), contours, strict=True))
    else:
        yoke = None
        parts = (_under_band("back", WAIST_LOWERED, belt, body, cut, sheet), _under_band("front", 0.0, belt, body, cut, sheet))
    depths = (float(body.side_waist_to_hip), float(length))
    if cut.pleats == "knife" and cut.closure == "centre_back":
        parts = hidden(parts, depths, sheet)
    below = slit - (yoke_depth(cut) if yoke else 0.0)
    plan = layout(parts, cut, sheet)
    pieces, layer = panels(parts, plan, below, cut, depths, sheet)
    tucks = tuple((-2.0, EdgeLength(p.name, (UNDER,))) for p, q in zip(pieces, parts, strict=True) if q.plan.tucked)
    hung = yoke or Yoke(pieces, layer)
    waist = straight_band(hung.layer, hung.pieces, float(belt), eased(1.0 if yoke else 0.0), band(cut))
    seams, sewing = assembly((), layer, None, None, waist, after=_pleats_sewn(layer, yoke, tucked=bool(tucks)), zip_last=yoke is not None, hemmed=True)
    hem = wish.all_round(tuple((p.name, "hem") for p in pieces))
    hip = CombinedLength(tucks, Girth("hip", layer.panels, 2))
    opening = tuple(EdgeLength(name, (ZIP,)) for name in (("back", "yoke_back") if yoke else ("back",)))
    centre = (EdgeLength("front", ("centre_front",)), *((EdgeLength("yoke_front", ("centre",)),) if yoke else ()))
    closed = wish.all_round(tuple((p.name, "waist") for p in pieces))
    return Pattern(
        kind="pleated_skirt",
        title={"knife": "Knife-pleated skirt", "box": "Box-pleated skirt", "inverted": "Skirt with inverted pleats"}[cut.pleats],
        pieces=(*pieces, *(yoke.pieces if yoke else ()), *waist.pieces),
        seams=seams,
        sewing=sewing,
        wants=(
            wish.finished_waist(body, cut.waist_ease, waist.tape),
            *(() if yoke else (wish.near("pleated_waist", closed, float(belt), 0.05, 0.05, "The pleats are as deep at the waist as makes the top exactly the waist."),)),
            wish.near("finished_hip_girth", hip, body.hip_girth + cut.hip_ease, 0.5, 0.5, "Body and ease, the pleats closed."),
            wish.near("finished_hem_girth", hem, 2 * sum(q.plan.width for q in parts), 0.1, 0.1, "All cloth, the pleats open."),
            wish.near("skirt_length", CombinedLength(tuple((1.0, e) for e in centre)), float(length), 0.1, 0.1, "Waist to hem at the centre front."),
            wish.passes_hip(body, waist.tape, opening),
            wish.stride(body, under, float(length), hem, ()),
            *wish.crossings(layer, waist=UNDER if tucks else "waist"),
        ),
        finished_measurements=wish.told(("waist_girth", waist.tape), ("hip_girth", hip), ("hem_girth", hem), ("pleated_top", closed)),
        notions=(Notion("zip", 1, float(round(slit))), *waist.notions, Notion("sewing thread")),
        findings=remarks(body, cut.length, under),
    )


def yoke_depth(cut: PleatedSkirt) -> float:
    """Depth of a yoke, cm."""
    return cut.yoke_depth or YOKE_DEPTH


def yoked(body: Body, cut: PleatedSkirt, length: Length, sheet: DraftSheet) -> tuple[tuple[tuple[Contour, float], ...], Yoke]:
    """Cut a yoke off the straight skirt's block, its darts closed.

    Returns:
        For back and front what was cut off and the width in cm that shows at the hip; and the yoke.

    Raises:
        SpecError: The yoke reaches the hip line.
    """
    deepest = float(body.side_waist_to_hip) - 3
    if yoke_depth(cut) > deepest:
        raise SpecError(f"The yoke ends at least 3 cm above the hip line: {deepest:.1f} cm at the most.", where="garment.yoke_depth", received=yoke_depth(cut), allowed=(6.0, deepest))
    shaped = Shaped(waist_ease=cut.waist_ease, hip_ease=cut.hip_ease, waist_fullness=1.0, closure=cut.closure)
    drafted = block(body, shaped, length, sheet)
    *_, bands = below_band(*true(*drafted, sheet), yoke_depth(cut))
    at_back = cut.closure == "centre_back"
    pieces = tuple(_yoke_piece(name, band, cut, fold=name == "front" or not at_back) for name, band in zip(("back", "front"), bands, strict=True))
    uprights = ((ZIP,) if at_back else (), ("side",) if at_back else (ZIP,), ())
    shown = tuple(p.hip_centre.distance(p.hip_side) for p in drafted)
    return tuple(zip(bands, shown, strict=True)), Yoke(pieces, Round(("yoke_back", "yoke_front"), uprights, "yoke"))  # type: ignore[arg-type]


def _yoke_piece(name: str, band: Contour, cut: PleatedSkirt, *, fold: bool) -> Piece:
    """A quarter of the yoke, its upper edge the waist, its lower edge its foot."""
    drawn = contoured_quarter(f"yoke_{name}", f"{name.capitalize()} yoke", *upright(band), on_fold=fold)
    opened = "side" if cut.closure == "side" else "centre" if name == "back" else ""
    names = {"top": ("waist", "waist"), "waist": ("foot", "seam"), "side": ("side", "side")} | ({opened: (ZIP, "opening")} if opened else {})
    edges = tuple(replace(e, name=names[e.name][0], kind=names[e.name][1]) if e.name in names else e for e in drawn.edges)
    return replace(drawn, edges=edges)


def _under_yoke(name: str, band: Contour, shown: float, cut: PleatedSkirt, sheet: DraftSheet) -> Quarter:
    sheet.heading(f"Pleats, {name}", "common practice, no source")
    wanted = sheet.length(f"{name} yoke's lower edge", band.foot.length(), "Read off the yoke, the darts closed.")
    return Quarter(name=name, plan=_plan(name, shown, cut, sheet), top=-yoke_depth(cut), lowered=0.0, wanted=wanted)


def _under_band(name: str, lowered: float, band: Length, body: Body, cut: PleatedSkirt, sheet: DraftSheet) -> Quarter:
    sheet.heading(f"Pleats, {name}", "common practice, no source")
    shown = float(body.hip_girth + cut.hip_ease) / 4
    return Quarter(name=name, plan=_plan(name, shown, cut, sheet), top=0.0, lowered=lowered, wanted=sheet.length(f"{name} waist", band / 4, "A quarter of the waist."))


def _plan(name: str, shown: float, cut: PleatedSkirt, sheet: DraftSheet) -> Pleating:
    plan = pleating(cut.pleats, shown, cut.face, cut.pleat_depth)
    sheet.length(f"{name} shown", Length(shown), "What shows of a quarter at the hip, the pleats laid.")
    sheet.length(f"{name} pleats, each takes", Length(2 * plan.depth), f"{len(plan.toward_centre)} of them, twice as much as they are deep.")
    sheet.length(f"{name} cloth", Length(plan.width), "What shows and what the pleats take.")
    return plan


def layout(parts: tuple[Quarter, ...], cut: PleatedSkirt, sheet: DraftSheet) -> Layout:
    """In how many panels the pleated part is cut."""
    sheet.heading("Panels", "common practice, no source")
    widest = max(q.plan.width for q in parts)

    def needed(plan: Layout) -> float:
        return max(plan.opened(n, 4 * widest) for n in range(len(plan.names)))

    return chosen_layout(cut.closure, cut.panels, cut.cloth_width, (Lie("its length along the grain", needed),), sheet, names=("back", "front"))[0]


def panels(
    parts: tuple[Quarter, ...], plan: Layout, slit: float, cut: PleatedSkirt, depths: tuple[float, float], sheet: DraftSheet
) -> tuple[tuple[Piece, Piece], Round]:
    """Back and front, pleated, as pieces."""
    words = plan.uprights
    opened = plan.side if cut.closure == "side" else 0
    pieces = list[Piece]()
    sewn: list[tuple[str, ...]] = [()] * len(words)
    for n, quarter in enumerate(parts):
        lines = pleated(quarter, depths, sheet)
        front = n == 1
        sides = []
        for k, line in ((n, lines.side if front else lines.centre), (n + 1, lines.centre if front else lines.side)):
            upright_edge = on_fold(words[k], line) if plan.fold_at(k) else plain_seam(words[k], line, slit if k == opened else 0.0, kind="side" if words[k] == "side" else "seam", hip=depths[1] - depths[0] if words[k] == "side" else None)
            sewn[k] = upright_edge.sewn
            sides.append(upright_edge)
        centre, side = reversed(sides) if front else sides
        piece = panel_piece(TITLES[quarter.name], lines, centre, side)
        pieces.append(replace(piece, grain=plumb_grain(piece.outline, _in_a_face(lines))))
    back, fore = pieces
    return (back, fore), Round(plan.names, tuple(sewn))


def _in_a_face(lines: Lines) -> float:
    """Where the grain arrow stands: clear of the pleats, in the middle of the face after the first."""
    if not lines.pleats:
        return (lines.centre.end.x + lines.side.end.x) / 2
    after = lines.pleats[1].one if len(lines.pleats) > 1 else lines.marks[0].path if lines.marks else lines.side
    return (lines.pleats[0].two.end.x + after.end.x) / 2


TUCKED = "Turn up the hem and sew it blind; then fold each pleat along its line, lay it as the arrow shows, the front's last fold on the back's line over the side seam, press it and baste it across the top."


def _pleats_sewn(layer: Round, yoke: Yoke | None, *, tucked: bool) -> tuple[Assembling, ...]:
    pressed = Assembling("Turn up the hem and sew it blind; then fold each pleat along its line, lay it as the arrow shows, press it and baste it across the top.")
    if tucked:
        under = Seam("side_under", (SeamPart("front", UNDER),), (SeamPart("back", UNDER, reversed=True),))
        pressed = replace(pressed, text=TUCKED, seams=(under,))
    if yoke is None:
        return (pressed,)
    own = upright_seams(yoke.layer, skip=ZIP)
    joined = Seam("yoke_seam", along_round(yoke.layer, "foot", layer.opening), along_round(layer, "waist", layer.opening))
    return (pressed, Assembling("Join the yoke at its seams and sew it to the pleats.", (*own, joined)), Assembling("Set in the zip, through the yoke.", (*zips(yoke.layer), *zips(layer))))


GARMENT = Garment(
    kind="pleated_skirt",
    title="Pleated skirt",
    summary="Knife, box or inverted pleats all round, on a waistband or a yoke; the pleats narrowed to the waist.",
    spec=PleatedSkirt,
    needs=straight.GARMENT.needs,
    optional=straight.GARMENT.optional,
    pieces=("back", "front", "waistband"),
    valid=(ValidRange("waist_girth", 56, 120), ValidRange("hip_girth", 80, 140)),
    sources=(
        "common practice, no source (pleats, panels, zip, waistband)",
        "W. Aldrich, Metric Pattern Cutting for Women's Wear (the block that a yoke is cut from)",
    ),
    sample=straight.GARMENT.sample,
    symptoms=SYMPTOMS,
    draw=draw,
)
