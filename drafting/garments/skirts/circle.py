"""The circle skirt: a ring, or any part of one, whose inner edge is the waist.

The waist's radius is the waist over the angle in radians. The cloth stretches where it lies on the
bias, so the waist is cut smaller by what it gives, and stretched to the band. It is cut in as many
panels as the width of the cloth asks for.

Source: geometry; 1 to 2 cm for the give of the bias, the centre or an edge on the straight grain,
hanging for a day before the hem is levelled: common practice, no source.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from functools import partial
from typing import Annotated, Literal

from annotated_types import Interval

from drafting.body import Body
from drafting.craft.around import Round
from drafting.craft.circle import arc, width_on_edge, width_on_middle
from drafting.craft.clashes import Clash, among, chosen, given, refuse_clashes
from drafting.craft.closure import zip_opening
from drafting.craft.contour import Contour
from drafting.craft.hemline import leg, skirt_length
from drafting.craft.rules import OPENING_OVER_HIP
from drafting.craft.seam_pocket import SeamPocket
from drafting.craft.sheet import DraftSheet
from drafting.craft.uprights import Upright, on_fold, plain_seam
from drafting.errors import SpecError
from drafting.garments.garment import Garment, ValidRange
from drafting.garments.skirts import straight
from drafting.garments.skirts import wants as wish
from drafting.garments.skirts.assembly import assembly
from drafting.garments.skirts.finishing import (
    above_lining,
    as_lining,
    finished_top,
    opened_by,
    side_pocket,
    traced,
)
from drafting.garments.skirts.layouts import (
    TITLES,
    Layout,
    Lie,
    Panels,
    chosen_layout,
    pocketed_panels,
)
from drafting.garments.skirts.lining import SHORTER
from drafting.garments.skirts.making import LEAST_UNDER_ZIP
from drafting.garments.skirts.options import LINED, ClothWidth, Lined, facing_depth
from drafting.garments.skirts.pieces import panel_piece
from drafting.garments.skirts.remarks import remarks
from drafting.garments.skirts.symptoms import SYMPTOMS
from drafting.garments.skirts.trueing import Lines
from drafting.geometry import Path, Point, direction, offset, polyline, scale
from drafting.pattern import Ease, EdgeLength, Notch, Notion, Number, Pattern, Piece
from drafting.pattern.allowance import LENGTH
from drafting.trace import Arc, Length
from drafting.trace.place import corner_of_paper

CIRCLES = {"full": 360.0, "three_quarter": 270.0, "half": 180.0, "quarter": 90.0}

NEVER = 999.0
"""A width in cm that no cloth has."""

WIDEST = 300.0
"""A panel of more than 300 degrees has no room for its seam. House method."""

DOWN = -90.0

BIAS_GIVE = 2.0
"""1 to 2 cm of the waist give on the bias. Source: common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CircleSkirt(Lined):
    """A circle skirt, or a part of one, at the natural waist. Lengths in cm.

    Attributes:
        kind: Always "circle_skirt".
        circle: How much of a circle; by default the full one.
        angle: Degrees of the circle, instead of `circle`; more than 360 for more than one circle.
        bias_give: By how much the waist is cut smaller than the band, since it gives on the bias;
            it is stretched to the band. By default 2 cm; a faced waist is held by its stay tape.
        waistband: A straight waistband, or none, but a facing inside.
        panels: How many panels it is cut in; by default as few as the cloth's width allows.
        cloth_width: Width of the cloth between its selvedges.
    """

    kind: Literal["circle_skirt"]
    circle: Literal["full", "three_quarter", "half", "quarter"] | None = None
    angle: Annotated[float | None, Interval(ge=60, le=720)] = None
    bias_give: Annotated[float | None, Interval(ge=0, le=6), LENGTH] = None
    waistband: Literal["straight", "facing"] = "straight"
    panels: Panels | None = None
    cloth_width: ClothWidth = 140.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Ring:
    """The circle: its angle in degrees, radii of waist and hem in cm."""

    degrees: float
    waist: Length
    hem: Length

    @property
    def radians(self) -> float:
        """The angle in radians."""
        return math.radians(self.degrees)


