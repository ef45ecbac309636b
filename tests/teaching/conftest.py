"""Every draft sheet, made once for all tests."""

from __future__ import annotations

import json
from collections.abc import Callable

import pytest
from classroom import CASES, sheet_of, worked

from drafting.drawing import Sheet
from drafting.export import draft_json
from drafting.teaching.frames import frames
from drafting.teaching.taught import TaughtDraft
from drafting.workroom import Work


@pytest.fixture(scope="session", name="drafts")
def drafts_fixture() -> dict[tuple[str, str, str], tuple[Work, TaughtDraft]]:
    found = {}
    for case in CASES:
        done = worked(*case)
        found[case] = (done, sheet_of(case[0], done))
    return found


@pytest.fixture(name="draft", params=CASES, ids=lambda c: "-".join(filter(None, c)))
def draft_fixture(request, drafts) -> tuple[Work, TaughtDraft]:
    return drafts[request.param]


@pytest.fixture(scope="session", name="pictures")
def pictures_fixture(drafts) -> Callable[[TaughtDraft], tuple[Sheet, ...]]:
    """The pictures of all steps of a draft, made once."""
    made: dict[int, tuple[Sheet, ...]] = {}

    def of(draft: TaughtDraft) -> tuple[Sheet, ...]:
        if id(draft) not in made:
            made[id(draft)] = tuple(frames(draft))
        return made[id(draft)]

    return of


@pytest.fixture(name="sheet")
def sheet_fixture(draft) -> dict:
    """What was printed, as a client reads it."""
    return json.loads(draft_json.write(*draft))
