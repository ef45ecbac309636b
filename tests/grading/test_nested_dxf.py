"""The nested DXF, opened by its library and held against each size's own JSON."""

from __future__ import annotations

import io
import json

import ezdxf
import pytest
import shapely
from svgelements import Path

from drafting.drawing import Output
from drafting.export import FORMATS
from drafting.grading import nested_dxf

BOUNDARY, GRAIN, INSIDE = "1", "7", "8"


@pytest.fixture(scope="module")
def drawing(trousers):
    document = nested_dxf(trousers, Output())
    return ezdxf.read(io.StringIO(document.decode("utf-8")))


@pytest.fixture(scope="module")
def answers(trousers):
    return {
        name: {p["name"]: p for p in json.loads(FORMATS["json"].write(work, Output()))["pieces"]}
        for name, work in trousers.works
    }


def block(drawing, piece, size):
    return drawing.blocks.get(f"{piece}_{size}".upper())


def boundary(found) -> shapely.Polygon:
    (line,) = (e for e in found if e.dxftype() == "POLYLINE" and e.dxf.layer == BOUNDARY)
    return shapely.Polygon([(v.dxf.location.x, -v.dxf.location.y) for v in line.vertices])


def test_each_piece_is_a_block_in_each_size_and_each_block_is_laid_once(drawing, answers):
    wanted = {
        f"{piece}_{size}".upper()[:31] for size, pieces in answers.items() for piece in pieces
    }
    laid = [insert.dxf.name for insert in drawing.modelspace().query("INSERT")]
    assert set(laid) == wanted
    assert len(laid) == len(wanted)


def test_the_boundary_of_each_block_is_the_cutting_line_of_that_size(drawing, answers):
    for size, pieces in answers.items():
        for name in ("front", "back", "waistband", "fly_shield"):
            line = Path(pieces[name]["cut_line"])
            steps = (segment.point(k / 40) for segment in line for k in range(41))
            own = shapely.Polygon([(p.x, p.y) for p in steps if p is not None]).buffer(0)
            found = boundary(block(drawing, name, size))
            assert found.exterior.hausdorff_distance(own.exterior) < 0.15
            assert found.area == pytest.approx(own.area, abs=own.length * 0.05)  # as flattened


@pytest.mark.parametrize("piece", ["front", "back"])
def test_the_sizes_of_a_panel_are_laid_on_crease_and_crotch_line(drawing, answers, piece):
    places = []
    for size, pieces in answers.items():
        name = f"{piece}_{size}".upper()
        (insert,) = drawing.modelspace().query(f'INSERT[name=="{name}"]')
        crease = pieces[piece]["grain_line"][0][0]
        crotch = pieces[piece]["levels"]["crotch"][0][1]
        at = insert.dxf.insert
        places.append((at.x + crease, at.y - crotch))
    for place in places:
        assert place == pytest.approx(places[0], abs=0.01)


def test_each_block_tells_its_size(drawing, answers):
    for size in answers:
        texts = [e.dxf.text for e in block(drawing, "front", size) if e.dxftype() == "TEXT"]
        assert f"Size: {size}" in texts


def test_the_same_range_gives_the_same_bytes(trousers):
    assert nested_dxf(trousers, Output()) == nested_dxf(trousers, Output())
