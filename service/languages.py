"""Which language an answer speaks: `output.language`, then `Accept-Language`, then English.

Where there is no order, `?language=` stands in its place.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Annotated, Any

from fastapi import Depends, Header, Query
from pydantic.json_schema import SkipJsonSchema

from drafting.language import LANGUAGES as SPOKEN
from drafting.language import Language
from service.problems import ProblemError

if TYPE_CHECKING:
    from starlette.requests import Request

LANGUAGES: dict[str, Language] = {name: name for name in SPOKEN}
DEFAULT: Language = "en"
OWN_NAMES: dict[Language, str] = {
    "en": "English",
    "fr": "Français",
    "de": "Deutsch",
    "es": "Español",
    "it": "Italiano",
    "pt": "Português",
}
"""What each language calls itself. Source: the Unicode CLDR, with a capital."""

LONGEST = 1000
"""Characters of the header that are read."""

_RANGE = re.compile(r"\s*([A-Za-z]{1,8}|\*)(?:-[\w-]*)?\s*(?:;\s*q\s*=\s*([01](?:\.\d{0,3})?)\s*)?")

LanguageHeader = Annotated[
    str | SkipJsonSchema[None],
    Header(
        alias="Accept-Language",
        description="Language of texts where the order's `output.language` names none: "
        f"{', '.join(LANGUAGES)}; English where the header has none of them.",
        json_schema_extra={"example": "fr-CA, fr;q=0.9, en;q=0.5"},
    ),
]
"""For routes that take it; the reference tells it by this."""


def preferred_language(accept: str | None) -> Language:
    """The language that an Accept-Language header likes best, of those that are spoken here.

    Only the first part of a tag counts: fr-CA is French. What is not spoken, and what cannot be
    read, is passed over.

    >>> preferred_language("ja, fr-CA;q=0.8, de;q=0.9")
    'de'
    >>> preferred_language("ja")
    'en'
    """
    best, weight = DEFAULT, 0.0
    for text in (accept or "")[:LONGEST].split(","):
        found = _RANGE.fullmatch(text)
        name = found and (DEFAULT if found[1] == "*" else LANGUAGES.get(found[1].lower()))
        if found and name and float(found[2] or 1) > weight:
            best, weight = name, float(found[2] or 1)
    return best


def language_of(request: Request) -> Language:
    """What a request's header asks for."""
    return preferred_language(request.headers.get("accept-language"))


LanguageQuery = Annotated[
    str | SkipJsonSchema[None],
    Query(
        description="Language of the answer's texts; goes before Accept-Language.",
        json_schema_extra={"enum": [*LANGUAGES]},
    ),
]


def asked_language(
    language: LanguageQuery = None, accept_language: LanguageHeader = None
) -> Language:
    """What an address asks for, else the header.

    Raises:
        ProblemError: not-found; the address names a language that is not spoken here.
    """
    if language is None:
        return preferred_language(accept_language)
    if language not in LANGUAGES:
        raise ProblemError("not-found", f"There is no such language. All: {', '.join(LANGUAGES)}.")
    return LANGUAGES[language]


LanguageDep = Annotated[Language, Depends(asked_language)]
"""For routes without an order."""


def named_language(raw: Any) -> Language:
    """The language that decoded JSON of a request names; English where it names none."""
    output = raw.get("output") if isinstance(raw, dict) else None
    name = output.get("language") if isinstance(output, dict) else None
    return LANGUAGES.get(name, DEFAULT) if isinstance(name, str) else DEFAULT


def spoken(raw: Any, language: Language) -> Any:
    """Decoded JSON of a request, told to speak a language where it does not name one itself."""
    if language == DEFAULT or not isinstance(raw, dict):
        return raw
    output = raw.get("output", {})
    if not isinstance(output, dict) or "language" in output:
        return raw
    return {**raw, "output": {**output, "language": language}}
