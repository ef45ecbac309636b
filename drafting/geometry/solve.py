"""Find the number that brings a measured quantity to a wanted one."""

from __future__ import annotations

from collections.abc import Callable


def root(
    f: Callable[[float], float], low: float, high: float, accuracy: float = 1e-9
) -> float | None:
    """A zero of a continuous function between two bounds; None where it has no change of sign.

    Illinois variant of the false position: keeps its bracket, and needs some eight calls where
    halving needs thirty (Dowell and Jarratt 1971).

    Args:
        f: The function.
        low: One bound.
        high: The other bound.
        accuracy: How near to zero f must come, or how narrow the bracket must get.
    """
    a, b = low, high
    fa, fb = f(a), f(b)
    if fa == 0:
        return a
    if fb == 0:
        return b
    if (fa > 0) == (fb > 0):
        return None
    for _ in range(200):
        c = b - fb * (b - a) / (fb - fa)
        fc = f(c)
        if abs(fc) < accuracy or abs(b - a) < accuracy:
            return c
        if (fc > 0) != (fb > 0):
            a, fa = b, fb
        else:
            fa /= 2
        b, fb = c, fc
    return b
