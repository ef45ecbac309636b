"""The first page as it is used: in a real browser, by keyboard, by its names, and on paper."""

from __future__ import annotations

import io
import json
import zipfile

import pikepdf
import pypdfium2
import pytest
from browsing import chromium, needs_browser, opened
from serving import Server

from drafting.garments import GARMENTS
from service.keys import digest

pytestmark = needs_browser

READY = "#downloads:not([hidden])"
REFUSED = "#trouble:not([hidden])"


@pytest.fixture(name="server", scope="module")
def server_fixture(tmp_path_factory):
    server = Server(tmp_path_factory.mktemp("landing") / "log", TAPELINE_ORDER_SECONDS="60")
    try:
        server.wait()
        yield server
    finally:
        server.kill()


@pytest.fixture(name="started", scope="module")
def started_fixture():
    with chromium() as started:
        yield started


@pytest.fixture(name="page")
def page_fixture(server, started):
    with opened(started, viewport={"width": 1200, "height": 900}) as page:
        page.goto(server.address)
        page.wait_for_selector("#m-waist_girth")
        yield page


def drafted(page) -> None:
    page.get_by_role("button", name="Draft the pattern").click()
    page.wait_for_selector(READY)


def test_measures_become_a_picture_a_verdict_and_files(page, tmp_path):
    page.get_by_role("button", name="Fill in an invented person").click()
    drafted(page)
    assert page.locator("#verdict").inner_text().startswith("Trousers. Sound")
    assert page.locator("#pattern").get_attribute("src").startswith("blob:")
    width = "image => image.decode().then(() => image.naturalWidth)"
    assert page.locator("#pattern").evaluate(width) > 100
    page.locator("#paper").select_option("letter")
    for name in ("PDF", "JSON", "ZIP"):
        with page.expect_download() as saved:
            page.get_by_role("button", name=name).click()
        assert saved.value.suggested_filename == f"trousers.{name.lower()}"
        saved.value.save_as(tmp_path / name)
    with pikepdf.open(tmp_path / "PDF") as pdf:
        assert [float(each) for each in pdf.pages[0].mediabox[2:]] == pytest.approx([612, 792])
    told = json.loads((tmp_path / "JSON").read_bytes())
    assert told["body"]["waist_girth"] == {"value": 740.0, "origin": "measured"}
    assert len(zipfile.ZipFile(tmp_path / "ZIP").namelist()) > 3
    assert not page.complaints


def test_what_is_wrong_is_said_at_its_field_and_led_to(page):
    page.get_by_role("button", name="Fill in an invented person").click()
    waist = page.get_by_label("Waist girth", exact=True)
    waist.fill("wide")
    page.get_by_role("button", name="Draft the pattern").click()
    page.wait_for_selector(REFUSED)
    assert page.evaluate("document.activeElement.id") == "trouble"
    assert waist.get_attribute("aria-invalid") == "true"
    assert page.locator("#m-waist_girth-wrong").inner_text()
    assert not page.locator("#downloads").is_visible()
    page.locator("#trouble a").first.click()
    assert page.evaluate("document.activeElement.id") == "m-waist_girth"
    waist.fill("74")
    drafted(page)
    assert not page.locator("#trouble").is_visible()
    assert waist.get_attribute("aria-invalid") is None


def test_inches_may_be_written_as_a_tape_is_read(page):
    page.get_by_role("button", name="Fill in an invented person").click()
    page.locator("#unit").select_option("in")
    inches = {"waist_girth": "29 1/8", "hip_girth": "39 3/4", "side_waist_to_hip": "8",
              "body_rise": "10 3/4", "outside_leg_length": "40 1/2"}  # fmt: skip
    for name, text in inches.items():
        page.locator(f"#m-{name}").fill(text)
    drafted(page)
    assert "Sound" in page.locator("#verdict").inner_text()


def test_all_of_it_goes_by_keyboard_and_every_control_has_a_name(page):
    page.locator("#kind").focus()
    seen = []
    for _ in range(60):
        page.keyboard.press("Tab")
        here = page.evaluate("[document.activeElement.id, document.activeElement.textContent]")
        seen.append(here[0] or here[1])
        if here[0] == "fill":
            page.keyboard.press("Enter")
        if here[1] == "Draft the pattern":
            page.keyboard.press("Enter")
            break
    assert "m-waist_girth" in seen
    assert "m-outside_leg_length" in seen
    page.wait_for_selector(READY)
    for control in page.locator("input:visible, select:visible").all():
        name = control.evaluate("each => each.labels[0]?.textContent")
        assert name, control.get_attribute("id")
    assert page.locator("[role=status]").inner_text().startswith("Sound")
    assert page.locator("html").get_attribute("lang") == "en"
    headings = page.locator("h1, h2, h3:visible").evaluate_all("all => all.map(h => h.tagName)")
    assert headings[0] == "H1"
    assert headings.count("H1") == 1


def test_options_of_the_garment_are_offered(page):
    page.get_by_role("button", name="Fill in an invented person").click()
    page.get_by_text("Options of the garment").click()
    page.get_by_label("Method").select_option(label="quarter")
    drafted(page)
    assert "Sound" in page.locator("#verdict").inner_text()


@pytest.mark.slow
@pytest.mark.parametrize("kind", GARMENTS)
def test_every_garment_can_be_drafted(page, kind):
    page.locator("#kind").select_option(kind)
    page.locator("#about", has_text=GARMENTS[kind].summary[:40]).wait_for()
    page.get_by_role("button", name="Fill in an invented person").click()
    drafted(page)
    assert "Sound" in page.locator("#verdict").inner_text()


def test_it_prints_nothing_but_the_pattern(page):
    page.get_by_role("button", name="Fill in an invented person").click()
    drafted(page)
    with pypdfium2.PdfDocument(io.BytesIO(page.pdf(format="A4"))) as printed:
        assert len(printed) == 1
        words = printed[0].get_textpage().get_text_range()
    assert "Trousers" in words
    assert "main fabric" in words
    for other in ("Tapeline", "Draft a pattern", "Waist girth", "Download", "Sources", "Sound"):
        assert other not in words


def test_a_narrow_screen_needs_no_scrolling_sideways(page):
    page.set_viewport_size({"width": 360, "height": 740})
    assert page.evaluate("document.documentElement.scrollWidth") <= 360


def test_an_installation_with_keys_asks_for_one(started, tmp_path):
    server = Server(tmp_path / "log", TAPELINE_API_KEYS=digest("a-key-of-the-test"))
    try:
        server.wait()
        with opened(started) as page:
            page.goto(server.address)
            page.wait_for_selector("#m-waist_girth")
            page.locator("#fill").click()
            page.get_by_role("button", name="Draft the pattern").click()
            page.wait_for_selector(REFUSED)
            page.get_by_label("Key of this installation").fill("a-key-of-the-test")
            drafted(page)
    finally:
        server.kill()
