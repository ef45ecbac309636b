"""What the steps say: complete, short, true to the numbers, in the tape's divisions."""

from __future__ import annotations

import re
from dataclasses import asdict, replace
from fractions import Fraction

import pytest
from classroom import (
    CASES,
    LARGEST,
    OPTION_CUTS,
    SMALLEST,
    cut,
    methods,
    options,
    sheet_of,
    worked,
)

from drafting.drawing.lettering import has_shapes
from drafting.errors import DraftingError
from drafting.garments import GARMENTS
from drafting.language import _phrased
from drafting.teaching import taught, telling
from drafting.teaching.tape import on_tape
from drafting.teaching.telling import LONGEST
from drafting.teaching.words import teaching_words

SENTENCE = re.compile(r"(?<=[.!?])\s+")


def everything(draft):
    for step in draft.steps:
        yield from step.sentences
        yield step.reason
    yield from (*draft.words.cautions, *draft.words.finishing, *draft.words.toile)
    yield from (*draft.words.aims, *draft.words.after_corrections)
    for seen in draft.symptoms:
        yield from (seen.symptom, seen.cause, seen.change)


def test_no_step_lacks_formula_value_reason_or_source(draft):
    _, taught = draft
    assert taught.steps
    for step in taught.steps:
        told = (step.formula, step.worked, step.result, step.reason, step.source, *step.sentences)
        assert all(text.strip() for text in told), step.heading


def test_no_sentence_is_longer_than_25_words(draft):
    _, taught = draft
    assert LONGEST == 25
    for text in everything(taught):
        for sentence in SENTENCE.split(text):
            assert len(sentence.split()) <= 25, sentence


def test_every_sentence_ends_as_a_sentence(draft):
    _, taught = draft
    for text in everything(taught):
        assert re.search(r"[.?!]$", text), text
        assert text[0].isupper() or text[0].isdigit(), text


def test_no_label_comes_twice_and_every_point_has_one(draft):
    _, taught = draft
    names = [s.place.name for s in taught.steps if s.place]
    assert len(set(names)) == len(names)
    assert len(taught.labels.places) == len(set(taught.labels.by_name.values())) == len(names)


def test_steps_speak_only_of_what_was_drawn_before(draft):
    """Every label in a step's text belongs to a point of this step or an earlier one."""
    _, taught = draft
    known: set[str] = set()
    for step in taught.steps:
        if step.place:
            known.add(taught.labels(step.place))
        told = " ".join((*step.sentences, step.formula))
        labels = set(re.findall(r"\b[A-HJ-NP-Z]\d+\b", told))
        assert labels <= known, step.heading


def test_decisions_are_told_whether_taken_or_not(draft):
    work, taught = draft
    decisions = [s for s in taught.steps if s.step.kind == "decision"]
    assert len(decisions) == len([s for s in work.steps if s.kind == "decision"])
    for step in decisions:
        assert step.sentences[0].endswith("?")
        assert step.sentences[1].startswith("Yes" if step.step.value else "No")
        assert step.result == ("yes" if step.step.value else "no")


LETTERS = re.compile(r"[A-Za-z]{3}")


def heard(monkeypatch) -> set[str]:
    """Texts that sheets ask the catalogue for in vain from now on."""
    found: set[str] = set()

    def asked(text: str, language: str) -> str:
        said = _phrased(text, language)
        if said is None and LETTERS.search(text):
            found.add(text)
        return said or text

    monkeypatch.setattr(telling, "phrase", asked)
    monkeypatch.setattr(taught, "phrase", asked)
    return found


@pytest.mark.slow
@pytest.mark.parametrize("kind", GARMENTS)
def test_no_sentence_of_any_choice_falls_back_to_english(kind, monkeypatch):
    missing = heard(monkeypatch)
    for choice in options(kind):
        try:
            done = worked(kind, choice.pop("method", ""), "sample", **choice)
        except DraftingError:
            continue  # a choice that excludes a default
        for language in ("fr", "de"):
            sheet_of(kind, done, language=language)
            assert missing == set(), choice


