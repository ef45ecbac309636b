"""What is worked out of a line is worked out once, and is no part of the line."""

import copy
import inspect
import pickle

import pytest

from drafting.geometry import Path, Point, curve, polyline, remembered


def counted():
    asked = []

    @remembered
    def question(path: Path, tolerance: float = 1.0) -> float:
        asked.append(tolerance)
        return path.end.x * tolerance

    return question, asked


def test_a_question_is_answered_once_for_each_line_and_each_way_of_asking():
    question, asked = counted()
    one, two = polyline(Point(0, 0), Point(3, 0)), polyline(Point(0, 0), Point(5, 0))
    assert [question(one), question(one), question(two)] == [3, 3, 5]
    assert [question(one, 2.0), question(one, 2.0)] == [6, 6]
    assert asked == [1.0, 1.0, 2.0]


def test_lines_are_equal_whatever_they_remember():
    one, two = (curve(Point(0, 0), Point(1, 2), Point(3, 2), Point(4, 0)) for _ in "12")
    one.length()
    assert one == two
    assert hash(one) == hash(two)
    assert repr(one) == repr(two)


@pytest.mark.skipif(not inspect.isfunction(Path.reversed), reason="compiled lines are not copied")
def test_copies_and_pickles_remember_nothing_and_are_the_same_line():
    line = curve(Point(0, 0), Point(1, 2), Point(3, 2), Point(4, 0))
    length = line.length()
    for again in (copy.deepcopy(line), pickle.loads(pickle.dumps(line))):  # noqa: S301
        assert again == line
        assert again.memory == {}
        assert again.length() == length
