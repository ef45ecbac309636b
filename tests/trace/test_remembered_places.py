"""Points, directions and lines know the words to find them and where each move led."""

from __future__ import annotations

import math

import pytest

from drafting.craft.sheet import DraftSheet
from drafting.errors import ConstructionError
from drafting.geometry import Cubic, Point, bulged
from drafting.trace import (
    DOWNWARD,
    Bend,
    Length,
    Place,
    along,
    middle_of,
    past_diagonal,
    running,
    straight,
)
from drafting.trace.place import corner_of_paper, meeting


@pytest.fixture(name="sheet")
def sheet_fixture() -> DraftSheet:
    sheet = DraftSheet()
    sheet.heading("Try", "invented for the tests")
    return sheet


@pytest.fixture(name="corner")
def corner_fixture(sheet) -> Place:
    return sheet.point("corner", corner_of_paper(), "Start.")


def place(sheet, name: str, x: float, y: float, corner: Place) -> Place:
    return sheet.point(name, corner.right(x).up(y), "To try.")


@pytest.mark.parametrize(
    ("move", "words", "at"),
    [
        (
            lambda a, b, _: a.right(Length(94, "hip") / 4),
            "from corner: 1/4 hip to the right",
            (23.5, 0),
        ),
        (lambda a, b, _: a.up(2).left(1), "from corner: 2 cm up, 1 cm to the left", (-1, 2)),
        (lambda a, b, _: a.level_with(b), "from corner: straight up to the level of far", (0, 4)),
        (lambda a, b, _: b.level_with(a), "from far: straight down to the level of corner", (3, 0)),
        (
            lambda a, b, _: a.plumb_with(b),
            "from corner: straight to the right until plumb with far",
            (3, 0),
        ),
        (lambda a, b, _: a.towards(b, 10), "from corner: 10 cm toward far", (6, 8)),
        (lambda a, b, _: a.between(b, 0.5), "from corner: 1/2 of the way to far", (1.5, 2)),
        (lambda a, b, _: a.slant(2, 90), "from corner: 2 cm on a line at 90 degrees", (0, 2)),
        (
            lambda a, b, _: a.reaching(b, 5, "left"),
            "from corner: 5 cm to the left, to meet the level of far",
            (-3, 4),
        ),
        (
            lambda a, b, _: b.square_out(a, b, 5, "left"),
            "from far: 5 cm to the left, square to the line corner - far",
            (-1, 7),
        ),
        (
            lambda a, b, _: b.swung(a, 90),
            "from far: 90 degrees to the left about corner",
            (-4, 3),
        ),
        (
            lambda a, b, c: meeting(a, b, c, c.left(1)),
            "where the line corner - far meets the line high - the point before",
            (6, 8),
        ),
    ],
)
def test_a_move_says_what_the_pencil_does(sheet, corner, move, words, at):
    """Coordinates by hand: 3-4-5 triangles and quarter turns."""
    far, high = place(sheet, "far", 3, 4, corner), place(sheet, "high", 0, 8, corner)
    found = sheet.point("found", move(corner, far, high), "To try.")
    assert sheet.steps[-1].formula == words
    assert (found.x, found.y) == pytest.approx(at, abs=1e-9)
    assert (found.moves[-1].to.x, found.moves[-1].to.y) == pytest.approx(at, abs=1e-9)


def test_a_level_that_is_too_far_gives_no_point(sheet, corner):
    far = place(sheet, "far", 3, 4, corner)
    with pytest.raises(ConstructionError, match="nowhere"):
        sheet.point("nowhere", corner.reaching(far, 3, "left"), "To try.")


def test_a_place_on_a_line_is_measured_along_it(sheet, corner):
    far, high = place(sheet, "far", 3, 0, corner), place(sheet, "high", 3, 8, corner)
    line = sheet.line("edge", corner, far, high, why="To try.")
    found = line.at(5)
    assert (found.x, found.y) == pytest.approx((3, 2))
    assert found.moves[0].words() == "5 cm along edge"


def test_a_bearing_is_told_by_what_lies_on_the_paper(sheet, corner):
    far = place(sheet, "far", 3, 4, corner)
    edge = sheet.line("edge", corner, far, why="To try.")
    line = along(corner, far)
    assert line.words() == "along corner - far"
    assert line.left.words() == "square to corner - far"
    assert (line.left.vector.x, line.left.vector.y) == (-4, 3)
    assert running(edge, "end").right.words() == "square to the end of edge"
    assert DOWNWARD.words() == "plumb, downward"
    assert line.rotated(10).words() == "along corner - far, turned 10.0 degrees to the left"
    assert line.right.rotated(4).words().endswith("turned 4.0 degrees to the left")


