"""The sentences that only a nest of sizes carries."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.drawing.nest_align import Anchor
from drafting.drawing.words import plain
from drafting.language import InEveryLanguage


@dataclass(frozen=True, slots=True, kw_only=True)
class NestWords:
    """Words in one language; braces are filled with the values named in them."""

    key: str
    size: str
    sizes: str
    all_sizes_alike: str
    left_out: str
    refused: str
    failed: str
    how: str
    grain_level: str
    fold_level: str
    centre_level: str
    corner: str
    foot: str
    description: str

    def anchor(self, anchor: Anchor) -> str:
        """What the shared point of a piece is called."""
        sentence: str = getattr(self, anchor.kind)
        return sentence.format(*(plain(name) for name in anchor.names))


ENGLISH_NEST = NestWords(
    key="Sizes",
    size="Size {name}",
    sizes="Sizes {names}",
    all_sizes_alike="the same in all sizes",
    left_out="{name}: not drawn, {reason}",
    refused="it cannot be drafted",
    failed="it fails its checks",
    how="Cutting lines; the sizes of each piece lie on one another at the crossed circle.",
    grain_level="all sizes lie on grain and {0} line",
    fold_level="all sizes lie on fold and {0} line",
    centre_level="all sizes lie on {0} and {1} line",
    corner="all sizes lie on the corner of {0} and {1}",
    foot="all sizes lie on the foot of the grain",
    description="Sewing pattern true to scale, {count} sizes nested: {sizes}. Lengths in mm.",
)

NEST_WORDS = InEveryLanguage(ENGLISH_NEST)
