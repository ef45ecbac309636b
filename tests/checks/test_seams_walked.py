"""Seams: lengths, ease, and the walk along both sides."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from skirt_on_paper import (
    BAND,
    HIP,
    LONG,
    SEWN,
    SIDE,
    WAIST,
    WIDE,
    back,
    band,
    cut_out,
    dart,
    edge,
    finished,
    front,
    skirt,
    with_edge,
)

from drafting.checks import CHECKS, check, seams, walk
from drafting.checks.sewing import laid, side, unfolded
from drafting.geometry import Point, polyline
from drafting.pattern import Dart, Ease, Edge, Notch, Piece, Seam, SeamPart


def longer_back(by: float) -> Piece:
    """The back's side seam made longer by a tooth to the side."""
    high = LONG / 2
    out = (((LONG + by) / 2) ** 2 - high**2) ** 0.5
    return with_edge(back(), edge("side", (0, LONG), (-out, high), (0, 0), kind="side"))


def named(name: str, *pieces: Piece, seam: Seam | None = None):
    pattern = skirt(*pieces) if seam is None else skirt(*pieces, seams=(seam,))
    return next(m for m in seams(pattern) if m.seam.name == name)


def test_the_sides_of_the_plain_skirt_agree():
    pattern = skirt()
    assert [m.seam for m in seams(pattern)] == list(pattern.seams)
    assert all(m.matches and abs(m.difference) < 1e-6 for m in seams(pattern))
    assert not CHECKS["seams_match"](finished(pattern))


def test_lengths_are_of_one_copy_and_the_sums_count_all():
    waist = named("waist")
    assert waist.lengths[0] == pytest.approx((SEWN, SEWN), abs=1e-6)
    assert waist.lengths[1] == pytest.approx((BAND,), abs=1e-6)
    assert waist.difference == pytest.approx(0, abs=1e-6)


def test_a_mismatch_of_two_millimetres_fails():
    measured = named("side", longer_back(0.2))
    assert measured.difference == pytest.approx(-0.2, abs=1e-6)
    assert not measured.matches
    found = check(finished(skirt(longer_back(0.2))))[1]
    mismatch = next(f for f in found if f.code == "seam_mismatch")
    assert (mismatch.where, mismatch.severity) == ("side", "error")
    assert mismatch.measured == pytest.approx(-0.2, abs=1e-6)
    assert mismatch.allowed == (-0.05, 0.05)


@given(st.floats(0.001, 0.3))
def test_a_seam_matches_up_to_half_a_millimetre(by):
    assert named("side", longer_back(by)).matches == (by <= 0.05)


@pytest.mark.parametrize(
    ("ease", "matches"),
    [
        (Ease("ease", 0.2), True),
        (Ease("ease", 0.2, 0.2, 0.2), True),
        (Ease("ease", 0.4), False),
        (Ease("ease", 0.4, 0.0, 0.5), True),
        (Ease("ease", 0.4, 0.3, 0.5), False),
        (Ease("stretch", 0.0, 0.0, 0.16), True),
        (Ease("stretch", 0.0, 0.0, 0.14), False),
        (Ease(), False),
    ],
)
def test_ease_is_by_how_much_side_one_is_longer(ease, matches):
    # the back, longer by 0.2, is side one here (0.16 passes with the tolerance of 0.05)
    seam = Seam("side", SIDE.two, SIDE.one, ease)
    measured = named("side", longer_back(0.2), seam=seam)
    assert measured.matches is matches
    assert measured.difference == pytest.approx(0.2 - ease.wanted, abs=1e-6)


def test_both_is_laid_as_right_and_then_the_left_in_mirror():
    order = [(copy.part.piece, copy.against) for copy in laid(WAIST.one)]
    assert order == [("front", True), ("back", True), ("back", False), ("front", False)]


def test_several_copies_of_a_gore_lie_end_to_end():
    parts = (SeamPart("front", "hem", "each", 3),)
    assert side(skirt(), parts).joints == pytest.approx((0, WIDE, 2 * WIDE, 3 * WIDE))


def test_marks_lie_at_their_sewn_distance_from_the_start_of_the_seam():
    walked = side(skirt(), WAIST.one)
    assert [(m.match, round(m.at, 4)) for m in walked.marks] == [
        ("front", 4.0),
        ("back", 2 * SEWN - 5),
        ("back", 2 * SEWN + 5),
        ("front", BAND - 4),
    ]
    assert walked.joints == pytest.approx((0, SEWN, 2 * SEWN, 3 * SEWN, BAND), abs=1e-6)


