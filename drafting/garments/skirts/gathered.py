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
from drafting.craft.around import Round, along_round
from drafting.craft.assembling import Assembling
from drafting.craft.closure import zip_opening
from drafting.craft.hemline import leg, skirt_length, unknown_leg
from drafting.craft.pencil import draw_rectangle
from drafting.craft.sheet import DraftSheet
from drafting.craft.tiers import tier_piece, tier_seams
from drafting.craft.uprights import on_fold, plain_seam
from drafting.errors import SpecError
from drafting.garments.garment import Garment, ValidRange
from drafting.garments.skirts import straight
from drafting.garments.skirts import wants as wish
from drafting.garments.skirts.assembly import assembly
from drafting.garments.skirts.layouts import AROUND, TITLES, Layout, Lie, Panels, chosen
from drafting.garments.skirts.making import LEAST_UNDER_ZIP
from drafting.garments.skirts.options import OnAWaist
from drafting.garments.skirts.pieces import panel_piece
from drafting.garments.skirts.symptoms import SYMPTOMS
from drafting.garments.skirts.trueing import Lines
from drafting.garments.skirts.waists import straight_band
from drafting.geometry import Point, polyline
from drafting.pattern import CombinedLength, Ease, EdgeLength, Notch, Notion, Pattern, Piece, Seam
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
class GatheredSkirt(OnAWaist):
    """A gathered skirt at the natural waist, in one tier or several. Lengths in cm.

    Attributes:
        kind: Always "gathered_skirt".
        fullness: How many times the waist is gathered into the band: 1.5 to 2 of thick cloth, 2 to
            2.5 of cotton, 2.5 to 3 of sheer cloth.
        tiers: How many tiers.
        tier_fullness: How many times as wide each further tier is as the one over it.
        panels: How many panels the first tier is cut in; by default as few as the cloth allows.
        cloth_width: Width of the cloth between its selvedges.
        length: Waist to hem; by default to where `hem_at` says.
        hem_at: Where the hem hangs on the leg, unless `length` is given.
        waist_ease: Finished waist over body, all round.
        closure: Where the zip is: centre back, or left side.
        band_depth: Depth of the finished waistband.
        underlap: How far the waistband laps under at the zip.
    """

    kind: Literal["gathered_skirt"]
    fullness: Annotated[float, Interval(ge=1.2, le=4)] = 2.0
    tiers: Annotated[int, Interval(ge=1, le=6)] = 1
    tier_fullness: Annotated[float, Interval(ge=1.2, le=3)] = 1.5
    panels: Panels | None = None
    cloth_width: Annotated[float, Interval(ge=70, le=320), LENGTH] = 140.0


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
    under = leg(body)
    sheet.heading("Measures", "common practice, no source")
    length = sheet.length("skirt length", skirt_length(cut.length, cut.hem_at, under), "Waist to hem.")
    top = sheet.length("finished waist", body.waist_girth + Length(cut.waist_ease, "waist ease"), "Body and ease.")
    slit = float(zip_opening(body.hip_girth, top, Length(0.0), length - LEAST_UNDER_ZIP, 0.0, sheet))
    drawn = tiers(body, cut, top, length, slit, sheet)
    plan = layout(drawn[0], cut, sheet)
    pieces, layer = panels(drawn, plan, slit, cut, float(body.side_waist_to_hip))
    counts = tuple(copies(float(t.width), cut.cloth_width) for t in drawn[1:])
    lower = tuple(tier_piece(n, float(t.width) / k, float(t.depth), k, last=n == len(drawn)) for n, (t, k) in enumerate(zip(drawn[1:], counts, strict=True), 2))
    draft(drawn, plan, counts, sheet)
    full = float(drawn[0].width - top)
    waist = straight_band(layer, pieces, float(top), Ease("gathers", full, full, full), cut)
    foot = along_round(layer, "foot", layer.opening)
    joins = tuple(zip(lower, counts, (float(b.width - a.width) for a, b in pairwise(drawn)), strict=True))
    seams, sewing = assembly((), layer, None, None, waist, after=_tiers_sewn(tier_seams(foot, joins)))
    hem = wish.all_round(tuple((p.name, "hem") for p in pieces)) if not lower else CombinedLength(((float(counts[-1]), EdgeLength(lower[-1].name, ("hem",))),))
    width = wish.all_round(tuple((p.name, "waist") for p in pieces))
    height = CombinedLength(((1.0, EdgeLength(pieces[-1].name, next(e for e in reversed(layer.uprights) if e))), *((1.0, EdgeLength(p.name, ("left",))) for p in lower)))
    last = float(top) * cut.fullness * cut.tier_fullness ** (cut.tiers - 1)
    return Pattern(
        kind="gathered_skirt",
        title="Gathered skirt" if cut.tiers == 1 else f"Tiered skirt, {cut.tiers} tiers",
        pieces=(*pieces, *lower, *waist.pieces),
        seams=seams,
        sewing=sewing,
        wants=(
            wish.finished_waist(body, cut.waist_ease, waist.tape),
            wish.at_least("finished_hip_girth", width, float(body.hip_girth) + OVER_HIP, "Gathered cloth must still go round the hip."),
            wish.at_least("finished_hem_girth", hem, last - 0.3, "The waist times the fullness of all tiers, or wider where the hip asks for it."),
            wish.near("skirt_length", height, float(length), 0.3, 0.3, "All tiers together."),
            wish.passes_hip(body, waist.tape, (EdgeLength(layer.panels[max(layer.opening - 1, 0)], ("zip",)),)),
            wish.stride(body, under, float(length), hem, ()),
            *(wish.crossings(layer) if cut.tiers == 1 else ()),
        ),
        finished_measurements=wish.told(("waist_girth", waist.tape), ("hip_girth", width), ("hem_girth", hem), ("skirt_length", height)),
        notions=(Notion("zip", 1, float(round(slit))), *waist.notions, Notion("sewing thread")),
        findings=unknown_leg(cut.length, under),
    )


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
        width = sheet.length(f"tier {n}, width", width * cut.tier_fullness, "Gathered to the tier over it.")
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

    return chosen(cut.closure, cut.panels, cut.cloth_width, (Lie("its length along the grain", needed),), sheet)[0]


def copies(width: float, cloth: float) -> int:
    """Number of equal panels of a lower tier: 1, 2 or a multiple of 4, so that its quarters are marked."""
    least = math.ceil(width / (cloth - AROUND))
    return least if least <= 2 else 4 * math.ceil(least / 4)


def panels(drawn: tuple[Tier, ...], plan: Layout, slit: float, cut: GatheredSkirt, hip: float) -> tuple[tuple[Piece, ...], Round]:
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
            upright = on_fold(words[k], line) if plan.fold_at(k) else plain_seam(words[k], line, slit if k == opened else 0.0, kind="side" if words[k] == "side" else "seam")
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
