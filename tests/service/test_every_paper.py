"""Every address that prints takes every paper, and gives clean pages of it."""

from io import BytesIO
from typing import get_args

import apron
import pikepdf
import pytest

from drafting.drawing import PAPERS, PaperName

PAPER_NAMES = get_args(PaperName)
SKIRT = {"kind": "straight_skirt"}
BODY = {"waist_girth": 74, "hip_girth": 101, "side_waist_to_hip": 20.5}
ORDER = {"measurements": BODY, "garment": SKIRT}
ASKED = {
    "/v1/patterns": ORDER,
    "/v1/draft-sheets": ORDER,
    "/v1/lay-plans": {"orders": [ORDER], "laying": {"budget": 0}},
    "/v1/size-ranges": {
        "garment": SKIRT,
        "sizes": {"table": "women", "names": ["84-regular", "88-regular"]},
    },
}


@pytest.mark.parametrize("address", ASKED)
@pytest.mark.parametrize("paper", PAPER_NAMES)
def test_every_address_prints_on_every_paper(service, address, paper):
    wide = {"roll_width": 1600.0} if address == "/v1/lay-plans" else {}  # for cloth of 150 cm
    asked = {**ASKED[address], "output": {"format": "pdf", "paper": paper, **wide}}
    told = service.ask("POST", address, json=asked)
    assert told.status_code == 200, told.text
    with pikepdf.open(BytesIO(told.content)) as pdf:
        assert not pdf.check_pdf_syntax()
        sides = [
            sorted(float(side) / 72 * 25.4 for side in page.mediabox[2:]) for page in pdf.pages
        ]
    if paper in PAPERS:
        size = sorted((PAPERS[paper].width, PAPERS[paper].height))
        assert all(each == pytest.approx(size, abs=0.1) for each in sides)
    elif paper == "roll" and address in {"/v1/patterns", "/v1/size-ranges"}:
        assert all(any(abs(s - 914) < 0.1 for s in each) for each in sides)


@pytest.mark.parametrize("paper", PAPER_NAMES)
@pytest.mark.parametrize("format_", ["json", "svg", "png", "dxf"])
def test_papers_are_nothing_to_formats_without_pages(apron_service, paper, format_):
    plain = apron_service.order(apron.order(), f"?format={format_}")
    order = {**apron.order(), "output": {"paper": paper}}
    assert apron_service.order(order, f"?format={format_}").content == plain.content
