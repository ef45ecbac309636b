"""The languages of sheets and answers: a catalogue each, keyed by the English text.

The catalogues are gettext files, one for each language, which translators' tools can edit. French
and German have every text of a pattern; Spanish, Italian and Portuguese have the words at the
cutting table: pieces, lines, labels, cautions of printing, measures. Draft sheets have catalogues
of their own, `fr_draft.po` and `de_draft.po`; so have the pages that people read, `fr_pages.po` and
the others. What a catalogue lacks stays English. Words that are
doubtful in the trade print with their English beside them; see `DOUBTFUL`.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import fields, is_dataclass, replace
from functools import cache, lru_cache, partial
from importlib.resources import files
from typing import Any, Generic, Literal, TypeVar, cast, get_args

from babel.dates import format_date, parse_date
from babel.messages.pofile import read_po
from babel.numbers import format_decimal
from babel.units import format_unit

Language = Literal["en", "fr", "de", "es", "it", "pt"]
LANGUAGES: tuple[Language, ...] = get_args(Language)

TAUGHT: frozenset[Language] = frozenset({"en", "fr", "de"})
"""Languages in which a draft is taught; a draft sheet in another one is told in English."""

FLY = ("Fly facing", "Fly shield")

DOUBTFUL: dict[str, frozenset[str]] = {
    "fr": frozenset({"Pocket side piece", "pocketing", "Total crotch length", "Upper chest girth"}),
    "de": frozenset({"Pocket side piece", "pocketing", "Toile", "Ease", "Upper chest girth"}),
    "es": frozenset(
        {*FLY, "Pocket side piece", "pocketing", "Total crotch length", "Upper chest girth"}
    ),
    "it": frozenset(
        {*FLY, "Pocket side piece", "Pocket facing", "pocketing", "Ease", "Upper chest girth"}
    ),
    "pt": frozenset(
        {*FLY, "Pocket side piece", "Pocket facing", "pocketing", "Front facing", "Back facing"}
        | {"Total crotch length", "Upper chest girth", "Across back width"}
    ),
}
"""Terms that a glossary from memory is not sure of: they print with the English beside them."""

Words = TypeVar("Words")

_IN_CM = re.compile(r"(-?\d+(?:\.\d+)?)(?:( to | and )(-?\d+(?:\.\d+)?))? cm\b")


@cache
def _catalogue(language: Language) -> dict[tuple[str, str], str]:
    """All texts of a language by context and English text, but for those of draft sheets."""
    return _read(language, language)


@cache
def _draft_catalogue(language: Language) -> dict[tuple[str, str], str]:
    """The same with those of draft sheets: read only where one is asked for."""
    return {**_read(language, f"{language}_draft"), **_catalogue(language)}


@cache
def _page_catalogue(language: Language) -> dict[tuple[str, str], str]:
    """The same with those of pages: read only where one is asked for."""
    return {**_read(language, f"{language}_pages"), **_catalogue(language)}


def _read(language: Language, name: str) -> dict[tuple[str, str], str]:
    with files("drafting.language").joinpath(f"{name}.po").open("rb") as file:
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


def page_text(text: str, language: Language, context: str = "") -> str:
    """A text of the pages, of garments and of measures in a language; English where it has none.

    Args:
        text: In English.
        language: Of the answer.
        context: Where a word needs it: "option" and "choice" for those of a garment, "problem"
            for titles of problems.
    """
    return known_page_text(text, language, context) or text


def known_page_text(text: str, language: Language, context: str = "") -> str | None:
    """The same, but None where the language does not have it."""
    if language == "en":
        return text
    said = _page_catalogue(language).get((context, text))
    return f"{said} ({text})" if said and text in DOUBTFUL[language] else said


def phrase(text: str, language: Language) -> str:
    """A text of a draft in a language: as the catalogue has it, or put together of what it has.

    A phrase with gaps ("trued {0}") says all texts that fit it; what stands in the gaps is said
    in its turn. A text that cannot be said whole stays English.
    """
    taught = taught_in(language)
    return text if taught == "en" else _phrased(text, taught) or text


def taught_in(language: Language) -> Language:
    """The language in which a draft sheet is told where one is asked for."""
    return language if language in TAUGHT else "en"


@lru_cache(maxsize=8192)
def _phrased(text: str, language: Language) -> str | None:
    said = _draft_catalogue(language).get(("", text))
    if said is not None:
        return f"{said} ({text})" if text in DOUBTFUL[language] else said
    if NUMBER.fullmatch(text):
        return text.replace(".", ",")
    for shape, told in _shapes(language):
        found = shape.fullmatch(text)
        if found is not None:
            parts = {gap: _phrased(part, language) for gap, part in found.groupdict().items()}
            if all(part is not None for part in parts.values()):
                return told.format(*(parts[f"_{i}"] for i in range(len(parts))))
    return None


NUMBER = re.compile(r"-?\d+(\.\d+)?")
PHRASE = "phrase"
"""Context of the catalogues' entries that are phrases with gaps, {0} and {1}."""


