"""The set-in sleeve: its cap drawn to the armhole, long, three-quarter or short.

Source: elbow half way down and 2.5 cm lower; from memory: W. Aldrich, Metric Pattern Cutting for Women's
Wear; lengths, hems and the elbow dart: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import partial
from math import atan2, degrees, radians, sin

from drafting.body import Body
from drafting.craft.cap_curve import Armhole
from drafting.craft.pivot import over_fold, smoothed
from drafting.craft.scrap import Scrap
from drafting.craft.sheet import DraftSheet
from drafting.craft.sleeve_cap import Cap, CapWish, draw_cap
from drafting.garments.bodice.spec import Method, Shape, SleeveLength
from drafting.geometry import Path, Point, curve, join, polyline, turn
from drafting.pattern import Cut, Dart, Edge, Mark, Piece, Role
from drafting.trace import Length, Place
from drafting.trace.place import corner_of_paper

BACK_LONGER: dict[Method, float] = {"shoulder_dart": 1.0, "armhole_dart": 1.0}
HEIGHTS: dict[Method, tuple[float, float]] = {"shoulder_dart": (0.29, 0.36), "armhole_dart": (0.29, 0.38)}
"""Cap heights as shares of the armhole: a third of it by the one method (from memory: W. Aldrich, Metric
Pattern Cutting for Women's Wear), five sixths of its mean depth by the other (from memory: Bunka Fashion
Series 1), which is 0.35 of it; opened to both sides by judgement."""

LENGTHS: dict[SleeveLength, float] = {"short": 0.42, "three_quarter": 0.78, "long": 1.0}
"""Share of the arm. House method."""

WRIST_ROOM, FITTED_ROOM, HAND_ROOM = 7.5, 5.5, 1.0
"""Hem over wrist of a plain sleeve and of one with an elbow dart; over the hand. Common practice, no source."""

BESIDE = 35.0
"""cm to the right of the centre front, where the sleeve has room on the paper."""

CUFF_ROOM, FULL = 2.5, 1.25
"""Cuff over hand, cm, and the sleeve's foot over its cuff. Source: common practice, no source."""

HAND_LARGER = 3.3
"""Hand over wrist, cm, where nobody measured it. Source: ANSUR II (2012), 3.2 of women, 3.6 of men."""

LEAST_SEAM = 4.0
"""A sleeve has at least 4 cm of seam under the arm. House method."""

ELBOW_TURN = 4.0
"""Degrees by which the lower arm bends forward; it opens a dart of some 2 cm. Common practice, no source."""

TAPER = {"short": 0.94, "three_quarter": 0.82, "long": 0.80}
"""Hem over sleeve width where nothing else says it. Common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sleeve:
    """A sleeve as drafted, the back to the left, plain lines, cm.

    Attributes:
        cap: Its cap.
        front: The front seam, from the hem up to the underarm.
        back: The back seam, from the underarm down to the hem.
        hem: From the back to the front.
        darts: The elbow dart.
        elbow: Height of the elbow; None where the sleeve ends above it.
    """

    cap: Cap
    front: Path
    back: Path
    hem: Path
    darts: tuple[Dart, ...]
    elbow: float | None


def wish(body: Body, cut: Shape, back_longer: float | None = None) -> CapWish:
    """What is asked of the cap."""
    longer = BACK_LONGER[cut.method] if back_longer is None else back_longer
    return CapWish(arm=body.value("upper_arm_girth"), room=cut.arm_ease, least_room=min(2.5, cut.arm_ease), ease=cut.cap_ease, heights=HEIGHTS[cut.method], back_longer=longer)


def back_adds(bust: float) -> float:
    """By how much the back's chord is longer than its armhole, cm, by the bust.

    Source: a published lesson on sleeves after the UK metric block.
    """
    return 1.0 if bust < 94 else 1.25 if bust <= 107 else 1.5


def draft(body: Body, cut: Shape, armhole: Armhole, beside: Place, sheet: DraftSheet) -> Sleeve:
    """Draft the sleeve for an armhole, both measured with their darts closed; `beside` is a place of the body's draft."""
    sheet.heading("Sleeve", "common practice, no source; from memory: W. Aldrich, Metric Pattern Cutting for Women's Wear")
    crown = sheet.point("crown", corner_of_paper(beside.x + BESIDE, beside.y), "The highest point of the sleeve.")
    arm = body.outer_arm_length
    share = LENGTHS[cut.sleeve]
    whole = arm * share if share < 1 else arm + 1.0
    cuffed = cut.sleeve_finish == "cuff"
    length = sheet.length("sleeve length", whole - Length(cut.cuff_depth, "cuff depth") if cuffed else whole, "From the shoulder's end; a long sleeve needs 1 cm to bend the arm.")
    elbow = sheet.point("elbow line", crown.down(arm / 2 + 2.5), "Half way down the arm, and a little lower.") if share > 0.6 else None
    hem = sheet.point("sleeve hem line", crown.down(length), "Where the sleeve ends.")
    asked = wish(body, cut, back_adds(float(body.bust_girth)))
    width = float(body.upper_arm_girth) + cut.arm_ease
    hem_wide = _hem(body, cut, width)

    cap = draw_cap(armhole, asked, crown, sheet, _lean(armhole, asked, hem_wide, float(length)))
    if sheet.compare("a sleeve too short for its cap", length - cap.height, "<", LEAST_SEAM, "Would less than 4 cm be left under the arm?", "The sleeve is lengthened."):
        hem = sheet.point("lowered sleeve hem line", hem.down(cap.height + LEAST_SEAM - length), "Room for a hem.")
    wide = sheet.length("hem width", Length(min(hem_wide, cap.width), "hem width"), "Round the whole arm.")
    middle = sheet.point("middle of the hem", hem.nudged((cap.front.x + cap.back.x) / 2 - crown.x, 0.0), "Half way between the seams.")
    front = sheet.point("front of the hem", middle.right(wide / 2), "Half the hem.")
    back = sheet.point("back of the hem", middle.left(wide / 2), "Half the hem.")
    return _bent(cap, front, back, elbow, sheet) if cut.sleeve_finish == "elbow_dart" and elbow is not None else _straight(cap, front, back, elbow)


