"""Trousers, what must come out: wishes from the order and the body alone, and where the tape goes.

Bounds: hip as the block draws wider than its formula; fork, seat angle and crotch bands are common
practice, no source, derived from eight published methods; the rest is the house's own accuracy.
"""

from __future__ import annotations

from math import inf

from drafting.body import Body
from drafting.craft.hemline import leg, leg_girth
from drafting.craft.rules import OPENING_OVER_HIP
from drafting.craft.slant_pocket import least_mouth
from drafting.garments.trousers.figure import Figure
from drafting.garments.trousers.fits import (
    crotch_band,
    foot_girth,
    hip_ease,
    most_over,
    thigh_ease,
    top_girth,
)
from drafting.garments.trousers.fitting import fork_shares
from drafting.garments.trousers.frame import Frame
from drafting.garments.trousers.legs import hem_girth, inside_leg, is_full, knee_girth
from drafting.garments.trousers.manners import MANNERS
from drafting.garments.trousers.reshaping import hip_gain
from drafting.garments.trousers.spec import Trousers
from drafting.garments.trousers.tapes import LEGS, Tapes, parts_of, together
from drafting.garments.trousers.trueing import Trued
from drafting.geometry import Path, Point, Vector, crossing_with_line
from drafting.pattern import (
    AngleBetween,
    CombinedLength,
    CrossShare,
    EdgeLength,
    Girth,
    Measuring,
    Number,
    Want,
)


def girths(body: Body, cut: Trousers, person: Figure, tape: Tapes) -> tuple[Want, ...]:
    """What goes round the body and the leg."""
    band, seat = top_girth(body, cut), body.hip_girth + hip_ease(body, cut) + 2 * (person.hips_front + person.hips_back + hip_gain(cut))
    return (
        _near("finished_waist_girth", tape.waist, band, 0.5, 0.5, "Band over body."),
        _near(
            "finished_hip_girth",
            tape.hip,
            seat,
            0.5,
            most_over(cut) + 0.5,
            "The block draws wider at the hip than its formula, since the back curve leaves the seat line above the hip.",
        ),
        *_legs(body, cut, short=tape.short),
    )


def _legs(body: Body, cut: Trousers, *, short: bool) -> tuple[Want, ...]:
    """Round one leg, at the knee and at the hem; what must pass through it."""
    tape = Girth("hem", LEGS, 1)
    foot, hem = float(foot_girth(body)), cut.hem_girth if cut.hem_girth and not is_full(cut) else hem_girth(body, cut)
    knee = () if short else (_near("finished_knee_girth", Girth("knee", LEGS, 1), knee_girth(body, cut), 0.3, 0.3, "Round one leg."),)
    slack = 0.3 if cut.hem == "level" else 0.8 + abs(float(knee_girth(body, cut)) - float(hem)) / SHANK
    ordered = (_near("finished_hem_girth", tape, hem, slack, slack, "Round one leg; over a shaped hem where the leg is whole."),) if cut.hem_girth or (is_full(cut) and cut.leg != "culottes") else ()
    measured = body.has("heel_ankle_girth")
    return (
        *knee,
        *ordered,
        at_least("hem_passes_foot", tape, foot, "The hem must go over heel and instep; else it needs a slit or zip.", advice=not measured),
        *(() if is_full(cut) else (_room_at_the_end(body, cut),)),
    )


def thigh(body: Body, cut: Trousers, drawn: float) -> tuple[Want, ...]:
    """Room for a thigh that is known, on the thigh line; `drawn` is the leg there, in cm."""
    if not body.has("thigh_girth"):
        return ()
    tape = Number(drawn, "drawn leg on the thigh line, 2.5 cm under the crotch line")
    return (at_least("thigh_has_room", tape, body.value("thigh_girth") + thigh_ease(cut)[0], "The thigh and its least room by the fit; where the forks at their limit do not give it, choose a wider fit or more ease at the hip.", advice=True),)


def _room_at_the_end(body: Body, cut: Trousers) -> Want:
    """Room for the leg where a shorter trouser leg ends."""
    inside = inside_leg(body.outside_leg_length - body.body_rise, cut)
    under = leg(body)
    round_leg = leg_girth(body, under, float(under.floor - body.body_rise - inside))
    return at_least("hem_passes_leg", Girth("hem", LEGS, 1), round_leg + LEAST_AT_LEG, "Round the leg there, and 2 cm to move.", advice=True)


