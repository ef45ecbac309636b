"""How a process that drafts looks for waste: seldom, and not in what it was built of."""

from __future__ import annotations

import gc
from contextlib import contextmanager
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

SELDOM = (25_000, 10, 10)
"""Values made before waste is looked for, and how often in older ones: an order makes some thirty
thousand values, nearly all of which are gone with it without a search."""


@contextmanager
def built_to_stay() -> Iterator[None]:
    """While a process is built, all that is made stays: no waste is looked for, then or later."""
    gc.disable()
    try:
        yield
    finally:
        gc.enable()
        settle()


def settle() -> None:
    """Call it once everything is loaded: what is there then is never thrown away."""
    gc.freeze()
    gc.set_threshold(*SELDOM)
