"""The cover: all that it is given, on as many pages as it takes, nothing over anything else."""

import pytest
import shapely
from hand_made import pattern
from hypothesis import given, settings
from hypothesis import strategies as st
from rulers import boxed

from drafting.drawing import Stroke, Text, cover_notes, draw_pieces
from drafting.drawing.cover import Cover, Row, Section

PIECES = draw_pieces(pattern(), reference="", verdict="sound")


def texts(note):
    return [item for item in note.group.items if isinstance(item, Text)]


def told(notes):
    return " ".join(text.text for note in notes for text in texts(note))


def free_of_each_other(notes, room, height):
    for note in notes:
        page = shapely.box(-0.01, -height - 0.01, room + 0.01, 0.01)
        boxes = [boxed(text) for text in texts(note)]
        assert all(page.contains(box) for box in boxes)
        lines = [
            shapely.LineString([(p.x, p.y) for p in item.path.flattened(0.05)])
            for item in note.group.items
            if isinstance(item, Stroke)
        ]
        tree = shapely.STRtree([*boxes, *lines])
        for k, box in enumerate(boxes):
            near = tree.query(box.buffer(-0.03), predicate="intersects")
            assert set(near) <= {k}, texts(note)[k].text
        assert note.height <= height + 0.01


rows = st.builds(
    Row,
    st.text(st.sampled_from("abcdef gh"), min_size=1, max_size=160).filter(str.strip),
    st.sampled_from(["", "12 cm", "101.5 cm ± 1.6 cm"]),
)
sections = st.lists(
    st.builds(Section, st.just("Heading"), st.lists(rows, max_size=30).map(tuple)), max_size=6
)


@settings(max_examples=30, deadline=None)
@given(
    sections.map(tuple), st.sampled_from([(19.0, 27.7), (19.6, 25.9), (15.0, 20.0), (40.0, 57.0)])
)
def test_whatever_it_tells_lies_on_its_pages_and_covers_nothing(lists, size):
    notes = cover_notes(Cover("Title", ("order 7",), lists, PIECES), *size)
    free_of_each_other(notes, *size)
    said = told(notes).split()
    wanted = [
        word for s in lists for row in s.rows for word in (row.text + " " + row.value).split()
    ]
    assert len("".join(said)) >= len("".join(wanted))


def test_every_row_is_told_in_order_and_empty_lists_are_left_out():
    lists = (
        Section("Cutting list", (Row("1 front"), Row("2 back"))),
        Section("Notions", ()),
        Section("Measures", (Row("waist", "74 cm"),)),
    )
    said = told(cover_notes(Cover("Trousers", ("order 7", "Scale 1:4"), lists, PIECES), 19.0, 27.7))
    order = ["Trousers", "order 7", "Scale 1:4", "Cutting list", "1 front", "2 back", "Measures"]
    places = [said.index(word) for word in order]
    assert places == sorted(places)
    assert "Notions" not in said
    assert "74 cm" in said


def test_long_lists_go_on_to_further_pages():
    rows = tuple(
        Row(f"step number {n} of a long order of sewing, told in full") for n in range(300)
    )
    notes = cover_notes(Cover("T", (), (Section("Sewing", rows),), PIECES), 19.0, 27.7)
    assert len(notes) > 1
    said = told(notes)
    assert all(f"step number {n} of" in said for n in range(300))


def test_each_piece_is_drawn_small_at_one_scale_with_its_number():
    (note,) = cover_notes(Cover("T", (), (), PIECES), 19.0, 27.7)
    strokes = [item for item in note.group.items if isinstance(item, Stroke)]
    assert len(strokes) == len(PIECES)
    scales = [
        (box[3] - box[1]) / (full[3] - full[1])
        for box, full in (
            (s.path.bounds(), p.finished.cut_line.bounds())
            for s, p in zip(strokes, PIECES, strict=True)
        )
    ]
    assert scales == pytest.approx([scales[0]] * len(scales))
    assert {"1", "2", "3"} <= {text.text for text in texts(note)}
