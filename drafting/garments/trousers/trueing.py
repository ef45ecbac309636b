"""Trousers, trueing: what the block leaves untrue, in the order in which a cutter walks the seams.

Inseams first, for they fix the forks; then the crotch, square to them; then the hem; last the waist
and the side seams, which depend on each other. Published examples move by 0.3 cm at the most.

Source: common practice, no source; the need for it is proven by the published blocks themselves.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.craft.curves import hook
from drafting.craft.darts import closings, reopen, split_at_point
from drafting.craft.sheet import DraftSheet
from drafting.craft.trueing import natural_opening, nudged, seam_over_darts, square_to_ends
from drafting.errors import ConstructionError
from drafting.garments.trousers.panel import Panel, inseam_line, side_line
from drafting.geometry import IDENTITY, Cubic, Line, Path, Vector, crossing_with_line, join, root
from drafting.pattern import Dart
from drafting.trace import Place

EVEN = 1e-4
"""Seams are brought to within 0.0001 cm of each other, far inside the 0.05 cm that is asked."""


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

    def closed_top(self) -> Path:
        """The present waist as it lies with the darts closed, from the centre to the side."""
        parts, rest, moves = [], self.waist, closings(self.panel.darts)
        for dart, move in zip(self.darts, moves, strict=False):
            before, rest = split_at_point(rest, dart.first)
            parts.append(before.transformed(move))
            _, rest = split_at_point(rest, dart.second)
        return join((*parts, rest.transformed(moves[-1])))


@dataclass(frozen=True, slots=True)
class _Top:
    """The waist corner of the side seam while it is being trued."""

    panel: Panel
    corner: Place

    @property
    def side(self) -> tuple[Cubic | Line, ...]:
        return side_line(self.corner, self.panel.hip_side, self.panel.leg, self.panel.bulge)

    @property
    def square(self) -> Vector:
        return (self.panel.hook_start - self.panel.waist_centre).unit.right

    @property
    def down(self) -> Vector:
        return self.side[0].tangent(0.0)

    def opening(self) -> float:
        p = self.panel
        return natural_opening(p.waist_centre, self.square, self.corner, self.down, p.darts)

    def waist(self, opened: float) -> Cubic:
        p = self.panel
        return seam_over_darts(p.waist_centre, self.square, self.corner, self.down, opened, p.darts)


MOST_OVER = 2.5
"""The block draws its hip up to 2.5 cm wider than hip and ease; where the hip line lies near the
crotch line it would be more, and is taken in at the sides. Source: house method, from the published
examples."""


def true(front: Panel, back: Panel, hip: float, sheet: DraftSheet) -> tuple[Trued, Trued]:
    """True the two panels against each other; each step records what it moved and how far.

    Args:
        front: The front as drafted.
        back: The back as drafted.
        hip: Wanted girth at the hip line, body and ease, cm.
        sheet: Records the steps.
    """
    sheet.heading("Trueing")
    fork = _even_inseams(front, back, sheet)
    forks = (front.fork, fork)
    inseams = tuple(Path(inseam_line(f, p.leg, p.hollow)) for f, p in zip(forks, (front, back), strict=True))
    crotches = tuple(_square_crotch(p, f, i, sheet) for p, f, i in zip((front, back), forks, inseams, strict=True))
    front, back = _hips_taken_in(front, back, crotches, hip, sheet)
    tops, openings = _even_tops(front, back, sheet)
    front_trued, back_trued = (
        _trued(top, opened, crotch, inseam, f, sheet)
        for top, opened, crotch, inseam, f in zip(tops, openings, crotches, inseams, forks, strict=True)
    )
    return front_trued, back_trued


def _even_inseams(front: Panel, back: Panel, sheet: DraftSheet) -> Place:
    """Lower or raise the back fork until the back inseam is as long as the front's."""
    wanted = front.inseam.path.length()

    def short(down: float) -> float:
        return Path(inseam_line(back.fork.down(down), back.leg, back.hollow)).length() - wanted

    down = root(short, -4.0, 4.0, EVEN / 10)
    if down is None:
        raise ConstructionError("The back fork cannot be moved so that the inseams are even.", where="inseams")
    fork = sheet.point("trued back fork", nudged(back.fork, 0, -down), "Inseam to inseam, walked from the hem.")
    sheet.true("inseams", (("back fork", abs(down)),), "Both inseams are sewn without ease.")
    return fork


def _square_crotch(panel: Panel, fork: Place, inseam: Path, sheet: DraftSheet) -> Path:
    """Redraw the crotch curve so that it ends square to the inseam."""
    leaving, arriving = panel.hook_start - panel.waist_centre, inseam.start_tangent.left
    curve, diagonal = hook(panel.hook_start, leaving, fork, arriving, panel.corner, panel.diagonal)
    path = Path((Line(panel.waist_centre, panel.hook_start), curve))
    turned = panel.crotch.path.end_tangent.angle_to(arriving)
    moves = (
        (f"{panel.name} curve on the diagonal", abs(diagonal - panel.diagonal)),
        (f"{panel.name} crotch length", abs(path.length() - panel.crotch.path.length())),
    )
    why = f"Its end is turned {turned:.0f} degrees, square to the inseam: the crotch runs on from leg to leg."
    sheet.true(f"{panel.name} crotch", moves, why)
    return path


