"""Every example in a docstring is run and comes out as it says."""

from __future__ import annotations

import doctest
from importlib import import_module
from pathlib import Path as File

import pytest

ROOT = File(__file__).parents[1]
MODULES = [
    ".".join(file.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__")
    for room in ("drafting", "service")
    for file in sorted((ROOT / room).rglob("*.py"))
    if ">>>" in file.read_text()
]


@pytest.mark.parametrize("name", MODULES)
def test_the_examples_of_a_module_hold(name):
    result = doctest.testmod(import_module(name))
    assert result.failed == 0
