"""Trousers, the choices: what goes with what, and what an option is where nobody chose it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from drafting.errors import SpecError
from drafting.garments.trousers.spec import Trousers

Test = Callable[[Any], bool]


def among(*values: object) -> Test:
    """Whether an option is one of these."""
    return lambda value: value in values


def chosen(value: object) -> bool:
    """Whether an option was chosen at all."""
    return value not in (None, 0, False, ())


def other_than(usual: object) -> Test:
    """Whether an option is not what it is by default."""
    return lambda value: value != usual


@dataclass(frozen=True, slots=True)
class Clash:
    """Two options that exclude each other: for which values, and why."""

    option: str
    this: Test
    other: str
    that: Test
    why: str


CLASHES = (
    Clash("inside_leg", chosen, "length", other_than("full"), "Both say where the leg ends."),
    Clash("hem_over_floor", other_than(2.0), "length", other_than("full"), "Both say where the leg ends."),
    Clash("hem_over_floor", other_than(2.0), "inside_leg", chosen, "Both say where the leg ends."),
    Clash("shoe_height", chosen, "length", other_than("full"), "A heel lengthens only a leg that reaches the shoe."),
    Clash("shoe_height", chosen, "inside_leg", chosen, "The inside leg is cut as long as it is ordered."),
    Clash("turn_ups", chosen, "hem", among("shaped"), "A turn-up is folded along a straight line."),
    Clash("turn_ups", chosen, "leg", among("flared"), "A flared hem is too bowed to be folded up."),
)
"""What excludes what."""


def settled(cut: Trousers) -> Trousers:
    """The options, each of them settled.

    Raises:
        SpecError: Two options exclude each other; it names both.
    """
    for clash in CLASHES:
        this, that = getattr(cut, clash.option), getattr(cut, clash.other)
        if clash.this(this) and clash.that(that):
            raise SpecError(
                f"{clash.option} {_told(this)} and {clash.other} {_told(that)} exclude each other. {clash.why} Change one of them.",
                where=f"garment.{clash.option}", received=this,
            )
    return cut


def _told(value: object) -> str:
    return f'"{value}"' if isinstance(value, str) else f"{value:g}" if isinstance(value, float) else str(value).lower()
