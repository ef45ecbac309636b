"""Trousers, for women and men: drafted by a block or in quarters, in a fit, with what is chosen for the cut.

A chapter of the handbook: fit and figure, frame, front and back by one of the methods, trueing, pieces
and seams, and what must come out. Everything after the method works on stitching lines and is the same
for all of them. Needs the waist, the hip, the waist to hip, the body rise and the outside leg.
"""

from __future__ import annotations

from dataclasses import replace

from drafting.body import Body
from drafting.craft.loops import belt_loop, loop_count
from drafting.craft.scrap import Scrap
from drafting.craft.sheet import DraftSheet
from drafting.craft.sides import by_sides
from drafting.errors import SpecError
from drafting.garments.garment import Garment, ValidRange
from drafting.garments.trousers import wants
from drafting.garments.trousers.assembly import Parts, assembly, tapes
from drafting.garments.trousers.choices import OPEN, allowed, settled
from drafting.garments.trousers.corrections import SYMPTOMS, corrected
from drafting.garments.trousers.ending import end_legs, hem_of
from drafting.garments.trousers.figure import Figure, figure
from drafting.garments.trousers.fits import (
    fullness,
    hip_ease,
    most_over,
    settle,
    top_girth,
    underlap,
    waist_ease,
)
from drafting.garments.trousers.fitting import THIGH_LINE, OnScrap, fitted, roomy, seated
from drafting.garments.trousers.frame import EVEN, Frame, Side, frame
from drafting.garments.trousers.legs import knee_girth, true_to_shape
from drafting.garments.trousers.manners import band_in_rise
from drafting.garments.trousers.methods import METHODS
from drafting.garments.trousers.openings import CLOSURES, shield_closed
from drafting.garments.trousers.pieces import (
    back_piece,
    below_yoke,
    foot,
    front_piece,
    hip_is_clear,
    whole_below,
    yoked,
)
from drafting.garments.trousers.pockets import BACK_POCKETS, FRONT_POCKETS
from drafting.garments.trousers.reshaping import hip_gain, reshaped
from drafting.garments.trousers.spec import Trousers
from drafting.garments.trousers.trueing import Trued, true
from drafting.garments.trousers.waists import WAISTS, Made, cut_off
from drafting.pattern import Notion, Pattern, Piece


def draw(body: Body, cut: Trousers, sheet: DraftSheet) -> Pattern:
    """Draft trousers for a body; the pieces are net, in cm, Y up.

    Where the sides of the body differ, each is drafted by itself; the longer side from waist to
    floor is given its length at the side's waist, so that crotch, knee and hem stay level.

    Raises:
        MissingMeasureError: A needed measure is not there.
        SpecError: An option cannot be had on this body, or excludes another.
        ConstructionError: A step of the construction has no answer for this body.
    """
    cut = settled(cut)
    if body.even:
        return one_side(body, cut, sheet)
    if cut.waistband in ON_FOLD and cut.closure == "side_zip":
        raise SpecError(
            f'With waistband "{cut.waistband}" and closure "side_zip" front and back are cut on the fold, so both sides must be alike: give one value for each measure, or choose closure "fly" or waistband "straight".',
            where="garment.waistband",
        )
    right, left = (body.side(side) for side in ("right", "left"))
    outsides = [float(side.outside_leg_length) for side in (right, left)]
    level, rights, lefts = min(outsides), outsides[0] - min(outsides), outsides[1] - min(outsides)
    hips = float(right.side_waist_to_hip) - rights + float(left.side_waist_to_hip) - lefts
    sheet.heading("Sides", "common practice, no source")
    sheet.decide("two sides", not body.even, "Do the two sides of the body differ?", "Each is drafted by itself; what follows is the right one.")
    one, two = _levelled(right, level), _levelled(left, level)
    person = _figure(one, cut, Scrap(), Side(rights, hips / 2))
    drawn = one_side(one, cut, sheet, Side(rights, hips / 2))
    other = one_side(two, cut, Scrap(), Side(lefts, hips / 2), person)
    return by_sides(drawn, other, frozenset({"fly_facing"}) if cut.lap == "left_over_right" else frozenset())


