"""How good lay plans are, and how soon: run by hand, `python tests/benchmarks/lay_plans.py`.

Prints, for each case, the wall time, the use of the cloth between the selvedges, the ratio to what
no lay can undercut, and whether the bound holds. Bounds: a pair of trousers on 150 cm, tops either
way, at least 73 % within 2 s (aim 77); four pairs of mixed sizes at least 78 % within 10 s (aim
82); a first valid plan within 0.5 s. The budget leaves what the plain arrangements take.
"""

from __future__ import annotations

import sys
import time
from pathlib import Path

sys.path[:0] = [str(Path(__file__).parents[2]), str(Path(__file__).parents[1] / "laying")]

from audit import audit  # noqa: E402 - found beside the tests
from orders import trousers  # noqa: E402

from drafting.laying import Cloth, Laying, lay  # noqa: E402

SIZES = (
    trousers("first"),
    trousers("second", waist_girth=66.0, hip_girth=92.0),
    trousers("third", waist_girth=82.0, hip_girth=108.0, outside_leg_length=106.0),
    trousers("fourth", waist_girth=90.0, hip_girth=114.0, outside_leg_length=104.0),
)

CASES = (
    ("one pair, 150 cm, two-way", SIZES[:1], {}, 1.3, 2.0, 73.0),
    ("four pairs, 150 cm, two-way", SIZES, {}, 8.5, 10.0, 78.0),
    ("first plan, one pair", SIZES[:1], {}, 0.0, 0.5, 0.0),
    ("one pair, 150 cm, one way", SIZES[:1], {"one_way": True}, 2.0, 3.0, 0.0),
    ("one pair, 150 cm, folded", SIZES[:1], {"folded": True}, 2.0, 3.0, 0.0),
    ("one pair, 140 cm", SIZES[:1], {"width": 140.0}, 2.0, 3.0, 0.0),
    ("one pair, 115 cm", SIZES[:1], {"width": 115.0}, 2.0, 3.0, 0.0),
    ("one pair, 90 cm", SIZES[:1], {"width": 90.0}, 2.0, 3.0, 0.0),
)


def main() -> None:
    """Lay each case once and print what came of it."""
    lay(SIZES[:1], {"main": Cloth()}, Laying(budget=0.0))  # imports and tables
    print(f"{'case':30} {'s':>6} {'use %':>6} {'ratio':>6} {'cm':>7}  engine   bounds")  # noqa: T201
    for name, works, cloth, budget, seconds, use in CASES:
        start = time.perf_counter()
        (plan,) = lay(works, {"main": Cloth(**cloth)}, Laying(budget=budget)).cloths
        taken = time.perf_counter() - start
        audit(plan, works)
        held = taken <= seconds and plan.use >= use
        print(  # noqa: T201
            f"{name:30} {taken:6.2f} {plan.use:6.1f} {plan.ratio:6.3f} {plan.length:7.1f}  "
            f"{plan.engine:8} {'held' if held else 'NOT HELD'} ({seconds:g} s, {use:g} %)"
        )


if __name__ == "__main__":
    main()
