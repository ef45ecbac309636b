"""A tape and a set square for drawn cutting lines: what they show, not how they were made.

Everything is measured by shapely on a fine polyline of the drawn line.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from shapely import LinearRing, LineString
from shapely import Point as Dot

from drafting.geometry import Cubic, Path, Point, Vector
from drafting.pattern import Corner, CornerRule, Edge, FinishedPiece, Role

FLAT = 1e-6
"""Flattening error in cm of the lines that are measured here."""

MOST_BOW = 15.0
"""Degrees between chord and end of a hem that is still folded about its chord. House method."""

FAR = 500.0
"""Length in cm of a ruler."""


def line(path: Path) -> LineString:
    """A path as a fine polyline, evaluated here."""
    parts = (
        _points(s) if isinstance(s, Cubic) else np.array([[s.end.x, s.end.y]])
        for s in path.segments
    )
    return LineString(np.concatenate([np.array([[path.start.x, path.start.y]]), *parts]))


def _points(c: Cubic) -> np.ndarray:
    corners = np.array([[p.x, p.y] for p in (c.start, c.leaving, c.arriving, c.end)])
    bend = 6 * np.abs(np.diff(corners, 2, axis=0)).max()
    count = max(8, math.ceil(math.sqrt(bend / 8 / FLAT)))
    t = np.linspace(0, 1, count + 1)[1:, None]
    return sum(math.comb(3, k) * t**k * (1 - t) ** (3 - k) * corners[k] for k in range(4))


def ring(path: Path) -> LinearRing:
    """A closed path as a ring."""
    assert path.start.distance(path.end) < 1e-6
    return LinearRing(line(path).coords)


def dot(p: Point) -> Dot:
    return Dot(p.x, p.y)


def on_cap(finished: FinishedPiece, edge: Edge, p: Point) -> bool:
    """Whether a point of the cutting line stands over the mouth of a dart or a pleat."""
    for pleat in (t for t in finished.piece.pleats if t.edge == edge.name):
        ends = ((pleat.one, pleat.second), (pleat.two, pleat.first))
        if all(_beside(line_down, other, p) for line_down, other in ends):
            return True
    for dart in finished.piece.darts_on(edge.name):
        one, two, v = dart.first - dart.point, dart.second - dart.point, p - dart.point
        if one.unit.cross(v) > -1e-3 and v.cross(two.unit) > -1e-3 and v.dot(one) > 0:
            return True
    return False


def _beside(down: Path, other: Point, p: Point) -> bool:
    """Whether a point lies on the same side of a pleat's line, carried on upward, as the other."""
    up = -down.start_tangent
    return up.cross(p - down.start) * up.cross(other - down.start) > -1e-3


def inner_distances(finished: FinishedPiece, number: int) -> list[float]:
    """Distances from an edge's cut to its line; ends (1.5 allowances) and caps are left out."""
    edge, allowance = finished.piece.edges[number], finished.allowances[number]
    cut = finished.edge_cuts[number]
    if cut is None:
        return []
    drawn, stitched = line(cut), line(edge.path)
    clear = math.hypot(1.5 * allowance, allowance)
    found = []
    for k in range(101):
        p = drawn.interpolate(k / 100, normalized=True)
        ends = min(p.distance(dot(edge.path.start)), p.distance(dot(edge.path.end)))
        if ends > clear and not on_cap(finished, edge, Point(p.x, p.y)):
            found.append(p.distance(stitched))
    return found


@dataclass(frozen=True)
class Leg:
    """One edge at a corner, as drawn: `ahead` is its direction toward the corner."""

    edge: Edge
    allowance: float
    ahead: Vector
    outward: Vector

    def off(self, p: Point) -> float:
        """Distance from the edge, or from its straight continuation beyond the corner."""
        at_corner = self.edge.path.end, self.edge.path.start
        corner = min(at_corner, key=lambda c: c.distance(p))
        beyond = abs(self.ahead.cross(p - corner))
        along = line(self.edge.path).distance(dot(p))
        return min(beyond, along, key=lambda d: abs(d - self.allowance))


