"""The sleeve cap, brought to the armhole it is set into: width first, then ease, then height.

The width is never less than the upper arm and some room; the cap is as long as the armhole and the
ease that is asked for; its height lies within the method's band. Where all three cannot be had the
width gives way first (wider, or down to the least room), then the ease (more), then the height
(lower), and it is said which.

Source: the triangle and the shape of the curve as in `cap_curve`; ease between the notches only,
four tenths of it in front: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from typing import Literal

from drafting.craft.cap_curve import BACK, CLOSE, FRONT, Armhole, cap_curve, half, halves
from drafting.craft.sheet import DraftSheet
from drafting.errors import ConstructionError
from drafting.geometry import (
    DOWN,
    IDENTITY,
    Point,
    root,
)
from drafting.pattern import Ease, Edge, Finding, Notch, Seam, SeamPart
from drafting.trace import LEFTWARD, RIGHTWARD, Bearing, Bend, Length, Place, Stroke, along

Gave = Literal["width", "ease", "height"]


@dataclass(frozen=True, slots=True, kw_only=True)
class CapWish:
    """What is asked of a cap, in cm.

    Attributes:
        arm: Upper arm girth of the body.
        room: Sleeve over upper arm as wanted, at the underarm level.
        least_room: Sleeve over upper arm under which it never goes.
        ease: Cap over armhole.
        most_ease: The most that the cap may be eased in where width and height ask for it.
        heights: Least and greatest height of the cap as shares of the armhole.
        lowest: Share of the armhole under which no cap can be drawn.
        back_longer: By how much the back's straight line from crown to underarm is longer than
            the back armhole, beside what both have alike.
        front_share: Share of the ease that is set in before the shoulder.
        roundness: How far the curve bulges: 1 as in a set-in sleeve, less in a shirt or a knit.
    """

    arm: float
    room: float = 5.0
    least_room: float = 2.5
    ease: float = 2.0
    most_ease: float = 4.0
    heights: tuple[float, float] = (0.29, 0.36)
    lowest: float = 0.12
    back_longer: float = 0.0
    front_share: float = 0.4
    roundness: float = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Cap:
    """A cap as drawn: the back to the left of the crown, the front to the right, Y up.

    Attributes:
        front: Where the front underarm lies.
        back: Where the back underarm lies.
        crown: The highest point.
        line: From the front underarm over the crown to the back underarm.
        armhole: What it is set into.
        ease: Cap less armhole, as drawn, cm.
        front_ease: How much of it lies before the shoulder notch.
        height: Of the crown over the underarm, cm.
        width: At the underarm, cm.
        gave: What gave way to get there.
        findings: The same, told.
    """

    front: Place
    back: Place
    crown: Place
    line: Stroke
    armhole: Armhole
    ease: float
    front_ease: float
    height: float
    width: float
    gave: tuple[Gave, ...]
    findings: tuple[Finding, ...]

    @property
    def shoulder(self) -> float:
        """Distance in cm along the line to the shoulder notch."""
        return self.armhole.front + self.front_ease

    def edges(self) -> tuple[Edge, Edge, Edge, Edge]:
        """The cap in four: under the front notch, to the shoulder, to the back notch, under it."""
        path = self.line.path.transformed(IDENTITY)
        whole = path.length()
        cuts = (self.armhole.front_notch, self.shoulder, whole - self.armhole.back_notch)
        low, rest = path.split(cuts[0])
        front, rest = rest.split(cuts[1] - cuts[0])
        back, end = rest.split(cuts[2] - cuts[1])
        one, two, three, four = CAP_EDGES
        return (
            Edge(one, low, kind="armhole"),
            Edge(two, front, kind="armhole"),
            Edge(three, back, kind="armhole"),
            Edge(four, end, kind="armhole"),
        )

    def notches(self) -> tuple[Notch, ...]:
        """Single in front and at the shoulder, double behind, each at the end of its stretch."""
        front, shoulder, back, _ = (e.path.length() for e in self.edges())
        return (
            Notch(CAP_EDGES[0], front, 1, "armhole-front"),
            Notch(CAP_EDGES[1], shoulder, 1, "armhole-shoulder"),
            Notch(CAP_EDGES[2], back, 2, "armhole-back"),
        )


CAP_EDGES = ("cap_front_under", "cap_front", "cap_back", "cap_back_under")
"""Names of the cap's edges, from the front underarm over the crown to the back underarm."""

ARMHOLE_EDGES = ("armhole", "armhole_under")
"""Names of an armhole's edges on a body piece: from the shoulder to the notch, and below it."""


def flat(_: float) -> float:
    """No lean: the sleeve's sides hang plumb whatever its width."""
    return 0.0


