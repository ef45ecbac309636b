"""From trued lines to pieces: fronts and backs with darts or princess lines, and the sleeve.

Source: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.craft.buttons import button, buttonhole
from drafting.craft.piecework import counter_clockwise, lengthen_lines, level_lines, plumb_grain
from drafting.errors import ConstructionError
from drafting.garments.bodice.facings import Centre
from drafting.garments.bodice.princess import back_line, front_lines
from drafting.garments.bodice.shaping import Whole, WholeBack, divided_armhole, front_edges
from drafting.garments.bodice.sleeve import Sleeve
from drafting.garments.bodice.spec import Place, Shape
from drafting.geometry import RIGHT, Path, Point, Vector, crossing_with_line, loop, polyline
from drafting.pattern import Cut, Dart, Edge, Notch, Piece, Role
from drafting.pattern.piece import RAW

PAIR, FOLD = (Cut("main", 2, mirrored=True),), (Cut("main", 1),)

STAND = 2.0
"""Width in cm of what stands beyond the centre under the buttons: a button of some 18 mm. Common practice."""

BUTTON_PITCH = 8.0
BUTTON, HOLE, SHANK = 1.8, 2.2, 0.3
"""A button of 18 mm, a level hole 4 mm longer that goes on 3 mm beyond the centre, where the button pulls. Common practice."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Heights:
    """Level lines of the body, cm."""

    bust: float
    waist: float
    underarm: float


def front_pieces(whole: Whole, cut: Shape, where: Place, notch: float, centre: Centre, heights: Heights) -> tuple[Piece, ...]:
    """The front in one with its darts, or centre and side front along a princess line."""
    if cut.shaping == "darts":
        edges, darts = front_edges(whole, where, notch)
        return (_front("front", "Bodice front", edges, darts, notch, centre, heights),)
    lines = front_lines(whole, from_shoulder=cut.shaping == "princess_shoulder")
    middle = (Edge("neckline", whole.neckline, kind="neckline"), *_named("shoulder", lines.shoulder_centre), *_named("armhole_over", lines.armhole_centre), Edge("princess_front", lines.centre), Edge("waist", whole.waist_centre, kind="waist"), Edge("centre_front", whole.centre))
    beside = (*_named("shoulder_side", lines.shoulder_side), *divided_armhole(lines.armhole_side, notch - _length(lines.armhole_centre) if notch else 0.0), Edge("side", lines.side_seam, kind="side"), Edge("waist", lines.waist_side, kind="waist"), Edge("princess_front", lines.side))
    marks = tuple(Notch("princess_front", at, 1, f"princess-front-{n}") for n, at in enumerate(lines.marks[0], 1))
    side_marks = tuple(Notch("princess_front", at, 1, f"princess-front-{n}") for n, at in enumerate(lines.marks[1], 1))
    one = _front("front", "Centre front", middle, (), 0.0, centre, heights, marks)
    two = _panel("front_side", "Side front", beside, (*side_marks, *_armhole_notch(beside, 1, "armhole-front")), heights)
    return one, two


def _length(path: Path | None) -> float:
    return 0.0 if path is None else path.length()


def _named(name: str, path: Path | None) -> tuple[Edge, ...]:
    kinds = {"armhole_over": "armhole"}
    return () if path is None else (Edge(name, path, kind=kinds.get(name, "seam")),)


def _front(name: str, title: str, edges: tuple[Edge, ...], darts: tuple[Dart, ...], notch: float, centre: Centre, heights: Heights, more: tuple[Notch, ...] = ()) -> Piece:
    """A front: at its centre on the fold, sewn, or with a stand."""
    *others, last = edges
    outline = (*others, *_centre(last, centre, up=True))
    notches = (*more, *(_armhole_notch(edges, 1, "armhole-front") if notch else ()))
    return _made(name, title, outline, darts, notches, heights, fold=centre.fold, near=last.path.start.x, hand=-1.0)


