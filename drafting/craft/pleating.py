"""Pleats all round: knife and box pleats, laid out over a width of cloth, narrowed to the waist.

Between the pleats lie faces, the strips that show. A knife pleat's fold lies on the face before it,
all in one direction from the centre to the side. Of box pleats every second face is raised, both
its folds lying over the faces beside it, which vanish under them.

Source: knife pleats three times the width that shows; box pleats with as much under each half as
shows of it; what hip and waist differ by taken out at the faces' edges: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from drafting.geometry import Path, Point, Transform, Vector, polyline, shift, turn
from drafting.pattern import Pleat

PleatKind = Literal["knife", "box", "inverted"]

GROOVE = 0.2
"""Folds of box pleats that meet stand 2 mm apart, so that none rides on the other. House method."""


@dataclass(frozen=True, slots=True)
class PlannedPleat:
    """A pleat as it is drafted on a straight seam line.

    Attributes:
        one: Its line nearer to the centre, from the seam down, straight at its top.
        two: Its line nearer to the side.
        toward_centre: Whether line two is the fold, laid on line one; else line one is the fold.
    """

    one: Path
    two: Path
    toward_centre: bool

    @property
    def near(self) -> Point:
        """Where the line nearer to the centre starts."""
        return self.one.start

    @property
    def far(self) -> Point:
        """Where the line nearer to the side starts."""
        return self.two.start

    @property
    def closing(self) -> Transform:
        """The move that lays line two on line one, where their straight tops end."""
        near, far = self.one.start_tangent, self.two.start_tangent
        here, there = (line.segments[0].end for line in (self.one, self.two))
        aside = here - there
        return turn(near.angle - far.angle, there).then(shift(aside.x, aside.y))

    @property
    def near_leg(self) -> tuple[Point, Vector]:
        """A point of line one, and the direction from there to the seam."""
        inner = self.one.segments[0].end
        return inner, self.near - inner

    def made(self, edge: str, near: Point, far: Point) -> Pleat:
        """The pleat, its lines starting on a seam."""
        return Pleat(
            edge, _from(near, self.one), _from(far, self.two), toward_first=self.toward_centre
        )


def _from(start: Point, line: Path) -> Path:
    """The line with its straight top begun elsewhere on it."""
    return Path((*polyline(start, line.segments[0].end).segments, *line.segments[1:]))


@dataclass(frozen=True, slots=True)
class Face:
    """A strip that shows, or a groove between folds: its width at the hip, and if it narrows."""

    width: float
    narrows: bool


@dataclass(frozen=True, slots=True)
class Pleating:
    """How a quarter of a skirt is pleated, from the centre to the side.

    Attributes:
        faces: One more than there are pleats; the first and the last are half of theirs.
        toward_centre: Of each pleat, whether its fold is laid toward the centre.
        depth: Depth of each pleat at the hip, cm: half of what it takes.
    """

    faces: tuple[Face, ...]
    toward_centre: tuple[bool, ...]
    depth: float

    @property
    def width(self) -> float:
        """Width of the cloth in cm."""
        return self.shown + 2 * self.depth * len(self.toward_centre)

    @property
    def shown(self) -> float:
        """Width in cm that shows when the pleats are laid."""
        return sum(face.width for face in self.faces)

    @property
    def narrowest(self) -> float:
        """How much each edge of a face can lose before the narrowest face is gone, cm."""
        ends = (0, len(self.faces) - 1)
        widths = ((f.width, n in ends) for n, f in enumerate(self.faces) if f.narrows)
        return min(width if at_end else width / 2 for width, at_end in widths)


def pleating(kind: PleatKind, shown: float, face: float, depth: float | None) -> Pleating:
    """Lay out the pleats of a quarter.

    Args:
        kind: Knife pleats turned to the side; box pleats with a raised face over the centre;
            inverted ones, which meet there.
        shown: Width in cm that is to show.
        face: Wanted width in cm of a face.
        depth: Depth of a pleat; by default the face's width for knife pleats, half of it for box
            pleats, so that the cloth lies three deep everywhere.
    """
    count = max(1, round(shown / face))
    if kind == "knife":
        each = shown / count
        halves, whole = Face(each / 2, narrows=True), Face(each, narrows=True)
        faces = (halves, *(whole for _ in range(count - 1)), halves)
        return Pleating(faces, (False,) * count, each if depth is None else depth)
    each = shown / count - GROOVE
    raised, groove = Face(each, narrows=True), Face(GROOVE, narrows=False)
    outer, inner = (raised, groove) if kind == "box" else (groove, raised)
    half = Face(outer.width / 2, narrows=outer.narrows)
    between = tuple(outer if n % 2 else inner for n in range(2 * count - 1))
    faces = (half, *between, half)
    first = kind != "box"
    turned = tuple(first if n % 2 == 0 else not first for n in range(2 * count))
    return Pleating(faces, turned, each / 2 if depth is None else depth)


def laid_out(
    plan: Pleating, centre: Point, side: float, narrowed: float, depths: tuple[float, float]
) -> tuple[PlannedPleat, ...]:
    """The pleats of a quarter, each face narrowed by so much at each edge from hip to top.

    Args:
        plan: The pleats.
        centre: Where the top meets the centre.
        side: 1 where the side lies to the right, -1 to the left.
        narrowed: What each edge of a face loses from the hip to the top, cm.
        depths: From the top down to the hip and to the hem, cm.
    """
    found, at = list[PlannedPleat](), plan.faces[0].width
    for before, after, toward in zip(plan.faces, plan.faces[1:], plan.toward_centre, strict=False):
        ends = ((at, -1.0, before), (at + 2 * plan.depth, 1.0, after))
        one, two = (
            _line(centre, side, (x + out * narrowed * face.narrows, x), depths)
            for x, out, face in ends
        )
        found.append(PlannedPleat(one, two, toward))
        at += 2 * plan.depth + after.width
    return tuple(found)


def _line(
    centre: Point, side: float, across: tuple[float, float], depths: tuple[float, float]
) -> Path:
    """A pleat's line: its distances from the centre at the top and at the hip, plumb from there."""
    (top, below), (hip, hem) = across, depths
    points = ((top, 0.0), (below, hip), (below, hem))
    return polyline(*(Point(centre.x + side * x, centre.y - y) for x, y in points))
