"""The gathered skirt: straight widths of cloth drawn in to the waist, in one tier or several.

The first tier is a multiple of the waist wide, each further one a multiple of the tier over it. The
first is deep enough for the zip; the others share the rest of the length.

Source: 1.5 to 3 times the waist by the cloth, at least the hip and 4 cm; quarters marked on both
edges that are gathered together: common practice, no source.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Annotated, Literal

from annotated_types import Interval

from drafting.body import Body
from drafting.craft.around import Opening, Round, along_round, stations, upright_seams
from drafting.craft.assembling import Assembling, in_order
from drafting.craft.casing import OVER_HIP as OVER_RING
from drafting.craft.casing import casing
from drafting.craft.clashes import Clash, among, given, refuse_clashes
from drafting.craft.closure import zip_opening
from drafting.craft.hemline import leg, skirt_length
from drafting.craft.pencil import draw_rectangle
from drafting.craft.seam_pocket import SeamPocket
from drafting.craft.sheet import DraftSheet
from drafting.craft.tiers import tier_piece, tier_seams
from drafting.craft.uprights import on_fold, plain_seam
from drafting.errors import SpecError
from drafting.garments.garment import Garment, ValidRange
from drafting.garments.skirts import straight
from drafting.garments.skirts import wants as wish
from drafting.garments.skirts.assembly import BAGS_CLOSED, BAGS_SEWN, assembly
from drafting.garments.skirts.finishing import opened_by, side_pocket
from drafting.garments.skirts.layouts import (
    AROUND,
    TITLES,
    Layout,
    Lie,
    Panels,
    chosen_layout,
    pocketed_panels,
)
from drafting.garments.skirts.making import LEAST_UNDER_ZIP
from drafting.garments.skirts.options import POCKETED, WAIST_EASE, ClothWidth, Pocketed, band
from drafting.garments.skirts.pieces import panel_piece
from drafting.garments.skirts.remarks import remarks
from drafting.garments.skirts.symptoms import SYMPTOMS
from drafting.garments.skirts.trueing import Lines
from drafting.garments.skirts.waists import Waist, straight_band
from drafting.geometry import Point, polyline
from drafting.pattern import (
    CombinedLength,
    Ease,
    EdgeLength,
    Notch,
    Notion,
    Pattern,
    Piece,
    Seam,
    SeamPart,
    SewingStep,
)
from drafting.pattern.allowance import LENGTH
from drafting.trace import Length, larger
from drafting.trace.place import corner_of_paper

OVER_HIP = 4.0
UNDER_ZIP = 2.0
"""The first tier ends at least 2 cm below the zip. House method."""
LEAST_TIER = 8.0
APART = 6.0
"""Pieces are drawn this far (cm) apart on one paper."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GatheredSkirt(Pocketed):
    """A gathered skirt at the natural waist, in one tier or several. Lengths in cm.

    Attributes:
        kind: Always "gathered_skirt".
        fullness: How many times the waist is gathered into the band: 1.5 to 2 of thick cloth, 2 to
            2.5 of cotton, 2.5 to 3 of sheer cloth.
        tiers: How many tiers.
        tier_fullness: How many times as wide each further tier is as the one over it; by default
            1.5.
        waistband: A straight waistband, or elastic in a casing as wide as the hips.
        panels: How many panels the first tier is cut in; by default as few as the cloth allows.
        cloth_width: Width of the cloth between its selvedges.
        waist_ease: Finished waist over body, all round; by default 1 cm, none under an elastic.
        closure: Where the zip is: centre back, or left side; by default centre back, none with an
            elastic.
    """

    kind: Literal["gathered_skirt"]
    fullness: Annotated[float, Interval(ge=1.2, le=4)] = 2.0
    tiers: Annotated[int, Interval(ge=1, le=6)] = 1
    tier_fullness: Annotated[float | None, Interval(ge=1.2, le=3)] = None
    waistband: Literal["straight", "elastic"] = "straight"
    waist_ease: Annotated[float | None, Interval(ge=0, le=10), LENGTH] = None
    closure: Opening | None = None
    panels: Panels | None = None
    cloth_width: ClothWidth = 140.0


CLASHES = (
    *POCKETED,
    Clash("waist_ease", given, "waistband", among("elastic"), "The elastic holds the waist."),
    Clash("closure", given, "waistband", among("elastic"), "An elastic waist passes the hips by itself."),
    Clash("underlap", given, "waistband", among("elastic"), "Nothing opens, so nothing laps under."),
    Clash("tier_fullness", given, "tiers", among(1), "There is no further tier."),
)
TIER_FULLNESS = 1.5


