"""Each structural check finds nothing on the plain skirt, and finds its fault on a spoilt one."""

from __future__ import annotations

import inspect
import math
import pkgutil
from dataclasses import replace
from importlib import import_module
from typing import get_type_hints

import pytest
from skirt_on_paper import (
    HIP,
    HIP_WANT,
    INTAKE,
    LONG,
    SIDE,
    WAIST,
    WIDE,
    back,
    band,
    beside,
    cut_out,
    edge,
    finished,
    front,
    skirt,
    with_edge,
)

import drafting.checks
from drafting.checks import CHECKS, check, copies
from drafting.geometry import Path, Point, bulged, polyline
from drafting.pattern import (
    AngleBetween,
    Cut,
    Edge,
    FinishedPattern,
    Notch,
    Piece,
    Pleat,
    Role,
    Seam,
    SeamPart,
    Want,
)


def spoilt(*pieces: Piece, **more: object) -> FinishedPattern:
    return finished(skirt(*pieces, **more))


def front_with(**changes: object) -> FinishedPattern:
    return spoilt(replace(front(), **changes))


def front_edge(*points: tuple[float, float]) -> FinishedPattern:
    return spoilt(with_edge(front(), edge("side", *points, kind="side")))


def front_dart(**changes: object) -> FinishedPattern:
    return front_with(darts=(replace(front().darts[0], **changes),))


def front_pleat(**changes: object) -> FinishedPattern:
    one, two = (polyline(Point(x, LONG), Point(x, 48)) for x in (13.5, 10.5))
    return front_with(darts=(), pleats=(replace(Pleat("waist", one, two), **changes),))


def down(*points: tuple[float, float]) -> Path:
    return polyline(*(Point(x, y) for x, y in points))


def back_notch(at: float, count: int = 1, match: str = "hip") -> FinishedPattern:
    return spoilt(replace(back(), notches=(Notch("side", at, count, match), back().notches[1])))


def cut_as(line: Path) -> FinishedPattern:
    return finished(skirt(), cut_out(front(), line=line))


def without(name: str) -> FinishedPattern:
    return finished(replace(skirt(), seams=tuple(s for s in skirt().seams if s.name != name)))


def sewn(*seams: Seam) -> FinishedPattern:
    return finished(replace(skirt(), seams=(*skirt().seams, *seams)))


def clockwise() -> Piece:
    edges = tuple(e.reversed() for e in reversed(front().edges))
    darts = tuple(replace(d, first=d.second, second=d.first) for d in front().darts)
    return replace(front(), edges=edges, darts=darts)


SHORT_CUT = polyline(
    Point(-1, -1),
    Point(WIDE + 0.8, -1),
    Point(WIDE + 0.8, LONG + 1),
    Point(-1, LONG + 1),
    Point(-1, -1),
)
CROSSED_CUT = polyline(
    Point(-1, -1),
    Point(25, -1),
    Point(25, 62),
    Point(-2, 62),
    Point(-2, 61),
    Point(20, 63),
    Point(-1, -1),
)
INSIDE_CUT = polyline(Point(1, -1), Point(25, -1), Point(25, 61), Point(1, 61), Point(1, -1))

HIDDEN_LEVEL = (("hip", Point(0, HIP), Point(WIDE - 1, HIP)),)
HOLLOW = polyline(*(Point(x, y) for x, y in ((0, LONG), (0, 41), (6, 40), (0, 39), (0, 0))))
CROSSES_HOLLOW = (("hip", Point(0, 39.0), Point(0, 41.0)),)

