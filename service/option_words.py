"""What people call a garment's options and the values that can be chosen."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from drafting.language import known_page_text, page_text

if TYPE_CHECKING:
    from drafting.language import Language

Schema = dict[str, Any]

OTHERWISE: dict[str, str] = {
    "a_line": "A-line",
    "french": "French",
    "v": "V",
    "womens": "women's",
    "mens": "men's",
    "mens_block": "men's block",
}
"""Values whose words are not their name with blanks."""


def tell(schema: Schema, language: Language) -> None:
    """Put a spec's JSON Schema into a language, as far as its catalogue goes."""
    for option in (schema, *schema["properties"].values()):
        if "description" in option:
            option["description"] = page_text(option["description"], language)
        if "title" in option:
            option["title"] = page_text(option["title"], language, "option")


def choices(schema: Schema, language: Language) -> dict[str, dict[str, str]]:
    """Of each option that has a list of values, what each value is called."""
    found = {
        name: {str(value): called(name, str(value), language) for value in values_of(option)}
        for name, option in schema["properties"].items()
        if name != "kind"
    }
    return {name: words for name, words in found.items() if words}


def titled(option: str, language: Language) -> str:
    """What people call an option."""
    return page_text(option.replace("_", " ").title(), language, "option")


def called(option: str, value: str, language: Language) -> str:
    """What people call a value of an option."""
    word = OTHERWISE.get(value, value.replace("_", " "))
    own = known_page_text(f"{option}: {word}", language, "choice") if language != "en" else None
    return own or page_text(word, language, "choice")


def values_of(option: Schema) -> list[str | int]:
    """The values that an option lists."""
    return [value for each in (option, *option.get("anyOf", ())) for value in _listed(each)]


def _listed(option: Schema) -> list[str | int]:
    return [*option.get("enum", ()), *([option["const"]] if "const" in option else [])]
