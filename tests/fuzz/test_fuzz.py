"""What fuzzing starts from and what it has found, tried again; and a short search.

The long search is by hand: `python tests/fuzz/fuzz.py orders -max_total_time=600`.
"""

from __future__ import annotations

import importlib.util
import subprocess
import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parent))

from targets import TARGETS, labels, orders

HERE = Path(__file__).parent
FOUND = sorted((HERE / "found").glob("*"))


@pytest.mark.parametrize("name", TARGETS)
def test_what_a_search_starts_from_does_no_harm(name):
    target, seeds = TARGETS[name]
    assert seeds
    for seed in seeds:
        target(seed)


@pytest.mark.parametrize("path", FOUND, ids=lambda path: path.name)
@pytest.mark.parametrize("target", [orders, labels])
def test_what_a_search_has_found_does_no_harm_any_more(path, target):
    target(path.read_bytes())


@pytest.mark.slow
@pytest.mark.skipif(
    importlib.util.find_spec("atheris") is None, reason="atheris is not installed here"
)
@pytest.mark.parametrize("name", TARGETS)
def test_a_short_search_finds_nothing(name, tmp_path):
    done = subprocess.run(  # noqa: S603 - our own script
        [sys.executable, str(HERE / "fuzz.py"), name, "-max_total_time=20"],
        cwd=tmp_path,
        check=False,
        capture_output=True,
        text=True,
    )
    assert done.returncode == 0, done.stderr[-3000:]
