"""Pages for people: nothing from the internet, nothing that runs, nothing left unexplained."""

from __future__ import annotations

import io
import re
from html.parser import HTMLParser

import pikepdf
import pytest
from asking import refused

from drafting.garments import GARMENTS
from service.problems import PROBLEMS

ACCEPT_PAGE = {"Accept": "text/html"}


class Links(HTMLParser):
    """Collects what a page loads or links to."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.found: list[str] = []
        self.inline_script = False
        self.feed(text)

    def handle_starttag(self, tag, attrs):
        named = dict(attrs)
        self.found += [named[a] for a in ("href", "src") if a in named]
        self.inline_script |= tag == "script" and "src" not in named


PAGES = ["/", "/docs", "/measuring", "/measuring?garment=trousers", "/problems/invalid-order"]


@pytest.mark.parametrize("path", PAGES)
def test_every_link_of_a_page_leads_somewhere_in_the_service(service, path):
    answer = service.get(path, **ACCEPT_PAGE)
    assert answer.headers["content-type"] == "text/html; charset=utf-8"
    links = Links(answer.text)
    assert links.found
    for link in links.found:
        assert "//" not in link, "a page loads nothing from elsewhere"
        if not link.startswith(("#", "data:")):
            found = answer.request.url.join(link)
            assert service.get(found.raw_path.decode(), **ACCEPT_PAGE).status_code == 200, link


@pytest.mark.parametrize("path", PAGES)
def test_pages_carry_a_policy_that_keeps_others_out(service, path):
    answer = service.get(path, **ACCEPT_PAGE)
    policy = answer.headers["content-security-policy"]
    assert policy.startswith("default-src 'none'")
    assert "frame-ancestors 'none'" in policy
    assert "http" not in policy
    assert "script-src" not in policy or "script-src 'self';" in policy
    assert answer.headers["x-content-type-options"] == "nosniff"
    assert answer.headers["referrer-policy"] == "no-referrer"
    assert not Links(answer.text).inline_script


def test_drawings_may_load_nothing(service):
    answer = service.get("/v1/garments/trousers/sample?format=svg")
    assert answer.headers["content-security-policy"].startswith("default-src 'none'")
    assert "<script" not in answer.text


def test_the_first_page_shows_a_pattern_and_how_to_order_one(service):
    page = service.get("/").text
    assert "<img" in page
    assert "curl" in page
    assert "http://tapeline.test/v1/patterns" in page
    for garment in GARMENTS.values():
        assert garment.title in page
    for source in GARMENTS["trousers"].sources:
        assert source.replace("'", "&#x27;") in page


def test_a_strange_host_is_not_written_on_the_first_page(service):
    page = service.get("/", Host='"><script>alert(1)</script>').text
    assert "alert(1)" not in page


def test_the_reference_asks_nothing_of_others(service):
    script = service.get("/assets/docs.js").text
    assert "validatorUrl: null" in script
    styles = service.get("/assets/swagger-ui.css").text
    assert not re.search(r"url\(['\"]?https?:", styles)


@pytest.mark.parametrize("code", PROBLEMS)
def test_every_problem_has_a_page_and_a_document(service, code):
    page = service.get(f"/problems/{code}", **ACCEPT_PAGE)
    assert page.status_code == 200
    assert code in page.text
    document = service.get(f"/problems/{code}").json()
    assert document["code"] == code
    assert document["status"] == PROBLEMS[code].status
    assert document["meaning"]
    assert document["mend"]


def test_addresses_that_are_not_there_are_a_problem(service):
    for path in ("/nowhere", "/problems/none", "/assets/../app.py", "/assets/%00", "/v1/patterns/"):
        refused(service.get(path), 404, "not-found")


def test_a_garment_that_is_not_there_is_a_problem_with_the_name_meant(service):
    for path in (
        "/v1/garments/trouser",
        "/v1/garments/trouser/sample",
        "/v1/measurements?garment=trouser",
    ):
        assert "'trousers'" in refused(service.get(path), 404, "not-found")["detail"]


@pytest.mark.parametrize("method", ["PUT", "DELETE", "PATCH", "OPTIONS", "TRACE", "BREW"])
def test_other_methods_are_a_problem_that_lists_the_right_ones(service, method):
    got = service.ask(method, "/v1/garments")
    refused(got, 405, "method-not-allowed")
    assert got.headers["allow"] == "GET, HEAD"
    posted = service.ask(method, "/v1/patterns")
    refused(posted, 405, "method-not-allowed")
    assert posted.headers["allow"] == "POST"


PAGES = ("/", "/docs", "/measuring", "/problems/busy")


@pytest.mark.parametrize("path", PAGES)
def test_pages_can_neither_be_framed_nor_reach_for_the_readers_devices(service, path):
    headers = service.get(path, Accept="text/html").headers
    assert headers["content-type"].startswith("text/html")
    assert headers["x-frame-options"] == "DENY"
    assert "frame-ancestors 'none'" in headers["content-security-policy"]
    assert headers["cross-origin-opener-policy"] == "same-origin"
    assert "camera=()" in headers["permissions-policy"]


@pytest.mark.parametrize("path", [*PAGES, "/v1/garments", "/v1/limits", "/nowhere", "/healthz"])
def test_every_answer_says_that_it_is_what_it_says_and_for_this_origin(service, path):
    headers = service.get(path).headers
    assert headers["x-content-type-options"] == "nosniff"
    assert headers["referrer-policy"] == "no-referrer"
    assert headers["cross-origin-resource-policy"] == "same-origin"


def test_pictures_may_be_shown_on_other_origins(service):
    for path in ("/v1/garments/trousers/sample", "/v1/size-tables/women/88-regular/trousers"):
        headers = service.get(path, Accept="image/*").headers
        assert headers["cross-origin-resource-policy"] == "cross-origin"
        assert "script" not in headers["content-security-policy"]


def test_everyone_finds_on_the_page_how_to_take_what_a_garment_needs(service):
    page = service.get("/measuring?garment=trousers").text
    for name in GARMENTS["trousers"].needs:
        assert f'id="{name}"' in page
    assert 'id="wrist_girth"' not in page
    assert 'id="wrist_girth"' in service.get("/measuring").text


def test_the_measuring_form_is_a_pdf_on_the_paper_asked_for(service):
    answer = service.get("/measuring/form.pdf?garment=trousers&paper=letter")
    assert answer.headers["content-type"] == "application/pdf"
    with pikepdf.open(io.BytesIO(answer.content)) as pdf:
        assert [float(each) for each in pdf.pages[0].mediabox[2:]] == pytest.approx([612, 792])
    again = service.get("/measuring/form.pdf", If_None_Match=answer.headers["etag"])
    assert again.status_code == 200
    refused(service.get("/measuring/form.pdf?paper=papyrus"), 404, "not-found")
    refused(service.get("/measuring/form.pdf?garment=toga"), 404, "not-found")
    refused(service.get("/measuring/above.svg"), 404, "not-found")