CLASHES = (
    *(clash for clash in LINED if clash.option != "waist_fullness"),
    Clash("bias_give", chosen, "waistband", among("facing"), "The stay tape holds a faced waist at the length that it is cut."),
    Clash("circle", given, "angle", given, "Both say how much of a circle it is."),
)


def bias_give(cut: CircleSkirt) -> float:
    """By how much the waist is cut smaller than it is to be, cm."""
    usual = BIAS_GIVE if cut.waistband == "straight" else 0.0
    return usual if cut.bias_give is None else cut.bias_give


def draw(body: Body, cut: CircleSkirt, sheet: DraftSheet) -> Pattern:
    """Draft a circle skirt for a body; the pieces are net, in cm, Y up.

    Raises:
        MissingMeasureError: A needed measure is not there.
        SpecError: An option cannot be had on this body, or excludes another.
    """
    refuse_clashes(cut, CLASHES)
    under = leg(body)
    whole = ring(body, cut, skirt_length(cut.length, cut.hem_at, under), sheet)
    plan, middle = layout(whole, cut, sheet)
    draft(whole, plan, sheet, middle=middle)
    sheet.heading("Details", "common practice, no source")
    top = sheet.length("finished waist", body.waist_girth + Length(cut.waist_ease, "waist ease"), "Body and ease.")
    length = whole.hem - whole.waist
    slit = float(zip_opening(body.hip_girth, top, Length(0.0), length - LEAST_UNDER_ZIP, 0.0, sheet))
    pocket = _pocket(whole, plan, cut, sheet)
    pieces, layer, contours = panels(whole, plan, slit, cut, middle=middle, pocket=pocket)
    down = above_lining(cut, cut.waistband)
    inner = Ring(degrees=whole.degrees, waist=whole.waist + down, hem=whole.hem - SHORTER)
    lined = as_lining(*panels(inner, plan, slit - down, cut, middle=middle)[:2]) if cut.lining else None
    spared = bias_give(cut)
    give = Ease("stretch", spared, spared, spared) if spared else Ease()
    waist = finished_top(layer, pieces, contours, float(top), give, lined, cut)
    seams, sewing = assembly((), layer, None, lined, waist, pocket=pocket)
    hem = wish.all_round(tuple((p.name, "hem") for p in pieces))
    wanted_hem = float(top) - spared + whole.radians * float(length)
    round_hip = Number(_at_depth(pieces, float(body.side_waist_to_hip)), "the drawn waists, laid down by the depth of the hip")
    return Pattern(
        kind="circle_skirt",
        title=_title(cut),
        pieces=(*pieces, *(pocket.pieces if pocket else ()), *waist.pieces, *(lined.pieces if lined else ())),
        seams=seams,
        sewing=sewing,
        wants=(
            wish.finished_waist(body, cut.waist_ease, waist.tape),
            wish.at_least("finished_hip_girth", round_hip, float(body.hip_girth) + OPENING_OVER_HIP, "A ring this narrow would be tight over the hip; open its angle."),
            wish.near("finished_hem_girth", hem, wanted_hem, 0.3, 0.3, "The waist and the angle times the length."),
            wish.near("skirt_length", EdgeLength(pieces[-1].name, wish.down_a_seam(layer, pocket)), float(length), 0.1, 0.1, "Waist to hem, along any seam."),
            wish.passes_hip(body, waist.tape, (EdgeLength(layer.panels[max(layer.opening - 1, 0)], ("zip",)),)),
            wish.stride(body, under, float(length), hem, ()),
            *(wish.passes_hand(body, plan.names[plan.side], pocket) if pocket else ()),
            *wish.crossings(layer),
        ),
        finished_measurements=wish.told(("waist_girth", waist.tape), ("hip_girth", round_hip), ("hem_girth", hem)),
        notions=(Notion("zip", 1, float(round(slit))), *wish.pocket_tape(pocket), *waist.notions, Notion("sewing thread")),
        findings=remarks(body, cut.length, under),
        cautions=("Let the skirt hang for a day before the hem is levelled: the cloth drops where it lies on the bias.",),
    )