def _lean(armhole: Armhole, asked: CapWish, hem: float, length: float) -> Callable[[float], float]:
    """By how many degrees the sides lean inward for a width; the cap's height is tried on scrap paper."""
    high = armhole.length / 3
    for _ in range(3):
        scrap = Scrap()
        high = draw_cap(armhole, asked, scrap.point("crown", corner_of_paper(), "On scrap paper."), scrap, partial(_leaning, hem=hem, down=length - high)).height
    return partial(_leaning, hem=hem, down=length - high)


def _leaning(wide: float, *, hem: float, down: float) -> float:
    return degrees(atan2((wide - min(hem, wide)) / 2, max(down, LEAST_SEAM)))


def _hem(body: Body, cut: Shape, width: float) -> float:
    """Girth of the hem, cm: it passes the hand, and is no wider than the sleeve."""
    hand = _hand(body)
    if cut.sleeve != "long":
        return TAPER[cut.sleeve] * width
    if cut.sleeve_finish == "cuff":
        return max(FULL * cuff_length(body), 0.8 * width)
    room = FITTED_ROOM if cut.sleeve_finish == "elbow_dart" else WRIST_ROOM
    return max(body.value("wrist_girth") + room, hand + HAND_ROOM)


def _hand(body: Body) -> float:
    """Girth of the hand, cm: as measured, else by the wrist."""
    return body.value("hand_girth") if body.has("hand_girth") else body.value("wrist_girth") + HAND_LARGER


def cuff_length(body: Body) -> float:
    """Round the finished cuff, cm: it has no opening, so the hand must pass."""
    return _hand(body) + CUFF_ROOM


def cuff_piece(length: float, depth: float) -> Piece:
    """A band cuff, folded along its free edge: upper half outside, lower half inside.

    Args:
        length: Round the finished cuff, cm.
        depth: Finished depth, cm.
    """
    a, b, c, d = Point(length, 2 * depth), Point(0.0, 2 * depth), Point(0.0, 0.0), Point(length, 0.0)
    edges = (Edge("sleeve_edge", polyline(a, b)), Edge("end", polyline(b, c)), Edge("inside_edge", polyline(c, d), Role.HEM, "seam"), Edge("other_end", polyline(d, a)))
    return Piece(
        name="cuff", title="Cuff", cut=(Cut("main", 2, mirrored=True), Cut("fusible", 2, mirrored=True)), edges=edges,
        grain=(Point(length / 2, 0.3 * depth), Point(length / 2, 1.7 * depth)), marks=(Mark("fold", polyline(Point(0.0, depth), Point(length, depth))),),
    )


def _straight(cap: Cap, front: Place, back: Place, elbow: Place | None) -> Sleeve:
    return Sleeve(
        cap=cap, front=polyline(front, _plain(cap.front)), back=polyline(_plain(cap.back), back), hem=polyline(back, front), darts=(),
        elbow=None if elbow is None or elbow.y < front.y + 3 else elbow.y,
    )


def _bent(cap: Cap, front: Place, back: Place, elbow: Place, sheet: DraftSheet) -> Sleeve:
    """The lower sleeve turned forward about the front elbow; the wedge behind is the elbow dart."""
    down = (cap.front.y - elbow.y) / (cap.front.y - front.y)
    inner, outer = _plain(cap.front).toward(front, down), _plain(cap.back).toward(back, down)
    sheet.length("elbow dart", Length(2 * inner.distance(outer) * sin(radians(ELBOW_TURN / 2))), "The arm hangs forward: the lower sleeve is turned by 4 degrees about the front elbow.")
    move = turn(ELBOW_TURN, inner)
    low_front, low_back = move.point(front), move.point(back)
    short = 0.58 * inner.distance(outer)
    one, two = smoothed(_bowed(_plain(cap.front), inner), _bowed(inner, low_front))
    seam, dart = _with_dart(cap, outer, move.point(outer), low_back, inner, short)
    longer = one.length() + two.length() - (seam.length() - dart.intake)
    low_back = low_back + (low_back - move.point(outer)).unit * longer
    seam, dart = _with_dart(cap, outer, move.point(outer), low_back, inner, short)
    front_seam = join((one, two)).reversed()
    return Sleeve(cap=cap, front=front_seam, back=seam, hem=polyline(seam.end, front_seam.start), darts=(replace(dart, toward_first=False),), elbow=elbow.y)


def _with_dart(cap: Cap, near: Point, far: Point, low: Point, pivot: Point, short: float) -> tuple[Path, Dart]:
    return over_fold(_bowed(_plain(cap.back), near), _bowed(far, low), pivot, short, "back_seam")


def _bowed(a: Point, b: Point) -> Path:
    """A straight stretch that may be bent at its ends."""
    return curve(a, a.toward(b, 1 / 3), a.toward(b, 2 / 3), b)


def _plain(place: Place) -> Point:
    return Point(place.x, place.y)