def crotch(body: Body, cut: Trousers, tape: Tapes) -> tuple[Want, ...]:
    """The crotch seam over a crotch length that was measured; at another waist it is the longer or shorter for it twice."""
    if not body.taken("total_crotch_length"):
        return ()
    there = body.value("total_crotch_length") + 2 * cut.waist_position
    low, high = crotch_band(cut)
    told = "The crotch length to the trousers' top, and the room of the fit; where forks, raise and seat angle at their limits do not reach it, measure it again, and sew a toile."
    return (Want(name="crotch_seam_length", measuring=tape.crotch, wanted=there + (low + high) / 2, low=there + low - 0.05, high=there + high + 0.05, kind="advice", reason=told),)


LEAST_AT_LEG = 2.0


def at_least(name: str, tape: Measuring, least: float, reason: str, *, advice: bool = False) -> Want:
    """A must, or advice, that a length reaches a least one, cm."""
    return Want(name=name, measuring=tape, wanted=float(least), low=float(least), high=inf, kind="advice" if advice else "must", reason=reason)


def lengths(
    body: Body, cut: Trousers, tape: Tapes, band: float, high_side: float, person: Figure
) -> tuple[Want, ...]:
    """Heights of the body against the seams: a slanting seam is a little longer than the height.

    `band` is the depth in cm of a band that is part of the rise; `high_side` how much longer this
    side is than the other. A method whose crotch seam lies deeper than the seated rise says so.
    """
    deeper = MANNERS[cut.method].rise_ease
    rise = body.body_rise + person.rise
    inside = inside_leg(body.outside_leg_length - rise, cut)
    slant = max(0.0, float(body.hip_girth) - 100) / 20
    loose = float(hip_ease(body, cut)) + 2 * (person.hips_front + person.hips_back)
    return (
        _near(
            "crotch_line_depth",
            tape.rise,
            rise + deeper + person.front_raised + cut.waist_position - band,
            0.3,
            0.3,
            "Waist to crotch line at the centre front, less a band that is part of the rise, and the method's own ease.",
        ),
        _near(
            "inside_leg_seam",
            EdgeLength("front", ("inseam",)),
            inside - deeper,
            0.3,
            2.0 + slant,
            "The seam slants and is hollowed, more on a wide body.",
        ),
        _near(
            "outside_leg_seam",
            tape.side,
            rise + inside + high_side + person.side_raised + cut.waist_position,
            0.5,
            3.0 + slant + max(0.0, loose - 4) / 6,
            "The seam goes over the hip.",
        ),
    )


def openings(body: Body, tape: Tapes) -> tuple[Want, ...]:
    """Whether the garment goes over the hips, and a hand into the pocket."""
    least = body.hip_girth + OPENING_OVER_HIP
    passes = CombinedLength((*parts_of(tape.waist), *together(*tape.opens, factor=2.0).parts))
    told = "Waist and twice the opening must reach the hip and 2 cm."
    return at_least("opening_passes_hip", passes, least, told), *((_hand(body),) if tape.mouth else ())


def _hand(body: Body) -> Want:
    least = least_mouth(body.value("hand_girth") if body.has("hand_girth") else None)
    return Want(
        name="pocket_passes_hand",
        measuring=EdgeLength("front", ("pocket_mouth",)),
        wanted=least,
        low=least,
        high=inf,
        reason="Half the hand and 1.5 cm, at least 15 cm.",
    )


def joins(tape: Tapes, person: Figure) -> tuple[Want, ...]:
    """Where seams cross, the lines run on: corners that meet make a straight angle."""
    creased = () if tape.short else ("knee", "hem")
    side, inside = tape.hem_corners
    return (
        _angle(
            "crotch_point_angle",
            (("front", "inseam", "front_crotch"), ("back", "back_crotch", "inseam")),
            3.0,
        ),
        _angle("side_waist_angle", tape.side_corner, 3.0),
        _angle("hem_angle", (("front", side, "hem"), ("back", "hem", side)), 2.0),
        _angle("hem_angle_inside", (("front", "hem", inside), ("back", inside, "hem")), 2.0),
        *(
            _near(
                f"crease_centred_{piece}_{level}",
                CrossShare(piece, level),
                0.0,
                0.3 + abs(person.swing),
                0.3 + abs(person.swing),
                "The leg is centred on its crease.",
            )
            for piece in LEGS
            for level in creased
        ),
    )