def _centre(edge: Edge, centre: Centre, *, up: bool) -> tuple[Edge, ...]:
    """The centre edge as it is finished; a stand goes from the waist out, up and back to the neck."""
    if centre.fold:
        return (replace(edge, role=Role.FOLD, kind=RAW),)
    if not centre.stand:
        return (replace(edge, name=centre.name, kind="opening"),)
    a, b = edge.path.start, edge.path.end
    out = Vector(1.0 if up else -1.0, 0.0) * centre.stand
    first, last = ("stand_waist", "stand_top") if up else ("stand_top", "stand_waist")
    waist_role = {"stand_waist": (Role.HEM, "waist"), "stand_top": (Role.SEAM, "neckline")}
    return (
        Edge(first, polyline(a, a + out), *waist_role[first]),
        Edge("edge", polyline(a + out, b + out), kind="opening"),
        Edge(last, polyline(b + out, b), *waist_role[last]),
    )


def _armhole_notch(edges: tuple[Edge, ...], count: int, match: str) -> tuple[Notch, ...]:
    """At the end of the armhole's upper stretch, whichever way it is walked."""
    names = [e.name for e in edges]
    if "armhole_under" not in names or "armhole" not in names:
        return ()
    over = next(e for e in edges if e.name == "armhole")
    first = names.index("armhole") < names.index("armhole_under")
    return (Notch("armhole", over.path.length() if first else 0.0, count, match),)


def _panel(name: str, title: str, edges: tuple[Edge, ...], notches: tuple[Notch, ...], heights: Heights, darts: tuple[Dart, ...] = ()) -> Piece:
    return _made(name, title, edges, darts, notches, heights, fold=False, near=None, hand=0.0)


def _made(name: str, title: str, edges: tuple[Edge, ...], darts: tuple[Dart, ...], notches: tuple[Notch, ...], heights: Heights, *, fold: bool, near: float | None, hand: float) -> Piece:
    outline = loop(e.path for e in edges)
    left, bottom, right, _ = outline.bounds()
    grain = None if near is None else near + hand * 0.28 * (right - left)
    levels = tuple(level for level in (("bust", heights.bust),) if _crossed_twice(outline, level[1]))
    low = (heights.waist + heights.underarm) / 2 - 1.5
    piece = Piece(
        name=name, title=title, cut=FOLD if fold else PAIR, edges=edges, darts=darts, notches=notches, grain=plumb_grain(outline, grain),
        levels=level_lines(outline, levels), lengthen=lengthen_lines(outline, (max(low, bottom + 2),)), half=fold,
    )
    return counter_clockwise(piece)


def _crossed_twice(outline: Path, height: float) -> bool:
    hits = crossing_with_line(outline, Point(0.0, height), Vector(1.0, 0.0))
    xs = sorted(outline.segments[i].at(t).x for i, t in hits)
    return len([x for n, x in enumerate(xs) if n == 0 or x - xs[n - 1] > 1e-3]) == 2


def back_pieces(back: WholeBack, cut: Shape, notch: float, centre: Centre, heights: Heights) -> tuple[Piece, ...]:
    """The back in one with its darts, or centre and side back along a princess line."""
    if cut.shaping == "darts":
        return (_back("back", "Bodice back", back, back.darts, notch, centre, heights),)
    lines = back_line(back, from_shoulder=cut.shaping == "princess_shoulder")
    whole = Edge("centre_back", back.centre)
    middle = (*_centre(whole, centre, up=False), Edge("waist", lines.waist_centre, kind="waist"), Edge("princess_back", lines.centre), *_named("armhole_over", lines.armhole_centre), *_named("shoulder", lines.shoulder_centre), Edge("neckline", back.neckline, kind="neckline"))
    beside = (Edge("princess_back", lines.side), Edge("waist", lines.waist_side, kind="waist"), Edge("side", back.side, kind="side"), *_back_armhole(lines.armhole_side, notch - _length(lines.armhole_centre) if notch else 0.0), *_named("shoulder_side", lines.shoulder_side))
    marks = tuple(Notch("princess_back", at, 2, "princess-back") for at in lines.marks[0])
    side_marks = tuple(Notch("princess_back", at, 2, "princess-back") for at in lines.marks[1])
    one = _made("back", "Centre back", middle, lines.darts, marks, heights, fold=centre.fold, near=back.centre.end.x, hand=1.0)
    two = _panel("back_side", "Side back", beside, (*side_marks, *_armhole_notch(beside, 2, "armhole-back")), heights, lines.side_darts)
    return one, two


