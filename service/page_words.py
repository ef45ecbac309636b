"""The words of the pages: what stands between double brackets in a page, and what its form says.

A page is told in a language text by text; a text that its catalogue lacks stays English and is
marked so. Gaps are written {title}; the form fills those of `FORM`, the others are filled here.
"""

from __future__ import annotations

import re
from functools import cache, partial
from html import escape
from importlib.resources import files
from string import Template
from typing import TYPE_CHECKING

from drafting.language import known_page_text, page_text

if TYPE_CHECKING:
    from drafting.language import Language

MARKED = re.compile(r'(?P<attribute>=")?\[\[(?P<text>.+?)\]\]')
GAP = re.compile(r"\{(\w+)\}")

FORM: dict[str, str] = {
    "sound": "Sound: every seam matches and every check has passed.",
    "sound_with_remarks": "Sound, with remarks: read them before you cut.",
    "unsound": "Not for cutting: a seam does not match or a check has failed.",
    "verdict": "{title}. {verdict}",
    "drawn": "{title}, drafted to these measures: all pieces, to scale",
    "earlier": "An earlier pattern, not of these measures.",
    "as_usual": "as usual",
    "true": "yes",
    "false": "no",
    "deg": "{title} (degrees)",
    "kg": "{title} (kg)",
    "at_field": "{field}: {message}",
    "no_number": "Write a number, such as 74 or 74.5.",
    "no_inches": "Write inches, such as 29, 29.5 or 29 1/2.",
    "filled": "Filled in with the measures of an invented person.",
    "drafting": "The pattern is being drafted.",
    "writing": "The file is being written: {format}",
    "written": "The file is written: {format}",
    "unauthorized": "A key is needed: this installation drafts for those who have one of its keys.",
    "busy": "Too many orders wait, or this one took too long. Send it again in a moment.",
    "failed": "The service cannot be reached, or has failed. Nothing was drafted.",
}
"""What the first page's form says by itself, by the names that `assets/landing.js` uses."""


@cache
def page_frame(name: str, language: Language) -> Template:
    """A page of `service/assets` in a language, its values still open."""
    text = (files("service") / "assets" / name).read_text("utf-8")
    return Template(MARKED.sub(partial(_told, language), text))


def _told(language: Language, found: re.Match[str]) -> str:
    text, attribute = found["text"], found["attribute"] or ""
    said = attribute + (page_text(text, language) if attribute else in_html(text, language))
    return GAP.sub(r"${\1}", said)


def in_html(text: str, language: Language) -> str:
    """A text in a language; marked as English where its catalogue lacks it."""
    said = known_page_text(text, language)
    return f'<span lang="en">{text}</span>' if said is None else said


def told(text: str, language: Language) -> str:
    """A text that holds no mark-up, in a language, as HTML."""
    said = known_page_text(text, language)
    return f'<span lang="en">{escape(text)}</span>' if said is None else escape(said)


def named(text: str, language: Language) -> str:
    """A text for an attribute or an option, which can hold no mark-up."""
    return escape(page_text(text, language))


def form_words(language: Language) -> str:
    """What the form says, as HTML for its script to read."""
    words = ((name, named(text, language)) for name, text in FORM.items())
    return "\n".join(f'<p data-name="{name}">{text}</p>' for name, text in words)
