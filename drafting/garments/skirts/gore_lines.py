"""Gored skirts, the lines: every gore drawn over the others, about one middle line.

Source: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.craft.sheet import DraftSheet
from drafting.geometry import Cubic, Path
from drafting.trace import (
    DOWNWARD,
    RIGHTWARD,
    Bend,
    Length,
    Part,
    Place,
    Stroke,
    along,
    middle_of,
    running,
    straight,
)
from drafting.trace.bearing import End

WORDS = ("left", "right")
TRACE = "Trace it from the draft; allowances are added outside."


@dataclass(frozen=True, slots=True)
class Level:
    """Places of the draft: the middle of the waist; left and right edge at the hip, and where their flare begins."""

    middle: Place
    hip: tuple[Place, Place]
    flare: tuple[Place, Place]


@dataclass(frozen=True, slots=True)
class Gore:
    """A gore's stitching lines seen from outside: edges downward, waist and hem from left to right."""

    left: Path
    right: Path
    waist: Path
    hem: Path


@dataclass(frozen=True, slots=True)
class Foot:
    """An edge from the hip down, and where it ends."""

    parts: tuple[Part, ...]
    end: Place


def draw_gores(
    names: tuple[str, ...], drawn: list[Gore], level: Level, swing: Length, down: Length, sheet: DraftSheet, *, halved: bool
) -> None:
    """Draw the trued gores, from the centre back forward.

    Args:
        names: Names of their pieces.
        drawn: Their lines, whole.
        level: The draft that they are drawn on.
        swing: How far each edge swings out, cm.
        down: From where the flare begins to the hem, cm.
        sheet: Records the lines.
        halved: Whether the first and the last one are cut down their middle.
    """
    feet = tuple(_foot(k, level, swing, down, (drawn[0].left, drawn[0].right)[k], sheet) for k in (0, 1))
    curve = _cubic(drawn[0].hem)
    left, right = (along(level.flare[k], feet[k].end).left for k in (0, 1))
    hem = sheet.draw("hem of a gore", (Bend(feet[0].end, feet[1].end, left, right, curve, middle_of(curve)),), "Square to both edges, so that it runs on over all seams.")
    for n, (name, gore) in enumerate(zip(names, drawn, strict=True)):
        waist, edges = _gore(name.replace("_", " "), gore, level, feet, sheet)
        if halved and n in (0, len(names) - 1):
            _half(name, waist, hem, edges, 1 if n == 0 else 0, sheet)
        else:
            sheet.outline(name, (waist, edges[1], hem, edges[0]), TRACE)


def _foot(side: int, level: Level, swing: Length, down: Length, edge: Path, sheet: DraftSheet) -> Foot:
    """One edge from the hip to the hem."""
    word, flare, hip = WORDS[side], level.flare[side], level.hip[side]
    below = flare.down(down)
    aside = sheet.point(f"{word} edge swung out", below.right(swing) if side else below.left(swing), "As far as brings the hem to its width.")
    end = sheet.point(f"{word} edge at the hem", flare.towards(aside, down), "All edges are equally long.")
    if flare is hip:
        return Foot(straight(hip, end), end)
    into, rounded, _ = edge.segments[1:]
    above = into.end.distance(flare)
    first = sheet.point(f"{word} rounding, upper end", flare.up(above), "The corner is rounded.")
    last = sheet.point(f"{word} rounding, lower end", flare.towards(end, above), "The corner is rounded.")
    bend = Bend(first, last, DOWNWARD, along(flare, end), _cubic(Path((rounded,))))
    return Foot((*straight(hip, first), bend, *straight(last, end)), end)


def _gore(name: str, gore: Gore, level: Level, feet: tuple[Foot, ...], sheet: DraftSheet) -> tuple[Stroke, tuple[Stroke, Stroke]]:
    """One gore's waist and edges."""
    left, right = (_edge(name, k, path, level, feet[k], sheet) for k, path in enumerate((gore.left, gore.right)))
    curve = _cubic(gore.waist)
    square = running(left, "start").left, running(right, "start").left
    waist = sheet.draw(f"{name}, waist", (Bend(left.start, right.start, *square, curve, middle_of(curve)),), "Square to both edges, so that it runs on over all seams.")
    return waist, (left, right)


def _edge(name: str, side: int, path: Path, level: Level, foot: Foot, sheet: DraftSheet) -> Stroke:
    at, hip = path.start, level.hip[side]
    corner = sheet.point(
        f"{name}, {WORDS[side]} edge at the waist", level.middle.nudged_to(at),
        "By trial: the waist has its width, the edge its length.",
    )
    curve = _cubic(path)
    leaving = along(corner, hip).to(curve.tangent(0.0))
    arriving = along(level.flare[side], foot.end) if level.flare[side] is hip else DOWNWARD
    bend = Bend(corner, hip, leaving, arriving, curve, middle_of(curve))
    return sheet.draw(f"{name}, {WORDS[side]} edge", (bend, *foot.parts), "Bent evenly from the waist to the hip.")


def _half(piece: str, waist: Stroke, hem: Stroke, edges: tuple[Stroke, Stroke], side: int, sheet: DraftSheet) -> None:
    """One half of a gore that is cut down its middle."""
    name, edge = piece.replace("_", " "), edges[side]
    top = sheet.point(f"{name}, middle of the waist", waist.at(waist.path.length() / 2), "Half the gore.")
    foot = sheet.point(f"{name}, middle of the hem", hem.at(hem.path.length() / 2), "Half the gore.")
    lines = (
        sheet.draw(f"{name}, half the waist", (_half_bend(waist, top, edge, "start", side),), "As the whole one runs."),
        edge,
        sheet.draw(f"{name}, half the hem", (_half_bend(hem, foot, edge, "end", side),), "As the whole one runs."),
        sheet.line(f"{name}, middle", top, foot, why="On the straight grain."),
    )
    sheet.outline(piece, lines, TRACE)


def _half_bend(whole: Stroke, middle: Place, edge: Stroke, end: End, side: int) -> Bend:
    curve = _cubic(whole.path).split(0.5)[side]
    square = running(edge, end).left
    level = RIGHTWARD.to(curve.tangent(1.0 - side))
    if side:
        return Bend(middle, whole.end, level, square, curve)
    return Bend(whole.start, middle, square, level, curve)


def _cubic(path: Path) -> Cubic:
    found = path.segments[0]
    if not isinstance(found, Cubic):
        raise TypeError("the line is drawn as a curve")
    return found
