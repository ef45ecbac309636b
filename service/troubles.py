"""Troubles of the craft as problems, told in the order's unit. The craft knows no HTTP."""

from __future__ import annotations

import math
import re
from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING

from drafting.body import MEASURES
from drafting.errors import (
    ClashError,
    ConstructionError,
    DraftingError,
    MeasurementError,
    OutputError,
    SpecError,
)
from drafting.language import (
    decimal,
    inch,
    page_text,
    phrase,
    refusal_text,
    refused,
    say,
    with_lengths,
)
from service.lengths import CM, in_words, reword, told, told_limits
from service.option_words import called, titled
from service.problems import ProblemError, Trouble, in_short, pointer

if TYPE_CHECKING:
    from collections.abc import Callable

    from drafting.language import Language

Parts = tuple[str, ...]

ANSWERS: dict[type[DraftingError], str] = {
    DraftingError: "invalid-order",
    ConstructionError: "cannot-draft",
}
"""Which problem each trouble is, looked up along its ancestry, so that a new child inherits."""

ANSWERS_BY_CODE: dict[str, str] = {"unusual_body": "unusual-body"}
"""Troubles that are told apart by their code, before their class is asked."""

ROOTS: dict[type[DraftingError], str] = {
    MeasurementError: "measurements",
    SpecError: "garment",
    OutputError: "output",
}
"""The part of the order that a bare name stands in, by the class of the trouble."""

PARTS = frozenset(
    {
        "measurements",
        "garment",
        "finish",
        "output",
        "reference",
        "figure",
        "cloths",
        "laying",
        "sheet",
    }
)
"""Where a dotted path starts that speaks of the whole order, or of a whole lay plan."""


def drafting_problem(
    error: DraftingError, unit: str, is_length: Callable[[Parts], bool], language: Language = "en"
) -> ProblemError:
    """The problem for a trouble of the craft and all that it carries.

    Args:
        error: The trouble; lengths in cm.
        unit: The order's unit, in which it is told.
        is_length: Whether the field at a path of the order is a length.
        language: Of the details, where the catalogue has the sentence.
    """
    each = (error, *error.also)
    troubles = tuple(_told_of(e, unit, is_length, language) for e in each)
    headers = {"Content-Language": language}
    return ProblemError(answer(error), in_short(troubles), troubles, headers=headers)


def _told_of(
    error: DraftingError, unit: str, is_length: Callable[[Parts], bool], language: Language
) -> Trouble:
    """The trouble told in a language, two options that clash by what people call them."""
    parts = path(error)
    told_in = unit if not parts or is_length(parts) else "cm"
    message = _without_idle_hint(error, unit)
    trouble = Trouble(
        pointer=pointer(parts),
        code=error.code,
        detail=reword(message, unit),
        received=_told(error.received, told_in),
        allowed=_told(error.allowed, told_in),
    )
    text = refusal_text(EXCLUDE, language) if isinstance(error, ClashError) else None
    if text is None or not isinstance(error, ClashError):
        return _whole(trouble, message, unit, language) or _by_code(trouble, error.where, language)
    one, other = (_option_told(*each, language) for each in error.pair)
    why = page_text(error.why, language)
    return replace(trouble, detail=text.format(one=one, other=other, why=why))


_HINT = re.compile(r' It would fit if it were \w+: send "unit": "(\w+)"\.')


def _without_idle_hint(error: DraftingError, unit: str) -> str:
    """The message, without the hint at another unit where the number as sent does not fit in it."""
    hint = _HINT.search(error.message)
    match error.received, error.allowed:
        case float() | int() as value, (float() | int() as low, float() | int() as high) if hint:
            fits = low <= value / CM[unit] * CM[hint[1]] <= high
            return error.message if fits else error.message.replace(hint[0], "")
    return error.message


EXCLUDE = "exclude_each_other"
"""Under this name the catalogues say that two options clash."""


