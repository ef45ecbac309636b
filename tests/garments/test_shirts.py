"""Shirts, option by option, measured on what was cut; what cannot be had is refused by name."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
import shapely

from drafting.body import Body
from drafting.checks import check, finished_measurements
from drafting.errors import SpecError
from drafting.garments import GARMENTS
from drafting.geometry import Path, scale
from drafting.pattern import Finish, Piece
from drafting.pattern.finish import finish_pattern
from drafting.workroom import Work, work

SHIRT = GARMENTS["shirt"]
MAN = {
    "bust_girth": 102.0, "waist_girth": 88.0, "hip_girth": 102.0, "neck_girth": 39.0,
    "across_back_width": 41.5, "scye_depth_length": 24.5, "back_neck_point_to_waist": 45.0,
    "upper_arm_girth": 33.0, "outer_arm_length": 60.0, "wrist_girth": 17.5, "shoulder_length": 15.0,
}  # fmt: skip
WOMAN = {
    "bust_girth": 92.0, "waist_girth": 74.0, "hip_girth": 98.0, "neck_girth": 34.0,
    "across_back_width": 36.5, "scye_depth_length": 21.5, "back_neck_point_to_waist": 41.0,
    "upper_arm_girth": 28.5, "outer_arm_length": 56.0, "wrist_girth": 15.5, "shoulder_length": 13.0,
}  # fmt: skip
"""Invented people."""


def made(measures: dict | None = None, **options) -> Work:
    women = options.get("method") == "womens"
    body = Body.of({**(WOMAN if women else MAN), **(measures or {})}, "women" if women else "men")
    return work(SHIRT, body, SHIRT.spec(kind="shirt", **options), Finish())


def line(path: Path) -> shapely.LineString:
    return shapely.LineString([(p.x, p.y) for p in path.flattened(0.001)])


def piece(done: Work, name: str) -> Piece:
    return done.pattern.pattern.piece(name)


def marks(done: Work, name: str, kind: str) -> list[shapely.LineString]:
    return [line(m.path) for m in piece(done, name).marks if m.kind == kind]


def closed_width(done: Work) -> float:
    """Front and back from centre to centre at the underarm, twice, by another library."""
    whole = 0.0
    for name in ("front", "back"):
        one = piece(done, name)
        _, left, right = next(level for level in one.levels if level[0] == "chest")
        ends = sorted((left.x, right.x))
        if name == "front":
            ends[1] = marks(done, "front", "centre_front")[0].bounds[0]
        whole += ends[1] - ends[0]
    return 2 * (whole - sum(p.intake for p in piece(done, "back").pleats))


@pytest.mark.parametrize("method", ["mens", "womens"])
@pytest.mark.parametrize("fit", ["slim", "classic", "relaxed"])
def test_each_fit_has_its_ease_round_the_chest(method, fit):
    eases = {"mens": (12, 20, 26), "womens": (8, 12, 18)}[method]
    wanted = eases[("slim", "classic", "relaxed").index(fit)]
    done = made(method=method, fit=fit)
    assert closed_width(done) - done.body.value("bust_girth") == pytest.approx(wanted, abs=0.05)


def test_a_chest_ease_of_ones_own_wins_over_the_fit():
    done = made(fit="slim", chest_ease=16.0)
    assert closed_width(done) == pytest.approx(102 + 16, abs=0.05)


@pytest.mark.parametrize("ease", [0.0, 1.0, 3.0])
@pytest.mark.parametrize("edge", ["facing", "band"])
def test_the_collar_closes_at_the_neck_and_its_ease(ease, edge):
    """Along the stand from the button to the buttonhole, which both sit on the centre front."""
    done = made(neck_ease=ease, front_edge=edge)
    stand = piece(done, "collar_stand")
    at = marks(done, "collar_stand", "button")[0].centroid
    neck = line(stand.edge("neck").path.joined(stand.edge("overlap").path))
    assert 2 * neck.project(at) == pytest.approx(39 + ease, abs=0.2)
    seam = next(s for s in done.seams if s.seam.name == "neck")
    assert seam.difference == pytest.approx(0.0, abs=0.001)


def test_every_seam_agrees_to_a_hundredth():
    for options in ({}, {"method": "womens"}, {"front_edge": "band", "placket": "bound"}):
        assert max(abs(s.difference) for s in made(**options).seams) < 0.01


@pytest.mark.parametrize("edge", ["facing", "band"])
@pytest.mark.parametrize("stand", [1.2, 1.5, 2.5])
def test_buttons_lie_on_the_centre_front_as_far_from_the_edge_as_the_stand(edge, stand):
    done = made(front_edge=edge, button_stand=stand)
    where = "front" if edge == "facing" else "front_band"
    (fold,) = marks(done, where, "fold")
    (centre,) = marks(done, where, "centre_front")
    assert fold.distance(centre) == pytest.approx(stand)
    buttons, holes = marks(done, where, "button"), marks(done, where, "buttonhole")
    assert len(buttons) == len(holes) >= 5
    for button, hole in zip(buttons, holes, strict=True):
        assert button.centroid.distance(centre) < 0.01
        assert hole.distance(button.centroid) < 0.01


def test_a_womans_shirt_has_a_button_at_the_bust_point():
    """Level with it, or the front gapes there. Source: common practice, no source."""
    done = made(method="womens")
    bust = next(s.value for s in done.steps if s.name == "bust point")
    centre = marks(done, "front", "centre_front")[0]
    low = next(s.value for s in done.steps if s.name == "hem at the centre front")
    up = low.y - centre.bounds[1]
    heights = [b.centroid.y + up for b in marks(done, "front", "button")]
    assert min(abs(h - bust.y) for h in heights) < 0.01


@pytest.mark.parametrize("dart", [1.0, 3.0, 5.0])
def test_the_bust_dart_lengthens_the_front_and_closes_again(dart):
    """Centre front and side by another library; the side closes to the back's."""
    plain, done = (made(method="womens", bust_dart=width) for width in (0.0, dart))
    (taken,) = piece(done, "front").darts
    assert piece(plain, "front").darts == ()
    first, second = taken.legs
    assert first == pytest.approx(second, abs=0.001)
    front = line(piece(done, "front").edge("side").path).length - taken.intake
    assert front == pytest.approx(line(piece(done, "back").edge("side").path).length, abs=0.02)
    centres = [marks(d, "front", "centre_front")[0].length for d in (plain, done)]
    lowered = [
        next(float(s.value) for s in d.steps if s.name == "lowering of the throat")
        for d in (plain, done)
    ]
    assert centres[1] - centres[0] == pytest.approx(dart - lowered[1] + lowered[0], abs=0.01)


