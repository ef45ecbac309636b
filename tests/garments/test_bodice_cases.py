"""Bodices against worked numbers, before trueing, and the traps of their methods.

Source of each: the case file. Points to 0.01 cm; a curve through the same points may be 0.7 longer
or shorter than the worked one, which is a spline.
"""

from __future__ import annotations

import json
import math
from pathlib import Path as File

import pytest
import shapely

from drafting.body import Body
from drafting.body.prediction import predict
from drafting.craft.cap_curve import chord_widths
from drafting.craft.pivot import open_dart
from drafting.craft.sheet import DraftSheet
from drafting.garments.bodice import armhole_dart, shoulder_dart
from drafting.garments.bodice.figure import cup_letter, settle
from drafting.garments.bodice.sleeve import back_adds
from drafting.garments.bodice.spec import Bodice
from drafting.garments.bodice.waist import shaped, shares
from drafting.geometry import Point, polyline
from drafting.pattern import Edge

CASES = json.loads((File(__file__).parent / "cases" / "bodice.json").read_text("utf-8"))
METHODS = {"shoulder_dart": shoulder_dart.draft, "armhole_dart": armhole_dart.draft}


def drafted(method: str, measures: dict[str, float]):
    sheet = DraftSheet()
    body, cut = Body.of(measures), Bodice(kind="bodice", method=method)
    block = METHODS[method](body, settle(body, cut, 0.0, sheet), sheet)
    shaped(block, body, 6.0, sheet)
    return block, {s.name: s.value for s in sheet.steps}


@pytest.fixture(name="case", params=CASES["blocks"], ids=lambda c: c["name"])
def case_fixture(request):
    return request.param


def tape(path) -> float:
    return shapely.LineString([(p.x, p.y) for p in path.flattened(0.001)]).length


def test_every_length_and_point_comes_out(case):
    _, told = drafted(case["method"], case["measures"])
    for name, wanted in case["lengths"].items():
        assert float(told[name]) == pytest.approx(wanted, abs=0.005), name
    for name, (x, y) in case["points"].items():
        assert (told[name].x, -told[name].y) == pytest.approx((x, y), abs=0.01), name


def test_the_dart_opens_by_its_angle_and_the_armhole_has_its_length(case):
    block, _ = drafted(case["method"], case["measures"])
    front = block.front
    assert float(front.angle) == pytest.approx(case["angle"], abs=0.01)
    parts = [block.back.armhole.path, front.armhole.path]
    parts += [] if front.above is None else [front.above.path]
    assert sum(map(tape, parts)) == pytest.approx(case["armhole"], abs=0.7)


@pytest.mark.parametrize(
    "case", [c for c in CASES["blocks"] if "slope_closed" in c], ids=lambda c: c["name"]
)
def test_the_front_shoulder_of_a_full_bust_is_not_left_too_square(case):
    """Trap: 15.9, 12.1 and 8.8 degrees at bust 88, 100 and 112 as published; 14 to 18 are held."""
    block, told = drafted(case["method"], case["measures"])
    plain = slope(told["bust dart, outer leg"], told["front shoulder end"]) - case["angle"]
    assert plain == pytest.approx(case["slope_closed"], abs=0.02)
    assert ("raised front neck point" in told) == case["raised"]
    held = slope(block.front.start, block.front.shoulder) - float(block.front.angle)
    assert 14.0 - 1e-6 <= held <= 18.0


def slope(a, b) -> float:
    return math.degrees(math.atan2(a.y - b.y, a.x - b.x))


@pytest.mark.parametrize("bust", [104, 116, 128, 140, 152])
def test_the_shoulder_is_held_on_every_larger_body(bust):
    names = ("neck_base_girth", "across_back_width", "across_front_width", "shoulder_length",
             "scye_depth_length", "back_neck_point_to_waist")  # fmt: skip
    found = predict("women", {"bust_girth": bust, "stature": 166.0}, names)
    measures = {n: found[n].value for n in names} | {"bust_girth": bust, "waist_girth": bust - 18}
    block, _ = drafted("shoulder_dart", measures)
    held = slope(block.front.start, block.front.shoulder) - float(block.front.angle)
    assert 13.9 < held < 24.0


def test_a_sleeve_for_the_armhole_dart_is_measured_with_the_dart_closed():
    """Trap: measured open, the cap is 1.7 cm higher and the sleeve 3.4 cm too narrow."""
    case, wanted = CASES["blocks"][3], CASES["sleeve_closed"]
    block, _ = drafted(case["method"], case["measures"])
    front = block.front
    closed = turned(front.shoulder, front.bust_point, float(front.angle))
    back, line = block.back.shoulder, -front.bust_point.y
    depth = (line + back.y + line + closed[1]) / 2
    assert depth == pytest.approx(wanted["mean_depth"], abs=0.01)
    assert depth * 5 / 6 == pytest.approx(wanted["cap"], abs=0.01)
    halves = chord_widths(20.488, 21.819 + 1.0, depth * 5 / 6)
    assert sum(halves) == pytest.approx(wanted["width"], abs=0.01)
    open_depth = (line + back.y + line + front.shoulder.y) / 2
    assert open_depth * 5 / 6 == pytest.approx(wanted["open_cap"], abs=0.1)
    assert sum(chord_widths(20.488, 22.819, open_depth * 5 / 6)) == pytest.approx(28.4, abs=0.2)


