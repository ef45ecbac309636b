"""Side by side: one body drafted by two methods, the outlines over each other, and what differs.

The drafts lie on each other at a point that both have: on the crease at the crotch line for
trousers, at the hip line or where all heights start for what has no crotch.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from drafting.checks import finished_measurements
from drafting.drawing import Group, Item, Pen, Role, Sheet, Stroke, Text
from drafting.drawing.words import plain
from drafting.errors import OutputError
from drafting.geometry import Path, Point, Transform, Vector, polyline, shift
from drafting.teaching.frames import CAPTION, ruler
from drafting.teaching.tables import Say
from drafting.teaching.taught import TaughtDraft, TaughtStep
from drafting.teaching.view import View, around
from drafting.trace import Length, Outline, Place

if TYPE_CHECKING:
    from drafting.workroom import Work

ANCHORS = ("crotch line", "hip line", "hip at the centre back")
"""Names of points that drafts are laid on each other by, best first; else the first point."""
PENS = (Pen(0.5), Pen(0.5, (2.0, 1.0)))
"""The first draft is drawn solid, the second one dashed."""
HEAD, FOOT, ROOM = 2.0, 1.1, 3.0
SAME = 0.01
"""Values closer than this (cm) do not differ."""


@dataclass(frozen=True, slots=True)
class Difference:
    """One value of two drafts; None where a draft has no such value. In cm (degrees: `unit`)."""

    what: str
    one: float | None
    two: float | None
    unit: str

    @property
    def by(self) -> float | None:
        """The second less the first."""
        return None if self.one is None or self.two is None else self.two - self.one


@dataclass(frozen=True, slots=True, kw_only=True)
class Compared:
    """Two drafts of one body.

    Attributes:
        one: The first.
        two: The second.
        anchor: Name of the point at which they lie on each other.
        move: How the second is moved onto the first.
        measures: Finished measures of both.
        lengths: Named lengths of the construction that differ, or that only one has.
        points: Points of both that lie elsewhere: how far to the right and up, cm.
    """

    one: TaughtDraft
    two: TaughtDraft
    anchor: str
    move: Transform
    measures: tuple[Difference, ...]
    lengths: tuple[Difference, ...]
    points: tuple[tuple[str, float, float], ...]


def side_by_side(works: tuple[Work, Work], drafts: tuple[TaughtDraft, TaughtDraft]) -> Compared:
    """Lay two drafts of one body on each other.

    Args:
        works: What left the workroom, by the first and by the second method.
        drafts: The same as they are taught.

    Raises:
        OutputError: The two have no point in common.
    """
    places = tuple(_places(d) for d in drafts)
    anchor = next((n for n in (*ANCHORS, *places[0]) if all(n in p for p in places)), None)
    if anchor is None:
        raise OutputError("The two drafts have no point in common.", where="compare")
    off = places[0][anchor] - places[1][anchor]
    move = shift(off.x, off.y)
    return Compared(
        one=drafts[0],
        two=drafts[1],
        anchor=anchor,
        move=move,
        measures=_measures(works, drafts[0].say),
        lengths=tuple(_lengths(drafts)),
        points=tuple(_points(places, move)),
    )


def _places(draft: TaughtDraft) -> dict[str, Place]:
    return {s.place.name: s.place for s in _own(draft) if s.place}


def _own(draft: TaughtDraft) -> tuple[TaughtStep, ...]:
    """The steps of the draft itself, without those that take the pieces from it."""
    return draft.steps[: draft.drafted]


def _measures(works: tuple[Work, Work], say: Say) -> tuple[Difference, ...]:
    one, two = (dict(finished_measurements(w.pattern.pattern)) for w in works)
    units = {
        want.name: want.unit for w in works for want in w.pattern.pattern.finished_measurements
    }
    return tuple(
        Difference(say(plain(name)), one.get(name), two.get(name), units[name])
        for name in dict.fromkeys((*one, *two))
    )


def _lengths(drafts: tuple[TaughtDraft, TaughtDraft]) -> Iterator[Difference]:
    one, two = (
        {s.step.name: float(s.step.value) for s in _own(d) if isinstance(s.step.value, Length)}
        for d in drafts
    )
    for name in dict.fromkeys((*one, *two)):
        found = Difference(drafts[0].say(name), one.get(name), two.get(name), "cm")
        if found.by is None or abs(found.by) > SAME:
            yield found


def _points(
    places: tuple[dict[str, Place], ...], move: Transform
) -> Iterator[tuple[str, float, float]]:
    for name, place in places[0].items():
        if name in places[1]:
            off = move.point(places[1][name]) - place
            if off.length > SAME:
                yield name, off.x, off.y


def overlaid(compared: Compared, scale: float) -> Sheet:
    """Both outlines over each other, the first solid, the second dashed."""
    lines = [
        _outlines(compared.one),
        [p.transformed(compared.move) for p in _outlines(compared.two)],
    ]
    corners = [
        Point(*xy) for paths in lines for p in paths for xy in (p.bounds()[:2], p.bounds()[2:])
    ]
    view = View(around(corners or [Point(0, 0)], ROOM), scale)
    width, height = max(view.width, 9.0), view.height + HEAD + FOOT
    groups = [
        Group(
            f"method-{i}",
            name,
            tuple(Stroke(p.transformed(view.to), Role.NEW, "", pen) for p in paths),
        )
        for i, (paths, pen, name) in enumerate(zip(lines, PENS, names(compared), strict=True), 1)
    ]
    cross = tuple(_cross(view.to.point(_places(compared.one)[compared.anchor])))
    drawn = (*groups, Group("anchor", compared.anchor, cross))
    words = compared.one.words
    title = words.beside_title.format(
        title=compared.one.title, one=names(compared)[0], two=names(compared)[1]
    )
    return Sheet(
        width=width,
        height=height,
        title=title,
        description=words.aligned.format(place=compared.one.say(compared.anchor)),
        groups=(
            *(g.transformed(shift(0.0, FOOT)) for g in drawn),
            Group("heading", title, tuple(_key(compared, title, height))),
            Group("ruler", "", tuple(ruler(compared.one, scale, Point(0.4, 0.55)))),
        ),
    )


def names(compared: Compared) -> tuple[str, str]:
    """What the two methods are called."""
    one, two = (d.say(plain(d.method)) for d in (compared.one, compared.two))
    return one, two


def _outlines(draft: TaughtDraft) -> list[Path]:
    found = (s.step.value for s in _own(draft))
    return [leg.path for o in found if isinstance(o, Outline) for leg in o.legs]


def _cross(at: Point) -> Iterator[Item]:
    for arm in (Vector(0.25, 0.0), Vector(0.0, 0.25)):
        yield Stroke(polyline(at + -arm, at + arm), Role.DIMENSION)


def _key(compared: Compared, title: str, height: float) -> Iterator[Item]:
    yield Text(title, Point(0.4, height - 0.6), 0.25, Role.CAUTION)
    for i, (name, pen) in enumerate(zip(names(compared), PENS, strict=True)):
        y = height - 1.15 - 0.4 * i
        yield Stroke(polyline(Point(0.4, y), Point(1.8, y)), Role.NEW, "", pen)
        yield Text(name, Point(2.0, y - 0.08), CAPTION, Role.CAUTION)
