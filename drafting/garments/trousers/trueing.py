"""Trousers, trueing: what the block leaves untrue, in the order in which a cutter walks the seams.

Inseams first, for they fix the forks; then the crotch, square to them; then the hem; last the waist
and the side seams, which depend on each other. Published examples move by 0.3 cm at the most.

Source: common practice, no source; the need for it is proven by the published blocks themselves.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from drafting.craft.curves import hook
from drafting.craft.darts import closings, reopen, split_at_point
from drafting.craft.pencil import draw_waist, hooked
from drafting.craft.sheet import DraftSheet
from drafting.craft.tops import EVEN, PanelTop, dip, even_tops
from drafting.craft.trueing import square_to_ends
from drafting.errors import ConstructionError, SpecError
from drafting.garments.trousers.panel import Panel, inseam_line, inseam_parts, side_line, side_parts
from drafting.geometry import (
    IDENTITY,
    Path,
    Point,
    Segment,
    Vector,
    crossing_with_line,
    join,
    root,
    smooth,
)
from drafting.pattern import Dart
from drafting.trace import Bend, Length, Place, Stroke, along, middle_of, running, straight
from drafting.trace.length import number
from drafting.trace.step import Moved


@dataclass(frozen=True, slots=True)
class Trued:
    """A panel's stitching lines after trueing, the side seam to the left, drawn as the block is.

    The waist runs from the centre to the side, side and inseam downward, the crotch from waist to
    fork, the hem from side to inseam. `closed` is the waist as it lies with the darts closed, the
    centre staying where it is.
    """

    panel: Panel
    closed: Path
    waist: Path
    crotch: Path
    side: Path
    inseam: Path
    hem: Path
    darts: tuple[Dart, ...]
    waist_side: Place
    fork: Place

    @property
    def reach(self) -> float:
        """From the crotch corner to the drawn fork, along the level, in cm."""
        return self.crotch.end.x - self.panel.corner.x

    def width(self, height: float) -> float:
        """Width of the leg in cm at a height under the crotch."""
        return _across(self.inseam, height) - _across(self.side, height)

    def closed_top(self) -> Path:
        """The present waist as it lies with the darts closed, from the centre to the side."""
        parts, rest, moves = [], self.waist, closings(self.panel.darts)
        for dart, move in zip(self.darts, moves, strict=False):
            before, rest = split_at_point(rest, dart.first)
            parts.append(before.transformed(move))
            _, rest = split_at_point(rest, dart.second)
        return join((*parts, rest.transformed(moves[-1])))


def true(front: Panel, back: Panel, level: Place, hip: float, over: float, sheet: DraftSheet) -> tuple[Trued, Trued]:
    """True the two panels against each other; each step records what it moved and how far.

    Args:
        front: The front as drafted.
        back: The back as drafted.
        level: The hip line.
        hip: Wanted girth at the hip line, body and ease, cm.
        over: How much wider the hip may be drawn, cm.
        sheet: Records the steps.
    """
    sheet.heading("Trueing", "common practice, no source")
    inseams = (front.inseam, _even_inseams(front, back, sheet))
    crotches = tuple(_square_crotch(p, i, sheet) for p, i in zip((front, back), inseams, strict=True))
    front, back = _hips_trued(front, back, crotches, level, hip, over, sheet)
    tops, openings = even_tops(_top(front), _top(back), sheet)
    front_trued, back_trued = (
        _trued(panel, top, opened, crotch, inseam, sheet)
        for panel, top, opened, crotch, inseam in zip((front, back), tops, openings, crotches, inseams, strict=True)
    )
    return front_trued, back_trued


def _even_inseams(front: Panel, back: Panel, sheet: DraftSheet) -> Stroke:
    """Lower or raise the back fork until the back inseam is as long as the front's."""
    wanted = front.inseam.path.length()

    def short(down: float) -> float:
        return Path(inseam_line(back.fork.down(down), back.leg, back.hollow)).length() - wanted

    lowest = min(10.0, back.fork.y - back.leg.hem_inner.y - 0.5)
    down = root(short, -10.0, lowest, EVEN / 10)
    if down is None and back.leg.short:
        raise SpecError("The inside_leg is too short for so wide a fork: the inseams cannot be made even. Make it longer.", where="garment.inside_leg")
    if down is None:
        raise ConstructionError("The legs are too short for so wide a fork: the inseams cannot be made even. Measure outside_leg_length and body_rise again.", where="measurements.outside_leg_length")
    fork = sheet.point("trued back fork", back.fork.nudged(0, -down), "Inseam to inseam, walked from the hem.")
    inseam = sheet.draw("trued back inseam", inseam_parts(fork, back.leg, back.hollow), "As before, from the fork where it now is.")
    sheet.true("inseams", (("back fork", abs(down)),), "Both inseams are sewn without ease.", agree="back inseam = front inseam")
    return inseam


