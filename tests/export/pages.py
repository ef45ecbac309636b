"""Printed pages as pixels: rendered by pdfium, measured and taped together by their marks."""

import re
from functools import cached_property

import numpy as np
import pypdfium2 as pdfium

DPI = 200
LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"
PIXEL = 25.4 / DPI
"""Breadth of a pixel in mm."""


class Pages:
    """A PDF rendered; pages as arrays, 0 black to 255 white, row 0 at the top."""

    def __init__(self, data, dpi=DPI):
        self.document = pdfium.PdfDocument(data)
        self.dpi = dpi

    def __len__(self):
        return len(self.document)

    def picture(self, number):
        page = self.document[number].render(scale=self.dpi / 72, grayscale=True)
        return page.to_numpy().squeeze().astype(np.int16)

    def text(self, number):
        return self.document[number].get_textpage().get_text_bounded()

    def size(self, number):
        """Width and height in mm."""
        return tuple(side / 72 * 25.4 for side in self.document[number].get_size())

    @cached_property
    def names(self):
        """Tile name of each page that has one, told by the page itself: row and column."""
        found = {}
        for number in range(len(self)):
            told = re.search(rf"^([A-Z])(\d+)\s+{number + 1} / {len(self)}\s", self.text(number))
            if told:
                found[LETTERS.index(told[1]), int(told[2]) - 1] = number
        return found


def dark_runs(line, level=128):
    """Middle of each run of dark pixels along a line, in pixels."""
    dark = np.flatnonzero(line < level)
    if not len(dark):
        return []
    runs = np.split(dark, np.flatnonzero(np.diff(dark) > 1) + 1)
    return [(run[0] + run[-1]) / 2 for run in runs]


def shift_between(first, second, reach=12):
    """By how many pixels (down, right) the second strip must move to lie on the first one."""
    best = None
    height, width = first.shape
    inner = first[reach : height - reach, reach : width - reach]
    for down in range(-reach, reach + 1):
        for right in range(-reach, reach + 1):
            part = second[
                reach - down : height - reach - down, reach - right : width - reach - right
            ]
            cost = float(np.abs(inner - part).mean())
            if best is None or cost < best[0]:
                best = (cost, down, right)
    return best[1:]
