"""Skirts against worked numbers, before trueing and after. Source of each: the case file."""

from __future__ import annotations

import json
import math
from pathlib import Path as File

import pytest
import shapely

from drafting.body import Body
from drafting.craft.darts import PlannedDart
from drafting.craft.hemline import walking_girth
from drafting.craft.sheet import DraftSheet
from drafting.garments import GARMENTS
from drafting.garments.skirts.a_line import opened, spreads
from drafting.garments.skirts.block import Panel, block
from drafting.garments.skirts.straight import StraightSkirt
from drafting.pattern import Finish
from drafting.trace import Length
from drafting.trace.place import corner_of_paper
from drafting.workroom import Work, work

CASES = json.loads((File(__file__).parent / "cases" / "skirts.json").read_text("utf-8"))
FINE = 0.001


def made(kind: str, measures: dict[str, float], **options) -> Work:
    garment = GARMENTS[kind]
    return work(garment, Body.of(measures), garment.spec(kind=kind, **options), Finish())


def length(path) -> float:
    return shapely.LineString([(p.x, p.y) for p in path.flattened(FINE)]).length


def round_edge(done: Work, name: str) -> float:
    """Twice an edge of every piece that has it, by another library."""
    pieces = done.pattern.pattern.pieces
    return 2 * sum(length(e.path) for p in pieces for e in p.edges if e.name == name)


@pytest.fixture(name="drawn", params=CASES["straight"], ids=lambda c: c["name"])
def drawn_fixture(request):
    case, sheet = request.param, DraftSheet()
    cut = StraightSkirt(kind="straight_skirt", **case["options"])
    panels = block(Body.of(case["measures"]), cut, Length(cut.length, "length"), sheet)
    return case, {panel.name: panel for panel in panels}, sheet


def test_every_length_comes_out(drawn):
    case, _, sheet = drawn
    found = {s.name: float(s.value) for s in sheet.steps if s.kind == "length"}
    for name, wanted in case["lengths"].items():
        assert found[name] == pytest.approx(wanted, abs=0.005), name


def test_every_point_lies_where_it_was_worked_out(drawn):
    case, _, sheet = drawn
    points = {s.name: s.value for s in sheet.steps if s.kind == "point"}
    for name, (across, down) in case["points"].items():
        assert points[name].x == pytest.approx(across, abs=0.005), name
        assert -points[name].y == pytest.approx(down, abs=0.005), name


def test_every_width_comes_out_on_the_cut_pieces(drawn):
    """Waists with the darts closed, measured on the trued pieces by another library."""
    case, _, _ = drawn
    pattern = made("straight_skirt", case["measures"], **case["options"]).pattern.pattern
    found = {}
    for name in ("back", "front"):
        piece = pattern.piece(name)
        left, right = piece.level("hip")
        found[f"{name} hip"] = left.distance(right)
        taken = sum(d.first.distance(d.second) for d in piece.darts)
        found[f"{name} waist"] = length(piece.edge("waist").path) - taken
    for whole in ("hip", "waist"):
        found[f"whole {whole}"] = 2 * (found[f"back {whole}"] + found[f"front {whole}"])
    for name, wanted in case["widths"].items():
        assert found[name] == pytest.approx(wanted, abs=0.01), name


def test_darts_are_as_wide_and_as_long_as_worked_out(drawn):
    case, panels, _ = drawn
    for name, darts in case["darts"].items():
        found = [
            (d.near.distance(d.far), d.near.toward(d.far, 0.5).distance(d.point))
            for d in panels[name].darts
        ]
        assert found == [pytest.approx(dart, abs=0.005) for dart in darts]


@pytest.mark.parametrize(("flare", "hem"), CASES["gored"]["hems"])
def test_gores_flare_to_the_hem_that_was_worked_out(flare, hem):
    case = CASES["gored"]
    measures = {"waist_girth": case["waist"], "hip_girth": case["hip"], "side_waist_to_hip": 20.6}
    options = {"gores": case["gores"], "hip_ease": 0, "waist_ease": 0, "waist_fullness": 0}
    done = made("gored_skirt", measures, flare=flare, length=60, **options)
    assert round_edge(done, "hem") == pytest.approx(hem, abs=0.01)
    gore = done.pattern.pattern.piece("side_front")
    assert length(gore.edge("waist").path) == pytest.approx(case["gore"]["waist"], abs=0.01)
    left, right = gore.level("hip")
    assert left.distance(right) == pytest.approx(case["gore"]["hip"], abs=0.01)


