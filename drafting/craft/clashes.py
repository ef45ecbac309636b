"""Options that exclude each other: a table of pairs, and the refusal that names both.

Source: house method.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Any

from drafting.errors import ClashError

Test = Callable[[Any], bool]


def among(*values: object) -> Test:
    """Whether an option is one of these."""
    return lambda value: value in values


def chosen(value: object) -> bool:
    """Whether an option was chosen at all."""
    return value not in (None, 0, False, ())


def given(value: object) -> bool:
    """Whether an option was given a value, be it nought."""
    return value is not None


def other_than(*usual: object) -> Test:
    """Whether an option is none of these."""
    return lambda value: value not in usual


@dataclass(frozen=True, slots=True)
class Clash:
    """Two options that exclude each other: for which values, and why."""

    option: str
    this: Test
    other: str
    that: Test
    why: str


def refuse_clashes(cut: object, clashes: Iterable[Clash]) -> None:
    """Look for a pair of options that exclude each other.

    Raises:
        ClashError: There is one; it names both options.
    """
    for clash in clashes:
        this, that = getattr(cut, clash.option), getattr(cut, clash.other)
        if clash.this(this) and clash.that(that):
            raise ClashError(
                f"{clash.option} {_told(this)} and {clash.other} {_told(that)} exclude each other. "
                f"{clash.why} Change one of them.",
                where=f"garment.{clash.option}",
                pair=((clash.option, this), (clash.other, that)),
                why=clash.why,
            )


def _told(value: object) -> str:
    match value:
        case str():
            return f'"{value}"'
        case float():
            return f"{value:g}"
        case _:
            return str(value).lower()
