"""A shirt, the order of assembly: small parts, fronts, back, shoulders, collar, sleeves, sides, cuffs, hem.

The sleeve is set flat, before the side and the sleeve seam are sewn in one run.

Source: common practice, no source; a factory's sections of a shirt (small parts first, then fronts,
back, sleeves, collar and cuffs, then assembly).
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.craft.assembling import Assembling, in_order
from drafting.craft.cuff import cuff_closed, cuff_seams
from drafting.craft.sleeve_cap import CAP_EDGES, Cap
from drafting.craft.sleeve_placket import Placket
from drafting.garments.shirt.pieces import OVER_SHOULDER
from drafting.garments.shirt.spec import Shirt, ShirtLap
from drafting.pattern import Ease, Seam, SeamPart, SewingStep

EASED_SHOULDER = 0.6
"""The front shoulder may be up to 6 mm longer than the yoke's."""


@dataclass(frozen=True, slots=True)
class Made:
    """What the order of assembly goes by.

    Attributes:
        cap: The sleeve's cap.
        placket: The sleeve's slit; None in a short sleeve.
        shoulder: Front shoulder less the yoke's, cm.
        dart: Whether the fronts have a bust dart.
        forward: Whether the yoke's armhole goes on before the shoulder's ridge.
    """

    cap: Cap
    placket: Placket | None
    shoulder: float
    dart: bool
    forward: bool


def assembly(cut: Shirt, made: Made) -> tuple[tuple[Seam, ...], tuple[SewingStep, ...]]:
    """All seams in sewing order, and the steps that close them."""
    band, leaf, long = cut.front_edge == "band", cut.collar != "stand", made.placket is not None
    return in_order((
        Assembling("Fuse what is marked fusible; transfer notches, buttons, buttonholes and pocket places."),
        Assembling("Sew the two leaves together along their fronts and outer edge; trim, turn, press and topstitch.", _leaf()) if leaf else None,
        Assembling("Turn the inside stand's neck edge under; sew the leaf between the two stands, and on round their ends; turn and press.", _stands(leaf=True)) if leaf else None,
        None if leaf else Assembling("Turn the inside stand's neck edge under; sew the two stands together along the top and round their ends; turn and press.", _stands(leaf=False)),
        Assembling("Turn the inside cuffs' sleeve edges under; sew them to the cuffs along their ends and free edge; turn, press and topstitch.", cuff_closed()) if long else None,
        Assembling("Sew the bust darts and press them down.", (), ("front",)) if made.dart else None,
        Assembling(POCKETS[cut.chest_pocket or "none"]) if cut.chest_pocket != "none" else None,
        Assembling("Sew the bands to the fronts, fold them in half, turn their inside edges under and topstitch.", (Seam("front_band", (SeamPart("front_band", "front_edge"),), (SeamPart("front", "band_seam", reversed=True),)),)) if band else Assembling("Fold the facings in along the fronts' edges; neaten their edges, press, and stitch them down."),
        Assembling(BACKS[cut.back_pleat], (Seam("yoke", (SeamPart("yoke", "foot", "both", 2),), (SeamPart("back", "yoke_seam", "both", 2, reversed=True),)),)),
        Assembling("Sew the shoulders to the yoke; fold the inside yoke over them and stitch it down.", (_shoulder(made.shoulder),)),
        Assembling("Sew the stand to the neck; stitch its inside down over the seam.", (_neck(band=band),)),
        Assembling(SLITS[made.placket.kind]) if made.placket else None,
        Assembling("Set in the sleeves while the sides are open, and topstitch the armholes.", _armhole(made.cap, forward=made.forward)),
        Assembling("Sew sleeve and side in one run from the sleeve's end to the hem.", _sides()),
        Assembling("Lay the wrist's pleats toward the slit; sew the cuffs on and stitch their insides down.", cuff_seams(made.placket, WRIST)) if made.placket else Assembling("Turn the sleeves' hems in twice and stitch them."),
        Assembling("Turn the hem in twice, narrow, and stitch it."),
        Assembling(BUTTONS[cut.lap or "left_over_right", long]),
        Assembling(POINTS) if cut.collar == "button_down" else None,
    ))


