"""What every chapter of the handbook declares about itself."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from drafting.body import Body
from drafting.craft.sheet import DraftSheet
from drafting.pattern import Pattern


@dataclass(frozen=True, slots=True)
class ValidRange:
    """Where a method is known to be good: a measure and its bounds in cm."""

    measure: str
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Symptom:
    """What is seen on the toile, what causes it, and what helps. Whole sentences.

    Attributes:
        symptom: What one sees.
        cause: What causes it.
        change: What is done on the pattern.
        low: Least usual amount in cm; negative for the opposite of the pin.
        high: Greatest usual amount in cm; both 0 where no amount can be told.
        pin: Name of the correction that the spec takes; empty where it takes none.
    """

    symptom: str
    cause: str
    change: str
    low: float
    high: float
    pin: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Garment:
    """One chapter: what it drafts, what it needs, and how it is drawn.

    Attributes:
        kind: Stable name in orders and addresses.
        title: Name on the pattern.
        summary: One or two sentences for the list of garments.
        spec: Frozen dataclass of its options; has a field `kind: Literal[kind]`, and lengths that
            carry the LENGTH marker of `drafting.pattern.allowance`.
        needs: Names of the measures without which it cannot be drafted.
        optional: Names of measures that it uses where they are given.
        pieces: Names of the pieces of the default options.
        valid: Where the method is known to be good.
        sources: Published titles, "common practice, no source", or "from memory: title".
        sample: Measures in cm of the reference body for the sample; an invented person.
        symptoms: What a fitter may see on the toile, with what helps.
        draw: Draws the garment on a sheet and puts the net pattern together.
    """

    kind: str
    title: str
    summary: str
    spec: type[Any]
    needs: tuple[str, ...]
    optional: tuple[str, ...] = ()
    pieces: tuple[str, ...]
    valid: tuple[ValidRange, ...] = ()
    sources: tuple[str, ...]
    sample: tuple[tuple[str, float], ...]
    symptoms: tuple[Symptom, ...] = ()
    draw: Callable[[Body, Any, DraftSheet], Pattern]
