"""A figure of the draft: what is new stands out, what was there recedes.

Level lines run across; points carry their labels; arrows show the lengths of the step. Paper cm.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from drafting.drawing import Group, Item, Role, Stroke
from drafting.geometry import (
    DOWN,
    LEFT,
    RIGHT,
    UP,
    Cubic,
    Path,
    Point,
    Vector,
    direction,
    polyline,
)
from drafting.teaching.placing import Board
from drafting.teaching.tape import figures
from drafting.teaching.taught import TaughtDraft, TaughtStep
from drafting.teaching.view import View
from drafting.trace import Arc, Bend, Bulge, Guide, Length, Move, Outline, Place, guide_of
from drafting.trace import Stroke as Drawn
from drafting.trace.length import remembers

LABEL, MEASURE = 0.2, 0.17
"""Heights of capitals of labels and of lengths, cm."""
DOT = 0.045
WAYS = (RIGHT, UP, LEFT, DOWN, RIGHT)
ARC = 0.5523
"""Handles of a cubic that draws a quarter of a circle, in radii."""
BESIDE = 0.32
"""A dimension line runs this far (cm) beside what it measures."""
BARB = 0.13
SHORTEST = 0.12
"""Lengths that come out shorter on paper (cm) get no arrow; a detail shows them."""
MEASURED = ("right", "left", "up", "down", "toward", "slant", "reach", "square")
LEVELS = frozenset(
    f"{name} line" for name in ("waist", "hip", "crotch", "knee", "hem", "bust", "chest", "yoke")
)
"""Points of these names stand for level lines."""
TRUED = "trued "
"""A line of this name and another's takes the other's place."""


@dataclass(frozen=True, slots=True)
class Scene:
    """What is to be seen.

    Attributes:
        draft: The draft.
        upto: Number of the last step that has been drawn.
        new: Numbers of the steps that stand out.
        whole: Whether every point is labelled, not only those that the new steps speak of.
    """

    draft: TaughtDraft
    upto: int
    new: frozenset[int]
    whole: bool = False

    @property
    def steps(self) -> tuple[TaughtStep, ...]:
        """The steps drawn so far on the paper of the last one."""
        paper = self.paper
        return tuple(s for s in self.draft.steps[: self.upto] if s.paper == paper)

    @property
    def paper(self) -> int:
        """Which paper is seen."""
        return 0 if self.whole else self.draft.steps[self.upto - 1].paper

    @property
    def fresh(self) -> tuple[TaughtStep, ...]:
        """The steps that stand out."""
        return tuple(s for s in self.steps if s.number in self.new)


@dataclass(slots=True)
class _Canvas:
    """A figure while it is drawn."""

    view: View
    board: Board
    items: list[Item] = field(default_factory=list)

    def line(self, path: Path, role: Role, name: str = "") -> None:
        """Draw a line of the draft as far as it is seen."""
        seen = self.view.paths(path)
        self.items += [Stroke(p, role, name if len(seen) == 1 else "") for p in seen]
        self.board.draw(seen, new=role is Role.NEW)


def figure(scene: Scene, view: View, name: str) -> Group:
    """Draw a scene through a window.

    Args:
        scene: What is to be seen.
        view: The window and the scale.
        name: The group's name, unique in its sheet.
    """
    canvas = _Canvas(view, Board((0.0, 0.0, view.width, view.height)))
    for draw in (_levels, _old_lines, _new_lines, _dots, _lengths, _level_names, _labels):
        draw(scene, canvas)
    return Group(name, _title(scene), tuple(canvas.items))


def _title(scene: Scene) -> str:
    return ", ".join(s.heading for s in scene.fresh) or scene.draft.title


def _levels(scene: Scene, canvas: _Canvas) -> None:
    for step in scene.steps:
        if step.place and step.place.name in LEVELS:
            role = Role.DIMENSION if step.number in scene.new else Role.LEVEL
            canvas.line(_level(scene.draft, step.place), role)


def _level(draft: TaughtDraft, place: Place) -> Path:
    left, right = draft.corner.x + 3.0, draft.corner.x + draft.size[0] - 3.0
    return polyline(Point(left, place.y), Point(right, place.y))


def _level_names(scene: Scene, canvas: _Canvas) -> None:
    window = canvas.view.window
    for step in scene.steps:
        if step.place and step.place.name in LEVELS:
            line = _level(scene.draft, step.place)
            start = Point(max(window[0], line.start.x), line.start.y)
            end = Point(min(window[2], line.end.x), line.end.y)
            if canvas.view.sees(start):
                one, two = (canvas.view.to.point(p) for p in (start, end))
                ends = (one + Vector(0.3, 0.0), two + Vector(-0.3, 0.0))
                told = scene.draft.say(step.place.name)
                canvas.items += canvas.board.write_at_either(told, MEASURE, ends, Role.OLD)


def _old_lines(scene: Scene, canvas: _Canvas) -> None:
    gone = {s.line.name.removeprefix(TRUED) for s in scene.steps if s.line and TRUED in s.line.name}
    for step in scene.steps:
        if step.number in scene.new:
            continue
        for path in _pencilled(step):
            canvas.line(path, Role.FAINT)
        if step.line:
            canvas.line(step.line.path, Role.FAINT if step.line.name in gone else Role.OLD)


def _new_lines(scene: Scene, canvas: _Canvas) -> None:
    for step in scene.fresh:
        for path in _pencilled(step):
            canvas.line(path, Role.DIMENSION)
        if step.line:
            canvas.line(step.line.path, Role.NEW)
            for chord in _chords(step.line):
                canvas.line(chord, Role.FAINT)
        if isinstance(step.step.value, Outline):
            for leg in step.step.value.legs:
                canvas.line(leg.path, Role.NEW)


def _chords(line: Drawn) -> Iterator[Path]:
    """The straight lines off which a curve's middle is measured."""
    for part in line.parts:
        guide = guide_of(part)
        if guide and guide.verb == "middle":
            yield polyline(part.start, part.end)


