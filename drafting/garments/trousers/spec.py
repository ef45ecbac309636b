"""What can be chosen about a pair of trousers.

Source: limits and defaults are house method where no method or fit gives them.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal

from annotated_types import Interval, MaxLen

from drafting.craft.fly import Lap
from drafting.garments.trousers.pins import Correction
from drafting.pattern.allowance import LENGTH

Girth = Annotated[float | None, Interval(ge=20, le=250), LENGTH]

MOST_WAIST_EASE = 10.0
"""Waistband over body in cm, all round. House method."""

Method = Literal["block", "mens_block", "quarter"]

Fit = Literal["slim", "classic", "relaxed", "wide"]

LegShape = Literal["straight", "tapered", "flared", "wide", "culottes"]

LegLength = Literal["full", "cropped", "knee", "shorts"]

Closure = Literal["fly", "side_zip", "none"]

Waistband = Literal["straight", "contoured", "faced", "elastic"]

FrontShape = Literal["dart", "flat", "one_pleat", "two_pleats"]

BackShape = Literal["darts", "one_dart", "two_darts", "yoke", "flat"]

FrontPocketKind = Literal["slant", "curved", "in_seam", "none"]

BackPocketKind = Literal["welt", "patch", "none"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Trousers:
    """Classic straight trousers at the natural waist. Lengths in cm.

    Attributes:
        kind: Always "trousers".
        method: How the pattern is drafted: "block", a women's two-dart block; "mens_block", a classic
            men's block with a plain front, its straight band a part of the rise; "quarter", the
            dressmaker's quick draft in quarters of hip and waist. Each drafts for either figure.
        fit: How close it sits: slim, classic, relaxed or wide set the eases, knee, hem, forks and seat
            angle; by default the method's own numbers hold. Single eases win over it.
        stretch: How far the cloth stretches across, in percent; half of it comes off hip and knee of
            a close cut, down to 5 % under the body.
        waist_ease: Waistband over body, all round; by default of the fit, or of the method.
        waist_fullness: Trouser top over waistband, all round, eased on when the band is sewn; by
            default 1 cm with a straight band; none with a contoured one, which is cut from the top.
        hip_ease: Trousers over body at the hip line, all round; by default of the fit, or of the
            method, or so much that they hang plumb from a waist that is larger than the hips. Below 0
            in a cloth that stretches only.
        thigh_ease: Least room over a measured thigh; by default of the fit.
        knee_ease: Leg over the body's knee; by default of the fit. Not beside knee_girth.
        leg: How the leg falls: straight; tapered from the knee to a narrow hem; flared from a raised
            knee to a wide one; wide from the thigh down; or culottes, which hang as a skirt does: plumb
            from the hip and from long forks, the crotch lower. Culottes have no knee.
        length: Where the legs end: full; cropped, between calf and ankle; at the knee; or shorts.
            Shorter legs are cut off the full one.
        inside_leg: Length of the inside leg seam, instead of a named length.
        hem_girth: Girth of the hem, where the leg ends; by default of the fit: without one 44 cm at
            hip 96 and 1 cm more for each 4 cm of hip, 8 cm less on a tapered leg, 12 cm more on a
            flared and 16 cm more on a wide one; a shorter leg's as the full one is there, with 1 cm
            more at each seam above the knee; of culottes as they hang. Over hip 124 the hem gains 1 cm
            more for each 12 cm.
        knee_girth: Girth at the knee; by default by the fit, or the straight leg's hem and some 5 cm;
            4 cm less on a flared leg, as wide as the hem on a wide one; over hip 124 at least 45 % of
            the hip and 1 cm. Culottes have none.
        hem_over_floor: How far above the floor a full leg's hem ends.
        shoe_height: Height of the heel that a full leg must cover; it is longer by that.
        hem: Level, or shaped: hollowed over the shoe and lower behind.
        turn_ups: Depth of the finished turn-ups; none by default. Not on a flared
            leg, on culottes or on a shaped hem.
        waist_position: Height of the trouser top over the natural waist; negative where it is lowered.
            The top is as wide as the body is there, on its way to the hip or to the ribs. From 3 cm up
            it is raised, with a facing or a contoured band: the darts run through the waist.
        front: Darts as the figure asks, none to two; flat, without; or one or two pleats in their
            place, the first on the crease. By default darts, flat under an elastic waist.
        pleat_depth: Cloth that the first pleat takes; the second takes 1 cm less. By default 4 cm, 3.5
            cm of two.
        pleat_direction: Reverse pleats are laid toward the pockets, forward ones toward the fly.
        back: Darts as the figure asks, none to three a side; one or two a side; a yoke with the
            darts closed into it; or flat, which only an elastic waist allows, and is its default.
        closure: How they open: a fly in front; a zip in the left side seam, without front pockets; or
            not at all, which only an elastic waist allows, and is its default. Else a fly.
        lap: Which front lies on top at the fly.
        front_pocket: Pockets in the fronts: slant, the corner of the front cut off straight; curved,
            cut off in a quarter of an ellipse; in the side seam; or none. By default slant, in the
            seam under a raised waist, none beside a zip in the side.
        pocket_mouth: Length of the front pocket's mouth, at least 15 cm or half a measured hand and
            1.5 cm; by default 16 cm, a curved one's 15 cm, in the quarter draft to 6 inches down the
            side, longer for a large hand.
        pocket_inset: Distance of the mouth's top from the side seam, along the waist; by default
            4 cm (the quarter draft's 2 inches), down to 3 cm on a narrow front; of a curved mouth
            10 cm, down to 5 cm.
        back_pocket: Pockets in the backs: welt, with the darts ending in it; patch; or none. By
            default welt, patch under a yoke, none under an elastic or a raised waist.
        waistband: Straight, cut in one with its inside; contoured, shaped as the body and cut from the
            trouser top; faced, without a band; or elastic, a casing as wide as the hips, without
            darts. By default straight, elastic without a closure, faced over a raised waist.
        band_depth: Depth of the finished waistband or casing.
        facing_depth: Depth of the facing of a faced waist; by default 6 cm, of a raised one down to
            the natural waist.
        underlap: How far the waistband laps under at its opening; the fly shield's width. By default
            4 cm, in the quarter draft 2 inches.
        belt_loops: Whether belt loops are cut; by default with a band over a fly.
        seat: How the seat is shaped; flat or full change forks, seat angle and raise.
        abdomen: Full raises the centre front, sets it plumb and leaves the front darts out.
        hollow_back: Whether the back is hollow above the seat; lowers the centre back.
        corrections: What a fitter pinned on the toile, in order.
    """

    kind: Literal["trousers"]
    method: Method = "block"
    fit: Fit | None = None
    stretch: Annotated[float, Interval(ge=0, le=60)] = 0.0
    waist_ease: Annotated[float | None, Interval(ge=0, le=MOST_WAIST_EASE), LENGTH] = None
    waist_fullness: Annotated[float | None, Interval(ge=0, le=3), LENGTH] = None
    hip_ease: Annotated[float | None, Interval(ge=-10, le=30), LENGTH] = None
    thigh_ease: Annotated[float | None, Interval(ge=0, le=30), LENGTH] = None
    knee_ease: Annotated[float | None, Interval(ge=0, le=40), LENGTH] = None
    leg: LegShape = "straight"
    length: LegLength = "full"
    inside_leg: Annotated[float | None, Interval(ge=3, le=110), LENGTH] = None
    hem_girth: Girth = None
    knee_girth: Girth = None
    hem_over_floor: Annotated[float, Interval(ge=0, le=30), LENGTH] = 2.0
    shoe_height: Annotated[float, Interval(ge=0, le=15), LENGTH] = 0.0
    hem: Literal["level", "shaped"] = "level"
    turn_ups: Annotated[float, Interval(ge=0, le=6), LENGTH] = 0.0
    waist_position: Annotated[float, Interval(ge=-12, le=10), LENGTH] = 0.0
    front: FrontShape | None = None
    pleat_depth: Annotated[float | None, Interval(ge=1.5, le=6), LENGTH] = None
    pleat_direction: Literal["reverse", "forward"] = "reverse"
    back: BackShape | None = None
    lap: Lap = "right_over_left"
    closure: Closure | None = None
    front_pocket: FrontPocketKind | None = None
    pocket_mouth: Annotated[float | None, Interval(ge=15, le=22), LENGTH] = None
    pocket_inset: Annotated[float | None, Interval(ge=2, le=12), LENGTH] = None
    back_pocket: BackPocketKind | None = None
    waistband: Waistband | None = None
    band_depth: Annotated[float, Interval(ge=2, le=8), LENGTH] = 4.0
    facing_depth: Annotated[float | None, Interval(ge=3, le=10), LENGTH] = None
    underlap: Annotated[float | None, Interval(ge=2, le=6), LENGTH] = None
    belt_loops: bool | None = None
    seat: Literal["even", "flat", "full"] = "even"
    abdomen: Literal["even", "full"] = "even"
    hollow_back: bool = False
    corrections: Annotated[tuple[Correction, ...], MaxLen(12)] = ()
