"""The edge of a front that buttons: a facing cut on and folded in, or a band sewn on.

The front runs on beyond the centre front by the button stand. A facing lies folded under it and
reaches past the centre front on the inside; its top and foot are the front's own, folded over. A
band is twice as wide as the stand, its middle on the centre front, cut in one with its inside.

Source: a stand of 1.2 to 1.5 cm for a shirt's button, a facing of 3.5 cm, a band of 3 to 3.5 cm:
W. Aldrich, Metric Pattern Cutting for Menswear (stand and facing); else common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.craft.piecework import counter_clockwise
from drafting.craft.sheet import DraftSheet
from drafting.errors import ConstructionError
from drafting.geometry import Path, Point, Segment, Vector, crossing_with_line, mirror, polyline
from drafting.pattern import Cut, Edge, Mark, Notch, Piece, Role
from drafting.trace import Place, Stroke

FACING_INSIDE = 2.0
"""The facing ends 2 cm behind the centre front."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Edging:
    """A front's edge from the neck to the hem, the front walked clockwise.

    Attributes:
        edges: From the shoulder at the neck down to the side at the hem: neck, what lies beyond
            the centre, hem.
        outline: The lines of these edges on the sheet.
        fold: Where the facing is folded, as a mark; none with a band.
        beyond: How far the piece reaches past the centre front, cm; less than nought with a band.
        band: The band.
    """

    edges: tuple[Edge, ...]
    outline: tuple[Stroke, ...]
    fold: tuple[Mark, ...]
    beyond: float
    band: Piece | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class FrontEdge:
    """What the edge is made from.

    Attributes:
        neck: From the shoulder to the throat.
        hem: From the centre front to the side.
        throat: The neck at the centre front.
        foot: The hem at the centre front.
        stand: The button stand, cm.
        hem_kind: Which allowance the hem takes.
    """

    neck: Stroke
    hem: Stroke
    throat: Place
    foot: Place
    stand: float
    hem_kind: str


def faced(front: FrontEdge, sheet: DraftSheet) -> Edging:
    """Draw the stand and a facing that is cut on."""
    wide = front.stand + FACING_INSIDE
    up = sheet.point(
        "button stand at the neck",
        front.throat.right(front.stand),
        "Room for the button beyond the centre front.",
    )
    low = sheet.point(
        "button stand at the hem", front.foot.right(front.stand), "As wide as at the neck."
    )
    over = sheet.line("neck beyond the centre", front.throat, up, why="Level.")
    under = sheet.line("hem beyond the centre", low, front.foot, why="Level.")
    axis = mirror(up, Vector(0, 1))
    top = _beyond(front.neck.path.joined(over.path), up.x - wide).reversed().transformed(axis)
    foot = (
        _beyond(front.hem.path.reversed().joined(under.path.reversed()), up.x - wide)
        .reversed()
        .transformed(axis)
    )
    one = sheet.point("facing at the neck", _told(up, top.end), "The neck folded over.")
    two = sheet.point("facing at the hem", _told(low, foot.end), "The hem folded over.")
    told = "The centre front comes to lie here when the facing is folded in."
    mids = (
        sheet.point("centre folded over at the neck", up.right(front.stand), told),
        sheet.point("centre folded over at the hem", low.right(front.stand), told),
    )
    how, why = "the same line, folded over the edge", "So that the facing lies flat."
    facing_top = sheet.curve("facing's top", up, one, _by_way_of(mids[0], top), how, why)
    facing_foot = sheet.curve("facing's foot", low, two, _by_way_of(mids[1], foot), how, why)
    side = sheet.line("facing's edge", one, two, why="On the straight grain.")
    edges = (
        Edge("neck", front.neck.path), Edge("overlap", over.path),
        Edge("facing_top", top, Role.FINISHED), Edge("facing", side.path, Role.FINISHED, "facing"),
        Edge("facing_hem", foot.reversed(), Role.HEM, front.hem_kind),
        Edge("overlap_hem", under.path, Role.HEM, front.hem_kind),
        Edge("hem", front.hem.path, Role.HEM, front.hem_kind),
    )  # fmt: skip
    lines = (front.neck, over, facing_top, side, facing_foot, under, front.hem)
    return Edging(
        edges=edges,
        outline=lines,
        fold=(Mark("fold", polyline(low, up)),),
        beyond=front.stand + wide,
    )


