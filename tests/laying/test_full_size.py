"""At full size every piece lies where the plan says, as large as it is cut, its texts readable."""

from __future__ import annotations

import io
from dataclasses import replace

import pypdfium2
import pytest
import shapely
from audit import area_of

from drafting.drawing import Output, Role, Stroke, Text
from drafting.errors import OutputError
from drafting.export.lay_full import plotted, write_full
from drafting.laying import Cloth, Laying, lay

CLOTHS = {"open": Cloth(), "folded": Cloth(folded=True, width=140.0)}


@pytest.fixture(name="plan", params=CLOTHS, scope="module")
def plan_fixture(request, standard):
    return lay((standard,), {"main": CLOTHS[request.param]}, Laying(budget=0.0))


def test_each_cut_line_lies_on_its_placements_outline(plan, standard):
    (cloth,) = plan.cloths
    drawn = tuple(plotted((standard,), cloth, Output()))
    assert any(p.mirrored for p in cloth.placements)
    for piece, placement in zip(drawn, cloth.placements, strict=True):
        cut = [s for s in piece.group.items if isinstance(s, Stroke) and s.role is Role.CUT]
        assert len(cut) == 1
        off = area_of(cut[0].path).symmetric_difference(area_of(placement.outline))
        assert off.area < 0.05, placement.piece


def test_no_move_mirrors_so_that_every_text_can_be_read(plan, standard):
    (cloth,) = plan.cloths
    for piece in plotted((standard,), cloth, Output()):
        assert piece.move.a * piece.move.d - piece.move.b * piece.move.c == pytest.approx(1.0)
        assert any(isinstance(item, Text) for item in piece.group.items)


def test_the_notches_of_a_mirrored_piece_are_mirrored_with_it(plan, standard):
    (cloth,) = plan.cloths
    for piece, placement in zip(
        plotted((standard,), cloth, Output()), cloth.placements, strict=True
    ):
        wanted = [placement.move.point(n.cut) for n in placement.finished.notches]
        found = [piece.move.point(n.cut) for n in piece.drawn.finished.notches]
        for point in wanted:
            assert min(point.distance(other) for other in found) < 0.01


def test_the_page_is_the_cloth_with_room_for_words(plan, standard):
    (cloth,) = plan.cloths
    document = pypdfium2.PdfDocument(io.BytesIO(write_full((standard,), plan, Output())))
    try:
        ((wide, high),) = [tuple(s * 2.54 / 72 for s in page.get_size()) for page in document]
        text = document[0].get_textpage().get_text_bounded()
    finally:
        document.close()
    folded = cloth.cloth.folded
    assert high == pytest.approx(cloth.cloth.width / (2 if folded else 1) + 8.0, abs=0.1)
    assert wide == pytest.approx(cloth.length + 2 * 2.0 + 8.0, abs=0.1)
    for word in ("selvedge", "squared end", "Trouser front", "100 cm"):
        assert word in text


def test_a_long_cloth_goes_on_several_pages(sizes):
    plan = lay(sizes, {"main": Cloth(width=90.0)}, Laying(budget=0.0))
    (cloth,) = plan.cloths
    document = pypdfium2.PdfDocument(io.BytesIO(write_full(sizes, plan, Output())))
    try:
        lengths = [page.get_size()[0] * 2.54 / 72 for page in document]
    finally:
        document.close()
    assert len(lengths) == 2
    assert max(lengths) <= 508.0
    assert sum(lengths) == pytest.approx(cloth.length + 4.0 + 8.0, abs=0.1)


def test_a_roll_must_be_broad_enough(plan, standard):
    (cloth,) = plan.cloths
    breadth = (cloth.cloth.width / (2 if cloth.cloth.folded else 1) + 8.0) * 10
    output = Output(paper="roll", roll_width=breadth)
    assert write_full((standard,), plan, output).startswith(b"%PDF")
    with pytest.raises(OutputError) as refused:
        write_full((standard,), plan, replace(output, roll_width=breadth - 1))
    assert refused.value.allowed[0] == pytest.approx(breadth, abs=1)


def test_pieces_keep_apart_on_the_plot(plan, standard):
    (cloth,) = plan.cloths
    areas = [
        area_of(next(s.path for s in p.group.items if getattr(s, "role", "") is Role.CUT))
        for p in plotted((standard,), cloth, Output())
    ]
    one, two = shapely.STRtree(areas).query(areas, predicate="intersects")
    assert all(one == two)
