"""The class sheet on paper: read back from the PDF by another library."""

from __future__ import annotations

import ctypes
import re
from collections import defaultdict
from io import BytesIO
from itertools import pairwise

import pikepdf
import pypdfium2
import pytest
from classroom import BODIES, FIRST, LARGEST, SMALLEST, methods, sheet_of, worked

from drafting.export import draft_pdf
from drafting.teaching.lesson import SCALES, scale_for, whole_window
from drafting.teaching.tape import on_tape
from drafting.teaching.view import View
from drafting.trace import Length, Place

POINT = 72 / 25.4
PAPER = {"a4": (210, 297), "letter": (215.9, 279.4)}


def printed(done, **form) -> tuple[bytes, object]:
    kind = done.pattern.pattern.kind
    draft = sheet_of(kind, done, **form)
    solutions = sheet_of(kind, done, **{**form, "blank": False}) if form.get("blank") else None
    return draft_pdf.write(draft, solutions), draft


def pages(raw: bytes) -> list[str]:
    document = pypdfium2.PdfDocument(raw)
    return [" ".join(p.get_textpage().get_text_bounded().split()) for p in document]


class Sheets(dict):
    """Each method's class sheet on the sample body: its bytes, what it tells, its pages' texts."""

    def __init__(self, drafts) -> None:
        super().__init__()
        self.drafts = drafts

    def __missing__(self, case):
        raw, draft = printed(self.drafts[*case, "sample"][0])
        self[case] = (raw, draft, pages(raw))
        return self[case]


@pytest.fixture(scope="module", name="sheets")
def sheets_fixture(drafts):
    return Sheets(drafts)


@pytest.mark.parametrize("case", methods(), ids="-".join)
def test_the_parts_come_in_the_order_that_classes_expect(case, sheets):
    """Order: class sheets of sewing schools, common practice, no source."""
    text = " ".join(sheets[case][2])
    words = sheets[case][1].words
    order = [
        words.learner[:8],
        words.aims_heading,
        words.tools_heading,
        words.measures_heading,
        words.key_heading,
        "1. " + sheets[case][1].steps[0].heading,
        words.finished,
        words.checks_heading,
        words.finishing_heading,
        words.toile_heading,
        words.cautions_heading,
        words.marks_heading,
    ]
    at = [text.index(part) for part in order]
    assert at == sorted(at)


@pytest.mark.parametrize("case", methods(), ids="-".join)
def test_every_step_stands_on_it_whole(case, sheets):
    _, draft, texts = sheets[case]
    text = " ".join(texts).replace("- ", "-").replace(" ", "")
    for step in draft.steps:
        for told in (f"{step.number}.{step.heading}", *step.sentences, step.reason, *step.sums):
            assert told.replace("- ", "-").replace(" ", "") in text, told


@pytest.mark.parametrize("paper", PAPER)
def test_pages_are_of_the_paper_asked_for(paper, drafts):
    raw, _ = printed(drafts["gathered_skirt", "", "sample"][0], paper=paper)
    with pikepdf.open(BytesIO(raw)) as document:
        for page in document.pages:
            _, _, width, height = map(float, page.mediabox)
            assert (width / POINT, height / POINT) == pytest.approx(PAPER[paper], abs=0.1)


def rulers(raw: bytes) -> list[tuple[float, set[float]]]:
    """From the first to the last of five marks on a level, in mm; and the page's scales."""
    found = []
    for page in pypdfium2.PdfDocument(raw):
        scales = set(
            map(float, re.findall(r"Scale 1:(\d+)", page.get_textpage().get_text_bounded()))
        )
        marks = defaultdict(list)
        for item in page.get_objects(filter=[pypdfium2.raw.FPDF_PAGEOBJ_PATH]):
            left, low, right, top = item.get_bounds()
            if right - left < 3 and 1.2 * POINT - 1 < top - low < 1.2 * POINT + 2:
                marks[round(low)].append((left + right) / 2 / POINT)
        for row in marks.values():
            steps = [b - a for a, b in pairwise(sorted(row))]
            if len(row) == 5 and max(steps) - min(steps) < 0.1:
                found.append((max(row) - min(row), scales))
    return found


@pytest.mark.parametrize("case", methods(), ids="-".join)
def test_figures_are_true_to_their_scale(case, sheets):
    """The ruler's 20 cm, measured on the page with another library."""
    found = rulers(sheets[case][0])
    assert found
    for length, scales in found:
        assert min(abs(length - 200 / scale) for scale in scales) < 0.02


@pytest.mark.parametrize("paper", PAPER)
@pytest.mark.parametrize("name", BODIES)
@pytest.mark.parametrize(("kind", "method"), methods())
def test_figures_are_at_one_to_four_or_five(kind, method, name, paper, drafts):
    draft = sheet_of(kind, drafts[kind, method, name][0], paper=paper)
    page = draft_pdf.ClassPages(draft)
    if larger_than_paper(draft, page):
        larger = SCALES[SCALES.index(page.scale) - 1]
        assert not fits(View(whole_window(draft), larger), page)
    else:
        assert page.scale in SCALES[:2]
    assert fits(View(whole_window(draft), page.scale), page)
    assert scale_for(draft, (1000.0, 1000.0)) == 4