@cache
def _shapes(language: Language) -> tuple[tuple[re.Pattern[str], str], ...]:
    """The phrases as what they match and how they are said: sentences, what is listed, names."""
    catalogue = _draft_catalogue(language).items()
    phrases = [(text, said) for (context, text), said in catalogue if context == PHRASE]
    phrases.sort(key=lambda p: (_rank(p[0]), -len(GAP.sub("", p[0])), p[0]))
    return tuple((re.compile(_shape(text)), said) for text, said in phrases)


def _rank(text: str) -> int:
    """Whole sentences come first, then what a comma or a colon parts, then names."""
    if len(GAP.sub("", text).split()) >= SENTENCE:
        return 0
    return 1 if PARTED.match(text) else 2


def _shape(text: str) -> str:
    """A phrase as what it matches, each gap by its number."""
    words = GAP.split(text)
    gaps = (f"(?P<_{part}>.+?)" if i % 2 else re.escape(part) for i, part in enumerate(words))
    return "".join(gaps)


SENTENCE = 3
"""A phrase of so many words beside its gaps is a sentence."""
PARTED = re.compile(r"\{0\} ?[^\w\s]")
GAP = re.compile(r"\{(\d)\}")


def day(iso: str, language: Language) -> str:
    """A day, given as 2026-11-25, as the language writes it out: "25. November 2026"."""
    return format_date(parse_date(iso, "en", "yyyy-MM-dd"), "long", locale=language)


@cache
def inch(language: Language) -> str:
    """The short word for inches: in, po, pol."""
    return format_unit("1", "length-inch", "short", locale=language).removeprefix("1").strip()


def with_lengths(sentence: str, told: Callable[[float], str]) -> str:
    """A sentence of the craft, which speaks in cm, with each of its lengths told another way.

    >>> with_lengths("Take 45 to 220 cm.", lambda cm: f"{10 * cm:g} mm")
    'Take 450 mm to 2200 mm.'
    """
    return _IN_CM.sub(lambda found: _lengths(found, told), sentence)


def _lengths(found: re.Match[str], told: Callable[[float], str]) -> str:
    first, joined, second = found.groups()
    return told(float(first)) + (joined + told(float(second)) if second else "")


UNCOUNTED = 1e15


def decimal(value: float, language: Language) -> str:
    """A number with at most one decimal, as the language writes it; never grouped.

    One that is too large to count anything is written by its powers of ten.
    """
    if abs(value) >= UNCOUNTED:
        return f"{value:g}"
    return format_decimal(round(value, 1), "0.#", locale=language)


def finding_text(code: str, language: Language) -> str | None:
    """The sentence for a finding's code, or for the family it begins with; None where none is."""
    return _sentence("finding", code, language)


def refusal_text(code: str, language: Language) -> str | None:
    """The sentence for a refusal's code; None where none is."""
    return _sentence("refusal", code, language)


def refused(message: str, language: Language, named: Callable[[str], str]) -> str | None:
    """A refusal of the craft in a language, whole; None where the catalogue does not have it.

    Args:
        message: In English; phrases with gaps ({0}) under the context "refused" say all that fit.
        language: Of the answer.
        named: What people call a measure or a value that stands in a gap.
    """
    for shape, told in _refusals(language):
        found = shape.fullmatch(message)
        if found is not None:
            gaps = {gap: refused(part, language, named) for gap, part in found.groupdict().items()}
            parts = (gaps[f"_{i}"] or named(found[f"_{i}"]) for i in range(len(gaps)))
            return told.format(*parts)
    return None


@cache
def _refusals(language: Language) -> tuple[tuple[re.Pattern[str], str], ...]:
    """What refusals match and how they are said, those with the most words of their own first."""
    if language == "en":
        return ()
    catalogue = _page_catalogue(language).items()
    phrases = [(text, said) for (context, text), said in catalogue if context == REFUSED]
    phrases.sort(key=lambda p: (-len(GAP.sub("", p[0])), p[0]))
    return tuple((re.compile(_shape(text)), said) for text, said in phrases)


REFUSED = "refused"
"""Context of the catalogues' entries that are refusals with gaps, {0} and {1}."""


def _sentence(context: str, code: str, language: Language) -> str | None:
    if language == "en":
        return None
    catalogue, words = _catalogue(language), code.split("_")
    keys = ((context, "_".join(words[:count])) for count in range(len(words), 0, -1))
    return next((catalogue[key] for key in keys if key in catalogue), None)


class InEveryLanguage(Mapping[Language, Words], Generic[Words]):
    """A table of words by language, said in each when it is first asked for.

    What a catalogue lacks stays English.
    """

    def __init__(self, english: Words) -> None:
        self._said = cache(partial(translated, english))

    def __getitem__(self, language: Language) -> Words:
        if language not in LANGUAGES:
            raise KeyError(language)
        return self._said(language)

    def __iter__(self) -> Iterator[Language]:
        return iter(LANGUAGES)

    def __len__(self) -> int:
        return len(LANGUAGES)


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