@given(st.floats(0, WIDE), st.floats(3, 20), st.floats(0.5, 5), st.booleans())
def test_walking_by_numbers_and_unfolding_on_paper_find_the_same(at, middle, intake, against):
    wedge = dart(middle, intake)
    waist = Edge(
        "waist",
        polyline(Point(WIDE, LONG), wedge.first, wedge.second, Point(0, LONG)),
        kind="waist",
    )
    piece = with_edge(
        replace(front(), darts=(wedge,), notches=(Notch("waist", at, 1, "n"),)), waist
    )
    parts = (SeamPart("front", "waist", reversed=against),)
    counted, rolled = side(skirt(piece), parts), unfolded(skirt(piece), parts)
    assert rolled.length == pytest.approx(counted.length, abs=1e-4)
    assert rolled.marks[0].at == pytest.approx(counted.marks[0].at, abs=1e-4)


def test_the_walk_along_the_plain_skirt_leaves_no_gap():
    pattern = skirt()
    assert max(walk(pattern, seam) for seam in pattern.seams) < 1e-4


@given(st.floats(0.01, 1))
def test_the_walk_finds_the_gap_at_the_end(by):
    # without the hip notch, which lies off the tooth by another amount
    piece = replace(longer_back(by), notches=back().notches[1:])
    assert walk(skirt(piece), SIDE) == pytest.approx(by, abs=1e-3)


@given(st.floats(-3, 3))
def test_the_walk_finds_the_gap_between_notches(by):
    piece = replace(back(), notches=(Notch("side", LONG - HIP + by, 1, "hip"),))
    assert walk(skirt(piece), SIDE) == pytest.approx(abs(by), abs=1e-4)


def test_the_walk_feels_a_dart_that_does_not_close():
    # one leg is longer than the other by 0.37: the waist steps there
    crooked = Dart(
        "waist", Point(13.5, LONG), Point(10.5, LONG), Point(13.5, LONG - 12), Point(13, 50)
    )
    pattern = skirt(replace(front(), darts=(crooked,)))
    step = (3**2 + 12**2) ** 0.5 - 12
    assert walk(pattern, WAIST) == pytest.approx(2 * step, abs=1e-3)


def test_wanted_ease_is_no_gap_and_more_than_wanted_is():
    eased = replace(WAIST, ease=Ease("ease", 1.0, 0.0, 1.0))
    short = with_edge(band(), edge("lower", (0, 0), (BAND - 1, 0)))
    assert walk(skirt(short), eased) < 1e-4
    assert walk(skirt(short), WAIST) == pytest.approx(1, abs=1e-4)
    shorter = with_edge(band(), edge("lower", (0, 0), (BAND - 1.5, 0)))
    assert walk(skirt(shorter), eased) == pytest.approx(0.5, abs=1e-4)


def test_where_ease_begins_after_a_notch_the_notch_is_no_gap():
    # all the ease lies behind the first notch, so that the first notches meet exactly
    eased = replace(WAIST, ease=Ease("ease", 1.0, 0.5, 1.0))
    notches = tuple(n for n in band().notches if n.match == "front")[:1]
    short = replace(with_edge(band(), edge("lower", (0, 0), (BAND - 1, 0))), notches=notches)
    plain = replace(back(), notches=back().notches[:1])
    pattern = skirt(short, plain, seams=(eased,))
    assert walk(pattern, eased) < 1e-4
    ahead = replace(short, notches=(replace(notches[0], at=notches[0].at + 0.3),))
    assert walk(skirt(ahead, plain), eased) == pytest.approx(0.3, abs=1e-4)


def test_a_mismatch_is_told_with_the_ease_that_was_found():
    eased = replace(WAIST, ease=Ease("ease", 1.0, 0.0, 1.0))
    short = with_edge(band(), edge("lower", (0, 0), (BAND - 2, 0)))
    (found,) = CHECKS["seams_match"](finished(skirt(short, seams=(eased,))))
    assert found.measured == pytest.approx(2.0, abs=1e-6)
    assert found.allowed == (-0.05, 1.05)


def test_eased_seams_may_be_cut_with_different_allowances():
    eased = replace(WAIST, ease=Ease("ease", 1.0, 0.0, 1.0))
    for seam, warned in ((WAIST, True), (eased, False)):
        pattern = finished(skirt(seams=(seam,)), cut_out(band(), 1.5))
        assert bool(CHECKS["allowances_agree"](pattern)) is warned
