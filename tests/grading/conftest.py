"""Trousers over three sizes, drafted and nested once for all tests."""

from __future__ import annotations

import pytest

from drafting.body import size_body
from drafting.drawing import Output
from drafting.garments import GARMENTS
from drafting.grading import SizeRange, nested_svg, size_range
from drafting.pattern import Finish

NAMES = ("84-regular", "88-regular", "92-regular", "96-regular")


@pytest.fixture(scope="session")
def trousers() -> SizeRange:
    garment = GARMENTS["trousers"]
    bodies = tuple((name, size_body("women", name)) for name in NAMES)
    return size_range(garment, bodies, garment.spec(kind="trousers"), Finish())


@pytest.fixture(scope="session")
def nested(trousers) -> bytes:
    return nested_svg(trousers, Output())
