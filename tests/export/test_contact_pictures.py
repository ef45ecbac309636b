"""The pictures of every paper and view that are in the repository show what the service gives."""

import importlib.util
import json
import sys
from pathlib import Path

import pytest
from PIL import Image

PICTURES = Path(__file__).parents[2] / "openapi" / "pictures"


@pytest.fixture(scope="module")
def papers():
    spec = importlib.util.spec_from_file_location("contact_papers", PICTURES / "papers.py")
    module = importlib.util.module_from_spec(spec)
    sys.modules["contact_papers"] = module
    spec.loader.exec_module(module)
    return module


def test_every_paper_and_view_has_its_picture(papers):
    shown = {file.stem for file in (PICTURES / "papers").glob("*.png")}
    assert (
        shown == set(papers.VIEWS) == set(json.loads((PICTURES / "papers/made.json").read_text()))
    )
    for name in shown:
        with Image.open(PICTURES / "papers" / f"{name}.png") as picture:
            assert max(picture.size) >= 400
    assert {v.paper for v in papers.VIEWS.values()} == {
        *("a4", "a3", "a2", "a1", "a0", "letter", "legal", "tabloid", "a4-letter", "roll", "whole")
    }


@pytest.mark.slow
def test_the_pictures_are_fresh(papers):
    """Else run: python openapi/pictures/papers.py, and look at what moved."""
    made = papers.digests(papers.documents(papers.ordered()))
    assert made == json.loads((PICTURES / "papers" / "made.json").read_text())
