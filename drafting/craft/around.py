"""Panels that go round the body: what they are sewn to at their upright and their level edges.

Half of the garment is drawn, the wearer's right: its panels in order from the centre back to the
centre front. Between them stand the upright seams; at either end lies a fold or a centre seam.
Every layer (cloth, lining, band, facing) is such a round of its own.

Source: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

from drafting.pattern import Copy, Piece, Seam, SeamPart

ZIP = "zip"
"""Name of the stretch of an upright edge that the zip joins."""

Opening = Literal["centre_back", "side"]


@dataclass(frozen=True, slots=True)
class Round:
    """The panels of one layer.

    Attributes:
        panels: Names of the pieces from the centre back to the centre front.
        uprights: Names of the edges that are sewn at each upright, from the top down, one upright
            more than there are panels; the first is the centre back, the last the centre front,
            () where the panel lies on the fold. Both pieces at an upright call their edges alike.
        layer: Word before the names of its seams; empty for the cloth itself.
    """

    panels: tuple[str, ...]
    uprights: tuple[tuple[str, ...], ...]
    layer: str = ""

    @property
    def opening(self) -> int:
        """Number of the upright that the zip opens; Raises ValueError where there is none."""
        for i, edges in enumerate(self.uprights):
            if ZIP in edges:
                return i
        raise ValueError("nothing opens")

    def named(self, name: str) -> str:
        """A seam's name in this layer."""
        return f"{self.layer}_{name}" if self.layer else name


def upright_seams(
    layer: Round, *, at: tuple[int, ...] | None = None, skip: str = ""
) -> tuple[Seam, ...]:
    """The upright seams of a layer from the centre back to the front, each from the top down.

    Where the zip opens a side, it joins the left edges and the right ones are sewn.

    Args:
        layer: The layer.
        at: Numbers of the uprights wanted; all by default.
        skip: Name of a seam, without the layer's word, that is left out.
    """
    last = len(layer.uprights) - 1
    seams: list[Seam] = []
    for i, edges in enumerate(layer.uprights):
        if at is not None and i not in at:
            continue
        for edge in edges:
            if i in (0, last):
                seams.append(_centre(layer, layer.panels[0 if i == 0 else -1], edge))
            else:
                seams += _between(layer, i, edge)
    return tuple(s for s in seams if s.name != layer.named(skip))


def _centre(layer: Round, piece: str, edge: str) -> Seam:
    return Seam(
        layer.named(edge), (SeamPart(piece, edge, "right"),), (SeamPart(piece, edge, "left"),)
    )


def _between(layer: Round, i: int, edge: str) -> tuple[Seam, ...]:
    back = SeamPart(layer.panels[i - 1], edge, reversed=True)
    front = SeamPart(layer.panels[i], edge)
    if edge != ZIP:
        return (Seam(layer.named(edge), (back,), (front,)),)
    beside = f"{layer.uprights[i][-1]}_above" if len(layer.uprights[i]) > 1 else "side"
    return tuple(
        Seam(layer.named(name), (replace(back, copy=hand),), (replace(front, copy=hand),))
        for name, hand in ((beside, _RIGHT), (ZIP, _LEFT))
    )


_RIGHT: Copy = "right"
_LEFT: Copy = "left"


def along_round(layer: Round, edge: str, opening: int) -> tuple[SeamPart, ...]:
    """A level edge of all panels, walked from the opening round the body and back to it.

    From a centre back opening it starts with the right back; from a left side opening with the
    left back, so that each time what is walked first lies under the lap.

    Args:
        layer: The layer.
        edge: Name of the edge in each of its panels, drawn from the front toward the back.
        opening: Number of the upright that opens.
    """
    before, after = layer.panels[:opening], layer.panels[opening:]
    if not before:
        return tuple(SeamPart(p, edge, "both", 2, reversed=True) for p in layer.panels)
    return (
        *(SeamPart(p, edge, _LEFT) for p in reversed(before)),
        *(SeamPart(p, edge, _RIGHT, reversed=True) for p in layer.panels),
        *(SeamPart(p, edge, _LEFT) for p in reversed(after)),
    )


def stations(
    layer: Round, pieces: tuple[Piece, ...], edge: str, opening: int
) -> tuple[tuple[str, float], ...]:
    """Where the uprights and the notches of a level edge lie, walked as by `along_round`.

    Args:
        layer: The layer; the names of its uprights' marks begin with its word.
        pieces: Its panels as pieces. Notches are read where nothing is taken out of the edge.
        edge: Name of the edge in each of its panels.
        opening: Number of the upright that opens.

    Returns:
        Names and distances in cm from the opening.
    """
    start, found = 0.0, list[tuple[str, float]]()
    for n, (piece, against) in enumerate(_walked(pieces, opening)):
        length = piece.sewn_length(edge)
        if n:
            found.append((layer.named(f"joint-{n}"), start))
        plain = () if piece.taken_on(edge) else piece.notches
        own = (m for m in plain if m.edge == edge)
        found += [(m.match, start + (length - m.at if against else m.at)) for m in own]
        start += length
    return tuple(sorted(found, key=lambda mark: mark[1]))


def _walked(pieces: tuple[Piece, ...], opening: int) -> tuple[tuple[Piece, bool], ...]:
    """Every panel in the order of the walk, and whether its edge is walked against its drawing."""
    before, after = pieces[:opening], pieces[opening:]
    if not before:
        return (*((p, True) for p in pieces), *((p, False) for p in reversed(pieces)))
    return (
        *((p, False) for p in reversed(before)),
        *((p, True) for p in pieces),
        *((p, False) for p in reversed(after)),
    )
