"""Knit top, the body: back and front, alike from the shoulder down.

Source: a knit block without darts, front and back armhole alike: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from drafting.craft.cap_curve import Armhole
from drafting.craft.piecework import counter_clockwise, lengthen_lines, level_lines, plumb_grain
from drafting.craft.sheet import DraftSheet
from drafting.craft.sleeve_cap import ARMHOLE_EDGES
from drafting.garments.knit_top.frame import Frame
from drafting.garments.knit_top.neck import Half, Neck, draw_neck
from drafting.garments.knit_top.spec import KnitTop, has_sleeve
from drafting.geometry import IDENTITY, Path, Point, join, polyline, with_handles
from drafting.pattern import Cut, Edge, Mark, Notch, Piece, Role
from drafting.trace import (
    DOWNWARD,
    LEFTWARD,
    RIGHTWARD,
    Bearing,
    Bend,
    Length,
    Part,
    Place,
    Stroke,
    along,
    middle_of,
    straight,
)

PLUMB = 1e-9
"""A side that leans by less hangs plumb."""

NOTCH_SHARE = 0.36
"""The armhole stands plumb, and is marked, at 0.36 of its height. House method."""

MATCH_EVERY = 10.0
"""Match marks stand 10 cm apart down the sides. House method."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Panel:
    """A body piece as drawn; every line from the centre or the top onward.

    Attributes:
        half: Where it stands.
        neck: From the centre to the shoulder.
        shoulder: From the neck to the tip.
        upper: The armhole from the tip to its mark.
        lower: From the mark to the underarm.
        side: From the underarm to the hem.
        hem: From the side to the centre.
        centre: From the neck to the hem.
        depths: Heights of the underarm, the waist and the hip on the paper.
    """

    half: Half
    neck: Path
    shoulder: Path
    upper: Path
    lower: Path
    side: Path
    hem: Path
    centre: Path
    depths: tuple[tuple[str, float], ...]

    @property
    def armhole(self) -> float:
        """Length of the armhole, cm."""
        return self.upper.length() + self.lower.length()


def draw_panel(half: Half, frame: Frame, cut: KnitTop, out: Length, sheet: DraftSheet) -> Panel:
    """Draw back or front."""
    name = half.name
    sheet.heading(name.capitalize(), "common practice, no source")
    neck, neckline, shoulder = draw_neck(half, frame, cut, out, sheet)
    nape = half.nape
    low = sheet.point(f"{name} centre at the underarm", nape.down(frame.scye), "Level of the underarm.")
    under = sheet.point(f"{name} underarm", half.across(low, frame.bust), "A quarter of the bust.")
    down = _side(half, frame, under, sheet)
    upper, lower = _armhole(half, frame, neck, under, down, sheet)
    side = sheet.draw(f"{name} side", down, "Over waist and hip." if frame.shaped else "Straight.")
    foot = sheet.point(f"{name} centre at the hem", nape.down(frame.length), "Where it ends.")
    hem = sheet.draw(f"{name} hem", (_hem(half, down[-1], foot),), "Square to the side and to the centre.")
    centre = sheet.line(f"{name} centre", neck.centre, foot, why="On the fold.")
    sheet.outline(name, (neckline, shoulder, upper, lower, side, hem, centre), "Trace it from the draft; allowances are added outside.")
    level = (("bust", frame.scye), ("waist", frame.waist_depth), ("hip", frame.hip_depth))
    depths = tuple((word, nape.y - float(deep)) for word, deep in level)
    paths = tuple(_plain(line) for line in (neckline, shoulder, upper, lower, side, hem, centre))
    return Panel(half=half, neck=paths[0], shoulder=paths[1], upper=paths[2], lower=paths[3], side=paths[4], hem=paths[5], centre=paths[6], depths=depths)


def _plain(line: Stroke) -> Path:
    return line.path.transformed(IDENTITY)


def _side(half: Half, frame: Frame, under: Place, sheet: DraftSheet) -> tuple[Part, ...]:
    """The side from the underarm: straight, or shaped over the waist."""
    name, end = half.name, float(frame.length)
    stops = [(word, float(deep), wide) for word, deep, wide in (("waist", frame.waist_depth, frame.waist), ("hip", frame.hip_depth, frame.hip)) if frame.shaped and deep < end - 1]
    found = [under]
    for word, deep, wide in stops:
        found.append(sheet.point(f"{name} side at the {word}", half.across(half.nape.down(Length(deep, f"nape to {word}")), wide), "By its quarter."))
    last = half.across(half.nape.down(frame.length), Length(frame.at(end), "quarter at the hem"))
    found.append(sheet.point(f"{name} side at the hem", last, "By the widths over it."))
    if not stops:
        a, b = found
        # a side that leans out leaves the armhole plumb, or the armhole would dip under its level
        return (_bent(a, b, DOWNWARD, along(a, b)),) if abs(b.x - half.nape.x) > abs(a.x - half.nape.x) + PLUMB else straight(a, b)
    *curved, last_leg = pairwise(found)
    parts = [_bent(a, b, along(a, b) if a is under else DOWNWARD, DOWNWARD) for a, b in curved]
    a, b = last_leg
    below_hip = len(stops) == 2
    return (*parts, *(straight(a, b) if below_hip else (_bent(a, b, DOWNWARD, along(a, b)),)))


