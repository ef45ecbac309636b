"""Everything that is drawn on a piece beside its block of text.

Sizes are what workrooms use. Source for notch depth and spacing, drill and double lines:
common practice, no source. Centimetres, Y up, in the piece's own frame.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product

from drafting.drawing.lettering import block_corners, width
from drafting.drawing.room import Room
from drafting.drawing.sheet import Item, Role, Stroke, Text
from drafting.drawing.words import Words
from drafting.geometry import RIGHT, UP, Path, Point, crossings, polyline
from drafting.pattern import Edge, FinishedNotch, FinishedPiece, Label, Mark, Piece, Pleat
from drafting.pattern import Role as EdgeRole

NOTCH_DEPTH = 0.4
"""A notch is snipped 3 to 4 mm deep."""
NOTCH_SHORT = 0.3
"""It stays at least 1/8 in short of the stitching line."""
NOTCH_SPACING = 1.0
"""Strokes of a double or triple notch lie 1 cm apart."""
CROSS = 0.3
"""Arm of a drill mark."""
HEAD = 0.9
"""Length of the barbs of an arrow."""
DOUBLE = 0.3
"""Distance of the two lines where a piece is lengthened."""
PLEAT_ARROW = 2.5
"""A pleat's arrow lies 2.5 cm under the edge."""
BRACKET = 0.8
"""Depth of the fold bracket's ends."""
SMALL = (0.35, 0.28, 0.22, 0.16)
"""Heights of capitals tried for names of lines, biggest first."""
SIDES = ((False, 0.0), (True, 0.0), (False, 0.6), (True, 0.6), (True, 1.2), (False, 1.2))
"""Where a line's name may stand: under it or over it, and how far off (cm), best first."""

PLEAT_ROLES = (Role.FOLD, Role.MARK)
"""A pleat's fold and the line that it is laid on."""

MARK_ROLES = {
    "fold": Role.FOLD,
    "drill": Role.DRILL,
    "button": Role.DRILL,
    "buttonhole": Role.DRILL,
}
"""Marks that are not simply lines inside: they are drawn through, and no text covers them."""

NAMED_MARKS = ("fold", "centre_front")
"""Lines inside that carry their name."""


def mark_piece(finished: FinishedPiece, words: Words) -> tuple[Item, ...]:
    """All strokes and small texts of a piece, in the order of drawing; its labels stay clear.

    Args:
        finished: The piece, with its labels where it has any.
        words: The sheet's language.
    """
    piece, room = finished.piece, free_room(finished)
    if finished.labels:
        room.take([block_corners([written(label) for label in finished.labels])])
    strokes = (
        Stroke(finished.cut_line, Role.CUT, "cut"),
        *(_edge(e) for e in piece.edges),
        *(s for ends in piece.lengthen for s in _double(*ends)),
        *(Stroke(polyline(a, b), Role.LEVEL, f"level-{name}") for name, a, b in piece.levels),
        *_inside(piece),
        *_to_the_cut(piece, finished.cut_line),
        *(s for n in finished.notches for s in _notch(finished, n)),
        *(s for m in piece.marks for s in _mark(m)),
    )
    return (*strokes, *_names(piece, words, room))


def free_room(finished: FinishedPiece) -> Room:
    """The room inside a piece that no dart, arrow, notch or hole takes."""
    piece, room = finished.piece, Room.within(finished.piece)
    marks = (m for m in piece.marks if MARK_ROLES.get(m.kind) is Role.DRILL)
    holes = (s for m in marks for s in _mark(m))
    folds = (_edge(e) for e in piece.edges if e.role is EdgeRole.FOLD)
    near = (n for n in finished.notches if n.point.distance(n.cut) < NOTCH_DEPTH + NOTCH_SHORT)
    notches = (s for n in near for s in _notch(finished, n))
    firm = (s for s in (*_inside(piece), *holes, *folds, *notches) if s.role in KEEP_OFF)
    room.keep_off((s.path, KEEP_OFF[s.role]) for s in firm)
    room.take(dart.around for dart in piece.darts)
    return room


