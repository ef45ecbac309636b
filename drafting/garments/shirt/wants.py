"""A shirt, what must come out: wishes from the order and the body alone, and where the tape goes.

Bounds: half a centimetre round the chest is the house's own accuracy; three millimetres at the neck,
180 degrees within 3 where seams cross: common practice, no source.
"""

from __future__ import annotations

from math import inf

from drafting.body import Body
from drafting.craft.rules import HAND_OVER_WRIST
from drafting.craft.sleeve_cap import ARMHOLE_EDGES, CAP_EDGES
from drafting.garments.shirt.pieces import OVER_SHOULDER
from drafting.garments.shirt.sleeves import LEAST_ROOM, SHORT_ROOM, WEAR, Sleeve
from drafting.garments.shirt.spec import Shirt
from drafting.pattern import (
    AngleBetween,
    CombinedLength,
    EdgeLength,
    Girth,
    Measuring,
    Number,
    Want,
)

HAND = 2.5
"""The thumb adds 2.5 cm to the hand. Source: common practice, no source."""

AT_HIP, AT_WAIST = 2.0, 4.0


def near(name: str, tape: Measuring, wanted: float, slack: float, reason: str) -> Want:
    """A must within so much about what is wanted, cm."""
    return Want(name=name, measuring=tape, wanted=float(wanted), low=float(wanted) - slack, high=float(wanted) + slack, reason=reason)


def at_least(name: str, tape: Measuring, least: float, reason: str, *, advice: bool = False) -> Want:
    """A must, or advice, that a length reaches a least one, cm."""
    return Want(name=name, measuring=tape, wanted=float(least), low=float(least), high=inf, kind="advice" if advice else "must", reason=reason)


def angle(name: str, *corners: tuple[str, str, str], wanted: float = 180.0, slack: float = 3.0) -> Want:
    """Corners that meet when sewn: together a straight angle."""
    return Want(name=name, measuring=AngleBetween(corners), wanted=wanted, low=wanted - slack, high=wanted + slack, unit="deg", reason="Sewn together the line runs on without a corner.")


def plus(*parts: tuple[float, str, tuple[str, ...]]) -> CombinedLength:
    """Edge lengths added up, each with a factor."""
    return CombinedLength(tuple((factor, EdgeLength(piece, edges)) for factor, piece, edges in parts))


NECK = EdgeLength("collar_stand", ("neck",), 2)
"""The collar from button to buttonhole."""

CAP = EdgeLength("sleeve", CAP_EDGES)

def armhole(*, forward: bool) -> CombinedLength:
    """The armhole as it is sewn; `forward` where the yoke goes on before the shoulder's ridge."""
    yoke = ("armhole", *((OVER_SHOULDER,) if forward else ()))
    return plus((1.0, "yoke", yoke), *((1.0, piece, ARMHOLE_EDGES) for piece in ("back", "front")))


def round_body(level: str, less: float) -> Girth:
    """The tape round the closed shirt, its laps and its pleat not counted twice."""
    return Girth(level, ("back", "front"), 2, less=less)


def wants(body: Body, cut: Shirt, less: float, sleeve: Sleeve, shoulder: float, levels: frozenset[str], *, forward: bool) -> tuple[Want, ...]:
    """Everything that must come out.

    Args:
        body: The body.
        cut: The options, settled.
        less: What the panels have beyond the centres, all round, cm.
        sleeve: The sleeve.
        shoulder: Length of the drawn shoulder, cm.
        levels: Level lines that both panels have.
        forward: Whether the yoke goes on before the shoulder's ridge.
    """
    return (
        near("finished_chest_girth", round_body("chest", less), body.value("bust_girth") + float(cut.chest_ease or 0), 0.5, "Body and ease, buttoned."),
        *_loose(body, less, levels),
        near("finished_neck_girth", NECK, body.value("neck_girth") + float(cut.neck_ease or 0), 0.3, "Button to buttonhole: body and ease."),
        *_sleeved(body, cut, sleeve, shoulder, armhole(forward=forward)),
        *_corners(cut, OVER_SHOULDER if forward else "armhole"),
    )


def _loose(body: Body, less: float, levels: frozenset[str]) -> tuple[Want, ...]:
    rows = (("waist", "waist_girth", AT_WAIST), ("hip", "hip_girth", AT_HIP))
    return tuple(
        at_least(f"{level}_has_room", round_body(level, less), body.value(measure) + least, "Over the body and a little, buttoned.", advice=True)
        for level, measure, least in rows
        if level in levels and body.has(measure)
    )


