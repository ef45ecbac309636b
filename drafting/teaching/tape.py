"""Lengths as a tape shows them.

Source: a tape is read to half a millimetre, in inches to sixteenths on short lengths and to
eighths on long ones; whole and reduced fraction, never decimals: common practice, no source.
"""

from __future__ import annotations

from fractions import Fraction

from babel.numbers import format_decimal

from drafting.drawing import Unit
from drafting.language import Language

SHORT = 25.4
"""Up to 10 in (cm) a length is read to 1/16 in, beyond it to 1/8 in."""


def on_tape(cm: float, unit: Unit, language: Language = "en") -> str:
    """A length with its unit: "25.75 cm", "10 1/8 in"; with a comma where the language has one."""
    return f"{figures(cm, unit, language)} {unit}"


def figures(cm: float, unit: Unit, language: Language = "en") -> str:
    """A length without its unit: to half a millimetre, or to 1/16 or 1/8 in."""
    if unit == "cm":
        return format_decimal(round(float(cm) * 20) / 20 + 0.0, "0.##", locale=language)
    parts = 16 if abs(cm) <= SHORT else 8
    return _mixed(Fraction(round(float(cm) / 2.54 * parts), parts))


def smallest(cm: float, unit: Unit) -> float:
    """The smallest division (cm) to which a length is told."""
    if unit == "cm":
        return 0.05
    return 2.54 / (16 if abs(cm) <= SHORT else 8)


def _mixed(inches: Fraction) -> str:
    sign = "-" if inches < 0 else ""
    whole, rest = divmod(abs(inches), 1)
    if not rest:
        return f"{sign}{whole}"
    return f"{sign}{whole} {rest}" if whole else f"{sign}{rest}"
