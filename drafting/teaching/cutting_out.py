"""How each piece is cut out of a draft: traced along its lines, or drawn beside it.

What the garment's chapter drew stands on the draft. Here every piece whose outline is not there
already is walked once round: along the draft's lines from point to point where it lies on them,
along new lines where it does not. A piece of which nothing lies on the draft is drawn by itself,
on a paper of its own. So the steps give every piece whole, and cost nothing while one drafts.

Source: tracing pieces off the draft, common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field, replace
from itertools import count, pairwise
from typing import TYPE_CHECKING

from drafting.drawing.words import plain
from drafting.geometry import Cubic, Path, Point, Transform, Vector, shift
from drafting.teaching.matching import Laid, Lines, Stretch, straight
from drafting.teaching.reasons import APART, TRACED, Reasons, of_corner, of_piece
from drafting.trace import (
    DOWNWARD,
    LEFTWARD,
    RIGHTWARD,
    UPWARD,
    Bearing,
    Bend,
    Leg,
    Length,
    Outline,
    Part,
    Place,
    Step,
    Straight,
    Stroke,
    along,
    middle_of,
    path_of,
)
from drafting.trace.bearing import at_degrees
from drafting.trace.place import corner_of_paper

if TYPE_CHECKING:
    from drafting.pattern import Pattern, Piece
    from drafting.trace.step import How, StepKind, Value

SOURCE = "common practice, no source"
SAME = 1e-4
"""Points nearer than this (cm) are one."""
EXACT = 1e-7
"""Directions that differ by no more than this (radians) are one."""
EVEN = 1e-3
"""Outlines whose lengths differ by less than this (cm) are alike."""
WAISTS = ("waistband", "finished waist")
"""Names of the length that a band is as long as."""
SMOOTH = "Two parts of the line join here."


def cut_out(steps: tuple[Step, ...], pattern: Pattern, corner: Point) -> tuple[Step, ...]:
    """The steps that take every piece of a pattern from the steps of its draft.

    Args:
        steps: The draft.
        pattern: The net pattern that was made of it, cm.
        corner: Where the upper left of a piece comes that is drawn by itself, cm.
    """
    bench = _Bench(steps, Reasons(pattern), corner)
    for piece in pattern.pieces:
        bench.take(piece)
    return tuple(bench.steps)


@dataclass(slots=True)
class _Bench:
    """What has been drawn, and the steps that were added to it."""

    drawn: tuple[Step, ...]
    reasons: Reasons
    corner: Point
    steps: list[Step] = field(default_factory=list)
    strokes: list[Stroke] = field(default_factory=list)
    places: list[Place] = field(default_factory=list)
    lengths: list[Length] = field(default_factory=list)
    paper: int = 0
    chapter: str = ""

    def __post_init__(self) -> None:
        values = [s.value for s in self.drawn]
        self.strokes = [v for v in values if isinstance(v, Stroke)]
        self.places = [v for v in values if isinstance(v, Place)]
        self.lengths = list(_details(self.drawn))

    def take(self, piece: Piece) -> None:
        """Add the steps that give one piece."""
        if _is_there(self.drawn, piece):
            return
        laid = Lines.of(self.strokes).lay(piece)
        self.chapter = piece.title
        if laid.aside:
            self._aside(piece)
            return
        self._traced(piece, laid)

    def add(self, kind: StepKind, name: str, value: Value, why: str, how: How, paper: int) -> None:
        self.steps.append(Step(kind, self.chapter, name, value, why, how, SOURCE, paper=paper))

    def free(self, name: str) -> str:
        """The name, numbered where another step has it already."""
        taken = {s.name for s in (*self.drawn, *self.steps)}
        named = (f"{name}, {n}" for n in count(2))
        return name if name not in taken else next(n for n in named if n not in taken)

    def point(self, name: str, place: Place, why: str, paper: int = 0) -> Place:
        base, moves = (place, ()) if place.name else (place.base, place.moves)
        named = Place(place.x, place.y, self.free(name), base, moves)
        self.add("point", named.name, named, why, named, paper)
        return named

    def line(self, name: str, parts: tuple[Part, ...], why: str, paper: int = 0) -> Stroke:
        stroke = Stroke(path_of(parts), parts, self.free(name))
        self.add("line", stroke.name, stroke, why, stroke, paper)
        return stroke

    def outline(self, piece: Piece, legs: tuple[Leg, ...], why: str, paper: int = 0) -> None:
        outline = Outline(legs)
        self.add("outline", piece.name, outline, why, outline, paper)

    # pieces that lie on the draft

    def _traced(self, piece: Piece, laid: Laid) -> None:
        runs = _runs(laid.stretches)
        corners = self._corners(piece, runs)
        legs = []
        for run, (start, end) in zip(runs, pairwise((*corners, corners[0])), strict=True):
            if run[0].line is None:
                legs.append(Leg(self._new(piece, run, start, end), backward=False))
            else:
                legs.append(_leg(run, start, end))
        self.outline(piece, tuple(legs), TRACED)

    def _corners(self, piece: Piece, runs: list[list[Stretch]]) -> list[Place]:
        """Where each run starts, found in walking order: along drawn lines, else by measuring."""
        found: dict[int, Place] = {}
        order = sorted(range(len(runs)), key=lambda i: _is_loose(runs, i))
        for i in order:
            before, run = runs[i - 1], runs[i]
            found[i] = self._known(run[0].segment.start) or self.point(
                _corner_name(piece, before, run),
                self._placed(before, run, found.get(i - 1)),
                of_corner(before[-1].edge, run[0].edge),
            )
            self.places.append(found[i])
        return [found[i] for i in range(len(runs))]

    def _known(self, at: Point) -> Place | None:
        return next((p for p in reversed(self.places) if p.distance(at) < SAME), None)

    def _placed(self, before: list[Stretch], run: list[Stretch], last: Place | None) -> Place:
        at = run[0].segment.start
        for line, distance in ((run[0].line, run[0].first), (before[-1].line, before[-1].last)):
            if line is not None:
                return self._along(line, distance)
        return self._measured(last or self._nearest(at), at)

    def _nearest(self, at: Point) -> Place:
        return min(self.places, key=at.distance)

    def _along(self, line: Stroke, distance: float) -> Place:
        ends = ((distance, line.at), (line.path.length() - distance, line.before_end))
        cm, way = min(ends, key=lambda e: (not _is_round(e[0]) and not self._names(e[0]), e[0]))
        return way(self._called(cm))

    def _measured(self, start: Place, at: Point) -> Place:
        """So far across and so far up or down from a point."""
        across, up = at.x - start.x, at.y - start.y
        here = start
        if abs(across) > SAME / 100:
            by = self._called(abs(across))
            here = here.right(by) if across > 0 else here.left(by)
        if abs(up) > SAME / 100:
            by = self._called(abs(up))
            here = here.up(by) if up > 0 else here.down(by)
        return here

    def _called(self, cm: float) -> Length:
        """A length by the name under which it was worked out among the details."""
        named = self._names(cm)
        return named[0] if len(named) == 1 else Length(cm)

    def _names(self, cm: float) -> list[Length]:
        found = {n.how: n for n in self.lengths if abs(n - cm) < SAME / 100}
        return list(found.values())

    def _girth(self, piece: Piece, cm: float) -> Length:
        """A band's length as the waist's and what laps under."""
        waist = next((n for n in self.lengths if n.how in WAISTS), None)
        if waist is None or piece.name != "waistband" or cm < waist - SAME:
            return self._called(cm)
        return waist + (cm - float(waist))

    def _new(self, piece: Piece, run: list[Stretch], start: Place, end: Place) -> Stroke:
        """A line that only this piece has; those after it may be traced along it."""
        edge = run[0].edge
        name, why = _edge_name(piece, edge), self.reasons.of_line(piece.name, edge)
        joints = self._joints(piece, run, start)
        stroke = self.line(name, tuple(_parts(run, (start, *joints, end))), why)
        self.strokes.append(stroke)
        return stroke

    def _joints(self, piece: Piece, run: list[Stretch], start: Place) -> list[Place]:
        """The points within a line, each measured from the one before it."""
        joints: list[Place] = []
        for number, stretch in enumerate(run[:-1], 1):
            place = self._measured(joints[-1] if joints else start, stretch.segment.end)
            joints.append(self.point(_joint_name(piece, stretch.edge, number), place, SMOOTH))
        return joints

    # pieces that are drawn by themselves

    def _aside(self, piece: Piece) -> None:
        self.paper += 1
        outline = piece.outline
        left, _, _, top = outline.bounds()
        by = shift(self.corner.x - left, self.corner.y - top)
        ring = _merged([Stretch(e.name, s) for e in piece.edges for s in e.path.segments])
        if _is_rectangle(ring):
            self._rectangle(piece, outline.transformed(by))
            return
        self._ring(piece, _from_top_left([_shifted(s, by) for s in ring]))

    def _rectangle(self, piece: Piece, outline: Path) -> None:
        left, low, right, top = outline.bounds()
        name, paper = plain(piece.name), self.paper
        corner = self.point(f"{name}: corner", corner_of_paper(left, top), APART, paper)
        beside = corner.right(self._called(right - left))
        deep = self._girth(piece, top - low)
        under = beside.down(deep)
        corners = (corner, beside, under, under.left(right - left), corner)
        sides = tuple(Straight(a, b) for a, b in pairwise(corners))
        self._closed(piece, sides)

    def _ring(self, piece: Piece, ring: list[Stretch]) -> None:
        first, paper = ring[0], self.paper
        start = corner_of_paper(first.segment.start.x, first.segment.start.y)
        corners = [self.point(_corner_name(piece, [ring[-1]], [first]), start, APART, paper)]
        for number, (before, after) in enumerate(pairwise(ring), 1):
            place = self._measured(corners[-1], before.segment.end)
            told = (_joint_name(piece, before.edge, number), SMOOTH)
            if before.edge != after.edge:
                told = (_between_name(piece, before, after), of_corner(before.edge, after.edge))
            corners.append(self.point(told[0], place, told[1], paper))
        self._closed(piece, tuple(_parts(ring, (*corners, corners[0]))))

    def _closed(self, piece: Piece, parts: tuple[Part, ...]) -> None:
        why = of_piece(piece.name)
        line = self.line(f"{plain(piece.name)}: all round", parts, why, self.paper)
        self.outline(piece, (Leg(line, backward=False),), APART, self.paper)


def _details(steps: tuple[Step, ...]) -> Iterator[Length]:
    """The lengths that were worked out after the panels were traced: those of the details."""
    last = max((i for i, s in enumerate(steps) if isinstance(s.value, Outline)), default=len(steps))
    for step in steps[last:]:
        if step.kind == "length" and isinstance(step.value, Length):
            yield step.value


def _is_there(steps: tuple[Step, ...], piece: Piece) -> bool:
    """Whether the draft gives the piece's outline already."""
    for step in steps:
        if isinstance(step.value, Outline) and step.name == piece.name:
            laid = Lines.of([leg.line for leg in step.value.legs]).lay(piece)
            alike = abs(step.value.length - piece.outline.length()) < EVEN
            if alike and all(s.line for s in laid.stretches):
                return True
    return False


