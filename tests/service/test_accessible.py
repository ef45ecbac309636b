"""The pages by the rules of another project and by what a browser hands to a screen reader.

Rules: WCAG 2.2, levels A and AA, as the general library axe-core tries them, and its own good
practices. The reference's page is a library's own and not ours to judge.
"""

from __future__ import annotations

import pytest
from asking import EXAMPLES
from axe_playwright_python.sync_playwright import Axe
from browsing import needs_browser, opened
from serving import Server, handed_out

pytestmark = needs_browser

RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]


@pytest.fixture(name="school", scope="module")
def school_fixture():
    """Where a class keeps its page."""
    with handed_out(EXAMPLES) as address:
        yield address


@pytest.fixture(name="server", scope="module")
def server_fixture(tmp_path_factory, school):
    log = tmp_path_factory.mktemp("accessible") / "log"
    server = Server(log, TAPELINE_ORDER_SECONDS="60", TAPELINE_CORS_ORIGINS=school)
    try:
        server.wait()
        yield server
    finally:
        server.kill()


def broken(page) -> list[str]:
    """The rules that a page breaks, each with the places where it does."""
    told = Axe().run(page, options={"runOnly": RULES}).response
    assert len(told["passes"]) > 15, "the rules were tried"
    found = [*told["violations"], *told["incomplete"]]
    return [f"{each['id']}: {[node['html'] for node in each['nodes']]}" for each in found]


def refused(page) -> None:
    page.locator("#fill").click()
    page.locator("#m-waist_girth").fill("wide")
    page.locator("button.main").click()
    page.wait_for_selector("#trouble:not([hidden])")


def drafted(page) -> None:
    page.locator("#m-waist_girth").fill("74")
    page.locator("button.main").click()
    page.wait_for_selector("#downloads:not([hidden])")


@pytest.mark.parametrize("language", ["en", "de"])
@pytest.mark.parametrize(
    "look",
    [
        {"viewport": {"width": 1200, "height": 900}},
        {"viewport": {"width": 360, "height": 740}, "color_scheme": "dark"},
    ],
    ids=["desk", "dark phone"],
)
def test_the_first_page_breaks_no_rule_empty_refused_or_drafted(server, started, language, look):
    with opened(started, **look) as page:
        page.goto(f"{server.address}?language={language}")
        page.wait_for_selector("#m-waist_girth")
        assert broken(page) == []
        refused(page)
        assert broken(page) == []
        drafted(page)
        assert broken(page) == []


@pytest.mark.parametrize("path", ["measuring", "measuring?language=fr", "problems/unsound-pattern"])
def test_the_other_pages_break_no_rule(server, started, path):
    with opened(started) as page:
        page.goto(server.address + path)
        assert broken(page) == []


def test_the_page_of_a_class_breaks_no_rule(server, started, school):
    with opened(started) as page:
        page.goto(f"{school}/class.html?service={server.address.rstrip('/')}")
        page.wait_for_function("document.getElementById('count').textContent.startsWith('Step 1 ')")
        page.wait_for_function("document.getElementById('picture').naturalWidth > 50")
        assert broken(page) == []


def spoken(page) -> list[dict]:
    """What the browser hands to a screen reader: role, name, description and state of each part."""
    session = page.context.new_cdp_session(page)
    session.send("Accessibility.enable")
    nodes = session.send("Accessibility.getFullAXTree")["nodes"]
    texts = {node["nodeId"]: node for node in nodes}

    def inside(node):
        own = node.get("name", {}).get("value", "") if not node.get("childIds") else ""
        return own + "".join(inside(texts[k]) for k in node.get("childIds", []) if k in texts)

    return [
        {
            "role": node["role"]["value"],
            "name": node.get("name", {}).get("value", ""),
            "about": node.get("description", {}).get("value", ""),
            "text": inside(node),
            **{each["name"]: each["value"].get("value") for each in node.get("properties", [])},
        }
        for node in nodes
        if not node.get("ignored")
    ]


def test_a_screen_reader_is_told_what_is_wrong_where_and_that_it_is_mended(server, started):
    with opened(started) as page:
        page.goto(server.address)
        page.wait_for_selector("#m-waist_girth")
        assert all(each["name"] for each in spoken(page) if each["role"] in ("textbox", "combobox"))
        refused(page)
        told = spoken(page)
        (alert,) = [each for each in told if each["role"] == "alert"]
        assert alert["focused"]
        assert "Waist girth" in alert["text"]
        (wrong,) = [each for each in told if each.get("invalid") not in (None, "false")]
        assert wrong["name"].startswith("Waist girth")
        reason = page.locator("#m-waist_girth-wrong").inner_text()
        assert reason
        assert reason in wrong["about"]
        drafted(page)
        told = spoken(page)
        assert not [each for each in told if each.get("invalid") not in (None, "false")]
        (status,) = [each for each in told if each["role"] == "status"]
        assert status["live"] == "polite"
        assert status["text"].startswith("Sound")
        pictures = [each["name"] for each in told if each["role"] == "image"]
        assert any(name.startswith("Trousers") for name in pictures)