@pytest.mark.parametrize("language", ["fr", "de"])
@pytest.mark.parametrize("case", CASES, ids="-".join)
def test_no_sentence_of_a_sheet_falls_back_to_english(case, language, drafts, monkeypatch):
    """Every text that the sheet asks the catalogue for is there, whole or put together."""
    work, english = drafts[case]
    missing = heard(monkeypatch)
    draft = sheet_of(case[0], work, language=language)
    assert missing == set()
    for one, two in zip(english.steps, draft.steps, strict=True):
        assert one.sentences != two.sentences, one.heading
        assert one.reason != two.reason, one.reason
        for sentence in (*two.sentences, two.reason):
            assert all(len(s.split()) <= LONGEST for s in SENTENCE.split(sentence)), sentence


@pytest.mark.parametrize(("kind", "more", "chosen"), OPTION_CUTS)
def test_no_sentence_of_an_option_falls_back_to_english(kind, more, chosen, monkeypatch):
    done = cut(kind, more, chosen)
    missing = heard(monkeypatch)
    for language in ("fr", "de"):
        sheet_of(kind, done, language=language)
    assert missing == set()


@pytest.mark.parametrize("language", ["fr", "de"])
def test_no_words_of_the_sheet_itself_are_left_in_english(language):
    alike = {
        "Points",
        "Solutions",
        "Source: {source}.",
        "Page {page} of {pages}",
        "Point",
        "Sources",
    }
    english, told = (asdict(teaching_words(name)) for name in ("en", language))
    texts, others = flat(english), flat(told)
    pairs = list(zip(texts, others, strict=True))
    assert len(pairs) > 150
    for text, said in pairs:
        if LETTERS.search(re.sub(r"\{\w+\}", "", text)):
            assert said != text or text in alike, text


def flat(value):
    """Every text of a table."""
    if isinstance(value, str):
        yield value
        return
    for part in value.values() if isinstance(value, dict) else value:
        yield from flat(part)


@pytest.mark.parametrize("language", ["fr", "de"])
def test_numbers_have_the_comma_of_the_language(language, drafts):
    """Source: CLDR writes both languages with a decimal comma."""
    work, _ = drafts["trousers", "block", "sample"]
    draft = sheet_of("trousers", work, language=language)
    texts = [t for s in draft.steps for t in (*s.sentences, s.formula, s.worked, s.result)]
    assert any(re.search(r"\d,\d", text) for text in texts)
    assert [text for text in texts if re.search(r"\d\.\d", text)] == []


def test_every_letter_can_be_drawn(draft):
    _, taught = draft
    texts = [t for s in taught.steps for t in (*s.sentences, s.formula, s.worked, s.result)]
    assert {c for text in texts for c in text if not has_shapes(c)} == set()


NUMBER = r"(?:\d+ )?\d+/\d+|\d+(?:\.\d+)?"
TOKEN = re.compile(rf"({NUMBER}) (?:cm|in)\b|({NUMBER})|([-+×÷()])")


def reckoned(text: str) -> float | None:
    """The value of a sum as it is printed; None where it is no plain sum."""
    parts, at = [], 0
    while at < len(text):
        found = TOKEN.match(text, at)
        if found is None:
            return None
        amount, plain, sign = found.groups()
        parts.append(sign or repr(float(sum(map(Fraction, (amount or plain).split())))))
        at = found.end() + (text[found.end() : found.end() + 1] == " ")
    told = " ".join(parts).replace("×", "*").replace("÷", "/")
    told = re.sub(r"(?<=[\d)]) \(", " * (", told)
    return float(eval(told, {"__builtins__": {}}))  # noqa: S307 - digits and signs only


@pytest.mark.parametrize("unit", ["cm", "in"])
@pytest.mark.parametrize(("kind", "method"), methods())
@pytest.mark.parametrize("name", [SMALLEST, LARGEST])
def test_the_printed_sums_come_out(kind, method, name, unit, drafts):
    """Each worked sum, reckoned from the paper, gives its printed result within the tape's own
    rounding: half a division for each number in it."""
    draft = sheet_of(kind, drafts[kind, method, name][0], unit=unit)
    slack = {"cm": 0.025, "in": 1 / 16}[unit]
    reckonings = 0
    for step in draft.steps:
        for told in step.sums:
            _, *rest = told.split(" = ")
            if len(rest) != 2 or "less than" in told:
                continue
            total, result = reckoned(rest[0]), reckoned(rest[1])
            if total is not None and result is not None:
                room = slack * (1 + len(re.findall(rf"(?:{NUMBER}) (?:cm|in)\b", rest[0])))
                assert total == pytest.approx(result, abs=room + 1e-9), told
                reckonings += 1
    assert reckonings >= 3


