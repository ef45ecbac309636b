"""DXF: clean and read back by ezdxf, outlines as in the JSON, every layer what the table says."""

import io
import json
import shutil
import subprocess
from dataclasses import replace

import ezdxf
import numpy as np
import pytest
import shapely
from ezdxf import recover
from svgelements import Path as SvgPath

from drafting.drawing import Output, Shrinkage
from drafting.export import FORMATS
from drafting.export.dxf import LAYERS, write

BOUNDARY, TURNS, CURVES, NOTCHES, FOLD, GRAIN, INSIDE, DRILLS, SEW, NOTES = (
    "1", "2", "3", "4", "6", "7", "8", "13", "14", "15",
)  # fmt: skip
KINDS = {
    BOUNDARY: {"POLYLINE", "TEXT", "INSERT"}, TURNS: {"POINT"}, CURVES: {"POINT"},
    NOTCHES: {"POINT"}, FOLD: {"LINE"}, GRAIN: {"LINE"}, INSIDE: {"LINE", "POLYLINE"},
    DRILLS: {"POINT"}, SEW: {"POLYLINE", "LINE"}, NOTES: {"TEXT"},
}  # fmt: skip
"""What stands on each layer. From memory: ASTM D6673; the project's notes list the same."""


def opened(work, **form):
    document, audit = recover.read(io.BytesIO(write(work, Output(**form))))
    assert not audit.has_errors
    return document


@pytest.fixture(scope="module")
def document(trousers):
    return opened(trousers)


@pytest.fixture(scope="module")
def answer(trousers):
    return json.loads(FORMATS["json"].write(trousers, Output()))


def block(document, piece):
    return document.blocks.get(piece["name"].upper())


def on(entities, layer, kind=None):
    return [e for e in entities if e.dxf.layer == layer and kind in {None, e.dxftype()}]


def points(polyline):
    return [(v.x, v.y) for v in polyline.points()]


def true(path, count=60):
    """Points on a path of the JSON, Y up."""
    drawn = [segment for segment in SvgPath(path) if segment.start is not None]
    found = [p for s in drawn for p in (s.point(k / count) for k in range(count))]
    return [(p.x, -p.y) for p in (*found, drawn[-1].end)]


def test_a_strict_and_a_patient_reader_find_nothing_wrong(trousers):
    document = ezdxf.read(io.StringIO(write(trousers, Output()).decode("cp1252")))
    audit = document.audit()
    assert (audit.errors, audit.fixes) == ([], [])
    _, audit = recover.read(io.BytesIO(write(trousers, Output())))
    assert not audit.has_errors
    assert not audit.has_fixes


def test_every_piece_is_a_block_inserted_once(document, answer):
    inserts = [e.dxf.name for e in document.modelspace() if e.dxftype() == "INSERT"]
    assert inserts == [piece["name"].upper() for piece in answer["pieces"]]
    assert all(block(document, piece) is not None for piece in answer["pieces"])


def test_only_the_layers_of_the_table_are_used_each_for_what_it_is_for(document):
    used = {e for b in document.blocks for e in b} | set(document.modelspace())
    for entity in used:
        assert entity.dxf.layer in LAYERS
        assert entity.dxftype() in KINDS[entity.dxf.layer], entity.dxf.layer
    assert set(LAYERS) == set(KINDS)


@pytest.mark.parametrize("tolerance", [0.02, 0.1, 1.0])
def test_outlines_are_those_of_the_json_within_the_tolerance(trousers, answer, tolerance):
    document = opened(trousers, curve_tolerance=tolerance)
    for piece in answer["pieces"]:
        (boundary,) = on(block(document, piece), BOUNDARY, "POLYLINE")
        assert boundary.is_closed
        corners = np.array(points(boundary))
        assert np.hypot(*(corners - np.roll(corners, 1, axis=0)).T).min() > 0.009  # none twice
        ours = shapely.LinearRing(points(boundary))
        theirs = shapely.LineString(true(piece["cut_line"], 200))
        assert ours.hausdorff_distance(theirs) <= tolerance + 0.02
        for x, y in points(boundary):
            assert theirs.distance(shapely.Point(x, y)) < 0.01


def test_a_finer_tolerance_takes_more_points(trousers):
    def count(tolerance):
        blocks = opened(trousers, curve_tolerance=tolerance).blocks
        return len([e for b in blocks for e in b if e.dxf.layer == CURVES])

    assert count(0.02) > count(0.1) > count(1.0) > 0