def _inside(piece: Piece) -> Iterator[Stroke]:
    """What stands inside a piece: darts, pleats, grain and the brackets of folds."""
    for number, dart in enumerate(piece.darts, 1):
        for leg, side in zip(("first", "second"), dart.sides, strict=True):
            yield Stroke(polyline(*side[::-1]), Role.DART, f"dart-{number}-{leg}")
        yield from _cross(dart.drill)
    for number, pleat in enumerate(piece.pleats, 1):
        yield from _pleat(pleat, number)
    yield from _arrow(*piece.grain)
    for edge in piece.edges:
        if edge.role is EdgeRole.FOLD:
            yield from _bracket(edge)


def _to_the_cut(piece: Piece, cut_line: Path) -> Iterator[Stroke]:
    """Dart legs and pleat lines drawn on through the allowance."""
    for dart in piece.darts:
        for end, below, *_ in dart.sides:
            yield from _drawn_on(below, end, cut_line, Role.DART)
    for pleat in piece.pleats:
        for role, way in zip(PLEAT_ROLES, pleat.lines, strict=True):
            yield from _drawn_on(way.segments[0].end, way.start, cut_line, role)


def _drawn_on(point: Point, end: Point, cut_line: Path, role: Role) -> Iterator[Stroke]:
    outer = _carried_out(point, end, cut_line)
    if outer.distance(end) > 1e-3:
        yield Stroke(polyline(end, outer), role)


def written(label: Label) -> Text:
    """A label as it is written."""
    return Text(label.text, label.at, label.height, angle=label.angle)


KEEP_OFF = {Role.GRAIN: 0.3, Role.DRILL: 0.3, Role.NOTCH: 0.2, Role.DART: 0.2, Role.FOLD: 0.2}
"""How far in cm texts stay from strokes of these roles."""


def _edge(edge: Edge) -> Stroke:
    role = Role.FOLD if edge.role is EdgeRole.FOLD else Role.STITCH
    return Stroke(edge.path, role, f"stitch-{edge.name}")


def _pleat(pleat: Pleat, number: int) -> Iterator[Stroke]:
    """The fold and the line it is laid on, and an arrow between them."""
    fold, placed = pleat.lines
    for name, role, way in zip(("fold", "placed"), PLEAT_ROLES, (fold, placed), strict=True):
        yield Stroke(way.reversed(), role, f"pleat-{number}-{name}")
    down = min(PLEAT_ARROW, fold.length() / 2)
    yield from _pointing(fold.at(down), placed.at(down))


def _pointing(tail: Point, tip: Point) -> Iterator[Stroke]:
    back = (tail - tip).unit
    head = min(HEAD, tail.distance(tip) / 3)
    barbs = [tip + back.rotated(turn) * head for turn in (-20, 20)]
    yield Stroke(polyline(tail, tip), Role.MARK)
    yield Stroke(polyline(barbs[0], tip, barbs[1]), Role.MARK)


def _carried_out(point: Point, end: Point, cut_line: Path) -> Point:
    """Where a dart leg, drawn on, reaches the cutting line; its end where it does not soon."""
    ray = polyline(end, end + (end - point).unit * 6.0)
    hits = [c.point for c in crossings(ray, cut_line)]
    return min(hits, key=end.distance, default=end)


def _cross(at: Point) -> Iterator[Stroke]:
    for arm in (RIGHT * CROSS, UP * CROSS):
        yield Stroke(polyline(at + -arm, at + arm), Role.DRILL)


def _notch(finished: FinishedPiece, notch: FinishedNotch) -> Iterator[Stroke]:
    """Short strokes square to the edge, from the cutting line inward."""
    path = finished.piece.edge(notch.notch.edge).path
    reach = notch.point.distance(notch.cut)
    depth = max(NOTCH_SHORT / 2, min(NOTCH_DEPTH, reach - NOTCH_SHORT)) if reach else NOTCH_SHORT
    for k in range(notch.notch.count):
        aside = (k - (notch.notch.count - 1) / 2) * NOTCH_SPACING
        outer, out = notch.cut, notch.direction
        if aside:
            at = notch.notch.at + aside
            out = path.tangent_at(at).right
            outer = path.at(at) + out * reach
        yield Stroke(polyline(outer, outer + out * -depth), Role.NOTCH)


def _double(left: Point, right: Point) -> Iterator[Stroke]:
    aside = (right - left).unit.left * (DOUBLE / 2)
    for move in (aside, -aside):
        yield Stroke(polyline(left + move, right + move), Role.LENGTHEN)