def _pencilled(step: TaughtStep) -> Iterator[Path]:
    """The thin lines that the step's moves leave, or a folded dart's legs."""
    if step.line:
        for fold in step.line.folds:
            yield polyline(fold.near, fold.point, fold.far)
    if step.place:
        yield from (polyline(a, b) for a, b, _ in _moves(step.place) if a.distance(b) > 1e-9)


def _moves(place: Place) -> Iterator[tuple[Point, Point, Move]]:
    """Each move with where it began and where it led; a first point begins where it lies."""
    here: Point = place.base or place.moves[0].to if place.moves else place
    for move in place.moves:
        yield here, move.to, move
        here = move.to


def _dots(scene: Scene, canvas: _Canvas) -> None:
    for step in scene.steps:
        if step.place and canvas.view.sees(step.place):
            at = canvas.view.to.point(step.place)
            role = Role.NEW if step.number in scene.new else Role.FAINT
            canvas.items.append(Stroke(_circle(at), role))
            canvas.board.dot(at, DOT)


def _circle(at: Point) -> Path:
    """A point's mark: four arcs of a quarter."""
    ends = [at + way * DOT for way in WAYS]
    return Path(
        tuple(
            Cubic(a, a + on * (DOT * ARC), b + out * (DOT * ARC), b)
            for a, b, out, on in zip(ends, ends[1:], WAYS, WAYS[1:], strict=False)
        )
    )


def _lengths(scene: Scene, canvas: _Canvas) -> None:
    for step in scene.fresh:
        for start, end, value in _measured(step):
            _dimension(canvas, start, end, _shown(scene.draft, value))
        if step.place:
            for path, value in _walked(step.place):
                _dimension_along(canvas, path, _shown(scene.draft, value))


def _walked(place: Place) -> Iterator[tuple[Path, float]]:
    """The stretches of lines along which a point was measured."""
    for move in place.moves:
        match move.verb, move.operands:
            case "along", (Drawn() as line, Length() as far):
                yield line.path.split(float(far))[0], far
            case "before", (Drawn() as line, Length() as far):
                yield line.path.split(line.path.length() - float(far))[1], far


