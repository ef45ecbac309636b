"""A number of centimetres that knows its formula."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, Self

from drafting.trace.saying import as_it_is

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
        self = float.__new__(cls, value)
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
        return said(self)

    def with_numbers(self) -> str:
        """The same formula with this body's numbers in place of the names."""
        return said(self, numbers=centimetres)


def bare(value: float) -> Length:
    """A plain number in a length's place: reckoned with, it remembers nothing and costs nothing.

    For drafts whose steps nobody will read; the sums come out the same.
    """
    return float(value)  # type: ignore[return-value] # nobody asks it for its formula


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


def centimetres(value: float) -> str:
    """A plain length in cm: "1.5 cm"."""
    return f"{number(value)} cm"


def said(
    value: float,
    show: Callable[[float], str] = centimetres,
    *,
    numbers: Callable[[float], str] | None = None,
    word: Callable[[str], str] = as_it_is,
) -> str:
    """The arithmetic of a length in words.

    Args:
        value: A length, with its memory if it has one.
        show: Writes a plain length in cm, one that the rule itself names.
        numbers: Writes the numbers for which names give way: "1/4 × 101 cm" for "1/4 hip"; names
            stay where it is not given.
        word: Says names and the words between them in a language.
    """
    if _parts(value, MOST_PARTS) >= MOST_PARTS:
        return show(value)
    return _Words(show, numbers, word).of(value)


MOST_PARTS = 120
"""A formula of more parts than this is told by its number: nobody reads it, and a length that goes
round in a search would grow without end."""


def _parts(value: float, most: int) -> int:
    """How many numbers and signs a formula has, counted up to `most`."""
    if not isinstance(value, Length) or not isinstance(value.how, tuple):
        return 1
    count = 1
    for part in value.how[1:]:
        count += _parts(part, most - count)
        if count >= most:
            return most
    return count


CHOSEN = {"larger": "the larger of {0} and {1}", "smaller": "the smaller of {0} and {1}"}
"""The words for one of two lengths."""

NOTHING = 5e-3
"""Less than this (cm) is not said: no pencil adds it."""


@dataclass(frozen=True, slots=True)
class _Words:
    """One way of putting arithmetic into words."""

    show: Callable[[float], str]
    numbers: Callable[[float], str] | None
    word: Callable[[str], str]

    def of(self, value: float, *, inner: bool = False) -> str:
        """A length in words; an `inner` one stands in brackets where it has several parts."""
        match value.how if isinstance(value, Length) else None:
            case None:
                return self.show(value)
            case str(name):
                return self.numbers(value) if self.numbers else self.word(name)
            case (("+" | "-") as sign, a, b):
                return self._sum(sign, a, b, inner=inner)
            case (("larger" | "smaller") as which, a, b):
                told = (self.of(a, inner=True), self.of(b, inner=True))
                text = self.word(CHOSEN[which]).format(*told)
                return f"({text})" if inner else text
            case _:
                return self._product(value)

    def _sum(self, sign: str, a: float, b: float, *, inner: bool) -> str:
        if not remembers(b) and abs(b) < NOTHING:
            return self.of(a, inner=inner)
        if not remembers(a) and abs(a) < NOTHING and sign == "+":
            return self.of(b, inner=inner)
        if not remembers(b) and b < 0:
            sign, b = {"+": "-", "-": "+"}[sign], -b
        # a subtracted sum needs its brackets; an added one does not
        text = f"{self.of(a)} {sign} {self.of(b, inner=sign == '-')}"
        return f"({text})" if inner else text

    def _product(self, value: float) -> str:
        factor, core = _shares(value)
        if isinstance(core, Length) and isinstance(core.how, tuple) and core.how[0] in "*/":
            sign, a, b = core.how
            mark = {"*": "×", "/": "÷"}[sign]
            return f"{self.of(a, inner=True)} {mark} {self.of(b, inner=True)}"
        if not remembers(core):
            return self.show(factor * float(core))
        if abs(factor - 1) < 1e-9:
            return self.of(core)
        times = self.numbers is not None and not (
            isinstance(core, Length) and isinstance(core.how, tuple)
        )
        share = share_words(factor)
        joint = " × " if times or share.isdecimal() or "." in share else " "
        return f"{share}{joint}{self.of(core, inner=True)}"


def remembers(value: float) -> bool:
    """Whether a value knows where it comes from."""
    return isinstance(value, Length) and value.how is not None


def _shares(value: float) -> tuple[float, float]:
    """The plain factor of a product, however it was multiplied up, and the length it shares."""
    match value.how if isinstance(value, Length) else None:
        case ("/" | "*", a, b) if not remembers(a) and not remembers(b):
            return 1.0, float(value)
        case ("/", a, b) if not remembers(b):
            factor, core = _shares(a)
            return factor / float(b), core
        case ("*", a, b) if remembers(a) != remembers(b):
            many, what = (b, a) if remembers(a) else (a, b)
            factor, core = _shares(what)
            return factor * float(many), core
    return 1.0, value


def share_words(share: float) -> str:
    """A plain factor as a fraction where it is a simple one: "1/4", "3/8", "0.1592"."""
    exact = Fraction(share).limit_denominator(64)
    simple = exact.numerator == 1 or exact.denominator <= 16
    if simple and abs(float(exact) - share) < 1e-9:
        return str(exact)
    return f"{share:.4f}".rstrip("0").rstrip(".")