def turned(point, pivot, degrees) -> tuple[float, float]:
    a = math.radians(degrees)
    x, y = point.x - pivot.x, point.y - pivot.y
    return (
        pivot.x + x * math.cos(a) - y * math.sin(a),
        pivot.y + x * math.sin(a) + y * math.cos(a),
    )


def test_the_back_of_the_sleeve_is_longer_by_the_bust():
    for bust, more in CASES["sleeve_adds"]["rows"]:
        assert back_adds(bust) == more


@pytest.mark.parametrize(("leg", "width"), CASES["dart"]["legs"])
def test_a_dart_is_as_wide_as_its_angle_opens_at_its_length(leg, width):
    """A straight edge `leg` away from the pivot is cut and turned: the mouth is measured."""
    pivot = Point(0.0, 0.0)
    edge = Edge("side", polyline(Point(-leg, 5.0), Point(-leg, 0.0), Point(-leg, -5.0)))
    angle = CASES["dart"]["angle"]
    done = open_dart((edge,), "side", 5.0, pivot, angle, 0.0)
    assert done.dart.intake == pytest.approx(width, abs=0.01)


def test_a_cup_is_a_letter_to_the_inch_and_widens_the_dart():
    base = CASES["blocks"][0]["measures"] | {"upper_chest_girth": 88 - 5.08}
    plain, _ = drafted("shoulder_dart", base)
    for inches, letter in CASES["cups"]["rows"]:
        steps = inches - 2
        assert cup_letter(steps) == letter
        measures = base | {"upper_chest_girth": 88 - 2.54 * inches}
        for method in METHODS:
            by_cup, _ = drafted(method, measures)
            own, _ = drafted(method, base)
            more = float(by_cup.front.angle) - float(own.front.angle)
            # the leg that a width is turned into an angle by is rounded; 3 in 100 of it
            assert more == pytest.approx(5.4 * steps, abs=0.3)
    by_under, _ = drafted("shoulder_dart", base | {"under_bust_girth": 88 - 17.0})
    assert float(by_under.front.angle) == pytest.approx(float(plain.front.angle), abs=0.1)


def test_a_measured_bust_point_is_taken_at_its_word():
    base = CASES["blocks"][0]["measures"]
    measures = base | {"bust_point_width": 18.0, "side_neck_point_to_bust_point": 27.0}
    for method in METHODS:
        block, told = drafted(method, measures)
        assert block.levels.front_bust.x - block.front.bust_point.x == pytest.approx(9.25, abs=1e-6)
        neck = told["front neck point"]
        assert neck.distance(block.front.bust_point) == pytest.approx(27.0, abs=0.01)


def test_a_longer_front_raises_the_neck_by_as_much():
    base = CASES["blocks"][0]["measures"]
    # by itself the front is as long as the nape's height over the waist and 1.5: 42.5
    block, told = drafted("shoulder_dart", base | {"side_neck_point_to_waist_front": 44.0})
    assert float(told["raised front neck"]) == pytest.approx(1.5, abs=1e-6)
    assert block.front.neck.y == pytest.approx(1.5)


def test_a_small_neck_and_a_short_shoulder_are_not_graded_with_the_bust():
    """Trap: by the bust alone the neckline of bust 132 is 48.7; bodies of that bust have 43."""
    measures = {"bust_girth": 132, "waist_girth": 118, "back_neck_point_to_waist": 40,
                "neck_base_girth": 43.0, "shoulder_length": 13.8}  # fmt: skip
    block, told = drafted("armhole_dart", measures)
    whole = (
        2 * (5.51 / 2) * float(told["front neck point"].x - told["top of the centre front"].x) * -1
    )
    assert whole <= 43.0 + 2.6
    assert block.front.neck.distance(block.front.shoulder) <= 13.8 + 1.0 + 1e-6


def test_what_the_waist_loses_is_shared_as_published():
    case = CASES["waist"]
    taken = shares(case["reduction"], DraftSheet())
    assert 2 * float(taken.side) == pytest.approx(case["side"], abs=0.01)
    assert [float(b) for b in taken.back] == pytest.approx([case["back"]], abs=0.01)
    assert float(taken.front) == pytest.approx(case["front"], abs=0.01)


@pytest.mark.parametrize("reduction", [-6.0, -1.0, 0.5, 3.0, 9.0, 15.0, 18.0, 24.0])
def test_darts_and_sides_take_all_that_is_to_be_taken(reduction):
    taken = shares(reduction, DraftSheet())
    whole = 2 * float(taken.side) + sum(map(float, taken.back)) + float(taken.front) + taken.loose
    assert whole == pytest.approx(reduction, abs=1e-6)
    assert all(0 < float(b) <= 3.6 for b in taken.back)
    assert float(taken.front) <= 4.5
    assert float(taken.side) <= 3.5
