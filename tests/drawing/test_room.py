"""Room for texts: what is said to be free is free by another library's word, and room is found."""

import math

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st
from rulers import boxed

from drafting.drawing import Text
from drafting.drawing.room import Room, bars, walls
from drafting.drawing.sounding import Area
from drafting.geometry import Point, polyline

RADII = st.lists(st.floats(3, 30), min_size=5, max_size=14)


def star(radii):
    """An odd outline round the origin, counter-clockwise."""
    turns = [2 * math.pi * k / len(radii) for k in range(len(radii))]
    return shapely.Polygon(
        [(r * math.cos(t), r * math.sin(t)) for r, t in zip(radii, turns, strict=True)]
    )


def box(area, size, angle):
    x, y = area.place(*size)
    flat = shapely.box(x, y, x + size[0], y + size[1])
    return shapely.affinity.rotate(flat, angle, origin=(0, 0))


@given(RADII, st.floats(0.5, 12), st.floats(0.3, 6), st.floats(-90, 90))
def test_a_box_that_is_placed_lies_wholly_in_the_room(radii, wide, high, angle):
    outline = star(radii)
    area = Area.sounded(walls(outline), angle)
    if area.fits(wide, high):
        assert outline.buffer(1e-9).contains(box(area, (wide, high), angle))
    else:
        assert area.place(wide, high) is None


@given(RADII, st.floats(0.5, 8), st.floats(0.5, 8))
def test_a_box_keeps_off_bars_and_out_of_what_is_taken(radii, wide, high):
    room = Room(walls(star(radii)))
    bar, hole = polyline(Point(-1, -9), Point(2, 12)), (Point(1, 1), Point(9, 2), Point(4, 8))
    room.keep_off([(bar, 0.3)])
    room.take([hole])
    area = Area.sounded(room.bars(0.5))
    if area.fits(wide, high):
        found = box(area, (wide, high), 0.0)
        assert found.distance(star(radii).exterior) > 0.5 - 1e-9
        assert found.distance(shapely.LineString([(-1, -9), (2, 12)])) > 0.3 - 1e-9
        assert found.disjoint(shapely.Polygon([(p.x, p.y) for p in hole]))


@pytest.mark.parametrize("angle", [0.0, 30.0, 90.0])
@pytest.mark.parametrize("size", [(40.0, 25.0), (5.0, 3.0)])
def test_a_box_a_twentieth_smaller_than_a_plain_room_fits(angle, size):
    """The grid has at least 64 cells either way; at worst three of them are lost."""
    plain = shapely.affinity.rotate(shapely.box(0, 0, *size), angle, origin=(0, 0))
    area = Area.sounded(walls(plain), angle)
    assert area.fits(size[0] * 0.95, size[1] * 0.95)
    assert not area.fits(size[0] * 1.001, 0.1)
    assert not area.fits(0.1, size[1] * 1.001)


@given(RADII, st.floats(0.5, 12), st.floats(0.3, 6))
def test_a_room_turned_by_a_quarter_is_the_room_sounded_sideways(radii, wide, high):
    outline = star(radii)
    turned = Area.sounded(walls(outline)).quarter_turned()
    if turned.fits(wide, high):
        x, y = turned.place(wide, high)
        flat = shapely.box(x, y, x + wide, y + high)
        assert outline.buffer(1e-9).contains(shapely.affinity.rotate(flat, 90, origin=(0, 0)))
    if Area.sounded(walls(outline), 90.0).fits(wide + 2, high + 2):
        assert turned.fits(wide, high)


def test_a_room_with_a_hole_keeps_boxes_out_of_it():
    ring = shapely.box(0, 0, 20, 20).difference(shapely.box(5, 5, 15, 15))
    area = Area.sounded(walls(ring))
    assert area.fits(19, 4)
    assert not area.fits(6, 6)


def test_no_room_holds_no_box():
    assert Area.sounded([]).place(0.1, 0.1) is None
    assert not Area.sounded(bars([(0, 0), (5, 5), (0, 0)], wall=True)).fits(0.1, 0.1)


@given(RADII, st.floats(-20, 20), st.floats(-20, 20), st.floats(0, 360), st.floats(0.2, 2))
def test_a_name_is_written_only_where_shapely_says_that_it_is_clear(radii, x, y, angle, height):
    room = Room(walls(star(radii)))
    room.take([(Point(2, 2), Point(6, 3), Point(4, 7))])
    text = Text("hip line", Point(x, y), height, angle=angle)
    for found in room.first_that_fits([text]):
        assert star(radii).contains(boxed(found))
        assert boxed(found).disjoint(shapely.Polygon([(2, 2), (6, 3), (4, 7)]))
        assert room.first_that_fits([text]) == ()


def test_a_name_in_the_midst_of_a_wide_room_is_written():
    room = Room(walls(star([30.0] * 8)))
    assert room.first_that_fits([Text("hip line", Point(0, 0), 0.5, angle=33.0)])
