"""A recorded step put into sentences, with a formula, the same worked, and a result."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from drafting.drawing import Unit
from drafting.drawing.words import plain
from drafting.geometry import Point
from drafting.language import Language, phrase
from drafting.teaching.labels import Labels
from drafting.teaching.tape import figures, on_tape, smallest
from drafting.teaching.words import TeachingWords
from drafting.trace import (
    Arc,
    Bend,
    Bulge,
    Compared,
    Length,
    Move,
    Outline,
    Part,
    Place,
    Saying,
    Step,
    Straight,
    Stroke,
)
from drafting.trace.length import remembers, said
from drafting.trace.saying import Named
from drafting.trace.step import Moved

LONGEST = 25
"""No sentence has more words."""

_AMOUNT = r"\d+(?:[.,]\d+)?"
_BETWEEN = r" (?:to|and|or|bis|und|oder|à|et|ou) [+-]?"
CENTIMETRES = re.compile(rf"(?<![\d.,])(?:({_AMOUNT})({_BETWEEN}))?({_AMOUNT}) cm\b")
"""An amount in cm, or two that share the unit ("4 to 5 cm"), in any language of the sheet."""


@dataclass(frozen=True, slots=True)
class Teller:
    """Says steps in one language and unit, with a drawing's labels.

    Attributes:
        words: The language.
        labels: What the points are called on the drawing.
        unit: Unit of the lengths.
        origin: The first point, from which places are told that have no base.
        corner: Upper left corner of the paper, cm.
        blank: Whether the numbers of this body are left out, for an exercise.
        language: The language that it speaks.
    """

    words: TeachingWords
    labels: Labels
    unit: Unit
    origin: Place
    corner: Point
    blank: bool = False
    language: Language = "en"

    def say(self, text: str) -> str:
        """A text of the draft in the language."""
        return phrase(text, self.language)

    def named(self, thing: Named) -> str:
        """The label of a point, the name of a line in the language."""
        label = self.labels(thing)
        return self.say(label) if label == thing.name else label

    def amount(self, cm: float) -> str:
        """A length as the tape shows it, or room to write it in."""
        return self.words.blank if self.blank else self.plain(cm)

    def told(self, value: float) -> str:
        """The same, but a length that the rule itself names is never left out."""
        return self.amount(value) if remembers(value) else self.plain(value)

    def plain(self, cm: float) -> str:
        """A length of the rule itself, which is never left out; what no tape shows is said so."""
        division = smallest(cm, self.unit)
        if 1e-6 < abs(cm) < division / 2:
            smallest_told = on_tape(division, self.unit, self.language)
            return self.words.hardly.format(smallest=smallest_told)
        return on_tape(cm, self.unit, self.language)

    def reworded(self, sentence: str) -> str:
        """A garment's own sentence in the language, with its centimetres in the sheet's unit."""
        return self._in_unit(self.say(sentence))

    def _in_unit(self, told: str) -> str:
        return CENTIMETRES.sub(self._told_in_unit, told)

    def _told_in_unit(self, found: re.Match[str]) -> str:
        first, between, last = found.groups()
        shared = "" if first is None else figures(_read(first), self.unit, self.language) + between
        return shared + self.plain(_read(last))

    def sentences(self, step: Step) -> tuple[str, ...]:
        """What to do, each sentence at most LONGEST words."""
        match step.value:
            case Place():
                fresh = bool(step.paper) and step.value.base is None
                told = self._point(step.value)
                return (self.words.fresh_paper, *told) if fresh else told
            case Stroke():
                return self._line(step.value)
            case Outline():
                return tuple(self._outline(step.name, step.value))
        return self._other(step)

    def _outline(self, name: str, outline: Outline) -> Iterator[str]:
        """Once round in one sentence, or a sentence for each line where that would be too long."""
        w, name = self.words, self.say(plain(name))
        if len(outline.legs) == 1:
            yield w.trace_round.format(name=name)
            return
        legs = [leg.words(self.numbers) for leg in outline.legs]
        whole = w.trace.format(name=name, lines=_listed(legs, w))
        if len(whole.split()) <= LONGEST:
            yield whole
            return
        yield w.trace.format(name=name, lines=legs[0])
        yield from (w.trace_on.format(line=leg) for leg in legs[1:])

    def _other(self, step: Step) -> tuple[str, ...]:
        w, name = self.words, self.say(step.name)
        match step.kind:
            case "decision":
                answer = w.decided if step.value else w.left_out
                told = w.blank if self.blank else answer.format(name=name)
                return (self.reworded(step.question), told)
            case "trued":
                agree = self.reworded(str(step.how))
                return ((w.true_to if step.how else w.true).format(name=name, agree=agree),)
            case "solved":
                return (w.solved.format(name=name, value=self.amount(_number(step))),)
        return (w.length.format(name=self.reworded(step.name), value=self.amount(_number(step))),)

    @property
    def numbers(self) -> Saying:
        """Labels, and lengths as numbers."""
        return Saying(self.named, self.told, self.say)

    @property
    def formulas(self) -> Saying:
        """Labels, and lengths as formulas."""
        return Saying(self.named, lambda v: said(v, self.plain, word=self.say), self.say)

    @property
    def workings(self) -> Saying:
        """Labels, and lengths as formulas with numbers and their result."""
        return Saying(self.named, self._worked, self.say)

    def _worked(self, value: float) -> str:
        if not (isinstance(value, Length) and isinstance(value.how, tuple)):
            return self.told(value)
        formula = said(value, self.plain, numbers=self.amount, word=self.say)
        result = self.amount(value)
        return result if formula == result else f"{formula} = {result}"

    def formula(self, step: Step) -> str:
        """How it is found, in the trade's words."""
        text = self._signed(step.words(self.formulas))
        return self._in_unit(text) if isinstance(step.how, str) else text

    def worked(self, step: Step) -> str:
        """The formula with this body's numbers."""
        match step.how:
            case Compared():
                answer = self.words.yes if step.value else self.words.no
                told = self.words.blank if self.blank else answer
                return f"{self._signed(step.words(self.workings))}: {told}"
            case str():
                return self.result(step)
        return step.words(self.workings)

    def sums(self, step: Step) -> tuple[str, ...]:
        """The arithmetic of a step alone: "1/12 hip + 1.5 cm = 1/12 × 94 cm + 1.5 cm = 9.35 cm"."""
        match step.how:
            case Length():
                return self._sum(step.how)
            case Place():
                lengths = [o for m in step.how.moves for o in m.operands if isinstance(o, Length)]
                return tuple(s for length in lengths for s in self._sum(length))
            case Compared():
                return (f"{self.formula(step)}; {self.worked(step)}",)
        return ()

    def _sum(self, length: Length) -> tuple[str, ...]:
        """The formula with its numbers; nothing for a number that the rule itself names."""
        if length.how is None:
            return ()
        formula, worked = said(length, self.plain, word=self.say), self._worked(length)
        return (f"{formula} = {worked}",)

    def _signed(self, text: str) -> str:
        for sign, mark in self.words.signs.items():
            text = text.replace(f" {sign} ", f" {mark} ")
        return text

    def result(self, step: Step) -> str:
        """What comes out, as a tape shows it."""
        match step.value:
            case Place():
                return self._where(step.value)
            case Stroke():
                return self.words.line_length.format(value=self.amount(step.value.path.length()))
            case Outline():
                return self.words.round_about.format(value=self.amount(step.value.length))
            case bool():
                answer = self.words.yes if step.value else self.words.no
                return self.words.blank if self.blank else answer
            case tuple():
                return self._moved(step.value)
        return self.amount(step.value)

    def _moved(self, moved: Moved) -> str:
        told = [f"{self.say(what)} {self.amount(far)}" for what, far in moved]
        return ", ".join(told) or self.words.nothing_moved

    def _where(self, place: Place) -> str:
        w = self.words
        if place.base is not None:
            value = self.amount(place.distance(place.base))
            ends = {"start": self.labels(place.base), "end": self.labels(place)}
            return w.apart.format(value=value, **ends)
        if place == self.origin:
            return w.at_origin
        if place.moves and place.moves[0].verb == "at":
            return w.anew
        across, up = place.x - self.origin.x, place.y - self.origin.y
        beside = (w.right_of if across >= 0 else w.left_of).format(
            value=self.amount(abs(across)), origin=self.labels(self.origin)
        )
        level = (w.over if up >= 0 else w.under).format(value=self.amount(abs(up)))
        return w.from_origin.format(across=beside, down=level)

    def _point(self, place: Place) -> tuple[str, ...]:
        w, label = self.words, self.labels(place)
        if not place.moves:
            return (w.same.format(label=label, base=_base(place, self.labels)),)
        if place.moves[0].verb == "at":
            return (self._first(place), *self._moves(place, place.moves[1:], label))
        if place.base is None:
            first = self._said(place.moves[0])
            rest = place.moves[1:]
            if not rest:
                return (w.mark.format(label=label, move=first),)
            return (w.mark.format(label=w.a_point, move=first), *self._moves(place, rest, label))
        return tuple(self._moves(place, place.moves, label))

    def _first(self, place: Place) -> str:
        """Where on the paper to begin, so that the whole draft has room."""
        at = place.moves[0].to
        label = self.labels(place) if len(place.moves) == 1 else self.words.a_point
        return self.words.first_point.format(
            label=label,
            across=self.amount(at.x - self.corner.x),
            down=self.amount(self.corner.y - at.y),
        )

    def _moves(self, place: Place, moves: tuple[Move, ...], label: str) -> Iterator[str]:
        """One sentence for each move; the last one marks the point."""
        w, begun = self.words, place.base is None or moves != place.moves
        for i, move in enumerate(moves):
            last, on = i == len(moves) - 1, begun or i > 0
            table = (w.go_on_and_mark if on else w.go_and_mark) if last else w.go_on if on else w.go
            base = "" if on else _base(place, self.labels)
            yield table.format(base=base, move=self._said(move), label=label)

    def _said(self, move: Move) -> str:
        return move.words(self.numbers)

    def _line(self, stroke: Stroke) -> tuple[str, ...]:
        told = [s for part in stroke.parts for s in self._part(part)]
        if is_box(stroke):
            told = [self._box(stroke)]
        if stroke.folds:
            w, name = self.words, self.labels
            folds = [f"{name(f.near)} – {name(f.point)} – {name(f.far)}" for f in stroke.folds]
            told = [w.close_darts.format(darts=_listed(folds, w)), *told, w.open_darts]
        if stroke.remark:
            told.append(self.words.remark.format(remark=self.say(stroke.remark)))
        return tuple(told)

    def _box(self, stroke: Stroke) -> str:
        """Two sides of a rectangle tell all four."""
        one, two = (part.end.moves[-1].words(self.numbers) for part in stroke.parts[:2])
        return self.words.box.format(start=self.labels(stroke.start), one=one, two=two)

    def _part(self, part: Part) -> tuple[str, ...]:
        w = self.words
        ends = {"start": self.labels(part.start), "end": self.labels(part.end)}
        match part:
            case Straight():
                return (w.straight.format(**ends),)
            case Bulge():
                return (w.bow.format(**ends, guide=part.guide.words(self.numbers)),)
            case Arc():
                return (w.arc.format(**ends, about=self.labels(part.about)),)
        return self._bend(part, ends)

    def _bend(self, bend: Bend, ends: dict[str, str]) -> tuple[str, ...]:
        w = self.words
        guided = bend.guide is not None
        guide = bend.guide.words(self.numbers) if bend.guide else ""
        first = w.join.format(**ends, guide=guide) if guided else w.curve.format(**ends)
        swept = bend.guide is not None and bend.guide.verb == "middle"
        leaving, arriving = (b.words(self.numbers) for b in (bend.leaving, bend.arriving))
        return first, (w.end if swept else w.ends).format(leaving=leaving, arriving=arriving)


def _base(place: Place, labels: Labels) -> str:
    return "" if place.base is None else labels(place.base)


def is_box(stroke: Stroke) -> bool:
    """Whether a line is a rectangle, told by its sides."""
    corners = [part.end for part in stroke.parts[:-1]]
    sides = all(isinstance(part, Straight) for part in stroke.parts)
    return len(corners) == 3 and sides and not any(c.name for c in corners)


def _read(figures: str) -> float:
    return float(figures.replace(",", "."))


def _number(step: Step) -> float:
    return float(step.value) if isinstance(step.value, float | int) else 0.0


def _listed(names: list[str], words: TeachingWords) -> str:
    if len(names) == 1:
        return names[0]
    return words.listed.format(first=", ".join(names[:-1]), last=names[-1])