def _square_crotch(panel: Panel, inseam: Stroke, sheet: DraftSheet) -> Stroke:
    """Redraw the crotch curve so that it ends square to the inseam."""
    start, fork = panel.hook_start, inseam.start
    leaving, arriving = along(panel.waist_centre, start), running(inseam, "start").left
    curve, diagonal = hook(start, leaving.vector, fork, arriving.vector, panel.corner, panel.diagonal)
    bend = hooked(start, leaving, fork, arriving, curve, panel.corner, diagonal)
    why = "It ends square to the inseam, so that it runs on from leg to leg."
    drawn = sheet.draw(f"trued {panel.name} crotch", (*straight(panel.waist_centre, start), bend), why)
    turned = panel.crotch.path.end_tangent.angle_to(arriving.vector)

    def moved() -> Moved:
        longer = abs(drawn.path.length() - panel.crotch.path.length())
        return (f"{panel.name} curve on the diagonal", abs(diagonal - panel.diagonal)), (f"{panel.name} crotch length", longer)

    sheet.true(f"{panel.name} crotch", moved, f"The curve's end is turned {turned:.0f} degrees.", agree=f"end of the {panel.name} crotch square to the inseam")
    return drawn


def _hips_trued(front: Panel, back: Panel, crotches: tuple[Stroke, ...], level: Place, hip: float, over: float, sheet: DraftSheet) -> tuple[Panel, Panel]:
    """Bring the drawn hip back to its girth where the curves leave it too wide: a third in front."""
    widths = (_width_at_hip(p, c.path, level) for p, c in zip((front, back), crotches, strict=True))
    drawn = Length(2 * sum(widths), "drawn hip")
    if sheet.compare("hips taken in", drawn, ">", hip + over, f"Is the drawn hip more than {number(over)} cm over hip and ease?", "The crotch curves are wide where the hip line is low."):
        goal, agree = hip + over, f"drawn hip = hip and ease + {number(over)} cm"
    elif sheet.compare("hips let out", drawn, "<", hip, "Is the drawn hip less than hip and ease?", "The seat line leans in where the hip line is high."):
        goal, agree = hip, "drawn hip = hip and ease"
    else:
        return front, back
    off = (drawn - goal) / 2
    sheet.true("hips", (("front side at the hip", abs(off) / 3), ("back side at the hip", abs(off) * 2 / 3)), "Taken in or let out at the side seams, a third in front.", agree=agree)
    return _hip_in(front, off / 3, sheet), _hip_in(back, off * 2 / 3, sheet)


def _width_at_hip(panel: Panel, crotch: Path, level: Place) -> float:
    hits = crossing_with_line(crotch, level, Vector(1, 0))
    return max(crotch.segments[i].at(t).x for i, t in hits) - panel.hip_side.x


def _hip_in(panel: Panel, by: float, sheet: DraftSheet) -> Panel:
    side = sheet.point(f"trued {panel.name} side at the hip", panel.hip_side.nudged(by, 0), "Brings the hip to its girth.")
    return replace(panel, hip_side=side)


def over_its_darts(panel: Panel) -> tuple[Dart, ...]:
    """A panel's darts as they come out when its waist is redrawn over them, its side not yet walked."""
    top = _top(panel)
    return reopen(Path((top.waist(top.opening()),)), panel.darts, "waist")[1]


def _top(panel: Panel) -> PanelTop:
    def side(corner: Point) -> Iterator[Segment]:
        return side_line(corner, panel.hip_side, panel.leg, panel.bulge, panel.natural_side)

    return PanelTop(
        name=panel.name, centre=panel.waist_centre, down=panel.hook_start - panel.waist_centre,
        corner=panel.waist_side, sewn=panel.waist_sewn, closed=closings(panel.darts)[-1], draw_side=side,
    )