def _runs(stretches: tuple[Stretch, ...]) -> list[list[Stretch]]:
    """Stretches that follow each other on one drawn line, and those of one edge on none."""
    runs: list[list[Stretch]] = []
    for stretch in stretches:
        if runs and _goes_on(runs[-1][-1], stretch):
            runs[-1].append(stretch)
        else:
            runs.append([stretch])
    if len(runs) > 1 and runs[0][0].line and _goes_on(runs[-1][-1], runs[0][0]):
        runs[0] = runs.pop() + runs[0]
    return runs


def _goes_on(one: Stretch, two: Stretch) -> bool:
    if one.line is None or two.line is None:
        return one.line is two.line and one.edge == two.edge
    same = one.line is two.line and one.backward == two.backward
    return same and abs(one.last - two.first) < EVEN


def _is_loose(runs: list[list[Stretch]], i: int) -> bool:
    """Whether a run's start lies on no drawn line, so that others must be found first."""
    return runs[i][0].line is None and runs[i - 1][-1].line is None


def _leg(run: list[Stretch], start: Place, end: Place) -> Leg:
    first, last = run[0].first, run[-1].last
    line, backward = run[0].line, last < first
    assert line is not None  # noqa: S101 - the run lies on a line
    low, high = sorted((first, last))
    if low < SAME and line.path.length() - high < SAME:
        return Leg(line, backward)
    return Leg(line, backward, (start, end), first, last)


