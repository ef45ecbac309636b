"""Bodices, the order of assembly: darts, panels, shoulders, sides, facings, sleeves, opening, hem.

Source: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.craft.assembling import Assembling
from drafting.craft.sleeve_cap import Cap
from drafting.garments.bodice.spec import Opening
from drafting.pattern import Ease, Piece, Seam, SeamPart


@dataclass(frozen=True, slots=True, kw_only=True)
class Body:
    """The pieces of a bodice, by what they are.

    Attributes:
        panels: From the centre back to the centre front.
        neck_facings: Back and front.
        armhole_facings: Back and front; () with sleeves.
        sleeve: The sleeve; None without.
        cap: Its cap.
        cuff: Its cuff; None without.
        opening: Where it opens.
        button_facing: The facing of the edges under the buttons; None with a zip.
    """

    panels: tuple[Piece, ...]
    neck_facings: tuple[Piece, Piece]
    armhole_facings: tuple[Piece, ...]
    sleeve: Piece | None
    cap: Cap | None
    opening: Opening
    button_facing: Piece | None
    cuff: Piece | None = None

    @property
    def at_back(self) -> bool:
        """Whether it opens at the back."""
        return self.opening.startswith("back")

    @property
    def opened(self) -> str:
        """Name of the panel that opens."""
        return "back" if self.at_back else "front"


def _has(piece: Piece, edge: str) -> bool:
    return any(e.name == edge for e in piece.edges)


def _parts(pieces: tuple[Piece, ...], edges: tuple[str, ...]) -> tuple[SeamPart, ...]:
    """The first of those edges that each piece has, each copy by itself."""
    return tuple(SeamPart(p.name, e) for p in pieces for e in edges if _has(p, e))


def neck_parts(body: Body, back: Piece, front: Piece, *, whole: bool) -> tuple[SeamPart, ...]:
    """The neckline all round from the opening; `whole` with the stand's top."""
    stand = (SeamPart(body.opened if whole else (back if body.at_back else front).name, "stand_top", "both", 2, reversed=body.at_back),) if body.button_facing else ()
    neck = (SeamPart(back.name, "neckline", "both", 2, reversed=body.at_back), SeamPart(front.name, "neckline", "both", 2, reversed=body.at_back))
    return (*stand, *(neck if body.at_back else tuple(reversed(neck))))


def panel_seams(body: Body) -> tuple[Seam, ...]:
    """Princess seams, each from the top down."""
    names = {p.name for p in body.panels}
    rows = (("princess_back", "back", "back_side"), ("princess_front", "front_side", "front"))
    return tuple(Seam(n, (SeamPart(a, n, reversed=True),), (SeamPart(b, n),)) for n, a, b in rows if {a, b} <= names)


def shoulder_seam(body: Body) -> Seam:
    """From the neck outward: back over front."""
    backs, fronts = _halves(body)
    one = (*_reversed(_parts(backs, ("shoulder",))), *_reversed(_parts(backs, ("shoulder_side",))))
    two = (*_parts(fronts, ("shoulder",)), *_parts(fronts, ("shoulder_side",)))
    longer = _sewn(body, one) - _sewn(body, two)
    ease = Ease("ease", longer, longer, longer) if longer > 0.05 else Ease()
    return Seam("shoulder", one, two, ease)


def _halves(body: Body) -> tuple[tuple[Piece, ...], tuple[Piece, ...]]:
    backs = tuple(p for p in body.panels if p.name.startswith("back"))
    return backs, tuple(reversed(tuple(p for p in body.panels if p.name.startswith("front"))))


def _reversed(parts: tuple[SeamPart, ...]) -> tuple[SeamPart, ...]:
    return tuple(SeamPart(p.piece, p.edge, p.copy, p.count, reversed=True) for p in parts)


def _sewn(body: Body, parts: tuple[SeamPart, ...]) -> float:
    table = {p.name: p for p in (*body.panels, *body.neck_facings, *body.armhole_facings, *((body.sleeve,) if body.sleeve else ()))}
    return float(sum(table[p.piece].sewn_length(p.edge) for p in parts))


def side_seam(body: Body) -> Seam:
    """From the underarm down."""
    backs, fronts = _halves(body)
    return Seam("side", _reversed(_parts(backs, ("side",))), _parts(fronts, ("side",)))


def armhole_parts(pieces: tuple[Piece, ...], edge: str, *, back: bool) -> tuple[SeamPart, ...]:
    """A stretch of an armhole, from the shoulder down; `edge` is "armhole" or "armhole_under"."""
    names = ("armhole_over", "armhole") if edge == "armhole" else (edge,)
    found = tuple(SeamPart(p.name, n) for n in names for p in pieces if _has(p, n))
    return _reversed(found) if back else found


def sleeve_seams(body: Body) -> tuple[Seam, ...]:
    """The sleeve set in: plain under the arm, eased between the notches."""
    if body.cap is None or body.sleeve is None:
        return ()
    backs, fronts = _halves(body)
    front, back = body.cap.front_ease, body.cap.ease - body.cap.front_ease
    rows = (
        ("armhole_front_under", "cap_front_under", armhole_parts(fronts, "armhole_under", back=False), 0.0),
        ("armhole_front", "cap_front", armhole_parts(fronts, "armhole", back=False), front),
        ("armhole_back", "cap_back", armhole_parts(backs, "armhole", back=True), back),
        ("armhole_back_under", "cap_back_under", armhole_parts(backs, "armhole_under", back=True), 0.0),
    )
    return tuple(
        Seam(name, (SeamPart("sleeve", cap, reversed="front" in name),), two, Ease("ease", ease, ease, ease) if ease > LEAST_EASE else Ease())
        for name, cap, two, ease in rows
    )


