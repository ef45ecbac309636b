"""What recording costs: drafting on the draft sheet against drafting on scrap paper.

Run it by hand: python tests/benchmarks/recording.py [kind]. Bound: 15 % of the drafting time. Only
a draft sheet pays it.

Both ways draw the same lines, which is checked. The drafts take turns, so that a busy machine slows
both alike; the least computing times are compared. The steps that take the pieces from the draft
are made for a draft sheet only, and are not in it.
"""

from __future__ import annotations

import gc
import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

from drafting.body import Body
from drafting.garments import GARMENTS
from drafting.workroom import draft

ROUNDS = 100
MOST = 0.15
"""Greatest share of the drafting time."""


def cost(kind: str, rounds: int = ROUNDS) -> tuple[float, float, int]:
    """Least seconds with the steps and without, and how many steps were recorded."""
    garment = GARMENTS[kind]
    body, spec = Body.of(dict(garment.sample)), garment.spec(kind=kind)
    took: dict[bool, list[float]] = {True: [], False: []}
    made = {}
    gc.collect()
    gc.disable()
    for _ in range(rounds):
        for steps, seconds in took.items():
            began = time.process_time()
            made[steps] = draft(garment, body, spec, steps=steps)
            seconds.append(time.process_time() - began)
    gc.enable()
    assert made[True][0] == made[False][0]
    return min(took[True]), min(took[False]), len(made[True][1])


def main() -> int:
    kept = True
    for kind in sys.argv[1:] or GARMENTS:
        long, short, steps = cost(kind)
        share = (long - short) / long
        kept = kept and share <= MOST
        told = f"{long * 1000:.2f} ms, on scrap paper {short * 1000:.2f} ms"
        print(f"{kind}: {steps} steps, {told}: {share:.1%} (at most {MOST:.0%})")  # noqa: T201 - a command prints
    return 0 if kept else 1


if __name__ == "__main__":
    sys.exit(main())
