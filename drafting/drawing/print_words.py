"""The words of rulers, scales, choices of lines and covers, one table for each language."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.language import InEveryLanguage


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintWords:
    """Words in one language; braces are filled with the values named in them."""

    right: str
    left: str
    scale: str
    scale_square: str
    scaled: str
    on_screen: str
    add: str
    add_all: str
    shrinkage: str
    washed: str
    cutting_list: str
    notions: str
    measures: str
    ease: str
    finished: str
    findings: str
    cautions: str
    sewing: str
    origins: dict[str, str]
    layers: dict[str, str]


ENGLISH_PRINT = PrintWords(
    right="{title}, right",
    left="{title}, left",
    scale="Scale {scale}",
    scale_square="{length} at {scale}",
    scaled="Sewing pattern at {scale}, {count} pieces: {pieces}. Lengths in mm.",
    on_screen="Sewing pattern, {count} pieces: {pieces}. For screens, not true to scale.",
    add="Stitching lines only: add when cutting {values}",
    add_all="Stitching lines only: add when cutting {value} on every edge",
    shrinkage="Drawn larger for cloth that shrinks {lengthwise} % in length and {crosswise} % "
    "in width",
    washed="Finished measures, seams and checks are those of the washed garment",
    cutting_list="Cutting list",
    notions="Notions",
    measures="Measures of the body",
    ease="Ease",
    finished="Finished garment",
    findings="Remarks",
    cautions="Mind",
    sewing="Order of sewing",
    origins={
        "derived": "from other measures",
        "estimated": "estimated",
        "size table": "size table",
    },
    layers={
        "grid": "Joining marks and rulers",
        "levels": "Level lines",
        "stitching": "Stitching lines",
        "marks": "Grain, folds and marks",
        "cutting": "Cutting lines",
        "labels": "Labels",
    },
)

PRINT_WORDS = InEveryLanguage(ENGLISH_PRINT)
