"""Knit top, the bands of rib: neckband, armhole bands, cuffs, hem band.

Source: as in `craft.stretch_band`.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from drafting.body import Body
from drafting.craft.sheet import DraftSheet
from drafting.craft.stretch_band import (
    BINDING_SHARE,
    CUFF_SHARE,
    HEM_SHARE,
    ring_band,
    ring_closed,
    shortest_passing,
)
from drafting.garments.knit_top.body_pieces import Panel
from drafting.garments.knit_top.frame import BINDING, least_girth
from drafting.garments.knit_top.neck import neckband_length
from drafting.garments.knit_top.sleeve import OVER_HAND, SleeveLines, hand
from drafting.garments.knit_top.spec import KnitTop, cuff_depth, has_sleeve, hem_band_depth
from drafting.pattern import Ease, Piece, Seam, SeamPart
from drafting.trace import Length


@dataclass(frozen=True, slots=True, kw_only=True)
class Ring:
    """A band: its piece, the seams that close it, and the one that sews it on."""

    piece: Piece
    closing: tuple[Seam, ...]
    joining: Seam

    @property
    def length(self) -> float:
        """Length of its finished edge's seam, cm."""
        return self.piece.edge("edge").path.length()


def onto(name: str, edge: tuple[SeamPart, ...], long: float, piece: Piece, length: float) -> Ring:
    """A band sewn on while it is stretched to the edge."""
    full = long - length
    ease = Ease("stretch", full, full, full)
    return Ring(piece=piece, closing=ring_closed(piece.name), joining=Seam(name, edge, (SeamPart(piece.name, "edge"),), ease))


def _around(edge: str, *, against: bool) -> tuple[SeamPart, ...]:
    """A level edge of back and front, walked from the centre back round the body."""
    return tuple(SeamPart(p, edge, "both", 2, reversed=against) for p in ("back", "front"))


def _quarters(back: float, front: float, length: float) -> tuple[tuple[str, float], ...]:
    """Where a ring that is joined at the centre back meets the shoulders or sides, and the centre front."""
    share = length / (2 * (back + front))
    return tuple((f"joint-{n}", at * share) for n, at in enumerate((back, back + front, back + 2 * front), 1))


def neckband(body: Body, panels: tuple[Panel, Panel], cut: KnitTop, sheet: DraftSheet) -> Ring:
    """The neckband, joined at the centre back, or at the point of a V."""
    back, front = (p.neck.length() for p in panels)
    seam = sheet.length("neckline", Length(2 * (back + front)), "Back and front, read off the draft.")
    length = float(sheet.length("neckband", neckband_length(float(seam), body, cut), "Shorter than its seam, so that it lies against the neck; stretched it passes the head."))
    if cut.neckline == "round":
        piece = ring_band("neckband", "Neckband", length, cut.neckband, _quarters(back, front, length))
        return onto("neck", _around("neck", against=True), float(seam), piece, length)
    share = length / float(seam)
    places = tuple((f"joint-{n}", at * share) for n, at in enumerate((front, front + back, front + 2 * back), 1))
    angle = abs(math.radians(panels[1].neck.start_tangent.angle_to(panels[1].centre.start_tangent)))
    mitre = cut.neckband / math.tan(math.pi - angle)
    piece = ring_band("neckband", "Neckband", length, cut.neckband, places, mitre=mitre)
    edge = tuple(SeamPart(p, "neck", "both", 2) for p in ("front", "back"))
    return onto("neck", edge, float(seam), piece, length)


def armhole_band(panels: tuple[Panel, Panel], sheet: DraftSheet) -> Ring:
    """The band on a bare armhole, joined under the arm."""
    back, front = (p.armhole for p in panels)
    seam = sheet.length("armhole", Length(back + front), "Back and front, read off the draft.")
    length = float(sheet.length("armhole band", seam * BINDING_SHARE, "Shorter, so that it lies against the arm."))
    piece = ring_band("armhole_band", "Armhole band", length, BINDING, (("joint-1", back * BINDING_SHARE),), copies=2)
    edge = (
        SeamPart("back", "armhole_under"), SeamPart("back", "armhole"),
        SeamPart("front", "armhole"), SeamPart("front", "armhole_under"),
    )
    return onto("armhole_band", edge, float(seam), piece, length)


def cuff(body: Body, sleeve: SleeveLines, cut: KnitTop, sheet: DraftSheet) -> Ring:
    """The cuff: shorter than the sleeve's end, and stretched it passes the hand or the arm."""
    seam = sleeve.hem.length()
    girth = hand(body) + OVER_HAND if cut.sleeve == "long" else body.value("upper_arm_girth") * (1.0 if cut.sleeve == "short" else 0.86)
    least = shortest_passing(girth, cut.neckband_stretch) if cut.sleeve == "long" else least_girth(girth, cut.neckband_stretch)
    length = float(sheet.length("cuff", min(max(CUFF_SHARE * seam, least), seam), "Draws the sleeve in, and still passes."))
    piece = ring_band("cuff", "Rib cuff", length, cuff_depth(cut), copies=2)
    return onto("cuff", (SeamPart("sleeve", "hem"),), seam, piece, length)


def hem_band(body: Body, panels: tuple[Panel, Panel], cut: KnitTop, sheet: DraftSheet) -> Ring:
    """The hem band: shorter than the body's edge, and stretched it goes over what lies under it."""
    back, front = (p.hem.length() for p in panels)
    seam = 2 * (back + front)
    least = least_girth(max(body.value("hip_girth"), body.value("waist_girth")), cut.neckband_stretch)
    length = float(sheet.length("hem band", min(max(HEM_SHARE * seam, least), seam), "Draws the hem in, and still goes over the hips."))
    piece = ring_band("hem_band", "Hem band", length, hem_band_depth(cut), _quarters(back, front, length))
    return onto("hem", _around("hem", against=False), seam, piece, length)


def bands(body: Body, panels: tuple[Panel, Panel], sleeve: SleeveLines | None, cut: KnitTop, sheet: DraftSheet) -> dict[str, Ring]:
    """All bands of the top, by name, in the order in which they are cut."""
    sheet.heading("Bands", "common practice, no source")
    found = {"neckband": neckband(body, panels, cut, sheet)}
    if not has_sleeve(cut):
        found["armhole_band"] = armhole_band(panels, sheet)
    if sleeve is not None and cut.sleeve_end == "cuff":
        found["cuff"] = cuff(body, sleeve, cut, sheet)
    if cut.hem == "band":
        found["hem_band"] = hem_band(body, panels, cut, sheet)
    return found
