"""One piece of a nest: its sizes over each other, what they share, and their names."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise, product

import shapely
from shapely.geometry.base import BaseGeometry

from drafting.drawing.labels import label_piece
from drafting.drawing.lettering import corners
from drafting.drawing.marking import KEEP_OFF, mark_piece, written
from drafting.drawing.nest_align import Anchor, anchors
from drafting.drawing.nest_lines import inside_pen, outline_pen
from drafting.drawing.nest_names import Fan, name_corners
from drafting.drawing.nest_notches import SizeNotch, name_notches
from drafting.drawing.nest_words import NestWords
from drafting.drawing.room import Room, walls
from drafting.drawing.setting import clearings
from drafting.drawing.shapes import polygon
from drafting.drawing.sheet import Group, Item, Pen, Role, Stroke, Text
from drafting.drawing.words import Unit, Words
from drafting.geometry import Path, Point, Transform, Vector, curve, join, polyline, shift
from drafting.pattern import Dart, Finish, FinishedPattern, FinishedPiece, Piece

RING = 0.4
"""Radius of the circle round the shared point, cm."""
CROSS = 1.2
"""Arm of the cross on it, cm."""
ANCHOR_PEN = Pen(0.25)
SOLID, ARM = Pen(0.4), 0.15
"""Pen of an outline's corners, and how far they are drawn to both sides, cm."""
TURN = 20.0
"""Edges that meet at less than so many degrees make no corner worth naming."""
ALIKE = 1e-3
"""Outlines within 0.001 cm of each other are the same."""


@dataclass(frozen=True, slots=True)
class Texts:
    """What is written: names of the sizes, the pattern's title, unit and language."""

    names: tuple[str, ...]
    title: str
    unit: Unit
    words: Words
    more: NestWords

    @property
    def sizes(self) -> str:
        """All sizes in one line."""
        return self.more.sizes.format(names=", ".join(self.names))


@dataclass(frozen=True, slots=True)
class NestedPiece:
    """A piece of a nest.

    Attributes:
        sizes: For each size that differs, its place in the range and what is drawn of it.
        area: What all of it covers, names of sizes among it.
        common: What is drawn once.
        aligned: For each size of the piece its place in the range, and the move that lays its own
            frame on the middle size's.
    """

    sizes: tuple[tuple[int, Group], ...]
    area: shapely.Polygon
    common: Group
    aligned: tuple[tuple[int, Transform], ...] = ()


@dataclass(frozen=True, slots=True)
class _Laid:
    """A size of the piece moved onto the middle one: its strokes, the cutting line first."""

    place: int
    finished: FinishedPiece
    move: Transform
    strokes: tuple[Stroke, ...]

    @property
    def corners(self) -> dict[tuple[str, str], Point]:
        """Each corner of the cutting line by the edges that meet there."""
        corners = self.finished.corners
        return {
            (corner.before, corner.after): self.move.point(cut_corner(self.finished, k))
            for k, corner in enumerate(corners)
        }


def nest_piece(name: str, patterns: Sequence[FinishedPattern], texts: Texts) -> NestedPiece:
    """Lay all sizes of the piece of that name over each other, in the frame of the middle one."""
    have = [(k, p) for k, pattern in enumerate(patterns) for p in pattern.pieces if _is(p, name)]
    shared = anchors(tuple(finished.piece for _, finished in have))
    middle = len(have) // 2
    laid = [
        _lay(k, finished, shared[middle].at - own.at, texts.words)
        for (k, finished), own in zip(have, shared, strict=True)
    ]
    total = len(patterns[have[middle][0]].pieces)
    if 1 < len(laid) == len(patterns) and all(_alike(laid[0], size) for size in laid):
        nested = _once(laid[middle], shared[middle], total, patterns[0].finish, texts)
    else:
        nested = _many(laid, shared[middle], total, patterns[0].finish, texts)
    return replace(nested, aligned=tuple((size.place, size.move) for size in laid))


def _is(finished: FinishedPiece, name: str) -> bool:
    return finished.piece.name == name


def _lay(place: int, finished: FinishedPiece, by: Vector, words: Words) -> _Laid:
    move = shift(by.x, by.y)
    items = mark_piece(finished, words)
    kept = (i.transformed(move) for i in items if isinstance(i, Stroke) and i.role in KEPT)
    return _Laid(place, finished, move, tuple(kept))


KEPT = (Role.CUT, Role.DART, Role.FOLD, Role.NOTCH, Role.DRILL, Role.MARK)
"""What is drawn of every size."""


