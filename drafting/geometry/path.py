"""A pencil line: segments joined end to end.

A path is used in two ways: as *segments*, for measuring, splitting and crossing; and as an
outline for drawing, which exporters read segment by segment.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from itertools import pairwise
from typing import Final

from drafting.geometry.memory import Memory, remembered
from drafting.geometry.point import Point, Vector
from drafting.geometry.segment import Box, Cubic, Line, Segment
from drafting.geometry.transform import Transform

JOIN = 1e-6
"""Ends closer than this (cm) are the same point: rounding in a chain of turns stays far below."""


@dataclass(slots=True, init=False, unsafe_hash=True)
class Path:
    """Segments in order, each starting where the last one ended. At least one segment."""

    segments: Final[tuple[Segment, ...]]
    memory: Memory = field(init=False, repr=False, compare=False)

    def __init__(self, segments: tuple[Segment, ...]) -> None:
        self.segments = segments
        self.memory = Memory()

    @property
    def start(self) -> Point:
        """First point."""
        return self.segments[0].start

    @property
    def end(self) -> Point:
        """Last point."""
        return self.segments[-1].end

    @property
    def start_tangent(self) -> Vector:
        """Unit direction at the start."""
        for segment in self.segments:
            if _is_solid(segment):
                return segment.tangent(0.0)
        return self.segments[0].tangent(0.0)

    @property
    def end_tangent(self) -> Vector:
        """Unit direction at the end."""
        for segment in reversed(self.segments):
            if _is_solid(segment):
                return segment.tangent(1.0)
        return self.segments[-1].tangent(1.0)

    @remembered
    def length(self) -> float:
        """Length in cm."""
        return sum(self.lengths())

    @remembered
    def lengths(self) -> tuple[float, ...]:
        """Length of each segment in cm."""
        return tuple([s.length() for s in self.segments])

    def area(self) -> float:
        """Signed area in cm² if the path is a closed loop; positive counter-clockwise."""
        return sum(s.area() for s in self.segments)

    def locate(self, distance: float) -> tuple[int, float]:
        """Segment number and t at a distance in cm from the start, clamped to the path."""
        distance = float(distance)  # a length that remembers its formula ends here
        for i, size in enumerate(self.lengths()):
            if distance <= size or i == len(self.segments) - 1:
                return i, self.segments[i].parameter_at(distance, size)
            distance -= size
        raise AssertionError("a path has at least one segment")

    def at(self, distance: float) -> Point:
        """The point at a distance in cm from the start, clamped to the path."""
        i, t = self.locate(distance)
        return self.segments[i].at(t)

    def tangent_at(self, distance: float) -> Vector:
        """Unit direction at a distance in cm from the start."""
        i, t = self.locate(distance)
        return self.segments[i].tangent(t)

    def distance_of(self, i: int, t: float) -> float:
        """Distance in cm from the start to parameter t of segment i."""
        before = sum(self.lengths()[:i])
        if t >= 1:
            return before + self.lengths()[i]
        return before + (self.segments[i].split(t)[0].length() if t > 0 else 0.0)

    def split_at(self, i: int, t: float) -> tuple[Path, Path]:
        """The paths before and after parameter t of segment i; neither is empty."""
        head, tail = self.segments[i].split(t)
        before = (*self.segments[:i], *([head] if t > 0 or i == 0 else []))
        after = (*([tail] if t < 1 or i == len(self.segments) - 1 else []), *self.segments[i + 1 :])
        return Path(before), Path(after)

    def split(self, distance: float) -> tuple[Path, Path]:
        """The paths before and after a distance in cm from the start."""
        return self.split_at(*self.locate(distance))

    def between(self, first: float, last: float) -> Path:
        """The part from one distance to another, both in cm from the start, first < last."""
        return self.split(last)[0].split(first)[1]

    def stretch(self, first: tuple[int, float], last: tuple[int, float]) -> Path:
        """The part between two places, each segment number and t, the first before the last."""
        (i, t), (j, u) = first, last
        if i == j:
            head = self.segments[i].split(u)[0] if u < 1 else self.segments[i]
            return Path((head.split(t / u)[1] if t > 0 else head,))
        start = (self.segments[i].split(t)[1],) if 0 < t < 1 else self.segments[i : i + (t <= 0)]
        end = (self.segments[j].split(u)[0],) if 0 < u < 1 else self.segments[j : j + (u >= 1)]
        return Path((*start, *self.segments[i + 1 : j], *end))

    def reversed(self) -> Path:
        """The same line drawn the other way."""
        return Path(tuple(s.reversed() for s in reversed(self.segments)))

    def transformed(self, by: Transform) -> Path:
        """The line's image."""
        return Path(tuple(s.transformed(by) for s in self.segments))

    def joined(self, *others: Path) -> Path:
        """This line and the others after it. Raises ValueError where the ends do not meet."""
        return join((self, *others))

    @remembered
    def boxes(self) -> tuple[Box, ...]:
        """The bounds of each segment."""
        return tuple([s.bounds() for s in self.segments])

    @remembered
    def bounds(self) -> Box:
        """Least x, least y, greatest x, greatest y."""
        lefts, lows, rights, tops = zip(*self.boxes(), strict=True)
        return min(lefts), min(lows), max(rights), max(tops)

    def flattened(self, tolerance: float) -> tuple[Point, ...]:
        """Points along the line, both ends among them, at most `tolerance` cm off the curve."""
        points = [self.start]
        for segment in self.segments:
            points.extend(segment.flattened(tolerance))
        return tuple(points)

    @remembered
    def coordinates(self, tolerance: float) -> list[tuple[float, float]]:
        """The flattened line as bare numbers, for polygons."""
        found = [(self.start.x, self.start.y)]
        for segment in self.segments:
            found += segment.coordinates(tolerance)
        return found


def join(paths: Iterable[Path]) -> Path:
    """Join lines end to end, the joints made exact.

    Raises:
        ValueError: Two ends do not meet within JOIN.
    """
    segments: list[Segment] = []
    for path in paths:
        if segments and segments[-1].end.distance(path.start) > JOIN:
            gap = segments[-1].end.distance(path.start)
            raise ValueError(f"lines do not meet: a gap of {gap:.6f} cm at {path.start}")
        first, *rest = path.segments
        if segments and first.start != segments[-1].end:
            first = replace(first, start=segments[-1].end)
        segments += [first, *rest]
    return Path(tuple(segments))


def loop(paths: Iterable[Path]) -> Path:
    """Join lines, and where the last one comes back to the first within JOIN, close them exactly.

    Raises:
        ValueError: Two ends do not meet within JOIN.
    """
    path = join(paths)
    if path.end == path.start or path.end.distance(path.start) > JOIN:
        return path
    return Path((*path.segments[:-1], replace(path.segments[-1], end=path.start)))


def polyline(*points: Point) -> Path:
    """Straight strokes through two or more points."""
    return Path(tuple(Line(a, b) for a, b in pairwise(points)))


def curve(start: Point, leaving: Point, arriving: Point, end: Point) -> Path:
    """A path of one cubic."""
    return Path((Cubic(start, leaving, arriving, end),))


def _is_solid(s: Segment) -> bool:
    """Whether a segment has a length, and so a direction."""
    return isinstance(s, Cubic) or s.start != s.end
