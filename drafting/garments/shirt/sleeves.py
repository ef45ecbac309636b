"""A shirt's sleeve: a low cap drawn to the armhole, long with slit and cuff, or short with a hem.

Source: a cap a quarter of the armhole high, W. Aldrich, Metric Pattern Cutting for Menswear; little
or no ease, the slit on the back quarter of the wrist, two pleats beside it: common practice, no
source.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from drafting.body import Body
from drafting.craft.cap_curve import Armhole, chord_widths
from drafting.craft.piecework import lengthen_lines, level_lines, plumb_grain
from drafting.craft.scrap import Scrap
from drafting.craft.sheet import DraftSheet
from drafting.craft.sleeve_cap import Cap, CapWish, draw_cap
from drafting.craft.sleeve_placket import Placket, bound, tower
from drafting.errors import SpecError
from drafting.garments.shirt.lines import Fronted, Yoked
from drafting.garments.shirt.pieces import BACK_NOTCH, FRONT_NOTCH
from drafting.garments.shirt.spec import Shirt
from drafting.geometry import IDENTITY, Point, join, polyline
from drafting.pattern import Cut, Edge, Mark, Piece, Pleat, Role
from drafting.trace import Length, Place, larger

CAP_SHARE = 0.25
HEIGHTS = (0.16, 0.3)
LEAST_ROOM = 5.0
"""Sleeve over upper arm: 5 cm at the least. Source: common practice, no source."""

WEAR = 1.0
"""A sleeve ends 1 cm below the wrist, so that it stays there when the arm bends."""

SHORT = 24.0
SHORT_ROOM = 5.0
"""Hem of a short sleeve over the upper arm, at the least."""

SLITS = {"tower": 13.0, "bound": 10.0}
PLEATS: dict[str, tuple[float, ...]] = {"two": (2.5, 2.5), "one": (2.5,)}
PLEAT_FROM_SLIT, BETWEEN, WRIST_PLEAT_LONG = 2.5, 1.5, 5.0


@dataclass(frozen=True, slots=True)
class Sleeve:
    """A sleeve as drawn.

    Attributes:
        cap: Its cap.
        piece: The piece.
        placket: Its slit; None in a short one.
        length: From the crown to its lower edge, cm.
        closed: Width of the lower edge, pleats laid and the slit closed, cm.
    """

    cap: Cap
    piece: Piece
    placket: Placket | None
    length: float
    closed: float


def sleeve(body: Body, cut: Shirt, back: Yoked, front: Fronted, forward: float, crown: Place, sheet: DraftSheet) -> Sleeve:
    """Draw the sleeve.

    Args:
        body: The body.
        cut: The options.
        back: The back's lines.
        front: The front's lines.
        forward: How far the shoulder seam lies before the ridge, cm: the crown lies on the ridge.
        crown: Where on the paper the top of the cap lies.
        sheet: Records it.
    """
    sheet.heading("Sleeve", "W. Aldrich, Metric Pattern Cutting for Menswear (height of the cap); else common practice, no source")
    hole = Armhole(
        front=front.armhole.path.length() + forward, back=back.yoke_armhole.path.length() + back.armhole.path.length() - forward,
        front_notch=FRONT_NOTCH, back_notch=BACK_NOTCH,
    )
    top = sheet.point("crown of the sleeve", crown, "The sleeve hangs from here.")
    placket = _placket(cut)
    long = _length(body, cut, back, sheet)
    wide = room(hole, body.value("upper_arm_girth"), cut.cap_ease)
    wish = CapWish(
        arm=body.value("upper_arm_girth"), room=wide, least_room=LEAST_ROOM, ease=cut.cap_ease, most_ease=max(2.0, cut.cap_ease),
        heights=HEIGHTS, lowest=0.08, roundness=0.75,
    )
    tried = draw_cap(hole, wish, top, Scrap())
    closed = sheet.length("width at the lower end", _closed(body, cut, tried.width), "Round the wrist when it is buttoned." if placket else "Loose round the arm.")
    taken = pleats_for(cut) if placket else ()
    width = sheet.length("width before pleats", closed + sum(taken), "The pleats give room at the elbow.") if taken else closed
    down = max(1.0, float(long) - tried.height)

    def lean(at_top: float) -> float:
        return math.degrees(math.atan2((at_top - float(width)) / 2, down))

    cap = draw_cap(hole, wish, top, sheet, lean)
    return _lower(cap, cut, placket, long, width, taken, closed, sheet)


def room(hole: Armhole, arm: float, ease: float) -> float:
    """Sleeve over upper arm in cm when the cap is a quarter of the armhole high, chords a little shorter than the armhole."""
    short = 0.4 - ease / 2
    return max(LEAST_ROOM + 1.0, sum(chord_widths(hole.front - short, hole.back - short, CAP_SHARE * hole.length)) - arm)


def _placket(cut: Shirt) -> Placket | None:
    if cut.placket is None:
        return None
    return (tower if cut.placket == "tower" else bound)(SLITS[cut.placket])


def _length(body: Body, cut: Shirt, back: Yoked, sheet: DraftSheet) -> Length:
    """From the crown to the lower edge: the arm, less what the shoulder overhangs, less the cuff."""
    cuff = Length(cut.cuff_depth, "cuff depth") if cut.sleeve == "long" else Length(0.0)
    if cut.sleeve_length is not None:
        whole = Length(cut.sleeve_length, "sleeve length")
    elif cut.sleeve == "short":
        whole = Length(SHORT)
    else:
        drawn = Length(back.shoulder.path.length(), "drawn shoulder")
        over = drawn - body.shoulder_length if body.has("shoulder_length") else Length(0.0)
        whole = body.outer_arm_length + WEAR - over
    long = whole - cuff if cut.sleeve == "long" else whole
    return sheet.length("sleeve without cuff" if cut.sleeve == "long" else "sleeve length", long, "From the end of the shoulder seam, which lies out on the arm.")


def _closed(body: Body, cut: Shirt, wide: float) -> Length:
    if cut.sleeve == "long":
        return body.wrist_girth + Length(cut.cuff_ease, "cuff ease")
    return larger(body.upper_arm_girth + SHORT_ROOM, 0.9 * wide)


def pleats_for(cut: Shirt) -> tuple[float, ...]:
    """Intakes of the wrist's pleats: two beside a tower, one beside a bound slit."""
    return PLEATS["two" if cut.placket == "tower" else "one"]


