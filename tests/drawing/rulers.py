"""Measuring that owes nothing to the project: shapely on sampled curves, Pillow for type."""

from functools import cache
from importlib.resources import files

import shapely
from PIL import ImageFont
from shapely import affinity

from drafting.drawing import Role, Stroke, Text

FONT_SIZE = 1000
CAPITALS = 714
"""Height of Noto Sans capitals per 1000 units (its OS/2 table, read with another tool)."""


def sampled(path, steps=40):
    points = []
    for segment in path.segments:
        points += [segment.at(k / steps) for k in range(steps)]
    return [(p.x, p.y) for p in (*points, path.end)]


def area(path):
    return shapely.Polygon(sampled(path))


@cache
def font():
    file = files("fontpkg_noto_sans") / "files" / "NotoSans[wdth,wght].ttf"
    return ImageFont.truetype(str(file), FONT_SIZE)


def length_of(text, height):
    """Length of a line of text whose capitals are `height` high, by Pillow's FreeType."""
    return font().getlength(text, features=["-kern"]) * height / CAPITALS


def text_box(text, at, height, angle=0.0, anchor="start"):
    """From a tail's depth to an accent's height, as a polygon."""
    size = length_of(text, height)
    left = -size * {"start": 0.0, "middle": 0.5, "end": 1.0}[anchor]
    flat = shapely.box(left, -0.3 * height, left + size, 1.1 * height)
    turned = affinity.rotate(flat, angle, origin=(0, 0))
    return affinity.translate(turned, at.x, at.y)


def boxed(text):
    return text_box(text.text, text.at, text.height, text.angle, text.anchor)


def misplaced(group):
    """Texts of a drawn piece that leave its stitching line, or lie on a mark or another text."""
    strokes = [item for item in group.items if isinstance(item, Stroke)]
    edges = [s for s in strokes if s.name.startswith("stitch-")]
    inside = shapely.Polygon([p for edge in edges for p in sampled(edge.path)])
    marks = [
        shapely.LineString(sampled(s.path, 4))
        for s in strokes
        if s.role in {Role.GRAIN, Role.NOTCH, Role.DRILL, Role.DART}
    ]
    texts = [item for item in group.items if isinstance(item, Text)]
    boxes = [boxed(text) for text in texts]
    return [
        text.text
        for i, (text, box) in enumerate(zip(texts, boxes, strict=True))
        if not inside.contains(box)
        or any(box.intersects(mark) for mark in marks)
        or any(box.intersects(other) for other in boxes[i + 1 :])
    ]