def legs(finished: FinishedPiece, number: int) -> tuple[Leg, Leg]:
    """Both edges of the corner at the end of an edge."""
    after = (number + 1) % len(finished.piece.edges)
    e, f = finished.piece.edges[number], finished.piece.edges[after]
    one, two = e.path.end_tangent, f.path.start_tangent
    return (
        Leg(e, finished.allowances[number], one, one.right),
        Leg(f, finished.allowances[after], -two, two.right),
    )


def across(
    finished: FinishedPiece,
    corner: Corner,
    along: Vector,
    out: Vector,
    h: float,
    near: float = 0.0,
    least: float = -FAR,
) -> float:
    """Where a ruler laid parallel to `along`, h outside the corner, meets the cutting line.

    Returns:
        The position along the ruler from the corner; of several that nearest to `near`.
    """
    on = corner.at + out * h
    ruler = LineString([_xy(on + along * -FAR), _xy(on + along * FAR)])
    hits = ring(finished.cut_line).intersection(ruler)
    found = [(Point(*c) - corner.at).dot(along) for g in _parts(hits) for c in g.coords]
    ahead = [f for f in found if f > least]
    assert ahead, "the cutting line does not come here"
    return min(ahead, key=lambda f: abs(f - near))


def _parts(g):
    return getattr(g, "geoms", [g])


def _xy(p: Point) -> tuple[float, float]:
    return p.x, p.y


def vertices(path: Path | None) -> list[Point]:
    return [] if path is None else [path.start, *(s.end for s in path.segments)]


def prove(finished: FinishedPiece, number: int) -> None:
    """Measure on the drawn line that the corner at the end of an edge is what it says."""
    corner = finished.corners[number]
    proofs = {
        CornerRule.MITRE: prove_mitre,
        CornerRule.SMOOTH: prove_mitre,
        CornerRule.BEVEL: prove_bevel,
        CornerRule.SQUARED: prove_squared,
        CornerRule.MIRRORED: prove_mirrored,
        CornerRule.FOLD: prove_fold,
        CornerRule.STEP: prove_step,
    }
    proofs[corner.rule](finished, number, corner)


def joint(finished: FinishedPiece, number: int) -> tuple[Path, Path]:
    """The cuts before and after a corner; the corner's path must lie between them."""
    before = finished.edge_cuts[number]
    after = finished.edge_cuts[(number + 1) % len(finished.edge_cuts)]
    path = finished.corners[number].path
    assert before is not None
    assert after is not None
    assert before.end.distance(path.start if path else after.start) < 1e-6
    assert after.start.distance(path.end if path else before.end) < 1e-6
    return before, after


