"""What the cover tells of an order's work, in the words of the sheet's language."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields
from typing import TYPE_CHECKING

from drafting.body import MEASURES
from drafting.checks import finished_measurements
from drafting.drawing import PRINT_WORDS, WORDS, Cover, Drawn, Output, amount, piece_cuts
from drafting.drawing.cover import Row, Section
from drafting.language import decimal, say

if TYPE_CHECKING:
    from drafting.body import Measured
    from drafting.pattern import Finding, Notion
    from drafting.workroom import Work


def cover_of(work: Work, output: Output, pieces: tuple[Drawn, ...], told: tuple[str, ...]) -> Cover:
    """The cover of a work.

    Args:
        work: What left the workroom.
        output: Language and unit.
        pieces: The pieces that are drawn.
        told: Sentences on the form of the drawing.
    """
    teller = _Teller(work, output)
    words = PRINT_WORDS[output.language]
    unsound = [WORDS[output.language].not_for_cutting] if work.verdict == "unsound" else []
    called = [work.called] if work.called else []
    sections = (
        Section(words.cutting_list, tuple(teller.cutting())),
        Section(words.notions, tuple(teller.notions())),
        Section(words.measures, tuple(teller.measures())),
        Section(words.ease, tuple(teller.ease())),
        Section(words.finished, tuple(teller.finished())),
        Section(words.findings, tuple(Row(f.message) for f in _worst_first(work))),
        Section(words.cautions, tuple(Row(text) for text in teller.cautions())),
        Section(words.sewing, tuple(teller.sewing())),
    )
    remarks = (*unsound, *called, *told)
    return Cover(work.pattern.pattern.title, remarks, sections, pieces)


def _worst_first(work: Work) -> list[Finding]:
    order = ("error", "warning", "note")
    return sorted(work.pattern.findings, key=lambda f: order.index(f.severity))


class _Teller:
    """Rows of text in one language and unit."""

    def __init__(self, work: Work, output: Output) -> None:
        self.work, self.unit, self.language = work, output.unit, output.language
        self.words, self.more = WORDS[output.language], PRINT_WORDS[output.language]

    def cutting(self) -> Iterator[Row]:
        for piece in self.work.pattern.pattern.pieces:
            told = "; ".join(piece_cuts(piece, self.words))
            yield Row(f"{piece.number}  {piece.title}: {told}")

    def notions(self) -> Iterator[Row]:
        for notion in self.work.pattern.pattern.notions:
            yield Row(_headed(notion.name), self._much(notion))

    def _much(self, notion: Notion) -> str:
        length = "" if notion.length is None else self.amount(notion.length)
        many = str(notion.quantity) if notion.quantity > 1 else ""
        return " × ".join(part for part in (many, length) if part)

    def measures(self) -> Iterator[Row]:
        for name, measured in self.work.body.measured.items():
            yield Row(
                f"{say(MEASURES[name].title, self.language)}{self._origin(measured)}",
                self._value(name, measured),
            )

    def _origin(self, measured: Measured) -> str:
        origin = self.more.origins.get(measured.origin, "")
        return f" ({origin})" if origin else ""

    def _value(self, name: str, measured: Measured) -> str:
        unit = MEASURES[name].unit
        value, sd = measured.value, measured.sd
        if unit != "cm":
            return f"{decimal(value, self.language)} {'kg' if unit == 'kg' else '°'}"
        return self.amount(value) if sd is None else f"{self.amount(value)} ± {self.amount(sd)}"

    def ease(self) -> Iterator[Row]:
        """The options that are eases: what the garment is wider by than the body."""
        for field in fields(self.work.spec):
            value = getattr(self.work.spec, field.name)
            if field.name.endswith("ease") and isinstance(value, int | float):
                yield Row(self.called(field.name), self.amount(value))

    def finished(self) -> Iterator[Row]:
        pattern = self.work.pattern.pattern
        units = {want.name: want.unit for want in pattern.finished_measurements}
        for name, value in finished_measurements(pattern):
            angle = f"{decimal(value, self.language)}°"
            yield Row(self.called(name), self.amount(value) if units[name] == "cm" else angle)

    def cautions(self) -> tuple[str, ...]:
        return (*self.words.cautions, *self.work.pattern.pattern.cautions)

    def sewing(self) -> Iterator[Row]:
        for number, step in enumerate(self.work.pattern.pattern.sewing, 1):
            yield Row(f"{number}  {step.text}")

    def amount(self, cm: float) -> str:
        return amount(cm, self.unit, self.language)

    def called(self, name: str) -> str:
        """A stable name as the head of a row."""
        return _headed(self.words.name(name))


def _headed(text: str) -> str:
    """The text with a capital first; the rest as it is, since German nouns have theirs."""
    return text[:1].upper() + text[1:]