def _merged(ring: list[Stretch]) -> list[Stretch]:
    """The outline with straight segments that run on in one line drawn as one."""
    merged: list[Stretch] = []
    for stretch in ring:
        if merged and _in_line(merged[-1], stretch):
            merged[-1] = _joined(merged[-1], stretch)
        else:
            merged.append(stretch)
    if len(merged) > 1 and _in_line(merged[-1], merged[0]):
        merged[0] = _joined(merged.pop(), merged[0])
    return merged


def _in_line(one: Stretch, two: Stretch) -> bool:
    a, b = one.segment, two.segment
    return straight(a) and straight(b) and abs(a.tangent(1).cross(b.tangent(0))) < EXACT


def _joined(one: Stretch, two: Stretch) -> Stretch:
    return replace(one, segment=replace(one.segment, end=two.segment.end))


def _is_rectangle(ring: list[Stretch]) -> bool:
    level = all(min(abs(s.segment.tangent(0).x), abs(s.segment.tangent(0).y)) < EXACT for s in ring)
    return len(ring) == 4 and all(straight(s.segment) for s in ring) and level


def _from_top_left(ring: list[Stretch]) -> list[Stretch]:
    """The ring begun at its corner nearest to the upper left."""
    first = min(range(len(ring)), key=lambda i: _reach(ring[i].segment.start))
    return [*ring[first:], *ring[:first]]


