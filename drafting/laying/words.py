"""What a drawn lay plan says, one table for each language."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.language import InEveryLanguage


@dataclass(frozen=True, slots=True, kw_only=True)
class LayWords:
    """Words of a lay plan in one language; braces are filled with the values named in them."""

    title: str
    cloth: str
    open: str
    folded: str
    one_way: str
    two_way: str
    buy: str
    used: str
    engine: str
    plain: str
    scale: str
    bar: str
    selvedge: str
    selvedges: str
    fold: str
    start: str
    signs: str
    numbers: str
    face_down: str
    on_fold: str
    double: str
    upper: str
    order: str
    orders: str
    repeat: str
    description: str


ENGLISH = LayWords(
    title="Lay plan: {cloth}",
    cloth="Cloth {width} wide, {layers}, {direction}",
    open="laid open, right side up",
    folded="folded lengthwise, right sides together",
    one_way="all tops one way",
    two_way="tops either way",
    buy="Buy {metric} or {yards}: the pieces take {length}, with ends {exact}",
    used="{use} % of the cloth between the selvedges is used",
    engine="found by {engine} in {budget} s at most",
    plain="arranged plainly",
    scale="Scale 1 : {scale}, marks every {mark} of cloth",
    bar="{length} on paper",
    selvedge="selvedge",
    selvedges="selvedges",
    fold="fold",
    start="squared end",
    signs="Arrows lie along the grain and point to each piece's top. Hatched pieces lie face down.",
    numbers="2.10 is piece 10 of order 2.",
    face_down="face down",
    on_fold="on the fold",
    double="cut double",
    upper="upper layer only",
    order="order {number}",
    orders="Order {number}: {garment}",
    repeat="Thin lines are the middles of bars and stripes.",
    description="Lay plan for {cloth}, {count} pieces on {length} of cloth, scale 1 : {scale}.",
)

LAY_WORDS = InEveryLanguage(ENGLISH)
"""The plan's words."""