def test_a_bearing_turned_to_a_vector_points_there(sheet, corner):
    far = place(sheet, "far", 3, 4, corner)
    for degrees in (-170, -90, -12.5, 0, 33, 90, 179):
        wanted = along(corner, far).vector.rotated(degrees)
        found = along(corner, far).to(wanted)
        assert found.turned == pytest.approx(degrees)


def test_a_curve_says_what_guides_the_hand(sheet, corner):
    end = place(sheet, "end", 6, 0, corner)
    drawn = bulged(corner, end, 1.0)
    guide = middle_of(drawn)
    assert guide.words() == "its middle 1 cm off the straight line, upward"
    bend = Bend(corner, end, along(corner, end).to(drawn.tangent(0)), DOWNWARD, drawn, guide)
    stroke = sheet.draw("bow", (bend,), "To try.")
    assert stroke.words().startswith("from corner curved to end, its middle 1 cm off")
    assert past_diagonal(corner, 3).words() == "past a point 3 cm out on the diagonal of corner"


def test_ready_segments_are_told_by_measured_joints_and_degrees(sheet, corner):
    end = place(sheet, "end", 6, 0, corner)
    joint = Point(3, 2)
    segments = (
        Cubic(corner, Point(0, 1), Point(2, 2), joint),
        Cubic(joint, Point(4, 2), Point(6, 1), end),
    )
    stroke = sheet.curve("hump", corner, end, segments, "over the hump", "To try.")
    assert [p.words() for p in (stroke.parts[0].leaving, stroke.parts[1].arriving)] == [
        "at 90 degrees",
        "at -90 degrees",
    ]
    assert stroke.parts[0].end == joint
    assert stroke.parts[0].end.base is corner
    assert "over the hump" in sheet.steps[-1].formula


def test_a_comparison_decides_by_itself(sheet):
    spare = Length(6, "spare")
    assert sheet.compare("a dart", spare, ">=", 3, "Is it 3 cm or more?", "Else the side takes it.")
    assert not sheet.compare("two darts", spare, ">", 7, "Over 7 cm?", "Else one would do.")
    assert [s.formula for s in sheet.steps] == ["spare >= 3 cm", "spare > 7 cm"]
    assert [s.value for s in sheet.steps] == [True, False]


def test_a_solved_value_says_what_it_was_brought_to(sheet):
    found = sheet.solve("side", lambda v: v * v, Length(9.0, "area"), (0.0, 10.0), "To try.")
    assert float(found) == pytest.approx(3.0)
    assert sheet.steps[-1].formula == "brought to area, tried between 0 cm and 10 cm"
    assert sheet.steps[-1].how.reached == pytest.approx(9.0)


def test_an_outline_walks_its_lines_whichever_way_they_were_drawn(sheet, corner):
    right, top = place(sheet, "right", 4, 0, corner), place(sheet, "top", 0, 3, corner)
    lines = (
        sheet.line("foot", corner, right, why="To try."),
        sheet.line("slope", top, right, why="To try."),
        sheet.line("back", top, corner, why="To try."),
    )
    outline = sheet.outline("sail", lines, "To try.")
    assert [leg.backward for leg in outline.legs] == [False, True, False]
    assert outline.length == pytest.approx(12.0)
    stray = sheet.line("stray", place(sheet, "aside", 9, 9, corner), right, why="To try.")
    with pytest.raises(ValueError, match="stray"):
        sheet.outline("gap", (lines[0], lines[1], stray), "To try.")


def test_sources_come_from_the_chapter_unless_the_step_has_its_own(sheet, corner):
    sheet.point("other", corner.up(1), "To try.", source="another")
    assert [s.source for s in sheet.steps] == ["invented for the tests", "another"]


def test_a_recorded_place_starts_the_next_ones_moves(sheet, corner):
    one = sheet.point("one", corner.right(2), "To try.")
    two = sheet.point("two", one.up(3), "To try.")
    same = sheet.point("same", two, "To try.")
    assert two.base is one
    assert len(two.moves) == 1
    assert (same.base, same.moves) == (two, ())
    assert math.isclose(two.x, 2)


def test_straight_parts_run_through_all_their_places(corner, sheet):
    far, high = place(sheet, "far", 3, 0, corner), place(sheet, "high", 3, 8, corner)
    assert [(p.start.name, p.end.name) for p in straight(corner, far, high)] == [
        ("corner", "far"),
        ("far", "high"),
    ]


def test_no_point_and_no_line_is_called_as_another_one(sheet, corner):
    """Steps go by names: a second one of the same name is numbered."""
    one, two = place(sheet, "right", 4, 0, corner), place(sheet, "right", 5, 0, corner)
    assert (one.name, two.name) == ("right", "right, 2")
    drawn = [sheet.line("foot", corner, end, why="To try.") for end in (one, two)]
    assert [line.name for line in drawn] == ["foot", "foot, 2"]