LEAST_EASE = 1e-3


def sewing(body: Body) -> tuple[Assembling | None, ...]:
    """All steps but the waist's."""
    zipped = body.button_facing is None
    darts = tuple(p.name for p in body.panels if p.darts)
    panels = panel_seams(body)
    return (
        Assembling("Fuse the facings and the edges of the opening; transfer notches and dart points; neaten the edges."),
        Assembling("Sew the darts; press those of shoulder and waist toward the centre, bust darts down.", (), darts) if darts else None,
        Assembling("Sew the princess seams, notch to notch; clip and press them open.", panels) if panels else None,
        _opening(body) if zipped else None,
        Assembling("Sew the shoulder seams and press them open.", (shoulder_seam(body),)),
        Assembling("Sew the side seams and press them open.", (side_seam(body),)),
        Assembling("Sew the shoulder seams of the neck facing; neaten its lower edge.", (neck_facing_shoulder(body),)),
        _button_edges(body) if not zipped else None,
        Assembling("Sew the facing to the neckline, clip, turn it in and understitch it." if zipped else "Sew the facing round the neckline, clip, turn it in and understitch it.", (neckline_seam(body),)),
        Assembling("Fell the facing's ends down to the tape of the zip.", facing_zip(body)) if zipped else None,
        *arm_steps(body),
        Assembling("Make the buttonholes and sew on the buttons.") if not zipped else None,
    )


def neckline_seam(body: Body) -> Seam:
    """The neck facing to the neckline, all round from the opening."""
    return Seam("neckline", neck_parts(body, *_neck_pieces(body), whole=True), neck_parts(body, *body.neck_facings, whole=False))


def neck_facing_shoulder(body: Body) -> Seam:
    """The shoulder seams of the neck facing."""
    back, front = body.neck_facings
    return Seam("neck_facing_shoulder", (SeamPart(back.name, "shoulder", reversed=True),), (SeamPart(front.name, "shoulder"),))


def _neck_pieces(body: Body) -> tuple[Piece, Piece]:
    return body.panels[0], body.panels[-1]


def _opening(body: Body) -> Assembling:
    seam = Seam("zip", (SeamPart(body.opened, "zip", "right"),), (SeamPart(body.opened, "zip", "left"),))
    return Assembling("Set in the separating zip along the whole centre back." if body.at_back else "Set in the separating zip along the whole centre front.", (seam,))


def facing_zip(body: Body) -> tuple[Seam, ...]:
    """The ends of the neck facing at the zip."""
    facing = body.neck_facings[0 if body.at_back else 1]
    return (Seam("neck_facing_zip", (SeamPart(facing.name, "zip", "right"),), (SeamPart(facing.name, "zip", "left"),)),)


def _button_edges(body: Body) -> Assembling:
    facing = body.neck_facings[0 if body.at_back else 1]
    seam = Seam("opening_edge", (SeamPart(body.opened, "edge"),), (SeamPart(facing.name, "edge"),))
    return Assembling("Sew the facing to the edges of the opening.", (seam,))


def _cuff_seams(sleeve: Piece, cuff: Piece) -> tuple[Seam, ...]:
    """The cuff closed, and the sleeve gathered into it."""
    full = sleeve.sewn_length("hem") - cuff.sewn_length("sleeve_edge")
    ends = Seam("cuff_ends", (SeamPart("cuff", "end"),), (SeamPart("cuff", "other_end", reversed=True),))
    return ends, Seam("cuff", (SeamPart("sleeve", "hem"),), (SeamPart("cuff", "sleeve_edge", reversed=True),), Ease("gathers", full, full, full))


def arm_steps(body: Body) -> tuple[Assembling | None, ...]:
    """Sleeves made up and set in, or armholes faced."""
    if body.sleeve is None:
        back, front = body.armhole_facings
        backs, fronts = _halves(body)
        round_arm = Seam(
            "armhole",
            (*_reversed(tuple(reversed(armhole_parts(fronts, "armhole", back=False)))), *armhole_parts(backs, "armhole", back=True)),
            (SeamPart(front.name, "armhole", reversed=True), SeamPart(back.name, "armhole", reversed=True)),
        )
        sides = Seam("armhole_facing_side", (SeamPart(back.name, "side", reversed=True),), (SeamPart(front.name, "side"),))
        shoulders = Seam("armhole_facing_shoulder", (SeamPart(back.name, "shoulder", reversed=True),), (SeamPart(front.name, "shoulder"),))
        return (
            Assembling("Sew the shoulder and side seams of the armhole facings; neaten their edges.", (shoulders, sides)),
            Assembling("Sew the facings to the armholes, clip, turn them in and understitch them.", (round_arm,)),
        )
    seam = Seam("sleeve_seam", (SeamPart("sleeve", "back_seam"),), (SeamPart("sleeve", "front_seam", reversed=True),))
    return (
        Assembling("Sew the darts at the elbows and press them down.", (), ("sleeve",)) if body.sleeve.darts else None,
        Assembling("Sew the sleeve seams and press them open; turn up the sleeve hems." if body.cuff is None else "Sew the sleeve seams and press them open.", (seam,)),
        None if body.cuff is None else Assembling("Close the cuffs, gather the sleeves into them, fold them in and fell them down.", _cuff_seams(body.sleeve, body.cuff)),
        Assembling("Run two rows of ease stitches over the cap; set in the sleeve, notch to notch, without a pleat.", sleeve_seams(body)),
    )
