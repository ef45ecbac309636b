"""A block of text: its lines broken to a breadth, with the size of the whole."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from drafting.drawing.lettering import ABOVE, BELOW, PITCH, SLACK, width, wrapped

BETWEEN = " · "
"""What parts the texts where they run on in one paragraph."""


@dataclass(frozen=True, slots=True)
class Entry:
    """A text of the block, its height as a multiple of the block's, and whether words may break."""

    text: str
    factor: float = 1.0
    breakable: bool = False


Sized = tuple[str, float, float]
"""A line of text, the height of its capitals, and its length, in cm."""


@dataclass(frozen=True, slots=True)
class Worded:
    """An entry in words, each with its width for capitals one centimetre high."""

    entry: Entry
    words: tuple[tuple[str, float], ...]
    widest: float

    @classmethod
    def of(cls, entry: Entry) -> Worded:
        """Measure every word."""
        words = tuple([(word, width(word, 1.0)) for word in entry.text.split()])
        return cls(entry, words, max((size for _, size in words), default=0.0))

    def lines(self, height: float, breadth: float, space: float) -> list[Sized]:
        """The words broken into lines of a breadth in cm; `space` parts words, in heights."""
        lines: list[Sized] = []
        line: list[str] = []
        used, room = 0.0, breadth / height
        for word, size in self.words:
            longer = used + space + size
            if line and longer > room:
                lines.append((" ".join(line), height, used * height))
                line, longer = [], size
            used = longer if line else size
            line.append(word)
        lines.append((" ".join(line), height, used * height))
        return lines


@dataclass(frozen=True, slots=True)
class Setting:
    """What is to be set, its words measured once.

    Attributes:
        stack: Each text by itself.
        run: The headings, and the rest as one paragraph.
        space: Width of a space in heights of capitals.
    """

    stack: tuple[Worded, ...]
    run: tuple[Worded, ...]
    space: float

    @classmethod
    def of(cls, entries: tuple[Entry, ...]) -> Setting:
        """Measure every word."""
        stack = tuple(map(Worded.of, entries))
        heads = tuple(each for each in stack if each.entry.factor != 1.0)
        rest = [each for each in stack if each.entry.factor == 1.0]
        between = (BETWEEN.strip(), width(BETWEEN.strip(), 1.0))
        words = [pair for each in rest for pair in (between, *each.words)][1:]
        text = Entry(
            BETWEEN.join(e.entry.text for e in rest), 1.0, any(e.entry.breakable for e in rest)
        )
        run = Worded(text, tuple(words), max((size for _, size in words), default=0.0))
        return cls(stack, (*heads, run), width(" ", 1.0))

    def stacked(self, height: float, breadth: float) -> TextBlock | None:
        """Each text on lines of its own; None where a word that must not break is too long."""
        return self._set(self.stack, height, breadth)

    def running(self, height: float, breadth: float) -> TextBlock | None:
        """The headings on lines of their own, the rest run on in one paragraph."""
        return self._set(self.run, height, breadth)

    def forced(self, height: float, breadth: float) -> TextBlock:
        """Each text on lines of its own; words are broken wherever they must be."""
        return _block(
            [line for each in self.stack for line in _broken(each.entry, height, breadth)]
        )

    def _set(self, parts: tuple[Worded, ...], height: float, breadth: float) -> TextBlock | None:
        lines: list[Sized] = []
        for each in parts:
            tall = height * each.entry.factor
            if each.widest * tall <= breadth:
                lines += each.lines(tall, breadth, self.space)
            elif each.entry.breakable:
                lines += _broken(each.entry, height, breadth)
            else:
                return None
        return _block(lines)


def _broken(entry: Entry, height: float, breadth: float) -> Iterator[Sized]:
    tall = height * entry.factor
    for line in wrapped(entry.text, tall, breadth):
        yield line, tall, width(line, tall)


@dataclass(frozen=True, slots=True)
class TextBlock:
    """Lines of text with their heights, and the breadth and height of the whole, in cm."""

    lines: tuple[tuple[str, float], ...]
    width: float
    height: float

    @property
    def base_lines(self) -> tuple[float, ...]:
        """Height of each line's base over the block's lower edge, in cm."""
        y = self.height - ABOVE * self.lines[0][1]
        bases = [y]
        for _, height in self.lines[1:]:
            y -= PITCH * height
            bases.append(y)
        return tuple(bases)


def _block(lines: list[Sized]) -> TextBlock:
    heights = [height for _, height, _ in lines]
    tall = ABOVE * heights[0] + PITCH * sum(heights[1:]) + BELOW * heights[-1]
    wide = SLACK * max([length for _, _, length in lines])
    return TextBlock(tuple([(text, height) for text, height, _ in lines]), wide, tall)
