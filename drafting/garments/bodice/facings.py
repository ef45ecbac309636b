"""Facings of the neck and of sleeveless armholes, traced while the darts are closed.

Source: 5 cm deep at the neck, 4 at the armhole, traced with darts closed: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.craft.piecework import counter_clockwise, plumb_grain
from drafting.errors import ConstructionError
from drafting.garments.bodice.necks import curved_neck
from drafting.garments.bodice.shaping import Whole, WholeBack
from drafting.geometry import DOWN, Line, Path, Point, crossings, join, loop, offset, with_handles
from drafting.pattern import Cut, Edge, Piece, Role
from drafting.pattern.piece import RAW

NECK, ARMHOLE = 5.0, 4.0
"""Depths in cm; less on a narrow shoulder, where two facings meet."""


STRIP = 4.5
"""Width in cm of a buttoned edge's facing inside the centre. Source: common practice, no source."""


@dataclass(frozen=True, slots=True)
class Centre:
    """How a centre edge is finished: on the fold, sewn to the zip, or turned back past the buttons.

    Attributes:
        fold: Whether it is cut on the fold.
        name: Name of the edge.
        stand: Width in cm of what stands beyond the centre, for buttons.
    """

    fold: bool
    name: str
    stand: float = 0.0


def neck_depth(shoulder: float, *, sleeveless: bool) -> float:
    """Depth of the neck facing at the shoulder, cm."""
    return min(NECK, 0.5 * shoulder) if sleeveless else min(NECK, shoulder - 1.0)


def neck_facing_front(whole: Whole, depth: float, centre: Centre) -> Piece:
    """The front's neck facing."""
    neck, begin = whole.neckline, whole.shoulder.start
    end = whole.shoulder.at(depth)
    low = Point(neck.start.x, neck.start.y - NECK)
    up = whole.shoulder.start_tangent
    square = up.right if up.right.y > 0 else up.left
    lower = curved_neck(low, end, square, 0.66)
    edges = (
        Edge("neckline", neck, kind="neckline"),
        Edge("shoulder", Path((Line(begin, end),))),
        Edge("lower", lower.reversed(), Role.FINISHED, RAW),
        _centre_edge(centre, low, neck.start),
    )
    return _piece("neck_facing_front", "Front neck facing", edges, fold=centre.fold, near=low.x)


def neck_facing_back(back: WholeBack, depth: float, centre: Centre) -> Piece:
    """The back's neck facing, its shoulder dart folded away."""
    nape, begin, end = back.neckline.end, back.closed.start, back.closed.at(depth)
    low = Point(nape.x, nape.y - NECK)
    out = back.closed.start_tangent
    square = out.right if out.right.y > 0 else out.left
    lower = curved_neck(low, end, square, 0.6)
    edges = (
        _centre_edge(centre, nape, low),
        Edge("lower", lower, Role.FINISHED, RAW),
        Edge("shoulder", Path((Line(end, begin),))),
        Edge("neckline", back.neckline, kind="neckline"),
    )
    return _piece("neck_facing_back", "Back neck facing", edges, fold=centre.fold, near=low.x)


def _centre_edge(centre: Centre, start: Point, end: Point) -> Edge:
    line = Path((Line(start, end),))
    return Edge(centre.name, line, Role.FOLD, RAW) if centre.fold else Edge(centre.name, line, kind="opening")


def opening_facing(neckline: Path, shoulder: Path, depth: float, waist: float, stand: float, *, front: bool) -> Piece:
    """Neck facing and facing of a buttoned edge in one, down to the hem.

    Args:
        neckline: From the centre to the shoulder.
        shoulder: From the neckline outward, the dart closed.
        depth: Depth at the shoulder, cm.
        waist: Height of the waist.
        stand: Width of what stands beyond the centre, cm.
        front: Whether it is a front's; else a back's.
    """
    way = 1.0 if front else -1.0
    top, begin, end = neckline.start, shoulder.start, shoulder.at(depth)
    out, inward = Point(top.x + way * stand, top.y), Point(top.x - way * STRIP, top.y - NECK)
    low, corner = Point(inward.x, waist), Point(out.x, waist)
    up = shoulder.start_tangent
    into = up.left if up.left.y < 0 else up.right
    far = 0.4 * end.distance(inward)
    lower = Path((with_handles(end, into, inward, DOWN, far), Line(inward, low)))
    edges = (
        Edge("neckline", neckline, kind="neckline"), Edge("shoulder", Path((Line(begin, end),))), Edge("lower", lower, Role.FINISHED, RAW),
        Edge("hem", Path((Line(low, corner),)), Role.HEM, "waist"), Edge("edge", Path((Line(corner, out),)), kind="opening"), Edge("stand_top", Path((Line(out, top),)), kind="neckline"),
    )
    name, title = ("neck_facing_front", "Front facing") if front else ("neck_facing_back", "Back facing")
    return _piece(name, title, edges, fold=False, near=low.x)


def armhole_facing(name: str, title: str, armhole: Path, side: Path, depth: float) -> Piece:
    """One half of an armhole's facing.

    Args:
        name: Name of the piece.
        title: What is written on it.
        armhole: From the shoulder's end to the underarm, the bust dart closed.
        side: From the underarm down.
        depth: cm.

    Raises:
        ConstructionError: The facing does not reach the side seam.
    """
    hand = 1.0 if _inside_left(armhole, side) else -1.0
    inner = join(Path((s,)) for s in offset(armhole, depth * hand))
    ahead = inner.end + inner.end_tangent * depth
    long = Path((*inner.segments, Line(inner.end, ahead)))
    hits = crossings(side, long)
    if not hits:
        raise ConstructionError("The armhole facing misses the side seam.", where="armhole facing")
    lower, down = long.split_at(*hits[0].second)[0], side.split_at(*hits[0].first)[0]
    edges = (
        Edge("armhole", armhole, kind="armhole"),
        Edge("side", down, kind="side"),
        Edge("lower", lower.reversed(), Role.FINISHED, RAW),
        Edge("shoulder", Path((Line(inner.start, armhole.start),))),
    )
    return _piece(name, title, edges, fold=False, near=armhole.start.x)


def _inside_left(armhole: Path, side: Path) -> bool:
    """Whether the cloth lies on the left of the armhole, walked from the shoulder."""
    return armhole.end_tangent.cross(side.start_tangent) > 0


def _piece(name: str, title: str, edges: tuple[Edge, ...], *, fold: bool, near: float) -> Piece:
    cut = (Cut("main", 1), Cut("fusible", 1)) if fold else (Cut("main", 2, mirrored=True), Cut("fusible", 2, mirrored=True))
    outline = loop(e.path for e in edges)
    left, _, right, _ = outline.bounds()
    at = near + (0.2 * (right - left) if near - left < right - near else -0.2 * (right - left))
    at = min(max(at, left + 0.15 * (right - left)), right - 0.15 * (right - left))
    piece = Piece(name=name, title=title, cut=cut, edges=edges, grain=plumb_grain(outline, at), half=fold)
    return counter_clockwise(piece)