def fits(view, page) -> bool:
    """Whether a figure of the whole draft has room on a page: beside its steps, or under them."""
    beside = view.width <= page.width - 4.9 and view.height <= page.height - 0.9
    return beside or (view.width <= page.width and view.height <= 0.75 * page.height)


def larger_than_paper(draft, page) -> bool:
    """Whether the draft, as a full circle's, is larger than the paper even at 1:5."""
    view = View(whole_window(draft), 5.0)
    return view.width > page.width or view.height > 0.75 * page.height


def a_strip_is_longer(draft, page) -> bool:
    """Whether a piece that is drawn by itself, as a band, is longer than the page even at 1:5."""
    lines = [s.line.path.bounds() for s in draft.steps if s.paper and s.line]
    return any((top - low) / 5 > page.height - 5 for _, low, _, top in lines)


def test_an_asked_scale_is_kept():
    for scale in (4, 5):
        draft = sheet_of("straight_skirt", worked("straight_skirt", "block", SMALLEST), scale=scale)
        assert draft_pdf.ClassPages(draft).scale == scale


@pytest.mark.parametrize(("kind", "method"), FIRST)
def test_an_exercise_has_its_solutions_on_the_last_pages_only(kind, method, drafts):
    done, told = drafts[kind, method, "sample"]
    raw, draft = printed(done, blank=True)
    text = pages(raw)
    first = next(i for i, page in enumerate(text) if draft.words.solutions_heading in page)
    exercise, solutions = " ".join(text[:first]), " ".join(text[first:])
    results = [
        s.sums[0].rsplit(" = ", 1)[1] for s in told.steps if s.step.kind == "length" and s.sums
    ]
    named = {on_tape(o, "cm") for s in told.steps if s.place for o in rule_lengths(s.place)}
    odd = [r for r in results if len(r) > 6 and r not in named]  # numbers that no rule has
    assert odd
    assert all(result in solutions for result in results)
    assert not [result for result in odd if re.search(rf"(?<![\d.]){re.escape(result)}", exercise)]


def rule_lengths(place: Place) -> list[Length]:
    """Lengths that the rule itself names, which an exercise keeps."""
    operands = (o for move in place.moves for o in move.operands)
    return [o for o in operands if isinstance(o, Length) and o.how is None]


def test_the_only_date_is_the_one_that_was_given(drafts):
    raw, _ = printed(drafts["gathered_skirt", "", "sample"][0], date="2 May")
    assert "2 May" in pages(raw)[0]
    assert b"CreationDate" not in raw
    assert b"ModDate" not in raw


@pytest.mark.parametrize("case", FIRST, ids="-".join)
def test_the_same_order_gives_the_same_bytes(case, sheets):
    assert printed(worked(*case, "sample"))[0] == sheets[case][0]


@pytest.mark.parametrize("case", methods(), ids="-".join)
def test_no_letter_is_drawn_as_a_box_and_pages_are_counted(case, sheets):
    text = sheets[case][2]
    assert not any("\ufffd" in page for page in text)
    for number, page in enumerate(text, 1):
        assert f"Page {number} of {len(text)}" in page


def corners(item: pypdfium2.PdfObject) -> list[tuple[float, float]]:
    """Ends and handles of a path on the page, in points.

    The reader's own bounds of a thick stroke run far past a line that is nearly plumb.
    """
    raw, x, y = pypdfium2.raw, ctypes.c_float(), ctypes.c_float()
    found = []
    for n in range(raw.FPDFPath_CountSegments(item.raw)):
        raw.FPDFPathSegment_GetPoint(raw.FPDFPath_GetPathSegment(item.raw, n), x, y)
        found.append(item.get_matrix().on_point(x.value, y.value))
    return found


@pytest.mark.parametrize(
    "case", [*((*c, LARGEST) for c in methods()), *((*c, SMALLEST) for c in FIRST)], ids="-".join
)
def test_the_largest_and_the_smallest_body_fit_the_pages(case, drafts):
    """No figure runs over its page; none is drawn smaller than 1:5 that fits the paper so."""
    raw, draft = printed(drafts[case][0], paper="letter", unit="in")
    sheet = draft_pdf.ClassPages(draft)
    if not larger_than_paper(draft, sheet):
        strips = set(SCALES) if a_strip_is_longer(draft, sheet) else set()
        assert set().union(*(scales for _, scales in rulers(raw))) <= {4.0, 5.0} | strips
    for page in pypdfium2.PdfDocument(raw):
        width, height = page.get_size()
        for item in page.get_objects(filter=[pypdfium2.raw.FPDF_PAGEOBJ_PATH]):
            assert all(0 < x < width and 0 < y < height for x, y in corners(item))
