"""Every remark, refusal and check is told in French and German, its lengths in the sheet's unit.

The codes are read out of the source itself, so that a new one without a sentence fails here.
"""

from __future__ import annotations

import ast
import re
from dataclasses import fields
from pathlib import Path

import pytest

import drafting
import drafting.errors
from drafting.body import MEASURES
from drafting.checks import finished_measurements
from drafting.drawing import amount
from drafting.errors import DraftingError
from drafting.export.language import told_finding
from drafting.garments import GARMENTS
from drafting.language import finding_text, refusal_text, say
from drafting.pattern import Finding

LANGUAGES = ("fr", "de")
ROOT = Path(drafting.__file__).parent
HELPERS = {"_error": 0}
"""Functions of the checks that take a finding's code as their first argument."""


def calls():
    """Every call in the craft, with its file."""
    for file in sorted(ROOT.rglob("*.py")):
        for node in ast.walk(ast.parse(file.read_text("utf-8"))):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
                yield file.relative_to(ROOT), node


def patterns_of(node):
    """The codes that an expression may give, a gap in an f-string as a word."""
    match node:
        case ast.Constant(str() as value):
            yield value
        case ast.JoinedStr(parts):
            texts = [p.value if isinstance(p, ast.Constant) else "x" for p in parts]
            yield "".join(texts)
        case ast.IfExp(_, one, other):
            yield from patterns_of(one)
            yield from patterns_of(other)


def finding_codes():
    found = set()
    for _, call in calls():
        named = {k.arg: k.value for k in call.keywords}
        if call.func.id in {"Finding", "GradeFinding"} and "code" in named:
            found |= set(patterns_of(named["code"]))
        elif call.func.id in HELPERS and call.args:
            found |= set(patterns_of(call.args[0]))
    return found


GIVEN = {"x_not_smooth": "dart_not_smooth", "x_legs_differ": "pleat_legs_differ"}
GIVEN |= {"x_off_edge": "dart_off_edge", "sleeve_x_gave_way": "sleeve_ease_gave_way"}
"""Codes whose gap stands at their head, or is one of a few words."""


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_code_of_a_finding_has_a_sentence(language):
    codes = {GIVEN.get(code, code) for code in finding_codes()}
    assert len(codes) > 40
    assert {c for c in codes if finding_text(c, language) is None} == set()
    assert finding_text("quite_another", language) is None


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_code_of_a_refusal_has_a_sentence(language):
    named = {
        code
        for _, call in calls()
        if call.func.id.endswith("Error")
        for keyword in call.keywords
        if keyword.arg == "code"
        for code in patterns_of(keyword.value)
    }
    kinds = {k for k in vars(drafting.errors).values() if isinstance(k, type)}
    codes = named | {k.code for k in kinds if issubclass(k, DraftingError)}
    assert len(codes) > 20
    assert {c for c in codes if refusal_text(c, language) is None} == set()


ALIKE = {"Stature"}
"""Words that are the same in both languages."""


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_check_is_called_in_the_language(works, language):
    names = {check.name.replace("_", " ") for done in works for check in done.pattern.checks}
    assert len(names) > 15
    assert {name for name in names if say(name, language) == name} == set()


@pytest.mark.parametrize("language", ["fr", "de", "es", "it", "pt"])
def test_every_measure_has_a_title_in_every_language(language):
    titles = {measure.title for measure in MEASURES.values()}
    assert {t for t in titles if say(t, language) == t} <= ALIKE


def test_a_remark_names_its_measure_and_counts_in_the_sheets_unit():
    found = Finding(
        code="missing_hip_girth", severity="note", where="hip_girth", message="Hip girth is needed."
    )
    assert told_finding(found, "de").message.startswith("Hüftumfang:")
    short = Finding(
        code="allowance_short",
        severity="error",
        where="front.side",
        message="Beside side of front the cutting line comes as near as 0.64 cm.",
        measured=0.635,
        allowed=(0.9, 1.0),
    )
    # 0.635 cm is 1/4 in, 1 cm is 6.3/16 in
    assert "1/4 po" in told_finding(short, "fr", "in").message
    assert "0,6 cm" in told_finding(short, "fr").message
    assert told_finding(short, "en", "in").message.endswith("as near as 1/4 in.")
    assert told_finding(short, "en").message == short.message


def test_no_finding_in_french_or_german_keeps_a_decimal_point(works):
    for done in works:
        for finding in done.pattern.findings:
            for language in LANGUAGES:
                told = told_finding(finding, language, checks=done.pattern.checks)
                assert not re.search(r"\d\.\d", told.message)


@pytest.mark.parametrize(
    ("cm", "told"),
    [
        (101.6, "40 in"),
        (102.235, "40 1/4 in"),  # 40.25
        (102.4, "40 3/8 in"),  # 40.31: to the eighth, as girths are read
        (12.7, "5 in"),
        (12.9, "5 1/16 in"),  # short lengths to the sixteenth
        (25.3, "9 15/16 in"),
        (-0.635, "-1/4 in"),
        (0.0, "0 in"),
    ],
)
def test_inches_come_in_eighths_and_sixteenths_as_tapes_have_them(cm, told):
    assert amount(cm, "in") == told


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_edge_level_seam_ease_and_finished_measure_has_a_word(works, language):
    """They stand on labels ("free left none"), beside level lines, in remarks and on the cover."""
    names = {f.name for g in GARMENTS.values() for f in fields(g.spec) if f.name.endswith("ease")}
    for done in works:
        pattern = done.pattern.pattern
        names |= {name for name, _ in finished_measurements(pattern)}
        names |= {seam.name for seam in pattern.seams}
        names |= {edge.name for piece in pattern.pieces for edge in piece.edges}
        names |= {name for piece in pattern.pieces for name, _, _ in piece.levels}
    words = {name.replace("_", " ") for name in names}
    assert len(words) > 100
    assert {word for word in words if say(word, language) == word} == set()
