"""Carries a printed draft out: reads the JSON of a draft sheet and knows nothing else of it.

Points are complex numbers in mm, Y down as on the paper, so a turn to the left by an angle is a
multiplication with exp(-i angle). Curves are kept as lists of four points, straights as two.
"""

from __future__ import annotations

import cmath
import math
from itertools import pairwise

import numpy as np

WAYS = {"right": 1, "left": -1, "up": -1j, "down": 1j}


def left(degrees: float) -> complex:
    return cmath.exp(-1j * math.radians(degrees))


def unit(z: complex) -> complex:
    return z / abs(z)


def on(curve: list[complex], t: float) -> complex:
    while len(curve) > 1:
        curve = [a + (b - a) * t for a, b in pairwise(curve)]
    return curve[0]


def split(curve: list[complex], t: float) -> tuple[list[complex], list[complex]]:
    first, last = [curve[0]], [curve[-1]]
    while len(curve) > 1:
        curve = [a + (b - a) * t for a, b in pairwise(curve)]
        first, last = [*first, curve[0]], [curve[-1], *last]
    return first, last


def walked(line: list[list[complex]], steps: int = 200) -> np.ndarray:
    shares = np.linspace(0, 1, steps + 1)[1:]
    return np.concatenate(
        ([line[0][0]], *(on(s, shares if len(s) > 2 else 1) for s in line)), axis=None
    )


def along(line: list[list[complex]], far: float) -> complex:
    points = walked(line, 2000)
    sizes = np.abs(np.diff(points))
    ends = np.cumsum(sizes)
    i = int(np.searchsorted(ends, far - 1e-6))
    return complex(points[i] + (points[i + 1] - points[i]) * (far - ends[i] + sizes[i]) / sizes[i])


def backward(line: list[list[complex]]) -> list[list[complex]]:
    return [part[::-1] for part in line[::-1]]


def nearest(points: np.ndarray, to: complex) -> tuple[int, complex]:
    """On which side of a polyline, counted from 0, a point lies, and its foot there."""
    sides = np.diff(points)
    feet = points[:-1] + sides * np.clip(((to - points[:-1]) / sides).real, 0, 1)
    i = int(np.argmin(np.abs(feet - to)))
    return i, feet[i]


def cut(points: np.ndarray, start: complex, end: complex) -> np.ndarray:
    """A polyline from one point on it to another."""
    (i, first), (j, last) = nearest(points, start), nearest(points, end)
    return np.concatenate(([first], points[i + 1 : j + 1], [last]))


def bisected(off, low: float, high: float) -> float:
    rising = off(low) < 0
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if (off(middle) < 0) == rising else (low, middle)
    return low


