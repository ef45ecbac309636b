"""The lines of a DXF block, written as they stand in the file: a code and a value in turn.

A general library makes an object of every point before it writes it; a pattern has thousands.
What a block holds here are points, lines, polylines and texts of DXF R12 (from memory: the format's
published reference), and the tests read all of it with such a library.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable

Spot = tuple[float, float]
"""X and y in mm."""


class Tags:
    """What stands in one block.

    Args:
        handle: Gives each thing in the document a number of its own, in hexadecimal.
    """

    def __init__(self, handle: Callable[[], str]) -> None:
        self._handle = handle
        self._parts: list[str] = []

    def point(self, layer: str, at: Spot, thickness: float = 0.0, angle: float = 0.0) -> None:
        """A point; thickness in mm and angle in degrees where they are not nought."""
        self._parts.append(f"{self._head('POINT', layer)}{_spot(at)}{_told(39, thickness)}")
        self._parts.append(_told(50, angle))

    def line(self, layer: str, start: Spot, end: Spot) -> None:
        """A straight line."""
        self._parts.append(f"{self._head('LINE', layer)}{_spot(start)}{_spot(end, 1)}")

    def polyline(self, layer: str, points: Iterable[Spot], *, closed: bool) -> None:
        """Straight lines through points."""
        head, end = self._head("POLYLINE", layer), self._head("SEQEND", layer)
        self._parts.append(f"{head} 66\n1\n{_spot((0.0, 0.0))} 70\n{int(closed)}\n")
        self._parts += [f"{self._head('VERTEX', layer)}{_spot(at)} 70\n0\n" for at in points]
        self._parts.append(end)

    def text(self, layer: str, text: str, at: Spot, height: float, angle: float) -> None:
        """A line of text; height in mm, angle in degrees."""
        head = f"{self._head('TEXT', layer)}{_spot(at)} 40\n{height}\n  1\n{text}\n"
        self._parts.append(f"{head}{_told(50, angle)}")

    def written(self) -> str:
        """Everything, in the order in which it was told."""
        return "".join(self._parts)

    def _head(self, kind: str, layer: str) -> str:
        return f"  0\n{kind}\n  5\n{self._handle()}\n  8\n{layer}\n"


def filled(document: str, blocks: dict[str, str]) -> str:
    """A document of empty blocks with the lines of each put in behind its head.

    Raises:
        ValueError: The document has no block of a name.
    """
    parts: list[str] = []
    for name, lines in blocks.items():
        head = f"  3\n{name}\n  1\n\n"
        at = document.index(head) + len(head)
        parts += [document[:at], lines]
        document = document[at:]
    return "".join([*parts, document])


def _spot(at: Spot, more: int = 0) -> str:
    x, y = at
    return f" {10 + more}\n{x}\n {20 + more}\n{y}\n {30 + more}\n0.0\n"


def _told(code: int, value: float) -> str:
    return f" {code}\n{value}\n" if value else ""
