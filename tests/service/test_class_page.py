"""The page of a sewing class, in a real browser, on another origin than the service."""

from __future__ import annotations

import pytest
from asking import EXAMPLES
from browsing import browser, needs_browser
from serving import Server, handed_out

pytestmark = needs_browser


@pytest.fixture(name="address", scope="module")
def address_fixture():
    """Where the class keeps its page."""
    with handed_out(EXAMPLES) as address:
        yield address


@pytest.fixture(name="server", scope="module")
def server_fixture(tmp_path_factory, address):
    log = tmp_path_factory.mktemp("class") / "log"
    server = Server(log, TAPELINE_CORS_ORIGINS=address, TAPELINE_ORDER_SECONDS="60")
    try:
        server.wait()
        yield server
    finally:
        server.kill()


def test_a_class_embeds_a_pattern_and_steps_through_a_draft(address, server):
    with browser(viewport={"width": 1100, "height": 1300}) as page:
        page.goto(f"{address}/class.html?service={server.address.rstrip('/')}")
        page.wait_for_function("document.getElementById('count').textContent.startsWith('Step 1 ')")
        page.wait_for_function("document.getElementById('pattern').naturalWidth > 100")
        assert page.locator("#back").is_disabled()
        seen = {page.locator("#heading").inner_text()}
        for number in range(2, 8):
            page.get_by_role("button", name="Next step").click()
            assert page.locator("#count").inner_text().startswith(f"Step {number} of ")
            seen.add(page.locator("#heading").inner_text())
            page.wait_for_function("document.getElementById('picture').naturalWidth > 50")
        assert len(seen) == 7
        page.keyboard.press("ArrowLeft")
        assert page.locator("#count").inner_text().startswith("Step 6 of ")
        assert page.locator("#sentences").inner_text()
        page.get_by_role("button", name="Step back").focus()
        page.keyboard.press("Enter")
        assert page.locator("#count").inner_text().startswith("Step 5 of ")
        last = int(page.locator("#count").inner_text().rsplit(" ", 1)[1])
        told = page.evaluate("steps.flatMap(step => step.sentences)")
        assert any("103 cm" in each for each in told), "the outside leg, as it was ordered"
        page.evaluate("show(steps.length - 2)")
        page.get_by_role("button", name="Next step").focus()
        page.keyboard.press("Enter")
        assert page.evaluate("document.activeElement.id") == "back", "the keyboard is not lost"
        page.keyboard.press("ArrowRight")
        assert page.locator("#count").inner_text() == f"Step {last} of {last}"
        assert page.get_by_role("button", name="Next step").is_disabled()
        assert not page.complaints


def test_on_a_phone_the_draft_and_the_buttons_are_seen_together(address, server):
    with browser(viewport={"width": 360, "height": 740}) as page:
        page.goto(f"{address}/class.html?service={server.address.rstrip('/')}")
        page.keyboard.press("ArrowRight")  # before there are steps: nothing happens
        page.wait_for_function("document.getElementById('count').textContent.startsWith('Step 1 ')")
        page.evaluate("document.getElementById('picture').scrollIntoView()")
        for number in (2, 3, 4):
            page.get_by_role("button", name="Next step").click()
            assert page.locator("#count").inner_text().startswith(f"Step {number} of ")
            for name in ("#picture", "#back", "#on"):
                box = page.locator(name).bounding_box()
                assert box["y"] >= 0
                assert box["y"] + box["height"] <= 740
        assert page.evaluate("document.documentElement.scrollWidth") <= 360
        assert not page.complaints


def test_a_class_on_an_origin_that_is_not_named_is_told_so(address, tmp_path):
    server = Server(tmp_path / "log", TAPELINE_CORS_ORIGINS="https://class.example")
    try:
        server.wait()
        with browser() as page:
            page.goto(f"{address}/class.html?service={server.address.rstrip('/')}")
            page.wait_for_function("document.getElementById('trouble').textContent")
            assert page.get_by_role("alert").inner_text().startswith("No lesson today")
    finally:
        server.kill()
