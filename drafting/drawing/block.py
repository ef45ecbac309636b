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
        return _block(
            tuple(
                (line, height * e.factor)
                for e in self.entries
                for line in wrapped(e.text, height * e.factor, breadth)
            )
        )

    def _set(self, entries: tuple[Entry, ...], height: float, breadth: float) -> TextBlock | None:
        lines: list[tuple[str, float]] = []
        for entry in entries:
            tall = height * entry.factor
            words = entry.text.split()
            if max((self.sizes[w] for w in words), default=0.0) * tall <= breadth:
                lines += [(line, tall) for line in self._lines(words, breadth / tall)]
            elif entry.breakable:
                lines += [(line, tall) for line in wrapped(entry.text, tall, breadth)]
            else:
                return None
        return _block(tuple(lines))

    def _lines(self, words: list[str], room: float) -> Iterator[str]:
        line: list[str] = []
        used = 0.0
        for word in words:
            longer = used + self.sizes[" "] + self.sizes[word]
            if line and longer > room:
                yield " ".join(line)
                line, used = [], 0.0
            used = longer if line else self.sizes[word]
            line.append(word)
        yield " ".join(line)


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


def _block(lines: tuple[tuple[str, float], ...]) -> TextBlock:
    tall = ABOVE * lines[0][1] + sum(PITCH * h for _, h in lines[1:]) + BELOW * lines[-1][1]
    return TextBlock(lines, SLACK * max(width(text, h) for text, h in lines), tall)
