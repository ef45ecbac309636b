"""Every paper: pages of its size, taped by their marks to the outline; single pages and pieces."""

import shutil
import subprocess
from io import BytesIO

import numpy as np
import pikepdf
import pytest
from pages import Pages, beside, best_fit, core, cut_lines, dark_runs, taped

from drafting.drawing import PAPERS, Output
from drafting.errors import OutputError
from drafting.export import FORMATS
from drafting.export.pdf import write

ROLLS = [{"paper": "roll", "roll_width": width} for width in (610.0, 914.0, 1067.0)]
WHOLE = {"paper": "whole"}
SHEETS = [{"paper": name} for name in PAPERS]
OTHERS = [
    {"paper": "a4", "overlap": 16.0, "margin": 6.0},
    {"paper": "letter", "margin": 12.7},
]

COARSE = 190.5
"""Pixels of 2/15 mm for big pages. One is taken off each side of a line of 0.7 mm, so that a point
that is hit lies within 0.3 mm of its middle (0.35 - 0.13, and rounding to a pixel)."""


def outline_is_on_the_paper(work, form, dpi):
    """Every cutting line of the SVG lies within 0.3 mm on the pages taped by their marks."""
    output = Output(**form)
    pages = Pages(write(work, output), dpi=dpi)
    if pages.names:
        sheet = taped(pages, output.overlap, output.margin)
    else:
        assert len(pages) == 1
        sheet = pages.picture(0)
    broad = core(sheet)
    inked = np.argwhere(broad)
    lines = cut_lines(FORMATS["svg"].write(work, output))
    assert lines
    for name, points in lines.items():
        assert best_fit(broad, inked, points, 25.4 / dpi) == 1.0, name


FEW = [
    {"paper": "a4", "overlap": 16.0, "margin": 6.0, "pieces": ("back", "waistband")},
    {"paper": "a4-letter", "pieces": ("front",)},
]


@pytest.mark.parametrize("form", FEW, ids=str)
def test_pages_taped_by_their_marks_show_the_outline(trousers, form):
    outline_is_on_the_paper(trousers, form, 254)


@pytest.mark.parametrize("form", [ROLLS[0], WHOLE], ids=str)
def test_long_and_whole_pages_show_the_outline(trousers, form):
    form = {**form, "pieces": ("front", "waistband")}
    outline_is_on_the_paper(trousers, form, COARSE)


@pytest.mark.slow
@pytest.mark.parametrize("form", [*SHEETS, *ROLLS, WHOLE, *OTHERS], ids=str)
def test_every_paper_shows_the_outline(trousers, form):
    big = form["paper"] in {"a0", "a1", "a2", "roll", "whole"}
    outline_is_on_the_paper(trousers, form, COARSE if big else 254)


@pytest.mark.parametrize("form", [*ROLLS, WHOLE, {"paper": "a0"}, {"paper": "a4-letter"}], ids=str)
def test_readers_find_nothing_wrong(trousers, form):
    with pikepdf.open(BytesIO(write(trousers, Output(**form)))) as pdf:
        assert not pdf.check_pdf_syntax()


@pytest.mark.parametrize("roll", ROLLS, ids=str)
def test_a_roll_is_one_page_of_its_breadth(trousers, roll):
    pages = Pages(write(trousers, Output(**roll)))
    assert len(pages) == 1
    wide, long = pages.size(0)
    assert wide == pytest.approx(roll["roll_width"], abs=0.01)
    assert 1100 < long < 2700
    said = " ".join(pages.text(0).split())
    assert "100 mm" in said
    assert "Cutting list" in said


def test_a_narrower_roll_is_longer(trousers):
    long = [Pages(write(trousers, Output(**roll))).size(0)[1] for roll in ROLLS]
    assert long[0] > long[1] > long[2]


def test_too_narrow_a_roll_names_the_piece_its_breadth_and_the_roll_that_would_do(trousers):
    with pytest.raises(OutputError, match=r"The piece back is 4\d\d mm broad") as caught:
        write(trousers, Output(paper="roll", roll_width=400.0))
    assert caught.value.where == "output.roll_width"
    assert caught.value.received == 400.0
    assert write(trousers, Output(paper="roll", roll_width=caught.value.allowed))
    with pytest.raises(OutputError):
        write(trousers, Output(paper="roll", roll_width=caught.value.allowed - 10.0))


def test_a_roll_with_too_broad_a_margin_is_refused(trousers):
    with pytest.raises(OutputError) as caught:
        write(trousers, Output(paper="roll", roll_width=300.0, margin=100.0))
    assert caught.value.where == "output.margin"


def test_one_whole_page_is_as_big_as_the_drawing_and_no_bigger(trousers):
    """Ink comes within a centimetre of all four edges, and the square is on it."""
    pages = Pages(write(trousers, Output(paper="whole", margin=50.0)), dpi=50.8)
    assert len(pages) == 1
    dark = pages.picture(0) < 128
    rows, columns = np.flatnonzero(dark.any(axis=1)), np.flatnonzero(dark.any(axis=0))
    near = 15 / 0.5
    assert rows[0] < near
    assert columns[0] < near
    assert rows[-1] > dark.shape[0] - near
    assert columns[-1] > dark.shape[1] - near
    assert "100 mm" in pages.text(0)


def test_a_page_for_both_papers_fits_within_the_margins_of_both(trousers):
    """210 x 297 and 215.9 x 279.4, 10 mm free at the sides and 12 mm above and below."""
    pages = Pages(write(trousers, Output(paper="a4-letter")))
    for number in range(len(pages)):
        short, long = sorted(pages.size(number))
        assert short - 20 <= 190.01
        assert long - 20 <= 255.01


