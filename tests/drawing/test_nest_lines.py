"""Lines of sizes after a bad photocopy: blurred, black or white, no grey, 150 dots to the inch."""

from __future__ import annotations

from itertools import combinations, groupby

import numpy as np
from PIL import Image, ImageDraw, ImageFilter

from drafting.drawing.nest_lines import LINES, inside_pen, outline_pen

FINE, COARSE = 40, 6
"""Dots in a mm, as drawn and as copied (152 to the inch)."""
LENGTH = 150
"""mm of line."""


def copied(pen) -> np.ndarray:
    """A level line with this pen, after the copier: true where it is black."""
    image = Image.new("L", (LENGTH * FINE, 4 * FINE), 255)
    pencil, x, lengths = ImageDraw.Draw(image), 0.0, pen.dashes or (float(LENGTH), 0.0)
    half = pen.width / 2
    while x < LENGTH:
        for dash, gap in zip(lengths[::2], lengths[1::2], strict=True):
            box = (x * FINE, (2 - half) * FINE, (x + dash) * FINE, (2 + half) * FINE)
            pencil.rectangle(box, fill=0)
            x += dash + gap
    image = image.filter(ImageFilter.GaussianBlur(0.12 * FINE))
    small = image.resize((LENGTH * COARSE, 4 * COARSE), Image.Resampling.BOX)
    return np.asarray(small) < 150


def runs(black: np.ndarray) -> tuple[list[float], list[float]]:
    """Lengths in mm of the dashes and of the gaps along the middle of the line, shortest first."""
    middle = black[2 * COARSE - 1 : 2 * COARSE + 1].any(axis=0)[5:]
    found = [(dark, len(list(of)) / COARSE) for dark, of in groupby(middle)][1:-1]
    return (
        sorted({round(n * 2) / 2 for dark, n in found if dark}),
        sorted({round(n * 2) / 2 for dark, n in found if not dark}),
    )


def breadth(black: np.ndarray) -> float:
    return float(black.any(axis=1).sum()) / COARSE


def test_no_two_of_twenty_sizes_look_alike_on_a_photocopy():
    looks = [(runs(copied(pen)), breadth(copied(pen))) for pen in LINES]
    assert len(looks) == 20
    for (one, thin), (two, thick) in combinations(looks, 2):
        same_dashes = one == two
        assert not same_dashes or thick > 1.5 * thin


def test_the_line_inside_has_the_dashes_of_the_outline():
    for place in range(25):
        assert inside_pen(place).dashes == outline_pen(place).dashes
