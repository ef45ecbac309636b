"""Which format an answer takes: `?format=`, then the order's `output.format`, then `Accept`."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING, Protocol, TypeVar

from service.problems import ProblemError, Trouble
from service.suggestions import did_you_mean

if TYPE_CHECKING:
    from collections.abc import Iterable

_RANGE = re.compile(
    r"\s*(?P<kind>\*|[\w.!#$&^+-]+)/(?P<sub>\*|[\w.!#$&^+-]+)\s*(?P<rest>(?:;[^;]*)*)", re.ASCII
)
_WEIGHT = re.compile(r";\s*q\s*=\s*([01](?:\.\d{0,3})?)\s*(?:;|$)", re.ASCII | re.IGNORECASE)

LONGEST_ACCEPT = 2000
"""Characters of an Accept header that are read."""


class Offered(Protocol):
    """A format that can be made."""

    @property
    def name(self) -> str:
        """What orders call it."""
        ...

    @property
    def media_type(self) -> str:
        """What headers call it."""
        ...


F = TypeVar("F", bound=Offered)


@dataclass(frozen=True, slots=True)
class MediaRange:
    """One entry of an Accept header."""

    kind: str
    sub: str
    weight: float

    def closeness(self, media_type: str) -> int:
        """0 where it does not cover the type; else 1 for */*, 2 for kind/*, 3 for the type."""
        kind, sub = media_type.split("/", 1)
        if (self.kind, self.sub) == ("*", "*"):
            return 1
        if self.kind != kind or self.sub not in ("*", sub):
            return 0
        return 2 if self.sub == "*" else 3


def ranges(accept: str | None) -> tuple[MediaRange, ...]:
    """The entries of an Accept header; everything where there is none that can be read.

    >>> [(r.kind, r.sub, r.weight) for r in ranges("image/*;q=0.5, application/pdf")]
    [('image', '*', 0.5), ('application', 'pdf', 1.0)]
    """
    texts = (accept or "").lower()[:LONGEST_ACCEPT].split(",")
    found = tuple(_range(m) for text in texts if (m := _RANGE.fullmatch(text)))
    return found or (MediaRange("*", "*", 1.0),)


def _range(found: re.Match[str]) -> MediaRange:
    weight = _WEIGHT.search(found["rest"])
    return MediaRange(found["kind"], found["sub"], min(float(weight[1]), 1.0) if weight else 1.0)


def preferred(accept: str | None, media_types: Iterable[str]) -> str | None:
    """The media type that the header likes best; the first of equals; None where it has none.

    >>> preferred("image/*", ["application/json", "image/svg+xml"])
    'image/svg+xml'
    >>> preferred("*/*", ["application/json", "image/svg+xml"])
    'application/json'
    """
    asked = ranges(accept)
    weighed = [(_weight(asked, media_type), media_type) for media_type in media_types]
    best = max(weighed, key=lambda pair: pair[0], default=(0.0, None))
    return best[1] if best[0] > 0 else None


def _weight(asked: tuple[MediaRange, ...], media_type: str) -> float:
    closest = max(asked, key=lambda r: r.closeness(media_type))
    return closest.weight if closest.closeness(media_type) else 0.0


def chosen(query: str | None, output: str | None, accept: str | None, formats: Iterable[F]) -> F:
    """The format to answer in.

    Args:
        query: Value of `?format=`.
        output: The order's `output.format`.
        accept: The Accept header.
        formats: What can be made; the first is the default.

    Raises:
        ProblemError: not-acceptable.
    """
    offered = tuple(formats)
    name = output if query is None else query
    if name is None:
        asked = preferred(accept, (each.media_type for each in offered))
        found = next((each for each in offered if each.media_type == asked), None)
    else:
        found = next((each for each in offered if each.name == name), None)
    if found is None:
        raise _not_acceptable(name, offered)
    return found


def _not_acceptable(name: str | None, offered: tuple[Offered, ...]) -> ProblemError:
    names = [each.name for each in offered]
    detail = f"What can be made: {', '.join(names)}.{did_you_mean(name, names)}"
    trouble = Trouble(
        pointer="/output/format",
        code="unknown_format",
        detail=detail,
        received=name,
        allowed=[*names, *(each.media_type for each in offered)],
    )
    return ProblemError("not-acceptable", detail, (trouble,))