def banded(front: FrontEdge, sheet: DraftSheet) -> Edging:
    """Draw the seam of a band that is sewn on, and the band."""
    at = front.throat.x - front.stand
    neck, top = _split(front.neck.path, at)
    foot, hem = _split(front.hem.path, at)
    up = sheet.point(
        "band seam at the neck",
        _told(front.throat, top.start),
        "The band's middle lies on the centre front.",
    )
    low = sheet.point("band seam at the hem", _told(front.foot, hem.start), "Plumb under it.")
    how, why = "the same line, up to the band", "The rest of it is the band's."
    ends = front.neck.start, front.hem.end
    neck_line = sheet.curve("front neck to the band", ends[0], up, neck.segments, how, why)
    hem_line = sheet.curve("front hem to the band", low, ends[1], hem.segments, how, why)
    seam = sheet.line("band seam", up, low, why="On the straight grain.")
    beyond = polyline(front.throat, Point(front.throat.x + front.stand, front.throat.y))
    below = polyline(Point(front.foot.x + front.stand, front.foot.y), front.foot)
    band = _band(top.joined(beyond), seam.path, below.joined(foot), front)
    edges = (
        Edge("neck", neck_line.path), Edge("band_seam", seam.path),
        Edge("hem", hem_line.path, Role.HEM, front.hem_kind),
    )  # fmt: skip
    return Edging(
        edges=edges, outline=(neck_line, seam, hem_line), fold=(), beyond=-front.stand, band=band
    )


def _band(top: Path, seam: Path, foot: Path, front: FrontEdge) -> Piece:
    """The band with its inside, folded along the front's edge; `foot` runs from the fold inward."""
    corner = top.end
    axis = mirror(corner, Vector(0, 1))
    inside_top, inside_foot = top.transformed(axis).reversed(), foot.transformed(axis).reversed()
    inside = polyline(inside_foot.start, inside_top.end).reversed()
    middle = top.length() - front.stand
    clockwise = (
        Edge("top", top), Edge("inside_top", inside_top, Role.FINISHED),
        Edge("inside_edge", inside, Role.HEM, "facing"),
        Edge("inside_foot", inside_foot, Role.HEM, front.hem_kind),
        Edge("foot", foot, Role.HEM, front.hem_kind), Edge("front_edge", seam.reversed()),
    )  # fmt: skip
    low, high = seam.end.y, seam.start.y
    x = corner.x + front.stand  # on the inside, clear of the buttons
    piece = Piece(
        name="front_band",
        title="Front band",
        cut=(Cut("main", 2, mirrored=True), Cut("fusible", 2, mirrored=True)),
        edges=clockwise,
        notches=(Notch("top", middle, 1, "centre-front"),),
        grain=(Point(x, low + 0.3 * (high - low)), Point(x, high - 0.3 * (high - low))),
        marks=(Mark("fold", polyline(foot.start, corner)),),
    )
    return counter_clockwise(piece)


def _beyond(path: Path, x: float) -> Path:
    """The part of a line, walked to the right, that lies beyond an upright."""
    return _split(path, x)[1]


def _split(path: Path, x: float) -> tuple[Path, Path]:
    hits = crossing_with_line(path, Point(x, 0), Vector(0, 1))
    if not hits:
        raise ConstructionError(
            "The front is too narrow at its neck or hem for the button stand.", where="button stand"
        )
    return path.split_at(*hits[0])


def _by_way_of(place: Place, path: Path) -> tuple[Segment, ...]:
    """The line's parts, its first joint the place on the sheet that lies there."""
    first, second, *rest = path.segments
    return replace(first, end=place), replace(second, start=place), *rest


def _told(start: Place, end: Point) -> Place:
    """A place told from another one: across, and up or down."""
    across, up = end.x - start.x, end.y - start.y
    beside = start.right(across) if across >= 0 else start.left(-across)
    if abs(up) < 1e-9:
        return beside
    return beside.up(up) if up > 0 else beside.down(-up)
