"""The slit of a shirt sleeve: a tower of two strips, or one strip that binds it.

A tower's box is cut out of the sleeve, 1.5 cm wide; the under strip, finished 1 cm wide, is sewn to
the side toward the back seam; the over strip, finished 2.5 cm wide and pointed above the slit, to
the other one. Together they lap by 2 cm, as the cuff does. A bound slit is a cut without width; its
strip, finished 1 cm wide, lies out on the side toward the back seam and is folded in on the other.

Source: slits of 12 to 15 cm, over strips of 2.5 cm that end 3 to 4 cm above it, under strips of
1 cm; bound slits of 8 to 11 cm, the strip twice as long, 3 to 3.5 cm wide when cut: common
practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from drafting.craft.buttons import button, buttonhole
from drafting.craft.piecework import turned_over
from drafting.geometry import Path, Point, polyline
from drafting.pattern import Cut, Edge, Mark, Piece, Role

PlacketKind = Literal["tower", "bound"]

BOX, OVER, UNDER, TIP = 1.5, 2.5, 1.0, 1.5
ABOVE = 3.5
BINDING = 1.0


@dataclass(frozen=True, slots=True)
class Placket:
    """What a slit needs.

    Attributes:
        kind: Of which kind it is.
        slit: Its length, cm.
        box: Width cut out of the sleeve, cm.
        lap: How much longer the cuff is than the sleeve is wide when it is closed, cm.
        pieces: Its strips.
        under: The strip at the cuff's under end, and its width there, cm.
        over: The strip at its lapping end; None where the strip is folded in.
    """

    kind: PlacketKind
    slit: float
    box: float
    lap: float
    pieces: tuple[Piece, ...]
    under: tuple[str, float]
    over: tuple[str, float] | None

    def marks(self, foot: Point) -> tuple[Mark, ...]:
        """The cut and the stitching on the sleeve; `foot` is the slit's middle at the hem."""
        top = Point(foot.x, foot.y + self.slit)
        if not self.box:
            return (Mark("placement", polyline(foot, top)),)
        half = self.box / 2
        corners = (
            Point(foot.x - half, foot.y), Point(foot.x - half, top.y),
            Point(foot.x + half, top.y), Point(foot.x + half, foot.y),
        )  # fmt: skip
        return (Mark("placement", polyline(*corners)),)


def tower(slit: float) -> Placket:
    """A tower placket for a slit of a length in cm."""
    strips = (_over(slit), _under(slit))
    ends = (("placket_under", UNDER), ("placket_over", OVER))
    return Placket("tower", slit, BOX, OVER + UNDER - BOX, strips, *ends)


def bound(slit: float) -> Placket:
    """A slit of a length in cm, bound with one strip."""
    strip = _folded("placket_strip", "Sleeve placket strip", 2 * slit, BINDING)
    return Placket("bound", slit, 0.0, BINDING, (strip,), ("placket_strip", BINDING), None)


def _under(slit: float) -> Piece:
    """The strip that lies underneath, folded along its middle; it goes on 1 cm above the slit."""
    return _folded("placket_under", "Sleeve placket, under strip", slit + 1.0, UNDER)


def _folded(name: str, title: str, long: float, width: float) -> Piece:
    """A strip of two equal halves, its foot to the left of the fold sewn to the cuff."""
    corners = (
        Point(0, 0), Point(width, 0), Point(2 * width, 0), Point(2 * width, long), Point(0, long),
    )  # fmt: skip
    names = ("foot", "foot_inside", "inside", "top", "outside")
    fold = polyline(Point(width, 0), Point(width, long))
    return _strip(name, title, corners, names, fold)


def _over(slit: float) -> Piece:
    """The strip that lies on top: its outside pointed above the slit, its inside straight."""
    long = slit + ABOVE
    straight = long - TIP
    corners = (
        Point(0, 0), Point(OVER, 0), Point(2 * OVER, 0), Point(2 * OVER, straight),
        Point(OVER, straight), Point(OVER / 2, long), Point(0, straight),
    )  # fmt: skip
    names = ("foot", "foot_inside", "inside", "top", "right_point", "left_point", "outside")
    fold = polyline(Point(OVER, 0), Point(OVER, straight))
    middle = Point(OVER / 2, slit / 2)
    strip = _strip(
        "placket_over", "Sleeve placket, over strip", corners, names, fold,
        (button(middle), buttonhole(middle)),
    )  # fmt: skip
    return turned_over(strip)  # on the right sleeve its fold lies to the left


def _strip(
    name: str,
    title: str,
    corners: tuple[Point, ...],
    names: tuple[str, ...],
    fold: Path,
    marks: tuple[Mark, ...] = (),
) -> Piece:
    """A strip whose foot lies in the cuff's seam; the other edges are folded in."""
    ends = pairwise((*corners, corners[0]))
    edges = tuple(
        Edge(n, polyline(a, b), Role.SEAM if n == "foot" else Role.FINISHED, "placket")
        for n, (a, b) in zip(names, ends, strict=True)
    )
    x, low, high = 1.5 * fold.start.x, fold.start.y, fold.end.y  # clear of the button
    return Piece(
        name=name,
        title=title,
        cut=(Cut("main", 2, mirrored=True),),
        edges=edges,
        grain=(Point(x, low + 0.2 * (high - low)), Point(x, high - 0.2 * (high - low))),
        marks=(Mark("fold", fold), *marks),
    )