POCKETS = {
    "left": "Hem the pocket's top, press its other edges in and stitch it to the left front.",
    "both": "Hem the pockets' tops, press their other edges in and stitch them to the fronts.",
}
BACKS = {
    "none": "Sew the back between the yoke and its inside.",
    "centre": "Lay the box pleat at the centre back; sew the back between the yoke and its inside.",
    "sides": "Lay the back's side pleats toward the armholes; sew the back between the yoke and its inside.",
}
SLITS = {
    "tower": "Sew the slits: the under strip to the side of the back seam, the over strip to the other side; box it above the slit.",
    "bound": "Bind the slits with their strips; fold the strip in on the side toward the front.",
}
BUTTONS: dict[tuple[ShirtLap, bool], str] = {
    ("left_over_right", True): "Work the buttonholes in the left front, the stand's left end and the cuffs; sew the buttons on.",
    ("right_over_left", True): "Work the buttonholes in the right front, the stand's right end and the cuffs; sew the buttons on.",
    ("left_over_right", False): "Work the buttonholes in the left front and the stand's left end; sew the buttons on.",
    ("right_over_left", False): "Work the buttonholes in the right front and the stand's right end; sew the buttons on.",
}
"""By the lap, and whether there are cuffs."""
POINTS = "Work a buttonhole in each collar point; sew their buttons to the fronts where the points lie."


def _leaf() -> tuple[Seam, ...]:
    """The two leaves, cut of one piece, sewn to each other."""
    return tuple(
        Seam(f"collar_{edge}", (SeamPart("collar", edge, "both", 2),), (SeamPart("collar", edge, "both", 2),))
        for edge in ("front", "outer")
    )


def _stands(*, leaf: bool) -> tuple[Seam, ...]:
    own, inside = (SeamPart(piece, "top", "both", 2) for piece in ("collar_stand", "collar_stand_inside"))
    ends = Seam("stand_ends", (SeamPart("collar_stand", "front_end", "both", 2),), (SeamPart("collar_stand_inside", "front_end", "both", 2),))
    if not leaf:
        return Seam("stand_top", (own,), (inside,)), ends
    seam = SeamPart("collar", "stand_seam", "both", 2, reversed=True)
    return Seam("leaf_to_stand", (own,), (seam,)), Seam("leaf_to_stand_inside", (inside,), (seam,)), ends


def _shoulder(longer: float) -> Seam:
    ease = Ease("ease", longer, 0.0, EASED_SHOULDER) if longer > 1e-6 else Ease()
    return Seam("shoulder", (SeamPart("front", "shoulder"),), (SeamPart("yoke", "shoulder", reversed=True),), ease)


def _neck(*, band: bool) -> Seam:
    """The stand to the fronts and the yoke, from the right front's edge round to the left one's."""
    front = (SeamPart("front_band", "top", "both", 2),) if band else (SeamPart("front", "overlap", "both", 2),)
    body = (*front, SeamPart("front", "neck", "both", 2), SeamPart("yoke", "neck", "both", 2))
    stand = tuple(SeamPart("collar_stand", edge, "both", 2, reversed=True) for edge in ("overlap", "neck"))
    return Seam("neck", stand, body)


def _armhole(cap: Cap, *, forward: bool) -> tuple[Seam, ...]:
    """The sleeve's seams round the armhole, from the front underarm over the shoulder."""
    over = (SeamPart("yoke", OVER_SHOULDER, reversed=True),) if forward else ()
    low, front, back, last = (SeamPart("sleeve", edge) for edge in CAP_EDGES)
    yoke, behind = (SeamPart(piece, "armhole", reversed=True) for piece in ("yoke", "back"))
    return (
        Seam("armhole_front_under", (low,), (SeamPart("front", "armhole_under", reversed=True),)),
        Seam("armhole_front", (front,), (SeamPart("front", "armhole", reversed=True), *over), _eased(cap.front_ease)),
        Seam("armhole_back", (back,), (yoke, behind), _eased(cap.ease - cap.front_ease)),
        Seam("armhole_back_under", (last,), (SeamPart("back", "armhole_under", reversed=True),)),
    )


def _eased(ease: float) -> Ease:
    return Ease("ease", ease, ease, ease) if ease > 1e-7 else Ease()


def _sides() -> tuple[Seam, ...]:
    sleeve = Seam("sleeve", (SeamPart("sleeve", "front_seam"),), (SeamPart("sleeve", "back_seam", reversed=True),))
    return sleeve, Seam("side", (SeamPart("front", "side"),), (SeamPart("back", "side", reversed=True),))


WRIST = (SeamPart("sleeve", "wrist_back", reversed=True), SeamPart("sleeve", "wrist_front", reversed=True))
"""The sleeve's lower edge, from the slit's back round to its front."""
