"""The nested drawing, read back by another library and held against each size's own pattern."""

from __future__ import annotations

import json
import re
import xml.etree.ElementTree as ET
from itertools import combinations

import pytest
import shapely
import tabard
from svgelements import Path

from drafting.drawing import Output
from drafting.errors import ConstructionError
from drafting.export import FORMATS
from drafting.grading import nested_svg, size_range

SVG = "{http://www.w3.org/2000/svg}"
NEAR = 0.011
"""mm; coordinates are written to a thousandth, and two are compared."""


def read(document):
    return ET.fromstring(document)  # noqa: S314 - written by ourselves


@pytest.fixture(scope="module")
def drawing(nested):
    return read(nested)


@pytest.fixture(scope="module")
def answers(trousers):
    return {
        name: {p["name"]: p for p in json.loads(FORMATS["json"].write(work, Output()))["pieces"]}
        for name, work in trousers.works
    }


def group(drawing, code):
    return next((g for g in drawing.iter(f"{SVG}g") if g.get("id") == f"nest-{code}"), None)


def cut_line(drawing, piece, number):
    """The cutting line of a size of a piece; of a piece that all sizes share, the one there is."""
    own = group(drawing, f"{piece}-size-{number}")
    code = f"nest-{piece}-size-{number}-cut" if own is not None else f"nest-{piece}-cut"
    return next(p for p in drawing.iter(f"{SVG}path") if p.get("id") == code)


def nodes(data):
    """End points of all segments."""
    return [(s.end.x, s.end.y) for s in Path(data)]


def shift(drawing, answer, piece, number):
    """From a size's own frame to the sheet, found at the first point of the cutting line."""
    there, own = nodes(cut_line(drawing, piece, number).get("d")), nodes(answer["cut_line"])
    return there[0][0] - own[0][0], there[0][1] - own[0][1]


def test_every_outline_is_that_of_the_size_drafted_alone(drawing, answers):
    for number, pieces in enumerate(answers.values(), 1):
        for name, answer in pieces.items():
            data = cut_line(drawing, name, number).get("d")
            across, down = shift(drawing, answer, name, number)
            there, own = nodes(data), nodes(answer["cut_line"])
            assert len(there) == len(own)
            for (x, y), (u, v) in zip(there, own, strict=True):
                assert (x - across, y - down) == pytest.approx((u, v), abs=NEAR)
            length = Path(answer["cut_line"]).length(error=1e-5)
            assert Path(data).length(error=1e-5) == pytest.approx(length, abs=0.05)


@pytest.mark.parametrize("piece", ["front", "back"])
def test_trouser_panels_lie_on_one_another_at_crease_and_crotch_line(drawing, answers, piece):
    points = []
    for number, pieces in enumerate(answers.values(), 1):
        across, down = shift(drawing, pieces[piece], piece, number)
        crease = pieces[piece]["grain_line"][0][0]
        crotch = pieces[piece]["levels"]["crotch"][0][1]
        points.append((crease + across, crotch + down))
    for point in points[1:]:
        assert point == pytest.approx(points[0], abs=NEAR)
    # and there the shared point is drawn
    circle = next(
        p for p in drawing.iter(f"{SVG}path") if p.get("id") == f"nest-{piece}-shared-point"
    )
    left, top, right, low = Path(circle.get("d")).bbox()
    assert ((left + right) / 2, (top + low) / 2) == pytest.approx(points[0], abs=NEAR)


def test_waistbands_lie_on_one_another_at_a_corner_that_is_named(drawing, answers):
    ends = set()
    for number, pieces in enumerate(answers.values(), 1):
        across, down = shift(drawing, pieces["waistband"], "waistband", number)
        left, _, _, low = Path(pieces["waistband"]["stitch_line"]).bbox()
        ends.add((round(left + across, 1), round(low + down, 1)))
    assert len(ends) == 1
    texts = [t.text or "" for t in group(drawing, "waistband").iter(f"{SVG}text")]
    assert any("corner of" in text for text in texts)


def test_each_size_has_a_line_of_its_own(drawing, trousers):
    pens = {
        tuple(cut_line(drawing, piece, n).get(k) for k in ("stroke-dasharray", "stroke-width"))
        for n in range(1, len(trousers.sizes) + 1)
        for piece in ("front", "back", "waistband")
    }
    assert len(pens) == len(trousers.sizes)


