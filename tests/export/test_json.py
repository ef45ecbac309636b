"""JSON: the shape that clients rely on, and numbers that agree with the drawn paths."""

import json
from dataclasses import replace

import pytest
from svgelements import Path as SvgPath

from drafting import DRAFTING_VERSION
from drafting.body import Measured
from drafting.drawing import Output, Shrinkage
from drafting.export import FORMATS, pattern_id
from drafting.export.json import finding_document
from drafting.pattern import Allowances, Finding, Finish

SHAPE = {
    "id", "drafting_version", "unit", "verdict", "garment", "body", "pieces", "seams", "sewing",
    "checks", "finished_measurements", "notions", "findings", "cautions",
}  # fmt: skip
PIECE = {
    "name", "title", "number", "half", "cut", "edges", "stitch_line", "cut_line", "area", "darts",
    "pleats", "notches", "grain_line", "levels", "lengthen_lines", "marks", "labels",
}  # fmt: skip


@pytest.fixture(scope="module")
def answer(trousers):
    return json.loads(FORMATS["json"].write(trousers, Output()))


def fine(path, count=60):
    """Points along a path, read by svgelements segment by segment."""
    drawn = [segment for segment in path if segment.start is not None]
    points = [p for s in drawn for p in (s.point(k / count) for k in range(count))]
    return [complex(p.x, p.y) for p in (*points, drawn[-1].end)]


def shoelace(path):
    """Area over a fine polyline: owes nothing to the project's exact area."""
    points = fine(path)
    pairs = zip(points, points[1:] + points[:1], strict=True)
    return abs(sum((a.conjugate() * b).imag for a, b in pairs)) / 2


def test_the_answer_has_the_agreed_shape(answer):
    assert set(answer) == SHAPE
    assert all(set(piece) == PIECE for piece in answer["pieces"])
    assert (answer["unit"], answer["drafting_version"]) == ("mm", DRAFTING_VERSION)
    assert [p["number"] for p in answer["pieces"]] == list(range(1, len(answer["pieces"]) + 1))


def test_every_edge_is_as_long_as_it_says(answer):
    for piece in answer["pieces"]:
        for edge in piece["edges"]:
            path = SvgPath(edge["path"])
            assert path.length(error=1e-6) == pytest.approx(edge["cut_length"], abs=0.05)
            darts = sum(d["intake"] for d in piece["darts"] if d["edge"] == edge["name"])
            assert edge["length"] == pytest.approx(edge["cut_length"] - darts, abs=0.005)


def test_edges_follow_each_other_round_the_stitching_line(answer):
    for piece in answer["pieces"]:
        edges = [SvgPath(edge["path"]) for edge in piece["edges"]]
        for edge, following in zip(edges, edges[1:] + edges[:1], strict=True):
            assert abs(edge.point(1) - following.point(0)) < 0.005
        whole = sum(edge.length(error=1e-6) for edge in edges)
        assert SvgPath(piece["stitch_line"]).length(error=1e-6) == pytest.approx(whole, abs=0.05)


def test_the_area_is_that_of_the_stitching_line(answer):
    for piece in answer["pieces"]:
        area = shoelace(SvgPath(piece["stitch_line"]))
        assert piece["area"] == pytest.approx(area, rel=1e-3)


def test_a_piece_starts_at_the_upper_left_of_its_stitching_line(answer):
    for piece in answer["pieces"]:
        left, top, _, _ = SvgPath(piece["stitch_line"]).bbox()
        assert (left, top) == pytest.approx((0, 0), abs=0.002)
        low, high = piece["grain_line"]
        assert low[0] == pytest.approx(high[0])
        assert low[1] > high[1]  # Y runs downward


def test_lengths_are_millimetres_wherever_they_stand(answer, trousers):
    assert answer["body"]["hip_girth"] == {"value": 1010.0, "origin": "measured"}
    assert answer["garment"]["hip_ease"] == 40.0
    assert answer["garment"]["kind"] == "trousers"
    checks = {check["name"]: check for check in answer["checks"]}
    for check in trousers.pattern.checks:
        factor = 1 if check.unit == "deg" else 10
        assert checks[check.name]["drafted"] == pytest.approx(check.drafted * factor, abs=0.001)
    assert 175 < checks["crotch_point_angle"]["drafted"] < 185  # degrees stay degrees


def test_what_has_no_upper_bound_says_null(answer, trousers):
    (opening,) = [c for c in answer["checks"] if c["name"] == "opening_passes_hip"]
    assert opening["allowed"] == [pytest.approx(1010 + 20), None]
    failed = replace(
        next(c for c in trousers.pattern.checks if c.name == opening["name"]), drafted=90.0
    )
    finding = Finding(code="failed", severity="error", where=failed.name, message="m",
                      measured=90.0, allowed=(failed.low, failed.high))  # fmt: skip
    assert finding_document(finding, (failed,))["allowed"] == opening["allowed"]


def test_notches_lie_on_their_edges_at_the_distance_they_say(answer):
    for piece in answer["pieces"]:
        edges = {edge["name"]: SvgPath(edge["path"]) for edge in piece["edges"]}
        for notch in piece["notches"]:
            points = fine(edges[notch["edge"]], 400)
            place = complex(*notch["point"])
            near = min(range(len(points)), key=lambda i: abs(points[i] - place))
            assert abs(points[near] - place) < 1.0
            walked = sum(abs(points[i + 1] - points[i]) for i in range(near))
            assert walked == pytest.approx(notch["at"], abs=1.0)


