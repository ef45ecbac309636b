"""The sheet of paper on which a garment is drafted. The only mutable thing in the house."""

from __future__ import annotations

from collections.abc import Callable

from drafting.errors import ConstructionError
from drafting.geometry import Path, Point, bulged, polyline, root
from drafting.geometry.segment import Segment
from drafting.trace import Length, Place, Step, Stroke
from drafting.trace.place import length


class DraftSheet:
    """Records each named step in the order of the pencil. Does not leave the garment's chapter."""

    def __init__(self) -> None:
        self._steps: list[Step] = []
        self._chapter = ""

    @property
    def steps(self) -> tuple[Step, ...]:
        """What has been drawn so far."""
        return tuple(self._steps)

    def heading(self, title: str) -> None:
        """Start a chapter of the construction."""
        self._chapter = title

    def point(self, name: str, place: Place | None, why: str) -> Place:
        """Record a point. Raises ConstructionError where the construction found none."""
        if place is None:
            raise ConstructionError(
                f"The {name} cannot be found: the line does not reach that level. Check the "
                "girths and the heights against each other.",
                where=name,
            )
        named = Place(place.x, place.y, name, place.base, place.moves)
        self._add("point", name, named, why, place)
        return named

    def length(self, name: str, value: float, why: str) -> Length:
        """Record a length; later formulas call it by its name."""
        named = Length(value, name)
        self._add("length", name, named, why, length(value))
        return named

    def line(self, name: str, *places: Place, why: str) -> Stroke:
        """A straight line through two or more places."""
        return self._stroke(Stroke(polyline(*places), "straight", places, (), name), why)

    def bulge(self, name: str, start: Place, end: Place, by: float, side: str, why: str) -> Stroke:
        """A shallow curve whose middle stands `by` cm to the left or right of the straight line."""
        out = float(by) if side == "left" else -float(by)
        path = Path((bulged(start, end, out),))
        return self._stroke(Stroke(path, "bulged", (start, end), (by, side), name), why)

    def curve(
        self, name: str, start: Place, end: Place, segments: tuple[Segment, ...], how: str, why: str
    ) -> Stroke:
        """A smooth curve between two places; `how` says its tangents in words."""
        return self._stroke(Stroke(Path(segments), "curve", (start, end), (how,), name), why)

    def stroke(self, stroke: Stroke, why: str) -> Stroke:
        """Record a line that a craft has drawn."""
        return self._stroke(stroke, why)

    def decide(self, name: str, answer: bool, question: str, why: str) -> bool:  # noqa: FBT001 - the answer is what is recorded
        """Record a decision: the question, the answer for this body, and the reason."""
        self._add("decision", name, answer, why, question)
        return answer

    def solve(
        self,
        name: str,
        measure: Callable[[float], float],
        wanted: float,
        between: tuple[float, float],
        why: str,
    ) -> Length:
        """Find the value that brings what is measured to what is wanted, and record both.

        Raises:
            ConstructionError: No value between the bounds does it.
        """
        found = root(lambda v: measure(v) - float(wanted), *between)
        if found is None:
            low, high = sorted((measure(between[0]), measure(between[1])))
            raise ConstructionError(
                f"The {name} cannot bring the line to {float(wanted):.1f} cm; between its limits "
                f"it gives {low:.1f} to {high:.1f} cm.",
                where=name,
                received=float(wanted),
                allowed=(low, high),
            )
        how = f"brought to {float(wanted):.2f} cm between {between[0]:.2f} and {between[1]:.2f}"
        self._add("solved", name, found, why, how)
        return Length(found, name)

    def true(self, name: str, moved: tuple[tuple[str, float], ...], why: str) -> None:
        """Record a trueing: what moved, and how far in cm."""
        self._add("trued", name, moved, why, "")

    def _stroke(self, stroke: Stroke, why: str) -> Stroke:
        self._add("line", stroke.name, stroke, why, "")
        return stroke

    def _add(
        self,
        kind: str,
        name: str,
        value: object,
        why: str,
        how: str | Place | Length,
    ) -> None:
        self._steps.append(Step(kind, self._chapter, name, value, why, how))  # type: ignore[arg-type]


def moved(old: Point, new: Point) -> float:
    """How far a trued point moved, in cm."""
    return old.distance(new)
