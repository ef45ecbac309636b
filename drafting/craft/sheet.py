"""The sheet of paper on which a garment is drafted. The only mutable thing in the house."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from drafting.errors import ConstructionError
from drafting.geometry import JOIN, Path, Point, root
from drafting.geometry.segment import Segment
from drafting.trace import (
    Bulge,
    Compared,
    Fold,
    Leg,
    Length,
    Outline,
    Part,
    Place,
    Solved,
    Step,
    Stroke,
    path_of,
    straight,
)
from drafting.trace.place import length
from drafting.trace.step import How, Moved, Sign, StepKind, Value
from drafting.trace.stroke import Turn, measured_parts


class DraftSheet:
    """Records each named step in the order of the pencil. Does not leave the garment's chapter.

    Every method takes the reason as a sentence; `source` says where the rule comes from where
    that is another source than the chapter's.
    """

    def __init__(self) -> None:
        self._steps: list[Step] = []
        self._chapter = ""
        self._source = ""
        self._drawn: set[str] = set()

    @property
    def steps(self) -> tuple[Step, ...]:
        """What has been drawn so far."""
        return tuple(self._steps)

    def beside(self, word: str) -> DraftSheet:
        """The same paper for something drafted beside: a word goes before the names of outlines.

        Points and lines of one name are numbered, as everywhere on the sheet.
        """
        return _Beside(word, self._steps, self._drawn)

    def heading(self, title: str, source: str = "") -> None:
        """Start a chapter of the construction; `source` holds for all its steps."""
        self._chapter, self._source = title, source

    def point(self, name: str, place: Place | None, why: str, *, source: str = "") -> Place:
        """Record a point. Raises ConstructionError where the construction found none."""
        place = found_place(name, place)
        base, moves = (place, ()) if place.name else (place.base, place.moves)
        named = Place(place.x, place.y, self._free(name), base, moves)
        self._add("point", named.name, named, why, named, source)
        return named

    def length(self, name: str, value: float, why: str, *, source: str = "") -> Length:
        """Record a length; later formulas call it by its name."""
        named = Length(value, name)
        self._add("length", name, named, why, length(value), source)
        return named

    def line(self, name: str, *places: Place, why: str, source: str = "") -> Stroke:
        """A straight line through two or more places."""
        return self.draw(name, straight(*places), why, source=source)

    def bulge(
        self,
        name: str,
        start: Place,
        end: Place,
        by: float,
        side: Turn,
        why: str,
        *,
        source: str = "",
    ) -> Stroke:
        """A shallow curve whose middle stands `by` cm to the left or right of the straight line."""
        return self.draw(name, (Bulge(start, end, length(by), side),), why, source=source)

    def curve(
        self,
        name: str,
        start: Place,
        end: Place,
        segments: tuple[Segment, ...],
        how: str,
        why: str,
        *,
        source: str = "",
    ) -> Stroke:
        """A line that is ready drawn between two places; `how` says in words how it runs.

        Its directions are told in degrees only: `draw` tells them by what lies on the paper.
        """
        parts = measured_parts(segments, start, end)
        return self.stroke(Stroke(Path(segments), parts, name, remark=how), why, source=source)

    def draw(self, name: str, parts: tuple[Part, ...], why: str, *, source: str = "") -> Stroke:
        """A line of straight parts and curves, each starting where the last one ended."""
        return self.stroke(Stroke(path_of(parts), parts, name), why, source=source)

    def draw_over(
        self,
        name: str,
        part: Part,
        folds: tuple[Fold, ...],
        opened: Path,
        why: str,
        *,
        source: str = "",
    ) -> Stroke:
        """A curve drawn while darts are closed; `opened` is how it lies with the darts open.

        The part ends at the place where its end lies while the darts are open, and arrives there
        in a direction that holds while they are open; closing carries both along.
        """
        return self.stroke(Stroke(opened, (part,), name, folds), why, source=source)

    def stroke(self, stroke: Stroke, why: str, *, source: str = "") -> Stroke:
        """Record a line that a craft has drawn."""
        name = self._free(stroke.name)
        drawn = stroke if name == stroke.name else replace(stroke, name=name)
        self._add("line", name, drawn, why, drawn, source)
        return drawn

    def outline(
        self, name: str, lines: tuple[Stroke, ...], why: str, *, source: str = ""
    ) -> Outline:
        """Record which lines bound a piece of the draft, in walking order, whichever way drawn.

        Raises:
            ValueError: The lines do not meet end to end.
        """
        walked = Outline(tuple(Leg(line, back) for line, back in _walked(lines)))
        self._add("outline", name, walked, why, walked, source)
        return walked

    def decide(self, name: str, answer: bool, question: str, why: str, *, source: str = "") -> bool:  # noqa: FBT001 - the answer is what is recorded
        """Record a decision: the question, the answer for this body, and the reason."""
        self._add("decision", name, answer, why, "", source, question)
        return answer

    def compare(
        self,
        name: str,
        measured: float,
        sign: Sign,
        limit: float,
        question: str,
        why: str,
        *,
        source: str = "",
    ) -> bool:
        """Decide by holding a length against another, and record both."""
        compared = Compared(length(measured), sign, length(limit))
        answer = compared.holds
        self._add("decision", name, answer, why, compared, source, question)
        return answer

    def solve(
        self,
        name: str,
        measure: Callable[[float], float],
        wanted: float,
        between: tuple[float, float],
        why: str,
        *,
        source: str = "",
    ) -> Length:
        """Find the value that brings what is measured to what is wanted, and record both.

        Raises:
            ConstructionError: No value between the bounds does it.
        """
        found = solved(name, measure, wanted, between)
        how = Solved(length(wanted), between, measure(found))
        self._add("solved", name, found, why, how, source)
        return Length(found, name)

    def found(
        self,
        name: str,
        value: float,
        wanted: float,
        between: tuple[float, float],
        reached: float,
        why: str,
    ) -> None:
        """Record a value that was found by trying: the goal, its limits, and what it reached."""
        how = Solved(length(wanted), between, reached)
        self._add("solved", name, float(value), why, how, "")

    def true(
        self,
        name: str,
        moved: Moved | Callable[[], Moved],
        why: str,
        *,
        agree: str = "",
        source: str = "",
    ) -> None:
        """Record a trueing: what moved, how far in cm, and what was brought to agree by it.

        How far may be given as the way to measure it, which then is done for a record only.
        """
        self._add("trued", name, moved if isinstance(moved, tuple) else moved(), why, agree, source)

    def _free(self, name: str) -> str:
        """A name for a point or a line, numbered where another one has it: the sheet goes by it."""
        named, number = name, 2
        while named in self._drawn:
            named, number = f"{name}, {number}", number + 1
        self._drawn.add(named)
        return named

    def _add(
        self,
        kind: StepKind,
        name: str,
        value: Value,
        why: str,
        how: How,
        source: str,
        question: str = "",
    ) -> None:
        self._steps.append(
            Step(kind, self._chapter, name, value, why, how, source or self._source, question)
        )


def found_place(name: str, place: Place | None) -> Place:
    """The place. Raises ConstructionError where the construction found none."""
    if place is None:
        raise ConstructionError(
            f"The {name} cannot be found: the line does not reach that level. Check the "
            "girths and the heights against each other.",
            where=name,
        )
    return place


def solved(
    name: str, measure: Callable[[float], float], wanted: float, between: tuple[float, float]
) -> float:
    """The value that brings what is measured to what is wanted.

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
    return found


