"""What finishes a waist: a straight band, a contoured band, or a facing, each taken from the draft.

Source: straight bands 3 to 4 cm deep with an underlap of 3 to 5 cm; contoured bands and facings
traced with the darts closed, facings 5 to 6 cm deep: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Protocol

from drafting.craft.around import ZIP, Round, along_round, stations, upright_seams
from drafting.craft.contour import Contour, upright
from drafting.craft.waistband import (
    contoured_quarter,
    straight_band_ends,
    straight_waistband,
    underlap_closed,
)
from drafting.pattern import (
    NO_EASE,
    Ease,
    EdgeLength,
    Measuring,
    Notion,
    Piece,
    Role,
    Seam,
    SeamPart,
)
from drafting.pattern.measuring import CombinedLength


class Banded(Protocol):
    """The options of a garment that hangs from a band, lengths in cm."""

    @property
    def band_depth(self) -> float:
        """Depth of the finished band."""
        ...

    @property
    def underlap(self) -> float:
        """How far it laps under at the opening."""
        ...


@dataclass(frozen=True, slots=True, kw_only=True)
class Waist:
    """What finishes the waist.

    Attributes:
        pieces: Its pieces.
        making: Seams that make it up before it is sewn on.
        joining: The waist seam.
        closing: Seams after that: the ends, the lining.
        tape: Where the tape lies along the finished waist.
        depth: Depth in cm of a band that the skirt hangs from and the zip runs through; else 0.
        notions: What is bought for it.
    """

    pieces: tuple[Piece, ...]
    making: tuple[Seam, ...]
    joining: Seam
    closing: tuple[Seam, ...]
    tape: Measuring
    depth: float
    notions: tuple[Notion, ...]


def eased(by: float) -> Ease:
    """So many cm of a skirt's top are eased onto its band."""
    return Ease("ease", by, by, by) if by else NO_EASE


def straight_band(
    layer: Round,
    pieces: tuple[Piece, ...],
    top: float,
    ease: Ease,
    cut: Banded,
    lining: Round | None = None,
) -> Waist:
    """The straight band, cut in one with its inside, notched where the seams meet it.

    Args:
        layer: The skirt's panels.
        pieces: The same as pieces, from the centre back to the centre front.
        top: Length in cm of the finished waist.
        ease: Skirt top over band; of kind "stretch", band over skirt top.
        cut: The options.
        lining: The lining's panels, caught in the band's inside.
    """
    share = top / (2 * sum(p.sewn_length("waist") for p in pieces))
    places = tuple(
        (name, at * share) for name, at in stations(layer, pieces, "waist", layer.opening)
    )
    band = straight_waistband(
        top,
        cut.band_depth,
        cut.underlap,
        places,
        joined_inside=lining is not None,
        free_underlap=True,
    )
    inside = (
        ()
        if lining is None
        else (
            Seam(
                "lining_waist",
                along_round(lining, "waist", lining.opening),
                (SeamPart("waistband", "waist_inside", reversed=True),),
                ease,
            ),
        )
    )
    skirt, own = along_round(layer, "waist", layer.opening), (SeamPart("waistband", "waist"),)
    one, two = (own, skirt) if ease.kind == "stretch" else (skirt, own)
    return Waist(
        pieces=(band,),
        making=(),
        joining=Seam("waist", one, two, ease),
        closing=(*inside, underlap_closed(), *straight_band_ends()),
        tape=EdgeLength("waistband", ("waist",)),
        depth=0.0,
        notions=(
            Notion("hook and bar"),
            Notion("fusible, length of the waistband", 1, top + cut.underlap),
        ),
    )


def contoured_band(
    layer: Round, bands: tuple[Contour, Contour], depth: float, lining: Round | None
) -> Waist:
    """The contoured band and its inside, which the zip runs through to the top."""
    outside = _quarters(
        ("waistband_back", "waistband_front"), ("Waistband back", "Waistband front"), layer, bands
    )
    inside = tuple(inside_of(p, joined=lining is not None) for p in outside)
    out, in_ = _round(outside, layer, "waistband"), _round(inside, layer, "waistband_facing")
    opening = layer.opening
    felled = (
        ()
        if lining is None
        else (
            Seam(
                "lining_waist",
                along_round(lining, "waist", opening),
                along_round(in_, "waist", opening),
            ),
        )
    )
    return Waist(
        pieces=(*outside, *inside),
        making=upright_seams(out, skip=ZIP),
        joining=Seam(
            "waist", along_round(layer, "waist", opening), along_round(out, "waist", opening)
        ),
        closing=(
            *upright_seams(in_, skip=ZIP),
            Seam(
                "waistband_top", along_round(out, "top", opening), along_round(in_, "top", opening)
            ),
            *zips(out),
            *zips(in_),
            *felled,
        ),
        tape=CombinedLength(tuple((2.0, EdgeLength(p.name, ("top",))) for p in outside)),
        depth=depth,
        notions=(Notion("hook and eye"), Notion("fusible, for the waistband")),
    )