def test_pages_lie_sideways_where_that_takes_fewer(trousers):
    """Whole sheets are counted either way up by drawing both: the fewer are given."""
    sizes = {}
    for paper in ("a4", "a3", "letter", "tabloid", "a4-letter"):
        pages = Pages(write(trousers, Output(paper=paper)))
        wide, high = pages.size(len(pages) - 1)
        sizes[paper] = wide > high
    assert set(sizes.values()) == {True, False}


def test_every_tile_has_rulers_of_ten_centimetres_and_four_inches_both_ways(trousers):
    """Found as combs of ticks on a page that carries nothing else there."""
    pages = Pages(write(trousers, Output()))
    page = pages.picture(pages.names[0, 0])
    for picture in (page, page[::-1, ::-1].T):
        # The long line of the ruler: the lowest row that is dark for 10 cm.
        rows = np.flatnonzero((picture[:, 150:1250] < 200).sum(axis=1) > 1000)
        line = rows[rows > picture.shape[0] // 2].max()
        centimetres = dark_runs(picture[line - 20, 150:1300], 230)
        inches = dark_runs(picture[line + 20, 150:1300], 230)
        assert min(abs(a - b - 1000) for a in centimetres for b in centimetres) <= 2
        assert min(abs(a - b - 1016) for a in inches for b in inches) <= 2


def test_single_pages_come_as_they_were(trousers):
    whole = Pages(write(trousers, Output()))
    some = Pages(write(trousers, Output(pages=("b2", "1", "C1"))))
    assert len(some) == 3
    wanted = [0, whole.names[1, 1], whole.names[2, 0]]
    for number, page in enumerate(sorted(wanted)):
        assert (some.picture(number) == whole.picture(page)).all()


def test_a_page_that_is_not_there_is_refused_with_those_that_are(trousers):
    with pytest.raises(OutputError, match="There is no page 'Z9'") as caught:
        write(trousers, Output(pages=("A1", "Z9")))
    assert caught.value.where == "output.pages"
    assert {"1", "A1"} <= set(caught.value.allowed)


def test_the_limit_counts_the_pages_that_are_given(trousers):
    assert write(trousers, Output(pages=("A1",)), max_pages=1)
    with pytest.raises(OutputError, match="at most 1 are printed"):
        write(trousers, Output(pages=("A1", "B1")), max_pages=1)


def test_where_no_sheet_would_do_the_roll_is_told(trousers):
    with pytest.raises(OutputError, match="paper roll would do"):
        write(trousers, Output(paper="a1"), max_pages=1)


def test_single_pieces_come_alone_with_squares_and_without_a_cover(trousers):
    pages = Pages(write(trousers, Output(pieces=("belt_loop", "waistband"))))
    said = " ".join(pages.text(n) for n in range(len(pages)))
    assert "Waistband" in said
    assert "Trouser front" not in said
    assert "Piece 13 of 13" in " ".join(said.split())
    assert "100 mm" in pages.text(0)
    assert "Cutting list" not in said
    assert len(pages) < 12


@pytest.mark.parametrize("scale", ["1:2", "1:4", "1:5"])
def test_small_scales_have_a_square_of_that_scale(trousers, scale):
    pages = Pages(write(trousers, Output(scale=scale)))
    said = " ".join(pages.text(0).split())
    assert f"10 cm at {scale}" in said
    assert f"Scale {scale}" in said
    side = round(1000 / int(scale[-1]))
    page = pages.picture(0)
    top = np.flatnonzero((page[1300:, 110 : 90 + side] < 128).all(axis=1)) + 1300
    assert abs(top.max() - top.min() - side) <= 2  # 0.2 mm
    row = page[(top.min() + top.max()) // 2, : 100 + side + 20]
    runs = dark_runs(row)
    assert abs(runs[1] - runs[0] - side) <= 2


def test_poppler_draws_what_pdfium_draws(trousers, tmp_path):
    assert alike(write(trousers, Output(paper="a4")), 200, 10, tmp_path) == 10


@pytest.mark.slow
@pytest.mark.parametrize("form", [*SHEETS, *ROLLS, WHOLE], ids=str)
def test_poppler_draws_every_paper_as_pdfium_does(trousers, form, tmp_path):
    """Of big papers the page with the front, of others the first four."""
    big = form["paper"] in {"a0", "a1", "a2", "roll", "whole"}
    chosen = {"pieces": ("front",)} if big else {}
    assert alike(write(trousers, Output(**form, **chosen)), 200, 1 if big else 4, tmp_path) >= 1


def alike(document, dpi, most, folder):
    """How many of the first pages were drawn by both; what is dark in one is so in the other."""
    poppler = shutil.which("pdftoppm")
    if poppler is None:
        pytest.skip("poppler (pdftoppm) is not installed")
    (folder / "a.pdf").write_bytes(document)
    subprocess.run(  # noqa: S603 - a file of its own
        [poppler, "-r", str(dpi), "-l", str(most), "-gray", folder / "a.pdf", folder / "p"],
        check=True,
    )
    pages = Pages(document, dpi=dpi)
    files = sorted(folder.glob("p-*.pgm"))
    for number, file in enumerate(files):
        theirs, ours = pgm(file), pages.picture(number)
        # poppler draws a dash's last stub as a whole pixel, pdfium as a faint one
        assert beside(theirs, ours, level=252), number
        assert beside(ours, theirs), number
    return len(files)


def pgm(file):
    kind, width, height, top, data = file.read_bytes().split(maxsplit=4)
    assert (kind, top) == (b"P5", b"255")
    return np.frombuffer(data, np.uint8).reshape(int(height), int(width))
