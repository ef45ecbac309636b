"""Troubles of the craft as problems, told in the order's unit. The craft knows no HTTP."""

from __future__ import annotations

from dataclasses import replace
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
from drafting.language import decimal, page_text, refusal_text, say
from service.lengths import reword, told, told_limits
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
    troubles = tuple(_in_words_of(_trouble(e, unit, is_length), e, language) for e in each)
    headers = {"Content-Language": language}
    return ProblemError(answer(error), in_short(troubles), troubles, headers=headers)


def _in_words_of(trouble: Trouble, error: DraftingError, language: Language) -> Trouble:
    """The trouble told in a language, two options that clash by what people call them."""
    text = refusal_text(EXCLUDE, language) if isinstance(error, ClashError) else None
    if text is None or not isinstance(error, ClashError):
        return in_language(trouble, error.where, language)
    one, other = (_option_told(*each, language) for each in error.pair)
    why = page_text(error.why, language)
    return replace(trouble, detail=text.format(one=one, other=other, why=why))


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
    """The trouble told by its code's sentence in a language; as it is where there is none.

    Args:
        trouble: In English; where a sentence needs its words, they follow.
        where: The measure, option or step at fault.
        language: Of the sentence.
    """
    text = refusal_text(trouble.code, language)
    if text is None:
        return trouble
    name = where.rpartition(".")[2]
    told = {
        "where": say(MEASURES[name].title, language) if name in MEASURES else where,
        "message": trouble.detail,
        "received": _in_words(trouble.received, language),
        "allowed": _in_words(trouble.allowed, language),
    }
    return replace(trouble, detail=text.format(**told))


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


def _trouble(error: DraftingError, unit: str, is_length: Callable[[Parts], bool]) -> Trouble:
    parts = path(error)
    told_in = unit if not parts or is_length(parts) else "cm"
    return Trouble(
        pointer=pointer(parts),
        code=error.code,
        detail=reword(error.message, told_in),
        received=_told(error.received, told_in),
        allowed=_told(error.allowed, told_in),
    )


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
        case (float() | int() as low, float() | int() as high):
            return told_limits(float(low), float(high), unit)
        case list() | tuple():
            return [str(name) for name in value]
        case _:
            return str(value)