def test_every_seam_names_edges_that_are_there_with_their_length(answer):
    lengths = {(p["name"], e["name"]): e["length"] for p in answer["pieces"] for e in p["edges"]}
    for seam in answer["seams"]:
        assert len(seam["sides"]) == 2
        for part in (part for side in seam["sides"] for part in side):
            assert part["length"] == pytest.approx(lengths[part["piece"], part["edge"]], abs=0.001)


def test_the_order_of_sewing_closes_every_seam_once_and_sews_darts_that_are_there(answer):
    closed = [name for step in answer["sewing"] for name in step["seams"]]
    assert closed == [seam["name"] for seam in answer["seams"]]
    darted = [p["name"] for p in answer["pieces"] if p["darts"]]
    assert sorted(name for step in answer["sewing"] for name in step["darts"]) == sorted(darted)
    assert all(step["text"].endswith(".") for step in answer["sewing"])


def test_an_estimated_measure_tells_its_deviation_and_what_from(trousers, output):
    measured = {
        **trousers.body.measured,
        "knee_girth": Measured(38.5, "estimated", 1.6, ("hip_girth",)),
    }
    body = replace(trousers.body, measured=measured)
    told = json.loads(FORMATS["json"].write(replace(trousers, body=body), output))["body"]
    assert told["knee_girth"] == {
        "value": 385.0, "origin": "estimated", "sd": 16.0, "from": ["hip_girth"],
    }  # fmt: skip


def test_findings_are_told_in_the_unit_of_what_they_speak_of(trousers, output):
    found = (
        Finding(code="a", severity="note", where="hip_girth", message="m", measured=101.0,
                allowed=(80.0, 130.0)),
        Finding(code="b", severity="warning", where="crotch_point_angle", message="m",
                measured=181.0, allowed=(177.0, 183.0)),
        Finding(code="c", severity="note", where="front", message="m"),
        Finding(code="d", severity="warning", where="back.waist", message="m", measured=4.0,
                unit="deg"),
        Finding(code="e", severity="error", where="back.waist", message="m", measured=0.4),
    )  # fmt: skip
    work = replace(trousers, pattern=replace(trousers.pattern, findings=found))
    told = json.loads(FORMATS["json"].write(work, output))["findings"]
    assert (told[0]["measured"], told[0]["allowed"]) == (1010.0, [800.0, 1300.0])
    assert (told[1]["measured"], told[1]["allowed"]) == (181.0, [177.0, 183.0])
    assert "measured" not in told[2]
    assert (told[3]["measured"], told[4]["measured"]) == (4.0, 4.0)


def test_the_id_hangs_on_body_garment_and_finish_but_not_on_the_reference(drafting_again):
    first = pattern_id(drafting_again())
    assert len(first) == 32
    assert set(first) <= set("0123456789abcdef")
    assert pattern_id(drafting_again(reference="another")) == first
    assert pattern_id(drafting_again(hip_ease=5.0)) != first
    assert pattern_id(drafting_again(finish=Finish(allowances=Allowances(hem=3.0)))) != first


def test_a_reference_of_any_script_comes_out_as_typed(drafting_again, output):
    reference = 'Жакет φόρεμα שלום طلب 订单 👗 <script>"\\'
    answer = json.loads(FORMATS["json"].write(drafting_again(reference=reference), output))
    for piece in answer["pieces"]:
        said = "".join(label["text"] for label in piece["labels"]).replace(" ", "")
        assert reference.replace(" ", "") in said


def test_sides_are_told_and_make_another_pattern_though_their_mean_is_the_same(trousers, output):
    mean = trousers.body.measured["outside_leg_length"]
    told = []
    for by in (0.0, 0.5, -0.5):
        pair = {
            "left": replace(mean, value=mean.value - by),
            "right": replace(mean, value=mean.value + by),
        }
        body = replace(trousers.body, sides={"outside_leg_length": pair})
        told.append(json.loads(FORMATS["json"].write(replace(trousers, body=body), output)))
    assert len({each["id"] for each in told}) == 3
    value = round(mean.value * 10, 3)
    assert told[1]["body"]["outside_leg_length"] == {
        "value": value, "origin": "measured", "sides": {"left": value - 5, "right": value + 5},
    }  # fmt: skip


def test_pieces_are_those_of_the_paper_and_seams_those_of_the_washed_garment(trousers):
    """10 % lengthwise: of the outside leg as it is drawn nine tenths are left, as the seam tells.

    The side runs nearly upright and curves a little: its drawn length shrinks by 9 to 10 %.
    """
    shrinks = Shrinkage(lengthwise=10.0)
    told = json.loads(FORMATS["json"].write(trousers, Output(shrinkage=shrinks)))
    plain = json.loads(FORMATS["json"].write(trousers, Output()))
    assert told["shrinkage"] == {"lengthwise": 10.0, "crosswise": 0.0}
    assert "shrinkage" not in plain
    assert any("washed garment" in caution for caution in told["cautions"])
    assert not any("washed garment" in caution for caution in plain["cautions"])
    for unchanged in ("seams", "checks", "finished_measurements", "body", "id"):
        assert told[unchanged] == plain[unchanged]
    front, before = (each["pieces"][0] for each in (told, plain))
    sides = [
        sum(e["length"] for e in piece["edges"] if e["name"].startswith("side"))
        for piece in (front, before)
    ]
    assert 0.9 - 1e-6 <= sides[1] / sides[0] <= 0.91
