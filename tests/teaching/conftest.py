"""Every draft sheet, made once for all tests."""

from __future__ import annotations

import json
from collections.abc import Callable

import pytest
from carrying_out import Paper
from classroom import CASES, sheet_of, worked

from drafting.drawing import Sheet
from drafting.export import draft_json
from drafting.teaching.frames import frames
from drafting.teaching.taught import TaughtDraft
from drafting.workroom import Work

Case = tuple[str, str, str]


class Drafts(dict[Case, tuple[Work, TaughtDraft]]):
    """Every case's work and draft sheet, made when it is asked for."""

    def __missing__(self, case: Case) -> tuple[Work, TaughtDraft]:
        done = worked(*case)
        self[case] = (done, sheet_of(case[0], done))
        return self[case]


@pytest.fixture(scope="session", name="drafts")
def drafts_fixture() -> Drafts:
    return Drafts()


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


@pytest.fixture(scope="session", name="printed")
def printed_fixture() -> Callable[[Work, TaughtDraft], tuple[dict, Paper]]:
    """What was printed of a draft, as a client reads it, and carried out; made once."""
    made: dict[int, tuple[dict, Paper]] = {}

    def of(work: Work, draft: TaughtDraft) -> tuple[dict, Paper]:
        if id(draft) not in made:
            sheet = json.loads(draft_json.write(work, draft))
            made[id(draft)] = (sheet, Paper(sheet))
        return made[id(draft)]

    return of


@pytest.fixture(name="sheet")
def sheet_fixture(draft, printed) -> dict:
    return printed(*draft)[0]


@pytest.fixture(name="paper")
def paper_fixture(draft, printed) -> Paper:
    return printed(*draft)[1]