def test_turn_points_and_curve_points_are_the_corners_of_the_boundary(document, answer):
    """Each corner once; the cut of a waistband's straight sides turns at its corners alone."""
    for piece in answer["pieces"]:
        entities = block(document, piece)
        (boundary,) = on(entities, BOUNDARY, "POLYLINE")
        told = [
            (e.dxf.location.x, e.dxf.location.y)
            for layer in (TURNS, CURVES)
            for e in on(entities, layer)
        ]
        assert np.allclose(sorted(told), sorted(points(boundary)), atol=1e-4)
    band = next(p for p in answer["pieces"] if p["name"] == "waistband")
    assert len(on(block(document, band), CURVES)) == 0
    assert len(on(block(document, band), TURNS)) == 4
    for layer, least, most in ((TURNS, 0.1, 180.0), (CURVES, 0.0, 40.0)):
        bends = [b for p in answer["pieces"] for b in turned(block(document, p), layer)]
        assert all(least <= bend <= most for bend in bends)


def turned(entities, layer):
    """By how many degrees the boundary turns at each point of a layer."""
    (boundary,) = on(entities, BOUNDARY, "POLYLINE")
    ring = np.array(points(boundary))
    wanted = {(round(e.dxf.location.x, 4), round(e.dxf.location.y, 4)) for e in on(entities, layer)}
    for before, at, after in zip(np.roll(ring, 1, 0), ring, np.roll(ring, -1, 0), strict=True):
        if tuple(np.round(at, 4)) in wanted:
            (ax, ay), (bx, by) = at - before, after - at
            yield abs(np.degrees(np.arctan2(ax * by - ay * bx, ax * bx + ay * by)))


def test_stitching_lines_darts_and_drill_holes_are_where_the_json_has_them(document, answer):
    for piece in answer["pieces"]:
        entities = block(document, piece)
        sewn = shapely.union_all([shapely.LineString(points(e)) for e in on(entities, SEW)])
        for edge in piece["edges"]:
            if edge["role"] != "fold":
                path = shapely.LineString(true(edge["path"]))
                assert path.within(sewn.buffer(0.15))
        drills = [(e.dxf.location.x, e.dxf.location.y) for e in on(entities, DRILLS)]
        for dart in piece["darts"]:
            x, y = dart["drill"]
            assert (x, -y) in [pytest.approx(d, abs=0.01) for d in drills]
            legs = shapely.LineString([(x, -y) for x, y in (dart["mouth"][0], dart["point"])])
            assert legs.within(sewn.buffer(0.15))


def test_notches_lie_on_the_boundary_and_point_inward(document, answer):
    for piece in answer["pieces"]:
        entities = block(document, piece)
        (boundary,) = on(entities, BOUNDARY, "POLYLINE")
        area = shapely.Polygon(points(boundary))
        found = on(entities, NOTCHES)
        assert len(found) == sum(notch["count"] for notch in piece["notches"])
        for notch in found:
            at = np.array([notch.dxf.location.x, notch.dxf.location.y])
            assert area.exterior.distance(shapely.Point(at)) < 0.15
            angle = np.radians(notch.dxf.angle)
            inner = at + notch.dxf.thickness * np.array([np.cos(angle), np.sin(angle)])
            assert area.buffer(0.05).contains(shapely.Point(inner))
            assert 1.0 <= notch.dxf.thickness <= 4.0


def test_grain_and_inner_lines_are_those_of_the_json(document, answer):
    for piece in answer["pieces"]:
        (grain,) = on(block(document, piece), GRAIN)
        ends = [(grain.dxf.start.x, -grain.dxf.start.y), (grain.dxf.end.x, -grain.dxf.end.y)]
        assert ends == [pytest.approx(p, abs=0.01) for p in piece["grain_line"]]
        lines = on(block(document, piece), INSIDE)
        least = len(piece["levels"]) + len(piece["lengthen_lines"]) + 2 * len(piece["pleats"])
        drills = [mark for mark in piece["marks"] if mark["kind"] == "drill"]
        assert len(lines) == least + len(piece["marks"]) - len(drills)


def test_a_half_piece_has_a_mirror_line_and_none_when_it_is_unfolded(drafting_again):
    work = drafting_again(waistband="contoured")
    halves = [p.piece.name.upper() for p in work.pattern.pieces if p.piece.half]
    assert halves
    folded, whole = opened(work), opened(work, unfold=True)
    for name in halves:
        assert len(on(folded.blocks.get(name), FOLD)) == 1
        assert len(on(whole.blocks.get(name), FOLD)) == 0


