"""Texts that clients may write on a pattern: any script, no markup, nothing unprintable."""

from __future__ import annotations

import unicodedata

from pydantic_core import PydanticCustomError

FORBIDDEN_KINDS = frozenset({"Cc", "Zl", "Zp", "Cs"})
"""Control characters, line and paragraph separators, halves of characters."""

TURNERS = frozenset("\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")
"""Characters that turn the direction of the text after them, so that it reads as something else."""


def refuse_unprintable(text: str) -> str:
    """The text itself.

    Raises:
        PydanticCustomError: It holds a character that no sheet can carry.
    """
    for place, character in enumerate(text):
        if _unprintable(character):
            raise PydanticCustomError(
                "unprintable_character",
                "Character {place} (U+{code}) cannot be printed: leave out control characters, "
                "line breaks and marks that turn the direction of text.",
                {"place": place + 1, "code": f"{ord(character):04X}"},
            )
    return text


def _unprintable(character: str) -> bool:
    return (
        unicodedata.category(character) in FORBIDDEN_KINDS
        or character in TURNERS
        or _is_noncharacter(ord(character))
    )


def _is_noncharacter(code: int) -> bool:
    return code & 0xFFFE == 0xFFFE or 0xFDD0 <= code <= 0xFDEF