@dataclass(frozen=True, slots=True)
class Tier:
    """A tier's whole width and its depth, cm."""

    width: Length
    depth: Length


def draw(body: Body, cut: GatheredSkirt, sheet: DraftSheet) -> Pattern:
    """Draft a gathered skirt for a body; the pieces are net, in cm, Y up.

    Raises:
        MissingMeasureError: A needed measure is not there.
        SpecError: An option cannot be had on this body, or excludes another.
    """
    refuse_clashes(cut, CLASHES)
    under = leg(body)
    sheet.heading("Measures", "common practice, no source")
    length = sheet.length("skirt length", skirt_length(cut.length, cut.hem_at, under), "Waist to hem.")
    top = finished_top(body, cut, sheet)
    elastic = cut.waistband == "elastic"
    slit = 0.0 if elastic else float(zip_opening(body.hip_girth, top, Length(0.0), length - LEAST_UNDER_ZIP, 0.0, sheet))
    drawn = tiers(body, cut, top, length, slit, sheet)
    plan = layout(drawn[0], cut, sheet)
    pocket = _pocket(plan, float(drawn[0].depth), cut, sheet)
    pieces, layer = panels(drawn, plan, slit, cut, float(body.side_waist_to_hip), pocket)
    counts = tuple(copies(float(t.width), cut.cloth_width) for t in drawn[1:])
    lower = tuple(tier_piece(n, float(t.width) / k, float(t.depth), k, last=n == len(drawn)) for n, (t, k) in enumerate(zip(drawn[1:], counts, strict=True), 2))
    draft(drawn, plan, counts, sheet)
    full = float(drawn[0].width - top)
    ease = Ease("gathers", full, full, full)
    waist = elastic_band(layer, pieces, float(top), ease, body, cut) if elastic else straight_band(layer, pieces, float(top), ease, band(cut))
    foot = along_round(layer, "foot", 0 if elastic else layer.opening)
    joins = tuple(zip(lower, counts, (float(b.width - a.width) for a, b in pairwise(drawn)), strict=True))
    after = _tiers_sewn(tier_seams(foot, joins))
    seams, sewing = _drawn_in(layer, waist, pocket, after) if elastic else assembly((), layer, None, None, waist, pocket=pocket, after=after)
    hem = wish.all_round(tuple((p.name, "hem") for p in pieces)) if not lower else CombinedLength(((float(counts[-1]), EdgeLength(lower[-1].name, ("hem",))),))
    width = wish.all_round(tuple((p.name, "waist") for p in pieces))
    height = CombinedLength(((1.0, EdgeLength(pieces[-1].name, wish.down_a_seam(layer, pocket))), *((1.0, EdgeLength(p.name, ("left",))) for p in lower)))
    last = float(top) * cut.fullness * (cut.tier_fullness or TIER_FULLNESS) ** (cut.tiers - 1)
    return Pattern(
        kind="gathered_skirt",
        title="Gathered skirt" if cut.tiers == 1 else "Tiered skirt",
        pieces=(*pieces, *(pocket.pieces if pocket else ()), *lower, *waist.pieces),
        seams=seams,
        sewing=sewing,
        wants=(
            wish.near("finished_waist_girth", waist.tape, float(body.hip_girth) + OVER_RING, 0.5, 0.5, "Wide enough for the hips; the elastic draws it in.") if elastic else wish.finished_waist(body, waist_ease(cut), waist.tape),
            wish.at_least("finished_hip_girth", width, float(body.hip_girth) + OVER_HIP, "Gathered cloth must still go round the hip."),
            wish.at_least("finished_hem_girth", hem, last - 0.3, "The waist times the fullness of all tiers, or wider where the hip asks for it."),
            wish.near("skirt_length", height, float(length), 0.3, 0.3, "All tiers together."),
            wish.passes_hip(body, waist.tape, () if elastic else (EdgeLength(layer.panels[max(layer.opening - 1, 0)], ("zip",)),)),
            wish.stride(body, under, float(length), hem, ()),
            *(wish.passes_hand(body, plan.names[plan.side], pocket) if pocket else ()),
            *(wish.crossings(layer) if cut.tiers == 1 else ()),
        ),
        finished_measurements=wish.told(("waist_girth", waist.tape), ("hip_girth", width), ("hem_girth", hem), ("skirt_length", height)),
        notions=(*(() if elastic else (Notion("zip", 1, float(round(slit))),)), *wish.pocket_tape(pocket), *waist.notions, Notion("sewing thread")),
        findings=remarks(body, cut.length, under),
    )


