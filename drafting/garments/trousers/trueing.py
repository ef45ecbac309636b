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
from drafting.craft.tops import EVEN, PanelTop, dip, even_tops, settled
from drafting.craft.trueing import nudged, square_to_ends
from drafting.errors import ConstructionError
from drafting.garments.trousers.panel import Panel, inseam_line, side_line
from drafting.geometry import IDENTITY, Line, Path, Segment, Vector, crossing_with_line, join, root
from drafting.pattern import Dart
from drafting.trace import Place


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
    tops, openings = even_tops(_top(front), _top(back), sheet)
    front_trued, back_trued = (
        _trued(panel, top, opened, crotch, inseam, f, sheet)
        for panel, top, opened, crotch, inseam, f in zip((front, back), tops, openings, crotches, inseams, forks, strict=True)
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


def _top(panel: Panel) -> PanelTop:
    def side(corner: Place) -> tuple[Segment, ...]:
        return side_line(corner, panel.hip_side, panel.leg, panel.bulge)

    return PanelTop(
        name=panel.name, centre=panel.waist_centre, down=panel.hook_start - panel.waist_centre,
        corner=panel.waist_side, sewn=panel.waist_sewn, darts=panel.darts, draw_side=side,
    )


def _trued(panel: Panel, top: PanelTop, opened: float, crotch: Path, inseam: Path, fork: Place, sheet: DraftSheet) -> Trued:
    corner = sheet.point(f"trued {panel.name} side at the waist", settled(panel.waist_side, top.corner), "Where the waist and the side seam meet.")
    closed = Path((top.waist(opened),))
    waist, darts = reopen(closed, panel.darts, "waist")
    sheet.true(f"{panel.name} waist", (("waist line", dip(waist, panel.waist_side)),), "Drawn over the closed darts: square to the centre, smooth over the side.")
    hem = Path((square_to_ends(panel.leg.hem_side, panel.leg.hem_side - panel.leg.knee_side, panel.leg.hem_inner, panel.leg.knee_inner - panel.leg.hem_inner),))
    bow = hem.bounds()[3] - panel.leg.hem_side.y or panel.leg.hem_side.y - hem.bounds()[1]
    sheet.true(f"{panel.name} hem", (("middle of the hem", bow),), "Bowed so that it is level where the legs' seams join.")
    return Trued(
        panel, _plain(closed), _plain(waist), _plain(crotch), _plain(top.side), _plain(inseam), _plain(hem), darts, corner, fork,
    )


def _plain(line: Path) -> Path:
    """The line on plain points; the words stay on the sheet."""
    return line.transformed(IDENTITY)


def straight_centre(drawn: Trued) -> float:
    """Length in cm of the straight line from the waist to where the crotch curve begins."""
    return drawn.crotch.segments[0].length()
