"""What recording costs: drafting with the draft sheet's memory against drafting without it.

Run it by hand: python tests/benchmarks/recording.py [kind]. Bound: 15 % of the drafting time.

Without memory means: lengths are plain floats once they have been used, points keep no moves, lines
no directions, and the sheet no steps. Both ways draw the same lines, which is checked. The drafts
take turns, so that a busy machine slows both alike; the least computing times are compared. The
steps that take the pieces from the draft are made for a draft sheet only, and cost nothing here.
"""

from __future__ import annotations

import gc
import sys
import time
from contextlib import contextmanager
from pathlib import Path
from unittest.mock import patch

sys.path.insert(0, str(Path(__file__).parents[2]))

from drafting.body import Body
from drafting.craft.sheet import DraftSheet
from drafting.garments import GARMENTS
from drafting.trace import Bearing, Length, Place
from drafting.trace.length import Length as _Length

ROUNDS = 100


class Forgetful(DraftSheet):
    """A sheet that keeps nothing."""

    def _add(self, *_args, **_kwargs) -> None:
        pass


def _moved(self: Place, x: float, y: float, _verb: str, *_operands) -> Place:
    return Place(x, y, self.name)


def _turned(self: Bearing, vector) -> Bearing:
    return Bearing(vector, "along")


def _plain(operation):
    def reckoned(self: Length, other: float) -> Length:
        return _Length(operation(float(self), float(other)), "")

    return reckoned


PLAIN = {
    "__add__": lambda a, b: a + b,
    "__radd__": lambda a, b: b + a,
    "__sub__": lambda a, b: a - b,
    "__rsub__": lambda a, b: b - a,
    "__mul__": lambda a, b: a * b,
    "__rmul__": lambda a, b: b * a,
    "__truediv__": lambda a, b: a / b,
}


@contextmanager
def forgetting():
    """Values without memory."""
    patches = [patch.object(Place, "_moved", _moved), patch.object(Bearing, "to", _turned)]
    patches += [patch.object(Length, name, _plain(op)) for name, op in PLAIN.items()]
    for each in patches:
        each.start()
    try:
        yield
    finally:
        for each in patches:
            each.stop()


def timed(draw, body, spec, sheet) -> tuple[float, object]:
    start = time.process_time()
    pattern = draw(body, spec, sheet)
    return time.process_time() - start, pattern


def outlines(pattern) -> list:
    return [[(s.start.x, s.start.y) for s in p.outline.segments] for p in pattern.pieces]


def cost(kind: str, rounds: int = ROUNDS) -> tuple[float, float, int]:
    """Least seconds with memory and without, and how many steps were recorded."""
    garment = GARMENTS[kind]
    body, spec = Body.of(dict(garment.sample)), garment.spec(kind=kind)
    with_memory, without, steps = [], [], 0
    gc.collect()
    gc.disable()
    for _ in range(rounds):
        sheet = DraftSheet()
        seconds, remembered = timed(garment.draw, body, spec, sheet)
        with_memory.append(seconds)
        steps = len(sheet.steps)
        with forgetting():
            seconds, forgotten = timed(garment.draw, body, spec, Forgetful())
        without.append(seconds)
        assert outlines(remembered) == outlines(forgotten)
    gc.enable()
    return min(with_memory), min(without), steps


def main() -> None:
    for kind in sys.argv[1:] or GARMENTS:
        long, short, steps = cost(kind)
        share = (long - short) / long
        told = f"{long * 1000:.2f} ms, without memory {short * 1000:.2f} ms"
        print(f"{kind}: {steps} steps, {told}: {share:.1%}")  # noqa: T201 - a command prints


if __name__ == "__main__":
    main()
