"""Pieces drawn for the tests alone: invented, simple, and with answers that can be worked out."""

from __future__ import annotations

import math
import random

from drafting.geometry import Cubic, Line, Path, Point, Segment, Vector, direction, polyline
from drafting.pattern import Allowances, Dart, Edge, Finish, FinishedPiece, Notch, Piece, Role
from drafting.pattern.finish import finish_piece

LAST = 99
"""The rank of an edge that is in no seam."""


def piece(*edges: Edge, darts: tuple[Dart, ...] = (), notches: tuple[Notch, ...] = ()) -> Piece:
    return Piece(
        name="paper",
        title="Paper",
        cut=(),
        edges=edges,
        darts=darts,
        notches=notches,
        grain=(Point(0, 0), Point(0, 1)),
    )


def polygon(*corners: Point, roles: tuple[Role, ...] = (), kinds: tuple[str, ...] = ()) -> Piece:
    """A piece of straight edges e0, e1, ... each from one corner to the next."""
    count = len(corners)
    return piece(
        *(
            Edge(
                f"e{n}",
                polyline(corners[n], corners[(n + 1) % count]),
                roles[n] if roles else Role.SEAM,
                kinds[n] if kinds else "seam",
            )
            for n in range(count)
        )
    )


def finished(net: Piece, ranks: dict[str, int] | None = None, **allowances: float) -> FinishedPiece:
    """Finish with these allowances; edges without a rank are in no seam."""
    order = ranks or {}
    finish = Finish(allowances=Allowances(**allowances))
    return finish_piece(net, finish, lambda edge: order.get(edge, LAST))


def half_leg(hem_allowance: float = 4.0, side: float = 0.0) -> FinishedPiece:
    """A leg below the knee: half hem 10.5, half knee 11.8 at 43 above."""
    net = polygon(
        Point(-10.5, 0),
        Point(10.5, 0),
        Point(11.8, 43),
        Point(-11.8, 43),
        roles=(Role.HEM, Role.SEAM, Role.SEAM, Role.SEAM),
        kinds=("hem", "side", "waist", "inseam"),
    )
    return finished(net, {"e1": 0, "e3": 1}, hem=hem_allowance, seam=side)


def wedge(
    intake: float,
    length: float,
    *,
    toward_first: bool = True,
    lean: float = 0.0,
    bow: float = 0.0,
) -> Piece:
    """A piece whose waist opens in one dart, its point at the origin.

    Args:
        intake: Width of the mouth in cm.
        length: Mouth to point in cm.
        toward_first: Which way it is pressed.
        lean: By how many degrees the waist misses the square to the legs.
        bow: How far the waist on both sides is bowed downward, in cm.
    """
    half = math.degrees(math.atan2(intake / 2, length))
    leg = math.hypot(length, intake / 2)
    one, two = direction(90 - half), direction(90 + half)
    first, second = Point(0, 0) + one * leg, Point(0, 0) + two * leg
    start = first + one.right.rotated(-lean) * 9
    end = second + two.left.rotated(lean) * 9
    waist = Path((_bowed(start, first, bow), Line(first, second), _bowed(second, end, bow)))
    low = -length
    return piece(
        Edge("waist", waist, kind="waist"),
        Edge("left", polyline(end, Point(end.x, low)), kind="side"),
        Edge("hem", polyline(Point(end.x, low), Point(start.x, low)), Role.HEM, "hem"),
        Edge("right", polyline(Point(start.x, low), start), kind="side"),
        darts=(Dart("waist", first, second, Point(0, 0), Point(0, 1), toward_first),),
    )


def _bowed(a: Point, b: Point, bow: float) -> Segment:
    if bow == 0:
        return Line(a, b)
    down: Vector = (b - a).unit.left * (4 / 3 * bow)
    return Cubic(a, a.toward(b, 1 / 3) + down, a.toward(b, 2 / 3) + down, b)


