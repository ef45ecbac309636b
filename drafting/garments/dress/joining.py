"""A skirt taken off its waistband and joined to a bodice: names, seams, darts that meet.

Source: the darts of bodice and skirt meet in the waist seam, the skirt's are moved; side seams meet side
seams: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass, fields, is_dataclass, replace
from typing import Any

from drafting.craft.darts import PlannedDart
from drafting.craft.sheet import DraftSheet
from drafting.garments.skirts.block import Moving, Panel
from drafting.geometry import nearest
from drafting.pattern import (
    Dart,
    Ease,
    EdgeLength,
    Girth,
    Pattern,
    Piece,
    Seam,
    SeamPart,
    SewingStep,
    Want,
)

WAISTS = ("waistband", "facing_", "band_")
"""How the names of pieces begin that finish a skirt's own waist."""

WORD = "skirt"

LEAST_FROM_SIDE = 2.0
"""A moved dart stays at least 2 cm from the side seam. House method."""

SHARED = frozenset({"side_waist_angle"})
"""Wishes that the bodice has too: the skirt's are called by its word."""

REPLACED = frozenset({"finished_waist_girth", "opening_passes_hip"})
"""Wishes of the skirt that the dress makes itself."""


@dataclass(frozen=True, slots=True)
class Skirt:
    """A skirt without its waist.

    Attributes:
        pieces: Its pieces, called by the word and their own name.
        waist: Its waist as it is walked from the centre back zip round the body.
        ease: How the waist was held to its band: kind only.
        seams: Its seams but those of the waist.
        sewing: The steps that close them.
        wants: What it must measure.
        told: What a customer is told of it.
        zip: Length in cm of the stretch that the zip joins.
        pattern: The skirt as its chapter made it.
    """

    pieces: tuple[Piece, ...]
    waist: tuple[SeamPart, ...]
    ease: Ease
    seams: tuple[Seam, ...]
    sewing: tuple[SewingStep, ...]
    wants: tuple[Want, ...]
    told: tuple[Want, ...]
    zip: float
    pattern: Pattern


def taken_off(pattern: Pattern) -> Skirt:
    """Take a skirt off its waistband or facing, and give its pieces and seams names of their own."""
    gone = {p.name for p in pattern.pieces if p.name.startswith(WAISTS)}
    kept = tuple(p for p in pattern.pieces if p.name not in gone)
    names = {p.name: f"{WORD}_{p.name}" for p in kept}
    waist = next(s for s in pattern.seams if s.name == "waist")
    side = waist.one if all(p.piece in names for p in waist.one) else waist.two
    seams = tuple(s for s in pattern.seams if s.name != "waist" and all(p.piece in names for p in (*s.one, *s.two)))
    table = {s.name: f"{WORD}_{s.name}" for s in seams}
    steps = tuple(
        SewingStep(step.text, tuple(table[n] for n in step.seams if n in table), tuple(names[d] for d in step.darts if d in names))
        for step in pattern.sewing
    )
    opened = next(p for p in kept if any(e.name == "zip" for e in p.edges))
    return Skirt(
        pieces=tuple(replace(p, name=names[p.name], notches=tuple(n for n in p.notches if n.edge != "waist")) for p in kept),
        waist=_called(side, names),
        ease=waist.ease,
        seams=tuple(Seam(table[s.name], _called(s.one, names), _called(s.two, names), s.ease) for s in seams),
        sewing=tuple(s for s in steps if s.seams or s.darts),
        wants=tuple(_renamed(w, names) for w in pattern.wants if w.name not in REPLACED and _speaks_of(w) <= names.keys()),
        told=tuple(_renamed(w, names) for w in pattern.finished_measurements if w.name != "waist_girth" and _speaks_of(w) <= names.keys()),
        zip=opened.edge("zip").path.length(),
        pattern=pattern,
    )


def _called(parts: tuple[SeamPart, ...], names: dict[str, str]) -> tuple[SeamPart, ...]:
    return tuple(replace(p, piece=names[p.piece]) for p in parts)


def _speaks_of(value: Any) -> set[str]:
    """Names of all pieces that a wish or a way to measure speaks of."""
    match value:
        case EdgeLength():
            return {value.piece}
        case Girth():
            return {*value.pieces, *value.under}
        case tuple():
            return set().union(*(_speaks_of(v) for v in value)) if value else set()
        case _ if is_dataclass(value):
            told = {getattr(value, f.name) for f in fields(value) if f.name == "piece"}
            corners = {c[0] for c in getattr(value, "corners", ())}
            return set().union(told, corners, *(_speaks_of(getattr(value, f.name)) for f in fields(value) if f.name in {"measuring", "parts", "around"}))
    return set()


def _renamed(want: Want, names: dict[str, str]) -> Want:
    measuring: Any = want.measuring
    name = f"{WORD}_{want.name}" if want.name in SHARED else want.name
    return replace(want, name=name, measuring=_over(measuring, names))


