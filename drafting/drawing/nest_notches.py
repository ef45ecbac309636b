"""Which size a notch belongs to, where the sizes share an edge and the line does not tell."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import islice, product

import shapely
from shapely.geometry.base import BaseGeometry

from drafting.drawing.lettering import ABOVE, BELOW, boxes
from drafting.drawing.sheet import Anchor, Text
from drafting.geometry import Point, Vector

HEIGHTS = (0.25, 0.2, 0.16)
"""Heights of capitals that are tried, cm."""
FAR = (0.2, 0.4, 0.7)
"""Distances from the cutting line that are tried, cm."""
SHARED = 0.15
"""Outlines within 0.15 cm of a notch are not told apart there."""
SAME = 0.05
"""Notches within 0.05 cm of each other are one on paper."""


@dataclass(frozen=True, slots=True)
class SizeNotch:
    """A notch of one size: the size's place in the range, its name, point on the cutting line."""

    place: int
    match: str
    at: Point
    outward: Vector


@dataclass(frozen=True, slots=True)
class NotchName:
    """The sizes that a notch belongs to, and the text beside it."""

    sizes: tuple[int, ...]
    text: Text


def name_notches(
    notches: Sequence[SizeNotch],
    outlines: Sequence[shapely.LinearRing],
    names: Sequence[str],
    area: BaseGeometry,
) -> tuple[tuple[NotchName, ...], BaseGeometry]:
    """Name the sizes of the notches that stand on a shared edge and not all at the same place.

    Args:
        notches: Of every size of the piece.
        outlines: The cutting lines of the sizes.
        names: Names of the sizes of the range.
        area: What the piece and the names of its sizes cover.

    Returns:
        The names, and the area with them.
    """
    found: list[NotchName] = []
    for group in _groups(notches):
        at = shapely.Point(group[0].at.x, group[0].at.y)
        near = sum(outline.distance(at) < SHARED for outline in outlines)
        told = ", ".join(names[notch.place] for notch in group)
        texts = _outside(told, group[0]) if len(group) < near else ()
        clear = (t for t in texts if not boxes([t])[0].intersects(area))
        for text in islice(clear, 1):
            found.append(NotchName(tuple(notch.place for notch in group), text))
            tie = shapely.LineString([(at.x, at.y), (text.at.x, text.at.y)])
            area = shapely.union_all([area, boxes([text])[0], tie])
    return tuple(found), area


def _groups(notches: Sequence[SizeNotch]) -> list[list[SizeNotch]]:
    """Notches of the same name and place together."""
    groups: list[list[SizeNotch]] = []
    for notch in notches:
        for group in groups:
            if group[0].match == notch.match and group[0].at.distance(notch.at) < SAME:
                group.append(notch)
                break
        else:
            groups.append([notch])
    return groups


def _outside(text: str, notch: SizeNotch) -> Iterator[Text]:
    """Candidates before the notch, outside the piece."""
    out = notch.outward
    for height, far in product(HEIGHTS, FAR):
        at = notch.at + out * far
        if abs(out.x) > abs(out.y):
            anchor: Anchor = "start" if out.x > 0 else "end"
            yield Text(text, Point(at.x, at.y - height / 2), height, anchor=anchor)
        else:
            low = at.y + BELOW * height if out.y > 0 else at.y - ABOVE * height
            yield Text(text, Point(at.x, low), height, anchor="middle")
