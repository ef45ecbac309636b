"""What the craft's own docstrings say about the fields of its specs."""

from __future__ import annotations

import inspect
import re
from typing import Any

_ENTRY = re.compile(r"^ {4}(?P<name>\w+): (?P<text>.*)$")


def summary(kind: type) -> str:
    """The docstring up to its first section, on one line."""
    text = (inspect.getdoc(kind) or "").partition("\nAttributes:")[0]
    return " ".join(text.split())


def attributes(kind: type) -> dict[str, str]:
    """Each entry of the docstring's section Attributes, on one line; inherited ones too.

    >>> from drafting.drawing import Output
    >>> attributes(Output)["paper"]
    "Paper of a PDF's pages."
    """
    found: dict[str, str] = {}
    for one in reversed(kind.__mro__):
        found |= _told(inspect.cleandoc(one.__doc__ or ""))
    return found


def _told(text: str) -> dict[str, str]:
    section = text.partition("\nAttributes:\n")[2]
    found: dict[str, str] = {}
    name = ""
    for line in section.splitlines():
        entry = _ENTRY.match(line)
        if entry:
            name = entry["name"]
            found[name] = entry["text"].strip()
        elif name and line.startswith("     "):
            found[name] += " " + line.strip()
    return found


def describe(schema: dict[str, Any], kind: type) -> None:
    """Put what the docstring of a type says into its JSON Schema."""
    schema["description"] = summary(kind)
    for name, text in attributes(kind).items():
        if name in schema.get("properties", {}):
            schema["properties"][name]["description"] = text