def test_the_dart_points_at_the_bust_and_stops_short_of_it():
    done = made(method="womens")
    steps = {s.name: s.value for s in done.steps if s.kind == "point"}
    bust, end, mouth = (steps[n] for n in ("bust point", "bust dart end", "bust dart lower leg"))
    assert end.distance(bust) == pytest.approx(3.0)
    turn = math.degrees(
        math.atan2(bust.y - mouth.y, bust.x - mouth.x)
        - math.atan2(end.y - mouth.y, end.x - mouth.x)
    )
    assert turn == pytest.approx(0.0, abs=0.01)


def test_a_larger_cup_gets_a_wider_dart():
    """1.05 cm of dart for each 2.54 cm that the bust goes over the upper chest (derived)."""
    widths = []
    for upper in (88.0, 85.46):
        done = work(
            SHIRT, Body.of({**WOMAN, "upper_chest_girth": upper}),
            SHIRT.spec(kind="shirt", method="womens"), Finish(),
        )  # fmt: skip
        widths.append(next(float(s.value) for s in done.steps if s.name == "bust dart"))
    assert widths[1] - widths[0] == pytest.approx(1.05, abs=0.001)


@pytest.mark.parametrize("length", [70.0, 84.0])
@pytest.mark.parametrize("shape", [{"hem": "straight"}, {"tail": 5.0}, {"tail": 9.0}])
def test_length_is_taken_from_the_nape_to_the_hem(length, shape):
    done = made(length=length, **shape)
    back, yoke = piece(done, "back"), piece(done, "yoke")
    centre = sum(line(p.edge("centre_back").path).length for p in (back, yoke))
    assert centre == pytest.approx(length, abs=0.001)
    hem = back.edge("hem").path
    rise = hem.bounds()[3] - hem.bounds()[1]
    assert rise == pytest.approx(shape.get("tail", 0.0), abs=0.001)


