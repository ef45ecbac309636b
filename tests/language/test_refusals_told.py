"""What the craft refuses is told whole in French and German: sentence, numbers and advice.

The sentences are read out of the source itself, so that a new one that nobody translated fails.
"""

from __future__ import annotations

import ast
import re

import pytest
from test_findings_told import calls

import drafting.errors
from drafting.body.contradictions import RULES, contradictions
from drafting.language import refusal_text, refused

LANGUAGES = ("fr", "de")
KINDS = {
    name: kind
    for name, kind in vars(drafting.errors).items()
    if isinstance(kind, type) and issubclass(kind, Exception)
}
TOGETHER = (
    "{} cannot both be right: the {} that follows from them is not possible on an adult. Take both "
    "again."
)
ELSEWHERE = {
    "Not drafted.",  # stands where nothing was tried
    "{} {}",
    "{} {} and {} {} exclude each other. {} Change one of them.",
    TOGETHER,
    "{} and {} cannot both be right: {} must be less than {}{}. {}",
    "The pattern would take {} pages of {}, at most {} are printed; {}.",
    "The cloth is too narrow: a panel needs {} cm. Choose wider cloth, {}or a smaller skirt.",
    "{} ({}) of order {} is {} broad, {} more than the{} cloth has between its edges. {}",
}
"""Put together of parts that stand elsewhere."""


def template(node):
    """A message with {} for each of its gaps; None where it is put together elsewhere."""
    match node:
        case ast.Constant(str() as text):
            return text
        case ast.JoinedStr(parts):
            return "".join(p.value if isinstance(p, ast.Constant) else "{}" for p in parts)
    return None


def sentences():
    """Every message of a refusal whose code's own sentence does not say it all."""
    for _, call in calls():
        if call.func.id not in KINDS or not call.args:
            continue
        codes = [template(k.value) for k in call.keywords if k.arg == "code"]
        said = refusal_text((codes or [KINDS[call.func.id].code])[0] or "", "fr") or ""
        if "{message}" in said and template(call.args[0]):
            yield template(call.args[0])


def told(message, language):
    return refused(message, language, lambda part: part)


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_refusal_has_its_sentence(language):
    found = set(sentences()) - ELSEWHERE
    assert len(found) > 60
    assert {text for text in found if told(text.replace("{}", "7"), language) is None} == set()
    assert told("Quite another sentence with 7 cm in it.", language) is None
    assert told("The skirt would end 7 cm below the hip line; make it longer.", "en") is None


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_contradiction_of_measures_has_its_sentence_and_its_advice(language):
    for rule in RULES:
        (trouble,) = contradictions({rule.less: 100.0 * rule.factor, rule.more: 100.0})
        said = told(trouble.message, language)
        assert said is not None
        assert not re.search(r"\b(and|times|Take|take|both)\b", said), said


FLY = (
    "The fly would have to be 22.5 cm long for the hips to pass, and above the crotch curve there "
    'is room for 20.8 cm: choose closure "side_zip", or waistband "elastic" without a closure, or '
    "give a waist_ease of 4.5 cm."
)
PAGES = "The pattern would take 300 pages of a4, at most 200 are printed; paper a0 would do."
PANELS = (
    "The cloth is too narrow: a panel needs 160 cm. Choose wider cloth, other panels, or a smaller "
    "skirt."
)
BROAD = (
    "Back (back) of order 2 is 90 cm broad, 5 cm more than the folded cloth has between its edges. "
    "No other grain helps; 2 seams along the grain would, 3 parts of some 32 cm."
)
BOTH = TOGETHER.format("hip_height and stature", "waist height")
SIDES = "Hip girth takes one value, not left and right."


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize(
    ("message", "kept"),
    [
        (FLY, ("22.5 cm", "20.8 cm", 'closure "side_zip"', 'waistband "elastic"', "4.5 cm")),
        (PAGES, ("300", "a4", "200", "a0")),
        (PANELS, ("160 cm",)),
        (BROAD, ("back", "2", "90 cm", "5 cm", "3", "32 cm")),
        (BOTH, ("hip_height", "stature", "waist height")),
        (SIDES, ("Hip girth",)),
    ],
)
def test_numbers_and_names_of_options_stay_in_the_sentence(language, message, kept):
    said = told(message, language)
    assert [part for part in kept if part not in said] == []
    assert not re.search(r"\b(the|choose|Choose|or|would|takes)\b", said)
