"""A shirt, made up: from the body and the options to pieces, seams and wishes."""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.craft.button_stand import Edging, FrontEdge, banded, faced
from drafting.craft.buttons import Row, button, buttonhole, spaced
from drafting.craft.collar import Leaf, NeckSeam, draw_leaf, draw_stand, leaf_piece, stand_pieces
from drafting.craft.cuff import cuff_pieces, draw_cuff
from drafting.craft.patch_pocket import CHEST_PATCH, PatchPocket, patch_pocket
from drafting.craft.sheet import DraftSheet
from drafting.garments.shirt.assembly import Made, assembly
from drafting.garments.shirt.block import Block
from drafting.garments.shirt.choices import OPEN, refuse_impossible, settled
from drafting.garments.shirt.lines import Fronted, Yoked, back_lines, front_lines, true_neck
from drafting.garments.shirt.mens import mens
from drafting.garments.shirt.pieces import (
    BAR_LONG,
    FRONT_NOTCH,
    back_piece,
    back_pleats,
    bar,
    centre_fold,
    front_piece,
    stripe,
    yoke_pieces,
)
from drafting.garments.shirt.sides import Side, back_side, front_side, shaping
from drafting.garments.shirt.sleeves import Sleeve, sleeve
from drafting.garments.shirt.spec import CollarKind, Shirt
from drafting.garments.shirt.wants import armhole, told, wants
from drafting.garments.shirt.womens import womens
from drafting.geometry import Point, Vector, polyline
from drafting.pattern import Mark, Notch, Notion, Pattern, Piece
from drafting.trace import Length, Place, Stroke
from drafting.trace.place import corner_of_paper

METHODS = {"mens": mens, "womens": womens}

LEAVES: dict[CollarKind, Leaf] = {
    "classic": Leaf(1.0, 16.0),
    "spread": Leaf(1.6, -4.0),
    "button_down": Leaf(0.9, 20.0),
}
"""Kinds of leaf. Source: a stronger fall for a wider spread, common practice, no source; the numbers house method."""

STAND_TO_FIRST = 6.5
"""The first button of the front sits 6 to 7 cm under that of the stand. Source: common practice, no source."""

POCKET_FROM_CENTRE, POCKET_ABOVE = 6.3, 2.5
"""A chest pocket stands 6 to 6.5 cm from the centre front, its top a little above the armhole's lowest level. Source: common practice, no source."""


def draw(body: Body, cut: Shirt, sheet: DraftSheet) -> Pattern:
    """Draft a shirt for a body; the pieces are net, in cm, Y up.

    Raises:
        MissingMeasureError: A needed measure is not there.
        SpecError: An option cannot be had on this body, or excludes another.
        ConstructionError: A step of the construction has no answer for this body.
    """
    cut = settled(cut)
    block = METHODS[cut.method](body, cut, sheet)
    refuse_impossible(cut, block)
    back = back_lines(block, sheet)
    take = shaping(body, cut, sheet)
    behind = back_side(block, cut, take, sheet)
    before = front_side(block, cut, take, behind, sheet)
    front = front_lines(block, before.arriving.left, sheet)
    sheet.heading("Neck and front edge", "common practice, no source")
    wanted = body.neck_girth + Length(float(cut.neck_ease or 0.0), "neck ease")
    throat, neck = true_neck(block, back.neck, sheet.length("collar from button to buttonhole", wanted, "The neck and room to breathe."), sheet)
    foot = before.hem.start
    edge = FrontEdge(neck=neck, hem=before.hem, throat=throat, foot=foot, stand=cut.button_stand, hem_kind=HEM)
    edging = (faced if cut.front_edge == "facing" else banded)(edge, sheet)
    _outlines(block, back, front, behind, before, edging, float(cut.pleat_intake or 0.0), sheet)
    arm = sleeve(body, cut, back, front, block.forward, corner_of_paper(block.centre.x + 45, block.nape.y), sheet)
    seam = NeckSeam(back=back.neck.path.length(), front=neck.path.length(), stand=cut.button_stand)
    small = (*_collar(seam, cut, block, sheet), *_cuffs(arm, cut, block, sheet))
    return _pattern(body, cut, _Drawn(block, back, front, behind, before, edging, throat, arm, small))


HEM = "curved_hem"
"""A shirt's hem is turned in narrow, curved or not, and takes the allowance of a curved one."""


@dataclass(frozen=True, slots=True)
class _Drawn:
    """What was drawn, for the pieces: corners, lines, sides, the front's edge, sleeve, small pieces."""

    block: Block
    back: Yoked
    front: Fronted
    behind: Side
    before: Side
    edging: Edging
    throat: Place
    arm: Sleeve
    small: tuple[Piece, ...]


