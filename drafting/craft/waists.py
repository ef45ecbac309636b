"""What finishes a waist: a straight band, a contoured band, or a facing, each taken from the draft.

Source: straight bands 3 to 4 cm deep with an underlap of 3 to 5 cm; contoured bands and facings
traced with the darts closed, facings 5 to 6 cm deep: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import fsum

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


@dataclass(frozen=True, slots=True)
class Band:
    """A straight band's depth, and how far it laps under at the opening, cm."""

    band_depth: float
    underlap: float


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
    cut: Band,
    lining: Round | None = None,
) -> Waist:
    """The straight band, cut in one with its inside, notched where the seams meet it.

    Args:
        layer: The skirt's panels.
        pieces: The same as pieces, from the centre back to the centre front.
        top: Length in cm of the finished waist.
        ease: Skirt top over band; of kind "stretch", band over skirt top.
        cut: Its measures.
        lining: The lining's panels, caught in the band's inside.
    """
    share = top / (2 * fsum(p.sewn_length("waist") for p in pieces))
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
    sewn = _onto_band("waist", layer, SeamPart("waistband", "waist"), ease)
    own = SeamPart("waistband", "waist_inside", reversed=True)
    inside = () if lining is None else (_onto_band("lining_waist", lining, own, ease),)
    return Waist(
        pieces=(band,),
        making=(),
        joining=sewn,
        closing=(*inside, underlap_closed(), *straight_band_ends()),
        tape=EdgeLength("waistband", ("waist",)),
        depth=0.0,
        notions=(
            Notion("hook and bar"),
            Notion("fusible, length of the waistband", 1, top + cut.underlap),
        ),
    )


def _onto_band(name: str, layer: Round, band: SeamPart, ease: Ease) -> Seam:
    """The seam of a round of panels and a band; the longer side, or what is stretched, first."""
    panels, own = along_round(layer, "waist", layer.opening), (band,)
    one, two = (own, panels) if ease.kind == "stretch" else (panels, own)
    return Seam(name, one, two, ease)


def contoured_band(
    layer: Round, bands: tuple[Contour, ...], depth: float, lining: Round | None
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


FACINGS = {
    "skirt": "Facing",
    "back": "Back facing",
    "side_back": "Side back facing",
    "side_front": "Side front facing",
    "front": "Front facing",
}
"""What is written on a facing, by the panel that it is traced from."""


def facing(layer: Round, bands: tuple[Contour, ...], lining: Round | None) -> Waist:
    """A facing turned to the inside, the garment's own top being the waist.

    Args:
        layer: The garment's panels.
        bands: What is traced from their tops, from the centre back to the centre front.
        lining: The lining's panels, sewn to its lower edge.
    """
    names = tuple(f"facing_{p}" for p in layer.panels)
    quarters = _quarters(names, tuple(FACINGS[p] for p in layer.panels), layer, bands)
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
    names: tuple[str, ...], titles: tuple[str, ...], layer: Round, bands: tuple[Contour, ...]
) -> tuple[Piece, ...]:
    """A piece for each panel, on the fold where the panel is; its edges named as the uprights."""
    words = _uprights(layer)
    found = []
    for n, band in enumerate(bands):
        # from the middle forward a panel's centre is the upright after it
        front = n >= len(bands) / 2 or len(bands) == 1
        centre, side = (words[n + 1], words[n]) if front else (words[n], words[n + 1])
        on_fold = not centre
        piece = contoured_quarter(names[n], titles[n], *upright(band), on_fold=on_fold)
        renamed = {"centre": centre[0] if centre else "centre", "side": side[0]}
        edges = tuple(replace(e, name=renamed.get(e.name, e.name)) for e in piece.edges)
        found.append(replace(piece, edges=edges))
    return tuple(found)


def _uprights(layer: Round) -> tuple[tuple[str, ...], ...]:
    """For each upright the one edge of a band or facing there; () where it lies on the fold."""
    found = [edges[:1] if ZIP in edges else edges[-1:] for edges in layer.uprights]
    behind = ("centre",) if found[0] and found[0] != (ZIP,) else found[0]
    return behind, *found[1:]


def _round(pieces: tuple[Piece, ...], layer: Round, word: str) -> Round:
    return Round(tuple(p.name for p in pieces), _uprights(layer), word)


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
