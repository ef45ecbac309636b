"""A number of centimetres that knows its formula."""

from __future__ import annotations

from fractions import Fraction
from typing import Literal, Self

Operator = Literal["+", "-", "*", "/", "larger", "smaller"]
Expression = tuple[Operator, "float | Length", "float | Length"]


class Length(float):
    """A length in cm that remembers the arithmetic it came from.

    `Length(94, "hip")` is named; sums, differences, products and quotients of lengths and numbers
    are lengths again. Everything else (`abs`, `math`) gives a plain float back.

    >>> hip = Length(94, "hip")
    >>> step = hip / 12 + 1.5
    >>> round(step, 2), step.formula
    (9.33, '1/12 hip + 1.5 cm')
    >>> ((hip - Length(68, "waist")) / 4).formula
    '1/4 (hip - waist)'
    """

    __slots__ = ("how",)

    how: str | Expression | None

    def __new__(cls, value: float, how: str | Expression | None = None) -> Self:
        """Make a length of `value` cm; `how` is its name or its expression."""
        self = super().__new__(cls, value)
        self.how = how
        return self

    def __reduce__(self) -> tuple[type[Length], tuple[float, str | Expression | None]]:
        return Length, (float(self), self.how)

    def __add__(self, other: float) -> Length:
        return Length(float(self) + float(other), ("+", self, other))

    def __radd__(self, other: float) -> Length:
        return Length(float(other) + float(self), ("+", other, self))

    def __sub__(self, other: float) -> Length:
        return Length(float(self) - float(other), ("-", self, other))

    def __rsub__(self, other: float) -> Length:
        return Length(float(other) - float(self), ("-", other, self))

    def __mul__(self, other: float) -> Length:
        return Length(float(self) * float(other), ("*", self, other))

    def __rmul__(self, other: float) -> Length:
        return Length(float(other) * float(self), ("*", other, self))

    def __truediv__(self, other: float) -> Length:
        return Length(float(self) / float(other), ("/", self, other))

    @property
    def formula(self) -> str:
        """The arithmetic in the trade's words: "1/4 hip + 0.5 cm"; a plain number is "3 cm"."""
        return _words(self)

    def with_numbers(self) -> str:
        """The same formula with this body's numbers in place of the names."""
        return _words(self, numbers=True)


def larger(a: float, b: float) -> Length:
    """The larger of two lengths, remembered as such."""
    return Length(max(float(a), float(b)), ("larger", a, b))


def smaller(a: float, b: float) -> Length:
    """The smaller of two lengths, remembered as such."""
    return Length(min(float(a), float(b)), ("smaller", a, b))


def number(value: float) -> str:
    """A number as one writes it by hand: at most two decimals, no trailing zeros, no minus zero."""
    text = f"{float(value):.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _words(
    value: float, *, numbers: bool = False, inner: bool = False, factor: bool = False
) -> str:
    how = value.how if isinstance(value, Length) else None
    if how is None:
        return number(value) if factor else f"{number(value)} cm"
    if isinstance(how, str):
        return f"{number(value)} cm" if numbers else how
    sign, a, b = how
    if sign in ("+", "-"):
        # a subtracted sum needs its brackets; an added one does not
        right = _words(b, numbers=numbers, inner=sign == "-")
        text = f"{_words(a, numbers=numbers)} {sign} {right}"
        return f"({text})" if inner else text
    if sign in ("larger", "smaller"):
        return f"the {sign} of {_words(a, numbers=numbers)} and {_words(b, numbers=numbers)}"
    return _product(sign, a, b, numbers=numbers)


def _product(sign: str, a: float, b: float, *, numbers: bool) -> str:
    if sign == "/" and not _remembers(b):
        share = _fraction(1 / float(b))
        return f"{share} {_words(a, numbers=numbers, inner=True)}"
    if sign == "*" and _remembers(a) != _remembers(b):
        many, what = (b, a) if _remembers(a) else (a, b)
        return f"{_fraction(float(many))} {_words(what, numbers=numbers, inner=True)}"
    mark = "×" if sign == "*" else "÷"
    left, right = (_words(v, numbers=numbers, inner=True) for v in (a, b))
    return f"{left} {mark} {right}"


def _remembers(value: float) -> bool:
    return isinstance(value, Length) and value.how is not None


def _fraction(share: float) -> str:
    exact = Fraction(share).limit_denominator(64)
    if abs(float(exact) - share) < 1e-9 and exact.denominator > 1:
        return f"{exact.numerator}/{exact.denominator}"
    return f"{number(share)} ×"
