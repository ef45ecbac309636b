"""The catalogues hold every text that a pattern carries, and the texts keep their gaps.

Terms: a trade glossary in six languages, from memory where no print was seen.
"""

from __future__ import annotations

import dataclasses
import json
import string
from importlib.resources import files

import pytest
from babel.messages.pofile import read_po

from drafting.body import Body
from drafting.drawing import PRINT_WORDS, WORDS, Output
from drafting.export import FORMATS
from drafting.garments import GARMENTS
from drafting.language import DOUBTFUL, decimal, finding_text, say
from drafting.pattern import Finish
from drafting.workroom import work

LANGUAGES = ("fr", "de")


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_text_of_every_garment_is_in_the_catalogue(works, language):
    texts = set()
    for done in works:
        p = done.pattern.pattern
        texts |= {p.title, *p.cautions, *(n.name for n in p.notions), *(s.text for s in p.sewing)}
        texts |= {piece.title for piece in p.pieces}
    known = {"Jupe", "Rock"}  # words that may be alike in two languages
    missing = sorted(t for t in texts if say(t, language) == t and t not in known)
    assert missing == []


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_translation_keeps_the_gaps_of_its_sentence(language):
    messages = []
    for name in (language, f"{language}_draft", f"{language}_pages"):
        catalogue = files("drafting.language").joinpath(f"{name}.po")
        if catalogue.is_file():
            with catalogue.open("rb") as file:
                messages += [
                    m for m in read_po(file) if m.id and m.context in (None, "phrase", "refused")
                ]
    assert len(messages) > 150
    for message in messages:
        gaps = [
            {name for _, name, _, _ in string.Formatter().parse(str(t)) if name}
            for t in (message.id, message.string)
        ]
        assert gaps[0] == gaps[1], message.id


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_doubtful_word_prints_with_its_english_beside_it(language):
    for word in DOUBTFUL[language]:
        assert say(word, language).endswith(f"({word})")


def test_numbers_are_written_as_the_language_writes_them():
    """Source: CLDR, as Babel carries it."""
    assert [decimal(1234.56, language) for language in ("en", "fr", "de")] == [
        "1234.6",
        "1234,6",
        "1234,6",
    ]
    assert decimal(4.0, "de") == "4"
    assert [decimal(-4.9e16, language) for language in ("fr", "en")] == ["-4.9e+16"] * 2


@pytest.mark.parametrize("language", LANGUAGES)
def test_an_answer_is_told_in_the_language_and_keeps_its_stable_names(language):
    garment = GARMENTS["trousers"]
    done = work(garment, Body.of(dict(garment.sample)), garment.spec(kind="trousers"), Finish())
    english, told = (
        json.loads(FORMATS["json"].write(done, Output(format="json", language=name)))
        for name in ("en", language)
    )
    assert told["id"] == english["id"]
    assert [p["name"] for p in told["pieces"]] == [p["name"] for p in english["pieces"]]
    assert told["pieces"][0]["title"] == {"fr": "Devant du pantalon", "de": "Vorderhose"}[language]
    assert told["cautions"] != english["cautions"]


@pytest.mark.parametrize("language", LANGUAGES)
def test_findings_of_a_family_have_a_sentence(language):
    assert finding_text("estimated_knee_girth", language) == finding_text(
        "estimated_calf_girth", language
    )
    assert finding_text("estimated_body_rise", language) != finding_text(
        "estimated_knee_girth", language
    )
    assert finding_text("no_such_code", language) is None


ON_SHEETS = {
    field.name: getattr(table["en"], field.name)
    for table in (WORDS, PRINT_WORDS)
    for field in dataclasses.fields(table["en"])
}
NOT_WORDS = {"language", "page_of", "square_mm", "square_in"}


def texts_of(value):
    match value:
        case str():
            yield value
        case dict():
            for each in value.values():
                yield from texts_of(each)
        case (str() as name, str() as word) if name.isidentifier() and name.islower():
            yield word
        case tuple():
            for each in value:
                yield from texts_of(each)


@pytest.mark.parametrize("language", ["fr", "de", "es", "it", "pt"])
def test_every_word_of_the_sheets_is_in_every_catalogue(language):
    with files("drafting.language").joinpath(f"{language}.po").open("rb") as file:
        known = {m.id for m in read_po(file)}
    words = {t for n, v in ON_SHEETS.items() if n not in NOT_WORDS for t in texts_of(v)}
    assert len(words) > 50
    assert words - known == set()


HEADS = {
    # A trade glossary in six languages, from memory where no print was seen.
    "es": {"Trousers": "Pantalón", "grain": "hilo", "Waistband": "Cinturilla", "crotch": "tiro"},
    "it": {
        "Trousers": "Pantaloni",
        "grain": "drittofilo",
        "Waistband": "Cinturino",
        "hem": "fondo",
    },
    "pt": {"Trousers": "Calças", "grain": "fio direito", "Waistband": "Cós", "crotch": "gancho"},
}


@pytest.mark.parametrize("language", HEADS)
def test_spanish_italian_and_portuguese_have_the_glossary_s_words(language):
    assert {word: say(word, language) for word in HEADS[language]} == HEADS[language]
    assert say("Fly shield", language).endswith(" (Fly shield)")  # doubtful in all three
    assert say("Sew the inseams.", language) == "Sew the inseams."  # not translated: English


@pytest.mark.parametrize("language", HEADS)
def test_a_sheet_in_a_language_of_the_glossary_is_drawn(language):
    garment = GARMENTS["trousers"]
    done = work(garment, Body.of(dict(garment.sample)), garment.spec(kind="trousers"), Finish())
    drawn = FORMATS["svg"].write(done, Output(language=language)).decode()
    assert HEADS[language]["Waistband"] in drawn
    assert f">{HEADS[language]['grain']}<" in drawn
