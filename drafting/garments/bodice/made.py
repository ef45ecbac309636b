"""A bodice cut out: from body and options to pieces, with what the page and the dress need of it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

from drafting.body import Body
from drafting.craft.cap_curve import Armhole
from drafting.craft.clashes import Clash, among, given, other_than, refuse_clashes
from drafting.craft.scrap import Scrap
from drafting.craft.sheet import DraftSheet
from drafting.craft.sleeve_cap import Cap, draw_cap
from drafting.errors import ConstructionError
from drafting.garments.bodice import armhole_dart, shoulder_dart, sleeve
from drafting.garments.bodice.assembly import Body as Sewn
from drafting.garments.bodice.block import Block
from drafting.garments.bodice.facings import (
    ARMHOLE,
    Centre,
    armhole_facing,
    neck_depth,
    neck_facing_back,
    neck_facing_front,
    opening_facing,
)
from drafting.garments.bodice.figure import Figure, settle
from drafting.garments.bodice.marks import matched
from drafting.garments.bodice.necks import neck_size
from drafting.garments.bodice.pieces import (
    STAND,
    Heights,
    back_pieces,
    front_pieces,
    sleeve_piece,
    with_buttons,
)
from drafting.garments.bodice.shaping import Whole, WholeBack, whole_back, whole_front
from drafting.garments.bodice.spec import Opening, Place, Shape, SleeveFinish
from drafting.garments.bodice.waist import Waisted, shaped
from drafting.pattern import Finding, Notion, Piece
from drafting.trace.place import corner_of_paper

METHODS = {"shoulder_dart": shoulder_dart.draft, "armhole_dart": armhole_dart.draft}

CLASHES = (
    Clash("bust_dart", given, "shaping", other_than("darts"), "A princess line takes up the bust dart."),
    Clash("sleeve_finish", among("elbow_dart", "cuff"), "sleeve", other_than("long"), "Only a long sleeve reaches past the elbow to the wrist."),
)

FRONT_NOTCH, BACK_NOTCH = 0.36, 0.42
"""Shares of the half armholes from the underarm up to the balance marks. House method."""

DEEPEST, STEP = 5.0, 0.5
"""An armhole is deepened by at most 5 cm for a large arm, half a centimetre at a time."""

NARROWER = 1.0
"""A sleeve may be so much narrower than asked, cm, before the armhole is deepened for it. House method."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut:
    """A bodice cut out.

    Attributes:
        body: Its pieces by what they are.
        pieces: All of them, in cutting-list order.
        sleeve: The sleeve as drafted.
        waists: Back and front waist, trued.
        armhole: Length of the armhole, cm.
        bust: Girth as drawn on the bust line, the bust dart closed, cm.
        ease: Ease wanted there.
        loose: What the waist comes out looser, cm.
        findings: Remarks of the draft.
        resolved: Options that were settled.
        notions: What closes it.
    """

    body: Sewn
    pieces: tuple[Piece, ...]
    sleeve: sleeve.Sleeve | None
    waists: tuple[Waisted, Waisted]
    armhole: float
    bust: float
    ease: float
    loose: float
    findings: tuple[Finding, ...]
    resolved: tuple[tuple[str, Any], ...]
    notions: tuple[Notion, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Laid:
    """Front and back laid whole, before they are cut where the dart is wanted."""

    block: Block
    figure: Figure
    waists: tuple[Waisted, Waisted]
    front: Whole
    back: WholeBack
    findings: tuple[Finding, ...]
    depth: float
    width: float


def cut_out(body: Body, cut: Shape, opening: Opening, sheet: DraftSheet, above: float = 0.0) -> Cut:
    """Draft, true and cut a bodice; `above` is how far up on the paper it begins, cm.

    Raises:
        SpecError: An option cannot be had on this body, or excludes another.
        ConstructionError: A step of the construction has no answer for this body.
    """
    refuse_clashes(cut, CLASHES)
    cut = _settled(cut)
    laid = _laid(body, cut, _deeper(body, cut), sheet, above)
    where: Place = cut.bust_dart or "side"
    heights = Heights(bust=laid.block.front.bust_point.y, waist=laid.block.levels.waist.y, underarm=laid.block.levels.underarm.y)
    centres = _centres(opening)
    planned = _hole(laid)
    notches = (planned.front - planned.front_notch, planned.back - planned.back_notch) if cut.sleeve != "none" else (0.0, 0.0)
    fronts = front_pieces(laid.front, cut, where, notches[0], centres[1], heights)
    backs = back_pieces(laid.back, cut, notches[1], centres[0], heights)
    hole = _sewn_hole(fronts, backs)
    sewn_in = None if cut.sleeve == "none" else sleeve.draft(body, cut, hole, laid.block.front.neck, sheet)
    fronts, backs = _buttoned(laid, fronts, backs, opening)
    facings, armhole_facings = _facings(laid, cut, centres)
    cuffed = cut.sleeve_finish == "cuff"
    arm = () if sewn_in is None else (sleeve_piece(sewn_in, cuffed=cuffed),)
    cuffs = (sleeve.cuff_piece(sleeve.cuff_length(body), cut.cuff_depth),) if cuffed else ()
    panels = matched((*backs, *reversed(fronts)), opening, cut)
    made = Sewn(
        panels=panels, neck_facings=facings, armhole_facings=armhole_facings, sleeve=arm[0] if arm else None, cap=sewn_in.cap if sewn_in else None, cuff=cuffs[0] if cuffs else None,
        opening=opening, button_facing=facings[0 if opening.startswith("back") else 1] if opening.endswith("buttons") else None,
    )
    return Cut(
        body=made, pieces=(*panels, *arm, *cuffs, *facings, *armhole_facings), sleeve=sewn_in, waists=laid.waists, armhole=hole.length,
        bust=_bust(laid), ease=float(laid.figure.ease), loose=_loose(laid.findings), findings=(*laid.findings, *(sewn_in.cap.findings if sewn_in else ())),
        resolved=(
            ("bust_ease", float(laid.figure.ease)), ("bust_dart", where if cut.shaping == "darts" else None), ("neck_depth", laid.depth), ("neck_width", laid.width),
            ("sleeve_finish", cut.sleeve_finish),
        ),
        notions=_notions(panels, opening),
    )


def _settled(cut: Shape) -> Shape:
    usual: dict[str, SleeveFinish | None] = {"long": "elbow_dart", "none": None}
    return cut if cut.sleeve_finish is not None else replace(cut, sleeve_finish=usual.get(cut.sleeve, "plain"))


def _loose(findings: tuple[Finding, ...]) -> float:
    return sum(f.measured or 0.0 for f in findings if f.code == "waist_loose")


def _laid(body: Body, cut: Shape, deeper: float, sheet: DraftSheet, above: float = 0.0) -> Laid:
    """Block, waist, and both halves laid whole."""
    figure = settle(body, cut, deeper, sheet, above)
    block = METHODS[cut.method](body, figure, sheet)
    back_waist, front_waist, findings = shaped(block, body, cut.waist_ease, sheet)
    size = neck_size(cut, block.front, block.front.start.distance(block.front.shoulder))
    front = whole_front(block, front_waist, cut.neckline, size, (cut.bust_dart or "side") if cut.shaping == "darts" else None, sheet)
    back = whole_back(block, back_waist, cut.neckline, size, front.shoulder.length())
    return Laid(block=block, figure=figure, waists=(back_waist, front_waist), front=front, back=back, findings=findings, depth=size.depth, width=size.width)


def _hole(laid: Laid) -> Armhole:
    front, back = laid.front.armhole.length(), laid.back.armhole.length()
    return Armhole(front=front, back=back, front_notch=front * FRONT_NOTCH, back_notch=back * BACK_NOTCH)


def _sewn_hole(fronts: tuple[Piece, ...], backs: tuple[Piece, ...]) -> Armhole:
    """The armhole as it is sewn, its darts closed."""
    front, back = (_along(half, "armhole") for half in (fronts, backs))
    return Armhole(front=front, back=back, front_notch=_along(fronts, "armhole_under"), back_notch=_along(backs, "armhole_under"))


def _along(pieces: tuple[Piece, ...], word: str) -> float:
    return sum(p.sewn_length(e.name) for p in pieces for e in p.edges if e.name.startswith(word))


def _deeper(body: Body, cut: Shape) -> float:
    """By how much the armhole must be deeper, so that a sleeve of the arm's width goes in as asked."""
    if cut.sleeve == "none":
        return 0.0
    for n in range(int(DEEPEST / STEP) + 1):
        cap = _tried(body, cut, n * STEP)
        if cap is not None and not {"height", "ease"} & set(cap.gave) and cap.width > body.value("upper_arm_girth") + cut.arm_ease - NARROWER:
            return n * STEP
    return DEEPEST


def _tried(body: Body, cut: Shape, deeper: float) -> Cap | None:
    scrap = Scrap()
    laid = _laid(body, cut, deeper, scrap)
    wish = sleeve.wish(body, cut, sleeve.back_adds(float(body.bust_girth)))
    try:
        return draw_cap(_hole(laid), wish, scrap.point("crown", corner_of_paper(), "On scrap paper."), scrap)
    except ConstructionError:
        return None


def _bust(laid: Laid) -> float:
    """Twice the width from centre to centre on the underarm line as drawn, the bust dart as it was drafted."""
    front, back = laid.waists[1].side.start, laid.waists[0].side.start
    return 2 * (back.x - laid.back.centre.start.x + laid.front.centre.end.x - front.x)


def _centres(opening: Opening) -> tuple[Centre, Centre]:
    stand = STAND if opening.endswith("buttons") else 0.0
    if opening.startswith("back"):
        return Centre(fold=False, name="zip", stand=stand), Centre(fold=True, name="centre_front")
    return Centre(fold=True, name="centre_back"), Centre(fold=False, name="zip", stand=stand)


def _buttoned(laid: Laid, fronts: tuple[Piece, ...], backs: tuple[Piece, ...], opening: Opening) -> tuple[tuple[Piece, ...], tuple[Piece, ...]]:
    if not opening.endswith("buttons"):
        return fronts, backs
    at, waist = laid.block.front.bust_point.y, laid.block.levels.waist.y
    if opening.startswith("front"):
        top = laid.front.centre.end
        return (with_buttons(fronts[0], top.x, top.y, waist, at), *fronts[1:]), backs
    top = laid.back.centre.start
    return fronts, (with_buttons(backs[0], top.x, top.y, waist, at), *backs[1:])


def _facings(laid: Laid, cut: Shape, centres: tuple[Centre, Centre]) -> tuple[tuple[Piece, Piece], tuple[Piece, ...]]:
    """Neck facings, back and front, and those of sleeveless armholes."""
    bare = cut.sleeve == "none"
    strap = laid.front.shoulder.length()
    depth, waist = neck_depth(strap, sleeveless=bare), laid.block.levels.waist.y
    back = opening_facing(laid.back.neckline.reversed(), laid.back.closed, depth, waist, centres[0].stand, front=False) if centres[0].stand else neck_facing_back(laid.back, depth, centres[0])
    front = opening_facing(laid.front.neckline, laid.front.shoulder, depth, waist, centres[1].stand, front=True) if centres[1].stand else neck_facing_front(laid.front, depth, centres[1])
    if not bare:
        return (back, front), ()
    wide = min(ARMHOLE, 0.45 * strap)
    arms = (
        armhole_facing("armhole_facing_back", "Back armhole facing", laid.back.armhole.reversed(), laid.back.side.reversed(), min(wide, laid.back.shoulder.segments[0].length() - 0.2)),
        armhole_facing("armhole_facing_front", "Front armhole facing", laid.front.armhole, laid.front.side, min(wide, laid.back.shoulder.segments[0].length() - 0.2)),
    )
    return (back, front), arms


def _notions(panels: tuple[Piece, ...], opening: Opening) -> tuple[Notion, ...]:
    opened = panels[0] if opening.startswith("back") else panels[-1]
    if opening.endswith("zip"):
        return (Notion("separating zip", 1, float(round(opened.edge("zip").path.length()))),)
    return (Notion("button", sum(m.kind == "button" for m in opened.marks)),)