def waist_ease(cut: GatheredSkirt) -> float:
    """Finished waist over body, cm."""
    return WAIST_EASE if cut.waist_ease is None else cut.waist_ease


def finished_top(body: Body, cut: GatheredSkirt, sheet: DraftSheet) -> Length:
    """Girth in cm of what the skirt is gathered to: the waistband, or a casing that passes the hips."""
    if cut.waistband == "elastic":
        return sheet.length("casing", body.hip_girth + Length(OVER_RING, "to pass"), "As wide as the hips, so that it goes over them.")
    return sheet.length("finished waist", body.waist_girth + Length(waist_ease(cut), "waist ease"), "Body and ease.")


def elastic_band(layer: Round, pieces: tuple[Piece, ...], top: float, ease: Ease, body: Body, cut: GatheredSkirt) -> Waist:
    """The elastic casing: a ring as wide as the hips, the skirt gathered to it."""
    share = top / (2 * sum(p.sewn_length("waist") for p in pieces))
    joints = tuple((name, at * share) for name, at in stations(layer, pieces, "waist", 0))
    ring = casing(top, band(cut).band_depth, float(body.waist_girth), joints)
    return Waist(
        pieces=(ring.piece,), making=(ring.closing,),
        joining=Seam("waist", along_round(layer, "waist", 0), (SeamPart("waistband", "waist"),), ease),
        closing=(), tape=EdgeLength("waistband", ("waist",)), depth=0.0, notions=(ring.elastic,),
    )


def _drawn_in(layer: Round, waist: Waist, pocket: SeamPocket | None, after: tuple[Assembling, ...]) -> tuple[tuple[Seam, ...], tuple[SewingStep, ...]]:
    """The order of assembly of a skirt with an elastic waist."""
    return in_order((
        Assembling("Transfer the notches; neaten the upright edges."),
        None if pocket is None else Assembling(BAGS_SEWN, pocket.seams[:2]),
        Assembling("Sew the upright seams, and press them open.", upright_seams(layer)),
        None if pocket is None else Assembling(BAGS_CLOSED, pocket.seams[2:]),
        *after,
        Assembling("Close the casing to a ring but for a gap inside, gather the skirt to it, sew it on and turn it in.", (*waist.making, waist.joining)),
        Assembling("Draw the elastic in and close the gap."),
        Assembling("Turn up the hem and sew it blind; press."),
    ))


def _pocket(plan: Layout, depth: float, cut: GatheredSkirt, sheet: DraftSheet) -> SeamPocket | None:
    """The pocket in the first tier's side seams.

    Raises:
        SpecError: The skirt is cut in panels that go round its sides, or the tier is too short.
    """
    if cut.pocket == "none":
        return None
    side = polyline(Point(0, 0), Point(0, -depth))
    return side_pocket(side, pocketed_panels(plan), cut, sheet)


