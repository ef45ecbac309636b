"""What a grade report holds: where each labelled point goes from size to size, and what jumps."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from drafting.geometry import Point, Vector

GradeCode = Literal[
    "uneven_sizes", "decision_changes", "limit_reached", "points_differ", "uneven_step"
]


@dataclass(frozen=True, slots=True)
class PointMoves:
    """A labelled point of the draft over all sizes.

    Attributes:
        chapter: Heading of the construction that it stands under.
        name: The trade's word for it.
        places: Where it lies in each drafted size, in cm from the corner of the paper, Y up; None
            where the size has no such point.
    """

    chapter: str
    name: str
    places: tuple[Point | None, ...]

    @property
    def steps(self) -> tuple[Vector | None, ...]:
        """How it moves from each size to the next, in cm, Y up."""
        pairs = zip(self.places, self.places[1:], strict=False)
        return tuple(b - a if a is not None and b is not None else None for a, b in pairs)


@dataclass(frozen=True, slots=True, kw_only=True)
class GradeFinding:
    """Where the step from size to size is not even.

    Attributes:
        code: `uneven_sizes`: the bodies' own steps differ; `decision_changes`: a dart appears or
            another answer of the construction turns; `limit_reached`: a length that is the larger
            or smaller of two changes over; `points_differ`: points that some sizes have not;
            `uneven_step`: a point or measure jumps though the bodies do not.
        where: Name of the measure, decision or point; of several the one that is most uneven.
        sizes: The sizes between which it happens: two, or three where the middle step cannot be
            told from its neighbour.
        message: What happens, one sentence.
        names: All measures or points that it concerns, the most uneven first.
        by: How uneven the worst is: its second difference.
        unit: Of `by`: "cm" or "deg".
    """

    code: GradeCode
    where: str
    sizes: tuple[str, ...]
    message: str
    names: tuple[str, ...]
    by: float | None = None
    unit: Literal["cm", "deg"] = "cm"


@dataclass(frozen=True, slots=True, kw_only=True)
class GradeReport:
    """How a garment grows over a range.

    Attributes:
        sizes: The sizes that could be drafted, in their order.
        origin: Name of the point that the others are measured from.
        points: Every labelled point, in the order of the pencil.
        findings: Where the steps are not even.
    """

    sizes: tuple[str, ...]
    origin: str
    points: tuple[PointMoves, ...]
    findings: tuple[GradeFinding, ...]
