"""A body and a garment on the table."""

from __future__ import annotations

import pytest

from drafting.body import Body
from drafting.garments import GARMENTS
from drafting.pattern import Finish
from drafting.workroom import Work, work

STANDARD = {
    "waist_girth": 74.0,
    "hip_girth": 101.0,
    "body_rise": 27.5,
    "side_waist_to_hip": 20.5,
    "outside_leg_length": 103.0,
}


def make(measures: dict[str, float] | None = None, finish: Finish | None = None, **options) -> Work:
    garment = GARMENTS["trousers"]
    body = Body.of({**STANDARD, **(measures or {})})
    return work(garment, body, garment.spec(kind="trousers", **options), finish or Finish())


@pytest.fixture(name="make")
def make_fixture():
    return make