def draw_cap(
    armhole: Armhole,
    wish: CapWish,
    crown: Place,
    sheet: DraftSheet,
    lean: Callable[[float], float] = flat,
) -> Cap:
    """Bring the cap of a sleeve to its armhole, and draw it.

    Args:
        armhole: What it is set into.
        wish: What is asked of it.
        crown: The highest point of the cap, recorded already.
        sheet: Records width, height, places and the line.
        lean: For a width in cm, by how many degrees each side of the sleeve leans inward on its
            way down; the cap meets the sides square, so that it runs on over the underarm seam.

    Raises:
        ConstructionError: No cap can be drawn: the arm is too large for the armhole.
    """
    found = _solved(armhole, wish, lean)
    wide = _measured(found, armhole, wish, sheet)
    centre = sheet.point(
        "underarm line on the sleeve",
        crown.down(Length(found.height, "cap height")),
        "The sleeve is widest here.",
    )
    one = Length(found.front, "front half of the sleeve")
    front = sheet.point(
        "front underarm of the sleeve", centre.right(one), "By its share of the front armhole."
    )
    back = sheet.point(
        "back underarm of the sleeve", centre.left(wide - one), "The rest of the width."
    )
    line = sheet.draw(
        "sleeve cap",
        _parts(front, crown, back, found.lean, wish.roundness, sheet),
        "Full over the shoulder bone, hollow under the arm, square to the sides.",
    )
    return Cap(
        front=front,
        back=back,
        crown=crown,
        line=line,
        armhole=armhole,
        ease=found.ease,
        front_ease=wish.front_share * found.ease,
        height=found.height,
        width=found.width,
        gave=found.gave,
        findings=_told(found, armhole, wish),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Solved:
    width: float
    height: float
    front: float
    lean: float
    length: float
    ease: float
    gave: tuple[Gave, ...]


def _measured(found: _Solved, armhole: Armhole, wish: CapWish, sheet: DraftSheet) -> Length:
    """Record how wide and how high the cap is; the width."""
    room = Length(wish.arm, "upper arm") + Length(wish.room, "room for the arm")
    wide = sheet.length(
        "sleeve width",
        room if "width" not in found.gave else Length(found.width),
        "Round the upper arm, and room to bend it.",
    )
    wanted = Length(armhole.length, "armhole") + Length(found.ease, "cap ease")
    between = (wish.lowest * armhole.length, wish.heights[1] * armhole.length)
    sheet.found(
        "cap height",
        found.height,
        wanted,
        between,
        found.length,
        "The cap is as long as the armhole and its ease; a narrow sleeve has a high cap.",
    )
    return wide


def _solved(armhole: Armhole, wish: CapWish, lean: Callable[[float], float]) -> _Solved:
    """The first of the ways that succeeds: as asked, wider, narrower, more ease, lower."""
    room, (low, high) = max(wish.room, wish.least_room), (s * armhole.length for s in wish.heights)
    length = partial(_length, armhole=armhole, wish=wish, lean=lean)
    made = partial(_made, armhole=armhole, wish=wish, lean=lean)
    width, wanted, most = (
        wish.arm + room,
        armhole.length + wish.ease,
        armhole.length + wish.most_ease,
    )
    if length(width, high) < wanted:
        wider = root(lambda w: length(w, high) - wanted, width, width + armhole.length)
        if wider is None:
            raise ConstructionError("No sleeve can be drawn for this armhole.", where="sleeve cap")
        return made(wider, high, gave=("width",))
    if length(width, low) <= wanted:
        return made(width, _height(length, width, wanted, (low, high)), gave=())
    least = wish.arm + wish.least_room
    if length(least, low) <= wanted:
        return made(
            root(lambda w: length(w, low) - wanted, least, width) or least, low, gave=("width",)
        )
    narrow: tuple[Gave, ...] = ("width",) if least < width else ()
    if length(least, low) <= most:
        return made(least, low, gave=(*narrow, "ease"))
    floor = wish.lowest * armhole.length
    if length(least, floor) > most:
        raise ConstructionError(
            "The upper arm is too large for this armhole: no cap is flat enough. Give the armhole "
            "more depth, or the sleeve less room.",
            where="sleeve cap",
            received=least,
            allowed=(0.0, most),
        )
    return made(least, _height(length, least, most, (floor, low)), gave=(*narrow, "ease", "height"))


def _height(
    length: Callable[[float, float], float],
    width: float,
    wanted: float,
    between: tuple[float, float],
) -> float:
    found = root(lambda h: length(width, h) - wanted, *between)
    return between[0] if found is None else found


def _made(
    width: float,
    height: float,
    *,
    gave: tuple[Gave, ...],
    armhole: Armhole,
    wish: CapWish,
    lean: Callable[[float], float],
) -> _Solved:
    whole = _length(width, height, armhole=armhole, wish=wish, lean=lean)
    front, _ = halves(armhole, height, width, wish.back_longer)
    return _Solved(
        width=width,
        height=height,
        front=front,
        lean=lean(width),
        length=whole,
        ease=whole - armhole.length,
        gave=gave,
    )


def _length(
    width: float, height: float, *, armhole: Armhole, wish: CapWish, lean: Callable[[float], float]
) -> float:
    front, back = halves(armhole, height, width, wish.back_longer)
    path = cap_curve(
        Point(front, 0.0), Point(0.0, height), Point(-back, 0.0), lean(width), wish.roundness
    )
    return path.length()


def _parts(
    front: Place, crown: Place, back: Place, lean: float, roundness: float, sheet: DraftSheet
) -> tuple[Bend, ...]:
    """The curve told by what lies on the paper, from the front underarm to the back one."""
    told = list[Bend]()
    for word, under, shape, side, outward in (
        ("front", front, FRONT, DOWN.rotated(-lean), RIGHTWARD),
        ("back", back, BACK, DOWN.rotated(lean), LEFTWARD),
    ):
        there, above, below = half(under, crown, side, shape, roundness)
        crossing = sheet.point(
            f"{word} crossing of the cap",
            under.between(crown, shape.crossing),
            "Below it the cap is hollow, above it full.",
        )
        leans, ends = along(crown, under).to(there), outward.to(below.tangent(1.0))
        down = (
            Bend(crown, crossing, outward, leans, above),
            Bend(crossing, under, leans, ends, below),
        )
        told += [_back(b) for b in reversed(down)] if word == "front" else list(down)
    return tuple(told)


def _back(bend: Bend) -> Bend:
    """The same curve drawn the other way."""
    return Bend(
        bend.end, bend.start, _turned(bend.arriving), _turned(bend.leaving), bend.segment.reversed()
    )


def _turned(bearing: Bearing) -> Bearing:
    return bearing.rotated(180.0)


def armhole_seams(front: str, back: str, cap: Cap, sleeve: str = "sleeve") -> tuple[Seam, ...]:
    """The seams of a set-in sleeve, cap over armhole: the lower stretches plain, the upper eased.

    The body's edges run as `ARMHOLE_EDGES` say; where several pieces make an armhole, list the
    seams by hand.

    Args:
        front: Name of the front piece.
        back: Name of the back piece.
        cap: The cap.
        sleeve: Name of the sleeve piece.
    """
    upper, lower = ARMHOLE_EDGES
    return (
        _seam("armhole_front_under", (sleeve, CAP_EDGES[0]), (front, lower), 0.0),
        _seam("armhole_front", (sleeve, CAP_EDGES[1]), (front, upper), cap.front_ease),
        _seam("armhole_back", (sleeve, CAP_EDGES[2]), (back, upper), cap.ease - cap.front_ease),
        _seam("armhole_back_under", (sleeve, CAP_EDGES[3]), (back, lower), 0.0),
    )


def _seam(name: str, one: tuple[str, str], two: tuple[str, str], ease: float) -> Seam:
    eased = (
        Ease("ease", ease, ease, ease)
        if ease > CLOSE
        else Ease("stretch", ease, ease, ease)
        if ease < -CLOSE
        else Ease()
    )
    return Seam(name, (SeamPart(*one),), (SeamPart(*two, reversed=True),), eased)


def _told(found: _Solved, armhole: Armhole, wish: CapWish) -> tuple[Finding, ...]:
    """Which of the three gave way, and by how much."""
    low, high = (s * armhole.length for s in wish.heights)
    rows: dict[Gave, tuple[str, float, tuple[float, float]]] = {
        "width": (
            "The sleeve is wider or narrower than asked, so that its cap fits the armhole.",
            found.width,
            (wish.arm + wish.least_room, wish.arm + wish.room),
        ),
        "ease": (
            "The cap has more ease than was asked, so that the sleeve goes round the arm.",
            found.ease,
            (wish.ease, wish.ease),
        ),
        "height": (
            "The cap is lower than usual, so that the sleeve goes round the arm.",
            found.height,
            (low, high),
        ),
    }
    return tuple(
        Finding(
            code=f"sleeve_{gave}_gave_way",
            severity="note" if gave == "width" else "warning",
            where="sleeve",
            message=text,
            measured=measured,
            allowed=allowed,
        )
        for gave in found.gave
        for text, measured, allowed in (rows[gave],)
    )