def _hips_taken_in(front: Panel, back: Panel, crotches: tuple[Path, ...], hip: float, sheet: DraftSheet) -> tuple[Panel, Panel]:
    """Bring the drawn hip back to its girth where the curves leave it too wide: a third in front."""
    drawn = 2 * sum(_width_at_hip(p, c) for p, c in zip((front, back), crotches, strict=True))
    over = (drawn - hip - MOST_OVER) / 2
    if not sheet.decide("hips taken in", over > 0, "Is the drawn hip more than 2.5 cm over hip and ease?", "The crotch curves are wide where the hip line is low."):
        return front, back
    sheet.true("hips", (("front side at the hip", over / 3), ("back side at the hip", over * 2 / 3)), "Taken in at the side seams, a third in front.")
    return _hip_in(front, over / 3, sheet), _hip_in(back, over * 2 / 3, sheet)


def _width_at_hip(panel: Panel, crotch: Path) -> float:
    hits = crossing_with_line(crotch, panel.hip_side, Vector(1, 0))
    return max(crotch.segments[i].at(t).x for i, t in hits) - panel.hip_side.x


def _hip_in(panel: Panel, by: float, sheet: DraftSheet) -> Panel:
    side = sheet.point(f"trued {panel.name} side at the hip", panel.hip_side.right(by), "Brings the hip to its girth.")
    return replace(panel, hip_side=side)


def _even_tops(front: Panel, back: Panel, sheet: DraftSheet) -> tuple[tuple[_Top, _Top], tuple[float, float]]:
    """Move the side's waist corners until waists have their length and the sides are even."""
    tops = (_Top(front, front.waist_side), _Top(back, back.waist_side))
    for _ in range(30):
        openings = _shared_openings(tops)
        tops = tuple(_to_length(t, o) for t, o in zip(tops, openings, strict=True))  # type: ignore[assignment]
        lengths = [Path(t.side).length() for t in tops]
        gap = (lengths[0] - lengths[1]) / 2
        if abs(gap) < EVEN / 4 and max(_waist_error(t, o) for t, o in zip(tops, _shared_openings(tops), strict=True)) < EVEN:
            break
        tops = (_Top(front, nudged(tops[0].corner, 0, -gap)), _Top(back, nudged(tops[1].corner, 0, gap)))
    moved = tuple((f"{t.panel.name} side at the waist", t.panel.waist_side.distance(t.corner)) for t in tops)
    sheet.true("waist and sides", moved, "Side to side, and each waist to its length with the darts closed.")
    return tops, _shared_openings(tops)


def _shared_openings(tops: tuple[_Top, _Top]) -> tuple[float, float]:
    """Corner angles over 90 degrees, front and back, as even as the curves allow, summing to none."""
    one, two = (top.opening() for top in tops)
    return (one - two) / 2, (two - one) / 2


def _waist_error(top: _Top, opened: float) -> float:
    return abs(top.waist(opened).length() - float(top.panel.waist_sewn))


def _to_length(top: _Top, opened: float) -> _Top:
    """Shift the corner along the waist until the closed waist has its length."""
    centre, corner = top.panel.waist_centre, top.corner
    size = centre.distance(corner)

    def at(shift: float) -> _Top:
        return _Top(top.panel, corner.between(centre, shift / size))

    shift = root(lambda s: at(s).waist(opened).length() - float(top.panel.waist_sewn), -3.0, 3.0, EVEN / 10)
    if shift is None:
        raise ConstructionError(f"The {top.panel.name} waist cannot be brought to its length.", where="waist")
    return at(shift)


def _trued(top: _Top, opened: float, crotch: Path, inseam: Path, fork: Place, sheet: DraftSheet) -> Trued:
    panel = top.panel
    corner = sheet.point(f"trued {panel.name} side at the waist", _settled(top.corner, panel), "Where the waist and the side seam meet.")
    closed = Path((top.waist(opened),))
    waist, darts = reopen(closed, panel.darts, "waist")
    sheet.true(f"{panel.name} waist", (("waist line", _dip(waist, panel)),), "Drawn over the closed darts: square to the centre, smooth over the side.")
    hem = Path((square_to_ends(panel.leg.hem_side, panel.leg.hem_side - panel.leg.knee_side, panel.leg.hem_inner, panel.leg.knee_inner - panel.leg.hem_inner),))
    bow = hem.bounds()[3] - panel.leg.hem_side.y or panel.leg.hem_side.y - hem.bounds()[1]
    sheet.true(f"{panel.name} hem", (("middle of the hem", bow),), "Bowed so that it is level where the legs' seams join.")
    return Trued(
        panel, _plain(closed), _plain(waist), _plain(crotch), _plain(Path(top.side)), _plain(inseam), _plain(hem), darts, corner, fork,
    )


def _plain(line: Path) -> Path:
    """The line on plain points; the words stay on the sheet."""
    return line.transformed(IDENTITY)


def _settled(corner: Place, panel: Panel) -> Place:
    """The corner told by its last move only: from the drafted corner across and up."""
    drafted = panel.waist_side
    return nudged(drafted, corner.x - drafted.x, corner.y - drafted.y)


def straight_centre(drawn: Trued) -> float:
    """Length in cm of the straight line from the waist to where the crotch curve begins."""
    return drawn.crotch.segments[0].length()


def _dip(waist: Path, panel: Panel) -> float:
    """Greatest distance in cm between the trued waist and the straight one."""
    along = (panel.waist_side - panel.waist_centre).unit
    return max(abs((p - panel.waist_centre).cross(along)) for p in waist.flattened(0.05))
