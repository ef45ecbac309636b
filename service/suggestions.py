"""The name that was probably meant."""

from __future__ import annotations

from difflib import get_close_matches
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable

LONGEST_NAME = 60
"""Characters; longer texts are no slip of the keyboard."""


def did_you_mean(name: object, names: Iterable[str]) -> str:
    """A question to put behind a refusal, with a space before it; "" where nothing is near.

    >>> did_you_mean("waist", ["waist_girth", "hip_girth"])
    " Did you mean 'waist_girth'?"
    >>> did_you_mean("zzz", ["waist_girth"])
    ''
    """
    if not isinstance(name, str) or len(name) > LONGEST_NAME:
        return ""
    plain = name.strip().lower().replace("-", "_").replace(" ", "_")
    near = get_close_matches(plain, list(names), 1, 0.6)
    return f" Did you mean {near[0]!r}?" if near else ""
