"""Orders that several tests lay."""

from __future__ import annotations

import pytest
from orders import trousers


@pytest.fixture(name="standard", scope="session")
def standard_order():
    return trousers()


@pytest.fixture(name="sizes", scope="session")
def four_sizes():
    return (
        trousers("first"),
        trousers("second", waist_girth=66.0, hip_girth=92.0),
        trousers("third", waist_girth=82.0, hip_girth=108.0, outside_leg_length=106.0),
        trousers("fourth", waist_girth=90.0, hip_girth=114.0, outside_leg_length=104.0),
    )