ON_FOLD = ("contoured", "faced")
"""Waists with pieces that are half drawn."""


def _levelled(side: Body, outside: float) -> Body:
    """One side of the body, its leg as long as the shorter side's."""
    leg = replace(side.measured["outside_leg_length"], value=outside)
    return replace(side, measured={**side.measured, "outside_leg_length": leg})


def one_side(body: Body, cut: Trousers, sheet: DraftSheet, own: Side = EVEN, person: Figure | None = None) -> Pattern:
    """Draft trousers for a body with even sides, or one side of an uneven one as if both were so.

    Both sides of an uneven body are drafted for one figure, so that their crotch seams agree.
    """
    settle(body, cut, sheet)
    true_to_shape(body, cut)
    person = person or _figure(body, cut, sheet, own)
    level, front_true, back_true = panels(person, body, cut, sheet, own)

    sheet.heading("Details", "common practice, no source")
    top = sheet.length("waistband", top_girth(body, cut), "Body and ease.")
    front_panel, back_panel, contours = cut_off(front_true, back_true, cut)
    depth = cut.band_depth if cut.waistband == "contoured" else band_in_rise(cut)
    opening = CLOSURES[cut.closure](front_panel, top, depth, body, cut, sheet)
    pocket = FRONT_POCKETS[cut.front_pocket](front_panel, body, cut, sheet)
    below, yoke = yoked(back_panel, cut)
    behind = BACK_POCKETS[cut.back_pocket](below, cut)
    level = whole_below(level, front_panel, below)

    stretches = (*opening.stretches, *pocket.stretches)
    front_cut = front_piece(front_panel, level, pocket, opening, foot(front_panel, cut.turn_ups), cut)
    back_cut = back_piece(below, level, below_yoke(stretches, yoke), opening, pocket, behind, foot(back_panel, cut.turn_ups), top="yoke" if yoke else "waist", hip_notch=hip_is_clear(front_panel, front_cut.edges))
    around = (front_cut, *(p for p in pocket.pieces if p.name in pocket.between), *(yoke or (back_cut,)))
    waist = WAISTS[cut.waistband, cut.closure](Made(top=float(top), around=around, contours=contours, body=body, cut=cut, even=own == EVEN))
    parts = Parts(panels=(front_cut, back_cut), around=around, short=front_panel.panel.leg.short, turned_up=cut.turn_ups > 0, pocket=pocket, behind=behind, opening=opening, waist=waist)
    tape, (seams, sewing) = tapes(parts), assembly(parts)
    return Pattern(
        kind="trousers",
        title="Trousers",
        pieces=(
            front_cut, back_cut, *yoke, *pocket.pieces, *(opening.pieces if waist.over_shield else shield_closed(opening.pieces)),
            *behind.pieces, *waist.pieces, *loops(cut, body),
        ),
        seams=seams,
        sewing=sewing,
        wants=(
            *wants.girths(body, cut, person, tape),
            *wants.thigh(body, cut, _thigh(level, front_panel, back_panel)),
            *wants.lengths(body, cut, tape, depth, own.higher, person),
            *wants.openings(body, tape),
            *wants.crotch(body, cut, tape),
            *wants.joins(tape, person),
            *wants.block(body, cut, front_panel, back_panel, level, person, tape),
        ),
        finished_measurements=wants.finished(tape),
        resolved=allowed(cut, (
            *((name, getattr(cut, name)) for name in OPEN),
            ("hem_girth", hem_of(front_panel, back_panel, body, cut)),
            ("knee_girth", float(knee_girth(body, cut))),
            ("waist_ease", float(waist_ease(cut))),
            ("waist_fullness", fullness(cut)),
            ("hip_ease", float(hip_ease(body, cut))),
            ("underlap", underlap(cut)),
            *pocket.settled,
        )),
        notions=(*opening.notions, *waist.notions, Notion("sewing thread"), *pocket.notions),
    )


