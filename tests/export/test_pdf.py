"""PDF: clean by another reader, true to scale, and pages that join into the outline of the SVG."""

import json
import re
from dataclasses import replace
from io import BytesIO

import numpy as np
import pikepdf
import pytest
from pages import (
    LETTERS,
    PIXEL,
    Pages,
    best_fit,
    core,
    cut_lines,
    dark_runs,
    shift_between,
    taped,
)

from drafting.drawing import PAPER_NAMES, PAPERS, Output
from drafting.errors import OutputError
from drafting.export import FORMATS
from drafting.export.pdf import write


@pytest.fixture(scope="module")
def document(trousers):
    return write(trousers, Output())


@pytest.fixture(scope="module")
def pages(document):
    return Pages(document)


@pytest.fixture(scope="module")
def opened(document):
    with pikepdf.open(BytesIO(document)) as pdf:
        yield pdf


def test_another_reader_finds_nothing_wrong(document):
    with pikepdf.open(BytesIO(document)) as pdf:
        assert not pdf.check_pdf_syntax()


def test_viewers_are_asked_not_to_scale(opened):
    assert opened.Root.ViewerPreferences.PrintScaling == pikepdf.Name("/None")


def drawn_on(page):
    """Numbers of the forms that a page shows."""
    return {stream.objgen for stream in page.resources.get("/XObject", {}).values()}


def test_the_sheet_is_drawn_once_and_placed_on_every_page(opened):
    """All pages have all forms of the sheet in common; each adds no more than its own names."""
    tiles = [drawn_on(page) for page in opened.pages]
    assert len(tiles) > 15
    assert len(set.intersection(*tiles)) == len(set.union(*tiles)) >= 6
    own = [len(page.Contents.read_bytes()) for page in opened.pages][2:]
    assert max(own) < 1500


def test_only_fonts_that_are_embedded_are_used(opened):
    objects = [o for o in opened.objects if isinstance(o, pikepdf.Dictionary)]
    used = [o for o in objects if o.get("/Type") == "/Font"]
    assert used
    for font in used:
        assert re.match(r"/[A-Z]{6}\+", str(font.BaseFont))  # a subset
        assert "/FontFile2" in font.FontDescriptor


def test_metadata_tells_the_title_and_nothing_of_persons_or_dates(opened):
    told = {key: str(value) for key, value in opened.docinfo.items()}
    assert set(told) == {"/Title", "/Creator", "/Producer"}
    assert told["/Title"] == "Trousers"
    assert "1042" not in " ".join(told.values())
    assert "/Metadata" not in opened.Root


def test_a_whole_pattern_is_small(document):
    assert len(document) < 100_000


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_the_squares_measure_right_both_ways_on_the_first_page(trousers, paper):
    page = Pages(write(trousers, Output(paper=paper)), dpi=400).picture(0)
    pixel = 25.4 / 400
    left, right, top, bottom, lower_left, lower_right, lower_top, lower_bottom = squares(page)
    assert (right - left) * pixel == pytest.approx(100.0, abs=0.2)
    assert (bottom - top) * pixel == pytest.approx(100.0, abs=0.2)
    assert (lower_right - lower_left) * pixel == pytest.approx(101.6, abs=0.2)
    assert (lower_bottom - lower_top) * pixel == pytest.approx(101.6, abs=0.2)


def squares(page):
    """Edges of both squares in pixels: verticals along two rows, horizontals down a column."""
    column = dark_runs(page[:, round(18 / 25.4 * 400)])  # 18 mm from the left: beside all words
    lines = [y for y in column if is_line(page[round(y)], 17, 100)]
    top, bottom, lower_top, lower_bottom = lines
    upper = dark_runs(page[round(top + (bottom - top) / 5), : round(116 / 25.4 * 400)])
    deep = round(lower_top + (lower_bottom - lower_top) / 5)
    lower = dark_runs(page[deep, : round(116 / 25.4 * 400)])
    return upper[0], upper[-1], top, bottom, lower[0], lower[-1], lower_top, lower_bottom


def is_line(row, first, last):
    """Whether a row of pixels is dark all the way between two distances in mm."""
    return bool((row[round(first / 25.4 * 400) : round(last / 25.4 * 400)] < 128).all())


def test_the_first_page_tells_what_to_mind_and_maps_the_pages(pages, trousers):
    said = " ".join(pages.text(0).split())
    answer = json.loads(FORMATS["json"].write(trousers, Output()))
    for caution in answer["cautions"]:
        assert caution in said
    for row, column in pages.names:
        assert f"{LETTERS[row]}{column + 1}" in said
    assert "Measure before cutting" in said


def test_each_page_tells_its_name_its_number_and_its_neighbours(pages):
    assert sorted(pages.names.values()) == list(range(2, len(pages)))  # after legend and cover
    for (row, column), number in pages.names.items():
        said = " ".join(pages.text(number).split())
        for other in ((row, column - 1), (row, column + 1), (row - 1, column), (row + 1, column)):
            joins = re.search(rf"joins {LETTERS[other[0]]}{other[1] + 1}(?!\d)", said)
            assert bool(joins) == (other in pages.names)


