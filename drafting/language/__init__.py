"""The languages of sheets and answers: a catalogue each, keyed by the English text.

The catalogues are gettext files (`fr.po`, `de.po`), which translators' tools can edit. What a
catalogue lacks stays English. Two words of it are doubtful in the trade and print with their
English beside them; see `DOUBTFUL`.
"""

from __future__ import annotations

from dataclasses import fields, is_dataclass, replace
from functools import cache
from importlib.resources import files
from typing import Any, Literal, TypeVar, cast

from babel.messages.pofile import read_po
from babel.numbers import format_decimal

Language = Literal["en", "fr", "de"]

DOUBTFUL: dict[str, frozenset[str]] = {
    "fr": frozenset({"Pocket side piece"}),
    "de": frozenset({"Pocket side piece", "Toile"}),
}
"""Terms that a glossary from memory is not sure of: they print with the English beside them."""

Words = TypeVar("Words")


@cache
def _catalogue(language: Language) -> dict[tuple[str, str], str]:
    """All texts of a language by context and English text."""
    with files("drafting.language").joinpath(f"{language}.po").open("rb") as file:
        read = read_po(file, locale=language)
    return {
        (message.context or "", str(message.id)): str(message.string)
        for message in read
        if message.id and message.string
    }


def say(text: str, language: Language) -> str:
    """The text in a language; as it is where the catalogue does not have it."""
    if language == "en":
        return text
    said = _catalogue(language).get(("", text), text)
    return f"{said} ({text})" if text in DOUBTFUL[language] and said != text else said


def decimal(value: float, language: Language) -> str:
    """A number with at most one decimal, as the language writes it; never grouped."""
    return format_decimal(round(value, 1), "0.#", locale=language)


def finding_text(code: str, language: Language) -> str | None:
    """The sentence for a finding's code, or for the family it begins with; None where none is."""
    if language == "en":
        return None
    family = code.split("_", maxsplit=1)[0]
    catalogue = _catalogue(language)
    return catalogue.get(("finding", code)) or catalogue.get(("finding", family))


def translated(words: Words, language: Language) -> Words:
    """A table of words with every text said in a language; a field named `language` tells which."""
    if not is_dataclass(words):
        raise TypeError("a table of words is a dataclass")
    told = {
        f.name: language if f.name == "language" else _said(getattr(words, f.name), language)
        for f in fields(words)
    }
    return cast("Words", replace(cast("Any", words), **told))


def _is_named(value: Any) -> bool:
    """Whether it is a stable name and its word."""
    return (
        isinstance(value, tuple)
        and len(value) == 2
        and all(isinstance(v, str) for v in value)
        and value[0].isidentifier()
    )


def _said(value: Any, language: Language) -> Any:
    if isinstance(value, str):
        return say(value, language)
    if isinstance(value, dict):
        return {k: _said(v, language) for k, v in value.items()}
    if _is_named(value):
        return value[0], _said(value[1], language)
    return tuple(_said(v, language) for v in value) if isinstance(value, tuple) else value
