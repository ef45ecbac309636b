"""Which edges are sewn together, and with how much ease."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Copy = Literal["left", "right", "each", "both"]
EaseKind = Literal["none", "ease", "stretch", "gathers"]


@dataclass(frozen=True, slots=True)
class SeamPart:
    """One edge's place in a side of a seam.

    Attributes:
        piece: Name of the piece.
        edge: Name of its edge.
        copy: Which copies take part: the left or the right of a pair, `each` (the seam is sewn
            once per copy, like to like: a left and a right seam), or `both` (left and right lie
            in the same side of one seam).
        count: How many copies lie in that side.
        reversed: Whether the edge runs against the seam's direction.
    """

    piece: str
    edge: str
    copy: Copy = "each"
    count: int = 1
    reversed: bool = False


@dataclass(frozen=True, slots=True)
class Ease:
    """By how much side one is longer than side two on purpose, in cm: wanted, and the bounds."""

    kind: EaseKind = "none"
    wanted: float = 0.0
    low: float = 0.0
    high: float = 0.0


NO_EASE = Ease()


@dataclass(frozen=True, slots=True)
class Seam:
    """Two sides that are sewn together; each a list of edges, in sewing order.

    The pattern lists its seams in the order in which they are sewn; corners of the cutting line
    are squared to the seam that is sewn first.
    """

    name: str
    one: tuple[SeamPart, ...]
    two: tuple[SeamPart, ...]
    ease: Ease = NO_EASE