def test_neighbouring_pages_carry_the_same_marks_where_they_overlap(pages):
    """Overlap 10 mm: the last 10 mm of a page and the first 10 mm of the next are one drawing."""
    wide, high = ((side - 20) / PIXEL for side in pages.size(1))
    margin, strip = 10 / PIXEL, round(10 / PIXEL)
    joined = 0
    for (row, column), number in pages.names.items():
        here = pages.picture(number)
        for other, across in (((row, column + 1), True), ((row + 1, column), False)):
            if other not in pages.names:
                continue
            there = pages.picture(pages.names[other])
            if across:
                x = round(margin + wide) - strip
                first = here[:, x : x + strip]
                second = there[:, round(margin) : round(margin) + strip]
            else:
                y = round(margin + high) - strip
                first = here[y : y + strip].T
                second = there[round(margin) : round(margin) + strip].T
            middle = slice(first.shape[0] // 6, first.shape[0] // 2)  # holds one diamond
            assert (first[middle] < 128).any()
            down, right = shift_between(first[middle], second[middle], reach=6)
            assert max(abs(down), abs(right)) <= 1
            joined += 1
    assert joined > 15


def test_taped_pages_show_the_outline_of_the_svg(pages, trousers, output):
    """Every piece's cutting line, slid over the sheet, comes to lie on a drawn line all round.

    The drawn line is 0.7 mm broad; a pixel of 0.1 mm is taken off each side of it, so that a point
    that is hit lies within 0.3 mm of its middle (0.35 - 0.1, and rounding to a pixel).
    """
    broad = core(taped(pages))
    inked = np.argwhere(broad)
    lines = cut_lines(FORMATS["svg"].write(trousers, output))
    assert len(lines) == len(trousers.pattern.pieces)
    for name, points in lines.items():
        assert best_fit(broad, inked, points) == 1.0, name


HOSTILE = (
    '<script>alert(1)</script> & "q" \' ) \\ ( % ]]>',
    "Жакет Анны № 7",
    "φόρεμα Ωμέγα",
    "订单 中文",
    "नमस्ते",
)


@pytest.mark.parametrize("reference", HOSTILE)
def test_a_reference_is_read_back_as_typed(drafting_again, reference):
    document = write(drafting_again(reference=reference), Output(paper="a0"))
    said = "".join(Pages(document).text(0).split())
    assert "".join(reference.split()) in said


@pytest.mark.parametrize("reference", ["שלום", "طلب رقم", "订单", "👗🧵", "ไทย", "\ud800"])
def test_letters_without_a_shape_are_seen(drafting_again, reference):
    """Between two marks there is ink for each letter, and the sheet says what it stands for."""
    plain = Pages(write(drafting_again(reference="ll"), Output())).picture(0)
    marked = Pages(write(drafting_again(reference=f"l{reference}l"), Output()))
    assert "does not have is drawn as" in " ".join(marked.text(0).split())
    line = slice(round(24 / PIXEL), round(31 / PIXEL))  # the reference is the column's first line
    beside = slice(round(118 / PIXEL), None)
    inked = (marked.picture(0)[line, beside] < 128).sum() - (plain[line, beside] < 128).sum()
    assert inked > 40 * len(reference.replace(" ", ""))


@pytest.mark.parametrize("paper", PAPER_NAMES)
def test_every_paper_gives_pages_of_its_size(trousers, paper):
    pages = Pages(write(trousers, Output(paper=paper)))
    size = (PAPERS[paper].width, PAPERS[paper].height)
    for number in range(len(pages)):
        assert sorted(pages.size(number)) == pytest.approx(sorted(size), abs=0.01)
    assert "100 mm" in pages.text(0)
    assert len(pages) <= {"a3": 17, "a2": 9, "a1": 4, "a0": 2}.get(paper, 35)


def test_overlap_and_margin_are_as_ordered(trousers):
    """Without overlap the pages butt: halves of the diamonds at the edges, no strip twice."""
    pages = Pages(write(trousers, Output(margin=15.0, overlap=0.0)))
    first = pages.picture(pages.names[0, 0])
    margin = round(15 / PIXEL)
    assert (first[: margin - 2] == 255).all()
    assert (first[:, : margin - 2] == 255).all()
    wide = round((pages.size(1)[0] - 15) / PIXEL)
    assert (first[:, wide + 2 :] == 255).all()
    assert (first[:, wide - round(4 / PIXEL) : wide] < 160).any()


@pytest.mark.parametrize(
    ("changed", "where"),
    [
        ({"margin": 90.0}, "output.margin"),
        ({"margin": 60.0}, "output.margin"),
        ({"margin": 41.0}, "output.margin"),
        ({"margin": 25.0, "overlap": 100.0, "paper": "letter"}, None),
        ({"margin": 35.0, "overlap": 100.0}, "output.overlap"),
    ],
)
def test_margins_that_leave_no_room_are_refused_with_what_to_change(trousers, changed, where):
    output = Output(**changed)
    if where is None:
        assert write(trousers, output)
        return
    with pytest.raises(OutputError) as caught:
        write(trousers, output)
    assert caught.value.where == where
    assert caught.value.received == changed[where.removeprefix("output.")]


def test_too_many_pages_are_refused_with_the_paper_that_would_do(trousers):
    count = {paper: len(Pages(write(trousers, Output(paper=paper)))) for paper in ("a4", "a3")}
    assert count["a3"] < count["a4"]
    with pytest.raises(OutputError, match="paper a3 would do") as caught:
        write(trousers, Output(), max_pages=count["a3"])
    assert caught.value.where == "output.paper"
    assert (caught.value.received, caught.value.allowed) == (count["a4"], count["a3"])
    with pytest.raises(OutputError, match="no paper that is offered would do"):
        write(trousers, Output(), max_pages=0)


def test_an_unsound_pattern_says_so_on_the_first_page(trousers):
    document = write(replace(trousers, verdict="unsound"), Output())
    assert "NOT FOR CUTTING" in Pages(document).text(0)
