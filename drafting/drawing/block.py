"""A block of text: its lines broken to a breadth, with the size of the whole."""

from __future__ import annotations

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


def stacked(entries: tuple[Entry, ...], height: float, breadth: float) -> TextBlock | None:
    """Each text on lines of its own; None where a word that must not break is too long."""
    if any(_longest(e, height * e.factor) > breadth for e in entries if not e.breakable):
        return None
    return forced(entries, height, breadth)


def forced(entries: tuple[Entry, ...], height: float, breadth: float) -> TextBlock:
    """Each text on lines of its own; words are broken wherever they must be."""
    return _block(
        tuple(
            (line, height * e.factor)
            for e in entries
            for line in wrapped(e.text, height * e.factor, breadth)
        )
    )


def running(entries: tuple[Entry, ...], height: float, breadth: float) -> TextBlock | None:
    """The headings on lines of their own, the rest run on in one paragraph."""
    heads = tuple(e for e in entries if e.factor != 1.0)
    rest = [e for e in entries if e.factor == 1.0]
    text = BETWEEN.join(e.text for e in rest)
    return stacked((*heads, Entry(text, 1.0, any(e.breakable for e in rest))), height, breadth)


def _longest(entry: Entry, height: float) -> float:
    return max((width(word, height) for word in entry.text.split()), default=0.0)


def _block(lines: tuple[tuple[str, float], ...]) -> TextBlock:
    tall = ABOVE * lines[0][1] + sum(PITCH * h for _, h in lines[1:]) + BELOW * lines[-1][1]
    return TextBlock(lines, SLACK * max(width(text, h) for text, h in lines), tall)
