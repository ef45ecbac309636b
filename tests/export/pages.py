"""Printed pages as pixels: rendered by pdfium, measured and taped together by their marks."""

import re
from functools import cached_property
from itertools import pairwise
from xml.etree import ElementTree as ET

import numpy as np
import pypdfium2 as pdfium
from svgelements import Path as SvgPath

DPI = 254
LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"
PIXEL = 25.4 / DPI
"""Breadth of a pixel in mm: a tenth, so that pages and margins are whole numbers of pixels."""
DIAMOND = 4.0
"""Half a joining mark's diagonal in mm, as a ruler laid on a printed page reads it."""


class Pages:
    """A PDF rendered; pages as arrays, 0 black to 255 white, row 0 at the top."""

    def __init__(self, data, dpi=DPI):
        self.document = pdfium.PdfDocument(data)
        self.dpi = dpi
        self.drawn = {}

    def __len__(self):
        return len(self.document)

    def picture(self, number):
        if number not in self.drawn:
            self.drawn[number] = self._picture(number)
        return self.drawn[number]

    def _picture(self, number):
        # A trifle smaller: pdfium rounds the page up to whole pixels and stretches it to them.
        scale = self.dpi / 72 * (1 - 1e-6)
        page = self.document[number].render(scale=scale, grayscale=True)
        return page.to_numpy().squeeze().copy()

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
    inner = first[reach : height - reach, reach : width - reach].astype(np.int16)
    for down in range(-reach, reach + 1):
        for right in range(-reach, reach + 1):
            part = second[
                reach - down : height - reach - down, reach - right : width - reach - right
            ]
            cost = float(np.abs(inner - part).mean())
            if best is None or cost < best[0]:
                best = (cost, down, right)
    return best[1:]


def diamonds(strip, pixel=PIXEL):
    """Middles (row, column) of the diamonds whole in a strip of a page, found by their shape."""
    dark = np.pad(strip < 200, 1)
    broad = dark[1:-1, 1:-1] | dark[:-2, 1:-1] | dark[2:, 1:-1] | dark[1:-1, :-2] | dark[1:-1, 2:]
    half = round(DIAMOND / pixel)
    height, width = (side - 2 * half for side in broad.shape)
    if min(height, width) <= 0:
        return []
    shares = np.linspace(0, 1, 16, endpoint=False)
    corners = [(half, 0), (0, half), (-half, 0), (0, -half), (half, 0)]
    places = [
        (round(a[0] + (b[0] - a[0]) * t) + half, round(a[1] + (b[1] - a[1]) * t) + half)
        for a, b in pairwise(corners)
        for t in shares
    ]
    score = sum(broad[y : y + height, x : x + width].astype(np.uint8) for y, x in places)
    left = np.argwhere(score >= 0.95 * len(places))
    found = []
    while len(left):
        near = np.abs(left - left[0]).max(axis=1) < half
        found.append(tuple(left[near].mean(axis=0) + half))
        left = left[~near]
    return sorted(found)


def steps(pages, overlap=10.0, margin=10.0):
    """How far apart neighbouring pages lie, measured on the diamonds that they share: mm."""
    pixel = 25.4 / pages.dpi
    edge, broad = round(margin / pixel), round(overlap / pixel)
    found = {}
    for (row, column), number in pages.names.items():
        here = pages.picture(number)
        for other, axis in (((row, column + 1), 1), ((row + 1, column), 0)):
            if other not in pages.names:
                continue
            there = pages.picture(pages.names[other])
            far = here.shape[axis] - edge - broad
            ends = [slice(far, far + broad), slice(edge, edge + broad)]
            if axis == 1:
                strips = here[:, ends[0]], there[:, ends[1]]
            else:
                strips = here[ends[0]], there[ends[1]]
            one, two = (diamonds(strip, pixel) for strip in strips)
            assert len(one) == len(two) == 2, (row, column, other, one, two)
            moves = [(a[0] - b[0], a[1] - b[1]) for a, b in zip(one, two, strict=True)]
            assert np.abs(np.subtract(*moves)).max() * pixel <= 0.15  # both marks say the same
            move = np.mean(moves, axis=0)
            move[axis] += far - edge
            found[(row, column), other] = move
    return found