def _sleeved(body: Body, cut: Shirt, sleeve: Sleeve, shoulder: float, hole: CombinedLength) -> tuple[Want, ...]:
    """Cap, width, length; cuff and slit, or the hem of a short one."""
    eased = plus(*((1.0, "sleeve", CAP_EDGES),), *((-f, p.piece, p.edges) for f, p in hole.parts))
    arm = body.value("upper_arm_girth")
    own = (
        near("cap_ease", eased, sleeve.cap.ease, 0.05, "The cap is as long as the armhole and its ease."),
        at_least("sleeve_passes_arm", Girth("bicep", ("sleeve",), 1), arm + LEAST_ROOM, "The upper arm and room to bend it."),
    )
    if sleeve.placket is None:
        return *own, at_least("hem_passes_arm", EdgeLength("sleeve", ("hem",)), arm + SHORT_ROOM - 1, "The hem goes round the upper arm.")
    reaching = shoulder + sleeve.length + cut.cuff_depth
    wrist = ("wrist_back", *(("slit",) if sleeve.placket.box else ()), "wrist_front")
    hand = body.value("hand_girth") if body.has("hand_girth") else HAND_OVER_WRIST * body.value("wrist_girth")
    opened = Number(sleeve.closed + sleeve.placket.lap + 2 * sleeve.placket.slit, "cuff laid open, and both sides of the slit")
    length = () if cut.sleeve_length is not None or not body.has("shoulder_length") else (
        near("finished_sleeve_length", Number(reaching, "shoulder seam, sleeve and cuff as drawn"), body.value("shoulder_length") + body.value("outer_arm_length") + WEAR, 0.3, "From the neck over the shoulder to the wrist and a little."),
    )
    return (
        *own, *length,
        near("finished_cuff_girth", EdgeLength("sleeve", wrist), body.value("wrist_girth") + cut.cuff_ease, 0.2, "Buttoned: wrist and ease."),
        at_least("hand_passes_cuff", opened, hand + HAND, "The hand and its thumb go through the open cuff."),
    )


def _corners(cut: Shirt, shoulder: str) -> tuple[Want, ...]:
    """Where seams cross, lines run on."""
    leaf = () if cut.collar == "stand" else (at_least("leaf_covers_stand", plus((1.0, "collar", ("centre_back",)), (-1.0, "collar_stand", ("centre_back",))), 0.5, "The leaf hides the neck seam."),)
    return (
        angle("neck_angle", ("yoke", "shoulder", "neck"), ("front", "neck", "shoulder")),
        angle("shoulder_angle", ("yoke", shoulder, "shoulder"), ("front", "shoulder", "armhole")),
        angle("yoke_angle", ("yoke", "foot", "armhole"), ("back", "armhole", "yoke_seam"), slack=4.0),
        angle("underarm_angle", ("back", "side", "armhole_under"), ("front", "armhole_under", "side")),
        angle("sleeve_underarm_angle", ("sleeve", CAP_EDGES[3], "back_seam"), ("sleeve", "front_seam", CAP_EDGES[0])),
        angle("hem_angle", ("back", "hem", "side"), ("front", "side", "hem")),
        *leaf,
    )


def told(less: float, levels: frozenset[str], sleeve: Sleeve, hole: CombinedLength, back: float, reach: float) -> tuple[Want, ...]:
    """What a customer is told of the finished shirt."""
    cuff = () if sleeve.placket is None else (("cuff_girth", EdgeLength("sleeve", ("wrist_back", *(("slit",) if sleeve.placket.box else ()), "wrist_front"))),)
    rows: tuple[tuple[str, Measuring], ...] = (
        ("chest_girth", round_body("chest", less)),
        *((f"{level}_girth", round_body(level, less)) for level in ("waist", "hip") if level in levels),
        ("neck_girth", NECK), ("armhole_length", hole), ("sleeve_width", Girth("bicep", ("sleeve",), 1)), *cuff,
        ("sleeve_length", Number(reach, "from the shoulder seam to the end")), ("back_length", Number(back, "nape to hem")),
        ("side_seam", EdgeLength("back", ("side",))),
    )
    return tuple(near(name, tape, 0.0, 0.0, "") for name, tape in rows)