def test_texts_tell_name_size_quantity_material_and_units(document, answer):
    for piece in answer["pieces"]:
        told = {t.dxf.text.partition(": ")[0]: t.dxf.text.partition(": ")[2]
                for t in on(block(document, piece), BOUNDARY, "TEXT")}  # fmt: skip
        cut = piece["cut"][0]
        half = cut["quantity"] // 2
        wanted = f"{half},{half}" if cut["mirrored"] else str(cut["quantity"])
        assert told["Piece Name"] == piece["name"]
        assert told["Quantity"] == wanted
        assert told["Material"] == cut["cloth"]
        assert told["Size"] == "order 1042"
    style = [t.dxf.text for t in document.modelspace() if t.dxftype() == "TEXT"]
    assert "UNITS: METRIC" in style
    assert any("layer convention of ASTM D6673" in text for text in style)
    assert not any("DATE" in text or "TIME:" in text for text in style)


def test_it_opens_with_its_units_and_claims_no_conformance(trousers):
    text = write(trousers, Output()).decode("cp1252")
    assert text.startswith("999\n")
    assert "Units: mm" in text.splitlines()[1]
    assert "conform" not in text.lower()


@pytest.mark.parametrize("reference", [
    'a"b\\P{x};', "line\nbreak", "Жакет Анны № 7", "שלום עולם", "订单 👗", "\ud800", "x" * 120,
])  # fmt: skip
def test_a_reference_of_any_kind_stays_text(drafting_again, reference):
    work = drafting_again(reference=reference)
    document = opened(work)
    assert not document.audit().errors
    lines = write(work, Output()).decode("cp1252").splitlines()
    assert len(lines) % 2 == 0  # a group code and a value, to the end
    assert max(map(len, lines)) <= 255
    said = "".join(t.dxf.text for t in on(document.blocks.get("FRONT"), NOTES))
    seen = (c if ord(c) < 0xD800 else "\ufffd" for c in reference)  # four digits code a letter
    wanted = "".join("".join(seen).split())
    assert wanted in said.replace(" ", "")


def test_shrinkage_and_scale_are_drawn_and_told(trousers, answer):
    document = opened(trousers, scale="1:4", shrinkage=Shrinkage(lengthwise=5.0))
    style = " ".join(t.dxf.text for t in document.modelspace() if t.dxftype() == "TEXT")
    assert "Scale 1:4" in style
    assert "5 %" in style
    piece = answer["pieces"][0]
    low, high = (y for _, y in piece["grain_line"])
    (grain,) = on(block(document, piece), GRAIN)
    length = grain.dxf.end.y - grain.dxf.start.y
    assert length == pytest.approx((low - high) / 4 / 0.95, abs=0.01)


def test_net_lines_alone_are_the_boundary(trousers, answer):
    document = opened(trousers, lines="net")
    for piece in answer["pieces"]:
        (boundary,) = on(block(document, piece), BOUNDARY, "POLYLINE")
        net = shapely.Polygon(true(piece["stitch_line"]))
        ours = shapely.Polygon(points(boundary))
        darts = sum(d["intake"] * 15 for d in piece["darts"])
        assert ours.symmetric_difference(net).area <= 0.15 * net.length + darts


def test_long_names_are_cut_and_stay_apart(trousers):
    long = "a_very_long_name_of_a_piece_that_goes_on"
    pieces = tuple(
        replace(p, piece=replace(p.piece, name=f"{long}_{k}"))
        for k, p in enumerate(trousers.pattern.pieces)
    )
    document = opened(replace(trousers, pattern=replace(trousers.pattern, pieces=pieces)))
    names = [e.dxf.name for e in document.modelspace() if e.dxftype() == "INSERT"]
    assert len(set(names)) == len(pieces)
    assert all(len(name) <= 31 for name in names)


@pytest.mark.slow
def test_librecad_opens_it_and_prints_it(trousers, tmp_path):
    librecad = shutil.which("librecad")
    if librecad is None:
        pytest.skip("LibreCAD is not installed")
    (tmp_path / "a.dxf").write_bytes(write(trousers, Output()))
    run = subprocess.run(  # noqa: S603 - a file of its own
        [librecad, "dxf2pdf", "-a", "a.dxf"], cwd=tmp_path, capture_output=True, text=True,
        env={"QT_QPA_PLATFORM": "offscreen", "PATH": "/usr/bin:/bin", "HOME": str(tmp_path)},
        timeout=60, check=True,
    )  # fmt: skip
    assert "DONE" in run.stdout + run.stderr
    assert (tmp_path / "a.pdf").stat().st_size > 20_000