def cut_corner(finished: FinishedPiece, number: int) -> Point:
    """The point of the cutting line at the end of an edge: of a blunt corner the outermost."""
    corner, beside = finished.corners[number], finished.edge_cuts[number]
    if corner.path is not None:
        ends = (corner.path.start, *(segment.end for segment in corner.path.segments))
        return max(ends, key=corner.at.distance)
    return corner.at if beside is None else beside.end


def _alike(one: _Laid, two: _Laid) -> bool:
    """Whether two sizes of a piece are drawn the same."""
    return len(one.strokes) == len(two.strokes) and all(
        _same(a.path, b.path) for a, b in zip(one.strokes, two.strokes, strict=True)
    )


def _same(one: Path, two: Path) -> bool:
    pairs = zip(one.flattened(0.01), two.flattened(0.01), strict=False)
    return abs(one.length() - two.length()) < ALIKE and all(a.distance(b) < ALIKE for a, b in pairs)


def _once(laid: _Laid, anchor: Anchor, total: int, finish: Finish, texts: Texts) -> NestedPiece:
    """A piece that is the same in all sizes: drawn once, by the roles of its lines."""
    told = f"{texts.sizes}: {texts.more.all_sizes_alike}"
    fixed, room = _fixed([laid], laid, anchor, texts)
    labels = _labels(laid, total, finish, texts, told, room)
    piece = laid.finished.piece
    group = Group(piece.name, piece.title, (*laid.strokes, *fixed, *labels))
    return NestedPiece((), polygon(laid.strokes[0].path), group)


