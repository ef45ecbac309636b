"""Lengths as clients write and read them: numbers in the order's unit, or inches with fractions."""

from __future__ import annotations

import math
import re
import unicodedata
from fractions import Fraction
from functools import partial
from typing import Literal

from drafting.language import with_lengths

Unit = Literal["cm", "mm", "in"]

CM: dict[str, float] = {"cm": 1.0, "mm": 0.1, "in": 2.54}
"""Centimetres in one of each unit."""

LONGEST = 100_000.0
"""cm; more than any length in an order, and far from where floating point loses millimetres."""

LONGEST_TEXT = 32
"""Characters of a written length."""

PATTERN = (
    r"^[-−]?([0-9]{1,6}([.,][0-9]{1,6})?|([0-9]{1,6}[ -]?)?([0-9]{1,2}/[0-9]{1,2}|[½¼¾⅛⅜⅝⅞]))"
    r' ?("|″|in|inch|inches)?$'
)
"""What a written length looks like, for the API reference."""

_WRITTEN = re.compile(
    r"(?P<sign>[-−]?)"
    r"(?:(?P<whole>[0-9]{1,6})(?:[.,](?P<decimals>[0-9]{1,6}))?"
    r"|(?:(?P<inches>[0-9]{1,6})[ -])?(?P<above>[0-9]{1,2})/(?P<below>[0-9]{1,2}))"
    r"\s?(?:\"|″|in|inch|inches)?"
)


def read_inches(text: str) -> float | None:
    """Inches from a text as a tape is read; None where it cannot be read.

    >>> [read_inches(t) for t in ("28 1/2", "28-1/2", "28½", '28 1/2"', "28,5", "1/2 in")]
    [28.5, 28.5, 28.5, 28.5, 28.5, 0.5]
    >>> read_inches("28 3/0"), read_inches("about 28")
    (None, None)
    """
    if len(text) > LONGEST_TEXT:
        return None
    found = _WRITTEN.fullmatch(_plain_fractions(text.strip()))
    return _value(found) if found else None


def _value(found: re.Match[str]) -> float | None:
    if found["whole"]:
        value = float(f"{found['whole']}.{found['decimals'] or 0}")
    else:
        above, below = int(found["above"]), int(found["below"])
        if not 0 < above < below:
            return None
        value = int(found["inches"] or 0) + above / below
    return -value if found["sign"] else value


def _plain_fractions(text: str) -> str:
    """The text with each one-character fraction written out: "28½" becomes "28 1/2"."""
    return "".join(_written_out(c) for c in text).replace("  ", " ").strip()


def _written_out(character: str) -> str:
    if not unicodedata.decomposition(character).startswith("<fraction>"):
        return character
    return " " + unicodedata.normalize("NFKC", character).replace("\N{FRACTION SLASH}", "/")


def to_cm(value: float, unit: Unit) -> float | None:
    """Centimetres of a number in a unit; None where it is no length at all."""
    number = float(value) if abs(value) < LONGEST * 10 else math.inf
    length = number * CM[unit]
    return length if abs(length) <= LONGEST else None


def told(cm: float, unit: str) -> float:
    """A length in the unit, to a thousandth (a hundredth of a millimetre in mm)."""
    return round(cm / CM[unit], 3)


def told_limits(low: float, high: float, unit: str) -> list[float | None]:
    """Limits in the unit, rounded inward, so that a value within them passes; None for no limit.

    >>> told_limits(2.54, math.inf, "in")
    [1.0, None]
    """
    thousandth = CM[unit] / 1000
    lowest, highest = low / thousandth - 1e-6, high / thousandth + 1e-6
    return [
        math.ceil(lowest) / 1000 if math.isfinite(low) else None,
        math.floor(highest) / 1000 if math.isfinite(high) else None,
    ]


def in_words(cm: float, unit: str) -> str:
    """A length for a sentence: "72.5 cm", "725 mm", or inches to the nearest eighth.

    >>> in_words(72.5, "cm"), in_words(72.5, "mm"), in_words(72.39, "in"), in_words(45, "in")
    ('72.5 cm', '725 mm', '28 1/2 in', '17 3/4 in')
    """
    if unit == "in":
        return f"{_eighths(cm / CM['in'])} in"
    return f"{round(cm / CM[unit], 1):g} {unit}"


def _eighths(inches: float) -> str:
    sign = "-" if inches <= -1 / 16 else ""
    whole, eighths = divmod(round(abs(inches) * 8), 8)
    part = str(Fraction(eighths, 8)) if eighths else ""
    return sign + (" ".join(p for p in (str(whole) if whole or not part else "", part) if p))


def reword(text: str, unit: str) -> str:
    """A sentence of the craft, which speaks in cm, in the order's unit.

    >>> reword("The waist must be 45 to 220 cm.", "in")
    'The waist must be 17 3/4 in to 86 5/8 in.'
    """
    return text if unit == "cm" else with_lengths(text, partial(in_words, unit=unit))