@pytest.mark.parametrize("depth", [6.0, 9.0, 11.0])
def test_the_yoke_is_as_deep_as_asked(depth):
    done = made(yoke_depth=depth)
    assert line(piece(done, "yoke").edge("centre_back").path).length == pytest.approx(depth)


@pytest.mark.parametrize(("pleat", "count"), [("none", 0), ("centre", 1), ("sides", 1)])
def test_pleats_take_what_they_were_given(pleat, count):
    options = {} if pleat == "none" else {"pleat_intake": 3.0}
    done = made(back_pleat=pleat, **options)
    pleats = piece(done, "back").pleats
    assert [p.intake for p in pleats] == [pytest.approx(3.0)] * count
    edge = line(piece(done, "back").edge("yoke_seam").path).length
    assert edge - 3.0 * count == pytest.approx(
        line(piece(done, "yoke").edge("foot").path).length, abs=0.02
    )


def test_a_box_pleat_shows_four_centimetres_and_side_pleats_lie_over_the_blades():
    back = piece(made(), "back")
    (box,) = back.pleats
    fold = back.outline.bounds()[0]
    assert 2 * (min(box.first.x, box.second.x) - fold) == pytest.approx(4.0)
    (side,) = piece(made(back_pleat="sides"), "back").pleats
    end = max(p.x for p in (back.edge("yoke_seam").path.start, back.edge("yoke_seam").path.end))
    assert 9 < end - max(side.first.x, side.second.x) < 12


@pytest.mark.parametrize("sleeve", ["long", "short"])
def test_a_sleeve_length_of_ones_own_is_kept(sleeve):
    done = made(sleeve=sleeve, sleeve_length=58.0 if sleeve == "long" else 22.0)
    _, low, _, high = piece(done, "sleeve").outline.bounds()
    cuff = 6.5 if sleeve == "long" else 0.0
    assert high - low + cuff == pytest.approx(58.0 if sleeve == "long" else 22.0, abs=0.01)


def test_neck_to_wrist_goes_over_the_shoulder():
    """Shoulder seam, sleeve and cuff reach 1 cm past shoulder and arm, wherever the seam lies."""
    for fit in ("slim", "relaxed"):
        done = made(fit=fit)
        _, low, _, high = piece(done, "sleeve").outline.bounds()
        reach = line(piece(done, "yoke").edge("shoulder").path).length + high - low + 6.5
        assert reach == pytest.approx(15 + 60 + 1, abs=0.01)


@pytest.mark.parametrize("ease", [0.0, 0.5, 2.0])
def test_the_cap_is_longer_than_the_armhole_by_its_ease(ease):
    done = made(cap_ease=ease)
    cap = sum(line(e.path).length for e in piece(done, "sleeve").edges if e.name.startswith("cap"))
    panels = [piece(done, name) for name in ("yoke", "back", "front")]
    edges = [e for p in panels for e in p.edges if e.name.startswith("armhole")]
    hole = sum(line(e.path).length for e in edges)
    assert cap - hole == pytest.approx(ease, abs=0.02)


def test_the_sleeve_hangs_from_the_ridge_of_the_shoulder():
    """Not from a seam that lies forward: back and front of the sleeve differ by 1 to 6 cm. Source:
    common practice, no source (a back half 1 to 3 cm wider), widened for a wide back."""
    for options in ({}, {"method": "womens"}, {"fit": "slim"}):
        sleeve = piece(made(**options), "sleeve")
        (level,) = (ends for ends in sleeve.levels if ends[0] == "bicep")
        _, left, right = level
        crown = max((p for e in sleeve.edges for p in e.path.flattened(0.01)), key=lambda p: p.y)
        assert -1 <= (crown.x - left.x) - (right.x - crown.x) <= 6


@pytest.mark.parametrize(("placket", "lap"), [("tower", 2.0), ("bound", 1.0)])
@pytest.mark.parametrize("cuff", ["square", "rounded"])
def test_the_buttoned_cuff_goes_round_the_wrist(placket, lap, cuff):
    """From button to buttonhole, along the cuff's middle."""
    done = made(placket=placket, cuff=cuff, cuff_ease=6.0, cuff_depth=7.0)
    (button,), (hole,) = (marks(done, "cuff", kind) for kind in ("button", "buttonhole"))
    assert button.centroid.distance(hole.centroid) == pytest.approx(17.5 + 6.0, abs=0.01)
    left, low, right, high = piece(done, "cuff").outline.bounds()
    assert high - low == pytest.approx(7.0)
    assert right - left == pytest.approx(17.5 + 6.0 + lap, abs=0.01)
    slit = next(m for m in piece(done, "sleeve").marks if m.kind == "placement")
    assert line(slit.path).bounds[3] - line(slit.path).bounds[1] >= 8  # a hand goes through


