"""One pair of trousers for an invented person, drafted once for all tests of formats."""

import pytest

from drafting.body import Body
from drafting.drawing import Output
from drafting.garments.trousers import GARMENT
from drafting.garments.trousers.spec import Trousers
from drafting.pattern import Finish
from drafting.workroom import work


def draft(reference="order 1042", finish=None, **options):
    return work(
        GARMENT,
        Body.of(dict(GARMENT.sample)),
        Trousers(kind="trousers", **options),
        finish or Finish(),
        reference=reference,
    )


@pytest.fixture(scope="session")
def trousers():
    return draft()


@pytest.fixture(scope="session")
def drafting_again():
    return draft


@pytest.fixture
def output():
    return Output()
