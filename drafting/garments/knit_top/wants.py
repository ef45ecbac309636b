"""Knit top, what must come out: wishes from the order and the body alone, and where the tape goes."""

from __future__ import annotations

from math import inf
from typing import Literal

from drafting.body import Body
from drafting.craft.sleeve_cap import CAP_EDGES
from drafting.craft.stretch_band import OVER_HEAD
from drafting.garments.knit_top.bands import Ring
from drafting.garments.knit_top.body_pieces import Panel
from drafting.garments.knit_top.frame import bust_ease, least_girth
from drafting.garments.knit_top.neck import head
from drafting.garments.knit_top.sleeve import OVER_HAND, hand, wish
from drafting.garments.knit_top.spec import BELOW_HIP, KnitTop, has_sleeve
from drafting.pattern import AngleBetween, CombinedLength, EdgeLength, Girth, Measuring, Want

BUST, HIP = Girth("bust", ("back", "front"), 2), Girth("hip", ("back", "front"), 2)
SMOOTH = 3.0
"""Degrees by which a line may turn where it runs on over a seam. Common practice, no source."""


def near(name: str, tape: Measuring, wanted: float, slack: float, reason: str, unit: Literal["cm", "deg"] = "cm") -> Want:
    """A must within a slack of what is wanted."""
    return Want(name=name, measuring=tape, wanted=float(wanted), low=float(wanted) - slack, high=float(wanted) + slack, unit=unit, reason=reason)


def at_least(name: str, tape: Measuring, least: float, reason: str) -> Want:
    """A must that a length reaches a least one."""
    return Want(name=name, measuring=tape, wanted=float(least), low=float(least), high=inf, reason=reason)


def drawn_out(percent: float, *edges: EdgeLength) -> CombinedLength:
    """Edges stretched as far as their cloth goes."""
    return CombinedLength(tuple((1 + percent / 100, edge) for edge in edges))


def all_round(edge: str) -> tuple[EdgeLength, EdgeLength]:
    """An edge of back and front, both halves."""
    return EdgeLength("back", (edge,), 2), EdgeLength("front", (edge,), 2)


def wants(body: Body, cut: KnitTop, panels: tuple[Panel, Panel], rings: dict[str, Ring]) -> tuple[Want, ...]:
    """All wishes of a top."""
    bust = body.value("bust_girth")
    return (
        near("finished_bust_girth", BUST, bust + bust_ease(body, cut), 0.5, "Body and ease."),
        at_least("bust_within_stretch", BUST, least_girth(bust, cut.stretch) - 0.05, "Worn, the cloth is drawn out by half its stretch at the most."),
        *_hips(body, cut, panels),
        *_neck(body, cut),
        *(_arm(body, cut, rings) if has_sleeve(cut) else ()),
        near("top_length", CombinedLength(((1.0, EdgeLength("back", ("centre",))), *_band_depths(rings))), _length(body, cut, panels), 0.3, "Nape to hem, less what is cut away at the neck."),
        *_angles(cut),
    )


def _length(body: Body, cut: KnitTop, panels: tuple[Panel, Panel]) -> float:
    whole = cut.length or body.value("back_neck_point_to_waist") + body.value("side_waist_to_hip") + BELOW_HIP
    back = panels[0]
    return whole - (back.half.nape.y - back.centre.start.y)


def _band_depths(rings: dict[str, Ring]) -> tuple[tuple[float, EdgeLength], ...]:
    return ((0.5, EdgeLength("hem_band", ("left_end", "left_end_inside"))),) if "hem_band" in rings else ()


def _hips(body: Body, cut: KnitTop, panels: tuple[Panel, Panel]) -> tuple[Want, ...]:
    reached = panels[0].centre.end.y <= dict(panels[0].depths)["hip"]
    if not reached:
        return ()
    return (at_least("hip_within_stretch", HIP, least_girth(body.value("hip_girth"), cut.stretch) - 0.05, "It goes over the hips without pulling."),)


def _neck(body: Body, cut: KnitTop) -> tuple[Want, ...]:
    passes = head(body) + OVER_HEAD - 0.05
    return (
        at_least("neckline_passes_head", drawn_out(cut.stretch, *all_round("neck")), passes, "Stretched, the neckline must pass the head and 1 cm."),
        at_least("neckband_passes_head", drawn_out(cut.neckband_stretch, EdgeLength("neckband", ("edge",))), passes, "Stretched, the neckband must pass the head and 1 cm."),
    )


def _arm(body: Body, cut: KnitTop, rings: dict[str, Ring]) -> tuple[Want, ...]:
    asked = wish(body, cut)
    found = [
        at_least("sleeve_width", Girth("underarm", ("sleeve",), 1), asked.arm + asked.least_room - 0.05, "Never narrower than the arm and its least room."),
        near("cap_on_armhole", CombinedLength((*((1.0, EdgeLength("sleeve", (e,))) for e in CAP_EDGES), *((-1.0, EdgeLength(p, (e,))) for p in ("back", "front") for e in ("armhole", "armhole_under")))), asked.most_ease / 2, asked.most_ease / 2 + 0.05, "No ease, at the most 1 cm."),
    ]
    if cut.sleeve == "long":
        tape = drawn_out(cut.neckband_stretch, EdgeLength("cuff", ("edge",))) if "cuff" in rings else drawn_out(cut.stretch, EdgeLength("sleeve", ("hem",)))
        found.append(at_least("sleeve_end_passes_hand", tape, hand(body) + OVER_HAND - 0.05, "Stretched, the sleeve's end must pass the hand."))
    return tuple(found)


def _angles(cut: KnitTop) -> tuple[Want, ...]:
    """Where lines run on over a seam the corners on both sides make a straight angle."""
    rows = [
        ("side_armhole_angle", (("back", "side", "armhole_under"), ("front", "armhole_under", "side"))),
        ("shoulder_armhole_angle", (("back", "armhole", "shoulder"), ("front", "shoulder", "armhole"))),
        ("shoulder_neck_angle", (("back", "shoulder", "neck"), ("front", "neck", "shoulder"))),
        ("hem_angle", (("back", "hem", "side"), ("front", "side", "hem"))),
    ]
    if has_sleeve(cut):
        rows += [
            ("underarm_angle", (("sleeve", CAP_EDGES[3], "underarm_back"), ("sleeve", "underarm_front", CAP_EDGES[0]))),
            ("sleeve_hem_angle", (("sleeve", "underarm_back", "hem"), ("sleeve", "hem", "underarm_front"))),
        ]
    return tuple(near(name, AngleBetween(corners), 180.0, SMOOTH, "Sewn together the line runs on without a corner.", "deg") for name, corners in rows)


def told(cut: KnitTop) -> tuple[Want, ...]:
    """What a customer is told of the finished top."""
    tapes: list[tuple[str, Measuring]] = [
        ("bust_girth", BUST),
        ("hem_girth", CombinedLength(tuple((1.0, e) for e in all_round("hem")))),
        ("neckline", CombinedLength(tuple((1.0, e) for e in all_round("neck")))),
        ("shoulder_seam", EdgeLength("back", ("shoulder",))),
    ]
    if has_sleeve(cut):
        tapes += [("sleeve_width", Girth("underarm", ("sleeve",), 1)), ("sleeve_end", EdgeLength("sleeve", ("hem",)))]
    return tuple(near(name, tape, 0.0, 0.0, "") for name, tape in tapes)
