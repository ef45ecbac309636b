"""Numbers and paths as text: millimetres to a thousandth, Y down, in SVG's path language."""

from __future__ import annotations

import re
from collections.abc import Sequence
from math import isfinite

from drafting.geometry import Cubic, Path, Point, Transform

MM = 10.0
"""Millimetres in a centimetre."""

_HEAD = re.compile(r"M[^CL]*")


def number(value: float) -> str:
    """A number to a thousandth, without needless noughts."""
    text = "%.3f" % value  # noqa: UP031 - much the fastest
    if text[-1] != "0":
        return text
    text = text.rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def rounded(value: float) -> float:
    """The same as a float; never minus nought."""
    return round(value, 3) + 0.0


def bounds(low: float, high: float, factor: float = 1.0) -> list[float | None]:
    """Least and greatest value, each times the factor; None where there is no bound."""
    return [rounded(bound * factor) if isfinite(bound) else None for bound in (low, high)]


def downward(left: float, top: float) -> Transform:
    """From cm with Y up to mm with Y down, the origin at the given upper left corner (cm)."""
    return Transform(a=MM, d=-MM, e=-MM * left, f=MM * top)


def pair(point: Point, by: Transform) -> str:
    """A point's image as "x y"."""
    x, y = point.x, point.y
    return f"{number(by.a * x + by.c * y + by.e)} {number(by.b * x + by.d * y + by.f)}"


def joined(told: Sequence[str]) -> str:
    """Lines in SVG's path language that go round from one to the next, as one closed line."""
    first, *others = told
    return first + "".join(_HEAD.sub("", each, 1) for each in others) + "Z" if others else first


def path_data(path: Path, by: Transform) -> str:
    """A path's image in SVG's path language; closed with Z where it ends where it started."""
    parts = ["M", pair(path.start, by)]
    for segment in path.segments:
        if isinstance(segment, Cubic):
            leaving, arriving = pair(segment.leaving, by), pair(segment.arriving, by)
            parts += ("C", leaving, " ", arriving, " ", pair(segment.end, by))
        else:
            parts += ("L", pair(segment.end, by))
    if len(path.segments) > 1 and path.start.distance(path.end) < 1e-6:
        parts.append("Z")
    return "".join(parts)