def _is_round(cm: float) -> bool:
    """Whether a length is told in halves of a centimetre, as a rule's numbers are."""
    return abs(cm * 2 - round(cm * 2)) < SAME / 100


def _reach(p: Point) -> float:
    return p.x - p.y


def _shifted(stretch: Stretch, by: Transform) -> Stretch:
    return replace(stretch, segment=stretch.segment.transformed(by))


def _parts(run: Iterable[Stretch], places: tuple[Place, ...]) -> Iterator[Part]:
    """Straight parts and curves, each direction told by what lies on the paper if it can be."""
    segments = [s.segment for s in run]
    told = list(zip(segments, pairwise(places), strict=True))
    chords = [along(a, b) for s, (a, b) in told if straight(s)]
    for segment, (start, end) in told:
        if not isinstance(segment, Cubic):
            yield Straight(start, end)
            continue
        ways = (_bearing(segment.tangent(t), chords) for t in (0.0, 1.0))
        leaving, arriving = ways
        guide = middle_of(segment) if leaving.verb == "degrees" else None
        yield Bend(start, end, leaving, arriving, segment, guide)


def _bearing(way: Vector, chords: list[Bearing]) -> Bearing:
    for told in (RIGHTWARD, LEFTWARD, UPWARD, DOWNWARD, *chords):
        for turned in (told, told.left, told.right):
            if abs(turned.vector.unit.cross(way)) < EXACT and turned.vector.dot(way) > 0:
                return turned
    return at_degrees(way.angle)


def _edge_name(piece: Piece, edge: str) -> str:
    return f"{plain(piece.name)}: {plain(edge)}"


def _joint_name(piece: Piece, edge: str, number: int) -> str:
    return f"{plain(piece.name)}: {plain(edge)}, joint {number}"


def _corner_name(piece: Piece, before: list[Stretch], run: list[Stretch]) -> str:
    return _between_name(piece, before[-1], run[0])


def _between_name(piece: Piece, before: Stretch, after: Stretch) -> str:
    return f"{plain(piece.name)}: {plain(before.edge)} to {plain(after.edge)}"
