"""What leaves as JSON, SVG and PDF says the same as the plan, and can be read by others."""

from __future__ import annotations

import io
import json
import re
from xml.etree import ElementTree as ET

import pypdfium2
import pytest
import shapely
from orders import order, piece
from shapely import affinity
from svgelements import Path as SvgPath

from drafting.drawing import Output, Text
from drafting.drawing.lettering import corners
from drafting.export.json import document as pattern_document
from drafting.export.lay_plans import write_json, write_pdf, write_svg
from drafting.laying import Cloth, Laying, Repeat, lay
from drafting.laying.picture import pictures

PLAIN = Laying(budget=0.0)
SVG = "{http://www.w3.org/2000/svg}"


@pytest.fixture(name="plan", scope="module")
def folded_and_open(standard):
    cloths = {"main": Cloth(folded=True), "pocketing": Cloth(width=90.0), "fusible": Cloth()}
    return lay((standard,), cloths, Laying(budget=0.0, alternatives=True))


def polygon(path_data, flat=2000):
    path = SvgPath(path_data)
    return shapely.Polygon(
        [(p.x, p.y) for segment in path for t in range(41) if (p := segment.point(t / 40))]
    ).buffer(0)


def test_each_matrix_takes_the_patterns_own_cut_line_to_the_outline(plan, standard):
    pieces = {p["name"]: p for p in pattern_document(standard, Output())["pieces"]}
    told = json.loads(write_json(plan, Output()))
    for cloth in told["cloths"]:
        for placement in cloth["placements"]:
            cut = polygon(pieces[placement["piece"]]["cut_line"])
            a, b, c, d, e, f = placement["matrix"]
            there = affinity.affine_transform(cut, [a, c, b, d, e, f])
            assert there.symmetric_difference(polygon(placement["outline"])).area < 2.0
            left, upper, right, lower = there.bounds
            assert placement["x"] == pytest.approx(left, abs=0.01)
            assert placement["y"] == pytest.approx(upper, abs=0.01)
            assert placement["length"] == pytest.approx(right - left, abs=0.02)
            assert placement["breadth"] == pytest.approx(lower - upper, abs=0.02)


def test_outlines_keep_apart_and_on_the_cloth_as_told(plan):
    for cloth in json.loads(write_json(plan, Output()))["cloths"]:
        areas = [polygon(p["outline"]) for p in cloth["placements"]]
        apart = min(a.distance(b) for n, a in enumerate(areas) for b in areas[:n])
        assert apart >= 2.0 - 0.1
        folded = cloth["options"]["folded"]
        breadth = cloth["options"]["width"] / (2 if folded else 1)
        lower = breadth if folded else breadth - cloth["options"]["selvedge"]
        for area in areas:
            assert area.bounds[1] >= cloth["options"]["selvedge"] - 0.1
            assert area.bounds[3] <= lower + 0.1
            assert area.bounds[2] <= cloth["length"] + 0.1


def test_the_json_tells_lengths_in_mm_and_who_found_the_lay(plan):
    told = json.loads(write_json(plan, Output()))
    assert (told["unit"], told["budget"], told["gap"]) == ("mm", 0.0, 2.0)
    assert told["engine"]["name"] == "spyrrow"
    main = told["cloths"][0]
    assert main["engine"] == "plain"
    assert main["length"] == pytest.approx(plan.cloths[0].length * 10, abs=0.001)
    assert main["buy"]["metric"] % 50 == 0
    assert main["buy"]["metric"] - main["buy"]["exact"] < 50
    assert (main["buy"]["yards"] * 8).is_integer()
    assert [other["width"] for other in main["alternatives"]] == [900.0, 1150.0, 1400.0, 1500.0]


def test_a_width_without_an_alternative_is_null():
    made = order(piece("panel", (0, 0), (95, 0), (95, 60), (0, 60)))
    plan = lay((made,), {"main": Cloth()}, Laying(budget=0.0, alternatives=True))
    told = json.loads(write_json(plan, Output()))["cloths"][0]["alternatives"]
    assert [other["buy"] is None for other in told] == [True, False, False, False]


def parsed(svg):
    return ET.fromstring(svg)  # noqa: S314 - our own bytes


def texts(svg):
    return ["".join(t.itertext()) for t in parsed(svg).iter(f"{SVG}text")]


def test_every_piece_is_drawn_once_and_named(plan):
    svg = write_svg(plan, Output())
    root = parsed(svg)
    placements = [p for cloth in plan.cloths for p in cloth.placements]
    drawn = [g for g in root.iter(f"{SVG}g") if re.search(r"-\d+$", g.get("id", ""))]
    assert len(drawn) == len(placements)
    for group, placement in zip(drawn, placements, strict=True):
        words = " ".join("".join(t.itertext()) for t in group.iter(f"{SVG}text"))
        assert words.startswith(str(placement.finished.piece.number))