FAULTS: list[tuple[str, str, FinishedPattern]] = [
    ("names_once", "name_twice", front_with(edges=(*front().edges, front().edges[0]))),
    ("names_once", "name_twice", finished(replace(skirt(), pieces=(*skirt().pieces, band())))),
    ("names_once", "name_twice", sewn(SIDE)),
    ("edges_used_once", "edge_not_sewn", without("centre_front")),
    ("edges_used_once", "edge_not_sewn", without("side")),
    ("edges_used_once", "edge_sewn_twice", sewn(replace(SIDE, name="again"))),
    (
        "edges_used_once",
        "edge_sewn_twice",
        sewn(Seam("hem", (SeamPart("front", "hem"),), (SeamPart("back", "hem"),))),
    ),
    (
        "edges_used_once",
        "edge_not_sewn",  # the left centre front is forgotten, the right taken twice
        finished(
            replace(
                skirt(),
                seams=(
                    SIDE,
                    WAIST,
                    Seam(
                        "c",
                        (SeamPart("front", "centre", "right"),),
                        (SeamPart("front", "centre", "right"),),
                    ),
                ),
            )
        ),
    ),
    (
        "edges_used_once",
        "seam_copies_differ",
        spoilt(replace(back(), cut=(Cut("main", 1),))),
    ),
    ("outlines_sound", "outline_open", front_edge((WIDE, 0), (WIDE, LONG - 0.01))),
    ("outlines_sound", "outline_crosses", front_edge((WIDE, 0), (-3, 30), (WIDE, LONG))),
    ("outlines_sound", "outline_crosses", front_edge((WIDE, 0), (0, 30), (WIDE, LONG))),
    ("outlines_sound", "outline_clockwise", spoilt(clockwise())),
    ("darts_sound", "dart_legs_differ", front_dart(point=Point(12.3, 48))),
    ("darts_sound", "dart_off_edge", front_dart(first=Point(13.5, LONG - 0.1))),
    (
        "darts_sound",
        "dart_off_edge",  # named against the walk
        front_dart(first=front().darts[0].second, second=front().darts[0].first),
    ),
    ("darts_sound", "dart_point_outside", front_dart(point=Point(12, 72))),
    ("darts_sound", "drill_outside_dart", front_dart(drill=Point(12, 47.5))),
    ("darts_smooth", "dart_not_smooth", spoilt()),
    ("darts_smooth", "pleat_not_smooth", front_pleat(one=down((13.5, LONG), (12.2, 48)))),
    ("pleats_sound", "pleat_legs_differ", front_pleat(one=down((13.5, LONG), (13.5, 50)))),
    ("pleats_sound", "pleat_off_edge", front_pleat(one=down((13.5, LONG - 0.1), (13.5, 48)))),
    (
        "pleats_sound",
        "pleat_off_edge",  # named against the walk
        front_pleat(one=down((10.5, LONG), (10.5, 48)), two=down((13.5, LONG), (13.5, 48))),
    ),
    (
        "pleats_sound",
        "pleat_outside",
        front_pleat(one=down((13.5, LONG), (13.5, -1)), two=down((10.5, LONG), (10.5, -1))),
    ),
    ("lines_inside", "level_off_outline", front_with(levels=HIDDEN_LEVEL)),
    (
        "lines_inside",
        "level_outside",
        spoilt(
            replace(
                with_edge(front(), Edge("centre", HOLLOW)),
                levels=CROSSES_HOLLOW,
            )
        ),
    ),
    ("lines_inside", "grain_outside", front_with(grain=(Point(12, -5), Point(12, 40)))),
    ("lines_inside", "grain_not_upright", front_with(grain=(Point(12, 40), Point(12, 5)))),
    ("lines_inside", "grain_not_upright", front_with(grain=(Point(12, 5), Point(12.1, 40)))),
    ("lines_inside", "grain_not_upright", front_with(grain=(Point(12, 5), Point(12, 5)))),
    ("notches_on_edges", "notch_off_edge", back_notch(LONG + 0.5)),
    ("notches_meet", "notch_shifted", back_notch(LONG - HIP + 0.2)),
    ("notches_meet", "notch_shifted", back_notch(HIP)),  # as if the back were not reversed
    ("notches_meet", "notch_count_differs", back_notch(LONG - HIP, count=2)),
    ("notches_meet", "notch_unpaired", back_notch(LONG - HIP, match="knee")),
    (
        "notches_meet",
        "notch_shifted",  # the dart's mouth was not left out
        spoilt(
            replace(front(), notches=(front().notches[0], Notch("waist", 20 - INTAKE, 1, "front")))
        ),
    ),
    ("seams_match", "seam_mismatch", front_edge((WIDE, 0), (WIDE + 3, 30), (WIDE, LONG))),
    ("seams_match", "seam_mismatch", spoilt(replace(front(), darts=()))),
    (
        "cut_lines_sound",
        "cut_line_open",
        cut_as(polyline(Point(-1, -1), Point(25, -1), Point(25, 61))),
    ),
    ("cut_lines_sound", "cut_line_crosses", cut_as(CROSSED_CUT)),
    ("cut_lines_sound", "cut_line_clockwise", cut_as(beside(front(), 1).reversed())),
    ("cut_lines_sound", "stitch_line_outside", cut_as(INSIDE_CUT)),
    ("allowances_kept", "allowance_short", cut_as(SHORT_CUT)),
    ("allowances_kept", "allowance_short", cut_as(beside(front(), 0.98))),
    ("allowances_agree", "allowances_differ", finished(skirt(), cut_out(front(), 1.5))),
]


