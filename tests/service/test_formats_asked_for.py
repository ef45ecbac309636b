"""Which format comes: `?format=`, then `output.format`, then `Accept`."""

from __future__ import annotations

import pytest
from asking import example, refused, trouble

JSON, SVG, PDF = "application/json", "image/svg+xml", "application/pdf"
PNG, DXF, ZIP = "image/png", "image/vnd.dxf", "application/zip"
BROWSER = "text/html,application/xhtml+xml,application/xml;q=0.9,*/*;q=0.8"
PICTURE_IN_A_PAGE = "image/avif,image/webp,image/apng,image/svg+xml,image/*,*/*;q=0.8"

MATRIX = [
    (None, None, None, JSON),
    (None, None, "*/*", JSON),
    (None, None, "", JSON),
    (None, None, "nonsense", JSON),
    (None, None, "application/*", JSON),
    (None, None, "image/*", SVG),
    (None, None, SVG, SVG),
    (None, None, PDF, PDF),
    (None, None, "APPLICATION/PDF", PDF),
    (None, None, BROWSER, JSON),
    (None, None, PICTURE_IN_A_PAGE, SVG),
    (None, None, f"{JSON};q=0.5, {PDF};q=0.9", PDF),
    (None, None, f"{JSON};q=0, */*", SVG),
    (None, None, f"*/*;q=0.1, {PDF};q=0", JSON),
    (None, None, f"{PDF};profile=x;q=0.2, {SVG};q=0.1", PDF),
    (None, None, "text/html, " * 500 + PDF, None),
    (None, "pdf", None, PDF),
    (None, "pdf", SVG, PDF),
    (None, "svg", "text/html", SVG),
    ("pdf", None, SVG, PDF),
    ("pdf", "svg", JSON, PDF),
    ("json", "svg", PDF, JSON),
    (None, None, "text/html", None),
    (None, None, "image/gif", None),
    (None, None, f"{JSON};q=0", None),
    ("gif", "svg", SVG, None),
    (None, None, "image/png", PNG),
    ("dxf", "svg", SVG, DXF),
    (None, "zip", None, ZIP),
    ("", None, None, None),
    ("SVG", None, None, None),
]


@pytest.mark.parametrize(("query", "output", "accept", "comes"), MATRIX)
def test_the_format_asked_for_comes(service, query, output, accept, comes):
    order = {**example(), "output": {"format": output} if output else {}}
    headers = {} if accept is None else {"Accept": accept}
    asked = "" if query is None else f"?format={query}"
    answer = service.order(order, asked, **headers)
    if comes is None:
        told = trouble(refused(answer, 406, "not-acceptable"), "/output/format")
        assert {"json", "svg", "pdf", JSON, SVG, PDF} <= set(told["allowed"])
    else:
        assert answer.headers["content-type"] == comes


@pytest.mark.parametrize(
    ("query", "accept", "comes"), [(q, a, c) for q, o, a, c in MATRIX if not o]
)
def test_a_sample_comes_in_the_same_formats(service, query, accept, comes):
    headers = {} if accept is None else {"Accept": accept}
    asked = "" if query is None else f"?format={query}"
    answer = service.get(f"/v1/garments/trousers/sample{asked}", **headers)
    if comes is None:
        refused(answer, 406, "not-acceptable")
    else:
        assert answer.headers["content-type"] == comes


def test_a_slip_in_the_format_is_met_with_the_name_meant(service):
    problem = refused(service.order(example(), "?format=pfd"), 406, "not-acceptable")
    assert "'pdf'" in problem["detail"]


def test_problems_are_problems_whatever_is_accepted(service):
    refused(service.order({}, Accept="image/*"), 422, "invalid-order")