def _dimension_along(canvas: _Canvas, path: Path, text: str) -> None:
    """A stretch of a line that was measured, with its length."""
    length, middle = path.length(), path.at(path.length() / 2)
    if length / canvas.view.scale >= SHORTEST and canvas.view.sees(middle):
        canvas.line(path, Role.DIMENSION)
        at = canvas.view.to.point(middle)
        canvas.items += canvas.board.write(text, MEASURE, at, Role.DIMENSION)


def _shown(draft: TaughtDraft, cm: float) -> str:
    """The length's number; left out of an exercise unless the rule itself names it."""
    left_out = draft.form.blank and remembers(cm)
    return draft.words.unknown if left_out else figures(cm, draft.form.unit, draft.form.language)


def _measured(step: TaughtStep) -> Iterator[tuple[Point, Point, float]]:
    """The stretches whose length the step gives."""
    if step.place:
        for start, end, move in _moves(step.place):
            lengths = [o for o in move.operands if isinstance(o, Length)]
            if move.verb in MEASURED and lengths:
                yield start, end, lengths[0]
    if step.line:
        for part in step.line.parts:
            if isinstance(part, Bend | Bulge) and part.guide and not step.line.folds:
                yield from _guided(part.guide, part.start, part.segment)


def _guided(guide: Guide, start: Point, drawn: Cubic) -> Iterator[tuple[Point, Point, float]]:
    match guide.verb, guide.operands:
        case "diagonal", (Place() as corner, Length() as out):
            outward = 45.0 if drawn.end.x > start.x else 135.0
            yield corner, corner + direction(outward) * float(out), out
        case "middle", (Length() as out, *_) if out > 0.05:
            yield start.toward(drawn.end, 0.5), drawn.at(0.5), out


def _dimension(canvas: _Canvas, start: Point, end: Point, text: str) -> None:
    """An arrow beside a stretch, with its length."""
    if not (canvas.view.sees(start) and canvas.view.sees(end)):
        return
    a, b = canvas.view.to.point(start), canvas.view.to.point(end)
    if a.distance(b) < SHORTEST:
        return
    beside = (b - a).unit.left * (BESIDE if a.distance(b) > 0.6 else 0.0)
    c, d = a + beside, b + beside
    for path in _arrow(c, d):
        canvas.items.append(Stroke(path, Role.DIMENSION))
        canvas.board.draw((path,), new=True)
    middle = c.toward(d, 0.5)
    canvas.items += canvas.board.write(text, MEASURE, middle, Role.DIMENSION)


def _arrow(start: Point, end: Point) -> Iterator[Path]:
    yield polyline(start, end)
    barb = min(BARB, start.distance(end) / 3)
    for tip, back in ((start, (end - start).unit), (end, (start - end).unit)):
        one, two = (tip + back.rotated(turn) * barb for turn in (-18, 18))
        yield polyline(one, tip, two)


def _labels(scene: Scene, canvas: _Canvas) -> None:
    """The new points' labels first, then those of the points that the new steps speak of."""
    new = [s.place for s in scene.fresh if s.place]
    rest = [s.place for s in scene.steps if s.place] if scene.whole else _spoken_of(scene)
    names = {p.name for p in new}
    for place, role in (*((p, Role.NEW) for p in new), *((p, Role.OLD) for p in rest)):
        if canvas.view.sees(place) and not (role is Role.OLD and place.name in names):
            names.add(place.name)
            at = canvas.view.to.point(place)
            canvas.items += canvas.board.write(scene.draft.labels(place), LABEL, at, role)


def _spoken_of(scene: Scene) -> list[Place]:
    return [
        p for step in scene.fresh for p in spoken_of(step) if p.name in scene.draft.labels.by_name
    ]


def spoken_of(step: TaughtStep) -> Iterator[Place]:
    """The points that a step goes by."""
    if step.place:
        yield from (step.place.base,) if step.place.base else ()
        yield from (o for m in step.place.moves for o in m.operands if isinstance(o, Place))
    if step.line:
        yield from _line_points(step.line)


def _line_points(line: Drawn) -> Iterator[Place]:
    yield line.start
    for part in line.parts:
        yield part.end
        guide = guide_of(part)
        yield from (o for o in (guide.operands if guide else ()) if isinstance(o, Place))
        yield from (part.about,) if isinstance(part, Arc) else ()
    for fold in line.folds:
        yield from (fold.near, fold.point, fold.far)