def test_buttons_to_buy_are_those_that_are_marked():
    """And one to spare; what is marked on a pair is sewn twice."""
    cases = (({}, 2, 0), ({"placket": "bound"}, 1, 0), ({"collar": "button_down"}, 2, 2))
    for options, cuffs, points in cases:
        done = made(**options)
        front = len(marks(done, "front", "button"))
        bought = next(n.quantity for n in done.pattern.pattern.notions if "button" in n.name)
        assert bought == front + 1 + 2 * cuffs + points + 1


@pytest.mark.parametrize(
    ("lap", "side"), [("left_over_right", "left"), ("right_over_left", "right")]
)
def test_the_front_that_laps_over_gets_the_buttonholes(lap, side):
    told = " ".join(s.text for s in made(lap=lap).pattern.pattern.sewing)
    assert f"buttonholes in the {side} front" in told
    usual = {"mens": "left", "womens": "right"}
    for method, hand in usual.items():
        told = " ".join(s.text for s in made(method=method).pattern.pattern.sewing)
        assert f"buttonholes in the {hand} front" in told


def test_marks_for_checks_meet():
    """Pocket on front at the same depth; sleeve and front at the same way from the underarm."""
    done = made(match="checks")
    on_front, on_pocket = marks(done, "front", "match"), marks(done, "chest_pocket", "match")
    (patch,) = (m for m in marks(done, "front", "placement") if m.length > 30)
    corner = (patch.bounds[0], patch.bounds[3])
    top = next(line(m.path) for m in piece(done, "chest_pocket").marks if m.kind == "fold")
    pocket_corner = (top.bounds[0], top.bounds[3])
    for front, pocket in zip(on_front[:2], on_pocket, strict=True):
        for axis in (0, 1):
            assert front.coords[0][axis] - corner[axis] == pytest.approx(
                pocket.coords[0][axis] - pocket_corner[axis], abs=0.001
            )
    front, sleeve = piece(done, "front"), piece(done, "sleeve")
    ways = [
        line(front.edge("armhole_under").path).length,
        line(sleeve.edge("cap_front_under").path).length,
    ]
    assert ways[0] == pytest.approx(ways[1], abs=0.001)
    bar, other = on_front[2], marks(done, "sleeve", "match")[0]
    for mark, edge, where in ((bar, "armhole_under", front), (other, "cap_front_under", sleeve)):
        ends = line(where.edge(edge).path).boundary
        assert ends.distance(shapely.Point(mark.coords[0])) < 0.01
    sides = [
        {n.match for n in piece(done, name).notches if n.edge == "side"}
        for name in ("front", "back")
    ]
    assert sides[0] == sides[1] == {"side-waist", "side-bar"}
    assert marks(made(), "front", "match") == []


def test_the_waist_is_taken_in_no_further_than_it_has_room():
    """8 cm over the waist stay, at the least; the hip gets its 6."""
    stout = {"waist_girth": 118.0, "hip_girth": 122.0}
    done = made(stout, fit="slim")
    told = {c.name: c for c in done.pattern.checks}
    assert told["waist_has_room"].drafted >= 118 + 8 - 0.5
    assert told["hip_has_room"].drafted >= 122 + 6 - 0.5


REFUSED = [
    ({"bust_dart": 2.0}, "bust_dart", "method"),
    ({"tail": 5.0, "hem": "straight"}, "tail", "hem"),
    ({"pleat_intake": 2.0, "back_pleat": "none"}, "pleat_intake", "back_pleat"),
    ({"collar": "stand", "collar_fall": 5.0}, "collar_fall", "collar"),
    ({"collar": "stand", "collar_point": 7.0}, "collar_point", "collar"),
    ({"sleeve": "short", "placket": "tower"}, "placket", "sleeve"),
    ({"sleeve": "short", "cuff": "rounded"}, "cuff", "sleeve"),
    ({"sleeve": "short", "cuff_depth": 8.0}, "cuff_depth", "sleeve"),
    ({"sleeve": "short", "cuff_ease": 8.0}, "cuff_ease", "sleeve"),
    ({"collar_stand": 4.5, "collar_fall": 4.0}, "collar_fall", "collar_stand"),
    ({"length": 55.0, "tail": 8.0}, "length", "tail"),
    ({"sleeve_length": 20.0}, "sleeve_length", "cuff_depth"),
]