def test_lengths_are_told_as_a_tape_shows_them():
    """Half a millimetre; sixteenths up to 10 in, eighths beyond; reduced, no decimals. Source: how
    sewing tapes are divided, common practice, no source."""
    assert on_tape(9.9167, "cm") == "9.9 cm"
    assert on_tape(9.93, "cm") == "9.95 cm"
    assert on_tape(25.75, "cm") == "25.75 cm"
    assert on_tape(1.5875, "in") == "5/8 in"
    assert on_tape(2.54 * 9 + 0.15875, "in") == "9 1/16 in"
    assert on_tape(2.54 * 40 + 0.635, "in") == "40 1/4 in"
    assert on_tape(2.54 * 40 + 2.5, "in") == "41 in"
    assert on_tape(0.0, "in") == "0 in"


RANGES = [
    ("Forks of 4 to 5 cm do.", "en", "Forks of 1 9/16 to 1 15/16 in do."),
    ("It may be 1 or 2.5 cm.", "en", "It may be 3/8 or 1 in."),
    ("-1 to +3 cm over the body sits well.", "en", "-3/8 to +1 3/16 in over the body sits well."),
    ("Je 4 bis 5 cm breit.", "de", "Je 1 9/16 bis 1 15/16 in breit."),
    ("De 2,5 à 30 cm de long.", "fr", "De 1 à 11 3/4 in de long."),
    ("The hip and 2 cm.", "en", "The hip and 13/16 in."),
    ("Two of 2 cm and 1 of 3 cm.", "en", "Two of 13/16 in and 1 of 1 3/16 in."),
]


@pytest.mark.parametrize(("told", "language", "wanted"), RANGES)
def test_both_ends_of_a_range_are_told_in_inches(told, language, wanted, drafts):
    """1 cm is 0.3937 in, told to the nearest sixteenth up to 10 in, then to the nearest eighth."""
    draft = drafts["trousers", "block", "sample"][1]
    at = draft.steps[0].place
    teller = telling.Teller(draft.words, draft.labels, "in", at, at, language=language)
    assert teller.reworded(told) == wanted
    assert replace(teller, unit="cm").reworded(told) == told


def test_an_exercise_hides_what_can_be_worked_out_and_nothing_of_the_rule(draft):
    work, taught = draft
    blank = sheet_of(work.pattern.pattern.kind, work, blank=True)
    hidden = 0
    for full, empty in zip(taught.steps, blank.steps, strict=True):
        for told, left in zip(full.sums, empty.sums, strict=True):
            formula = told.split(" = ")[0] if full.step.kind != "decision" else told.split(";")[0]
            assert left.startswith(formula)
            if " = " in told:
                assert blank.words.blank in left
                assert told.rsplit(" = ", 1)[1] not in left.split(" = ")[-1]
                hidden += 1
    assert hidden > 5


def test_inches_speak_of_no_centimetres(draft):
    work, _ = draft
    taught = sheet_of(work.pattern.pattern.kind, work, unit="in")
    names = [step.heading for step in taught.steps]
    for text in (*everything(taught), *taught.cautions, *names):
        assert not re.search(r"\d cm\b|centimet", text), text


@pytest.mark.parametrize("kind", GARMENTS)
def test_what_a_toile_may_show_is_listed_for_every_garment(kind):
    """The class sheet tells the garment's own list: there is no other."""
    rows = GARMENTS[kind].symptoms
    assert len(rows) > 5
    assert all(-5 <= r.low <= r.high <= 5 for r in rows)
    assert len({r.symptom for r in rows}) == len(rows)


def test_every_step_of_every_draft_tells_the_source_of_its_rule(draft):
    """A garment's sources are many; a step names its own."""
    work, _ = draft
    assert [s.name for s in work.steps if not s.source.strip()] == []


def test_the_sheet_tells_the_garments_own_symptoms(draft):
    work, taught = draft
    own = GARMENTS[work.pattern.pattern.kind].symptoms
    assert [s.change for s in taught.symptoms] == [s.change for s in own]
    assert all(0 <= s.low <= s.high for s in taught.symptoms)