def _walked(lines: tuple[Stroke, ...]) -> tuple[tuple[Stroke, bool], ...]:
    """Each line with whether it is walked backward, so that each starts where the last ended."""
    first = lines[0].path
    here = first.start if _ends_on(lines[1].path, first.start) else first.end
    walked = [(lines[0], here is first.start)]
    for line in lines[1:]:
        ends = (line.path.start, line.path.end)
        backward = ends[1].distance(here) < ends[0].distance(here)
        start, here = reversed(ends) if backward else ends
        if start.distance(_walked_to(walked[-1])) > JOIN:
            raise ValueError(f"{line.name} does not start where the line before it ends")
        walked.append((line, backward))
    return tuple(walked)


def _walked_to(step: tuple[Stroke, bool]) -> Point:
    """Where a line ends that is walked forward, or backward."""
    stroke, backward = step
    return stroke.path.start if backward else stroke.path.end


def _ends_on(path: Path, point: Point) -> bool:
    return min(path.start.distance(point), path.end.distance(point)) < JOIN


def moved(old: Point, new: Point) -> float:
    """How far a trued point moved, in cm."""
    return old.distance(new)


class _Beside(DraftSheet):
    """A sheet that shares another's paper and calls its outlines by a word of its own."""

    def __init__(self, word: str, steps: list[Step], drawn: set[str]) -> None:
        super().__init__()
        self._steps, self._drawn, self._word = steps, drawn, word

    def outline(
        self, name: str, lines: tuple[Stroke, ...], why: str, *, source: str = ""
    ) -> Outline:
        """Record an outline of the piece that is called by the word and this name."""
        return super().outline(f"{self._word}_{name}", lines, why, source=source)