@pytest.mark.parametrize(
    ("name", "code", "pattern"), FAULTS, ids=lambda v: v if isinstance(v, str) else ""
)
def test_the_fault_is_found(name, code, pattern):
    assert code in {f.code for f in CHECKS[name](pattern)}


def test_every_check_in_the_table_is_seen_to_fail():
    assert {name for name, _, _ in FAULTS} == set(CHECKS)


@pytest.mark.skipif(not inspect.isfunction(check), reason="compiled functions tell no types")
def test_every_check_that_is_written_is_in_the_table():
    written = {
        name
        for module in pkgutil.iter_modules(drafting.checks.__path__)
        for name, f in inspect.getmembers(
            import_module(f"drafting.checks.{module.name}"), inspect.isfunction
        )
        if not name.startswith("_")
        and f.__module__ == f"drafting.checks.{module.name}"
        and list(inspect.signature(f).parameters) == ["finished"]
        and get_type_hints(f)["finished"] is FinishedPattern
    }
    assert written == set(CHECKS)
    assert all(f.__name__ == name for name, f in CHECKS.items())


@pytest.mark.parametrize("name", [n for n in CHECKS if n != "darts_smooth"])
def test_nothing_is_found_on_the_plain_skirt(name):
    assert not CHECKS[name](finished(skirt()))


def test_edges_that_meet_but_for_rounding_do_not_cross():
    slipped = front_edge((WIDE + 4e-7, 3e-7), (WIDE - 4e-7, LONG - 4e-7))
    assert not CHECKS["outlines_sound"](slipped)


def test_a_dart_cap_may_dip_under_the_mouth_but_the_waist_beside_it_may_not():
    dipped = [
        Point(0, 0),
        Point(WIDE, 0),
        Point(WIDE, LONG),
        Point(13.5, LONG),
        Point(12, LONG - 0.3),
    ]
    for end, found in ((10.5, set()), (9.0, {"stitch_line_outside"})):
        line = polyline(*dipped, Point(end, LONG), Point(0, LONG), Point(0, 0))
        assert {f.code for f in CHECKS["cut_lines_sound"](cut_as(line))} == found


def test_a_forgotten_edge_is_named_with_its_hand():
    found = CHECKS["edges_used_once"](without("centre_front"))
    assert [f.where for f in found] == ["front.centre", "front.centre"]
    assert "right front" in found[0].message
    assert "left front" in found[1].message


def test_a_shifted_notch_is_told_with_the_shift():
    (found,) = CHECKS["notches_meet"](back_notch(LONG - HIP + 0.2))
    assert found.measured == pytest.approx(0.2, abs=1e-6)
    assert found.where == "side"


