"""What the garments of the house say: each value of each option by itself."""

from __future__ import annotations

import dataclasses
import typing

import pytest

from drafting.body import Body
from drafting.errors import DraftingError
from drafting.garments import GARMENTS
from drafting.pattern import Finish
from drafting.workroom import work


def values(hint) -> tuple:
    """The words of a choice, and yes and no; none for a length."""
    if typing.get_origin(hint) is typing.Literal:
        return typing.get_args(hint)
    return (True, False) if hint is bool else ()


def choices(spec: type) -> list[dict]:
    """Every value of every option that has a list of them, one at a time."""
    hints, found = typing.get_type_hints(spec), [{}]
    for field in dataclasses.fields(spec):
        for hint in (hints[field.name], *typing.get_args(hints[field.name])):
            if field.name != "kind":
                found += [{field.name: value} for value in values(hint)]
    return found


@pytest.fixture(scope="session")
def works():
    found = []
    for kind, garment in GARMENTS.items():
        body = Body.of(dict(garment.sample))
        for choice in choices(garment.spec):
            try:
                found.append(work(garment, body, garment.spec(kind=kind, **choice), Finish()))
            except (DraftingError, TypeError):
                continue  # a choice that excludes a default
    return found