def block(
    body: Body, cut: Trousers, front: Trued, back: Trued, level: Frame, person: Figure, tape: Tapes
) -> tuple[Want, ...]:
    """The block's own sanity."""
    girth, forks = float(body.hip_girth), (front.reach, back.reach)
    least, most = fork_shares(cut)
    hung = cut.leg == "culottes"
    hooks = CombinedLength((*together(*tape.back_crotch).parts, *together(*tape.front_crotch, factor=-1.0).parts))
    drawn = "drawn fork to the crotch corner, level"
    return (
        Want(
            name="back_crotch_over_front",
            measuring=hooks,
            wanted=6.0,
            low=2.0 if hung else 4.0,
            high=9.0,
            kind="advice",
            reason="The seat needs the longer half of the crotch seam.",
        ),
        Want(
            name="forks_together",
            measuring=Number(sum(forks), drawn),
            wanted=(0.25 if hung else 0.19) * girth,
            low=least * girth,
            high=most * girth,
            kind="advice",
            reason="25 to 28 % of the hip." if hung else "14 to 22 % of the hip.",
        ),
        Want(
            name="front_fork",
            measuring=Number(forks[0], drawn),
            wanted=(0.42 if hung else 0.34) * sum(forks),
            low=(0.36 if hung else 0.28) * sum(forks),
            high=(0.48 if hung else 0.38) * sum(forks),
            kind="advice",
            reason="Less than half of the forks lies in front." if hung else "A third of the forks lies in front.",
        ),
        Want(
            name="seat_angle",
            measuring=Number(_lean(back), "drawn centre back against the plumb line"),
            wanted=0.0 if hung else 8.0,
            low=0.0 if hung else 4.0,
            high=16.0,
            kind="advice",
            unit="deg",
            reason="Upright for a flat seat, leaning for a full one.",
        ),
        *(() if front.panel.leg.short else (_even_shanks(front, back, level, person, float(knee_girth(body, cut) - hem_girth(body, cut))),)),
    )


SHANK = 35.0
"""A leg is some 35 cm long below the knee."""


def _even_shanks(front: Trued, back: Trued, level: Frame, person: Figure, narrower: float) -> Want:
    """Edges of one length below the knee; on a swung leg one of them slants more than the other."""
    return Want(
        name="hem_to_knee_even",
        measuring=Number(
            _shank_spread(front, back, level),
            "longest less shortest of the four edges between hem and knee line",
        ),
        wanted=0.0,
        low=0.0,
        high=0.05 + abs(person.swing) * (1.5 + abs(narrower) / 4) / SHANK,
        reason="All four edges agree below the knee, but for a swung leg's slant.",
    )


def finished(tape: Tapes) -> tuple[Want, ...]:
    """What a customer is told of the finished garment, besides the checked measures."""
    return tuple(
        _near(name, where, 0.0, 0.0, 0.0, "")
        for name, where in (
            ("waist_girth", tape.waist),
            ("hip_girth", tape.hip),
            ("thigh_girth", Girth("crotch", LEGS, 1)),
            *(() if tape.short else (("knee_girth", Girth("knee", LEGS, 1)),)),
            ("hem_girth", Girth("hem", LEGS, 1)),
            ("inside_leg_seam", EdgeLength("front", ("inseam",))),
            ("outside_leg_seam", tape.side),
            ("crotch_seam_length", tape.crotch),
            *((slit.edges[0], slit) for slit in tape.slit),
        )
    )


def _near(name: str, tape: Measuring, wanted: float, less: float, more: float, reason: str) -> Want:
    wanted = float(wanted)
    return Want(
        name=name,
        measuring=tape,
        wanted=wanted,
        low=wanted - less,
        high=wanted + more,
        reason=reason,
    )


def _angle(name: str, corners: tuple[tuple[str, str, str], ...], slack: float) -> Want:
    return Want(
        name=name,
        measuring=AngleBetween(corners),
        wanted=180.0,
        low=180 - slack,
        high=180 + slack,
        unit="deg",
        reason="Sewn together the line runs on without a corner.",
    )


def _lean(back: Trued) -> float:
    """Angle of the drawn centre back against the plumb line, in degrees."""
    return 90.0 + back.crotch.start_tangent.angle


def _shank_spread(front: Trued, back: Trued, level: Frame) -> float:
    """Longest less shortest of the four edges between hem and knee line, in cm."""
    found = [_below(path, level.knee.y) for p in (front, back) for path in (p.side, p.inseam)]
    return max(found) - min(found)


def _below(path: Path, height: float) -> float:
    i, t = crossing_with_line(path, Point(0, height), Vector(1, 0))[-1]
    return path.split_at(i, t)[1].length()