def _bent(start: Place, end: Place, leaving: Bearing, arriving: Bearing) -> Bend:
    drawn = with_handles(start, leaving.vector, end, arriving.vector, start.distance(end) / 3)
    return Bend(start, end, leaving, arriving, drawn, middle_of(drawn))


def _armhole(half: Half, frame: Frame, neck: Neck, under: Place, down: tuple[Part, ...], sheet: DraftSheet) -> tuple[Stroke, Stroke]:
    """Square to the shoulder, plumb at its mark, square to the side."""
    name, tip = half.name, neck.tip
    level = Length((tip.y - under.y) * NOTCH_SHARE, "mark over the underarm")
    mark = sheet.point(f"{name} armhole mark", half.across(half.nape.down(frame.scye), frame.across).up(level), "Here it runs plumb; sleeve and armhole are marked.")
    shoulder, side = along(neck.corner, tip), _leaving(down[0])
    into = shoulder.right if half.hand > 0 else shoulder.left
    out = side.left if half.hand > 0 else side.right
    high = tip.y - mark.y
    first = with_handles(tip, into.vector, mark, DOWNWARD.vector, 0.38 * high, 0.42 * high)
    deep, wide = mark.y - under.y, abs(under.x - mark.x)
    second = with_handles(mark, DOWNWARD.vector, under, out.vector, 0.62 * deep, 0.62 * wide)
    upper = sheet.draw(f"{name} armhole", (Bend(tip, mark, into, DOWNWARD, first, middle_of(first)),), "Square to the shoulder.")
    lower = sheet.draw(f"{name} armhole below the mark", (Bend(mark, under, DOWNWARD, out, second, middle_of(second)),), "Square to the side, so that it runs on over the seam.")
    return upper, lower


def _leaving(part: Part) -> Bearing:
    return part.leaving if isinstance(part, Bend) else along(part.start, part.end)


def _hem(half: Half, last: Part, foot: Place) -> Part:
    end = last.end
    down = last.arriving if isinstance(last, Bend) else along(last.start, last.end)
    if abs(down.vector.unit.x) < PLUMB:
        return straight(end, foot)[0]
    leaving = down.right if half.hand > 0 else down.left
    arriving = LEFTWARD if half.hand > 0 else RIGHTWARD
    return _bent(end, foot, leaving, arriving)


def armhole_of(back: Panel, front: Panel) -> Armhole:
    """What the sleeve is set into."""
    return Armhole(front=front.armhole, back=back.armhole, front_notch=front.lower.length(), back_notch=back.lower.length())


def body_piece(panel: Panel, cut: KnitTop) -> Piece:
    """Back or front on the fold, walked from the centre over the shoulder to the hem."""
    name = panel.half.name
    upper, lower = ARMHOLE_EDGES
    armhole = (Edge(upper, panel.upper, kind="armhole"), Edge(lower, panel.lower, kind="armhole"))
    hem = Edge("hem", panel.hem, Role.HEM, "curved_hem") if cut.hem == "turned" else Edge("hem", panel.hem)
    edges = (
        Edge("neck", panel.neck), Edge("shoulder", panel.shoulder),
        *armhole, Edge("side", panel.side, kind="side"), hem, Edge("centre", panel.centre.reversed(), Role.FOLD, "raw"),
    )
    outline = join(e.path for e in edges)
    count = 2 if name == "back" else 1
    marks = (Notch(upper, panel.upper.length(), count, f"armhole-{name}"),)
    piece = Piece(
        name=name, title=f"Top {name}", cut=(Cut("main", 1),), edges=edges,
        notches=(*(marks if has_sleeve(cut) else ()), *(_matched(panel) if cut.match_marks else ())),
        grain=plumb_grain(outline), levels=level_lines(outline, panel.depths),
        lengthen=lengthen_lines(outline, (panel.depths[1][1] - 4,)),
        marks=_level_mark(panel) if cut.match_marks else (), half=True,
    )
    return counter_clockwise(piece)


def _matched(panel: Panel) -> tuple[Notch, ...]:
    """Where the same stripe meets down the side, and the centre of the hem."""
    long = panel.side.length()
    places = (n * MATCH_EVERY for n in range(1, int((long - 2) // MATCH_EVERY) + 1))
    return tuple(Notch("side", at, 1, f"match-{n}") for n, at in enumerate(places, 1))


def _level_mark(panel: Panel) -> tuple[Mark, ...]:
    """The stripe that runs through the armholes' marks, across the piece."""
    at, centre = panel.upper.end, panel.centre.start
    return (Mark("placement", polyline(Point(centre.x, at.y), at)),)