def ring(body: Body, cut: CircleSkirt, whole: Length, sheet: DraftSheet) -> Ring:
    """Settle the angle and the radii.

    Raises:
        SpecError: The ring would be too narrow for the hip.
    """
    sheet.heading("Circle", "geometry")
    length = sheet.length("skirt length", whole, "Waist to hem.")
    degrees = CIRCLES[cut.circle or "full"] if cut.angle is None else cut.angle
    radians = math.radians(degrees)
    seam = sheet.length("waist as cut", body.waist_girth + Length(cut.waist_ease, "waist ease") - Length(bias_give(cut), "give of the bias"), "It stretches to the band where it lies on the bias.")
    least = math.degrees(float(body.hip_girth + OPENING_OVER_HIP - seam) / float(body.side_waist_to_hip))
    if degrees < least:
        raise SpecError(
            f"A circle of {degrees:.0f} degrees would be tight over the hip; open it to {math.ceil(least)} degrees or more.",
            where="garment.angle" if cut.angle else "garment.circle", received=degrees, allowed=(float(math.ceil(least)), 720.0),
        )
    radius = sheet.length("waist radius", seam / radians, f"An arc of {degrees:.0f} degrees is {radians:.4f} radii long.")
    far = sheet.length("hem radius", radius + length, "Further out by the length.")
    return Ring(degrees=degrees, waist=radius, hem=far)


def draft(whole: Ring, plan: Layout, sheet: DraftSheet, *, middle: bool) -> None:
    """Draw one panel, a sector of the ring; all panels are alike."""
    name, degrees, front = plan.names[0], whole.degrees / 2 / len(plan.names), plan.in_front(0)
    turn = -1.0 if front else 1.0
    aside = -turn * degrees / 2 if middle and not plan.folded(0) else 0.0
    centre = sheet.point("centre of the circle", corner_of_paper(), "Both arcs are drawn about it.")
    waist = sheet.point("waist under the centre", centre.down(whole.waist), "The waist goes through it.")
    hem = sheet.point("hem under the centre", centre.down(whole.hem), "The hem goes through it.")
    if aside:
        waist = sheet.point("waist at the centre seam", waist.swung(centre, aside), "Half the panel to this side of the grain.")
        hem = sheet.point("hem at the centre seam", hem.swung(centre, aside), "Half the panel to this side of the grain.")
    side = sheet.point("waist at the other edge", waist.swung(centre, turn * degrees), "The panel's share of the circle.")
    foot = sheet.point("hem at the other edge", hem.swung(centre, turn * degrees), "The panel's share of the circle.")
    start = DOWN + aside
    lines = (
        sheet.draw("waist arc", (Arc(waist, side, centre, turn * degrees, arc(centre, float(whole.waist), start, start + turn * degrees)),), "Everywhere as far from the centre."),
        sheet.line("other edge", side, foot, why="Straight out from the centre."),
        sheet.draw("hem arc", (Arc(hem, foot, centre, turn * degrees, arc(centre, float(whole.hem), start, start + turn * degrees)),), "Everywhere as long below the waist."),
        sheet.line("centre edge", waist, hem, why="Straight out from the centre."),
    )
    sheet.outline(name, lines, "Trace it from the draft; all panels are alike.")


def layout(whole: Ring, cut: CircleSkirt, sheet: DraftSheet) -> tuple[Layout, bool]:
    """In how many panels the skirt is cut, and whether the middle of each lies on the grain.

    Raises:
        SpecError: The cloth is too narrow, or this closure does not go with so many panels.
    """
    sheet.heading("Panels", "common practice, no source")
    middle, edge = Lie("the middle on the grain", partial(_on_middle, whole)), Lie("an edge on the grain", partial(_on_edge, whole))
    plan, lie = chosen_layout(cut.closure, cut.panels, cut.cloth_width, (middle, edge), sheet)
    return plan, lie is middle


def _on_middle(whole: Ring, plan: Layout) -> float:
    """Width of cloth in cm for the widest panel, its middle or its fold along the grain."""
    opened = max(plan.opened(n, whole.degrees) for n in range(len(plan.names)))
    return NEVER if opened > WIDEST else width_on_middle(float(whole.hem), opened)


def _on_edge(whole: Ring, plan: Layout) -> float:
    """Width of cloth in cm for the widest panel, an edge along the grain; folds cannot lie so."""
    opened = [plan.opened(n, whole.degrees) for n in range(len(plan.names)) if not plan.folded(n)]
    if not opened or len(opened) < len(plan.names) or max(opened) > 180:
        return NEVER
    return width_on_edge(float(whole.hem), max(opened))


