"""The garment chapters as pages: each names its source and speaks a cutter's words."""

import ast
import re
from pathlib import Path

import pytest

import drafting

ROOT = Path(drafting.__file__).parent
PAGES = sorted(p for room in ("garments", "craft", "body") for p in (ROOT / room).rglob("*.py"))
SOURCE = re.compile(r"Sources?\b|common practice|from memory|house method|no source", re.IGNORECASE)
ENGINEERS = re.compile(
    r"\b(segments?|deltas?|comput\w+|iterat\w+|parameters?|cubics?|solved|algorithm\w*)\b",
    re.IGNORECASE,
)


def name(page: Path) -> str:
    return page.relative_to(ROOT).with_suffix("").as_posix()


@pytest.mark.parametrize("page", PAGES, ids=name)
def test_every_page_names_its_source(page):
    assert SOURCE.search(page.read_text()), "no source, no common practice, nothing from memory"


@pytest.mark.parametrize("page", PAGES, ids=name)
def test_no_page_speaks_an_engineers_words(page):
    tree = ast.parse(page.read_text())
    said = [
        node.value
        for node in ast.walk(tree)
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and " " in node.value
    ]
    assert [m.group() for text in said for m in ENGINEERS.finditer(text)] == []