def test_each_size_is_a_layer_with_its_name(drawing, trousers):
    layers = [g for g in drawing.iter(f"{SVG}g") if g.get("class") == "layer"]
    titles = [layer.find(f"{SVG}title").text for layer in layers]
    assert titles == [f"Size {name}" for name in trousers.names]
    for number, layer in enumerate(layers, 1):
        codes = {g.get("id") for g in layer.iter(f"{SVG}g")}
        assert f"nest-front-size-{number}" in codes


def test_the_key_shows_each_line_beside_its_size(drawing, trousers):
    told = group(drawing, "key")
    samples = [(p.get("stroke-dasharray"), p.get("stroke-width")) for p in told.iter(f"{SVG}path")]
    names = [t.text for t in told.iter(f"{SVG}text") if t.text.startswith("Size ")]
    assert names == [f"Size {name}" for name in trousers.names]
    for number, sample in enumerate(samples, 1):
        line = cut_line(drawing, "front", number)
        assert (line.get("stroke-dasharray"), line.get("stroke-width")) == sample


def test_each_size_is_named_at_several_corners_of_a_panel(drawing, trousers):
    for number, name in enumerate(trousers.names, 1):
        texts = [t.text for t in group(drawing, f"front-size-{number}").iter(f"{SVG}text")]
        assert texts.count(name) >= 3


def test_a_name_points_at_a_corner_of_its_own_outline(drawing, trousers):
    for number in range(1, len(trousers.sizes) + 1):
        own = group(drawing, f"front-size-{number}")
        outline = shapely.LinearRing(nodes(cut_line(drawing, "front", number).get("d")))
        leaders = [p for p in own.iter(f"{SVG}path") if p.get("stroke-width") == "0.12"]
        assert len(leaders) >= 3
        for leader in leaders:
            (x, y), *_ = nodes(leader.get("d"))
            assert outline.distance(shapely.Point(x, y)) < NEAR


def test_pieces_of_the_nest_do_not_lie_on_each_other(drawing, trousers):
    areas = {}
    for name in (p.piece.name for p in trousers.works[0][1].pattern.pieces):
        lines = {cut_line(drawing, name, n).get("d") for n in range(1, len(trousers.sizes) + 1)}
        areas[name] = shapely.union_all([_area(data) for data in lines])
    for one, two in combinations(areas.values(), 2):
        assert one.distance(two) > 9.0


def _area(data):
    steps = (segment.point(k / 20) for segment in Path(data) for k in range(21))
    return shapely.Polygon([(p.x, p.y) for p in steps if p is not None]).buffer(0)


def test_a_piece_that_is_the_same_in_all_sizes_is_drawn_once_and_says_so(drawing):
    assert group(drawing, "back_pocket_facing-size-1") is None
    texts = " ".join(t.text or "" for t in group(drawing, "back_pocket_facing").iter(f"{SVG}text"))
    assert re.search(r"the same in\s+all sizes", texts)


def test_sizes_that_cannot_be_cut_are_told_in_the_key_and_not_drawn():
    bodies = tabard.bodies(80, 84, 130, 160)
    found = size_range(tabard.GARMENT, bodies, tabard.Tabard(), tabard.FINISH)
    drawing = read(nested_svg(found, Output()))
    texts = [t.text for t in group(drawing, "key").iter(f"{SVG}text")]
    assert "130: not drawn, it fails its checks" in texts
    assert "160: not drawn, it cannot be drafted" in texts
    assert group(drawing, "panel-size-3") is None


def test_an_unsound_size_that_is_wanted_all_the_same_is_marked():
    bodies = tabard.bodies(80, 84, 130)
    found = size_range(tabard.GARMENT, bodies, tabard.Tabard(), tabard.FINISH)
    drawing = read(nested_svg(found, Output(), allow_unsound=True))
    texts = [t.text for t in group(drawing, "key").iter(f"{SVG}text")]
    assert "Size 130 NOT FOR CUTTING" in texts
    assert group(drawing, "panel-size-3") is not None


def test_a_range_of_which_nothing_can_be_cut_has_no_nest():
    found = size_range(tabard.GARMENT, tabard.bodies(160), tabard.Tabard(), tabard.FINISH)
    with pytest.raises(ConstructionError):
        nested_svg(found, Output())
