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
        faces: One more than there are pleats; the first is half of its own, and so is the last
            unless it ends in a tuck.
        toward_centre: Of each pleat, whether its fold is laid toward the centre.
        depth: Depth of each pleat at the hip, cm: half of what it takes.
        tuck: Where the side seam is the inner fold of a pleat: how deep that is, cm. The last face
            then ends in the fold, or in the line that the fold is laid on, and so much cloth goes
            on under it to the seam.
    """

    faces: tuple[Face, ...]
    toward_centre: tuple[bool, ...]
    depth: float
    tuck: float = 0.0

    @property
    def tucked(self) -> bool:
        """Whether the last face goes on under a fold."""
        return self.tuck > 0

    @property
    def flat(self) -> float:
        """Width of the cloth in cm, the tuck at the side left out."""
        return self.shown + 2 * self.depth * len(self.toward_centre)

    @property
    def width(self) -> float:
        """Width of the cloth in cm."""
        return self.flat + self.tuck

    @property
    def edges(self) -> int:
        """How many edges of faces can be narrowed."""
        return sum(self._edges(n) for n, face in enumerate(self.faces) if face.narrows)

    def _edges(self, n: int) -> int:
        """How many edges of the n-th face lie at a pleat or a tuck."""
        return (n > 0) + (n < len(self.faces) - 1 or self.tucked)

    @property
    def shown(self) -> float:
        """Width in cm that shows when the pleats are laid."""
        return sum(face.width for face in self.faces)

    @property
    def narrowest(self) -> float:
        """How much each edge of a face can lose before the narrowest face is gone, cm."""
        return min(f.width / self._edges(n) for n, f in enumerate(self.faces) if f.narrows)


def under_fold(front: Pleating, back: Pleating) -> tuple[Pleating, Pleating]:
    """Front and back of knife pleats whose side seam lies under the front's last fold.

    The seam is moved from the middle of a face to the inner fold of the pleat before it; what the
    front loses the back has more.

    Args:
        front: A quarter that ends with half a face at the side.
        back: Another one.

    Source: seams of a pleated skirt lie at an inner fold: common practice, no source.
    """
    kept, half = front.faces[:-1], front.faces[-1]
    *behind, other = back.faces
    whole = Face(half.width + other.width, narrows=True)
    return (
        Pleating(kept, front.toward_centre[1:], front.depth, front.depth),
        Pleating((*behind, whole), back.toward_centre, back.depth, front.depth),
    )


def pleating(kind: PleatKind, shown: float, face: float, depth: float | None) -> Pleating:
    """Lay out the pleats of a quarter.

    Args:
        kind: Knife pleats turned to the side, half a face at either end; box pleats with a raised
            face over the centre, their folds meeting at the side; inverted ones, whose folds meet
            at both.
        shown: Width in cm that is to show.
        face: Wanted width in cm of a face.
        depth: Depth of a pleat; by default the face's width for knife pleats, half of it for box
            pleats, so that the cloth lies three deep everywhere.
    """
    if kind == "box":
        return _box(shown, face, depth)
    count = max(1, round(shown / face))
    if kind == "knife":
        each = shown / count
        halves, whole = Face(each / 2, narrows=True), Face(each, narrows=True)
        faces = (halves, *(whole for _ in range(count - 1)), halves)
        return Pleating(faces, (False,) * count, each if depth is None else depth)
    each = shown / count - GROOVE
    raised, groove = Face(each, narrows=True), Face(GROOVE, narrows=False)
    half = Face(GROOVE / 2, narrows=False)
    between = tuple(groove if n % 2 else raised for n in range(2 * count - 1))
    return Pleating((half, *between, half), (True, False) * count, _half(each, depth))


def _box(shown: float, face: float, depth: float | None) -> Pleating:
    """A raised face over the centre, the side in a groove, where its seam is hidden."""
    count = max(0, round(shown / face - 0.5))
    each = shown / (count + 0.5) - GROOVE
    raised, groove = Face(each, narrows=True), Face(GROOVE, narrows=False)
    ends = Face(each / 2, narrows=True), Face(GROOVE / 2, narrows=False)
    faces = (ends[0], *(groove, raised) * count, ends[1])
    return Pleating(faces, (False, *(True, False) * count), _half(each, depth))


def _half(each: float, depth: float | None) -> float:
    """Depth of a box pleat: half of its face, unless it is asked for."""
    return each / 2 if depth is None else depth


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
