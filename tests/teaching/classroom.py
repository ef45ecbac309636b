"""Works and draft sheets of every garment and method, on bodies at both ends of the tables."""

from __future__ import annotations

from dataclasses import fields
from typing import Literal, get_args, get_origin, get_type_hints

from drafting.body import SIZE_TABLES, Body, size_body
from drafting.garments import GARMENTS
from drafting.pattern import Finish
from drafting.teaching.form import DraftForm
from drafting.teaching.taught import TaughtDraft, teach
from drafting.workroom import Work, work


def methods() -> list[tuple[str, str]]:
    """Every garment with each of its drafting methods; "" where it has but one way."""
    found = []
    for kind, garment in GARMENTS.items():
        hint = get_type_hints(garment.spec).get("method")
        ways = get_args(hint) if get_origin(hint) is Literal else ("",)
        found += [(kind, way) for way in ways]
    return found


def options(kind: str) -> list[dict]:
    """Every value of every option that has a list of them, and yes and no, one at a time."""
    spec = GARMENTS[kind].spec
    hints = get_type_hints(spec)
    values = [(f.name, v) for f in fields(spec) for v in _listed(hints[f.name]) if f.name != "kind"]
    return [{name: value} for name, value in values]


def _listed(hint) -> tuple:
    if hint is bool:
        return (True, False)
    kinds = (hint, *get_args(hint))
    return tuple(v for part in kinds if get_origin(part) is Literal for v in get_args(part))


SMALLEST, LARGEST = next(iter(SIZE_TABLES["women"].sizes)), list(SIZE_TABLES["women"].sizes)[-1]
BODIES = ("sample", SMALLEST, LARGEST)


def body_of(kind: str, name: str) -> Body:
    if name == "sample":
        return Body.of(dict(GARMENTS[kind].sample))
    return size_body("women", name)


def worked(kind: str, method: str, name: str, **options) -> Work:
    garment = GARMENTS[kind]
    chosen = {"method": method} if method else {}
    spec = garment.spec(kind=kind, **chosen, **options)
    return work(garment, body_of(kind, name), spec, Finish())


def sheet_of(kind: str, done: Work, **form) -> TaughtDraft:
    return teach(done, GARMENTS[kind], DraftForm(**form))


FIRST = list({kind: (kind, method) for kind, method in reversed(methods())}.values())[::-1]
"""Every garment by its first method."""

CASES = [(kind, method, name) for kind, method in methods() for name in BODIES]