def panels(person: Figure, body: Body, cut: Trousers, sheet: DraftSheet, own: Side) -> tuple[Frame, Trued, Trued]:
    """Draw and true front and back for a figure."""
    level, front_drawn, back_drawn = METHODS[cut.method](frame(body, cut, sheet, own, person), person, body, replace(cut, waist_position=0.0) if cut.waist_position > 0 else cut, sheet)
    level, front_drawn, back_drawn = reshaped(level, front_drawn, back_drawn, cut, sheet)
    level, front_drawn, back_drawn = end_legs(level, front_drawn, back_drawn, cut, sheet)
    return level, *true(front_drawn, back_drawn, level.hip, body.hip_girth + hip_ease(body, cut) + 2 * (person.hips_front + person.hips_back + hip_gain(cut)), most_over(cut), sheet)


def _figure(body: Body, cut: Trousers, sheet: DraftSheet, own: Side) -> Figure:
    """What fit, figure, toile and the measured thigh and crotch make of the method's own draft."""
    def drawn(person: Figure) -> OnScrap:
        return _on_scrap(person, body, cut, own)

    told = figure(seated(body, cut, drawn, sheet), cut, sheet)
    return fitted(body, cut, roomy(body, cut, corrected(told, cut.corrections, sheet), drawn, sheet), drawn, sheet)


def _on_scrap(person: Figure, body: Body, cut: Trousers, own: Side) -> OnScrap:
    """The panels that a figure gives, drawn on scrap paper and measured."""
    level, one, two = panels(person, body, replace(cut, waist_position=0.0), Scrap(), own)
    return OnScrap(
        one.crotch.length() + two.crotch.length() + 2 * band_in_rise(cut),
        two.crotch.length() - one.crotch.length(),
        one.reach + two.reach,
        one.reach,
        _thigh(level, one, two),
    )


def _thigh(level: Frame, one: Trued, two: Trued) -> float:
    """Round one leg on the thigh line, or half way down a shorter leg, in cm."""
    down = min(THIGH_LINE, (level.crotch.y - level.hem.y) / 2)
    return sum(p.width(level.crotch.y - down) for p in (one, two))


def loops(cut: Trousers, body: Body) -> tuple[Piece, ...]:
    """The belt loop, if loops are wanted."""
    return (belt_loop(cut.band_depth, loop_count(float(body.waist_girth))),) if cut.belt_loops else ()


GARMENT = Garment(
    kind="trousers",
    title="Trousers",
    summary="Trousers for women and men by a women's block, a men's block or a quick quarter draft, in a slim to wide fit: fly front, slant and welt pockets, waistband unless chosen otherwise.",
    spec=Trousers,
    needs=("waist_girth", "hip_girth", "side_waist_to_hip", "body_rise", "outside_leg_length"),
    optional=("heel_ankle_girth", "hand_girth", "total_crotch_length", "thigh_girth", "knee_girth"),
    pieces=(
        "front", "back", "side_piece", "pocket_facing", "pocket_bag", "pocket_bag_under", "fly_facing", "fly_shield",
        "back_welt", "back_pocket_facing", "back_pocket_bag", "waistband", "belt_loop",
    ),
    valid=(ValidRange("waist_girth", 56, 110), ValidRange("hip_girth", 80, 130), ValidRange("body_rise", 23, 34)),
    sources=(
        "W. Aldrich, Metric Pattern Cutting for Women's Wear (frame, front, back as far as the inseam)",
        "from memory: W. Aldrich, Metric Pattern Cutting for Women's Wear (back inseam below the knee, back darts)",
        "W. Aldrich, Metric Pattern Cutting for Menswear (men's block)",
        "from memory: W. Aldrich, Metric Pattern Cutting for Menswear (men's knee)",
        "Measurements for Fitting Pants, New Mexico State University Extension, Guide C-209 (least room over the thigh)",
        "common practice, no source (quarter draft, eases of the fits, trueing, opening, waistband)",
    ),
    sample=(
        ("waist_girth", 74.0),
        ("hip_girth", 101.0),
        ("side_waist_to_hip", 20.5),
        ("body_rise", 27.5),
        ("outside_leg_length", 103.0),
    ),
    symptoms=SYMPTOMS,
    draw=draw,
)
