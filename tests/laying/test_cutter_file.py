"""The DXF for a cutter, read again by ezdxf."""

from __future__ import annotations

import io

import ezdxf
import pytest
import shapely
from audit import area_of
from shapely import affinity

from drafting.drawing import Output
from drafting.export.lay_dxf import APART, write_dxf
from drafting.laying import Cloth, Laying, lay

CLOTHS = {"main": Cloth(folded=True), "pocketing": Cloth(width=90.0)}


@pytest.fixture(name="plan", scope="module")
def plan_fixture(standard):
    return lay((standard,), CLOTHS, Laying(budget=0.0))


@pytest.fixture(name="drawing", scope="module")
def drawing_fixture(plan, standard):
    written = write_dxf((standard,), plan, Output())
    return ezdxf.read(io.StringIO(written.decode("ascii")))


def boundaries(drawing):
    """The outline of each block where it is inserted, in cm, in the order of the file."""
    found = []
    for insert in drawing.modelspace().query("INSERT"):
        lines = [e for e in insert.virtual_entities() if e.dxftype() == "POLYLINE"]
        (cut,) = [line for line in lines if line.dxf.layer == "1"]
        assert cut.is_closed
        found.append(shapely.Polygon([(v.x / 10, v.y / 10) for v in cut.points()]))
    return found


def test_the_file_is_clean_and_of_the_oldest_kind(drawing):
    assert drawing.dxfversion == "AC1009"
    audit = drawing.audit()
    assert not audit.errors
    assert not audit.fixes


def test_each_piece_lies_where_the_plan_says(drawing, plan):
    placements = [(p, 0.0) for p in plan.cloths[0].placements]
    placements += [(p, -90.0 - APART) for p in plan.cloths[1].placements]
    found = boundaries(drawing)
    assert len(found) == len(placements)
    for outline, (placement, low) in zip(found, placements, strict=True):
        wanted = affinity.translate(area_of(placement.outline), 0.0, low)
        assert wanted.boundary.hausdorff_distance(outline.boundary) < 0.011, placement.piece


def test_each_block_tells_how_many_are_cut_there(drawing, plan):
    for insert, placement in zip(
        drawing.modelspace().query("INSERT"),
        [p for cloth in plan.cloths for p in cloth.placements],
        strict=True,
    ):
        texts = [e.dxf.text for e in drawing.blocks[insert.dxf.name].query("TEXT")]
        assert f"Piece Name: {placement.piece}" in texts
        count = "1,1" if placement.layers == "double" else str(len(placement.copies))
        assert f"Quantity: {count}" in texts


def test_blocks_have_names_of_their_own(drawing, plan):
    names = [insert.dxf.name for insert in drawing.modelspace().query("INSERT")]
    assert len(set(names)) == len(names) == sum(len(c.placements) for c in plan.cloths)
    assert all(len(name) <= 31 for name in names)


def test_the_same_plan_is_written_the_same_every_time(plan, standard):
    first, again = (write_dxf((standard,), plan, Output()) for _ in range(2))
    assert first == again
