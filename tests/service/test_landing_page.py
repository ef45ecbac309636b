"""The first page as it is used: in a real browser, by keyboard, by its names, and on paper."""

from __future__ import annotations

import io
import json
import re
import zipfile
from pathlib import Path

import pikepdf
import pypdfium2
import pytest
from browsing import needs_browser, opened
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


@pytest.fixture(name="german")
def german_fixture(server, started):
    """The page of a reader whose browser asks for German."""
    with opened(started, viewport={"width": 1200, "height": 900}, locale="de-AT") as page:
        page.goto(server.address)
        page.wait_for_selector("#m-waist_girth")
        yield page


def arrived(page, kind):
    """Wait until the fields of a garment are there."""
    for _ in range(200):
        if page.evaluate("garment?.kind") == kind:
            return
        page.wait_for_timeout(50)
    raise TimeoutError(kind)


LEFT = """([language, english]) => {
  const told = [];
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walk.nextNode()) {
    const parent = walk.currentNode.parentElement;
    const text = walk.currentNode.textContent.trim();
    const spoken = parent.closest("[lang]").lang === language && !parent.closest("pre, code");
    if (spoken && text.split(/\\s+/).length > 2) told.push(text);
  }
  return english ? told.filter((text) => english.includes(text)) : told;
}"""
"""The texts of three words and more in a language; of these, those of an English page."""


def saved_text(page, name):
    """What is saved by the button of that name."""
    with page.expect_download() as saved:
        page.get_by_role("button", name=name).click()
    return Path(saved.value.path()).read_text("utf-8")


def test_a_german_reader_orders_in_german(german):
    assert german.locator("html").get_attribute("lang") == "de"
    german.get_by_role("button", name="Eine erfundene Person eintragen").click()
    hip = german.get_by_label("Hüfttiefe", exact=True)
    assert hip.input_value() == "20,5"
    german.get_by_text("Varianten des Kleidungsstücks").click()
    german.get_by_label("Vordere Tasche").select_option(label="gerundet")
    german.get_by_label("Gürtelschlaufen").select_option(label="nein")
    german.get_by_role("button", name="Schnitt konstruieren").click()
    german.wait_for_selector(READY)
    assert german.locator("#verdict").inner_text().startswith("Hose. In Ordnung")
    assert german.locator("[role=status]").inner_text().startswith("In Ordnung")
    assert german.locator("#pattern").get_attribute("alt").startswith("Hose, nach diesen Maßen")
    drawn = saved_text(german, "SVG")
    assert "Vorderhose" in drawn
    assert "Trouser front" not in drawn
    told = json.loads(saved_text(german, "JSON"))
    assert told["garment"]["front_pocket"] == "curved"
    assert told["garment"]["belt_loops"] is False
    assert told["pieces"][0]["title"] == "Vorderhose"
    assert not german.complaints


def test_nothing_english_is_left_on_the_page_of_a_german_reader(page, german):
    """Of every garment: its options, hints, measures, and what is said to a refused order."""
    for kind in ("trousers", "pleated_skirt", "shirt", "knit_top", "dress"):
        texts = []
        for each in (page, german):
            each.locator("#kind").select_option(kind)
            arrived(each, kind)
            each.locator("[data-measure]").first.fill("weit")
            each.locator("button.main").click()
            each.wait_for_selector(REFUSED)
            texts.append(each.evaluate(LEFT, ["en" if each is page else "de", None]))
        assert min(map(len, texts)) > 60
        assert german.evaluate(LEFT, ["de", texts[0]]) == []
        assert page.evaluate(LEFT, ["en", texts[0]]) == texts[0]


def test_another_language_is_chosen_on_the_page_and_without_a_script(server, started):
    with opened(started, locale="de", java_script_enabled=False) as page:
        page.goto(server.address + "measuring?garment=shirt")
        assert page.locator("h1").inner_text() == "So wird gemessen für: Hemd"
        page.get_by_role("link", name="Français").click()
        assert (
            page.locator("h1").inner_text() == "Prendre ses mesures pour\N{NO-BREAK SPACE}: Chemise"
        )
        page.get_by_role("link", name="Tapeline").click()
        assert page.locator("html").get_attribute("lang") == "fr"
        assert page.locator("noscript").inner_text().startswith("Le formulaire")
        picture = page.locator("#pattern").get_attribute("src")
        assert "Devant du pantalon" in page.request.get(server.address + picture).text()


def test_what_is_english_on_a_spanish_page_is_said_to_be(server, started):
    with opened(started, locale="es") as page:
        page.goto(server.address)
        page.wait_for_selector("#m-waist_girth")
        assert page.locator("html").get_attribute("lang") == "es"
        assert page.get_by_label("Contorno de cintura", exact=True).count() == 1
        assert page.locator("#m-waist_girth-hint").get_attribute("lang") == "en"
        assert page.locator("#about").get_attribute("lang") == "en"


