"""SVG: parsed back by another reader, true to scale, safe whatever is written on it."""

import json
import re
from xml.etree import ElementTree as ET

import pytest
from svgelements import SVG
from svgelements import Path as SvgPath

from drafting.drawing import Output
from drafting.export import FORMATS

NAME = "{http://www.w3.org/2000/svg}"
HOSTILE = (
    '<script>alert(1)</script> & "quotes" \' ) ]]> <!--',
    "Жакет Анны № 7",
    "φόρεμα Ωμέγα",
    "שלום עולם",
    "طلب رقم ٤٢",
    "订单 中文",
    "👗 hem 🧵",
    "नमस्ते",
    "a\u202eb",
    "lone \ud800 half, \ufffe",
)


def read(drawing):
    return ET.fromstring(drawing)  # noqa: S314 - the project's own bytes


def parsed(work, output):
    return read(FORMATS["svg"].write(work, output))


@pytest.fixture(scope="module")
def drawing(trousers):
    return FORMATS["svg"].write(trousers, Output())


@pytest.fixture(scope="module")
def answer(trousers):
    return json.loads(FORMATS["json"].write(trousers, Output()))


@pytest.fixture(scope="module")
def paths(drawing, tmp_path_factory):
    """Every named path, read by svgelements at one unit a millimetre."""
    file = tmp_path_factory.mktemp("svg") / "pattern.svg"
    file.write_bytes(drawing)
    svg = SVG.parse(str(file), ppi=25.4)
    return {e.id: e for e in svg.elements() if isinstance(e, SvgPath) and e.id}


def test_every_path_is_as_long_as_in_the_json(paths, answer):
    compared = 0
    for piece in answer["pieces"]:
        prefix = f"pattern-{piece['name']}"
        pairs = {f"{prefix}-stitch-{e['name']}": e["path"] for e in piece["edges"]}
        pairs[f"{prefix}-cut"] = piece["cut_line"]
        for name, path in pairs.items():
            wanted = SvgPath(path).length(error=1e-6)
            assert paths[name].length(error=1e-6) == pytest.approx(wanted, abs=0.05)
            compared += 1
    assert compared > 20


def test_every_path_has_the_shape_of_the_json_one(paths, answer):
    for piece in answer["pieces"]:
        drawn = paths[f"pattern-{piece['name']}-cut"]
        told = SvgPath(piece["cut_line"])
        shift = drawn.point(0) - told.point(0)
        for k in range(200):
            gap = drawn.point(k / 200) - told.point(k / 200) - shift
            assert abs(gap) < 0.05


def test_darts_run_from_mouth_to_point(paths, answer):
    for piece in answer["pieces"]:
        for i, dart in enumerate(piece["darts"], 1):
            for leg, length in zip(("first", "second"), dart["legs"], strict=True):
                path = paths[f"pattern-{piece['name']}-dart-{i}-{leg}"]
                assert path.length() == pytest.approx(length, abs=0.05)


def test_the_page_is_true_to_scale(drawing):
    root = read(drawing)
    width, height = (float(root.get(k).removesuffix("mm")) for k in ("width", "height"))
    assert root.get("viewBox") == f"0 0 {root.get('width')[:-2]} {root.get('height')[:-2]}"
    assert 500 < width < 2000
    assert 900 < height < 1400


def test_the_squares_measure_a_hundred_millimetres_and_four_inches(paths):
    for name, side in (("square-mm", 100.0), ("square-in", 101.6)):
        left, top, right, bottom = paths[f"pattern-legend-{name}"].bbox()
        assert (right - left, bottom - top) == pytest.approx((side, side), abs=1e-3)


def test_each_piece_is_a_group_with_a_stable_id_a_title_and_classes(drawing, answer):
    root = read(drawing)
    groups = {g.get("id"): g for g in root.iter(f"{NAME}g")}
    assert set(groups) == {"pattern-legend", *(f"pattern-{p['name']}" for p in answer["pieces"])}
    for piece in answer["pieces"]:
        assert groups[f"pattern-{piece['name']}"].find(f"{NAME}title").text == piece["title"]
    classes = {e.get("class") for e in groups["pattern-back"].iter() if e.get("class")}
    assert classes >= {
        "piece",
        "cut",
        "stitch",
        "dart",
        "drill",
        "notch",
        "grain",
        "level",
        "label",
    }
    ids = [e.get("id") for e in root.iter() if e.get("id")]
    assert len(ids) == len(set(ids))
    assert all(name.startswith("pattern") for name in ids)


def test_it_has_a_title_and_a_description_that_readers_find(drawing, answer):
    root = read(drawing)
    told = {e.get("id"): e.text for e in root if e.tag in {f"{NAME}title", f"{NAME}desc"}}
    assert root.get("aria-labelledby").split() == list(told)
    assert ", ".join(piece["title"] for piece in answer["pieces"]) in told["pattern-desc"]


def test_nothing_in_it_runs_or_reaches_outside(drawing):
    root = read(drawing)
    tags = {e.tag.removeprefix(NAME) for e in root.iter()}
    assert tags <= {"svg", "title", "desc", "defs", "g", "path", "text"}
    text = drawing.decode()
    assert not re.search(r"href|url\(|@import|\son\w+=|<!", text)


@pytest.mark.parametrize("reference", HOSTILE)
def test_a_reference_is_text_whatever_it_says(drafting_again, output, reference):
    root = parsed(drafting_again(reference=reference), output)
    tags = {e.tag.removeprefix(NAME) for e in root.iter()}
    assert tags <= {"svg", "title", "desc", "defs", "g", "path", "text"}
    wanted = reference.replace("\ud800", "\ufffd").replace("\ufffe", "\ufffd").replace(" ", "")
    for piece in ("front", "back", "waistband", "legend"):
        (group,) = (g for g in root.iter(f"{NAME}g") if g.get("id") == f"pattern-{piece}")
        said = "".join(t.text or "" for t in group.iter(f"{NAME}text")).replace(" ", "")
        assert wanted in said


def test_the_cautions_are_on_the_sheet(drawing, answer):
    said = "".join(t.text or "" for t in read(drawing).iter(f"{NAME}text"))
    for caution in answer["cautions"]:
        assert caution.replace(" ", "") in said.replace(" ", "")