@pytest.mark.parametrize("shift", [-0.04, 0.04])
def test_a_notch_within_half_a_millimetre_meets(shift):
    assert not CHECKS["notches_meet"](back_notch(LONG - HIP + shift))


def test_a_notch_may_meet_a_joint_but_not_beside_it():
    # the band's "side" notches meet the trousers' side seams, where nothing is notched
    moved = replace(
        band(),
        notches=tuple(replace(n, at=n.at + 0.2 * (n.match == "side")) for n in band().notches),
    )
    found = CHECKS["notches_meet"](spoilt(moved))
    assert [f.code for f in found] == ["notch_unpaired", "notch_unpaired"]


def test_a_bowed_hem_has_its_level_on_the_chord_of_the_hem():
    hem = Edge("hem", Path((bulged(Point(0, 0), Point(WIDE, 0), 0.4),)), Role.HEM)
    assert not CHECKS["lines_inside"](spoilt(with_edge(front(), hem)))


def test_a_half_is_cut_on_the_fold_and_sewn_on_both_sides():
    folded = with_edge(front(), replace(front().edge("centre"), role=Role.FOLD))
    half = replace(folded, cut=(Cut("main", 1),), half=True)
    assert copies(half) == {"right": 1, "left": 1}
    seams = tuple(s for s in skirt().seams if s.name != "centre_front")
    assert not CHECKS["edges_used_once"](finished(skirt(half, seams=seams)))


def test_fusible_is_not_sewn():
    assert copies(band()) == {"single": 1}
    assert copies(replace(band(), cut=(Cut("fusible", 2),))) == {}


def test_a_must_that_fails_is_an_error_and_advice_a_warning():
    narrow = with_edge(front(), edge("side", (WIDE, 0), (WIDE - 2, HIP), (WIDE, LONG), kind="side"))
    advice = replace(HIP_WANT, name="hip_advice", kind="advice")
    met = Want(
        name="side_waist_angle",
        measuring=AngleBetween((("back", "waist", "side"),)),
        wanted=90,
        low=87,
        high=93,
        unit="deg",
    )
    checks, found = check(spoilt(narrow, wants=(HIP_WANT, advice, met)))
    assert [c.passed for c in checks] == [False, False, True]
    assert checks[0].drafted == pytest.approx(4 * WIDE - 4, abs=1e-6)
    assert (checks[0].wanted, checks[0].low, checks[0].high) == (96.0, 95.5, 97.0)
    failed = {f.code: f for f in found if f.code.startswith("failed_")}
    assert failed.keys() == {"failed_finished_hip_girth", "failed_hip_advice"}
    must = failed["failed_finished_hip_girth"]
    assert must.severity == "error"
    assert must.measured == pytest.approx(92, abs=1e-6)
    assert must.allowed == (95.5, 97.0)
    assert failed["failed_hip_advice"].severity == "warning"


@pytest.mark.parametrize(
    ("bounds", "told"),
    [((97, math.inf), "allowed is at least 97.00 cm"), ((-math.inf, 95), "is at most 95.00 cm")],
)
def test_a_wish_with_one_bound_fails_by_that_alone(bounds, told):
    open_ended = replace(HIP_WANT, low=bounds[0], high=bounds[1])
    _, found = check(spoilt(wants=(open_ended,)))
    (failed,) = [f for f in found if f.code.startswith("failed_")]
    assert told in failed.message
    assert failed.allowed == bounds


def test_the_plain_skirt_is_sound_and_its_wish_is_met():
    checks, found = check(spoilt(wants=(HIP_WANT,)))
    assert [c.passed for c in checks] == [True]
    assert {f.severity for f in found} == {"warning"}
    assert {f.code for f in found} == {"dart_not_smooth"}


def test_the_wish_does_not_look_at_the_drawing_and_the_drawing_not_at_the_wish():
    checks, _ = check(spoilt(wants=(replace(HIP_WANT, wanted=50.0, low=49.0, high=51.0),)))
    assert (checks[0].wanted, checks[0].drafted) == (50.0, pytest.approx(4 * WIDE))
