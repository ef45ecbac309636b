"""The same order gives the same bytes, in this process and in any other."""

import hashlib
import os
import subprocess
import sys
from pathlib import Path

import pytest

from drafting.drawing import FormatName
from drafting.export import FORMATS

SCRIPT = """
import hashlib, sys
sys.path.insert(0, {here!r})
from conftest import draft
from drafting.drawing import Output
from drafting.export import FORMATS
work = draft()
for name, kind in FORMATS.items():
    print(name, hashlib.sha256(kind.write(work, Output())).hexdigest())
"""


@pytest.fixture(scope="module")
def elsewhere():
    """Digests from two processes that hash text differently."""
    here = Path(__file__).parent
    found = []
    for seed in ("1", "2"):
        run = subprocess.run(  # noqa: S603 - this interpreter, a script of its own
            [sys.executable, "-c", SCRIPT.format(here=str(here))],
            env={**os.environ, "PYTHONHASHSEED": seed},
            cwd=here.parents[1],
            capture_output=True,
            text=True,
            check=True,
        )
        found.append(dict(line.split() for line in run.stdout.splitlines()))
    return found


@pytest.mark.parametrize("name", FORMATS)
def test_every_process_writes_the_same_bytes(trousers, output, elsewhere, name):
    here = hashlib.sha256(FORMATS[name].write(trousers, output)).hexdigest()
    assert FORMATS[name].write(trousers, output) == FORMATS[name].write(trousers, output)
    assert [found[name] for found in elsewhere] == [here, here]


def test_the_table_of_formats_is_whole():
    assert set(FORMATS) == set(FormatName.__args__)
    for name, kind in FORMATS.items():
        assert (kind.name, kind.extension) == (name, name)