def _trued(panel: Panel, top: PanelTop, opened: float, crotch: Stroke, inseam: Stroke, sheet: DraftSheet) -> Trued:
    corner = sheet.point(f"trued {panel.name} side at the waist", panel.waist_side.nudged_to(top.corner), "Where the waist and the side seam meet.")
    side = sheet.draw(f"trued {panel.name} side", side_parts(corner, panel.hip_side, panel.leg, panel.bulge, panel.natural_side), "As before, from the corner where it now is.")
    closed = top.waist(opened)
    opened_waist, darts = reopen(Path((closed,)), panel.darts, "waist")
    waist = draw_waist(
        f"trued {panel.name} waist", closed, opened_waist, (panel.waist_centre, corner), along(panel.waist_centre, panel.hook_start),
        side, panel.darts, sheet, "Square to the centre, smooth over the darts and over the side.",
    )
    sheet.true(f"{panel.name} waist", lambda: (("waist line", dip(waist.path, panel.waist_side)),), "The darts were closed for it.", agree=f"{panel.name} waist square to its ends")
    hem = _square_hem(panel, sheet)
    sheet.outline(panel.name, (waist, side, hem, inseam, crotch), "Trace it from the draft; allowances are added outside.")
    return Trued(
        panel, _plain(Path((closed,))), _plain(waist.path), _plain(crotch.path), _plain(side.path), _plain(inseam.path), _plain(hem.path), darts, corner, inseam.start,
    )


def _square_hem(panel: Panel, sheet: DraftSheet) -> Stroke:
    """Bow the hem so that it meets side and inseam squarely, its middle lower where that is wanted."""
    below = panel.leg
    down, up = below.down_the_side, below.up_the_inside
    curve = square_to_ends(below.hem_side, down.vector, below.hem_inner, up.vector)
    bend = Bend(below.hem_side, below.hem_inner, down.left, up.right, curve, middle_of(curve))
    parts = _dipped(panel, bend, sheet) if panel.dip else (bend,)
    hem = sheet.draw(f"trued {panel.name} hem", parts, "Square to the side and to the inseam.")

    def bow() -> float:
        low, high = hem.path.bounds()[1::2]
        return high - below.hem_side.y or below.hem_side.y - low

    sheet.true(f"{panel.name} hem", lambda: (("middle of the hem", bow()),), "Level where the legs' seams join.", agree=f"{panel.name} hem square to its ends")
    return hem


def _dipped(panel: Panel, bowed: Bend, sheet: DraftSheet) -> tuple[Bend, Bend]:
    """The hem in two curves, over a middle that hangs lower than level, or higher."""
    natural, halfway = bowed.segment.at(0.5), bowed.start.between(bowed.end, 0.5)
    where = halfway.nudged(natural.x - halfway.x, natural.y - halfway.y - panel.dip)
    why = "Lower behind, where the cloth falls on the heel or is lifted by the seat." if panel.dip > 0 else "Hollowed over the shoe."
    middle = sheet.point(f"middle of the {panel.name} hem", where, why)
    level = along(bowed.start, bowed.end)
    halves = (
        smooth(bowed.start, bowed.leaving.vector, middle, level.vector),
        smooth(middle, level.vector, bowed.end, bowed.arriving.vector),
    )
    return Bend(bowed.start, middle, bowed.leaving, level, halves[0]), Bend(middle, bowed.end, level, bowed.arriving, halves[1])


def _across(line: Path, height: float) -> float:
    """Where a line going down passes a height; where it starts, if that lies under it."""
    hits = crossing_with_line(line, Point(0, height), Vector(1, 0))
    return line.segments[hits[-1][0]].at(hits[-1][1]).x if hits else line.start.x


def _plain(line: Path) -> Path:
    """The line on plain points; the words stay on the sheet."""
    return line.transformed(IDENTITY)


def straight_centre(drawn: Trued) -> float:
    """Length in cm of the straight line from the waist to where the crotch curve begins."""
    return drawn.crotch.segments[0].length()