@pytest.mark.parametrize(("options", "one", "other"), REFUSED, ids=lambda v: str(v)[:40])
def test_what_cannot_be_had_is_refused_naming_both_options(options, one, other):
    with pytest.raises(SpecError) as refused:
        made(**options)
    assert refused.value.where == f"garment.{one}"
    assert one in refused.value.message
    assert other in refused.value.message


def test_a_deep_yoke_on_a_shallow_armhole_is_refused():
    with pytest.raises(SpecError, match="yoke_depth"):
        made({"scye_depth_length": 15.0}, yoke_depth=12.0, fit="slim")


SPOILT = [
    ("collar_stand", "neck", "finished_neck_girth"),
    ("sleeve", "cap_front", "cap_ease"),
    ("sleeve", "wrist_front", "finished_cuff_girth"),
    ("collar", "centre_back", "leaf_covers_stand"),
]


@pytest.mark.parametrize(("name", "edge", "wish"), SPOILT)
def test_a_wrongly_drawn_edge_fails_its_check(name, edge, wish):
    """The edge half as long as it was drawn: its wish fails, and where it is sewn, its seam."""
    done = made()
    pattern = done.pattern.pattern
    one = pattern.piece(name)
    smaller = tuple(
        replace(e, path=e.path.transformed(scale(0.5))) if e.name == edge else e for e in one.edges
    )
    spoilt = replace(
        pattern,
        pieces=tuple(replace(p, edges=smaller) if p.name == name else p for p in pattern.pieces),
    )
    bare = replace(finish_pattern(pattern, Finish()), pattern=spoilt)
    failed = {c.name for c in check(bare)[0] if not c.passed}
    assert wish in failed
    assert all(c.passed for c in done.pattern.checks)


@pytest.mark.parametrize("method", ["mens", "womens"])
@pytest.mark.parametrize("drop", [-1.0, 1.5])
def test_sloping_shoulders_lower_the_shoulder_and_the_armhole_with_it(method, drop):
    """The neck stays; both shoulder ends and the underarm move alike, the armhole keeps its
    length to a centimetre."""
    plain, done = made(method=method), made(method=method, shoulder_drop=drop)
    points = [
        {s.name: s.value for s in d.steps if s.kind == "point"} for d in (plain, done)
    ]  # fmt: skip
    for name in ("back shoulder end", "front shoulder end", "side at the underarm"):
        assert points[0][name].y - points[1][name].y == pytest.approx(drop, abs=0.001), name
    for name in ("back neck", "front neck", "nape"):
        assert points[0][name].y == pytest.approx(points[1][name].y, abs=0.001), name
    holes = [drafted_length(d, "armhole_length") for d in (plain, done)]
    assert holes[1] - holes[0] == pytest.approx(0.0, abs=1.0)


def drafted_length(done: Work, name: str) -> float:
    return dict(finished_measurements(done.pattern.pattern))[name]


def test_a_measured_slope_lowers_the_shoulder_by_the_sine():
    """A usual man's slope changes nothing; five degrees more lower a shoulder of 15 cm by
    15 (sin 32.7 - sin 27.7) cm."""
    ends = []
    for slope in (27.7, 32.7):
        done = made({"shoulder_slope": slope})
        ends.append(next(s.value.y for s in done.steps if s.name == "back shoulder end"))
    assert ends[0] - ends[1] == pytest.approx(1.131, abs=0.002)


def test_what_a_fitter_sees_can_be_ordered():
    pins = {s.pin for s in SHIRT.symptoms if s.pin}
    assert pins
    for pin in pins:
        for symptom in (s for s in SHIRT.symptoms if s.pin == pin):
            for amount in (symptom.low, symptom.high):
                assert made(**{pin: amount}).verdict != "unsound"