def _mark(mark: Mark) -> Iterator[Stroke]:
    if mark.kind == "drill":
        yield from _cross(mark.path.start)
    else:
        yield Stroke(mark.path, MARK_ROLES.get(mark.kind, Role.MARK))


def _arrow(low: Point, high: Point) -> Iterator[Stroke]:
    yield Stroke(polyline(low, high), Role.GRAIN, "grain")
    head = min(HEAD, low.distance(high) / 4)
    for tip, back in ((high, (low - high).unit), (low, (high - low).unit)):
        left, right = (tip + back.rotated(turn) * head for turn in (-20, 20))
        yield Stroke(polyline(left, tip, right), Role.GRAIN)


def _bracket(edge: Edge) -> Iterator[Stroke]:
    """A bracket on the cloth's side of a fold, its ends pointing at the fold."""
    path, length = edge.path, edge.path.length()
    inset, depth = min(2.0, length / 8), min(BRACKET, length / 10)
    first, last = path.at(inset), path.at(length - inset)
    inward = (last - first).unit.left * depth
    yield Stroke(polyline(first, first + inward, last + inward, last), Role.FOLD)
    for tip in (first, last):
        barb = [tip + inward.rotated(turn) * 0.35 for turn in (-25, 25)]
        yield Stroke(polyline(barb[0], tip, barb[1]), Role.FOLD)


def _names(piece: Piece, words: Words, room: Room) -> Iterator[Text]:
    yield from room.first_that_fits(_along(words.grain, *piece.grain))
    for edge in piece.edges:
        if edge.role is EdgeRole.FOLD:
            yield from room.first_that_fits(_beside_fold(words.place_on_fold, edge))
    for name, left, right in piece.levels:
        yield from room.first_that_fits(_on_line(words.level(name), left, right))
    for mark in piece.marks:
        if mark.kind in NAMED_MARKS:
            yield from room.first_that_fits(_on_line(words.level(mark.kind), *_upward(mark.path)))
    for left, right in piece.lengthen:
        yield from room.first_that_fits(_on_line(words.lengthen, left, right, DOUBLE / 2))


def _upward(path: Path) -> tuple[Point, Point]:
    """Ends of a line in the order in which a text along it is read: to the right, or upward."""
    a, b = path.start, path.end
    return (a, b) if (round(a.x, 3), a.y) < (round(b.x, 3), b.y) else (b, a)


def _along(text: str, low: Point, high: Point) -> Iterator[Text]:
    """Candidates beside an arrow, reading upward."""
    up = (high - low).unit
    for height, share, side in product(SMALL, (0.5, 0.35, 0.65, 0.2, 0.8), (1, -1)):
        gap = 0.4 + (0.4 if side > 0 else 1.3) * height
        at = low.toward(high, share) + up.left * (side * gap)
        yield Text(text, at, height, Role.GRAIN, up.angle, "middle")


def _beside_fold(text: str, edge: Edge) -> Iterator[Text]:
    up = edge.path.end - edge.path.start
    middle = edge.path.start.toward(edge.path.end, 0.5)
    for height, share in product(SMALL, (0.5, 0.3, 0.7)):
        at = edge.path.start.toward(edge.path.end, share) if share != 0.5 else middle
        inward = up.unit.left * (BRACKET + 0.3)
        angle = up.angle
        if up.unit.dot(UP) < -0.5:  # read it upward
            angle, inward = angle + 180, inward + up.unit.left * (1.3 * height)
        else:
            inward = inward + up.unit.left * (0.4 * height)
        yield Text(text, at + inward, height, Role.FOLD, angle, "middle")


def _on_line(text: str, left: Point, right: Point, gap: float = 0.0) -> Iterator[Text]:
    """Candidates just over and just under a line, at its ends first, then along it."""
    along, size = (right - left).unit, left.distance(right)
    for height, (under, apart) in product(SMALL, SIDES):
        free = size - width(text, height) - 1.0
        if free < 0:
            continue
        far = gap + apart + height * (1.4 if under else 0.5)
        off = along.left * (-far if under else far)
        for share in (0.0, 1.0, 0.15, 0.85, 0.3, 0.7):
            at = left + along * (0.5 + share * free) + off
            yield Text(text, at, height, Role.LEVEL, along.angle)
