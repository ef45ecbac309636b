"""How buttons are spaced. Source of the bounds: common practice, no source, as the module says."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drafting.craft.buttons import HOLE, button, buttonhole, spaced
from drafting.geometry import Point, Vector


@given(st.floats(40, 95), st.floats(6, 12))
def test_gaps_are_alike_and_the_last_button_is_clear_of_the_hem(long, most):
    row = spaced(0.0, -long, most)
    gaps = [a - b for a, b in pairwise(row.heights)]
    assert gaps == [pytest.approx(row.gap)] * len(gaps)
    assert 0 < row.gap <= most + 1e-9
    assert 12 - 1e-9 <= row.heights[-1] + long <= 18 + 1e-9


@given(st.floats(45, 95), st.floats(6, 12), st.floats(8, 22))
def test_one_button_sits_at_the_bust(long, most, deep):
    row = spaced(0.0, -long, most, -deep)
    assert row.gap <= most + 1e-9
    assert min(abs(h + deep) for h in row.heights) < 1e-6
    gaps = [a - b for a, b in pairwise(row.heights)]
    assert gaps == [pytest.approx(row.gap)] * len(gaps)
    if len(row.heights) > 2:
        assert row.heights[-1] + long >= 12 - 1e-9


def test_a_worked_row():
    """First at 0, hem 60 down, gaps of at most 9: five of 9 end 15 above the hem."""
    row = spaced(0.0, -60.0, 9.0)
    assert row.heights == pytest.approx((0, -9, -18, -27, -36, -45))


def test_marks_are_of_their_size():
    ring = button(Point(3, 4)).path
    left, low, right, high = ring.bounds()
    assert (right - left, high - low) == pytest.approx((1.1, 1.1), abs=1e-3)
    assert ((left + right) / 2, (low + high) / 2) == pytest.approx((3, 4))
    assert ring.length() == pytest.approx(3.14159 * 1.1, abs=0.01)
    for way, along in (("upright", Vector(0, 1)), ("level", Vector(1, 0))):
        hole = buttonhole(Point(0, 0), way).path
        reach = [p.x * along.x + p.y * along.y for p in hole.flattened(0.01)]
        assert max(reach) - min(reach) == pytest.approx(HOLE)