def _outlines(block: Block, back: Yoked, front: Fronted, behind: Side, before: Side, edging: Edging, extra: float, sheet: DraftSheet) -> None:
    """Record what bounds the yoke, the back and the front."""
    sheet.heading("Pieces", "common practice, no source")
    why = "Trace it from the draft; allowances are added outside."
    centre = sheet.line("yoke at the fold", block.yoke, block.nape, why="The centre back, on the fold.")
    sheet.outline("yoke", (back.neck, back.shoulder, back.yoke_armhole, back.foot, centre), why)
    ends = block.yoke, block.hem
    beyond: tuple[Stroke, ...] = ()
    if extra:
        told = "Room for the pleat, beyond the centre back."
        up = sheet.point("fold at the yoke", block.yoke.left(Length(extra, "pleat")), told)
        low = sheet.point("fold at the hem", block.hem.left(Length(extra, "pleat")), told)
        beyond = (sheet.line("yoke edge beyond the centre", up, block.yoke, why=told), sheet.line("hem beyond the centre back", block.hem, low, why=told))
        ends = up, low
    fold = sheet.line("back at the fold", ends[1], ends[0], why="On the fold of the cloth.")
    top, foot = (beyond[:1], beyond[1:])
    sheet.outline("back", (*top, back.top, back.armhole, behind.above, behind.below, behind.hem, *foot, fold), why)
    sheet.outline("front", (before.below, before.above, front.armhole, front.shoulder, *edging.outline), why)


def _collar(seam: NeckSeam, cut: Shirt, block: Block, sheet: DraftSheet) -> tuple[Piece, ...]:
    """Draw the collar beside the front."""
    sheet.heading("Collar", "common practice, no source")
    corner = corner_of_paper(block.centre.x + 20, block.nape.y - 85)
    stand = draw_stand(seam, cut.collar_stand, corner, sheet)
    if cut.collar == "stand":
        return stand_pieces(stand, leaf=False)
    leaf = draw_leaf(stand, LEAVES[cut.collar], float(cut.collar_fall or 0.0), float(cut.collar_point or 0.0), stand.neck.start.down(14), sheet)
    return leaf_piece(leaf, buttoned=cut.collar == "button_down"), *stand_pieces(stand, leaf=True)


def _cuffs(arm: Sleeve, cut: Shirt, block: Block, sheet: DraftSheet) -> tuple[Piece, ...]:
    """Draw the cuff under the sleeve."""
    if arm.placket is None:
        return ()
    sheet.heading("Cuff", "common practice, no source")
    corner = corner_of_paper(block.centre.x + 50, block.nape.y - 85)
    length = sheet.length("cuff from end to end", Length(arm.closed, "width at the lower end") + arm.placket.lap, "Round the wrist and its lap.")
    return *arm.placket.pieces, *cuff_pieces(draw_cuff(length, cut.cuff_depth, corner, sheet, rounded=cut.cuff == "rounded"), arm.placket)


def _pattern(body: Body, cut: Shirt, drawn: _Drawn) -> Pattern:
    """Pieces, seams, wishes and notions."""
    block, edging, foot = drawn.block, drawn.edging, drawn.before.hem.start
    extra = float(cut.pleat_intake or 0.0)
    row = spaced(drawn.throat.y + cut.collar_stand / 2 - STAND_TO_FIRST, block.hem.y, cut.button_gap, None if block.bust_point is None else block.bust_point.y)
    pocket = _pocket(cut, block)
    own = () if pocket is None else pocket.marks
    centre = Mark("centre_front", polyline(foot, drawn.throat))
    notches = tuple(Notch(e.name, 0.0, 1, "centre-front") for e in edging.edges if e.name == "overlap")
    checks = cut.match == "checks"
    own = (*own, *_matched_front(cut, drawn, pocket))
    front = front_piece(block, drawn.front, drawn.before, edging, own if edging.band else (centre, *_buttons(row, block.centre.x), *own), notches, checks=checks)
    back = back_piece(block, drawn.back, drawn.behind, centre_fold(block, extra), back_pleats(block, cut.back_pleat, extra), HEM, checks=checks)
    band = () if edging.band is None else (replace(edging.band, marks=(*edging.band.marks, centre, *_buttons(row, block.centre.x))),)
    arm = replace(drawn.arm.piece, marks=(*drawn.arm.piece.marks, *_matched_sleeve(cut, drawn.arm)))
    pieces = (front, *band, back, *yoke_pieces(drawn.back, block), arm, *drawn.small, *(() if pocket is None else (_matched_pocket(cut, pocket.piece),)))
    shoulder = drawn.front.shoulder.path.length() - drawn.back.shoulder.path.length()
    seams, sewing = assembly(cut, Made(drawn.arm.cap, drawn.arm.placket, shoulder, bool(drawn.before.darts), bool(block.forward)))
    less = 2 * edging.beyond + 2 * extra
    levels = frozenset(n for n, *_ in front.levels) & frozenset(n for n, *_ in back.levels)
    reach = drawn.arm.length + (cut.cuff_depth if drawn.arm.placket else 0.0)
    return Pattern(
        kind="shirt", title="Shirt", pieces=pieces, seams=seams, sewing=sewing,
        wants=wants(body, cut, less, drawn.arm, drawn.back.shoulder.path.length(), levels, forward=bool(block.forward)),
        finished_measurements=told(less, levels, drawn.arm, armhole(forward=bool(block.forward)), block.nape.y - block.hem.y, reach),
        notions=_notions(cut, row, drawn.arm), findings=drawn.arm.cap.findings, cautions=(*CAUTIONS, *MATCHED[cut.match]),
        resolved=tuple((name, getattr(cut, name)) for name in OPEN),
    )