def taped(pages, overlap=10.0, margin=10.0):
    """All pages on one sheet, each laid by its marks on those before it and trimmed there."""
    pixel = 25.4 / pages.dpi
    edge, cut = round(margin / pixel), round(overlap / pixel / 2)
    moves = steps(pages, overlap, margin)
    places = {}
    for start in sorted(pages.names):
        if start in places:
            continue
        places[start] = np.array([0.0, 0.0]) if not places else None
        waiting = [start]
        assert places[start] is not None, "a page that joins no other"
        while waiting:
            here = waiting.pop(0)
            for (one, two), move in moves.items():
                for near, far, sign in ((one, two, 1), (two, one, -1)):
                    if near == here and far not in places:
                        places[far] = places[here] + sign * move
                        waiting.append(far)
    corner = np.min(list(places.values()), axis=0)
    parts = {}
    for tile, number in pages.names.items():
        part = pages.picture(number)
        inner = (
            slice(edge + cut * ((tile[0] - 1, tile[1]) in places), part.shape[0] - edge),
            slice(edge + cut * ((tile[0], tile[1] - 1) in places), part.shape[1] - edge),
        )
        y, x = np.round(places[tile] - corner).astype(int)
        parts[tile] = (part[inner], y + inner[0].start, x + inner[1].start)
    size = np.max([(y + p.shape[0], x + p.shape[1]) for p, y, x in parts.values()], axis=0)
    sheet = np.full(size, 255, dtype=np.uint8)
    for _, (part, y, x) in sorted(parts.items()):
        sheet[y : y + part.shape[0], x : x + part.shape[1]] = part
    return sheet


def beside(one, other, reach=2, level=220):
    """Whether all that is dark in a picture has something dark near it in another one."""
    dark = np.pad(other < level, reach)
    height, width = other.shape
    near = np.zeros(other.shape, dtype=bool)
    for y in range(2 * reach + 1):
        for x in range(2 * reach + 1):
            near |= dark[y : y + height, x : x + width]
    height, width = np.minimum(one.shape, other.shape)
    return bool(near[:height, :width][one[:height, :width] < 128].all())


def cut_lines(drawing):
    """Points in mm along each cutting line of an SVG, by the path's id."""
    root = ET.fromstring(drawing)  # noqa: S314 - the project's own bytes
    found = {}
    for element in root.iter():
        if element.get("id", "").endswith("-cut"):
            drawn = [s for s in SvgPath(element.get("d")) if s.start is not None]
            points = [(p.x, p.y) for s in drawn for p in (s.point(k / 25) for k in range(25))]
            found[element.get("id")] = np.array(points)
    return found


def core(sheet):
    """Dark pixels whose four neighbours are dark too: only the broad cutting lines have any."""
    dark = np.pad(sheet < 128, 1)
    middle = dark[1:-1, 1:-1]
    return middle & dark[:-2, 1:-1] & dark[2:, 1:-1] & dark[1:-1, :-2] & dark[1:-1, 2:]


def best_fit(lines, inked, points, pixel=PIXEL):
    """Slide a line (points in mm) over a picture, either way up: its greatest share on lines."""
    best = 0.0
    for way in (1, -1):
        pixels = points * way / pixel
        pixels = np.round(pixels - pixels.min(axis=0)).astype(int)
        best = max(best, slid(lines, inked, pixels))
    return best


def slid(lines, inked, pixels):
    """The first point goes through every pixel of the lines; each next one sorts places out."""
    room = np.array(lines.shape) - pixels.max(axis=0)[::-1]
    places = inked - pixels[0][::-1]
    places = places[(places >= 0).all(axis=1) & (places < room).all(axis=1)]
    for x, y in pixels[:: max(1, len(pixels) // 100)]:
        hit = lines[places[:, 0] + y, places[:, 1] + x]
        if not hit.any():
            return 0.0
        places = places[hit]
    return max(float(lines[pixels[:, 1] + y, pixels[:, 0] + x].mean()) for y, x in places)
