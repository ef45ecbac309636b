"""Skirts, trueing: waists to their length over the closed darts, side seams even, hem square.

Source: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.craft.curves import swept
from drafting.craft.darts import PlannedDart, closings, reopen
from drafting.craft.pencil import draw_waist, shaped
from drafting.craft.rules import HIP_CURVE
from drafting.craft.sheet import DraftSheet
from drafting.craft.tops import PanelTop, even_tops
from drafting.craft.trueing import square_to_ends
from drafting.garments.skirts.block import Panel
from drafting.geometry import DOWN, IDENTITY, Cubic, Line, Path, Point, Vector
from drafting.pattern import Dart, Mark, Pleat
from drafting.trace import LEFTWARD, RIGHTWARD, Bend, Part, Place, along, middle_of, straight

LEVEL = 1e-9
"""A hem whose ends differ by less (cm), and meet side and centre square, is a straight line."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lines:
    """A quarter's stitching lines after trueing.

    Attributes:
        name: "front" or "back".
        closed: The waist as it lies with the darts closed, from the centre to the side.
        waist: The waist with the darts open, from the centre to the side.
        darts: The darts on it.
        planned: The same as they were drafted.
        pleats: The pleats on it, where it has pleats.
        side: From the waist down.
        centre: From the waist down.
        hem: From the side to the centre.
        hip: Height of the hip line; None where it is no level line of the piece.
        under: The top of what is laid under at the side, from the waist's end to the side.
        marks: Lines inside it.
    """

    name: str
    closed: Path
    waist: Path
    darts: tuple[Dart, ...]
    planned: tuple[PlannedDart, ...]
    side: Path
    centre: Path
    hem: Path
    hip: float | None
    pleats: tuple[Pleat, ...] = ()
    under: Path | None = None
    marks: tuple[Mark, ...] = ()

    @property
    def below_hip(self) -> float:
        """Length in cm of the side's straight part below the hip."""
        return self.side.segments[-1].length()

    @property
    def away(self) -> Vector:
        """Level direction from the panel outward over its centre."""
        return Vector(1.0, 0.0) if self.side.start.x < self.centre.start.x else Vector(-1.0, 0.0)


def true(back: Panel, front: Panel, sheet: DraftSheet) -> tuple[Lines, Lines]:
    """True back and front against each other; each step records what it moved and how far."""
    sheet.heading("Trueing", "common practice, no source")
    (front_top, back_top), openings = even_tops(_top(front), _top(back), sheet)
    one = _trued(back, back_top, openings[1], sheet)
    return one, _trued(front, front_top, openings[0], sheet)


def side_line(panel: Panel, corner: Point) -> tuple[Cubic, Line]:
    """The side seam: a hip curve from the waist that runs on straight from the hip to the hem.

    Source: W. Aldrich, Metric Pattern Cutting for Women's Wear (0.5 cm out above the hip).
    """
    down = panel.hem_side - panel.hip_side
    out = HIP_CURVE if panel.hip_side.x > panel.hip_centre.x else -HIP_CURVE
    return swept(corner, panel.hip_side, down, out, least=0.0), Line(panel.hip_side, panel.hem_side)


def side_parts(panel: Panel, corner: Place) -> tuple[Part, ...]:
    """The side seam, told by what lies on the paper."""
    hip_curve, _ = side_line(panel, corner)
    below = along(panel.hip_side, panel.hem_side)
    return (shaped(corner, panel.hip_side, below, hip_curve), *straight(panel.hip_side, panel.hem_side))


def _top(panel: Panel) -> PanelTop:
    return PanelTop(
        name=panel.name, centre=panel.centre, down=DOWN, corner=panel.side, sewn=panel.sewn, closed=closings(panel.darts)[-1],
        draw_side=lambda corner: side_line(panel, corner),
    )


def _trued(panel: Panel, top: PanelTop, opened: float, sheet: DraftSheet) -> Lines:
    corner = sheet.point(f"trued {panel.name} side at the waist", panel.side.nudged_to(top.corner), "Where the waist and the side seam meet.")
    side = sheet.draw(f"{panel.name} side", side_parts(panel, corner), "Round over the hip, straight below it.")
    closed = Path((top.waist(opened),))
    waist, darts = reopen(closed, panel.darts, "waist")
    seam = draw_waist(
        f"{panel.name} waist", top.waist(opened), waist, (panel.centre, corner), RIGHTWARD if corner.x > panel.centre.x else LEFTWARD,
        side, panel.darts, sheet, "Square to the centre, smooth over the closed darts and over the side seam.",
    )
    centre = sheet.line(f"{panel.name} centre", panel.centre, panel.hem_centre, why="On the straight grain.")
    hem = hem_line(panel)
    drawn = sheet.draw(f"{panel.name} hem", (hem_part(panel, hem),), "Square to side and centre, so that the hem runs on over both.")
    sheet.outline(panel.name, (seam, side, drawn, centre), "Trace it from the draft; allowances are added outside.")
    return Lines(
        name=panel.name, closed=plain(closed), waist=plain(waist), darts=darts, planned=panel.darts, side=plain(side.path),
        centre=plain(centre.path), hem=plain(Path((hem,))), hip=panel.hip_centre.y,
    )


def hem_line(panel: Panel) -> Line | Cubic:
    """From the side to the centre, square to both."""
    side, centre = panel.hem_side, panel.hem_centre
    if abs(side.y - centre.y) < LEVEL:
        return Line(side, centre)
    down, hand = side - panel.hip_side, 1.0 if side.x < centre.x else -1.0
    return square_to_ends(side, down * hand, centre, Vector(0.0, hand))


def hem_part(panel: Panel, hem: Line | Cubic) -> Part:
    """The hem, told by what lies on the paper."""
    if isinstance(hem, Line):
        return straight(panel.hem_side, panel.hem_centre)[0]
    down, up = along(panel.hip_side, panel.hem_side), along(panel.hem_centre, panel.hip_centre)
    leaving, arriving = down.to(hem.tangent(0.0)), up.to(hem.tangent(1.0))
    return Bend(panel.hem_side, panel.hem_centre, leaving, arriving, hem, middle_of(hem))


def plain(line: Path) -> Path:
    """The line on plain points; the words stay on the sheet."""
    return line.transformed(IDENTITY)