def tiers(body: Body, cut: GatheredSkirt, top: Length, length: Length, slit: float, sheet: DraftSheet) -> tuple[Tier, ...]:
    """Width and depth of each tier.

    Raises:
        SpecError: The length is too short for so many tiers.
    """
    sheet.heading("Tiers", "common practice, no source")
    least = body.hip_girth + OVER_HIP
    width = sheet.length("tier 1, width", larger(top * cut.fullness, least), "Gathered to the waist; at least the hip and 4 cm.")
    if cut.tiers == 1:
        return (Tier(width, length),)
    first = sheet.length("tier 1, depth", larger(length / cut.tiers, slit + UNDER_ZIP), "An equal share, but deep enough for the zip.")
    rest = sheet.length("depth of each further tier", (length - first) / (cut.tiers - 1), "The others share the rest.")
    if rest < LEAST_TIER:
        able = 1 + int(float(length - first) // LEAST_TIER)
        raise SpecError(f"Each tier would be {float(rest):.1f} cm deep; a skirt of this length has room for {able} tiers.", where="garment.tiers", received=cut.tiers, allowed=(1, able))
    found = [Tier(width, first)]
    for n in range(2, cut.tiers + 1):
        width = sheet.length(f"tier {n}, width", width * (cut.tier_fullness or TIER_FULLNESS), "Gathered to the tier over it.")
        found.append(Tier(width, rest))
    return tuple(found)


def draft(drawn: tuple[Tier, ...], plan: Layout, counts: tuple[int, ...], sheet: DraftSheet) -> None:
    """Draw one panel of each tier, clear of the one before; all panels of a tier are alike."""
    sheet.heading("Pieces", "common practice, no source")
    panel = plan.names[0]
    corner = sheet.point(f"{panel.replace('_', ' ')}, upper left", corner_of_paper(), "All panels of the tier are alike.")
    low = draw_rectangle(panel, corner, drawn[0].width / 2 / len(plan.names), drawn[0].depth, sheet, "An equal share of the tier.")
    for n, (tier, count) in enumerate(zip(drawn[1:], counts, strict=True), 2):
        corner = sheet.point(f"tier {n}, upper left", low.down(APART), "Clear of the piece over it.")
        low = draw_rectangle(f"tier_{n}", corner, tier.width / count, tier.depth, sheet, "An equal share of the tier.")


def layout(first: Tier, cut: GatheredSkirt, sheet: DraftSheet) -> Layout:
    """In how many panels the first tier is cut."""
    sheet.heading("Panels", "common practice, no source")

    def needed(plan: Layout) -> float:
        return max(plan.opened(n, float(first.width)) for n in range(len(plan.names)))

    return chosen_layout(cut.closure or ("side" if cut.waistband == "elastic" else "centre_back"), cut.panels, cut.cloth_width, (Lie("its length along the grain", needed),), sheet)[0]


def copies(width: float, cloth: float) -> int:
    """Number of equal panels of a lower tier: 1, 2 or a multiple of 4, so that its quarters are marked."""
    least = math.ceil(width / (cloth - AROUND))
    return least if least <= 2 else 4 * math.ceil(least / 4)


def panels(drawn: tuple[Tier, ...], plan: Layout, slit: float, cut: GatheredSkirt, hip: float, pocket: SeamPocket | None) -> tuple[tuple[Piece, ...], Round]:
    """The panels of the first tier, from the centre back to the centre front."""
    words = plan.uprights
    opened = plan.side if cut.closure == "side" else 0
    wide, deep = float(drawn[0].width) / 2 / len(plan.names), float(drawn[0].depth)
    pieces = list[Piece]()
    sewn: list[tuple[str, ...]] = [()] * len(words)
    for n, name in enumerate(plan.names):
        front = plan.in_front(n)
        lines = rectangle(name, wide, deep, -hip if hip < deep else None, front=front)
        sides = []
        for k, line in ((n, lines.side if front else lines.centre), (n + 1, lines.centre if front else lines.side)):
            upright = on_fold(words[k], line) if plan.fold_at(k) else plain_seam(words[k], line, slit if k == opened else 0.0, kind="side" if words[k] == "side" else "seam", pocket=opened_by(pocket) if words[k] == "side" else None)
            sewn[k] = upright.sewn
            sides.append(upright)
        centre, side = reversed(sides) if front else sides
        piece = panel_piece(TITLES[name], lines, centre, side, sewn_on=len(drawn) > 1)
        pieces.append(_with_sides(piece, wide) if len(words) == 2 else piece)
    return tuple(pieces), Round(plan.names, tuple(sewn))


def _with_sides(piece: Piece, wide: float) -> Piece:
    """A panel that goes round from the back to the front, the side marked where it is gathered."""
    names = {"waist": "waist-side", "foot": "tier_2-side"}
    marks = (Notch(e.name, wide / 2, 1, names[e.name]) for e in piece.edges if e.name in names)
    return replace(piece, notches=(*piece.notches, *marks))


def rectangle(name: str, wide: float, deep: float, hip: float | None, *, front: bool) -> Lines:
    """A panel's lines: a rectangle, its centre to the right in front and to the left behind."""
    at = -wide if front else wide
    top, side, foot, corner = Point(0.0, 0.0), Point(at, 0.0), Point(0.0, -deep), Point(at, -deep)
    waist = polyline(top, side)
    return Lines(
        name=name, closed=waist, waist=waist, darts=(), planned=(), side=polyline(side, corner), centre=polyline(top, foot),
        hem=polyline(corner, foot), hip=hip,
    )


def _tiers_sewn(joins: tuple[tuple[Seam, ...], ...]) -> tuple[Assembling, ...]:
    return tuple(
        Assembling(f"Close tier {n} to a ring, gather its upper edge and sew it on, quarter to quarter.", seams)
        for n, seams in enumerate(joins, 2)
    )


GARMENT = Garment(
    kind="gathered_skirt",
    title="Gathered skirt",
    summary="Straight widths of cloth gathered to a waistband, in one tier or several.",
    spec=GatheredSkirt,
    needs=straight.GARMENT.needs,
    optional=straight.GARMENT.optional,
    pieces=("back", "front", "waistband"),
    valid=(ValidRange("waist_girth", 50, 140),),
    sources=("common practice, no source (fullness, tiers, panels, zip, waistband)",),
    sample=straight.GARMENT.sample,
    symptoms=SYMPTOMS,
    draw=draw,
)
