"""The class sheet on paper: read back from the PDF by another library."""

from __future__ import annotations

import re
from collections import defaultdict
from io import BytesIO
from itertools import pairwise

import pikepdf
import pypdfium2
import pytest
from classroom import BODIES, LARGEST, SMALLEST, methods, sheet_of, worked

from drafting.export import draft_pdf
from drafting.teaching.lesson import SCALES, scale_for, whole_window
from drafting.teaching.tape import on_tape
from drafting.teaching.view import View
from drafting.trace import Length, Place

POINT = 72 / 25.4
PAPER = {"a4": (210, 297), "letter": (215.9, 279.4)}


def printed(kind: str, method: str, name: str, **form) -> tuple[bytes, object]:
    done = worked(kind, method, name)
    draft = sheet_of(kind, done, **form)
    solutions = sheet_of(kind, done, **{**form, "blank": False}) if form.get("blank") else None
    return draft_pdf.write(draft, solutions), draft


def pages(raw: bytes) -> list[str]:
    document = pypdfium2.PdfDocument(raw)
    return [" ".join(p.get_textpage().get_text_bounded().split()) for p in document]


@pytest.fixture(scope="module", name="sheets")
def sheets_fixture():
    return {(kind, method): printed(kind, method, "sample") for kind, method in methods()}


@pytest.mark.parametrize("case", methods(), ids="-".join)
def test_the_parts_come_in_the_order_that_classes_expect(case, sheets):
    """Order: class sheets of sewing schools, common practice, no source."""
    text = " ".join(pages(sheets[case][0]))
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
    raw, draft = sheets[case]
    text = " ".join(pages(raw)).replace("- ", "-").replace(" ", "")
    for step in draft.steps:
        for told in (f"{step.number}.{step.heading}", *step.sentences, step.reason, *step.sums):
            assert told.replace("- ", "-").replace(" ", "") in text, told


@pytest.mark.parametrize("paper", PAPER)
def test_pages_are_of_the_paper_asked_for(paper):
    raw, _ = printed(*methods()[0], "sample", paper=paper)
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
def test_figures_are_at_one_to_four_or_five(kind, method, name, paper):
    draft = sheet_of(kind, worked(kind, method, name), paper=paper)
    page = draft_pdf.ClassPages(draft)
    assert page.scale in SCALES[:2] or larger_than_paper(draft, page)
    assert scale_for(draft, (1000.0, 1000.0)) == 4


def larger_than_paper(draft, page) -> bool:
    """Whether the draft, as a full circle's, is larger than the paper even at 1:5."""
    view = View(whole_window(draft), 5.0)
    return view.width > page.width or view.height > 0.75 * page.height


def test_an_asked_scale_is_kept():
    for scale in (4, 5):
        draft = sheet_of("straight_skirt", worked("straight_skirt", "block", SMALLEST), scale=scale)
        assert draft_pdf.ClassPages(draft).scale == scale


@pytest.mark.parametrize(("kind", "method"), methods())
def test_an_exercise_has_its_solutions_on_the_last_pages_only(kind, method):
    raw, draft = printed(kind, method, "sample", blank=True)
    told = sheet_of(kind, worked(kind, method, "sample"))
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


def test_the_only_date_is_the_one_that_was_given():
    raw, _ = printed(*methods()[0], "sample", date="2 May")
    assert "2 May" in pages(raw)[0]
    assert b"CreationDate" not in raw
    assert b"ModDate" not in raw


@pytest.mark.parametrize("case", methods(), ids="-".join)
def test_the_same_order_gives_the_same_bytes(case, sheets):
    assert printed(*case, "sample")[0] == sheets[case][0]


@pytest.mark.parametrize("case", methods(), ids="-".join)
def test_no_letter_is_drawn_as_a_box_and_pages_are_counted(case, sheets):
    text = pages(sheets[case][0])
    assert not any("\ufffd" in page for page in text)
    for number, page in enumerate(text, 1):
        assert f"Page {number} of {len(text)}" in page


def test_the_largest_and_the_smallest_body_fit_the_pages():
    """No figure runs over its page; none is drawn smaller than 1:5 that fits the paper so."""
    for name in (SMALLEST, LARGEST):
        for kind, method in methods():
            raw, draft = printed(kind, method, name, paper="letter", unit="in")
            if not larger_than_paper(draft, draft_pdf.ClassPages(draft)):
                assert set().union(*(scales for _, scales in rulers(raw))) <= {4.0, 5.0}
            for page in pypdfium2.PdfDocument(raw):
                width, height = page.get_size()
                for item in page.get_objects(filter=[pypdfium2.raw.FPDF_PAGEOBJ_PATH]):
                    left, low, right, top = item.get_bounds()
                    assert left > 0 and low > 0, (kind, name)  # noqa: PT018
                    assert right < width and top < height, (kind, name)  # noqa: PT018
