"""A contoured waistband, cut off the top of the draft while the darts are closed.

Source: trace the block below the waist with its darts closed, 3.5 to 6 cm deep: common practice, no
source.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.craft.darts import PlannedDart, closings, reopen
from drafting.craft.trueing import turned, turning
from drafting.errors import ConstructionError
from drafting.geometry import Line, Path, crossings, join, offset, turn, with_handles
from drafting.pattern import Dart


@dataclass(frozen=True, slots=True)
class Contour:
    """A panel's top cut off parallel to its waist.

    Attributes:
        top: The finished waist, from the centre to the side, darts closed, cm.
        band_side: The band's side, downward.
        foot: The band's lower edge, from the centre to the side.
        band_centre: The band's centre, downward.
        waist: The panel's new waist, darts open, from the centre to the side.
        darts: The darts that are left.
        side: The panel's side from the new waist down.
        centre: The panel's centre from the new waist down.
    """

    top: Path
    band_side: Path
    foot: Path
    band_centre: Path
    waist: Path
    darts: tuple[Dart, ...]
    side: Path
    centre: Path


@dataclass(frozen=True, slots=True)
class Top:
    """A panel's top before a band is cut off it.

    Attributes:
        closed: The waist with the darts closed, from the centre to the side, cm; the side may lie
            to the left or to the right.
        side: The panel's side downward, as drawn.
        centre: The panel's centre downward.
        darts: The darts as planned, from the centre to the side.
    """

    closed: Path
    side: Path
    centre: Path
    darts: tuple[PlannedDart, ...]

    @property
    def hand(self) -> float:
        """1 where the side lies to the left of the centre, -1 to the right."""
        return turning(self.closed.start_tangent, self.centre.start_tangent)

    def folded_side(self) -> Path:
        """The side as it lies with the darts closed."""
        return self.side.transformed(closings(self.darts)[-1])


def cut_contours(front: Top, back: Top, depth: float) -> tuple[Contour, Contour]:
    """Cut a band of even depth off front and back, its lower edge running on over the side seam.

    Args:
        front: The front's top.
        back: The back's top.
        depth: Depth of the band in cm.

    Raises:
        ConstructionError: The band's lower edge does not meet a side.
    """
    one, two = _parallel(front, depth), _parallel(back, depth)
    bend = (_opened(*one) * front.hand + _opened(*two) * back.hand) / 2
    down = (one[1].length() + two[1].length()) / 2
    return _cut(front, one[0], down, bend, depth), _cut(back, two[0], down, bend, depth)


def _parallel(top: Top, depth: float) -> tuple[Path, Path]:
    """The line `depth` below the closed waist, and the band's side, down to where they meet."""
    side = top.folded_side()
    path = join(Path((s,)) for s in offset(top.closed, depth * top.hand))
    ahead = path.end + path.end_tangent * depth
    foot = Path((*path.segments, Line(path.end, ahead)))
    hits = crossings(side, foot)
    if not hits:
        raise ConstructionError("The band's lower edge misses the side seam.", where="waistband")
    return foot.split_at(*hits[0].second)[0], side.split_at(*hits[0].first)[0]


def _opened(foot: Path, side: Path) -> float:
    """Degrees from square to the side to the lower edge's end, positive counter-clockwise."""
    square, along = side.end_tangent.right, foot.end_tangent
    return turned(square if square.dot(along) > 0 else -square, along)


def _cut(top: Top, foot: Path, down: float, bend: float, depth: float) -> Contour:
    """Redraw the lower edge to end `down` cm under the waist, turned by `bend` degrees; cut it."""
    band_side = top.folded_side().split(down)[0]
    end, arriving = band_side.end, foot.end_tangent.rotated(-bend * top.hand)
    chord = foot.start.distance(end)
    drawn = with_handles(foot.start, foot.start_tangent, end, arriving, 0.4 * chord, 0.25 * chord)
    waist, left = reopen(Path((drawn,)), top.darts, "waist")
    band_centre, centre = top.centre.split(depth)
    side = top.side.split(band_side.length())[1]
    return Contour(top.closed, band_side, Path((drawn,)), band_centre, waist, left, side, centre)


def upright(contour: Contour) -> tuple[Path, Path, Path, Path]:
    """The band's top, side, foot and centre, turned so that the centre is plumb."""
    down = contour.band_centre.start_tangent
    move = turn(-90.0 - down.angle, contour.top.start)
    top, side = contour.top.transformed(move), contour.band_side.transformed(move)
    return top, side, contour.foot.transformed(move), contour.band_centre.transformed(move)