def test_the_small_drawing_says_what_to_buy_and_how_the_cloth_lies(plan):
    told = " ".join(texts(write_svg(plan, Output())))
    main = plan.cloths[0]
    assert f"{main.buy.metric / 100:.2f} m" in told
    assert "folded lengthwise" in told
    assert "selvedge" in told
    assert "fold" in texts(write_svg(plan, Output()))


def test_outlines_are_drawn_to_the_scale_told(plan):
    root = parsed(write_svg(plan, Output()))
    for cloth in plan.cloths:
        text = next(g for g in root.iter(f"{SVG}g") if g.get("id") == f"lay-{cloth.kind}-text")
        words = " ".join("".join(t.itertext()) for t in text.iter(f"{SVG}text"))
        scale = int(re.search(r"1 : (\d+)", words).group(1))
        for number, placement in enumerate(cloth.placements, 1):
            group = next(g for g in root.iter() if g.get("id") == f"lay-{cloth.kind}-{number}")
            outline = next(p for p in group.iter(f"{SVG}path") if "outline" in p.get("id", ""))
            area = polygon(outline.get("d")).area
            assert area == pytest.approx(abs(placement.outline.area()) * 100 / scale**2, rel=0.01)


@pytest.mark.parametrize(
    ("language", "words"),
    [("fr", ("lisières", "pliure", "Devant du pantalon")), ("de", ("Webkanten", "Stoffbruch"))],
)
def test_the_plan_speaks_the_language_asked_for(plan, language, words):
    output = Output(language=language)
    told = " ".join(texts(write_svg(plan, output)))
    for word in words:
        assert word in told
    for english in ("selvedge", "Lay the cloth", "takes no more", "Buy"):
        assert english not in told
    main = json.loads(write_json(plan, output))["cloths"][0]
    assert main["findings"][0]["code"] == "right_sides_together"
    assert "cloth" not in main["findings"][0]["message"]
    assert main["placements"][0]["piece"] in ("front", "back", "waistband", "fly_shield")


def test_the_bar_to_measure_is_50_mm_long(plan):
    root = parsed(write_svg(plan, Output()))
    bars = [p for p in root.iter(f"{SVG}path") if p.get("id", "").endswith("-bar")]
    assert [SvgPath(bar.get("d")).length() for bar in bars] == [pytest.approx(50.0)] * 3


def test_names_lie_inside_their_pieces(plan):
    for sheet in pictures(plan, Output(), width=27.7, height=19.0):
        for group in sheet.groups[2:]:
            outline = next(s.path for s in group.items if getattr(s, "name", "") == "outline")
            inside = shapely.Polygon([(p.x, p.y) for p in outline.flattened(0.005)])
            for text in (item for item in group.items if isinstance(item, Text)):
                box = shapely.Polygon([(p.x, p.y) for p in corners(text)])
                assert box.difference(inside).area < 0.02 * box.area, text.text


def test_the_pdf_has_a_page_for_each_cloth_on_the_paper_turned(plan):
    pdf = pypdfium2.PdfDocument(io.BytesIO(write_pdf((), plan, Output(paper="a4"))))
    try:
        assert len(pdf) == 3
        sizes = [tuple(side * 25.4 / 72 for side in page.get_size()) for page in pdf]
        assert sizes == [pytest.approx((297.0, 210.0), abs=0.1)] * 3
        image = pdf[0].render(scale=1.0).to_pil().convert("L")
        assert image.getextrema()[0] < 100
    finally:
        pdf.close()


def test_the_same_plan_is_written_the_same_every_time(plan):
    output = Output()
    assert write_pdf((), plan, output) == write_pdf((), plan, output)
    assert write_svg(plan, output) == write_svg(plan, output)


def test_no_text_leaves_the_sheet_whatever_the_order_is_called():
    made = order(
        piece("panel", (0, 0), (40, 0), (40, 60), (0, 60), cut=("main", 2, True)),
        reference="<b>&'\" \u202eيلب 漢字 \x07" + "x" * 300,
    )
    repeat = Repeat(lengthwise=4.0, crosswise=4.0)
    plan = lay((made, made), {"main": Cloth(repeat=repeat)}, PLAIN)
    for sheet in pictures(plan, Output(), width=27.7, height=19.0):
        assert sheet.height <= 19.0
        for group in sheet.groups:
            for text in (item for item in group.items if isinstance(item, Text)):
                assert all(-0.1 <= p.x <= sheet.width + 0.1 for p in corners(text)), text.text
    parsed(write_svg(plan, Output()))
    assert write_pdf((), plan, Output()).startswith(b"%PDF")
