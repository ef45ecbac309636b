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
class Setting:
    """Entries with the widths of their words, for capitals one centimetre high.

    Attributes:
        entries: The texts.
        sizes: Width of each word and of the space.
    """

    entries: tuple[Entry, ...]
    sizes: dict[str, float]

    @classmethod
    def of(cls, entries: tuple[Entry, ...]) -> Setting:
        """Measure every word once."""
        words = {word for entry in entries for word in entry.text.split()}
        return cls(entries, {word: width(word, 1.0) for word in (*words, " ", BETWEEN.strip())})

    def stacked(self, height: float, breadth: float) -> TextBlock | None:
        """Each text on lines of its own; None where a word that must not break is too long."""
        return self._set(self.entries, height, breadth)

    def running(self, height: float, breadth: float) -> TextBlock | None:
        """The headings on lines of their own, the rest run on in one paragraph."""
        heads = tuple(e for e in self.entries if e.factor != 1.0)
        rest = [e for e in self.entries if e.factor == 1.0]
        text = BETWEEN.join(e.text for e in rest)
        run_on = Entry(text, 1.0, any(e.breakable for e in rest))
        return self._set((*heads, run_on), height, breadth)

    def forced(self, height: float, breadth: float) -> TextBlock:
        """Each text on lines of its own; words are broken wherever they must be."""
        return _block([line for e in self.entries for line in _broken(e, height, breadth)])

    def _set(self, entries: tuple[Entry, ...], height: float, breadth: float) -> TextBlock | None:
        lines: list[Sized] = []
        for entry in entries:
            words = [(word, self.sizes[word]) for word in entry.text.split()]
            if max((size for _, size in words), default=0.0) * height * entry.factor <= breadth:
                lines += self._lines(words, height * entry.factor, breadth)
            elif entry.breakable:
                lines += _broken(entry, height, breadth)
            else:
                return None
        return _block(lines)

    def _lines(
        self, words: list[tuple[str, float]], height: float, breadth: float
    ) -> Iterator[Sized]:
        line: list[str] = []
        used, room, space = 0.0, breadth / height, self.sizes[" "]
        for word, size in words:
            longer = used + space + size
            if line and longer > room:
                yield " ".join(line), height, used * height
                line, longer = [], size
            used = longer if line else size
            line.append(word)
        yield " ".join(line), height, used * height


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
    wide = SLACK * max(length for *_, length in lines)
    return TextBlock(tuple((text, height) for text, height, _ in lines), wide, tall)