def _over(value: Any, names: dict[str, str]) -> Any:
    """A way to measure with its pieces called by their new names."""
    match value:
        case str():
            return names.get(value, value)
        case tuple():
            return tuple(_over(v, names) for v in value)
        case _ if is_dataclass(value) and not isinstance(value, type):
            changed = {f.name: _over(getattr(value, f.name), names) for f in fields(value) if f.name in {"piece", "pieces", "under", "parts", "corners", "around"}}
            return replace(value, **changed)
    return value


def waist_seam(bodice: tuple[Piece, ...], skirt: Skirt) -> Seam:
    """The seam that joins bodice and skirt, walked from the zip round the body.

    Args:
        bodice: Its panels from the centre back to the centre front.
        skirt: The skirt.
    """
    own = tuple(SeamPart(p.name, "waist", "both", 2) for p in bodice)
    pieces = {p.name: p for p in skirt.pieces}
    below = sum(part.count * pieces[part.piece].sewn_length("waist") for part in skirt.waist)
    above = 2 * sum(p.sewn_length("waist") for p in bodice)
    longer = below - above
    if abs(longer) < PLAIN:
        return Seam("waist", skirt.waist, own)
    if longer > 0:
        kind = skirt.ease.kind if skirt.ease.kind in ("gathers", "ease") else "ease"
        return Seam("waist", skirt.waist, own, Ease(kind, longer, longer, longer))
    return Seam("waist", own, skirt.waist, Ease("stretch", -longer, -longer, -longer))


PLAIN = 0.04
"""cm that a plain seam's sides may differ by, all round."""


def stations(piece: Piece, *, centre_first: bool) -> tuple[float, ...]:
    """Sewn distances in cm from the centre along the waist to each of its darts."""
    whole = piece.sewn_length("waist")
    found, taken = list[float](), 0.0
    for dart in sorted(piece.darts_on("waist"), key=lambda d: _along(piece, d)):
        found.append(_along(piece, dart) - taken)
        taken += dart.intake
    return tuple(found) if centre_first else tuple(sorted(whole - f for f in found))


def _along(piece: Piece, dart: Dart) -> float:
    path = piece.edge("waist").path
    return path.distance_of(*nearest(path, dart.first)[:2])


def meeting(darts: tuple[tuple[float, ...], tuple[float, ...]], waists: tuple[float, float]) -> Moving:
    """Move a skirt's sides and darts to those of a bodice.

    Args:
        darts: How far (sewn, cm) the darts of back and front lie from the centres.
        waists: Sewn waists of the bodice's back and front half, cm.
    """

    def moved(behind: Panel, before: Panel, sheet: DraftSheet) -> tuple[Panel, Panel]:
        sheet.heading("Side and darts moved", "common practice, no source")
        back, front = (_side_moved(p, w, sheet) for p, w in zip((behind, before), waists, strict=True))
        return _moved(back, darts[0], sheet), _moved(front, darts[1], sheet)

    return moved


def _side_moved(panel: Panel, waist: float, sheet: DraftSheet) -> Panel:
    """The whole side line moved, plumb as it is, until the waist is as long as the bodice's."""
    sewn = sheet.length(f"{panel.name} waist of the bodice", waist, "The side seams of bodice and skirt meet.")
    out = 1.0 if panel.side.x > panel.centre.x else -1.0
    by = out * (float(sewn) - float(panel.sewn))
    return replace(
        panel, sewn=sewn,
        side=sheet.point(f"{panel.name} side at the waist, moved", panel.side.nudged(by, 0.0), "Moved with the bodice's side seam."),
        hip_side=sheet.point(f"{panel.name} side at the hip, moved", panel.hip_side.nudged(by, 0.0), "As far."),
        hem_side=sheet.point(f"{panel.name} side at the hem, moved", panel.hem_side.nudged(by, 0.0), "As far."),
    )


def _moved(panel: Panel, wanted: tuple[float, ...], sheet: DraftSheet) -> Panel:
    along, size = (panel.side - panel.centre).unit, panel.centre.distance(panel.side)
    taken, shift, found = 0.0, 0.0, list[PlannedDart]()
    for n, dart in enumerate(panel.darts):
        near, wide = panel.centre.distance(dart.near), dart.near.distance(dart.far)
        shift = wanted[n] + taken - near if n < len(wanted) else shift
        shift = max(LEAST_FROM_SIDE - near, min(shift, size - LEAST_FROM_SIDE - wide - near))
        step = along * shift
        name = f"moved {panel.name} dart {n + 1}"
        places = (("near leg", dart.near), ("far leg", dart.far), ("point", dart.point))
        found.append(PlannedDart(*(sheet.point(f"{name} {word}", panel.centre.nudged(p.x + step.x - panel.centre.x, p.y + step.y - panel.centre.y), "It meets what comes down from the bodice.") for word, p in places)))
        taken += wide
    return replace(panel, darts=tuple(found))


def apart(above: tuple[float, ...], below: tuple[float, ...]) -> float:
    """How far in cm the worst of the darts that should meet are from each other."""
    return max((abs(a - b) for a, b in zip(above, below, strict=False)), default=0.0)