def _lower(
    cap: Cap, cut: Shirt, placket: Placket | None, long: Length, width: Length, taken: tuple[float, ...], closed: Length, sheet: DraftSheet
) -> Sleeve:
    """Draw the sides and the lower edge, and cut the piece."""
    crown = cap.crown
    inner = (float(long) - cap.height)
    if inner < 6:
        raise SpecError(
            f"With this sleeve_length and cuff_depth the sleeve would end {inner:.1f} cm below the underarm; make it longer, or the cuff less deep.",
            where="garment.sleeve_length", received=cut.sleeve_length, allowed=(cap.height + 6 + (cut.cuff_depth if placket else 0.0), 90.0),
        )
    level = sheet.point("lower end on the sleeve's middle", crown.down(long), "Where the cuff is sewn on." if placket else "Where the hem is folded.")
    in_ = sheet.length("taken in at each side", (Length(cap.width, "sleeve width") - width) / 2, "Both sides alike, so that they are equally long.")
    ends = tuple(
        sheet.point(f"lower end, {word}", _inward(under.level_with(level), in_, sign), "The sleeve narrows evenly.")
        for word, under, sign in (("front", cap.front, 1), ("back", cap.back, -1))
    )
    front = sheet.line("front sleeve seam", ends[0], cap.front, why="Straight.")
    back = sheet.line("back sleeve seam", cap.back, ends[1], why="Straight, and as long.")
    foot = sheet.line("lower edge", ends[1], ends[0], why="Square to the middle.")
    sheet.outline("sleeve", (cap.line, back, foot, front), "Trace it from the draft; allowances are added outside.")
    lower, marks = _foot(ends[1], ends[0], placket)
    pleats = _pleats(lower, taken) if placket else ()
    edges = (
        *cap.edges(), Edge("back_seam", back.path.transformed(IDENTITY), kind="side"), *lower,
        Edge("front_seam", front.path.transformed(IDENTITY), kind="side"),
    )
    outline = join(e.path for e in edges)
    at = (cap.front.y + level.y) / 2
    piece = Piece(
        name="sleeve", title="Sleeve", cut=(Cut("main", 2, mirrored=True),), edges=edges, pleats=pleats,
        notches=cap.notches(), grain=plumb_grain(outline, crown.x), levels=level_lines(outline, (("bicep", cap.front.y),)),
        lengthen=lengthen_lines(outline, (at,)) if placket else (), marks=marks,
    )
    return Sleeve(cap, piece, placket, float(long), float(closed))


def _inward(place: Place, by: Length, sign: int) -> Place:
    """Toward the sleeve's middle by so much; away from it where that is less than nought."""
    out = Length(0.0) - by if by < 0 else by
    return place.left(out) if (sign > 0) == (by >= 0) else place.right(out)


def _foot(left: Place, right: Place, placket: Placket | None) -> tuple[tuple[Edge, ...], tuple[Mark, ...]]:
    """The lower edge from the back seam to the front seam: a hem, or cut by the slit at its back quarter."""
    a, b = Point(left.x, left.y), Point(right.x, right.y)
    if placket is None:
        return (Edge("hem", polyline(a, b), Role.HEM, "hem"),), ()
    at, half = a.x + 0.25 * (b.x - a.x), placket.box / 2
    stops = [Point(at - half, a.y), Point(at + half, a.y)]
    marks = placket.marks(Point(at, a.y))
    slit = (Edge("slit", polyline(*stops), Role.OPENING),) if half else ()
    edges = (Edge("wrist_back", polyline(a, stops[0])), *slit, Edge("wrist_front", polyline(stops[1], b)))
    return edges, marks


def _pleats(lower: tuple[Edge, ...], taken: tuple[float, ...]) -> tuple[Pleat, ...]:
    """The pleats beside the slit, on the side toward the front, folded toward the slit."""
    start = lower[-1].path.start
    at, found = PLEAT_FROM_SLIT, list[Pleat]()
    for intake in taken:
        one, two = (polyline(Point(start.x + x, start.y), Point(start.x + x, start.y + WRIST_PLEAT_LONG)) for x in (at, at + intake))
        found.append(Pleat("wrist_front", one, two, toward_first=True))
        at += intake + BETWEEN
    return tuple(found)