def _option_told(option: str, value: object, language: Language) -> str:
    match value:
        case bool():
            word = page_text("yes" if value else "no", language)
        case float() | int():
            word = decimal(float(value), language)
        case _:
            word = called(option, str(value), language)
    return f"{titled(option, language)} ({word})"


def in_language(trouble: Trouble, where: str, language: Language) -> Trouble:
    """The trouble told in a language: its own sentence, else that of its code, else as it is.

    Args:
        trouble: In English; where a code's sentence needs its words, they follow.
        where: The measure, option or step at fault.
        language: Of the sentence.
    """
    whole = _whole(trouble, trouble.detail, "cm", language)
    return whole or _by_code(trouble, where, language)


def _whole(trouble: Trouble, message: str, unit: str, language: Language) -> Trouble | None:
    """The trouble with its own sentence in a language, lengths told in a unit; None without one."""
    text = refused(message, language, partial(_named, language=language))
    if text is None:
        return None
    told = with_lengths(text, lambda cm: _named(in_words(cm, unit), language))
    return replace(trouble, detail=_POINT.sub(",", told))


_POINT = re.compile(r"(?<=\d)\.(?=\d)")
TITLES = {name: m.title for m in MEASURES.values() for name in (m.name, m.word)}
"""Of measures, by their names and by the short words that formulas use."""
_INCHES = re.compile(r"[\d /-]+ in")
_STEP = re.compile(r"[a-z]+( [a-z']+)+")
"""Names of steps are words with blanks, those of options and their values are not."""


def _named(part: str, language: Language) -> str:
    """What stands in a gap: measures and pieces by their titles, inches by their word, steps."""
    if part in TITLES or part[:1].isupper():
        return say(TITLES.get(part, part), language)
    if _INCHES.fullmatch(part):
        return part.replace("in", inch(language))
    return phrase(part, language) if _STEP.fullmatch(part) else part


def _by_code(trouble: Trouble, where: str, language: Language) -> Trouble:
    """The trouble told by its code's sentence in a language; as it is where there is none."""
    text = refusal_text(trouble.code, language)
    if text is None:
        return trouble
    told = {
        "where": _called(trouble.pointer, where, language),
        "message": trouble.detail,
        "received": _in_words(trouble.received, language),
        "allowed": _in_words(trouble.allowed, language),
    }
    return replace(trouble, detail=text.format(**told))


def _called(at: str, where: str, language: Language) -> str:
    """What people call a measure or an option; a name as it is where it is neither."""
    name = where.rpartition(".")[2]
    if at.startswith("/garment/"):
        return titled(name, language)
    return say(MEASURES[name].title, language) if name in MEASURES else where


def _in_words(value: object, language: Language) -> str:
    match value:
        case float() | int():
            return decimal(float(value), language)
        case [float() | int() as low, float() | int() as high]:
            return f"{_in_words(low, language)} – {_in_words(high, language)}"
        case list():
            return ", ".join(_in_words(each, language) for each in value)
        case None:
            return "–"
        case _:
            return str(value)


def answer(error: DraftingError) -> str:
    """Code of the problem that a trouble is."""
    by_class = next(ANSWERS[c] for c in type(error).__mro__ if c in ANSWERS)
    return ANSWERS_BY_CODE.get(error.code, by_class)


def path(error: DraftingError) -> Parts:
    """Where in the order the field stands that a trouble names; () where it names a step."""
    if not error.where or isinstance(error, ConstructionError):
        return ()
    parts = tuple(error.where.split("."))
    if parts[0] in PARTS:
        return parts
    root = next((ROOTS[c] for c in type(error).__mro__ if c in ROOTS), None)
    return (root, *parts) if root else ()


def _told(value: object, unit: str) -> object:
    match value:
        case None | bool() | str():
            return value
        case float() | int():
            return told(float(value), unit)
        case (float() | int() | None as low, float() | int() | None as high):
            lowest = -math.inf if low is None else float(low)
            return told_limits(lowest, math.inf if high is None else float(high), unit)
        case list() | tuple():
            return [str(name) for name in value]
        case _:
            return str(value)