def facing(layer: Round, bands: tuple[Contour, Contour], lining: Round | None) -> Waist:
    """A facing turned to the inside, the skirt's own top being the waist."""
    quarters = _quarters(
        ("facing_back", "facing_front"), ("Back facing", "Front facing"), layer, bands
    )
    pieces = tuple(facing_of(p, joined=lining is not None) for p in quarters)
    own = _round(pieces, layer, "facing")
    opening = layer.opening
    hung = (
        ()
        if lining is None
        else (
            Seam(
                "lining_waist",
                along_round(lining, "waist", opening),
                along_round(own, "lower", opening),
            ),
        )
    )
    return Waist(
        pieces=pieces,
        making=upright_seams(own, skip=ZIP),
        joining=Seam(
            "waist", along_round(layer, "waist", opening), along_round(own, "waist", opening)
        ),
        closing=(*zips(own), *hung),
        tape=CombinedLength(tuple((2.0, EdgeLength(p.name, ("waist",))) for p in pieces)),
        depth=0.0,
        notions=(
            Notion("hook and eye"),
            Notion("fusible, for the facing"),
            Notion("stay tape, length of the waist", 1, None),
        ),
    )


def zips(layer: Round) -> tuple[Seam, ...]:
    """The seam that the zip makes in a layer."""
    return tuple(s for s in upright_seams(layer) if s.name == layer.named(ZIP))


def _quarters(
    names: tuple[str, str], titles: tuple[str, str], layer: Round, bands: tuple[Contour, Contour]
) -> tuple[Piece, ...]:
    """Back and front quarter, each on the fold where the skirt is; the opening's edges named."""
    found = []
    for n, band in enumerate(bands):
        end = 0 if n == 0 else -1
        piece = contoured_quarter(
            names[n], titles[n], *upright(band), on_fold=not layer.uprights[end]
        )
        renamed = {
            "centre": ZIP if ZIP in layer.uprights[end] else "centre",
            "side": ZIP if ZIP in layer.uprights[1] else "side",
        }
        edges = tuple(replace(e, name=renamed.get(e.name, e.name)) for e in piece.edges)
        found.append(replace(piece, edges=edges))
    return tuple(found)


def _round(pieces: tuple[Piece, ...], layer: Round, word: str) -> Round:
    back = () if not layer.uprights[0] else (ZIP,) if ZIP in layer.uprights[0] else ("centre",)
    side = (ZIP,) if ZIP in layer.uprights[1] else ("side",)
    return Round(tuple(p.name for p in pieces), (back, side, ()), word)


def inside_of(piece: Piece, *, joined: bool) -> Piece:
    """The inside of a band quarter: alike, its lower edge turned under, or sewn to the lining."""
    role = Role.SEAM if joined else Role.HEM
    edges = tuple(replace(e, role=role) if e.name == "waist" else e for e in piece.edges)
    cut = tuple(c for c in piece.cut if c.cloth == "main")
    return replace(
        piece, name=f"{piece.name}_facing", title=f"{piece.title} facing", edges=edges, cut=cut
    )


def facing_of(piece: Piece, *, joined: bool) -> Piece:
    """A quarter of a facing: its top is the waist, its lower edge neatened, or sewn to a lining."""
    renamed = {
        "top": ("waist", Role.SEAM, "waist"),
        "waist": ("lower", Role.SEAM if joined else Role.FINISHED, "facing" if joined else "raw"),
    }
    edges = tuple(
        replace(e, name=renamed[e.name][0], role=renamed[e.name][1], kind=renamed[e.name][2])
        if e.name in renamed
        else e
        for e in piece.edges
    )
    return replace(piece, edges=edges)