def _buttons(row: Row, x: float) -> tuple[Mark, ...]:
    """Button and buttonhole at each height, on the centre front."""
    at = [Point(x, y) for y in row.heights]
    return (*map(button, at), *(buttonhole(p) for p in at))


def _pocket(cut: Shirt, block: Block) -> PatchPocket | None:
    """The chest pocket, set under a place on the front."""
    if cut.chest_pocket == "none":
        return None
    wide = max(9.0, min(11.5, 0.11 * 2 * (block.centre.x - float(block.side.x)) * 2))
    shape = replace(CHEST_PATCH, quantity=2 if cut.chest_pocket == "both" else 1, top=wide, foot=wide)
    middle = Point(block.centre.x - POCKET_FROM_CENTRE - shape.top / 2, block.centre.y + POCKET_ABOVE)
    return patch_pocket(middle, Vector(-1, 0), shape, down=0.0)


def _notions(cut: Shirt, row: Row, arm: Sleeve) -> tuple[Notion, ...]:
    """Buttons (one spare), fusible and thread."""
    cuffs = 0 if arm.placket is None else 4 if arm.placket.kind == "tower" else 2
    count = len(row.heights) + 1 + cuffs + (2 if cut.collar == "button_down" else 0) + 1
    return Notion("shirt button, 11 mm, one of them spare", count), Notion("shirt fusible"), Notion("sewing thread")


CAUTIONS = (
    "Buttons and buttonholes are marked at the same places: the front that laps over has the holes.",
    "For felled seams cut the allowance that folds over 0.5 cm wider than the other.",
    "Wash cotton before cutting: a collar that shrinks by 0.5 cm pinches.",
)

MATCHED: dict[str, tuple[str, ...]] = {
    "none": (),
    "stripes": ("Lay the marks for stripes on the same stripe: centre fronts, pocket and front.",),
    "checks": ("Lay the marks for checks on the same bar: sides, centre fronts, pocket and front, front armhole and sleeve.",),
}


def _matched_front(cut: Shirt, drawn: _Drawn, pocket: PatchPocket | None) -> tuple[Mark, ...]:
    """Where a stripe or a bar of the front meets that of another piece."""
    if cut.match == "none":
        return ()
    marks: tuple[Mark, ...] = ()
    if pocket is not None:
        left, _, right, top = pocket.marks[0].path.bounds()
        marks = (stripe(Point((left + right) / 2, top)), *((bar(Point(left, top - 3), BAR_LONG),) if cut.match == "checks" else ()))
    if cut.match == "stripes":
        return marks
    hole = drawn.front.armhole.path
    return *marks, bar(hole.at(hole.length() - FRONT_NOTCH), BAR_LONG)


def _matched_pocket(cut: Shirt, piece: Piece) -> Piece:
    """The same on the pocket."""
    if cut.match == "none":
        return piece
    left = min(p.x for p in piece.outline.flattened(0.1))
    marks = (stripe(Point(0, 0)), *((bar(Point(left, -3), BAR_LONG),) if cut.match == "checks" else ()))
    return replace(piece, marks=(*piece.marks, *marks))


def _matched_sleeve(cut: Shirt, arm: Sleeve) -> tuple[Mark, ...]:
    """The bar at the sleeve's front notch."""
    return (bar(arm.cap.line.path.at(FRONT_NOTCH), -BAR_LONG),) if cut.match == "checks" else ()
