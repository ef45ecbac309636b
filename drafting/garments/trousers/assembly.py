"""Trousers, the order of assembly: what is sewn when. Pockets before the long seams, the waist last.

Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from drafting.craft.around import ZIP
from drafting.craft.assembling import Assembling, in_order
from drafting.garments.trousers.openings import Opening
from drafting.garments.trousers.pockets import BackPocket, FrontPocket
from drafting.garments.trousers.tapes import LEGS, Tapes, together
from drafting.garments.trousers.waists import Waist
from drafting.pattern import Copy, CornerDepth, EdgeLength, Girth, Piece, Seam, SeamPart, SewingStep


@dataclass(frozen=True, slots=True, kw_only=True)
class Parts:
    """What a pair of trousers is sewn of.

    Attributes:
        panels: Front and back.
        around: The pieces from the front to the back that the waist is sewn to.
        short: Whether the leg has no knee.
        turned_up: Whether the legs have turn-ups.
        pocket: The front pocket.
        behind: The back pocket.
        opening: The opening.
        waist: The waist.
    """

    panels: tuple[Piece, Piece]
    around: tuple[Piece, ...]
    short: bool
    turned_up: bool
    pocket: FrontPocket
    behind: BackPocket
    opening: Opening
    waist: Waist

    @property
    def side(self) -> tuple[str, ...]:
        """Names of the stretches of the side seam, from the top down."""
        return (*(name for name, _, _ in (*self.opening.stretches, *self.pocket.stretches)), "side")

    @property
    def yoked(self) -> bool:
        """Whether the back has a yoke."""
        return self.around[-1].name == "back_yoke"

    def back_side(self, name: str) -> tuple[SeamPart, ...]:
        """The back's part of a stretch of the side seam, and the yoke's above it."""
        own = SeamPart("back", name, reversed=True)
        return (SeamPart("back_yoke", "side", reversed=True), own) if self.yoked and name == self.side[0] else (own,)


def assembly(parts: Parts) -> tuple[tuple[Seam, ...], tuple[SewingStep, ...]]:
    """All seams in sewing order, and the steps that close them."""
    darts = tuple(p.name for p in parts.panels if p.darts)
    sides = tuple(s for name in parts.side if name != "pocket_mouth" for s in SIDES.get(name, _side)(name, parts))
    zipped = tuple(s for s in sides if s.name == ZIP)
    waist = parts.waist
    return in_order((
        Assembling(_prepared(parts.waist.fused, parts.opening.fused, parts.behind.fused)),
        Assembling("Sew the darts and press them toward the centre.", (), darts) if darts else None,
        Assembling("Lay the front pleats, press and baste them.") if parts.panels[0].pleats else None,
        Assembling("Sew the yokes to the backs.", (Seam("yoke", (SeamPart("back_yoke", "foot"),), (SeamPart("back", "yoke", reversed=True),)),)) if parts.yoked else None,
        *parts.behind.steps,
        *parts.pocket.steps,
        *parts.opening.steps,
        Assembling("Sew the side seams, the left one from the zip's end down." if zipped else "Sew the side seams.", tuple(s for s in sides if s not in zipped)),
        Assembling("Set the zip into the left side.", zipped) if zipped else None,
        *parts.pocket.after,
        Assembling("Sew the inseams.", (_inseam(parts),)),
        Assembling(parts.opening.crotch_told, (_centre("front_crotch", ("front", "front_crotch")), _centre("back_crotch", *((("back_yoke", "centre"),) if parts.yoked else ()), ("back", "back_crotch")))),
        Assembling(waist.told[0], (*waist.making, *waist.joining, *waist.closing)),
        Assembling(TURNED_UP if parts.turned_up else "Turn up and sew the hems."),
        Assembling(waist.told[1]),
    ))


TURNED_UP = "Turn the legs in at the turn-ups' upper edge and sew the hems inside; fold the turn-ups out and catch them at the seams."


def _prepared(*fused: str) -> str:
    """What is done before the first seam."""
    named = [word for word in fused if word]
    words = f"{', '.join(named[:-1])} and {named[-1]}" if len(named) > 1 else "".join(named)
    return f"Fuse {words}; transfer notches, dart points and pocket ends." if words else "Transfer notches, dart points and pocket ends."


def _side(name: str, parts: Parts) -> tuple[Seam, ...]:
    """A stretch of the side seam."""
    return (Seam(name, (SeamPart("front", name),), parts.back_side(name)),)


def _down_to_the_hem(name: str, parts: Parts) -> tuple[Seam, ...]:
    """The side seam itself, over the pieces of a pocket and on through the turn-up."""
    over = tuple(SeamPart(piece, name) for piece in parts.pocket.between)
    foot = ("side_turn_up",) if parts.turned_up else ()
    front = (*over, *(SeamPart("front", e) for e in (name, *foot)))
    return (Seam(name, front, (*parts.back_side(name), *(SeamPart("back", e, reversed=True) for e in foot))),)


def _zipped(name: str, parts: Parts) -> tuple[Seam, ...]:  # noqa: ARG001 - one of three ways
    """The stretch that the zip joins on the left, and that is sewn on the right."""
    hands: tuple[tuple[str, Copy], ...] = (("side_above", "right"), (ZIP, "left"))
    return tuple(Seam(seam, (SeamPart("front", name, hand),), (SeamPart("back", name, hand, reversed=True),)) for seam, hand in hands)


SIDES: dict[str, Callable[[str, Parts], tuple[Seam, ...]]] = {"side": _down_to_the_hem, ZIP: _zipped}
"""How the stretches of the side seam are sewn that are not sewn plainly."""


def _inseam(parts: Parts) -> Seam:
    edges = (*(("inseam_turn_up",) if parts.turned_up else ()), "inseam")
    return Seam("inseam", tuple(SeamPart("front", e) for e in edges), tuple(SeamPart("back", e, reversed=True) for e in edges))


def _centre(name: str, *edges: tuple[str, str]) -> Seam:
    """A centre seam, right to left, along edges of pieces from the top down."""
    one, two = (tuple(SeamPart(piece, edge, hand) for piece, edge in edges) for hand in HANDS)
    return Seam(name, one, two)


HANDS: tuple[Copy, Copy] = ("right", "left")


def tapes(parts: Parts) -> Tapes:
    """Where the tape goes on what was cut."""
    first, last = parts.around[-2].name, parts.around[-1].name
    over = tuple(EdgeLength(name, ("side",)) for name in parts.pocket.between)
    front = (EdgeLength("front", tuple(e.name for e in reversed(parts.opening.centre))),)
    back = (*((EdgeLength("back_yoke", ("centre",)),) if parts.yoked else ()), EdgeLength("back", ("back_crotch",)))
    return Tapes(
        waist=parts.waist.tape,
        hip=Girth("hip", LEGS, 2, parts.pocket.between),
        side=together(*parts.waist.down, *over, EdgeLength("front", parts.side)),
        front_crotch=front,
        back_crotch=back,
        crotch=together(*parts.waist.centres, *front, *back),
        rise=CornerDepth("front", parts.opening.centre[-1].name, "crotch"),
        opens=(*parts.opening.slit, *parts.waist.opens),
        slit=parts.opening.slit,
        side_corner=((first, "waist", "side" if over else parts.side[0]), (last, "side" if parts.yoked else parts.side[0], "waist")),
        hem_corners=("side_turn_up", "inseam_turn_up") if parts.turned_up else ("side", "inseam"),
        mouth=parts.pocket.opens,
        short=parts.short,
    )