class Paper:
    """What has been drawn: points by their labels, lines by their names."""

    def __init__(self, sheet: dict) -> None:
        self.points: dict[str, complex] = {}
        self.lines: dict[str, list[list[complex]]] = {}
        for step in (step for chapter in sheet["chapters"] for step in chapter["steps"]):
            for point in step["points"]:
                self.points[point["label"]] = self.found(point)
            for line in step["lines"]:
                self.lines[line["name"]] = self.drawn(line)

    def found(self, where: str | dict) -> complex:
        if isinstance(where, str):
            return self.points[where]
        here = None if where["from"] is None else self.found(where["from"])
        for move in where["moves"]:
            here = self.moved(here, move)
        return here

    def moved(self, here: complex | None, move: dict) -> complex:  # noqa: C901, PLR0911, PLR0912 - a case a verb
        match move:
            case {"do": "at", "to": [x, y]}:
                return complex(x, y)
            case {"do": ("right" | "left" | "up" | "down") as way, "by": by}:
                return here + WAYS[way] * by
            case {"do": "level", "with": other}:
                return complex(here.real, self.found(other).imag)
            case {"do": "plumb", "with": other}:
                return complex(self.found(other).real, here.imag)
            case {"do": "toward", "point": other, "by": by}:
                return here + unit(self.found(other) - here) * by
            case {"do": "between", "point": other, "share": share}:
                return here + (self.found(other) - here) * share
            case {"do": "slant", "by": by, "degrees": degrees}:
                return here + left(degrees) * by
            case {"do": "reach", "level": other, "by": by, "side": side}:
                rise = self.found(other).imag - here.imag
                return here + WAYS[side] * math.sqrt(by * by - rise * rise) + 1j * rise
            case {"do": "square", "start": start, "end": end, "by": by, "side": side}:
                line = unit(self.found(end) - self.found(start))
                return here + line * left({"left": 90, "right": -90}[side]) * by
            case {"do": "meeting"}:
                a, b, c, d = (self.found(move[k]) for k in MEETING)
                share = ((c - a).conjugate() * (d - c)).imag / ((b - a).conjugate() * (d - c)).imag
                return a + (b - a) * share
            case {"do": "swing", "about": pivot, "degrees": degrees}:
                return self.found(pivot) + (here - self.found(pivot)) * left(degrees)
            case {"do": "along", "line": line, "by": by}:
                return along(self.lines[line], by)
            case {"do": "before", "line": line, "by": by}:
                return along(backward(self.lines[line]), by)
        raise ValueError(f"what is to be done? {move}")

    def traced(self, outline: dict) -> np.ndarray:
        """Once round a piece: each line, or the stretch of it that is told."""
        ring = []
        for leg in outline["lines"]:
            line = self.lines[leg["line"]]
            points = walked(backward(line) if leg["backward"] else line)
            if "from" in leg:
                points = cut(points, self.found(leg["from"]), self.found(leg["to"]))
            ring.append(points)
        return np.concatenate(ring)

    def bearing(self, told: dict) -> complex:
        match told:
            case {"way": way}:
                straight = WAYS[way]
            case {"along": [start, end]}:
                straight = self.found(end) - self.found(start)
            case {"line": line, "at": end}:
                curve = self.lines[line][0 if end == "start" else -1]
                straight = curve[1] - curve[0] if end == "start" else curve[-1] - curve[-2]
            case {"degrees": degrees}:
                straight = left(degrees)
        return unit(straight) * left(told.get("turned", 0))

    def drawn(self, line: dict) -> list[list[complex]]:
        here, parts = self.found(line["from"]), []
        if line["folded"]:
            return self.over_folds(here, line)
        for part in line["parts"]:
            arc = part["do"] == "arc"
            parts += (
                self.arc(here, part) if arc else [self.part(here, self.found(part["end"]), part)]
            )
            here = parts[-1][-1]
        return parts

    def arc(self, start: complex, part: dict) -> list[list[complex]]:
        about, count = self.found(part["about"]), 1 + int(abs(part["degrees"]) / 15)
        step, curves = part["degrees"] / count, []
        for i in range(count):
            a, b = (about + (start - about) * left(step * k) for k in (i, i + 1))
            k = 4 / 3 * math.tan(math.radians(step) / 4) * left(90)
            curves.append([a, a + (a - about) * k, b - (b - about) * k, b])
        return curves

    def part(self, start: complex, end: complex, part: dict, fold: complex = 1) -> list[complex]:
        match part:
            case {"do": "straight"}:
                return [start, end]
            case {"do": "bulge", "by": by, "side": side}:
                out = unit(end - start) * left({"left": 90, "right": -90}[side]) * by * 4 / 3
                return [start, start + (end - start) / 3 + out, end - (end - start) / 3 + out, end]
            case {"do": "curve", "leaving": leaving, "arriving": arriving, "handles": [k, m]}:
                into = self.bearing(arriving) * fold
                return [start, start + self.bearing(leaving) * k, end - into * m, end]
        raise ValueError(f"how is it drawn? {part}")

    def over_folds(self, start: complex, line: dict) -> list[list[complex]]:
        """Fold the darts from the start on, draw, cut at the folds, and open them again."""
        turns, folds = [(1, 0)], [[self.found(p) for p in fold] for fold in line["folded"]]
        for near, far, point in folds:
            turn, (a, b) = unit((near - point) / (far - point)), turns[-1]
            turns.append((a * turn, a * (point - turn * point) + b))
        a, b = turns[-1]
        [part] = line["parts"]
        curve, parts = self.part(start, a * self.found(part["end"]) + b, part, a), []
        for (near, _, point), (a, b), (c, d) in zip(folds, turns, turns[1:], strict=False):
            foot, fold = a * point + b, a * (near - point)
            cut = bisected(lambda t, c=curve, o=foot, f=fold: ((on(c, t) - o) / f).imag, 0, 1)
            before, curve = split(curve, cut)
            legs = [(before[-1] - b) / a, (before[-1] - d) / c]
            parts += [[(z - b) / a for z in before], legs]
        a, b = turns[-1]
        return [*parts, [(z - b) / a for z in curve]]


MEETING = ("first_start", "first_end", "second_start", "second_end")
