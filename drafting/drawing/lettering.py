"""How much room a text takes, by the metrics of the font that the PDF embeds (Noto Sans).

Heights are the height of capitals in cm. A letter that the font does not have is reckoned a full
em wide: no fallback font of a viewer is wider.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Sequence
from functools import cache
from importlib.resources import files
from importlib.resources.abc import Traversable

import numpy as np
import shapely
from fontTools.ttLib import TTFont
from numpy.typing import NDArray

from drafting.drawing.sheet import Text
from drafting.geometry import Point, direction, turn

FONT = "NotoSans[wdth,wght].ttf"
CAPITAL = 0.714
"""Height of a capital in ems. Source: the font's OS/2 table."""

ABOVE, BELOW = 1.3, 0.4
"""What accents and tails reach above and below the base line, in heights of capitals."""

SLACK = 1.08
"""Viewers that do not have the font take another one, up to 8 % broader in capitals."""

PITCH = 1.75
"""From one base line to the next, in heights of capitals."""


BOX = "\ufffd"
"""Stands for a letter without a shape; the font draws it as a box on its corner."""


def font_file() -> Traversable:
    """The font file that ships with the package `fontpkg-noto-sans`."""
    return files("fontpkg_noto_sans") / "files" / FONT


class _Widths(dict[str, float]):
    """Widths of letters in heights of capitals; a letter that the font does not have is an em."""

    def __missing__(self, letter: str) -> float:
        return 1.0 / CAPITAL


@cache
def _widths() -> _Widths:
    with font_file().open("rb") as file, TTFont(file, lazy=True) as font:
        em, metrics = font["head"].unitsPerEm, font["hmtx"].metrics
        glyphs = font.getBestCmap().items()
        return _Widths((chr(code), metrics[name][0] / em / CAPITAL) for code, name in glyphs)


def has_shapes(text: str) -> bool:
    """Whether the font can draw every letter of a text."""
    return _widths().keys() >= set(text)


def carried(text: str) -> str:
    """The text with what no document can carry replaced: controls, halves of letters."""
    return "".join(BOX if unicodedata.category(c) in {"Cc", "Cs", "Cn"} else c for c in text)


def writable(text: str) -> str:
    """The text with a box for each letter that the font does not have."""
    if text.isascii() and text.isprintable():
        return text
    return "".join(c if has_shapes(c) else BOX for c in carried(text))


def width(text: str, height: float) -> float:
    """Length in cm of a line of text."""
    return sum(map(_widths().__getitem__, text)) * height


Frame = tuple[float, float, float, float, float, float]
"""A box: x and y of its middle, its direction as a unit vector, half its length and height."""


def framed(text: Text) -> Frame:
    """The box round a text, tails and accents within."""
    along, half = direction(text.angle), width(text.text, text.height) * SLACK / 2
    ahead = {"start": half, "middle": 0.0, "end": -half}[text.anchor]
    up = (ABOVE - BELOW) / 2 * text.height
    x = text.at.x + along.x * ahead - along.y * up
    y = text.at.y + along.y * ahead + along.x * up
    return x, y, along.x, along.y, half, (ABOVE + BELOW) / 2 * text.height


def corners(text: Text) -> tuple[Point, Point, Point, Point]:
    """Corners of the box round a text, tails and accents within, counter-clockwise."""
    x, y, c, s, wide, high = framed(text)
    ends = ((-wide, -high), (wide, -high), (wide, high), (-wide, high))
    first, second, third, fourth = (Point(x + a * c - b * s, y + a * s + b * c) for a, b in ends)
    return first, second, third, fourth


def block_corners(texts: Sequence[Text]) -> tuple[Point, Point, Point, Point]:
    """Corners of the box round texts that all run in one direction, the box along with them."""
    level = turn(-texts[0].angle, Point(0.0, 0.0))
    points = [level.point(corner) for text in texts for corner in corners(text)]
    xs, ys = [p.x for p in points], [p.y for p in points]
    left, low, right, top = min(xs), min(ys), max(xs), max(ys)
    box = ((left, low), (right, low), (right, top), (left, top))
    first, second, third, fourth = (level.inverse.point(Point(x, y)) for x, y in box)
    return first, second, third, fourth


def boxes(texts: Sequence[Text]) -> NDArray[np.object_]:
    """The boxes round several texts, as polygons."""
    rings = [[(p.x, p.y) for p in corners(text)] for text in texts]
    return shapely.polygons(rings) if rings else np.empty(0, dtype=object)


def wrapped(text: str, height: float, room: float) -> tuple[str, ...]:
    """Break a text into lines of at most `room` cm, at spaces; a longer word is broken anywhere."""
    lines: list[str] = []
    line, used, space = "", 0.0, width(" ", height)
    for word in text.split():
        size = width(word, height)
        if line and used + space + size <= room:
            line, used = f"{line} {word}", used + space + size
            continue
        if line:
            lines.append(line)
        line, used = word, size
        if size > room:
            *whole, line = _broken(word, height, room)
            lines += whole
            used = width(line, height)
    return (*lines, line) if line else tuple(lines)


def _broken(word: str, height: float, room: float) -> list[str]:
    parts = [""]
    for letter in word:
        if parts[-1] and width(parts[-1] + letter, height) > room:
            parts.append("")
        parts[-1] += letter
    return parts
