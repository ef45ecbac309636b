"""A block of text: its lines broken to a breadth, with the size of the whole."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from drafting.drawing.lettering import ABOVE, BELOW, PITCH, SLACK, width, wrapped

BETWEEN = " · "
"""What parts the texts where they run on in one paragraph."""


class Entry:
    """A text of the block, its height as a multiple of the block's, and whether words may break."""

    def __init__(self, text: str, factor: float = 1.0, *, breakable: bool = False) -> None:
        self.text = text
        self.factor = factor
        self.breakable = breakable


Sized = tuple[str, float, float]
"""A line of text, the height of its capitals, and its length, in cm."""


class Worded:
    """A text in words, measured for capitals one centimetre high.

    Attributes:
        words: Each with its width.
        space: Width of what parts them.
        widest: Width of the widest word.
        text: All of them on one line.
        length: Length of that line.
    """

    def __init__(self, words: tuple[tuple[str, float], ...], space: float) -> None:
        self.words = words
        self.space = space
        self.widest = max([size for _, size in words], default=0.0)
        self.text = " ".join([word for word, _ in words])
        self.length = words[0][1] if words else 0.0
        for _, size in words[1:]:
            self.length = self.length + space + size

    def lines(self, height: float, breadth: float) -> list[Sized]:
        """The words broken into lines of a breadth in cm."""
        if self.length <= breadth / height:
            return [(self.text, height, self.length * height)]
        lines: list[Sized] = []
        line: list[str] = []
        used, room = 0.0, breadth / height
        for word, size in self.words:
            longer = used + self.space + size
            if line and longer > room:
                lines.append((" ".join(line), height, used * height))
                line, longer = [], size
            used = longer if line else size
            line.append(word)
        lines.append((" ".join(line), height, used * height))
        return lines


Part = tuple[Entry, Worded]


@dataclass(frozen=True, slots=True)
class Setting:
    """What is to be set, its words measured once.

    Attributes:
        stack: Each text by itself.
        run: The headings, and the rest as one paragraph.
    """

    stack: tuple[Part, ...]
    run: tuple[Part, ...]

    @classmethod
    def of(cls, entries: tuple[Entry, ...]) -> Setting:
        """Measure every word."""
        stack = tuple([(entry, _measured(entry)) for entry in entries])
        heads = [part for part in stack if part[0].factor != 1.0]
        rest = [part for part in stack if part[0].factor == 1.0]
        between = _of_the_house(BETWEEN)
        words = [word for _, text in rest for word in (*between.words, *text.words)][1:]
        run = Worded(tuple(words), between.space)
        entry = Entry(run.text, breakable=any(entry.breakable for entry, _ in rest))
        return cls(stack, (*heads, (entry, run)))

    def stacked(self, height: float, breadth: float) -> TextBlock | None:
        """Each text on lines of its own; None where a word that must not break is too long."""
        return self._set(self.stack, height, breadth)

    def running(self, height: float, breadth: float) -> TextBlock | None:
        """The headings on lines of their own, the rest run on in one paragraph."""
        return self._set(self.run, height, breadth)

    def forced(self, height: float, breadth: float) -> TextBlock:
        """Each text on lines of its own; words are broken wherever they must be."""
        return TextBlock(
            [line for entry, _ in self.stack for line in _broken(entry, height, breadth)]
        )

    def _set(self, parts: tuple[Part, ...], height: float, breadth: float) -> TextBlock | None:
        lines: list[Sized] = []
        for entry, text in parts:
            tall = height * entry.factor
            if text.widest * tall <= breadth:
                lines += text.lines(tall, breadth)
            elif entry.breakable:
                lines += _broken(entry, height, breadth)
            else:
                return None
        return TextBlock(lines)


def _measured(entry: Entry) -> Worded:
    """The order's own words, which may be broken, are forgotten; the house's are kept."""
    return _worded(entry.text) if entry.breakable else _of_the_house(entry.text)


@lru_cache(maxsize=2048)
def _of_the_house(text: str) -> Worded:
    return _worded(text)


def _worded(text: str) -> Worded:
    return Worded(tuple([(word, width(word, 1.0)) for word in text.split()]), width(" ", 1.0))


def _broken(entry: Entry, height: float, breadth: float) -> Iterator[Sized]:
    tall = height * entry.factor
    for line in wrapped(entry.text, tall, breadth):
        yield line, tall, width(line, tall)


class TextBlock:
    """Lines of text with their heights, and the breadth and height of the whole, in cm."""

    def __init__(self, lines: list[Sized]) -> None:
        heights = [height for _, height, _ in lines]
        self.lines = tuple([(text, height) for text, height, _ in lines])
        self.width = SLACK * max([length for _, _, length in lines])
        self.height = ABOVE * heights[0] + PITCH * sum(heights[1:]) + BELOW * heights[-1]

    @property
    def base_lines(self) -> tuple[float, ...]:
        """Height of each line's base over the block's lower edge, in cm."""
        y = self.height - ABOVE * self.lines[0][1]
        bases = [y]
        for _, height in self.lines[1:]:
            y -= PITCH * height
            bases.append(y)
        return tuple(bases)