def _back_armhole(path: Path, notch: float) -> tuple[Edge, ...]:
    """The armhole from the underarm up, divided at its notch, measured from the shoulder down."""
    parts = divided_armhole(path.reversed(), notch)
    return tuple(e.reversed() for e in reversed(parts))


def _back(name: str, title: str, back: WholeBack, darts: tuple[Dart, ...], notch: float, centre: Centre, heights: Heights) -> Piece:
    edges = (
        *_centre(Edge("centre_back", back.centre), centre, up=False), Edge("waist", back.waist, kind="waist"), Edge("side", back.side, kind="side"),
        *_back_armhole(back.armhole, notch), Edge("shoulder", back.shoulder), Edge("neckline", back.neckline, kind="neckline"),
    )
    notches = _armhole_notch(edges, 2, "armhole-back") if notch else ()
    return _made(name, title, edges, darts, notches, heights, fold=centre.fold, near=back.centre.end.x, hand=1.0)


def hemmed(piece: Piece) -> Piece:
    """The piece with its waist neatened and turned up on a tape: darts and curves let no hem be folded flat."""
    return replace(piece, edges=tuple(replace(e, role=Role.FINISHED, kind="curved_hem") if e.kind == "waist" else e for e in piece.edges))


def sleeve_piece(sleeve: Sleeve, *, cuffed: bool = False) -> Piece:
    """The sleeve: cap in four stretches, two seams and a hem, or an edge that is gathered into a cuff."""
    edges = (*sleeve.cap.edges(), Edge("back_seam", sleeve.back, kind="side"), Edge("hem", sleeve.hem) if cuffed else Edge("hem", sleeve.hem, Role.HEM, "hem"), Edge("front_seam", sleeve.front, kind="side"))
    outline = loop(e.path for e in edges)
    levels = (("underarm", sleeve.cap.front.y), *(() if sleeve.elbow is None else (("elbow", sleeve.elbow),)))
    bottom = max(sleeve.hem.start.y, sleeve.hem.end.y)
    lengthen = (0.5 * (sleeve.cap.front.y + (bottom if sleeve.elbow is None else sleeve.elbow)),)
    told = tuple((n, a, b) for n, a, b in level_lines(outline, levels))
    piece = Piece(
        name="sleeve", title="Sleeve", cut=PAIR, edges=edges, darts=sleeve.darts, notches=sleeve.cap.notches(),
        grain=plumb_grain(outline, sleeve.cap.crown.x), levels=told, lengthen=lengthen_lines(outline, lengthen),
    )
    return counter_clockwise(piece)


def with_buttons(piece: Piece, centre: float, top: float, bottom: float, at: float) -> Piece:
    """Button and buttonhole marks down a centre line, one of them at the bust.

    Args:
        piece: The piece with the stand.
        centre: Where the centre line stands.
        top: Height of the neckline there.
        bottom: Height of the waist there.
        at: Height of the bust point.
    """
    first, last = top - 1.5, bottom + 3.0
    if first <= last:
        raise ConstructionError("There is no room for buttons.", where="opening")
    over = max(1, round((first - at) / BUTTON_PITCH)) if at < first else 0
    pitch = (first - at) / over if over else BUTTON_PITCH
    count = int((first - last) / pitch) + 1
    heights = [first - n * pitch for n in range(count)]
    outward = RIGHT if piece.outline.bounds()[2] - centre < centre - piece.outline.bounds()[0] else -RIGHT
    places = [Point(centre, y) for y in heights]
    marks = tuple(m for at in places for m in (button(at, BUTTON), buttonhole(at, -outward, HOLE / 2 - SHANK, HOLE)))
    return replace(piece, marks=(*piece.marks, *marks))