def prove_mitre(finished: FinishedPiece, number: int, corner: Corner) -> None:
    """The tip stands at each edge's own allowance, and outside no farther than the limit."""
    one, two = legs(finished, number)
    before, after = joint(finished, number)
    points = vertices(corner.path) or [before.end]
    assert len(points) <= 3
    if len(points) == 2:
        carried_on = (points[1] - points[0]).unit.dot(one.ahead) > 0.999999
        tip = points[1] if carried_on else points[0]
    else:
        tip = points[len(points) // 2]
    assert abs(one.off(tip) - one.allowance) < 0.01
    assert abs(two.off(tip) - two.allowance) < 0.01
    if corner.path is not None:
        assert tip.distance(corner.at) <= 2.5 * max(one.allowance, two.allowance) + 1e-6
    for p, q in pairwise(points):
        onward = (one.ahead, before.end_tangent) if q == tip else (-two.ahead, after.start_tangent)
        assert max((q - p).unit.dot(d) for d in onward) > 0.999999


def prove_bevel(finished: FinishedPiece, number: int, corner: Corner) -> None:
    """The spike is cut off square, at the limit from the corner."""
    one, two = legs(finished, number)
    limit = 2.5 * max(one.allowance, two.allowance)
    _, a, b, _ = vertices(corner.path)
    assert abs(abs((b - a).unit.cross(corner.at - a)) - limit) < 0.01
    assert abs(one.off(a) - one.allowance) < 0.01
    assert abs(two.off(b) - two.allowance) < 0.01


def beyond(finished: FinishedPiece, number: int) -> float:
    """How far the squared end of a seam stands beyond its corner, along the seam, in cm."""
    corner = finished.corners[number]
    seam = next(s for s in legs(finished, number) if s.edge.name == corner.squared_to)
    return across(finished, corner, seam.ahead, seam.outward, seam.allowance / 2)


def prove_squared(finished: FinishedPiece, number: int, corner: Corner) -> None:
    """All the way from the seam's line out to its cut the end stands at one place along the seam.

    And it starts where the other cutting line meets the seam's line: at the other's allowance.
    """
    seam = next(s for s in legs(finished, number) if s.edge.name == corner.squared_to)
    other = next(s for s in legs(finished, number) if s.edge.name != corner.squared_to)
    if seam.allowance > 0:
        steps = [seam.allowance * k / 20 for k in range(1, 20)]
        places = [across(finished, corner, seam.ahead, seam.outward, h, least=-1e-6) for h in steps]
        assert max(places) - min(places) < 0.002
        at = corner.at + seam.ahead * places[0]
    else:
        ends = vertices(corner.path) or [joint(finished, number)[0].end]
        at = max(ends, key=lambda p: (p - corner.at).dot(seam.ahead))
    assert abs(other.off(at) - other.allowance) < 0.01
    assert (at - corner.at).dot(seam.ahead) > -1e-6
    tip = at + seam.outward * seam.allowance
    assert ring(finished.cut_line).distance(dot(tip)) < 1e-4


def prove_mirrored(finished: FinishedPiece, number: int, corner: Corner) -> None:
    """Turned over the hem's fold, the cut below it lies on the cut above it.

    A hem that is bowed little is folded about its chord, for that is how wide the leg is there; one
    that is curved more, as of a flared skirt, about its own direction at the corner, and so is one
    that meets a plumb seam square, as at the centre of a skirt.
    """
    one, two = legs(finished, number)
    hem, seam = (one, two) if one.edge.role is Role.HEM else (two, one)
    square = abs(seam.ahead.x) < 1e-6 and abs(hem.ahead.y) < 1e-6
    chord = (hem.edge.path.end - hem.edge.path.start).unit
    chord = chord if hem is one else -chord
    ahead = chord if chord.angle_to(hem.ahead) <= MOST_BOW and not square else hem.ahead
    outward = ahead.right if hem is one else ahead.left
    below = above = across(finished, corner, ahead, outward, 0.0)
    tip = max(vertices(corner.path), key=lambda p: (p - corner.at).dot(ahead + outward))
    deep = (tip - corner.at).dot(outward)
    assert deep > hem.allowance / 2
    for k in range(1, 19):
        h = deep * k / 20
        below = across(finished, corner, ahead, outward, h, below)
        above = across(finished, corner, ahead, outward, -h, above)
        assert abs(below - above) < 0.005


def prove_fold(finished: FinishedPiece, number: int, corner: Corner) -> None:
    """Nothing is cut beyond the fold, and the other cutting line ends on the fold's line."""
    one, two = legs(finished, number)
    fold, other = (one, two) if one.edge.role is Role.FOLD else (two, one)
    out = [fold.outward.dot(Point(*c) - corner.at) for c in ring(finished.cut_line).coords]
    assert max(out) < 1e-6
    points = vertices(corner.path) or [corner.at]
    tip = max(
        (p for p in points if abs(fold.outward.dot(p - corner.at)) < 1e-6),
        key=lambda p: (p - corner.at).dot(fold.ahead),
    )
    assert abs(other.off(tip) - other.allowance) < 0.01


def prove_step(finished: FinishedPiece, number: int, corner: Corner) -> None:
    """A stroke straight across the line, from the one allowance to the other.

    At an inner corner it is square to the edge with the wider allowance.
    """
    one, two = legs(finished, number)
    points = vertices(corner.path)
    p, q = max(pairwise(points), key=lambda s: s[0].distance(s[1]))
    assert abs(one.off(p) - one.allowance) < 0.01
    assert abs(two.off(q) - two.allowance) < 0.01
    flat = one.ahead.angle_to(-two.ahead) <= 10
    wide = one if one.allowance > two.allowance else two
    middle = (one.outward + two.outward).unit if flat else wide.outward
    assert abs((q - p).unit.cross(middle)) < 1e-6