def _pocket(whole: Ring, plan: Layout, cut: CircleSkirt, sheet: DraftSheet) -> SeamPocket | None:
    """The pocket in the side seams.

    Raises:
        SpecError: The skirt is cut in panels that go round its sides.
    """
    if cut.pocket == "none":
        return None
    side = polyline(Point(0, -float(whole.waist)), Point(0, -float(whole.hem)))
    return side_pocket(side, pocketed_panels(plan), cut, sheet)


def panels(
    whole: Ring, plan: Layout, slit: float, cut: CircleSkirt, *, middle: bool, pocket: SeamPocket | None = None
) -> tuple[tuple[Piece, ...], Round, tuple[Contour, ...]]:
    """The panels as pieces, from the centre back to the centre front, and the facings traced from them."""
    words = plan.uprights
    opened = plan.side if cut.closure == "side" else 0
    pieces, contours = list[Piece](), list[Contour]()
    sewn: list[tuple[str, ...]] = [()] * len(words)
    for n, name in enumerate(plan.names):
        front = plan.in_front(n)
        lines = sector(name, whole, whole.degrees / 2 / len(plan.names), front=front, middle=middle and not plan.folded(n))
        sides = []
        for k, line in ((n, lines.centre if not front else lines.side), (n + 1, lines.centre if front else lines.side)):
            upright: Upright = on_fold(words[k], line) if plan.fold_at(k) else plain_seam(words[k], line, slit if k == opened else 0.0, kind="side" if words[k] == "side" else "seam", pocket=opened_by(pocket) if words[k] == "side" else None)
            sewn[k] = upright.sewn
            sides.append(upright)
        centre, side = reversed(sides) if front else sides
        piece = panel_piece(TITLES[name], lines, centre, side, hem="curved_hem")
        if cut.waistband == "facing":
            contours.append(_facing(lines, float(whole.waist), facing_depth(cut)))
        middle_mark = (Notch("waist", lines.waist.length() / 2, 1, "waist-side"),) if len(words) == 2 else ()
        pieces.append(replace(piece, notches=(*piece.notches, *middle_mark)))
    return tuple(pieces), Round(plan.names, tuple(sewn)), tuple(contours)


def _facing(lines: Lines, radius: float, depth: float) -> Contour:
    """A facing traced from a sector: everywhere as deep."""
    wider = scale((radius + depth) / radius)
    return traced(lines.waist, lines.side, lines.centre, lines.waist.transformed(wider), depth)


def sector(name: str, whole: Ring, degrees: float, *, front: bool, middle: bool) -> Lines:
    """A sector of the ring, its middle or its edge at the centre plumb; the front's side to the left."""
    turn = -1.0 if front else 1.0
    centre = DOWN - turn * degrees / 2 if middle else DOWN
    side = centre + turn * degrees
    on = Point(0.0, 0.0)
    r, far = float(whole.waist), float(whole.hem)

    def ray(angle: float) -> Path:
        return polyline(on + direction(angle) * r, on + direction(angle) * far)

    waist = arc(on, r, centre, side)
    return Lines(
        name=name, closed=waist, waist=waist, darts=(), planned=(), side=ray(side), centre=ray(centre),
        hem=arc(on, far, side, centre), hip=None,
    )


def _at_depth(pieces: tuple[Piece, ...], depth: float) -> float:
    """Girth in cm at a depth under the drawn waists."""
    return 2 * sum(s.length() for p in pieces for s in offset(p.edge("waist").path, depth))


def _title(cut: CircleSkirt) -> str:
    return "Circle skirt" if cut.circle in (None, "full") else f"{cut.circle.replace('_', ' ').capitalize()} circle skirt"


GARMENT = Garment(
    kind="circle_skirt",
    title="Circle skirt",
    summary="A full circle or any part of one, on a straight waistband, in as many panels as the cloth's width asks for.",
    spec=CircleSkirt,
    needs=straight.GARMENT.needs,
    optional=straight.GARMENT.optional,
    pieces=("skirt", "waistband"),
    valid=(ValidRange("waist_girth", 50, 140),),
    sources=("geometry (radii)", "common practice, no source (give of the bias, panels and grain, zip, waistband)"),
    sample=straight.GARMENT.sample,
    symptoms=SYMPTOMS,
    draw=draw,
)
