"""Bytes that no one would write, against the parser of orders and the way of a label.

    python tests/fuzz/fuzz.py orders -max_total_time=600
    python tests/fuzz/fuzz.py labels -max_total_time=600

Needs atheris, which is not among the test's packages: it comes for few versions of Python. What it
finds is written to the folder it is started in; keep it in `tests/fuzz/found/`, where
`test_fuzz.py` tries it ever after.
"""

from __future__ import annotations

import sys
from pathlib import Path

import atheris

with atheris.instrument_imports(include=["service", "drafting.drawing", "drafting.export"]):
    from targets import TARGETS


def main() -> None:
    """Search until told to stop; a find ends it."""
    name = sys.argv.pop(1)
    target, seeds = TARGETS[name]
    folder = Path("corpus") / name
    folder.mkdir(parents=True, exist_ok=True)
    for number, seed in enumerate(seeds):
        (folder / f"seed{number}").write_bytes(seed)
    atheris.Setup([*sys.argv, str(folder)], target)
    atheris.Fuzz()


if __name__ == "__main__":
    main()