def test_options_that_exclude_each_other_are_told_at_the_field_in_the_page_s_words(german):
    german.get_by_role("button", name="Eine erfundene Person eintragen").click()
    german.get_by_text("Varianten des Kleidungsstücks").click()
    german.get_by_label("Rückenteil").select_option(label="flach")
    german.get_by_role("button", name="Schnitt konstruieren").click()
    german.wait_for_selector(REFUSED)
    told = german.locator("#trouble").inner_text()
    assert told.startswith("Der Auftrag muss geändert werden")
    assert "Rückenteil (flach) und Bund (" in told
    assert "Nur ein Gummi zieht ein Rückenteil ein" in told
    german.locator("#trouble a").click()
    assert german.evaluate("document.activeElement.id") == "o-back"


def here(page):
    return page.evaluate("document.activeElement.id || document.activeElement.textContent")


def tab_to(page, wanted):
    """Press Tab until a control is reached, at most through the whole page; what was passed."""
    passed = []
    for _ in range(150):
        page.keyboard.press("Tab")
        passed.append(here(page))
        if passed[-1] == wanted:
            return passed
    raise AssertionError(passed)


def test_an_order_is_refused_mended_and_saved_with_nothing_but_a_keyboard(page):
    tab_to(page, "kind")
    assert page.evaluate("getComputedStyle(document.activeElement).outlineStyle") == "solid"
    page.keyboard.type("Straight")  # a list is chosen from by the letters of its entries
    arrived(page, "straight_skirt")
    tab_to(page, "fill")
    page.keyboard.press("Enter")
    tab_to(page, "m-waist_girth")
    page.keyboard.press("ControlOrMeta+a")
    page.keyboard.type("twenty")
    page.keyboard.press("Enter")
    page.wait_for_selector(REFUSED)
    assert here(page) == "trouble"
    assert page.locator("#trouble").get_attribute("role") == "alert"
    spoken = page.locator("#trouble").inner_text()
    assert "The order has to be changed" in spoken
    assert "Waist girth: Write a number" in spoken
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    assert here(page) == "m-waist_girth"
    told = page.locator("#m-waist_girth").evaluate(
        "input => input.getAttribute('aria-describedby').split(' ')"
        ".map((id) => document.getElementById(id).textContent)"
    )
    assert told[0].startswith("Write a number")
    assert told[1].startswith("Tie a cord")
    page.keyboard.press("ControlOrMeta+a")
    page.keyboard.type("74")
    page.keyboard.press("Enter")
    page.wait_for_selector(READY)
    assert page.locator("[role=status]").inner_text().startswith("Sound")
    passed = tab_to(page, "paper")
    assert passed.index("Draft the pattern") < passed.index("paper")
    tab_to(page, "PDF")
    with page.expect_download() as saved:
        page.keyboard.press("Enter")
    assert saved.value.suggested_filename == "straight_skirt.pdf"
    assert all("422" in each for each in page.complaints)


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("path", ["", "measuring"])
def test_letters_stand_out_from_what_is_behind_them(server, started, path, scheme):
    """Contrast of 4.5 at the least, by WCAG 2.2, 1.4.3; luminance by its own formula."""
    with opened(started, color_scheme=scheme) as page:
        page.goto(server.address + path)
        if not path:
            page.wait_for_selector("#m-waist_girth")
        seen = page.evaluate(COLOURS)
    assert len(seen) >= 3
    for text, behind in seen:
        assert contrast(text, behind) >= 4.5, (text, behind)


COLOURS = """() => {
  const behind = (each) => {
    const colour = each ? getComputedStyle(each).backgroundColor : "rgb(0, 0, 0)";
    return colour.endsWith(", 0)") ? behind(each.parentElement) : colour;
  };
  const all = [...document.body.querySelectorAll("*")].filter((each) => each.offsetParent);
  const pairs = all.map((each) => [getComputedStyle(each).color, behind(each)]);
  return [...new Set(pairs.map((pair) => pair.join("|")))].map((pair) => pair.split("|"));
}"""


def contrast(one, other):
    shades = sorted(map(luminance, (one, other)))
    return (shades[1] + 0.05) / (shades[0] + 0.05)


def luminance(colour):
    parts = [int(part) / 255 for part in re.findall(r"\d+", colour)[:3]]
    linear = [p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts]
    return sum(weight * p for weight, p in zip((0.2126, 0.7152, 0.0722), linear, strict=True))


@pytest.mark.parametrize("language", ["en", "de", "pt"])
def test_a_narrow_screen_needs_no_scrolling_sideways_(server, started, language):
    narrow = {"width": 360, "height": 740}
    with opened(started, viewport=narrow, locale=language) as page:
        page.goto(server.address)
        page.wait_for_selector("#m-waist_girth")
        page.locator("#choices summary").click()
        page.locator("#order details").first.locator("summary").click()
        assert page.evaluate("document.documentElement.scrollWidth") <= 360
        overlaps = page.locator(".field:visible").evaluate_all(OVERLAPS)
        assert len(overlaps) > 20
        assert not any(overlaps)
        page.goto(server.address + "measuring")
        assert page.evaluate("document.documentElement.scrollWidth") <= 360


OVERLAPS = """fields => fields.map((field) => {
  const words = document.createRange();
  words.selectNodeContents(field.querySelector("label"));
  const boxes = [words, field.querySelector("input, select")];
  const [a, b] = boxes.map((each) => each.getBoundingClientRect());
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
})"""


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