@pytest.mark.parametrize("give", [0, 2])
@pytest.mark.parametrize("circle", CASES["circle_radii"]["radii"])
def test_circles_have_the_radius_that_geometry_gives(circle, give):
    """Every point of the drawn waist, from the centre that its two straight edges point at."""
    measures = {"waist_girth": 72, "hip_girth": 90, "side_waist_to_hip": 20.6}
    done = made("circle_skirt", measures, circle=circle, bias_give=give, waist_ease=0, length=60)
    wanted = CASES["circle_radii"]["radii"][circle][1 if give else 0]
    piece = done.pattern.pattern.pieces[0]
    for point in piece.edge("waist").path.flattened(0.0001):
        assert math.hypot(point.x, point.y) == pytest.approx(wanted, abs=0.001)


@pytest.mark.parametrize("waist", CASES["circle_hems"]["hems"])
def test_circle_hems_are_as_long_as_geometry_says(waist):
    measures = {"waist_girth": float(waist), "hip_girth": float(waist) + 18}
    for circle, hem in CASES["circle_hems"]["hems"][waist].items():
        done = made(
            "circle_skirt", {**measures, "side_waist_to_hip": 20.6},
            circle=circle, bias_give=0, waist_ease=0, length=CASES["circle_hems"]["length"],
        )  # fmt: skip
        assert round_edge(done, "hem") == pytest.approx(hem, abs=0.06)


def test_a_closed_dart_opens_the_hem_by_similar_triangles():
    """A rectangle of a panel with one dart, closed whole; the opening read off turned points."""
    case = CASES["a_line"]
    long, deep, half = case["length"], case["dart"], case["intake"] / 2
    at = corner_of_paper
    sheet = DraftSheet()
    waist, side = sheet.point("c", at(0, 0), "."), sheet.point("s", at(24, 0), ".")
    legs = (sheet.point("n", at(12 - half, 0), "."), sheet.point("f", at(12 + half, 0), "."))
    tip = sheet.point("t", at(12, -deep), ".")
    panel = Panel(
        name="back", centre=waist, side=side,
        hip_centre=sheet.point("h", at(0, -20), "."), hip_side=sheet.point("hs", at(24, -20), "."),
        hem_centre=sheet.point("m", at(0, -long), "."),
        hem_side=sheet.point("ms", at(24, -long), "."),
        sewn=Length(22.0), darts=(PlannedDart(*legs, tip),),
    )  # fmt: skip
    angle = math.degrees(2 * math.atan(half / deep))
    (spread,) = spreads(panel, angle)
    assert spread.opening == pytest.approx(case["opens"], abs=0.03)  # chord against tangent
    swung = opened(panel, angle, sheet)
    turned = complex(math.cos(math.radians(angle)), math.sin(math.radians(angle)))
    pivot = complex(12, -deep)
    for before, after in ((panel.hem_side, swung.hem_side), (panel.side, swung.side)):
        there = pivot + (complex(before.x, before.y) - pivot) * turned
        assert abs(there - complex(after.x, after.y)) < 1e-9
    # the dart's far leg comes to lie on its near leg, and the cloth under the point parts
    far = pivot + (complex(legs[1].x, legs[1].y) - pivot) * turned
    assert abs(far - complex(legs[0].x, legs[0].y)) < 1e-9
    under = complex(12, -long)
    assert abs(pivot + (under - pivot) * turned - under) == pytest.approx(spread.opening)
    assert swung.darts == ()


@pytest.mark.parametrize(("height", "leg", "girth"), CASES["hem_to_walk"]["rows"])
def test_the_hem_to_walk_in(height, leg, girth):
    case = CASES["hem_to_walk"]
    assert walking_girth(case["step"], case["crotch"], height, leg) == pytest.approx(
        girth, abs=0.05
    )