def _many(
    laid: Sequence[_Laid], anchor: Anchor, total: int, finish: Finish, texts: Texts
) -> NestedPiece:
    base = laid[len(laid) // 2]
    piece = base.finished.piece
    cuts = [polygon(size.strokes[0].path) for size in laid]
    rings = [cut.exterior for cut in cuts]
    corners, area = name_corners(
        _fans(laid, piece, texts.names), shapely.union_all(cuts), shapely.union_all(rings)
    )
    fixed, room = _fixed(laid, base, anchor, texts)
    notches, area = name_notches(tuple(_notches(laid)), rings, texts.names, area)
    labels = _labels(base, total, finish, texts, texts.sizes, room)
    told: tuple[Told, ...] = (
        *((n.sizes, (n.leader, n.text)) for n in corners),
        *((n.sizes, (n.text,)) for n in notches),
    )
    together = (item for sizes, items in told if len(sizes) > 1 for item in items)
    return NestedPiece(
        tuple((size.place, _size_group(size, told, texts)) for size in laid),
        _one_area(area),
        Group(piece.name, piece.title, (*fixed, *labels, *together)),
    )


Told = tuple[tuple[int, ...], tuple[Item, ...]]
"""Sizes, and what is written of them together."""


def _notches(laid: Sequence[_Laid]) -> Iterator[SizeNotch]:
    for size in laid:
        for notch in size.finished.notches:
            at = size.move.point(notch.cut)
            yield SizeNotch(size.place, notch.notch.match, at, notch.direction)


def _fans(laid: Sequence[_Laid], piece: Piece, names: Sequence[str]) -> tuple[Fan, ...]:
    """Each true corner over all sizes of the range."""
    corners = {size.place: size.corners for size in laid}
    found = [corners.get(place, {}) for place in range(len(names))]
    return tuple(Fan.of([c.get(k) for c in found], names, out) for k, out in _ways_out(piece))


def _ways_out(piece: Piece) -> Iterator[tuple[tuple[str, str], Vector]]:
    """Each true corner and the direction that halves the angle outside it."""
    edges = piece.edges
    for edge, after in zip(edges, (*edges[1:], edges[0]), strict=True):
        came, goes = edge.path.end_tangent, after.path.start_tangent
        if abs(came.angle_to(goes)) > TURN:
            yield (edge.name, after.name), (came.right + goes.right).unit


def _one_area(area: BaseGeometry) -> shapely.Polygon:
    """The area as one polygon without holes; its hull where a name hangs on nothing."""
    around = area.buffer(0.1, quad_segs=2)
    if isinstance(around, shapely.Polygon):
        return shapely.Polygon(around.exterior)
    hull = around.convex_hull
    assert isinstance(hull, shapely.Polygon)  # noqa: S101 - a piece has an area
    return hull


def _size_group(size: _Laid, told: Sequence[Told], texts: Texts) -> Group:
    """What is drawn of one size."""
    inside, name = inside_pen(size.place), texts.names[size.place]
    pens = {Role.CUT: outline_pen(size.place), Role.DART: inside, Role.MARK: inside}
    strokes = (replace(stroke, pen=pens.get(stroke.role)) for stroke in size.strokes)
    own = (item for sizes, items in told if sizes == (size.place,) for item in items)
    turns = (Stroke(path, Role.MARK, pen=SOLID) for path in _turns(size.strokes[0].path))
    piece, title = size.finished.piece, texts.more.size.format(name=name)
    return Group(
        f"{piece.name}-size-{size.place + 1}",
        f"{piece.title}, {title}",
        (*strokes, *turns, *own),
        title,
    )


def _turns(outline: Path) -> Iterator[Path]:
    """The corners of an outline, to be drawn solid: a gap of a dashed line may fall on them."""
    for came, goes in pairwise((*outline.segments, outline.segments[0])):
        into, out = came.tangent(1.0), goes.tangent(0.0)
        if abs(into.angle_to(out)) > TURN:
            yield polyline(came.end + into * -ARM, came.end, came.end + out * ARM)


def _fixed(
    laid: Sequence[_Laid], base: _Laid, anchor: Anchor, texts: Texts
) -> tuple[tuple[Item, ...], Room]:
    """Grain and shared point with their names, and the room that all sizes leave inside."""
    items = mark_piece(base.finished, texts.words)
    grain = tuple(item for item in items if item.role is Role.GRAIN)
    marks = tuple(_crossed_circle(anchor.at))
    room = _room(laid, base, (*grain, *marks))
    name = room.first_that_fits(_beside(texts.more.anchor(anchor), anchor.at))
    return (*grain, *marks, *name), room


def _labels(
    base: _Laid, total: int, finish: Finish, texts: Texts, told: str, room: Room
) -> tuple[Text, ...]:
    labels = label_piece(
        base.finished,
        title=texts.title,
        number=base.finished.piece.number,
        total=total,
        reference=told,
        finish=finish,
        verdict="sound",
        unit=texts.unit,
        words=texts.words,
        clearing=clearings([room])[0],
    )
    return tuple(map(written, labels))


def _room(laid: Sequence[_Laid], base: _Laid, common: Sequence[Item]) -> Room:
    """What lies inside all sizes and is covered by none of their marks."""
    outlines = (size.finished.piece.outline.transformed(size.move) for size in laid)
    inside = shapely.intersection_all([polygon(outline) for outline in outlines])
    whole = polygon(base.finished.piece.outline)
    room = Room(walls(max(shapely.get_parts(inside), key=lambda part: part.area, default=whole)))
    strokes = [stroke for size in laid for stroke in size.strokes]
    strokes += [item for item in common if isinstance(item, Stroke)]
    room.keep_off((s.path, KEEP_OFF.get(s.role, 0.2)) for s in strokes)
    room.take(corners(item) for item in common if isinstance(item, Text))
    room.take(_wedge(dart, size.move) for size in laid for dart in size.finished.piece.darts)
    return room


def _wedge(dart: Dart, move: Transform) -> tuple[Point, ...]:
    return tuple(map(move.point, dart.around))


def _crossed_circle(at: Point) -> Iterator[Stroke]:
    for arm in (Vector(CROSS, 0.0), Vector(0.0, CROSS)):
        yield Stroke(polyline(at + -arm, at + arm), Role.MARK, pen=ANCHOR_PEN)
    yield Stroke(_circle(at, RING), Role.MARK, "shared-point", ANCHOR_PEN)


def _circle(centre: Point, radius: float) -> Path:
    """A circle of four cubics, true to 0.0003 of its radius."""
    arm, handle = Vector(radius, 0.0), Vector(radius, radius * 0.5523)
    quarters = []
    for turned in (0.0, 90.0, 180.0, 270.0):
        first, last = arm.rotated(turned), arm.rotated(turned + 90.0)
        leaving, arriving = handle.rotated(turned), Vector(handle.y, handle.x).rotated(turned)
        quarters.append(curve(centre + first, centre + leaving, centre + arriving, centre + last))
    return join(quarters)


def _beside(text: str, at: Point) -> Iterator[Text]:
    """Candidates for the name of the shared point, to its right and left, over and under it."""
    for height, far, rise in product((0.28, 0.22, 0.16), (0.6, 1.4), (0.2, -0.6, 0.8, -1.2)):
        yield Text(text, at + Vector(far, rise), height)
        yield Text(text, at + Vector(-far, rise), height, anchor="end")
        yield Text(text, at + Vector(rise + height, far), height, angle=90.0)
