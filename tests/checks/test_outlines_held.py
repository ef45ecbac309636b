"""Outlines as shapely holds them: many at once as each alone, joints closed, hooks left out."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from skirt_on_paper import LONG, WIDE, edge, front, skirt, with_edge

from drafting.checks.outline import held, hold
from drafting.geometry import Path, Point, polyline


def star(corners: int, x: float, y: float, turned: float) -> Path:
    """A star with sharp corners about a point, its inner corners half as far out."""
    ways = [turned + math.pi * k / corners for k in range(2 * corners)]
    sizes = (4.0, 2.0) * corners
    points = [
        Point(x + size * math.cos(way), y + size * math.sin(way))
        for size, way in zip(sizes, ways, strict=True)
    ]
    return polyline(*points, points[0])


stars = st.builds(
    star, st.integers(2, 9), st.floats(-50, 50), st.floats(-50, 50), st.floats(0, math.tau)
)


@given(st.lists(stars, min_size=1, max_size=6))
def test_outlines_held_together_are_held_as_each_alone(paths):
    hold(paths)
    for path in paths:
        alone = held(Path(path.segments))
        assert held(path).ring.equals_exact(alone.ring, 0)
        assert held(path).area.area == pytest.approx(path.area(), abs=1e-9)  # Green's theorem
        assert held(path).simple


def test_an_outline_that_crosses_itself_is_told_from_its_neighbours():
    bow = polyline(*(Point(x, y) for x, y in ((0, 0), (4, 4), (4, 0), (0, 4), (0, 0))))
    sound = star(5, 0, 0, 0)
    hold([sound, bow, *skirt().pieces])
    assert held(sound).simple
    assert not held(bow).simple


@pytest.mark.parametrize("off", [0.0, 1e-15, 1e-9, 6e-7, -6e-7])
def test_edges_that_meet_but_for_rounding_make_one_corner(off):
    side = edge("side", (WIDE + off, off), (WIDE - off, LONG + off), kind="side")
    piece = with_edge(front(), side)
    assert held(piece).simple
    assert len(held(piece).ring.coords) == len(held(front()).ring.coords)
    assert held(piece).area.area == pytest.approx(WIDE * LONG, abs=1e-3)


def test_a_hook_too_small_to_cut_crosses_nothing():
    hook = [(WIDE, 0), (WIDE, 30), (WIDE, 30 - 4e-7), (WIDE, 30 - 1e-7), (WIDE, LONG)]
    assert held(with_edge(front(), edge("side", *hook))).simple
    assert not held(
        with_edge(front(), edge("side", (WIDE, 0), (WIDE, 31), (WIDE, 30), (WIDE, LONG)))
    ).simple


def test_what_is_changed_is_held_anew():
    before = held(front()).area
    moved = replace(front(), edges=with_edge(front(), edge("side", (WIDE, 0), (WIDE, LONG))).edges)
    assert held(moved).area is not before