def hook_panel(angle: float = 90.0) -> Piece:
    """A panel with a crotch hook: the hook meets the inseam at an angle in degrees."""
    fork, hip, top = Point(6, 0), Point(0, 8), Point(-1, 26)
    # the inseam leaves the fork downward; the hook arrives at it at the wanted angle of cloth
    down = direction(-100)
    leaving = -down
    back = down.rotated(-angle)
    hook = Cubic(fork, fork + back * 3.5, hip + Vector(0, -4), hip)
    side_top, knee_side, hem_side = Point(-20, 27), Point(-19, -33), Point(-18, -60)
    hem_in, knee_in = Point(1, -60), Point(2, -33)
    inseam = Path(
        (
            Line(hem_in, knee_in),
            Cubic(knee_in, knee_in + Vector(0.4, 11), fork + leaving * -9, fork),
        )
    )
    side = Path(
        (Cubic(side_top, Point(-22, 12), Point(-22, -14), knee_side), Line(knee_side, hem_side))
    )
    return piece(
        Edge("crotch", Path((hook, Line(hip, top))), kind="crotch"),
        Edge("waist", polyline(top, side_top), kind="waist"),
        Edge("side", side, kind="side"),
        Edge("hem", polyline(hem_side, hem_in), Role.HEM, "hem"),
        Edge("inseam", inseam, kind="inseam"),
        notches=(
            Notch("crotch", 7, 1, "crotch"),
            Notch("side", 20, 1, "hip"),
            Notch("side", 60, 2, "knee"),
        ),
    )


SEWING = {"side": 0, "inseam": 1, "crotch": 2, "waist": 3}
"""Order of sewing of the panel's seams."""


def scoop(radius: float) -> Piece:
    """A square of 20 cm with a half-round bite out of its top edge, tangent joints rounded not."""
    k = 4 / 3 * math.tan(math.pi / 8) * radius
    a, b, low = Point(10 + radius, 20), Point(10 - radius, 20), Point(10, 20 - radius)
    bite = (
        Line(Point(20, 20), a),
        Cubic(a, Point(a.x, a.y - k), Point(low.x + k, low.y), low),
        Cubic(low, Point(low.x - k, low.y), Point(b.x, b.y - k), b),
        Line(b, Point(0, 20)),
    )
    return piece(
        Edge("top", Path(bite)),
        Edge("left", polyline(Point(0, 20), Point(0, 0))),
        Edge("bottom", polyline(Point(0, 0), Point(20, 0))),
        Edge("right", polyline(Point(20, 0), Point(20, 20))),
    )


def wild_piece(rnd: random.Random) -> Piece:
    """A ragged star of 3 to 7 straight, bowed and waved edges, of all roles and kinds."""
    count = rnd.randrange(3, 8)
    angles = [2 * math.pi * (n + rnd.uniform(-0.3, 0.3)) / count for n in range(count)]
    radii = [rnd.uniform(10, 30) for _ in angles]
    corners = [Point(r * math.cos(a), r * math.sin(a)) for r, a in zip(radii, angles, strict=True)]
    edges = []
    for n, p in enumerate(corners):
        role = rnd.choice([*[Role.SEAM] * 4, Role.HEM, Role.FINISHED])
        kind = "hem" if role is Role.HEM else rnd.choice(["side", "crotch", "waist"])
        edges.append(Edge(f"e{n}", _wild_line(rnd, p, corners[(n + 1) % count]), role, kind))
    return piece(*edges)


def _wild_line(rnd: random.Random, p: Point, q: Point) -> Path:
    out, along = (q - p).unit.right, q - p
    b, c = (rnd.uniform(-0.25, 0.25) * along.length for _ in "bc")
    match rnd.randrange(4):
        case 0:
            return polyline(p, q)
        case 1:
            middle = p.toward(q, 0.5) + out * (0.6 * b)
            leaving, arriving = middle + along * 0.2, q - q.toward(p, 0.1)
            one = Cubic(p, p.toward(middle, 0.4), middle + along * -0.2, middle)
            return Path((one, Cubic(middle, leaving, q + arriving * -1.0 + out * (-0.3 * c), q)))
        case _:
            one, two = rnd.uniform(0.15, 0.5), rnd.uniform(0.5, 0.85)
            return Path((Cubic(p, p.toward(q, one) + out * b, p.toward(q, two) + out * c, q),))
