"""Bodices, what must come out: wishes from the order and the body alone, and where the tape goes.

Bounds: half a centimetre at the waist, a whole one at the bust, and straight angles within 3 degrees where
seams meet, are the house's own and common practice, no source.
"""

from __future__ import annotations

from math import inf

from drafting.body import Body
from drafting.garments.bodice.assembly import Body as Made
from drafting.garments.bodice.sleeve import Sleeve
from drafting.garments.bodice.spec import Shape
from drafting.pattern import (
    AngleBetween,
    CombinedLength,
    EdgeLength,
    Girth,
    Measuring,
    Number,
    Piece,
    Want,
)

SLACK = 3.0
"""Degrees by which seams that meet may miss a straight line."""


def _near(name: str, tape: Measuring, wanted: float, less: float, more: float, reason: str, *, advice: bool = False) -> Want:
    wanted = float(wanted)
    return Want(name=name, measuring=tape, wanted=wanted, low=wanted - less, high=wanted + more, kind="advice" if advice else "must", reason=reason)


def _straight(name: str, corners: tuple[tuple[str, str, str], ...], *, advice: bool = False) -> Want:
    return Want(name=name, measuring=AngleBetween(corners), wanted=180.0, low=180.0 - SLACK, high=180.0 + SLACK, kind="advice" if advice else "must", unit="deg", reason="Sewn together the line runs on without a corner.")


def waist_tape(panels: tuple[Piece, ...]) -> CombinedLength:
    """The tape along the finished waist."""
    return CombinedLength(tuple((2.0, EdgeLength(p.name, ("waist",))) for p in panels))


def neck_tape() -> CombinedLength:
    """The tape along the finished neckline, from centre to centre."""
    return CombinedLength(tuple((2.0, EdgeLength(n, ("neckline",))) for n in ("back", "front")))


def wants(body: Body, cut: Shape, made: Made, sleeve: Sleeve | None, bust: float, ease: float, loose: float) -> tuple[Want, ...]:
    """All wishes of a bodice but those of its lower edge; `bust` is the drawn girth at the bust line, cm."""
    backs = [p for p in made.panels if p.name.startswith("back")]
    fronts = [p for p in made.panels if p.name.startswith("front")]
    outer_back, outer_front = backs[-1].name, fronts[0].name
    waist = _near("finished_waist_girth", waist_tape(made.panels), body.waist_girth + cut.waist_ease + loose, 0.5, 0.5, "Body and ease.")
    under = "armhole_under" if sleeve is not None else "armhole"
    return (
        _near("finished_bust_girth", Number(bust, "twice the half on the bust line, the bust dart closed"), float(body.bust_girth) + ease, 1.0, 1.0, "Body and ease."),
        waist,
        _straight("underarm_angle", ((outer_front, _last_of(fronts[0], under), "side"), (outer_back, "side", _last_of(backs[-1], under)))),
        _straight("side_waist_angle", ((outer_front, "side", "waist"), (outer_back, "waist", "side"))),
        *_shoulder_angles(backs, fronts),
        *(() if sleeve is None else _sleeve(body, cut, made, sleeve)),
    )


def _last_of(piece: Piece, name: str) -> str:
    return name if any(e.name == name for e in piece.edges) else "armhole"


def _shoulder_angles(backs: list[Piece], fronts: list[Piece]) -> tuple[Want, ...]:
    """At the neck and at the armhole front and back meet in one line."""
    neck = _straight("shoulder_neck_angle", (("front", "neckline", "shoulder"), ("back", "shoulder", "neckline")))
    back, front = next(p for p in reversed(backs) if _shouldered(p)), next(p for p in fronts if _shouldered(p))
    arm = _straight("shoulder_armhole_angle", ((front.name, _shouldered(front), _after(front)), (back.name, _before(back), _shouldered(back))))
    return neck, arm


def _shouldered(piece: Piece) -> str:
    names = [e.name for e in piece.edges]
    return next((n for n in ("shoulder_side", "shoulder") if n in names), "")


def _after(piece: Piece) -> str:
    names = [e.name for e in piece.edges]
    return names[(names.index(_shouldered(piece)) + 1) % len(names)]


def _before(piece: Piece) -> str:
    names = [e.name for e in piece.edges]
    return names[names.index(_shouldered(piece)) - 1]


def _sleeve(body: Body, cut: Shape, made: Made, sleeve: Sleeve) -> tuple[Want, ...]:
    caps = EdgeLength("sleeve", ("cap_front_under", "cap_front", "cap_back", "cap_back_under"))
    holes = tuple((-1.0, EdgeLength(p.name, (e.name,))) for p in made.panels for e in p.edges if e.name.startswith("armhole"))
    most = max(cut.cap_ease, sleeve.cap.ease if "ease" in sleeve.cap.gave else cut.cap_ease)
    hand = body.value("hand_girth") if body.has("hand_girth") else body.value("wrist_girth")
    passes = _least("hem_passes_hand", EdgeLength("sleeve", ("hem",)) if made.cuff is None else EdgeLength("cuff", ("sleeve_edge",)), hand, "The hand goes through the hem.")
    return (
        Want(name="cap_ease", measuring=CombinedLength(((1.0, caps), *holes)), wanted=cut.cap_ease, low=cut.cap_ease - 0.05, high=most + 0.05, reason="Cap over armhole, eased in between the notches."),
        _least("sleeve_width", Girth("underarm", ("sleeve",), 1), body.value("upper_arm_girth") + min(2.5, cut.arm_ease), "Room to bend the arm."),
        *((passes,) if cut.sleeve == "long" else ()),
        _straight("sleeve_underarm_angle", (("sleeve", "front_seam", "cap_front_under"), ("sleeve", "cap_back_under", "back_seam"))),
    )


def _least(name: str, tape: Measuring, least: float, reason: str) -> Want:
    return Want(name=name, measuring=tape, wanted=float(least), low=float(least), high=inf, reason=reason)


def armhole_advice(body: Body, armhole: float, ease: float) -> Want:
    """The armhole against what close blocks have for such a bust, cm."""
    usual = 0.335 * float(body.bust_girth) + 13.5
    slack = 4.0 + max(0.0, (ease - 12) / 2)
    return _near("armhole_girth", Number(armhole, "both armhole edges, darts closed"), usual, slack, slack, "Close blocks have about a third of the bust and 13.5 cm.", advice=True)


def told(made: Made, sleeve: Sleeve | None, bust: float) -> tuple[Want, ...]:
    """What a customer is told of the finished garment."""
    rows: list[tuple[str, Measuring]] = [("bust_girth", Number(bust, "")), ("waist_girth", waist_tape(made.panels)), ("neckline", neck_tape())]
    backs = [p for p in made.panels if p.name.startswith("back")]
    rows.append(("side_seam", EdgeLength(backs[-1].name, ("side",))))
    if sleeve is not None:
        rows += [("sleeve_seam", EdgeLength("sleeve", ("front_seam",))), ("sleeve_hem", EdgeLength("sleeve", ("hem",)))]
    return tuple(_near(name, tape, 0.0, 0.0, 0.0, "") for name, tape in rows)
