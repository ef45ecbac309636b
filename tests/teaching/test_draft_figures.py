"""Figures: every text readable, what is new in view, true to the scale that they state."""

from __future__ import annotations

from xml.etree import ElementTree as ET

import pytest
import shapely
from classroom import CASES, FIRST, LARGEST, SMALLEST, sheet_of

from drafting.drawing import Role, Sheet, Stroke, Text
from drafting.drawing.lettering import boxes
from drafting.errors import OutputError
from drafting.export import draft_svg
from drafting.geometry import Point
from drafting.teaching.frames import SCALE, finished, frames
from drafting.teaching.placing import Board
from drafting.teaching.tape import figures
from drafting.trace import Length, Outline

ENDS = [c for c in CASES if c[2] in (SMALLEST, LARGEST)]


@pytest.fixture(name="draft", params=ENDS, ids=lambda c: "-".join(filter(None, c)))
def draft_fixture(request, drafts):
    """The smallest and the largest reference body: between them nothing is more crowded."""
    return drafts[request.param]


def texts(sheet: Sheet) -> list[Text]:
    return [i for group in sheet.groups for i in group.items if isinstance(i, Text)]


def strokes(sheet: Sheet, *roles: Role) -> list[Stroke]:
    found = [i for group in sheet.groups for i in group.items if isinstance(i, Stroke)]
    return [s for s in found if s.role in roles]


def overlapping(sheet: Sheet) -> list[tuple[str, str]]:
    written = texts(sheet)
    areas = list(boxes(written))
    pairs = shapely.STRtree(areas).query(areas, predicate="intersects").T
    return [(written[a].text, written[b].text) for a, b in pairs if a < b]


def outside(sheet: Sheet) -> list[str]:
    paper = shapely.box(0, 0, sheet.width, sheet.height)
    written = texts(sheet)
    return [t.text for t, b in zip(written, boxes(written), strict=True) if not paper.contains(b)]


def test_no_two_texts_of_a_picture_overlap(draft, pictures):
    """Boxes by the font's own metrics."""
    _, taught = draft
    for sheet in (*pictures(taught), finished(taught)):
        assert overlapping(sheet) == [], sheet.title
        assert outside(sheet) == [], sheet.title


@pytest.mark.parametrize(("kind", "method"), FIRST)
def test_no_two_texts_overlap_in_inches_either(kind, method, drafts):
    draft = sheet_of(kind, drafts[kind, method, SMALLEST][0], unit="in")
    for sheet in frames(draft):
        assert overlapping(sheet) == [], sheet.title


def test_the_finished_draft_names_every_point_once(draft):
    _, taught = draft
    names = [t.text for t in texts(finished(taught))]
    drawn = {taught.labels(s.place) for s in taught.steps if s.place and not s.paper}
    assert all(names.count(label) == 1 for label in drawn)


def test_a_new_point_is_named_and_its_length_told(draft, pictures):
    _, taught = draft
    for step, sheet in zip(taught.steps, pictures(taught), strict=True):
        written = {t.text for t in texts(sheet)}
        if step.place is None:
            continue
        assert taught.labels(step.place) in written
        for move in step.place.moves:
            for length in (o for o in move.operands if isinstance(o, Length)):
                shown = float(length) > SCALE * 0.2
                assert not shown or figures(length, "cm") in written, step.heading


def test_a_new_line_stands_out_and_the_old_recede(draft, pictures):
    """The new line has its true length at the picture's scale; all else is thinner."""
    _, taught = draft
    for step, sheet in zip(taught.steps, pictures(taught), strict=True):
        if step.line is None:
            continue
        main = next(g for g in sheet.groups if g.name == "draft")
        new = [i for i in main.items if isinstance(i, Stroke) and i.role is Role.NEW]
        drawn = max(s.path.length() for s in new)
        assert drawn * SCALE == pytest.approx(step.line.path.length(), abs=0.01), step.heading


def test_the_outlines_stand_out_in_the_finished_draft(draft):
    _, taught = draft
    wanted = {
        round(leg.path.length(), 2)
        for step in taught.steps
        if isinstance(step.step.value, Outline) and not step.paper
        for leg in step.step.value.legs
    }
    drawn = {round(s.path.length() * SCALE, 2) for s in strokes(finished(taught), Role.NEW)}
    assert wanted <= drawn


def test_the_ruler_is_as_long_as_it_says(draft):
    _, taught = draft
    sheet = finished(taught)
    ruler = next(g for g in sheet.groups if g.name == "ruler")
    long = max(i.path.length() for i in ruler.items if isinstance(i, Stroke))
    assert long * SCALE == pytest.approx(20.0)
    assert any("1:5" in i.text and "20 cm" in i.text for i in ruler.items if isinstance(i, Text))


def test_crotch_and_darts_are_enlarged(draft, pictures):
    _, taught = draft
    enlarged = {
        step.heading.lower()
        for step, sheet in zip(taught.steps, pictures(taught), strict=True)
        if any(g.name == "detail" for g in sheet.groups)
    }
    for step in taught.steps:
        line = step.line
        if line and (
            line.folds
            or any(getattr(p, "guide", None) and p.guide.verb == "diagonal" for p in line.parts)
        ):
            assert step.heading.lower() in enlarged


def test_all_pictures_of_a_draft_are_of_one_size(draft, pictures):
    _, taught = draft
    assert len({(s.width, s.height) for s in pictures(taught)}) == 1


def test_a_picture_is_sound_xml_with_title_and_sentences(draft):
    _, taught = draft
    step = next(s for s in taught.steps if s.line)
    root = ET.fromstring(draft_svg.write(taught, step.number))  # noqa: S314 - own bytes
    assert root.get("width").endswith("mm")
    texts_of = {e.tag.rsplit("}")[-1]: e.text for e in root}
    assert texts_of["title"] == f"{step.number}. {step.heading}"
    assert texts_of["desc"] == " ".join(step.sentences)


def test_a_step_that_is_not_there_is_refused(draft):
    _, taught = draft
    for number in (0, len(taught.steps) + 1, -3):
        with pytest.raises(OutputError, match="no step"):
            draft_svg.write(taught, number)


def test_a_text_wider_than_its_figure_is_written_all_the_same():
    """A long word of another language on a small detail, its level already crowded."""
    board = Board((0.0, 0.0, 1.0, 1.0))
    for _ in range(3):
        text, *_ = board.write("eine sehr lange Brustlinie", 0.3, Point(0.5, 0.5), Role.OLD)
        assert text.text == "eine sehr lange Brustlinie"
