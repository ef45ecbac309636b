"""Skirts, what must come out: wishes from the order and the body alone, and where the tape goes.

Bounds: half a centimetre at the waist and at a straight hip is the house's own accuracy; angles of
180 degrees where seams cross, within 3 at the waist and 2 at the hem, are common practice, no source.
"""

from __future__ import annotations

from math import inf

from drafting.body import Body
from drafting.craft.around import ZIP, Round
from drafting.craft.hemline import Leg, needed_hem
from drafting.craft.rules import OPENING_OVER_HIP
from drafting.craft.seam_pocket import MOUTH, SeamPocket
from drafting.craft.slant_pocket import least_mouth
from drafting.pattern import (
    AngleBetween,
    CombinedLength,
    EdgeLength,
    Measuring,
    Notion,
    Piece,
    Want,
)


def near(name: str, tape: Measuring, wanted: float, less: float, more: float, reason: str) -> Want:
    """A must within bounds about what is wanted, cm."""
    wanted = float(wanted)
    return Want(
        name=name,
        measuring=tape,
        wanted=wanted,
        low=wanted - less,
        high=wanted + more,
        reason=reason,
    )


def at_least(
    name: str, tape: Measuring, least: float, reason: str, *, advice: bool = False
) -> Want:
    """A must, or advice, that a length reaches a least one, cm."""
    return Want(
        name=name,
        measuring=tape,
        wanted=float(least),
        low=float(least),
        high=inf,
        kind="advice" if advice else "must",
        reason=reason,
    )


def finished_waist(body: Body, ease: float, tape: Measuring) -> Want:
    """The waist's girth over the body."""
    return near("finished_waist_girth", tape, body.waist_girth + ease, 0.5, 0.5, "Body and ease.")


def passes_hip(body: Body, tape: Measuring, slits: tuple[EdgeLength, ...]) -> Want:
    """Whether the skirt goes over the hips: the waist and both sides of the opening."""
    parts = (*_parts(tape), *((2.0, slit) for slit in slits))
    return at_least(
        "opening_passes_hip",
        CombinedLength(parts),
        body.hip_girth + OPENING_OVER_HIP,
        "Waist and twice the opening must reach the hip and 2 cm.",
    )


def passes_hand(body: Body, panel: str, pocket: SeamPocket | None) -> tuple[Want, ...]:
    """Whether a hand goes into the pocket of a panel, where there is one."""
    if pocket is None:
        return ()
    least = least_mouth(body.value("hand_girth") if body.has("hand_girth") else None)
    why = "Half the hand and 1.5 cm, at least 15 cm."
    return (at_least("pocket_passes_hand", EdgeLength(panel, (MOUTH,)), least, why),)


def pocket_tape(pocket: SeamPocket | None) -> tuple[Notion, ...]:
    """The tape that stays a pocket's openings."""
    return () if pocket is None else (Notion("stay tape for the pocket mouths", 2, pocket.mouth),)


def down_the_side(panel: Piece) -> tuple[str, ...]:
    """Names of a panel's edges along the side, whatever opens there."""
    return tuple(e.name for e in panel.edges if e.name in {ZIP, "side_above", MOUTH, "side"})


def down_a_seam(layer: Round, pocket: SeamPocket | None) -> tuple[str, ...]:
    """Names of the edges along the last panel's sewn upright, from the top down."""
    edges = next(edges for edges in reversed(layer.uprights) if edges)
    return (*edges, MOUTH) if pocket is not None and edges[-1] == "side" else edges


def stride(
    body: Body, under: Leg, length: float, hem: CombinedLength, vent: tuple[EdgeLength, ...]
) -> Want:
    """Whether one can walk in it: the hem and both sides of a vent or slit."""
    tape = CombinedLength((*hem.parts, *((2.0, edge) for edge in vent)))
    reason = "A step needs this much at the hem of a skirt of this length: widen it, or open it with a vent or slit."
    return at_least(
        "hem_passes_stride", tape, float(needed_hem(body, under, length)), reason, advice=True
    )


def all_round(edges: tuple[tuple[str, str], ...], copies: float = 2.0) -> CombinedLength:
    """The tape along an edge of several pieces, each so many times."""
    return CombinedLength(tuple((copies, EdgeLength(piece, (edge,))) for piece, edge in edges))


def angle(
    name: str, corners: tuple[tuple[str, str, str], ...], slack: float, wanted: float = 180.0
) -> Want:
    """Corners that meet when sewn, together a straight angle unless another is wanted."""
    reason = (
        "Sewn together the line runs on without a corner."
        if wanted == 180.0
        else "Square to the fold, the line runs on over it."
    )
    return Want(
        name=name,
        measuring=AngleBetween(corners),
        wanted=wanted,
        low=wanted - slack,
        high=wanted + slack,
        unit="deg",
        reason=reason,
    )


def crossings(layer: Round, *, waist: str = "waist", hem: str = "hem") -> tuple[Want, ...]:
    """At each upright between two panels the waist and the hem run on without a corner."""
    found = []
    for i, edges in enumerate(layer.uprights[1:-1], 1):
        back, front, word = layer.panels[i - 1], layer.panels[i], edges[-1]
        found.append(angle(f"{word}_waist_angle", ((back, edges[0], waist), (front, waist, edges[0])), 3.0))
        found.append(angle("hem_angle" if word == "side" else f"{word}_hem_angle", ((back, hem, word), (front, word, hem)), 2.0))
    return tuple(found)


def told(*pairs: tuple[str, Measuring]) -> tuple[Want, ...]:
    """What a customer is told of the finished garment."""
    return tuple(near(name, tape, 0.0, 0.0, 0.0, "") for name, tape in pairs)


def _parts(tape: Measuring) -> tuple[tuple[float, EdgeLength], ...]:
    return (
        tape.parts
        if isinstance(tape, CombinedLength)
        else ((1.0, tape),)
        if isinstance(tape, EdgeLength)
        else ()
    )
